package tooling

// What a side part is poured on. The tray lies with the pull upward: it holds
// the pot's surface and both seam faces, and is open at the back, where the
// plaster is struck off flat. Its ends are closed by boards in the planes of
// the level seams, which carry their natches, and its sides by boards that lie
// against the tray's flanks and carry the ribs of the strap grooves. Boards are
// taken off across their faces, so they rub nowhere.
//
// In the frame of a side part u runs along the pull, v across it, z up.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// Measures of trays and boards, mm; common practice, no source.
const (
	trayFloor = 6.0  // under the axis
	flank     = 15.0 // how far a side board laps over the tray's flank
	boardWall = 5.0
	ledge     = 6.0 // of an end board, outside the side boards: height, and twice the width
)

// tray is the tray of a side part, or one of its boards.
type tray struct {
	md     *mold.Mold
	p      *mold.Part
	half   float64 // of the sector, degrees
	mid    float64 // azimuth of the pull
	lo, hi float64 // the part's ends
	// from and to are the ends of this piece of the tray or board; w is the side
	// of the middle that it lies on, +v 1, -v -1, or 0 for both.
	from, to float64
	w        float64
	clear    float64 // of keys in their sockets
}

// newTray is nil where the pot's surface reaches past the part's ends, so that
// no flat board could close them.
func newTray(j *job.Job, md *mold.Mold, p *mold.Part) *tray {
	t := &tray{clear: j.Printer.Clearance, md: md, p: p, half: (p.Sector[1] - p.Sector[0]) / 2, mid: (p.Sector[0] + p.Sector[1]) / 2}
	t.lo, t.hi = math.Inf(1), math.Inf(-1)
	for _, q := range p.Outline[p.Pot+1:] {
		t.lo, t.hi = math.Min(t.lo, q.Z), math.Max(t.hi, q.Z)
	}
	for _, q := range p.Outline[:p.Pot+1] {
		if q.Z < t.lo || q.Z > t.hi {
			return nil
		}
	}
	t.from, t.to = t.lo, t.hi
	return t
}

// at is a point of the frame of the part, in the mold.
func (t *tray) at(u, v, z float64) solid.Vec {
	sin, cos := solid.SinCosDeg(t.mid)
	return solid.Vec{u*cos - v*sin, u*sin + v*cos, z}
}

// edge is the outer edge of a seam face in plan, on the side of +v; flankFoot
// lies on the plane of the side board below it, and the floor at depth u.
func (t *tray) edge() (u, v float64) {
	sin, cos := solid.SinCosDeg(t.half)
	return t.md.Block.R * cos, t.md.Block.R * sin
}

// along is the direction of the side board in plan, towards the back.
func (t *tray) along() (u, v float64) {
	sin, cos := solid.SinCosDeg(t.half)
	return sin, -cos
}

// floor is the depth of the tray's underside.
func (t *tray) floor() float64 {
	u, _ := t.edge()
	du, _ := t.along()
	return math.Min(-trayFloor, u-flank*du)
}

// side is the half of the tray's section in plan from the seam's edge to the
// floor: where the flank ends and where it meets the floor.
func (t *tray) side() (foot, ground [2]float64) {
	u, v := t.edge()
	du, dv := t.along()
	foot = [2]float64{u - flank*du, v - flank*dv}
	f := t.floor()
	if foot[0] <= f+0.5 { // the flank runs to the floor
		foot = [2]float64{f + 0.5, v - (u-f-0.5)/du*dv}
	}
	return foot, [2]float64{f, foot[1]}
}

