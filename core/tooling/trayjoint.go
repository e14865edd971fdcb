package tooling

// Where the pieces of a divided tray meet: level joints across its length and
// one along its middle, clear of natches and of corners of the contour, keyed.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

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
	return passes == 1 && t.md.CutLevel(z) && z > t.lo+jointRoom && z < t.hi-jointRoom
}

// endKeys are the keys in the joint at a height, in (u, v); none at the tray's own
// ends.
func (t *tray) endKeys(z float64) []key {
	if z == t.lo || z == t.hi {
		return nil
	}
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
			list = append(list, key{at: [2]float64{at.R, at.Z}, radius: k, out: z == t.to})
		}
	}
	return t.whole.sunk(list, t.clear, solid.Vec{0, 0, 1}, func(x, y float64) solid.Vec { return t.at(x, y, z) })
}

// middleKeys are the keys in the joint along the middle, in (u, z); none where it
// is not cut.
func (t *tray) middleKeys() []key {
	if t.w == 0 {
		return nil
	}
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
	return t.whole.sunk(list, t.clear, t.at(0, 1, 0), func(x, y float64) solid.Vec { return t.at(x, 0, y) })
}
