package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

// robustOf plans polygonal nodes at mold size and tells the robustness of the
// advised scheme.
func robustOf(t *testing.T, nodes []job.Node) (Robustness, []Scheme, int) {
	t.Helper()
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	m, err := form.Build(&j)
	if err != nil {
		t.Fatal(err)
	}
	end := len(m.Pts) - 1
	all := Judge(release.New(m), end, RulesOf(&j), Wanted{})
	k := Choose(all, 0, func(int) float64 { return 0 })
	return Robust(m, end, nil, all, k, RulesOf(&j)), all, k
}

// An open cone, by hand: it leans by atan(30/80). Two places 10 mm apart along
// it differ by 10 sin of that, 3.51 mm, so it would catch from (3.51+0.05)/2;
// it would rub sooner, when a tilt of 2e in 10 mm takes 20.6 degrees of draft
// down to 3: e = 5 (30/80 - tan 3).
func TestRobustnessOfCone(t *testing.T) {
	r, _, _ := robustOf(t, []job.Node{corner(0, 0), corner(30, 0), corner(60, 80)})
	want := 5 * (30.0/80 - math.Tan(3*math.Pi/180))
	if r.Reason != "rub" || math.Abs(r.RadiusMM-want) > 1e-9 {
		t.Errorf("got %+v, want rub at %.4f", r, want)
	}
}

// A belly of 0.3 mm in a wall that else opens upward is found and shown, and the
// choice hangs on it: by hand, one part must not only get over the 0.3 but gain
// 20 tan 3 there, 1.3482 mm in all; of its 371.9 cm2 a twentieth may rub, 18.59
// of the 62.64 that the belly has, and need not gain 0.3111 of that; a catch of
// 0.05 does not count: (1.3482 - 0.3111 - 0.05)/2. With the belly straight, all
// or nothing of it rubs, so that it takes half of 1.3482 to free it.
func TestSubtleBellyIsFoundAndShown(t *testing.T) {
	nodes := []job.Node{corner(0, 0), corner(30, 0), corner(50, 40), corner(49.7, 60), corner(70, 100)}
	r, all, k := robustOf(t, nodes)
	one := &all[Index(all, "one")]
	if one.Verdict != Catches || math.Abs(one.Depth-0.3) > 1e-6 {
		t.Fatalf("one part %s by %.4f mm, want a catch of 0.3", one.Verdict, one.Depth)
	}
	if all[k].Count == 1 || r.Reason != "fewer" || r.Scheme != "one" || math.Abs(r.RadiusMM-0.4935) > 1e-4 || r.ZFrom != 40 || r.ZTo != 60 {
		t.Fatalf("chosen %s, robustness %+v; want fewer, one, 0.4935 from 40 to 60", all[k].ID, r)
	}
	for _, w := range []struct {
		e    float64
		want bool // one part is clear
	}{{r.RadiusMM, false}, {0.673, false}, {0.675, true}} {
		wrong := append([]job.Node{}, nodes...)
		wrong[2].R -= w.e
		wrong[3].R += w.e
		_, all, _ := robustOf(t, wrong)
		if got := all[Index(all, "one")].Verdict == Clear; got != w.want {
			t.Errorf("with radii wrong by %.3f one part is clear: %v, want %v", w.e, got, w.want)
		}
	}
}

// A straight wall rubs under one part alone, which would let go were it a cone:
// over 100 mm that takes 100 tan 3 less what may rub, 6 tan 3 (a twentieth of
// 96 pi cm2, 40 mm out), and less a catch that does not count, half of it at
// either end.
func TestRobustnessOfCylinder(t *testing.T) {
	r, _, _ := robustOf(t, []job.Node{corner(0, 0), corner(40, 0), corner(40, 100)})
	want := (94*math.Tan(3*math.Pi/180) - CatchDepth) / 2
	if r.Reason != "fewer" || r.Scheme != "one" || math.Abs(r.RadiusMM-want) > 1e-6 {
		t.Errorf("got %+v, want one part at %.4f", r, want)
	}
}

// Where nothing lets go, the choice hangs on whatever comes free first.
func TestRobustnessOfDovetail(t *testing.T) {
	r, all, k := robustOf(t, []job.Node{corner(0, 6), corner(22, 6), corner(20, 0), corner(27, 0), corner(60, 80)})
	if all[k].ID != "one" || r.Reason != "other" || math.Abs(r.RadiusMM-(2-CatchDepth)/2) > 1e-4 {
		t.Errorf("chosen %s, %+v; want another scheme at 0.975", all[k].ID, r)
	}
}

