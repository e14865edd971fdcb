package release

import (
	"math"

	"moldwright/core/form"
)

// Draft is asin(n.d) in degrees at tangent angle a for an axial pull, and for
// Out in the middle of the side part: 90 is face-on, 0 rubs, negative is an
// undercut.
func Draft(a float64, pull Pull) float64 {
	if pull == Out {
		return draftOut(a, 0)
	}
	if a = math.Abs(a); a > math.Pi {
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
	return math.Asin(max(-1, min(1, math.Sin(a)*math.Cos(az)))) * 180 / math.Pi
}

// Edges are drafts in degrees, rising, below which surface is counted.
type Edges struct {
	Deg []float64
	sin []float64
}

// NewEdges prepares to count below each of the drafts.
func NewEdges(deg ...float64) Edges {
	e := Edges{Deg: deg}
	for _, d := range deg {
		e.sin = append(e.sin, math.Sin(d*math.Pi/180))
	}
	return e
}

// SpanSurface measures span i, turned fully about the axis, under the pull;
// for Out with the given number of side parts. It adds to below, for each of
// the edges, the area in mm2 with less draft, and gives the whole area and the
// least draft in degrees. Exact in azimuth; along the span the tangent angle is
// taken to turn evenly.
func SpanSurface(m *form.Meridian, i int, pull Pull, sides int, edges Edges, below []float64) (area, least float64) {
	p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
	area = form.BandArea(p, q)
	if pull != Out {
		d0, d1 := Draft(sp.A0, pull), Draft(sp.A1, pull)
		for k, e := range edges.Deg {
			below[k] += area * axialShare(p.R, q.R, d0, d1, e)
		}
		return area, min(d0, d1)
	}
	half := math.Pi / float64(sides)
	cos := math.Cos(half)
	if turn := math.Abs(sp.A1 - sp.A0); turn < fine {
		n := math.Sin((sp.A0 + sp.A1) / 2)
		for k, e := range edges.sin {
			below[k] += area * outShare(n, e, half, cos)
		}
	} else { // Simpson's rule, weighted by radius
		r := (p.R + q.R) / 2
		n0, n1, n2 := math.Sin(sp.A0), math.Sin((sp.A0+sp.A1)/2), math.Sin(sp.A1)
		for k, e := range edges.sin {
			below[k] += area * (p.R*outShare(n0, e, half, cos) + 4*r*outShare(n1, e, half, cos) + q.R*outShare(n2, e, half, cos)) / (6 * r)
		}
	}
	return area, min(leastOut(sp.A0, half), leastOut(sp.A1, half))
}

// leastOut is the least draft in degrees over a side part's azimuths: at its
// seams or, where the wall faces inward, in its middle.
func leastOut(a, half float64) float64 {
	return min(draftOut(a, 0), draftOut(a, half))
}

// fine is a turn of the tangent in radians over which the middle stands for
// the whole span: the error in area is below a millionth of it.
const fine = 0.3 * math.Pi / 180

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

// outShare is the share of a side part's azimuths, |az| <= half, at which
// n cos(az) < least: the sines of draft and edge, n the radial normal.
func outShare(n, least, half, cosHalf float64) float64 {
	switch {
	case n > 0 && n*cosHalf >= least:
		return 0
	case n > 0 && n <= least || n <= 0 && least > 0:
		return 1
	case n > 0:
		return 1 - math.Acos(least/n)/half
	case n < least:
		return min(1, math.Acos(least/n)/half)
	}
	return 0
}
