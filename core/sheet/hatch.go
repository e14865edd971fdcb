package sheet

import (
	"image/color"
	"math"
	"sort"

	"github.com/tdewolff/canvas"
)

// hatch fills a closed outline with narrow lines at 45 degrees to the main
// outlines (ISO 128-50), spacing mm apart, falling to the right where turned
// is set.
func (p *page) hatch(outline []point, spacing float64, turned bool, c color.RGBA) {
	if p.doc.dry {
		return
	}
	path := &canvas.Path{}
	for _, s := range hatchLines(outline, spacing, turned) {
		path.MoveTo(round4(s[0].x), round4(s[0].y))
		path.LineTo(round4(s[1].x), round4(s[1].y))
	}
	if !path.Empty() {
		p.strokePath(path, thin.of(0.18).in(c), 0)
	}
}

// hatchLines are the lines of a hatching. They follow one pattern across the
// page, so that pieces of one part match; inside is by the even-odd rule.
func hatchLines(outline []point, spacing float64, turned bool) (out [][2]point) {
	step := spacing * math.Sqrt2
	side := -1.0 // u = y - x is constant along a line that rises
	if turned {
		side = 1
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range outline {
		u := q.y + side*q.x
		lo, hi = math.Min(lo, u), math.Max(hi, u)
	}
	for k := math.Ceil(lo / step); k*step < hi; k++ {
		u := k * step
		var xs []float64
		for i, a := range outline {
			b := outline[(i+1)%len(outline)]
			ua, ub := a.y+side*a.x, b.y+side*b.x
			if (ua <= u) == (ub <= u) {
				continue
			}
			xs = append(xs, a.x+(b.x-a.x)*((u-ua)/(ub-ua)))
		}
		sort.Float64s(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			if xs[i+1]-xs[i] > 0.01 {
				out = append(out, [2]point{{xs[i], u - side*xs[i]}, {xs[i+1], u - side*xs[i+1]}})
			}
		}
	}
	return out
}
