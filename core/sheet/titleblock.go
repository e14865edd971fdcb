package sheet

import (
	"fmt"
	"hash/crc32"
	"strings"

	"moldwright/core/form"
)

// The frame after ISO 5457 (20 mm at the left for filing, 10 mm elsewhere)
// and the title block after ISO 7200: 180 mm wide, at the lower right, with
// owner, number, date, sheet, title, approval, creator and type of document.
// Owner, date and approval are left open for the hand: the program keeps no
// clock and knows no one.

const (
	marginLeft  = 20.0
	marginOther = 10.0
	blockWidth  = 180.0
	blockHeight = 22.0
)

// blockFields is what a title block says of its sheet.
type blockFields struct {
	name, kind, number, scale, size string
	sheet, of                       int
}

// drawingFrame is the room inside the frame of a page.
func drawingFrame(paper Paper) rect {
	return rect{marginLeft, marginOther, paper.W - marginOther, paper.H - marginOther}
}

// titleBlock draws frame and block and gives the room above the block.
func (p *page) titleBlock(f blockFields) rect {
	fr := drawingFrame(p.paper)
	p.frame(fr, outline)
	x0 := fr.x1 - blockWidth
	y0, y1, y2 := fr.y0, fr.y0+blockHeight/2, fr.y0+blockHeight
	p.line(fr.x0, y2, fr.x1, y2, outline)
	p.line(fr.x0, y1, fr.x1, y1, thin)

	shown, lost := p.doc.shownName(f.name)
	upper := []cell{{38, p.say("Owner"), ""}, {58, p.say("Type of document"), f.kind}, {34, p.sayIn("of a drawing", "Number"), f.number}, {28, p.sayIn("fired or wet", "Size"), f.size}, {22, p.sayIn("of several", "Sheet"), p.say("%d of %d", f.sheet, f.of)}}
	lower := []cell{{96, p.say("Title"), ""}, {18, p.say("Scale"), f.scale}, {22, p.say("Created by"), "Moldwright"}, {24, p.say("Approved by"), ""}, {20, p.say("Date"), ""}}
	p.cells(upper, x0, fr.x0, y1, y2)
	p.cells(lower, x0, fr.x0, y0, y1)

	tx, tw := fr.x0+1.6, x0+lower[0].w-fr.x0-3.2
	base := y0 + 1.8
	if lost {
		p.textIn(tx, y0+1.2, tw, p.lostNote(), faint(sizeSmall), left)
		base += 2
	}
	lines, st := p.doc.fonts.fit(shown, plain(sizeLead).heavy(), tw, sizeSmall, 1)
	if !lost && strings.HasSuffix(lines[0], "…") {
		lines, st = p.doc.fonts.fit(shown, plain(sizeSmall).heavy(), tw, sizeSmall, 2)
	}
	for i, line := range lines {
		p.text(tx, base+float64(len(lines)-1-i)*st.lead(), line, st, left)
	}
	return rect{fr.x0, y2, fr.x1, fr.y1}
}

// cell is one field of a row of the block.
type cell struct {
	w            float64
	label, value string
}

// cells draws one row; its first cell reaches to the frame at the left.
func (p *page) cells(row []cell, x, xFrame, y0, y1 float64) {
	for i, c := range row {
		cx, cw := x, c.w
		if i == 0 {
			cx, cw = xFrame, x+c.w-xFrame
		} else {
			p.line(x, y0, x, y1, thin)
		}
		p.textIn(cx+1.6, y1-2.9, cw-2.4, c.label, faint(sizeSmall), left)
		lines, st := p.doc.fonts.fit(c.value, plain(sizeBody), cw-3.2, sizeSmall, 1)
		if len(lines) > 0 {
			p.text(cx+1.6, y0+2.2, lines[0], st, left)
		}
		x += c.w
	}
}

// drawingNumber tells drawings apart: the same lines give the same number.
func drawingNumber(name string, lines ...[]form.Point) string {
	h := crc32.NewIEEE()
	fmt.Fprintf(h, "%s\n", name)
	for _, l := range lines {
		for _, q := range l {
			fmt.Fprintf(h, "%.3f %.3f\n", q.R, q.Z)
		}
		fmt.Fprintln(h)
	}
	return fmt.Sprintf("%08X", h.Sum32())
}
