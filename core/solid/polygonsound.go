package solid

// Whether loops bound a polygon at all. A cover of triangles cannot tell: an
// outline that winds twice over a place can be covered twice without a flaw
// that its triangles show.

import (
	"fmt"
	"math"
	"sort"
)

// soundLoops refuses what no triangulation can be made of.
func soundLoops(p [][2]float64, loops [][]int32) error {
	if len(loops) == 0 {
		return fmt.Errorf("a polygon needs an outline")
	}
	for k, l := range loops {
		if len(l) < 3 {
			return fmt.Errorf("loop %d has %d corners; it needs three", k, len(l))
		}
		for _, i := range l {
			if i < 0 || int(i) >= len(p) {
				return fmt.Errorf("loop %d names point %d of %d", k, i, len(p))
			}
			q := p[i]
			if s := q[0] + q[1]; math.IsNaN(s) || math.IsInf(s, 0) {
				return fmt.Errorf("point %d of loop %d is not finite", i, k)
			}
		}
		if a := loopArea(p, l); (a > 0) != (k == 0) || a == 0 {
			return fmt.Errorf("loop %d has area %g; the outline runs counterclockwise and holes clockwise", k, a)
		}
	}
	return uncrossed(p, loops)
}

// edge is edge i of loop l of a polygon, with its stretch of the sweep's axis.
type edge struct {
	a, b   [2]float64
	l, i   int
	lo, hi float64
}

// uncrossed refuses loops that cross or touch. Edges are compared in the order
// in which they begin along the longer side of the polygon, each with those that
// begin before it ends.
func uncrossed(p [][2]float64, loops [][]int32) error {
	lo, hi := p[loops[0][0]], p[loops[0][0]]
	for _, i := range loops[0] {
		for k, x := range p[i] {
			lo[k], hi[k] = min(lo[k], x), max(hi[k], x)
		}
	}
	axis := 0
	if hi[1]-lo[1] > hi[0]-lo[0] {
		axis = 1
	}
	var edges []edge
	for l, loop := range loops {
		for i := range loop {
			a, b := p[loop[i]], p[loop[(i+1)%len(loop)]]
			edges = append(edges, edge{a, b, l, i, min(a[axis], b[axis]), max(a[axis], b[axis])})
		}
	}
	sort.SliceStable(edges, func(i, j int) bool { return edges[i].lo < edges[j].lo })
	for x := range edges {
		for y := x + 1; y < len(edges) && edges[y].lo <= edges[x].hi; y++ {
			if e, f := &edges[x], &edges[y]; edgesTouch(e, f, len(loops[e.l])) {
				return fmt.Errorf("the outline or a hole crosses or touches itself or another near (%g, %g)", e.a[0], e.a[1])
			}
		}
	}
	return nil
}

// edgesTouch says whether two edges meet, but for the corner that neighbours on
// a loop of n edges share.
func edgesTouch(e, f *edge, n int) bool {
	if e.l == f.l && (f.i+1)%n == e.i {
		e, f = f, e
	}
	if e.l == f.l && (e.i+1)%n == f.i {
		back := float64((e.b[0]-e.a[0])*(f.b[0]-f.a[0])) + float64((e.b[1]-e.a[1])*(f.b[1]-f.a[1]))
		return e.a == e.b || f.a == f.b || back < 0 && orient2(e.a, e.b, f.b) == 0
	}
	return segmentsMeet(e.a, e.b, f.a, f.b)
}
