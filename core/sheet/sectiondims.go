package sheet

import "math"

// Pulls and dimensions of the section: heights from the foot at the right,
// thicknesses at the left, the opening above, the block below and the pot
// inside it, each in a column of its own so that no figure meets another.

// pulls sets an arrow and the letter for each part seen.
func (d *sectionDrawing) pulls(p *page, v view, atRight, atLeft Part) {
	m := &d.in.Mold
	const length = 7
	st := plain(sizeLead).heavy()
	open := 0.0
	if n := len(m.Opening); n > 0 {
		open = m.Opening[n-1].R
	}
	up, down := d.s.axial()
	at := point{v.x(-(open + m.Radius) / 2), v.y(m.ZTop) + 2}
	if up != "" {
		p.pullArrow(at, 0, 1, length)
		p.text(at.x+2.5, at.y+2.4, up, st, left)
	}
	if down != "" {
		at.y = v.y(m.ZBottom) - 1.5
		p.pullArrow(at, 0, -1, length)
		p.text(at.x+2.5, at.y-2.4-st.capHeight(), down, st, left)
	}
	for i, q := range [...]Part{atRight, atLeft} {
		if !q.Side {
			break
		}
		dir, a := 1.0, left
		if i == 1 {
			dir, a = -1, right
		}
		at := point{v.x(dir*m.Radius) - dir*6, v.y(m.ZTop) + 3.6}
		p.pullArrow(at, dir, 0, length)
		p.text(at.x+dir*(length+1), at.y-st.capHeight()/2, q.Letter, st, a)
	}
}

// dimensions: heights from the foot at the right, thicknesses at the left, the
// opening above and the block below.
func (d *sectionDrawing) dimensions(p *page, v view) {
	m, st, pot := &d.in.Mold, plain(sizeBody), &d.silhouette
	from := func(r, z, to float64) {
		x := v.x(r)
		p.line(x+math.Copysign(1, to-x), v.y(z), to+math.Copysign(1.5, to-x), v.y(z), thin)
	}
	x := v.x(m.Radius) + dimFirst
	for _, h := range d.heights {
		from(m.Radius, h, x)
		from(m.Radius, 0, x)
		p.dimUp(x, v.y(0), v.y(h), p.num(h, 1), st)
		x += dimNext
	}
	from(m.Radius, m.ZTop, x)
	from(m.Radius, m.ZBottom, x)
	p.dimUp(x, v.y(m.ZBottom), v.y(m.ZTop), p.num(m.ZTop-m.ZBottom, 1), st)

	x = v.x(-m.Radius) - dimFirst
	between := func(z0, z1 float64) {
		from(-m.Radius, z0, x)
		from(-m.Radius, z1, x)
		p.dimUp(x, v.y(z0), v.y(z1), p.num(z1-z0, 1), st)
		x -= dimNext
	}
	between(m.ZBottom, 0)
	if m.ZTop-m.TrimZ > 0.05 {
		between(m.TrimZ, m.ZTop)
	}
	if d.potHeight {
		between(0, pot.height)
	}

	// The block at the bottom.
	y := v.y(m.ZBottom) - 10
	for _, s := range [...]float64{1, -1} {
		p.line(v.x(s*m.Radius), v.y(m.ZBottom)-1, v.x(s*m.Radius), y-2, thin)
	}
	p.dimAcross(v.x(-m.Radius), v.x(m.Radius), y, p.across(m.Radius, m.Block), st)
	if d.cut[0] != d.cut[1] {
		return // no figure holds for both sides
	}
	// The opening at the top.
	if n := len(m.Opening); n > 0 {
		q := m.Opening[n-1]
		y := v.y(m.ZTop) + 9
		for _, s := range [...]float64{1, -1} {
			p.line(v.x(s*q.R*d.cut[0]), v.y(q.Z)+1, v.x(s*q.R*d.cut[0]), y+2, thin)
		}
		p.dimAcross(v.x(-q.R*d.cut[0]), v.x(q.R*d.cut[0]), y, p.across(q.R*d.cut[0], m.Pot), st)
		p.openingWord(v, m, d.in.Solid != nil)
	}
	// The hole in the foot, by which a pot is filled that is cast solid.
	if n := len(m.Drain); n > 0 {
		q := m.Drain[0]
		y := v.y(m.ZBottom) - 4.6
		for _, s := range [...]float64{1, -1} {
			p.line(v.x(s*q.R), v.y(m.ZBottom)-0.8, v.x(s*q.R), y-1.2, thin)
		}
		words := p.across(q.R, nil)
		if d.in.Solid != nil {
			words = p.say("Fill hole") + " " + words
		}
		p.dimAcross(v.x(-q.R), v.x(q.R), y, words, st)
	}
	if d.in.Solid != nil {
		return // within the pot lies the core
	}
	// The pot's widest place, inside it, where there is room for the figure.
	wide := pot.maxR * d.cut[0]
	words := p.across(wide, m.Pot)
	if 2*v.kx*wide > 2*p.doc.fonts.width(words, st)+12 {
		z := pot.maxRZ
		if z < 0.08*pot.height {
			z = 0.08 * pot.height
		}
		if r := pot.radiusAt(z); math.Abs(r-pot.maxR) < 0.02*pot.maxR {
			p.dimAcross(v.x(-wide), v.x(wide), v.y(z), words, st)
		}
	}
}

// across is the figure for a width of twice r: a diameter where it is round.
func (l tongue) across(r float64, shape []float64) string {
	if len(shape) == 0 {
		return "Ø " + l.num(2*r, 1)
	}
	return l.num(2*r, 1)
}

// openingWord says what the opening is, inside it where the words have room.
func (p *page) openingWord(v view, m *Mold, core bool) {
	words, st := p.say("Fill hole"), faint(sizeSmall)
	if m.Spare {
		words = p.say("Spare")
	}
	q := m.Opening[len(m.Opening)-1]
	if core || m.ZTop-m.TrimZ < 0.05 || v.kx*q.R < p.doc.fonts.width(words, st)+3 || v.ky*(m.ZTop-m.TrimZ) < 4 {
		return
	}
	p.text(v.x(0)+1.5, v.y(0.3*m.TrimZ+0.7*m.ZTop)-st.capHeight()/2, words, st, left)
}
