// The axis of a turned pot: the line in which the outline is its own mirror
// image, by least squares of the distances between each side and the mirrored
// other one, with Cauchy weights so that a handle, a hand or a shadow on one
// side counts little. Mirroring the whole outline, rim and foot included, finds
// the lean of a round bowl too, where midpoints of rows say nothing.

package trace

import (
	"math"
	"slices"
)

// axis is a line in the picture: o at the height of the lowest outline point, d
// the unit vector up along it.
type axis struct{ o, d pt }

// to is p in the axis's frame: u to the right of it, v up along it, pixels.
func (a axis) to(p pt) pt {
	q := p.sub(a.o)
	return pt{q.dot(pt{-a.d.y, a.d.x}), q.dot(a.d)}
}

// from is the reverse of to.
func (a axis) from(q pt) pt {
	return a.o.add(pt{-a.d.y, a.d.x}.mul(q.x)).add(a.d.mul(q.y))
}

// tiltDeg is the clockwise lean of the axis from the picture's upright.
func (a axis) tiltDeg() float64 { return math.Atan2(a.d.x, -a.d.y) * 180 / math.Pi }

// throughPoints is the axis through two points of the picture, either first.
func throughPoints(v [4]float64) axis {
	p, q := pt{v[0], v[1]}, pt{v[2], v[3]}
	if p.y < q.y {
		p, q = q, p
	}
	d := q.sub(p)
	return axis{p, d.mul(1 / d.length())}
}

// findAxis finds the axis of a closed outline. share is the part of the
// outline at which one side and the mirrored other differ by more than a few
// times their usual distance, residual their rms distance in pixels elsewhere.
func findAxis(outline []pt) (a axis, residual, share float64) {
	total := 0.0
	for i := range outline {
		total += outline[i].dist(outline[(i+1)%len(outline)])
	}
	p := resample(outline, total/360, true)
	best := math.Inf(1)
	for _, lean := range [3]float64{0, -0.12, 0.12} {
		if b, cost := mirrorFit(p, startAxis(p, lean)); cost < best*0.98 {
			best, a = cost, b
		}
	}
	a = a.grounded(outline)
	e, _ := mirrorErrors(p, a)
	size := make([]float64, len(e))
	for i, v := range e {
		size[i] = math.Abs(v)
	}
	slices.Sort(size)
	limit := max(4*size[len(size)/2], total/300)
	sum, within := 0.0, 0
	for _, v := range size {
		if v <= limit {
			sum += v * v
			within++
		}
	}
	return a, math.Sqrt(sum / float64(within)), 1 - float64(within)/float64(len(e))
}

// grounded moves o along the axis to the lowest outline point.
func (a axis) grounded(outline []pt) axis {
	low := math.Inf(1)
	for _, p := range outline {
		low = min(low, a.to(p).y)
	}
	a.o = a.o.add(a.d.mul(low))
	return a
}

// startAxis leans by the given angle and halves the outline's rows at their
// median middle.
func startAxis(p []pt, lean float64) axis {
	s, c := math.Sincos(lean)
	a := axis{d: pt{s, -c}}
	q := make([]pt, len(p))
	low, high := math.Inf(1), math.Inf(-1)
	for i := range p {
		q[i] = a.to(p[i])
		low, high = min(low, q[i].y), max(high, q[i].y)
	}
	const rows = 60
	var left, right [rows]float64
	for k := range rows {
		left[k], right[k] = math.Inf(1), math.Inf(-1)
	}
	for _, v := range q {
		k := min(int((v.y-low)/(high-low+1e-9)*rows), rows-1)
		left[k], right[k] = min(left[k], v.x), max(right[k], v.x)
	}
	var mids []float64
	for k := range rows {
		if right[k] > left[k] {
			mids = append(mids, (left[k]+right[k])/2)
		}
	}
	if len(mids) == 0 {
		return a
	}
	slices.Sort(mids)
	a.o = a.from(pt{mids[len(mids)/2], (low + high) / 2})
	return a
}

// mirrorErrors is, for each point, how far its mirror image lies outside the
// outline along the outline's normal there; at is the index of the outline
// point met.
func mirrorErrors(p []pt, a axis) (e []float64, at []int) {
	n := len(p)
	q := make([]pt, n)
	for i := range p {
		q[i] = a.to(p[i])
	}
	e, at = make([]float64, n), make([]int, n)
	for i := range q {
		m := pt{-q[i].x, q[i].y}
		best, k := math.Inf(1), 0
		for j := range q {
			dx, dy := q[j].x-m.x, q[j].y-m.y
			if d := dx*dx + dy*dy; d < best {
				best, k = d, j
			}
		}
		at[i] = k
		e[i] = normalAt(q, k).dot(m.sub(q[k]))
	}
	return e, at
}

// normalAt is the unit normal of a closed polygon at vertex k.
func normalAt(q []pt, k int) pt {
	n := len(q)
	t := q[(k+1)%n].sub(q[(k+n-1)%n])
	l := t.length()
	if l == 0 {
		return pt{1, 0}
	}
	return pt{t.y / l, -t.x / l}
}

// mirrorFit improves the axis by Gauss-Newton steps; cost is the robust sum.
func mirrorFit(p []pt, a axis) (axis, float64) {
	cost := math.Inf(1)
	for range 12 {
		e, at := mirrorErrors(p, a)
		size := make([]float64, len(e))
		for i, v := range e {
			size[i] = math.Abs(v)
		}
		slices.Sort(size)
		s := max(1.5*size[len(size)/2], 0.3)
		q := make([]pt, len(p))
		for i := range p {
			q[i] = a.to(p[i])
		}
		var a11, a12, a22, b1, b2 float64
		cost = 0
		for i, v := range e {
			w := 1 / (1 + v*v/(s*s))
			cost += math.Log1p(v * v)
			k := at[i]
			n := normalAt(q, k)
			// moving the axis by one to the right, leaning it by one radian
			j1 := 2 * n.x
			j2 := n.x*(q[i].y+q[k].y) + n.y*(q[i].x-q[k].x)
			a11 += w * j1 * j1
			a12 += w * j1 * j2
			a22 += w * j2 * j2
			b1 -= w * j1 * v
			b2 -= w * j2 * v
		}
		a22 += 1e-9 * (a22 + 1)
		det := a11*a22 - a12*a12
		if det <= 1e-12*a11*a22 || a11 == 0 {
			break
		}
		shift := (b1*a22 - b2*a12) / det
		lean := math.Max(-0.1, math.Min(0.1, (a11*b2-a12*b1)/det))
		a.o = a.from(pt{shift, 0})
		d := a.from(pt{lean, 1}).sub(a.o)
		a.d = d.mul(1 / d.length())
		if math.Abs(shift) < 1e-4 && math.Abs(lean) < 1e-6 {
			break
		}
	}
	return a, cost
}
