package parting

import (
	"math"
	"sort"

	"moldwright/core/release"
)

// Two parts can share a stretch that rubs, such as an upright band about a jar's
// belly, or a long straight wall can rub a little more under one than it may, so
// that parts are clear only with a seam within a span. Between points nothing else
// that is judged gets better: along a straight span a catch grows for one of the
// two only, which is best left out, and so does what rubs under one only. What lies
// behind a flange stands on a floor, or under a roof, that holds the cap which would
// have it; so a seam serves only on spans whose both ends are open outward. Of a
// span, then, the parts can have such shares that what rubs of each, less what may,
// is not above nothing. These sums run evenly along a span, so its feasible shares
// are intervals, and every kind takes one walk along the contour. (On a curve spans
// are so short that they count as straight.)

// between gives heights in mm at which the kind has seams within spans that make it
// clear; none where it has no such seams.
func (l *ledger) between(k kind) []float64 {
	if k.seams() == 2 {
		return l.pairBetween(k)
	}
	before, after := []*table{l.caps[release.Down]}, []*table{l.caps[release.Up]}
	from, to := l.freeFrom(), l.freeTo()
	if !k.lower {
		before, to = l.sides[k.sides].tables, spot{l.firstOut(k.sides), 0}
	}
	if !k.upper {
		after, from = l.sides[k.sides].tables, spot{l.afterOut(k.sides), 0}
	}
	if from.after(to) {
		return nil
	}
	best, at := 0.0, seat{}
	for i := from.span; i <= to.span && i < l.end; i++ {
		s := l.seat(i)
		s.from(from, l)
		s.to(to, l)
		for _, t := range before {
			s.narrow(l.excess(t, 0), l.excess(t, i), l.excess(t, i+1))
		}
		for _, t := range after {
			s.narrow(-l.excess(t, l.end), -l.excess(t, i), -l.excess(t, i+1))
		}
		area := l.caps[release.Down].area
		if room := (s.hi - s.lo) * (area[i+1] - area[i]); room > best {
			best, at = room, s
			at.at = (s.lo + s.hi) / 2
		}
	}
	if best == 0 {
		return nil
	}
	return []float64{l.height(at)}
}

// pairBetween is between for a kind with both caps, as pair is for points: of every
// upper seam, the best lower one is that of the largest rub - share area of the sides
// since the last deep catch. It gives the pair that leaves the sides most to spare.
func (l *ledger) pairBetween(k kind) []float64 {
	down, up, sides := l.caps[release.Down], l.caps[release.Up], l.sides[k.sides]
	from, to := l.freeFrom(), l.freeTo()
	mean := func(p int) float64 {
		sum := 0.0
		for _, t := range sides.tables {
			sum += l.excess(t, p)
		}
		return sum / float64(len(sides.tables))
	}
	var low, bestLow, bestHigh seat
	lowValue, most := math.Inf(-1), 0.0
	consider := func(a, b seat, spare float64) {
		if spare > most {
			most, bestLow, bestHigh = spare, a, b
		}
	}
	next := mean(0)
	for i := range l.end {
		value := next
		next = mean(i + 1)
		if sides.out[0][i] > CatchDepth {
			lowValue = math.Inf(-1)
			continue
		}
		grows := next - value
		a := l.seat(i)
		b := a
		a.to(to, l)
		a.narrow(l.excess(down, 0), l.excess(down, i), l.excess(down, i+1))
		b.from(from, l)
		b.narrow(-l.excess(up, l.end), -l.excess(up, i), -l.excess(up, i+1))
		a.at, b.at = a.lo, b.lo
		if grows > 0 {
			a.at = a.hi
		} else {
			b.at = b.hi
		}
		if b.lo <= b.hi {
			consider(low, b, lowValue-(value+b.at*grows))
			if a.lo <= a.hi && a.at < b.at {
				consider(a, b, (a.at-b.at)*grows)
			}
		}
		if v := value + a.at*grows; a.lo <= a.hi && v > lowValue {
			low, lowValue = a, v
		}
	}
	if most == 0 {
		return nil
	}
	// off the ends of their room, where a part has just what it may
	reach := [2]float64{(bestLow.hi - bestLow.lo) / 2, (bestHigh.hi - bestHigh.lo) / 2}
	for n, s := range [2]*seat{&bestLow, &bestHigh} {
		if s.at == 0 || s.at == 1 {
			continue // a point of the contour
		}
		by := reach[n]
		if grows := math.Abs(mean(s.span+1) - mean(s.span)); by*grows > most/3 {
			by = most / 3 / grows
		}
		if bestLow.span == bestHigh.span {
			by = min(by, math.Abs(bestHigh.at-bestLow.at)/3)
		}
		if s.at == s.hi {
			by = -by
		}
		s.at += by
	}
	return []float64{l.height(bestLow), l.height(bestHigh)}
}

