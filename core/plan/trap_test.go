package plan

import (
	"math"
	"strings"
	"testing"

	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/parting"
)

// What no pull frees is no part of a scheme that does not catch.
func TestNoTrapWhereNothingCatches(t *testing.T) {
	c, s := formtest.Corner, formtest.Smooth
	for name, nodes := range map[string][]job.Node{
		// the waist of a knob, all of it within the fill hole: there is no plaster
		"a waist within the opening": {c(0, 1.7), s(48, 47.6), c(29.3, 45.6), c(21.7, 37.5), c(3.05, 26.2), c(13, 48.8), c(9.3, 55), s(10.7, 66), s(0, 72)},
		// a slit of 0.00004 mm over a hair of a lip, wide as it is
		"a slit without height": {c(0, 48.41130554263596), s(12.095375680394842, 48.41130554263596), c(12.67517614669693, 43.480881777220624), s(15.26134808334133, 43.48179306000327), s(21.992223947682362, 43.481868092391586),
			s(18.229562138396975, 43.48186809309392), c(20.974521210521115, 43.48186809309392), s(24.54450571512268, 43.48186809309392), c(25.7305824908158, 0)},
	} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = nodes
		p, err := Make(&j)
		if err != nil {
			t.Fatal(name, err)
		}
		free := 0
		for _, sc := range p.Schemes {
			if sc.Verdict != parting.Catches {
				free++
			}
		}
		if free == 0 || len(p.Traps) > 0 {
			t.Errorf("%s: %d schemes do not catch, traps %+v", name, free, p.Traps)
		}
	}
}

// A belly behind the rim of a pot cast solid, 4 mm deep, holds its core and is told as
// the inside's; where the inside opens upward nothing is.
func TestTrapsOfACore(t *testing.T) {
	c := formtest.Corner
	for belly, want := range map[float64]int{38: 1, 34.04: 0, 34: 0} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = []job.Node{c(0, 0), c(40, 0), c(50, 60)}
		j.Form.Inner = []job.Node{c(0, 6), c(34, 6), c(belly, 30), c(34, 60)}
		p, err := Make(&j)
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Traps) != want {
			t.Fatalf("a belly of %g mm: traps %+v, want %d", belly, p.Traps, want)
		}
		if want == 0 {
			continue
		}
		x := p.Traps[0]
		if x.Surface != "inner" {
			t.Errorf("trapped by the %s surface", x.Surface)
		}
		near(t, "zFrom", x.ZFrom, 6, 1e-6)
		near(t, "zTo", x.ZTo, 60, 1e-6)
		near(t, "rFrom", x.RFrom, 34, 1e-6)
		near(t, "rTo", x.RTo, 38, 1e-6)
		near(t, "depth", x.Depth, 4, 1e-6)
		near(t, "area", x.Area, 108, 1e-6)
		near(t, "volume", x.Volume, 2*math.Pi*(34+4.0/3)*108/1000, 1e-9) // Pappus
		told := false
		for _, s := range p.Cautions {
			told = told || strings.HasPrefix(s.In("en"), "Inside, between 6.0 and 60.0 mm above the foot, the core hooks")
		}
		if !told {
			t.Errorf("not told: %v", p.Cautions)
		}
	}
}
