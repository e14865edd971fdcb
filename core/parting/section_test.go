package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/release"
)

// sectioned is the meridian of polygonal nodes with a section at mold size, and every
// scheme judged.
func sectioned(t *testing.T, s job.Section, nodes []job.Node) (*form.Meridian, []Scheme, Rules) {
	t.Helper()
	j := potOf(nodes...)
	j.Form.Section = s
	m, err := form.Build(j)
	if err != nil {
		t.Fatal(err)
	}
	return m, Judge(release.New(m), len(m.Pts)-1, RulesOf(j), Wanted{}), RulesOf(j)
}

func judgedSection(t *testing.T, s job.Section, nodes ...job.Node) []Scheme {
	t.Helper()
	_, all, _ := sectioned(t, s, nodes)
	return all
}

// A fully rounded polygon is a turned pot: every scheme is judged alike.
func TestRoundPolygonIsJudgedAsTurned(t *testing.T) {
	nodes := []job.Node{corner(0, 0), corner(40, 0), corner(25, 60), corner(45, 140)}
	a := judgedSection(t, job.Section{Kind: job.SectionRound}, nodes...)
	b := judgedSection(t, job.Section{Kind: job.SectionPolygon, Count: 6, Rounding: 100}, nodes...)
	for i := range a {
		if a[i].Verdict != b[i].Verdict || math.Abs(a[i].Depth-b[i].Depth) > 1e-6 || math.Abs(a[i].RubArea-b[i].RubArea) > 0.01*a[i].Parts[0].Area+0.5 {
			t.Errorf("%s: %s %.3f mm %.2f cm2 as turned, %s %.3f mm %.2f cm2 as a polygon", a[i].ID, a[i].Verdict, a[i].Depth, a[i].RubArea, b[i].Verdict, b[i].Depth, b[i].RubArea)
		}
	}
}

// Whatever the section, what catches along the axis catches by the largest
// radius: an oval vase hooks as the round one of its wide side does.
func TestOvalCatchesAlongTheAxisLikeItsWideSide(t *testing.T) {
	nodes := []job.Node{corner(0, 0), corner(40, 0), corner(25, 60), corner(45, 140)}
	one := judgedSection(t, job.Section{Kind: job.SectionOval, Ratio: 0.6}, nodes...)[0]
	if one.Verdict != Catches || math.Abs(one.Depth-15) > 0.01 {
		t.Errorf("one part %s by %.3f mm, want a catch of 15", one.Verdict, one.Depth)
	}
}

// An ellipse is convex: two side parts whose seams stand at its tips let go,
// and the planner turns it so.
func TestTwoSidePartsOfAnOval(t *testing.T) {
	all := judgedSection(t, job.Section{Kind: job.SectionOval, Ratio: 0.6}, corner(0, 0), corner(40, 0), corner(25, 60), corner(45, 140))
	s := &all[Index(all, "sides2+lower")]
	if s.Verdict != Clear || math.Abs(math.Mod(s.Turn, 90)) > 1e-9 {
		t.Errorf("%s turned %.1f: %s", s.Verdict, s.Turn, s.Against())
	}
}

// Twelve flutes 6 mm deep of 40, drawn by two side parts, hook near the seams
// whatever the turn; drawn along the axis of a tapering wall they do not.
func TestFlutes(t *testing.T) {
	flutes := job.Section{Kind: job.SectionFlutes, Count: 12, Depth: 15}
	all := judgedSection(t, flutes, corner(0, 0), corner(30, 0), corner(45, 100))
	if one := all[0]; one.Verdict != Clear {
		t.Errorf("one part of a fluted beaker: %s, %s", one.Verdict, one.Against())
	}
	s := &all[Index(all, "sides2+lower")]
	if s.Verdict != Catches || s.Depth < 1 {
		t.Errorf("two side parts of a fluted beaker: %s by %.2f mm", s.Verdict, s.Depth)
	}
	// shallow scallops: the steepest slope dg/da / g stays below what the four
	// parts' seams at 45 degrees allow
	all = judgedSection(t, job.Section{Kind: job.SectionFlutes, Count: 8, Depth: 4}, corner(0, 0), corner(30, 0), corner(25, 50), corner(45, 100))
	if s := &all[Index(all, "sides4+lower")]; s.Verdict == Catches {
		t.Errorf("four side parts of a scalloped vase catch: %s", s.Against())
	}
}

