package tooling

// Keys of the joints between the pieces that a print is divided into: cones
// and their sockets, larger by the clearance all over. A cone as high as its
// radius leans 45 degrees, so that it prints without supports whichever way the
// joint looks.

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/solid"
)

// Measures of keys, mm; common practice, no source: two lines of a 0.4 mm
// nozzle are left around a socket, and a smaller cone is not worth printing.
const (
	keyMost  = 6.0
	keyLeast = 0.6
	keyWall  = 0.8
	keySteps = 24
)

// key is one cone, or the socket of one, in the coordinates of its face.
type key struct {
	at     [2]float64
	radius float64 // of the cone
	out    bool    // it is the cone
}

// keyRadius is the radius of the cone whose socket has so much room around its
// middle, or 0 where there is too little.
func keyRadius(room, clearance float64) float64 {
	r := math.Min(keyMost, room-keyWall-clearance*math.Sqrt2)
	if r < keyLeast {
		return 0
	}
	return r
}

// wide is the radius in the face: a socket lies the clearance away from its
// cone, measured across the slope.
func (k key) wide(clearance float64) float64 {
	if k.out {
		return k.radius
	}
	return k.radius + clearance*math.Sqrt2
}

// circles are the holes that keys need in their face.
func circles(keys []key, clearance float64) []solid.Circle {
	out := make([]solid.Circle, len(keys))
	for i, k := range keys {
		out[i] = solid.Circle{At: k.at, RadiusMM: k.wide(clearance), Steps: keySteps}
	}
	return out
}

func closeKeys(b *solid.Builder, holes []solid.Hole, keys []key) {
	for i, h := range holes {
		if keys[i].out {
			b.Cone(h, h.RadiusMM)
		} else {
			b.Cone(h, -h.RadiusMM)
		}
	}
}

// keyHoles makes the holes of keys in a face that is laid with Face: place gives
// a point of the face's coordinates. open are the holes, to be closed as keys,
// and loops what the face leaves out.
func keyHoles(b *solid.Builder, keys []key, clearance float64, normal solid.Vec, place func(x, y float64) solid.Vec) (open []solid.Hole, loops []solid.Loop) {
	for _, k := range keys {
		r := k.wide(clearance)
		o, x, y := place(k.at[0], k.at[1]), place(k.at[0]+1, k.at[1]), place(k.at[0], k.at[1]+1)
		var u, v solid.Vec
		for i := range 3 {
			u[i], v[i] = x[i]-o[i], y[i]-o[i]
		}
		way := 1.0 // of the circle, counterclockwise seen from outside
		if normal[0]*(u[1]*v[2]-u[2]*v[1])+normal[1]*(u[2]*v[0]-u[0]*v[2])+normal[2]*(u[0]*v[1]-u[1]*v[0]) < 0 {
			way = -1
		}
		h := solid.Hole{Centre: o, Normal: normal, RadiusMM: r}
		for i := range keySteps {
			sin, cos := solid.SinCosDeg(way * 360 / keySteps * float64(i))
			h.Loop = append(h.Loop, b.Vertex(place(k.at[0]+r*cos, k.at[1]+r*sin)))
		}
		open = append(open, h)
		loops = append(loops, reversed(h.Loop))
	}
	return open, loops
}

