package release

import (
	"math"

	"moldwright/core/form"
)

// Draft is asin(n.d) in degrees at tangent angle a for an axial pull, and for
// Out in the middle of the side part: 90 is face-on, 0 rubs, negative is an
// undercut.
func Draft(a float64, pull Pull) float64 {
	switch a = math.Abs(a); {
	case pull == Out:
		return draftOut(a, 0)
	case a > math.Pi:
		a = 2*math.Pi - a
	}
	d := 90 - a*180/math.Pi
	if pull == Up {
		return -d
	}
	return d
}

// draftOut is the draft in degrees under a horizontal pull at azimuth az from
// the middle of the side part: sin(draft) = n_r cos(az).
func draftOut(a, az float64) float64 {
	return math.Asin(math.Max(-1, math.Min(1, math.Sin(a)*math.Cos(az)))) * 180 / math.Pi
}

// Surface tells how the pot's surface along a stretch of contour stands to a
// pull: Below is the area in mm2 with a draft less than each edge in degrees.
type Surface struct {
	Area     float64
	Below    []float64
	MinDraft float64
}

// Add joins two stretches.
func (s *Surface) Add(o Surface) {
	s.Area += o.Area
	for i, b := range o.Below {
		s.Below[i] += b
	}
	s.MinDraft = math.Min(s.MinDraft, o.MinDraft)
}

// SpanSurface measures one span turned fully about the axis under the pull;
// for Out with the given number of side parts. Exact in azimuth; along the
// span the tangent angle is taken to turn evenly, which errs by less than a
// thousandth of the span's turn.
func SpanSurface(m *form.Meridian, i int, pull Pull, sides int, edges []float64) Surface {
	p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
	area := form.BandArea(p, q)
	s := Surface{Area: area, Below: make([]float64, len(edges))}
	if pull == Out {
		half := math.Pi / float64(sides)
		s.MinDraft = math.Min(draftOut(sp.A0, half), draftOut(sp.A1, half))
		for k, e := range edges {
			s.Below[k] = area * outShare(p, q, sp, half, e)
		}
		return s
	}
	d0, d1 := Draft(sp.A0, pull), Draft(sp.A1, pull)
	s.MinDraft = math.Min(d0, d1)
	for k, e := range edges {
		s.Below[k] = area * axialShare(p.R, q.R, d0, d1, e)
	}
	return s
}

// axialShare is the share by area of a span whose draft runs evenly from d0 to
// d1, and whose radius from r0 to r1, that lies below edge.
func axialShare(r0, r1, d0, d1, edge float64) float64 {
	if d0 >= edge && d1 >= edge {
		return 0
	}
	if d0 < edge && d1 < edge {
		return 1
	}
	t := (edge - d0) / (d1 - d0)
	first := t * (2*r0 + t*(r1-r0)) / (r0 + r1) // area share up to t
	if d0 < edge {
		return first
	}
	return 1 - first
}

// outShare is the share by area of a span, over a side part's whole sector of
// half-angle half, that lies below edge: Simpson's rule along the span,
// weighted by radius, exact in azimuth.
func outShare(p, q form.Point, sp form.Span, half, edge float64) float64 {
	least := math.Sin(edge * math.Pi / 180)
	f := func(a float64) float64 {
		n := math.Sin(a)
		if n*math.Cos(half) >= least && n > 0 {
			return 0
		}
		if n <= least && (n > 0 || least > 0) {
			return 1
		}
		if n <= 0 { // only edges at or below 0 come here
			if n < least {
				return math.Min(1, math.Acos(math.Min(1, least/n))/half)
			}
			return 0
		}
		return 1 - math.Acos(math.Max(-1, least/n))/half
	}
	if sp.A0 == sp.A1 {
		return f(sp.A0)
	}
	mid := (p.R + q.R) / 2
	return (p.R*f(sp.A0) + 4*mid*f((sp.A0+sp.A1)/2) + q.R*f(sp.A1)) / (6 * mid)
}
