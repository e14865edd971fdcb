package tooling

// The keys between the layers of a tray (traydeep.go): cones that stand up from a
// cut and their sockets in what lies over it. A tray that lets go only narrows
// along its pull, so a socket has its room all the way down where it has it at its
// tip. A tray of a part that catches does not: there the mesh's own triangles tell
// how near any surface comes.

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/parting"
	"moldwright/core/solid"
)

// cutKeys are the keys in a cut at a depth, in (v, z), by region: within what stands
// over the cut as high as a socket is deep.
func (l *layer) cutKeys(whole *solid.Mesh, at float64, cuts []solid.Cut) ([][]key, error) {
	out := make([][]key, len(cuts))
	axis := l.at(1, 0, 0)
	spare := keyWall + l.clear*math.Sqrt2
	for _, most := range [2]float64{keyMost, keyMost / 2} {
		keyed := make([]bool, len(cuts)) // by larger keys
		for i := range keyed {
			keyed[i] = len(out[i]) > 0
		}
		_, over, err := solid.Beyond(whole, axis, solid.Clearing(whole, axis, at+most+spare))
		if err != nil {
			return nil, err
		}
		for _, c := range over {
			for _, k := range keysIn(l.region(c), l.clear) {
				k.radius = math.Min(k.radius, most)
				for _, d := range l.toJoints(k.at) {
					k.radius = math.Min(k.radius, d-keyMost-2*spare)
				}
				if k.radius >= keyLeast && l.p.Verdict == parting.Catches {
					k.radius = math.Min(k.radius, l.nearest(whole, k.at, at, at+most+spare)-spare)
				}
				if k.radius < keyLeast {
					continue
				}
				p := form.Point{R: k.at[0], Z: k.at[1]}
				i := slices.IndexFunc(cuts, func(c solid.Cut) bool { return encloses(l.region(c), p) })
				if i >= 0 && !keyed[i] && len(out[i]) < 2 {
					out[i] = append(out[i], k)
				}
			}
		}
	}
	return out, nil
}

// keyPlace is the base of a key in the mold.
type keyPlace struct {
	at     solid.Vec
	radius float64
}

// in tells whether the key is one of the body's.
func (k keyPlace) in(m *solid.Mesh) bool {
	return slices.ContainsFunc(m.V, func(v solid.Vec) bool { return norm(minus(v, k.at)) < k.radius+0.1 })
}

// nearest is how near a mesh comes, across the pull, to the line along the pull
// through a place in (v, z), between two depths.
func (t *tray) nearest(m *solid.Mesh, at [2]float64, from, to float64) float64 {
	axis := t.at(1, 0, 0)
	flat := make([][3]float64, len(m.V)) // v and z from the place, and the depth
	for i, p := range m.V {
		flat[i] = [3]float64{t.sideways(p) - at[0], p[2] - at[1], dotted(p, axis)}
	}
	least := math.Inf(1)
	var poly, next [][3]float64
	for _, f := range m.T {
		poly = append(poly[:0], flat[f[0]], flat[f[1]], flat[f[2]])
		for _, end := range [2]struct{ at, way float64 }{{from, 1}, {to, -1}} {
			next = clipped(next[:0], poly, 2, end.at, end.way)
			poly, next = next, poly
		}
		in := len(poly) > 2
		side := 0.0
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			o := form.Point{}
			least = math.Min(least, toChord(o, form.Point{R: p[0], Z: p[1]}, form.Point{R: q[0], Z: q[1]}))
			turn := p[0]*q[1] - p[1]*q[0]
			in = in && turn*side >= 0 && turn != 0
			side = turn
		}
		if in {
			return 0
		}
	}
	return least
}

// toJoints are the distances of a place in (v, z) from the piece's other joints,
// whose sockets reach in.
func (t *tray) toJoints(at [2]float64) (out []float64) {
	if t.w != 0 {
		out = append(out, math.Abs(at[0]))
	}
	if t.from > t.lo {
		out = append(out, at[1]-t.from)
	}
	if t.to < t.hi {
		out = append(out, t.to-at[1])
	}
	return out
}

// region is the loop round a region of a cut, in (v, z), its holes tied to its
// first corner.
func (t *tray) region(c solid.Cut) (loop []form.Point) {
	for i, pts := range c.Points {
		for k := range len(pts) + 1 {
			p := pts[k%len(pts)]
			loop = append(loop, form.Point{R: t.sideways(p), Z: p[2]})
		}
		if i > 0 {
			loop = append(loop, loop[0])
		}
	}
	return loop
}

func encloses(loop []form.Point, p form.Point) bool {
	in := false
	a := loop[len(loop)-1]
	for _, c := range loop {
		if (a.Z > p.Z) != (c.Z > p.Z) && p.R < a.R+(p.Z-a.Z)/(c.Z-a.Z)*(c.R-a.R) {
			in = !in
		}
		a = c
	}
	return in
}
