package release

import (
	"math"

	"moldwright/core/form"
)

// Facing measures the surface of a round form under side parts. What does not
// depend on how many parts there are, the normals and the azimuths up to which
// a draft is kept, is worked out once for a span and serves every number.
type Facing struct {
	edges   Edges
	area    float64    // of the span, turned fully, mm2
	r       [3]float64 // radius at its start, middle and end, mm
	n       [3]float64 // and the radial part of the normal
	even    bool       // the middle stands for the whole span
	arc     [3][mostEdges]float64
	known   [3]uint32          // which of arc, bit by bit
	at, sin float64            // the angle last asked for, and its sine
	cos     [mostSides]float64 // of half a part's sector by the number of parts, 0 where it is not known
}

// mostSides is more than any mold has.
const mostSides = 16

const mostEdges = 16

// NewFacing prepares to count below the edges.
func NewFacing(edges Edges) *Facing { return &Facing{edges: edges} }

// fine is a turn of the tangent in radians over which the middle stands for
// the whole span: the error in area is below a millionth of it.
const fine = 0.3 * math.Pi / 180

// Span turns to span i of the meridian and gives its area in mm2, turned fully.
func (f *Facing) Span(m *form.Meridian, i int) float64 {
	p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
	f.area = form.BandArea(p, q)
	f.r = [3]float64{p.R, (p.R + q.R) / 2, q.R}
	f.n = [3]float64{f.sine(sp.A0), f.sine((sp.A0 + sp.A1) / 2), f.sine(sp.A1)}
	f.even = math.Abs(sp.A1-sp.A0) < fine
	f.known = [3]uint32{}
	return f.area
}

// sine keeps the last angle: a span often begins as the one before it ends.
func (f *Facing) sine(a float64) float64 {
	if a != f.at {
		f.at, f.sin = a, math.Sin(a)
	}
	return f.sin
}

// Sides adds to below, for each of the edges, the area of the span with less
// draft under so many side parts, and gives the sine of its least draft: at the
// seams or, where the wall faces inward, in the middle of a part. Exact in
// azimuth; along the span Simpson's rule, weighted by radius.
func (f *Facing) Sides(sides int, below []float64) (leastSine float64) {
	half := math.Pi / float64(sides)
	cos := f.cos[sides]
	if cos == 0 {
		cos = math.Cos(half)
		f.cos[sides] = cos
	}
	n0, n1, n2 := f.n[0], f.n[1], f.n[2]
	for e, least := range f.edges.sin {
		s1, ok := settled(n1, least, cos)
		if !ok {
			s1 = f.share(1, e, half)
		}
		if f.even {
			below[e] += f.area * s1
			continue
		}
		s0, ok := settled(n0, least, cos)
		if !ok {
			s0 = f.share(0, e, half)
		}
		s2, ok := settled(n2, least, cos)
		if !ok {
			s2 = f.share(2, e, half)
		}
		below[e] += f.area * (f.r[0]*s0 + 4*f.r[1]*s1 + f.r[2]*s2) / (6 * f.r[1])
	}
	if n2 < n0 {
		n0 = n2
	}
	if n := n0 * cos; n < n0 {
		n0 = n
	}
	if n0 < -1 {
		return -1
	}
	return n0
}

// settled is the share of a side part's azimuths, |az| <= half, at which
// n cos(az) < least, where it is none or all of them: the sines of draft and
// edge, n the radial normal, cos that of half. Else ok is false.
func settled(n, least, cos float64) (share float64, ok bool) {
	if n > 0 {
		if n*cos >= least {
			return 0, true
		}
		return 1, n <= least
	}
	if least > 0 {
		return 1, true
	}
	return 0, n >= least
}

// share is that share where it is neither, at the span's start, middle or end.
func (f *Facing) share(k, e int, half float64) float64 {
	if f.n[k] > 0 {
		return 1 - f.upTo(k, e)/half
	}
	return min(1, f.upTo(k, e)/half)
}

// upTo is the azimuth in radians up to which the draft reaches edge e.
func (f *Facing) upTo(k, e int) float64 {
	e = f.edges.like[e]
	if f.known[k]>>e&1 == 0 {
		f.known[k] |= 1 << e
		f.arc[k][e] = math.Acos(f.edges.sin[e] / f.n[k])
	}
	return f.arc[k][e]
}
