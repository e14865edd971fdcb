package release

import (
	"math"

	"moldwright/core/form"
)

// Facing measures the surface of a round form under side parts. What does not
// depend on how many parts there are, the normals and the azimuths up to which
// a draft is kept, is worked out once for a span and serves every number.
type Facing struct {
	edges Edges
	area  float64    // of the span, turned fully, mm2
	r     [3]float64 // radius at its start, middle and end, mm
	n     [3]float64 // and the radial part of the normal
	even  bool       // the middle stands for the whole span
	// reach is the azimuth in radians from the middle of a part up to which the
	// draft is above an edge or, where the wall faces inward, below it
	reach   [3][mostEdges]float64
	at, sin float64 // the angle last asked for, and its sine
}

const mostEdges = 16

// NewFacing prepares to count below the edges.
func NewFacing(edges Edges) *Facing { return &Facing{edges: edges} }

// fine is a turn of the tangent in radians over which the middle stands for
// the whole span: the error in area is below a millionth of it.
const fine = 0.3 * math.Pi / 180

// Span turns to span i of the meridian, whose area in mm2 is given.
func (f *Facing) Span(m *form.Meridian, i int, area float64) {
	p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
	f.area = area
	f.r = [3]float64{p.R, (p.R + q.R) / 2, q.R}
	half := (sp.A1 - sp.A0) / 2
	f.even = 2*math.Abs(half) < fine
	f.n[0] = f.sine(sp.A0)
	if f.even {
		f.n[2] = f.sine(sp.A1)
		f.n[1] = (f.n[0] + f.n[2]) / 2 * (1 + half*half/2) // the sine in the middle, to 1e-11
	} else {
		f.n[1] = f.sine((sp.A0 + sp.A1) / 2)
		f.n[2] = f.sine(sp.A1)
		f.reaches(0)
		f.reaches(2)
	}
	f.reaches(1)
}

// Least is the least radial part that the normal has on the span, from which
// LeastSine tells the least draft.
func (f *Facing) Least() float64 {
	if f.n[2] < f.n[0] {
		return f.n[2]
	}
	return f.n[0]
}

// LeastSine is the sine of the least draft under so many side parts of surface whose
// normal has at least the given radial part: at the seams or, where the wall faces
// inward, in the middle of a part.
func LeastSine(radial float64, sides int) float64 {
	if n := radial * math.Cos(math.Pi/float64(sides)); n < radial {
		radial = n
	}
	if radial < -1 {
		return -1
	}
	return radial
}

// reaches works out those at the span's start, middle or end.
func (f *Facing) reaches(k int) {
	n, to := f.n[k], &f.reach[k]
	for e, least := range f.edges.sin {
		switch like := f.edges.like[e]; {
		case like < e:
			to[e&(mostEdges-1)] = to[like&(mostEdges-1)]
		case n > 0 && least <= 0 || n <= 0 && least > 0:
			to[e&(mostEdges-1)] = 4 // more than half a turn
		case n > 0 && least >= n || n <= 0 && least <= n:
			to[e&(mostEdges-1)] = 0
		default:
			// the arc cosine by the quotients of polynomials that FreeBSD's libm takes
			// (e_acos.c, Sun Microsystems 1993), here so that no call is made
			x := least / n
			s := x * x
			if x > 0.5 {
				s = (1 - x) / 2
			} else if x < -0.5 {
				s = (1 + x) / 2
			}
			r := s * (1.66666666666666657415e-01 + s*(-3.25565818622400915405e-01+s*(2.01212532134862925881e-01+s*(-4.00555345006794114027e-02+s*(7.91534994289814532176e-04+s*3.47933107596021167570e-05))))) /
				(1 + s*(-2.40339491173441421878e+00+s*(2.02094576023350569471e+00+s*(-6.88283971605453293030e-01+s*7.70381505559019352791e-02))))
			if x > 0.5 {
				x = math.Sqrt(s)
				x = 2 * (x + x*r)
			} else if x < -0.5 {
				x = math.Sqrt(s)
				x = math.Pi - 2*(x+x*r)
			} else {
				x = math.Pi/2 - (x + x*r)
			}
			to[e&(mostEdges-1)] = x
		}
	}
}

// sine keeps the last angle: a span often begins as the one before it ends.
func (f *Facing) sine(a float64) float64 {
	if a != f.at {
		f.at, f.sin = a, math.Sin(a)
	}
	return f.sin
}

// Sides adds the area of the span with less draft than each of the edges under so many
// side parts to from, which gives to. Exact in azimuth; along the span Simpson's rule,
// weighted by radius.
func (f *Facing) Sides(sides int, from, to []float64) {
	half := math.Pi / float64(sides)
	n := len(f.edges.sin)
	from, to = from[:n], to[:n]
	if f.even { // nearly always on a fine contour
		mid, area, outward := f.reach[1][:n], f.area, f.n[1] > 0
		for e := range to {
			x := mid[e] / half
			if x > 1 {
				x = 1
			}
			if outward {
				x = 1 - x
			}
			to[e] = from[e] + area*x
		}
		return
	}
	for e := range to {
		to[e] = from[e] + f.area*(f.r[0]*f.share(0, e, half)+4*f.r[1]*f.share(1, e, half)+f.r[2]*f.share(2, e, half))/(6*f.r[1])
	}
}

// share is that of a side part's azimuths at which the draft is below edge e, at the
// span's start, middle or end.
func (f *Facing) share(k, e int, half float64) float64 {
	x := f.reach[k][e] / half
	if x > 1 {
		x = 1
	}
	if f.n[k] > 0 {
		return 1 - x
	}
	return x
}
