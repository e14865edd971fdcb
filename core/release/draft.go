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
	area = form.BandArea(m.Pts[i], m.Pts[i+1])
	if pull == Out {
		f := NewFacing(edges)
		f.Span(m, i, area)
		f.Sides(sides, below, below)
		return area, math.Asin(LeastSine(f.Least(), sides)) * 180 / math.Pi
	}
	return area, edges.Axial(m, i, pull, area, below, below)
}

// Axial measures span i, whose area in mm2 is given, under an axial pull: it adds what
// has less draft than each of the edges to from, which gives to, and tells the least
// draft in degrees.
func (e *Edges) Axial(m *form.Meridian, i int, pull Pull, area float64, from, to []float64) (least float64) {
	sp := m.Spans[i]
	d0, d1 := axial(sp.A0), axial(sp.A1)
	if pull == Up {
		d0, d1 = -d0, -d1
	}
	least, most := d0, d1
	if d1 < d0 {
		least, most = d1, d0
	}
	from, to = from[:len(e.Deg)], to[:len(e.Deg)]
	for k, edge := range e.Deg {
		v := from[k]
		if least >= edge {
		} else if most < edge {
			v += area
		} else {
			v += area * axialShare(m.Pts[i].R, m.Pts[i+1].R, d0, d1, edge)
		}
		to[k] = v
	}
	return least
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
