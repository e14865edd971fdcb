package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

// What the search for seams leaves out, and how little that is.

// cutFinely cuts every curved span, or every one, into n pieces where a level plane
// can run outward from it.
func cutFinely(m *form.Meridian, n int, all bool) {
	var at []float64
	for i, s := range m.Spans {
		p, q := m.Pts[i], m.Pts[i+1]
		if !all && s.A0 == s.A1 || p.Dist(q) < 0.1 {
			continue
		}
		for k := 1; k < n; k++ {
			at = append(at, p.Lerp(q, float64(k)/float64(n)).Z)
		}
	}
	m.Cut(at)
}

// builtFinely is the contour of a pot, cut finely, and its last point.
func builtFinely(t *testing.T, j *job.Job, n int, all bool) (m *form.Meridian, end int) {
	m, err := form.Build(j)
	if err != nil {
		t.Fatal(err)
	}
	cutFinely(m, n, all)
	end = len(m.Pts) - 1
	if m.Closed {
		_, r := m.Extent()
		end = m.CutMouth(mouth15(j, r))
	}
	return m, end
}

// Curved spans count as straight when seams are sought within them. Cut into five each,
// they give no scheme a better verdict, unless by less than 0.05 percent of a part's
// surface or a hundredth of a millimetre.
func TestSeamsWithinCurvedSpans(t *testing.T) {
	n := uint64(400)
	if testing.Short() {
		n = 80
	}
	seen := 0
	for k := range n {
		g := formtest.Rand(43, k)
		var j = strained(k)
		if k%2 == 0 {
			_, nodes := formtest.Meridian(g)
			j = potOf(nodes...)
		}
		for i := 2; i+1 < len(j.Form.Outer); i++ {
			j.Form.Outer[i].Corner = j.Form.Outer[i].Corner && g.IntN(3) == 0
		}
		a, err := lookAt(j, mouth15, "")
		if err != nil {
			continue
		}
		m, end := builtFinely(t, j, 5, false)
		rules := RulesOf(j)
		s, end := CutBetween(release.New(m), end, rules, Wanted{})
		fine := Judge(s, end, rules, Wanted{})
		seen++
		for _, id := range capped {
			x, i := a.scheme(id), Index(fine, id)
			if i < 0 || x == nil {
				continue
			}
			y := &fine[i]
			if x.Verdict.rank() <= y.Verdict.rank() {
				continue
			}
			w := newTwin(s.M, end, rules)
			if y.Lower && w.sliver(release.Down, 0, y.K1) || y.Upper && w.sliver(release.Up, y.K2, end) {
				continue
			}
			if math.Abs(x.Depth-CatchDepth) > 0.01 && !(y.Verdict == Clear && y.worstShare() > rules.RubShare-0.05) {
				t.Errorf("form %d: %s is %v (%.4f mm, %.3f %%), cut finely %v (%.4f mm, %.3f %%)\n%v", k, id, x, x.Depth, x.worstShare(), y, y.Depth, y.worstShare(), j.Form.Outer)
			}
		}
	}
	t.Logf("%d forms", seen)
}

// A cap that would hold nothing but what catches is not sought. Every seam of the form
// cut finely is tried: such a cap makes no scheme clear that is not without it, since
// what looks away from its pull rubs; it only lets some rub that are told to catch, few
// of them, and mostly the scheme without the cap rubs as well.
func TestCapsOfSliversAreNotMissed(t *testing.T) {
	n := uint64(400)
	if testing.Short() {
		n = 60
	}
	schemes, slivers := 0, 0
	for k := range n {
		_, nodes := formtest.Meridian(formtest.Rand(47, k))
		j := potOf(nodes...)
		a, err := lookAt(j, mouth15, "")
		if err != nil {
			continue
		}
		m, end := builtFinely(t, j, 5, true)
		if end > 200 {
			continue
		}
		w := newTwin(m, end, RulesOf(j))
		for _, id := range capped {
			best := 3
			for _, x := range w.all(id) {
				best = min(best, w.rank(x, -0.05))
			}
			s := a.scheme(id)
			if s == nil {
				continue
			}
			schemes++
			if best >= s.Verdict.rank() {
				continue
			}
			slivers++
			if best == Clear.rank() {
				t.Errorf("form %d: %s is %v, but can be clear\n%v", k, id, s, nodes)
			}
		}
	}
	t.Logf("of %d schemes %d only rub with a cap of what catches", schemes, slivers)
	if slivers*50 > schemes {
		t.Errorf("%d of %d schemes do better with a cap of what catches", slivers, schemes)
	}
}
