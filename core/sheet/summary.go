package sheet

import (
	"slices"
	"strings"

	"moldwright/core/words"
)

// The lower half of the report's first page: casting figures in two columns,
// the printed kit beside them, and the cautions in two columns of small type.

// inSummary are the casting figures of the first page; the grounds have all.
var inSummary = []string{"totalShrinkage", "oversize", "plaster", "plasterWater", "waterToDry", "slipFill", "slipTaken",
	"minutes", "castWet", "castFired", "capacityFired", "castsPerDay", "liftForce", "bandForce", "liftFull"}

// figures sets casting in two columns and the prints beside them; without kits
// only the prints that are larger than the bed, and how many more there are.
func (f *flow) figures(in *Input, kits bool) {
	cast := [2]*table{}
	for i := range cast {
		cast[i] = &table{cols: []column{{"", 3, left, false}, {"", 1.4, right, false}}}
	}
	var shown []*Figure
	for _, key := range inSummary {
		if g := in.figure(key); g != nil {
			shown = append(shown, g)
		}
	}
	for i, g := range shown {
		cast[i*2/len(shown)].add(g.Label, g.words())
	}
	kit := &table{cols: []column{{"", 10, left, false}, {"", 13, right, false}}}
	more := 0
	for _, p := range f.alike(in.Prints) {
		if !kits && p.FitsBed {
			more++
			continue
		}
		r := kit.add(p.Name, f.sizeWords(p.Size))
		if r.bold = !p.FitsBed; r.bold {
			r.note = f.say("Larger than the printer's bed.")
		}
	}
	switch {
	case more == 1:
		kit.add("", "").note = f.say("One kind of piece that fits the bed; the full report lists it.")
	case more > 1:
		kit.add("", "").note = f.say("%d kinds of piece that fit the bed; the full report lists them.", more)
	}
	tables := []*table{cast[0], cast[1], kit}
	names := [...]string{f.say("Casting"), "", f.say("Printed kit, mm")}
	for len(cast[0].rows)+len(cast[1].rows)+len(kit.rows) > 0 {
		// What fits of each goes on this page, the rest on the next.
		f.need(headingHeight + 16)
		room := f.y - f.fr.y0 - footRoom - headingHeight
		low := f.y
		for i, t := range tables {
			x, w := f.span(1+4*i, 4+4*i)
			if head := t.take(f.doc.fonts, w, room, f.st); len(head.rows) > 0 {
				low = min(low, head.set(f.p, x, f.p.heading(x, f.y, w, names[i]), w, f.st))
			}
		}
		f.y = low - f.gap
		if len(cast[0].rows)+len(cast[1].rows)+len(kit.rows) > 0 {
			f.turn()
		}
	}
}

// alike are the printed pieces with those that every side part has in one row:
// "tray, parts A, B". The grounds list them all.
func (l tongue) alike(prints []Print) (out []Print) {
	var letters [][]string
	for _, p := range prints {
		at := slices.IndexFunc(out, func(o Print) bool {
			return p.Each != NoPart && o.Each == p.Each && o.FitsBed == p.FitsBed && SameSize(o.Size, p.Size)
		})
		if at < 0 {
			at = len(out)
			out, letters = append(out, p), append(letters, nil)
		}
		if letters[at] = append(letters[at], p.Letter); p.Each != NoPart {
			out[at].Name = l.each(p.Each, letters[at])
		}
	}
	return out
}

// each is a piece of one side part, or of several.
func (l tongue) each(piece EachPart, letters []string) string {
	list, one := strings.Join(letters, ", "), len(letters) == 1
	switch {
	case piece == Tray && one:
		return l.say("tray, part %s", list)
	case piece == Tray:
		return l.say("tray, parts %s", list)
	case piece == LowerEnd && one:
		return l.say("lower end board, part %s", list)
	case piece == LowerEnd:
		return l.say("lower end board, parts %s", list)
	case one:
		return l.say("upper end board, part %s", list)
	}
	return l.say("upper end board, parts %s", list)
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

// cautions stand in two columns, kept together where half a
// page holds them: a caution on a page of its own is missed.
func (f *flow) cautions(in *Input, st style) {
	if len(in.Cautions) == 0 {
		return
	}
	x, w := f.span(1, 12)
	_, cw := f.span(1, 6)
	heights := make([]float64, len(in.Cautions))
	for i, c := range in.Cautions {
		heights[i] = f.doc.fonts.height(c, st, cw-3) + cautionGap
	}
	rest := in.Cautions
	for len(rest) > 0 {
		h, n := balance(heights)
		if room := f.fr.h() / 2; h > room {
			h, n = room, 0
			for sum := 0.0; n < len(heights) && sum+heights[n] <= room; n++ {
				sum += heights[n]
			}
			n = max(n, 1)
		}
		f.need(headingHeight + h)
		f.y = f.p.heading(x, f.y, w, f.say("Take care"))
		low, i := f.y, 0
		for col := range 2 {
			cx, _ := f.span(1+6*col, 6+6*col)
			y := f.y
			for ; i < len(rest) && (col == 1 && y-heights[i] >= f.y-h-1e-9 || col == 0 && i < n); i++ {
				f.p.fillRect(rect{cx, y - heights[i] + cautionGap, cx + 0.9, y - 0.3}, vermilion)
				y = f.p.paragraph(cx+3, y, cw-3, rest[i], st) - cautionGap
			}
			low = min(low, y)
		}
		f.y = low - f.gap
		rest, heights = rest[i:], heights[i:]
	}
}

const cautionGap = 0.8

// balance splits a run of heights in two columns: the height of the taller,
// and how many go first.
func balance(heights []float64) (h float64, n int) {
	sum := 0.0
	for _, v := range heights {
		sum += v
	}
	first := 0.0
	for n < len(heights) && first < sum-first {
		first += heights[n]
		n++
	}
	// The last one may stand better at the head of the second column.
	if n > 0 && max(first-heights[n-1], sum-first+heights[n-1]) < max(first, sum-first) {
		n--
		first -= heights[n]
	}
	return max(first, sum-first), n
}

// SameSize tells whether two printed pieces have the same size as shown.
func SameSize(a, b [3]float64) bool {
	l := tongueOf(words.English)
	return l.sizeWords(a) == l.sizeWords(b)
}
