package sheet

// The template: the half profile on a card that is cut along the profile and
// along its edge. The outer piece is laid against the pot or drawn past the
// turning plaster; the inner one, its straight edge on the axis, is laid
// within a mold or stands for the pot. A line across both shows where the foot
// stands, one where the rim lies.

const (
	cardMargin  = 15.0 // mm of card around the profile
	templatePad = 6.0
)

// cutLines are the edge of the card and the lines for lining up, model mm.
func (d *profileDrawing) cutLines() []drawnLine {
	e := d.extent()
	s := d.main
	lines := []drawnLine{
		{[]point{{e.x0, e.y0}, {e.x1, e.y0}, {e.x1, e.y1}, {e.x0, e.y1}, {e.x0, e.y0}}, outline.of(narrow), true},
		{[]point{{0, 0}, {e.x1, 0}}, dashed, false},
	}
	if s.open {
		// Past the rim the cut goes straight up to the edge of the card.
		lines = append(lines, drawnLine{[]point{{s.rim.R, s.rim.Z}, {s.rim.R, e.y1}}, outline, false},
			drawnLine{[]point{{s.rim.R, s.rim.Z}, {e.x1, s.rim.Z}}, dashed, false})
	}
	return lines
}

// template draws the card on one page, with the words for either piece.
func (d *profileDrawing) template(p *page, v view) {
	d.draw(p, v, nil)
	s, e := d.main, d.extent()
	st := faint(sizeSmall)
	p.textIn(v.x(0)+1.5, v.y(e.y1)+1.2, drawingFrame(p.paper).x1-v.x(0)-3, p.say("Cut along the wide line and the edge. Dashed: foot and rim, to line up by."), st, left)
	p.textUp(v.x(0)-1.2, v.y(s.height/2), p.say("Axis"), st, center)
	outside, inside := p.sayIn("side of a template", "outside"), p.sayIn("side of a template", "inside")
	p.pieceName(d, outside, v.x(e.x1)-4, v.y(s.height/2), v.ky*(s.height+2*cardMargin-12))
	// Within the profile, where it is wide enough.
	if v.kx*s.radiusAt(s.height/2) > 16 && v.ky*s.height > 30 {
		p.pieceName(d, inside, v.x(0)+8, v.y(s.height/2), v.ky*s.height-12)
	}
}

// pieceName sets the name of the pot and which piece of the card this is,
// upward; where that is too long, without the pot's name.
func (p *page) pieceName(d *profileDrawing, piece string, x, y, room float64) {
	shown, _ := p.doc.shownName(d.in.title())
	f, st := p.doc.fonts, plain(sizeBody)
	words := shown + " · " + d.sizeTag + " · " + piece
	if f.width(f.printable(words), st.at(sizeSmall)) > room {
		words = d.sizeTag + " · " + piece
	}
	lines, st := f.fit(words, st, room, sizeLeast, 1)
	p.textUp(x, y, lines[0], st, center)
}
