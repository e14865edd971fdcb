package sheet

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"
)

// The split report: words first. Its first page tells all that a maker needs
// (verdict, picture, why not fewer, order, parts, figures, prints, cautions);
// the pages after it show the grounds, see grounds.go. All words and figures
// come ready from the plan: a sheet computes nothing but its layout.

// ReportOptions choose what the report tells.
type ReportOptions struct {
	Summary bool // the first page only, without the grounds
}

// summaryFits are what the summary is tried with until it keeps to one page:
// the size of type in points, and what is left to the pages after it, first the
// schemes also judged, then the pieces of the kit that fit the bed. The larger
// type is for paper that hangs on a wall or is read from further off.
var summaryFits = [...]struct {
	size       float64
	also, kits bool
}{{12.5, true, true}, {sizeLead, true, true}, {10, true, true}, {sizeBody, true, true}, {8, true, true}, {7.5, true, true}, {sizeSmall, true, true}, {sizeSmall, false, true}, {sizeSmall, false, false}, {6.5, false, false}, {6, false, false}}

func reportDocument(in Input, paper Paper, opt ReportOptions) (*document, error) {
	if len(in.Wet) > 0 || len(in.Fired) == 0 {
		if err := checkLine("wet", in.Wet); err != nil {
			return nil, err
		}
	} else if err := checkLine("fired", in.Fired); err != nil {
		return nil, err
	}
	l := tongueOf(in.Language)
	doc, err := newDocument(l.say("%s – mold report", in.title()), l)
	if err != nil {
		return nil, err
	}
	var f *flow
	fits := summaryFits[:]
	for !paper.large() && fits[0].size > sizeBody {
		fits = fits[1:]
	}
	doc.largest(len(fits), func(i int) {
		fit := &fits[i]
		f = newFlow(doc, paper, func(p *page) float64 { return reportHead(p, &in) })
		f.st, f.gap = plain(fit.size), between*math.Pow(fit.size/sizeBody, 2)
		f.summary(&in, fit.also, fit.kits)
	})
	if !opt.Summary {
		f.st, f.gap = plain(f.paper.body()), between
		f.grounds(&in)
	}
	for i, p := range doc.pages {
		p.foot(p.say("Mold report · page %d of %d", i+1, len(doc.pages)))
	}
	return doc, nil
}

func (f *flow) summary(in *Input, also, kits bool) {
	x, w := f.span(1, 12)
	f.y = f.p.paragraph(x, f.y, w, in.Verdict, plain(sizeHead))
	f.y = f.p.paragraph(x, f.y, w, f.sizeOfForm(in), plain(sizeBody).in(grey)) - f.gap
	f.overview(in)
	f.parts(in)
	f.traps(in)
	if also {
		f.schemes(in)
	}
	f.figures(in, kits)
	f.cautions(in, plain(math.Min(f.st.size, math.Max(sizeSmall, smallShare*f.st.size))))
}

// reportHead sets the name: large on the first page, small on those after.
func reportHead(p *page, in *Input) float64 {
	fr := drawingFrame(p.paper)
	shown, lost := p.doc.shownName(in.title())
	if len(p.doc.pages) > 1 {
		lines, st := p.doc.fonts.fit(shown, plain(sizeBody).heavy(), fr.w()-max(40, p.doc.fonts.width(p.say("Mold report"), faint(sizeSmall))+6), sizeSmall, 1)
		p.text(fr.x0, fr.y1-3.2, lines[0], st, left)
		p.text(fr.x1, fr.y1-3.2, p.say("Mold report"), faint(sizeSmall), right)
		return fr.y1 - 8
	}
	lines, st := p.doc.fonts.fit(shown, plain(sizeTitle).heavy(), fr.w()-max(32, p.doc.fonts.width(p.say("Mold report"), faint(sizeBody))+6), sizeHead, 2)
	y := fr.y1
	for i, line := range lines {
		if i == 0 {
			y -= st.capHeight()
		} else {
			y -= st.lead()
		}
		p.text(fr.x0, y, line, st, left)
	}
	p.text(fr.x1, fr.y1-plain(sizeTitle).capHeight(), p.say("Mold report"), faint(sizeBody), right)
	y -= 3
	if lost {
		p.textIn(fr.x0, y-1.6, fr.w(), p.lostNote(), faint(sizeSmall), left)
		y -= 4
	}
	return y
}

// foot closes a page.
func (p *page) foot(s string) {
	fr := drawingFrame(p.paper)
	p.line(fr.x0, fr.y0+4.4, fr.x1, fr.y0+4.4, hair)
	p.textEnds(fr.x0, fr.x1, fr.y0+1, p.say("Lengths at mold size (wet), heights above the foot. Follow local rules and the makers' sheets."), s, faint(sizeSmall))
}

