package casting

import (
	"math"
	"testing"

	"moldwright/core/job"
)

// hot-clay.com, terracotta casting slip, 4 mm aim: minutes and k (derived).
func TestCastingRatePublished(t *testing.T) {
	for _, c := range [][2]float64{{3, 5.333}, {3.5, 4.571}, {4, 4.0}, {4.5, 3.556}, {5, 3.2}, {6, 2.667}} {
		r := FitTestCasts([]job.TestCast{{Wall: 4, Minutes: c[0]}})
		near(t, "k", r.K, c[1], 0.0005)
		if r.Low != r.K || r.High != r.K || r.SpreadMM != 0 {
			t.Errorf("one trial has no spread: %+v", r)
		}
	}
	// Its first, second and third cast take 3, 3.5 and 4 min.
	s := job.DefaultCasting().LaterCastSlowdown
	for i, want := range []float64{3, 3.5, 4} {
		near(t, "later cast", LaterCast(3, i+1, s), want, 1e-12)
	}
	// Its others, 4 to 4.5 and 5 to 6 min, within 5 %.
	near(t, "multi-part", LaterCast(4, 2, s), 4.5, 0.05*4.5)
	near(t, "medium", LaterCast(5, 2, s), 6, 0.05*6)
}

// Minutes for walls at a rate, derived.
func TestMinutesFor(t *testing.T) {
	walls := []float64{2, 3, 4, 5, 6, 8, 10}
	for _, c := range []struct {
		k       float64
		minutes [7]float64
	}{
		{0.8, [7]float64{5.0, 11.3, 20.0, 31.3, 45.0, 80.0, 125}},
		{1.0, [7]float64{4.0, 9.0, 16.0, 25.0, 36.0, 64.0, 100}},
		{1.5, [7]float64{2.7, 6.0, 10.7, 16.7, 24.0, 42.7, 66.7}},
		{2.0, [7]float64{2.0, 4.5, 8.0, 12.5, 18.0, 32.0, 50.0}},
		{4.0, [7]float64{1.0, 2.3, 4.0, 6.3, 9.0, 16.0, 25.0}},
	} {
		for i, l := range walls {
			near(t, "minutes", MinutesFor(l, c.k), c.minutes[i], 0.051)
			near(t, "and back", WallAfter(MinutesFor(l, c.k), c.k), l, 1e-12)
			near(t, "double is four times", MinutesFor(2*l, c.k), 4*MinutesFor(l, c.k), 1e-12)
		}
	}
}

func TestFitTestCasts(t *testing.T) {
	// Trials on the law are found again, whatever their number.
	var exact []job.TestCast
	for _, m := range []float64{2, 5, 9, 17, 40} {
		exact = append(exact, job.TestCast{Wall: WallAfter(m, 1.7), Minutes: m})
	}
	r := FitTestCasts(exact)
	near(t, "k", r.K, 1.7, 1e-12)
	near(t, "spread", r.SpreadMM, 0, 1e-7)

	// The fit is the least of squares: a slow search finds no better root.
	rough := []job.TestCast{{Wall: 3, Minutes: 10}, {Wall: 4.4, Minutes: 20}, {Wall: 5.1, Minutes: 30}, {Wall: 2.3, Minutes: 5}}
	r = FitTestCasts(rough)
	sum := func(root float64) (s float64) {
		for _, c := range rough {
			d := c.Wall - root*math.Sqrt(c.Minutes)
			s += d * d
		}
		return s
	}
	best, at := math.Inf(1), 0.0
	for root := 0.5; root < 1.5; root += 1e-5 {
		if s := sum(root); s < best {
			best, at = s, root
		}
	}
	near(t, "root of k", math.Sqrt(r.K), at, 2e-5)
	near(t, "spread", r.SpreadMM, math.Sqrt(best/3), 1e-6)
	if !(r.Low < r.K && r.K < r.High) {
		t.Errorf("%+v is not in order", r)
	}
}

// Geometry of two equal layers, derived: a square corner is root 2 as thick.
func TestCornerWall(t *testing.T) {
	near(t, "90", CornerWall(4, 90), 4*math.Sqrt2, 1e-12)
	near(t, "60", CornerWall(4, 60), 8, 1e-12)
	near(t, "120", CornerWall(3, 120), 2*math.Sqrt(3), 1e-12)
	near(t, "180 is flat", CornerWall(4, 180), 4, 0)
	near(t, "an edge", CornerWall(4, 270), 4, 0)
}

func TestSolidCast(t *testing.T) {
	in := workedCup()
	drain := mustCompute(t, in)
	in.Solid = true
	solid := mustCompute(t, in)
	near(t, "closes from both sides: a quarter of the time", solid.Minutes, drain.Minutes/4, 1e-12)
	near(t, "only the clay is filled", solid.SlipFill, in.CastWallML(), 1e-9)
	near(t, "same cast", solid.CastWet, drain.CastWet, 0)
	in.SolidWallMM = 16
	near(t, "thickest wall decides", mustCompute(t, in).Minutes, 16*solid.Minutes, 1e-9)
}
