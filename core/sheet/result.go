package sheet

import (
	"fmt"

	"moldwright/core/job"
	"moldwright/core/words"
)

// The result sheet: one page that a student prints and hands in, with the mark
// of each question in words, tries and help taken, and the honest word about
// pages that keep no secrets.

// ClassResult is what a student handed in, marked.
type ClassResult struct {
	Language       words.Language // as for ClassSet
	Student, Title string
	Number         string // of the set
	Rows           []ResultRow
	Score          string // in words
	Notes          []string
	Honest         string
}

// ResultRow is one question of a result.
type ResultRow struct {
	Code, Kind, Mark string
	Tries, Hints     int
	Solution         bool   // the worked solution was seen
	Words            string // on the last try
}

// Result draws the result sheet. Blobs as for Profile.
func Result(r ClassResult, paper Paper, as Format) (blobs [][]byte, pages int, err error) {
	d, err := resultDocument(r, paper)
	if err != nil {
		return nil, 0, err
	}
	return d.write(as)
}

// resultSizes are tried, largest first, with and then without the words on
// each last try, at last in two columns, until the sheet keeps to one page.
var resultSizes = [...]struct {
	size  float64
	words bool
	cols  int
}{{sizeLead, true, 1}, {sizeBody, true, 1}, {sizeSmall, true, 1}, {sizeLead, false, 1}, {sizeBody, false, 1}, {sizeSmall, false, 1}, {sizeBody, false, 2}, {sizeSmall, false, 2}}

func resultDocument(r ClassResult, paper Paper) (*document, error) {
	if len(r.Rows) == 0 {
		return nil, job.Faultf("no-answers", "result", "The result holds no question.")
	}
	l := tongueOf(r.Language)
	name := tidy(r.Title)
	if name == "" {
		name = l.say("Class set")
	}
	doc, err := newDocument(l.say("%s – result", name), l)
	if err != nil {
		return nil, err
	}
	doc.largest(len(resultSizes), func(i int) {
		f := newFlow(doc, paper, func(p *page) float64 { return resultHead(p, &r, name) })
		f.st = plain(resultSizes[i].size)
		f.result(&r, resultSizes[i].words, resultSizes[i].cols)
	})
	for i, p := range doc.pages {
		p.classFoot(r.Number, p.say("Result · page %d of %d", i+1, len(doc.pages)))
	}
	return doc, nil
}

func resultHead(p *page, r *ClassResult, name string) float64 {
	fr := drawingFrame(p.paper)
	f := p.doc.fonts
	student, lost := p.doc.shownName(tidy(r.Student))
	lines, st := f.fit(name, plain(sizeTitle).heavy(), fr.w(), sizeHead, 2)
	y := fr.y1 - st.capHeight()
	for i, line := range lines {
		if i > 0 {
			y -= st.lead()
		}
		p.text(fr.x0, y, line, st, left)
	}
	if lost {
		y -= 4
		p.textIn(fr.x0, y, fr.w(), p.lostNote(), faint(sizeSmall), left)
	}
	y -= 9
	p.blank(fr.x0, y, fr.w()-64, p.say("Name"), student)
	p.blank(fr.x1-60, y, 60, p.say("Date"), "")
	return y - 5
}

func (f *flow) result(r *ClassResult, words bool, cols int) {
	x, w := f.span(1, 12)
	f.y = f.p.paragraph(x, f.y, w, r.Score, plain(sizeHead)) - 2
	if cols == 1 {
		t := &table{cols: []column{{"", 6, right, true}, {"", 13, left, false}, {f.say("Question"), 30, left, false}, {f.sayIn("of an answer", "Mark"), 16, left, true}, {f.say("Tries"), 7, right, false}, {f.say("Hints"), 7, right, false}, {f.say("Solution"), 12, right, false}}}
		for i := range r.Rows {
			row := &r.Rows[i]
			line := t.add(fmt.Sprint(i+1), row.Code, row.Kind, row.Mark, fmt.Sprint(row.Tries), fmt.Sprint(row.Hints), f.seen(row))
			if words {
				line.note = row.Words
			}
		}
		f.flowTable(f.say("Handed in"), t)
	} else {
		f.resultColumns(r)
	}
	for _, n := range r.Notes {
		f.need(f.doc.fonts.height(n, f.st, w))
		f.y = f.p.paragraph(x, f.y, w, n, f.st)
	}
	st := faint(sizeBody)
	f.need(f.doc.fonts.height(r.Honest, st, w) + 2)
	f.y = f.p.paragraph(x, f.y-1, w, r.Honest, st)
}

// resultColumns are the rows of a long set side by side, without the kinds of
// question, which the codes begin with.
func (f *flow) resultColumns(r *ClassResult) {
	half := (len(r.Rows) + 1) / 2
	low := f.y
	for c := range 2 {
		t := &table{cols: []column{{"", 8, right, true}, {"", 20, left, false}, {f.sayIn("of an answer", "Mark"), 19, left, true}, {f.say("Tries"), 7, right, false}, {f.say("Hints"), 8, right, false}, {f.say("Solution"), 11, right, false}}}
		for i := c * half; i < min(len(r.Rows), (c+1)*half); i++ {
			row := &r.Rows[i]
			t.add(fmt.Sprint(i+1), row.Code, row.Mark, fmt.Sprint(row.Tries), fmt.Sprint(row.Hints), f.seen(row))
		}
		x, w := f.span(1+6*c, 6+6*c)
		if c == 0 {
			f.need(headingHeight + t.height(f.doc.fonts, w, f.st))
			low = f.y
		}
		low = min(low, t.set(f.p, x, f.p.heading(x, f.y, w, [...]string{f.say("Handed in"), ""}[c]), w, f.st))
	}
	f.y = low - f.gap
}

func (l tongue) seen(r *ResultRow) string {
	if r.Solution {
		return l.sayIn("of a solution", "seen")
	}
	return ""
}
