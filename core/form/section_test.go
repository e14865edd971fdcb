package form

import (
	"math"
	"testing"

	"moldwright/core/job"
)

var sections = []job.Section{
	{Kind: job.SectionRound},
	{Kind: job.SectionOval, Ratio: 0.7},
	{Kind: job.SectionPolygon, Count: 6, Rounding: 20},
	{Kind: job.SectionPolygon, Count: 4, Rounding: 100},
	{Kind: job.SectionFlutes, Count: 12, Depth: 6},
}

// Areas with known answers: an ellipse is ratio times its circle; a hexagon of
// half-width 1 has 2 sqrt 3, and each of its corners rounded with radius p
// loses p^2 (tan 30 - pi/6).
func TestSectionAreas(t *testing.T) {
	want := []float64{math.Pi, math.Pi * 0.7, 0, math.Pi, 0}
	tip := 0.8/math.Cos(math.Pi/6) + 0.2
	want[2] = (2*math.Sqrt(3) - 6*0.04*(math.Tan(math.Pi/6)-math.Pi/6)) / (tip * tip)
	// flutes: mean of (1 - d (1 - cos))^2 with d = 0.03
	want[4] = math.Pi * (1 - 2*0.03 + 0.03*0.03*1.5)
	for i, s := range sections {
		if got := math.Pi * NewSection(s).MeanSquare; math.Abs(got-want[i]) > 1e-6 {
			t.Errorf("%s: area %.7f, want %.7f", s.Kind, got, want[i])
		}
	}
}

// g never passes 1, repeats as said, and its slope is the slope.
func TestSectionSlope(t *testing.T) {
	for _, js := range sections {
		s := NewSection(js)
		most := 0.0
		for i := range 3600 {
			a := (float64(i) + 0.37) / 3600 * 2 * math.Pi
			g, d := s.At(a)
			most = math.Max(most, g)
			const h = 1e-6
			g0, _ := s.At(a - h)
			g1, _ := s.At(a + h)
			if math.Abs((g1-g0)/(2*h)-d) > 1e-4*(1+math.Abs(d)) {
				t.Fatalf("%s at %.4f: slope %.6f, differences give %.6f", js.Kind, a, d, (g1-g0)/(2*h))
			}
			if r, _ := s.At(a + 2*math.Pi/float64(s.Repeats)); math.Abs(r-g) > 1e-9 {
				t.Fatalf("%s does not repeat %d times", js.Kind, s.Repeats)
			}
		}
		if most > 1+1e-9 || most < 0.999 {
			t.Errorf("%s: largest radius %.6f, want 1", js.Kind, most)
		}
	}
}
