package sheet

import (
	"math"
	"sort"

	"moldwright/core/form"
)

// The picture of a scheme in the report: elevation to the left of the axis,
// section to the right, as large as its box allows (it says so: not to
// scale), parts hatched this way and that and lettered, parting lines with
// their heights, pulls as arrows, and each stretch that catches marked with a
// heavy line and its depth.

// look is how large a picture's words and marks are.
type look struct {
	text, letter style
	hatch        float64 // mm from line to line
	words        float64 // mm kept at either side
	arrow        float64 // mm
	outline      lineType
}

var (
	largeLook = look{plain(sizeBody), plain(sizeLead).heavy(), 1.6, 19, 6, outline}
	smallLook = look{plain(sizeSmall), plain(sizeBody).heavy(), 1.3, 14, 4, outline.of(0.35)}
)

// picture draws the scheme in the box.
func (p *page) picture(box rect, in *Input, s *Scheme, l look) {
	if p.doc.dry {
		return
	}
	pts := firstOf(in.Wet, in.Fired)
	low := lowest(pts)
	pot := newSilhouette(pts)
	// The extent of pot and plaster, in mm of the form.
	r, z0, z1 := pot.maxR, 0.0, pot.height
	for _, g := range s.Regions {
		for _, q := range g.Outline {
			r, z0, z1 = math.Max(r, q.R), math.Min(z0, q.Z-low), math.Max(z1, q.Z-low)
		}
	}
	rows := 1.5*l.arrow + 1
	k := math.Min((box.w()-2*l.words)/(2*r), (box.h()-2*rows)/(z1-z0))
	v := view{point{(box.x0 + box.x1) / 2, box.y0 + (box.h()-k*(z1-z0))/2 - k*z0}, k, k}
	pot.pts = coarse(pot.pts, k)

	letters := p.lettering()
	for i, g := range s.Regions {
		g.Outline = coarse(g.Outline, k)
		p.region(v, g, low, 1, i%2 == 1, l)
	}
	both := func(sign float64) {
		line := make([]point, len(pot.pts))
		for i, q := range pot.pts {
			line[i] = v.at(sign*q.R, q.Z)
		}
		p.stroke(line, l.outline, 0)
	}
	both(1)
	both(-1)
	if pot.open {
		mouth := pot.rim.R
		if in.Solid != nil { // in the section a core fills it
			mouth = 0
		}
		p.line(v.x(-pot.rim.R), v.y(pot.rim.Z), v.x(mouth), v.y(pot.rim.Z), thin)
	}
	p.line(v.x(0), v.y(z0)-2.5, v.x(0), v.y(z1)+2.5, axisLine)

	left, right := margin{x: v.x(-r) - 3, sign: -1}, margin{x: v.x(r) + 3, sign: 1}
	for _, h := range s.PartingHeights {
		y := v.y(h - low)
		rim := v.x(-pot.radiusAt(h - low))
		p.line(left.x+1, y, rim, y, l.outline.in(blue))
		p.line(rim, y, v.x(0), y, thin.in(blue)) // the seam, seen on the pot
		p.line(v.x(pot.radiusAt(h-low)), y, v.x(r)+2, y, l.outline.in(blue))
		left.add(label{y: y, from: left.x + 1, text: p.mm1(h), st: l.text.in(blue), line: thin.in(blue)})
	}
	p.catches(v, &pot, low, s, &right, l)
	p.pulls(v, s, z0, z1, low, &left, &right, l)
	lo, hi := v.y(z0)-rows, v.y(z1)+rows
	left.set(p, lo, hi, l)
	right.set(p, lo, hi, l)
	letters.set(rect{v.x(-r) - 8, lo, v.x(r) + 8, hi}, l.letter)
}

// coarse is a line with only the points that show on paper at the scale k, to
// 0.02 mm.
func coarse(pts []form.Point, k float64) []form.Point {
	out, _ := form.Thin(pts, make([]bool, len(pts)), 0.02/k)
	return out
}

// region hatches one part on the given side of the axis and asks for its letter.
func (p *page) region(v view, g Region, low, sign float64, turned bool, l look) {
	line := make([]point, len(g.Outline))
	for i, q := range g.Outline {
		line[i] = v.at(sign*q.R, q.Z-low)
	}
	p.hatch(line, l.hatch, turned, grey)
	p.stroke(append(line, line[0]), thin, 0)
	p.letters.add(g.Letter, line)
}

// label is one line of words beside a picture, wanted at the height y and led
// there from the place from; or a pull with its letter.
type label struct {
	y, from float64
	text    string
	st      style
	line    lineType
	pull    bool
	weight  float64 // the least goes first where there is no room for all
}

// margin is the labels at one side of a picture, from x outward.
type margin struct {
	x, sign float64
	labels  []label
}

func (c *margin) add(l label) { c.labels = append(c.labels, l) }

