package sheet

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
)

// The section of the closed mold: cut through the middle of the first side
// part (of a mold without side parts, anywhere), at the largest scale of ISO
// 5455 that the paper holds, upright or across; with a plan of the seam where
// that does not cost scale. Hatching after ISO 128-50: one direction and
// spacing for each part, neighbours the other way. Natches seldom lie in the
// plane of the section; they are turned into it and dashed, and the plan shows
// where they stand. A mold of three side parts is cut in two planes that meet
// in the axis, through the middles of A and B.

// scales of ISO 5455 that a section is drawn at, largest first.
var scales = [...]struct {
	k    float64
	name string
}{{5, "5:1"}, {2, "2:1"}, {1, "1:1"}, {0.5, "1:2"}, {0.2, "1:5"}, {0.1, "1:10"}, {0.05, "1:20"}, {0.02, "1:50"}, {0.01, "1:100"}}

// Room in mm around the views.
const (
	secTop   = 18.0
	secFoot  = 14.0
	dimFirst = 8.0 // from the block to the first dimension at its side
	dimNext  = 9.5
	dimLast  = 5.0
	planSide = 12.0
	keyRow   = 4.6
)

// sectionDrawing is where the views go on the page.
type sectionDrawing struct {
	tongue
	in    *Input
	s     *Scheme
	paper Paper
	k     float64
	scale string
	plan  bool // with the plan of the seam
	turn  bool // the plan stands beside the section, not under it
	key   []keyLine
	// heights are dimensioned from the foot, at the right; below and above the
	// pot at the left.
	heights    []float64
	potHeight  bool    // at the left, where no height at the right tells it
	sideL      float64 // room in mm for the dimensions
	sideR      float64
	silhouette silhouette
	cut        [2]float64 // the pot's radius over its profile's, at the right and at the left
}

func sectionDocument(in Input, paper Paper) (*document, error) {
	if err := checkLine("wet", in.Wet); err != nil {
		return nil, err
	}
	s := in.chosen()
	if s == nil || len(s.Regions) == 0 || !(in.Mold.Radius > 0) || in.Mold.Radius > MaxLengthMM {
		return nil, job.Faultf("no-mold", "mold", "There is no mold to draw a section of.")
	}
	l := tongueOf(in.Language)
	doc, err := newDocument(l.say("%s – section of the mold", in.title()), l)
	if err != nil {
		return nil, err
	}
	d := &sectionDrawing{tongue: l, in: &in, s: s}
	d.key = d.keys()
	d.silhouette = newSilhouette(in.Wet)
	d.columns()
	d.cut = [2]float64{around(in.Mold.Pot, d.secTurn()), around(in.Mold.Pot, d.secTurn()+180)}
	if atRight, atLeft := s.shownSides(); atRight.Side {
		d.cut[1] = around(in.Mold.Pot, (atLeft.Sector[0]+atLeft.Sector[1])/2)
	}
	d.place(paper)
	d.draw(doc)
	return doc, nil
}

// columns settles which dimensions stand at the sides.
func (d *sectionDrawing) columns() {
	m := &d.in.Mold
	d.potHeight = true
	add := func(z float64) {
		if z > 0.05 {
			d.heights = append(d.heights, z)
			d.potHeight = d.potHeight && math.Abs(z-d.silhouette.height) > 0.05
		}
	}
	for _, z := range d.s.PartingHeights {
		add(z)
	}
	if m.ZTop-m.TrimZ > 0.05 {
		add(m.TrimZ)
	}
	left := 1 // the plaster under the foot
	if m.ZTop-m.TrimZ > 0.05 {
		left++
	}
	if d.potHeight {
		left++
	}
	d.sideL = dimFirst + dimNext*float64(left-1) + dimLast
	d.sideR = dimFirst + dimNext*float64(len(d.heights)) + dimLast
}

// place finds the largest scale, and at that scale the upright sheet and the
// plan before their opposites.
func (d *sectionDrawing) place(paper Paper) {
	m := &d.in.Mold
	for _, sc := range scales {
		w, h := sc.k*2*m.Radius+d.sideL+d.sideR, sc.k*(m.ZTop-m.ZBottom)+secTop+secFoot
		pw := sc.k*2*d.planHalf() + 2*planSide
		for _, plan := range [...]bool{true, false} {
			for _, paper := range [...]Paper{paper, paper.across()} {
				for _, turn := range [...]bool{false, true} {
					fr := drawingFrame(paper)
					needW, needH := w, h
					if plan && turn {
						needW, needH = w+pw, math.Max(h, pw)
					} else if plan {
						needW, needH = math.Max(w, pw), h+pw
					}
					if needW <= fr.w() && needH <= fr.h()-blockHeight-d.keyHeight() || sc == scales[len(scales)-1] {
						d.paper, d.k, d.scale, d.plan, d.turn = paper, sc.k, sc.name, plan, turn
						return
					}
				}
			}
		}
	}
}

