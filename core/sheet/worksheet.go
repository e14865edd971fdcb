package sheet

import (
	"fmt"
	"math"

	"moldwright/core/job"
)

// The student's sheet. A question on which something is measured or marked
// gets a side of its own with its drawing at true size and check bars; the
// others stand one under the other. None runs on over a page, so that the
// sheets can be printed on both sides and handed out in any binding. Every
// side has a blank for name and date, since sheets get apart.

// Worksheet draws the student's sheet. Blobs as for Profile.
func Worksheet(set ClassSet, paper Paper, as Format) (blobs [][]byte, pages int, err error) {
	d, err := worksheetDocument(set, paper)
	if err != nil {
		return nil, 0, err
	}
	return d.write(as)
}

// check refuses a set that cannot be put on paper.
func (s *ClassSet) check() error {
	if len(s.Questions) == 0 {
		return job.Faultf("no-questions", "set", "There is no question to print. Put at least one into the set.")
	}
	for i := range s.Questions {
		if q := &s.Questions[i]; q.drawn() {
			if err := checkLine(fmt.Sprintf("questions[%d]", i), q.Shape.Contour); err != nil {
				return err
			}
		}
	}
	return nil
}

func (s *ClassSet) title() string {
	if t := tidy(s.Title); t != "" {
		return t
	}
	return tongueOf(s.Language).say("Worksheet")
}

func worksheetDocument(set ClassSet, paper Paper) (*document, error) {
	if err := set.check(); err != nil {
		return nil, err
	}
	l := tongueOf(set.Language)
	doc, err := newDocument(l.say("%s – worksheet", set.title()), l)
	if err != nil {
		return nil, err
	}
	w := &worksheet{set: &set}
	w.flow = newFlow(doc, paper, func(p *page) float64 { return sheetHead(p, &set, "", w.small) })
	if w.wantsAll(&set.Questions[0]) {
		w.small, doc.pages = true, nil
		w.turn()
	}
	for i := range set.Questions {
		w.question(i + 1)
	}
	for i, p := range doc.pages {
		p.classFoot(set.Number, p.say("Worksheet · page %d of %d", i+1, len(doc.pages)))
	}
	return doc, nil
}

type worksheet struct {
	*flow
	set   *ClassSet
	small bool // the head of the first page is as small as the others
}

// wantsAll tells whether the first question is better drawn when the head of
// its page is small.
func (w *worksheet) wantsAll(q *Question) bool {
	if !q.TrueSize || !q.drawn() {
		return false
	}
	was := w.y
	lay := w.trueSize(q, 1)
	w.y = w.freshTop()
	best := w.trueSize(q, 1)
	w.y = was
	return best.better(&lay)
}

// blank is a line to write on, after its words; given words stand on it.
func (p *page) blank(x, y, w float64, words, given string) {
	st := plain(sizeBody)
	at := x + p.text(x, y, words, st, left) + 1.5
	p.line(at, y-0.8, x+w, y-0.8, thin)
	if given = p.doc.fonts.printable(given); given != "" {
		lines, st := p.doc.fonts.fit(given, st, x+w-at-2, sizeSmall, 1)
		p.text(at+1, y, lines[0], st, left)
	}
}

