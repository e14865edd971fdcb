package tooling

import (
	"fmt"
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/release"
	"moldwright/core/solid"
)

func c(r, z float64) job.Node { return job.Node{R: r, Z: z, Corner: true} }
func s(r, z float64) job.Node { return job.Node{R: r, Z: z} }

var pots = map[string][]job.Node{
	"bowl":   {c(0, 4), c(20, 4), c(23, 0), c(30, 0), c(60, 70)},
	"jar":    {s(0, 0), s(50, 50), s(0, 100)},
	"waist":  {c(0, 5), c(30, 5), c(34, 0), c(40, 0), s(25, 60), c(45, 140)},
	"wide":   {c(0, 0), c(60, 0), c(120, 60)},
	"beaker": {c(0, 0), c(30, 0), c(40, 120)},
}

// each lays out every scheme of every pot under several settings.
func each(t *testing.T, visit func(name string, j *job.Job, md *mold.Mold)) {
	settings := map[string]func(*job.Job){
		"plain":    func(*job.Job) {},
		"cottle":   func(j *job.Job) { j.Mold.Staves = 1; j.Printer.Solid = true },
		"straight": func(j *job.Job) { j.Plaster.Outside = job.OutsideStraight; j.Mold.Staves = 4 },
		"three":    func(j *job.Job) { j.Mold.Staves = 3; j.Printer.Shell = 5; d := 12.0; j.Mold.DrainHole = &d },
		"flared":   func(j *job.Job) { j.Mold.Spare.Flared = true },
		"low bed":  func(j *job.Job) { j.Printer.Bed = [3]float64{150, 140, 60} },
		"oval":     func(j *job.Job) { j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: 0.7} },
	}
	for what, set := range settings {
		for pot, nodes := range pots {
			j := job.Defaults()
			j.Form.Size = job.SizeMold
			j.Form.Outer = nodes
			set(&j)
			k := 0
			layouts(t, &j, func(md *mold.Mold) {
				if k++; (len(what)+len(pot)+k)%4 == 2 { // a quarter of them, all settings and schemes among them
					visit(fmt.Sprintf("%s, %s, %s", pot, what, md.Scheme.ID), &j, md)
				}
			})
		}
	}
}

// layouts lays out every scheme of a job.
func layouts(t *testing.T, j *job.Job, visit func(md *mold.Mold)) {
	m, err := form.Build(j)
	if err != nil {
		t.Fatal(err)
	}
	_, maxR := m.Extent()
	end := len(m.Pts) - 1
	if m.Closed {
		end = m.CutMouth(mold.MouthRadius(j, maxR))
	}
	all := parting.Judge(release.New(m), end, parting.RulesOf(j), parting.Wanted{})
	base := mold.NewBase(m, end, all, nil)
	for i := range all {
		md := mold.Lay(j, base, &all[i])
		md.PlaceNatches(j.Printer.Clearance)
		visit(md)
	}
}

// Every piece is sound, as heavy as the plan says, rests on the bed, and touches
// its plaster part without sharing space with it. (Sizes and overhangs:
// TestSizeAndOverhangOfEveryPiece.)
func TestEveryPiece(t *testing.T) {
	made := map[string]int{}
	each(t, func(name string, j *job.Job, md *mold.Mold) {
		so := mold.NewCoarse(md)
		bodies := map[string]*solid.Body{}
		for i := range md.Parts {
			m, err := so.Part(&md.Parts[i])
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			bodies[md.Parts[i].Name] = solid.NewBody(m)
		}
		for _, p := range Kit(j, md) {
			at := name + ", " + p.Name
			if !p.HasMesh() {
				if p.Note.IsZero() {
					t.Errorf("%s cannot be made and does not say why", at)
				}
				continue
			}
			made[p.Kind]++
			m, toMold, err := p.Mesh(so)
			if err != nil {
				t.Errorf("%s: %v", at, err)
				continue
			}
			if !sound(t, at, m) {
				continue
			}
			lo, _ := m.Bounds()
			if math.Abs(lo[2]) > 1e-9 {
				t.Errorf("%s does not rest on the bed: %g", at, lo[2])
			}
			within := 0.03
			if p.Kind == "stave" && md.Block.Facets > 0 {
				within = 0.1 // coarse chords cut the edges of straight-sided blocks
			}
			if got := m.Volume() / 1000; math.Abs(got-p.Volume) > within*p.Volume+0.5 {
				t.Errorf("%s: volume %.2f ml, the plan says %.2f", at, got, p.Volume)
			}
			there := inMold(m, toMold)
			if hit, where := solid.Overlap(solid.NewBody(there), bodies[p.Part], 0.02); hit {
				t.Errorf("%s shares space with part %s at %.2f", at, p.Part, where)
			}
		}
	})
	t.Log(made)
	for _, k := range []string{"positive", "stave", "collar", "tray", "board"} {
		if made[k] == 0 {
			t.Errorf("no %s was made", k)
		}
	}
}

