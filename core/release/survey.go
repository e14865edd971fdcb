// Package release judges a surface under a pull: its draft, where it catches,
// how deep, and what no pull frees. A turned form needs three pulls only: down
// and up along the axis and straight outward. A part over a sector of at most
// 180 degrees that moves along its middle only ever visits, at its own height,
// radii from its own outward, and all of them; so it is free if and only if
// the outward ray in the half-plane is. That makes three sweeps of one curve
// decide everything, exactly, in O(n log n).
package release

import (
	"math"
	"slices"

	"moldwright/core/form"
)

// Pull is one of the three ways in which plaster can leave a turned form.
type Pull int

// The pulls of lower, upper and side parts.
const (
	Down Pull = iota
	Up
	Out
)

// Pulls lists them all.
var Pulls = [3]Pull{Down, Up, Out}

// Sample is a place on the contour and how deep the plaster there catches.
type Sample struct {
	Span  int     // span of the meridian
	T     float64 // share of the way along the span
	P     form.Point
	Depth float64 // mm across the pull that the plaster would have to shift to come free; 0 is free
	// Block is the place of the pot that the plaster would have to pass, where
	// Depth > 0.
	Block form.Point
	// draws is the way Block goes as the body shrinks, where it ends the plaster's own
	// gap across the axis: 1 out of the way, -1 into it.
	draws int8
	hook  hook
}

// Left is the depth in mm that is left once the body has shrunk by that share. What
// stands in the way farther from the axis draws away from the plaster; what does
// nearer to it, as the lip over a core or over a recess, draws onto it. Plaster shut in
// on both sides is let go by neither, and along the axis nothing is forgiven.
func (c *Sample) Left(shrink float64) float64 {
	return c.Depth - float64(c.draws)*shrink*c.Block.R
}

// hook tells what ends the catch of a sample: whether its gap is shut on both
// sides, and which piece of the envelope lets it go in which direction.
type hook struct {
	piece int32
	dir   int8
	shut  bool
}

// Survey holds, for one meridian, how deep each place catches for each pull.
// Samples run along the contour; the deepest place of every stretch between
// two of them is at one of them.
type Survey struct {
	M       *form.Meridian
	Samples [3][]Sample  // by Pull; spans without are free all along, see On
	Deepest [3][]float64 // the depth of the deepest sample on each span, by Pull
	frames  [3]frame
	body    []form.Point // the meridian, and of an open form the disc at its rim, of a core the clay
	tree    *form.Tree   // of body
	runs    []interval   // the heights of its runs up and down, where they are few
	ends    []float64    // how far from the ends of each span its first and last sample stand, as a share of it
}

// drop is how far along the pull, in mm, pot may reach past a place and not hold it:
// the rounding noise of coordinates, by which else what lies level would catch by the
// whole width of a shelf. A hook goes to nothing with its drop, so that this frees
// nothing that a bench could tell.
const drop = 1e-6

// Free is the depth in mm below which a place counts as free: the noise of the
// arithmetic, far below anything a bench can tell.
const Free = 1e-5

// frame turns the half-plane so that the pull is toward -y. Plaster at (x, y)
// is free when no pot lies below it.
type frame struct {
	pull Pull
	env  *envelope
	pts  []vec
	open []bool // by span: it is its own envelope and looks along the pull, so that all of it is free
	hit  [2]int // the chords that were found to wall a place in last, by direction
}

func (f *frame) to(p form.Point) vec {
	switch f.pull {
	case Down:
		return vec{p.R, p.Z}
	case Up:
		return vec{p.R, -p.Z}
	}
	return vec{p.Z, -p.R}
}

func (f *frame) from(v vec) form.Point {
	switch f.pull {
	case Down:
		return form.Point{R: v.x, Z: v.y}
	case Up:
		return form.Point{R: v.x, Z: -v.y}
	}
	return form.Point{R: -v.y, Z: v.x}
}

// New surveys the meridian for all three pulls.
func New(m *form.Meridian) *Survey {
	body := m.Pts
	if !m.Closed { // the positive is solid up to the rim
		body = append(slices.Clip(body), form.Point{R: 0, Z: m.Rim().Z})
	}
	return survey(m, body)
}

