package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

// patterned judges polygonal nodes with a section at mold size and tells how far the
// choice can be trusted.
func patterned(t *testing.T, nodes []job.Node, s job.Section) (Robustness, []Scheme, int) {
	t.Helper()
	m, all, rules := sectioned(t, s, nodes)
	k := Choose(all, 0, func(int) float64 { return 0 })
	return Robust(m, len(m.Pts)-1, nil, all, k, rules), all, k
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

// Pots on which the choice once fell within what was said: the first two since a dimple
// catches less on a wall a little nearer to the axis, or tilted a little, than on one
// tilted as far as may be; the others since dimples lie across an edge, at which the
// wall bends, and may do so more within a swing. Radii are tried wrong by ever more, each either way, until the choice falls.
func TestChoiceFallsNoSoonerThanSaid(t *testing.T) {
	for _, c := range []struct {
		nodes   []job.Node
		dimples job.Dimples
		most    float64 // mm, once said
	}{
		{[]job.Node{corner(0, 0), corner(36.87494, 0), corner(44.25718, 44.46358)}, job.Dimples{Around: 6, Heights: []float64{27.74172}, Diameter: 8.79370, Depth: 1.574005}, 2.129},
		{[]job.Node{corner(0, 0), corner(27.75273, 0), corner(31.75428, 36.27258)}, job.Dimples{Around: 5, Heights: []float64{11.16424}, Diameter: 6.46184, Depth: 1.641936}, 2.426},
		{[]job.Node{corner(0, 0), corner(27.16101, 0), corner(30.76341, 26.78178), corner(32.10849, 36.78178), corner(34.87046, 46.78178), corner(44.14776, 80.37099)}, job.Dimples{Around: 6, Heights: []float64{36.99296}, Diameter: 8.19192, Depth: 0.246308}, 0.411},
		{[]job.Node{corner(0, 0), corner(29.43402, 0), corner(32.09922, 30.45949), corner(32.97421, 40.45949), corner(36.49341, 50.45949), corner(45.65393, 76.48948)}, job.Dimples{Around: 7, Heights: []float64{41.68116}, Diameter: 6.33299, Depth: 0.208959}, 4.218},
	} {
		s := job.Section{Kind: job.SectionRound, Dimples: &c.dimples}
		r, all, k := patterned(t, c.nodes, s)
		chosen, falls := all[k], math.Inf(1)
		for e := 0.02; e < c.most && math.IsInf(falls, 1); e *= 1.1 {
			for signs := range 1 << (len(c.nodes) - 1) {
				_, now, _ := patterned(t, wronged(c.nodes, func(i int) float64 { return e * float64(signs>>i&1*2-1) }), s)
				if changed(now, &chosen) != "" {
					falls = e
				}
			}
		}
		t.Logf("true to %.3f mm, falls at %.3f", r.RadiusMM, falls)
		if math.IsInf(falls, 1) || r.RadiusMM > falls || r.RadiusMM <= 0 {
			t.Errorf("%v: true to %.3f mm, but the choice falls at %.3f", c.nodes, r.RadiusMM, falls)
		}
	}
}
