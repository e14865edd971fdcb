package sheet

import (
	"math"
)

// The plan of the seam, beside the section: the mold from above with what lies
// over its lowest seam taken off. It shows where the natches stand, how side
// parts divide the block, and the plane of the section (ISO 128-44), and is
// turned so that the first side part lies to the right, as in the section.

// secTurn is the azimuth in degrees that lies to the right.
func (d *sectionDrawing) secTurn() float64 {
	if sides := d.s.sides(); len(sides) > 0 {
		return (sides[0].Sector[0] + sides[0].Sector[1]) / 2
	}
	return 0
}

// planHalf is how far the block reaches across or up the plan, mm.
func (d *sectionDrawing) planHalf() float64 {
	m, half := &d.in.Mold, 1.0
	for i, reach := range m.Block {
		sin, cos := math.Sincos((360*float64(i)/float64(len(m.Block)) - d.secTurn()) * math.Pi / 180)
		half = math.Max(half, reach*math.Max(math.Abs(sin), math.Abs(cos)))
	}
	return half * m.Radius
}

func (d *sectionDrawing) planView(p *page, v view) {
	m := &d.in.Mold
	z, what := m.ZTop, p.say("From above")
	inner := 0.0
	if n := len(m.Opening); n > 0 {
		inner = m.Opening[n-1].R
	}
	if d.in.Solid != nil { // the core covers the top
		z = m.TrimZ
	}
	if len(d.s.PartingHeights) > 0 {
		z = d.s.PartingHeights[0]
	}
	if z < m.ZTop {
		inner = d.silhouette.radiusAt(z)
		what = p.say("Seam at %s mm, from above", p.num(z, 1))
	}
	turn := d.secTurn()
	polar := func(r, azimuth float64) point {
		sin, cos := math.Sincos((azimuth - turn) * math.Pi / 180)
		return v.at(r*cos, r*sin)
	}
	sides, letters := d.s.sides(), p.lettering()
	ask := func(letter string, from, to float64) {
		ring := append(arc(v, m.Radius, m.Block, from, to), arc(v, inner, m.Pot, to, from)...)
		letters.add(letter, turned(ring, v.origin, -turn))
	}
	for _, q := range sides {
		a, b := polar(inner*around(m.Pot, q.Sector[0]), q.Sector[0]), polar(m.Radius*around(m.Block, q.Sector[0]), q.Sector[0])
		p.line(a.x, a.y, b.x, b.y, outline)
		ask(q.Letter, q.Sector[0], q.Sector[1])
	}
	if len(sides) == 0 {
		ask(d.s.Parts[0].Letter, 0, 360)
	}
	p.stroke(turned(arc(v, m.Radius, m.Block, 0, 360), v.origin, -turn), outline, 0)
	if inner > 0.05 {
		p.stroke(turned(arc(v, inner, m.Pot, 0, 360), v.origin, -turn), outline, 0)
	}
	for _, n := range m.Natches {
		c := view{polar(n.At.R, n.Azimuth), v.kx, v.ky}
		switch {
		case !n.Level:
			p.stroke(dome(c, n.Azimuth-turn, n.RadiusMM, -n.RiseMM), dashed, 0)
		case math.Abs(n.At.Z-z) < 0.05:
			p.stroke(arc(c, n.RadiusMM, nil, 0, 360), thin, 0)
		default:
			p.stroke(arc(c, n.RadiusMM, nil, 0, 360), dashed, 0)
		}
	}
	far := d.planHalf() + 3/v.kx
	p.line(v.x(0), v.y(-far), v.x(0), v.y(far), axisLine)
	d.plane(p, v, len(sides))
	p.text(v.x(0), v.y(-d.planHalf())-planSide+2, what, faint(sizeSmall), center)
	far *= v.kx
	letters.set(rect{v.x(0) - far, v.y(0) - far, v.x(0) + far, v.y(0) + far}, plain(sizeHead).heavy())
}

// turned is a line turned by an angle in degrees about a point of the page.
func turned(line []point, about point, deg float64) []point {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	for i, q := range line {
		x, y := q.x-about.x, q.y-about.y
		line[i] = point{about.x + x*cos - y*sin, about.y + x*sin + y*cos}
	}
	return line
}

