package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

// patterned judges polygonal nodes with a section at mold size and tells how far the
// choice can be trusted.
func patterned(t *testing.T, nodes []job.Node, s job.Section) (Robustness, []Scheme, int) {
	t.Helper()
	j := potOf(nodes...)
	j.Form.Section = s
	m, err := form.Build(j)
	if err != nil {
		t.Fatal(err)
	}
	end := len(m.Pts) - 1
	all := Judge(release.New(m), end, RulesOf(j), Wanted{})
	k := Choose(all, 0, func(int) float64 { return 0 })
	return Robust(m, end, nil, all, k, RulesOf(j)), all, k
}

// wronged are nodes with radii wrong by up to e.
func wronged(nodes []job.Node, by func(i int) float64) []job.Node {
	out := append([]job.Node{}, nodes...)
	for i := range out[1:] {
		out[i+1].R = math.Max(1, out[i+1].R+by(i))
	}
	return out
}

// changed tells how the choice c has fallen among schemes, "" where it stands.
func changed(all []Scheme, c *Scheme) string {
	for i := range all {
		if s := &all[i]; s.ID == c.ID && s.Verdict != Clear {
			return s.ID + " is " + string(s.Verdict)
		} else if s.Count < c.Count && s.Verdict == Clear {
			return s.ID + " is clear"
		}
	}
	return ""
}

// While the radii of pots with sections and dimples are wrong by less than is said,
// whichever way, the choice stands; and what is said is more than nothing where only
// the pattern stands against fewer parts.
func TestChoiceStandsWithPatterns(t *testing.T) {
	n := uint64(320)
	if testing.Short() {
		n = 40
	}
	seen, some, beyond, within := 0, 0, 0, map[uint64]bool{}
	for k := range n {
		g := formtest.Rand(43, k)
		r, z := 25+15*g.Float64(), 0.0
		nodes := []job.Node{corner(0, 0), corner(r, 0)}
		for range 1 + g.IntN(2) {
			dz := 30 + 15*g.Float64()
			r, z = r+dz*(0.08+0.4*g.Float64()), z+dz
			nodes = append(nodes, corner(r, z))
		}
		var s job.Section
		switch k % 4 {
		case 0:
			s = job.Section{Kind: job.SectionFlutes, Count: 3 + g.IntN(6), Depth: 0.5 + 3*g.Float64()}
		case 1:
			s = job.Section{Kind: job.SectionPolygon, Count: 3 + g.IntN(4), Rounding: 40 + 50*g.Float64()}
		default:
			s = job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: 2 + g.IntN(6), Heights: []float64{z * (0.3 + 0.4*g.Float64())}, Diameter: 6 + 3*g.Float64(), Depth: 0.2 + 2*g.Float64()}}
		}
		rob, all, at := patterned(t, nodes, s)
		c := all[at]
		if c.Verdict != Clear || rob.RadiusMM < 0 {
			continue
		}
		seen++
		if rob.RadiusMM > 0.01 {
			some++
		}
		for try := range 8 {
			share := 0.98
			if try == 7 {
				share = 3
			}
			_, now, _ := patterned(t, wronged(nodes, func(i int) float64 {
				switch try {
				case 0:
					return share * rob.RadiusMM
				case 1:
					return -share * rob.RadiusMM
				case 2, 7:
					return math.Copysign(share*rob.RadiusMM, float64(i%2)-0.5)
				case 3:
					return math.Copysign(share*rob.RadiusMM, 0.5-float64(i%2))
				}
				return share * rob.RadiusMM * (2*g.Float64() - 1)
			}), s)
			if bad := changed(now, &c); try == 7 && bad != "" {
				beyond++
			} else if bad != "" && try != 7 {
				within[k] = true
				t.Logf("pot %d: chosen %s, true to %.3f mm (%s %s), but with radii within that, try %d, %s\n%v %+v", k, c.ID, rob.RadiusMM, rob.Reason, rob.Scheme, try, bad, nodes, s)
			}
		}
	}
	if len(within) > 0 {
		t.Errorf("on %d of %d pots the choice fell within what is said", len(within), seen)
	}
	t.Logf("%d pots, on %d of which more than 0.01 mm is said; beyond it the choice fell on %d", seen, some, beyond)
	if seen < int(n)/3 || some*2 < seen || beyond == 0 {
		t.Errorf("%d pots, %d with more than 0.01 mm, %d fell beyond", seen, some, beyond)
	}
}

// By hand: dimples as deep as half a ball in a cone hold one part however little its
// radii are wrong, and nothing else stands against it.
func TestDimplesDoNotHangOnAHair(t *testing.T) {
	nodes := []job.Node{corner(0, 0), corner(30, 0), corner(45, 100)}
	s := job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: 12, Heights: []float64{50}, Diameter: 8, Depth: 4}}
	r, all, k := patterned(t, nodes, s)
	if all[0].Verdict != Catches {
		t.Fatalf("one part is %s", all[0].Verdict)
	}
	for i := range all {
		if e, _, _ := freed(mustForm(t, nodes, s), 2, &all[i], Rules{LeastDraft: 3, RubShare: 5}, new(falls), math.Inf(1)); i != k && all[i].Sides == 0 && all[i].Verdict == Catches && e < 1 {
			t.Errorf("%s, held by its dimples by %.2f mm, is said to come free at %.3f mm", all[i].ID, all[i].Depth, e)
		}
	}
	if r.RadiusMM == 0 {
		t.Errorf("%s: %+v", all[k].ID, r)
	}
}

func mustForm(t *testing.T, nodes []job.Node, s job.Section) *form.Meridian {
	t.Helper()
	j := potOf(nodes...)
	j.Form.Section = s
	m, err := form.Build(j)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// A dimple lies across an edge of the form: with the radii at both ends drawn in and the
// edge pushed out by 4.13 mm, the wall bends so that one part lets go of it. So no more
// than that may be said.
func TestDimpleAcrossAnEdge(t *testing.T) {
	nodes := []job.Node{corner(0, 0), corner(29.434, 0), corner(32.974, 40.459), corner(45.654, 76.489)}
	s := job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: 7, Heights: []float64{41.681}, Diameter: 6.333, Depth: 0.209}}
	r, all, k := patterned(t, nodes, s)
	c := all[k]
	_, now, _ := patterned(t, wronged(nodes, func(i int) float64 { return 4.13 * []float64{-1, 1, -1}[i] }), s)
	if changed(all, &c) != "" || changed(now, &c) == "" {
		t.Fatalf("%s: as it is %q, wrong by 4.13 mm %q", c.ID, changed(all, &c), changed(now, &c))
	}
	if r.RadiusMM > 4.13 || r.RadiusMM < 0.1 {
		t.Errorf("true to %.3f mm", r.RadiusMM)
	}
}