// line is the pot's contour that the tray holds, upward. Level stretches in the
// planes of its ends belong to the ends.
func (t *tray) line() []form.Point {
	var line []form.Point
	for k := t.p.Pot; k >= 0; k-- {
		line = append(line, t.p.Outline[k])
	}
	if line[0].Z > t.lo && line[0].R == 0 { // plaster under the foot: the tray reaches the axis
		line = append([]form.Point{{R: 0, Z: t.lo}}, line...)
	}
	for len(line) > 2 && line[0].Z == t.lo && line[1].Z == t.lo {
		line = line[1:]
	}
	for n := len(line); n > 2 && line[n-1].Z == t.hi && line[n-2].Z == t.hi; n-- {
		line = line[:n-1]
	}
	return line
}

// build makes the tray, or a piece of it, in the mold's frame.
func (t *tray) build(so *mold.Solids) (*solid.Mesh, error) {
	n := so.Turn.Steps()
	at := func(deg float64) int { return int(math.Round(deg / 360 * float64(n))) }
	first, last := t.p.Sector[0], t.p.Sector[1]
	if t.w > 0 {
		first = t.mid
	} else if t.w < 0 {
		last = t.mid
	}
	b := solid.NewBuilder(so.Place, solid.Span{Steps: n, From: at(first), To: at(last)})
	// the pot's surface, along the contour
	var rings []solid.Loop
	line := t.piece()
	room := (len(line) + 1) * (at(last) - at(first) + 1)
	b.Grow(room, 2*room)
	for _, q := range line {
		rings = append(rings, b.Ring(q.R, q.Z))
	}
	for i := 1; i < len(rings); i++ {
		b.Wall(rings[i-1], rings[i]) // matter toward the axis
	}
	// the outer edges, on the side of -v and of +v; on a side that is cut off
	// the floor ends at the middle
	heights := [2]float64{t.from, t.to}
	post := func(u, v float64) (l [2]int32) {
		for k, z := range heights {
			l[k] = b.Vertex(t.at(u, v, z))
		}
		return l
	}
	u, v := t.edge()
	foot, ground := t.side()
	var sides [2][3][2]int32 // by side: the seam's edge, the flank's foot, the floor
	for s := range 2 {
		w := float64(2*s - 1)
		if t.w == -w {
			sides[s][2] = post(ground[0], 0)
			continue
		}
		sides[s] = [3][2]int32{post(u, w*v), post(foot[0], w*foot[1]), post(ground[0], w*ground[1])}
	}
	for s := range 2 {
		w := float64(2*s - 1)
		e := sides[s]
		if t.w == -w { // the joint in the middle
			loop := solid.Loop{e[2][0]}
			for _, r := range rings {
				if s == 0 {
					loop = append(loop, r[0])
				} else {
					loop = append(loop, r[len(r)-1])
				}
			}
			loop = append(loop, e[2][1])
			if s == 1 {
				loop = reversed(loop)
			}
			normal := t.at(0, w, 0)
			keys := t.middleKeys()
			open, holes := keyHoles(b, keys, t.clear, normal, func(x, y float64) solid.Vec { return t.at(x, 0, y) })
			b.Face(normal, loop, holes...)
			closeKeys(b, open, keys)
			continue
		}
		t.seamFace(b, s, rings, e[0])
		face := func(normal solid.Vec, a, c [2]int32) {
			l := solid.Loop{a[0], c[0], c[1], a[1]}
			if s == 0 {
				l = reversed(l)
			}
			var holes []solid.Loop
			if m, ok := t.flankSign(w); ok && c == e[2] {
				holes = m.raise(b)
			}
			b.Face(normal, l, holes...)
		}
		du, dv := t.along()
		face(t.at(-dv, w*du, 0), e[0], e[1])
		face(t.at(0, w, 0), e[1], e[2])
	}
	g := [2][2]int32{sides[0][2], sides[1][2]}
	b.Face(t.at(-1, 0, 0), solid.Loop{g[0][0], g[0][1], g[1][1], g[1][0]})
	// ends: seen from above the loop runs from -v round the pot to +v
	for k, ring := range [2]solid.Loop{rings[0], rings[len(rings)-1]} {
		var l solid.Loop
		if t.w <= 0 {
			l = append(l, sides[0][0][k])
		}
		l = append(l, ring...)
		if t.w >= 0 {
			l = append(l, sides[1][0][k], sides[1][1][k])
		}
		l = append(l, sides[1][2][k], sides[0][2][k])
		if t.w <= 0 {
			l = append(l, sides[0][1][k])
		}
		way := float64(2*k - 1)
		if k == 0 {
			l = reversed(l)
		}
		var keys []key
		if z := heights[k]; z > t.lo && z < t.hi {
			keys = t.endKeys(z, k == 1)
		}
		open, holes := keyHoles(b, keys, t.clear, solid.Vec{0, 0, way}, func(x, y float64) solid.Vec { return t.at(x, y, heights[k]) })
		b.Face(solid.Vec{0, 0, way}, l, holes...)
		closeKeys(b, open, keys)
	}
	return b.Done()
}

