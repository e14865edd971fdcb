package casting

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand"
	"reflect"
	"testing"

	"moldwright/core/job"
)

// numbers are pointers to every float64 within v, in the order of the fields.
func numbers(v reflect.Value) []*float64 {
	var list []*float64
	switch v.Kind() {
	case reflect.Float64:
		list = append(list, v.Addr().Interface().(*float64))
	case reflect.Struct:
		for i := range v.NumField() {
			list = append(list, numbers(v.Field(i))...)
		}
	case reflect.Slice:
		for i := range v.Len() {
			list = append(list, numbers(v.Index(i))...)
		}
	}
	return list
}

// sound fails if a reply holds a figure that is no number, or if a refused
// input has no fault with words.
func sound(t *testing.T, in Input) (ok bool) {
	t.Helper()
	f, faults := Compute(in)
	for _, fault := range faults {
		if fault.Field == "" || fault.Message.IsZero() {
			t.Fatalf("a fault without field or words: %+v", fault)
		}
	}
	for _, x := range numbers(reflect.ValueOf(&f).Elem()) {
		if math.IsNaN(*x) || math.IsInf(*x, 0) {
			t.Fatalf("a figure is %g for %+v", *x, in)
		}
	}
	if f.CastsPerDay < 0 || f.Buckets < 0 || f.BandsRound < 0 || f.BandsOver < 0 {
		t.Fatalf("a count below 0 for %+v", in)
	}
	for _, r := range f.Rows() {
		if math.IsNaN(r.Value) || math.IsInf(r.Value, 0) {
			t.Fatalf("row %s is %g", r.Key, r.Value)
		}
	}
	if _, err := json.Marshal(f); err != nil {
		t.Fatal(err)
	}
	return len(faults) == 0
}

// Inputs drawn at the edges and in between, one to three numbers at a time
// thrown far off: never a figure that is no number.
func TestRandomInputs(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	odd := []float64{0, -1, 1e-300, 1e-9, 1e-3, 0.1, 1, 10, 99.999999999, 100, 1e3, 1e9, 1e300, math.MaxFloat64, math.SmallestNonzeroFloat64, -math.MaxFloat64}
	good := 0
	for i := range 20000 {
		in := workedCup()
		if i%2 == 1 {
			in = fourPiece()
		}
		in.Solid = i%3 == 0
		list := numbers(reflect.ValueOf(&in).Elem())
		for range 1 + rng.Intn(3) {
			x := list[rng.Intn(len(list))]
			switch rng.Intn(3) {
			case 0:
				*x = odd[rng.Intn(len(odd))]
			case 1:
				*x *= math.Exp(rng.NormFloat64() * 10)
			default:
				*x *= math.Exp(rng.NormFloat64() * 0.3)
			}
		}
		if sound(t, in) {
			good++
		}
	}
	if good < 4000 || good > 19000 {
		t.Errorf("%d of 20000 inputs were taken; the test should see both sides", good)
	}
}

// Each number in turn made NaN or infinite is refused.
func TestEveryNumberIsChecked(t *testing.T) {
	n := func(in *Input) []*float64 { return numbers(reflect.ValueOf(in).Elem()) }
	probe := fourPiece()
	for i := range n(&probe) {
		for _, bad := range []float64{nan, inf, -inf} {
			in := fourPiece()
			at := n(&in)[i]
			if at == &in.Plaster.Wall || at == &in.Plaster.Base {
				continue // settled in the part volumes
			}
			*at = bad
			if _, faults := Compute(in); len(faults) == 0 {
				t.Errorf("number %d of the input as %g was taken", i, bad)
			}
		}
	}
}

func FuzzCompute(f *testing.F) {
	f.Add(737.6, 591.9, 2787.0, 389.4, 4.0, 1.78, 2.6, 70.0, 12.0, 20.0, 3.0, 10.0, false)
	f.Add(1e-3, 1e-9, 1e9, 0.0, 0.1, 1.01, 8.0, 120.0, 99.9, 40.0, 200.0, 0.05, true)
	f.Fuzz(func(t *testing.T, cavity, inside, part, contact, wall, slip, solids, consistency, firing, moisture, testWall, testMinutes float64, solid bool) {
		in := workedCup()
		in.CavityML, in.InsideML, in.ContactCM2, in.Solid = cavity, inside, contact, solid
		in.Parts = []Part{{"lower", part, contact}, {"upper", part, 0}}
		in.Clay.Wall, in.Clay.SlipDensity, in.Clay.SolidsDensity, in.Clay.FiringShrinkage = wall, slip, solids, firing
		in.Clay.TestCast = job.TestCast{Wall: testWall, Minutes: testMinutes}
		in.Plaster.Consistency, in.Settings.CastMoisture = consistency, moisture
		sound(t, in)
	})
}

// The same input gives the same bytes, and leaves the input as it was.
func TestSameInputSameBytes(t *testing.T) {
	in := fourPiece()
	in.Settings.TestCasts = append(make([]job.TestCast, 0, 8), in.Settings.TestCasts...)
	before, _ := json.Marshal(in)
	a, _ := json.Marshal(mustCompute(t, in))
	b, _ := json.Marshal(mustCompute(t, in))
	after, _ := json.Marshal(in)
	if !bytes.Equal(a, b) || !bytes.Equal(before, after) {
		t.Error("Compute is not a pure function of its input")
	}
}