// NewCore surveys the inner surface of a solid-cast form, as form.BuildInner gives it,
// within the clay that its outer surface bounds: a core comes free of the clay, its
// outer wall's lip too, and not through it.
func NewCore(inner, outer *form.Meridian) *Survey {
	return survey(inner, append(slices.Concat(inner.Pts, outer.Pts), inner.Pts[0]))
}

// survey is that of the meridian m, with which the outline of the body begins.
func survey(m *form.Meridian, body []form.Point) *Survey {
	s := &Survey{M: m, body: body, tree: form.NewTree(body), runs: runs(body), ends: make([]float64, len(m.Spans))}
	for i := range s.ends {
		s.ends[i] = min(0.25, along/m.Pts[i].Dist(m.Pts[i+1]))
	}
	for _, pull := range Pulls {
		f := &s.frames[pull]
		f.pull, f.hit = pull, [2]int{-1, -1}
		f.pts = make([]vec, len(body))
		for i, p := range body {
			f.pts[i] = f.to(p)
		}
		f.env = newEnvelope(f.pts)
		f.open = f.opens(len(m.Spans))
		s.Deepest[pull] = make([]float64, len(m.Spans))
		s.Samples[pull] = s.sweep(f)
	}
	return s
}

// Steps off the contour, mm: along a span away from its ends, and into the
// plaster. Their ratio is the slimmest wedge between two spans, in radians,
// whose plaster is told; the noise of the arithmetic at 2 m is 1e-12.
const (
	along = 1e-6
	off   = 1e-11
)

// onsets is room for the samples where catching begins or ends, which most
// forms have few of.
const onsets = 32

// sweep takes the samples of one pull: both ends of every span, every place
// where the plaster turns from free to caught inside a span, and the places
// level with an edge of the pot that ends a block, where depth can leap.
func (s *Survey) sweep(f *frame) []Sample {
	m := s.M
	extra := s.lips(f)
	room := len(extra) + onsets
	for _, open := range f.open {
		if !open {
			room += 2
		}
	}
	out := make([]Sample, 0, room)
	next := 0
	for i := range m.Spans {
		if f.open[i] && (next == len(extra) || extra[next].span > i) { // nearly always, where nothing catches
			continue
		}
		e := s.ends[i]
		w := s.wall(i)
		out = append(out, Sample{})
		s.take(f, &w, e, &out[len(out)-1])
		for ; next < len(extra) && extra[next].span == i; next++ {
			if t := extra[next].t; t > out[len(out)-1].T && t < 1-e {
				out = s.step(f, &w, t, out)
			}
		}
		out = s.step(f, &w, 1-e, out)
		deepest := 0.0
		for k := len(out) - 1; k >= 0 && out[k].Span == i; k-- {
			if d := out[k].Depth; d > deepest {
				deepest = d
			}
		}
		s.Deepest[f.pull][i] = deepest
	}
	return out
}

// On gives the samples on a span: of one that is free all along its two ends.
func (s *Survey) On(pull Pull, span int) []Sample {
	all := s.Samples[pull]
	a, b := 0, len(all) // the first at or beyond it, by hand since a call costs more
	for a < b {
		if mid := int(uint(a+b) >> 1); all[mid].Span < span {
			a = mid + 1
		} else {
			b = mid
		}
	}
	for b < len(all) && all[b].Span == span {
		b++
	}
	if a == b {
		e, p, q := s.ends[span], s.M.Pts[span], s.M.Pts[span+1]
		return []Sample{{Span: span, T: e, P: p.Lerp(q, e)}, {Span: span, T: 1 - e, P: p.Lerp(q, 1-e)}}
	}
	return all[a:b]
}

// All are the samples on all spans, along the contour.
func (s *Survey) All(pull Pull) []Sample {
	out := make([]Sample, 0, 2*len(s.M.Spans))
	for i := range s.M.Spans {
		out = append(out, s.On(pull, i)...)
	}
	return out
}

