package release

import (
	"math"

	"moldwright/core/form"
)

// Facing measures the surface of a round form under side parts. What does not
// depend on how many parts there are, the normals, is worked out once; the azimuths
// up to which a draft is kept serve every number.
type Facing struct {
	m    *form.Meridian
	band []float64
	// mid is the radial part of the normal in the middle of each span, Least the least
	// on it. On coarse spans the middle does not stand for the whole.
	mid, Least []float64
	coarse     []bool
	per        []float64 // one over half a sector, by the number of parts
}

// fine is a turn of the tangent in radians over which the middle stands for
// the whole span: the error in area is below a millionth of it, unless less draft
// begins within it.
const fine = 0.3 * math.Pi / 180

// NewFacing looks at spans from to to-1 of the meridian, whose areas in mm2, turned
// fully, are given, under each number of side parts.
func NewFacing(m *form.Meridian, from, to int, band []float64, sides []int) *Facing {
	room := make([]float64, 2*to)
	f := &Facing{m, band, room[:to:to], room[to:], make([]bool, to), make([]float64, len(sides))}
	for j, n := range sides {
		f.per[j] = float64(n) / math.Pi
	}
	last, sine := math.Inf(1), 0.0
	for i := from; i < to; i++ {
		sp := m.Spans[i]
		if sp.A0 != last {
			sine = math.Sin(sp.A0)
		}
		n := sine
		if last = sp.A1; last != sp.A0 {
			sine = math.Sin(last)
		}
		half := (sp.A1 - sp.A0) / 2
		if f.coarse[i] = 2*math.Abs(half) >= fine; f.coarse[i] {
			f.mid[i] = math.Sin((sp.A0 + sp.A1) / 2)
		} else {
			f.mid[i] = (n + sine) / 2 * (1 + half*half/2) // the sine in the middle, to 1e-11
		}
		if sine < n {
			n = sine
		}
		f.Least[i] = n
	}
	return f
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

// Below adds to below, for each number of side parts a row of the edges, the area on
// spans from to to-1 with less draft. Exact in azimuth; along a span that turns much,
// Simpson's rule, weighted by radius, or many steps where less draft comes in or goes
// within it, which it does as a square root.
func (f *Facing) Below(from, to int, edges *Edges, below []float64) {
	for i := from; i < to; i++ {
		low, mid := f.Least[i], f.mid[i]
		kink := low < mid && edges.between(low, 2*mid-low)
		if !kink && !f.coarse[i] { // nearly always on a fine contour
			f.below(mid, f.band[i], edges.sin, below)
			continue
		}
		sp, r0, r1 := f.m.Spans[i], f.m.Pts[i].R, f.m.Pts[i+1].R
		if kink {
			const steps = 32
			unit := f.band[i] / (steps * (r0 + r1) / 2)
			for k := range steps {
				t := (float64(k) + 0.5) / steps
				f.below(math.Sin(sp.A0+t*(sp.A1-sp.A0)), (r0+t*(r1-r0))*unit, edges.sin, below)
			}
			continue
		}
		unit := f.band[i] / (3 * (r0 + r1))
		f.below(math.Sin(sp.A0), r0*unit, edges.sin, below)
		f.below(mid, 2*(r0+r1)*unit, edges.sin, below)
		f.below(math.Sin(sp.A1), r1*unit, edges.sin, below)
	}
}

// between tells whether the sine of an edge lies between two values.
func (e *Edges) between(low, high float64) bool {
	for _, s := range e.sin {
		if low < s && s < high {
			return true
		}
	}
	return false
}

// below is Below for an area whose normal has the radial part n.
func (f *Facing) below(n, area float64, edges, below []float64) {
	outward, inverse := n > 0, 1/n
	for k, least := range edges {
		if least <= 0 && (outward || least <= n) { // none of it, at any azimuth
			continue
		}
		if least > 0 && (!outward || least >= n) { // all of it
			for j := k; j < len(below); j += len(edges) {
				below[j] += area
			}
			continue
		}
		// The azimuth from the middle of a part up to which the draft is above the
		// edge or, where the wall faces inward, below it: the arc cosine, by the
		// quotients of polynomials that FreeBSD's libm takes (e_acos.c, Sun
		// Microsystems 1993), here so that no call is made.
		x := least * inverse
		s := x * x
		if x > 0.5 {
			s = (1 - x) / 2
		}
		r := s * (1.66666666666666657415e-01 + s*(-3.25565818622400915405e-01+s*(2.01212532134862925881e-01+s*(-4.00555345006794114027e-02+s*(7.91534994289814532176e-04+s*3.47933107596021167570e-05))))) /
			(1 + s*(-2.40339491173441421878e+00+s*(2.02094576023350569471e+00+s*(-6.88283971605453293030e-01+s*7.70381505559019352791e-02))))
		if x > 0.5 {
			x = math.Sqrt(s)
			x = 2 * (x + x*r)
		} else {
			x = math.Pi/2 - (x + x*r)
		}
		for j, per := range f.per {
			share := x * per
			if share > 1 {
				share = 1
			}
			if outward {
				share = 1 - share
			}
			below[j*len(edges)+k] += area * share
		}
	}
}