func (d *sectionDrawing) draw(doc *document) {
	p := doc.newPage(d.paper)
	area := p.titleBlock(blockFields{name: d.in.title(), kind: d.say("Section of the closed mold"), number: drawingNumber(d.in.Name, d.s.outlines()...),
		scale: d.scale, size: d.sayIn("size of a drawing", "wet"), sheet: 1, of: 1})
	area = d.setKey(p, area)
	m := &d.in.Mold
	h := d.k * (m.ZTop - m.ZBottom)
	pw := d.k*2*d.planHalf() + 2*planSide
	mid := (area.x0 + area.x1) / 2
	v := view{point{mid + (d.sideL-d.sideR)/2, 0}, d.k, d.k}
	free := area.h() - h - secTop - secFoot
	switch {
	case d.plan && d.turn:
		w := d.k*2*m.Radius + d.sideL + d.sideR
		spare := (area.w() - w - pw) / 3
		v.origin = point{area.x0 + spare + d.sideL + d.k*m.Radius, area.y0 + secFoot + free/2 - d.k*m.ZBottom}
		d.planView(p, view{point{area.x1 - spare - pw/2, area.y0 + area.h()/2}, d.k, d.k})
	case d.plan:
		spare := (free - pw) / 3
		v.origin.y = area.y1 - spare - secTop - d.k*m.ZTop
		d.planView(p, view{point{mid, area.y0 + spare + pw/2}, d.k, d.k})
	default:
		v.origin.y = area.y0 + secFoot + free/2 - d.k*m.ZBottom
	}
	d.section(p, v)
}

func (s *Scheme) outlines() (out [][]form.Point) {
	for _, g := range s.Regions {
		out = append(out, g.Outline)
	}
	return out
}

// hatchOf is a part's hatching: neighbours fall opposite ways, and where an
// upper part falls the same way as a lower one it is wider.
func (d *sectionDrawing) hatchOf(r Region) (spacing float64, turned bool) {
	switch {
	case r.Side:
		return 2.0, true
	case r.Letter == "U" && len(d.s.sides()) == 0:
		return 2.0, true
	case r.Letter == "U":
		return 2.8, false
	case r.Letter == "K": // it falls the other way than the part around it
		up, _ := d.s.axial()
		return 2.8, len(d.s.sides()) > 0 == (up != "K")
	}
	return 2.0, false
}

// section draws the cut mold with everything on it.
func (d *sectionDrawing) section(p *page, v view) {
	m := &d.in.Mold
	atRight, atLeft := d.s.shownSides()
	letters := p.lettering()
	for _, g := range d.s.Regions {
		spacing, turned := d.hatchOf(g)
		for i, sign := range [...]float64{1, -1} {
			h := g
			flip := turned
			if g.Side {
				h.Letter = atRight.Letter
				if i == 1 {
					h.Letter, flip = atLeft.Letter, !turned
				}
			}
			line := make([]point, len(g.Outline))
			for k, q := range g.Outline {
				if k < g.Pot {
					q.R *= d.cut[i]
				}
				line[k] = v.at(sign*q.R, q.Z)
			}
			p.hatch(line, spacing, flip, black)
			p.outlineOff(line, v.x(0), outline)
			if g.Side || i == 0 {
				letters.add(h.Letter, line)
			}
		}
	}
	// What is seen behind the plane: the mouth, the top and the seams on the
	// wall of the cavity.
	edge := func(r, z float64) { p.line(v.x(-r*d.cut[1]), v.y(z), v.x(r*d.cut[0]), v.y(z), thin) }
	if d.in.Solid == nil { // a core fills it
		for _, q := range m.Opening {
			edge(q.R, q.Z)
		}
	}
	for _, z := range d.s.PartingHeights {
		edge(d.silhouette.radiusAt(z), z)
	}
	for side, sign := range [...]float64{1, -1} {
		if d.in.Solid == nil { // else it is the core's outline
			inner := make([]point, len(d.in.Inner))
			for i, q := range d.in.Inner {
				inner[i] = v.at(sign*q.R*d.cut[side], q.Z)
			}
			p.stroke(inner, beforeLine, 0)
		} else if side == 0 {
			c := v.at(d.in.Solid.At.R*d.cut[0], d.in.Solid.At.Z)
			p.stroke(ringLine(c, v.kx*d.in.Solid.ThickMM/2, 48), thin, 0)
		}
		for _, arc := range m.Dimples { // turned into the plane, as natches are
			line := make([]point, len(arc))
			for i, q := range arc {
				line[i] = v.at(sign*q.R*d.cut[side], q.Z)
			}
			p.stroke(line, dashed, 0)
		}
	}
	d.grooves(p, v)
	d.natches(p, v, atRight, atLeft)
	p.line(v.x(0), v.y(m.ZBottom)-5, v.x(0), v.y(m.ZTop)+5, axisLine)
	if d.plan {
		p.text(v.x(0), v.y(m.ZTop)+14.2, "S–S", plain(sizeLead), center)
	}
	d.pulls(p, v, atRight, atLeft)
	d.dimensions(p, v)
	letters.set(rect{v.x(-m.Radius) - dimFirst, v.y(m.ZBottom), v.x(m.Radius) + dimFirst, v.y(m.ZTop)}, plain(sizeHead).heavy())
}

