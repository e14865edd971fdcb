package tooling

import (
	"math"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// Kit lists the printed pieces of a mold, each measured and turned to fit the
// bed. A piece that is larger than the bed is divided into the fewest pieces
// that fit, where it can be; its Note says so, or what does not fit. A piece that
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
		t := newTray(md, p)
		if t == nil {
			out = append(out, Piece{Label: words.Say("part %s tray", p.Name), Part: p.Name, Kind: "tray", FitsBed: true, Verdict: p.Verdict,
				Note: words.Say("There is no tray for this part: the pot reaches past the part's ends, so that no flat board could close it. Part the mold elsewhere.")})
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
		out = []Piece{potPositive(j, md, p)}
	} else {
		var t *turned
		t, up = positive(j, md, p, false)
		base := Piece{Label: capLabel(p.Name, "positive"), Part: p.Name, Kind: "positive", up: up, Draft: p.MinDraft, Verdict: p.Verdict}
		out = divided(j, base, t, func() *turned { full, _ := positive(j, md, p, true); return full })
		if md.PlugApart && p.Name == "upper" {
			out = append(out, plugFor(j, md)...)
		}
	}
	if j.Mold.Staves == 1 {
		c := cottle(j, md, p)
		piece := Piece{Label: capLabel(p.Name, "cottle"), Part: p.Name, Kind: "stave", up: up}
		seam, far, _ := wallOf(md, p)
		piece.Draft = math.Atan2(md.Block.At(seam)-md.Block.At(far), math.Abs(far-seam)) * 180 / math.Pi
		piece.Verdict = parting.Clear
		if piece.Draft < j.Rules.LeastDraft-1e-9 {
			piece.Verdict = parting.Rubs
			piece.Note = words.Say("In one piece it rubs on the plaster all over; ask for two staves, which are taken off sideways.")
		}
		return append(out, divided(j, piece, c, nil)...)
	}
	out = append(out, stavesFor(j, md, p, up)...)
	if c := collar(j, md, p); collared(newStave(j, md, p, 0, staves(md, j.Mold.Staves)).top) {
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

// stavesFor are the staves of a cottle: as many as asked, or the fewest more
// that fit the bed.
func stavesFor(j *job.Job, md *mold.Mold, p *mold.Part, up solid.Vec) []Piece {
	asked := staves(md, j.Mold.Staves)
	var out []Piece
	most := 12
	if md.Block.Facets > 0 {
		most = md.Block.Facets
	}
	for n := asked; n <= most; n = staves(md, n+1) {
		var list []Piece
		fit := true
		for k := range n {
			s := newStave(j, md, p, k, n)
			piece := Piece{Label: capLabel(p.Name, "stave"), Part: p.Name, Kind: "stave", up: up, build: s.build}
			piece.number(k + 1)
			piece.Draft, piece.Verdict = sideways(md, s.from, s.to, j.Rules)
			if piece.Verdict != parting.Clear {
				piece.Note = words.Say("It rubs as it is taken off sideways; ask for more staves.")
			}
			plan, ml := s.points(up)
			piece.measure(j, plan, s.top+grooveDepth, ml)
			if n > asked {
				piece.Note = words.Say("The cottle is made in %d staves to fit the bed.", n)
			}
			piece.Overhang = 45
			fit = fit && piece.FitsBed
			list = append(list, piece)
		}
		if out == nil {
			out = list
		}
		if fit {
			return list
		}
		if !fit && list[0].Size[2] > j.Printer.Bed[2] {
			break // more staves are no lower
		}
	}
	return out
}

// sideways is the release survey of a stave taken off along its middle: the
// least draft and the verdict by the rules of the plaster parts.
func sideways(md *mold.Mold, from, to float64, rules job.Rules) (float64, parting.Verdict) {
	mid := (from + to) / 2
	least, all, rub := 90.0, 0.0, 0.0
	for d := 0.25; d < to-from; d += 0.5 {
		face := from + d
		if f := float64(md.Block.Facets); f > 0 {
			face = math.Round(face/(360/f)) * 360 / f
		}
		draft := 90 - math.Abs(face-mid)
		r := md.Block.Reach(from + d)
		all += r * r
		if draft < rules.LeastDraft {
			rub += r * r
		}
		least = math.Min(least, draft)
	}
	if 100*rub > rules.RubShare*all {
		return least, parting.Rubs
	}
	return least, parting.Clear
}

// trayKit is the tray and boards of a side part. The side boards serve every
// side part in turn, so they are made once.
func trayKit(j *job.Job, t *tray, sides bool) []Piece {
	sin, cos := solid.SinCosDeg(t.mid)
	pull := solid.Vec{cos, sin, 0}
	piece := Piece{Label: words.Say("part %s tray", t.p.Name), Part: t.p.Name, Kind: "tray", up: pull, build: t.build,
		Draft: math.Min(t.p.MinDraft, t.half), Verdict: t.p.Verdict, Overhang: math.Max(0, -t.p.MinDraft)}
	most := 0.0
	for _, q := range t.line() {
		most = math.Max(most, q.R)
	}
	foot, ground := t.side()
	u, v := t.edge()
	wide := math.Max(v, math.Max(foot[1], ground[1]))
	// as printed, -z of the mold lies along x
	box := [][2]float64{{-t.hi, -wide}, {-t.lo, -wide}, {-t.lo, wide}, {-t.hi, wide}}
	piece.measure(j, box, math.Max(u, most*t.reachAlong())-t.floor(), t.volume())
	out := []Piece{piece}
	for _, end := range [2]struct {
		label words.Text
		z, w  float64
	}{{words.Say("part %s lower end board", t.p.Name), t.lo, -1}, {words.Say("part %s upper end board", t.p.Name), t.hi, 1}} {
		e := &endBoard{t, end.z, end.w, j}
		board := Piece{Label: end.label, Part: t.p.Name, Kind: "board", up: solid.Vec{0, 0, -end.w}, build: e.build, Draft: 90, Verdict: parting.Clear}
		w, f, top := e.reach(), e.floor(), e.back()
		corners := [][2]float64{{f, -w}, {top, -w}, {top, w}, {f, w}}
		for i, c := range corners { // from the part's frame to the bed's
			x, y := c[0]*cos-c[1]*sin, c[0]*sin+c[1]*cos
			corners[i] = [2]float64{x, -end.w * y}
		}
		board.measure(j, corners, e.thick()+e.proud(), ((top-f)*2*w*e.thick()+e.ledgeVolume())/1000)
		out = append(out, board)
	}
	if !sides {
		return out
	}
	for k, w := range [2]float64{1, -1} {
		s := &sideBoard{t, w}
		du, dv := t.along()
		in := t.at(dv, -w*du, 0) // towards the plaster
		board := Piece{Label: words.Say("side board"), Part: t.p.Name, Kind: "board", up: in, build: s.build, Draft: 90, Verdict: parting.Clear,
			Note: words.Say("It serves each side part in turn.")}
		board.number(k + 1)
		from, to := s.spanUV()
		sec := s.section()
		deep := boardWall
		for _, q := range sec {
			deep = math.Max(deep, boardWall-q[0])
		}
		l, h := to-from, t.hi-t.lo
		board.measure(j, [][2]float64{{0, 0}, {h, 0}, {h, l}, {0, l}}, deep, math.Abs(loopArea(sec))*l/1000)
		board.Overhang = 0
		out = append(out, board)
	}
	return out
}

// reachAlong is how far along the pull the pot of radius 1 reaches.
func (t *tray) reachAlong() float64 {
	most := 0.0
	for d := -t.half; d <= t.half; d++ {
		_, cos := solid.SinCosDeg(d)
		g, _ := t.md.Section.At((t.mid + d) * math.Pi / 180)
		most = math.Max(most, g*cos)
	}
	return most
}
