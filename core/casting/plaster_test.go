package casting

import "testing"

const (
	poundKG = 0.45359237
	inch3ML = 16.387064
)

// Hydration by the standard atomic weights (Ca 40.078, S 32.06, O 15.999,
// H 1.008): 18.618 g a 100 g. Anusavice, Shen & Rawls, Phillips' Science of
// Dental Materials prints 18.6 (from memory); US Gypsum IG502 "about 18".
func TestHydration(t *testing.T) {
	near(t, "water per 100 g", 100*HydrationWater, 18.618, 0.01)
	near(t, "set mass", SetMass, 1.18618, 1e-4)
	near(t, "mass is kept", SetMass, 1+HydrationWater, 1e-12)
	near(t, "hemihydrate g/mol", molarHemihydrate, 145.142, 0.001)
	near(t, "dihydrate g/mol", molarDihydrate, 172.164, 0.001)
	// Absolute volumes shrink by 7.0 % (Phillips' -7.11 %, from memory).
	before := molarHemihydrate/hemihydrateDensity + 1.5*molarWater
	near(t, "volume of hydration %", 100*(molarDihydrate/dihydrateDensity/before-1), -7.11, 0.15)
}

// Derived from the absolute volumes: consistency, plaster and water kg/l, wet
// and dry g/ml, porosity %, free water % of wet mass, l a kg.
func TestMixTheory(t *testing.T) {
	for _, c := range [][8]float64{
		{60, 1.0377, 0.6226, 1.6604, 1.2309, 46.9, 25.9, 0.9636},
		{64, 0.9964, 0.6377, 1.6341, 1.1819, 49.1, 27.7, 1.0036},
		{65, 0.9865, 0.6413, 1.6278, 1.1702, 49.6, 28.1, 1.0136},
		{200.0 / 3, 0.9706, 0.6471, 1.6176, 1.1513, 50.4, 28.8, 1.0303},
		{70, 0.9402, 0.6581, 1.5983, 1.1152, 51.9, 30.2, 1.0636},
		{73, 0.9144, 0.6675, 1.5819, 1.0846, 53.2, 31.4, 1.0936},
		{74, 0.9061, 0.6705, 1.5766, 1.0748, 53.7, 31.8, 1.1036},
		{75, 0.8980, 0.6735, 1.5714, 1.0651, 54.1, 32.2, 1.1136},
		{80, 0.8594, 0.6875, 1.5469, 1.0194, 56.1, 34.1, 1.1636},
	} {
		m := MixFor(1000, c[0], WetDensity(c[0]))
		near(t, "plaster g/l", m.Plaster, 1000*c[1], 0.06)
		near(t, "water g/l", m.Water, 1000*c[2], 0.06)
		near(t, "wet", WetDensity(c[0]), c[3], 0.00006)
		near(t, "dry", DryDensity(c[0]), c[4], 0.00006)
		near(t, "porosity", 100*Porosity(c[0]), c[5], 0.051)
		near(t, "free water", 100*m.FreeWater/m.Wet, c[6], 0.051)
		near(t, "l a kg", MixVolume(c[0]), c[7], 0.00006)
		near(t, "dry : wet needs no density", m.Dry/m.Wet, SetMass/(1+c[0]/100), 1e-12)
	}
}

// Theory against the makers' published wet and dry densities, lb/ft3, within
// the 2 % by which entrained air and impurity lower them.
func TestMixAgainstDataSheets(t *testing.T) {
	const perFoot = 62.42796 // lb/ft3 of 1 g/ml
	for _, c := range []struct {
		consistency, wet, dry float64
		source                string
	}{
		{74, 97.6, 66.0, "US Gypsum, pottery plaster, sculpt.com catalog and IG1365"},
		{70, 99.0, 69.0, "US Gypsum, No. 1 pottery plaster data sheet"},
		{65, 100.0, 72.5, "plaster.com/mixing.html"},
		{45, 110.6, 90.0, "plaster.com/mixing.html"},
		{38, 115, 99, "plaster.com/mixing.html"},
		{32, 119.4, 108.7, "plaster.com/mixing.html"},
	} {
		near(t, c.source+" wet", perFoot*WetDensity(c.consistency), c.wet, 0.02*c.wet)
		near(t, c.source+" dry", perFoot*DryDensity(c.consistency), c.dry, 0.02*c.dry)
		near(t, c.source+" dry from wet", c.wet*SetMass/(1+c.consistency/100), c.dry, 0.015*c.dry)
		if s, ok := Published(c.consistency); ok {
			near(t, "table wet", s.WetDensity*perFoot, c.wet, 0.001)
			near(t, "table dry", s.DryDensity*perFoot, c.dry, 0.001)
		}
	}
	near(t, "70, dry from wet", 99.0*SetMass/1.7, 69.08, 0.005)
	if _, ok := Published(71); ok {
		t.Error("71 has no published grade")
	}
}

