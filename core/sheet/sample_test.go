package sheet

import (
	"math"

	"moldwright/core/form"
)

// Invented pots of an invented workshop.

// jar is 120 mm high, 84 wide at 60 mm, foot 50 and rim 56 mm across, fired.
func jar() []form.Point {
	pts := []form.Point{{R: 0, Z: 3}, {R: 20, Z: 3}, {R: 21, Z: 0}, {R: 25, Z: 0}}
	for i := 1; i <= 80; i++ {
		t := float64(i) / 80
		z := 120 * t
		var r float64
		if z <= 60 {
			r = 25 + 17*math.Sin(math.Pi/2*z/60)
		} else {
			r = 28 + 14*math.Cos(math.Pi/2*(z-60)/60)
		}
		pts = append(pts, form.Point{R: r, Z: z})
	}
	return pts
}

func scaled(pts []form.Point, k float64) []form.Point {
	out := make([]form.Point, len(pts))
	for i, p := range pts {
		out[i] = form.Point{R: k * p.R, Z: k * p.Z}
	}
	return out
}

const wetScale = 1.1439

func sampleInput() Input {
	wet := scaled(jar(), wetScale)
	return Input{
		Name: "Harbour jar", Fired: jar(), Wet: wet,
		Verdict: "Two parts, parted 68.6 mm above the foot. Clear. Least plaster 3.4 kg.",
		WhyNotFewer: "One part catches: above 68.6 mm the wall turns inward, and a single lower part would have to pass the belly. It would catch by 16.0 mm " +
			"on the positive and on the cast alike; the clay forgives 0.7 mm of that.",
		Chosen: "two",
		Schemes: []Scheme{
			{ID: "one", Count: 1, Verdict: "catches", Parts: []Part{{Name: "lower", Pull: [3]float64{0, 0, -1}, ZTo: 137.3, Verdict: "catches",
				MinDraftDeg: -31.2, RubbingAreaCM2: 182.4, RubSharePercent: 48.1,
				Catches: []Catch{{ZFrom: 68.6, ZTo: 137.3, DepthMM: 16.0, BlockedAtZ: 68.6}}, PlasterG: 3320, WaterG: 2324}}},
			{ID: "two", Count: 2, Verdict: "clear", PartingHeights: []float64{68.6}, Parts: []Part{
				{Name: "lower", Pull: [3]float64{0, 0, -1}, ZTo: 68.6, Verdict: "clear", MinDraftDeg: 0, RubbingAreaCM2: 5.1, RubSharePercent: 2.7, PlasterG: 1840, WaterG: 1288},
				{Name: "upper", Pull: [3]float64{0, 0, 1}, ZFrom: 68.6, ZTo: 137.3, Verdict: "clear", MinDraftDeg: 0, RubbingAreaCM2: 6.3, RubSharePercent: 3.4, PlasterG: 1560, WaterG: 1092}}},
			{ID: "sides2", Count: 2, Verdict: "rubs", Parts: []Part{
				{Name: "side A", Pull: [3]float64{1, 0, 0}, ZTo: 137.3, Verdict: "rubs", RubbingAreaCM2: 40, RubSharePercent: 11.8, PlasterG: 1700, WaterG: 1190},
				{Name: "side B", Pull: [3]float64{-1, 0, 0}, ZTo: 137.3, Verdict: "rubs", RubbingAreaCM2: 40, RubSharePercent: 11.8, PlasterG: 1700, WaterG: 1190}}},
			{ID: "sides2+lower", Count: 3, Verdict: "clear", PartingHeights: []float64{3.4}},
		},
		Order: []string{"upper", "lower"},
		Cautions: []string{
			"Plaster burns skin as it sets: never enclose a hand or any part of the body in it.",
			"Band the mold before filling: the slip lifts the upper part with 24 N when full.",
			"Keep plaster out of drains: let it settle in a bucket and bin the solids, as local rules say.",
		},
		Casting: []Figure{
			{"Casting time", "18", "min"}, {"Slip to fill", "862", "ml"}, {"Slip the wall takes", "176", "ml"},
			{"Cast, wet", "238", "g"}, {"Cast, dry", "189", "g"}, {"Cast, fired", "171", "g"},
			{"Casts a day", "3", ""}, {"Lift on the upper part", "24", "N"},
		},
		Prints: []Print{
			{"positive-lower", [3]float64{176.1, 176.1, 98.6}, true},
			{"positive-upper", [3]float64{176.1, 176.1, 98.7}, true},
			{"stave 1 of 2", [3]float64{181, 92.4, 110}, true},
			{"collar", [3]float64{230, 230, 12}, false},
		},
		Regions: sampleRegions(wet),
	}
}

// sampleRegions is the plaster of the jar in two parts, parted at 60 fired.
func sampleRegions(wet []form.Point) []Region {
	part, wall, top := 60*wetScale, 42*wetScale+30, 120*wetScale
	lower := []form.Point{{R: 0, Z: -30}}
	var upper []form.Point
	for _, p := range wet {
		if p.Z <= part+1e-9 {
			lower = append(lower, p)
		}
		if p.Z >= part-1e-9 {
			upper = append(upper, p)
		}
	}
	// Lower goes up the pot from the axis, so its outline closes by the wall.
	lower = append(lower, form.Point{R: wall, Z: part}, form.Point{R: wall, Z: -30})
	upper = append(upper, form.Point{R: wall, Z: top}, form.Point{R: wall, Z: part})
	return []Region{{"A", lower}, {"B", upper}}
}

type pt = form.Point

// ball is a closed form of the given radius, foot at z = 0.
func ball(r float64) []pt {
	var out []pt
	for i := 0; i <= 90; i++ {
		a := math.Pi * float64(i) / 90
		out = append(out, pt{R: r * math.Sin(a), Z: r - r*math.Cos(a)})
	}
	out[0].R, out[90].R = 0, 0
	return out
}