// While radii are wrong by less than the robustness says, whichever way, the
// chosen scheme stays clear and none with fewer parts is.
func TestChoiceStandsWithinRobustness(t *testing.T) {
	told, near, other := map[string]int{}, 0, 0
	for k := range uint64(400) {
		g := formtest.Rand(23, k)
		r, z := 15+25*g.Float64(), 0.0
		nodes := []job.Node{corner(0, 0), corner(r, 0)}
		lean := []float64{0.6, 0.15, 0.6, 1.5}[k%4]
		for range 2 + g.IntN(5) {
			dz := swing + 15*g.Float64()
			r, z = math.Max(3, r+lean*dz*(g.Float64()*2-1)), z+dz
			nodes = append(nodes, corner(r, z))
		}
		rob, all, at := robustOf(t, nodes)
		c := all[at]
		if c.Verdict != Clear || rob.RadiusMM < 0 {
			continue
		}
		told[rob.Reason]++
		for _, share := range []float64{0.98, 0.98, 0.98, 0.5, 3} {
			wrong := append([]job.Node{}, nodes...)
			for i := range wrong[1:] {
				e := math.Copysign(1, g.Float64()-0.5)
				if share == 0.5 {
					e = 2*g.Float64() - 1
				}
				wrong[i+1].R = math.Max(0.5, wrong[i+1].R+share*e*rob.RadiusMM)
			}
			_, now, _ := robustOf(t, wrong)
			bad := ""
			for i := range now {
				s := &now[i]
				if s.ID == c.ID && s.Verdict != Clear {
					bad = c.ID + " is " + string(s.Verdict)
				}
				if s.Count < c.Count && s.Verdict == Clear {
					bad = s.ID + " is clear"
				}
			}
			// another as good may be preferred, but none with more parts, or that rubs
			next := &now[Choose(now, 0, func(int) float64 { return 0 })]
			if share < 1 && next.ID != c.ID {
				if other++; next.Count != c.Count || next.Verdict != Clear {
					t.Errorf("profile %d: true to %.3f mm, but %s %s is chosen instead of %s", k, rob.RadiusMM, next.ID, next.Verdict, c.ID)
				}
			}
			if share > 1 { // well beyond it the choice often falls
				if bad != "" {
					near++
				}
			} else if bad != "" {
				t.Errorf("profile %d: chosen %s, true to %.3f mm (%s %s), but wrong by %.2f of that %s\n%v\n%v", k, c.ID, rob.RadiusMM, rob.Reason, rob.Scheme, share, bad, nodes, wrong)
			}
		}
	}
	if told["fewer"] < 20 || told["rub"] < 20 || near < 40 {
		t.Errorf("reasons %v, and beyond it the choice fell %d times", told, near)
	}
	t.Logf("reasons %v, beyond it the choice fell %d times; within it another that is as good was preferred %d times", told, near, other)
}

// The slopes of side parts rub as the ledger's tables tell, to what the bins
// leave.
func TestSlopesRubAsTheLedger(t *testing.T) {
	for k := range uint64(300) {
		m, _ := formtest.Meridian(formtest.Rand(24, k))
		all, end := judged(m)
		j := job.Defaults()
		for _, n := range []int{2, 3, 4} {
			s := all[Index(all, "sides"+string(rune('0'+n)))]
			got, want := newSlopes(m, 0, end, n, RulesOf(&j)).rubs(0), s.Parts[0].RubShare
			if math.Abs(got-want) > 1 {
				t.Errorf("profile %d: %d side parts rub on %.3f %%, the ledger tells %.3f", k, n, got, want)
			}
		}
	}
}

// The window of pairs a swing apart, against all pairs.
func TestRobustCapAgainstAllPairs(t *testing.T) {
	var nodes []job.Node
	nodes = append(nodes, corner(0, 0), corner(20, 0))
	for i := 1; i <= 40; i++ {
		z := float64(i) * 3
		nodes = append(nodes, corner(20+0.4*z+3*math.Sin(z/9), z))
	}
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	m, err := form.Build(&j)
	if err != nil {
		t.Fatal(err)
	}
	end := len(m.Pts) - 1
	got := math.Inf(1)
	robustCap(m, 0, end, 1, func(e float64, _ string, _, _ float64) { got = math.Min(got, e) })
	want := math.Inf(1)
	for i := 0; i <= end; i++ {
		along := 0.0
		for k := i + 1; k <= end; k++ {
			if along += m.Pts[k-1].Dist(m.Pts[k]); along >= swing {
				want = math.Min(want, (m.Pts[k].R-m.Pts[i].R+CatchDepth)/2)
			}
		}
	}
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("got %.6f, all pairs give %.6f", got, want)
	}
}

// The fall of a sine wave against a taper, by walking along it in small steps.
func TestRippleHook(t *testing.T) {
	for _, draft := range []float64{0, 1, 3, 10, 25, 37} {
		const layer = 0.2
		deepest, most := 0.0, math.Inf(-1)
		for i := range 200001 {
			z := float64(i) / 100000 * layer
			r := z*math.Tan(draft*math.Pi/180) + RidgeShare*layer/2*math.Sin(2*math.Pi*z/layer)
			most = math.Max(most, r)
			deepest = math.Max(deepest, most-r)
		}
		if got := RippleHook(draft, layer); math.Abs(got-deepest) > 1e-8 {
			t.Errorf("at %g degrees %.9f mm, stepping gives %.9f", draft, got, deepest)
		}
	}
	// tan(draft) >= pi times a quarter: 38.15 degrees, from where nothing hooks
	if RippleHook(38.2, 0.2) != 0 || RippleHook(38.1, 0.2) == 0 {
		t.Error("the ripple's limit is not at atan(pi/4)")
	}
}
