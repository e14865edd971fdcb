package tooling

// The boards that lie against a tray's flanks and form the half-faces of the
// block beside the seams: with ribs for the strap grooves, bevels at free ends,
// and at the far end the bevel of the block's upright edge, which shows how high
// the back is filled. Its inside is the outside of the block itself, laid out row
// by row, so that it leaves the plaster square to the face. The boards serve every
// side part in turn.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// overBack is how far along the face a side board reaches beyond the back, mm:
// room for its mark.
const overBack = markHigh + 2*markRoom

// sideBoard is the flat board against the half-face beside the seam on the side
// of +v (w = 1) or -v.
type sideBoard struct {
	*tray
	w         float64
	from, to  float64 // heights of this piece
	near, far float64 // its ends along the face, from the seam's edge
	whole     *uncut
}

// place is a point in the mold: along the face from the seam's edge, d outward.
func (s *sideBoard) place(along, d, z float64) solid.Vec {
	u, v := s.edge()
	du, dv := s.along()
	return s.at(u+along*du-d*dv, s.w*(v+along*dv+d*du), z)
}

// way is a direction in the mold.
func (s *sideBoard) way(along, d float64) solid.Vec {
	du, dv := s.along()
	return s.at(along*du-d*dv, s.w*(along*dv+d*du), 0)
}

// spanUV is the board's reach along the face, from the seam's edge.
func (s *sideBoard) spanUV() (from, to float64) {
	u, _ := s.edge()
	du, _ := s.along()
	foot, _ := s.side()
	return -(u - foot[0]) / du, s.bevelled(s.md.Block.R)[1][0] + overBack
}

// bevelled are the ends of the bevel on the block's upright edge, on the
// half-face and on the back, where they lie r from the axis; in (along, d).
func (s *sideBoard) bevelled(r float64) [2][2]float64 {
	u, v := s.edge()
	du, dv := s.along()
	wide := r * s.md.Block.FlatEnd()
	x, y := r-u, wide-v
	return [2][2]float64{{wide, r - s.md.Block.R}, {x*du + y*dv, y*du - x*dv}}
}

// rows are the heights of this piece at which its inside bends, and how far from
// the axis it lies there, ends included, upward.
func (s *sideBoard) rows() (rows []form.Point) {
	var line []form.Point
	for _, q := range s.p.Outline[s.p.Pot+1:] {
		if q.R > 0 {
			line = append(line, q)
		}
	}
	for i, q := range line {
		if q.Z >= s.from && q.Z <= s.to {
			rows = append(rows, q)
		} else if i > 0 && line[i-1].Z < s.from && q.Z > s.to { // between two joints
			return []form.Point{{R: q.R, Z: s.from}, {R: q.R, Z: s.to}}
		}
	}
	if rows[0].Z > s.from {
		rows = append([]form.Point{{R: rows[0].R, Z: s.from}}, rows...)
	}
	if n := len(rows); rows[n-1].Z < s.to {
		rows = append(rows, form.Point{R: rows[n-1].R, Z: s.to})
	}
	return rows
}

// lap is how far beyond the seam's edge the ribs and bevels begin: clear of the
// tray.
func (s *sideBoard) lap() float64 { return s.clear }

// across is the inside of the piece, r from the axis, from its near end to its
// far one; in (along, d).
func (s *sideBoard) across(r float64) [][2]float64 {
	d := r - s.md.Block.R
	out := make([][2]float64, 0, 8) // nearly always enough, for the back as well
	if s.near < s.lap() {
		out = append(out, [2]float64{s.near, 0}, [2]float64{s.lap(), 0})
		if d < 0 {
			out = append(out, [2]float64{s.lap(), d})
		}
	} else {
		out = append(out, [2]float64{s.near, d})
	}
	if _, far := s.spanUV(); s.far < far {
		return append(out, [2]float64{s.far, d})
	}
	b := s.bevelled(r)
	return append(out, b[0], b[1], [2]float64{s.far, b[1][1]})
}

