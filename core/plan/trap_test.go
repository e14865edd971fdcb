package plan

import (
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