// roomiest is the point inside a simple loop that is farthest from its edges,
// up to the room that the largest key takes in a joint of a turned piece, and then
// farthest from the keys that are there, and its distance from the edges: the best
// of a grid, then of finer ones around it.
func roomiest(loop []form.Point, others []key) (best form.Point, room float64) {
	lo, hi := loop[0], loop[0]
	for _, q := range loop {
		lo, hi = form.Point{R: math.Min(lo.R, q.R), Z: math.Min(lo.Z, q.Z)}, form.Point{R: math.Max(hi.R, q.R), Z: math.Max(hi.Z, q.Z)}
	}
	edges := depths{edges: chordsOf(loop)}
	most := math.Inf(-1)
	x0, x1, y0, y1 := lo.R, hi.R, lo.Z, hi.Z
	n := 16
	for range 4 {
		dx, dy := (x1-x0)/float64(n), (y1-y0)/float64(n)
		for i := range n {
			for k := range n {
				p := form.Point{R: x0 + (float64(i)+0.5)*dx, Z: y0 + (float64(k)+0.5)*dy}
				apart, far := math.Inf(1), 0.0
				for _, o := range others {
					apart = math.Min(apart, math.Hypot(p.R-o.at[0], p.Z-o.at[1])-o.radius)
				}
				if len(others) > 0 {
					far = 0.02 * apart
				}
				enough := math.Min(apart/2, keyMost+4*keyWall)
				if enough+far <= most {
					continue // however deep it lies
				}
				d, ok := edges.depth(p, most-far)
				if !ok {
					continue
				}
				if score := math.Min(d, enough) + far; score > most {
					best, room, most = p, math.Min(d, apart/2), score
				}
			}
		}
		x0, x1, y0, y1 = best.R-dx, best.R+dx, best.Z-dy, best.Z+dy
		n = 8
	}
	return best, room
}

// depths tells how deep points lie inside a loop, or inside several with their
// holes.
type depths struct {
	edges []chord
	near  int // an edge that lay near the last point, and so may to the next
}

// chord is an edge of a loop: its start, its way, the height of its end and the
// square of its length.
type chord struct{ r, z, ur, uz, end, long float64 }

func chordsOf(loop []form.Point) []chord {
	out := make([]chord, len(loop))
	a := loop[len(loop)-1]
	for i, c := range loop {
		ur, uz := c.R-a.R, c.Z-a.Z
		out[i] = chord{a.R, a.Z, ur, uz, c.Z, float64(ur*ur) + float64(uz*uz)}
		a = c
	}
	return out
}

// apart is the square of the distance from p.
func (e *chord) apart(p form.Point) float64 {
	vr, vz := p.R-e.r, p.Z-e.z
	if e.long > 0 {
		t := (float64(e.ur*vr) + float64(e.uz*vz)) / e.long
		if t > 1 {
			t = 1
		}
		if t > 0 {
			vr, vz = vr-float64(t*e.ur), vz-float64(t*e.uz)
		}
	}
	return float64(vr*vr) + float64(vz*vz)
}

// depth is the distance of p from the edges, negative outside. It is not ok, and
// not told, where it is clearly less than need.
func (s *depths) depth(p form.Point, need float64) (float64, bool) {
	const clearly = 1e-6 // mm, far more than rounding
	floor := -1.0
	if need > clearly {
		floor = (need - clearly) * (need - clearly)
	}
	if floor > 0 && s.edges[s.near].apart(p) < floor {
		return 0, false
	}
	in, least := false, math.Inf(1) // squared
	for i := range s.edges {
		e := &s.edges[i]
		if d := e.apart(p); d < least {
			if least = d; d < floor {
				s.near = i
				return 0, false
			}
		}
		if (e.z > p.Z) != (e.end > p.Z) && p.R < e.r+(p.Z-e.z)/e.uz*e.ur {
			in = !in
		}
	}
	if !in {
		return -math.Sqrt(least), true
	}
	return math.Sqrt(least), true
}

// keysIn are up to two keys inside a loop: where there is most room, and where
// there is most room well apart from that.
func keysIn(loop []form.Point, clearance float64) []key {
	const coarse = 0.2 // mm
	loop, _ = form.Thin(loop, make([]bool, len(loop)), coarse)
	var out []key
	for range 2 {
		at, room := roomiest(loop, out)
		r := keyRadius(room-coarse, clearance)
		if r == 0 {
			break
		}
		out = append(out, key{at: [2]float64{at.R, at.Z}, radius: r})
	}
	return out
}

// asked is what the joints of a turned piece have been told.
type asked struct {
	held   []held
	clears [][]solid.Vec // of the piece; nil before they are asked for
}

// sunk are the keys of a joint that have sound matter about them.
func (t *turned) sunk(keys []key, normal solid.Vec, place func(x, y float64) solid.Vec) []key {
	return sunk(&t.asked.held, keys, normal, place, func(k key, at solid.Vec) float64 {
		if t.deep(k.radius, at, normal) {
			return k.radius
		}
		return t.allows(k, at, normal, place)
	})
}