// A row of dimples: half-round ones hook under every pull but the one square to
// them; shallow ones let go where the pull leans little enough.
func TestDimples(t *testing.T) {
	nodes := []job.Node{corner(0, 0), corner(30, 0), corner(45, 100)}
	with := func(around int, depth float64) []Scheme {
		return judgedSection(t, job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: around, Heights: []float64{50}, Diameter: 8, Depth: depth}}, nodes...)
	}
	if one := with(12, 4)[0]; one.Verdict != Catches {
		t.Errorf("half-round dimples under one part: %s", one.Verdict)
	}
	// the wall leans by 8.53 degrees: a pull along the axis leans 81.47 from its
	// normal, so a cap of 8 degrees lets go and one of 9 does not
	shallow := func(t float64) float64 { return 4 * math.Tan(t/2*math.Pi/180) }
	if one := with(12, shallow(8))[0]; one.Verdict == Catches {
		t.Errorf("dimples of 8 degrees under one part: %s", one.Against())
	}
	// by hand: they are 21.47 degrees past the outline of a ball of 8 mm radius
	if one := with(12, shallow(30))[0]; one.Verdict != Catches || math.Abs(one.Depth-8*(1-math.Cos(21.47*math.Pi/180))) > 1e-3 {
		t.Errorf("dimples of 30 degrees under one part: %s by %.4f mm", one.Verdict, one.Depth)
	}
	// two dimples, each square to one of two side parts, let go as deep as they are
	all := with(2, 3)
	if s := &all[Index(all, "sides2+lower")]; s.Verdict != Catches && s.Depth > CatchDepth {
		t.Errorf("verdict %s with a depth of %.3f", s.Verdict, s.Depth)
	}
}

// The cast draws together in the plaster, and dimples with it. By hand: of an upright
// wall 60 mm out the rim below a dimple 2 mm deep draws away by 1.5 % of that, 0.9 mm,
// so that 1.1 mm of it hold a lower part yet, and a dimple of 0.9 mm comes free. Under
// side parts against a level cut through the dimple's middle, the pot in it drawn
// together and every place of the plaster tried.
func TestDimplesOfTheShrunkenCast(t *testing.T) {
	const radius, wide = 60.0, 8.0
	with := func(around int, depth float64) []Scheme {
		return judgedSection(t, job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: around, Heights: []float64{50}, Diameter: wide, Depth: depth}},
			corner(0, 0), corner(radius, 0), corner(radius, 100))
	}
	for _, c := range []struct{ depth, clay float64 }{{2, 1.1}, {0.9, 0}} {
		p := with(6, c.depth)[0].Parts[0]
		d := p.worst()
		if math.Abs(d.Depth-c.depth) > 1e-9 || math.Abs(d.ClayDepth-c.clay) > 1e-9 || d.ClayForgives != (c.clay == 0) || p.ClayForgives != d.ClayForgives {
			t.Errorf("a dimple of %g mm: %.4f mm, of the cast %.4f (forgiven: %v), want %g", c.depth, d.Depth, d.ClayDepth, d.ClayForgives, c.clay)
		}
	}
	all := with(6, 3.5)
	s := &all[Index(all, "sides2")]
	got := s.Parts[0].worst()
	// dimples stand at 60, 0 and -60 degrees from the middle of a half
	ball := (wide*wide/4 + 3.5*3.5) / 7
	far := radius + ball - 3.5
	wall := func(a float64) float64 {
		sin, cos := math.Sincos(a - math.Pi/3)
		if root := ball*ball - far*far*sin*sin; root > 0 && cos > 0 {
			return math.Min(radius, far*cos-math.Sqrt(root))
		}
		return radius
	}
	slow := func(shrunk float64) float64 {
		const steps = 6000
		var x, y [steps + 1]float64
		for k := range x {
			a := math.Pi/3 - 0.12 + 0.24*float64(k)/steps
			x[k], y[k] = wall(a)*math.Cos(a), wall(a)*math.Sin(a)
		}
		held := func(px, py float64) bool {
			for k := range steps {
				a, b := y[k]*(1-shrunk), y[k+1]*(1-shrunk)
				if (a > py) != (b > py) && (1-shrunk)*(x[k]+(py-a)/(b-a)*(x[k+1]-x[k])) > px+1e-9 {
					return true
				}
			}
			return false
		}
		deepest := 0.0
		for k := 0; k <= steps; k += 20 {
			d := 0.0
			for ; d < 4 && held(x[k], y[k]+d); d += 0.01 {
			}
			deepest = math.Max(deepest, d)
		}
		return deepest
	}
	if rigid, clay := slow(0), slow(0.015); math.Abs(got.Depth-rigid) > 0.015 || math.Abs(got.Depth-got.ClayDepth-(rigid-clay)) > 0.011 {
		t.Errorf("under two side parts %.3f mm, of the cast %.3f; the level cut gives %.3f and %.3f", got.Depth, got.ClayDepth, rigid, clay)
	}
}

