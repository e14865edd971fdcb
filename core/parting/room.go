package parting

import (
	"math"
	"slices"
	"sort"

	"moldwright/core/release"
)

// Where seams have room: the stretches of the contour from which a level plane runs
// outward, as the survey tells them, and the points of it. What catches by more than
// counts under side parts cuts the contour up, since they hold no such place: two
// seams that they have between them lie in one group. All is exact on straight spans,
// but that a seam keeps apart from the ends of its span, as a cut does.

// seat is room for a seam on a span: shares of the span's area. Where lo is hi it is
// the point at which the span begins.
type seat struct {
	span   int
	lo, hi float64
	group  int
}

// spot is a place on the contour: a share of the length of a span.
type spot struct {
	span int
	t    float64
}

func (a spot) after(b spot) bool { return a.span > b.span || a.span == b.span && a.t > b.t }

func later(a, b spot) spot {
	if b.after(a) {
		return b
	}
	return a
}

func earlier(a, b spot) spot {
	if a.after(b) {
		return b
	}
	return a
}

// reach is a stretch of the contour.
type reach struct{ from, to spot }

// apart is how far in mm a seam keeps from the ends of its span: a little more than
// form.Meridian.Cut leaves. What that leaves out is a ring so wide: of a part of 20 mm
// or more across less than 0.03 percent of its surface, and no hook that grows by more
// than as much.
const apart = 1.1e-3

// rooms is all room for seams of so many side parts, 0 for none, in order, and the
// number of its last group.
func (l *ledger) rooms(sides int) ([]seat, int) {
	if r := l.room[sides]; r != nil {
		return r.seats, r.last
	}
	var held []reach
	if sides > 0 {
		if held = l.heldOut(sides); len(held) == 0 {
			seats, last := l.rooms(0)
			l.room[sides] = &rooms{seats, last}
			return seats, last
		}
	}
	wide := l.outermost()
	seats := make([]seat, 0, len(l.open)+len(wide))
	h := 0
	put := func(i int, lo, hi float64) {
		p, q := l.m.Pts[i], l.m.Pts[i+1]
		if len(held) == 0 {
			seats = append(seats, seat{i, bandUpTo(p.R, q.R, lo), bandUpTo(p.R, q.R, hi), 0})
			return
		}
		for {
			for h < len(held) && !held[h].to.after(spot{i, lo}) {
				h++
			}
			if h == len(held) || !(spot{i, hi}).after(held[h].from) {
				seats = append(seats, seat{i, bandUpTo(p.R, q.R, lo), bandUpTo(p.R, q.R, hi), h})
				return
			}
			if from := held[h].from; from.after(spot{i, lo}) && from.t-lo > 1e-9 {
				seats = append(seats, seat{i, bandUpTo(p.R, q.R, lo), bandUpTo(p.R, q.R, from.t), h})
			}
			if !(spot{i, hi}).after(held[h].to) {
				return
			}
			lo = held[h].to.t
		}
	}
	for i := range l.end {
		if i > 0 && l.seam[i] {
			put(i, 0, 0)
		}
		for len(wide) > 0 && wide[0].Span == i {
			e := apart / l.m.Pts[i].Dist(l.m.Pts[i+1])
			lo, hi := wide[0].From+e/1000, wide[0].To-e/1000
			if lo < e {
				lo = e
			}
			if hi > 1-e {
				hi = 1 - e
			}
			if lo < hi {
				put(i, lo, hi)
			}
			wide = wide[1:]
		}
	}
	l.room[sides] = &rooms{seats, len(held)}
	return seats, len(held)
}

func (l *ledger) outermost() []release.Stretch {
	if l.wide == nil {
		l.wide = l.s.Outermost()
	}
	return l.wide
}

// rooms is what rooms has found.
type rooms struct {
	seats []seat
	last  int
}

// heldOut are the stretches that side parts of a number cannot hold, in order and
// apart.
func (l *ledger) heldOut(n int) []reach {
	var all []reach
	for i, d := range l.sides[n].out[0] {
		if d > CatchDepth {
			all = l.heldOn(way{release.Out, n, 0}, i, all)
		}
	}
	slices.SortStableFunc(all, func(a, b reach) int {
		switch {
		case a.from.after(b.from):
			return 1
		case b.from.after(a.from):
			return -1
		}
		return 0
	})
	out := all[:0]
	for _, r := range all {
		if n := len(out); n > 0 && out[n-1].to.after(r.from) {
			if r.to.after(out[n-1].to) {
				out[n-1].to = r.to
			}
			continue
		}
		out = append(out, r)
	}
	return out
}

