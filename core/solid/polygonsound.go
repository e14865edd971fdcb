package solid

// Whether loops bound a polygon at all. A cover of triangles cannot tell: an
// outline that winds twice over a place can be covered twice without a flaw
// that its triangles show.

import (
	"fmt"
	"math"
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

// edge is edge i of loop l of a polygon, with its box: its stretch of the sweep's
// axis and of the other one.
type edge struct {
	a, b       *[2]float64
	l, i       int32
	lo, hi     float64
	side, over float64
}

// uncrossed refuses loops that cross or touch. Edges are compared in the order
// in which they begin along the longer side of the polygon, each with those that
// begin before it ends.
func uncrossed(p [][2]float64, loops [][]int32) error {
	n := 0
	lo, hi := p[loops[0][0]], p[loops[0][0]]
	for _, i := range loops[0] {
		for k, x := range p[i] {
			if x < lo[k] {
				lo[k] = x
			}
			if x > hi[k] {
				hi[k] = x
			}
		}
	}
	for _, l := range loops {
		n += len(l)
	}
	axis := 0
	if hi[1]-lo[1] > hi[0]-lo[0] {
		axis = 1
	}
	edges := make([]edge, n)
	begin := make([]float64, n)
	k := 0
	for l, loop := range loops {
		a := &p[loop[0]]
		for i := range loop {
			j := i + 1
			if j == len(loop) {
				j = 0
			}
			b := &p[loop[j]]
			e := &edges[k]
			e.a, e.b, e.l, e.i = a, b, int32(l), int32(i)
			e.lo, e.hi = span2(a[axis], b[axis])
			e.side, e.over = span2(a[1-axis], b[1-axis])
			begin[k] = e.lo
			a = b
			k++
		}
	}
	order := Rising(begin)
	for x, i := range order {
		e := &edges[i]
		for _, j := range order[x+1:] {
			f := &edges[j]
			if f.lo > e.hi {
				break
			}
			if f.side <= e.over && e.side <= f.over && edgesTouch(e, f, int32(len(loops[e.l]))) {
				return fmt.Errorf("the outline or a hole crosses or touches itself or another near (%g, %g)", e.a[0], e.a[1])
			}
		}
	}
	return nil
}

// edgesTouch says whether two edges whose boxes meet do so too, but for the corner
// that neighbours on a loop of n edges share.
func edgesTouch(e, f *edge, n int32) bool {
	if e.l == f.l && (f.i+1 == e.i || f.i+1 == n && e.i == 0) {
		e, f = f, e
	}
	if e.l == f.l && (e.i+1 == f.i || e.i+1 == n && f.i == 0) {
		back := float64((e.b[0]-e.a[0])*(f.b[0]-f.a[0])) + float64((e.b[1]-e.a[1])*(f.b[1]-f.a[1]))
		return *e.a == *e.b || *f.a == *f.b || back < 0 && turns(e.a, e.b, f.b) == 0
	}
	return segmentsMeet(*e.a, *e.b, *f.a, *f.b)
}

// Rising are the places of the keys in rising order, equal ones as they stand.
// Loops come as arcs and walls, which rise and fall in long runs, so runs are
// merged, neighbour with neighbour.
func Rising(key []float64) []int32 {
	n := len(key)
	room := make([]int32, 2*n)
	list, next := room[:n:n], room[n:]
	for i := range list {
		list[i] = int32(i)
	}
	ends := make([]int, 0, 64) // of the runs
	for i := 0; i < n; {
		from := i
		for i++; i < n && key[i] >= key[i-1]; i++ {
		}
		if i == from+1 { // it does not rise: turn it round as far as it falls
			for ; i < n && key[i] < key[i-1]; i++ {
			}
			for a, b := from, i-1; a < b; a, b = a+1, b-1 {
				list[a], list[b] = list[b], list[a]
			}
		}
		ends = append(ends, i)
	}
	for len(ends) > 1 {
		from, kept := 0, ends[:0]
		for k := 0; k < len(ends); k += 2 {
			mid := ends[k]
			to := mid
			if k+1 < len(ends) {
				to = ends[k+1]
			}
			i, j := from, mid
			for at := from; at < to; at++ {
				if j == to || i < mid && key[list[j]] >= key[list[i]] {
					next[at] = list[i]
					i++
				} else {
					next[at] = list[j]
					j++
				}
			}
			kept, from = append(kept, to), to
		}
		ends, list, next = kept, next, list
	}
	return list
}

// span2 are the lesser and the greater of two numbers. The language's own min and
// max of floats are calls in wasm.
func span2(a, b float64) (lo, hi float64) {
	if b < a {
		return b, a
	}
	return a, b
}
