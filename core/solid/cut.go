package solid

// A closed mesh cut by a plane. Every edge that crosses the plane has one new
// vertex, which all its triangles share, so what is kept is open along whole loops
// in the plane only, and closes when a face is laid in them. This is no boolean
// operation on solids: the plane is first moved, by hundredths of a millimetre,
// to where it passes no vertex.

import (
	"errors"
	"math"
	"slices"
)

// Clearing is the place nearest to atMM along the normal, within 0.02 mm, at which
// a plane keeps clearest of the vertices of the mesh.
func Clearing(m *Mesh, normal Vec, atMM float64) float64 {
	const within, tries, far = 0.02, 17, 0.5
	var near []float64 // what lies farther is clear enough
	for _, v := range m.V {
		if d := dot(v, normal) - atMM; math.Abs(d) < far {
			near = append(near, d)
		}
	}
	best, most := 0.0, -1.0
	for i := range tries {
		at := within * (2*float64(i)/(tries-1) - 1)
		least := far
		for _, d := range near {
			least = min(least, math.Abs(d-at))
		}
		if least > most || least == most && math.Abs(at) < math.Abs(best) {
			best, most = at, least
		}
	}
	return atMM + best
}

// Cut is a region of a plane that cuts a mesh: its outline and its holes in the
// vertices of the builder, as solid.Builder.Face takes them, and as points.
type Cut struct {
	Outline Loop
	Holes   []Loop
	Points  [][]Vec // of the outline, then of the holes
	in      plane
	flat    [][][2]float64 // Points in that plane
}

// Encloses tells whether a point of the plane lies in the region.
func (c *Cut) Encloses(p Vec) bool {
	in := false
	for _, l := range c.flat {
		in = in != contains(l, c.in.flat(p))
	}
	return in
}

// Beyond starts a solid with what of a closed mesh lies beyond a plane, dot(p,
// normal) > atMM, and gives the regions of the plane that are still to be closed,
// each to be seen from -normal. It is an error where the plane meets a vertex.
func Beyond(m *Mesh, normal Vec, atMM float64) (*Builder, []Cut, error) {
	return across(m, normal, atMM, true)
}

// Section gives the regions in which a plane cuts a closed mesh, as Beyond does, but
// starts no solid: their loops are in no builder.
func Section(m *Mesh, normal Vec, atMM float64) ([]Cut, error) {
	_, cuts, err := across(m, normal, atMM, false)
	return cuts, err
}

// across cuts a mesh, and keeps the triangles beyond the plane if told to.
func across(m *Mesh, normal Vec, atMM float64, keep bool) (*Builder, []Cut, error) {
	b := NewBuilder(nil, FullTurn(3))
	high := make([]float64, len(m.V))
	var to []int32 // of the vertices that are kept
	beyond := 0
	for i := range m.V {
		h := dot(m.V[i], normal) - atMM
		if h == 0 {
			return nil, nil, errors.New("the plane of a cut passes a vertex")
		}
		if high[i] = h; h > 0 {
			beyond++
		}
	}
	if keep {
		to = make([]int32, len(m.V))
		b.Grow(beyond, 2*beyond)
		for i := range high {
			if high[i] > 0 {
				to[i] = b.Vertex(m.V[i])
			}
		}
	}
	made := map[[2]int32]int32{}
	crossing := func(i, k int32) int32 {
		e := [2]int32{min(i, k), max(i, k)}
		v, ok := made[e]
		if !ok {
			p, q := m.V[e[0]], m.V[e[1]]
			v = b.Vertex(along(p, sub(q, p), high[e[0]]/(high[e[0]]-high[e[1]])))
			made[e] = v
		}
		return v
	}
	next := map[int32]int32{} // along the open edges, as the closing face runs
	var starts []int32
	for _, t := range m.T {
		up := [3]bool{high[t[0]] > 0, high[t[1]] > 0, high[t[2]] > 0}
		if up[0] == up[1] && up[1] == up[2] {
			if keep && up[0] {
				b.Triangle(to[t[0]], to[t[1]], to[t[2]])
			}
			continue
		}
		for up[0] == up[1] || up[0] == up[2] { // the corner that is alone on its side first
			t, up = [3]int32{t[1], t[2], t[0]}, [3]bool{up[1], up[2], up[0]}
		}
		p, q := crossing(t[0], t[1]), crossing(t[0], t[2])
		if up[0] {
			next[q] = p
			starts = append(starts, q)
		} else {
			next[p] = q
			starts = append(starts, p)
		}
		if !keep {
			continue
		}
		if up[0] {
			b.Triangle(to[t[0]], p, q)
			continue
		}
		b.Triangle(p, to[t[1]], to[t[2]])
		b.Triangle(p, to[t[2]], q)
	}
	cuts, err := regions(b, next, starts, scale(normal, -1))
	return b, cuts, err
}

