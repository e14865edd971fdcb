package form

import "math"

// Tree is a box tree over the chords of a polyline, for crossings and rays.
// Boxes of consecutive chords are joined pairwise, which suits a curve: near
// along it is near in space. Queries take O(log n) on pots, O(n) at worst.
type Tree struct {
	pts  []Point
	size int   // leaves, a power of two
	box  []box // heap order, box[1] the root
}

// box spans from its least r and z (0, 1) to its greatest, which are kept as the
// least of -r and -z (2, 3): so it looks alike from all four sides.
type box [4]float64

var noBox = box{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}

func (b *box) meets(c *box) bool {
	return b[0] <= -c[2] && c[0] <= -b[2] && b[1] <= -c[3] && c[1] <= -b[3]
}

// square is the square of the distance from a place to the box, mm2.
func (b *box) square(r, z float64) float64 {
	dr, dz := b[0]-r, b[1]-z
	if d := r + b[2]; d > dr {
		dr = d
	}
	if d := z + b[3]; d > dz {
		dz = d
	}
	if dr < 0 {
		dr = 0
	}
	if dz < 0 {
		dz = 0
	}
	return dr*dr + dz*dz
}

// join makes b the box around c and d.
func (b *box) join(c, d *box) {
	for k := range b {
		if b[k] = c[k]; d[k] < b[k] {
			b[k] = d[k]
		}
	}
}

// NewTree is the tree of the chords between neighbours of pts.
func NewTree(pts []Point) *Tree {
	n := len(pts) - 1
	t := &Tree{pts: pts, size: 1}
	for t.size < n {
		t.size *= 2
	}
	t.box = make([]box, 2*t.size)
	for i := range n {
		b := &t.box[t.size+i]
		b[0], b[2] = sorted(pts[i].R, pts[i+1].R)
		b[1], b[3] = sorted(pts[i].Z, pts[i+1].Z)
		b[2], b[3] = -b[2], -b[3]
	}
	for i := t.size + max(n, 0); i < len(t.box); i++ {
		t.box[i] = noBox
	}
	for i := t.size - 1; i > 0; i-- {
		t.box[i].join(&t.box[2*i], &t.box[2*i+1])
	}
	return t
}

func sorted(a, b float64) (lo, hi float64) {
	if b < a {
		return b, a
	}
	return a, b
}

// Visit calls f with every chord whose box meets the given ranges, in order
// along the polyline.
func (t *Tree) Visit(r0, r1, z0, z1 float64, f func(chord int)) {
	t.visit(1, &box{r0, z0, -r1, -z1}, f)
}

func (t *Tree) visit(k int, b *box, f func(int)) {
	if !t.box[k].meets(b) {
		return
	}
	if k >= t.size {
		f(k - t.size)
		return
	}
	t.visit(2*k, b, f)
	t.visit(2*k+1, b, f)
}

// First is the chord that a ray from p first meets, and how far off, mm; -1
// and infinity where it meets none. The ray runs level (dr is
// 1 or -1, dz 0) or upright (dr 0, dz 1 or -1). Chords that lie along the ray
// do not count.
func (t *Tree) First(p Point, dr, dz int) (chord int, dist float64) {
	ray := newRay(p, dr, dz)
	chord, dist = -1, missed
	var stack [64]struct { // what is yet to be looked into, the nearest on top
		k   int
		gap float64
	}
	top := 0
	for k, gap := 1, ray.gap(&t.box[1]); ; {
		if gap < dist {
			if k < t.size {
				a, b := 2*k, 2*k+1
				ga, gb := ray.gap(&t.box[a]), ray.gap(&t.box[b])
				if gb < ga {
					a, b, ga, gb = b, a, gb, ga
				}
				if gb < dist {
					stack[top].k, stack[top].gap = b, gb
					top++
				}
				k, gap = a, ga
				continue
			}
			if d := ray.meet(t.pts[k-t.size], t.pts[k-t.size+1]); d > 0 && d < dist {
				chord, dist = k-t.size, d
			}
		}
		if top == 0 {
			if chord < 0 {
				dist = math.Inf(1)
			}
			return chord, dist
		}
		top--
		k, gap = stack[top].k, stack[top].gap
	}
}

