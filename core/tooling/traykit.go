package tooling

// The kit of a side part: its tray and boards, whole where they fit the bed, else
// divided. A tray is divided across its length, and along its middle; an end
// board across its width; a side board across its length and its height. Joints
// keep clear of natches, ribs, ledges and letters, and are keyed.

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// mostBoards is how many pieces a tray or board is divided into at most.
const mostBoards = 12

// jointRoom is kept between a joint and what it must not cross, mm.
const jointRoom = keyMost + 3.0

// fewest is the print whole where it fits, else in the fewest pieces that fit:
// split gives it in so many slices one way and the other, or nil.
func fewest(most [2]int, split func(m, n int) []Piece) []Piece {
	whole := split(1, 1)
	if whole[0].FitsBed {
		return whole
	}
	var ways [][2]int
	for m := 1; m <= most[0]; m++ {
		for n := 1; n <= most[1]; n++ {
			if m*n > 1 && m*n <= mostBoards {
				ways = append(ways, [2]int{m, n})
			}
		}
	}
	slices.SortStableFunc(ways, func(a, b [2]int) int { return a[0]*a[1] - b[0]*b[1] })
	for _, w := range ways {
		list := split(w[0], w[1])
		fit := list != nil
		for _, p := range list {
			fit = fit && p.FitsBed
		}
		if fit {
			for i := range list {
				list[i].share(i, len(list))
			}
			return list
		}
	}
	return whole
}

// cuts divides a stretch into n, ends included, each cut as near to even as ok
// allows, within a quarter of a slice.
func cuts(lo, hi float64, n int, ok func(x float64) bool) []float64 {
	out := []float64{lo}
	slice := (hi - lo) / float64(n)
next:
	for k := 1; k < n; k++ {
		even := lo + slice*float64(k)
		for d := 0.0; d < slice/4; d++ {
			for _, x := range [2]float64{even - d, even + d} {
				if ok(x) {
					out = append(out, x)
					continue next
				}
			}
		}
		return nil
	}
	return append(out, hi)
}

// trayKit is the tray and boards of a side part. The side boards serve every
// side part in turn, so they are made once.
func trayKit(j *job.Job, t *tray, sides bool) []Piece {
	sin, cos := solid.SinCosDeg(t.mid)
	piece := Piece{Label: words.Say("part %s tray", t.p.Name), Part: t.p.Name, Kind: "tray", up: solid.Vec{cos, sin, 0},
		Draft: math.Min(t.p.MinDraft, t.half), Verdict: t.p.Verdict, Overhang: math.Max(0, -t.p.MinDraft)}
	out := fewest([2]int{mostBoards, 2}, func(m, n int) []Piece {
		levels := cuts(t.lo, t.hi, m, t.jointAt)
		if levels == nil {
			return nil
		}
		var list []Piece
		for i := range m {
			for k := range n {
				q := *t
				q.from, q.to = levels[i], levels[i+1]
				if n > 1 {
					q.w = float64(2*k - 1)
				}
				list = append(list, q.measured(j, piece))
			}
		}
		return list
	})
	for _, end := range [2]struct {
		label words.Text
		z, w  float64
	}{{words.Say("part %s lower end board", t.p.Name), t.lo, -1}, {words.Say("part %s upper end board", t.p.Name), t.hi, 1}} {
		board := Piece{Label: end.label, Part: t.p.Name, Kind: "board", up: solid.Vec{0, 0, -end.w}, Draft: 90, Verdict: parting.Clear}
		e := endBoard{tray: t, z: end.z, way: end.w, j: j}
		e.from, e.to = -e.reach(), e.reach()
		out = append(out, fewest([2]int{mostBoards, 1}, func(m, _ int) []Piece {
			ends := cuts(e.from, e.to, m, e.jointAt)
			if ends == nil {
				return nil
			}
			var list []Piece
			for i := range m {
				q := e
				q.from, q.to = ends[i], ends[i+1]
				list = append(list, q.measured(j, board))
			}
			return list
		})...)
	}
	if !sides {
		return out
	}
	for k, w := range [2]float64{1, -1} {
		s := sideBoard{tray: t, w: w, from: t.lo, to: t.hi}
		s.near, s.far = s.spanUV()
		du, dv := t.along()
		in := t.at(dv, -w*du, 0) // towards the plaster
		board := Piece{Label: words.Say("side board"), Part: t.p.Name, Kind: "board", up: in, Draft: 90, Verdict: parting.Clear,
			Note: words.Say("It serves each side part in turn.")}
		board.number(k + 1)
		out = append(out, fewest([2]int{mostBoards, mostBoards}, func(m, n int) []Piece {
			levels := cuts(s.from, s.to, m, s.jointAt)
			ends := cuts(s.near, s.far, n, func(float64) bool { return true })
			if levels == nil || ends == nil {
				return nil
			}
			var list []Piece
			for i := range m {
				for k := range n {
					q := s
					q.from, q.to, q.near, q.far = levels[i], levels[i+1], ends[k], ends[k+1]
					list = append(list, q.measured(j, board))
				}
			}
			return list
		})...)
	}
	return out
}

