package sheet

import (
	"fmt"
	"strings"
)

// The split report: words first. Verdict; the picture beside why not fewer
// and the order; the parts; every scheme judged; figures and prints side by
// side; cautions last, where the hand is about to start. All words and
// figures come ready from the plan: a sheet computes nothing but its layout.

func reportDocument(in Input, paper Paper) (*document, error) {
	if len(in.Wet) > 0 || len(in.Fired) == 0 {
		if err := checkLine("wet", in.Wet); err != nil {
			return nil, err
		}
	} else if err := checkLine("fired", in.Fired); err != nil {
		return nil, err
	}
	doc, err := newDocument(in.title() + " – mold report")
	if err != nil {
		return nil, err
	}
	f := newFlow(doc, paper, func(p *page) float64 { return reportHead(p, &in) })
	f.verdict(&in)
	f.overview(&in)
	f.parts(&in)
	f.traps(&in)
	f.schemes(&in)
	f.figures(&in)
	f.cautions(&in)
	for i, p := range doc.pages {
		p.foot(fmt.Sprintf("Mold report · page %d of %d", i+1, len(doc.pages)), &in)
	}
	return doc, nil
}

// reportHead sets the name: large on the first page, small on those after.
func reportHead(p *page, in *Input) float64 {
	fr := drawingFrame(p.paper)
	shown, lost := p.doc.fonts.shownName(in.title())
	if len(p.doc.pages) > 1 {
		lines, st := p.doc.fonts.fit(shown, plain(sizeBody).heavy(), fr.w()-40, sizeSmall, 1)
		p.text(fr.x0, fr.y1-3.2, lines[0], st, left)
		p.text(fr.x1, fr.y1-3.2, "Mold report", faint(sizeSmall), right)
		return fr.y1 - 8
	}
	lines, st := p.doc.fonts.fit(shown, plain(sizeTitle).heavy(), fr.w()-32, sizeHead, 2)
	y := fr.y1
	for i, line := range lines {
		if i == 0 {
			y -= st.capHeight()
		} else {
			y -= st.lead()
		}
		p.text(fr.x0, y, line, st, left)
	}
	p.text(fr.x1, fr.y1-plain(sizeTitle).capHeight(), "Mold report", faint(sizeBody), right)
	y -= 3
	if lost {
		p.text(fr.x0, y-1.6, lostNote, faint(sizeSmall), left)
		y -= 4
	}
	return y
}

// foot closes a page.
func (p *page) foot(s string, in *Input) {
	fr := drawingFrame(p.paper)
	p.line(fr.x0, fr.y0+4.4, fr.x1, fr.y0+4.4, hair)
	p.text(fr.x0, fr.y0+1, "Lengths at mold size (wet), heights above the foot. Follow local rules and the makers' sheets.", faint(sizeSmall), left)
	p.text(fr.x1, fr.y0+1, s, faint(sizeSmall), right)
}

func (f *flow) verdict(in *Input) {
	st := plain(sizeHead)
	x, w := f.span(1, 12)
	f.y = f.p.paragraph(x, f.y, w, in.Verdict, st) - between
}

