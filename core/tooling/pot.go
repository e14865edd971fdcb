package tooling

import (
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// potPositive is the pot itself, for a core: it stands in the closed outer
// parts, and the core's plaster is poured into it and over their top. Its
// inside, which is the working face, has no overhang where the core lets go;
// the overhang told is that of its outside. All of its faces lie against
// plaster, so it is not marked, and says so.
func potPositive(j *job.Job, md *mold.Mold, p *mold.Part) []Piece {
	t := &turned{md: md, to: 360, clear: j.Printer.Clearance, cones: 1}
	for _, q := range md.Cavity {
		t.section = append(t.section, corner{Point: q, shape: asPot})
	}
	for i := len(md.Inner) - 1; i >= 0; i-- {
		t.section = append(t.section, corner{Point: md.Inner[i], shape: asPot})
	}
	return divided(j, Piece{Label: capLabel(p.Name, "positive"), Part: p.Name, Kind: "positive", up: solid.Vec{0, 0, 1}, Draft: p.MinDraft, Verdict: p.Verdict,
		Note: words.Join(" ",
			words.Say("The pot itself: it stands in the closed outer parts, and the core is poured into it and over their top, as high as the cottle is to be filled."),
			words.Say("It carries no letter, since all its faces lie against plaster."))}, t, nil)
}
