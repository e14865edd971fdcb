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
	"moldwright/core/words"
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

// openBack is what is left to do on the open back of a side part: the strap
// grooves, whose ends the side boards form.
func (t *tray) openBack() words.Text {
	var at []float64 // their middles above the part's lower end
	for i, q := range t.p.Outline[t.p.Pot+1:] {
		next := t.p.Outline[t.p.Pot+1+(i+1)%(len(t.p.Outline)-t.p.Pot-1)]
		if q.R > 0 && q.R == next.R && q.R < t.md.Block.R {
			at = append(at, (q.Z+next.Z)/2-t.lo)
		}
	}
	switch len(at) {
	case 0:
		return words.Text{}
	case 1:
		return words.Say("Its back is struck off level: scrape the strap groove across it, %.0f mm above the part's lower end, between the ends that the side boards form.", at[0])
	}
	return words.Say("Its back is struck off level: scrape the strap grooves across it, %.0f and %.0f mm above the part's lower end, between the ends that the side boards form.", at[0], at[1])
}

// fillTo tells how high a cottle is filled.
func fillTo() words.Text {
	return words.Say("Fill it to the upper edge of the bevel inside, which shapes the edge of the block.")
}