// heldOn appends the stretches of a span on which a catch counts.
func (l *ledger) heldOn(w way, i int, out []reach) []reach {
	on := l.s.On(w.pull, i)
	for n := 0; n < len(on); n++ {
		if on[n].Depth <= CatchDepth {
			continue
		}
		from, to := 0.0, 1.0
		if n > 0 {
			from = counts(&on[n-1], &on[n])
		}
		for n+1 < len(on) && on[n+1].Depth > CatchDepth {
			n++
		}
		if n+1 < len(on) {
			to = counts(&on[n+1], &on[n])
		}
		out = append(out, reach{spot{i, from}, spot{i, to}})
	}
	if w.pull == release.Out {
		if hook := l.sides[w.sides].hook; hook > 0 {
			a, b := hook*l.m.Pts[i].R, hook*l.m.Pts[i+1].R
			from, to := 0.0, 1.0
			if a <= CatchDepth {
				from = (CatchDepth - a) / (b - a)
			} else if b <= CatchDepth {
				to = (CatchDepth - a) / (b - a)
			}
			if max(a, b) > CatchDepth {
				out = append(out, reach{spot{i, from}, spot{i, to}})
			}
		}
	}
	for _, e := range l.extra[w] {
		if e.on.Span == i && e.catch.Depth > CatchDepth {
			out = append(out, reach{spot{i, e.on.From}, spot{i, e.on.To}})
		}
	}
	return out
}

// seatsOn are the seats, in order, on spans from one spot to another.
func seatsOn(seats []seat, from, to spot) []seat {
	a := sort.Search(len(seats), func(k int) bool { return seats[k].span >= from.span })
	b := sort.Search(len(seats), func(k int) bool { return seats[k].span > to.span })
	return seats[min(a, b):b]
}

// limits are the stretches on which the end of a lower part and the beginning of an
// upper one may lie.
type limits struct{ lower, upper reach }

func (l *ledger) limits() *limits {
	if l.caught == nil {
		l.caught = &limits{reach{l.lowerFrom(), l.freeTo()}, reach{l.freeFrom(), l.upperTo()}}
	}
	return l.caught
}

// freeTo is where the first catch of a lower part begins to count.
func (l *ledger) freeTo() spot {
	first := spot{l.end, 0}
	for i := range l.end {
		if l.deepest[release.Down][i] > CatchDepth {
			for _, r := range l.heldOn(way{pull: release.Down}, i, nil) {
				if first.after(r.from) {
					first = r.from
				}
			}
			break
		}
	}
	return first
}

// freeFrom is where the last catch of an upper part ends to count.
func (l *ledger) freeFrom() spot {
	last := spot{}
	for i := l.end - 1; i >= 0; i-- {
		if l.deepest[release.Up][i] > CatchDepth {
			for _, r := range l.heldOn(way{pull: release.Up}, i, nil) {
				if r.to.after(last) {
					last = r.to
				}
			}
			break
		}
	}
	return last
}

// lowerFrom is where a lower part first holds what does not catch at all: one that
// ends before is a sliver, and is not sought. It would make nothing clear, since what
// looks away from its pull rubs.
func (l *ledger) lowerFrom() spot {
	for i := range l.end {
		on := l.s.On(release.Down, i)
		for k := 1; k < len(on); k++ {
			if l.freeAt(&on[k-1], &on[k]) {
				return spot{i, on[k-1].T}
			}
		}
	}
	return spot{l.end, 0}
}

// upperTo is the same for the end of an upper part.
func (l *ledger) upperTo() spot {
	all := l.s.Samples[release.Up]
	k := len(all) - 1
	for i := l.end - 1; i >= 0; i-- {
		for k >= 0 && all[k].Span > i {
			k--
		}
		if k < 0 || all[k].Span < i { // free all along
			if on := l.s.On(release.Up, i); l.freeAt(&on[0], &on[1]) {
				return spot{i, on[1].T}
			}
			continue
		}
		for ; k > 0 && all[k-1].Span == i; k-- {
			if l.freeAt(&all[k-1], &all[k]) {
				return spot{i, all[k].T}
			}
		}
	}
	return spot{}
}

// freeAt tells whether a stretch of a span between two samples is free, and long enough
// to tell.
func (l *ledger) freeAt(a, b *release.Sample) bool {
	return a.Depth <= release.Free && b.Depth <= release.Free && a.P.Dist(b.P) > apart
}

// counts is where, from a sample that does not count as a catch to one that
// does, depth comes to count.
func counts(a, b *release.Sample) float64 {
	return a.T + (CatchDepth-a.Depth)/(b.Depth-a.Depth)*(b.T-a.T)
}

// from and to keep what lies after, or before, a spot.
func (s *seat) from(at spot, l *ledger) {
	if at.span > s.span {
		s.lo, s.hi = 2, -1
	} else if at.span == s.span {
		s.lo = max(s.lo, bandUpTo(l.m.Pts[s.span].R, l.m.Pts[s.span+1].R, at.t))
	}
}

func (s *seat) to(at spot, l *ledger) {
	if at.span < s.span {
		s.lo, s.hi = 2, -1
	} else if at.span == s.span {
		s.hi = min(s.hi, bandUpTo(l.m.Pts[s.span].R, l.m.Pts[s.span+1].R, at.t))
	}
}

// narrow keeps the shares at which a value that runs evenly from a to b along the
// span is not above the first.
func (s *seat) narrow(first, a, b float64) {
	switch c, d := a-first, b-a; {
	case d > 0:
		s.hi = min(s.hi, -c/d)
	case d < 0:
		s.lo = max(s.lo, -c/d)
	case c > 0:
		s.lo, s.hi = 2, -1
	}
}

// height is that of a share of a seat's span, mm.
func (l *ledger) height(s *seat, at float64) float64 {
	p, q := l.m.Pts[s.span], l.m.Pts[s.span+1]
	return p.Lerp(q, alongBand(p.R, q.R, at)).Z
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
