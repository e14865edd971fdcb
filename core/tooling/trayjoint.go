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
	deep := func(k key) bool { return t.deepLevel(k, z) }
	return t.whole.sunkOr(deep, list, t.clear, solid.Vec{0, 0, 1}, func(x, y float64) solid.Vec { return t.at(x, y, z) })
}

// middleKeys are the keys in the joint along the middle, in (u, z); none where it
// is not cut.
func (t *tray) middleKeys() []key {
	if t.w == 0 {
		return nil
	}
	// what a key and the wall beyond its tip have room in: they stand off the middle
	piece := t.piece()
	least := math.Inf(1)
	for _, q := range piece {
		least = math.Min(least, q.R)
	}
	long := keyMost + 2*spareOf(t.clear)
	beside := t.half
	if long < least {
		beside = math.Min(beside, math.Asin(long/least)*180/math.Pi)
	}
	g := 1.0
	for d := -beside; d <= beside; d += 0.5 {
		here, _ := t.md.Section.At((t.mid + d) * math.Pi / 180)
		g = math.Min(g, here)
	}
	_, ground := t.side()
	loop := []form.Point{{R: ground[0], Z: t.to}, {R: ground[0], Z: t.from}}
	for _, q := range piece {
		loop = append(loop, form.Point{R: math.Sqrt(math.Max(0, q.R*q.R*g*g-long*long)), Z: q.Z})
	}
	list := keysIn(loop, t.clear)
	for i := range list {
		list[i].out = t.w < 0
	}
	return t.whole.sunkOr(t.deepMiddle, list, t.clear, t.at(0, 1, 0), func(x, y float64) solid.Vec { return t.at(x, 0, y) })
}

// deepLevel and deepMiddle tell whether the tube about a key in a level joint, or in
// the one along the middle, surely lies in the matter of the whole tray.
func (t *tray) deepLevel(k key, z float64) bool {
	at, spare := form.Point{R: k.at[0], Z: k.at[1]}, spareOf(t.clear)
	return t.deep(at, at, k.radius+spare+offMesh, z-keyFoot, z+k.radius+2*spare)
}

func (t *tray) deepMiddle(k key) bool {
	spare := spareOf(t.clear)
	from, to := form.Point{R: k.at[0], Z: -keyFoot}, form.Point{R: k.at[0], Z: k.radius + 2*spare}
	wide := k.radius + spare + offMesh
	for _, share := range [3][2]float64{{1, 0.5}, {0.87, 0.87}, {0.5, 1}} { // rectangles about the disc
		if !t.deep(from, to, share[0]*wide, k.at[1]-share[1]*wide, k.at[1]+share[1]*wide) {
			return false
		}
	}
	return true
}

// deep tells whether what sweeps discs along a line in plan, in (u, v), between two
// heights surely lies in the matter of the whole tray, by its outline in plan there: so
// no mesh need be made to know it of a tube about a key.
func (t *tray) deep(from, to form.Point, wide, lo, hi float64) bool {
	const step = 0.5 // degrees, of the pot's arc; of flutes even it lies off by less than offMesh
	lo, hi = lo-offMesh, hi+offMesh
	if lo < t.lo || hi > t.hi || t.md.Dimpled() {
		return false
	}
	r := math.Inf(1)
	line := t.line()
	for i, q := range line {
		if q.Z >= lo && q.Z <= hi {
			r = math.Min(r, q.R)
		}
		for _, z := range [2]float64{lo, hi} {
			if i > 0 && (line[i-1].Z > z) != (q.Z > z) {
				r = math.Min(r, line[i-1].Lerp(q, (z-line[i-1].Z)/(q.Z-line[i-1].Z)).R)
			}
		}
	}
	if math.IsInf(r, 1) {
		return false
	}
	sin, cos := solid.SinCosDeg(t.half)
	for _, n := range t.p.Natches {
		if n.Seam != mold.Start && n.Seam != mold.End || n.At.Z+n.Radius < lo || n.At.Z-n.Radius > hi {
			continue
		}
		w := 1.0
		if n.Seam == mold.Start {
			w = -1
		}
		if p := (form.Point{R: n.At.R * cos, Z: w * n.At.R * sin}); math.Min(p.Dist(from), p.Dist(to)) < n.Radius+wide+from.Dist(to)/2 {
			return false
		}
	}
	u, v := t.edge()
	foot, ground := t.side()
	loop := []form.Point{{R: ground[0], Z: ground[1]}, {R: foot[0], Z: foot[1]}, {R: u, Z: v}}
	n := math.Ceil(2 * t.half / step)
	for i := range int(n) + 1 {
		d := t.half - 2*t.half*float64(i)/n
		sin, cos := solid.SinCosDeg(d)
		g, _ := t.md.Section.At((t.mid + d) * math.Pi / 180)
		loop = append(loop, form.Point{R: r * g * cos, Z: r * g * sin})
	}
	loop = append(loop, form.Point{R: u, Z: -v}, form.Point{R: foot[0], Z: -foot[1]}, form.Point{R: ground[0], Z: -ground[1]})
	return swept(loop, from, to, wide, 0.25)
}
