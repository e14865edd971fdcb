package tooling

// The cottle around a positive: in one piece, drawn off along the pull, or in
// staves that are taken away sideways. Staves stand in the plate's groove, meet
// in lap joints, and have flanges beside the joints for clips; a collar or a
// band holds their tops. Stave 1 laps over both its neighbours, the last lies
// under both, so they come away in the order of their numbers.

import (
	"math"
	"slices"
	"strconv"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// Measures of staves, mm; common practice, no source.
const (
	lapLong    = 6.0
	flangeWide = 4.0
	flangeHigh = 12.0
	collarHigh = 12.0
	collarWall = 4.0
	grooveRib  = 0.8 // how far a flange stands out within the groove
	flangeRise = flangeHigh - grooveRib
)

// wall is the stretch along the pull that a cottle stands round: from the seam
// plane to the free end, with the way of the pull.
func wallOf(md *mold.Mold, p *mold.Part) (seam, far, way float64) {
	if p.Name != "lower" {
		return p.Outline[p.Pot].Z, md.Block.ZTop, 1
	}
	return p.Outline[0].Z, md.Block.ZBottom, -1
}

// cottle is the wall in one piece.
func cottle(j *job.Job, md *mold.Mold, p *mold.Part) *turned {
	seam, far, way := wallOf(md, p)
	h := math.Abs(far - seam)
	lean := (md.Block.At(seam) - md.Block.At(far)) / h
	r := func(h float64) float64 { return md.Block.At(seam) - lean*h }
	t := &turned{md: md, to: 360, clear: j.Printer.Clearance, cones: int(way)}
	wide := staveThickness(j)
	top := h + freeboard
	high, inset := bevel(p, far)
	from, to := h-high, h
	for _, q := range [8]form.Point{{R: md.Block.R, Z: -grooveDepth}, {R: md.Block.R + wide - footEdge/md.Block.MostReach(), Z: -grooveDepth},
		{R: md.Block.R + wide, Z: footEdge - grooveDepth}, {R: r(0) + wide - lean*top, Z: top}, {R: r(from) - inset, Z: top}, {R: r(from) - inset, Z: to}, {R: r(from), Z: from}, {R: r(0), Z: 0}} {
		t.section = append(t.section, corner{Point: q, shape: asOutside})
	}
	t.marks, t.section[2].edge = mold.Letter(p.Name)+"^", markEdge
	t.place(way, seam)
	return t
}

// stave is one of the staves, in heights along the pull from the seam.
type stave struct {
	md        *mold.Mold
	from, to  float64 // degrees
	seam, way float64
	top       float64 // the height of its free end
	flangeEnd float64 // where the flanges end: at the collar, or at the top
	wide, gap float64
	over      [2]bool // at start and end: laps over the neighbour
	// lo and hi are the ends of this course of the stave: the groove's floor and
	// the top where it is made in one.
	lo, hi float64
	clear  float64 // of keys in their sockets
	marks  string
	whole  *uncut
	// bevel are the heights between which the inside comes in by inset, to take
	// the free edge off the plaster; the upper one is the height to fill to.
	bevel [2]float64
	inset float64
}

// staveTop is the height of a cottle's free end.
func staveTop(md *mold.Mold, p *mold.Part) float64 {
	seam, far, _ := wallOf(md, p)
	return math.Abs(far-seam) + freeboard
}

// newStave is stave k of a cottle that parts at the azimuths in cuts.
func newStave(j *job.Job, md *mold.Mold, p *mold.Part, k int, cuts []float64) *stave {
	seam, far, way := wallOf(md, p)
	n := len(cuts) - 1
	s := &stave{md: md, from: cuts[k], to: cuts[k+1], seam: seam, way: way, top: staveTop(md, p),
		wide: staveThickness(j), gap: j.Printer.Clearance / 2, lo: -grooveDepth, clear: j.Printer.Clearance,
		marks: mold.Letter(p.Name) + strconv.Itoa(k+1) + "^"}
	s.hi = s.top
	high, in := bevel(p, far)
	s.bevel, s.inset = [2]float64{math.Abs(far-seam) - high, math.Abs(far - seam)}, in
	s.over = [2]bool{k == 0, k+1 < n}
	s.flangeEnd = s.top
	if collared(s.top) {
		s.flangeEnd -= collarHigh + 2
	}
	whole := *s
	s.whole = &uncut{so: md.Solids(), build: whole.build}
	return s
}

// collared tells whether staves of a height have room for a collar above their
// flanges.
func collared(top float64) bool { return top >= collarHigh+2+flangeHigh+10 }

// staveCorner is a corner of a stave across the axis: along dir, so far from the
// axis, as far again by reach as on a face's middle; a flange's tip stands out
// beyond it, and a corner on the plaster moves in with the bevel.
type staveCorner struct {
	dir        [2]float64
	far, reach float64
	tip, inner bool
}

// plan is the outline across the axis, counterclockwise, from the lap at the
// start, with the steps of a table. The mark's flat begins at corner mark, -1
// without one.
func (s *stave) plan(t *solid.Azimuths) (list []staveCorner, mark int) {
	list = make([]staveCorner, 0, t.Steps()+32)
	r := s.md.Block.R
	deg := func(mm float64) float64 { return mm / r * 180 / math.Pi }
	mid := r + s.wide/2
	put := func(radius, az float64, tip bool) {
		sin, cos := solid.SinCosDeg(az)
		f := s.md.Block.Reach(az)
		list = append(list, staveCorner{dir: [2]float64{cos, sin}, far: radius * f, reach: f, tip: tip, inner: radius == r})
	}
	arc := func(radius, a, c float64) { // steps of the table strictly between
		i := t.Step(a)
		if a < c {
			for t.Deg(i) <= a+1e-9 {
				i++
			}
			for ; t.Deg(i) < c-1e-9; i++ {
				put(radius, t.Deg(i), false)
			}
			return
		}
		for t.Deg(i) >= a-1e-9 {
			i--
		}
		for ; t.Deg(i) > c+1e-9; i-- {
			put(radius, t.Deg(i), false)
		}
	}
	outer := r + s.wide
	start, end := s.from, s.to
	lap := s.lap()
	if s.over[0] {
		start -= lap
		put(mid+s.gap, start, false)
	} else {
		start += lap + deg(s.gap)
		put(r, s.from, false)
		put(mid-s.gap, s.from, false)
		arc(mid-s.gap, s.from, start)
		put(mid-s.gap, start, false)
	}
	if s.over[1] {
		end += lap
	} else {
		end -= lap + deg(s.gap)
	}
	put(outer, start, false)
	flange := func(a float64) float64 {
		c := a + deg(flangeWide)
		put(outer, a, false)
		put(outer, a, true)
		put(outer, c, true)
		put(outer, c, false)
		return c
	}
	one := start + deg(1)
	two := end - deg(1+flangeWide)
	arc(outer, start, one)
	after := flange(one)
	mark = -1
	if mid, half := s.flat(after, two); half > 0 {
		arc(outer, after, mid-half)
		mark = len(list)
		put(outer, mid-half, false)
		put(outer, mid+half, false)
		after = mid + half
	}
	arc(outer, after, two)
	after = flange(two)
	arc(outer, after, end)
	put(outer, end, false)
	if s.over[1] {
		put(mid+s.gap, end, false)
		arc(mid+s.gap, end, s.to)
		put(mid+s.gap, s.to, false)
	} else {
		put(mid-s.gap, end, false)
		arc(mid-s.gap, end, s.to)
		put(mid-s.gap, s.to, false)
	}
	put(r, s.to, false)
	arc(r, s.to, s.from)
	if s.over[0] {
		put(r, s.from, false)
		put(mid+s.gap, s.from, false)
		arc(mid+s.gap, s.from, start)
	}
	return list, mark
}

// at is the outline at a height: flanges begin as a low rib in the plate's groove
// and rise out of it at 45 degrees; the inside comes in at the same slope around
// the plaster's free edge, and stays in above it.
func (s *stave) at(list []staveCorner, h float64) [][2]float64 {
	return s.outline(make([][2]float64, len(list)), list, s.stands(h))
}

// stands tells how the sides stand at a height: how far flanges stand out and how
// far the inside comes in.
func (s *stave) stands(h float64) (at sides) {
	at.out = grooveRib + max(0, min(h, flangeRise))
	if s.inset > 0 {
		at.in = max(0, min(1, (h-s.bevel[0])/(s.bevel[1]-s.bevel[0]))) * s.inset
	}
	return at
}

type sides struct{ out, in float64 }

// outline puts the outline into its room, as long as the list.
func (s *stave) outline(out [][2]float64, list []staveCorner, at sides) [][2]float64 {
	for i := range list {
		q := &list[i]
		f := q.far
		if q.tip {
			f += at.out
		} else if q.inner {
			f -= at.in * q.reach
		}
		out[i] = [2]float64{f * q.dir[0], f * q.dir[1]}
	}
	return out
}

// bends are the heights within the course at which the stave's sides change,
// ends included.
func (s *stave) bends() []float64 {
	out := []float64{s.lo}
	list := [5]float64{0, flangeRise, s.bevel[0], s.bevel[1], s.flangeEnd}
	slices.Sort(list[:])
	for _, h := range list {
		if h > out[len(out)-1] && h < s.hi {
			out = append(out, h)
		}
	}
	return append(out, s.hi)
}

// build makes the stave, in the mold's frame.
func (s *stave) build(so *mold.Solids) (*solid.Mesh, error) {
	plan, mark := s.plan(so.Turn)
	b := solid.NewBuilder(so.Turn.Round, solid.FullTurn(so.Turn.Steps()))
	ring := func(h float64, tips bool) (l solid.Loop) {
		for i, q := range s.at(plan, h) {
			if tips || !plan[i].tip {
				l = append(l, b.Vertex(solid.Vec{q[0], q[1], h}))
			}
		}
		return l
	}
	end := func(h, way float64, loop solid.Loop) {
		keys := s.keys(h)
		open, holes := keyHoles(b, keys, s.clear, solid.Vec{0, 0, way}, func(x, y float64) solid.Vec { return solid.Vec{x, y, h} })
		if way < 0 {
			loop = reversed(loop)
		}
		b.Face(solid.Vec{0, 0, way}, loop, holes...)
		closeKeys(b, open, keys)
	}
	tips := s.lo < s.flangeEnd
	below := ring(s.lo, tips)
	end(s.lo, -1, below)
	heights := s.bends()
	from, _ := s.band()
	for i, h := range heights[1:] {
		if tips && heights[i] == s.flangeEnd { // the flanges end
			var rest solid.Loop
			n := len(below)
			for k, v := range below {
				if !plan[k].tip {
					rest = append(rest, v)
				} else if plan[(k+1)%n].tip {
					b.Face(solid.Vec{0, 0, 1}, solid.Loop{below[k-1], v, below[k+1], below[(k+2)%n]})
				}
			}
			below, tips = rest, false
		}
		l := ring(h, tips)
		if mark >= 0 && heights[i] == from {
			s.markedSide(b, below, l, plan, mark)
		} else {
			side(b, below, l)
		}
		below = l
	}
	end(s.hi, 1, below)
	m, err := b.Done()
	if err != nil {
		return nil, err
	}
	if s.way < 0 {
		m.Mirror(2)
	}
	m.Translate(solid.Vec{0, 0, s.seam})
	return m, nil
}

// courses are the heights, ends included, at which the stave is divided into
// the fewest courses no higher than the bed: above the foot of its flanges and
// clear of where they end. Nil where it cannot be.
func (s *stave) courses(bed float64) []float64 {
	if s.hi-s.lo <= bed+1e-6 {
		return []float64{s.lo, s.hi}
	}
	const clear = keyMost + 4
	n := math.Ceil((s.hi - s.lo) / (bed - keyMost))
	high := (s.hi - s.lo) / n
	out := []float64{s.lo}
	for k := 1.0; k < n; k++ {
		h := s.lo + k*high
		if math.Abs(h-s.flangeEnd) < clear {
			h = s.flangeEnd - clear
		}
		last := out[len(out)-1]
		if h < flangeHigh+clear || h-last < clear || h-last > bed-keyMost {
			return nil
		}
		out = append(out, h)
	}
	if s.hi-out[len(out)-1] > bed {
		return nil
	}
	return append(out, s.hi)
}

// keys are those of a joint at a height, none at the stave's own ends: behind the
// flanges, where there is most room, or in the middle of the wall.
func (s *stave) keys(h float64) []key {
	if h <= -grooveDepth || h >= s.top {
		return nil
	}
	var list []key
	sound := func() []key {
		return s.whole.sunk(list, s.clear, solid.Vec{0, 0, s.way}, func(x, y float64) solid.Vec { return solid.Vec{x, y, s.seam + s.way*h} })
	}
	put := func(az, from, mid, room float64) {
		r := keyRadius(room, s.clear)
		if r == 0 {
			return
		}
		sin, cos := solid.SinCosDeg(az)
		f := (s.md.Block.R+from)*s.md.Block.Reach(az) + mid
		list = append(list, key{at: [2]float64{f * cos, f * sin}, radius: r, out: h == s.hi})
	}
	one, two := s.flanges()
	if h >= s.flangeEnd {
		put(s.from+0.25*(s.to-s.from), 0, s.wide/2, s.wide/2)
		put(s.to-0.25*(s.to-s.from), 0, s.wide/2, s.wide/2)
		return sound()
	}
	for i, az := range [2]float64{one, two} {
		from := 0.0
		if s.over[i] { // on the lap
			from = s.wide/2 + s.gap
		}
		// the circle that the inside and the flange's corners leave
		w := s.wide - from
		mid := (w*w + flangeWide*flangeWide/4) / (2 * w)
		put(az, from, mid, mid)
	}
	return sound()
}

// lap is how far a lap reaches beyond the cut, degrees. Where a stave takes half of
// a straight-sided block it stays on the bevel of the block's edge: farther round
// it would hook behind the next face.
func (s *stave) lap() float64 {
	lap := lapLong / s.md.Block.R * 180 / math.Pi
	if n := float64(s.md.Block.Facets); n > 0 && s.to-s.from > 179 {
		lap = math.Min(lap, 180/n-math.Atan(s.md.Block.FlatEnd())*180/math.Pi)
	}
	return lap
}

// flanges are the azimuths of the middles of the flanges, degrees.
func (s *stave) flanges() (one, two float64) {
	deg := func(mm float64) float64 { return mm / s.md.Block.R * 180 / math.Pi }
	one, two = s.from+deg(1+flangeWide/2), s.to-deg(1+flangeWide/2)
	if s.over[0] {
		one -= s.lap()
	} else {
		one += s.lap() + deg(s.gap)
	}
	if s.over[1] {
		two += s.lap()
	} else {
		two -= s.lap() + deg(s.gap)
	}
	return one, two
}

// side lays the band between two closed loops, one above the other.
func side(b *solid.Builder, low, high solid.Loop) {
	for i := range low {
		k := (i + 1) % len(low)
		b.Triangle(low[i], low[k], high[k])
		b.Triangle(low[i], high[k], high[i])
	}
}

// collar holds the tops of the staves together: a ring that slips over them.
func collar(j *job.Job, md *mold.Mold, p *mold.Part) *turned {
	seam, far, way := wallOf(md, p)
	t := &turned{md: md, to: 360, clear: j.Printer.Clearance, cones: int(way)}
	r := md.Block.R + staveThickness(j) + j.Printer.Clearance
	top := math.Abs(far-seam) + freeboard
	low := top - collarHigh
	for _, q := range [5]form.Point{{R: r, Z: low}, {R: r + collarWall - footEdge/md.Block.MostReach(), Z: low}, {R: r + collarWall, Z: low + footEdge},
		{R: r + collarWall, Z: top}, {R: r, Z: top}} {
		t.section = append(t.section, corner{Point: q, shape: asOutside})
	}
	t.marks, t.section[2].edge = mold.Letter(p.Name)+"^", markEdge
	t.place(way, seam)
	return t
}
