package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

func c(r, z float64) job.Node  { return job.Node{R: r, Z: z, Corner: true} }
func sm(r, z float64) job.Node { return job.Node{R: r, Z: z} }

func judge(t testing.TB, nodes ...job.Node) []Scheme {
	t.Helper()
	m, err := formtest.Build(nodes)
	if err != nil {
		t.Fatal(err)
	}
	all, _ := judged(m)
	return all
}

// judged judges a meridian by the default rules; a closed form has a fill hole
// of 30 mm.
func judged(m *form.Meridian) (all []Scheme, end int) {
	end = len(m.Pts) - 1
	if m.Closed {
		end = m.CutMouth(15)
	}
	j := job.Defaults()
	return Judge(release.New(m), end, RulesOf(&j), Wanted{}), end
}

// Forms worked by hand: which scheme is chosen, and what its verdict is.
func TestChoiceByHand(t *testing.T) {
	for name, want := range map[string]struct {
		nodes   []job.Node
		id      string
		verdict Verdict
		heights []float64
	}{
		// one cone of 20.6 degrees: the lower part frees it all
		"open bowl": {[]job.Node{c(0, 0), c(30, 0), c(60, 80)}, "one", Clear, []float64{}},
		// a sphere parts at its equator and nowhere else
		"sphere": {[]job.Node{sm(0, 0), sm(50, 50), sm(0, 100)}, "two", Clear, []float64{50}},
		// all of the wall narrows upward: the parting lies at the foot's edge
		"tapered vase": {[]job.Node{c(0, 0), c(60, 0), c(30, 150)}, "two", Clear, []float64{0}},
		// a waist frees sideways only; the flat foot asks for a lower part.
		// Two halves rub at their seams on less than 5 percent.
		"waisted vase": {[]job.Node{c(0, 0), c(40, 0), c(25, 60), c(45, 140)}, "sides2+lower", Clear, []float64{0}},
		// the recess tapers by 18.4 degrees
		"recessed foot": {[]job.Node{c(0, 6), c(20, 6), c(22, 0), c(27, 0), c(60, 80)}, "one", Clear, []float64{}},
		// the recess widens inward by 2 mm, and no pull frees that
		"dovetail foot": {[]job.Node{c(0, 6), c(22, 6), c(20, 0), c(27, 0), c(60, 80)}, "one", Catches, []float64{}},
	} {
		all := judge(t, want.nodes...)
		s := all[Choose(all, 0, func(int) float64 { return 0 })]
		if s.ID != want.id || s.Verdict != want.verdict || len(s.PartingHeights) != len(want.heights) {
			t.Errorf("%s: chosen %v, want %s %s %.1f", name, s, want.id, want.verdict, want.heights)
			continue
		}
		for i, h := range want.heights {
			if math.Abs(s.PartingHeights[i]-h) > 0.01 {
				t.Errorf("%s: parted at %.3f, want %.3f", name, s.PartingHeights[i], h)
			}
		}
		if name == "dovetail foot" && math.Abs(s.Depth-2) > 0.01 {
			t.Errorf("%s: catches by %.3f, want 2", name, s.Depth)
		}
	}
}

// A groove of depth d round a cylinder with draft catches a lower part by what
// its draft leaves of d, to 0.01 mm, and counts from CatchDepth on.
func TestCatchDepthOfGroove(t *testing.T) {
	for _, d := range []float64{0.02, 0.045, 0.055, 0.3, 4} {
		// the wall widens by 1 mm in 10; the groove's roof lies level at z 50
		all := judge(t, c(0, 0), c(30, 0), c(34, 40), c(34-d, 45), c(34-d, 50), c(39, 50), c(42, 80))
		one := all[Index(all, "one")]
		if math.Abs(one.Depth-d) > 0.01 {
			t.Errorf("a groove %.3f mm deep catches by %.4f", d, one.Depth)
		}
		if (one.Verdict == Catches) != (d > CatchDepth) {
			t.Errorf("a groove %.3f mm deep: %s", d, one.Verdict)
		}
	}
}
