package release

import (
	"slices"

	"moldwright/core/form"
)

// nick is how far in mm to either side of an edge's level the samples stand;
// touch how near the place that lets go a wall may stand and still be that
// place: less, as drop is, so that both sides of an edge are told apart.
const (
	nick  = 4e-6
	touch = drop
)

// lips are the places on the contour, in order along it, at which depth may
// leap or turn inside a span: level with an end of what blocks, where a free
// place comes or goes, and level with a tip of the pot, where a gap parts in
// two. Between neighbours of them what ends an open gap stays the same, so
// that depth runs evenly with the height of a span.
func (s *Survey) lips(f *frame) []place {
	var out []place
	e := f.env
	for k := 1; k < len(e.pieces); k++ {
		a, b := e.pieces[k-1], e.pieces[k]
		y0, y1 := e.on(a.chord, a.x1), e.on(b.chord, b.x0)
		if y0 == y1 {
			continue
		}
		out = s.level(f, b.x0, y0, out)
		out = s.level(f, b.x0, y1, out)
		high := a.chord
		if y1 > y0 {
			high = b.chord
		}
		out = f.besideColumn(high, b.x0, out)
	}
	if n := len(e.pieces); n > 0 {
		first, last := e.pieces[0], e.pieces[n-1]
		out = s.level(f, first.x0, e.on(first.chord, first.x0), out)
		out = s.level(f, last.x1, e.on(last.chord, last.x1), out)
	}
	for k := 1; k+1 < len(f.pts); k++ {
		p, q, r := f.pts[k-1], f.pts[k], f.pts[k+1]
		if sign(q.y-p.y)*sign(r.y-q.y) <= 0 && convex(s.body[k-1], s.body[k], s.body[k+1]) {
			out = s.level(f, q.x, q.y, out)
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

// convex tells whether the pot stands out at q.
func convex(p, q, r form.Point) bool {
	return (q.R-p.R)*(r.Z-q.Z) >= (q.Z-p.Z)*(r.R-q.R)
}

// besideColumn appends the places of a chord just to either side of x.
func (f *frame) besideColumn(chord int, x float64, out []place) []place {
	p, q := f.pts[chord], f.pts[chord+1]
	for _, at := range [2]float64{x - nick, x + nick} {
		if t := (at - p.x) / (q.x - p.x); t > 0 && t < 1 {
			out = append(out, place{chord, t})
		}
	}
	return out
}

// level appends where lines just short of and just past the height y of an
// edge at x meet the contour on either side: the first place that is not the
// edge itself.
func (s *Survey) level(f *frame, x, y float64, out []place) []place {
	for _, at := range [2]float64{y - nick, y + nick} {
		for _, dir := range [2]int{1, -1} {
			from := x
			for range 3 { // into the edge and out of it, then the far wall
				chord, d := f.first(s.tree, vec{from, at}, dir)
				if chord < 0 {
					break
				}
				p, q := f.pts[chord], f.pts[chord+1]
				out = append(out, place{chord, (at - p.y) / (q.y - p.y)})
				if d > edge {
					break
				}
				from += float64(dir) * (d + nick/100)
			}
		}
	}
	return out
}

// edge is the width in mm within which what lies on an edge's level belongs to
// the edge.
const edge = 1e-3

// first is the first chord of the pot across the pull from v in direction dir
// (+1, -1), and how far off it is, mm; -1 where there is none.
func (f *frame) first(t *form.Tree, v vec, dir int) (chord int, dist float64) {
	dr, dz := f.across(dir)
	return t.First(f.from(v), dr, dz)
}

// across is direction dir across the pull, along r and z.
func (f *frame) across(dir int) (dr, dz int) {
	if f.pull == Out { // x is the height
		return 0, dir
	}
	return dir, 0
}

// walled tells whether the pot stands across the pull from v in direction dir,
// nearer than within.
func (f *frame) walled(t *form.Tree, v vec, dir int, within float64) bool {
	last := &f.hit[(dir+1)/2]
	dr, dz := f.across(dir)
	chord := t.Hits(f.from(v), dr, dz, within, *last)
	if chord >= 0 {
		*last = chord
	}
	return chord >= 0
}

// peaks appends samples between two of one span that are both caught, one at
// least in a gap shut on both sides, where the nearest free place lies beyond the pot and may
// pass along many pieces of it, until the deepest place in between is found to
// within depthStep.
func (s *Survey) peaks(f *frame, w *wall, a, b *Sample, out []Sample, left int) []Sample {
	if left == 0 || a.Depth <= Free || b.Depth <= Free || !a.hook.shut && !b.hook.shut ||
		a.hook.piece == b.hook.piece && a.hook.dir == b.hook.dir {
		return out
	}
	if f.bound(a, b) <= max(a.Depth, b.Depth)+depthStep {
		return out
	}
	mid := s.at(f, w, (a.T+b.T)/2)
	out = s.peaks(f, w, a, &mid, out, left-1)
	out = append(out, mid)
	return s.peaks(f, w, &mid, b, out, left-1)
}

// depthStep is by how much, in mm, the deepest place in a shut gap may be
// missed.
const depthStep = 0.005

// bound is more than any depth between two samples of a span. The higher a
// place, the farther the nearest free ones on its level.
func (f *frame) bound(a, b *Sample) float64 {
	p, q := f.to(a.P), f.to(b.P)
	lo, hi, y := min(p.x, q.x), max(p.x, q.x), max(p.y, q.y)
	up := f.env.next(hi, y, 1)
	down := f.env.next(lo, y, -1)
	if down.beyond && f.pull != Out {
		return up.at - lo
	}
	return min(up.at-lo, hi-down.at)
}
