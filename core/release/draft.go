package release

import (
	"math"
	"slices"

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
	if a = math.Abs(a); a > math.Pi {
		a = 2*math.Pi - a
	}
	d := 90 - a*180/math.Pi
	if pull == Up {
		return -d
	}
	return d
}

// Edges are drafts in degrees below which surface is counted.
type Edges struct {
	Deg  []float64
	sin  []float64
	like []int // the first edge of the same draft
}

// NewEdges prepares to count below each of the drafts, mostEdges at most.
func NewEdges(deg ...float64) Edges {
	e := Edges{Deg: deg, sin: make([]float64, len(deg)), like: make([]int, len(deg))}
	for k, d := range deg {
		e.sin[k] = math.Sin(d * math.Pi / 180)
		e.like[k] = slices.Index(deg, d)
	}
	return e
}

// SpanSurface measures span i, turned fully about the axis, under the pull;
// for Out with the given number of side parts. It adds to below, for each of
// the edges, the area in mm2 with less draft, and gives the whole area and the
// least draft in degrees. Exact in azimuth; along the span the tangent angle is
// taken to turn evenly.
func SpanSurface(m *form.Meridian, i int, pull Pull, sides int, edges Edges, below []float64) (area, least float64) {
	if pull == Out {
		f := NewFacing(edges)
		area = f.Span(m, i)
		return area, math.Asin(f.Sides(sides, below)) * 180 / math.Pi
	}
	p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
	area = form.BandArea(p, q)
	d0, d1 := Draft(sp.A0, pull), Draft(sp.A1, pull)
	least, most := d0, d1
	if d1 < d0 {
		least, most = d1, d0
	}
	for k, e := range edges.Deg {
		switch {
		case least >= e:
		case most < e:
			below[k] += area
		default:
			below[k] += area * axialShare(p.R, q.R, d0, d1, e)
		}
	}
	return area, least
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