// piece is the stretch of the line that this piece of the tray holds.
func (t *tray) piece() []form.Point {
	line := t.line()
	var out []form.Point
	for i, q := range line {
		if i > 0 {
			a := line[i-1]
			for _, z := range [2]float64{t.from, t.to} {
				if (a.Z-z)*(q.Z-z) < 0 {
					out = append(out, form.Point{R: a.Lerp(q, (z-a.Z)/(q.Z-a.Z)).R, Z: z})
				}
			}
		}
		if q.Z >= t.from && q.Z <= t.to {
			out = append(out, q)
		}
	}
	return out
}

// jointAt tells whether the tray can be divided at a height: where the contour
// passes it once, clear of corners and of natches in the seams.
func (t *tray) jointAt(z float64) bool {
	passes := 0
	line := t.line()
	for i, q := range line {
		if math.Abs(q.Z-z) < 1e-3 {
			return false
		}
		if i > 0 && (line[i-1].Z > z) != (q.Z > z) {
			passes++
		}
	}
	for _, n := range t.p.Natches {
		if (n.Seam == mold.Start || n.Seam == mold.End) && math.Abs(n.At.Z-z) < n.Radius+jointRoom {
			return false
		}
	}
	return passes == 1 && z > t.lo+jointRoom && z < t.hi-jointRoom
}

// endKeys are the keys in the joint at a height, in (u, v).
func (t *tray) endKeys(z float64, out bool) []key {
	r := 0.0
	line := t.line()
	for i := 1; i < len(line); i++ {
		if a, c := line[i-1], line[i]; (a.Z > z) != (c.Z > z) {
			r = a.Lerp(c, (z-a.Z)/(c.Z-a.Z)).R
		}
	}
	var list []key
	u, v := t.edge()
	foot, ground := t.side()
	for _, w := range [2]float64{-1, 1} {
		if t.w == -w {
			continue
		}
		loop := []form.Point{{R: ground[0], Z: 0}, {R: ground[0], Z: w * ground[1]}, {R: foot[0], Z: w * foot[1]}, {R: u, Z: w * v}}
		for d := t.half; d >= 0; d -= 5 {
			sin, cos := solid.SinCosDeg(d)
			g, _ := t.md.Section.At((t.mid + w*d) * math.Pi / 180)
			loop = append(loop, form.Point{R: r * g * cos, Z: w * r * g * sin})
		}
		at, room := roomiest(loop, nil)
		// coarse steps of the pot's arc, and the socket of a joint in the middle
		if k := keyRadius(math.Min(room-0.1-0.004*r, math.Abs(at.Z)-keyMost), t.clear); k > 0 {
			list = append(list, key{at: [2]float64{at.R, at.Z}, radius: k, out: out})
		}
	}
	return list
}

// middleKeys are the keys in the joint along the middle, in (u, z).
func (t *tray) middleKeys() []key {
	g, _ := t.md.Section.At(t.mid * math.Pi / 180)
	_, ground := t.side()
	loop := []form.Point{{R: ground[0], Z: t.to}, {R: ground[0], Z: t.from}}
	for _, q := range t.piece() {
		loop = append(loop, form.Point{R: q.R * g, Z: q.Z})
	}
	list := keysIn(loop, t.clear)
	for i := range list {
		list[i].out = t.w < 0
	}
	return list
}

// measured is this piece of the tray with its size and weight.
func (t *tray) measured(j *job.Job, p Piece) Piece {
	p.build = t.build
	most := 0.0
	for _, q := range t.piece() {
		most = math.Max(most, q.R)
	}
	foot, ground := t.side()
	u, v := t.edge()
	wide := math.Max(v, math.Max(foot[1], ground[1]))
	left, right, top := -wide, wide, t.to
	if t.w > 0 {
		left = 0
	} else if t.w < 0 {
		right = 0
		for _, k := range t.middleKeys() {
			right = math.Max(right, k.radius)
		}
	}
	if t.to < t.hi {
		for _, k := range t.endKeys(t.to, true) {
			top = math.Max(top, t.to+k.radius)
		}
	}
	if t.w != 0 || t.from > t.lo || t.to < t.hi {
		p.Overhang = math.Max(p.Overhang, 45) // of the keys
	}
	if _, ok := t.flankSign(1); ok {
		p.Overhang = math.Max(p.Overhang, 45)
	}
	// as printed, -z of the mold lies along x
	box := [][2]float64{{-top, left}, {-t.from, left}, {-t.from, right}, {-top, right}}
	p.measure(j, box, math.Max(u, most*t.reachAlong())-t.floor(), t.volume())
	return p
}

