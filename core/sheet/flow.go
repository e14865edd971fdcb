package sheet

import (
	"math"
	"slices"
)

// A flow sets blocks one under the other in a column grid and goes on to a
// new page where the next block would not fit. Twelve columns of the frame's
// width with gutters of 6 mm; one space between sections, one within.

const (
	gutter   = 6.0
	between  = 5.2 // mm between sections
	footRoom = 6.4 // kept for the line at the foot of each page
)

type flow struct {
	tongue
	doc   *document
	paper Paper
	p     *page
	y     float64 // top of the next block
	fr    rect
	open  func(p *page) float64 // sets the head of a new page, gives its y
	st    style                 // of running words and tables
	gap   float64               // between sections, mm
}

// smallShare is the size of small type to that of running words.
const smallShare = sizeSmall / sizeBody

func newFlow(doc *document, paper Paper, open func(p *page) float64) *flow {
	f := &flow{tongue: doc.tongue, doc: doc, paper: paper, fr: drawingFrame(paper), open: open, st: plain(sizeBody), gap: between}
	f.turn()
	return f
}

// turn goes on to a new page.
func (f *flow) turn() {
	f.p = f.doc.newPage(f.paper)
	f.y = f.open(f.p)
}

// need turns the page unless h mm are left on it.
func (f *flow) need(h float64) {
	if f.y-h < f.fr.y0+footRoom {
		f.turn()
	}
}

// span is the left edge and width of columns from..to (1 to 12).
func (f *flow) span(from, to int) (x, w float64) {
	col := (f.fr.w() - 11*gutter) / 12
	x = f.fr.x0 + float64(from-1)*(col+gutter)
	return x, float64(to-from+1)*(col+gutter) - gutter
}

// heading sets a section's name over a rule and gives the y below it.
func (p *page) heading(x, y, w float64, s string) float64 {
	p.line(x, y, x+w, y, thin)
	p.text(x, y-4.6, s, plain(p.paper.body()).heavy(), left)
	return y - headingHeight
}

const headingHeight = 6.8

// column is one column of a table: its share of the width and its side.
type column struct {
	name  string
	share float64
	side  align
	bold  bool
}

// table is rows of short texts under small column names. A note stands under
// its row over the whole width.
type table struct {
	cols   []column
	rows   []tableRow
	fitted fitKey // what the columns were last given room for
}

// fitKey is what the room of columns hangs on: width, type and number of rows.
type fitKey struct {
	w    float64
	st   style
	rows int
}

type tableRow struct {
	cells []string
	note  string
	bold  bool
}

// cellPad is the room above and below the words of a row.
func (s style) cellPad() float64 { return s.size * 0.085 }

func (t *table) add(cells ...string) *tableRow {
	t.rows = append(t.rows, tableRow{cells: cells})
	return &t.rows[len(t.rows)-1]
}

// places are the left edges and widths of the columns. In a language whose words
// are too long for a column, or whose names of columns would lie on one another,
// the widest column gives some room.
func (t *table) places(f *fonts, x, w float64, st style) (xs, ws []float64) {
	key := fitKey{w, st, len(t.rows)}
	if t.fitted == key {
		return t.shares(x, w)
	}
	t.fitted = key
	for range 60 {
		xs, ws = t.shares(x, w)
		at := t.crowded(f, xs, ws)
		if at < 0 {
			at = t.broken(f, ws, st)
		}
		if at < 0 {
			break
		}
		widest := 0
		for i := range ws {
			if ws[i] > ws[widest] {
				widest = i
			}
		}
		step := 0.04 * t.cols[widest].share
		t.cols[widest].share -= step
		t.cols[at].share += step
	}
	return xs, ws
}

// besideName tells whether the names of the columns have room beside the heading
// of the table.
func (t *table) besideName(f *fonts, name string, head, st style, w float64) bool {
	xs, ws := t.places(f, 0, w, st)
	for i, c := range t.cols {
		if c.name == "" {
			continue
		}
		from := xs[i]
		if c.side == right {
			from += ws[i] - f.width(c.name, faint(sizeSmall))
		}
		return from > f.width(name, head)+2
	}
	return true
}

