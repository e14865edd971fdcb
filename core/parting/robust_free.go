package parting

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/release"
)

// How far wrong the radii must be for a scheme that does not let go to do so.
// Each figure is made to be a bound from below, so that the choice stands while
// the radii are nearer to the truth than that. For lower and upper parts it is
// one; for side parts that rub, seams that move with the error can undercut it
// by little, which it did on 4 of some 5,000 random pots with all radii wrong by
// as much as can be.

// freed is an error in mm below which the outer parts of a scheme that catch or rub
// go on doing so, and the heights that it hangs on; 0 where they do neither.
//
//   - Lower and upper parts: see falls.
//   - What catches within a section or a dimple: see sectionHolds and dimplesHold. Of
//     the latter, errors from most on are not told apart.
//   - A scheme with side parts that catches by d: its caps come free when radii
//     change by (d - the depth that counts)/2, and side parts when what stands in
//     the way comes as near to the axis as what is held, each moving half way.
//   - One that rubs: when walls tilt until no more than the rules' share does.
func freed(m *form.Meridian, end int, s *Scheme, rules Rules, f *falls, most float64) (e, from, to float64) {
	e, from, to = freedWall(m, end, s, rules, f)
	if x, z := sectionHolds(m, end, s, rules, f); x > e {
		e, from, to = x, z, z
	}
	if e < most {
		if x, z := dimplesHold(m, end, s, most); x > e {
			e, from, to = x, z, z
		}
	}
	return e, from, to
}

// freedWall is freed of the wall in the half-plane.
func freedWall(m *form.Meridian, end int, s *Scheme, rules Rules, f *falls) (e, from, to float64) {
	if s.Sides == 0 {
		f.find(m, end, s.Upper, rules)
		e, i, j := f.least(s.Upper)
		return e, m.Pts[i].Z, m.Pts[j].Z
	}
	outer := Scheme{Parts: s.Parts, Verdict: Clear}
	if s.Core {
		outer.Parts = s.Parts[:len(s.Parts)-1]
	}
	for _, p := range outer.Parts {
		if p.Verdict.rank() > outer.Verdict.rank() {
			outer.Verdict = p.Verdict
		}
	}
	switch e = math.Inf(1); outer.Verdict {
	case Clear:
		return 0, 0, 0
	case Catches:
		deepest := 0.0
		for _, p := range outer.Parts {
			for _, c := range p.Catches {
				if c.ofPattern() || c.Depth < deepest {
					continue
				}
				deepest = c.Depth
				e, from, to = (c.Depth-CatchDepth)/2, c.ZFrom, c.ZTo
				if p.Sector != nil {
					e = min(e, max(0, c.BlockedAtR-c.AtR)/2)
				}
			}
		}
		if deepest == 0 {
			return 0, 0, 0
		}
		return e, from, to
	}
	for i, p := range outer.Parts {
		if p.Verdict != Rubs || i > 0 && p.Sector != nil && outer.Parts[i-1].Sector != nil {
			continue
		}
		var by float64
		switch {
		case p.Sector != nil: // one stands for all
			by = newSlopes(m, s.K1, s.K2, s.Sides, rules).until(p.RubShare)
		case p.Name == "lower":
			d, _ := draftAtShare(m, 0, s.K1, release.Down, rules)
			by = swing / 2 * (tangent(rules.LeastDraft) - tangent(d))
		case p.Name == "upper":
			d, _ := draftAtShare(m, s.K2, end, release.Up, rules)
			by = swing / 2 * (tangent(rules.LeastDraft) - tangent(d))
		default:
			continue
		}
		if by < e {
			e, from, to = by, p.ZFrom, p.ZTo
		}
	}
	return e, from, to
}

// falls tells what lower and upper parts ask of the radii. Along a part, toward
// where it draws away, the radius must never fall by more than the depth that
// counts, and gain the least draft's slope on all but the rules' share of the
// surface. Values that are to rise take a largest change of at least half their
// largest fall, whichever way they are changed.
type falls struct {
	down, up []fall // of a lower part up to a point, of an upper from it on; once found
}

// fall is the error that a part asks for, and the points between which it does.
type fall struct {
	e    float64
	i, j int32
}

// find fills in what is not known yet, of an upper part where it is asked for.
func (f *falls) find(m *form.Meridian, end int, upper bool, rules Rules) {
	if f.down == nil {
		f.down = along(m, 0, end, rules)
	}
	if upper && f.up == nil {
		f.up = along(m, end, 0, rules)
	}
}

// along goes from point a to point b and tells what a part asks that ends at
// each point, by the index of the point.
func along(m *form.Meridian, a, b int, rules Rules) []fall {
	step := 1
	if b < a {
		step = -1
	}
	out := make([]fall, max(a, b)+1)
	slope := tangent(rules.LeastDraft)
	// the highest value so far, of radii and of radii less what they must gain,
	// and where; and the most that a unit of surface since then lacks of its gain
	bare, net, bareAt, netAt, lack := m.Pts[a].R, m.Pts[a].R, a, a, 0.0
	gain, area := 0.0, 0.0
	catch, rubLack := fall{0, int32(a), int32(a)}, 0.0
	rub := catch
	out[a] = catch
	for k := a; k != b; k += step {
		p, q := m.Pts[k], m.Pts[k+step]
		due, band := slope*math.Abs(q.Z-p.Z), form.BandArea(p, q)
		gain += due
		area += band
		short := due // of what the span should gain
		if q.R > p.R {
			short -= q.R - p.R
		}
		if short /= band; short > lack {
			lack = short
		}
		if d := bare - q.R; d > catch.e {
			catch = fall{d, int32(bareAt), int32(k + step)}
		}
		if d := net - (q.R - gain); d > rub.e {
			rub, rubLack = fall{d, int32(netAt), int32(k + step)}, lack
		}
		if q.R >= bare {
			bare, bareAt = q.R, k+step
		}
		if q.R-gain >= net {
			net, netAt, lack = q.R-gain, k+step, 0
		}
		worst := rub // less what may rub, where it lacks most
		worst.e -= rubLack * rules.RubShare / 100 * area
		if worst.e < catch.e {
			worst = catch
		}
		if worst.e = (worst.e - CatchDepth) / 2; worst.e < 0 {
			worst.e = 0
		}
		out[k+step] = worst
	}
	return out
}

