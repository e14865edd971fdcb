package tooling

import (
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// measure fills in size, fit and material from the corners of the piece that may
// lie outermost, where it stands in the mold, and its volume (ml). The piece is
// turned on the bed so that it fits and takes the least room. As the corners are
// those of its mesh, the size is the mesh's own, whatever the turn.
func (p *Piece) measure(j *job.Job, corners []solid.Vec, ml float64) {
	p.stand(&solid.Mesh{V: corners})
	plan := make([][2]float64, len(corners))
	low, high := math.Inf(1), math.Inf(-1)
	for i, q := range corners {
		plan[i] = [2]float64{q[0], q[1]}
		if q[2] < low {
			low = q[2]
		}
		if q[2] > high {
			high = q[2]
		}
	}
	high -= low
	p.Volume, p.Mass = ml, ml*printDensity
	p.Filament = ml / (math.Pi / 4 * filamentWide * filamentWide)
	bed := j.Printer.Bed
	least := math.Inf(1)
	span := calipers{loop: hull(plan)}
	inner := loopArea(span.loop) * (1 - 1e-9) // no box is smaller
	var boxes [90][2]float64                  // a quarter turn farther they lie the other way
	for deg := range 180 {
		b := &boxes[deg%90]
		if deg < 90 {
			b[0], b[1] = span.box(float64(deg))
		} else {
			b[0], b[1] = b[1], b[0]
		}
		w, d := b[0], b[1]
		const noise = 1e-6
		fits := w <= bed[0]+noise && d <= bed[1]+noise && high <= bed[2]+noise
		if deg == 0 || fits && w*d < 0.99*least {
			p.Size, p.FitsBed, p.turn = [3]float64{w, d, high}, fits, float64(deg)
			least = math.Inf(1)
			if fits {
				least = w * d
			}
		}
		if inner >= 0.99*least {
			break // as it is with anything like a rectangle
		}
	}
	p.Size[0], p.Size[1] = box(span.loop, p.turn)
	if p.FitsBed {
		return
	}
	p.Note = words.Say("It measures %.0f × %.0f × %.0f mm and fits the bed of %.0f × %.0f × %.0f mm neither turned nor divided; it needs a larger printer.",
		p.Size[0], p.Size[1], p.Size[2], bed[0], bed[1], bed[2])
}

// box is the width and depth of a plan turned by degrees.
func box(plan [][2]float64, deg float64) (w, d float64) {
	sin, cos := solid.SinCosDeg(deg)
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, q := range plan {
		x, y := q[0]*cos-q[1]*sin, q[0]*sin+q[1]*cos
		if x < x0 {
			x0 = x
		}
		if x > x1 {
			x1 = x
		}
		if y < y0 {
			y0 = y
		}
		if y > y1 {
			y1 = y
		}
	}
	return x1 - x0, y1 - y0
}

// bent appends the next corner of an outline whose corners begin at from, in the
// place of the last one where that lies on a straight line through both its
// neighbours, as most along a flat face do: such a one is never outermost alone.
func bent(out []solid.Vec, from int, q solid.Vec) []solid.Vec {
	if n := len(out); n-from >= 2 {
		a, b := &out[n-2], &out[n-1]
		dx, dy := b[0]-a[0], b[1]-a[1]
		ex, ey := q[0]-b[0], q[1]-b[1]
		const straight = 1e-12
		if cross := dx*ey - dy*ex; b[2] == q[2] && a[2] == q[2] && cross*cross <= straight*straight*(dx*dx+dy*dy)*(ex*ex+ey*ey) && dx*ex+dy*ey > 0 {
			*b = q
			return out
		}
	}
	return append(out, q)
}

// corners are those of a stave's course that may lie outermost: where its flanges
// stand out farthest, at its top, where its inside has come in, of its mark and of
// its keys, of its plan. Between its ends the inside is hollow and never outermost.
func (s *stave) corners(list []staveCorner, mark int) []solid.Vec {
	out := make([]solid.Vec, 0, len(list)+64)
	put := func(h float64, tips bool) {
		at, from := s.at(list, h), len(out)
		for i, q := range at {
			if list[i].tip == tips && !(list[i].inner && list[max(i-1, 0)].inner && list[min(i+1, len(list)-1)].inner) {
				out = bent(out, from, solid.Vec{q[0], q[1], h})
			}
		}
	}
	if s.lo < s.flangeEnd {
		put(min(s.hi, s.flangeEnd), true)
	}
	put(s.hi, false)
	out = append(out, solid.Vec{out[0][0], out[0][1], s.lo}) // for its height
	if mark >= 0 {
		out = s.sign(list, mark).corners(out)
	}
	for _, k := range s.keys(s.hi) {
		out = append(out, solid.Vec{k.at[0], k.at[1], s.hi + k.radius})
	}
	for i := range out {
		out[i][2] = s.seam + s.way*out[i][2]
	}
	return out
}

// bare are the corners of a stave above its flanges.
func bare(list []staveCorner) []staveCorner {
	out := make([]staveCorner, 0, len(list))
	for i := range list {
		if !list[i].tip {
			out = append(out, list[i])
		}
	}
	return out
}

// volume of the course in ml, of its plan. Most of it is upright, and has the same
// area at both ends.
func (s *stave) volume(list []staveCorner) float64 {
	bare := bare(list)
	room := make([][2]float64, len(list))
	area := func(of []staveCorner, at sides) float64 { return loopArea(s.outline(room[:len(of)], of, at)) }
	v, heights := 0.0, s.bends()
	var of []staveCorner
	var at sides
	below := 0.0
	for i, h := range heights[1:] {
		low := heights[i]
		if i == 0 || len(of) > len(bare) && low >= s.flangeEnd {
			if of = list; low >= s.flangeEnd {
				of = bare
			}
			at = s.stands(low)
			below = area(of, at)
		}
		above := below
		if to := s.stands(h); to != at {
			above, at = area(of, to), to
		}
		v += (below + above) / 2 * (h - low)
		below = above
	}
	return v / 1000
}

// corners are those of the piece that may lie outermost: of the widest and the
// innermost rings and of those at its ends, of the letters and natches that stand
// out of it and of its keys. A whole ring is as wide every way.
func (t *turned) corners() []solid.Vec {
	so := t.md.Solids()
	span, panels := t.span(so), t.panels(so)
	least, most := t.reaches()
	out := make([]solid.Vec, 0, 2*(span.To-span.From)+128) // nearly always enough
	type ring struct {
		r     float64
		shape shape
		flat  int
	}
	var rings []ring // that are told
	marked := false  // a flat lies within its ring: any other may be wider there
	for i := range panels {
		if panels[i].ok {
			marked = true
			out = panels[i].sign.corners(out)
		}
	}
	for i, q := range t.section {
		at := t.row(so, panels, i)
		if q.R == 0 || q.R != most[q.shape] && !marked && (span.Whole() || q.R != least[q.shape]) {
			out = append(out, at(span.From)) // for its height
			continue
		}
		round := q.shape == asCircle || q.shape == asPot && t.md.Section.Round || q.shape == asOutside && t.md.Block.Facets == 0
		if round && span.Whole() && !marked {
			out = append(out, solid.Vec{-q.R, -q.R, q.Z}, solid.Vec{q.R, -q.R, q.Z}, solid.Vec{q.R, q.R, q.Z}, solid.Vec{-q.R, q.R, q.Z})
			continue
		}
		like := ring{q.R, q.shape, flatAt(panels, i)}
		if slices.Contains(rings, like) { // it stands upright above that one
			out = append(out, at(span.From))
			continue
		}
		if q.shape != asPot { // which dimples bend
			rings = append(rings, like)
		}
		from := len(out)
		for k := span.From; k <= span.To; k++ {
			out = bent(out, from, at(k))
		}
	}
	sin, cos := solid.SinCosDeg(t.from)
	for _, k := range t.ends[0] { // the tips of the cones
		out = append(out, solid.Vec{k.at[0]*cos + k.radius*sin, k.at[0]*sin - k.radius*cos, k.at[1]})
	}
	return t.proud(out)
}

// proud adds what stands out of level faces: letters, natches and keys.
func (t *turned) proud(to []solid.Vec) []solid.Vec {
	whole := t.to-t.from >= 360
	for i, a := range t.section {
		c := t.section[(i+1)%len(t.section)]
		way := -1.0 // of the face
		if a.R > c.R {
			way = 1
		}
		switch a.edge {
		case rimEdge:
			if s, ok := t.ringSign(a, c, way); ok && t.marks != "" {
				to = s.corners(to)
			}
		case seamEdge:
			for _, n := range t.natches {
				if n.Socket && (whole || inside(n.Azimuth, t.from, t.to)) {
					sin, cos := solid.SinCosDeg(n.Azimuth)
					to = append(to, solid.Vec{n.At.R * cos, n.At.R * sin, a.Z + way*solid.DomeHeight(n.Radius, n.HalfAngle)})
				}
			}
		case keyEdge, plugEdge:
			for _, k := range t.keysOf(i) {
				if k.out {
					to = append(to, solid.Vec{k.at[0], k.at[1], a.Z + way*k.radius})
				}
			}
		}
	}
	return to
}

// reaches are the least and the greatest radius of each shape in the section.
func (t *turned) reaches() (least, most [3]float64) {
	least = [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	for _, q := range t.section {
		least[q.shape], most[q.shape] = min(least[q.shape], q.R), max(most[q.shape], q.R)
	}
	return least, most
}

// corners adds where the sign's shapes end.
func (s sign) corners(to []solid.Vec) []solid.Vec {
	for _, g := range s.list {
		for _, q := range g[0] {
			to = append(to, s.at(q[0], q[1], markRaised))
		}
	}
	return to
}
