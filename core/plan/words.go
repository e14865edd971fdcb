package plan

import (
	"math"
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
		p.Next = append(p.Next, words.Say("Change the form where it catches, or leave that place out of the mold and add it by hand."))
	case parting.Rubs:
		p.Next = append(p.Next, words.Say("Give the rubbing wall a taper, or take the scheme with one part more."))
	default:
		p.Next = append(p.Next, words.Say("Print the profile at true scale and lay a ruler on it, then print the tooling."))
	}
}

// verdictLine is the verdict in one line: how many parts, where they part,
// whether they let go, and the plaster.
func verdictLine(s *Scheme) words.Text {
	parts := words.Capital(parting.Parts(s.Count))
	switch h := s.PartingHeights; len(h) {
	case 0:
		parts = words.Say("%s.", parts)
	case 1:
		parts = words.Say("%s, parted %s.", parts, where(h[0]))
	default:
		parts = words.Say("%s, parted %s and %s.", parts, where(h[0]), where(h[1]))
	}
	how := words.Say("Clear.")
	switch s.Verdict {
	case parting.Catches:
		how = words.Say("Catches by %.2f mm.", s.Depth)
	case parting.Rubs:
		how = words.Say("Rubs on %.0f cm².", s.RubArea)
	}
	return words.Join(" ", parts, how, words.Say("Least plaster %.1f kg.", s.Plaster/1000))
}

// where tells a height in words.
func where(z float64) words.Text {
	if z < 0.05 {
		return words.Say("at the foot")
	}
	return words.Say("%.1f mm above the foot", z)
}

// notSeen is why a picture does not show a stretch of a traced form; a job holds
// it in English.
func notSeen(why string) words.Text {
	switch why {
	case "hidden":
		return words.Say("hidden")
	case "brushed away":
		return words.Say("brushed away")
	case "under the foot":
		return words.Say("under the foot")
	}
	return words.Plain(why)
}

func (p *Plan) cautions() []words.Text {
	out := []words.Text{}
	if p.work.meridian.Turned {
		out = append(out, words.Say("The form opens downward, so it is cast upside down: heights are measured from its top, which lies lowest in the mold."))
	}
	if t := p.work.job.Form.Traced; t != nil {
		band := t.ErrorBand * p.Scale
		if r := p.Robust.RadiusMM; r >= 0 && band >= r {
			out = append(out, words.Say("The form was traced to within %.2f mm; the verdict holds only while every radius is right to %.2f mm. Measure the pot where it is closest, and correct the nodes.", band, r))
		}
		for _, g := range t.NotSeen {
			if g.ZTo-g.ZFrom < 0.05 {
				out = append(out, words.Say("The camera cannot have seen what lies %s of the traced form: measure it on the pot.", notSeen(g.Why)))
				continue
			}
			out = append(out, words.Say("The camera cannot have seen the heights from %.1f to %.1f mm of the traced form (%s): check them on the pot.", g.ZFrom, g.ZTo, notSeen(g.Why)))
		}
	}
	for _, t := range p.Traps {
		if t.Surface == "inner" {
			out = append(out, words.Say("Inside, between %.1f and %.1f mm above the foot, the core hooks behind the wall, %.2f mm deep (%.1f ml): widen what stands above, or leave out the inner surface and cast the pot hollow.", t.ZFrom, t.ZTo, t.Depth, t.Volume))
			continue
		}
		out = append(out, words.Say("No pull frees the space between %.1f and %.1f mm above the foot, %.2f mm deep (%.1f ml): change the form there, or fill it and carve it by hand.", t.ZFrom, t.ZTo, t.Depth, t.Volume))
	}
	for _, z := range p.work.mold.DimplesLeft() {
		out = append(out, words.Say("The solids leave out the row of dimples %.1f mm above the foot: it runs into its neighbours, off the wall or over an edge, or a seam grazes it. Move the row, or make the dimples fewer or smaller.", z))
	}
	if ml := p.work.bumps; ml > 0 {
		out = append(out, words.Say("The clay follows the dimples in a wall of even thickness, and weights and capacity reckon with it. The mesh of the cast is smooth inside, %.1f ml roomier than the pot.", ml))
	}
	if ml := p.work.thin; ml >= leastPocket {
		section, least := p.work.mold.Section, 1.0
		for i := range 360 {
			g, _ := section.At(2 * math.Pi / float64(section.Repeats) * float64(i) / 360)
			least = min(least, g)
		}
		out = append(out, words.Say("The clay builds an even wall all round, and weights and capacity reckon with it. The mesh of the cast has the outside’s section inside too, so its wall is as thin as %.1f mm where that comes in, and it is %.1f ml roomier than the pot.", least*p.work.job.Clay.Wall, ml))
	}
	if p.Chosen != p.Advised {
		for i := range p.Schemes {
			if s := &p.Schemes[i]; s.ID == p.Advised {
				out = append(out, otherScheme(s))
			}
		}
	}
	if p.work.mold.Inner != nil {
		out = append(out, words.Say("The pot is cast solid between the outer parts and the core: pour through the hole in the foot with the mold upside down, so that no air stays under the rim, and leave it until the clay has set through."))
	} else if p.work.inner == nil {
		out = append(out, words.Say("The wall fills the mouth: the slip cannot be poured out. Make the wall thinner or the mouth wider."))
	} else if p.work.inner[0].Z > p.work.mold.Cavity[0].Z+3*p.work.job.Clay.Wall {
		out = append(out, words.Say("A neck closes as the wall grows: below %.1f mm the cast would stay full of slip. Make the wall thinner or the neck wider.", p.work.inner[0].Z))
	}
	for _, a := range p.Flow.Air {
		out = append(out, words.Say("Air stays under the roof between %.1f and %.1f mm (%.1f ml) when slip is poured in: tilt the mold while filling, or vent that place.", a.ZFrom, a.ZTo, a.Volume))
	}
	for _, a := range p.Flow.Slip {
		out = append(out, words.Say("Turned over, the cast keeps %.1f ml of slip above %.1f mm: roll the mold as it drains.", a.Volume, a.ZFrom))
	}
	for _, a := range p.Flow.Plaster {
		switch a.Part {
		case "core":
			out = append(out, words.Say("Poured over its positive, the core would hold %.1f ml of air between %.1f and %.1f mm: tilt and tap while pouring.", a.Volume, a.ZFrom, a.ZTo))
		case "upper":
			out = append(out, words.Say("Poured over its positive, the upper part would hold %.1f ml of air between %.1f and %.1f mm: tilt and tap while pouring.", a.Volume, a.ZFrom, a.ZTo))
		default:
			out = append(out, words.Say("Poured over its positive, the lower part would hold %.1f ml of air between %.1f and %.1f mm: tilt and tap while pouring.", a.Volume, a.ZFrom, a.ZTo))
		}
	}
	for _, f := range p.Prints {
		if !f.FitsBed {
			out = append(out, words.Say("The %s (%.0f × %.0f × %.0f mm) is larger than the printer's bed.", f.Label, f.Size[0], f.Size[1], f.Size[2]))
		}
	}
	for _, c := range p.Casting.Cautions {
		out = append(out, c.Text)
	}
	return out
}

// otherScheme tells that the job asks for another scheme than the advised one.
func otherScheme(advised *Scheme) words.Text {
	switch advised.Verdict {
	case parting.Catches:
		return words.Say("The job asks for another scheme than the advised one: %s, catches.", advised.Name)
	case parting.Rubs:
		return words.Say("The job asks for another scheme than the advised one: %s, rubs.", advised.Name)
	}
	return words.Say("The job asks for another scheme than the advised one: %s, clear.", advised.Name)
}
