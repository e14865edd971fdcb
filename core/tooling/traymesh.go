package tooling

// The mesh of a tray: the pot's surface in rows of the mold's azimuths, so that
// tray and plaster share their chords, and planar faces for the rest.

import (
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// build makes the tray, or a piece of it, in the mold's frame.
func (t *tray) build(so *mold.Solids) (*solid.Mesh, error) {
	first, last := t.steps(so)
	b := solid.NewBuilder(so.Place, solid.Span{Steps: so.Turn.Steps(), From: first, To: last})
	// the pot's surface, along the contour
	var rings []solid.Loop
	line := t.piece()
	room := (len(line) + 1) * (last - first + 1)
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
		keys := t.endKeys(heights[k])
		open, holes := keyHoles(b, keys, t.clear, solid.Vec{0, 0, way}, func(x, y float64) solid.Vec { return t.at(x, y, heights[k]) })
		b.Face(solid.Vec{0, 0, way}, l, holes...)
		closeKeys(b, open, keys)
	}
	return b.Done()
}

// flankSign is the tray's mark on its lower flank on the side of w, where that is
// high enough: upright as the tray is printed, the arrow along the pull.
func (t *tray) flankSign(w float64) (sign, bool) {
	foot, ground := t.side()
	if t.unmarked || foot[0]-ground[0] < bandLeast || t.to-t.from < t.wide+2*markRoom {
		return sign{}, false
	}
	o, up, out := t.at((foot[0]+ground[0])/2+t.markOff, w*foot[1], (t.from+t.to)/2+t.markAt), t.at(1, 0, 0), t.at(0, w, 0)
	return sign{list: t.glyphs, o: o, x: crossed(up, out), y: up, n: out, lean: 1}, true
}

// steps is the stretch of the azimuth table that this piece of the tray goes
// over.
func (t *tray) steps(so *mold.Solids) (first, last int) {
	from, to := t.p.Sector[0], t.p.Sector[1]
	if t.w > 0 {
		from = t.mid
	} else if t.w < 0 {
		to = t.mid
	}
	return so.Turn.Step(from), so.Turn.Step(to)
}

// natchesOn are those in this piece's seam face on the side of w.
func (t *tray) natchesOn(w float64) (list []mold.Natch) {
	seam := mold.Start
	if w > 0 {
		seam = mold.End
	}
	for _, n := range t.p.Natches {
		if n.Seam == seam && n.At.Z > t.from && n.At.Z < t.to {
			list = append(list, n)
		}
	}
	return list
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
	side := solid.Far
	if s == 1 {
		side = solid.Near
	}
	list := t.natchesOn(float64(2*s - 1))
	var circles []solid.Circle
	for _, n := range list {
		circles = append(circles, mold.UprightCircle(n))
	}
	mold.CloseCast(b, b.End(side, loops, circles...), list)
}
