package casting

import (
	"math"
	"testing"

	"moldwright/core/job"
)

// near fails unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %.8g, want %.8g within %g", what, got, want, tol)
	}
}

// workedCup is a plain cup worked by hand from the published formulas: fired
// outside 80 x 100 mm, S = 12 %, wet wall and floor 4 mm, slip 1.78 with
// solids of 2.6, cast moisture 20 %, consistency 70, plaster 40 mm at wall and
// floor, no spare.
func workedCup() Input {
	d := job.Defaults()
	d.Clay.DryingShrinkage = 0
	d.Clay.FiringShrinkage = 12
	d.Clay.Wall = 4
	d.Clay.SlipDensity = 1.78
	d.Clay.SolidsDensity = 2.6
	d.Plaster.Consistency = 70
	d.Plaster.Wall, d.Plaster.Base = 40, 40
	cylinder := func(dia, height float64) float64 { return math.Pi * dia * dia / 4 * height / 1000 }
	dia, height := 80/0.88, 100/0.88
	cavity := cylinder(dia, height)
	contact := (math.Pi*dia*height + math.Pi*dia*dia/4) / 100
	return Input{
		Clay: d.Clay, Plaster: d.Plaster, Settings: job.DefaultCasting(),
		CavityML: cavity, InsideML: cylinder(dia-8, height-4),
		FillAreaCM2: math.Pi * dia * dia / 400,
		ContactCM2:  contact,
		OutsideCM2:  (math.Pi*(dia+80)*(height+40) + math.Pi*(dia+80)*(dia+80)/4) / 100,
		Parts:       []Part{{Name: "lower", ML: cylinder(dia+80, height+40) - cavity, ContactCM2: contact}},
		PositiveML:  cavity, CottleHeightMM: height + 40, CottleRadiusMM: dia/2 + 40,
	}
}

// fourPiece is an invented jar in three parts with everything that a mold can
// have: a spare, a fill line, side seams, an upper part.
func fourPiece() Input {
	in := workedCup()
	in.Clay.DryingShrinkage, in.Clay.FiringShrinkage = 5, 8
	in.CavityML, in.InsideML, in.InsideFillML = 2400, 2080, 1800
	in.SpareML, in.SpareContactCM2, in.FillAreaCM2 = 90, 70, 45
	in.ContactCM2, in.InsideAreaCM2 = 960, 880
	in.Parts = []Part{{"lower", 900, 110}, {"sideA", 2600, 400}, {"sideB", 2600, 400}, {"upper", 700, 50}}
	in.UpperLiftML, in.SeamAreaCM2, in.SeamHeadMM = 160, 240, 120
	in.PositiveMassG = 300
	in.Settings.Glaze = 0.3
	in.Settings.TestCasts = []job.TestCast{{Wall: 4.1, Minutes: 20}, {Wall: 5.4, Minutes: 30}}
	return in
}

func mustCompute(t *testing.T, in Input) Figures {
	t.Helper()
	f, faults := Compute(in)
	if len(faults) > 0 {
		t.Fatalf("Compute: %v", faults)
	}
	return f
}
