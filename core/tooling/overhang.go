package tooling

// The steepest overhang of a piece as it is printed, in degrees from upright: of
// its walls, of the letters that stand out of them and of the keys that look
// sideways. What lies on the bed does not count. Where a wall is not round its
// flats lean differently, and those of the mesh are looked at.

import (
	"math"

	"moldwright/core/solid"
)

// keyOverhang is that of a cone or its socket in an upright face, degrees: the
// flats of a cone of 45 degrees lean a quarter of a degree more or less.
const keyOverhang = 45.0

// steep gathers the overhang of a piece: the greatest sine of the faces that
// were looked at, so that one arc sine serves them all, and the degrees of what is
// known without.
type steep struct{ sine, known float64 }

// face looks at one whose normal, of any length, has so much of it pointing down.
func (s *steep) face(down, long float64) {
	if down > s.sine*long {
		s.sine = min(1, down/long)
	}
}

// key counts a cone or its socket in an upright face.
func (s *steep) key() { s.known = keyOverhang }

// degrees is the overhang from upright.
func (s *steep) degrees() float64 { return max(s.known, math.Asin(s.sine)*180/math.Pi) }

// overhang is the steepest overhang of the piece printed with way * z up.
func (t *turned) overhang(way float64) float64 {
	low := math.Inf(1)
	for _, q := range t.section {
		low = math.Min(low, way*q.Z)
	}
	so := t.md.Solids()
	span, panels := t.span(so), t.panels(so)
	var worst steep
	for i, a := range t.section {
		k := (i + 1) % len(t.section)
		c := t.section[k]
		if way*a.Z == low && way*c.Z == low || a.R == 0 && c.R == 0 {
			continue // on the bed, or within
		}
		if panels[i].ok {
			panels[i].sign.overhang(solid.Vec{0, 0, way}, &worst)
		}
		// matter on the left: the outward normal is to the right
		dr, dz := c.R-a.R, c.Z-a.Z
		round := t.md.Section.Round || a.shape != asPot && c.shape != asPot
		if t.md.Block.Facets > 0 && (a.shape == asOutside || c.shape == asOutside) {
			round = false
			dr *= t.md.Block.MostReach() // an edge leans more than the faces
		}
		long := math.Sqrt(dr*dr + dz*dz)
		switch {
		case dr*way <= worst.sine*long:
		case round || dz == 0:
			worst.face(dr*way, long)
		default:
			from, to := t.row(so, panels, i), t.row(so, panels, k)
			next := from(span.From)
			for s := span.From; s < span.To; s++ {
				p := next
				next = from(s + 1)
				q := next
				if a.R == 0 {
					q = to(s + 1)
				}
				n := crossed(minus(q, p), minus(to(s), p))
				worst.face(-way*n[2], norm(n))
			}
		}
	}
	for _, list := range t.ends {
		if len(list) > 0 {
			worst.key()
		}
	}
	for i, a := range t.section {
		if looksUp := (a.R > t.section[(i+1)%len(t.section)].R) == (way > 0); !looksUp && len(t.keysOf(i)) > 0 {
			worst.key()
		}
	}
	return worst.degrees()
}

// overhang is the steepest overhang of a stave's course: of its flanges where
// they rise out of the groove, of the bevel on its inside, of its mark and of
// sockets in its foot.
func (s *stave) overhang(list []staveCorner, mark int) float64 {
	var worst steep
	if len(s.keys(s.lo)) > 0 {
		worst.key()
	}
	if mark >= 0 {
		s.sign(list, mark).overhang(solid.Vec{0, 0, 1}, &worst)
	}
	heights := s.bends()
	for i, h := range heights[1:] {
		low := heights[i]
		if low >= flangeRise && (h <= s.bevel[0] || low >= s.bevel[1]) || h <= 0 {
			continue // upright
		}
		if low >= s.flangeEnd {
			list = bare(list)
		}
		n := len(list)
		room := make([][2]float64, 2*n)
		from, to := s.outline(room[:n], list, s.stands(low)), s.outline(room[n:], list, s.stands(h))
		for k := range from {
			next := k + 1
			if next == n {
				next = 0
			}
			q, r := &from[k], &from[next]
			if *q == to[k] && *r == to[next] {
				continue
			}
			ux, uy := r[0]-q[0], r[1]-q[1] // level
			for _, c := range [2]*[2]float64{&to[k], &to[next]} {
				if down := uy*(c[0]-q[0]) - ux*(c[1]-q[1]); down > 0 {
					x, y := uy*(h-low), ux*(h-low)
					worst.face(down, math.Sqrt(x*x+y*y+down*down))
				}
			}
		}
	}
	return worst.degrees()
}

// overhang is the steepest overhang of this piece of the tray: of the pot where
// it catches, of keys and of marks.
func (t *tray) overhang() float64 {
	var worst steep
	up := t.at(1, 0, 0)
	if line := t.piece(); t.p.MinDraft < 0 {
		so := t.md.Solids()
		first, last := t.steps(so)
		for i := 1; i < len(line); i++ {
			a, c := line[i-1], line[i]
			if t.md.Section.Round {
				worst.face(a.Z-c.Z, a.Dist(c))
				continue
			}
			for k := first; k < last; k++ {
				p, q := so.Place(a.R, a.Z, k), so.Place(a.R, a.Z, k+1)
				if a.R == 0 {
					q = so.Place(c.R, c.Z, k+1)
				}
				n := crossed(minus(q, p), minus(so.Place(c.R, c.Z, k), p))
				worst.face(-dotted(n, up), norm(n))
			}
		}
	}
	if len(t.middleKeys())+len(t.endKeys(t.from))+len(t.endKeys(t.to)) > 0 {
		worst.key()
	}
	for _, w := range [2]float64{-1, 1} {
		if s, ok := t.flankSign(w); ok && t.w != -w {
			s.overhang(up, &worst)
		}
	}
	return worst.degrees()
}

// overhang looks at the sides of raised shapes, printed with the direction up, of
// length one, upward: each runs from its edge in the face along one and the same
// way out, so its normal follows from the edge.
func (s sign) overhang(up solid.Vec, worst *steep) {
	out := minus(s.at(0, 0, 1), s.at(0, 0, 0))
	x, y := crossed(s.x, out), crossed(s.y, out)
	down := [2]float64{-dotted(x, up), -dotted(y, up)}
	xx, xy, yy := dotted(x, x), dotted(x, y), dotted(y, y)
	for _, g := range s.list {
		for _, l := range g {
			p := l[len(l)-1]
			for _, q := range l {
				dx, dy := q[0]-p[0], q[1]-p[1]
				if d := dx*down[0] + dy*down[1]; d > 0 {
					worst.face(d, math.Sqrt(dx*dx*xx+2*dx*dy*xy+dy*dy*yy))
				}
				p = q
			}
		}
	}
}

func minus(a, b solid.Vec) solid.Vec { return solid.Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func dotted(a, b solid.Vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func norm(v solid.Vec) float64 { return math.Sqrt(dotted(v, v)) }