// sheetHead is the head of a page of worksheet or key: the title, large on the
// first unless small, blanks for name and date, and on the first the teacher's
// note. The key names itself and has no blanks.
func sheetHead(p *page, set *ClassSet, key string, small bool) float64 {
	fr := drawingFrame(p.paper)
	f := p.doc.fonts
	shown, lost := p.doc.shownName(set.title())
	first := len(p.doc.pages) == 1
	st := plain(sizeBody).heavy()
	large := first && !small
	if large {
		st = plain(sizeHead + 2).heavy()
	}
	room := fr.w()
	if key != "" {
		room -= f.width(key, plain(sizeBody).heavy()) + 8
	}
	y := fr.y1 - st.capHeight()
	if key == "" && !large {
		lines, st := f.fit(shown, st, 58, sizeSmall, 1)
		p.text(fr.x0, y, lines[0], st, left)
		p.blank(fr.x0+62, y, fr.w()-62-44, p.say("Name"), set.Student)
		p.blank(fr.x1-40, y, 40, p.say("Date"), "")
		if y -= 5; first {
			y = p.note(set, y)
		}
		return y
	}
	lines, st := f.fit(shown, st, room, min(st.size, sizeLead), 2)
	for i, line := range lines {
		if i > 0 {
			y -= st.lead()
		}
		p.text(fr.x0, y, line, st, left)
	}
	if key != "" {
		p.text(fr.x1, fr.y1-plain(sizeBody).capHeight(), key, plain(sizeBody).heavy(), right)
	}
	if lost {
		y -= 4
		p.textIn(fr.x0, y, fr.w(), p.lostNote(), faint(sizeSmall), left)
	}
	switch {
	case key == "":
		y -= 8
		p.blank(fr.x0, y, fr.w()-64, p.say("Name"), set.Student)
		p.blank(fr.x1-60, y, 60, p.say("Date"), "")
	case set.Student != "" && first:
		y -= 5
		lines, st := f.fit(p.say("For %s", set.Student), plain(sizeBody), fr.w(), sizeSmall, 1)
		p.text(fr.x0, y, lines[0], st, left)
	}
	if y -= 3; first {
		y = p.note(set, y)
	}
	return y - 1
}

// note is the teacher's note to the class.
func (p *page) note(set *ClassSet, y float64) float64 {
	note := tidy(set.Note)
	if note == "" {
		return y
	}
	fr := drawingFrame(p.paper)
	return p.paragraph(fr.x0, y, fr.w(), note, plain(sizeBody)) - 1
}

// classFoot closes a page of worksheet, key or result.
func (p *page) classFoot(number, s string) {
	fr := drawingFrame(p.paper)
	p.line(fr.x0, fr.y0+4.4, fr.x1, fr.y0+4.4, hair)
	words := p.say("Lengths in mm at mold size, heights above the foot.")
	if number != "" {
		words += " " + p.say("Set %s.", number)
	}
	p.textEnds(fr.x0, fr.x1, fr.y0+1, words, s, faint(sizeSmall))
}

// measure is the height that a block takes, laid out dry.
func (d *document) measure(lay func(p *page, y float64) float64) float64 {
	was := d.dry
	d.dry = true
	h := -lay(&page{tongue: d.tongue, doc: d}, 0)
	d.dry = was
	return h
}

// intro is the head of a question, its text and what is given.
func (q *Question) intro(p *page, n int, x, y, w float64) float64 {
	p.line(x, y, x+w, y, thin)
	st := plain(sizeLead).heavy()
	f := p.doc.fonts
	code := f.printable(q.label(p.tongue))
	p.text(x, y-5, fmt.Sprint(n), st, left)
	p.text(x+8, y-5, f.printable(q.Kind), st, left)
	p.text(x+w, y-5, code, plain(sizeBody).heavy(), right)
	used := 8 + f.width(q.Kind, st) + 5
	if room := w - used - f.width(code, plain(sizeBody).heavy()) - 5; q.Pot != "" && room > 20 {
		shown, _ := p.doc.shownName(q.Pot)
		lines, st := f.fit(shown, faint(sizeBody), room, sizeSmall, 1)
		p.text(x+used, y-5, lines[0], st, left)
	}
	y = p.paragraph(x, y-6.8, w, q.Text, plain(sizeBody+0.75)) - 0.8
	for _, g := range q.Given {
		y = p.paragraph(x, y, w, g, plain(sizeBody)) - 0.4
	}
	return y - 2
}

const (
	boxSide  = 3.4
	writeGap = 8.0 // from one line to write on to the next
)

// box is an empty square to tick.
func (p *page) box(x, y float64) { p.frame(rect{x, y, x + boxSide, y + boxSide}, thin) }

