package sheet

import (
	"image/color"
	"math"

	"github.com/tdewolff/canvas"
)

// A document is a list of pages; a page is a list of strokes, fills and lines
// of text in mm from its lower left corner, kept until it is written, so that
// what is on it can be checked: each line of text leaves its box.

type document struct {
	tongue
	title string
	fonts *fonts
	pages []*page
	dry   bool // lay out only: nothing is shaped or kept to be drawn
}

// largest lays a sheet out in the first of n choices, largest type first, that
// keeps it to one page, or in the last. Layouts are tried dry, which costs
// little.
func (d *document) largest(n int, lay func(choice int)) {
	d.dry = true
	choice := 0
	for ; choice < n-1; choice++ {
		d.pages = nil
		if lay(choice); len(d.pages) == 1 {
			break
		}
	}
	d.dry, d.pages = false, nil
	lay(choice)
}

type page struct {
	tongue
	doc   *document
	paper Paper
	ops   []func(canvas.Renderer)
	boxes []textBox
	uses  [2]bool // regular, bold
	// letters, of a picture that is being drawn, note its lines.
	letters *lettering
}

// textBox is the room that a line of text takes on its page, mm.
type textBox struct {
	text           string
	x0, y0, x1, y1 float64
}

// point is a place on a page, mm from its lower left corner.
type point struct{ x, y float64 }

// rect is a box on a page, mm.
type rect struct{ x0, y0, x1, y1 float64 }

func (r rect) w() float64 { return r.x1 - r.x0 }
func (r rect) h() float64 { return r.y1 - r.y0 }

// view places a drawing on a page: its own origin and its scales across and
// up. With scale 1 a millimetre is a millimetre.
type view struct {
	origin point
	kx, ky float64
}

func (v view) x(x float64) float64   { return v.origin.x + v.kx*x }
func (v view) y(y float64) float64   { return v.origin.y + v.ky*y }
func (v view) at(x, y float64) point { return point{v.x(x), v.y(y)} }

// round4 rounds to 0.0001 mm, far below what a printer holds, so that the
// last bits of a sine or a root never reach the file.
func round4(v float64) float64 { return math.Round(v*1e4) / 1e4 }

func newDocument(title string, l tongue) (*document, error) {
	f, err := loadFonts()
	if err != nil {
		return nil, err
	}
	return &document{tongue: l, title: title, fonts: f}, nil
}

func (d *document) newPage(paper Paper) *page {
	p := &page{tongue: d.tongue, doc: d, paper: paper}
	d.pages = append(d.pages, p)
	return p
}

func trace(pts []point, closed bool) *canvas.Path {
	path := &canvas.Path{}
	for i, q := range pts {
		if i == 0 {
			path.MoveTo(round4(q.x), round4(q.y))
		} else {
			path.LineTo(round4(q.x), round4(q.y))
		}
	}
	if closed {
		path.Close()
	}
	return path
}

// stroke draws an open line. Start is the length of line that came before its
// first point, so that dashes run on where a line was cut.
func (p *page) stroke(pts []point, l lineType, start float64) {
	if len(pts) < 2 || p.doc.dry {
		return
	}
	if p.letters != nil {
		p.letters.ink(pts...)
	}
	p.strokePath(trace(pts, false), l, start)
}

func (p *page) strokePath(path *canvas.Path, l lineType, start float64) {
	st := canvas.DefaultStyle
	st.Fill = canvas.Paint{}
	st.Stroke = canvas.Paint{Color: l.color}
	st.StrokeWidth = l.width
	st.StrokeCapper, st.StrokeJoiner = canvas.ButtCap, canvas.RoundJoin
	if l.dashes != nil {
		st.Dashes = l.dashes // in line widths, as ISO 128 gives them
		st.DashOffset = round4(start / l.width)
	}
	p.ops = append(p.ops, func(r canvas.Renderer) { r.RenderPath(path, st, canvas.Identity) })
}

func (p *page) line(x0, y0, x1, y1 float64, l lineType) {
	p.stroke([]point{{x0, y0}, {x1, y1}}, l, 0)
}

func (p *page) frame(r rect, l lineType) {
	p.stroke([]point{{r.x0, r.y0}, {r.x1, r.y0}, {r.x1, r.y1}, {r.x0, r.y1}, {r.x0, r.y0 - l.width/2}}, l, 0)
}

func (p *page) fill(pts []point, c color.RGBA) {
	if p.doc.dry {
		return
	}
	path := trace(pts, true)
	st := canvas.DefaultStyle
	st.Fill = canvas.Paint{Color: c}
	p.ops = append(p.ops, func(r canvas.Renderer) { r.RenderPath(path, st, canvas.Identity) })
}

func (p *page) fillRect(r rect, c color.RGBA) {
	p.fill([]point{{r.x0, r.y0}, {r.x1, r.y0}, {r.x1, r.y1}, {r.x0, r.y1}}, c)
}

// align is where a line of text stands from its given place.
type align int

const (
	left align = iota
	center
	right
)

// text sets one line with its baseline at y and gives its width.
func (p *page) text(x, y float64, s string, st style, a align) float64 {
	return p.setText(x, y, s, st, a, false)
}

// textUp sets one line that reads upward, its baseline at x.
func (p *page) textUp(x, y float64, s string, st style, a align) {
	p.setText(x, y, s, st, a, true)
}

func (p *page) setText(x, y float64, s string, st style, a align, up bool) float64 {
	s = p.doc.fonts.printable(s)
	if s == "" {
		return 0
	}
	if p.doc.dry {
		return p.doc.fonts.width(s, st)
	}
	line := p.doc.fonts.line(s, st)
	w := line.width
	shift := 0.0
	switch a {
	case center:
		shift = -w / 2
	case right:
		shift = -w
	}
	asc, desc := st.capHeight(), 0.22*st.size*mmPerPt
	m := canvas.Identity
	if up {
		y += shift
		m = m.Translate(round4(x), round4(y)).Rotate(90)
		// Rotate leaves the sine's last bit; a quarter turn has none.
		m[0][0], m[0][1], m[1][0], m[1][1] = 0, -1, 1, 0
		p.boxes = append(p.boxes, textBox{s, x - asc, y, x + desc, y + w})
	} else {
		x += shift
		m = m.Translate(round4(x), round4(y))
		p.boxes = append(p.boxes, textBox{s, x, y - desc, x + w, y + asc})
	}
	if st.bold {
		p.uses[1] = true
	} else {
		p.uses[0] = true
	}
	p.ops = append(p.ops, func(r canvas.Renderer) { line.write(r, m) })
	return w
}
