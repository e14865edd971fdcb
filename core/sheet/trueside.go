package sheet

// A side of a worksheet with its drawing at true size. Tried in this order
// until one fits: the whole silhouette with the answers under it, then with the
// answers beside it; the right half with the answers beside, then under; and
// last, for pots larger than the paper, the whole at a reduced scale of ISO
// 5455, which is said beside it.

// sideLayout is how a question goes on a side of its own.
type sideLayout struct {
	view   potView
	scale  int // 1 : scale
	beside bool
	lines  int
	rank   int // of the choice; less is better
	ok     bool
}

// better tells that this layout shows more of the drawing than another.
func (l *sideLayout) better(o *sideLayout) bool {
	return l.ok && (!o.ok || l.rank < o.rank)
}

const answersBeside = 52.0 // mm, the least room for answers beside a drawing

// trueSize finds the layout of a question in the room left on the page.
func (w *worksheet) trueSize(q *Question, n int) sideLayout {
	x, width := w.span(1, 12)
	intro := w.doc.measure(func(p *page, y float64) float64 { return q.intro(p, n, x, y, width) })
	room := w.y - intro - w.fr.y0 - footRoom
	try := 0
	for _, scale := range [...]int{1, 2, 5, 10, 20, 50, 100} {
		h := room
		if scale == 1 {
			h -= barStripHeight + 1
		}
		for _, c := range [...]struct{ full, beside bool }{{true, false}, {true, true}, {false, true}, {false, false}} {
			try++
			d := potView{shape: &q.Shape, k: 1 / float64(scale), full: c.full}
			dw, dh := d.size()
			aw := width
			if c.beside {
				aw = width - dw - gutter
			}
			if dw > width || c.beside && aw < answersBeside {
				continue
			}
			for lines := 4; lines > 0; lines-- {
				ah := w.doc.measure(func(p *page, y float64) float64 { return q.asks(p, 0, y, aw, lines) })
				if c.beside && max(ah, dh) <= h || !c.beside && ah+dh+2 <= h {
					return sideLayout{d, scale, c.beside, lines, try, true}
				}
			}
		}
	}
	d := potView{shape: &q.Shape, full: true}
	d.k = d.fit(width, room/2)
	return sideLayout{view: d, scale: 0, lines: 1, rank: try + 1}
}

// setTrueSize draws it.
func (w *worksheet) setTrueSize(q *Question, n int, l *sideLayout) {
	x, width := w.span(1, 12)
	y := q.intro(w.p, n, x, w.y, width)
	dw, dh := l.view.size()
	low := w.fr.y0 + footRoom
	if l.scale == 1 {
		low += barStripHeight + 1
		w.p.line(w.fr.x0, low-1, w.fr.x1, low-1, thin)
		w.p.checkBars(w.fr.x0, low-barStripHeight-1, w.fr.w(), barStripHeight, 1, 1)
	}
	scale := w.say("Not to scale")
	if l.scale > 0 {
		scale = w.say("Scale 1:%d", l.scale)
	}
	if l.scale == 1 {
		scale = w.say("True size, 1:1")
	}
	if l.beside {
		l.view.draw(w.p, x, low+(y-low-dh)/2)
		q.asks(w.p, x+dw+gutter, y, width-dw-gutter, l.lines)
		w.p.text(w.fr.x1, low+1, scale, faint(sizeSmall), right)
	} else {
		ah := w.doc.measure(func(p *page, y float64) float64 { return q.asks(p, 0, y, width, l.lines) })
		spare := max(0, y-low-ah-dh-2)
		l.view.draw(w.p, x+(width-dw)/2, y-dh-spare/2)
		w.p.text(w.fr.x1, y-2.6, scale, faint(sizeSmall), right)
		q.asks(w.p, x, low+ah, width, l.lines)
	}
	w.y = w.fr.y0 // the side is full
}
