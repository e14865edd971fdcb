package parting

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

// remediesOf judges the job and asks for remedies against the scheme with the
// id, or against the one chosen.
func remediesOf(t testing.TB, j *job.Job, id string) []Remedy {
	t.Helper()
	l, err := lookAt(j, mouth15, "")
	if err != nil {
		t.Fatal(err)
	}
	k := Index(l.all, id)
	if id == "" {
		k = Choose(l.all, 0, func(int) float64 { return 0 })
	}
	out := Remedies(j, l.all, k, mouth15)
	fewest := math.MaxInt
	for _, s := range l.all {
		if s.Verdict == Clear {
			fewest = min(fewest, s.Count)
		}
	}
	for _, r := range out {
		verify(t, j, &r, fewest)
	}
	return out
}

// verify carries a remedy out and judges what comes of it.
func verify(t testing.TB, j *job.Job, r *Remedy, fewest int) {
	t.Helper()
	l, err := lookAt(r.Apply(j), mouth15, "")
	if err != nil {
		t.Fatalf("%s cannot be built: %v", r.Remedy, err)
	}
	s := l.scheme(r.Scheme)
	if s == nil || s.Verdict != Clear {
		t.Fatalf("%q leaves %v", r.Remedy, s)
	}
	if r.Code != "moveParting" && s.Count >= fewest || fewest < math.MaxInt && r.Saves != max(0, fewest-s.Count) {
		t.Fatalf("%q: %d parts, before %d, saves %d", r.Remedy, s.Count, fewest, r.Saves)
	}
	most := 0.0
	for i, a := range r.Nodes {
		b := j.Form.Outer[i]
		if a.Z != b.Z || a.Corner != b.Corner {
			t.Fatalf("%q changes more than radii", r.Remedy)
		}
		if by := math.Abs(a.R-b.R) * j.Scale(); by > 0 {
			most = math.Max(most, by)
			z := a.Z*j.Scale() + l.m.Lift
			if l.m.Turned {
				z = l.m.Lift - a.Z*j.Scale()
			}
			if z < r.ZFrom-1e-6 || z > r.ZTo+1e-6 {
				t.Fatalf("%q changes %g mm, outside %g to %g", r.Remedy, z, r.ZFrom, r.ZTo)
			}
		}
	}
	if r.Code != "moveParting" {
		about(t, "measure", r.Measure, most, 1e-6)
	}
}

// The cylinder needs 100 tan 3° = 5.2408 mm in all: at the foot or at the rim.
// One part then does what three do now; tapered the other way, two.
func TestRemediesForCylinder(t *testing.T) {
	j := invented(t, "straight-cylinder")
	got := remediesOf(t, j, "")
	if len(got) != 4 {
		t.Fatalf("%d remedies, want 4: %+v", len(got), got)
	}
	whole := 100 * math.Tan(3*math.Pi/180)
	for i, r := range got {
		about(t, "taper", r.Measure, whole, 1e-6)
		scheme, saves := "one", 2
		if i > 1 {
			scheme, saves = "two", 1
		}
		if r.Code != "taper" || r.Scheme != scheme || r.Saves != saves || r.Unit != "mm" {
			t.Errorf("remedy %d: %+v", i, r.Finding)
		}
	}
	want := "Draw it in by 5.2 mm at 0.0 mm above the foot, a taper of 3.0°: a lower part alone then lets go. That saves two parts."
	if got[0].Remedy.String() != want {
		t.Errorf("remedy %q, want %q", got[0].Remedy, want)
	}
}

// The recess must widen downward: 2 mm too much and 6 tan 3° more.
func TestRemediesForDovetail(t *testing.T) {
	got := remediesOf(t, invented(t, "dovetail-foot"), "")
	if len(got) != 2 {
		t.Fatalf("%d remedies, want 2: %+v", len(got), got)
	}
	for _, r := range got {
		about(t, "tilt", r.Measure, 2+6*math.Tan(3*math.Pi/180), 1e-6)
		if r.Code != "tiltFoot" || r.Scheme != "one" || !strings.Contains(r.Text.String(), "foot wall") {
			t.Errorf("remedy %+v", r.Finding)
		}
	}
}

// The oval jar parts at its equator, 40 mm up; pinned at 60 it catches.
func TestRemedyMovesTheParting(t *testing.T) {
	j := invented(t, "round-jar")
	j.Mold.PartingHeights = []float64{60}
	got := remediesOf(t, j, "two")
	if len(got) == 0 || !slices.ContainsFunc(got, func(r Remedy) bool {
		return r.Code == "moveParting" && len(r.PartingHeights) == 1 && math.Abs(r.PartingHeights[0]-40) < 0.01 &&
			math.Abs(r.Measure-20) < 0.1 && reflect.DeepEqual(r.Nodes, j.Form.Outer)
	}) {
		t.Errorf("remedies %+v", got)
	}
	// a vase parted in its wall parts at the edge of its foot
	j = invented(t, "tall-vase")
	j.Mold.PartingHeights = []float64{70}
	got = remediesOf(t, j, "two")
	if len(got) == 0 || !strings.Contains(got[0].Remedy.String(), "Move the parting to the edge at 0.0 mm above the foot") {
		t.Errorf("remedies %+v", got)
	}
}

// Nothing is told where one part does already, or where only another form would.
func TestNoRemedies(t *testing.T) {
	for _, name := range []string{"open-bowl", "tapered-foot", "round-jar", "tall-vase", "waisted-vase"} {
		if got := remediesOf(t, invented(t, name), ""); len(got) != 0 {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// Every remedy told for random pots works, and none is told twice.
func TestRemediesOnRandomPots(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 3))
	told, codes := 0, map[string]int{}
	for range 200 {
		j := randomPot(rnd)
		if rnd.IntN(2) == 0 {
			j.Form.Size = job.SizeFired
		}
		if _, err := form.Build(j); err != nil {
			continue
		}
		got := remediesOf(t, j, "")
		for i, r := range got {
			codes[r.Code+" "+r.Scheme]++
			for _, o := range got[:i] {
				if o.Scheme == r.Scheme && reflect.DeepEqual(o.Nodes, r.Nodes) {
					t.Fatalf("told twice: %+v", r)
				}
			}
		}
		told += len(got)
	}
	if told < 100 || codes["taper one"] == 0 || codes["taper two"] == 0 || codes["tiltFoot one"] == 0 {
		t.Errorf("%d remedies told: %v", told, codes)
	}
}

func BenchmarkRemedies(b *testing.B) {
	j := wavy(500)
	l, err := lookAt(j, mouth15, "")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Remedies(j, l.all, 0, mouth15)
	}
}
