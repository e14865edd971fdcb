package solid

// What makes a mesh a solid, checked on what is exported: coordinates are
// rounded to float32 first, as binary STL holds them, because corners that
// differ in float64 may fall together there and tear the solid for every
// program that joins vertices by place. Linear in the size of the mesh.

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// Report is what Check found. The first group describes the solid, the second
// counts flaws; a sound solid has none.
type Report struct {
	Vertices, Triangles, Edges int
	// Shells is the number of closed surfaces, Voids how many of them face
	// inward and so bound a hollow within the solid.
	Shells, Voids int
	// Genus is the number of handles of all shells together, from Euler's
	// formula; it has meaning only where there are no flaws.
	Genus     int
	VolumeMM3 float64
	AreaMM2   float64

	NotFinite       int // vertices that are NaN or infinite
	BadIndices      int // triangles that name no vertex
	UnusedVertices  int
	OpenEdges       int // directed edges without exactly one opposite
	PinchedVertices int // vertices whose triangles form more than one fan
	FlatTriangles   int // without area after rounding
	TwinVertices    int // at the place of another after rounding
}

// Sound says whether the mesh is closed, oriented, manifold at edges and
// vertices, without flat triangles or twin vertices, and of positive volume.
func (r Report) Sound() bool { return r.Err() == nil }

// Err names every flaw, or is nil.
func (r Report) Err() error {
	var flaws []string
	for _, f := range []struct {
		n    int
		what string
	}{
		{r.NotFinite, "vertices that are not finite"},
		{r.BadIndices, "triangles that name no vertex"},
		{r.UnusedVertices, "vertices that no triangle uses"},
		{r.OpenEdges, "open edges"},
		{r.PinchedVertices, "pinched vertices"},
		{r.FlatTriangles, "triangles without area"},
		{r.TwinVertices, "vertices at the place of another"},
	} {
		if f.n > 0 {
			flaws = append(flaws, fmt.Sprintf("%d %s", f.n, f.what))
		}
	}
	if r.Triangles == 0 {
		flaws = append(flaws, "no triangles")
	} else if !(r.VolumeMM3 > 0) {
		flaws = append(flaws, fmt.Sprintf("a volume of %g mm3", r.VolumeMM3))
	}
	if flaws == nil {
		return nil
	}
	return errors.New("the solid has " + strings.Join(flaws, ", "))
}

// Check examines the mesh. It does not look for triangles that pass through
// one another: see SelfIntersects.
func Check(m *Mesh) Report {
	r := Report{Vertices: len(m.V), Triangles: len(m.T)}
	for _, v := range m.V {
		if s := v[0] + v[1] + v[2]; math.IsNaN(s) || math.IsInf(s, 0) {
			r.NotFinite++
		}
	}
	n := int32(len(m.V))
	for _, t := range m.T {
		if min(t[0], t[1], t[2]) < 0 || max(t[0], t[1], t[2]) >= n {
			r.BadIndices++
		}
	}
	if r.BadIndices > 0 || r.NotFinite > 0 {
		return r
	}
	at := rounded(m)
	r.TwinVertices = twins(at)
	for _, t := range m.T {
		a := at[t[0]]
		if cross(sub(at[t[1]], a), sub(at[t[2]], a)) == (Vec{}) {
			r.FlatTriangles++
		}
	}
	r.VolumeMM3, r.AreaMM2 = m.Volume(), m.Area()
	fans(m, &r)
	shells(m, &r)
	r.Genus = r.Shells - (r.Vertices-r.UnusedVertices-r.Edges+r.Triangles)/2
	return r
}

// rounded is the vertices as a file holds them.
func rounded(m *Mesh) []Vec {
	at := make([]Vec, len(m.V))
	for i, v := range m.V {
		for k, x := range v {
			at[i][k] = float64(float32(x)) + 0 // one zero only
		}
	}
	return at
}

