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
	z, way    float64
	j         *job.Job
	from, to  float64 // its ends across the pull, or those of this piece of it
	near, far float64 // and along the pull
	whole     *uncut
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
	h, lettered := 0.0, 0.0
	if len(e.held(e.letters())) > 0 {
		lettered = markRaised
	}
	if len(e.heldLedges()) > 0 {
		h = ledge
	}
	lip, _, _, _ := e.lips()
	h = math.Max(h, lip+lettered) // letters stand on the lip where there is one
	for _, n := range e.natches() {
		if n.Socket && e.on(n) {
			h = math.Max(h, solid.DomeHeight(n.Radius, n.HalfAngle))
		}
	}
	return h
}

// lip is the bevel that the board forms along the edge of the back, at a free end:
// its height over the board, how far it reaches along the pull, and how far to
// either side, clear of the side boards.
func (e *endBoard) lip() (high, in, half float64) {
	high, in = bevel(e.p, e.z)
	s := sideBoard{tray: e.tray, w: 1}
	_, far := s.spanUV()
	_, v := e.edge()
	du, dv := e.along()
	half = math.Inf(1)
	for _, r := range [2]float64{e.md.Block.R - in, e.md.Block.R} {
		b := s.bevelled(r)[1]
		for _, x := range [2]float64{b[0], far} { // the side board's top
			half = math.Min(half, v+x*dv+b[1]*du)
		}
	}
	return high, in, half - e.clear
}

// lips is the stretch of the lip on this piece of the board, between two places
// across the pull; high is 0 without one.
func (e *endBoard) lips() (high, in, from, to float64) {
	if e.far < e.back() {
		return 0, 0, 0, 0
	}
	high, in, half := e.lip()
	from, to = math.Max(e.from, -half), math.Min(e.to, half)
	if in == 0 || to-from < 1 {
		return 0, 0, 0, 0
	}
	return high, in, from, to
}

func (e *endBoard) build(so *mold.Solids) (*solid.Mesh, error) {
	f := &facer{Builder: solid.NewBuilder(so.Place, solid.FullTurn(so.Turn.Steps()))}
	b := f.Builder
	low, top, deep := e.near, e.far, -e.thick()
	post := func(u, v, h float64) int32 { return f.vertex(e.at(u, v, e.z-e.way*h)) }
	facing := solid.Vec{0, 0, -e.way}
	var holes []solid.Loop
	var list []mold.Natch
	var open []solid.Hole
	for _, n := range e.natches() {
		if !e.on(n) {
			continue
		}
		h := mold.LevelHole(b, n, -e.way)
		holes = append(holes, reversed(h.Loop))
		open, list = append(open, h), append(list, n)
	}
	high, in, from, to := e.lips()
	stand := func(over float64) func(x, y, h float64) solid.Vec {
		return func(x, y, h float64) solid.Vec { return e.at(x, e.way*-y, e.z-e.way*(h+over)) }
	}
	holes = append(holes, raise(b, facing, e.heldLedges(), ledge, stand(0))...)
	letters := raise(b, facing, e.held(e.letters()), markRaised, stand(high))
	// the ends across the pull, up from the outside and along the inside to the top
	var outside, inside [2]solid.Loop
	for k, v := range [2]float64{e.from, e.to} {
		outside[k] = solid.Loop{post(top, v, deep), post(low, v, deep)}
		inside[k] = solid.Loop{post(low, v, 0)}
	}
	face := append(solid.Loop{}, inside[0]...)
	rim := solid.Loop{outside[0][0]}
	if high > 0 {
		r := e.md.Block.R
		var ends [2][4]int32 // of the lip: its foot, its edge, its top and the board's
		for k, v := range [2]float64{from, to} {
			ends[k] = [4]int32{post(r-in, v, 0), post(r, v, high), post(top, v, high), -1}
			if v == [2]float64{e.from, e.to}[k] { // it runs on in the next piece
				inside[k] = append(inside[k], ends[k][:3]...)
				continue
			}
			ends[k][3] = post(top, v, 0)
			inside[k] = append(inside[k], post(top, [2]float64{e.from, e.to}[k], 0))
			f.face(e.at(0, float64(2*k-1), 0), solid.Loop{ends[k][0], ends[k][1], ends[k][2], ends[k][3]})
		}
		f.face(facing, solid.Loop{ends[0][0], ends[0][1], ends[1][1], ends[1][0]})
		f.face(facing, solid.Loop{ends[0][1], ends[0][2], ends[1][2], ends[1][1]}, letters...)
		for k := range 2 {
			var part, edge solid.Loop // of the inside and of the top's edge
			if ends[k][3] >= 0 {
				part, edge = solid.Loop{inside[k][1], ends[k][3], ends[k][0]}, solid.Loop{inside[k][1], ends[k][3], ends[k][2]}
			} else {
				part, edge = solid.Loop{ends[k][0]}, solid.Loop{ends[k][2]}
			}
			if k == 1 {
				part, edge = reversed(part), reversed(edge)
			}
			face, rim = append(face, part...), append(rim, edge...)
		}
	} else {
		holes = append(holes, letters...)
		for k, v := range [2]float64{e.from, e.to} {
			inside[k] = append(inside[k], post(top, v, 0))
			face, rim = append(face, inside[k][1]), append(rim, inside[k][1])
		}
	}
	f.face(facing, append(face, inside[1][0]), holes...)
	mold.CloseCast(b, open, list)
	ends := func(u float64) func(x, y float64) solid.Vec {
		return func(x, y float64) solid.Vec { return e.at(u, x, e.z+e.way*y) }
	}
	f.keyed(e.at(1, 0, 0), append(rim, outside[1][0]), e.endKeys(top), e.clear, ends(top))
	f.keyed(e.at(-1, 0, 0), solid.Loop{inside[0][0], inside[1][0], outside[1][1], outside[0][1]}, e.endKeys(low), e.clear, ends(low))
	f.face(solid.Vec{0, 0, e.way}, solid.Loop{outside[0][0], outside[0][1], outside[1][1], outside[1][0]})
	for k, v := range [2]float64{e.from, e.to} {
		f.keyed(e.at(0, float64(2*k-1), 0), append(outside[k], inside[k]...), e.keys(v), e.clear,
			func(x, y float64) solid.Vec { return e.at(x, v, e.z+e.way*y) })
	}
	return f.Done()
}

