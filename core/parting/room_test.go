package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

// lipped is a strained pot of which some edges stand out by a hair, just less or just
// more than counts as a catch, so that a level plane runs outward only from within
// the stretches beside them.
func lipped(k uint64) *job.Job {
	g := formtest.Rand(31, k)
	j := strained(k)
	nodes := j.Form.Outer
	out := nodes[:2:2]
	for i := 2; i < len(nodes); i++ {
		p, q := nodes[i-1], nodes[i]
		by := 0.02 + 0.05*g.Float64()
		if q.Z-p.Z > 3 && p.Z > 0 {
			switch g.IntN(3) {
			case 0: // a ledge at its foot
				out = append(out, corner(p.R-by, p.Z))
			case 1: // and a roof at its head
				out = append(out, corner(p.R-by, p.Z), corner(q.R-by, q.Z))
			}
		}
		out = append(out, q)
	}
	j.Form.Outer = out
	return j
}

// Against the slow twin of every seam, on pots with lips of a hair: nothing that lets
// go, or only rubs, is missed; and no more than can be is claimed.
func TestSeamsBesideLipsAgainstEverySeam(t *testing.T) {
	n := uint64(900)
	if testing.Short() {
		n = 150
	}
	seen, slivers := 0, 0
	for k := range n {
		j := lipped(k)
		a, err := lookAt(j, mouth15, "")
		if err != nil {
			continue
		}
		fine := *j
		fine.Form.Outer = refined(j.Form.Outer, 6)
		m, err := form.Build(&fine)
		if err != nil {
			continue // points nearer to one another than can be told apart
		}
		w := newTwin(m, len(m.Pts)-1, RulesOf(j))
		w.thick = true
		seen++
		for _, id := range capped {
			best := 3
			for _, x := range w.all(id) {
				best = min(best, w.rank(x, -0.01))
			}
			s := a.scheme(id)
			switch {
			case s == nil:
				if best < 3 {
					t.Errorf("profile %d: %s has no seams, but can have rank %d\n%v", k, id, best, j.Form.Outer)
				}
			case best < s.Verdict.rank():
				t.Errorf("profile %d: %s is %v by %.3f mm, but can be of rank %d, least draft %.3f, share %.3f\n%v", k, id, s, s.Depth, best, j.Rules.LeastDraft, j.Rules.RubShare, j.Form.Outer)
			case s.Verdict != Catches && (s.Lower && a.within(s.K1) || s.Upper && s.Sides > 0 && a.within(s.K2)):
				slivers++
			}
		}
	}
	t.Logf("%d forms, %d schemes let go or only rub with a seam within a stretch", seen, slivers)
	if !testing.Short() && slivers < seen/50 {
		t.Errorf("only %d schemes of %d forms needed a seam within a stretch", slivers, seen)
	}
}

// By hand: a wall that stands back by 0.03 mm all along between two lips rubs on a
// lower part and on an upper one, but not when each has half. Nothing is open outward
// but the insides of the stretch and the lips.
func TestSeamBetweenLips(t *testing.T) {
	j := potOf(corner(0, 0), corner(20, 0), corner(40, 60), corner(39.97, 60), corner(39.97, 64), corner(40, 64), corner(20, 124))
	a, err := lookAt(j, mouth15, "two")
	if err != nil {
		t.Fatal(err)
	}
	s := a.scheme("two")
	if s == nil || s.Verdict != Clear || math.Abs(s.PartingHeights[0]-62) > 1 || math.Abs(s.Depth-0.03) > 1e-6 {
		t.Fatalf("%v by %.4f mm, want two clear parts that meet within the stretch from 60 to 64 and catch by 0.03", s, s.Depth)
	}
}

// unlike is a strained pot whose section makes side parts unlike.
func unlike(k uint64) *job.Job {
	g := formtest.Rand(37, k)
	j := strained(k)
	switch g.IntN(3) {
	case 0:
		j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: 0.8 + 0.19*g.Float64()}
	case 1:
		j.Form.Section = job.Section{Kind: job.SectionPolygon, Count: 3 + g.IntN(5), Rounding: 60 + 39*g.Float64()}
	default:
		j.Form.Section = job.Section{Kind: job.SectionFlutes, Count: 3 + g.IntN(5), Depth: 0.3 + 2*g.Float64()}
	}
	return j
}

// Against a slow twin, every pair of points on the form cut up finely: of side parts
// that are unlike, each asks its own of the two seams, and no pair that suits all is
// missed. What is told to be clear is, part by part.
func TestPairsOfSeamsForUnlikeSideParts(t *testing.T) {
	n := uint64(600)
	if testing.Short() {
		n = 100
	}
	seen, found, within := 0, 0, 0
	for k := range n {
		j := unlike(k)
		a, err := lookAt(j, mouth15, "")
		if err != nil {
			continue
		}
		fine := *j
		fine.Form.Outer = refined(j.Form.Outer, 3)
		m, err := form.Build(&fine)
		if err != nil {
			t.Fatal(err)
		}
		w := newTwin(m, len(m.Pts)-1, RulesOf(j))
		l := newLedger(release.New(m), len(m.Pts)-1, RulesOf(j), []int{2, 3, 4})
		for _, kd := range kinds(0) {
			if kd.seams() < 2 || len(l.sides[kd.sides].tables) < 2 {
				continue
			}
			seen++
			s := a.scheme(kd.id())
			if s != nil && s.Verdict == Clear {
				found++
				if a.within(s.K1) || a.within(s.K2) {
					within++
				}
				for _, p := range s.Parts {
					if p.Verdict != Clear {
						t.Errorf("pot %d: %s is clear, its part %s %s", k, s, p.Name, p.Verdict)
					}
				}
				continue
			}
			for i, p := range l.open {
				for _, q := range l.open[i+1:] {
					depth := l.depth(kd, p, q)
					if depth > CatchDepth-1e-4 || w.sliver(release.Down, 0, p) || w.sliver(release.Up, q, l.end) {
						continue
					}
					x := l.try(kd, p, q, depth)
					if s == nil || x.rank < s.Verdict.rank() && (x.verdict == Rubs || 100*x.worst < l.rules.RubShare-0.01) {
						t.Fatalf("pot %d: %s is %v, but %s at %.3f and %.3f\n%v %+v", k, kd.id(), s, x.verdict, m.Pts[p].Z, m.Pts[q].Z, j.Form.Outer, j.Form.Section)
					}
				}
			}
		}
	}
	t.Logf("%d schemes of unlike side parts, %d clear, %d of them with a seam within a stretch", seen, found, within)
	if found < seen/50 {
		t.Errorf("only %d schemes of %d are clear", found, seen)
	}
}
