package parting

import (
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

// mouth15 is a fill hole of 15 mm radius, or less on a slender form.
func mouth15(_ *job.Job, maxR float64) float64 { return math.Min(15, 0.3*maxR) }

func corner(r, z float64) job.Node { return job.Node{R: r, Z: z, Corner: true} }

func potOf(nodes ...job.Node) *job.Job {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	return &j
}

func invented(t testing.TB, name string) *job.Job {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "pots", name+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	nodes, faults := form.ReadRows(string(text), form.Columns{Units: "mm"})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return potOf(nodes...)
}

func nearestOf(t testing.TB, j *job.Job, scheme string, draft float64) *Nearest {
	t.Helper()
	n, err := NearestForm(j, scheme, draft, mouth15)
	if err != nil {
		t.Fatalf("%s: %v", scheme, err)
	}
	return n
}

func about(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.9f, want %.9f (within %g)", what, got, want, tol)
	}
}

// mustLetGo judges the job with the nearest form as the plan would, checks that
// only radii have changed, and that asking again changes nothing.
func mustLetGo(t testing.TB, j *job.Job, n *Nearest, scheme string, draft float64) {
	t.Helper()
	out := n.Apply(j)
	out.Rules.LeastDraft = draft
	l, err := lookAt(out, mouth15, "")
	if err != nil {
		t.Fatalf("the nearest form cannot be built: %v", err)
	}
	if s := l.scheme(scheme); s == nil || s.Verdict != Clear {
		t.Fatalf("the nearest form is not clear as %s: %v", scheme, s)
	}
	for i, a := range n.Nodes {
		if b := j.Form.Outer[i]; a.Z != b.Z || a.Corner != b.Corner {
			t.Fatalf("node %d was %v and is %v: more than its radius changed", i, b, a)
		}
	}
	again := nearestOf(t, out, scheme, draft)
	if again.MaxChangeMM != 0 || again.RMSChangeMM != 0 || !reflect.DeepEqual(again.Nodes, n.Nodes) {
		t.Fatalf("asked again it changes by %g mm more", again.MaxChangeMM)
	}
}

// The wall of a cylinder of radius 40 and height 100 must gain 100 tan 3° =
// 5.2408 mm over its height. Foot edge and rim weigh the same, so the least sum
// of squares has the one go in and the other out by half of it.
func TestNearestCylinder(t *testing.T) {
	j := potOf(corner(0, 0), corner(40, 0), corner(40, 100))
	half := 100 * math.Tan(3*math.Pi/180) / 2
	n := nearestOf(t, j, "one", 3)
	about(t, "foot edge", n.Nodes[1].R, 40-half, 1e-6)
	about(t, "rim", n.Nodes[2].R, 40+half, 1e-6)
	about(t, "largest change", n.MaxChangeMM, 2.62039, 1e-5)
	about(t, "rms change", n.RMSChangeMM, 2.62039, 1e-5)
	if len(n.Places) != 2 || n.Places[0].By >= 0 || n.Places[1].By <= 0 || n.Places[1].AtZ != 100 {
		t.Errorf("places %+v", n.Places)
	}
	mustLetGo(t, j, n, "one", 3)

	n = nearestOf(t, j, "two", 3)
	about(t, "foot edge", n.Nodes[1].R, 40+half, 1e-6)
	about(t, "rim", n.Nodes[2].R, 40-half, 1e-6)
	about(t, "parting", *n.PartingHeight, 0, 1e-9)
	mustLetGo(t, j, n, "two", 3)

	// many rows on the same wall: the outermost move as far, the middle stays
	nodes := []job.Node{corner(0, 0)}
	for i := range 101 {
		nodes = append(nodes, corner(40, float64(i)))
	}
	j = potOf(nodes...)
	n = nearestOf(t, j, "one", 3)
	for i := 1; i < len(nodes); i++ {
		about(t, "radius", n.Nodes[i].R, 40+(nodes[i].Z-50)*math.Tan(3*math.Pi/180), 1e-6)
	}
	mustLetGo(t, j, n, "one", 3)
}

