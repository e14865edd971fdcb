package parting

import (
	"math"
	"slices"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/release"
)

// looksHeld tells, by looking along a pull from beside a place on the contour,
// whether the pot stands in the way.
func looksHeld(m *form.Meridian, span int, p form.Point, pull release.Pull) bool {
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

// escape tries every choice of seams, at points and amid spans, from which a level
// plane runs outward, and gives one that leaves each of the places to a part of
// another kind; nil where there is none.
func escape(m *form.Meridian, kinds []string, links []*held) []spot {
	var seams []spot
	for i := range m.Spans {
		for _, t := range []float64{0, 0.01, 0.5, 0.99} {
			if s := (spot{i, t}); i+int(100*t) > 0 && runsOut(m, s) {
				seams = append(seams, s)
			}
		}
	}
	out := func(at ...spot) bool {
		for _, h := range links {
			k := slices.Index(kinds, h.part)
			if (k == 0 || !at[k-1].after(h.spot)) && (k == len(at) || !h.after(at[k])) {
				return false
			}
		}
		return true
	}
	switch len(kinds) {
	case 1:
		if out() {
			return []spot{{}}
		}
	case 2:
		for _, a := range seams {
			if out(a) {
				return []spot{a}
			}
		}
	case 3:
		for i, a := range seams {
			for _, b := range seams[i+1:] {
				if out(a, b) {
					return []spot{a, b}
				}
			}
		}
	}
	return nil
}

// runsOut tells whether nothing of the pot lies farther out than a place of the
// contour, just above and just below its level.
func runsOut(m *form.Meridian, s spot) bool {
	at := m.Pts[s.span].Lerp(m.Pts[s.span+1], s.t)
	for _, z := range [2]float64{at.Z - 1e-7, at.Z + 1e-7} {
		for i := 0; i+1 < len(m.Pts); i++ {
			p, q := m.Pts[i], m.Pts[i+1]
			if (p.Z > z) != (q.Z > z) && p.R+(z-p.Z)/(q.Z-p.Z)*(q.R-p.R) > at.R+1e-5 {
				return false
			}
		}
	}
	return true
}

// Every scheme with fewer parts that catches is ruled out by places that rays
// find held, in the order of its parts along the contour, so that no seam gives
// each of them to a part that frees it.
func TestCertificateRulesOutEverySeam(t *testing.T) {
	pulls := map[string]release.Pull{"lower": release.Down, "A": release.Out, "upper": release.Up}
	chained, lone := 0, 0
	for k := range uint64(1500) {
		_, nodes := formtest.Meridian(formtest.Rand(31, k))
		d, err := JudgeJob(potOf(nodes...), mouth15)
		if err != nil {
			t.Fatal(err)
		}
		m, all := d.M, d.Schemes
		chosen := Choose(all, 0, func(int) float64 { return 0 })
		proof := d.Certificate(all, chosen)
		for i := range all {
			sc := &all[i]
			if sc.Count >= all[chosen].Count || sc.Verdict != Catches {
				continue
			}
			links := d.ledger.heldChain(sc)
			if links == nil {
				lone++
				continue
			}
			chained++
			for _, link := range links {
				c := link.sample
				if kind := link.part; !looksHeld(m, c.Span, c.P, pulls[kind]) {
					t.Errorf("profile %d: %s, %s at (%.4f %.4f) is free\n%v", k, sc.ID, kind, c.P.R, c.P.Z, nodes)
				}
			}
			if bad := escape(m, sc.kinds(), links); bad != nil {
				t.Errorf("profile %d: %s with seams at %v gives every place to a part of another kind\n%v", k, sc.ID, bad, nodes)
			}
			n := 0
			for _, e := range proof {
				if e.Scheme == sc.ID {
					n++
				}
			}
			if n != len(links) {
				t.Errorf("profile %d: %d places for %s, want %d", k, n, sc.ID, len(links))
			}
			// seams are chosen for the shallowest catch, which no chain can exceed
			least := math.Inf(1)
			for _, c := range links {
				least = min(least, c.depth)
			}
			if least > sc.Depth+1e-6 {
				t.Errorf("profile %d: %s catches by %.4f, but its chain by %.4f\n%v", k, sc.ID, sc.Depth, least, nodes)
			}
		}
	}
	t.Logf("%d schemes ruled out by chains, %d could part for a cap that holds nothing but what catches", chained, lone)
	if lone*10 > chained {
		t.Errorf("%d schemes have no chain, %d have", lone, chained)
	}
}

// A waisted vase by hand: held from going down behind its foot at the waist, 15
// mm, and from going up behind its rim there, 20 mm.
func TestCertificateOfWaistedVase(t *testing.T) {
	d, err := JudgeJob(potOf(corner(0, 0), corner(40, 0), corner(25, 60), corner(45, 140)), mouth15)
	if err != nil {
		t.Fatal(err)
	}
	var two []Evidence
	for _, e := range d.Certificate(d.Schemes, Index(d.Schemes, "sides2+lower")) {
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
