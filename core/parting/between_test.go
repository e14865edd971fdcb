package parting

import (
	"math"
	"slices"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

// refined has points put into every straight stretch that is not short, n pieces of
// each.
func refined(nodes []job.Node, n int) []job.Node {
	out := []job.Node{nodes[0]}
	for i := 1; i < len(nodes); i++ {
		p, q := nodes[i-1], nodes[i]
		if p.Corner && q.Corner && math.Hypot(q.R-p.R, q.Z-p.Z) > 0.5 {
			for k := 1; k < n; k++ {
				t := float64(k) / float64(n)
				out = append(out, job.Node{R: p.R + t*(q.R-p.R), Z: p.Z + t*(q.Z-p.Z), Corner: true})
			}
		}
		out = append(out, q)
	}
	return out
}

// banded is a random jar with a stretch near upright about its belly.
func banded(k uint64) []job.Node {
	g := formtest.Rand(17, k)
	r, z := 15+15*g.Float64(), 0.0
	nodes := []job.Node{corner(0, 0), corner(r, 0)}
	add := func(dr, dz float64) {
		r, z = math.Max(2, r+dr), z+dz
		nodes = append(nodes, corner(r, z))
	}
	add(10+20*g.Float64(), 20+30*g.Float64())
	for range 1 + g.IntN(3) {
		add(0.2*(g.Float64()-0.5), 1+3*g.Float64())
	}
	add(-10-15*g.Float64(), 20+30*g.Float64())
	add(-1, 0)
	return nodes
}

// capped are schemes with seams.
var capped = []string{"two", "sides2+lower", "sides2+upper", "sides2+lower+upper",
	"sides3+lower", "sides3+upper", "sides3+lower+upper", "sides4+lower", "sides4+upper", "sides4+lower+upper"}

// Points put into straight stretches give a seam no place that serves better
// than what was found without them: the verdict on schemes with seams stays. One part
// and side parts alone have no seam at all, and stay to the last figure.
func TestRefiningStraightStretchesKeepsTheVerdict(t *testing.T) {
	n := uint64(600)
	if testing.Short() {
		n = 150
	}
	within := map[string]int{}
	for k := range n {
		nodes := banded(k)
		if k%2 == 1 {
			_, nodes = formtest.Meridian(formtest.Rand(18, k))
		}
		a, err := lookAt(potOf(nodes...), mouth15, "")
		if err != nil {
			t.Fatal(err)
		}
		b, err := lookAt(potOf(refined(nodes, 25)...), mouth15, "")
		if err != nil {
			continue // points nearer to one another than can be told apart
		}
		for _, id := range append([]string{"one", "sides2", "sides3"}, capped...) {
			x, y := a.scheme(id), b.scheme(id)
			if x == nil || y == nil {
				if x != y {
					t.Errorf("profile %d: %s judged %v, refined %v\n%v", k, id, x != nil, y != nil, nodes)
				}
				continue
			}
			if !slices.Contains(capped, id) {
				if x.Verdict != y.Verdict && math.Abs(x.Depth-CatchDepth) > 1e-4 || math.Abs(x.RubArea-y.RubArea) > 1e-6*(1+x.RubArea) || math.Abs(x.Depth-y.Depth) > 0.01 {
					t.Errorf("profile %d: %s is %s %.4f mm %.6f cm2, refined %s %.4f mm %.6f cm2\n%v", k, id, x.Verdict, x.Depth, x.RubArea, y.Verdict, y.Depth, y.RubArea, nodes)
				}
				continue
			}
			w := newTwin(b.m, b.end, RulesOf(potOf(nodes...)))
			sliver := y.Lower && w.sliver(release.Down, 0, y.K1) || y.Upper && w.sliver(release.Up, y.K2, b.end)
			if x.Verdict.rank() > y.Verdict.rank() && !sliver && (y.Verdict != Clear || y.worstShare() < 4.99) && math.Abs(x.Depth-CatchDepth) > 1e-4 {
				t.Errorf("profile %d: %s is %s at %.3f, with more points %s at %.3f\n%v", k, id, x.Verdict, x.PartingHeights, y.Verdict, y.PartingHeights, nodes)
			}
			if x.Verdict == Clear && k%2 == 0 && (a.within(x.K1) || a.within(x.K2)) {
				within[id]++
			}
		}
	}
	t.Logf("of %d forms with a band, a seam within a stretch served on %v", n/2, within)
	if within["two"] < int(n)/60 {
		t.Errorf("a seam within a stretch served two parts on %d forms only", within["two"])
	}
}

// within tells whether point k was cut into a stretch.
func (l *look) within(k int) bool {
	return k > 0 && k < l.end && !l.m.Corner[k] && l.m.Node[k] < 0
}

// strained is a random pot whose rules are such that parts just rub, or just do
// not: straight stretches upright, near upright and leaning in any order, or two
// leaning walls, about a shelf or two that rub on side parts, of which caps and
// side parts alike need some to make up for what rubs of them.
func strained(k uint64) *job.Job {
	g := formtest.Rand(29, k)
	r, z := 4+20*g.Float64(), 0.0
	nodes := []job.Node{corner(0, 0), corner(r, 0)}
	if k%3 > 0 && g.IntN(2) == 0 { // a recessed foot, upright inside
		deep := 1 + 2*min(r, 12)*g.Float64()
		nodes = []job.Node{corner(0, deep), corner(r-1, deep), corner(r-1, 0), corner(r, 0)}
	}
	add := func(lean, dz float64) {
		r, z = math.Max(3, r+lean*dz), z+dz
		nodes = append(nodes, corner(r, z))
	}
	j := job.Defaults()
	if k%3 == 0 {
		for range 3 + g.IntN(3) {
			add([]float64{0, 0.04, 0.3, 1, 1.6}[g.IntN(5)]*(2*g.Float64()-1), 8+30*g.Float64())
		}
		j.Rules.LeastDraft, j.Rules.RubShare = 1+7*g.Float64(), 1+11*g.Float64()
	} else {
		shelf := func() {
			by := 3 + 12*g.Float64()
			add(-by/0.3, 0.3)
			add(0, []float64{5, 20}[g.IntN(2)]*g.Float64()+1)
			if g.IntN(2) == 0 {
				add(by/0.3, 0.3)
			}
		}
		add(0, 2+20*g.Float64())
		add(0.1+0.3*g.Float64(), 10+40*g.Float64())
		if k%6 < 5 {
			shelf()
		} else {
			add(0, 10*g.Float64())
			add(-0.1-0.3*g.Float64(), 10+30*g.Float64())
		}
		if k%3 == 1 {
			shelf()
			add(-0.1-0.3*g.Float64(), 10+30*g.Float64())
			add(0, 2+10*g.Float64())
		}
		j.Rules.LeastDraft, j.Rules.RubShare = 2+6*g.Float64(), 2+18*g.Float64()*g.Float64()
	}
	p := potOf(nodes...)
	p.Rules = j.Rules
	return p
}

// Against a slow twin: every choice of seams, or pair of them, on the form cut up
// finely, each summed up by itself. None is clear where the verdict is not, unless
// by less than the grain of the sums.
func TestSeamsWithinStretchesAgainstEverySeam(t *testing.T) {
	n := uint64(600)
	if testing.Short() {
		n = 150
	}
	within := map[string]int{}
	for k := range n {
		j := strained(k)
		a, err := lookAt(j, mouth15, "")
		if err != nil {
			continue // the recess reaches through the wall
		}
		fine := *j
		fine.Form.Outer = refined(j.Form.Outer, 8)
		m, err := form.Build(&fine)
		if err != nil {
			t.Fatal(err)
		}
		w := newTwin(m, len(m.Pts)-1, RulesOf(j))
		for _, id := range capped {
			best, s := 2, a.scheme(id)
			for _, x := range w.all(id) {
				best = min(best, w.rank(x, -0.01))
			}
			if best == 0 && s == nil || s != nil && best == 0 && s.Verdict != Clear {
				t.Errorf("profile %d: %s is %v, but can be clear, least draft %.3f, share %.3f\n%v", k, id, s, j.Rules.LeastDraft, j.Rules.RubShare, j.Form.Outer)
			}
			if s == nil || s.Verdict != Clear {
				continue
			}
			if s.Lower && a.within(s.K1) || s.Upper && a.within(s.K2) {
				within[id]++
			}
			// and what is told to be clear is: the seams, by the twin's sums
			w := newTwin(a.m, a.end, RulesOf(j))
			var x answer
			if s.K1 > 0 && s.Lower {
				w.take(&x, release.Down, "down", 0, s.K1)
			}
			if s.Sides > 0 {
				w.take(&x, release.Out, sidesName(s.Sides), s.K1, s.K2)
			}
			if s.Upper {
				w.take(&x, release.Up, "up", s.K2, a.end)
			}
			if w.rank(x, 0.001) > 0 {
				t.Errorf("profile %d: %s is told clear at %.3f, but rubs on %.4f %%, catches by %.4f", k, id, s.PartingHeights, x.share, x.depth)
			}
		}
	}
	t.Logf("of %d forms, a seam within a stretch served on %v", n, within)
	for _, caps := range []string{"+lower", "+upper", "+lower+upper"} {
		if !testing.Short() && within["sides2"+caps]+within["sides3"+caps] == 0 {
			t.Errorf("no seam within a stretch served side parts%s", caps)
		}
	}
}