// reachAlong is how far along the pull the pot of radius 1 reaches.
func (t *tray) reachAlong() float64 {
	most := 0.0
	for d := -t.half; d <= t.half; d++ {
		if t.w*d < 0 {
			continue
		}
		_, cos := solid.SinCosDeg(d)
		g, _ := t.md.Section.At((t.mid + d) * math.Pi / 180)
		most = math.Max(most, g*cos)
	}
	return most
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

// boardKeys are the keys across the edge of a board between two places along it.
func boardKeys(from, to, half, clearance float64, out bool) []key {
	r := keyRadius(half, clearance)
	if r == 0 {
		return nil
	}
	var list []key
	for _, share := range [2]float64{0.2, 0.75} {
		list = append(list, key{at: [2]float64{from + share*(to-from), half}, radius: r, out: out})
	}
	return list
}

// measured is this piece of the board with its size and weight.
func (e *endBoard) measured(j *job.Job, p Piece) Piece {
	p.build = e.build
	sin, cos := solid.SinCosDeg(e.mid)
	f, top, end := e.floor(), e.back(), e.to
	for _, k := range e.keys(e.to) {
		end = math.Max(end, e.to+k.radius)
		p.Overhang = 45
	}
	if len(e.keys(e.from)) > 0 {
		p.Overhang = 45
	}
	corners := [][2]float64{{f, e.from}, {top, e.from}, {top, end}, {f, end}}
	for i, c := range corners { // from the part's frame to the bed's
		x, y := c[0]*cos-c[1]*sin, c[0]*sin+c[1]*cos
		corners[i] = [2]float64{x, -e.way * y}
	}
	ledges := 0.0
	for _, l := range e.held(e.ledges()) {
		ledges += loopArea(l[0]) * ledge
	}
	p.measure(j, corners, e.thick()+e.proud(), ((top-f)*(e.to-e.from)*e.thick()+ledges)/1000)
	return p
}

// jointAt tells whether the board can be divided at a height: clear of its ribs.
func (s *sideBoard) jointAt(z float64) bool {
	ribs := s.ribs()
	for i := 0; i+3 < len(ribs); i += 4 {
		if z > ribs[i][1]-jointRoom && z < ribs[i+3][1]+jointRoom {
			return false
		}
	}
	return true
}

// levelKeys are the keys in a level joint, in (along, d).
func (s *sideBoard) levelKeys(out bool) []key {
	return boardKeys(s.near, s.far, boardWall/2, s.clear, out)
}

// endKeys are the keys in a joint across the face, in (d, z); none at the
// board's own ends.
func (s *sideBoard) endKeys(at float64) []key {
	if near, far := s.spanUV(); at == near || at == far {
		return nil
	}
	list := boardKeys(s.from, s.to, boardWall/2, s.clear, at == s.far)
	for i, k := range list {
		list[i].at = [2]float64{k.at[1], k.at[0]}
	}
	return list
}

// measured is this piece of the board with its size and weight.
func (s *sideBoard) measured(j *job.Job, p Piece) Piece {
	p.build = s.build
	sec := s.section()
	deep := boardWall
	for _, q := range sec {
		deep = math.Max(deep, boardWall-q[0])
	}
	l, h := s.far-s.near, s.to-s.from
	ml := math.Abs(loopArea(sec)) * l / 1000
	if s.to < s.hi {
		for _, k := range s.levelKeys(true) {
			h = math.Max(h, s.to-s.from+k.radius)
		}
	}
	if keys := s.endKeys(s.far); len(keys) > 0 {
		l += keys[0].radius
	}
	p.measure(j, [][2]float64{{0, 0}, {h, 0}, {h, l}, {0, l}}, deep, ml)
	p.Overhang = 0
	if s.from > s.lo || s.to < s.hi || len(s.endKeys(s.near))+len(s.endKeys(s.far)) > 0 {
		p.Overhang = 45
	}
	return p
}