// set draws the labels between two heights, moved apart where they would lie
// on one another.
func (c *margin) set(p *page, lo, hi float64, l look) {
	gap := l.text.lead()
	if room := int((hi - lo) / gap); len(c.labels) > room {
		sort.SliceStable(c.labels, func(i, k int) bool { return c.labels[i].weight > c.labels[k].weight })
		c.labels = c.labels[:room]
	}
	sort.SliceStable(c.labels, func(i, k int) bool { return c.labels[i].y < c.labels[k].y })
	ys := make([]float64, len(c.labels))
	for i, b := range c.labels {
		ys[i] = b.y
	}
	spread(ys, gap, lo, hi)
	for i, b := range c.labels {
		y, x := ys[i], c.x
		if b.pull {
			p.pullArrow(point{x, y}, c.sign, 0, l.arrow)
			x += c.sign * (l.arrow + 1.2)
		} else {
			p.stroke([]point{{b.from, b.y}, {x, b.y}, {x + c.sign*2, y}}, b.line, 0)
			x += c.sign * 2.6
		}
		a := left
		if c.sign < 0 {
			a = right
		}
		p.text(x, y-b.st.capHeight()/2, b.text, b.st, a)
	}
}

// spread moves rising places apart by at least gap, as little as need be, and
// keeps them between lo and hi where they fit.
func spread(ys []float64, gap, lo, hi float64) {
	for i := range ys {
		least := lo
		if i > 0 {
			least = ys[i-1] + gap
		}
		ys[i] = math.Max(ys[i], least)
	}
	for i := len(ys) - 1; i >= 0; i-- {
		most := hi
		if i < len(ys)-1 {
			most = ys[i+1] - gap
		}
		ys[i] = math.Min(ys[i], most)
	}
}

// catches marks the stretches that catch on the section side.
func (p *page) catches(v view, pot *silhouette, low float64, s *Scheme, right *margin, l look) {
	side := false
	for _, part := range s.Parts {
		if part.Side && side {
			continue // side parts are alike
		}
		side = side || part.Side
		for _, c := range part.Catches {
			band := rect{v.x(0), v.y(c.ZFrom-low) - 0.01, v.x(pot.maxR) + 1, v.y(c.ZTo-low) + 0.01}
			line := make([]point, len(pot.pts))
			for i, q := range pot.pts {
				line[i] = v.at(q.R, q.Z)
			}
			for _, piece := range clipLine(line, band) {
				p.stroke(piece.pts, l.outline.of(2.4*l.outline.width).in(vermilion), 0)
			}
			mid := (c.ZFrom + c.ZTo) / 2
			right.add(label{y: v.y(mid - low), from: v.x(pot.radiusAt(mid-low)) + 0.8, text: p.mm1(c.DepthMM),
				st: l.text.in(vermilion), line: thin.in(vermilion), weight: c.DepthMM})
		}
	}
}

// pulls draws the arrows: up and down on the axis, sideways at mid height.
func (p *page) pulls(v view, s *Scheme, z0, z1, low float64, leftCol, rightCol *margin, l look) {
	st := l.text.heavy()
	x := v.x(0) + 4
	up, down := s.axial()
	if up != "" {
		y := v.y(z1) + 1.5
		p.pullArrow(point{x, y}, 0, 1, l.arrow)
		p.text(x+2, y+(l.arrow-st.capHeight())/2, up, st, left)
	}
	if down != "" {
		y := v.y(z0) - 1.5
		p.pullArrow(point{x, y}, 0, -1, l.arrow)
		p.text(x+2, y-(l.arrow+st.capHeight())/2, down, st, left)
	}
	// In the section only two side parts are seen.
	atRight, atLeft := s.shownSides()
	for _, part := range s.Parts {
		b := label{y: v.y((part.ZFrom+part.ZTo)/2 - low), text: part.Letter, st: st, pull: true, weight: math.Inf(1)}
		switch {
		case part.Side && part.Letter == atRight.Letter:
			rightCol.add(b)
		case part.Side && part.Letter == atLeft.Letter:
			leftCol.add(b)
		}
	}
}

// pullArrow is a heavy arrow from q along (dx, dy).
func (p *page) pullArrow(q point, dx, dy, length float64) {
	head, half := 0.43*length, 0.18*length
	p.line(q.x, q.y, q.x+dx*(length-head), q.y+dy*(length-head), outline.of(0.12*length))
	bx, by := q.x+dx*(length-head), q.y+dy*(length-head)
	if p.letters != nil {
		p.letters.ink(point{bx - dy*half, by + dx*half}, point{q.x + dx*length, q.y + dy*length}, point{bx + dy*half, by - dx*half})
	}
	p.fill([]point{{q.x + dx*length, q.y + dy*length}, {bx - dy*half, by + dx*half}, {bx + dy*half, by - dx*half}}, black)
}

// catchWords tells one catch.
func (l tongue) catchWords(c Catch) string {
	s := l.say("Catches by %s from %s to %s mm, blocked at %s mm.", l.mm1(c.DepthMM), l.num(c.ZFrom, 1), l.num(c.ZTo, 1), l.num(c.BlockedAtZ, 1))
	if c.ClayForgives {
		s += " " + l.say("Only the positive catches; the shrunken cast lets go.")
	}
	return s
}