// lb of plaster and water a cubic foot by the published wet density, derived.
func TestMixByPublishedDensity(t *testing.T) {
	const foot = 28316.846592 // ml
	for _, c := range [][3]float64{{65, 60.6, 39.4}, {70, 58.2, 40.8}, {74, 56.1, 41.5}} {
		s, ok := Published(c[0])
		if !ok {
			t.Fatalf("no grade at %g", c[0])
		}
		m := MixFor(foot, c[0], s.WetDensity)
		near(t, "lb plaster", m.Plaster/1000/poundKG, c[1], 0.051)
		near(t, "lb water", m.Water/1000/poundKG, c[2], 0.051)
	}
	in := workedCup()
	in.Settings.PublishedWetDensity = 1.5
	f := mustCompute(t, in)
	near(t, "the maker's own density", f.PublishedPlaster, f.MixML*1.5/1.7, 1e-6)
	in.Settings.PublishedWetDensity, in.Plaster.Consistency = 0, 71
	if f = mustCompute(t, in); f.PublishedPlaster != 0 {
		t.Errorf("71 has no published density, yet %g g", f.PublishedPlaster)
	}
}

// Rules of thumb against the theory.
func TestRulesOfThumb(t *testing.T) {
	// ceramicartsnetwork.org, Mold Making 101: 3 lb and 2 lb make 80 in3;
	// theory 85.6, so the rule mixes 7 % too much.
	theory := 3 * poundKG * MixVolume(200.0/3) * 1000 / inch3ML
	near(t, "3 lb plaster, 2 lb water, in3", theory, 85.6, 0.05)
	near(t, "against the rule", theory/80, 1.07, 0.005)
	// 946 g of water take 1,293 g at 73 (mixing page); theory 1,296.
	near(t, "quart at 73", 946/0.73, 1293, 0.005*1293)
	// potters.org/subject100209: 5 lb and 3.5 lb; theory 2.41 l.
	near(t, "5 lb at 70, l", 5*poundKG*MixVolume(70), 2.41, 0.005)
	// madeyoulookatart.com: 0.6 of the volume as water runs 9 % short at 70.
	near(t, "share of 0.6 rule", 0.6/(MixFor(1, 70, WetDensity(70)).Water), 0.91, 0.005)
}

// Absorption 36 % at 70 and 41 % at 74: US Gypsum data sheets.
func TestAbsorption(t *testing.T) {
	near(t, "70", AbsorptionPercent(70), 36, 1e-9)
	near(t, "74", AbsorptionPercent(74), 41, 1e-9)
	near(t, "pores at 70", poreWater(70), 46.6, 0.05)
	near(t, "pores at 74", poreWater(74), 49.9, 0.05)
	last := 0.0
	for c := 30.0; c <= 120; c++ {
		a := AbsorptionPercent(c)
		if a <= last || a >= poreWater(c) {
			t.Errorf("absorption at %g is %g, before %g, pores %g", c, a, last, poreWater(c))
		}
		last = a
	}
	// Derived: a 40 mm wall holds 4 x 1.10 x 0.36 = 1.58 g/cm2 (maker's density).
	s, _ := Published(70)
	near(t, "40 mm wall", 4*s.DryDensity*AbsorptionPercent(70)/100, 1.58, 0.015)
}

// Derived on remembered enthalpies (Lewry & Williamson 1994): 34 to 38 K at
// 70; a court was told of 60 C (independent.co.uk, theguardian.com 2009).
func TestSetRise(t *testing.T) {
	low, high := SetRise(70)
	near(t, "low", low, 34.4, 0.2)
	near(t, "high", high, 38, 0.2)
	if 21+high < 55 || 21+high > 62 {
		t.Errorf("from 21 C to %g, want about 60", 21+high)
	}
}

func TestBatches(t *testing.T) {
	parts := []Part{{Name: "lower", ML: 6000}, {Name: "upper", ML: 20000}, {Name: "core", ML: 7500 / 1.1}}
	b := Batches(parts, 70, 10, 10000, 75)
	for i, want := range []int{1, 3, 1} {
		if b[i].Part != parts[i].Name || b[i].Count != want {
			t.Errorf("batch %d = %+v, want %d of %s", i, b[i], want, parts[i].Name)
		}
		if b[i].ML > 7500*(1+1e-6) {
			t.Errorf("a bucket of %g ml overflows", b[i].ML)
		}
		near(t, "ratio", b[i].Water/b[i].Plaster, 0.7, 1e-12)
		near(t, "mass", b[i].Plaster*float64(b[i].Count), MixFor(parts[i].ML*1.1, 70, WetDensity(70)).Plaster, 1e-6)
	}
	if len(Batches(nil, 70, 10, 10000, 75)) != 0 {
		t.Error("no parts, no batches")
	}
}