// overview is the picture at the left, the reasons and the order at the right.
func (f *flow) overview(in *Input) {
	st := f.st
	lx, lw := f.span(1, 6)
	rx, rw := f.span(7, 12)
	why := f.whyNotFewer(in, rw)
	order := f.orderTable(in)
	words := 0.0
	if len(order.rows) > 0 {
		words += headingHeight + order.height(f.doc.fonts, rw, st)
	}
	if len(why) > 0 {
		words += headingHeight + f.gap
	}
	for _, s := range why {
		words += f.doc.fonts.height(s, st, rw) + whyGap
	}
	h := max(words, 0.2*f.fr.h())
	f.need(h)
	top := f.y

	y := f.p.heading(lx, top, lw, f.sayIn("a drawing", "Section"))
	if s := in.chosen(); s != nil {
		f.p.text(lx+lw, top-4.6, f.say("not to scale"), faint(sizeSmall), right)
		f.p.picture(rect{lx, top - h, lx + lw, y}, in, s, largeLook)
	}
	y = top
	if len(why) > 0 {
		y = f.p.heading(rx, y, rw, f.say("Why not fewer"))
		for _, s := range why {
			y = f.p.paragraph(rx, y, rw, s, st) - whyGap
		}
		y -= f.gap
	}
	if len(order.rows) > 0 {
		y = f.p.heading(rx, y, rw, f.say("Order of taking apart"))
		order.set(f.p, rx, y, rw, st)
	}
	f.y = top - h - f.gap
}

const whyGap = 0.6 // mm between one reason and the next

// whyNotFewer is a sentence for each scheme with fewer parts than the chosen.
func (f *flow) whyNotFewer(in *Input, w float64) (why []string) {
	if c := in.chosen(); c != nil {
		for i := range in.Schemes {
			if s := &in.Schemes[i]; s.Count < c.Count {
				why = append(why, f.say("%s: %s.", upperFirst(s.Name), s.Against))
			}
		}
	}
	// A mold of many parts has many reasons: those with the most parts but
	// one, that came nearest, stay; the table on the pages after has them all.
	const most = 6
	if len(why) > most {
		why = append(why[len(why)-most:], f.say("The other schemes with fewer parts catch or rub as well."))
	}
	if len(why) == 0 && in.WhyNotFewer != "" {
		why = []string{in.WhyNotFewer}
	}
	return why
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	_, n := utf8.DecodeRuneInString(s)
	return strings.ToUpper(s[:n]) + s[n:]
}

// orderTable is the letters in the order in which the parts come off, with
// what they are called: the key to the letters of the picture.
func (l tongue) orderTable(in *Input) *table {
	t := &table{cols: []column{{"", 2, left, true}, {"", 2, left, true}, {"", 10, left, false}, {"", 9, right, false}}}
	for i, letter := range in.Order {
		pull := ""
		if p := in.part(letter); p != nil {
			pull = l.pullWords(p.Pull)
		}
		t.add(fmt.Sprint(i+1), letter, in.named(letter), pull)
	}
	return t
}

// sizeOfForm is the size of the form in words, wet and fired.
func (l tongue) sizeOfForm(in *Input) string {
	var out []string
	if len(in.Wet) > 0 {
		pot := newSilhouette(in.Wet)
		if pot.open {
			out = append(out, l.say("Wet %s high, Ø %s, rim Ø %s.", l.mm1(pot.height), l.mm1(2*pot.maxR), l.mm1(2*pot.rim.R)))
		} else {
			out = append(out, l.say("Wet %s high, Ø %s.", l.mm1(pot.height), l.mm1(2*pot.maxR)))
		}
	}
	if len(in.Fired) > 0 {
		pot := newSilhouette(in.Fired)
		if pot.open {
			out = append(out, l.say("Fired %s high, Ø %s, rim Ø %s.", l.mm1(pot.height), l.mm1(2*pot.maxR), l.mm1(2*pot.rim.R)))
		} else {
			out = append(out, l.say("Fired %s high, Ø %s.", l.mm1(pot.height), l.mm1(2*pot.maxR)))
		}
	}
	return strings.Join(out, " ")
}

func firstOf[T any](a, b []T) []T {
	if len(a) > 0 {
		return a
	}
	return b
}

