package parting

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/release"
)

// Wanted is what the user has settled.
type Wanted struct {
	Heights []float64 // parting heights in mm at mold size, lowest first; nil leaves them free
	Sides   int       // 0 leaves it free
}

// Mouth tells the radius in mm at which a closed form of the given greatest
// radius opens into its fill hole.
type Mouth func(j *job.Job, maxRadius float64) float64

// Judged is a job's form and all its schemes, as the plan sees them.
type Judged struct {
	// M is the form with the seams asked for, the edge of its mouth and seams that
	// serve within a span cut in; End the point at which its contour ends.
	M       *form.Meridian
	End     int
	Survey  *release.Survey
	Wanted  Wanted
	Schemes []Scheme // fewest parts first
	ledger  *ledger
}

// JudgeJob builds and surveys the job's form and judges every scheme on it. Errors
// are job.Faults.
func JudgeJob(j *job.Job, mouth Mouth) (*Judged, error) { return judgeJob(j, mouth, "") }

// judgeJob judges all schemes, or only the one with the id.
func judgeJob(j *job.Job, mouth Mouth, only string) (*Judged, error) {
	m, err := form.Build(j)
	if err != nil {
		return nil, err
	}
	m.Cut(j.Mold.PartingHeights)
	d := &Judged{M: m, End: len(m.Pts) - 1, Wanted: Wanted{Heights: j.Mold.PartingHeights}}
	if m.Closed {
		_, maxR := m.Extent()
		d.End = m.CutMouth(mouth(j, maxR))
	}
	if j.Mold.Sides != nil {
		d.Wanted.Sides = *j.Mold.Sides
	}
	all := kinds(d.Wanted.Sides)
	if only != "" {
		all = slices.DeleteFunc(all, func(k kind) bool { return k.id() != only })
	}
	rules := RulesOf(j)
	d.Survey = release.New(m)
	l, best := settled(d.Survey, d.End, rules, d.Wanted, all)
	if l.cutBetween(best, d.Wanted) {
		d.Survey, d.End = release.New(m), l.end
		l, best = settled(d.Survey, d.End, rules, d.Wanted, all)
	}
	d.Schemes, d.ledger = l.schemes(best), l
	return d, nil
}

// Judge judges every scheme on the surveyed form, fewest parts first, with seams at
// its points. The contour ends at point end of the meridian. Wanted heights must
// lie on points of the meridian (form.Meridian.Cut puts them there); they bind the
// schemes with as many seams, and the other schemes are judged freely.
func Judge(s *release.Survey, end int, rules Rules, w Wanted) []Scheme {
	l, best := settled(s, end, rules, w, kinds(w.Sides))
	return l.schemes(best)
}

// CutBetween puts points into the surveyed form where schemes that are not clear
// with seams at its points can be clear with some within a span. It gives the survey
// and the end of the contour that hold then.
func CutBetween(s *release.Survey, end int, rules Rules, w Wanted) (*release.Survey, int) {
	l, best := settled(s, end, rules, w, kinds(w.Sides))
	if l.cutBetween(best, w) {
		return release.New(l.m), l.end
	}
	return s, end
}

// choice is a kind with its best seams; ok is false where it has none.
type choice struct {
	kind
	trial
	ok bool
}

// settled finds the best seams of every kind.
func settled(s *release.Survey, end int, rules Rules, w Wanted, all []kind) (*ledger, []choice) {
	var sides []int
	for _, k := range all {
		if k.sides > 0 && !slices.Contains(sides, k.sides) {
			sides = append(sides, k.sides)
		}
	}
	l := newLedger(s, end, rules, sides)
	best := make([]choice, len(all))
	for i, k := range all {
		t, ok := l.search(k, w.Heights)
		best[i] = choice{k, t, ok}
	}
	return l, best
}

// cutBetween cuts the seams within spans that serve into the meridian and tells
// whether there are any; the ledger then knows the end of the contour only.
func (l *ledger) cutBetween(best []choice, w Wanted) bool {
	var heights []float64
	for _, c := range best {
		if c.ok && c.verdict == Clear || c.seams() == 0 || c.seams() == len(w.Heights) {
			continue
		}
		at := l.between(c.kind, true)
		if at == nil && (!c.ok || c.verdict == Catches) {
			at = l.between(c.kind, false)
		}
		if at == nil && !c.ok {
			at = l.anywhere()
		}
		heights = append(heights, at...)
	}
	n := len(l.m.Pts)
	l.m.Cut(heights)
	l.end += len(l.m.Pts) - n
	return len(l.m.Pts) > n
}

