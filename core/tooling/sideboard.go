package tooling

// The boards that lie against a tray's flanks and form the half-faces of the
// block beside the seams, with the ribs of the strap grooves. They serve every
// side part in turn.

import (
	"math"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

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