// A fired form is oversize in the mold; what changes is told in the mold's
// millimetres and applied in the form's own.
func TestNearestAtFiredSize(t *testing.T) {
	mold := potOf(corner(0, 0), corner(40, 0), corner(40, 100))
	fired := potOf(corner(0, 0), corner(40, 0), corner(40, 100))
	fired.Form.Size = job.SizeFired
	a, b := nearestOf(t, mold, "one", 3), nearestOf(t, fired, "one", 3)
	about(t, "largest change", b.MaxChangeMM, a.MaxChangeMM*fired.Scale(), 1e-9)
	about(t, "height of the change", b.AtZ, a.AtZ*fired.Scale(), 1e-9)
	for i := range a.Nodes {
		about(t, "radius", b.Nodes[i].R, a.Nodes[i].R, 1e-9)
	}
	mustLetGo(t, fired, b, "one", 3)
}

// A recess widens upward by 2 mm over 6: inside, the rule is turned round, and
// both edges, which weigh the same, move by half of 2 + 6 tan 3°.
func TestNearestRecess(t *testing.T) {
	j := invented(t, "dovetail-foot")
	n := nearestOf(t, j, "one", 3)
	half := 1 + 3*math.Tan(3*math.Pi/180)
	about(t, "roof of the recess", n.Nodes[1].R, 22-half, 1e-6)
	about(t, "mouth of the recess", n.Nodes[2].R, 20+half, 1e-6)
	about(t, "foot edge", n.Nodes[3].R, 27, 0)
	about(t, "rim", n.Nodes[4].R, 60, 0)
	mustLetGo(t, j, n, "one", 3)
}

// What lets go already stays, to the last bit.
func TestNearestLeavesClearForms(t *testing.T) {
	for _, w := range []struct{ pot, scheme string }{
		{"open-bowl", "one"}, {"tapered-foot", "one"}, {"round-jar", "two"}, {"tall-vase", "two"},
	} {
		j := invented(t, w.pot)
		n := nearestOf(t, j, w.scheme, 3)
		if n.MaxChangeMM != 0 || n.RMSChangeMM != 0 || len(n.Places) != 0 || !reflect.DeepEqual(n.Nodes, j.Form.Outer) {
			t.Errorf("%s as %s changes by %g mm", w.pot, w.scheme, n.MaxChangeMM)
		}
	}
}

// ball is a sphere of radius 50, by smooth nodes on it.
func ball(nodes int) *job.Job {
	var out []job.Node
	for i := range nodes {
		sin, cos := math.Sincos(math.Pi * float64(i) / float64(nodes-1))
		out = append(out, job.Node{R: 50 * sin, Z: 50 - 50*cos})
	}
	out[0].R, out[nodes-1].R = 0, 0
	return potOf(out...)
}

// A sphere has less than 3 degrees of draft on sin 3° = 5.2 % of each half. The
// nearest form that keeps the least draft everywhere beside the seam comes to an
// edge there: a cone of 3 degrees as tangent to the sphere as can be. The change
// is below the height of that edge over the sphere, 50 (1/cos 3° - 1) = 0.0686 mm.
func TestNearestSphere(t *testing.T) {
	j := ball(121)
	n := nearestOf(t, j, "two", 3)
	if n.MaxChangeMM == 0 || n.MaxChangeMM > 0.0686 {
		t.Errorf("the sphere changes by %g mm", n.MaxChangeMM)
	}
	about(t, "parting", *n.PartingHeight, 50, 1e-6)
	for i, a := range n.Nodes {
		if z := math.Abs(a.Z - 50); z > 50*math.Sin(5*math.Pi/180) && a != j.Form.Outer[i] {
			t.Errorf("node %d, %g mm from the seam, changes", i, z)
		}
	}
	mustLetGo(t, j, n, "two", 3)

	_, err := NearestForm(j, "one", 3, mouth15)
	var f *job.Fault
	if !errors.As(err, &f) || f.Code != "closedForm" {
		t.Errorf("a closed form in one part: %v", err)
	}
}

