package casting

import "testing"

func TestTotalShrinkage(t *testing.T) {
	for _, c := range []struct {
		drying, firing, want, tol float64
		source                    string
	}{
		{6.25, 6.66, 12.494, 0.0005, "digitalfire.com/picture/5KtfjHm5u8: sum 12.9, true total 12.5"},
		{6.25, 100.0 / 15, 12.5, 1e-12, "derived: 4.00 in, 3.75 dry, 3.50 fired"},
		{5, 8, 12.60, 1e-12, "derived"},
		{0, 12, 12, 1e-12, "derived"},
	} {
		near(t, c.source, TotalShrinkage(c.drying, c.firing), c.want, c.tol)
	}
}

func TestOversize(t *testing.T) {
	for _, c := range []struct {
		s, percent, tol float64
		source          string
	}{
		{8, 108.70, 0.005, "potters.org/subject117414: 108.7, not 108"},
		{10, 111.11, 0.005, "potters.org/subject65680, shrink rule"},
		{11, 112.36, 0.005, "potters.org/subject65680, shrink rule"},
		{12, 113.64, 0.005, "potters.org/subject65680, shrink rule"},
		{13, 114.94, 0.005, "potters.org/subject65680, shrink rule"},
		{14, 116.28, 0.005, "potters.org/subject65680, shrink rule"},
		{10, 111, 0.5, "lapellapottery.com: 1 fired inch is 1.11 in wet"},
		{5, 105.263, 0.0005, "derived"},
		{15, 117.647, 0.0005, "derived"},
		{16, 119.048, 0.0005, "derived"},
	} {
		near(t, c.source, 100*Oversize(c.s), c.percent, c.tol)
	}
}

// Volume shrinkage and volume factor, derived: 1 - (1-S)^3 and 1/(1-S)^3.
func TestVolumeShrinkage(t *testing.T) {
	for _, c := range []struct{ s, percent, factor float64 }{
		{5, 14.263, 1.16635}, {6, 16.942, 1.20397}, {8, 22.131, 1.28421}, {10, 27.100, 1.37174},
		{11, 29.503, 1.41850}, {12, 31.853, 1.46741}, {12.5, 33.008, 1.49271}, {13, 34.150, 1.51860},
		{14, 36.394, 1.57219}, {15, 38.588, 1.62833}, {16, 40.730, 1.68718},
	} {
		near(t, "volume shrinkage", VolumeShrinkage(c.s), c.percent, 0.0005)
		near(t, "volume factor", cube(Oversize(c.s)), c.factor, 0.000005)
	}
}

// Setting expansion enters once for each plaster cast in another (US Gypsum
// IG526: twice in blocking and casing, cement of 0.05 % advised); sums derived.
func TestCompoundExpansion(t *testing.T) {
	near(t, "block and case", CompoundExpansion(0.2, 0.2), 0.400, 0.0005)
	near(t, "and working mold", CompoundExpansion(0.2, 0.2, 0.2), 0.601, 0.0005)
	near(t, "cement, then plaster", CompoundExpansion(0.05, 0.05, 0.21), 0.310, 0.0005)
	near(t, "none", CompoundExpansion(), 0, 0)
	// A mold poured on the positive carries one: 0.2 % is 0.4 mm on 200.
	in := workedCup()
	in.Settings.SettingExpansion = 0.2
	f := mustCompute(t, in)
	near(t, "correction undoes it", 200*f.PlasterCorrection*(1+CompoundExpansion(0.2)/100), 200, 1e-9)
	near(t, "correction on 200 mm", 200-200*f.PlasterCorrection, 0.4, 0.001)
}

func TestTestBar(t *testing.T) {
	// Derived beside digitalfire.com/picture/5KtfjHm5u8, definitions of ASTM C326.
	s, fault := TestBar(4.00, 3.75, 3.50)
	if fault != nil {
		t.Fatal(fault)
	}
	near(t, "drying", s.Drying, 6.25, 1e-12)
	near(t, "firing", s.Firing, 6.667, 0.0005)
	near(t, "total", s.Total, 12.5, 1e-12)
	near(t, "compounds", TotalShrinkage(s.Drying, s.Firing), s.Total, 1e-12)
	// potters.org/subject01835: a 10 in line, 8.5 in fired, is 15 %.
	if s, _ = TestBar(10, 9.4, 8.5); true {
		near(t, "10 in to 8.5 in", s.Total, 15, 1e-12)
	}
	for _, bad := range []struct {
		bar   Bar
		field string
	}{
		{Bar{0, 90, 80}, "bar.wet"}, {Bar{-1, 90, 80}, "bar.wet"}, {Bar{nan, 90, 80}, "bar.wet"}, {Bar{inf, 90, 80}, "bar.wet"},
		{Bar{100, 101, 80}, "bar.dry"}, {Bar{100, 0, 0}, "bar.dry"}, {Bar{100, nan, 80}, "bar.dry"},
		{Bar{100, 90, 91}, "bar.fired"}, {Bar{100, 90, 0}, "bar.fired"}, {Bar{100, 90, nan}, "bar.fired"},
	} {
		if _, fault := TestBar(bad.bar.Wet, bad.bar.Dry, bad.bar.Fired); fault == nil || fault.Field != bad.field {
			t.Errorf("TestBar(%v): fault %v, want one at %s", bad.bar, fault, bad.field)
		}
	}
}

func TestTestBars(t *testing.T) {
	bars := []Bar{{100, 94, 88}, {100, 94, 87}, {100, 94, 86}}
	s, fault := TestBars(bars)
	if fault != nil {
		t.Fatal(fault)
	}
	near(t, "mean total", s.Total, 13, 1e-12)
	near(t, "mean drying", s.Drying, 6, 1e-12)
	near(t, "spread of 12, 13, 14", s.Spread, 1, 1e-12)
	if _, fault = TestBars(nil); fault == nil {
		t.Error("no bar gave no fault")
	}
	if _, fault = TestBars(append(bars, Bar{100, 120, 80})); fault == nil || fault.Line != 4 {
		t.Errorf("the fourth bar is bad, fault %v", fault)
	}
}
