package solid

// Ear clipping on a closed walk. Ears wait in a heap by the length of their
// cut, so that a finely stepped curve is coarsened evenly instead of fanned out
// from one corner. An ear in which another corner stands waits for that corner
// to go. A grid of about one corner a cell finds corners inside an ear.

import (
	"fmt"
	"math"
)

type clipper struct {
	p          [][2]float64
	ring       []int32
	prev, next []int32 // next is -1 once a corner is cut off
	stamp      []int32 // rises when a corner's neighbours change
	heap       earHeap
	waits      [][]ear // by the corner that stands in the way

	lo     [2]float64
	inv    [2]float64 // cells a mm
	nx, ny int
	start  []int32 // by cell, into member
	member []int32
}

// clipEars cuts the walk down to nothing, the shortest cut first.
func clipEars(p [][2]float64, ring []int32) ([][3]int32, error) {
	n := len(ring)
	c := &clipper{
		p: p, ring: ring, prev: make([]int32, n), next: make([]int32, n),
		stamp: make([]int32, n), waits: make([][]ear, n), heap: make(earHeap, 0, 2*n),
	}
	for i := range n {
		c.prev[i], c.next[i] = int32((i+n-1)%n), int32((i+1)%n)
	}
	c.layGrid()
	for i := range n {
		c.offer(int32(i))
	}
	tris := make([][3]int32, 0, n-2)
	for left := n; left > 2; left-- {
		i, ok := c.nextEar()
		if !ok {
			return nil, fmt.Errorf("the outline crosses itself: %d corners are left that no triangle fits", left)
		}
		a, b := c.prev[i], c.next[i]
		tris = append(tris, [3]int32{ring[a], ring[i], ring[b]})
		c.next[a], c.prev[b] = b, a
		c.next[i] = -1
		c.stamp[i]++
		c.offer(a)
		c.offer(b)
		for _, e := range c.waits[i] {
			if e.stamp == c.stamp[e.i] {
				c.heap.push(e)
			}
		}
		c.waits[i] = nil
	}
	return tris, nil
}

// offer puts a corner up as an ear, if it is convex.
func (c *clipper) offer(i int32) {
	c.stamp[i]++
	a, b, d := &c.p[c.ring[c.prev[i]]], &c.p[c.ring[i]], &c.p[c.ring[c.next[i]]]
	if turns(a, b, d) > 0 {
		dx, dy := d[0]-a[0], d[1]-a[1]
		c.heap.push(ear{float64(dx*dx) + float64(dy*dy), i, c.stamp[i]})
	}
}

// nextEar takes the ear of the shortest cut that nothing stands in.
func (c *clipper) nextEar() (int32, bool) {
	for len(c.heap) > 0 {
		e := c.heap.pop()
		if e.stamp != c.stamp[e.i] {
			continue
		}
		j := c.blocker(e.i)
		if j < 0 {
			return e.i, true
		}
		c.waits[j] = append(c.waits[j], e)
	}
	return 0, false
}

// blocker is a corner within or on the ear at i, or -1. Corners at the very
// place of the ear's own (the far ends of bridges) do not count.
func (c *clipper) blocker(i int32) int32 {
	a, b, d := &c.p[c.ring[c.prev[i]]], &c.p[c.ring[i]], &c.p[c.ring[c.next[i]]]
	left, right := span3(a[0], b[0], d[0])
	low, high := span3(a[1], b[1], d[1])
	x0, y0 := c.cell(left, low)
	x1, y1 := c.cell(right, high)
	for y := y0; y <= y1; y++ {
		for _, j := range c.member[c.start[y*c.nx+x0]:c.start[y*c.nx+x1+1]] {
			if c.next[j] < 0 {
				continue
			}
			q := &c.p[c.ring[j]]
			if q[0] < left || q[0] > right || q[1] < low || q[1] > high || *q == *a || *q == *b || *q == *d {
				continue
			}
			if turns(a, b, q) >= 0 && turns(b, d, q) >= 0 && turns(d, a, q) >= 0 {
				return j
			}
		}
	}
	return -1
}

// layGrid sorts the corners into cells.
func (c *clipper) layGrid() {
	hi := c.p[c.ring[0]]
	c.lo = hi
	for _, i := range c.ring {
		for k, x := range c.p[i] {
			if x < c.lo[k] {
				c.lo[k] = x
			}
			if x > hi[k] {
				hi[k] = x
			}
		}
	}
	n := float64(len(c.ring))
	w, h := hi[0]-c.lo[0], hi[1]-c.lo[1]
	c.nx = int(min(max(math.Sqrt(n*w/h), 1), n))
	c.ny = int(min(max(n/float64(c.nx), 1), n))
	c.inv = [2]float64{float64(c.nx) / w, float64(c.ny) / h}
	c.start = make([]int32, c.nx*c.ny+1)
	at := make([]int32, len(c.ring))
	for i, r := range c.ring {
		x, y := c.cell(c.p[r][0], c.p[r][1])
		at[i] = int32(y*c.nx + x)
		c.start[at[i]+1]++
	}
	for k := 1; k < len(c.start); k++ {
		c.start[k] += c.start[k-1]
	}
	c.member = make([]int32, len(c.ring))
	fill := append([]int32(nil), c.start...)
	for i := range c.ring {
		c.member[fill[at[i]]] = int32(i)
		fill[at[i]]++
	}
}

func (c *clipper) cell(px, py float64) (x, y int) {
	x = int((px - c.lo[0]) * c.inv[0])
	y = int((py - c.lo[1]) * c.inv[1])
	return min(max(x, 0), c.nx-1), min(max(y, 0), c.ny-1)
}

// ear is a convex corner as it stood when it was offered.
type ear struct {
	cut   float64 // squared length of the cut
	i     int32
	stamp int32
}

func (e ear) before(f ear) bool { return e.cut < f.cut || e.cut == f.cut && e.i < f.i }

// earHeap has the shortest cut first: a binary heap, by hand, since that of the
// library boxes every ear and calls for every comparison.
type earHeap []ear

func (h *earHeap) push(e ear) {
	*h = append(*h, e)
	l := *h
	k := len(l) - 1
	for k > 0 {
		up := (k - 1) / 2
		if !e.before(l[up]) {
			break
		}
		l[k] = l[up]
		k = up
	}
	l[k] = e
}

func (h *earHeap) pop() ear {
	l := *h
	top, n := l[0], len(l)-1
	e := l[n]
	*h = l[:n]
	k := 0
	for {
		down := 2*k + 1
		if down >= n {
			break
		}
		if down+1 < n && l[down+1].before(l[down]) {
			down++
		}
		if !l[down].before(e) {
			break
		}
		l[k] = l[down]
		k = down
	}
	l[k] = e
	return top
}

// span3 are the least and the greatest of three numbers.
func span3(a, b, c float64) (lo, hi float64) {
	lo, hi = span2(a, b)
	if c < lo {
		lo = c
	} else if c > hi {
		hi = c
	}
	return lo, hi
}