// inMold moves a print back to where it stands in the mold.
func inMold(m *solid.Mesh, rows [12]float64) *solid.Mesh {
	there := m.Clone()
	for i, v := range there.V {
		m := m.V[i]
		for k := range 3 {
			v[k] = rows[4*k]*m[0] + rows[4*k+1]*m[1] + rows[4*k+2]*m[2] + rows[4*k+3]
		}
		there.V[i] = v
	}
	return there
}

// steepest is the steepest overhang of a mesh as it stands on the bed, degrees;
// slivers that are nowhere a hundredth of a millimetre wide do not count.
func steepest(m *solid.Mesh) float64 {
	worst := 0.0
	for _, f := range m.T {
		a, b, c := m.V[f[0]], m.V[f[1]], m.V[f[2]]
		if a[2] < 1e-6 && b[2] < 1e-6 && c[2] < 1e-6 {
			continue
		}
		var u, v solid.Vec
		for k := range 3 {
			u[k], v[k] = b[k]-a[k], c[k]-a[k]
		}
		n := solid.Vec{u[1]*v[2] - u[2]*v[1], u[2]*v[0] - u[0]*v[2], u[0]*v[1] - u[1]*v[0]}
		l := math.Sqrt(n[0]*n[0] + n[1]*n[1] + n[2]*n[2])
		if long := math.Max(norm(u), math.Max(norm(v), norm(solid.Vec{u[0] - v[0], u[1] - v[1], u[2] - v[2]}))); l < 0.01*long {
			continue
		}
		worst = math.Max(worst, math.Asin(math.Max(0, -n[2]/l))*180/math.Pi)
	}
	return worst
}

// The release survey finds a cottle that rubs and asks for staves: one piece
// round a straight wall has no draft; the same wall in two staves is clear.
func TestSurveyOfTheCottle(t *testing.T) {
	found := 0
	each(t, func(name string, j *job.Job, md *mold.Mold) {
		if md.Scheme.Sides == 0 || !md.Scheme.Lower {
			return
		}
		for _, n := range [2]int{1, 2} {
			k := *j
			k.Mold.Staves = n
			for _, p := range Kit(&k, md) {
				if p.Kind != "stave" || p.Part != "lower" {
					continue
				}
				found++
				if n == 1 && (p.Verdict != parting.Rubs || p.Draft != 0 || p.Note.IsZero()) {
					t.Errorf("%s: a cottle of no draft is %s (%g degrees)", name, p.Verdict, p.Draft)
				}
				if n == 2 && p.Verdict != parting.Clear {
					t.Errorf("%s: %s is %s (%g degrees)", name, p.Name, p.Verdict, p.Draft)
				}
			}
		}
	})
	if found == 0 {
		t.Error("no cottle was looked at")
	}
}

// Pieces larger than the bed are divided into the fewest that fit. They say so where
// nothing can fit: on a bed of the size of a joint's keys, which no job may name.
func TestFitToTheBed(t *testing.T) {
	divided, refused := 0, 0
	tiny := false
	check := func(name string, j *job.Job, md *mold.Mold) {
		for _, p := range Kit(j, md) {
			if !p.HasMesh() {
				continue
			}
			fits := p.Size[0] <= j.Printer.Bed[0]+1e-6 && p.Size[1] <= j.Printer.Bed[1]+1e-6 && p.Size[2] <= j.Printer.Bed[2]+1e-6
			if fits != p.FitsBed {
				t.Errorf("%s, %s: %.1f fits: %v", name, p.Name, p.Size, p.FitsBed)
			}
			if !p.FitsBed {
				if refused++; !tiny {
					t.Errorf("%s, %s is refused", name, p.Name)
				}
				if p.Note.IsZero() {
					t.Errorf("%s, %s does not fit and says nothing", name, p.Name)
				}
			} else if !p.Note.IsZero() {
				divided++
			}
		}
	}
	each(t, check)
	tiny = true
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = pots["jar"]
	j.Printer.Bed = [3]float64{6, 6, 6}
	layouts(t, &j, func(md *mold.Mold) { check("a bed of 6 mm", &j, md) })
	if divided == 0 || refused == 0 {
		t.Errorf("%d divided and %d refused", divided, refused)
	}
}

// sound fails where a piece is not one closed body, oriented and clear of itself.
func sound(t *testing.T, name string, m *solid.Mesh) bool {
	t.Helper()
	if r := solid.Check(m); !r.Sound() || r.Shells != 1 {
		t.Errorf("%s: %v, %d shells", name, r.Err(), r.Shells)
		return false
	}
	bad, at := solid.SelfIntersects(m)
	if bad {
		t.Errorf("%s passes through itself at %.2f", name, m.V[m.T[at[0]][0]])
	}
	return !bad
}
