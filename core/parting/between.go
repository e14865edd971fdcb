package parting

import (
	"math"

	"moldwright/core/release"
)

// Two parts can share a stretch that rubs, such as an upright band about a jar's
// belly, or a long straight wall can rub a little more under one than it may, or
// where catching begins within a wall one may hold what comes before, so that parts
// let go only with a seam within a span. Of a span, then, the parts can have such
// shares that what rubs of each, less what may, is not above nothing, and that
// nothing of them catches by more than counts (room.go). These sums run evenly along a
// span, so its feasible shares are intervals, and every kind takes one walk along the
// contour. On a curve, spans turn by 3 degrees at most and count as straight; what is
// found is judged anew with the seams cut in, so that nothing is claimed by it, and
// against curves cut finely nothing is missed by more than 0.05 percent of a part's
// surface or 0.01 mm. Where everything catches the shallowest seams are those at points
// and no others: a seam within a long span may hook less.

// between gives heights in mm at which the kind has seams within spans that make it
// clear, or else only such that it does not catch; none where it has no such seams.
func (l *ledger) between(k kind, clear bool) []float64 {
	if k.seams() == 2 {
		return l.pairBetween(k, clear)
	}
	before, after := []*table{l.caps[release.Down]}, []*table{l.caps[release.Up]}
	from, to := spot{}, spot{l.end, 0}
	seats, last := l.rooms(k.sides)
	limits := l.limits()
	if k.lower {
		from, to = limits.lower.from, limits.lower.to
	} else {
		before, last = l.sides[k.sides].tables, 0
	}
	if k.upper {
		from, to = later(from, limits.upper.from), earlier(to, limits.upper.to)
	} else {
		after = l.sides[k.sides].tables
	}
	best, height := math.Inf(-1), 0.0
	for _, s := range seatsOn(seats, from, to) {
		if s.group != last {
			continue
		}
		s.from(from, l)
		s.to(to, l)
		at, worth := 0.0, 0.0
		if clear { // the most room
			for _, t := range before {
				s.narrow(l.excess(t, 0), l.excess(t, s.span), l.excess(t, s.span+1))
			}
			for _, t := range after {
				s.narrow(-l.excess(t, l.end), -l.excess(t, s.span), -l.excess(t, s.span+1))
			}
			area := l.caps[release.Down].area
			at, worth = (s.lo+s.hi)/2, (s.hi-s.lo)*(area[s.span+1]-area[s.span])
		} else { // the least rub
			rub := func(at float64) float64 { return rubTo(before, &s, at) - rubTo(after, &s, at) }
			at = s.inward(rub(s.lo) > rub(s.hi))
			worth = -rub(at)
		}
		if s.lo < s.hi && worth > best {
			best, height = worth, l.height(&s, at)
		}
	}
	if math.IsInf(best, -1) {
		return nil
	}
	return []float64{height}
}

// rubTo is the area in mm2 that rubs up to a share of a seat's span, the mean of the
// tables.
func rubTo(tables []*table, s *seat, at float64) float64 {
	sum := 0.0
	for _, t := range tables {
		rub := t.rub
		sum += rub[s.span] + at*(rub[s.span+1]-rub[s.span])
	}
	return sum / float64(len(tables))
}

// inward is a share just off the upper or the lower end of the room.
func (s *seat) inward(upper bool) float64 {
	if upper {
		return s.hi - (s.hi-s.lo)/8
	}
	return s.lo + (s.hi-s.lo)/8
}

// end is room for one of two seams: shares of a seat, and what rubs of the side parts
// before it, less what may, by part: at the start of the span, and how it grows along
// it.
type end struct {
	seat
	value, grows [maxSides]float64
}

// most and least are of a part's value in the room.
func (e *end) most(t int) float64 {
	return e.value[t] + max(e.lo*e.grows[t], e.hi*e.grows[t])
}

func (e *end) least(t int) float64 {
	return e.value[t] + min(e.lo*e.grows[t], e.hi*e.grows[t])
}

