package tooling

// The face of an upper part that a core lies on is poured open, so no plate forms
// its natches. A ring does: it hangs about the positive's plug, upon which it rests,
// down to the plaster, with domes that form the sockets in it. It is set on when
// the plaster has been struck level, and printed with its domes upward. Keys between
// it and the plug let it sit one way only: one off the axis does, since the ring
// fits about the plug. A plug too narrow for any leaves that to the marks.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
	"moldwright/core/words"
)

const ringRoom = 4.0 // mm, of the ring beyond its domes

// underCore are the natches of an upper part on which a core lies.
func underCore(md *mold.Mold, p *mold.Part) (list []mold.Natch) {
	for _, n := range p.Natches {
		if md.Scheme.Core && p.Name == "upper" && n.Seam == mold.Above {
			list = append(list, n)
		}
	}
	return list
}

// natchBoard is the ring of an upper part, with the keys of its positive's plug, or
// nothing where no core lies on it with natches.
func natchBoard(j *job.Job, md *mold.Mold, p *mold.Part, keys []key) []Piece {
	list := underCore(md, p)
	if len(list) == 0 {
		return nil
	}
	t := &turned{md: md, to: 360, natches: list, plug: keys, clear: j.Printer.Clearance, cones: -1, marks: mold.Letter(p.Name) + "^", reads: 1}
	plug, foot := p.Outline[0].R, p.Outline[0].Z
	out := math.Min(list[0].At.R+list[0].Radius+ringRoom, md.Block.R-ringRoom/2)
	const neck = 2 * flatMost // up to the flat of the mark
	high := foot + neck + bandLeast + footEdge
	t.section = []corner{
		{Point: form.Point{R: plug + j.Printer.Clearance, Z: foot}, shape: asPot, edge: seamEdge},
		{Point: form.Point{R: out, Z: foot}, shape: asCircle},
		{Point: form.Point{R: out, Z: foot + neck}, shape: asCircle, edge: markEdge},
		{Point: form.Point{R: out, Z: high - footEdge}, shape: asCircle},
		{Point: form.Point{R: out - footEdge, Z: high}, shape: asCircle},
		{Point: form.Point{R: 0, Z: high}, shape: asCircle},
		{Point: form.Point{R: 0, Z: foot + plugAbove}, shape: asPot, edge: plugEdge},
		{Point: form.Point{R: plug, Z: foot + plugAbove}, shape: asPot},
		{Point: form.Point{R: plug + j.Printer.Clearance, Z: foot + plugAbove}, shape: asPot},
	}
	note := words.Say("It forms the sockets in which the core stands. Strike the plaster of the upper part level, then set the ring on the plug of the positive, where its keys fit one way only, its domes in the plaster; lift it straight off when that has set.")
	if len(keys) == 0 { // the marks stand at one azimuth
		note = words.Say("It forms the sockets in which the core stands. Strike the plaster of the upper part level, then set the ring on the plug of the positive, its mark above the mark of the positive, its domes in the plaster; lift it straight off when that has set.")
	}
	piece := Piece{Label: words.Say("upper natch ring"), Part: p.Name, Kind: "board", up: solid.Vec{0, 0, -1}, Draft: 90 - list[0].HalfAngle, Verdict: parting.Clear, Note: note}
	return divided(j, piece, t, nil)
}
