package sheet

import "fmt"

// The grounds of the report, on the pages after its summary: every scheme that
// was not chosen with a picture of where it catches, the order of taking apart
// as a strip of pictures, draft by bands, findings with their remedies, the
// printed kit, what was assumed, and every casting figure with its formula and
// source.

func (f *flow) grounds(in *Input) {
	f.turn()
	f.strip(in)
	f.bands(in)
	f.findings(in)
	f.otherSchemes(in)
	f.kit(in)
	f.assumed(in)
	f.allFigures(in)
}

// pictures is how many pictures stand beside one another.
func (f *flow) pictures() int {
	if f.paper.large() {
		return 4
	}
	return 3
}

// otherSchemes draws the schemes that were not chosen, in rows.
func (f *flow) otherSchemes(in *Input) {
	var others []*Scheme
	for i := range in.Schemes {
		if s := &in.Schemes[i]; s.ID != in.Chosen {
			others = append(others, s)
		}
	}
	if len(others) == 0 {
		return
	}
	st := plain(smallShare * f.paper.body())
	const picture = 40.0
	grid := f.pictures()
	x, w := f.span(1, 12)
	_, cw := f.span(1, 12/grid)
	first := true
	for len(others) > 0 {
		row := others[:min(grid, len(others))]
		others = others[len(row):]
		h := 0.0
		for _, s := range row {
			h = max(h, f.doc.fonts.height(upperFirst(s.Name), st.heavy(), cw)+f.doc.fonts.height(f.schemeWords(s), st, cw))
		}
		h += picture + 4
		if first {
			f.need(h + headingHeight)
			f.y = f.p.heading(x, f.y, w, f.say("The schemes that were not chosen"))
			first = false
		}
		f.need(h)
		for i, s := range row {
			cx, _ := f.span(1+12/grid*i, 12/grid*(i+1))
			y := f.p.paragraph(cx, f.y, cw, upperFirst(s.Name), st.heavy())
			y = f.p.paragraph(cx, y, cw, f.schemeWords(s), st)
			f.p.picture(rect{cx, f.y - h + 4, cx + cw, y - 2.5}, in, s, smallLook)
		}
		f.y -= h
	}
	f.y -= f.gap
}

// schemeWords is the verdict on a scheme, and why.
func (l tongue) schemeWords(s *Scheme) string {
	return upperFirst(l.verdict(s.Verdict)) + ". " + upperFirst(s.Against) + "."
}

func (f *flow) bands(in *Input) {
	s := in.chosen()
	if s == nil || len(s.Parts) == 0 || len(s.Parts[0].Bands) == 0 {
		return
	}
	t := &table{cols: []column{{"", 3, left, true}, {"", 9, left, false}}}
	for _, b := range s.Parts[0].Bands {
		t.cols = append(t.cols, column{f.say("%s to %s°", f.num(b.FromDeg, 0), f.num(b.ToDeg, 0)), 7, right, false})
	}
	for _, p := range s.Parts {
		cells := []string{p.Letter, p.Name}
		for _, b := range p.Bands {
			cells = append(cells, f.num(b.AreaCM2, 1))
		}
		t.add(cells...)
	}
	f.flowTable(f.say("Draft, cm² of pot"), t)
}

func (f *flow) findings(in *Input) {
	t := &table{cols: []column{{"", 1, left, false}, {f.say("What to do"), 1, left, false}}}
	for _, g := range in.Findings {
		t.add(g.Text, g.Remedy)
	}
	f.flowTable(f.say("Findings"), t)
}

func (f *flow) kit(in *Input) {
	t := &table{cols: []column{{"", 8, left, false}, {f.say("As printed, mm"), 8, right, false}, {f.say("On the printer"), 5, right, false}}}
	for _, p := range in.Prints {
		fits := f.sayIn("a piece on the bed", "fits")
		if !p.FitsBed {
			fits = f.sayIn("a piece on the bed", "too large")
		}
		t.add(p.Name, f.sizeWords(p.Size), fits).bold = !p.FitsBed
	}
	f.flowTable(f.say("Printed kit"), t)
}

// assumed are the settings, as the job has them, with what is known of where
// each should come from.
func (f *flow) assumed(in *Input) {
	f.st = plain(smallShare * f.paper.body())
	t := &table{cols: []column{{"", 14, left, false}, {"", 9, right, false}, {"", 35, left, false}}}
	for i := range in.Assumed {
		g := &in.Assumed[i]
		t.add(g.Label, g.words(), g.Source)
	}
	if in.Traced != nil {
		t.add(f.sayIn("a setting", "Form"), f.sayIn("of a form", "traced"), in.Traced.words(f.tongue, 1))
	}
	f.flowTable(f.say("What was assumed: the settings of the job"), t)
}

// allFigures are all casting figures in small type, group by group, and the
// sources they name by number.
func (f *flow) allFigures(in *Input) {
	var sources []string
	number := map[string]int{}
	var t *table
	for i := range in.Casting {
		g := &in.Casting[i]
		if i == 0 || g.Group != in.Casting[i-1].Group {
			if t != nil {
				f.flowTable(in.Casting[i-1].Group, t)
			}
			t = &table{cols: []column{{"", 20, left, false}, {"", 8, right, false}, {f.say("Formula"), 29, left, false}, {f.say("Source"), 13, left, false}}}
		}
		source := ""
		if g.Source != "" {
			if number[g.Source] == 0 {
				sources = append(sources, g.Source)
				number[g.Source] = len(sources)
			}
			source = fmt.Sprintf("%d, ", number[g.Source])
		}
		t.add(g.Label, g.words(), g.Formula, source+g.Status)
	}
	if t != nil {
		f.flowTable(in.Casting[len(in.Casting)-1].Group, t)
	}
	list := &table{cols: []column{{"", 2, right, true}, {"", 40, left, false}}}
	for i, s := range sources {
		list.add(fmt.Sprint(i+1), s)
	}
	f.flowTable(f.say("Sources"), list)
}