// least is what a scheme of such parts, with an upper one or without, asks with its
// seam where it asks least.
func (f *falls) least(upper bool) (e float64, i, j int32) {
	end := len(f.down) - 1
	if !upper {
		return f.down[end].e, f.down[end].i, f.down[end].j
	}
	e = math.Inf(1)
	for k := 1; k < end; k++ {
		worst := &f.down[k]
		if up := &f.up[k]; up.e > worst.e {
			worst = up
		}
		if worst.e < e {
			e, i, j = worst.e, worst.i, worst.j
		}
	}
	return e, i, j
}

// coreHeld is the error in mm below which a core that does not let go goes on so, and
// the heights that it hangs on, once found: all schemes have the same. It is the larger
// of what its radii ask in all and of what its walls do within a swing, which counts
// where they are short.
type coreHeld struct {
	known       bool
	e, from, to float64
}

func (c *coreHeld) find(inner *form.Meridian, rules Rules) (e, from, to float64) {
	if c.known {
		return c.e, c.from, c.to
	}
	last := len(inner.Pts) - 1
	f := along(inner, last, 0, rules)[0]
	*c = coreHeld{true, f.e, inner.Pts[f.i].Z, inner.Pts[f.j].Z}
	t := newTilts(inner, 0, last, release.Up, rules)
	if t.rubs(0, 1) {
		if x := t.until(swing); x > c.e {
			*c = coreHeld{true, x, inner.Pts[last].Z, inner.Pts[0].Z}
		}
	}
	return c.e, c.from, c.to
}

// slopes is the surface of side parts by its slope |dr/dz|, in bins of equal
// steps of the radial normal; the last bin is what faces no side part whatever
// its radii.
type slopes struct {
	bins      [slopeBins + 1]slopeBin
	half, sin float64 // of a sector, radians; of the least draft
	limit     float64 // percent that may rub
}

type slopeBin struct{ area, slope, r float64 } // means by area

const slopeBins = 64

func newSlopes(m *form.Meridian, a, b, sides int, rules Rules) *slopes {
	s := &slopes{half: math.Pi / float64(sides), sin: math.Sin(rules.LeastDraft * math.Pi / 180), limit: rules.RubShare}
	for i := a; i < b; i++ {
		p, q := m.Pts[i], m.Pts[i+1]
		area := form.BandArea(p, q)
		n := (q.Z - p.Z) / p.Dist(q)
		bin := &s.bins[slopeBins]
		if n > 1e-3 {
			bin = &s.bins[min(slopeBins-1, int(n*slopeBins))]
			if level := 1 - n*n; level > 0 {
				bin.slope += area * math.Sqrt(level) / n
			}
		}
		bin.area += area
		bin.r += area * (p.R + q.R) / 2
	}
	for k := range s.bins {
		if bin := &s.bins[k]; bin.area > 0 {
			bin.slope /= bin.area
			bin.r /= bin.area
		}
	}
	return s
}

// rubs is the percent of the surface that rubs when all walls are tilted by so
// much, toward level where it is positive. What rubs on more than the limit then
// grows with its radii, and the rest shrinks, as the error in a swing allows;
// where walls are tilted upright, the other way.
func (s *slopes) rubs(by float64) float64 {
	all, sum, e := 0.0, 0.0, by*swing/2
	for k := range s.bins {
		bin := &s.bins[k]
		if bin.area == 0 {
			continue
		}
		share, grows, slant := 1.0, 2*e/bin.r, 1.0 // both edges of what is level
		if k < slopeBins {
			slope := max(0, bin.slope+by)
			grows = e / bin.r
			long := math.Sqrt(1 + slope*slope)
			slant = long / math.Sqrt(1+bin.slope*bin.slope)
			if n := 1 / long; n > s.sin {
				share = max(0, 1-math.Acos(s.sin/n)/s.half)
			}
		}
		if 100*share <= s.limit {
			grows, slant = -grows, 1
		}
		area := bin.area * slant * max(0, 1+grows)
		all += area
		sum += area * share
	}
	if all == 0 {
		return 100
	}
	return 100 * sum / all
}

// until is the error in mm with which walls, tilting by twice that in a swing,
// take the share that rubs from now, in percent, to the limit; infinite where they
// never do. A section that is not round is taken to change as a round one.
func (s *slopes) until(now float64) float64 {
	sign := 1.0 // from clear to rubbing walls lean toward level
	if now > s.limit {
		sign = -1
	}
	first := s.rubs(0)
	change := func(by float64) bool { return sign*(now+s.rubs(sign*by)-first-s.limit) > 0 }
	// doubled from small steps, since what may grow by so much need not stay so
	high := 1e-3
	for !change(high) {
		if high *= 2; high > 20 { // a slope that is as good as level
			return math.Inf(1)
		}
	}
	low := high / 2
	if high == 1e-3 {
		low = 0
	}
	for range 10 {
		if mid := (low + high) / 2; change(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return low * swing / 2
}
