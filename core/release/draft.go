package release

import (
	"math"

	"moldwright/core/form"
)

// Draft is asin(n.d) in degrees at tangent angle a for an axial pull, and for
// Out in the middle of the side part: 90 is face-on, 0 rubs, negative is an
// undercut.
func Draft(a float64, pull Pull) float64 {
	if pull == Out { // asin(sin a), without either
		for a > math.Pi/2 {
			a = math.Pi - a
		}
		for a < -math.Pi/2 {
			a = -math.Pi - a
		}
		return a * 180 / math.Pi
	}
	d := axial(a)
	if pull == Up {
		return -d
	}
	return d
}

// axial is the draft for the pull down.
func axial(a float64) float64 {
	if a < 0 {
		a = -a
	}
	if a > math.Pi {
		a = 2*math.Pi - a
	}
	return 90 - a*180/math.Pi
}

// Edges are drafts in degrees below which surface is counted.
type Edges struct {
	Deg []float64
	sin []float64
}

// NewEdges prepares to count below each of the drafts.
func NewEdges(deg ...float64) Edges {
	e := Edges{Deg: deg, sin: make([]float64, len(deg))}
	for k, d := range deg {
		e.sin[k] = math.Sin(d * math.Pi / 180)
	}
	return e
}

// SpanSurface measures span i, turned fully about the axis, under the pull;
// for Out with the given number of side parts. It adds to below, for each of
// the edges, the area in mm2 with less draft, and gives the whole area and the
// least draft in degrees. Exact in azimuth; along the span the tangent angle is
// taken to turn evenly.
func SpanSurface(m *form.Meridian, i int, pull Pull, sides int, edges Edges, below []float64) (area, least float64) {
	area = form.BandArea(m.Pts[i], m.Pts[i+1])
	band := make([]float64, i+1)
	band[i] = area
	if pull == Out {
		f := NewFacing(m, i, i+1, band, []int{sides})
		f.Below(i, i+1, &edges, below)
		return area, math.Asin(LeastSine(f.Least[i], sides)) * 180 / math.Pi
	}
	return area, edges.Axial(m, i, i+1, pull, band, below)
}

// Axial measures spans from to to-1, whose areas in mm2 are given, under an axial pull:
// it adds to below what has less draft than each of the edges and tells the least
// draft in degrees.
func (e *Edges) Axial(m *form.Meridian, from, to int, pull Pull, band, below []float64) (least float64) {
	least = 90
	for i := from; i < to; i++ {
		d0, d1 := drafts(&m.Spans[i], pull)
		low, high := d0, d1
		if d1 < d0 {
			low, high = d1, d0
		}
		if low < least {
			least = low
		}
		area := band[i]
		for k, edge := range e.Deg {
			if low >= edge {
				continue
			}
			if high < edge {
				below[k] += area
			} else {
				below[k] += area * axialShare(m.Pts[i].R, m.Pts[i+1].R, d0, d1, edge)
			}
		}
	}
	return least
}

// Rubbing measures the spans up to the last of least, whose areas in mm2 are given, under
// an axial pull: it tells the least draft of each in degrees, and before each point the
// area with less draft than the first of the edges, which is all that is counted.
func (e *Edges) Rubbing(m *form.Meridian, pull Pull, band, least, before []float64) {
	edge, sum := e.Deg[0], 0.0
	for i := range least {
		d0, d1 := drafts(&m.Spans[i], pull)
		low, high := d0, d1
		if d1 < d0 {
			low, high = d1, d0
		}
		if least[i] = low; low > 90 {
			least[i] = 90
		}
		if high < edge {
			sum += band[i]
		} else if low < edge {
			sum += band[i] * axialShare(m.Pts[i].R, m.Pts[i+1].R, d0, d1, edge)
		}
		before[i+1] = sum
	}
}

// drafts are those at the ends of a span under an axial pull, degrees.
func drafts(sp *form.Span, pull Pull) (d0, d1 float64) {
	d0, d1 = axial(sp.A0), axial(sp.A1)
	if pull == Up {
		return -d0, -d1
	}
	return d0, d1
}

// axialShare is the share by area of a span whose draft runs evenly from d0 to
// d1, and whose radius from r0 to r1, that lies below edge, which is between them.
func axialShare(r0, r1, d0, d1, edge float64) float64 {
	t := (edge - d0) / (d1 - d0)
	first := t * (2*r0 + t*(r1-r0)) / (r0 + r1) // area share up to t
	if d0 < edge {
		return first
	}
	return 1 - first
}
