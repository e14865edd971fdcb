package solid

// What fills a hole in a face: a natch dome, its socket, a cone that keys a
// joint, or a passage through to a hole in another face.
//
// A natch is the cap of a sphere that meets its face at the half-angle t, so
// that every normal of it lies within t of the face's normal and it lets go
// along every direction within 90 - t of that normal.

import (
	"fmt"
	"math"
)

// DomeHeight is how far a natch of base radius rho and half-angle t (degrees,
// 0 < t <= 90) stands out of its face: rho tan(t/2).
func DomeHeight(rho, halfAngleDeg float64) float64 {
	return rho * math.Tan(halfAngleDeg*math.Pi/360)
}

// Dome closes a hole by a natch that stands out of the face, Socket by one sunk
// into it. The half-angle is in degrees, above 0 and at most 90.
func (b *Builder) Dome(h Hole, halfAngleDeg float64) { b.dome(h, halfAngleDeg, 1) }

// Socket: see Dome.
func (b *Builder) Socket(h Hole, halfAngleDeg float64) { b.dome(h, halfAngleDeg, -1) }

func (b *Builder) dome(h Hole, halfAngleDeg, way float64) {
	if !(halfAngleDeg > 0 && halfAngleDeg <= 90) {
		b.fail(fmt.Errorf("a natch of half-angle %g degrees does not let go", halfAngleDeg))
		return
	}
	n := len(h.Loop)
	bands := max(2, int(math.Ceil(halfAngleDeg*float64(n)/360)))
	sinT, cosT := SinCosDeg(halfAngleDeg)
	ball := h.RadiusMM / sinT
	low := h.Loop
	for k := bands - 1; k > 0; k-- {
		s, c := SinCosDeg(halfAngleDeg * float64(k) / float64(bands))
		mid := along(h.Centre, h.Normal, way*ball*(c-cosT))
		ring := make(Loop, n)
		for i, v := range h.Loop {
			ring[i] = b.Vertex(along(mid, sub(b.mesh.V[v], h.Centre), s/sinT))
		}
		b.tube(low, ring)
		low = ring
	}
	top := b.Vertex(along(h.Centre, h.Normal, way*DomeHeight(h.RadiusMM, halfAngleDeg)))
	for i, v := range low {
		b.Triangle(v, low[(i+1)%n], top)
	}
}

// Cone closes a hole by a cone of the given height (mm) that stands out of the
// face, or is sunk into it where the height is negative. As high as its hole's
// radius it leans 45 degrees, so that it prints whichever way its face looks.
func (b *Builder) Cone(h Hole, heightMM float64) {
	top := b.Vertex(along(h.Centre, h.Normal, heightMM))
	for i, v := range h.Loop {
		b.Triangle(v, h.Loop[(i+1)%len(h.Loop)], top)
	}
}

// Passage joins two holes of the same number of corners in faces that look away
// from one another, such as a fill hole through an upper part. The corners of
// the holes must start at the same azimuth.
func (b *Builder) Passage(top, bottom Hole) {
	n := len(top.Loop)
	if n != len(bottom.Loop) {
		b.fail(fmt.Errorf("a passage cannot join holes of %d and %d corners", n, len(bottom.Loop)))
		return
	}
	low := make(Loop, n)
	for i := range low {
		low[i] = bottom.Loop[(n-i)%n]
	}
	b.tube(top.Loop, low)
}

// tube lays a closed band between two closed loops; a's edges keep their way.
func (b *Builder) tube(a, c Loop) {
	for i := range a {
		j := (i + 1) % len(a)
		b.Triangle(a[i], a[j], c[j])
		b.Triangle(a[i], c[j], c[i])
	}
}

// Prism is the upright solid of an outline (counterclockwise seen from above)
// and holes (clockwise) between the heights z0 < z1.
func Prism(z0, z1 float64, outline [][2]float64, holes ...[][2]float64) (*Mesh, error) {
	b := &Builder{}
	if !(z0 < z1) {
		return nil, fmt.Errorf("a prism from %g up to %g has no height", z0, z1)
	}
	var low, high []Loop
	for _, l := range append([][][2]float64{outline}, holes...) {
		lo, hi := make(Loop, len(l)), make(Loop, len(l))
		for i, p := range l {
			lo[i] = b.Vertex(Vec{p[0], p[1], z0})
			hi[i] = b.Vertex(Vec{p[0], p[1], z1})
		}
		b.tube(lo, hi)
		low, high = append(low, lo), append(high, hi)
	}
	b.cover(plane{x: Vec{1, 0, 0}, y: Vec{0, 1, 0}, flip: true}, low, nil)
	b.cover(plane{x: Vec{1, 0, 0}, y: Vec{0, 1, 0}}, high, nil)
	return b.Done()
}