// plane marks the plane of the section: narrow long-dash dot (04.1) from end
// to end, wide at its ends (04.2), with arrows the way it is looked at.
func (d *sectionDrawing) plane(p *page, v view, sides int) {
	second := 180.0
	if sides == 3 {
		second = 120
	}
	wideEnd := outline
	for _, deg := range [...]float64{0, second} {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		at := func(mm float64) point { // mm on paper beyond the block
			r := v.kx*d.in.Mold.Radius + mm
			return point{v.origin.x + r*cos, v.origin.y + r*sin}
		}
		p.stroke([]point{v.origin, at(2)}, axisLine, 0)
		a, b := at(1), at(7)
		p.line(a.x, a.y, b.x, b.y, wideEnd)
		// The section is looked at from below on the sheet, upward.
		look := 1.0
		if deg != 0 && deg != 180 {
			look = -1
		}
		tip := point{b.x - sin*6*look, b.y + cos*6*look}
		if deg == 180 {
			tip = point{b.x, b.y + 6}
		}
		p.line(b.x, b.y, tip.x, tip.y, thin)
		p.arrow(tip, tip.x-b.x, tip.y-b.y)
		p.text(tip.x, tip.y+1.2, "S", plain(sizeLead), center)
	}
}

// keyLine is a row of the key: what a hatching or a line stands for.
type keyLine struct {
	region *Region
	line   lineType
	ring   bool
	words  string
}

// keys are the rows that this drawing needs.
func (d *sectionDrawing) keys() (out []keyLine) {
	for i := range d.s.Regions {
		g := &d.s.Regions[i]
		var letters, pulls, name string
		for _, q := range d.s.Parts {
			if q.Letter != g.Letter && !(q.Side && g.Side) {
				continue
			}
			if letters != "" {
				letters, pulls = letters+", ", pulls+", "
			}
			letters, pulls, name = letters+q.Letter, pulls+d.pullWords(q.Pull), q.Name
		}
		told := ""
		switch sides := d.s.sides(); {
		case g.Side && len(sides) > 2:
			told = d.say("%s to %s  side parts, pulled outward", sides[0].Letter, sides[len(sides)-1].Letter)
		case g.Side:
			told = d.say("%s  side parts, pulled %s", letters, pulls)
		default:
			told = d.say("%s  %s, pulled %s", letters, name, pulls)
		}
		out = append(out, keyLine{region: g, words: told})
	}
	if len(d.in.Mold.Natches) > 0 {
		out = append(out, keyLine{line: dashed, words: d.say("Natches, turned into the section")})
	}
	if len(d.s.strapGrooves(d.in.Mold.Radius)) > 0 {
		out = append(out, keyLine{line: workedLine, words: d.say("Strap groove, scraped across the open back")})
	}
	if d.in.Solid != nil {
		out = append(out, keyLine{ring: true, words: d.say("Thickest wall: %s mm, %s mm above the foot", d.num(d.in.Solid.ThickMM, 1), d.num(d.in.Solid.At.Z, 1))})
	} else if len(d.in.Inner) > 0 {
		out = append(out, keyLine{line: beforeLine, words: d.say("Inside of the wet cast")})
	}
	return out
}

func (d *sectionDrawing) keyHeight() float64 { return float64((len(d.key)+1)/2)*keyRow + 3 }

// setKey draws the key in two columns above the title block and gives the room
// above.
func (d *sectionDrawing) setKey(p *page, area rect) rect {
	top := area.y0 + d.keyHeight()
	p.line(area.x0, top, area.x1, top, thin)
	w := area.w() / 2
	for i, k := range d.key {
		x, y := area.x0+3+w*float64(i%2), top-keyRow*float64(i/2+1)-0.4
		st := plain(sizeSmall)
		if k.ring {
			p.stroke(ringLine(point{x + 5.5, y + 0.9}, 1.4, 48), thin, 0)
		} else if k.region == nil {
			p.line(x, y+0.9, x+11, y+0.9, k.line)
		} else {
			box := rect{x, y - 0.8, x + 11, y + 2.6}
			spacing, turned := d.hatchOf(*k.region)
			p.hatch([]point{{box.x0, box.y0}, {box.x1, box.y0}, {box.x1, box.y1}, {box.x0, box.y1}}, spacing, turned, black)
			p.frame(box, thin)
		}
		words, st := p.doc.fonts.fit(k.words, st, w-17, sizeSmall, 1)
		p.text(x+13, y, words[0], st, left)
	}
	return rect{area.x0, top, area.x1, area.y1}
}
