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
			{ID: "one", Name: "a lower part alone", Against: "the lower part catches by 16.0 mm from 68.6 to 137.3 mm above the foot, behind what stands at 68.6 mm", Count: 1, Verdict: "catches",
				Parts: []Part{{Letter: "L", Name: "lower part", Pull: [3]float64{0, 0, -1}, ZTo: 137.3, Verdict: "catches",
					MinDraftDeg: -31.2, RubbingAreaCM2: 182.4, RubSharePercent: 48.1,
					Catches: []Catch{{ZFrom: 68.6, ZTo: 137.3, DepthMM: 16.0, BlockedAtZ: 68.6}}, PlasterG: 3320, WaterG: 2324, DryG: 3938}}},
			{ID: "two", Name: "a lower and an upper part", Against: "it lets go as well", Count: 2, Verdict: "clear", PartingHeights: []float64{68.6}, Parts: []Part{
				{Letter: "L", Name: "lower part", Pull: [3]float64{0, 0, -1}, ZTo: 68.6, Verdict: "clear", RubbingAreaCM2: 5.1, RubSharePercent: 2.7, PlasterG: 1840, WaterG: 1288, DryG: 2183,
					Bands: []Band{{-90, 0, 0}, {0, 3, 5.1}, {3, 90, 183.2}}},
				{Letter: "U", Name: "upper part", Pull: [3]float64{0, 0, 1}, ZFrom: 68.6, ZTo: 137.3, Verdict: "clear", RubbingAreaCM2: 6.3, RubSharePercent: 3.4, PlasterG: 1560, WaterG: 1092, DryG: 1850,
					Bands: []Band{{-90, 0, 0}, {0, 3, 6.3}, {3, 90, 178.9}}}},
				Regions: sampleRegions(wet)},
			{ID: "sides2", Name: "two side parts", Against: "each side part rubs on 12 % of its surface (40 cm²)", Count: 2, Verdict: "rubs", Parts: sampleSides(2)},
			{ID: "sides2+lower", Name: "two side parts and a lower part", Against: "it lets go as well", Count: 3, Verdict: "clear", PartingHeights: []float64{3.4}},
			{ID: "sides4+lower", Name: "four side parts and a lower part", Against: "it lets go as well", Count: 5, Verdict: "clear", PartingHeights: []float64{3.4}},
		},
		Order:    []string{"U", "L"},
		Findings: []Finding{{"The seam at 68.6 mm runs round the belly, where it shows.", "Scrape it while the clay is leather hard."}},
		Cautions: []string{
			"Plaster burns skin as it sets: never enclose a hand or any part of the body in it.",
			"Band the mold before filling: the slip lifts the upper part with 24 N when full.",
			"Keep plaster out of drains: let it settle in a bucket and bin the solids, as local rules say.",
		},
		Casting: []Figure{
			{"minutes", "Wall", "Casting time", "18", "min", "L² / k", "the maker's own trial", "published"},
			{"slipFill", "Slip", "Slip to fill", "862", "ml", "cavity + spare", "volume between the meridians", "derived"},
			{"slipTaken", "Slip", "Slip the wall takes", "176", "ml", "wall × (1 + n)", "volumes of clay and water add", "from memory"},
			{"castWet", "Weights", "Cast, wet", "238", "g", "dry / (1 - moisture)", "volumes of clay and water add", "from memory"},
			{"castDry", "Weights", "Cast, dry", "189", "g", "", "", ""},
			{"castFired", "Weights", "Cast, fired", "171", "g", "dry × (1 - loss)", "common practice", "common practice, no source"},
			{"castsPerDay", "Water", "Casts a day", "3", "", "", "", ""},
			{"liftForce", "Forces", "Lift on the upper part", "24", "N", "ρ g V", "hydrostatics", "derived"},
			{"bandsOver", "Forces", "Bands over the upper part", "1", "", "", "", ""},
			{"liftFull", "Lifting", "Full mold with slip", "7.4", "kg", "", "", ""},
		},
		Batches:      []Batch{{"L", 1, 1417, 2024}, {"U", 1, 1201, 1716}},
		LaterMinutes: []float64{18, 21, 24},
		Assumed:      []Figure{{Label: "Wall of the cast", Value: "4", Unit: "mm"}, {Label: "Drying shrinkage, on the wet length", Value: "6", Unit: "%", Source: "measure a test bar (ASTM C326)"}},
		Prints: []Print{
			{Name: "lower positive", Size: [3]float64{176.1, 176.1, 98.6}, FitsBed: true},
			{Name: "upper positive", Size: [3]float64{176.1, 176.1, 98.7}, FitsBed: true},
			{Name: "lower cottle stave 1, 2", Size: [3]float64{181, 92.4, 110}, FitsBed: true},
			{Name: "collar", Size: [3]float64{230, 230, 12}, FitsBed: false},
		},
		Mold: sampleMold(),
	}
}