// flowTable sets a table under a heading over the full width; it breaks
// between rows and repeats its column names.
func (f *flow) flowTable(name string, t *table) {
	if len(t.rows) == 0 {
		return
	}
	x, w := f.span(1, 12)
	// The names of the columns stand beside the heading, over the columns that
	// it leaves free, or, where the heading is too long, under it.
	room := headingHeight + t.rowHeight(f.doc.fonts, t.rows[0], w, f.st)
	beside := t.besideName(f.doc.fonts, name, plain(f.paper.body()).heavy(), f.st, w)
	if !beside {
		room += t.headHeight()
	}
	if f.need(room); beside {
		t.setHead(f.p, x, f.y-2.2, w, f.st)
	}
	if f.y = f.p.heading(x, f.y, w, name); !beside {
		f.y = t.setHead(f.p, x, f.y, w, f.st)
	}
	for _, r := range t.rows {
		if h := t.rowHeight(f.doc.fonts, r, w, f.st); f.y-h < f.fr.y0+footRoom {
			f.turn()
			f.y = t.setHead(f.p, x, f.y, w, f.st)
		}
		f.y = t.setRow(f.p, r, x, f.y, w, f.st)
	}
	f.y -= f.gap
}

// below sets a line in small type under the table that stands last.
func (f *flow) below(s string) {
	x, w := f.span(1, 12)
	st := plain(smallShare * f.paper.body())
	h := f.doc.fonts.height(s, st, w)
	f.y += f.gap
	f.need(h + 1.5)
	f.y = f.p.paragraph(x, f.y-1.5, w, s, st) - f.gap
}

func (f *flow) parts(in *Input) {
	s := in.chosen()
	if s == nil {
		return
	}
	t := &table{cols: []column{{"", 6, left, true}, {"", 17, left, false}, {f.say("Verdict"), 13, left, false}, {f.say("Heights, mm"), 23, right, false},
		{f.say("Least draft"), 16, right, false}, {f.sayIn("head of a column", "Rubs"), 27, right, false}, {f.say("Plaster"), 17, right, false}, {f.say("Water"), 17, right, false}, {f.sayIn("weight of a part", "Dry"), 17, right, false}}}
	told := map[string]bool{}
	for _, p := range s.Parts {
		var notes []string
		for _, c := range p.Catches {
			if n := f.catchWords(c); !p.Side || !told[n] {
				notes, told[n] = append(notes, n), true
			}
		}
		t.add(p.Letter, p.Name, f.verdict(p.Verdict), f.num(p.ZFrom, 1)+" – "+f.num(p.ZTo, 1), f.num(p.MinDraftDeg, 1)+"°",
			f.num(p.RubbingAreaCM2, 1)+nbsp+"cm², "+f.num(p.RubSharePercent, 1)+nbsp+"%", f.grams(p.PlasterG), f.grams(p.WaterG), f.grams(p.DryG)).note = strings.Join(notes, " ")
	}
	f.flowTable(f.say("Parts"), t)
}

func (f *flow) traps(in *Input) {
	t := &table{cols: []column{{"", 2, left, false}, {f.say("From, mm"), 1, right, false}, {f.say("To, mm"), 1, right, false}, {f.say("Depth"), 1, right, false}, {f.say("Volume"), 1, right, false}}}
	for _, p := range in.Traps {
		t.add(f.say("Change the form there, or fill it"), f.num(p.ZFrom, 1), f.num(p.ZTo, 1), f.mm1(p.DepthMM), f.num(p.VolumeML, 1)+nbsp+"ml")
	}
	f.flowTable(f.sayIn("head of a table of places", "No pull frees"), t)
}

// schemes lists what else could be made: as many parts as the chosen scheme
// has, or one more. Those with fewer stand under why not fewer, and all have
// their pictures among the grounds.
func (f *flow) schemes(in *Input) {
	c := in.chosen()
	if c == nil {
		return
	}
	t := f.schemeTable()
	more := 0
	for i := range in.Schemes {
		s := &in.Schemes[i]
		switch {
		case s.Count > c.Count+1:
			more++
		case s.Count >= c.Count:
			f.addScheme(t, in, s)
		}
	}
	f.flowTable(f.say("Also judged"), t)
	if more == 0 {
		return
	}
	rest := f.say("One more, with still more parts, was judged.")
	if more > 1 {
		rest = f.say("%d more, with still more parts, were judged.", more)
	}
	f.below(rest)
}

func (l tongue) schemeTable() *table {
	return &table{cols: []column{{"", 43, left, false}, {l.say("Parted at, mm"), 17, left, false}, {"", 129, left, false}}}
}

func (l tongue) addScheme(t *table, in *Input, s *Scheme) {
	var at []string
	for _, h := range s.PartingHeights {
		at = append(at, l.num(h, 1))
	}
	why := upperFirst(s.Against)
	if s.ID == in.Chosen {
		why = l.say("Chosen: %s", l.verdict(s.Verdict))
	}
	t.add(upperFirst(s.Name), strings.Join(at, ", "), why).bold = s.ID == in.Chosen
}