// regions gathers open edges to loops, and holes to the outlines that they lie in.
func regions(b *Builder, next map[int32]int32, starts []int32, facing Vec) ([]Cut, error) {
	f := planeFacing(facing)
	flatten := func(l Loop) (out [][2]float64) {
		for _, i := range l {
			out = append(out, f.flat(b.mesh.V[i]))
		}
		return out
	}
	var cuts []Cut
	var holes []Loop
	seen := map[int32]bool{}
	for _, s := range starts {
		if seen[s] {
			continue
		}
		var l Loop
		for v := s; !seen[v]; {
			seen[v] = true
			l = append(l, v)
			to, ok := next[v]
			if !ok || len(l) > len(starts) {
				return nil, errors.New("the edges of a cut do not close")
			}
			v = to
		}
		all := make([]int32, len(l))
		for i := range all {
			all[i] = int32(i)
		}
		flat := flatten(l)
		if loopArea(flat, all) > 0 {
			cuts = append(cuts, Cut{Outline: l, in: f, flat: [][][2]float64{flat}})
		} else {
			holes = append(holes, l)
		}
	}
	for _, h := range holes {
		p := flatten(h)
		at := slices.IndexFunc(cuts, func(c Cut) bool { return contains(c.flat[0], p[0]) })
		if at < 0 {
			return nil, errors.New("a hole of a cut lies in no outline")
		}
		cuts[at].Holes, cuts[at].flat = append(cuts[at].Holes, h), append(cuts[at].flat, p)
	}
	for i := range cuts {
		for _, l := range append([]Loop{cuts[i].Outline}, cuts[i].Holes...) {
			pts := make([]Vec, len(l))
			for k, v := range l {
				pts[k] = b.mesh.V[v]
			}
			cuts[i].Points = append(cuts[i].Points, pts)
		}
	}
	return cuts, nil
}

// contains tells whether a point lies inside a loop.
func contains(l [][2]float64, p [2]float64) bool {
	in := false
	a := l[len(l)-1]
	for _, c := range l {
		if (a[1] > p[1]) != (c[1] > p[1]) && p[0] < a[0]+(p[1]-a[1])/(c[1]-a[1])*(c[0]-a[0]) {
			in = !in
		}
		a = c
	}
	return in
}

// Bodies are the separate bodies of a mesh, in the order of their first triangles.
func Bodies(m *Mesh) []*Mesh {
	root := surfaces(m)
	var out []*Mesh
	at := map[int32]int{}
	to := make([]int32, len(m.V))
	for i := range to {
		to[i] = -1
	}
	for _, t := range m.T {
		r := root(t[0])
		k, ok := at[r]
		if !ok {
			k = len(out)
			at[r] = k
			out = append(out, &Mesh{})
		}
		for i, v := range t {
			if to[v] < 0 {
				to[v] = int32(len(out[k].V))
				out[k].V = append(out[k].V, m.V[v])
			}
			t[i] = to[v]
		}
		out[k].T = append(out[k].T, t)
	}
	return out
}