// A wall with a groove turned into it, drooping at its lower edge, so that z
// falls on the way: the groove is filled and the wall kept.
func TestNearestGroove(t *testing.T) {
	j := potOf(corner(0, 0), corner(30, 0), corner(40, 40), corner(36, 38), corner(36, 46), corner(42, 46), corner(50, 90))
	n := nearestOf(t, j, "one", 3)
	mustLetGo(t, j, n, "one", 3)
	if n.MaxChangeMM > 4 {
		t.Errorf("filling a groove of 4 mm changes %g mm", n.MaxChangeMM)
	}
	n = nearestOf(t, j, "two", 3)
	mustLetGo(t, j, n, "two", 3)
}

// A flange that droops lets go downward as it is: the plaster under it has the
// open sky below.
func TestNearestDroopingFlange(t *testing.T) {
	j := potOf(corner(0, 0), corner(30, 0), corner(35, 60), corner(60, 50), corner(61, 62))
	n := nearestOf(t, j, "one", 3)
	if n.MaxChangeMM != 0 {
		t.Errorf("changes by %g mm", n.MaxChangeMM)
	}
}

func TestNearestRefuses(t *testing.T) {
	cylinder := func() *job.Job { return potOf(corner(0, 0), corner(40, 0), corner(40, 100)) }
	curled := potOf(corner(0, 0), corner(30, 0), corner(50, 80), corner(45, 82), corner(42, 76))
	level := potOf(corner(0, 0), corner(30, 0), corner(28, 80), corner(24, 80))
	crossing := potOf(corner(0, 0), corner(30, 0), corner(10, 40), corner(40, 20), corner(10, 10), corner(30, 60))
	for _, w := range []struct {
		name, scheme string
		j            *job.Job
		draft        float64
		code         string
	}{
		{"scheme", "sides2", cylinder(), 3, "badValue"},
		{"draft NaN", "one", cylinder(), math.NaN(), "badValue"},
		{"draft negative", "one", cylinder(), -1, "badValue"},
		{"draft too large", "two", cylinder(), 60, "badValue"},
		{"lip curled in", "one", curled, 3, "rimNotHighest"},
		{"lip level inward", "one", level, 3, "rimNotHighest"},
		{"crossing", "one", crossing, 3, "crossesItself"},
		{"no form", "one", potOf(), 3, "tooFewPoints"},
	} {
		_, err := NearestForm(w.j, w.scheme, w.draft, mouth15)
		var one *job.Fault
		var many job.Faults
		switch {
		case errors.As(err, &one):
		case errors.As(err, &many):
			one = many[0]
		default:
			t.Errorf("%s: %v", w.name, err)
			continue
		}
		if one.Code != w.code || one.Message.IsZero() || one.Field == "" {
			t.Errorf("%s: fault %+v, want %s", w.name, one, w.code)
		}
	}
	// the same lip is held well by an upper part
	mustLetGo(t, curled, nearestOf(t, curled, "two", 3), "two", 3)
	mustLetGo(t, level, nearestOf(t, level, "two", 3), "two", 3)
}

// A form that opens downward stands turned over in the mold, so the rim is what
// moves out, 100 mm up, and the nodes keep their own heights.
func TestNearestOpensDownward(t *testing.T) {
	j := potOf(corner(0, 100), corner(40, 100), corner(40, 0))
	n := nearestOf(t, j, "one", 3)
	half := 100 * math.Tan(3*math.Pi/180) / 2
	about(t, "top edge", n.Nodes[1].R, 40-half, 1e-6)
	about(t, "rim", n.Nodes[2].R, 40+half, 1e-6)
	if len(n.Places) != 2 || n.Places[0].AtZ != 0 || n.Places[1].AtZ != 100 {
		t.Errorf("places %+v", n.Places)
	}
	mustLetGo(t, j, n, "one", 3)
	mustLetGo(t, j, nearestOf(t, j, "two", 3), "two", 3)
	if got := remediesOf(t, j, ""); len(got) == 0 || !strings.Contains(got[0].Remedy.String(), "Draw it in by 5.2 mm at 0.0 mm") {
		t.Errorf("remedies %+v", got)
	}
}

