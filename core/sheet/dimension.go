package sheet

import "math"

// Dimensions after ISO 129: narrow lines, filled arrows of 15 degrees, the
// figure above its line and read from below or from the right. Where there is
// no room between the arrows they point inward from outside.

const (
	arrowLength = 2.6
	arrowHalf   = 0.34 // 15 degrees closed
)

// arrow is a filled head with its tip at q, pointing along (dx, dy).
func (p *page) arrow(q point, dx, dy float64) {
	n := math.Sqrt(dx*dx + dy*dy)
	dx, dy = dx/n, dy/n
	bx, by := q.x-arrowLength*dx, q.y-arrowLength*dy
	p.fill([]point{q, {bx - arrowHalf*dy, by + arrowHalf*dx}, {bx + arrowHalf*dy, by - arrowHalf*dx}}, black)
}

// dimAcross dimensions from x0 to x1 at the height y. The middle is taken for
// an axis: the figure stands to the right of it where there is room.
func (p *page) dimAcross(x0, x1, y float64, s string, st style) {
	w := p.doc.fonts.width(s, st)
	if x1-x0 < w+2*arrowLength+2 {
		p.line(x0-2*arrowLength, y, x1+2*arrowLength+w+2, y, thin)
		p.arrow(point{x0, y}, 1, 0)
		p.arrow(point{x1, y}, -1, 0)
		p.text(x1+2*arrowLength+1, y+0.9, s, st, left)
		return
	}
	p.line(x0, y, x1, y, thin)
	p.arrow(point{x0, y}, -1, 0)
	p.arrow(point{x1, y}, 1, 0)
	mid := (x0 + x1) / 2
	if room := (x1-x0)/2 - arrowLength; room > w+3 {
		p.text(mid+1.5, y+0.9, s, st, left)
		return
	}
	// Little room: break the axis behind the figure.
	p.fillRect(rect{mid - w/2 - 0.5, y + 0.4, mid + w/2 + 0.5, y + 1.4 + st.capHeight()}, white)
	p.text(mid, y+0.9, s, st, center)
}

// dimHalf dimensions a diameter of which only the right half is drawn: the
// line runs past the axis at x0 and has one arrow, at x1.
func (p *page) dimHalf(x0, x1, y float64, s string, st style) {
	const past = 5
	w := p.doc.fonts.width(s, st)
	if x1-x0 < w+arrowLength+3 {
		p.line(x0-past, y, x1, y, thin)
		p.line(x1, y, x1+2*arrowLength+w+2, y, thin)
		p.arrow(point{x1, y}, -1, 0)
		p.text(x1+2*arrowLength+1, y+0.9, s, st, left)
		return
	}
	p.line(x0-past, y, x1, y, thin)
	p.arrow(point{x1, y}, 1, 0)
	p.text(math.Max((x0+x1)/2, x0+1.5+w/2), y+0.9, s, st, center)
}

// dimUp dimensions from y0 to y1 at x.
func (p *page) dimUp(x, y0, y1 float64, s string, st style) {
	w := p.doc.fonts.width(s, st)
	if y1-y0 < w+2*arrowLength+2 {
		p.line(x, y0-2*arrowLength, x, y1+2*arrowLength+w+2, thin)
		p.arrow(point{x, y0}, 0, 1)
		p.arrow(point{x, y1}, 0, -1)
		p.textUp(x-0.9, y1+2*arrowLength+1, s, st, left)
		return
	}
	p.line(x, y0, x, y1, thin)
	p.arrow(point{x, y0}, 0, -1)
	p.arrow(point{x, y1}, 0, 1)
	p.textUp(x-0.9, (y0+y1)/2, s, st, center)
}