// overview is the picture at the left and the reasons at the right.
func (f *flow) overview(in *Input) {
	st := plain(sizeBody)
	lx, lw := f.span(1, 6)
	rx, rw := f.span(7, 12)
	pot := newSilhouette(firstOf(in.Wet, in.Fired))

	var size table
	size.cols = []column{{"", 3, left}, {"", 2, right}}
	size.add("Height", mm1(pot.height))
	size.add("Widest", "Ø "+mm1(2*pot.maxR))
	if pot.open {
		size.add("Rim", "Ø "+mm1(2*pot.rim.R))
	}
	words := headingHeight + f.doc.fonts.height(in.WhyNotFewer, st, rw) + between +
		headingHeight + float64(len(in.Order))*st.lead() + between +
		headingHeight + size.height(f.doc.fonts, rw, st)
	h := max(words, 0.27*f.fr.h())
	f.need(h)
	top := f.y

	y := f.p.heading(lx, top, lw, "Section")
	if s := in.chosen(); s != nil {
		f.p.text(lx+lw, top-4.6, "not to scale", faint(sizeSmall), right)
		f.p.picture(rect{lx, top - h, lx + lw, y}, in, s)
	}
	y = top
	if in.WhyNotFewer != "" {
		y = f.p.heading(rx, y, rw, "Why not fewer")
		y = f.p.paragraph(rx, y, rw, in.WhyNotFewer, st) - between
	}
	if len(in.Order) > 0 {
		y = f.p.heading(rx, y, rw, "Order of taking apart")
		for i, name := range in.Order {
			base := y - st.lead() + 0.26*st.size*mmPerPt
			f.p.text(rx, base, fmt.Sprint(i+1), st.heavy(), left)
			f.p.text(rx+5, base, name, st, left)
			y -= st.lead()
		}
		y -= between
	}
	y = f.p.heading(rx, y, rw, "Size of the form")
	size.set(f.p, rx, y, rw, st)
	f.y = top - h - between
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
	st := plain(sizeBody)
	x, w := f.span(1, 12)
	f.need(headingHeight + t.headHeight() + t.rowHeight(f.doc.fonts, t.rows[0], w, st))
	f.y = f.p.heading(x, f.y, w, name)
	f.y = t.setHead(f.p, x, f.y, w)
	for _, r := range t.rows {
		if h := t.rowHeight(f.doc.fonts, r, w, st); f.y-h < f.fr.y0+footRoom {
			f.turn()
			f.y = t.setHead(f.p, x, f.y, w)
		}
		f.y = t.setRow(f.p, r, x, f.y, w, st)
	}
	f.y -= between
}

func (f *flow) parts(in *Input) {
	s := in.chosen()
	if s == nil || len(s.Parts) == 0 {
		return
	}
	t := &table{cols: []column{{"Part", 22, left}, {"Pull", 21, left}, {"Verdict", 15, left}, {"Heights, mm", 23, right},
		{"Least draft", 15, right}, {"Rubs", 27, right}, {"Plaster", 16, right}, {"Water", 16, right}}}
	for _, p := range s.Parts {
		var notes []string
		for _, c := range p.Catches {
			notes = append(notes, catchWords(c))
		}
		t.add(p.Name, pullWords(p.Pull), p.Verdict, num(p.ZFrom, 1)+" – "+num(p.ZTo, 1), num(p.MinDraftDeg, 1)+"°",
			num(p.RubbingAreaCM2, 1)+nbsp+"cm², "+num(p.RubSharePercent, 1)+nbsp+"%", grams(p.PlasterG), grams(p.WaterG)).note = strings.Join(notes, " ")
	}
	f.flowTable("Parts", t)
}

func (f *flow) traps(in *Input) {
	if len(in.Traps) == 0 {
		return
	}
	t := &table{cols: []column{{"From, mm", 1, right}, {"To, mm", 1, right}, {"Depth", 1, right}, {"Volume", 1, right}}}
	for _, p := range in.Traps {
		t.add(num(p.ZFrom, 1), num(p.ZTo, 1), mm1(p.DepthMM), num(p.VolumeML, 1)+nbsp+"ml")
	}
	f.flowTable("Traps: no pull frees these", t)
}

func (f *flow) schemes(in *Input) {
	if len(in.Schemes) == 0 {
		return
	}
	t := &table{cols: []column{{"Scheme", 3, left}, {"Parts", 1, right}, {"Verdict", 2, left}, {"Parted at, mm", 3, left}, {"Why", 9, left}}}
	for i := range in.Schemes {
		s := &in.Schemes[i]
		var at []string
		for _, h := range s.PartingHeights {
			at = append(at, num(h, 1))
		}
		t.add(s.ID, fmt.Sprint(s.Count), s.Verdict, strings.Join(at, ", "), schemeWhy(in, s)).bold = s.ID == in.Chosen
	}
	f.flowTable("Every scheme judged", t)
}

