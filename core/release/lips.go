package release

import (
	"math"
	"slices"

	"moldwright/core/form"
)

// lips are the places on the contour level with an edge of the pot that ends a
// block, as seen across the pull: just past the edge's height the plaster
// there has farther to go, so that depth can leap in the middle of a long
// straight span. They come in order along the contour.
func (s *Survey) lips(f *frame) []place {
	var out []place
	e := f.env
	for k := range e.pieces {
		p := e.pieces[k]
		y0, y1 := e.on(p.chord, p.x0), e.on(p.chord, p.x1)
		before, after := math.Inf(1), math.Inf(1)
		if k > 0 {
			b := e.pieces[k-1]
			before = e.on(b.chord, b.x1)
		}
		if k+1 < len(e.pieces) {
			a := e.pieces[k+1]
			after = e.on(a.chord, a.x0)
		}
		if y0 >= y1 && y0 >= before && k > 0 || k > 0 && before != y0 {
			out = s.level(f, p.x0, math.Min(y0, before), out)
			out = s.level(f, p.x0, math.Max(y0, before), out)
		}
		if k+1 < len(e.pieces) && (y1 > y0 && s.edge(f, p.chord, e.pieces[k+1].chord)) && after == y1 {
			out = s.level(f, p.x1, y1, out)
		}
	}
	if n := len(e.pieces); n > 0 {
		for _, end := range [2]float64{e.pieces[0].x0, e.pieces[n-1].x1} {
			k := 0
			if end != e.pieces[0].x0 {
				k = n - 1
			}
			out = s.level(f, end, e.on(e.pieces[k].chord, end), out)
		}
	}
	slices.SortFunc(out, func(a, b place) int {
		if a.span != b.span {
			return a.span - b.span
		}
		return sign(a.t - b.t)
	})
	return out
}

// edge tells whether two chords of the envelope meet at more than the turn of
// a smooth curve.
func (s *Survey) edge(f *frame, a, b int) bool {
	d := func(c int) float64 {
		p, q := f.env.pts[c], f.env.pts[c+1]
		return math.Atan2(math.Abs(q.y-p.y), math.Abs(q.x-p.x))
	}
	return math.Abs(d(a)-d(b)) > 1.5*form.TurnTol
}

// level appends where the line at height y, just past the edge at x, first
// meets the contour on either side.
func (s *Survey) level(f *frame, x, y float64, out []place) []place {
	y += 1e-7
	for _, dir := range [2]float64{1, -1} {
		best, at := math.Inf(1), place{}
		a, b := f.from(vec{x, y}), f.from(vec{x + dir*1e5, y})
		s.tree.Visit(math.Min(a.R, b.R), math.Max(a.R, b.R), math.Min(a.Z, b.Z), math.Max(a.Z, b.Z), func(i int) {
			p, q := f.pts[i], f.pts[i+1]
			if (p.y >= y) == (q.y >= y) {
				return
			}
			t := (y - p.y) / (q.y - p.y)
			if d := dir * (p.x + t*(q.x-p.x) - x); d >= 0 && d < best {
				best, at = d, place{i, t}
			}
		})
		if !math.IsInf(best, 1) {
			out = append(out, at)
		}
	}
	return out
}
