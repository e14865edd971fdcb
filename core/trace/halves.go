// The outline cut along its axis into two halves, each run from under the foot,
// out, up, to the top, and made into the one half that the profile comes from:
// the left, the right, or the mean of both. The mean is taken along the normals
// of the half that is shorter, since what disturbs a side (a handle, a shadow)
// makes it longer; where the two differ by more than their usual distance, the
// shorter one stands alone.

package trace

import (
	"math"
	"slices"
)

// half is one side in the axis's frame, x outward and y up, pixels. hidden
// marks points that a brush took away.
type half struct {
	p      []pt
	hidden []bool
}

// cut parts a closed outline (the pot on its left hand in the picture) into its
// two halves; ok is false where it does not cross the axis below and above.
func cut(outline []pt, hidden []bool, a axis) (left, right half, ok bool) {
	n := len(outline)
	q := make([]pt, n)
	for i, p := range outline {
		q[i] = a.to(p)
	}
	low, high := -1, -1
	var lowAt, highAt pt
	for i := range q {
		b, c := q[i], q[(i+1)%n]
		if (b.x < 0) == (c.x < 0) {
			continue
		}
		m := b.lerp(c, b.x/(b.x-c.x))
		if low < 0 || m.y < lowAt.y {
			low, lowAt = i, m
		}
		if high < 0 || m.y > highAt.y {
			high, highAt = i, m
		}
	}
	if low < 0 || low == high {
		return left, right, false
	}
	at := func(h *half, p pt, hid bool) {
		h.p = append(h.p, pt{math.Max(p.x, 0), p.y})
		h.hidden = append(h.hidden, hid)
	}
	side := func(start, end, step int, sign float64) half {
		var h half
		at(&h, lowAt, false)
		for i, count := start, 0; i != end && count < n; i, count = (i+step+n)%n, count+1 {
			at(&h, pt{sign * q[i].x, q[i].y}, hidden != nil && hidden[i])
		}
		at(&h, highAt, false)
		return h
	}
	// in the picture the outline runs down the left side, then up the right
	right = side((low+1)%n, (high+1)%n, 1, 1)
	left = side(low, high, -1, -1)
	return left, right, len(left.p) > 8 && len(right.p) > 8
}

func (h *half) length() float64 {
	l := 0.0
	for i := 1; i < len(h.p); i++ {
		l += h.p[i-1].dist(h.p[i])
	}
	return l
}

func (h *half) hiddenCount() int {
	n := 0
	for _, b := range h.hidden {
		if b {
			n++
		}
	}
	return n
}

// mean is the middle of both halves. alone is the share of the length that
// only one of them gave.
func mean(left, right half) (m half, alone float64) {
	base, other := right, left
	if base.hiddenCount() > other.hiddenCount() ||
		(base.hiddenCount() == other.hiddenCount() && base.length() > other.length()) {
		base, other = other, base
	}
	type meeting struct {
		e   float64
		q   pt
		hid bool
	}
	n := len(base.p)
	meet := make([]meeting, n)
	size := make([]float64, 0, n)
	for i, p := range base.p {
		// the nearest point of the other half: first every eighth, then about it
		best, k := math.Inf(1), 0
		for j := 0; j < len(other.p); j += 8 {
			dx, dy := other.p[j].x-p.x, other.p[j].y-p.y
			if v := dx*dx + dy*dy; v < best {
				best, k = v, j
			}
		}
		best = math.Inf(1)
		at, t := k, 0.0
		lo, hi := max(k-9, 0), min(k+9, len(other.p)-1)
		for j := lo; j < hi; j++ {
			a, b := other.p[j], other.p[j+1]
			d := b.sub(a)
			l := d.dot(d)
			u := 0.0
			if l > 0 {
				u = math.Max(0, math.Min(1, p.sub(a).dot(d)/l))
			}
			f := a.lerp(b, u).sub(p)
			if v := f.dot(f); v < best {
				best, at, t = v, j, u
			}
		}
		a, b := base.p[max(i-2, 0)], base.p[min(i+2, n-1)]
		d := b.sub(a)
		l := d.length()
		if l == 0 {
			l = 1
		}
		q := other.p[at].lerp(other.p[min(at+1, len(other.p)-1)], t)
		nrm := pt{d.y / l, -d.x / l}
		meet[i] = meeting{nrm.dot(q.sub(p)), q, other.hidden[at]}
		size = append(size, math.Sqrt(best))
	}
	sorted := slices.Clone(size)
	slices.Sort(sorted)
	limit := max(4*sorted[n/2], base.length()/150)
	m = half{p: make([]pt, n), hidden: make([]bool, n)}
	single := 0
	for i, p := range base.p {
		w := meet[i]
		switch {
		case base.hidden[i] && !w.hid:
			m.p[i] = w.q
			single++
		case base.hidden[i]:
			m.p[i], m.hidden[i] = p, true
		case w.hid || size[i] > limit:
			m.p[i] = p
			single++
		default:
			a, b := base.p[max(i-2, 0)], base.p[min(i+2, n-1)]
			d := b.sub(a)
			l := math.Max(d.length(), 1e-9)
			m.p[i] = pt{p.x + d.y/l*w.e/2, p.y - d.x/l*w.e/2}
		}
	}
	return m, float64(single) / float64(n)
}
