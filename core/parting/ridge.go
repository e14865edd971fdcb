package parting

import (
	"math"

	"moldwright/core/release"
	"moldwright/core/words"
)

// RidgeShare is the depth of a printed wall's ripple from crest to hollow as a
// share of the layer. A bead with half-round edges has 0.5 (geometry); real
// beads are flatter, so half of that is taken.
const RidgeShare = 0.25

// RippleHook is how deep in mm a printed wall of the draft (degrees) hooks into
// plaster by its own ripple: a wave of the layer as its length and RidgeShare
// of it from crest to hollow. It is the greatest fall of the wave against the
// taper, and 0 where tan(draft) >= pi times RidgeShare.
func RippleHook(draft, layer float64) float64 {
	a, k := RidgeShare*layer/2, 2*math.Pi/layer
	c := math.Tan(math.Max(draft, 0)*math.Pi/180) / (a * k)
	if c >= 1 {
		return 0
	}
	return 2*a*math.Sqrt(1-c*c) - 2*a*c*math.Acos(c)
}

// steepArea is the area in cm2 of wall below 5 degrees from which sheer size
// makes a part hard to draw, whatever its share; common practice, no source.
const steepArea, steepDraft = 200.0, 5.0

// surfaceFindings tells what printed ridges and large steep walls do.
func surfaceFindings(sc *Scheme, layer float64) []Finding {
	var out []Finding
	deepest := Finding{Code: "ripple", Unit: "mm", ZFrom: math.Inf(1), ZTo: math.Inf(-1)}
	for i := range sc.Parts {
		p := &sc.Parts[i]
		if h := RippleHook(p.MinDraft, layer); h > deepest.Measure {
			deepest.Measure, deepest.Part = h, p.Name
		}
		deepest.ZFrom, deepest.ZTo = math.Min(deepest.ZFrom, p.ZFrom), math.Max(deepest.ZTo, p.ZTo)
		if steep := p.Below(steepDraft); steep > steepArea && p.Verdict != Catches {
			out = append(out, Finding{Code: "largeSteep", Part: p.Name, ZFrom: p.ZFrom, ZTo: p.ZTo, Measure: steep, Unit: "cm²",
				Text:   words.Say("%s has %.0f cm² of wall steeper than %.0f° of draft: so large a surface holds by suction and friction even where nothing hooks.", who(p), steep, steepDraft),
				Remedy: words.Say("Soap well, leave the plaster to cool, and let air in along the seam with a thin blade before pulling. More draft is the sure remedy.")})
		}
	}
	if deepest.Measure > 0.001 {
		deepest.Text = words.Say("Layers of %.2f mm leave ripples about %.2f mm deep; where the wall is steepest they hook by %.3f mm.", layer, RidgeShare*layer, deepest.Measure)
		deepest.Remedy = words.Say("Print finer layers, sand the wall along the pull, or fill the ripples with several coats of sealer. This is no part of the verdict.")
		out = append(out, deepest)
	}
	return out
}

// Below is the area in cm2 of a part with less draft than the given degrees,
// by its bands; deg is one of their edges.
func (p *Part) Below(deg float64) float64 {
	sum := 0.0
	for _, b := range p.Bands {
		if b.To <= deg {
			sum += b.Area
		}
	}
	return sum
}

// seamFinding tells that a seam lies on an edge of the form, where it shows
// least, or how far from the nearest edge it lies.
func seamFinding(s *release.Survey, sc *Scheme) []Finding {
	var out []Finding
	for i, z := range sc.PartingHeights {
		k := sc.K1
		if i == len(sc.PartingHeights)-1 && sc.Upper && sc.Sides > 0 {
			k = sc.K2
		}
		f := Finding{Code: "seam", ZFrom: z, ZTo: z, Measure: z, Unit: "mm"}
		if s.M.Corner[k] {
			f.Code = "seamOnEdge"
			f.Text = words.Say("The seam at %.1f mm lies on an edge of the form, where it shows least.", z)
			f.Remedy = words.Say("Trim the fin off along the edge.")
		} else {
			f.Text = words.Say("The seam at %.1f mm crosses a smooth wall and will show as a fine line.", z)
			f.Remedy = words.Say("Fettle it when leather-hard; an edge at this height would hide it.")
		}
		out = append(out, f)
	}
	return out
}
