package plan

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/parting"
)

// pot reads one of the invented pots, whose answers are worked by hand in the
// comment at its head.
func pot(t testing.TB, name string) *job.Job {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "pots", name+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	nodes, faults := form.ReadRows(string(text), form.Columns{Units: "mm"})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	j := job.Defaults()
	j.Name = name
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	return &j
}

func made(t testing.TB, j *job.Job) *Plan {
	t.Helper()
	p, err := Make(j)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func (p *Plan) scheme(id string) *Scheme {
	for i := range p.Schemes {
		if p.Schemes[i].ID == id {
			return &p.Schemes[i]
		}
	}
	return nil
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.5f, want %.5f (within %g)", what, got, want, tol)
	}
}

func TestPotsWithKnownAnswers(t *testing.T) {
	type want struct {
		pot     string
		chosen  string
		verdict parting.Verdict
		heights []float64
		order   []string
		one     parting.Verdict // of one part
		depth   float64         // of its catch
	}
	for _, w := range []want{
		{"open-bowl", "one", parting.Clear, nil, []string{"lower"}, parting.Clear, 0},
		{"round-jar", "two", parting.Clear, []float64{40}, []string{"upper", "lower"}, parting.Catches, 35},
		{"tall-vase", "two", parting.Clear, []float64{0}, []string{"upper", "lower"}, parting.Catches, 30},
		{"waisted-vase", "sides2+lower", parting.Clear, []float64{0}, []string{"lower", "A", "B"}, parting.Catches, 15},
		{"straight-cylinder", "sides2+lower", parting.Clear, []float64{0}, []string{"lower", "A", "B"}, parting.Rubs, 0},
		{"tapered-foot", "one", parting.Clear, nil, []string{"lower"}, parting.Clear, 0},
		{"upright-band", "two", parting.Clear, []float64{52.085}, []string{"upper", "lower"}, parting.Catches, 32},
		{"dovetail-foot", "one", parting.Catches, nil, []string{"lower"}, parting.Catches, 2},
	} {
		t.Run(w.pot, func(t *testing.T) {
			p := made(t, pot(t, w.pot))
			s := p.chosen()
			if s.ID != w.chosen || s.Verdict != w.verdict {
				t.Fatalf("chosen %s %s, want %s %s\n%s", s.ID, s.Verdict, w.chosen, w.verdict, p.WhyNotFewer)
			}
			if len(s.PartingHeights) != len(w.heights) {
				t.Fatalf("parting heights %v, want %v", s.PartingHeights, w.heights)
			}
			for i, h := range w.heights {
				near(t, "parting height", s.PartingHeights[i], h, 0.01)
			}
			if !reflect.DeepEqual(p.Order, w.order) {
				t.Errorf("order %v, want %v", p.Order, w.order)
			}
			one := p.scheme("one")
			if one.Verdict != w.one {
				t.Errorf("one part %s, want %s", one.Verdict, w.one)
			}
			near(t, "depth of one part's catch", one.Depth, w.depth, 0.01)
		})
	}
}

func TestBowlDraft(t *testing.T) {
	part := made(t, pot(t, "open-bowl")).scheme("one").Parts[0]
	near(t, "draft of the wall", part.MinDraft, math.Atan2(30, 80)*180/math.Pi, 1e-9)
}

func TestTallVaseDraft(t *testing.T) {
	p := made(t, pot(t, "tall-vase"))
	for _, part := range p.scheme("two").Parts {
		want := map[string]float64{"lower": 90, "upper": math.Atan2(30, 150) * 180 / math.Pi}[part.Name]
		near(t, "draft of the "+part.Name+" part", part.MinDraft, want, 1e-9)
	}
}

func TestWaistedVaseCatches(t *testing.T) {
	p := made(t, pot(t, "waisted-vase"))
	c := p.scheme("one").Parts[0].Catches
	if len(c) != 1 {
		t.Fatalf("one part has %d catches, want 1: %+v", len(c), c)
	}
	near(t, "deepest place", c[0].AtZ, 60, 0.01)
	near(t, "what blocks it", c[0].BlockedAtZ, 0, 0.01)
	// behind the foot from the foot up to where the wall is as wide again:
	// 40 = 25 + 20 (z - 60) / 80 at z = 120
	near(t, "catch begins", c[0].ZFrom, 0, 0.01)
	near(t, "catch ends", c[0].ZTo, 120, 0.01)
	up := p.scheme("two").Parts[1]
	near(t, "depth behind the rim", up.Catches[0].Depth, 20, 0.01)
	sides := p.scheme("sides2").Parts[0]
	if sides.Verdict != parting.Rubs {
		t.Errorf("two side parts alone: %s, want rubs", sides.Verdict)
	}
}

func TestCylinderRubsAndWhatFreesIt(t *testing.T) {
	j := pot(t, "straight-cylinder")
	p := made(t, j)
	one := p.scheme("one").Parts[0]
	near(t, "share that rubs", one.RubShare, 100*251.327/301.593, 0.01)
	near(t, "area that rubs", one.RubArea, 251.327, 0.01)
	side := p.scheme("sides2+lower").Parts[1]
	near(t, "share of a side part that rubs", side.RubShare, 100*12.0/360, 0.01)

	j.Mold.Scheme = "one"
	p = made(t, j)
	if f := p.Findings[0]; f.Code != "rub" || f.Remedy.String() != "A taper of 3.0° on this stretch, 5.2 mm in all, would free it." {
		t.Errorf("first finding for one part: %+v", f)
	}
	j.Form.Outer[1].R -= 100 * math.Tan(3*math.Pi/180) // the taper that it names
	if p = made(t, j); p.scheme("one").Verdict != parting.Clear {
		t.Errorf("tapered by 3 degrees one part is %s: %s", p.scheme("one").Verdict, p.scheme("one").Against)
	}
}

func TestDovetailIsATrap(t *testing.T) {
	p := made(t, pot(t, "dovetail-foot"))
	if len(p.Traps) != 1 {
		t.Fatalf("%d traps, want 1: %+v", len(p.Traps), p.Traps)
	}
	trap := p.Traps[0]
	near(t, "zFrom", trap.ZFrom, 0, 0.01)
	near(t, "zTo", trap.ZTo, 6, 0.01)
	near(t, "depth", trap.Depth, 2, 0.01)
	near(t, "area", trap.Area, 6, 0.001)
	near(t, "volume", trap.Volume, 2*math.Pi*(20+2.0/3)*6/1000, 1e-6) // Pappus
	for _, name := range []string{"open-bowl", "round-jar", "tall-vase", "waisted-vase", "straight-cylinder", "tapered-foot", "upright-band"} {
		if p := made(t, pot(t, name)); len(p.Traps) != 0 {
			t.Errorf("%s has traps: %+v", name, p.Traps)
		}
	}
}

// Same job in, same bytes out.
func TestSameJobSamePlan(t *testing.T) {
	j, err := pot(t, "waisted-vase").Write()
	if err != nil {
		t.Fatal(err)
	}
	request := []byte(`{"job":` + string(j) + `}`)
	first, _ := Call("plan", request, nil, nil)
	for range 5 {
		if again, _ := Call("plan", request, nil, nil); string(again) != string(first) {
			t.Fatal("the same job gives another plan")
		}
	}
}