// schemeWhy is the worst that is said of a scheme's parts, in few words.
func schemeWhy(in *Input, s *Scheme) string {
	if s.ID == in.Chosen {
		return "chosen"
	}
	depth, who := 0.0, ""
	share, rubs := 0.0, ""
	for _, p := range s.Parts {
		for _, c := range p.Catches {
			if c.DepthMM > depth {
				depth, who = c.DepthMM, p.Name
			}
		}
		if p.Verdict == "rubs" && p.RubSharePercent > share {
			share, rubs = p.RubSharePercent, p.Name
		}
	}
	switch {
	case who != "":
		return fmt.Sprintf("%s catches by %s", who, mm1(depth))
	case rubs != "":
		return fmt.Sprintf("%s rubs on %s%s%% of its surface", rubs, num(share, 1), nbsp)
	}
	return ""
}

// figures sets casting and prints side by side.
func (f *flow) figures(in *Input) {
	st := plain(sizeBody)
	lx, lw := f.span(1, 6)
	rx, rw := f.span(7, 12)
	cast := &table{cols: []column{{"", 3, left}, {"", 2, right}}}
	for _, g := range in.Casting {
		v := g.Value
		if g.Unit != "" {
			v += nbsp + g.Unit
		}
		cast.add(g.Label, v)
	}
	kit := &table{cols: []column{{"Piece", 8, left}, {"Size, mm", 9, right}, {"On the printer", 5, right}}}
	for _, p := range in.Prints {
		fits := "fits"
		if !p.FitsBed {
			fits = "too large"
		}
		kit.add(p.Name, fmt.Sprintf("%s × %s × %s", num(p.Size[0], 1), num(p.Size[1], 1), num(p.Size[2], 1)), fits).bold = !p.FitsBed
	}
	for len(cast.rows) > 0 || len(kit.rows) > 0 {
		// What fits of each goes on this page, the rest on the next.
		f.need(headingHeight + 16)
		room := f.y - f.fr.y0 - footRoom - headingHeight
		a, b := cast.take(f.doc.fonts, lw, room, st), kit.take(f.doc.fonts, rw, room, st)
		low := f.y
		if len(a.rows) > 0 {
			low = min(low, a.set(f.p, lx, f.p.heading(lx, f.y, lw, "Casting"), lw, st))
		}
		if len(b.rows) > 0 {
			low = min(low, b.set(f.p, rx, f.p.heading(rx, f.y, rw, "Printed kit"), rw, st))
		}
		f.y = low - between
		if len(cast.rows) > 0 || len(kit.rows) > 0 {
			f.turn()
		}
	}
}

// take splits off the rows that fit the room, at least one.
func (t *table) take(f *fonts, w, room float64, st style) *table {
	head := &table{cols: t.cols}
	h := t.headHeight()
	for len(t.rows) > 0 {
		h += t.rowHeight(f, t.rows[0], w, st)
		if h > room && len(head.rows) > 0 {
			break
		}
		head.rows = append(head.rows, t.rows[0])
		t.rows = t.rows[1:]
	}
	return head
}

func (f *flow) cautions(in *Input) {
	if len(in.Cautions) == 0 {
		return
	}
	st := plain(sizeBody)
	x, w := f.span(1, 12)
	// Kept together where a third of a page holds them: a caution on a page of
	// its own is missed.
	all := headingHeight
	for _, c := range in.Cautions {
		all += f.doc.fonts.height(c, st, w-6) + 1
	}
	if all > f.fr.h()/3 {
		all = headingHeight + f.doc.fonts.height(in.Cautions[0], st, w-6) + 1
	}
	f.need(all)
	f.y = f.p.heading(x, f.y, w, "Take care")
	for _, c := range in.Cautions {
		h := f.doc.fonts.height(c, st, w-6)
		f.need(h)
		f.p.fillRect(rect{x, f.y - h + 0.5, x + 1.2, f.y - 0.5}, vermilion)
		f.y = f.p.paragraph(x+4, f.y, w-6, c, st) - 1
	}
}