// build makes the board, or a piece of it, in the mold's frame.
func (s *sideBoard) build(so *mold.Solids) (*solid.Mesh, error) {
	f := &facer{Builder: solid.NewBuilder(so.Place, solid.FullTurn(so.Turn.Steps()))}
	rows := s.rows()
	lines := make([]solid.Loop, len(rows)) // from where ribs begin
	var edge solid.Loop                    // where they begin, in the plane of the flank
	var foot []int                         // of the rows whose ends stand in edge
	flat := s.near < s.lap()
	var near [2]int32
	n := len(rows) - 1
	for i, q := range rows {
		var l solid.Loop
		for _, p := range s.across(q.R) {
			l = append(l, f.vertex(s.place(p[0], p[1], q.Z)))
		}
		if flat {
			if i == 0 {
				near[0] = l[0]
			}
			if i == n {
				near[1] = l[0]
			}
			l = l[1:]
			level := q.R == s.md.Block.R
			if level || i == 0 || i == n {
				edge, foot = append(edge, l[0]), append(foot, i)
			}
			if !level {
				l = l[1:]
			}
		}
		lines[i] = l
	}
	in := s.way(0, -1)
	mark, row, marked := s.mark()
	for i := range n {
		a, c := lines[i], lines[i+1]
		for k := 1; k < len(a); k++ {
			var holes []solid.Loop
			if marked && i == row && k == len(a)-1 {
				holes = mark.raise(f.Builder)
			}
			f.face(in, solid.Loop{a[k-1], a[k], c[k], c[k-1]}, holes...)
		}
	}
	corner := func(along, z float64) int32 { return f.vertex(s.place(along, boardWall, z)) }
	back := [2][2]int32{{corner(s.near, s.from), corner(s.far, s.from)}, {corner(s.near, s.to), corner(s.far, s.to)}}
	f.face(s.way(0, 1), solid.Loop{back[0][0], back[0][1], back[1][1], back[1][0]})
	close := solid.Loop{back[1][0], back[0][0]}
	if flat {
		f.face(in, append(append(solid.Loop{near[0]}, edge...), near[1]))
		for i := 1; i < len(edge); i++ { // ends of ribs
			end := solid.Loop{edge[i-1]}
			for k := foot[i-1]; k <= foot[i]; k++ {
				if v := lines[k][0]; v != edge[i-1] && v != edge[i] {
					end = append(end, v)
				}
			}
			if end = append(end, edge[i]); len(end) > 2 {
				f.face(s.way(-1, 0), end)
			}
		}
		close = append(close, near[0], near[1])
	} else {
		for _, l := range lines {
			close = append(close, l[0])
		}
	}
	at := func(along float64) func(x, y float64) solid.Vec {
		return func(x, y float64) solid.Vec { return s.place(along, x, y) }
	}
	f.keyed(s.way(-1, 0), close, s.endKeys(s.near), s.clear, at(s.near))
	close = solid.Loop{back[1][1], back[0][1]}
	for _, l := range lines {
		close = append(close, l[len(l)-1])
	}
	f.keyed(s.way(1, 0), close, s.endKeys(s.far), s.clear, at(s.far))
	for k, i := range [2]int{0, n} {
		z := rows[i].Z
		var loop solid.Loop
		if flat {
			loop = solid.Loop{near[k]}
			if e := edge[k*(len(edge)-1)]; e != lines[i][0] {
				loop = append(loop, e)
			}
		}
		loop = append(append(loop, lines[i]...), back[k][1], back[k][0])
		keys := s.levelKeys(z)
		f.keyed(solid.Vec{0, 0, float64(2*k - 1)}, loop, keys, s.clear, func(x, y float64) solid.Vec { return s.place(x, y, z) })
	}
	return f.Done()
}

// jointAt tells whether the board can be divided at a height: clear of its ribs
// and bevels.
func (s *sideBoard) jointAt(z float64) bool {
	whole := *s
	whole.from, whole.to = s.lo, s.hi
	rows := whole.rows()
	for i, q := range rows {
		bent := q.R < s.md.Block.R || i > 0 && rows[i-1].R < s.md.Block.R
		if i > 0 && bent && z > rows[i-1].Z-jointRoom && z < q.Z+jointRoom {
			return false
		}
	}
	return true
}

// jointAlong tells whether the board can be divided at a place along the face:
// clear of where ribs begin and of the bevel.
func (s *sideBoard) jointAlong(x float64) bool {
	least := s.md.Block.R
	for _, q := range s.rows() {
		least = math.Min(least, q.R)
	}
	return math.Abs(x-s.lap()) > jointRoom && x < s.bevelled(least)[0][0]-1
}

