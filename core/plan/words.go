package plan

import (
	"fmt"

	"moldwright/core/parting"
	"moldwright/core/words"
)

// words puts the plan in sentences: the verdict line, what to do next, and the
// cautions.
func (p *Plan) words() {
	s := p.chosen()
	p.Verdict = verdictLine(s)
	p.Cautions = p.cautions()
	switch s.Verdict {
	case parting.Catches:
		p.Next = append(p.Next, "Change the form where it catches, or leave that place out of the mold and add it by hand.")
	case parting.Rubs:
		p.Next = append(p.Next, "Give the rubbing wall a taper, or take the scheme with one part more.")
	default:
		p.Next = append(p.Next, "Print the profile at true scale and lay a ruler on it, then print the tooling.")
	}
}

// verdictLine is the verdict in one line: how many parts, where they part,
// whether they let go, and the plaster.
func verdictLine(s *Scheme) string {
	line := words.Capital(parting.Parts(s.Count)).String()
	if h := s.PartingHeights; len(h) > 0 {
		line += ", parted " + where(h[0])
		for _, z := range h[1:] {
			line += " and " + where(z)
		}
	}
	switch s.Verdict {
	case parting.Catches:
		line += fmt.Sprintf(". Catches by %.2f mm", s.Depth)
	case parting.Rubs:
		line += fmt.Sprintf(". Rubs on %.0f cm²", s.RubArea)
	default:
		line += ". Clear"
	}
	return line + fmt.Sprintf(". Least plaster %.1f kg.", s.Plaster/1000)
}

// where tells a height in words.
func where(z float64) string {
	if z < 0.05 {
		return "at the foot"
	}
	return fmt.Sprintf("%.1f mm above the foot", z)
}

func (p *Plan) cautions() []string {
	out := []string{}
	if p.work.meridian.Turned {
		out = append(out, "The form opens downward, so it is cast upside down: heights are measured from its top, which lies lowest in the mold.")
	}
	if t := p.work.job.Form.Traced; t != nil {
		band := t.ErrorBand * p.Scale
		if r := p.Robust.RadiusMM; r >= 0 && band >= r {
			out = append(out, fmt.Sprintf("The form was traced to within %.2f mm; the verdict holds only while every radius is right to %.2f mm. Measure the pot where it is closest, and correct the nodes.", band, r))
		}
		for _, g := range t.NotSeen {
			if g.ZTo-g.ZFrom < 0.05 {
				out = append(out, fmt.Sprintf("The camera cannot have seen what lies %s of the traced form: measure it on the pot.", g.Why))
				continue
			}
			out = append(out, fmt.Sprintf("The camera cannot have seen the heights from %.1f to %.1f mm of the traced form (%s): check them on the pot.", g.ZFrom, g.ZTo, g.Why))
		}
	}
	for _, t := range p.Traps {
		out = append(out, fmt.Sprintf("No pull frees the space between %.1f and %.1f mm above the foot, %.2f mm deep (%.1f ml): change the form there, or fill it and carve it by hand.", t.ZFrom, t.ZTo, t.Depth, t.Volume))
	}
	if p.Chosen != p.Advised {
		for i := range p.Schemes {
			if s := &p.Schemes[i]; s.ID == p.Advised {
				out = append(out, fmt.Sprintf("The job asks for another scheme than the advised one: %s, %s.", s.Name, s.Verdict))
			}
		}
	}
	if p.work.mold.Inner != nil {
		out = append(out, "The pot is cast solid between the outer parts and the core: pour through the hole in the foot with the mold upside down, so that no air stays under the rim, and leave it until the clay has set through.")
	} else if p.work.inner == nil {
		out = append(out, "The wall fills the mouth: the slip cannot be poured out. Make the wall thinner or the mouth wider.")
	} else if p.work.inner[0].Z > p.work.mold.Cavity[0].Z+3*p.work.job.Clay.Wall {
		out = append(out, fmt.Sprintf("A neck closes as the wall grows: below %.1f mm the cast would stay full of slip. Make the wall thinner or the neck wider.", p.work.inner[0].Z))
	}
	for _, a := range p.Flow.Air {
		out = append(out, fmt.Sprintf("Air stays under the roof between %.1f and %.1f mm (%.1f ml) when slip is poured in: tilt the mold while filling, or vent that place.", a.ZFrom, a.ZTo, a.Volume))
	}
	for _, a := range p.Flow.Slip {
		out = append(out, fmt.Sprintf("Turned over, the cast keeps %.1f ml of slip above %.1f mm: roll the mold as it drains.", a.Volume, a.ZFrom))
	}
	for _, a := range p.Flow.Plaster {
		out = append(out, fmt.Sprintf("Poured over its positive, the %s part would hold %.1f ml of air between %.1f and %.1f mm: tilt and tap while pouring.", a.Part, a.Volume, a.ZFrom, a.ZTo))
	}
	for _, f := range p.Prints {
		if !f.FitsBed {
			out = append(out, fmt.Sprintf("The %s (%.0f × %.0f × %.0f mm) is larger than the printer's bed.", f.Name, f.Size[0], f.Size[1], f.Size[2]))
		}
	}
	for _, c := range p.Casting.Cautions {
		out = append(out, c.Text.String())
	}
	return out
}