// allows is how large the matter about a key lets it be, 0 where that is too small:
// about it the piece is made whole for as far round as matters.
func (t *turned) allows(k key, at, normal solid.Vec, place func(x, y float64) solid.Vec) float64 {
	spare := spareOf(t.clear)
	far, deg := math.Hypot(at[0], at[1]), math.Atan2(at[1], at[0])*180/math.Pi
	part := *t
	part.section = slices.Clone(t.section)
	for i := range part.section {
		part.section[i].edge = plain
	}
	for _, n := range t.natches { // a ball about each holds it
		sin, cos := solid.SinCosDeg(n.Azimuth)
		v := minus(solid.Vec{n.At.R * cos, n.At.R * sin, n.At.Z}, at)
		along := math.Max(-keyFoot, math.Min(k.radius+2*spare, dotted(v, normal)))
		k.radius = math.Min(k.radius, norm(plus(v, normal, -along))-n.Radius-spare)
	}
	part.natches, part.ends, part.from, part.to = nil, [2][]key{}, 0, 360
	if wide := 2 * (k.radius + 2*spare + keyFoot); far > wide {
		half := math.Asin(wide/far)*180/math.Pi + 360/float64(t.md.Solids().Turn.Steps())
		part.from, part.to = 360+deg-half, 360+deg+half // no step of the table lies below 0
	}
	m, err := part.build(t.md.Solids())
	if err != nil {
		return 0
	}
	return tubeAbout(m, normal, place, spare).holds(k, spare)
}

// unkeyed tells whether none of the joints of a piece has a key.
func (t *turned) unkeyed() bool {
	for i, a := range t.section {
		if a.edge == keyEdge && len(t.keysOf(i)) > 0 {
			return false
		}
	}
	return len(t.ends[0])+len(t.ends[1]) == 0
}

// endKeys are the keys in the end of a sector at an azimuth in degrees; their
// sockets stay clear of its other end.
func (t *turned) endKeys(deg float64) []key {
	loop := make([]form.Point, len(t.section))
	for i, q := range t.section {
		loop[i] = form.Point{R: q.R * t.reach(q.shape, deg), Z: q.Z}
	}
	out := keysIn(loop, t.clear)
	if wedge := t.to - t.from; wedge < 90 {
		sin, _ := solid.SinCosDeg(wedge)
		for i := range out {
			out[i].radius = math.Min(out[i].radius, math.Max(keyLeast, sin*out[i].at[0]/2-keyWall))
		}
	}
	sin, cos := solid.SinCosDeg(deg)
	return t.sunk(out, solid.Vec{sin, -cos, 0}, func(x, y float64) solid.Vec { return solid.Vec{x * cos, x * sin, y} })
}

// key places the keys in the ends of a sector.
func (t *turned) key() {
	t.ends = [2][]key{t.endKeys(t.from), t.endKeys(t.to)}
	for i := range t.ends[0] {
		t.ends[0][i].out = true
	}
}

// reach is how much farther a point of the section stands from the axis at an
// azimuth in degrees than its R.
func (t *turned) reach(s shape, deg float64) float64 {
	switch s {
	case asOutside:
		return t.md.Block.Reach(deg)
	case asPot:
		g, _ := t.md.Section.At(deg * math.Pi / 180)
		return g
	}
	return 1
}

// keysOf are the keys in the level joint from a corner of the section to the
// next: a divided piece has them in each of its own joints, the joint with a
// plug where the plug has them.
func (t *turned) keysOf(i int) []key {
	a, c := t.section[i], t.section[(i+1)%len(t.section)]
	whole := t.to-t.from >= 360
	var keys []key
	switch {
	case a.edge == keyEdge && whole:
		keys = t.ringKeys(a, c)
	case a.edge == keyEdge:
		keys = t.wedgeKeys(a, c)
	case a.edge == plugEdge:
		for _, k := range t.plug {
			if whole || inside(azimuth(k), t.from, t.to) {
				keys = append(keys, k)
			}
		}
	}
	if a.edge == keyEdge {
		keys = t.whole.sunk(keys, solid.Vec{0, 0, float64(t.cones)}, func(x, y float64) solid.Vec { return solid.Vec{x, y, a.Z} })
	}
	for i := range keys {
		keys[i].out = (t.cones > 0) == (a.R > c.R) // it looks up where the outline runs inward
	}
	return keys
}

