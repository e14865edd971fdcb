package tooling

// Raised marks on printed pieces: the letter of the part, by which the drawings
// name it too, the number of a stave, and the way the part is pulled. Letters
// are outlines of the sheets' own font (glyphs.go). A mark on an upright face is
// pushed out upward at 45 degrees, so that its undersides print without
// supports.

import (
	"math"

	"moldwright/core/solid"
)

// Measures of marks, mm; common practice, no source: letters of the bold font
// 6 mm high have strokes of two lines and more of a 0.4 mm nozzle, and stand
// four layers high.
const (
	markHigh   = 6.0
	markRaised = 0.8
	markRoom   = 1.2 // kept clear around
)

// glyph is one raised shape, mm from the middle of its line: a loop
// counterclockwise, then clockwise the hollows in it, each followed by what is
// raised within it, counterclockwise again.
type glyph = [][][2]float64

// arrowUp points up the line, in the units of letters; arrowOut is the point of
// an arrow that comes toward the reader: a dot within a ring.
var arrowUp = outline{150, [][]int16{{57, 0, 93, 0, 93, 110, 145, 110, 75, 200, 5, 110, 57, 110}}}

const arrowOutWide = 220

// lettering are the shapes of a line of capitals, figures and arrows, ^ up the
// line and @ toward the reader, and its width in mm.
func lettering(text string) (list []glyph, wide float64) {
	const unit = markHigh / capHeight
	x := 0.0
	list = make([]glyph, 0, len(text))
	add := func(o *outline) {
		n := 0
		for _, l := range o.loops {
			n += len(l) / 2
		}
		g, room := make(glyph, len(o.loops)), make([][2]float64, n)
		for k, l := range o.loops {
			n := len(l) / 2
			g[k], room = room[:n:n], room[n:]
			for i := range n {
				g[k][i] = [2]float64{x + unit*float64(l[2*i]), unit*float64(l[2*i+1]) - markHigh/2}
			}
		}
		list = append(list, g)
		x += unit * float64(o.wide)
	}
	for _, r := range text {
		switch {
		case r == '^':
			add(&arrowUp)
		case r == '@':
			mid := [2]float64{x + unit*arrowOutWide/2, 0}
			list = append(list, glyph{circle(mid, markHigh/2), clockwise(circle(mid, markHigh/2-1.1)), circle(mid, 0.9)})
			x += unit * arrowOutWide
		case r >= 'A' && r <= 'Z':
			add(&letters[r-'A'])
		case r >= '0' && r <= '9':
			add(&letters[26+r-'0'])
		}
	}
	for _, g := range list {
		for _, l := range g {
			for i := range l {
				l[i][0] -= x / 2
			}
		}
	}
	return list, x
}

func circle(mid [2]float64, radius float64) [][2]float64 {
	const steps = 24
	out := make([][2]float64, steps)
	for i := range out {
		sin, cos := solid.SinCosDeg(360 / steps * float64(i))
		out[i] = [2]float64{mid[0] + radius*cos, mid[1] + radius*sin}
	}
	return out
}

func clockwise(l [][2]float64) [][2]float64 {
	out := make([][2]float64, len(l))
	for i, p := range l {
		out[len(l)-1-i] = p
	}
	return out
}

// raise stands shapes out of a face by a height and gives the loops to be left
// open in it. at places a point of the shapes at a height over the face, and
// must keep them counterclockwise seen from outside.
func raise(b *solid.Builder, normal solid.Vec, list []glyph, high float64, at func(x, y, h float64) solid.Vec) []solid.Loop {
	var holes []solid.Loop
	for _, g := range list {
		var tops []solid.Loop
		var ground []solid.Loop // within a hollow
		level := func() {
			if ground != nil {
				b.Face(normal, ground[0], ground[1:]...)
				ground = nil
			}
		}
		for k, poly := range g {
			low, top := make(solid.Loop, len(poly)), make(solid.Loop, len(poly))
			for i, q := range poly {
				low[i] = b.Vertex(at(q[0], q[1], 0))
				top[i] = b.Vertex(at(q[0], q[1], high))
			}
			side(b, low, top)
			switch {
			case k == 0:
				holes = append(holes, reversed(low))
				tops = append(tops, top)
			case loopArea(poly) < 0:
				level()
				ground = append(ground, reversed(low))
				tops = append(tops, top)
			default:
				ground = append(ground, reversed(low))
				b.Face(normal, top)
			}
		}
		level()
		b.Face(normal, tops[0], tops[1:]...)
	}
	return holes
}

