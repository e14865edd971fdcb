package sheet

import (
	"fmt"
	"math"

	"moldwright/core/form"
)

// The order of taking apart as a strip of pictures, all at one scale: caps in
// section, side parts from above, each part on its way out as its turn comes.

// strip shows the mold closed, then each step of taking it apart, then the cast.
func (f *flow) strip(in *Input) {
	s := in.chosen()
	if s == nil || len(s.Regions) == 0 || len(in.Order) == 0 {
		return
	}
	const h = 54.0
	frames := 4
	if f.paper.large() {
		frames = 6
	} else if len(in.Order) == 3 {
		frames = 5 // all in one row
	}
	x, w := f.span(1, 12)
	f.need(headingHeight + h)
	f.y = f.p.heading(x, f.y, w, f.say("Taking apart, step by step"))
	gone := map[string]bool{}
	for i := 0; i <= len(in.Order)+1; i++ {
		if i > 0 && i%frames == 0 {
			f.y -= h
			f.need(h)
		}
		cw := (w+gutter)/float64(frames) - gutter
		cx := x + float64(i%frames)*(cw+gutter)
		box := rect{cx, f.y - h + 13, cx + cw, f.y}
		words := f.sayIn("a mold", "Closed")
		switch {
		case i == 0:
			f.p.stripSection(box, in, s, gone, "")
		case i <= len(in.Order):
			letter := in.Order[i-1]
			words = letter + " " + in.named(letter)
			if p := in.part(letter); p != nil {
				words += ", " + f.pullWords(p.Pull)
				if p.Side {
					f.p.stripPlan(box, in, s, gone, letter)
				} else {
					f.p.stripSection(box, in, s, gone, letter)
				}
			}
			gone[letter] = true
		default:
			words = f.say("The cast is free")
			f.p.stripSection(box, in, s, gone, "")
		}
		st := plain(smallShare * f.paper.body())
		f.p.paragraph(cx, f.y-h+10, 4, fmt.Sprint(i+1), st.heavy())
		f.p.paragraph(cx+4, f.y-h+10, cw-4, words, st)
	}
	f.y -= h + f.gap
}

// stripSection is the mold in section, without the parts that are gone and
// with one on its way.
func (p *page) stripSection(box rect, in *Input, s *Scheme, gone map[string]bool, moving string) {
	pot := newSilhouette(firstOf(in.Wet, in.Fired))
	low := lowest(firstOf(in.Wet, in.Fired))
	z0, z1, r := in.Mold.ZBottom-low, in.Mold.ZTop-low, in.Mold.Radius
	step := 0.3 * (z1 - z0)
	// Every frame has the same scale, with room for a part to go either way.
	k := math.Min(box.w()/(2*r+2), box.h()/(z1-z0+2*step))
	v := view{point{(box.x0 + box.x1) / 2, (box.y0+box.y1)/2 - k*(z0+z1)/2}, k, k}
	l := smallLook
	letters := p.lettering()
	atRight, atLeft := s.shownSides()
	for _, part := range s.Parts {
		if gone[part.Letter] || part.Side && part.Letter != atRight.Letter && part.Letter != atLeft.Letter {
			continue
		}
		for i, g := range s.Regions {
			if g.Letter != part.Letter && !(part.Side && g.Side) {
				continue
			}
			at := v
			if part.Letter == moving {
				at.origin.y += k * step * part.Pull[2]
			}
			g.Letter, g.Outline = part.Letter, coarse(g.Outline, k)
			for _, sign := range [...]float64{1, -1} {
				if part.Side && (part.Letter == atRight.Letter) != (sign > 0) {
					continue
				}
				line := make([]point, len(g.Outline))
				for k, q := range g.Outline {
					line[k] = at.at(sign*q.R, q.Z-low)
				}
				p.hatch(line, l.hatch, (i%2 == 1) != (part.Side && sign < 0), grey)
				p.outlineOff(line, at.x(0), thin)
				if part.Side || sign > 0 {
					letters.add(part.Letter, line)
				}
			}
			if part.Letter == moving {
				seam := part.ZTo
				if part.Pull[2] > 0 {
					seam = part.ZFrom
				}
				p.pullArrow(point{v.x(0.8 * r), v.y(seam-low) + part.Pull[2]*(k*step-4)/2}, 0, part.Pull[2], 4)
			}
		}
	}
	pot.pts = coarse(pot.pts, k)
	for _, sign := range [...]float64{1, -1} {
		line := make([]point, len(pot.pts))
		for i, q := range pot.pts {
			line[i] = v.at(sign*q.R, q.Z)
		}
		p.stroke(line, l.outline, 0)
	}
	if pot.open && (in.Solid == nil || gone["K"] || moving == "K") { // else a core fills it
		p.line(v.x(-pot.rim.R), v.y(pot.rim.Z), v.x(pot.rim.R), v.y(pot.rim.Z), thin)
	}
	letters.set(box, l.letter)
}

