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

type box struct{ r0, r1, z0, z1 float64 }

var noBox = box{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}

func (b box) with(c box) box {
	return box{min(b.r0, c.r0), max(b.r1, c.r1), min(b.z0, c.z0), max(b.z1, c.z1)}
}

func (b box) meets(c box) bool {
	return b.r0 <= c.r1 && c.r0 <= b.r1 && b.z0 <= c.z1 && c.z0 <= b.z1
}

// NewTree is the tree of the chords between neighbours of pts.
func NewTree(pts []Point) *Tree {
	n := len(pts) - 1
	t := &Tree{pts: pts, size: 1}
	for t.size < n {
		t.size *= 2
	}
	t.box = make([]box, 2*t.size)
	for i := range t.size {
		b := noBox
		if i < n {
			p, q := pts[i], pts[i+1]
			b = box{min(p.R, q.R), max(p.R, q.R), min(p.Z, q.Z), max(p.Z, q.Z)}
		}
		t.box[t.size+i] = b
	}
	for i := t.size - 1; i > 0; i-- {
		t.box[i] = t.box[2*i].with(t.box[2*i+1])
	}
	return t
}

// Visit calls f with every chord whose box meets the given ranges, in order
// along the polyline.
func (t *Tree) Visit(r0, r1, z0, z1 float64, f func(chord int)) {
	t.visit(1, box{r0, r1, z0, z1}, f)
}

func (t *Tree) visit(k int, b box, f func(int)) {
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
// and within where it meets none nearer than within. The ray runs level (dr is
// 1 or -1, dz 0) or upright (dr 0, dz 1 or -1). Chords that lie along the ray
// do not count.
func (t *Tree) First(p Point, dr, dz int, within float64) (chord int, dist float64) {
	chord, dist = -1, within
	if t.gap(1, p, dr, dz) < dist {
		t.first(1, p, dr, dz, &chord, &dist)
	}
	return chord, dist
}

func (t *Tree) first(k int, p Point, dr, dz int, chord *int, dist *float64) {
	if k < t.size {
		a, b := 2*k, 2*k+1
		ga, gb := t.gap(a, p, dr, dz), t.gap(b, p, dr, dz)
		if gb < ga {
			a, b, ga, gb = b, a, gb, ga
		}
		if ga < *dist {
			t.first(a, p, dr, dz, chord, dist)
		}
		if gb < *dist {
			t.first(b, p, dr, dz, chord, dist)
		}
		return
	}
	a, b := t.pts[k-t.size], t.pts[k-t.size+1]
	var d float64
	if dz == 0 {
		if (a.Z >= p.Z) == (b.Z >= p.Z) {
			return
		}
		d = float64(dr) * (a.R + (p.Z-a.Z)/(b.Z-a.Z)*(b.R-a.R) - p.R)
	} else {
		if (a.R >= p.R) == (b.R >= p.R) {
			return
		}
		d = float64(dz) * (a.Z + (p.R-a.R)/(b.R-a.R)*(b.Z-a.Z) - p.Z)
	}
	if d > 0 && d < *dist {
		*chord, *dist = k-t.size, d
	}
}

// gap is how far along a ray from p a box begins, infinite where the ray
// misses it.
func (t *Tree) gap(k int, p Point, dr, dz int) float64 {
	b := &t.box[k]
	var d, end float64
	switch {
	case dz == 0 && (p.Z < b.z0 || p.Z > b.z1), dr == 0 && (p.R < b.r0 || p.R > b.r1):
		return math.Inf(1)
	case dr > 0:
		d, end = b.r0-p.R, b.r1-p.R
	case dr < 0:
		d, end = p.R-b.r1, p.R-b.r0
	case dz > 0:
		d, end = b.z0-p.Z, b.z1-p.Z
	default:
		d, end = p.Z-b.z1, p.Z-b.z0
	}
	if end < 0 {
		return math.Inf(1)
	}
	return max(0, d)
}

// crossing finds two chords of the meridian that meet otherwise than as
// neighbours in their common point.
func (m *Meridian) crossing() (i, j int, ok bool) {
	t := NewTree(m.Pts)
	return t.cross(1, 1)
}

// cross looks for a meeting between a chord under box a and one under box b,
// a at or before b.
func (t *Tree) cross(a, b int) (i, j int, ok bool) {
	if !t.box[a].meets(t.box[b]) {
		return 0, 0, false
	}
	if a >= t.size && b >= t.size {
		i, j = a-t.size, b-t.size
		if i == j {
			return 0, 0, false
		}
		p, q, r, s := t.pts[i], t.pts[i+1], t.pts[j], t.pts[j+1]
		if j == i+1 {
			return i, j, foldsBack(p, q, s)
		}
		return i, j, meet(p, q, r, s)
	}
	if a == b {
		if i, j, ok = t.cross(2*a, 2*a); ok {
			return
		}
		if i, j, ok = t.cross(2*a+1, 2*a+1); ok {
			return
		}
		return t.cross(2*a, 2*a+1)
	}
	// both lie on one level of the heap, so both split
	for _, x := range [2]int{2 * a, 2*a + 1} {
		for _, y := range [2]int{2 * b, 2*b + 1} {
			if i, j, ok = t.cross(x, y); ok {
				return
			}
		}
	}
	return 0, 0, false
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