// twins counts vertices at the place of an earlier one, by a table of places.
func twins(at []Vec) int {
	size := 16
	for size < 2*len(at) {
		size *= 2
	}
	table := make([]int32, size) // vertex + 1
	n := 0
next:
	for i, v := range at {
		h := uint64(0)
		for _, x := range v {
			h = (h ^ math.Float64bits(x)) * 0x9E3779B97F4A7C15
			h ^= h >> 29
		}
		for k := int(h) & (size - 1); ; k = (k + 1) & (size - 1) {
			if table[k] == 0 {
				table[k] = int32(i) + 1
				continue next
			}
			if at[table[k]-1] == v {
				n++
				continue next
			}
		}
	}
	return n
}

// corners lists, vertex by vertex, the triangles' corners there: corner 3t+k is
// corner k of triangle t. start[v] to start[v+1] are those of vertex v.
func corners(points int, tris [][3]int32) (start, corner []int32) {
	start = make([]int32, points+2)
	for _, t := range tris {
		start[t[0]+2]++
		start[t[1]+2]++
		start[t[2]+2]++
	}
	for i := 2; i < len(start); i++ {
		start[i] += start[i-1]
	}
	corner = make([]int32, 3*len(tris))
	for t, v := range tris {
		for k := range 3 {
			corner[start[v[k]+1]] = int32(3*t + k)
			start[v[k]+1]++
		}
	}
	return start[:points+1], corner
}

// fans goes round every vertex: each edge out of it must be unique and have an
// edge that comes in along it, and stepping from triangle to triangle must pass
// through all of them before it returns.
func fans(m *Mesh, r *Report) {
	start, corner := corners(len(m.V), m.T)
	out := make([]int32, len(m.V)) // by neighbour: place + 1 of the edge out to it
	half := 0
	for v := range m.V {
		fan := corner[start[v]:start[v+1]]
		if len(fan) == 0 {
			r.UnusedVertices++
			continue
		}
		open := 0
		for i, c := range fan {
			w := m.T[c/3][(c%3+1)%3]
			if out[w] != 0 {
				open++
			}
			out[w] = int32(i) + 1
			half++
		}
		for _, c := range fan {
			if out[m.T[c/3][(c%3+2)%3]] == 0 {
				open++
			}
		}
		r.OpenEdges += open
		if open == 0 {
			i, steps := int32(0), 0
			for {
				c := fan[i]
				i = out[m.T[c/3][(c%3+2)%3]] - 1
				if steps++; i == 0 || steps > len(fan) {
					break
				}
			}
			if steps != len(fan) {
				r.PinchedVertices++
			}
		}
		for _, c := range fan {
			out[m.T[c/3][(c%3+1)%3]] = 0
		}
	}
	r.Edges = half / 2
}

// surfaces tells, of each vertex, the first vertex of the connected surface that
// it lies on.
func surfaces(m *Mesh) func(int32) int32 {
	root := make([]int32, len(m.V))
	for i := range root {
		root[i] = int32(i)
	}
	find := func(i int32) int32 {
		for root[i] != i {
			root[i] = root[root[i]]
			i = root[i]
		}
		return i
	}
	for _, t := range m.T {
		a := find(t[0])
		for _, v := range t[1:] {
			if b := find(v); a < b {
				root[b] = a
			} else {
				root[a] = b
				a = b
			}
		}
	}
	return find
}

// shells counts connected surfaces and those that face inward.
func shells(m *Mesh, r *Report) {
	find := surfaces(m)
	volume := make([]float64, len(m.V))
	for _, t := range m.T {
		s := find(t[0])
		o := m.V[s]
		volume[s] += dot(sub(m.V[t[0]], o), cross(sub(m.V[t[1]], o), sub(m.V[t[2]], o)))
	}
	seen := make([]bool, len(m.V))
	for _, t := range m.T {
		if s := find(t[0]); !seen[s] {
			seen[s] = true
			r.Shells++
			if volume[s] < 0 {
				r.Voids++
			}
		}
	}
}
