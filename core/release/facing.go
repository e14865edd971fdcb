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
	return f.area
}

// reaches works out those at the span's start, middle or end.
func (f *Facing) reaches(k int) {
	n, to := f.n[k], &f.reach[k]
	for e, least := range f.edges.sin {
		switch like := f.edges.like[e]; {
		case like < e:
			to[e] = to[like]
		case n > 0 && least <= 0 || n <= 0 && least > 0:
			to[e] = math.Inf(1)
		case n > 0 && least >= n || n <= 0 && least <= n:
			to[e] = 0
		default:
			to[e] = acos(least / n)
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
	if f.even { // nearly always on a fine contour
		mid, outward := &f.reach[1], f.n[1] > 0
		for e := range below {
			x := mid[e] / half
			if x > 1 {
				x = 1
			}
			if outward {
				x = 1 - x
			}
			below[e] += f.area * x
		}
	} else {
		for e := range below {
			below[e] += f.area * (f.r[0]*f.share(0, e, half) + 4*f.r[1]*f.share(1, e, half) + f.r[2]*f.share(2, e, half)) / (6 * f.r[1])
		}
	}
	n0, n2 := f.n[0], f.n[2]
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

// acos is math.Acos. For the small sines that most edges have to a wall that stands
// steep, the series of the arc sine is quicker; it ends within 2e-14 radians.
func acos(x float64) float64 {
	if x > 0.2 || x < -0.2 {
		return math.Acos(x)
	}
	s := x * x
	return math.Pi/2 - x*(1+s*(1./6+s*(3./40+s*(15./336+s*(105./3456+s*(945./42240+s*(10395./599040+s*135135./9676800)))))))
}