// mark is the piece's mark on its strip beyond the back, above the longest even
// row, where it has room: the letters of the side parts that the board serves,
// its number and the way of their pull, or without the letters.
func (s *sideBoard) mark() (m sign, row int, ok bool) {
	_, far := s.spanUV()
	if s.far < far {
		return m, 0, false
	}
	rows := s.rows()
	long := 0.0
	for i, q := range rows[1:] {
		if a := rows[i]; a.R == s.md.Block.R && q.R == a.R && q.Z-a.Z > long {
			long, row = q.Z-a.Z, i
		}
	}
	text := "1^"
	if s.w < 0 {
		text = "2^"
	}
	letters := ""
	for i := range s.md.Parts {
		if p := &s.md.Parts[i]; p.Sector != nil {
			letters += mold.Letter(p.Name)
		}
	}
	for _, line := range [2]string{letters + text, text} {
		list, wide := lettering(line)
		if wide+2*markRoom > long {
			continue
		}
		end := s.bevelled(s.md.Block.R)[1]
		m = sign{list: list, o: s.place((end[0]+far)/2, end[1], rows[row].Z+long/2), y: s.way(1, 0), n: s.way(0, -1)}
		m.x = crossed(m.y, m.n)
		return m, row, true
	}
	return m, 0, false
}

// clears are the corners of what cuts keep clear of.
func (s *sideBoard) clears() [][]solid.Vec {
	if mark, _, ok := s.mark(); ok {
		return [][]solid.Vec{mark.corners(nil)}
	}
	return nil
}

// levelKeys are the keys in the level joint at a height, in (along, d); none at the
// board's own ends.
func (s *sideBoard) levelKeys(z float64) []key {
	if z == s.lo || z == s.hi {
		return nil
	}
	return s.whole.sunk(boardKeys(s.near, s.far, boardWall/2, s.clear, z == s.to), s.clear, solid.Vec{0, 0, 1},
		func(x, y float64) solid.Vec { return s.place(x, y, z) })
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
	return s.whole.sunk(list, s.clear, s.way(1, 0), func(x, y float64) solid.Vec { return s.place(at, x, y) })
}

// corners are those of this piece of the board that may lie outermost.
func (s *sideBoard) corners() []solid.Vec {
	rows := s.rows()
	out := make([]solid.Vec, 0, 8*len(rows)+80) // nearly always enough
	var section [][2]float64
	for i, q := range rows {
		if i == 0 || q.R != rows[i-1].R {
			section = s.section(q.R)
		}
		for _, c := range section {
			out = append(out, s.place(c[0], c[1], q.Z))
		}
	}
	for _, k := range s.levelKeys(s.to) {
		out = append(out, s.place(k.at[0], k.at[1], s.to+k.radius))
	}
	for _, k := range s.endKeys(s.far) {
		out = append(out, s.place(s.far+k.radius, k.at[0], k.at[1]))
	}
	if mark, _, ok := s.mark(); ok {
		out = mark.corners(out)
	}
	return out
}

// section is the board's outline in plan where its face stands at r.
func (s *sideBoard) section(r float64) [][2]float64 {
	return append(s.across(r), [2]float64{s.far, boardWall}, [2]float64{s.near, boardWall})
}

// measured is this piece of the board with its size and weight.
func (s *sideBoard) measured(j *job.Job, p Piece) Piece {
	p.build = s.build
	mm3, area := 0.0, 0.0
	rows := s.rows()
	for i, q := range rows {
		last := area
		if i == 0 || q.R != rows[i-1].R {
			area = math.Abs(loopArea(s.section(q.R)))
		}
		if i > 0 {
			mm3 += (last + area) / 2 * (q.Z - rows[i-1].Z)
		}
	}
	p.measure(j, s.corners(), mm3/1000)
	p.unkeyed = len(s.levelKeys(s.from))+len(s.levelKeys(s.to))+len(s.endKeys(s.near))+len(s.endKeys(s.far)) == 0
	if !p.unkeyed {
		p.Overhang = keyOverhang
	}
	return p
}