// Twice every length: volumes eight-fold, areas four-fold.
func TestScaling(t *testing.T) {
	in := fourPiece()
	in.Settings.Glaze = 0
	a := mustCompute(t, in)
	for _, v := range []*float64{&in.CavityML, &in.InsideML, &in.InsideFillML, &in.SpareML, &in.UpperLiftML, &in.PositiveML, &in.PositiveMassG} {
		*v *= 8
	}
	for _, v := range []*float64{&in.SpareContactCM2, &in.FillAreaCM2, &in.ContactCM2, &in.InsideAreaCM2, &in.OutsideCM2, &in.SeamAreaCM2} {
		*v *= 4
	}
	for _, v := range []*float64{&in.Clay.Wall, &in.SeamHeadMM, &in.CottleHeightMM, &in.CottleRadiusMM} {
		*v *= 2
	}
	for i := range in.Parts {
		in.Parts[i].ML *= 8
		in.Parts[i].ContactCM2 *= 4
	}
	b := mustCompute(t, in)
	for _, c := range []struct {
		what       string
		a, b, want float64
	}{
		{"plaster", a.Plaster, b.Plaster, 8}, {"cast", a.CastWet, b.CastWet, 8}, {"slip taken", a.SlipTaken, b.SlipTaken, 8},
		{"capacity", a.CapacityFired, b.CapacityFired, 8}, {"minutes", a.Minutes, b.Minutes, 4}, {"level", a.LevelDrop, b.LevelDrop, 2},
		{"lift", a.LiftForce, b.LiftForce, 8}, {"seam", a.SeamForce, b.SeamForce, 8}, {"hoop", a.CottleHoop, b.CottleHoop, 8},
		{"flotation", a.Flotation, b.Flotation, 8}, {"casts to half rate", a.CastsToHalfRate, b.CastsToHalfRate, 1}, {"casts to full", a.CastsToFull, b.CastsToFull, 1},
	} {
		near(t, c.what, c.b/c.a, c.want, 1e-9)
	}
}

// Which way a figure moves when one thing is made larger.
func TestMonotone(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*Input)
		figure func(*Figures) float64
		sign   float64
	}{
		{"thicker wall, longer", func(in *Input) { in.Clay.Wall *= 1.1 }, func(f *Figures) float64 { return f.Minutes }, 1},
		{"more water, less plaster", func(in *Input) { in.Plaster.Consistency += 3 }, func(f *Figures) float64 { return f.Plaster }, -1},
		{"more water, more to dry", func(in *Input) { in.Plaster.Consistency += 3 }, func(f *Figures) float64 { return f.WaterToDry }, 1},
		{"more water, lighter dry mold", func(in *Input) { in.Plaster.Consistency += 3 }, func(f *Figures) float64 { return f.MoldDry }, -1},
		{"denser slip, less fall", func(in *Input) { in.Clay.SlipDensity += 0.03 }, func(f *Figures) float64 { return f.LevelDrop }, -1},
		{"denser slip, more casts", func(in *Input) { in.Clay.SlipDensity += 0.03 }, func(f *Figures) float64 { return f.CastsToHalfRate }, 1},
		{"denser slip, same cast", func(in *Input) { in.Clay.SlipDensity += 0.03 }, func(f *Figures) float64 { return f.CastDry }, 0},
		{"wetter cast, lighter when dry", func(in *Input) { in.Settings.CastMoisture += 2 }, func(f *Figures) float64 { return f.CastDry }, -1},
		{"more shrinkage, holds less", func(in *Input) { in.Clay.DryingShrinkage++ }, func(f *Figures) float64 { return f.CapacityFired }, -1},
		{"more shrinkage, same mass", func(in *Input) { in.Clay.DryingShrinkage++ }, func(f *Figures) float64 { return f.CastFired }, 0},
		{"glaze, holds less", func(in *Input) { in.Settings.Glaze++ }, func(f *Figures) float64 { return f.CapacityFired }, -1},
		{"glaze, heavier", func(in *Input) { in.Settings.Glaze++ }, func(f *Figures) float64 { return f.CastGlazed }, 1},
		{"deeper seam, harder banded", func(in *Input) { in.SeamHeadMM += 200 }, func(f *Figures) float64 { return f.BandForce }, 1},
		{"heavier positive, floats less", func(in *Input) { in.PositiveMassG += 100 }, func(f *Figures) float64 { return f.Flotation }, -1},
		{"smaller bucket, more of them", func(in *Input) { in.Settings.Bucket /= 10 }, func(f *Figures) float64 { return float64(f.Buckets) }, 1},
		{"slower drying", func(in *Input) { in.Settings.DryingRate /= 2 }, func(f *Figures) float64 { return f.DryingBetween }, 1},
		{"farther reach, less to lift", func(in *Input) { in.Settings.Reach += 10 }, func(f *Figures) float64 { return f.LiftLimit }, -1},
	} {
		in := fourPiece()
		a := mustCompute(t, in)
		c.change(&in)
		b := mustCompute(t, in)
		d := c.figure(&b) - c.figure(&a)
		if c.sign == 0 && math.Abs(d) > 1e-9 || c.sign*d < 0 || c.sign != 0 && d == 0 {
			t.Errorf("%s: changed by %g", c.what, d)
		}
	}
}