// pairBetween is between for a kind with both caps. Of the room for lower seams that
// comes before an upper one in its group, none serves that has at its best less for
// every side part than another at its worst; so few are kept, mostly one, and what
// these and the upper seam's room have in common is cut out by the side parts' lines.
// It gives the pair that leaves the side part that has least the most to spare.
func (l *ledger) pairBetween(k kind, clear bool) []float64 {
	down, up, sides := l.caps[release.Down], l.caps[release.Up], l.sides[k.sides].tables
	lower, upper := []*table{down}, []*table{up}
	seats, _ := l.rooms(k.sides)
	limits := l.limits()
	var front []end
	most, low, high := math.Inf(-1), 0.0, 0.0
	consider := func(a, b *end) {
		var p polygon
		p.square(a.lo, a.hi, b.lo, b.hi)
		spare := make([][3]float64, 0, maxSides+1)
		if clear {
			for t := range sides {
				if a.most(t) < b.least(t) {
					return
				}
				spare = append(spare, [3]float64{a.value[t] - b.value[t], a.grows[t], -b.grows[t]})
			}
		}
		if a.span == b.span && a.lo < a.hi && b.lo < b.hi {
			gap := 2 * apart / l.m.Pts[a.span].Dist(l.m.Pts[a.span+1])
			p.keep([3]float64{-gap, -1, 1})
		}
		for _, f := range spare {
			p.keep(f)
		}
		if p.n == 0 {
			return
		}
		x, y := p.middle()
		worth := math.Inf(1)
		if clear {
			for _, f := range spare {
				worth = min(worth, f[0]+f[1]*x+f[2]*y)
			}
		} else { // near the corner that rubs least
			rub := func(x, y float64) float64 {
				return rubTo(lower, &a.seat, x) - rubTo(sides, &a.seat, x) + rubTo(sides, &b.seat, y) - rubTo(upper, &b.seat, y)
			}
			c := p.at[0]
			for _, o := range p.at[1:p.n] {
				if rub(o[0], o[1]) < rub(c[0], c[1]) {
					c = o
				}
			}
			x, y = c[0]+(x-c[0])/8, c[1]+(y-c[1])/8
			worth = -rub(x, y)
		}
		if worth > most && (!clear || worth > 0) {
			most, low, high = worth, l.height(&a.seat, x), l.height(&b.seat, y)
		}
	}
	group, first, last := 0, l.excess(down, 0), -l.excess(up, l.end)
	for _, s := range seatsOn(seats, limits.lower.from, limits.upper.to) {
		if s.group != group {
			front, group = front[:0], s.group
		}
		if s.span > limits.lower.to.span && len(front) == 0 {
			break // no lower seam is left for what comes
		}
		lo, hi := s, s
		lo.from(limits.lower.from, l)
		lo.to(limits.lower.to, l)
		hi.from(limits.upper.from, l)
		hi.to(limits.upper.to, l)
		if clear && lo.lo <= lo.hi {
			lo.narrow(first, l.excess(down, s.span), l.excess(down, s.span+1))
		}
		if clear && hi.lo <= hi.hi {
			hi.narrow(last, -l.excess(up, s.span), -l.excess(up, s.span+1))
		}
		if lo.lo > lo.hi && (hi.lo > hi.hi || len(front) == 0) {
			continue
		}
		a := end{seat: lo}
		for t, table := range sides {
			a.value[t] = l.excess(table, s.span)
			a.grows[t] = l.excess(table, s.span+1) - a.value[t]
		}
		b := a
		b.seat = hi
		if b.lo <= b.hi {
			for i := range front {
				consider(&front[i], &b)
			}
			if a.lo < a.hi && b.lo < b.hi {
				consider(&a, &b)
			}
		}
		if a.lo <= a.hi {
			front = l.further(front, &a, k.sides, clear)
		}
	}
	if math.IsInf(most, -1) {
		return nil
	}
	return []float64{low, high}
}

// further puts room for a lower seam before those kept, without what it makes
// needless. Where nothing is asked but that nothing catches, the one at which the
// lower part rubs least more than the sides would is best, whatever comes after.
func (l *ledger) further(front []end, a *end, n int, clear bool) []end {
	sides := l.sides[n].tables
	if !clear {
		lower := []*table{l.caps[release.Down]}
		worth := func(e *end) float64 {
			rub := func(at float64) float64 { return rubTo(sides, &e.seat, at) - rubTo(lower, &e.seat, at) }
			return max(rub(e.lo), rub(e.hi))
		}
		if len(front) > 0 && worth(&front[0]) >= worth(a) {
			return front
		}
		return append(front[:0], *a)
	}
	beats := func(x, y *end) bool {
		for t := range sides {
			if x.least(t) < y.most(t) {
				return false
			}
		}
		return true
	}
	kept := front[:0]
	for i := range front {
		if beats(&front[i], a) {
			return front
		}
	}
	for _, x := range front {
		if !beats(a, &x) {
			kept = append(kept, x)
		}
	}
	return append(kept, *a)
}

// polygon is a convex one of few corners.
type polygon struct {
	n  int
	at [maxSides + 6][2]float64
}

// square makes it one.
func (p *polygon) square(x0, x1, y0, y1 float64) {
	p.n = 4
	p.at[0], p.at[1], p.at[2], p.at[3] = [2]float64{x0, y0}, [2]float64{x1, y0}, [2]float64{x1, y1}, [2]float64{x0, y1}
}

// keep keeps what of it lies where f[0] + f[1] x + f[2] y is not below nothing.
func (p *polygon) keep(f [3]float64) {
	old := *p
	p.n = 0
	for i := range old.n {
		a, b := old.at[i], old.at[(i+1)%old.n]
		u, v := f[0]+f[1]*a[0]+f[2]*a[1], f[0]+f[1]*b[0]+f[2]*b[1]
		if u >= 0 {
			p.at[p.n] = a
			p.n++
		}
		if (u >= 0) != (v >= 0) {
			t := u / (u - v)
			p.at[p.n] = [2]float64{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}
			p.n++
		}
	}
}

// middle is the mean of its corners.
func (p *polygon) middle() (x, y float64) {
	for _, c := range p.at[:p.n] {
		x += c[0] / float64(p.n)
		y += c[1] / float64(p.n)
	}
	return x, y
}

// anywhere gives heights within the span that has most room for seams.
func (l *ledger) anywhere() []float64 {
	area := l.caps[release.Down].area
	seats, _ := l.rooms(0)
	most := 0.0
	var at seat
	for _, s := range seats {
		if room := (s.hi - s.lo) * (area[s.span+1] - area[s.span]); room > most {
			most, at = room, s
		}
	}
	if most == 0 {
		return nil
	}
	third := (at.hi - at.lo) / 3
	return []float64{l.height(&at, at.lo+third), l.height(&at, at.hi-third)}
}

// excess is the area in mm2 that rubs before point p, less the share that may.
func (l *ledger) excess(t *table, p int) float64 {
	return t.rub[p] - l.rules.RubShare/100*t.area[p]
}
