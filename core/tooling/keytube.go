package tooling

// Whether a key lies in sound matter: within a tube through the uncut print that no
// surface of it comes into. The tube reaches from a little below the cone's foot to a
// wall beyond the tip of its socket, so that both sides are sound. All joints ask
// this of all their keys; one that has too little matter about it is made smaller, or
// left out.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

const keyFoot = 1.0 // mm of matter behind the foot of a cone

// spareOf is how much farther than a cone its socket and the wall about it reach.
func spareOf(clearance float64) float64 { return keyWall + clearance*math.Sqrt2 }

// tube asks how near a mesh comes to lines across a joint.
type tube struct {
	m    *solid.Mesh
	flat [][3]float64 // by vertex: in the coordinates of the joint, and across it
}

// tubeAbout are the tubes across a joint whose cones stand out along normal: place
// gives a point of its coordinates.
func tubeAbout(m *solid.Mesh, normal solid.Vec, place func(x, y float64) solid.Vec) *tube {
	o := place(0, 0)
	x, y := minus(place(1, 0), o), minus(place(0, 1), o)
	t := &tube{m: m, flat: make([][3]float64, len(m.V))}
	for i, p := range m.V {
		p = minus(p, o)
		t.flat[i] = [3]float64{dotted(p, x), dotted(p, y), dotted(p, normal)}
	}
	return t
}

// holds makes a key as small as the matter about it allows, and tells whether it is
// still worth printing.
func (t *tube) holds(k key, spare float64) (key, bool) {
	if k.radius >= keyLeast {
		k.radius = math.Min(k.radius, t.room(k.at, -keyFoot, k.radius+2*spare)-spare)
	}
	return k, k.radius >= keyLeast
}

// uncut is a print before it was divided, of which its pieces know: made when its
// joints first ask for it.
type uncut struct {
	so    *mold.Solids
	build func(so *mold.Solids) (*solid.Mesh, error)
	mesh  *solid.Mesh
}

// sunk are those of a joint's keys that have sound matter about them in the uncut
// print, each as large as that allows.
func (u *uncut) sunk(keys []key, clearance float64, normal solid.Vec, place func(x, y float64) solid.Vec) (out []key) {
	if u.mesh == nil {
		m, err := u.build(u.so)
		if err != nil {
			return nil // which whoever asks for the piece is told
		}
		u.mesh = m
	}
	t := tubeAbout(u.mesh, normal, place)
	for _, k := range keys {
		if k, ok := t.holds(k, spareOf(clearance)); ok {
			out = append(out, k)
		}
	}
	return out
}

// room is how near the mesh comes, across the axis, to the line through a place,
// between two places along it.
func (t *tube) room(at [2]float64, from, to float64) float64 {
	least := 2 * keyMost
	var poly, next [][3]float64
	for _, f := range t.m.T {
		a, b, c := t.flat[f[0]], t.flat[f[1]], t.flat[f[2]]
		if min(a[2], b[2], c[2]) > to || max(a[2], b[2], c[2]) < from ||
			min(a[0], b[0], c[0])-at[0] > least || at[0]-max(a[0], b[0], c[0]) > least ||
			min(a[1], b[1], c[1])-at[1] > least || at[1]-max(a[1], b[1], c[1]) > least {
			continue
		}
		poly = append(poly[:0], a, b, c)
		for _, end := range [2]struct{ at, way float64 }{{from, 1}, {to, -1}} {
			next = clipped(next[:0], poly, 2, end.at, end.way)
			poly, next = next, poly
		}
		in := len(poly) > 2
		side := 0.0
		o := form.Point{R: at[0], Z: at[1]}
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			least = math.Min(least, toChord(o, form.Point{R: p[0], Z: p[1]}, form.Point{R: q[0], Z: q[1]}))
			turn := (p[0]-at[0])*(q[1]-at[1]) - (p[1]-at[1])*(q[0]-at[0])
			in = in && turn*side >= 0 && turn != 0
			side = turn
		}
		if in {
			return 0
		}
	}
	return least
}

// deep tells whether the tube about a key, across an upright joint or a level one,
// surely lies in the matter of a round piece, by its section alone: no mesh of it
// need be made then. Turned about the axis the tube sweeps, in the section, discs of
// its radius along a line: outward from an upright joint, since it goes out along
// the tangent, and up or down from a level one. Marks, natches and whatever else is
// not round are kept clear of.
func (t *turned) deep(radius float64, at, normal solid.Vec) bool {
	const (
		off  = 0.05 // mm, more than the chords of a mesh
		step = 0.25 // mm, about, between the discs that are asked for
	)
	if !t.md.Section.Round || t.md.Block.Facets != 0 || t.md.Dimpled() {
		return false
	}
	spare := spareOf(t.clear)
	wide, long := radius+spare+off, radius+2*spare+off
	far := math.Hypot(at[0], at[1])
	from := form.Point{R: far, Z: at[2]}
	to := from
	if normal[2] != 0 {
		from.Z, to.Z = at[2]-normal[2]*keyFoot, at[2]+normal[2]*long
	} else if far > wide {
		to.R += math.Hypot(far-wide, long) - (far - wide)
	} else {
		return false
	}
	loop := make([]form.Point, len(t.section))
	for i, q := range t.section {
		loop[i] = q.Point
	}
	edges := depths{edges: chordsOf(loop)}
	n := math.Ceil(from.Dist(to) / step)
	need := wide + from.Dist(to)/n/2
	for i := range int(n) + 1 {
		if d, ok := edges.depth(from.Lerp(to, float64(i)/n), need); !ok || d < need {
			return false
		}
	}
	if t.asked.clears == nil {
		t.asked.clears = append([][]solid.Vec{}, t.clears()...)
	}
	room := math.Hypot(wide, long)
	for _, l := range t.asked.clears {
		lo, hi := l[0], l[0]
		near := true
		for i := range 3 {
			for _, p := range l {
				lo[i], hi[i] = min(lo[i], p[i]), max(hi[i], p[i])
			}
			near = near && lo[i]-room < at[i] && at[i] < hi[i]+room
		}
		if near {
			return false
		}
	}
	return true
}
