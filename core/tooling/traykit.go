package tooling

// The kit of a side part: its tray and boards, whole where they fit the bed, else
// divided. A tray is divided across its length, and along its middle; an end
// board across its width and its depth; a side board across its length and its height. Joints
// keep clear of natches, ribs, ledges and letters, and are keyed.

import (
	"math"
	"slices"

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

// boardRoom is that of a joint of an end board, whose keys are small.
const boardRoom = 3.0

// fewest is the print whole where it fits, else in the fewest pieces that fit:
// split gives it in so many slices one way and the other, or nil.
func fewest(most [2]int, split func(m, n int) []Piece) []Piece {
	whole := split(1, 1)
	whole[0].unkeyed = false // it has no joints
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
				if w[0] > 1 && w[1] > 1 {
					list[i].Note = noted(list[i].Note, rowsFirst())
				}
			}
			return list
		}
	}
	return whole
}

// hewn is the tray as it is divided, or by planes where that does not fit or takes
// more pieces.
func (t *tray) hewn(j *job.Job, p Piece, list []Piece) []Piece {
	if list[0].FitsBed && len(list) <= leastHewn {
		return list
	}
	d := &hewn{j: j, md: t.md, p: p, axes: [3]solid.Vec{{0, 0, 1}, t.at(0, -1, 0), p.up}}
	d.bare, d.whole = t.whole.build, d.extent(t.corners())
	d.marked = func(tree *split, so *mold.Solids) (*solid.Mesh, error) { return t.markClear(tree).build(so) }
	sin, cos := solid.SinCosDeg(t.half)
	for _, n := range t.p.Natches {
		for k, seam := range [2]mold.Seam{mold.Start, mold.End} {
			if w := float64(2*k - 1); n.Seam == seam {
				d.avoid = append(d.avoid, d.extent(around(t.at(n.At.R*cos, w*n.At.R*sin, n.At.Z), n.Radius)))
			}
		}
	}
	return d.better(list)
}

// around are corners of a box about a natch, with some room.
func around(at solid.Vec, radius float64) (out []solid.Vec) {
	radius++
	for i := range 8 {
		p := at
		for k := range 3 {
			p[k] += radius * float64(2*(i>>k&1)-1)
		}
		out = append(out, p)
	}
	return out
}

// markClear is the tray with its mark at the place on the flanks nearest to their
// middle that keeps clear of the cuts, or without one where there is none.
func (t *tray) markClear(tree *split) *tray {
	foot, ground := t.side()
	out := *t
	ends := append(tree.places(0), t.from, t.to)
	slices.Sort(ends)
	off := func(x float64) float64 { return math.Abs(x - (t.from+t.to)/2) }
	across, found := 0.0, false
	for i := range ends[1:] {
		mid := (ends[i] + ends[i+1]) / 2
		if ends[i+1]-ends[i] >= t.wide+2*markRoom && (!found || off(mid) < off(across)) {
			across, found = mid, true
		}
	}
	out.markAt = across - (t.from+t.to)/2
	most := (foot[0] - ground[0] - bandLeast) / 2 // as far as it may be moved
	for d := 0.0; found && d <= most; d++ {
		for _, o := range [2]float64{d, -d} {
			mid := (foot[0]+ground[0])/2 + o
			if !slices.ContainsFunc(tree.places(2), func(u float64) bool { return math.Abs(u-mid) < markHigh/2+2*markRaised+1 }) {
				out.markOff = o
				return &out
			}
		}
	}
	out.unmarked = true
	return &out
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
		Draft: math.Min(t.p.MinDraft, t.half), Verdict: t.p.Verdict, Note: t.openBack()}
	split := func(m, n int) (list []*tray) {
		levels := cuts(t.lo, t.hi, m, t.jointAt)
		if levels == nil || n > 1 && !t.md.CutUpright(t.mid) {
			return nil
		}
		for i := range m {
			for k := range n {
				q := *t
				q.from, q.to = levels[i], levels[i+1]
				if n > 1 {
					q.w = float64(2*k - 1)
				}
				list = append(list, &q)
			}
		}
		return list
	}
	bare := *t
	bare.unmarked = true
	t.whole = &uncut{so: t.md.Solids(), build: bare.build}
	out := fewest([2]int{mostBoards, 2}, func(m, n int) (list []Piece) {
		for _, q := range split(m, n) {
			list = append(list, q.measured(j, piece))
		}
		return list
	})
	out = t.hewn(j, piece, out)
	for _, end := range [2]struct {
		label words.Text
		z, w  float64
	}{{words.Say("part %s lower end board", t.p.Name), t.lo, -1}, {words.Say("part %s upper end board", t.p.Name), t.hi, 1}} {
		board := Piece{Label: end.label, Part: t.p.Name, Kind: "board", up: solid.Vec{0, 0, -end.w}, Draft: 90, Verdict: parting.Clear}
		e := endBoard{tray: t, z: end.z, way: end.w, j: j}
		e.from, e.to, e.near, e.far = -e.reach(), e.reach(), t.floor(), t.back()
		e.whole = &uncut{so: t.md.Solids(), build: e.build}
		list := fewest([2]int{mostBoards, mostBoards}, func(n, m int) []Piece {
			across, along := cuts(e.from, e.to, m, e.jointAt), cuts(e.near, e.far, n, e.jointAlong)
			if across == nil || along == nil {
				return nil
			}
			var list []Piece
			for i := range m {
				for k := range n {
					q := e
					q.from, q.to, q.near, q.far = across[i], across[i+1], along[k], along[k+1]
					list = append(list, q.measured(j, board))
				}
			}
			return list
		})
		board.build = e.whole.build
		out = append(out, orHewn(j, t.md, list, board, piece.up, e.corners, e.clears)...)
	}
	if !sides {
		return out
	}
	for k, w := range [2]float64{1, -1} {
		s := sideBoard{tray: t, w: w, from: t.lo, to: t.hi}
		s.near, s.far = s.spanUV()
		s.whole = &uncut{so: t.md.Solids(), build: s.build}
		du, dv := t.along()
		in := t.at(dv, -w*du, 0) // towards the plaster
		board := Piece{Label: words.Say("side board"), Part: t.p.Name, Kind: "board", up: in, Draft: 90, Verdict: parting.Clear,
			Note: words.Say("It serves each side part in turn.")}
		board.number(k + 1)
		list := fewest([2]int{mostBoards, mostBoards}, func(m, n int) []Piece {
			levels := cuts(s.from, s.to, m, s.jointAt)
			ends := cuts(s.near, s.far, n, s.jointAlong)
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
		})
		board.build = s.whole.build
		out = append(out, orHewn(j, t.md, list, board, solid.Vec{0, 0, 1}, s.corners, s.clears)...)
	}
	return out
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

func loopArea(l [][2]float64) float64 {
	a := 0.0
	for i := range l {
		k := i + 1
		if k == len(l) {
			k = 0
		}
		a += l[i][0]*l[k][1] - l[i][1]*l[k][0]
	}
	return a / 2
}
