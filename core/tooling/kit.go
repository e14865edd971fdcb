package tooling

import (
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// Kit lists the printed pieces of a mold, each measured and turned to fit the
// bed. A piece that is larger than the bed is divided into the fewest pieces that fit
// of all the ways there are here to divide it: see divide.go, traykit.go, stavecuts.go
// and hew.go. Its Note says so, or what does not fit. A cottle is made in more staves
// rather than of glued ones wherever these fit. A piece that
// cannot be made at all has no mesh and a Note that says why.
func Kit(j *job.Job, md *mold.Mold) []Piece {
	var out []Piece
	boards := false
	for i := range md.Parts {
		p := &md.Parts[i]
		if p.Sector == nil {
			out = append(out, capKit(j, md, p)...)
			continue
		}
		t, past := newTray(j, md, p)
		if past > 0 {
			out = append(out, Piece{Label: words.Say("part %s tray", p.Name), Part: p.Name, Kind: "tray", FitsBed: true, Verdict: p.Verdict,
				Note: words.Say("There is no tray for this part: it would fill a recess of the pot that reaches %.1f mm past the part's level end, and nothing drawn sideways comes out of that. Let a lower or upper part fill the recess: choose a scheme that has one at that end.", past)})
			continue
		}
		out = append(out, trayKit(j, t, !boards)...)
		boards = true
	}
	for i := range out {
		out[i].Name = out[i].Label.In(words.English)
	}
	return out
}

// capKit is the kit of a lower or upper part.
func capKit(j *job.Job, md *mold.Mold, p *mold.Part) []Piece {
	var out []Piece
	up := solid.Vec{0, 0, 1}
	if p.Name == "core" {
		out = potPositive(j, md, p)
	} else {
		var t *turned
		t, up = positive(j, md, p, false)
		base := Piece{Label: capLabel(p.Name, "positive"), Part: p.Name, Kind: "positive", up: up, Draft: p.MinDraft, Verdict: p.Verdict}
		out = divided(j, base, t, func() *turned { full, _ := positive(j, md, p, true); full.plug = t.plug; return full })
		if md.PlugApart && p.Name == "upper" {
			out = append(out, plugFor(j, md, t.plug)...)
		}
		out = append(out, natchBoard(j, md, p, t.plug)...)
	}
	if j.Mold.Staves == 1 {
		c := cottle(j, md, p)
		piece := Piece{Label: capLabel(p.Name, "cottle"), Part: p.Name, Kind: "stave", up: up}
		seam, far, _ := wallOf(md, p)
		piece.Draft = math.Atan2(md.Block.At(seam)-md.Block.At(far), math.Abs(far-seam)) * 180 / math.Pi
		piece.Verdict, piece.Note = parting.Clear, fillTo()
		if piece.Draft < j.Rules.LeastDraft-1e-9 {
			piece.Verdict = parting.Rubs
			piece.Note = words.Say("In one piece it rubs on the plaster all over; ask for two staves, which are taken off sideways.")
		}
		return append(out, divided(j, piece, c, nil)...)
	}
	out = append(out, stavesFor(j, md, p, up)...)
	if c := collar(j, md, p); collared(staveTop(md, p)) {
		piece := Piece{Label: capLabel(p.Name, "collar"), Part: p.Name, Kind: "collar", up: up, Draft: 90, Verdict: parting.Clear}
		out = append(out, divided(j, piece, c, nil)...)
	}
	return out
}

// capLabel is what a piece for a lower part, an upper part or a core is called.
func capLabel(part, kind string) words.Text {
	type of struct{ part, kind string }
	switch (of{part, kind}) {
	case of{"lower", "positive"}:
		return words.Say("lower positive")
	case of{"upper", "positive"}:
		return words.Say("upper positive")
	case of{"core", "positive"}:
		return words.Say("core positive")
	case of{"lower", "cottle"}:
		return words.Say("lower cottle")
	case of{"upper", "cottle"}:
		return words.Say("upper cottle")
	case of{"core", "cottle"}:
		return words.Say("core cottle")
	case of{"lower", "stave"}:
		return words.Say("lower cottle stave")
	case of{"upper", "stave"}:
		return words.Say("upper cottle stave")
	case of{"core", "stave"}:
		return words.Say("core cottle stave")
	case of{"lower", "collar"}:
		return words.Say("lower collar")
	case of{"upper", "collar"}:
		return words.Say("upper collar")
	}
	return words.Say("core collar")
}

// number makes the piece one of several alike.
func (p *Piece) number(n int) {
	p.Together, p.No = p.Label, n
	p.Label = words.Say("%s %d", p.Together, n)
}

// share makes the piece the one at i of n that a print is divided into.
func (p *Piece) share(i, n int) {
	p.Label, p.Together, p.No = words.Say("%s, %d of %d", p.Label, i+1, n), words.Text{}, 0
	if p.unkeyed {
		p.Note = noted(p.Note, words.Say("It is made in %d pieces to fit the bed. This one has no room for keys: glue it face to face, edges flush.", n))
		return
	}
	p.Note = noted(p.Note, words.Say("It is made in %d pieces to fit the bed; glue them at their keys.", n))
}

// rowsFirst is for pieces that are cut two ways: a key lets go along its own joint.
func rowsFirst() words.Text {
	return words.Say("Glue the pieces of each row together first, then the rows to one another.")
}

// noted is a note with one sentence more.
func noted(note, more words.Text) words.Text {
	if note.IsZero() {
		return more
	}
	return words.Join(" ", note, more)
}

// stavesFor are the staves of a cottle: as many as asked, or the fewest more
// that fit the bed; where no number does, those asked for divided by planes.
func stavesFor(j *job.Job, md *mold.Mold, p *mold.Part, up solid.Vec) []Piece {
	var first []Piece
	var asked []float64
	for cuts := range staveCuts(md, j.Mold.Staves) {
		list, fit, rubs := stavesAt(j, md, p, up, cuts, first != nil && len(cuts) > len(asked), (*stave).inCourses)
		if fit && (first == nil || !rubs) {
			return list
		}
		if first == nil {
			first, asked = list, cuts
		}
		if list[0].Size[2] > j.Printer.Bed[2] {
			break // more staves are no lower
		}
	}
	if slices.ContainsFunc(first, func(p Piece) bool { return !p.FitsBed }) {
		first, _, _ = stavesAt(j, md, p, up, asked, false, (*stave).hewn)
	}
	return first
}

// stavesAt are the staves of a cottle that parts at the azimuths in cuts, each
// divided where it does not fit; it tells whether all fit and whether one rubs.
// more are those of a cottle that parts into more than were asked for.
func stavesAt(j *job.Job, md *mold.Mold, p *mold.Part, up solid.Vec, cuts []float64, more bool, divided func(*stave, *job.Job, Piece) []Piece) (list []Piece, fit, rubs bool) {
	n := len(cuts) - 1
	fit = true
	for k := range n {
		s := newStave(j, md, p, k, cuts)
		piece := Piece{Label: capLabel(p.Name, "stave"), Part: p.Name, Kind: "stave", up: up}
		piece.number(k + 1)
		piece.Draft, piece.Verdict = sideways(md, s.from, s.to, j.Rules)
		rubs = rubs || piece.Verdict != parting.Clear
		if piece.Verdict != parting.Clear {
			piece.Note = words.Say("It rubs as it is taken off sideways; ask for more staves.")
		}
		if more {
			piece.Note = words.Say("The cottle is made in %d staves to fit the bed.", n)
		}
		if k == 0 {
			piece.Note = noted(piece.Note, fillTo())
		}
		for _, part := range divided(s, j, piece) {
			fit = fit && part.FitsBed
			list = append(list, part)
		}
	}
	return list, fit, rubs
}

// hewn is the stave, divided by planes where it does not fit.
func (s *stave) hewn(j *job.Job, p Piece) []Piece {
	list, mark := s.plan(s.md.Solids().Turn)
	p.build = s.build
	clear := func() [][]solid.Vec {
		if mark < 0 {
			return nil
		}
		corners := s.sign(list, mark).corners(nil)
		for i := range corners {
			corners[i][2] = s.seam + s.way*corners[i][2]
		}
		return [][]solid.Vec{corners}
	}
	sin, cos := solid.SinCosDeg((s.from + s.to) / 2)
	return orHewn(j, s.md, []Piece{s.measured(j, p, list, mark)}, p, solid.Vec{sin, -cos, 0}, func() []solid.Vec { return s.corners(list, mark) }, clear)
}

// inCourses is the stave whole, or in the fewest courses that are no higher than
// the bed.
func (s *stave) inCourses(j *job.Job, p Piece) []Piece {
	heights := s.courses(j.Printer.Bed[2])
	if heights == nil {
		heights = []float64{s.lo, s.hi}
	}
	n := len(heights) - 1
	list, mark := s.plan(s.md.Solids().Turn) // alike in every course
	var out []Piece
	for i := range n {
		course := *s
		course.lo, course.hi = heights[i], heights[i+1]
		q := p
		if n > 1 {
			q.unkeyed = len(course.keys(course.lo))+len(course.keys(course.hi)) == 0
			q.share(i, n)
		}
		out = append(out, course.measured(j, q, list, mark))
	}
	return out
}

// measured is this course of the stave, of its plan, with its size and weight.
func (s *stave) measured(j *job.Job, p Piece, list []staveCorner, mark int) Piece {
	p.build = s.build
	p.measure(j, s.corners(list, mark), s.volume(list))
	p.Overhang = s.overhang(list, mark)
	return p
}

// sideways is the release survey of a stave taken off along its middle: the
// least draft and the verdict by the rules of the plaster parts.
func sideways(md *mold.Mold, from, to float64, rules job.Rules) (float64, parting.Verdict) {
	mid := (from + to) / 2
	draft := func(d float64) float64 {
		face := from + d
		if f := float64(md.Block.Facets); f > 0 {
			face = math.Round(face/(360/f)) * 360 / f
		}
		return 90 - math.Abs(face-mid)
	}
	const step = 0.5 // degrees
	least := 90.0
	for d := step / 2; d < to-from; d += step {
		if here := draft(d); here < least {
			least = here
		}
	}
	if least >= rules.LeastDraft {
		return least, parting.Clear
	}
	all, rub := 0.0, 0.0
	for d := step / 2; d < to-from; d += step {
		r := md.Block.Reach(from + d)
		all += r * r
		if draft(d) < rules.LeastDraft {
			rub += r * r
		}
	}
	if 100*rub > rules.RubShare*all {
		return least, parting.Rubs
	}
	return least, parting.Clear
}