// crowded is a column whose name lies on its neighbour's, or -1.
func (t *table) crowded(f *fonts, xs, ws []float64) int {
	end, last := math.Inf(-1), -1
	for i, c := range t.cols {
		if c.name == "" {
			continue
		}
		wide := f.width(c.name, faint(sizeSmall))
		from := xs[i]
		switch c.side {
		case center:
			from += (ws[i] - wide) / 2
		case right:
			from += ws[i] - wide
		}
		if from < end+0.8 {
			if c.side == left || last >= 0 && f.width(t.cols[last].name, faint(sizeSmall))-ws[last] > wide-ws[i] {
				return last
			}
			return i
		}
		end, last = from+wide, i
	}
	return -1
}

// broken is a column that is narrower than a word in it, or -1; the widest is none.
func (t *table) broken(f *fonts, ws []float64, st style) int {
	for i := range t.cols {
		if ws[i] == slices.Max(ws) {
			continue
		}
		for _, r := range t.rows {
			st.bold = r.bold || t.cols[i].bold
			if i < len(r.cells) && f.widest(r.cells[i], st) > ws[i] {
				return i
			}
		}
	}
	return -1
}

// shares are the columns by their shares of the width.
func (t *table) shares(x, w float64) (xs, ws []float64) {
	sum := 0.0
	for _, c := range t.cols {
		sum += c.share
	}
	const gap = 4.0
	for _, c := range t.cols {
		cw := c.share / sum * (w + gap)
		xs, ws = append(xs, x), append(ws, cw-gap)
		x += cw
	}
	return xs, ws
}

// rowLines are the wrapped cells of a row and the number of lines it takes.
func (t *table) rowLines(f *fonts, r tableRow, ws []float64, st style) (cells [][]string, lines int) {
	lines = 1
	for i, c := range r.cells {
		st.bold = r.bold || t.cols[i].bold
		cells = append(cells, f.wrap(c, st, ws[i]))
		lines = max(lines, len(cells[i]))
	}
	return cells, lines
}

func (t *table) headHeight() float64 {
	for _, c := range t.cols {
		if c.name != "" {
			return faint(sizeSmall).lead() + 0.9
		}
	}
	return 0
}

func (t *table) rowHeight(f *fonts, r tableRow, w float64, st style) float64 {
	_, ws := t.places(f, 0, w, st)
	_, lines := t.rowLines(f, r, ws, st)
	h := float64(lines)*st.lead() + 2*st.cellPad()
	if r.note != "" {
		h += f.height(r.note, st, w-4)
	}
	return h
}

func (t *table) height(f *fonts, w float64, st style) float64 {
	h := t.headHeight()
	for _, r := range t.rows {
		h += t.rowHeight(f, r, w, st)
	}
	return h
}

func (t *table) setHead(p *page, x, y, w float64, st style) float64 {
	if t.headHeight() == 0 {
		return y
	}
	xs, ws := t.places(p.doc.fonts, x, w, st)
	for i, c := range t.cols {
		p.cellText(xs[i], ws[i], y-2.4, c.name, faint(sizeSmall), c.side)
	}
	return y - t.headHeight()
}

func (t *table) setRow(p *page, r tableRow, x, y, w float64, st style) float64 {
	xs, ws := t.places(p.doc.fonts, x, w, st)
	cells, lines := t.rowLines(p.doc.fonts, r, ws, st)
	p.line(x, y, x+w, y, hair)
	y -= st.cellPad()
	for i, c := range cells {
		cst := st
		cst.bold = r.bold || t.cols[i].bold
		for k, s := range c {
			p.cellText(xs[i], ws[i], y-float64(k+1)*st.lead()+0.26*st.size*mmPerPt, s, cst, t.cols[i].side)
		}
	}
	y -= float64(lines) * st.lead()
	if r.note != "" {
		y = p.paragraph(x+4, y, w-4, r.note, st.in(grey))
	}
	return y - st.cellPad()
}

// set draws the whole table at a place with room for it.
func (t *table) set(p *page, x, y, w float64, st style) float64 {
	y = t.setHead(p, x, y, w, st)
	for _, r := range t.rows {
		y = t.setRow(p, r, x, y, w, st)
	}
	return y
}

func (p *page) cellText(x, w, y float64, s string, st style, a align) {
	switch a {
	case center:
		x += w / 2
	case right:
		x += w
	}
	p.text(x, y, s, st, a)
}