// stripPlan is the mold from above, cut through its side parts, with one of
// them on its way.
func (p *page) stripPlan(box rect, in *Input, s *Scheme, gone map[string]bool, moving string) {
	m := &in.Mold
	step := 0.3 * m.Radius
	k := math.Min(box.w(), box.h()) / (2 * (m.Radius*m.mostReach() + step))
	v := view{point{(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2}, k, k}
	inner := 0.0
	for _, part := range s.Parts {
		for _, q := range firstOf(in.Wet, in.Fired) {
			if part.Side && q.Z >= part.ZFrom-1e-6 && q.Z <= part.ZTo+1e-6 {
				inner = math.Max(inner, q.R)
			}
		}
	}
	letters := p.lettering()
	i := 0
	for _, part := range s.Parts {
		if !part.Side {
			continue
		}
		i++
		if gone[part.Letter] {
			continue
		}
		at := v
		if part.Letter == moving {
			at.origin.x += k * step * part.Pull[0]
			at.origin.y += k * step * part.Pull[1]
		}
		p.sector(at, part, m, inner, i%2 == 1, smallLook)
		if part.Letter == moving {
			p.pullArrow(v.at(0.4*m.Radius*part.Pull[0], 0.4*m.Radius*part.Pull[1]), part.Pull[0], part.Pull[1], 4)
		}
	}
	p.stroke(arc(v, inner, m.Pot, 0, 360), smallLook.outline, 0)
	letters.set(box, smallLook.letter)
}

// sector is a side part from above: the ring between pot and block over its
// azimuths, hatched; its letter is asked for.
func (p *page) sector(v view, part Part, m *Mold, inner float64, turned bool, l look) {
	a, b := part.Sector[0], part.Sector[1]
	ring := append(arc(v, m.Radius, m.Block, a, b), arc(v, inner, m.Pot, b, a)...)
	p.hatch(ring, l.hatch, turned, grey)
	p.stroke(append(ring, ring[0]), l.outline, 0)
	p.letters.add(part.Letter, ring)
}

// arc is the piece from one azimuth in degrees to another of a shape about the
// view's origin that stands r from it, times the shape's own value; of a
// circle without one.
func arc(v view, r float64, shape []float64, from, to float64) []point {
	step := 3.0
	if len(shape) > 0 {
		step = 360 / float64(len(shape))
	}
	n := max(2, int(math.Ceil(math.Abs(to-from)/step)))
	line := make([]form.Point, n+1)
	for i := range line {
		deg := from + (to-from)*float64(i)/float64(n)
		sin, cos := math.Sincos(deg * math.Pi / 180)
		d := r * around(shape, deg)
		line[i] = form.Point{R: d * cos, Z: d * sin}
	}
	line = coarse(line, v.kx)
	out := make([]point, len(line))
	for i, q := range line {
		out[i] = v.at(q.R, q.Z)
	}
	return out
}