// anywhere gives heights within the span that has most room for seams.
func (l *ledger) anywhere() []float64 {
	area := l.caps[release.Down].area
	most, at := 0.0, -1
	for i := range l.end {
		if s := l.seat(i); s.hi > s.lo && area[i+1]-area[i] > most {
			most, at = area[i+1]-area[i], i
		}
	}
	if at < 0 {
		return nil
	}
	return []float64{l.height(seat{span: at, at: 1. / 3}), l.height(seat{span: at, at: 2. / 3})}
}

// excess is the area in mm2 that rubs before point p, less the share that may.
func (l *ledger) excess(t *table, p int) float64 {
	return t.below[0][p] - l.rules.RubShare/100*t.area[p]
}

// seat is the room that a seam has on a span, and a place in it: shares of the
// span's area.
type seat struct {
	span       int
	lo, hi, at float64
}

// seat is the room on a span by where a level seam can run outward; hi is less than
// lo where there is none. The very ends of the contour leave a part without surface
// and are no seams.
func (l *ledger) seat(i int) seat {
	const brink = 1e-9
	a, b := l.seam[i], l.seam[i+1]
	if i == 0 {
		a = l.s.OpenOutward(0)
	}
	s := seat{span: i}
	switch {
	case a && b:
		s.hi = 1
	case b:
		s.lo, s.hi = 1, 1
	case !a:
		s.lo = 1
	}
	if i == 0 {
		s.lo = max(s.lo, brink)
	}
	if i+1 == l.end {
		s.hi = min(s.hi, 1-brink)
	}
	return s
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
		s.lo, s.hi = 1, 0
	}
}

// from and to keep what lies after, or before, a spot.
func (s *seat) from(at spot, l *ledger) {
	if at.span > s.span {
		s.lo, s.hi = 1, 0
	} else if at.span == s.span {
		s.lo = max(s.lo, bandUpTo(l.m.Pts[s.span].R, l.m.Pts[s.span+1].R, at.t))
	}
}

func (s *seat) to(at spot, l *ledger) {
	if at.span < s.span {
		s.lo, s.hi = 1, 0
	} else if at.span == s.span {
		s.hi = min(s.hi, bandUpTo(l.m.Pts[s.span].R, l.m.Pts[s.span+1].R, at.t))
	}
}

// height is that of the seat's place, mm.
func (l *ledger) height(s seat) float64 {
	p, q := l.m.Pts[s.span], l.m.Pts[s.span+1]
	return p.Lerp(q, alongBand(p.R, q.R, s.at)).Z
}

// spot is a place on the contour: a share t of the way along a span.
type spot struct {
	span int
	t    float64
}

func (a spot) after(b spot) bool { return a.span > b.span || a.span == b.span && a.t > b.t }

// freeTo is where the first catch of a lower part begins to count.
func (l *ledger) freeTo() spot {
	for i := range l.end {
		if l.deepest[release.Down][i] > CatchDepth {
			on := l.samples(release.Down, i)
			for n := 1; n < len(on); n++ {
				if on[n].Depth > CatchDepth && on[n-1].Depth <= CatchDepth {
					return spot{i, counts(&on[n-1], &on[n])}
				} else if on[n-1].Depth > CatchDepth {
					break
				}
			}
			return spot{i, 0}
		}
	}
	return spot{l.end, 0}
}

// freeFrom is where the last catch of an upper part ends to count.
func (l *ledger) freeFrom() spot {
	for i := l.end - 1; i >= 0; i-- {
		if l.deepest[release.Up][i] > CatchDepth {
			on := l.samples(release.Up, i)
			for n := len(on) - 1; n > 0; n-- {
				if on[n-1].Depth > CatchDepth && on[n].Depth <= CatchDepth {
					return spot{i, counts(&on[n], &on[n-1])}
				} else if on[n].Depth > CatchDepth {
					break
				}
			}
			return spot{i + 1, 0}
		}
	}
	return spot{}
}

// firstOut is the first span on which n side parts catch, afterOut the one after
// the last.
func (l *ledger) firstOut(n int) int {
	for i, d := range l.sides[n].out[0] {
		if d > CatchDepth {
			return i
		}
	}
	return l.end
}

func (l *ledger) afterOut(n int) int {
	for i := l.end - 1; i >= 0; i-- {
		if l.sides[n].out[0][i] > CatchDepth {
			return i + 1
		}
	}
	return 0
}

// samples are those of the survey on a span.
func (l *ledger) samples(pull release.Pull, span int) []release.Sample {
	all := l.s.Samples[pull]
	a := sort.Search(len(all), func(k int) bool { return all[k].Span >= span })
	b := a
	for b < len(all) && all[b].Span == span {
		b++
	}
	return all[a:b]
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
