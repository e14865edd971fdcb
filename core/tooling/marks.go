package tooling

// Raised marks on printed pieces: the letter of the part and the way it is
// pulled. Letters are strokes of our own, apart like a stencil's, so that each
// stroke is one simple polygon and no glyph needs a font.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/solid"
)

// Measures of marks, mm; common practice, no source: two lines of a 0.4 mm
// nozzle wide, four layers high.
const (
	markHigh   = 6.0
	markStroke = 0.9
	markRaised = 0.8
)

// strokes of a glyph from corner to corner, in a box 2 wide and 3 high.
var strokes = map[rune][][4]float64{
	'A': {{0, 0, 1, 3}, {1.45, 2.2, 2, 0}, {0.75, 0.9, 1.3, 0.9}},
	'B': {{0, 0, 0, 3}, {0.5, 3, 1.6, 3}, {2, 2.6, 2, 1.9}, {0.5, 1.5, 1.6, 1.5}, {2, 1.1, 2, 0.4}, {0.5, 0, 1.6, 0}},
	'C': {{2, 3, 0.5, 3}, {0, 3, 0, 0}, {0.5, 0, 2, 0}},
	'D': {{0, 0, 0, 3}, {0.5, 3, 1.5, 3}, {2, 2.6, 2, 0.4}, {0.5, 0, 1.5, 0}},
	'E': {{0, 0, 0, 3}, {0.5, 3, 2, 3}, {0.5, 1.5, 1.6, 1.5}, {0.5, 0, 2, 0}},
	'F': {{0, 0, 0, 3}, {0.5, 3, 2, 3}, {0.5, 1.5, 1.6, 1.5}},
	'L': {{0, 0, 0, 3}, {0.5, 0, 2, 0}},
	'U': {{0, 3, 0, 0}, {0.5, 0, 1.5, 0}, {2, 0, 2, 3}},
	// an arrow that points up the page
	'^': {{1, 0, 1, 2.1}, {0.2, 2, 0.75, 2.9}, {1.25, 2.9, 1.8, 2}},
	// an arrow that comes out of the page, seen from its point
	'o': {{0.5, 0.5, 1.5, 0.5}, {2, 1, 2, 2}, {1.5, 2.5, 0.5, 2.5}, {0, 2, 0, 1}, {0.8, 1.5, 1.2, 1.5}},
}

// glyphs are the polygons of a line of text, each counterclockwise, mm from the
// middle of the line.
func glyphs(text string) [][][2]float64 {
	const unit = markHigh / 3
	var out [][][2]float64
	x := -float64(len(text))*1.4*unit + 0.4*unit
	for _, g := range text {
		for _, s := range strokes[g] {
			a := [2]float64{x + s[0]*unit, (s[1] - 1.5) * unit}
			b := [2]float64{x + s[2]*unit, (s[3] - 1.5) * unit}
			dx, dy := b[0]-a[0], b[1]-a[1]
			l := math.Hypot(dx, dy)
			nx, ny := -dy/l*markStroke/2, dx/l*markStroke/2
			out = append(out, [][2]float64{{a[0] - nx, a[1] - ny}, {b[0] - nx, b[1] - ny}, {b[0] + nx, b[1] + ny}, {a[0] + nx, a[1] + ny}})
		}
		x += 2.8 * unit
	}
	return out
}

// raise stands polygons out of a face and gives the loops to be left open in
// it. at places a point of the polygons at a height over the face.
func raise(b *solid.Builder, normal solid.Vec, polygons [][][2]float64, at func(x, y, h float64) solid.Vec) []solid.Loop {
	var holes []solid.Loop
	for _, poly := range polygons {
		low, high := make(solid.Loop, len(poly)), make(solid.Loop, len(poly))
		for i, q := range poly {
			low[i] = b.Vertex(at(q[0], q[1], 0))
			high[i] = b.Vertex(at(q[0], q[1], markRaised))
		}
		for i := range low {
			j := (i + 1) % len(low)
			b.Triangle(low[i], low[j], high[j])
			b.Triangle(low[i], high[j], high[i])
		}
		b.Face(normal, high)
		hole := make(solid.Loop, len(low))
		for i, v := range low {
			hole[len(low)-1-i] = v
		}
		holes = append(holes, hole)
	}
	return holes
}

// markRing lays a level face all round with marks on it, read from outside.
func markRing(b *solid.Builder, from, to solid.Loop, a, c form.Point, text string) {
	up, inner, outer := 1.0, to, from
	r := (a.R + c.R) / 2
	if c.R > a.R {
		up, inner, outer = -1, from, to
	}
	if math.Abs(c.R-a.R) < markHigh+2 || text == "" {
		b.Wall(from, to)
		return
	}
	normal := solid.Vec{0, 0, up}
	// seen from outside along -normal, y of the text points outward at azimuth
	// 0; x is then y cross normal
	holes := raise(b, normal, glyphs(text), func(x, y, h float64) solid.Vec {
		return solid.Vec{r + y, -up * x, a.Z + up*h}
	})
	out, in := outer, inner
	if up < 0 {
		out = reversed(outer)
	} else {
		in = reversed(inner)
	}
	b.Face(normal, out, append([]solid.Loop{in}, holes...)...)
}

func reversed(l solid.Loop) solid.Loop {
	out := make(solid.Loop, len(l))
	for i, v := range l {
		out[len(l)-1-i] = v
	}
	return out
}