// The pinned parting goes along.
func TestNearestMovesThePinnedParting(t *testing.T) {
	j := invented(t, "waisted-vase")
	j.Mold.PartingHeights = []float64{100}
	n := nearestOf(t, j, "two", 3)
	if h := n.Apply(j).Mold.PartingHeights; len(h) != 1 || h[0] != *n.PartingHeight {
		t.Errorf("parting heights %v, want %g", h, *n.PartingHeight)
	}
	if j.Mold.PartingHeights[0] != 100 {
		t.Error("the job given was changed")
	}
	mustLetGo(t, j, n, "two", 3)
}

// randomPot is an invented profile with a flat or recessed foot, a wall that
// wanders, corners and smooth nodes mixed, now and then a level or a drooping
// stretch, and an open or closed top. It may fail to build.
func randomPot(rnd *rand.Rand) *job.Job {
	var out []job.Node
	add := func(r, z float64) { out = append(out, job.Node{R: r, Z: z, Corner: rnd.IntN(3) > 0}) }
	foot := 20 + 30*rnd.Float64()
	if rnd.IntN(2) == 0 {
		h := 2 + 6*rnd.Float64()
		add(0, h)
		r := foot * (0.5 + 0.3*rnd.Float64())
		add(r, h)
		add(r+3*rnd.NormFloat64(), 0)
	} else {
		add(0, 0)
	}
	add(foot, 0)
	r, z := foot, 0.0
	for range 1 + rnd.IntN(8) {
		dz := 4 + 25*rnd.Float64()
		switch rnd.IntN(10) {
		case 0:
			dz = 0
		case 1:
			dz = -3 * rnd.Float64()
		}
		dr := 8 * rnd.NormFloat64()
		if dz <= 0 && dr <= 0 {
			dr = 1 - dr
		}
		r, z = math.Max(5, r+dr), z+dz
		add(r, z)
	}
	if rnd.IntN(3) == 0 {
		add(0, z+5+10*rnd.Float64())
	}
	return potOf(out...)
}

// Every nearest form is judged clear by the pipeline, keeps all but radii, and
// stays when asked again. Only a closed top in one part, and a rim that is not
// the highest, are refused.
func TestNearestOnRandomPots(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 1))
	freed := 0
	for range 250 {
		j := randomPot(rnd)
		if _, err := form.Build(j); err != nil {
			continue
		}
		draft := []float64{0, 1, 3, 5}[rnd.IntN(4)]
		for _, scheme := range []string{"one", "two"} {
			n, err := NearestForm(j, scheme, draft, mouth15)
			var f *job.Fault
			switch {
			case err == nil:
				freed++
				mustLetGo(t, j, n, scheme, draft)
			case !errors.As(err, &f) || scheme == "two" || f.Code != "closedForm" && f.Code != "rimNotHighest":
				t.Fatalf("%s at %g degrees: %v, %v", scheme, draft, err, j.Form.Outer)
			}
		}
	}
	if freed < 250 {
		t.Errorf("only %d changes were freed", freed)
	}
}

// Nasty profiles too: spirals, hair-thin necks, repeated radii, near-level
// stretches. Of the most tangled a few have no nearest form; they must be few.
func TestNearestOnNastyPots(t *testing.T) {
	freed, failed := 0, 0
	for k := range uint64(300) {
		j := potOf(formtest.Nodes(formtest.Rand(77, k))...)
		if _, err := form.Build(j); err != nil {
			continue
		}
		for _, scheme := range []string{"one", "two"} {
			n, err := NearestForm(j, scheme, 3, mouth15)
			var f *job.Fault
			switch {
			case err == nil:
				freed++
				mustLetGo(t, j, n, scheme, 3)
			case !errors.As(err, &f):
				t.Fatal(err)
			case f.Code == "noNearestForm":
				failed++
			case scheme == "two" || f.Code != "closedForm" && f.Code != "rimNotHighest":
				t.Fatalf("profile %d as %s: %v", k, scheme, err)
			}
		}
	}
	if freed < 200 || failed > freed/100 {
		t.Errorf("%d forms freed, %d not", freed, failed)
	}
}

