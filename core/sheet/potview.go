package sheet

import (
	"fmt"
	"image/color"
	"math"

	"github.com/tdewolff/canvas"

	"moldwright/core/form"
)

// The drawing of a question: the pot's silhouette, or its right half, tinted,
// with a ruler of heights beside it and whatever the question shows; for the
// key also what catches, where to mark, and the changed outline.

// potView is one way to draw a shape.
type potView struct {
	shape *Shape
	k     float64 // 1 is true size
	full  bool    // both sides of the axis
	key   *Worked // what the key adds, or nil
	// more is room in mm at the right for pulls whose word is longer than
	// pullWord allows for.
	more float64
}

// tint fills the pot: light enough for pencil marks to show.
var tint = color.RGBA{238, 238, 238, 255}

// Room in mm around the silhouette.
const (
	rulerRoom = 15.0 // left: the ruler and its figures
	sideRoom  = 4.0
	pullRoom  = 14.0 // an arrow beyond the pot
	heldRoom  = 15.0 // right: depths, in a key
	pullWord  = 10.0 // more, where the pull is told with the depth
	edgeRoom  = 3.5  // above and below
)

// extent is the room in model mm of pot and parts.
func (s *Shape) extent() (r, z0, z1 float64) {
	add := func(list []form.Point) {
		for _, q := range list {
			r, z0, z1 = math.Max(r, q.R), math.Min(z0, q.Z), math.Max(z1, q.Z)
		}
	}
	add(s.Contour)
	for _, g := range s.Parts {
		add(g.Outline)
	}
	return r, z0, z1
}

// pads are the rooms at the left, right, top and foot of the drawing.
func (d *potView) pads() (l, r, t, b float64) {
	l, r, t, b = rulerRoom, sideRoom, edgeRoom, edgeRoom
	if p := d.shape.Pull; p != nil {
		switch {
		case p[2] > 0.5:
			t = pullRoom
		case p[2] < -0.5:
			b = pullRoom
		case d.key != nil: // at the right stand the depths
			t = 9
		default:
			r = pullRoom
		}
	}
	if d.key != nil && (len(d.key.Held) > 0 || len(d.key.Levels) > 0) {
		if r = heldRoom; d.tellsPull() {
			r += pullWord + d.more
		}
	}
	if d.shape.Turned {
		b += 3
	}
	return l, r, t, b
}

// moreRoom is the room beyond pullWord that the longest word for a pull takes.
func (p *page) moreRoom(held []Held) (more float64) {
	const heldBy = 11.2 // mm, with its comma
	for _, h := range held {
		more = math.Max(more, p.doc.fonts.width(", "+p.way(h.Pull), smallLook.text)-heldBy)
	}
	return more
}

// tellsPull tells whether each depth of the key needs its pull beside it.
func (d *potView) tellsPull() bool { return d.shape.Pull == nil && len(d.key.Held) > 0 }

// size is the room in mm that the drawing takes.
func (d *potView) size() (w, h float64) {
	rr, z0, z1 := d.shape.extent()
	l, r, t, b := d.pads()
	if d.full {
		rr *= 2
	}
	return l + d.k*rr + r, b + d.k*(z1-z0) + t
}

// fit is the scale at which the drawing fits the room, at most 1.
func (d *potView) fit(w, h float64) float64 {
	at1 := *d
	at1.k = 1
	w1, h1 := at1.size()
	l, r, t, b := d.pads()
	return math.Max(0.01, math.Min(1, math.Min((w-l-r)/(w1-l-r), (h-t-b)/(h1-t-b))))
}

// draw sets the drawing with its lower left corner at x, y.
func (d *potView) draw(p *page, x, y float64) {
	if p.doc.dry {
		return
	}
	s := d.shape
	rr, z0, z1 := s.extent()
	left, _, _, foot := d.pads()
	axis := x + left
	if d.full {
		axis += d.k * rr
	}
	v := view{point{axis, y + foot - d.k*z0}, d.k, d.k}
	signs := []float64{1, -1}
	if !d.full {
		signs = signs[:1]
	}
	contour := s.Contour
	if d.k < 0.99 {
		contour = coarse(contour, d.k)
	}
	pot := make([]point, 0, 2*len(contour)+2)
	for _, q := range contour {
		pot = append(pot, v.at(q.R, q.Z))
	}
	end := contour[len(contour)-1]
	shade := append([]point(nil), pot...)
	if d.full {
		for i := len(contour) - 1; i >= 0; i-- {
			shade = append(shade, v.at(-contour[i].R, contour[i].Z))
		}
	} else {
		shade = append(shade, v.at(0, end.Z), v.at(0, contour[0].Z))
	}
	p.fill(shade, tint)
	letters := p.lettering()
	for i, g := range s.Parts {
		if d.k < 0.99 {
			g.Outline = coarse(g.Outline, d.k)
		}
		for _, sign := range signs {
			p.region(v, g, 0, sign, i%2 == 1, largeLook)
		}
	}
	for _, sign := range signs {
		p.stroke(mirrored(pot, v, sign), outline, 0)
	}
	if end.R > 0.05 {
		a := 0.0
		if d.full {
			a = -end.R
		}
		p.line(v.x(a), v.y(end.Z), v.x(end.R), v.y(end.Z), thin)
	}
	p.line(v.x(0), v.y(z0)-2.5, v.x(0), v.y(z1)+2.5, axisLine)
	p.ruler(x+9, v, z1)
	if s.Turned {
		p.text(v.x(0)+1.5, y+0.6, p.say("Drawn upside down, as it is cast."), faint(sizeSmall), left0(d.full))
	}
	if s.Pull != nil {
		d.pull(p, v, *s.Pull, rr, z0, z1)
	}
	for _, q := range s.Spots {
		p.spot(v.at(q.R, q.Z), "")
	}
	if d.key != nil {
		d.worked(p, v, rr, z0, z1)
	}
	w, h := d.size()
	letters.set(rect{x, y, x + w, y + h}, largeLook.letter)
}