// flankSign is the tray's mark on its lower flank on the side of w, where that is
// high enough: upright as the tray is printed, the arrow along the pull.
func (t *tray) flankSign(w float64) (sign, bool) {
	list, wide := lettering(mold.Letter(t.p.Name) + "^")
	foot, ground := t.side()
	if foot[0]-ground[0] < bandLeast || t.to-t.from < wide+2*markRoom {
		return sign{}, false
	}
	o, up, out := t.at((foot[0]+ground[0])/2, w*foot[1], (t.from+t.to)/2), t.at(1, 0, 0), t.at(0, w, 0)
	return sign{list: list, o: o, x: crossed(up, out), y: up, n: out, lean: 1}, true
}

// seamFace lays the seam face on the side of -v (s = 0) or +v (1), between the
// pot and the edge e, with the piece's natches.
func (t *tray) seamFace(b *solid.Builder, s int, rings []solid.Loop, e [2]int32) {
	// outline counterclockwise in (r, z), seen from the tray's side
	var loops []solid.Loop
	for i := len(rings) - 1; i >= 0; i-- {
		loops = append(loops, reversed(rings[i]))
	}
	for _, v := range e {
		loops = append(loops, solid.Loop{v})
	}
	seam, side := mold.Start, solid.Far
	if s == 1 {
		seam, side = mold.End, solid.Near
	}
	var list []mold.Natch
	var circles []solid.Circle
	for _, n := range t.p.Natches {
		if n.Seam == seam && n.At.Z > t.from && n.At.Z < t.to {
			list = append(list, n)
			circles = append(circles, mold.UprightCircle(n))
		}
	}
	mold.CloseCast(b, b.End(side, loops, circles...), list)
}

// volume of the tray in ml: the prism under its seam planes and the sector of
// the pot.
func (t *tray) volume() float64 {
	u, v := t.edge()
	foot, ground := t.side()
	half := [][2]float64{{0, 0}, {u, v}, foot, ground, {ground[0], 0}}
	area := math.Abs(loopArea(half))
	sector := *t.p.Sector
	if t.w == 0 {
		area *= 2
	} else if t.w > 0 {
		sector[0] = t.mid
	} else {
		sector[1] = t.mid
	}
	pot := 0.0
	line := t.piece()
	for k := 1; k < len(line); k++ {
		a, c := line[k-1], line[k]
		pot += (a.R*a.R + a.R*c.R + c.R*c.R) * (c.Z - a.Z) * math.Pi / 3
	}
	return (area*(t.to-t.from) + pot*(sector[1]-sector[0])/360*t.md.SectionShare(&sector)) / 1000
}

// back is how far from the axis the plaster reaches along the pull, with what
// the boards stand above it.
func (t *tray) back() float64 { return t.md.Block.R + freeboard }

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

func loopArea(l [][2]float64) float64 {
	a := 0.0
	for i, p := range l {
		q := l[(i+1)%len(l)]
		a += p[0]*q[1] - p[1]*q[0]
	}
	return a / 2
}