// grooves marks the strap grooves across the open backs of side parts, which no
// printed piece forms, with the line for surfaces that are worked on afterwards
// (ISO 128-2, line 04.2; from memory).
func (d *sectionDrawing) grooves(p *page, v view) {
	const off = 1.2 // mm on the paper
	for _, g := range d.s.strapGrooves(d.in.Mold.Radius) {
		for _, sign := range [...]float64{1, -1} {
			x := v.x(sign*d.in.Mold.Radius) + sign*off
			p.line(x, v.y(g[0]), x, v.y(g[1]), workedLine)
		}
	}
}

// strapGrooves are the heights between which the floors of the grooves in the
// backs of the side parts lie, where the block's faces are r from the axis.
func (s *Scheme) strapGrooves(r float64) (out [][2]float64) {
	for _, g := range s.Regions {
		if !g.Side {
			continue
		}
		for i := g.Pot + 1; i < len(g.Outline); i++ {
			if a, c := g.Outline[i-1], g.Outline[i]; a.R > 0 && a.R == c.R && a.R < r-0.01 && a.Z < c.Z {
				out = append(out, [2]float64{a.Z, c.Z})
			}
		}
	}
	return out
}

// outlineOff draws a closed outline in the wide line, but for what of it lies
// on the axis at x: there is no edge inside the plaster.
func (p *page) outlineOff(line []point, x float64, l lineType) {
	n := len(line)
	on := func(i int) bool {
		a, b := line[i%n], line[(i+1)%n]
		return math.Abs(a.x-x) < 1e-6 && math.Abs(b.x-x) < 1e-6
	}
	start := 0
	for i := range n {
		if on(i) {
			start = i + 1
			break
		}
	}
	var run []point
	for i := start; i < start+n; i++ {
		if on(i) {
			p.stroke(run, l, 0)
			run = nil
			continue
		}
		if run == nil {
			run = []point{line[i%n]}
		}
		run = append(run, line[(i+1)%n])
	}
	p.stroke(run, l, 0)
}

// natches draws the domes, turned into the plane: those of level seams at the
// right, of upright ones at the side of the part that carries them.
func (d *sectionDrawing) natches(p *page, v view, atRight, atLeft Part) {
	seen := map[[3]float64]bool{}
	for _, n := range d.in.Mold.Natches {
		side := 1.0
		if !n.Level && n.Letter == atLeft.Letter {
			side = -1
		}
		id := [3]float64{side * n.At.R, n.At.Z, n.RadiusMM}
		if seen[id] || !n.Level && n.Letter != atLeft.Letter && n.Letter != atRight.Letter {
			continue
		}
		seen[id] = true
		c := view{v.at(side*n.At.R, n.At.Z), v.kx, v.ky}
		if n.Level {
			p.stroke(dome(c, 0, n.RadiusMM, n.RiseMM), dashed, 0)
		} else {
			p.stroke(arc(c, n.RadiusMM, nil, 0, 360), dashed, 0)
		}
	}
}

// dome is the outline of a natch about the view's origin: a cap of a sphere on
// a base along the angle in degrees, rising to the left of it.
func dome(v view, angle, radius, rise float64) []point {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	h := math.Abs(rise)
	ball := (radius*radius + h*h) / (2 * h)
	out := make([]point, 17)
	for i := range out {
		x := radius * (float64(i)/8 - 1)
		y := math.Copysign(math.Sqrt(math.Max(0, ball*ball-x*x))-(ball-h), rise)
		out[i] = v.at(x*cos-y*sin, x*sin+y*cos)
	}
	return out
}
