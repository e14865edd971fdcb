package tooling

// The bevels on the plaster's outer edges, and what in the kit forms them. The
// edge of a free face that is poured open is formed in the rim that the plaster
// is filled up to: a cottle comes in around it, and so does a board. The edge of
// a free face on a plate is formed by a lip around the plate. All lean 45 degrees
// at most, and print without supports. Nothing but the strap grooves is left to
// the scraper: their ends are formed, the stretch across an open back is not.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/mold"
)

// bevel is what is taken off a part's outer edge at its end at height z: how far
// along the axis and how far across, mm; 0 in a seam.
func bevel(p *mold.Part, z float64) (high, in float64) {
	var line []form.Point // up the outside
	for _, q := range p.Outline[p.Pot+1:] {
		if q.R > 0 {
			line = append(line, q)
		}
	}
	n := len(line)
	for _, q := range [2][2]form.Point{{line[0], line[1]}, {line[n-1], line[n-2]}} {
		if q[0].Z == z && q[1].R > q[0].R {
			return math.Abs(q[1].Z - z), q[1].R - q[0].R
		}
	}
	return 0, 0
}