func azimuth(k key) float64 { return math.Atan2(k.at[1], k.at[0]) * 180 / math.Pi }

// plugKeys are the keys between the positive and what stands on its plug, as large as
// the matter of the positive about them allows: three on unequal azimuths. Where there
// is no room for them it is one, on the axis, where what it holds may turn as it likes;
// off the axis where that is a ring of natches, which the plug keeps from shifting.
func (t *turned) plugKeys() []key {
	const (
		least = 1.5 // mm
		aside = 0.4 // of the plug's radius
	)
	for i, a := range t.section {
		if a.edge != plugEdge {
			continue
		}
		n := (i + 1) % len(t.section)
		c := t.section[n]
		whole := *t // with what stands on it
		whole.section, whole.asked = slices.Clone(t.section), &asked{}
		for _, k := range [2]int{i, n} {
			whole.section[k].Z -= float64(t.cones) * 2 * (keyMost + keyFoot)
		}
		sunk := func(keys []key) []key {
			return whole.sunk(keys, solid.Vec{0, 0, float64(t.cones)}, func(x, y float64) solid.Vec { return solid.Vec{x, y, a.Z} })
		}
		if keys := sunk(t.ringKeys(a, c)); len(keys) == 3 && min(keys[0].radius, keys[1].radius, keys[2].radius) >= least {
			return keys
		}
		wide := math.Max(a.R, c.R)
		for deg := range 360 {
			wide = math.Min(wide, t.reach(asPot, float64(deg))*math.Max(a.R, c.R))
		}
		one := key{radius: keyRadius((1-aside)*wide, t.clear)}
		if t.md.Scheme.Core {
			one.at[0] = aside * wide
		}
		if one.radius > 0 {
			return sunk([]key{one})
		}
	}
	return nil
}

// band is the middle of a level joint at an azimuth in degrees and the room on
// either side of it.
func (t *turned) band(a, c corner, deg float64) (mid, room float64) {
	in, far := a.R*t.reach(a.shape, deg), c.R*t.reach(c.shape, deg)
	if in > far {
		in, far = far, in
	}
	mid, room = (in+far)/2, (far-in)/2
	if !t.md.Section.Round && (a.shape == asPot || c.shape == asPot) { // a wall that runs askew
		room *= 0.7
	}
	return mid, room
}

// ringKeys are the keys in a level joint that goes all round: at unequal
// azimuths, so that it goes together one way only.
func (t *turned) ringKeys(a, c corner) []key {
	var out []key
	near, _ := solid.SinCosDeg(50) // half the least angle between keys
	for _, deg := range [3]float64{20, 130, 265} {
		mid, room := t.band(a, c, deg)
		if r := keyRadius(math.Min(room, mid*near), t.clear); r > 0 {
			sin, cos := solid.SinCosDeg(deg)
			out = append(out, key{at: [2]float64{mid * cos, mid * sin}, radius: r})
		}
	}
	return out
}

// wedgeKeys are the keys in a level joint of a sector: one on either side of its
// middle, clear of the sockets in its ends and of one another.
func (t *turned) wedgeKeys(a, c corner) []key {
	var out []key
	wide := t.to - t.from
	side, _ := solid.SinCosDeg(math.Min(90, 0.3*wide))
	half, _ := solid.SinCosDeg(0.2 * wide)
	for _, share := range [2]float64{0.3, 0.7} {
		deg := t.from + share*wide
		mid, room := t.band(a, c, deg)
		room = math.Min(room, math.Min(mid*side-keyMost-keyWall, mid*half))
		if r := keyRadius(room, t.clear); r > 0 {
			sin, cos := solid.SinCosDeg(deg)
			out = append(out, key{at: [2]float64{mid * cos, mid * sin}, radius: r})
		}
	}
	return out
}
