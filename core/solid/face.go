package solid

// Planar faces: rings at one height, the two ends of a sector, and any other
// polygon of given vertices. Round holes can be left open in them, for natches
// and fill holes; what fills a hole starts from the very loop left open.

import (
	"fmt"
	"math"
)

// Circle is a round hole to be left in a face: its centre in the face's own
// coordinates (x, y in a flat; radius from the axis and z in an end), its
// radius in mm and the number of its corners.
type Circle struct {
	At       [2]float64
	RadiusMM float64
	Steps    int
}

// Hole is a hole left open: its loop counterclockwise seen from outside the
// solid, its centre, radius, and the outward normal of the face.
type Hole struct {
	Loop     Loop
	Centre   Vec
	Normal   Vec
	RadiusMM float64
}

// Flat is a horizontal wall between two neighbours on the outline, in its
// direction, with holes left open. It faces up where the outline runs inward,
// as over the top of a solid, and down where it runs outward.
func (b *Builder) Flat(from, to Loop, holes ...Circle) []Hole {
	if len(holes) == 0 {
		b.Wall(from, to)
		return nil
	}
	inner, outer, up := to, from, true
	if len(from) == 1 || len(to) > 1 && below(b.mesh.V[from[0]], b.mesh.V[to[0]]) {
		inner, outer, up = from, to, false
	}
	z := b.mesh.V[outer[0]][2]
	for _, l := range [2]Loop{inner, outer} {
		for _, i := range l {
			if b.mesh.V[i][2] != z {
				b.fail(fmt.Errorf("a flat face must lie at one height, not at both %g and %g", z, b.mesh.V[i][2]))
				return nil
			}
		}
	}
	loops := []Loop{outer}
	if !b.span.Whole() {
		loops[0] = append(append(Loop(nil), outer...), backward(inner)...)
	} else if len(inner) > 1 {
		loops = append(loops, backward(inner))
	}
	frame := plane{x: Vec{1, 0, 0}, y: Vec{0, 1, 0}, o: Vec{0, 0, z}, flip: !up}
	return b.cover(frame, loops, holes)
}

// Side names one end of a sector.
type Side int

// Near is the end at the span's first step, Far that at its last.
const (
	Near Side = iota
	Far
)

// End closes one end of a sector: the planar face inside the outline through
// the rings, with holes left open.
func (b *Builder) End(side Side, rings []Loop, holes ...Circle) []Hole {
	if b.span.Whole() {
		b.fail(fmt.Errorf("a whole turn has no ends"))
		return nil
	}
	outline := make(Loop, len(rings))
	far := Vec{}
	for k, l := range rings {
		outline[k] = l[0]
		if side == Far {
			outline[k] = l[len(l)-1]
		}
		if v := b.mesh.V[outline[k]]; math.Hypot(v[0], v[1]) > math.Hypot(far[0], far[1]) {
			far = v
		}
	}
	x := unit(Vec{far[0], far[1], 0})
	return b.cover(plane{x: x, y: Vec{0, 0, 1}, flip: side == Far}, []Loop{outline}, holes)
}

// Face is the planar polygon of the given loops of vertices, seen from outside
// along -normal: the outline counterclockwise, holes clockwise.
func (b *Builder) Face(normal Vec, outline Loop, holes ...Loop) {
	b.cover(planeFacing(normal), append([]Loop{outline}, holes...), nil)
}

// plane is a frame of a face. With flip the face is seen from behind it.
type plane struct {
	o, x, y Vec
	flip    bool
}

// planeFacing is a plane through the origin, seen from beyond it along -normal.
func planeFacing(normal Vec) plane {
	n := unit(normal)
	least := 0
	for k := range n {
		if math.Abs(n[k]) < math.Abs(n[least]) {
			least = k
		}
	}
	e := Vec{}
	e[least] = 1
	x := unit(cross(e, n))
	return plane{x: x, y: cross(n, x)}
}

// flat is a point in the coordinates of the plane.
func (f *plane) flat(v Vec) [2]float64 {
	x, y, z := v[0]-f.o[0], v[1]-f.o[1], v[2]-f.o[2]
	return [2]float64{
		float64(x*f.x[0]) + float64(y*f.x[1]) + float64(z*f.x[2]),
		float64(x*f.y[0]) + float64(y*f.y[1]) + float64(z*f.y[2]),
	}
}

// cover triangulates the loops, which are oriented as seen in the frame.
func (b *Builder) cover(f plane, loops []Loop, circles []Circle) []Hole {
	if b.err != nil {
		return nil
	}
	normal := cross(f.x, f.y)
	if f.flip {
		normal = scale(normal, -1)
	}
	n := 0
	for _, l := range loops {
		n += len(l)
	}
	for _, c := range circles {
		n += max(0, c.Steps)
	}
	ids, points := make(Loop, 0, n), make([][2]float64, 0, n)
	var local [][]int32
	addLoop := func(l Loop) {
		in := make([]int32, len(l))
		for k, i := range l {
			in[k] = int32(len(ids))
			ids = append(ids, i)
			points = append(points, f.flat(b.mesh.V[i]))
		}
		local = append(local, in)
	}
	for _, l := range loops {
		addLoop(l)
	}
	holes := make([]Hole, 0, len(circles))
	for _, c := range circles {
		if c.Steps < 3 || !(c.RadiusMM > 0) {
			b.fail(fmt.Errorf("a hole of radius %g and %d corners cannot be left in a face", c.RadiusMM, c.Steps))
			return nil
		}
		h := Hole{
			Centre:   along(along(f.o, f.x, c.At[0]), f.y, c.At[1]),
			Normal:   normal,
			RadiusMM: c.RadiusMM,
		}
		for i := range c.Steps {
			s, k := stepSinCos(i, c.Steps)
			h.Loop = append(h.Loop, b.Vertex(along(along(h.Centre, f.x, c.RadiusMM*k), f.y, c.RadiusMM*s)))
		}
		addLoop(backward(h.Loop))
		if f.flip {
			h.Loop = append(h.Loop[:1], backward(h.Loop[1:])...)
		}
		holes = append(holes, h)
	}
	tris, err := Triangulate(points, local...)
	if err != nil {
		b.fail(fmt.Errorf("a face cannot be closed: %w", err))
		return nil
	}
	b.Grow(0, len(tris))
	for _, t := range tris {
		if f.flip {
			t[1], t[2] = t[2], t[1]
		}
		b.Triangle(ids[t[0]], ids[t[1]], ids[t[2]])
	}
	return holes
}

// backward is the loop in the other order, as a copy.
func backward(l Loop) Loop {
	out := make(Loop, len(l))
	for k, i := range l {
		out[len(l)-1-k] = i
	}
	return out
}
