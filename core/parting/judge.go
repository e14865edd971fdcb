package parting

import (
	"fmt"
	"math"
	"slices"

	"moldwright/core/release"
)

// Wanted is what the user has settled.
type Wanted struct {
	Heights []float64 // parting heights in mm at mold size, lowest first; nil leaves them free
	Sides   int       // 0 leaves it free
}

// Judge judges every scheme on the surveyed form, fewest parts first. The
// contour ends at point end of the meridian. Wanted heights must lie on points
// of the meridian (form.Meridian.Cut puts them there); they bind the schemes
// with as many seams, and the other schemes are judged freely.
func Judge(s *release.Survey, end int, rules Rules, w Wanted) []Scheme {
	all := kinds(w.Sides)
	sides := []int{2, 3, 4}
	if w.Sides > 4 {
		sides = append(sides, w.Sides)
	}
	l := newLedger(s, end, rules, sides)
	var out []Scheme
	for _, k := range all {
		if t, ok := l.search(k, w.Heights); ok {
			out = append(out, l.scheme(k, t))
		}
	}
	return out
}

// search finds the best seams for a kind.
func (l *ledger) search(k kind, heights []float64) (trial, bool) {
	var pinned []int
	if len(heights) == k.seams() && k.seams() > 0 {
		for _, z := range heights {
			p, ok := l.at(z)
			if !ok {
				return trial{}, false
			}
			pinned = append(pinned, p)
		}
	}
	lows, highs := []int{0}, []int{l.end}
	switch {
	case k.sides == 0 && !k.upper:
		lows = []int{l.end}
	case k.sides == 0:
		lows = l.places(pinned, 0)
	default:
		if k.lower {
			lows = l.places(pinned, 0)
		}
		if k.upper {
			highs = l.places(pinned, len(pinned)-1)
		}
	}
	var best trial
	found := false
	for _, a := range lows {
		for _, b := range highs {
			k1, k2 := a, b
			if k.sides == 0 {
				k2 = a
			} else if k1 >= k2 {
				continue
			}
			if t := l.try(k, k1, k2); !found || l.better(t, best) {
				best, found = t, true
			}
		}
	}
	return best, found
}

// at is the point of the contour whose seam lies at height z.
func (l *ledger) at(z float64) (int, bool) {
	best, at := 0.01, -1
	for k := 1; k <= l.end; k++ {
		if d := math.Abs(l.m.Pts[k].Z - z); l.seam[k] && d < best {
			best, at = d, k
		}
	}
	return at, at > 0 && at < l.end
}

// fewPlaces is up to how many points of a contour all are tried as seams where
// two are sought together; above that only those that can be best.
const fewPlaces = 40

// places are the points to try as a seam: the i-th pinned one where seams are
// pinned; else every point at which something changes: an edge of the form, an
// extreme of r or z, the ends of catching under each pull, and points where
// the draft for one pull passes that for another.
func (l *ledger) places(pinned []int, i int) []int {
	if len(pinned) > 0 {
		return []int{pinned[i]}
	}
	var all, some []int
	for k := 1; k < l.end; k++ {
		if !l.seam[k] {
			continue
		}
		all = append(all, k)
		if l.m.Corner[k] || l.m.Node[k] >= 0 && l.turnsAt(k) || l.changes(k) {
			some = append(some, k)
		}
	}
	if len(all) <= fewPlaces {
		return all
	}
	if len(some) > fewPlaces { // thin out evenly: a form of so many edges has one near any place
		thin := make([]int, 0, fewPlaces)
		for i := range fewPlaces {
			thin = append(thin, some[i*len(some)/fewPlaces])
		}
		some = append(thin, l.pivots()...)
		slices.Sort(some)
		some = slices.Compact(some)
	}
	if len(some) == 0 {
		return all
	}
	return some
}

// turnsAt tells whether r has an extreme at point k.
func (l *ledger) turnsAt(k int) bool {
	p, q, r := l.m.Pts[k-1], l.m.Pts[k], l.m.Pts[k+1]
	return (q.R-p.R)*(r.R-q.R) <= 0
}

// changes tells whether, for some pull, catching begins or ends at point k, or
// rubbing does.
func (l *ledger) changes(k int) bool {
	for _, pull := range release.Pulls {
		d := l.deepest[pull]
		if (d[k-1] > CatchDepth) != (d[k] > CatchDepth) || (d[k-1] > release.Free) != (d[k] > release.Free) {
			return true
		}
	}
	for _, pull := range [2]release.Pull{release.Down, release.Up} {
		rub := l.tables[way{pull: pull}].below[0]
		if (rub[k] > rub[k-1]) != (rub[k+1] > rub[k]) {
			return true
		}
	}
	return false
}

// pivots are the points that bound what can be free: the last up to which all
// is free downward, the first from which all is free upward, and the widest.
func (l *ledger) pivots() []int {
	var out []int
	widest := 1
	for k := 1; k < l.end; k++ {
		if !l.seam[k] {
			continue
		}
		if l.m.Pts[k].R > l.m.Pts[widest].R || !l.seam[widest] {
			widest = k
		}
		if (l.down[k] <= CatchDepth) != (l.down[k+1] <= CatchDepth) || (l.up[k-1] <= CatchDepth) != (l.up[k] <= CatchDepth) {
			out = append(out, k)
		}
	}
	return append(out, widest)
}