// sideBoard is the flat board against the half-face beside the seam on the side
// of +v (w = 1) or -v, with the ribs of the strap grooves.
type sideBoard struct {
	*tray
	w         float64
	from, to  float64 // heights of this piece
	near, far float64 // its ends along the face
}

// spanUV is the board's reach along the face, from the seam's edge.
func (s *sideBoard) spanUV() (from, to float64) {
	u, _ := s.edge()
	du, _ := s.along()
	foot, _ := s.side()
	// a half-face ends where the back begins
	sin, cos := solid.SinCosDeg(180 / float64(s.md.Block.Facets))
	return -(u - foot[0]) / du, s.md.Block.R*sin/cos + 2
}

// section across the board: (d, z), d outward from the face.
func (s *sideBoard) section() [][2]float64 {
	out := [][2]float64{{boardWall, s.from}, {boardWall, s.to}, {0, s.to}}
	ribs := s.ribs()
	for i := len(ribs) - 1; i >= 0; i-- {
		if ribs[i][1] > s.from && ribs[i][1] < s.to {
			out = append(out, ribs[i])
		}
	}
	return append(out, [2]float64{0, s.from})
}

// ribs are the corners of the ribs for the strap grooves, upward.
func (s *sideBoard) ribs() (ribs [][2]float64) {
	for _, q := range s.p.Outline[s.p.Pot+1:] {
		if q.R > 0 && q.Z > s.lo+mold.EdgeMM && q.Z < s.hi-mold.EdgeMM {
			ribs = append(ribs, [2]float64{q.R - s.md.Block.R, q.Z})
		}
	}
	return ribs
}

// build makes the board, or a piece of it between from and to in height and
// between its ends near and far along the face.
func (s *sideBoard) build(so *mold.Solids) (*solid.Mesh, error) {
	b := solid.NewBuilder(so.Place, solid.FullTurn(so.Turn.Steps()))
	u, v := s.edge()
	du, dv := s.along()
	place := func(along, d, z float64) solid.Vec {
		return s.at(u+along*du-d*dv, s.w*(v+along*dv+d*du), z)
	}
	sec := s.section()
	var a, c solid.Loop
	for _, q := range sec {
		a = append(a, b.Vertex(place(s.near, q[0], q[1])))
		c = append(c, b.Vertex(place(s.far, q[0], q[1])))
	}
	dir := s.at(du, s.w*dv, 0)
	if s.w < 0 {
		a, c = c, a
		dir = solid.Vec{-dir[0], -dir[1], 0}
	}
	for i := range a {
		k := (i + 1) % len(a)
		quad := solid.Loop{a[i], a[k], c[k], c[i]}
		if sec[i][1] != sec[k][1] || sec[i][1] == s.lo || sec[i][1] == s.hi {
			b.Triangle(quad[0], quad[1], quad[2])
			b.Triangle(quad[0], quad[2], quad[3])
			continue
		}
		z := sec[i][1]
		normal := solid.Vec{0, 0, 1}
		if z == s.from {
			normal[2] = -1
		}
		keys := s.levelKeys(z == s.to)
		open, holes := keyHoles(b, keys, s.clear, normal, func(x, y float64) solid.Vec { return place(x, y, z) })
		b.Face(normal, quad, holes...)
		closeKeys(b, open, keys)
	}
	for k, l := range [2]solid.Loop{c, reversed(a)} {
		normal := dir
		at := s.far
		if (k == 0) != (s.w > 0) {
			at = s.near
		}
		if k == 1 {
			normal = solid.Vec{-dir[0], -dir[1], 0}
		}
		keys := s.endKeys(at)
		open, holes := keyHoles(b, keys, s.clear, normal, func(x, y float64) solid.Vec { return place(at, x, y) })
		b.Face(normal, l, holes...)
		closeKeys(b, open, keys)
	}
	return b.Done()
}
