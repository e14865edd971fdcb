package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

// held tells, by looking along a pull from beside a place on the contour,
// whether the pot stands in the way.
func held(m *form.Meridian, span int, p form.Point, pull release.Pull) bool {
	a, b := m.Pts[span], m.Pts[span+1]
	l := a.Dist(b)
	p = form.Point{R: p.R + 1e-8*(b.Z-a.Z)/l, Z: p.Z - 1e-8*(b.R-a.R)/l}
	body := m.Pts
	if !m.Closed {
		body = append(append([]form.Point{}, body...), form.Point{R: 0, Z: m.Rim().Z})
	}
	for i := 0; i+1 < len(body); i++ {
		a, b := body[i], body[i+1]
		if pull == release.Out {
			if (a.Z > p.Z) != (b.Z > p.Z) && a.R+(p.Z-a.Z)/(b.Z-a.Z)*(b.R-a.R) > p.R {
				return true
			}
			continue
		}
		if (a.R > p.R) == (b.R > p.R) {
			continue
		}
		if z := a.Z + (p.R-a.R)/(b.R-a.R)*(b.Z-a.Z); (pull == release.Down) == (z < p.Z) {
			return true
		}
	}
	return false
}

// Every scheme with fewer parts that catches is ruled out by places that rays
// find held, in the order of its parts along the contour, so that no seam gives
// each of them to a part that frees it.
func TestCertificateRulesOutEverySeam(t *testing.T) {
	pulls := map[string]release.Pull{"lower": release.Down, "A": release.Out, "upper": release.Up}
	j := job.Defaults()
	chained, lone := 0, 0
	for k := range uint64(1500) {
		m, nodes := formtest.Meridian(formtest.Rand(31, k))
		end := len(m.Pts) - 1
		if m.Closed {
			end = m.CutMouth(15)
		}
		s := release.New(m)
		all := Judge(s, end, RulesOf(&j), Wanted{})
		chosen := Choose(all, 0, func(int) float64 { return 0 })
		proof := Certificate(s, end, all, chosen)
		for i := range all {
			sc := &all[i]
			if sc.Count >= all[chosen].Count || sc.Verdict != Catches {
				continue
			}
			links := heldChain(s, end, sc)
			if links == nil {
				lone++
				continue
			}
			chained++
			last, n := 0, 0
			for x, c := range links {
				if c.Span < last {
					t.Errorf("profile %d: %s goes back along the contour\n%v", k, sc.ID, nodes)
				}
				last = c.Span
				if !held(m, c.Span, c.P, pulls[sc.kinds()[x]]) {
					t.Errorf("profile %d: %s, %s at (%.4f %.4f) is free\n%v", k, sc.ID, sc.kinds()[x], c.P.R, c.P.Z, nodes)
				}
			}
			for _, e := range proof {
				if e.Scheme == sc.ID {
					n++
				}
			}
			if n != len(sc.kinds()) {
				t.Errorf("profile %d: %d places for %s", k, n, sc.ID)
			}
			// seams are chosen for the shallowest catch, which no chain can exceed
			least := math.Inf(1)
			for _, c := range links {
				least = min(least, c.Depth)
			}
			if least > sc.Depth+1e-6 {
				t.Errorf("profile %d: %s catches by %.4f, but its chain by %.4f\n%v", k, sc.ID, sc.Depth, least, nodes)
			}
		}
	}
	t.Logf("%d schemes ruled out by chains, %d by seams that no level plane reaches", chained, lone)
	if lone*10 > chained {
		t.Errorf("%d schemes have no chain, %d have", lone, chained)
	}
}

// A waisted vase by hand: held from going down behind its foot at the waist, 15
// mm, and from going up behind its rim there, 20 mm.
func TestCertificateOfWaistedVase(t *testing.T) {
	m, err := formtest.Build([]job.Node{corner(0, 0), corner(40, 0), corner(25, 60), corner(45, 140)})
	if err != nil {
		t.Fatal(err)
	}
	j := job.Defaults()
	s, end := release.New(m), len(m.Pts)-1
	all := Judge(s, end, RulesOf(&j), Wanted{})
	var two []Evidence
	for _, e := range Certificate(s, end, all, Index(all, "sides2+lower")) {
		if e.Scheme == "two" {
			two = append(two, e)
		}
	}
	if len(two) != 2 || two[0].Part != "lower" || two[1].Part != "upper" {
		t.Fatalf("got %+v, want a place for each part", two)
	}
	for i, depth := range []float64{15, 20} {
		if math.Abs(two[i].Depth-depth) > 0.01 || math.Abs(two[i].Z-60) > 0.01 || math.Abs(two[i].R-25) > 0.01 {
			t.Errorf("%s: %+v, want %g mm at the waist", two[i].Part, two[i], depth)
		}
	}
}
