package sheet

import (
	"fmt"
	"math"
	"strings"

	"moldwright/core/job"
)

// The workshop card: one page to hang on the wall and read from the bench.
// What is weighed, how long the slip stands, what comes off first, bands and
// weights, each as a large figure under small words; cautions at the foot. Type
// is as large as the page holds.

// cardSizes are the type sizes in points that the card is tried in: of running
// words, figures and cautions.
var cardSizes = [...][3]float64{{24, 52, 18}, {21, 46, 16}, {18.5, 40, 14}, {16, 34, 12}, {14.5, 30, 11}, {sizeHead, 27, 10}, {12.5, 24, 9.5}, {sizeLead, sizeTitle, sizeBody}, {10, 18, 8}, {9, 16, 7.5}, {sizeBody, sizeHead, sizeSmall}}

func workshopDocument(in Input, paper Paper) (*document, error) {
	if len(in.Batches) == 0 && len(in.Casting) == 0 {
		return nil, job.Faultf("no-figures", "mold", "There are no figures for a workshop card.")
	}
	l := tongueOf(in.Language)
	doc, err := newDocument(l.say("%s – workshop card", in.title()), l)
	if err != nil {
		return nil, err
	}
	doc.largest(len(cardSizes), func(i int) { newCard(doc, paper, &in, cardSizes[i]).set() })
	for i, p := range doc.pages {
		p.foot(p.say("Workshop card · page %d of %d", i+1, len(doc.pages)))
	}
	return doc, nil
}

// card is the card in one choice of sizes.
type card struct {
	*flow
	in           *Input
	figure, warn style
}

func newCard(doc *document, paper Paper, in *Input, sizes [3]float64) *card {
	c := &card{in: in, figure: plain(sizes[1]).heavy(), warn: plain(sizes[2])}
	c.flow = newFlow(doc, paper, func(p *page) float64 { return cardHead(p, in, sizes) })
	c.st, c.gap = plain(sizes[0]), between*math.Min(1.4, sizes[0]/sizeBody)
	return c
}

func cardHead(p *page, in *Input, sizes [3]float64) float64 {
	fr := drawingFrame(p.paper)
	shown, lost := p.doc.shownName(in.title())
	lines, st := p.doc.fonts.fit(shown, plain(math.Max(sizes[1], sizeTitle)).heavy(), fr.w(), sizeHead, 1)
	y := fr.y1 - st.capHeight()
	p.text(fr.x0, y, lines[0], st, left)
	y -= 0.3 * st.lead()
	if lost {
		y = p.paragraph(fr.x0, y, fr.w(), p.lostNote(), faint(sizeSmall))
	}
	return p.paragraph(fr.x0, y, fr.w(), in.Verdict, plain(sizes[0])) - 0.3*st.lead()
}

func (c *card) set() {
	c.batches()
	c.cells(c.say("Casting"), c.times())
	c.order()
	c.cells(c.say("Bands and weights"), c.weights())
	c.cautions(c.in, c.warn)
}

// section opens a section that needs the height h below its heading.
func (c *card) section(name string, h float64) {
	st := plain(math.Max(sizeBody, c.warn.size)).heavy()
	head := st.lead() + 1.6
	c.need(head + h)
	x, w := c.span(1, 12)
	c.p.line(x, c.y, x+w, c.y, outline)
	c.p.text(x, c.y-st.capHeight()-1.5, name, st, left)
	c.y -= head
}

// batches is the plaster table: what to weigh for each bucket of each part.
func (c *card) batches() {
	if len(c.in.Batches) == 0 {
		return
	}
	t := &table{cols: []column{{"", 2, left, true}, {c.say("Part"), 9, left, false}, {c.say("Buckets"), 6, right, false}, {c.say("Water for each"), 10, right, true}, {c.say("Plaster for each"), 10, right, true}}}
	for _, b := range c.in.Batches {
		t.add(b.Letter, c.in.named(b.Letter), fmt.Sprint(b.Count), c.grams(b.WaterG), c.grams(b.PlasterG))
	}
	x, w := c.span(1, 12)
	c.section(c.say("Plaster: water first, then sift the plaster in"), t.height(c.doc.fonts, w, c.st))
	c.y = t.set(c.p, x, c.y, w, c.st) - c.gap
}