// letters are the part's letter and its pull, above the plaster and between the
// side boards, in the frame of the ledges: the letter alone where both have no
// room, and nothing where it has none either.
func (e *endBoard) letters() []glyph {
	const room = 0.5
	_, _, half := e.lip()
	for _, text := range [2]string{mold.Letter(e.p.Name) + "^", mold.Letter(e.p.Name)} {
		list, _ := lettering(text)
		far := 0.0
		for _, g := range list {
			for _, l := range g {
				for i, q := range l {
					far = math.Max(far, math.Abs(q[0]))
					l[i] = [2]float64{e.md.Block.R + freeboard/2 + q[1], -q[0]}
				}
			}
		}
		if far < half-room {
			return list
		}
	}
	return nil
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

// ahead is how far along the pull a natch lies.
func (e *endBoard) ahead(n mold.Natch) float64 {
	_, cos := solid.SinCosDeg(n.Azimuth - e.mid)
	return n.At.R * cos
}

// on tells whether a natch lies on this piece of the board.
func (e *endBoard) on(n mold.Natch) bool {
	v, u := e.across(n), e.ahead(n)
	return v > e.from && v < e.to && u > e.near && u < e.far
}

// held are the letters, in (u, v) or for an end above (u, -v), that lie on this
// piece of the board.
func (e *endBoard) held(list []glyph) []glyph {
	var out []glyph
	for _, l := range list {
		if q := l[0][0]; -e.way*q[1] > e.from && -e.way*q[1] < e.to && q[0] > e.near && q[0] < e.far {
			out = append(out, l)
		}
	}
	return out
}

// heldLedges are what of the ledges lies on this piece of the board, a little clear
// of its joints.
func (e *endBoard) heldLedges() (out []glyph) {
	const room, least = 1.0, 12.0 // mm, mm2
	lo, hi := [2]float64{e.near + room, e.from + room}, [2]float64{e.far - room, e.to - room}
	if e.way > 0 {
		lo[1], hi[1] = -e.to+room, -e.from-room
	}
	for _, g := range e.ledges() {
		l := g[0]
		for k := range 2 {
			l = clipped(nil, l, k, lo[k], 1)
			l = clipped(nil, l, k, hi[k], -1)
		}
		if len(l) > 2 && loopArea(l) > least {
			out = append(out, glyph{l})
		}
	}
	return out
}

// jointAt tells whether the board can be divided at a place across the pull, and
// jointAlong whether it can at one along it: clear of natches, letters and the lip.
func (e *endBoard) jointAt(v float64) bool {
	for _, n := range e.natches() {
		if math.Abs(e.across(n)-v) < n.Radius+boardRoom {
			return false
		}
	}
	for _, l := range e.letters() {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, q := range l[0] {
			lo, hi = math.Min(lo, -e.way*q[1]), math.Max(hi, -e.way*q[1])
		}
		if v > lo-boardRoom && v < hi+boardRoom {
			return false
		}
	}
	return true
}

// clears are the corners of what cuts keep clear of.
func (e *endBoard) clears() (out [][]solid.Vec) {
	for _, n := range e.natches() {
		out = append(out, around(e.at(e.ahead(n), e.across(n), e.z), n.Radius))
	}
	for _, l := range e.letters() {
		var list []solid.Vec
		for _, q := range l[0] {
			list = append(list, e.at(q[0], -e.way*q[1], e.z))
		}
		out = append(out, list)
	}
	return out
}

func (e *endBoard) jointAlong(u float64) bool {
	for _, n := range e.natches() {
		if math.Abs(e.ahead(n)-u) < n.Radius+boardRoom {
			return false
		}
	}
	_, in, _ := e.lip()
	return u < e.md.Block.R-in-boardRoom
}

// endKeys are the keys in the joint at a place along the pull, in (v, depth); none
// at the board's own ends.
func (e *endBoard) endKeys(u float64) []key {
	if u == e.floor() || u == e.back() {
		return nil
	}
	return e.whole.sunk(boardKeys(e.from, e.to, e.thick()/2, e.clear, u == e.far), e.clear, e.at(1, 0, 0),
		func(x, y float64) solid.Vec { return e.at(u, x, e.z+e.way*y) })
}

// keys are those in the joint at a place across the pull, in (u, depth); none at
// the board's own ends.
func (e *endBoard) keys(v float64) []key {
	if math.Abs(v) > e.reach()-1e-9 {
		return nil
	}
	return e.whole.sunk(boardKeys(e.near, e.far, e.thick()/2, e.clear, v == e.to), e.clear, e.at(0, 1, 0),
		func(x, y float64) solid.Vec { return e.at(x, v, e.z+e.way*y) })
}

// corners are those of this piece of the board that may lie outermost.
func (e *endBoard) corners() []solid.Vec {
	f, top := e.near, e.far
	out := []solid.Vec{e.at(f, e.from, e.z-e.way*e.proud())}
	for _, d := range [2]float64{0, e.thick()} {
		for _, q := range [4][2]float64{{f, e.from}, {top, e.from}, {top, e.to}, {f, e.to}} {
			out = append(out, e.at(q[0], q[1], e.z+e.way*d))
		}
	}
	for _, k := range e.keys(e.to) {
		out = append(out, e.at(k.at[0], e.to+k.radius, e.z+e.way*k.at[1]))
	}
	for _, k := range e.endKeys(e.far) {
		out = append(out, e.at(e.far+k.radius, k.at[0], e.z+e.way*k.at[1]))
	}
	return out
}

// measured is this piece of the board with its size and weight.
func (e *endBoard) measured(j *job.Job, p Piece) Piece {
	p.build = e.build
	f, top := e.near, e.far
	ledges := 0.0
	for _, l := range e.heldLedges() {
		ledges += loopArea(l[0]) * ledge
	}
	natches := 0.0 // caps of balls
	for _, n := range e.natches() {
		if !e.on(n) {
			continue
		}
		h := solid.DomeHeight(n.Radius, n.HalfAngle)
		cap := math.Pi * h / 6 * (3*n.Radius*n.Radius + h*h)
		if !n.Socket {
			cap = -cap
		}
		natches += cap
	}
	high, in, a, c := e.lips()
	lip := (top - e.md.Block.R + in/2) * high * (c - a)
	p.measure(j, e.corners(), ((top-f)*(e.to-e.from)*e.thick()+ledges+lip+natches)/1000)
	p.unkeyed = len(e.keys(e.from))+len(e.keys(e.to))+len(e.endKeys(e.near))+len(e.endKeys(e.far)) == 0
	if !p.unkeyed {
		p.Overhang = keyOverhang
	}
	return p
}