// sign is a line of shapes on a face whose middle is at o: x runs along the
// line and y up it, both of length one. lean is 1 on a face that is upright
// when printed with y up.
type sign struct {
	list       []glyph
	o, x, y, n solid.Vec
	lean       float64
}

// raise stands the sign out of its face; the loops are to be left open there.
func (s sign) raise(b *solid.Builder) []solid.Loop {
	return raise(b, s.n, s.list, markRaised, s.at)
}

// at is a point of the sign's frame at a height over its face.
func (s sign) at(x, y, h float64) (p solid.Vec) {
	for k := range 3 {
		p[k] = s.o[k] + x*s.x[k] + (y+s.lean*h)*s.y[k] + h*s.n[k]
	}
	return p
}

// ringSign is where a piece's mark stands on its level rim between corners a
// and c: read from outside, in the middle of the piece or of a face of the
// block where there is room. way is that of the rim's normal.
func (t *turned) ringSign(a, c corner, way float64) (sign, bool) {
	list, wide := lettering(t.marks)
	inner, outer := math.Min(a.R, c.R), math.Max(a.R, c.R)
	r := (inner + outer) / 2
	for _, az := range t.places() {
		sin, cos := solid.SinCosDeg(az)
		f := t.md.Block.Reach(az)
		o := solid.Vec{r * f * cos, r * f * sin, a.Z}
		if n := float64(t.md.Block.Facets); n > 0 { // along the nearest face
			sin, cos = solid.SinCosDeg(math.Round(az/(360/n)) * 360 / n)
		}
		s := sign{list: list, o: o, x: solid.Vec{-way * sin, way * cos, 0}, y: solid.Vec{-cos, -sin, 0}, n: solid.Vec{0, 0, way}}
		ok := true
		for _, d := range [8][2]float64{{-1, -1}, {0, -1}, {1, -1}, {1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}} {
			x, y := d[0]*(wide/2+markRoom), d[1]*(markHigh/2+markRoom)
			p := solid.Vec{s.o[0] + x*s.x[0] + y*s.y[0], s.o[1] + x*s.x[1] + y*s.y[1]}
			at := math.Atan2(p[1], p[0]) * 180 / math.Pi
			far := math.Hypot(p[0], p[1]) / t.md.Block.Reach(at)
			ok = ok && far > inner && far < outer && (t.to-t.from >= 360 || inside(at, t.from, t.to))
		}
		if ok {
			return s, true
		}
	}
	return sign{}, false
}

// places are azimuths for a mark, degrees: the middle of the piece, those of the
// block's faces in it, then a quarter from its ends.
func (t *turned) places() []float64 {
	if t.to-t.from >= 360 {
		if n := t.md.Block.Facets; n > 0 {
			return []float64{360 / float64(n)}
		}
		return []float64{90}
	}
	out := []float64{(t.from + t.to) / 2}
	if n := t.md.Block.Facets; n > 0 {
		for k := range 2 * n {
			if az := 360 / float64(n) * float64(k); az > t.from && az < t.to {
				out = append(out, az)
			}
		}
	}
	return append(out, t.from+(t.to-t.from)/4, t.to-(t.to-t.from)/4)
}

// markRing lays a level rim with the piece's mark on it.
func (t *turned) markRing(b *solid.Builder, from, to solid.Loop, a, c corner) {
	way, inner, outer := 1.0, to, from
	if c.R > a.R {
		way, inner, outer = -1, from, to
	}
	s, ok := t.ringSign(a, c, way)
	if t.marks == "" || !ok {
		b.Wall(from, to)
		return
	}
	holes := s.raise(b)
	if t.to-t.from < 360 {
		loop := append(append(solid.Loop{}, outer...), reversed(inner)...)
		if way < 0 {
			loop = reversed(loop)
		}
		b.Face(s.n, loop, holes...)
		return
	}
	if way < 0 {
		outer = reversed(outer)
	} else {
		inner = reversed(inner)
	}
	b.Face(s.n, outer, append([]solid.Loop{inner}, holes...)...)
}

func reversed(l solid.Loop) solid.Loop {
	out := make(solid.Loop, len(l))
	for i, v := range l {
		out[len(l)-1-i] = v
	}
	return out
}
