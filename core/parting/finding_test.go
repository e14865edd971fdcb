package parting

import (
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
)

// findingsOf judges nodes at mold size and tells the findings of the scheme.
func findingsOf(t *testing.T, id string, nodes ...job.Node) ([]Finding, *Scheme) {
	t.Helper()
	l, err := lookAt(potOf(nodes...), mouth15, "")
	if err != nil {
		t.Fatal(err)
	}
	sc := l.scheme(id)
	j := job.Defaults()
	return Findings(l.s, l.end, sc, RulesOf(&j)), sc
}

func coded(list []Finding, codes ...string) []Finding {
	var out []Finding
	for _, f := range list {
		for _, c := range codes {
			if f.Code == c {
				out = append(out, f)
			}
		}
	}
	return out
}

// A wall of 200 cm2 and more with less than 5 degrees of draft is warned of though it
// is clear, and one of less is not: a cone of 4 degrees has, by Pappus, pi (r0 + r1) l.
// One of 6 degrees, however large, is not warned of; nor is a wall that catches, which
// has worse to tell.
func TestLargeSteepWallsAreWarnedOf(t *testing.T) {
	cone := func(draft, r, h float64) []job.Node {
		return []job.Node{corner(0, 0), corner(r, 0), corner(r+h*math.Tan(draft*math.Pi/180), h)}
	}
	wall := func(n []job.Node) float64 { // cm2
		p, q := n[1], n[2]
		return math.Pi * (p.R + q.R) * math.Hypot(q.R-p.R, q.Z-p.Z) / 100
	}
	for _, c := range []struct {
		draft, r, h float64
		warned      bool
	}{{4, 40, 75, true}, {4, 40, 74, false}, {4.9, 60, 100, true}, {5.1, 60, 100, false}, {6, 90, 200, false}} {
		nodes := cone(c.draft, c.r, c.h)
		list, sc := findingsOf(t, "one", nodes...)
		if sc.Verdict != Clear {
			t.Fatalf("a cone of %g degrees is %s", c.draft, sc.Verdict)
		}
		got := coded(list, "largeSteep")
		area := wall(nodes)
		if c.warned != (c.draft < 5 && area > 200) {
			t.Fatalf("the case is wrong: %.1f cm2", area)
		}
		if !c.warned {
			if len(got) > 0 {
				t.Errorf("%g degrees, %.1f cm2: warned of %.1f", c.draft, area, got[0].Measure)
			}
			continue
		}
		if len(got) != 1 || math.Abs(got[0].Measure-area) > 1e-6*area || got[0].Unit != "cm²" || got[0].Part != "lower" || got[0].ZFrom != 0 || got[0].ZTo != c.h {
			t.Errorf("%g degrees, %.1f cm2: %+v", c.draft, area, got)
		} else if text := got[0].Text.String(); !strings.Contains(text, "The lower part has") || !strings.Contains(text, "5°") {
			t.Errorf("said: %s", text)
		}
	}
	// of two parts each is warned of for itself: 160 cm2 of the lower are not, 226 of the upper are
	h := math.Tan(4 * math.Pi / 180)
	list, _ := findingsOf(t, "two", corner(0, 0), corner(40, 0), corner(40+60*h, 60), corner(40-20*h, 140))
	if got := coded(list, "largeSteep"); len(got) != 1 || got[0].Part != "upper" || got[0].ZFrom != 60 {
		t.Errorf("two parts: %+v", got)
	}
	list, sc := findingsOf(t, "one", corner(0, 0), corner(60, 0), corner(60-100*h, 100))
	if got := coded(list, "largeSteep"); sc.Verdict != Catches || len(got) > 0 {
		t.Errorf("a wall that catches is warned of as large: %+v", got)
	}
}

// A seam on an edge of the form is told to show least, one across a smooth wall as a
// fine line, each with its height; of a scheme with two seams both are told. Where an
// edge and a smooth place serve alike, the edge is taken.
func TestSeamAdvice(t *testing.T) {
	smooth := func(r, z float64) job.Node { return job.Node{R: r, Z: z} }
	said := func(f Finding, code string, z float64, words string) {
		t.Helper()
		if f.Code != code || math.Abs(f.Measure-z) > 1e-6 || f.ZFrom != f.Measure || f.ZTo != f.Measure || f.Unit != "mm" || !strings.Contains(f.Text.String(), words) {
			t.Errorf("%+v: %q; want %s at %.1f", f, f.Text.String(), code, z)
		}
	}
	seams := func(id string, nodes ...job.Node) []Finding {
		t.Helper()
		list, _ := findingsOf(t, id, nodes...)
		return coded(list, "seam", "seamOnEdge")
	}
	if got := seams("one", corner(0, 0), corner(30, 0), corner(60, 80)); len(got) > 0 {
		t.Errorf("one part has no seam, told %+v", got)
	}
	if got := seams("two", corner(0, 0), corner(30, 0), corner(50, 40), corner(30, 80)); len(got) != 1 {
		t.Errorf("a keel: %+v", got)
	} else {
		said(got[0], "seamOnEdge", 40, "The seam at 40.0 mm lies on an edge of the form, where it shows least.")
	}
	if got := seams("two", smooth(0, 0), smooth(50, 50), smooth(0, 100)); len(got) != 1 {
		t.Errorf("a ball: %+v", got)
	} else {
		said(got[0], "seam", 50, "The seam at 50.0 mm crosses a smooth wall and will show as a fine line.")
	}
	// an upright band of 0.3 mm rubs so little that either end serves, and any place
	// between; the ball's widest place beside it is smooth
	if got := seams("two", corner(0, 0), corner(30, 0), corner(50, 40), smooth(50, 40.3), smooth(49.5, 41), corner(30, 80)); len(got) != 1 {
		t.Errorf("a keel with a soft upper side: %+v", got)
	} else {
		said(got[0], "seamOnEdge", 40, "where it shows least")
	}
	got := seams("sides2+lower+upper", corner(0, 0), corner(40, 0), corner(25, 60), corner(45, 120), corner(45, 125), corner(20, 140))
	if len(got) != 2 {
		t.Fatalf("two seams: %+v", got)
	}
	for _, f := range got {
		if f.Code != "seamOnEdge" {
			t.Errorf("a seam of three parts, all edges: %+v", f)
		}
	}
	got = seams("sides2+lower+upper", corner(0, 0), corner(40, 0), corner(25, 60), smooth(45, 120), smooth(30, 145), corner(10, 150))
	if len(got) != 2 || got[0].Code != "seamOnEdge" || got[0].Measure != 0 || got[1].Code != "seam" || got[1].Measure < 119.9 {
		t.Errorf("a foot's edge and a soft belly: %+v", got)
	}
}
