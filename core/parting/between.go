package parting

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/release"
)

// A lower and an upper part can share a stretch that rubs, such as an upright
// band about a jar's belly, so that neither has more of it than may rub. Where
// they have to meet is then no point of the contour: between points nothing
// else that is judged gets better: along a straight span depth grows for one of
// the two only, which is best left out, and so is what rubs under one only. So one more point is put where it serves, and the form surveyed anew.

// CutBetween puts a point into the meridian where a lower and an upper part can
// meet and be clear, if that lies within a span and they are not clear with a
// seam at any of its points. It tells where the contour then ends, and whether
// the meridian was changed.
func CutBetween(m *form.Meridian, end int, s *release.Survey, rules Rules) (int, bool) {
	from, to := bothFree(s, end)
	if from.after(to) {
		return end, false
	}
	edges := release.NewEdges(rules.LeastDraft)
	caps := [2]*table{}
	for _, pull := range [2]release.Pull{release.Down, release.Up} {
		t := newTable(end, 1)
		below := []float64{0}
		for i := range end {
			area, least := release.SpanSurface(m, i, pull, 0, edges, below)
			t.add(i, area, least, below)
		}
		caps[pull] = t
	}
	down, up := caps[release.Down], caps[release.Up]
	share := rules.RubShare / 100
	spare := func(t *table, a, b int) float64 { // area that may yet rub
		area, rub := t.sum(a, b)
		return share*area - rub
	}
	best, at := 0.0, math.NaN()
	for k := from.span; k <= to.span; k++ {
		low, high := spare(down, 0, k), spare(up, k, end)
		if low >= 0 && high >= 0 && k > 0 && k < end && !from.after(spot{k, 0}) && s.OpenOutward(k) {
			return end, false
		}
		if k == end {
			break
		}
		// of the span's area a the lower part can have x, from least to most, such
		// that x (its share that rubs - share) is no more than what it can spare,
		// and alike a - x of the upper
		a, rd := down.sum(k, k+1)
		_, ru := up.sum(k, k+1)
		p, q := m.Pts[k], m.Pts[k+1]
		least, most := 0.0, a
		if k == from.span {
			least = a * bandUpTo(p.R, q.R, from.t)
		}
		if k == to.span {
			most = a * bandUpTo(p.R, q.R, to.t)
		}
		switch d := rd/a - share; {
		case d > 0:
			most = min(most, low/d)
		case low < 0 && d < 0:
			least = max(least, low/d)
		case low < 0:
			continue
		}
		switch d, high := ru/a-share, spare(up, k+1, end); {
		case d > 0:
			least = max(least, a-high/d)
		case high < 0 && d < 0:
			most = min(most, a-high/d)
		case high < 0:
			continue
		}
		if most-least <= best {
			continue
		}
		z := p.Lerp(q, alongBand(p.R, q.R, (least+most)/(2*a))).Z
		if span, _ := m.Outermost(z); span == k {
			best, at = most-least, z
		}
	}
	n := len(m.Pts)
	if best > 0 {
		m.Cut([]float64{at})
	}
	return end + len(m.Pts) - n, len(m.Pts) > n
}

// spot is a place on the contour: a share t of the way along a span.
type spot struct {
	span int
	t    float64
}

func (a spot) after(b spot) bool { return a.span > b.span || a.span == b.span && a.t > b.t }

// bothFree are the places, from and to, between which a seam leaves a lower and
// an upper part free of catches that count; from lies after to where there are
// none.
func bothFree(s *release.Survey, end int) (from, to spot) {
	to = spot{end, 0}
	down, up := s.Samples[release.Down], s.Samples[release.Up]
	for i := range down {
		if c := &down[i]; c.Span >= end {
			break
		} else if c.Depth > CatchDepth {
			to = spot{c.Span, 0}
			if i > 0 && down[i-1].Span == c.Span {
				to.t = counts(&down[i-1], c)
			}
			break
		}
	}
	for i := len(up) - 1; i >= 0; i-- {
		if c := &up[i]; c.Span < end && c.Depth > CatchDepth {
			from = spot{c.Span, 1}
			if i+1 < len(up) && up[i+1].Span == c.Span {
				from.t = counts(&up[i+1], c)
			}
			break
		}
	}
	return from, to
}

// counts is where, from a sample that does not count as a catch to one that
// does, depth comes to count.
func counts(a, b *release.Sample) float64 {
	return a.T + (CatchDepth-a.Depth)/(b.Depth-a.Depth)*(b.T-a.T)
}

// bandUpTo is the share of a band's area up to the share t of its length, when
// its radius runs from r0 to r1.
func bandUpTo(r0, r1, t float64) float64 { return t * (2*r0 + t*(r1-r0)) / (r0 + r1) }

// alongBand is its inverse: how far along a band, as a share of its length, the given share
// of its area lies, when its radius runs from r0 to r1.
func alongBand(r0, r1, share float64) float64 {
	if math.Abs(r1-r0) < 1e-9*(r0+r1) {
		return share
	}
	return (math.Sqrt(r0*r0+share*(r1*r1-r0*r0)) - r0) / (r1 - r0)
}
