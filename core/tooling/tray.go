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
}

// newTray is nil where the pot's surface reaches past the part's ends, so that
// no flat board could close them.
func newTray(md *mold.Mold, p *mold.Part) *tray {
	t := &tray{md: md, p: p, half: (p.Sector[1] - p.Sector[0]) / 2, mid: (p.Sector[0] + p.Sector[1]) / 2}
	t.lo, t.hi = math.Inf(1), math.Inf(-1)
	for _, q := range p.Outline[p.Pot+1:] {
		t.lo, t.hi = math.Min(t.lo, q.Z), math.Max(t.hi, q.Z)
	}
	for _, q := range p.Outline[:p.Pot+1] {
		if q.Z < t.lo || q.Z > t.hi {
			return nil
		}
	}
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

// build makes the tray in the mold's frame.
func (t *tray) build(so *mold.Solids) (*solid.Mesh, error) {
	n := so.Turn.Steps()
	at := func(deg float64) int { return int(math.Round(deg / 360 * float64(n))) }
	b := solid.NewBuilder(so.Place, solid.Span{Steps: n, From: at(t.p.Sector[0]), To: at(t.p.Sector[1])})
	// the pot's surface, along the contour
	var rings []solid.Loop
	line := t.line()
	room := (len(line) + 1) * (at(t.p.Sector[1]) - at(t.p.Sector[0]) + 1)
	b.Grow(room, 2*room)
	for _, q := range line {
		rings = append(rings, b.Ring(q.R, q.Z))
	}
	for i := 1; i < len(rings); i++ {
		b.Wall(rings[i-1], rings[i]) // matter toward the axis
	}
	// the outer edges: near at the sector's start (-v), far at its end (+v)
	u, v := t.edge()
	foot, ground := t.side()
	post := func(u, v float64) [2]solid.Loop {
		return [2]solid.Loop{{b.Vertex(t.at(u, -v, t.lo)), b.Vertex(t.at(u, v, t.lo))}, {b.Vertex(t.at(u, -v, t.hi)), b.Vertex(t.at(u, v, t.hi))}}
	}
	e, f, g := post(u, v), post(foot[0], foot[1]), post(ground[0], ground[1])
	// seam faces: outline counterclockwise in (r, z), seen from the tray's side
	turn := func(l solid.Loop) solid.Loop { return reversed(l) }
	loops := []solid.Loop{}
	for i := len(rings) - 1; i >= 0; i-- {
		loops = append(loops, turn(rings[i]))
	}
	loops = append(loops, turn(e[0]), turn(e[1]))
	for _, end := range [2]struct {
		side solid.Side
		seam mold.Seam
	}{{solid.Far, mold.Start}, {solid.Near, mold.End}} {
		var list []mold.Natch
		var circles []solid.Circle
		for _, n := range t.p.Natches {
			if n.Seam == end.seam {
				list = append(list, n)
				circles = append(circles, mold.UprightCircle(n))
			}
		}
		mold.CloseCast(b, b.End(end.side, loops, circles...), list)
	}
	// flanks, sides and floor
	quad := func(normal solid.Vec, l ...int32) { b.Face(normal, l) }
	for s := range 2 {
		w := float64(2*s - 1) // -1 on the side of -v
		face := func(normal solid.Vec, a, c [2]solid.Loop) {
			l := solid.Loop{a[0][s], c[0][s], c[1][s], a[1][s]}
			if s == 0 {
				l = reversed(l)
			}
			quad(normal, l...)
		}
		du, dv := t.along()
		face(t.at(-dv, w*du, 0), e, f)
		face(t.at(0, w, 0), f, g)
	}
	quad(t.at(-1, 0, 0), g[0][0], g[1][0], g[1][1], g[0][1])
	// ends: seen from above the loop runs from -v round the pot to +v
	for s, ring := range [2]solid.Loop{rings[0], rings[len(rings)-1]} {
		l := solid.Loop{e[s][0]}
		l = append(l, ring...)
		l = append(l, e[s][1], f[s][1], g[s][1], g[s][0], f[s][0])
		// with u to the right and v up the page this runs counterclockwise
		if s == 1 {
			b.Face(solid.Vec{0, 0, 1}, l)
		} else {
			b.Face(solid.Vec{0, 0, -1}, reversed(l))
		}
	}
	return b.Done()
}

// volume of the tray in ml: the prism under its seam planes and the sector of
// the pot.
func (t *tray) volume() float64 {
	u, v := t.edge()
	foot, ground := t.side()
	half := [][2]float64{{0, 0}, {u, v}, foot, ground, {ground[0], 0}}
	area := 0.0
	for i, a := range half {
		c := half[(i+1)%len(half)]
		area += a[0]*c[1] - a[1]*c[0]
	}
	pot := 0.0
	for k := t.p.Pot; k > 0; k-- {
		a, c := t.p.Outline[k], t.p.Outline[k-1]
		pot += (a.R*a.R + a.R*c.R + c.R*c.R) * (c.Z - a.Z) * math.Pi / 3
	}
	return (math.Abs(area)*(t.hi-t.lo) + pot*2*t.half/360*t.md.SectionShare(t.p.Sector)) / 1000
}

// back is how far from the axis the plaster reaches along the pull, with what
// the boards stand above it.
func (t *tray) back() float64 { return t.md.Block.R + freeboard }

// endBoard closes the end at height z, on the side way of it.
type endBoard struct {
	*tray
	z, way float64
	j      *job.Job
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
	h := ledge
	for _, n := range e.natches() {
		if n.Socket {
			h = math.Max(h, solid.DomeHeight(n.Radius, n.HalfAngle))
		}
	}
	return h
}

func (e *endBoard) build(so *mold.Solids) (*solid.Mesh, error) {
	b := solid.NewBuilder(so.Place, solid.FullTurn(so.Turn.Steps()))
	w, f, top := e.reach(), e.floor(), e.back()
	corners := [4][2]float64{{f, -w}, {top, -w}, {top, w}, {f, w}}
	var in, out solid.Loop
	for _, c := range corners {
		in = append(in, b.Vertex(e.at(c[0], c[1], e.z)))
		out = append(out, b.Vertex(e.at(c[0], c[1], e.z+e.way*e.thick())))
	}
	facing := solid.Vec{0, 0, -e.way}
	var holes []solid.Loop
	list := e.natches()
	var open []solid.Hole
	for _, n := range list {
		h := mold.LevelHole(b, n, -e.way)
		holes = append(holes, reversed(h.Loop))
		open = append(open, h)
	}
	// ledges outside the side boards
	holes = append(holes, raise(b, facing, e.ledges(), func(x, y, h float64) solid.Vec {
		return e.at(x, e.way*-y, e.z-e.way*h*ledge/markRaised)
	})...)
	// the part's letter and its pull, above the plaster
	holes = append(holes, raise(b, facing, glyphs(e.p.Name+"^"), func(x, y, h float64) solid.Vec {
		return e.at(e.md.Block.R+freeboard/2+y, e.way*x, e.z-e.way*h)
	})...)
	loop := in
	if e.way > 0 {
		loop = reversed(in)
	}
	b.Face(facing, loop, holes...)
	mold.CloseCast(b, open, list)
	for i := range in {
		k := (i + 1) % len(in)
		if e.way > 0 {
			b.Triangle(in[i], in[k], out[k])
			b.Triangle(in[i], out[k], out[i])
		} else {
			b.Triangle(in[k], in[i], out[i])
			b.Triangle(in[k], out[i], out[k])
		}
	}
	if e.way > 0 {
		b.Face(solid.Vec{0, 0, 1}, out)
	} else {
		b.Face(solid.Vec{0, 0, -1}, reversed(out))
	}
	return b.Done()
}

// ledges are strips along the outer faces of the side boards, in (u, v) or, for
// an end above, (u, -v), counterclockwise.
func (e *endBoard) ledges() [][][2]float64 {
	u, v := e.edge()
	du, dv := e.along()
	off := boardWall + e.j.Printer.Clearance
	var out [][][2]float64
	for _, w := range [2]float64{1, -1} {
		// outward across the board: (-dv, du) on the side of +v
		p := func(s, d float64) [2]float64 { return [2]float64{u + s*du - d*dv, w * (v + s*dv + d*du)} }
		long := (e.md.Block.R - u) / math.Max(du, 0.2)
		q := [][2]float64{p(0.2*long, off), p(0.8*long, off), p(0.8*long, off+ledge/2), p(0.2*long, off+ledge/2)}
		if loopArea(q) < 0 {
			q[0], q[1], q[2], q[3] = q[3], q[2], q[1], q[0]
		}
		out = append(out, q)
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
	w float64
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
	out := [][2]float64{{boardWall, s.lo}, {boardWall, s.hi}, {0, s.hi}}
	var ribs [][2]float64
	for _, q := range s.p.Outline[s.p.Pot+1:] {
		if q.R > 0 && q.Z > s.lo+mold.EdgeMM && q.Z < s.hi-mold.EdgeMM {
			ribs = append(ribs, [2]float64{q.R - s.md.Block.R, q.Z})
		}
	}
	for i := len(ribs) - 1; i >= 0; i-- {
		out = append(out, ribs[i])
	}
	return append(out, [2]float64{0, s.lo})
}

func (s *sideBoard) build(so *mold.Solids) (*solid.Mesh, error) {
	b := solid.NewBuilder(so.Place, solid.FullTurn(so.Turn.Steps()))
	u, v := s.edge()
	du, dv := s.along()
	from, to := s.spanUV()
	place := func(along, d, z float64) solid.Vec {
		return s.at(u+along*du-d*dv, s.w*(v+along*dv+d*du), z)
	}
	sec := s.section()
	var a, c solid.Loop
	for _, q := range sec {
		a = append(a, b.Vertex(place(from, q[0], q[1])))
		c = append(c, b.Vertex(place(to, q[0], q[1])))
	}
	dir := s.at(du, s.w*dv, 0)
	if s.w < 0 {
		a, c = c, a
		dir = solid.Vec{-dir[0], -dir[1], 0}
	}
	side(b, a, c)
	b.Face(dir, c)
	b.Face(solid.Vec{-dir[0], -dir[1], 0}, reversed(a))
	return b.Done()
}