// asks is the room to answer in: boxes, lines, and so many ruled lines for
// the reasons.
func (q *Question) asks(p *page, x, y, w float64, lines int) float64 {
	f := p.doc.fonts
	head, st := plain(sizeBody).heavy(), plain(sizeBody)
	for i := range q.Asks {
		a := &q.Asks[i]
		switch a.Kind {
		case Number:
			y -= 6.5
			unit := math.Min(26, 0.34*w)
			words := a.Words
			if f.width(words, head) > w-unit-28 {
				y = p.paragraph(x, y+4.5, w, words, head) - 6.5
				words = ""
			}
			at := x
			if words != "" {
				at += p.text(x, y, words, head, left) + 2
			}
			p.line(at, y-0.8, math.Min(x+w-unit-3, at+60), y-0.8, thin)
			p.blank(math.Min(x+w-unit, at+63), y, unit, p.say("unit"), "")
			y -= 2.6
		case Redraw:
			y = p.paragraph(x, y, w, p.say("%s: draw the new outline over the drawing.", a.Words), head) - 0.6
		default:
			y = p.paragraph(x, y, w, p.asking(a), head) - 0.6
			y = p.options(a.Options, x, y, w, st)
		}
	}
	if q.Tolerance != "" {
		y = p.paragraph(x, y-0.4, w, q.Tolerance, faint(sizeSmall)) - 0.6
	}
	if lines > 0 {
		p.text(x, y-3.6, q.reasonWords(p.tongue), faint(sizeSmall), left)
		y -= 2.2
		for range lines {
			y -= writeGap
			p.line(x, y, x+w, y, thin.in(grey))
		}
		y -= 1.5
	}
	return y
}

// asking is what is asked, and how to answer on the drawing.
func (l tongue) asking(a *Ask) string {
	if a.Kind == Marks {
		return l.say("%s: with a cross on the drawing.", a.Words)
	}
	return a.Words
}

// reasonWords stand over the ruled lines.
func (q *Question) reasonWords(l tongue) string {
	for _, a := range q.Asks {
		if a.Kind == Number {
			return l.say("Your working")
		}
	}
	return l.say("Your reasons")
}

// options are boxes with their words: short ones in rows, others one under the
// other.
func (p *page) options(list []string, x, y, w float64, st style) float64 {
	if len(list) == 0 {
		return y
	}
	f := p.doc.fonts
	const beside, apart = boxSide + 1.6, 5.0
	short := true
	for _, s := range list {
		short = short && beside+f.width(f.printable(s), st) <= 0.55*w
	}
	if short {
		at := x
		y -= 5
		for _, s := range list {
			wide := beside + f.width(f.printable(s), st)
			if at > x && at+wide > x+w {
				at = x
				y -= 5.6
			}
			p.box(at, y-0.5)
			p.text(at+beside, y+0.2, s, st, left)
			at += wide + apart
		}
		return y - 2.6
	}
	for _, s := range list {
		p.box(x, y-4.1)
		y = p.paragraph(x+beside, y-0.3, w-beside, s, st) - 1.5
	}
	return y - 0.6
}

// question sets one question.
func (w *worksheet) question(n int) {
	q := &w.set.Questions[n-1]
	switch {
	case q.TrueSize && q.drawn():
		if n > 1 {
			w.turn()
		}
		lay := w.trueSize(q, n)
		w.setTrueSize(q, n, &lay)
	case q.drawn():
		w.beside(q, n)
	default:
		x, width := w.span(1, 12)
		lay := func(p *page, y float64) float64 {
			return q.asks(p, x, q.intro(p, n, x, y, width), width, 4)
		}
		w.need(w.doc.measure(lay))
		w.y = lay(w.p, w.y) - w.gap
	}
}

// freshTop is where a page after the first begins.
func (w *worksheet) freshTop() float64 { return w.fr.y1 - plain(sizeBody).heavy().capHeight() - 5 }

// beside sets a question with its drawing, not to scale, at the left and the
// room to answer in at the right.
func (w *worksheet) beside(q *Question, n int) {
	x, width := w.span(1, 12)
	_, lw := w.span(1, 6)
	rx, rw := w.span(7, 12)
	const lines = 2
	words := w.doc.measure(func(p *page, y float64) float64 { return q.asks(p, rx, y, rw, lines) })
	h := math.Max(words, 78)
	w.need(w.doc.measure(func(p *page, y float64) float64 { return q.intro(p, n, x, y, width) }) + h)
	y := q.intro(w.p, n, x, w.y, width)
	d := potView{shape: &q.Shape, full: true}
	d.k = d.fit(lw, math.Min(h, 95)-4)
	_, dh := d.size()
	d.draw(w.p, x, y-dh)
	w.p.textIn(x, y-dh-3, lw, w.say("Not to scale; the ruler tells heights in mm."), faint(sizeSmall), left)
	q.asks(w.p, rx, y, rw, lines)
	w.y = y - math.Max(words, dh+4) - w.gap
}
