package tooling

// Marks on upright outsides. Letters stand on a flat: the few steps of a round
// wall that a mark takes are laid on one chord, which is nowhere deeper than
// flatMost within the curve; a straight-sided wall is flat there already.

import (
	"math"

	"moldwright/core/mold"
	"moldwright/core/solid"
)

// flatMost is how deep in mm a flat may lie within the wall, which keeps most
// of its thickness.
const flatMost = 1.0

// bandLeast is the least height in mm of a wall that a mark has room on.
const bandLeast = markHigh + markRaised + 2*markRoom

// panel is the flat of a mark, between two steps of the azimuth table.
type panel struct {
	from, to int
	sign     sign
	ok       bool
}

// panel finds the flat for the piece's mark on the wall from corner a to c.
func (t *turned) panel(so *mold.Solids, span solid.Span, a, c corner) (p panel) {
	list, wide := lettering(t.marks)
	if t.marks == "" || math.Abs(c.Z-a.Z) < bandLeast {
		return p
	}
	least := math.Min(a.R, c.R)
	for _, az := range t.places() {
		half := math.Atan((wide/2+markRoom)/least) * 180 / math.Pi
		p.from = so.Turn.Step(az - half)
		for p.to = p.from + 1; so.Turn.Deg(p.to)-so.Turn.Deg(p.from) < 2*half-1e-9; {
			p.to++
		}
		if p.from <= span.From || p.to >= span.To {
			continue
		}
		var at [4]solid.Vec // counterclockwise seen from outside
		for i, q := range [4]corner{a, a, c, c} {
			k := p.from
			if i == 1 || i == 2 {
				k = p.to
			}
			at[i] = t.standing(so, q)(k)
		}
		deep, mid := 0.0, (p.from+p.to)/2
		for _, k := range [3]int{(p.from + mid) / 2, mid, (mid + p.to) / 2} {
			q, flat := t.standing(so, a)(k), p.lay(k, at[0], at[1])
			deep = math.Max(deep, math.Hypot(q[0]-flat[0], q[1]-flat[1]))
		}
		if deep > flatMost {
			continue
		}
		way, lean := float64(t.cones), 1.0
		if t.reads != 0 {
			way, lean = float64(t.reads), float64(t.reads*t.cones)
		}
		p.sign = sign{list: list, o: mean(at[0], at[1], at[2], at[3]), lean: lean,
			x: direction(at[0], at[1], way), y: direction(mean(at[0], at[1]), mean(at[3], at[2]), way)}
		p.sign.n = crossed(p.sign.x, p.sign.y)
		p.ok = true
		return p
	}
	return p
}

// lay is where step k of a row stands on the flat between its ends.
func (p *panel) lay(k int, a, c solid.Vec) solid.Vec {
	s := float64(k-p.from) / float64(p.to-p.from)
	return solid.Vec{a[0] + s*(c[0]-a[0]), a[1] + s*(c[1]-a[1]), a[2]}
}

// flatten is a row with the steps of the flat laid on it.
func (p *panel) flatten(at func(k int) solid.Vec) func(k int) solid.Vec {
	a, c := at(p.from), at(p.to)
	return func(k int) solid.Vec {
		if k > p.from && k < p.to {
			return p.lay(k, a, c)
		}
		return at(k)
	}
}

// wall lays a wall with its mark between two rows of flattened steps.
func (p *panel) wall(b *solid.Builder, span solid.Span, from, to solid.Loop) {
	low, high := p.from-span.From, p.to-span.From
	n := len(from)
	for i := range span.To - span.From {
		if i >= low && i < high {
			continue
		}
		k := (i + 1) % n
		b.Triangle(from[i], from[k], to[k])
		b.Triangle(from[i], to[k], to[i])
	}
	loop := append(append(solid.Loop{}, from[low:high+1]...), reversed(to[low:high+1])...)
	b.Face(p.sign.n, loop, p.sign.raise(b)...)
}

