package tooling

// The boards that close a tray's ends, in the planes of the level seams. They
// carry the seams' natches, the part's letter, and ledges that the side boards
// stand against.

import (
	"math"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// endBoard closes the end at height z, on the side way of it.
type endBoard struct {
	*tray
	z, way   float64
	j        *job.Job
	from, to float64 // its ends across the pull, or those of this piece of it
}

// reach is how far across a board goes on either side.
func (e *endBoard) reach() float64 {
	foot, _ := e.side()
	_, v := e.edge()
	return math.Max(foot[1], v) + boardWall + e.j.Printer.Clearance + ledge
}

// natches are those in the level seam that the board closes.
func (e *endBoard) natches() []mold.Natch {
	var out []mold.Natch
	for _, n := range e.p.Natches {
		if n.At.Z == e.z && (n.Seam == mold.Above || n.Seam == mold.Below) {
			out = append(out, n)
		}
	}
	return out
}

// thick is the board's thickness, with a floor under its hollows; proud how far
// its ledges and domes stand out of it.
func (e *endBoard) thick() float64 {
	t := boardWall
	for _, n := range e.natches() {
		if !n.Socket {
			t = math.Max(t, solid.DomeHeight(n.Radius, n.HalfAngle)+plateFloor)
		}
	}
	return t
}

func (e *endBoard) proud() float64 {
	h := 0.0
	if len(e.held(e.ledges())) > 0 {
		h = ledge
	} else if len(e.held(e.letters())) > 0 {
		h = markRaised
	}
	for _, n := range e.natches() {
		if v := e.across(n); n.Socket && v > e.from && v < e.to {
			h = math.Max(h, solid.DomeHeight(n.Radius, n.HalfAngle))
		}
	}
	return h
}

func (e *endBoard) build(so *mold.Solids) (*solid.Mesh, error) {
	b := solid.NewBuilder(so.Place, solid.FullTurn(so.Turn.Steps()))
	f, top := e.floor(), e.back()
	corners := [4][2]float64{{f, e.from}, {top, e.from}, {top, e.to}, {f, e.to}}
	var in, out solid.Loop
	for _, c := range corners {
		in = append(in, b.Vertex(e.at(c[0], c[1], e.z)))
		out = append(out, b.Vertex(e.at(c[0], c[1], e.z+e.way*e.thick())))
	}
	facing := solid.Vec{0, 0, -e.way}
	var holes []solid.Loop
	var list []mold.Natch
	var open []solid.Hole
	for _, n := range e.natches() {
		if v := e.across(n); v < e.from || v > e.to {
			continue
		}
		h := mold.LevelHole(b, n, -e.way)
		holes = append(holes, reversed(h.Loop))
		open, list = append(open, h), append(list, n)
	}
	stand := func(x, y, h float64) solid.Vec { return e.at(x, e.way*-y, e.z-e.way*h) }
	holes = append(holes, raise(b, facing, e.held(e.ledges()), ledge, stand)...)
	holes = append(holes, raise(b, facing, e.held(e.letters()), markRaised, stand)...)
	loop := in
	if e.way > 0 {
		loop = reversed(in)
	}
	b.Face(facing, loop, holes...)
	mold.CloseCast(b, open, list)
	for i := range in {
		k := (i + 1) % len(in)
		quad := solid.Loop{in[i], in[k], out[k], out[i]}
		if e.way < 0 {
			quad = reversed(quad)
		}
		normal := [4]solid.Vec{e.at(0, -1, 0), e.at(1, 0, 0), e.at(0, 1, 0), e.at(-1, 0, 0)}[i]
		v := [4]float64{e.from, math.Inf(1), e.to, math.Inf(1)}[i]
		keys := e.keys(v)
		holes, loops := keyHoles(b, keys, e.clear, normal, func(x, y float64) solid.Vec { return e.at(x, v, e.z+e.way*y) })
		b.Face(normal, quad, loops...)
		closeKeys(b, holes, keys)
	}
	if e.way > 0 {
		b.Face(solid.Vec{0, 0, 1}, out)
	} else {
		b.Face(solid.Vec{0, 0, -1}, reversed(out))
	}
	return b.Done()
}

// letters are the part's letter and its pull, above the plaster, in the frame of
// the ledges.
func (e *endBoard) letters() []glyph {
	list, _ := lettering(mold.Letter(e.p.Name) + "^")
	for _, g := range list {
		for _, l := range g {
			for i, q := range l {
				l[i] = [2]float64{e.md.Block.R + freeboard/2 + q[1], -q[0]}
			}
		}
	}
	return list
}

// ledges are strips along the outer faces of the side boards, in (u, v) or, for
// an end above, (u, -v), counterclockwise.
func (e *endBoard) ledges() []glyph {
	u, v := e.edge()
	du, dv := e.along()
	off := boardWall + e.j.Printer.Clearance
	var out []glyph
	for _, w := range [2]float64{1, -1} {
		// outward across the board: (-dv, du) on the side of +v
		p := func(s, d float64) [2]float64 { return [2]float64{u + s*du - d*dv, w * (v + s*dv + d*du)} }
		long := (e.md.Block.R - u) / math.Max(du, 0.2)
		q := [][2]float64{p(0.2*long, off), p(0.8*long, off), p(0.8*long, off+ledge/2), p(0.2*long, off+ledge/2)}
		if loopArea(q) < 0 {
			q[0], q[1], q[2], q[3] = q[3], q[2], q[1], q[0]
		}
		out = append(out, glyph{q})
	}
	return out
}

// across is where a natch lies across the pull.
func (e *endBoard) across(n mold.Natch) float64 {
	sin, _ := solid.SinCosDeg(n.Azimuth - e.mid)
	return n.At.R * sin
}

// held are the outlines, in (u, v) or for an end above (u, -v), that lie on this
// piece of the board.
func (e *endBoard) held(list []glyph) []glyph {
	var out []glyph
	for _, l := range list {
		if v := -e.way * l[0][0][1]; v > e.from && v < e.to {
			out = append(out, l)
		}
	}
	return out
}

// jointAt tells whether the board can be divided at a place across the pull.
func (e *endBoard) jointAt(v float64) bool {
	const room = 3.0 // the keys of a board are small
	for _, n := range e.natches() {
		if math.Abs(e.across(n)-v) < n.Radius+room {
			return false
		}
	}
	for _, l := range append(e.ledges(), e.letters()...) {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, q := range l[0] {
			lo, hi = math.Min(lo, -e.way*q[1]), math.Max(hi, -e.way*q[1])
		}
		if v > lo-room && v < hi+room {
			return false
		}
	}
	return true
}

// keys are those in the joint at a place across the pull, in (u, depth); none at
// the board's own ends.
func (e *endBoard) keys(v float64) []key {
	if math.Abs(v) > e.reach()-1e-9 {
		return nil
	}
	return boardKeys(e.floor(), e.back(), e.thick()/2, e.clear, v == e.to)
}

// measured is this piece of the board with its size and weight.
func (e *endBoard) measured(j *job.Job, p Piece) Piece {
	p.build = e.build
	f, top := e.floor(), e.back()
	out := []solid.Vec{e.at(f, e.from, e.z-e.way*e.proud())}
	for _, d := range [2]float64{0, e.thick()} {
		for _, q := range [4][2]float64{{f, e.from}, {top, e.from}, {top, e.to}, {f, e.to}} {
			out = append(out, e.at(q[0], q[1], e.z+e.way*d))
		}
	}
	for _, k := range e.keys(e.to) {
		out = append(out, e.at(k.at[0], e.to+k.radius, e.z+e.way*k.at[1]))
	}
	ledges := 0.0
	for _, l := range e.held(e.ledges()) {
		ledges += loopArea(l[0]) * ledge
	}
	p.measure(j, out, ((top-f)*(e.to-e.from)*e.thick()+ledges)/1000)
	if len(e.keys(e.from))+len(e.keys(e.to)) > 0 {
		p.Overhang = keyOverhang
	}
	return p
}