// left0 is where words under a drawing stand from its axis.
func left0(full bool) align {
	if full {
		return center
	}
	return left
}

// mirrored is a line on the given side of the view's axis.
func mirrored(pts []point, v view, sign float64) []point {
	if sign > 0 {
		return pts
	}
	out := make([]point, len(pts))
	for i, q := range pts {
		out[i] = point{2*v.origin.x - q.x, q.y}
	}
	return out
}

// pull is the arrow of the question.
func (d *potView) pull(p *page, v view, way [3]float64, r, z0, z1 float64) {
	const length = 10.0
	switch {
	case way[2] > 0.5:
		p.pullArrow(point{v.x(0) + 5, v.y(z1) + 2.5}, 0, 1, length)
		p.text(v.x(0)+9, v.y(z1)+4.5, p.sayIn("an arrow", "Pull"), plain(sizeBody).heavy(), left)
	case way[2] < -0.5:
		p.pullArrow(point{v.x(0) + 5, v.y(z0) - 2.5}, 0, -1, length)
		p.text(v.x(0)+9, v.y(z0)-8.5, p.sayIn("an arrow", "Pull"), plain(sizeBody).heavy(), left)
	case d.key != nil:
		y := v.y(z1) + 5.5
		p.pullArrow(point{v.x(0) + 4, y}, 1, 0, length)
		p.text(v.x(0)+16, y-1, p.sayIn("an arrow", "Pull"), plain(sizeBody).heavy(), left)
	default:
		y := v.y((z0 + z1) / 2)
		p.pullArrow(point{v.x(r) + 2.5, y}, 1, 0, length)
		p.textIn(v.x(r)+3, y+3, pullRoom-1, p.sayIn("an arrow", "Pull"), plain(sizeBody).heavy(), left)
	}
}

// spot marks a place: a ring with a white rim, and its name.
func (p *page) spot(q point, name string) {
	ring := ringLine(q, 1.5, 24)
	p.stroke(ring, outline.of(1.1).in(white), 0)
	p.stroke(ring, outline, 0)
	p.line(q.x-0.5, q.y, q.x+0.5, q.y, thin)
	p.line(q.x, q.y-0.5, q.x, q.y+0.5, thin)
	if name != "" {
		p.text(q.x-2.4, q.y+1.2, name, plain(sizeSmall).heavy(), right)
	}
}

// ruler is a scale of heights above the foot: every millimetre at true size,
// wider steps where it is drawn smaller.
func (p *page) ruler(x float64, v view, top float64) {
	k := v.ky
	step, label := 1.0, 10.0
	for _, c := range [...][2]float64{{1, 10}, {5, 20}, {10, 50}, {20, 100}, {100, 500}} {
		step, label = c[0], c[1]
		if step*k >= 0.9 && label*k >= 5 {
			break
		}
	}
	path := &canvas.Path{}
	tick := func(y, length float64) {
		path.MoveTo(round4(x-length), round4(y))
		path.LineTo(round4(x), round4(y))
	}
	path.MoveTo(round4(x), round4(v.y(0)))
	path.LineTo(round4(x), round4(v.y(top)))
	for i := 0; float64(i)*step <= top+1e-9; i++ {
		z := float64(i) * step
		switch {
		case math.Mod(z, label) == 0:
			tick(v.y(z), 2.6)
			p.text(x-3.4, v.y(z)-0.9, fmt.Sprintf("%.0f", z), faint(sizeSmall), right)
		case math.Mod(z, label/2) == 0:
			tick(v.y(z), 2)
		default:
			tick(v.y(z), 1.2)
		}
	}
	p.strokePath(path, thin.of(0.18), 0)
}

// worked adds what only the key shows.
func (d *potView) worked(p *page, v view, r, z0, z1 float64) {
	w := d.key
	l := smallLook
	labels := margin{x: v.x(r) + 2.5, sign: 1}
	for _, h := range w.Held {
		line := make([]point, len(h.Stretch))
		lo, hi := math.Inf(1), math.Inf(-1)
		rim := 0.0
		for i, q := range h.Stretch {
			line[i] = v.at(q.R, q.Z)
			lo, hi, rim = math.Min(lo, q.Z), math.Max(hi, q.Z), math.Max(rim, q.R)
		}
		p.stroke(line, outline.of(1.1).in(vermilion), 0)
		words := p.mm1(h.DepthMM)
		if d.tellsPull() {
			words += ", " + p.way(h.Pull)
		}
		labels.add(label{y: v.y((lo + hi) / 2), from: v.x(rim) + 0.8, text: words,
			st: l.text.in(vermilion), line: thin.in(vermilion), weight: h.DepthMM})
	}
	for _, z := range w.Levels {
		p.line(v.x(0)-3, v.y(z), v.x(r)+2, v.y(z), outline.in(blue))
		labels.add(label{y: v.y(z), from: v.x(r) + 2, text: p.mm1(z), st: l.text.in(blue).heavy(), line: thin.in(blue), weight: math.Inf(1)})
	}
	if len(w.Line) > 1 {
		line := make([]point, len(w.Line))
		for i, q := range w.Line {
			line[i] = v.at(q.R, q.Z)
		}
		p.stroke(line, dashed.of(0.35).in(blue), 0)
	}
	labels.set(p, v.y(z0), v.y(z1), l)
	for i, q := range w.Marks {
		p.spot(v.at(q.R, q.Z), fmt.Sprint(i+1))
	}
}