// No other form with the least draft on every stretch is nearer, for profiles of
// straight lines: random competitors, of any parting, all change more.
func TestNearestBeatsCompetitors(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 2))
	for range 150 {
		j := randomPot(rnd)
		for i := range j.Form.Outer {
			j.Form.Outer[i].Corner = true
		}
		if _, err := form.Build(j); err != nil {
			continue
		}
		n := nearestOf(t, j, "two", 3)
		l, err := lookAt(j, mouth15, "two")
		if err != nil {
			t.Fatal(err)
		}
		s := newSearch(j, "two", mouth15, l)
		change := func(r func(i int) float64) float64 {
			sum := 0.0
			for i := range s.r {
				sum += s.weight[i] * (r(i) - s.r[i]) * (r(i) - s.r[i])
			}
			return sum
		}
		own := change(func(i int) float64 { return n.Nodes[i].R })
		last := len(s.r) - 1
		for range 300 {
			r := make([]float64, last+1)
			k := 1 + rnd.IntN(last-1)
			spread := math.Pow(10, -4*rnd.Float64())
			for i := range r {
				r[i] = n.Nodes[i].R + 5*spread*rnd.NormFloat64()
			}
			r[0] = 0
			if s.closed {
				r[last] = 0
			}
			r[last] = math.Max(r[last], 0)
			// made feasible by pushing outward from both ends to the peak
			for i := 1; i <= k; i++ {
				r[i] = math.Max(r[i], r[i-1]+s.gap[i-1])
			}
			for i := last - 1; i >= k; i-- {
				r[i] = math.Max(r[i], r[i+1]+s.gap[i])
			}
			trial := potOf()
			for i, a := range j.Form.Outer {
				trial.Form.Outer = append(trial.Form.Outer, corner(r[i], a.Z))
			}
			if _, err := form.Build(trial); err != nil {
				continue // a parting that would cross the profile
			}
			if c := change(func(i int) float64 { return r[i] }); c < own-1e-6 {
				t.Fatalf("a competitor parted at node %d changes %g, ours %g\n%v\n%v", k, c, own, r, n.Nodes)
			}
		}
	}
}

// Whatever the radii, there is a form that lets go or a fault, never a panic.
func FuzzNearestForm(f *testing.F) {
	f.Add(uint64(1), 3.0, true)
	f.Add(uint64(2), 0.0, false)
	f.Add(uint64(3), 45.0, true)
	f.Fuzz(func(t *testing.T, seed uint64, draft float64, one bool) {
		j := randomPot(rand.New(rand.NewPCG(seed, 9)))
		scheme := "two"
		if one {
			scheme = "one"
		}
		n, err := NearestForm(j, scheme, draft, mouth15)
		if err != nil {
			var a *job.Fault
			var b job.Faults
			if !errors.As(err, &a) && !errors.As(err, &b) {
				t.Fatal(err)
			}
			return
		}
		mustLetGo(t, j, n, scheme, draft)
	})
}

// wavy is a jar of many smooth nodes with a belly and fine waves on it, as a
// traced photo gives it.
func wavy(nodes int) *job.Job {
	out := []job.Node{corner(0, 0), corner(35, 0)}
	for i := 1; i < nodes-2; i++ {
		t := float64(i) / float64(nodes-2)
		out = append(out, job.Node{R: 35 + 20*math.Sin(2.6*t) + 0.3*math.Sin(40*t), Z: 150 * t})
	}
	return potOf(append(out, corner(44, 150))...)
}

func BenchmarkNearestForm(b *testing.B) {
	for _, scheme := range []string{"one", "two"} {
		b.Run(scheme, func(b *testing.B) {
			j := wavy(500)
			for b.Loop() {
				if _, err := NearestForm(j, scheme, 3, mouth15); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
