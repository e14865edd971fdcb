package sheet

import (
	"image/color"
	"math"
)

// Lines after ISO 128: two widths in the ratio 2 : 1, on A4 0.5 and 0.25 mm
// (common practice for that size), and the types by their numbers in part 2
// of the standard. Dashes are in line widths, as the standard gives them:
// long dash 24 d, dash 12 d, dot 0.5 d, gap 3 d.

type lineType struct {
	width  float64 // mm
	dashes []float64
	color  color.RGBA
}

const (
	wide   = 0.5
	narrow = 0.25
)

var (
	outline    = lineType{width: wide, color: black}                                             // 01.2 visible outlines
	thin       = lineType{width: narrow, color: black}                                           // 01.1 dimensions, leaders, hatching
	dashed     = lineType{width: narrow, dashes: []float64{12, 3}, color: black}                 // 02.1 hidden edges
	axisLine   = lineType{width: narrow, dashes: []float64{24, 3, 0.5, 3}, color: black}         // 04.1 centre lines
	workedLine = lineType{width: wide, dashes: []float64{6, 2, 0.5, 2}, color: black}            // 04.2 surfaces to be worked
	beforeLine = lineType{width: narrow, dashes: []float64{24, 3, 0.5, 3, 0.5, 3}, color: black} // 05.1 outlines before forming
	hair       = lineType{width: 0.13, color: pale}                                              // rules of tables
)

func (l lineType) in(c color.RGBA) lineType  { l.color = c; return l }
func (l lineType) of(width float64) lineType { l.width = width; return l }

// piece is a stretch of a line and the length of line before it.
type piece struct {
	pts   []point
	start float64
}

// clipLine is what of an open line lies in the box, piece by piece, after
// Liang and Barsky (ACM Transactions on Graphics 3, 1984).
func clipLine(pts []point, box rect) []piece {
	var out []piece
	var cur *piece
	length := 0.0
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		dx, dy := b.x-a.x, b.y-a.y
		seg := math.Sqrt(dx*dx + dy*dy)
		t0, t1 := 0.0, 1.0
		inside := true
		for _, e := range [4][2]float64{{-dx, a.x - box.x0}, {dx, box.x1 - a.x}, {-dy, a.y - box.y0}, {dy, box.y1 - a.y}} {
			switch {
			case e[0] == 0:
				inside = inside && e[1] >= 0
			case e[0] < 0:
				t0 = math.Max(t0, e[1]/e[0])
			default:
				t1 = math.Min(t1, e[1]/e[0])
			}
		}
		if inside && t0 < t1 {
			if cur == nil || t0 > 0 {
				out = append(out, piece{[]point{{a.x + t0*dx, a.y + t0*dy}}, length + t0*seg})
				cur = &out[len(out)-1]
			}
			cur.pts = append(cur.pts, point{a.x + t1*dx, a.y + t1*dy})
			if t1 < 1 {
				cur = nil
			}
		} else if seg > 0 {
			cur = nil
		}
		length += seg
	}
	return out
}

// ringLine is a circle of so many corners as a line that ends where it begins.
func ringLine(mid point, r float64, corners int) []point {
	out := make([]point, corners+1)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * float64(i%corners) / float64(corners))
		out[i] = point{mid.x + r*c, mid.y + r*s}
	}
	return out
}