// Hits is any chord that a ray such as First's meets nearer than within mm, or -1:
// the chord last, where that is one (-1 for none), else the first that is found.
func (t *Tree) Hits(p Point, dr, dz int, within float64, last int) (chord int) {
	ray := newRay(p, dr, dz)
	if within > missed {
		within = missed
	}
	hit := func(c int) bool {
		d := ray.meet(t.pts[c], t.pts[c+1])
		return d > 0 && d < within
	}
	if last >= 0 && hit(last) {
		return last
	}
	var stack [64]int // what is yet to be looked into
	top := 0
	for k := 1; ; {
		if ray.gap(&t.box[k]) < within {
			if k < t.size {
				stack[top] = 2*k + 1
				top++
				k *= 2
				continue
			}
			if c := k - t.size; hit(c) {
				return c
			}
		}
		if top == 0 {
			return -1
		}
		top--
		k = stack[top]
	}
}

// ray runs from a place along r (0) or z (1), up or down it by way.
type ray struct {
	at    [2]float64
	along int
	way   int
	// near is the side of a box that it meets first, as boxes keep it, and side
	// one of the two that it passes between; start and beside are where it
	// begins, seen from there.
	near, side    int
	start, beside float64
}

func newRay(p Point, dr, dz int) ray {
	r := ray{at: [2]float64{p.R, p.Z}, way: dr, side: 1}
	if dz != 0 {
		r.along, r.way, r.side = 1, dz, 0
	}
	r.near, r.start, r.beside = r.along, r.at[r.along], r.at[r.side]
	if r.way < 0 {
		r.near, r.start = r.near+2, -r.start
	}
	return r
}

// missed is farther than anything.
const missed = math.MaxFloat64

// gap is how far along the ray a box begins, or missed.
func (r *ray) gap(b *box) float64 {
	if r.beside < b[r.side&3] || -r.beside < b[(r.side+2)&3] || -b[(r.near^2)&3] < r.start {
		return missed
	}
	if d := b[r.near&3] - r.start; d > 0 {
		return d
	}
	return 0
}

// meet is how far along the ray the chord a-b crosses it, negative where it
// does not.
func (r *ray) meet(a, b Point) float64 {
	if r.along == 0 {
		z := r.at[1]
		if (a.Z >= z) == (b.Z >= z) {
			return -1
		}
		return float64(r.way) * (a.R + (z-a.Z)/(b.Z-a.Z)*(b.R-a.R) - r.at[0])
	}
	x := r.at[0]
	if (a.R >= x) == (b.R >= x) {
		return -1
	}
	return float64(r.way) * (a.Z + (x-a.R)/(b.R-a.R)*(b.Z-a.Z) - r.at[1])
}

// crossing finds two chords of the meridian that meet otherwise than as
// neighbours in their common point.
func (m *Meridian) crossing() (i, j int, ok bool) {
	if apart(m.Pts) {
		return 0, 0, false
	}
	t := NewTree(m.Pts)
	ok = t.pairs(1, 1, func(a, b int) bool {
		i, j = a, b
		p, q, r, s := t.pts[i], t.pts[i+1], t.pts[j], t.pts[j+1]
		if j == i+1 {
			return foldsBack(p, q, s)
		}
		return meet(p, q, r, s)
	})
	return i, j, ok
}

// mostRuns is up to how many runs of a line are gone through pair by pair.
const mostRuns = 6

