package sheet

import (
	"fmt"
	"slices"
	"strings"
)

// The teacher's key, on pages of its own: of each question the answer, a small
// drawing with what catches and where to mark, the reasons step by step, and the
// common errors with where they come from.

// Key draws the key to a worksheet. Blobs as for Profile.
func Key(set ClassSet, paper Paper, as Format) (blobs [][]byte, pages int, err error) {
	d, err := keyDocument(set, paper)
	if err != nil {
		return nil, 0, err
	}
	return d.write(as)
}

func keyDocument(set ClassSet, paper Paper) (*document, error) {
	if err := set.check(); err != nil {
		return nil, err
	}
	l := tongueOf(set.Language)
	doc, err := newDocument(l.say("%s – key", set.title()), l)
	if err != nil {
		return nil, err
	}
	k := &key{newFlow(doc, paper, func(p *page) float64 { return sheetHead(p, &set, p.say("Key, for the teacher"), false) })}
	for i := range set.Questions {
		k.question(&set.Questions[i], i+1)
	}
	for i, p := range doc.pages {
		p.classFoot(set.Number, p.say("Key · page %d of %d", i+1, len(doc.pages)))
	}
	return doc, nil
}

type key struct{ *flow }

// answer is the right answer in words: of choices each with its question, else
// in short.
func (q *Question) answer(l tongue) (out []string) {
	for i, t := range q.Key.Ticked {
		if i < len(q.Asks) && q.Asks[i].Kind == Tick && t >= 0 && t < len(q.Asks[i].Options) {
			asked, told := q.Asks[i].Words, q.Asks[i].Options[t]
			if strings.HasSuffix(asked, "?") {
				out = append(out, asked+" "+told)
			} else {
				out = append(out, l.say("%s: %s", asked, told))
			}
		}
	}
	if len(out) == 0 {
		out = []string{upperFirst(q.Key.Short)}
	}
	return out
}

// keyHead is the head of a question and its answer.
func (q *Question) keyHead(p *page, n int, x, y, w float64) float64 {
	p.line(x, y, x+w, y, thin)
	st := plain(sizeBody).heavy()
	f := p.doc.fonts
	p.text(x, y-4.6, fmt.Sprint(n), st, left)
	p.text(x+8, y-4.6, q.Kind, st, left)
	code := f.printable(q.label(p.tongue))
	p.text(x+w, y-4.6, code, st, right)
	used := 8 + f.width(q.Kind, st) + 5
	if room := w - used - f.width(code, st) - 5; q.Pot != "" && room > 20 {
		shown, _ := p.doc.shownName(q.Pot)
		lines, st := f.fit(shown, faint(sizeBody), room, sizeSmall, 1)
		p.text(x+used, y-4.6, lines[0], st, left)
	}
	y = p.paragraph(x, y-6.2, w, q.Text, faint(sizeSmall))
	for _, g := range q.Given {
		y = p.paragraph(x, y, w, g, faint(sizeSmall))
	}
	y -= 0.6
	for _, a := range q.answer(p.tongue) {
		y = p.paragraph(x, y, w, a, plain(sizeLead).heavy()) - 0.3
	}
	if q.Tolerance != "" {
		y = p.paragraph(x, y, w, q.Tolerance, faint(sizeSmall))
	}
	return y - 1.2
}

// reasonLine is one line of words of the key: under a heading, numbered or not.
type reasonLine struct {
	mark, words string
	head        bool
}

func (q *Question) reasonLines(l tongue) (out []reasonLine) {
	if len(q.Key.Steps) > 0 {
		out = append(out, reasonLine{"", l.say("Reasons"), true})
	}
	// Steps that begin with a figure of their own are not numbered.
	numbered := !slices.ContainsFunc(q.Key.Steps, func(s string) bool { return s != "" && s[0] >= '0' && s[0] <= '9' })
	for i, s := range q.Key.Steps {
		mark := "–"
		if numbered {
			mark = fmt.Sprint(i + 1)
		}
		out = append(out, reasonLine{mark, s, false})
	}
	if len(q.Key.Slips) > 0 {
		out = append(out, reasonLine{"", l.say("Common errors, and where they come from"), true})
	}
	for _, s := range q.Key.Slips {
		out = append(out, reasonLine{"–", s, false})
	}
	return out
}

func (p *page) reasonLine(l reasonLine, x, y, w float64) float64 {
	if l.head {
		return p.paragraph(x, y-0.8, w, l.words, plain(sizeBody).heavy()) - 0.4
	}
	p.text(x, y-plain(sizeBody).lead()+0.26*sizeBody*mmPerPt, l.mark, faint(sizeBody), left)
	return p.paragraph(x+5, y, w-5, l.words, plain(sizeBody)) - 0.5
}

const (
	keyDrawing = 62.0 // mm, the least height for a drawing in the key
	keyMost    = 100.0
)

func (k *key) question(q *Question, n int) {
	x, w := k.span(1, 12)
	rx, rw := x, w
	dw := 0.0
	if q.drawn() {
		_, dw = k.span(1, 5)
		rx, rw = k.span(6, 12)
	}
	lines := q.reasonLines(k.tongue)
	head := k.doc.measure(func(p *page, y float64) float64 { return q.keyHead(p, n, x, y, w) })
	words := k.doc.measure(func(p *page, y float64) float64 {
		for _, l := range lines {
			y = p.reasonLine(l, rx, y, rw)
		}
		return y
	})
	h := words
	d := potView{shape: &q.Shape, full: true, key: &q.Key, more: k.p.moreRoom(q.Key.Held)}
	dh := 0.0
	if q.drawn() {
		d.k = d.fit(dw, min(max(h, keyDrawing), keyMost))
		_, dh = d.size()
		h = max(h, dh)
	}
	if head+h > k.fr.h()-2*footRoom-20 {
		k.long(q, n, lines)
		return
	}
	k.need(head + h)
	y := q.keyHead(k.p, n, x, k.y, w)
	if q.drawn() {
		d.draw(k.p, x, y-dh)
	}
	low := y
	for _, l := range lines {
		low = k.p.reasonLine(l, rx, low, rw)
	}
	k.y = y - h - k.gap
}

// long sets a question whose reasons take more than a page: over the full
// width, from page to page.
func (k *key) long(q *Question, n int, lines []reasonLine) {
	x, w := k.span(1, 12)
	head := k.doc.measure(func(p *page, y float64) float64 { return q.keyHead(p, n, x, y, w) })
	k.need(head + keyDrawing)
	k.y = q.keyHead(k.p, n, x, k.y, w)
	if q.drawn() {
		d := potView{shape: &q.Shape, full: true, key: &q.Key, more: k.p.moreRoom(q.Key.Held)}
		d.k = d.fit(w, keyDrawing)
		_, dh := d.size()
		k.y -= dh
		d.draw(k.p, x, k.y)
	}
	for _, l := range lines {
		k.need(k.doc.measure(func(p *page, y float64) float64 { return p.reasonLine(l, x, y, w) }))
		k.y = k.p.reasonLine(l, x, k.y, w)
	}
	k.y -= k.gap
}