// A row reaches along the wall as far as its balls do, by hand: on a cylinder and on a
// cone by half the diameter either way; on a sphere of radius R by R times the angle g
// at which the two circles of the meridian's plane meet, cos g = (f2 + R2 - b2) / 2 f R
// for a ball of radius b whose centre stands f out.
func TestReachOfDimplesAlongTheWall(t *testing.T) {
	reach := func(j *job.Job) (zFrom, zTo float64) {
		l, err := lookAt(j, mouth15, "")
		if err != nil {
			t.Fatal(err)
		}
		c := l.scheme("one").Parts[0].Catches
		for _, x := range c {
			if math.Abs(x.AtZ-j.Form.Section.Dimples.Heights[0]) < 1e-9 {
				return x.ZFrom, x.ZTo
			}
		}
		t.Fatalf("no catch of the row: %+v", c)
		return 0, 0
	}
	row := func(j *job.Job, z, wide, depth float64) *job.Job {
		j.Form.Section = job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: 6, Heights: []float64{z}, Diameter: wide, Depth: depth}}
		return j
	}
	for _, lean := range []float64{0, 20, -30} {
		from, to := reach(row(potOf(corner(0, 0), corner(50, 0), corner(50+lean, 100)), 50, 8, 4))
		half := 4 * 100 / math.Hypot(100, lean)
		if math.Abs(from-(50-half)) > 1e-6 || math.Abs(to-(50+half)) > 1e-6 {
			t.Errorf("a wall that leans by %g: from %.6f to %.6f, want %.6f either way", lean, from, to, half)
		}
	}
	const R, wide, depth = 60.0, 14.0, 5.0
	nodes := []job.Node{corner(0, 0)}
	for k := 1; k <= 361; k++ {
		a := float64(k)/361*math.Pi - math.Pi/2
		nodes = append(nodes, corner(R*math.Cos(a), R+R*math.Sin(a)))
	}
	nodes[361].R = 0
	from, to := reach(row(potOf(nodes...), R, wide, depth))
	ball := (wide*wide/4 + depth*depth) / (2 * depth)
	far := R + ball - depth
	g := math.Acos((far*far + R*R - ball*ball) / (2 * far * R))
	if want := R * math.Sin(g); math.Abs(from-(R-want)) > 0.005 || math.Abs(to-(R+want)) > 0.005 {
		t.Errorf("on a sphere from %.4f to %.4f, want %.4f either way", from, to, want)
	}
}