// apart tells of most lines that no two chords meet but neighbours in their common
// point: of those of few runs, each going only up, only down or only level outward or
// inward, whose chords keep clear of those of other runs as their boxes show.
func apart(pts []Point) bool {
	var runs [mostRuns]struct{ from, to int }
	n, way := 0, Point{}
	for i, q := range pts[1:] {
		p := pts[i]
		d := Point{sign(q.R - p.R), sign(q.Z - p.Z)}
		if d.Z != 0 {
			d.R = 0
		}
		if d == (Point{}) {
			return false
		}
		if d != way {
			if n == mostRuns {
				return false
			}
			runs[n].from, way = i, d
			n++
		}
		runs[n-1].to = i + 1
	}
	for a := range n {
		for b := a + 1; b < n; b++ {
			if !clear(pts, runs[a].from, runs[a].to, runs[b].from, runs[b].to) {
				return false
			}
		}
	}
	return true
}

// clear tells that no chord of the run from point a0 to a1 has a box in common with one
// of the later run from b0 to b1, or is its neighbour and does not lie upon it.
func clear(pts []Point, a0, a1, b0, b1 int) bool {
	risesA, risesB := pts[a1].Z >= pts[a0].Z, pts[b1].Z >= pts[b0].Z
	first := 0 // of b's chords from its lowest up, the one from which on they reach up to a's
	for k := range a1 - a0 {
		i := a0 + k
		if !risesA {
			i = a1 - 1 - k
		}
		lo, hi := sorted(pts[i].Z, pts[i+1].Z)
		inner, outer := sorted(pts[i].R, pts[i+1].R)
		for n := first; n < b1-b0; n++ {
			j := b0 + n
			if !risesB {
				j = b1 - 1 - n
			}
			low, high := sorted(pts[j].Z, pts[j+1].Z)
			if low > hi {
				break
			}
			if high < lo {
				first = n + 1
				continue
			}
			if j == i+1 {
				if foldsBack(pts[i], pts[j], pts[j+1]) {
					return false
				}
			} else if from, to := sorted(pts[j].R, pts[j+1].R); from <= outer && inner <= to {
				return false
			}
		}
	}
	return true
}

func sign(v float64) float64 {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// pairs calls f with every chord i under box a and every later one j under box b, a at or
// before b, whose boxes meet, until it says that this is enough, and tells whether it did.
func (t *Tree) pairs(a, b int, f func(i, j int) bool) bool {
	if a == b {
		return a < t.size && (t.pairs(2*a, 2*a, f) || t.pairs(2*a+1, 2*a+1, f) || t.pairs(2*a, 2*a+1, f))
	}
	if !t.box[a].meets(&t.box[b]) {
		return false
	}
	if a >= t.size {
		return f(a-t.size, b-t.size)
	}
	// both lie on one level of the heap, so both split
	return t.pairs(2*a, 2*b, f) || t.pairs(2*a, 2*b+1, f) || t.pairs(2*a+1, 2*b, f) || t.pairs(2*a+1, 2*b+1, f)
}

// foldsBack tells whether the chord q-s lies back upon the chord p-q.
func foldsBack(p, q, s Point) bool {
	u, v := p.Sub(q), s.Sub(q)
	cross := u.R*v.Z - u.Z*v.R
	dot := u.R*v.R + u.Z*v.Z
	return dot > 0 && math.Abs(cross) <= 1e-12*dot
}

// side is twice the signed area of the triangle a, b, c.
func side(a, b, c Point) float64 {
	return (b.R-a.R)*(c.Z-a.Z) - (b.Z-a.Z)*(c.R-a.R)
}

// meet tells whether the chords p-q and r-s have a point in common.
func meet(p, q, r, s Point) bool {
	a, b, c, d := side(p, q, r), side(p, q, s), side(r, s, p), side(r, s, q)
	if ((a > 0) != (b > 0) || a == 0 || b == 0) && ((c > 0) != (d > 0) || c == 0 || d == 0) {
		if a == 0 && b == 0 { // on one line
			return max(min(p.R, q.R), min(r.R, s.R)) <= min(max(p.R, q.R), max(r.R, s.R)) &&
				max(min(p.Z, q.Z), min(r.Z, s.Z)) <= min(max(p.Z, q.Z), max(r.Z, s.Z))
		}
		return true
	}
	return false
}