// opens tells which of so many spans are open: those over which no other chord comes
// first, whose plaster lies toward the pull, and which do not run along it so nearly
// that a step off them leaves them.
func (f *frame) opens(spans int) []bool {
	const least, slant = 1e-3, 1e-3
	out := make([]bool, spans)
	right := 1.0 // the way along x of a span whose plaster lies toward the pull
	if f.pull == Up {
		right = -1
	}
	for i := range f.env.pieces {
		p := &f.env.pieces[i]
		if p.chord >= spans {
			continue
		}
		a, b := &f.pts[p.chord], &f.pts[p.chord+1]
		x, y := right*(b.x-a.x), b.y-a.y
		if x < least || p.x1-p.x0 < x { // or another comes first over some of it
			continue
		}
		if y < 0 {
			y = -y
		}
		out[p.chord] = x > slant*y
	}
	return out
}

// wall is a span of the contour: its ends, and the step from it into the plaster.
type wall struct {
	span      int
	p, q, off form.Point
}

func (s *Survey) wall(span int) wall {
	p, q := s.M.Pts[span], s.M.Pts[span+1]
	l := p.Dist(q)
	return wall{span, p, q, form.Point{R: off * (q.Z - p.Z) / l, Z: -off * (q.R - p.R) / l}}
}

// beside is the place at share t of the wall, and the plaster just off it.
func (w *wall) beside(t float64) (at, plaster form.Point) {
	at = w.p.Lerp(w.q, t)
	return at, form.Point{R: at.R + w.off.R, Z: at.Z + w.off.Z}
}

// step appends the sample of a span at share t, after those that are due
// between the last one and it.
func (s *Survey) step(f *frame, w *wall, t float64, out []Sample) []Sample {
	out = append(out, Sample{})
	last, here := &out[len(out)-2], &out[len(out)-1]
	s.take(f, w, t, here)
	if free := last.Depth <= Free; free == (here.Depth <= Free) && (free || !last.hook.shut && !here.hook.shut) {
		return out // nearly always
	}
	from, n := *last, *here
	out = out[:len(out)-1]
	if (n.Depth > Free) != (from.Depth > Free) {
		on := s.onset(f, w, &from, &n)
		out = append(s.peaks(f, w, &from, &on, out, 40), on)
		from = on
	}
	return append(s.peaks(f, w, &from, &n, out, 40), n)
}

// onset is the place between two samples of a span, one free and one caught,
// where catching begins; it is told as the caught side of that place.
func (s *Survey) onset(f *frame, w *wall, a, b *Sample) Sample {
	caught := *b
	lo, hi := a.T, b.T
	if a.Depth > Free {
		caught, lo, hi = *a, b.T, a.T
	}
	for range 40 {
		if c := s.at(f, w, (lo+hi)/2); c.Depth > Free {
			caught, hi = c, c.T
		} else {
			lo = c.T
		}
	}
	return caught
}

// at is the sample of a span at share t of its length.
func (s *Survey) at(f *frame, w *wall, t float64) (c Sample) {
	s.take(f, w, t, &c)
	return c
}

// take puts that sample into c, which is empty.
func (s *Survey) take(f *frame, w *wall, t float64, c *Sample) {
	at, plaster := w.beside(t)
	c.Span, c.T, c.P = w.span, t, at
	s.depth(f, plaster, plaster.R > at.R, c)
}

