package parting

import (
	"math"

	"moldwright/core/release"
	"moldwright/core/words"
)

// Finding is something to know about the chosen scheme: a code, where, how
// much, a sentence and what to do about it. Page, paper and marking all show
// the same one.
type Finding struct {
	Code    string     `json:"code"`
	Part    string     `json:"part"`
	ZFrom   float64    `json:"zFrom"` // mm
	ZTo     float64    `json:"zTo"`
	Measure float64    `json:"measure"`
	Unit    string     `json:"unit"`
	Text    words.Text `json:"text"`
	Remedy  words.Text `json:"remedy"`
}

// Findings tells what is to be known about how the scheme's parts let go.
func Findings(s *release.Survey, end int, sc *Scheme, rules Rules) []Finding {
	var out []Finding
	told := false
	for i := range sc.Parts {
		p := &sc.Parts[i]
		if p.Sector != nil {
			if told {
				continue // side parts are alike
			}
			told = true
		}
		for _, c := range p.Catches {
			out = append(out, caught(p, c, rules))
		}
		from, to, way := sc.K1, sc.K2, release.Out
		switch p.Name {
		case "lower":
			from, to, way = 0, sc.K1, release.Down
		case "upper":
			from, to, way = sc.K2, end, release.Up
		}
		if p.Verdict == Rubs {
			out = append(out, rubbed(s, p, from, to, way, rules)...)
		}
	}
	out = append(out, seamFinding(s, sc)...)
	return append(out, surfaceFindings(sc, rules.Layer)...)
}

// who is the part that a sentence begins with.
func who(p *Part) words.Text { return words.Capital(within(p)) }

// within is the part in the midst of a sentence, as the one that does something.
func within(p *Part) words.Text {
	switch {
	case p.Sector != nil:
		return words.Say("each side part")
	case p.Name == "lower":
		return words.Say("the lower part")
	case p.Name == "upper":
		return words.Say("the upper part")
	}
	return words.Say("the core")
}

func caught(p *Part, c Catch, rules Rules) Finding {
	f := Finding{Code: "catch", Part: p.Name, ZFrom: c.ZFrom, ZTo: c.ZTo, Measure: c.Depth, Unit: "mm"}
	f.Text = words.Say("%s catches by %.2f mm: its plaster at %.1f mm is held behind what stands at %.1f mm.", who(p), c.Depth, c.AtZ, c.BlockedAtZ)
	switch {
	case c.ClayForgives:
		f.Code = "catchPositive"
		f.Remedy = words.Say("The cast will have shrunk by %.1f %%, %.2f mm there, and come free; the rigid positive will not. Use a positive that gives, or change the form by %.2f mm there.", rules.ReleaseShrinkage, rules.ReleaseShrinkage/100*c.BlockedAtR, c.Depth)
	case p.Sector != nil:
		f.Remedy = words.Say("Give the stretch between %.1f and %.1f mm to a lower or an upper part, or lower what stands in the way by %.2f mm.", c.ZFrom, c.ZTo, c.Depth)
	default:
		f.Remedy = words.Say("Part the mold at %.1f mm, or bring the radii within %.2f mm of one another.", c.BlockedAtZ, c.Depth)
	}
	return f
}

// rubbed tells the stretches of the contour that rub, each with the taper that
// would free it.
func rubbed(s *release.Survey, p *Part, from, to int, way release.Pull, rules Rules) []Finding {
	m := s.M
	var out []Finding
	for i := from; i < to; {
		low := func(i int) bool {
			d := math.Min(release.Draft(m.Spans[i].A0, way), release.Draft(m.Spans[i].A1, way))
			return d < rules.LeastDraft && d > -rules.LeastDraft
		}
		if !low(i) {
			i++
			continue
		}
		k := i
		least := 90.0
		for ; k < to && low(k); k++ {
			least = math.Min(least, math.Min(release.Draft(m.Spans[k].A0, way), release.Draft(m.Spans[k].A1, way)))
		}
		a, b := m.Pts[i], m.Pts[k]
		f := Finding{Code: "rub", Part: p.Name, ZFrom: math.Min(a.Z, b.Z), ZTo: math.Max(a.Z, b.Z), Measure: least, Unit: "°"}
		run := math.Abs(b.Z - a.Z)
		if way == release.Out {
			run = math.Abs(b.R - a.R)
		}
		change := run * (math.Tan(rules.LeastDraft*math.Pi/180) - math.Tan(least*math.Pi/180))
		f.Text = words.Say("%s rubs between %.1f and %.1f mm: the draft there is %.1f°, less than %.1f°.", who(p), f.ZFrom, f.ZTo, least, rules.LeastDraft)
		if way == release.Out {
			f.Remedy = words.Say("Give this level stretch to a lower or an upper part.")
		} else {
			f.Remedy = words.Say("A taper of %.1f° on this stretch, %.1f mm in all, would free it.", rules.LeastDraft, change)
		}
		if run > 1 {
			out = append(out, f)
		}
		i = k
	}
	return out
}