// schemes tells the choices in full.
func (l *ledger) schemes(best []choice) []Scheme {
	l.mark(best)
	var out []Scheme
	for _, c := range best {
		if c.ok {
			out = append(out, l.scheme(c.kind, c.trial))
		}
	}
	return out
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
		sc.Turn, sc.hook = l.sides[k.sides].turn*180/math.Pi, l.sides[k.sides].hook
	}
	for i := range k.sides {
		step := 360 / float64(k.sides)
		mid := (float64(i) + 0.5) * step * math.Pi / 180
		var p Part
		if i < len(l.sides[k.sides].tables) {
			p = l.part("", [3]float64{}, way{release.Out, k.sides, i}, t.k1, t.k2)
		} else { // like one before it
			p = sc.Parts[len(sc.Parts)-len(l.sides[k.sides].tables)]
		}
		p.Name, p.Pull = sideName(i), [3]float64{round(math.Cos(mid)), round(math.Sin(mid)), 0}
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

// stretch is the contour from point a to point b under a way.
type stretch struct {
	way
	a, b int
}

// part tells in full how the contour from point a to point b lets go. Many
// schemes have the same part, which is told once.
func (l *ledger) part(name string, vector [3]float64, w way, a, b int) Part {
	at := stretch{w, a, b}
	k := slices.IndexFunc(l.told, func(t told) bool { return t.stretch == at })
	if k < 0 {
		k = len(l.told)
		l.told = append(l.told, told{at, l.tell(w, a, b)})
	}
	p := l.told[k].part
	p.Name, p.Pull = name, vector
	return p
}

// told is a stretch as it was told, without name and pull.
type told struct {
	stretch
	part Part
}

func (l *ledger) tell(w way, a, b int) Part {
	t := l.of(w)
	p := Part{MinDraft: t.leastDraft(a, b)}
	p.ZFrom, p.ZTo = l.heights(a, b)
	share := 1.0
	if w.sides > 0 {
		share = 1 / float64(w.sides)
	}
	cm2 := share / 100
	area := t.area[b] - t.area[a]
	rub := t.rub[b] - t.rub[a]
	p.Area, p.RubArea = area*cm2, rub*cm2
	if area > 0 {
		p.RubShare = 100 * rub / area
	}
	p.Bands = t.bands(a, b, cm2)
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

// heights are the lowest and the highest of points a to b, mm.
func (l *ledger) heights(a, b int) (low, high float64) {
	for i := range l.told { // side parts of all numbers often hold the same
		if t := &l.told[i]; t.a == a && t.b == b {
			return t.part.ZFrom, t.part.ZTo
		}
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range l.m.Pts[a : b+1] {
		if p.Z < low {
			low = p.Z
		}
		if p.Z > high {
			high = p.Z
		}
	}
	return low, high
}

// catches gathers the samples on spans a to b-1 into stretches that hook.
func (l *ledger) catches(w way, a, b int) []Catch {
	out := []Catch{}
	if l.deepestOf(w, a, b) <= CatchDepth {
		return out
	}
	var c Catch
	open := false
	shut := func() {
		if open && c.Depth > CatchDepth {
			c.ClayForgives = c.ClayDepth <= CatchDepth
			out = append(out, c)
		}
		open = false
	}
	samples := l.s.Samples[w.pull]
	first := sort.Search(len(samples), func(k int) bool { return samples[k].Span >= a })
	last := a // span
	for i := first; i < len(samples) && samples[i].Span < b; i++ {
		s := &samples[i]
		if s.Depth <= release.Free || s.Span > last+1 { // free itself, or a span between
			shut()
		}
		last = s.Span
		if s.Depth <= release.Free {
			continue
		}
		if !open {
			c = Catch{ZFrom: s.P.Z, ZTo: s.P.Z}
			open = true
		}
		if s.P.Z < c.ZFrom {
			c.ZFrom = s.P.Z
		}
		if s.P.Z > c.ZTo {
			c.ZTo = s.P.Z
		}
		if s.Depth > c.Depth {
			c.Depth, c.AtZ, c.AtR, c.BlockedAtZ, c.BlockedAtR = s.Depth, s.P.Z, s.P.R, s.Block.Z, s.Block.R
		}
		if left := s.Left(l.rules.ReleaseShrinkage / 100); left > c.ClayDepth { // at least 0
			c.ClayDepth = left
		}
	}
	shut()
	if w.pull == release.Out && a < b {
		if c, ok := l.sectionCatch(w.sides, a, b); ok {
			out = append(out, c)
		}
	}
	row := -1 // each row of dimples is told once
	for _, e := range l.extra[way{w.pull, w.sides, 0}] {
		switch {
		case e.on.Span < a || e.on.Span >= b || e.catch.Depth <= CatchDepth:
		case e.row != row:
			row = e.row
			out = append(out, e.catch)
		case e.catch.Depth > out[len(out)-1].Depth:
			out[len(out)-1] = e.catch
		}
	}
	return out
}

// String tells a scheme in short, for tests and logs.
func (s Scheme) String() string {
	return fmt.Sprintf("%s %s %.2f", s.ID, s.Verdict, s.PartingHeights)
}