// depth tells how far across the pull the empty point p lies from the nearest
// place of the same gap from which it could leave; c is left as it is where p is
// free. Where the gap is shut on both sides it is the distance to the nearest free
// place beyond the pot: what would have to go for it to leave.
// outside tells that p lies beside the contour, farther from the axis than it.
func (s *Survey) depth(f *frame, p form.Point, outside bool, c *Sample) {
	v := f.to(p)
	y := v.y - drop
	k := f.env.find(v.x)
	if k < 0 {
		return
	}
	over := f.env.on(f.env.pieces[k].chord, v.x)
	if over >= y { // free
		return
	}
	c.Depth, c.hook.shut = math.Inf(1), true
	for _, dir := range [2]int{1, -1} {
		if dir < 0 && f.pull != Out && f.env.upTo[k] < y {
			continue // the axis: the other side of the pot is the same pot
		}
		to := f.env.from(k, v.x, over, y, dir)
		if dir < 0 && f.pull != Out && (to.beyond || to.at <= touch) {
			continue // the same
		}
		d := math.Abs(to.at - v.x)
		if !c.hook.shut && d >= c.Depth {
			continue
		}
		// outward of the only wall at its height stands nothing
		walled := (dir < 0 || f.pull == Out || !outside || !s.oneWall(p.Z)) && f.walled(s.tree, v, dir, d-touch)
		if walled && !c.hook.shut || walled == c.hook.shut && d >= c.Depth {
			continue
		}
		c.Depth, c.Block, c.draws = d, f.from(vec{to.at, to.block}), 0
		if f.pull != Out && !walled {
			c.draws = int8(dir)
		}
		c.hook = hook{int32(to.piece), int8(dir), walled}
	}
}

// fewRuns is up to how many runs of a contour are worth going through.
const fewRuns = 8

// runs are the heights from and to which a line runs up or down, level stretches
// counted in; nil where they are many.
func runs(line []form.Point) []interval {
	var out []interval
	way := 0
	for i, q := range line[1:] {
		p := line[i]
		if w := sign(q.Z - p.Z); len(out) == 0 || w != 0 && w != way && way != 0 {
			if len(out) == fewRuns {
				return nil
			}
			out, way = append(out, interval{p.Z, p.Z}), w
		} else if w != 0 {
			way = w
		}
		run := &out[len(out)-1]
		run.a, run.b = min(run.a, q.Z), max(run.b, q.Z)
	}
	return out
}

// oneWall tells that only one of the contour's runs passes the height z: what lies
// outside its wall has no other pot beyond it.
func (s *Survey) oneWall(z float64) bool {
	const beside = 10 * along
	n := 0
	for _, r := range s.runs {
		if r.a-beside <= z && z <= r.b+beside {
			n++
		}
	}
	return n == 1
}

type place struct {
	span int
	t    float64
}

// OpenOutward tells whether a level plane may run outward from point k of the
// meridian without meeting the pot: whether k is, at its height, the pot's
// outermost place.
func (s *Survey) OpenOutward(k int) bool {
	const tiny = 1e-7
	if open := s.frames[Out].open; k > 0 && k < len(open) && open[k-1] && open[k] && !s.leans(k-1) && !s.leans(k) {
		return true
	}
	p := s.M.Pts[k]
	env := s.frames[Out].env
	return env.free(p.Z+tiny, -p.R-1e-5) && env.free(p.Z-tiny, -p.R-1e-5)
}

// leans tells whether a span runs out or in much more than up.
func (s *Survey) leans(span int) bool {
	p, q := s.M.Pts[span], s.M.Pts[span+1]
	return math.Abs(q.R-p.R) > 50*(q.Z-p.Z)
}

// Stretch is a piece of a span, from and to in shares of its length.
type Stretch struct {
	Span     int
	From, To float64
}

// Outermost are the stretches of the contour that are, at their heights, the
// pot's outermost place, so that a level plane may run outward from them; in
// order along it. Level spans have none.
func (s *Survey) Outermost() []Stretch {
	env := s.frames[Out].env
	out := make([]Stretch, 0, len(env.pieces))
	rising := true // along the contour, as most forms are
	for i := range env.pieces {
		p := &env.pieces[i]
		if p.chord >= len(s.M.Spans) {
			continue // the disc at the rim
		}
		a, b := env.pts[p.chord].x, env.pts[p.chord+1].x
		t0, t1 := (p.x0-a)/(b-a), (p.x1-a)/(b-a)
		if t1 < t0 {
			t0, t1 = t1, t0
		}
		rising = rising && (len(out) == 0 || out[len(out)-1].Span < p.chord)
		out = append(out, Stretch{p.chord, t0, t1})
	}
	if rising {
		return out
	}
	slices.SortStableFunc(out, func(a, b Stretch) int {
		if a.Span != b.Span {
			return a.Span - b.Span
		}
		return sign(a.From - b.From)
	})
	return out
}