func sampleSides(n int) (out []Part) {
	for i := range n {
		from, to := 360/float64(n)*float64(i), 360/float64(n)*float64(i+1)
		sin, cos := math.Sincos((from + to) / 2 * math.Pi / 180)
		out = append(out, Part{Letter: string(rune('A' + i)), Name: "side part", Side: true, Sector: [2]float64{from, to}, Pull: [3]float64{cos, sin, 0}, ZTo: 137.3,
			Verdict: "rubs", RubbingAreaCM2: 40, RubSharePercent: 11.8, PlasterG: 1700, WaterG: 1190, DryG: 2017,
			Catches: []Catch{{ZFrom: 0, ZTo: 3.4, DepthMM: 3.4}}})
	}
	return out
}

// sampleMold is the block of the jar: 30 mm of plaster around and under it,
// with a spare of 20 mm.
func sampleMold() Mold {
	m := Mold{Spare: true, TrimZ: 120 * wetScale, Radius: 42*wetScale + 30, ZBottom: -30, ZTop: 120*wetScale + 20}
	m.Opening = []form.Point{{R: 28 * wetScale, Z: m.TrimZ}, {R: 28*wetScale - 2, Z: m.TrimZ}, {R: 28*wetScale - 4, Z: m.ZTop}}
	for _, a := range [...]float64{20, 130, 265} {
		m.Natches = append(m.Natches, Natch{Letter: "L", At: form.Point{R: 42*wetScale + 15, Z: 60 * wetScale}, Azimuth: a, RadiusMM: 5, RiseMM: 2.9, Level: true})
	}
	return m
}

// sidesInput is the jar in n side parts on a lower part.
func sidesInput(n int) Input {
	in := sampleInput()
	in.Name = "Jar of many sides"
	in.Inner = scaled(jar()[4:], wetScale*0.93)
	in.Chosen = "sides"
	foot := sampleInput().Schemes[0].Parts[0]
	foot.Catches, foot.ZTo = nil, 0
	s := Scheme{ID: "sides", Name: "side parts and a lower part", Against: "it lets go as well", Count: n + 1, Verdict: "rubs", PartingHeights: []float64{0}, Parts: append([]Part{foot}, sampleSides(n)...)}
	r, top := in.Mold.Radius, in.Mold.ZTop
	side := append(scaled(jar()[2:], wetScale), in.Mold.Opening[1:]...)
	s.Regions = []Region{
		{"L", false, []form.Point{{R: 0, Z: -30}, {R: r, Z: -30}, {R: r, Z: 0}, {R: 21 * wetScale, Z: 0}, {R: 20 * wetScale, Z: 3 * wetScale}, {R: 0, Z: 3 * wetScale}}, 0},
		{"A", true, append(side, form.Point{R: r, Z: top}, form.Point{R: r, Z: 0}), len(side)},
	}
	in.Schemes = append(in.Schemes, s)
	// A straight-sided block of 2n faces around an oval pot, 0.8 as deep as wide.
	for i := range 720 {
		face := math.Remainder(float64(i)/2, 180/float64(n)) * math.Pi / 180
		sin, cos := math.Sincos(float64(i) / 360 * math.Pi)
		in.Mold.Block = append(in.Mold.Block, 1/math.Cos(face))
		in.Mold.Pot = append(in.Mold.Pot, 1/math.Hypot(cos, sin/0.8))
	}
	in.Order, in.Mold.Natches = []string{"L"}, nil
	for _, p := range s.Parts[1:] {
		in.Order = append(in.Order, p.Letter)
		in.Mold.Natches = append(in.Mold.Natches, Natch{Letter: p.Letter, At: form.Point{R: 65, Z: 30}, Azimuth: p.Sector[0], RadiusMM: 5, RiseMM: 2.9},
			Natch{Letter: "L", At: form.Point{R: 60, Z: 0}, Azimuth: p.Sector[0] + 20, RadiusMM: 6, RiseMM: 3.4, Level: true})
		in.Batches = append(in.Batches, Batch{p.Letter, 2, 654, 935})
	}
	return in
}

// solidInput is the jar, so many times as large, with a wall of its own.
func solidInput(k float64) Input {
	in := sampleInput()
	in.Name = "Jar with a core"
	in.Fired, in.Wet = scaled(in.Fired, k), scaled(in.Wet, k)
	in.Inner = []form.Point{{R: 0, Z: 9 * k * wetScale}, {R: 18 * k * wetScale, Z: 9 * k * wetScale}, {R: 24 * k * wetScale, Z: 120 * k * wetScale}}
	in.Solid = &SolidWall{At: form.Point{R: 31 * k * wetScale, Z: 55 * k * wetScale}, ThickMM: 20 * k * wetScale}
	return in
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
	upper = append(upper, sampleMold().Opening[1:]...)
	upper = append(upper, form.Point{R: wall, Z: top + 20}, form.Point{R: wall, Z: part})
	return []Region{{"L", false, lower, 0}, {"U", false, upper, 0}}
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