// scheme tells a trial in full.
func (l *ledger) scheme(k kind, t trial) Scheme {
	sc := Scheme{ID: k.id(), Count: k.count(), Verdict: t.verdict, PartingHeights: []float64{},
		RubArea: t.rub / 100, Depth: t.depth, Sides: k.sides, Lower: k.lower, Upper: k.upper, K1: t.k1, K2: t.k2}
	if k.lower && t.k1 < l.end {
		sc.PartingHeights = append(sc.PartingHeights, l.m.Pts[t.k1].Z)
	}
	if k.upper && k.sides > 0 {
		sc.PartingHeights = append(sc.PartingHeights, l.m.Pts[t.k2].Z)
	}
	if k.lower {
		sc.Parts = append(sc.Parts, l.part("lower", [3]float64{0, 0, -1}, way{pull: release.Down}, 0, t.k1))
	}
	if k.sides > 0 {
		sc.Turn = l.around[k.sides].turn * 180 / math.Pi
	}
	for i := range k.sides {
		step := 360 / float64(k.sides)
		mid := (float64(i) + 0.5) * step * math.Pi / 180
		like := i % l.unlike(k.sides)
		p := l.part(string(rune('A'+i)), [3]float64{round(math.Cos(mid)), round(math.Sin(mid)), 0}, way{release.Out, k.sides, like}, t.k1, t.k2)
		p.Sector = &[2]float64{float64(i) * step, float64(i+1) * step}
		sc.Parts = append(sc.Parts, p)
	}
	if k.upper {
		sc.Parts = append(sc.Parts, l.part("upper", [3]float64{0, 0, 1}, way{pull: release.Up}, t.k2, l.end))
	}
	return sc
}

// round clears the noise from a direction that should be a plain number.
func round(v float64) float64 {
	if r := math.Round(v); math.Abs(v-r) < 1e-12 {
		return r + 0 // no negative zero
	}
	return v
}

// part tells in full how the contour from point a to point b lets go.
func (l *ledger) part(name string, vector [3]float64, w way, a, b int) Part {
	p := Part{Name: name, Pull: vector, ZFrom: math.Inf(1), ZTo: math.Inf(-1), Catches: []Catch{}}
	t := l.tables[w]
	p.MinDraft = 90
	for i := a; i < b; i++ {
		p.MinDraft = math.Min(p.MinDraft, t.least[i])
	}
	for i := a; i <= b; i++ {
		p.ZFrom, p.ZTo = math.Min(p.ZFrom, l.m.Pts[i].Z), math.Max(p.ZTo, l.m.Pts[i].Z)
	}
	share := 1.0
	if w.sides > 0 {
		share = 1 / float64(w.sides)
	}
	cm2 := share / 100
	area := t.area[b] - t.area[a]
	below := func(e int) float64 { return t.below[e][b] - t.below[e][a] }
	p.Area, p.RubArea = area*cm2, below(0)*cm2
	if area > 0 {
		p.RubShare = 100 * below(0) / area
	}
	for e := 1; e < len(bandEdges); e++ { // table column e holds bandEdges[e-1]
		to := area // face-on counts in the last band
		if e < len(bandEdges)-1 {
			to = below(e + 1)
		}
		p.Bands = append(p.Bands, Band{bandEdges[e-1], bandEdges[e], (to - below(e)) * cm2})
	}
	p.Catches = l.catches(w, a, b)
	p.ClayForgives = len(p.Catches) > 0
	for _, c := range p.Catches {
		p.ClayForgives = p.ClayForgives && c.ClayForgives
	}
	switch {
	case len(p.Catches) > 0:
		p.Verdict = Catches
	case p.RubShare > l.rules.RubShare:
		p.Verdict = Rubs
	default:
		p.Verdict = Clear
	}
	return p
}

// catches gathers the samples on spans a to b-1 into stretches that hook.
func (l *ledger) catches(w way, a, b int) []Catch {
	out := []Catch{}
	var c Catch
	open := false
	shut := func() {
		if open && c.Depth > CatchDepth {
			c.ClayForgives = c.ClayDepth <= CatchDepth
			out = append(out, c)
		}
		open = false
	}
	for _, s := range l.s.Samples[w.pull] {
		if s.Span < a || s.Span >= b {
			continue
		}
		if s.Depth <= release.Free {
			shut()
			continue
		}
		if !open {
			c = Catch{ZFrom: s.P.Z, ZTo: s.P.Z}
			open = true
		}
		c.ZFrom, c.ZTo = math.Min(c.ZFrom, s.P.Z), math.Max(c.ZTo, s.P.Z)
		if s.Depth > c.Depth {
			c.Depth, c.AtZ, c.AtR, c.BlockedAtZ, c.BlockedAtR = s.Depth, s.P.Z, s.P.R, s.Block.Z, s.Block.R
		}
		left := s.Depth // the cast draws away from what lies outside it only
		if s.Outward {
			left = math.Max(0, s.Depth-l.rules.ReleaseShrinkage/100*s.Block.R)
		}
		c.ClayDepth = math.Max(c.ClayDepth, left)
	}
	shut()
	if w.pull == release.Out && a < b {
		if c, ok := l.sectionCatch(w.sides, a, b); ok {
			out = append(out, c)
		}
	}
	for _, e := range l.extra[way{w.pull, w.sides, 0}] {
		if a <= e.span && e.span < b && e.catch.Depth > CatchDepth {
			out = append(out, e.catch)
		}
	}
	return out
}

// String tells a scheme in short, for tests and logs.
func (s Scheme) String() string {
	return fmt.Sprintf("%s %s %.2f", s.ID, s.Verdict, s.PartingHeights)
}