// flat is the middle in degrees of the stave's flat for a mark, and half of what
// it takes of the turn; it has no room between flanges at one and two where half
// is 0.
func (s *stave) flat(one, two float64) (mid, half float64) {
	if s.marks == "" {
		return 0, 0
	}
	mid = (s.from + s.to) / 2
	outer := s.md.Block.R + s.wide
	_, wide := lettering(s.marks)
	half = math.Atan((wide/2+markRoom)/outer) * 180 / math.Pi
	low, high := s.band()
	_, cos := solid.SinCosDeg(half)
	if n := float64(s.md.Block.Facets); n > 0 { // on the face nearest to the middle that has room
		best := math.Inf(1)
		first, last := math.Floor(one*n/360), math.Ceil(two*n/360)
		middle := mid
		for k := first; k <= last; k++ {
			face := k * 360 / n
			a, c := math.Max(one+0.5, face-180/n/1.2), math.Min(two-0.5, face+180/n/1.2)
			if at := math.Max(a+half, math.Min(face, c-half)); c-a >= 2*half && math.Abs(at-middle) < best {
				mid, best = at, math.Abs(at-middle)
			}
		}
		if math.IsInf(best, 1) {
			return 0, 0
		}
	} else if outer*(1-cos) > flatMost {
		return 0, 0
	}
	if high-low < bandLeast || mid-half < one+0.5 || mid+half > two-0.5 {
		return 0, 0
	}
	return mid, half
}

// band is the stretch of heights over which this course has all its flanges and
// an even wall.
func (s *stave) band() (low, high float64) {
	low = s.lo
	if s.lo < 0 {
		low = flangeRise
	}
	return low, math.Min(math.Min(s.flangeEnd, s.bevel[0]), s.hi)
}

// markedSide lays the band between two loops with the stave's mark on the flat
// that begins at corner k.
func (s *stave) markedSide(b *solid.Builder, low, high solid.Loop, plan []staveCorner, k int) {
	for i := range low {
		j := (i + 1) % len(low)
		if i != k {
			b.Triangle(low[i], low[j], high[j])
			b.Triangle(low[i], high[j], high[i])
		}
	}
	m := s.sign(plan, k)
	b.Face(m.n, solid.Loop{low[k], low[k+1], high[k+1], high[k]}, m.raise(b)...)
}

// sign is the stave's mark on the flat that begins at corner k of its plan.
func (s *stave) sign(plan []staveCorner, k int) sign {
	from, to := s.band()
	ends := s.at(plan[k:k+2], from)
	p, q := ends[0], ends[1]
	list, _ := lettering(s.marks)
	m := sign{list: list, lean: 1, y: solid.Vec{0, 0, 1},
		o: solid.Vec{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (from + to) / 2},
		x: direction(solid.Vec{p[0], p[1], 0}, solid.Vec{q[0], q[1], 0}, 1)}
	m.n = crossed(m.x, m.y)
	if s.way < 0 { // the stave is mirrored afterwards
		for _, g := range m.list {
			for i, l := range g {
				for x := range l {
					l[x][0] = -l[x][0]
				}
				g[i] = clockwise(l)
			}
		}
	}
	return m
}

func mean(list ...solid.Vec) (m solid.Vec) {
	for _, p := range list {
		for k := range 3 {
			m[k] += p[k] / float64(len(list))
		}
	}
	return m
}

// direction is from a to c, one long, times way.
func direction(a, c solid.Vec, way float64) solid.Vec {
	d := solid.Vec{c[0] - a[0], c[1] - a[1], c[2] - a[2]}
	l := way / norm(d)
	return solid.Vec{d[0] * l, d[1] * l, d[2] * l}
}

func crossed(a, c solid.Vec) solid.Vec {
	return solid.Vec{a[1]*c[2] - a[2]*c[1], a[2]*c[0] - a[0]*c[2], a[0]*c[1] - a[1]*c[0]}
}
