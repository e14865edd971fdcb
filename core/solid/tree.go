package solid

// A tree of boxes over the triangles of a mesh: triangles are put in Morton
// order of their middles, four to a leaf, and boxes are joined in pairs up to
// the root (a linear bounding volume hierarchy: C. Lauterbach et al., "Fast BVH
// Construction on GPUs", Computer Graphics Forum 28(2), 2009). It is built in
// linear time and its order depends on the mesh alone.

import "math"

const leafSize = 4

type box struct{ lo, hi Vec }

var noBox = box{
	lo: Vec{math.Inf(1), math.Inf(1), math.Inf(1)},
	hi: Vec{math.Inf(-1), math.Inf(-1), math.Inf(-1)},
}

func (b box) meets(c box) bool {
	return b.lo[0] <= c.hi[0] && c.lo[0] <= b.hi[0] &&
		b.lo[1] <= c.hi[1] && c.lo[1] <= b.hi[1] &&
		b.lo[2] <= c.hi[2] && c.lo[2] <= b.hi[2]
}

func (b box) with(c box) box {
	for k := range 3 {
		b.lo[k] = min(b.lo[k], c.lo[k])
		b.hi[k] = max(b.hi[k], c.hi[k])
	}
	return b
}

// grown is the box moved by d and widened by w.
func (b box) grown(d Vec, w float64) box {
	for k := range 3 {
		b.lo[k] += d[k] - w
		b.hi[k] += d[k] + w
	}
	return b
}

type tree struct {
	order []int32 // triangles, leaf after leaf
	each  []box   // their boxes, in that order
	boxes []box   // node i has children 2i and 2i+1; the root is 1
	first int     // the first leaf
}

func triangleBox(v []Vec, t [3]int32) box {
	a, b, c := v[t[0]], v[t[1]], v[t[2]]
	var out box
	for k := range 3 {
		out.lo[k] = min(a[k], b[k], c[k])
		out.hi[k] = max(a[k], b[k], c[k])
	}
	return out
}

func growTree(v []Vec, ts [][3]int32) *tree {
	all := noBox
	for _, p := range v {
		all = all.with(box{p, p})
	}
	var inv Vec
	for k := range 3 {
		if d := all.hi[k] - all.lo[k]; d > 0 {
			inv[k] = 1023 / d
		}
	}
	keys := make([]uint64, len(ts))
	for i, t := range ts {
		b := triangleBox(v, t)
		code := uint64(0)
		for k := range 3 {
			x := uint64(max(((b.lo[k]+b.hi[k])/2-all.lo[k])*inv[k], 0))
			code |= spread(x) << k
		}
		keys[i] = code<<32 | uint64(i)
	}
	sortKeys(keys)
	t := &tree{order: make([]int32, len(ts)), each: make([]box, len(ts)), first: 1}
	for i, k := range keys {
		t.order[i] = int32(uint32(k))
	}
	for t.first*leafSize < len(ts) {
		t.first *= 2
	}
	t.boxes = make([]box, 2*t.first)
	for i := range t.boxes {
		t.boxes[i] = noBox
	}
	for i, tri := range t.order {
		n := t.first + i/leafSize
		t.each[i] = triangleBox(v, ts[tri])
		t.boxes[n] = t.boxes[n].with(t.each[i])
	}
	for i := t.first - 1; i > 0; i-- {
		t.boxes[i] = t.boxes[2*i].with(t.boxes[2*i+1])
	}
	return t
}

// spread sets ten bits two apart.
func spread(x uint64) uint64 {
	x &= 1023
	x = (x | x<<16) & 0x30000FF
	x = (x | x<<8) & 0x300F00F
	x = (x | x<<4) & 0x30C30C3
	return (x | x<<2) & 0x9249249
}

// sortKeys sorts by the upper halves, which have 30 bits; equal ones keep their
// order.
func sortKeys(keys []uint64) {
	other := make([]uint64, len(keys))
	for shift := 32; shift < 62; shift += 10 {
		var count [1025]int
		for _, k := range keys {
			count[(k>>shift)&1023+1]++
		}
		for i := 1; i < len(count); i++ {
			count[i] += count[i-1]
		}
		for _, k := range keys {
			d := (k >> shift) & 1023
			other[count[d]] = k
			count[d]++
		}
		keys, other = other, keys
	}
	copy(other, keys) // three passes: the result is in the spare slice
}

// leaf is the places in order of a leaf's triangles: from i up to j.
func (t *tree) leaf(n int) (i, j int) {
	i = (n - t.first) * leafSize
	return min(i, len(t.order)), min(i+leafSize, len(t.order))
}

// within calls f for triangles whose boxes meet the box, until f is false.
func (t *tree) within(q box, f func(tri int32) bool) bool {
	var stack [64]int
	stack[0] = 1
	for top := 1; top > 0; {
		top--
		n := stack[top]
		if !t.boxes[n].meets(q) {
			continue
		}
		if n < t.first {
			stack[top], stack[top+1] = 2*n+1, 2*n
			top += 2
			continue
		}
		for i, j := t.leaf(n); i < j; i++ {
			if t.each[i].meets(q) && !f(t.order[i]) {
				return false
			}
		}
	}
	return true
}

// pairs calls f for pairs of triangles of two trees whose boxes meet, t being
// moved by d and widened by w, until f is false.
func (t *tree) pairs(o *tree, d Vec, w float64, f func(a, b int32) bool) bool {
	var visit func(i, j int) bool
	visit = func(i, j int) bool {
		if !t.boxes[i].grown(d, w).meets(o.boxes[j]) {
			return true
		}
		switch {
		case i >= t.first && j >= o.first:
			for a, end := t.leaf(i); a < end; a++ {
				moved := t.each[a].grown(d, w)
				for b, end := o.leaf(j); b < end; b++ {
					if moved.meets(o.each[b]) && !f(t.order[a], o.order[b]) {
						return false
					}
				}
			}
			return true
		case j >= o.first || i < t.first && t.first*j >= o.first*i:
			return visit(2*i, j) && visit(2*i+1, j)
		default:
			return visit(i, 2*j) && visit(i, 2*j+1)
		}
	}
	return visit(1, 1)
}

// selfPairs calls f once for every two triangles whose boxes meet, until f is
// false.
func (t *tree) selfPairs(f func(a, b int32) bool) bool {
	var both func(i, j int) bool
	both = func(i, j int) bool {
		if !t.boxes[i].meets(t.boxes[j]) {
			return true
		}
		if i < t.first {
			return both(2*i, 2*j) && both(2*i, 2*j+1) && both(2*i+1, 2*j) && both(2*i+1, 2*j+1)
		}
		for a, end := t.leaf(i); a < end; a++ {
			if !t.each[a].meets(t.boxes[j]) {
				continue
			}
			for b, end := t.leaf(j); b < end; b++ {
				if t.each[a].meets(t.each[b]) && !f(t.order[a], t.order[b]) {
					return false
				}
			}
		}
		return true
	}
	var within func(i int) bool
	within = func(i int) bool {
		if i < t.first {
			return within(2*i) && within(2*i+1) && both(2*i, 2*i+1)
		}
		for a, end := t.leaf(i); a < end; a++ {
			for b := a + 1; b < end; b++ {
				if t.each[a].meets(t.each[b]) && !f(t.order[a], t.order[b]) {
					return false
				}
			}
		}
		return true
	}
	return within(1)
}