// bigFigure is one large figure with the words over it.
type bigFigure struct{ label, value string }

func (c *card) times() (out []bigFigure) {
	out = c.figures("slipFill", "minutes", "castsPerDay", "slipTopUp")
	if len(c.in.LaterMinutes) > 1 {
		var later []string
		for _, t := range c.in.LaterMinutes[1:] {
			later = append(later, c.num(t, 0))
		}
		out = append(out, bigFigure{c.say("Time for the casts after it"), strings.Join(later, ", ") + nbsp + "min"})
	}
	return out
}

func (c *card) weights() []bigFigure {
	return c.figures("bandForce", "bandsRound", "bandsOver", "liftFull", "liftPart", "moldDry", "castWet", "castDry", "castFired")
}

func (c *card) figures(keys ...string) (out []bigFigure) {
	for _, k := range keys {
		if g := c.in.figure(k); g != nil {
			out = append(out, bigFigure{g.Label, g.words()})
		}
	}
	return out
}

// cells sets large figures, three in a row.
func (c *card) cells(name string, list []bigFigure) {
	if len(list) == 0 {
		return
	}
	const cols = 3
	st := plain(math.Max(sizeSmall, 0.62*c.st.size))
	_, w := c.span(1, 12/cols)
	// Lines of words over the figures, row by row.
	rows := (len(list) + cols - 1) / cols
	heights := make([]float64, rows)
	total := 0.0
	for i, f := range list {
		heights[i/cols] = math.Max(heights[i/cols], c.doc.fonts.height(f.label, st, w))
	}
	for i := range heights {
		heights[i] += c.figure.capHeight() + 1.25*c.st.size*mmPerPt
		total += heights[i]
	}
	c.section(name, total)
	for i, f := range list {
		x, _ := c.span(1+12/cols*(i%cols), 12/cols*(1+i%cols))
		if i > 0 && i%cols == 0 {
			c.y -= heights[i/cols-1]
		}
		c.p.paragraph(x, c.y, w, f.label, st)
		lines, big := c.doc.fonts.fit(f.value, c.figure, w, sizeBody, 1)
		c.p.text(x, c.y-heights[i/cols]+0.8*c.st.size*mmPerPt, lines[0], big, left)
	}
	c.y -= heights[rows-1] + c.gap*0.6
}

// order is the parts in the order they come off, as large letters.
func (c *card) order() {
	if len(c.in.Order) == 0 {
		return
	}
	x, w := c.span(1, 12)
	n := float64(max(3, len(c.in.Order)))
	h := c.figure.capHeight() + c.st.lead() + 2.5
	c.section(c.say("Order of taking apart"), h)
	for i, letter := range c.in.Order {
		at := x + w/n*float64(i)
		c.p.text(at, c.y-c.figure.capHeight()-0.8, letter, c.figure, left)
		if i < len(c.in.Order)-1 {
			c.p.pullArrow(point{at + w/n - 10, c.y - 0.8 - c.figure.capHeight()/2}, 1, 0, 6)
		}
		words := c.in.named(letter)
		if p := c.in.part(letter); p != nil && len(c.in.Order) <= 4 {
			words += ", " + c.pullWords(p.Pull)
		}
		lines, st := c.doc.fonts.fit(words, plain(math.Max(sizeSmall, 0.8*c.st.size)), w/n-3, sizeSmall, 1)
		c.p.text(at, c.y-h+1.6, lines[0], st, left)
	}
	c.y -= h + c.gap*0.6
}
