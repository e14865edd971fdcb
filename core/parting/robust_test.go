package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
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
	return Robust(m, end, all, k, RulesOf(&j)), all, k
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

// A belly of 0.3 mm in a wall that else opens upward is found, and the choice
// hangs on (0.3 - 0.05)/2 mm: with every radius wrong by that much, and no
// less, one part comes free.
func TestSubtleBellyIsFoundAndShown(t *testing.T) {
	nodes := []job.Node{corner(0, 0), corner(30, 0), corner(50, 40), corner(49.7, 60), corner(70, 100)}
	r, all, k := robustOf(t, nodes)
	one := &all[Index(all, "one")]
	if one.Verdict != Catches || math.Abs(one.Depth-0.3) > 1e-6 {
		t.Fatalf("one part %s by %.4f mm, want a catch of 0.3", one.Verdict, one.Depth)
	}
	if all[k].Count == 1 || r.Reason != "fewer" || r.Scheme != "one" || math.Abs(r.RadiusMM-0.125) > 1e-6 {
		t.Fatalf("chosen %s, robustness %+v; want fewer, one, 0.125", all[k].ID, r)
	}
	for _, w := range []struct {
		e    float64
		want bool // still catches
	}{{r.RadiusMM - 0.001, true}, {r.RadiusMM + 0.001, false}} {
		wrong := append([]job.Node{}, nodes...)
		wrong[2].R -= w.e
		wrong[3].R += w.e
		_, all, _ := robustOf(t, wrong)
		if got := all[Index(all, "one")].Verdict == Catches; got != w.want {
			t.Errorf("with radii wrong by %.3f one part catches: %v, want %v", w.e, got, w.want)
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
