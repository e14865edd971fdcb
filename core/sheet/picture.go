package sheet

import (
	"fmt"
	"math"

	"moldwright/core/form"
)

// The picture of a scheme in the report: elevation to the left of the axis,
// section to the right, as large as its box allows (it says so: not to
// scale), parts hatched this way and that and lettered, parting lines with
// their heights, pulls as arrows, and each stretch that catches marked with a
// heavy line and its depth.

const (
	pictureArrows = 9.0 // mm kept above and below for the pulls
	pictureWords  = 17.0
)

// picture draws the scheme in the box.
func (p *page) picture(box rect, in *Input, s *Scheme) {
	pts := in.Wet
	if len(pts) < 2 {
		pts = in.Fired
	}
	low := pts[0].Z
	for _, q := range pts {
		low = math.Min(low, q.Z)
	}
	pot := newSilhouette(pts)
	// The extent of pot and plaster, in mm of the form.
	r, z0, z1 := pot.maxR, 0.0, pot.height
	for _, g := range in.Regions {
		for _, q := range g.Outline {
			r, z0, z1 = math.Max(r, q.R), math.Min(z0, q.Z-low), math.Max(z1, q.Z-low)
		}
	}
	k := math.Min((box.w()-2*pictureWords)/(2*r), (box.h()-2*pictureArrows)/(z1-z0))
	v := view{point{(box.x0 + box.x1) / 2, box.y0 + (box.h()-k*(z1-z0))/2 - k*z0}, k, k}

	for i, g := range in.Regions {
		p.region(v, g, low, i%2 == 1)
	}
	both := func(sign float64) {
		line := make([]point, len(pot.pts))
		for i, q := range pot.pts {
			line[i] = v.at(sign*q.R, q.Z)
		}
		p.stroke(line, outline, 0)
	}
	both(1)
	both(-1)
	if pot.open {
		p.line(v.x(-pot.rim.R), v.y(pot.rim.Z), v.x(pot.rim.R), v.y(pot.rim.Z), thin)
	}
	p.line(v.x(0), v.y(z0)-3, v.x(0), v.y(z1)+3, axisLine)

	for _, h := range s.PartingHeights {
		y := v.y(h - low)
		rim := v.x(-pot.radiusAt(h - low))
		edge := v.x(-r) - 2
		p.line(edge, y, rim, y, outline.in(blue))
		p.line(rim, y, v.x(0), y, thin.in(blue)) // the seam, seen on the pot
		p.line(v.x(pot.radiusAt(h-low)), y, v.x(r)+2, y, outline.in(blue))
		p.text(edge-1, y-0.9, num(h, 1)+" mm", plain(sizeBody).in(blue), right)
	}
	p.catches(v, &pot, low, s, v.x(r)+3)
	p.pulls(v, box, s, r, z0, z1, low)
}

// region hatches one part to the right of the axis and letters it.
func (p *page) region(v view, g Region, low float64, turned bool) {
	line := make([]point, len(g.Outline))
	for i, q := range g.Outline {
		line[i] = v.at(q.R, q.Z-low)
	}
	p.hatch(line, 1.6, turned, grey)
	p.stroke(append(line, line[0]), thin, 0)
	at, ok := roomiest(g.Outline)
	if !ok {
		return
	}
	st := plain(sizeLead).heavy()
	c := v.at(at.R, at.Z-low)
	w := p.doc.fonts.width(g.Letter, st)
	p.fillRect(rect{c.x - w/2 - 0.9, c.y - st.capHeight()/2 - 0.9, c.x + w/2 + 0.9, c.y + st.capHeight()/2 + 0.9}, white)
	p.text(c.x, c.y-st.capHeight()/2, g.Letter, st, center)
}

// roomiest is the point of a coarse grid inside the outline that lies
// farthest from its edges: the place for a letter.
func roomiest(outline []form.Point) (form.Point, bool) {
	r0, r1, z0, z1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, q := range outline {
		r0, r1, z0, z1 = math.Min(r0, q.R), math.Max(r1, q.R), math.Min(z0, q.Z), math.Max(z1, q.Z)
	}
	const n = 16
	best, found := 0.0, false
	var at form.Point
	for i := 1; i < n; i++ {
		for j := 1; j < n; j++ {
			q := form.Point{R: r0 + (r1-r0)*float64(i)/n, Z: z0 + (z1-z0)*float64(j)/n}
			if d := depthInside(outline, q); d > best {
				best, at, found = d, q, true
			}
		}
	}
	return at, found
}

// depthInside is the distance from a point inside a closed outline to its
// nearest edge, 0 outside.
func depthInside(outline []form.Point, q form.Point) float64 {
	inside, near := false, math.Inf(1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Z > q.Z) != (b.Z > q.Z) && q.R < a.R+(b.R-a.R)*((q.Z-a.Z)/(b.Z-a.Z)) {
			inside = !inside
		}
		dr, dz := b.R-a.R, b.Z-a.Z
		t := 0.0
		if l := dr*dr + dz*dz; l > 0 {
			t = math.Max(0, math.Min(1, ((q.R-a.R)*dr+(q.Z-a.Z)*dz)/l))
		}
		er, ez := q.R-a.R-t*dr, q.Z-a.Z-t*dz
		near = math.Min(near, math.Sqrt(er*er+ez*ez))
	}
	if !inside {
		return 0
	}
	return near
}

// catches marks the stretches that catch on the section side.
func (p *page) catches(v view, pot *silhouette, low float64, s *Scheme, x float64) {
	for _, part := range s.Parts {
		for _, c := range part.Catches {
			band := rect{v.x(0), v.y(c.ZFrom - low), v.x(pot.maxR) + 1, v.y(c.ZTo - low)}
			line := make([]point, len(pot.pts))
			for i, q := range pot.pts {
				line[i] = v.at(q.R, q.Z)
			}
			for _, piece := range clipLine(line, band) {
				p.stroke(piece.pts, outline.of(1.2).in(vermilion), 0)
			}
			mid := (c.ZFrom + c.ZTo) / 2
			y := v.y(mid - low)
			p.line(v.x(pot.radiusAt(mid-low))+0.8, y, x-0.6, y, thin.in(vermilion))
			p.text(x, y-0.9, num(c.DepthMM, 1)+" mm", plain(sizeBody).in(vermilion), left)
		}
	}
}

// pulls draws the arrows: up and down on the axis, sideways at mid height.
func (p *page) pulls(v view, box rect, s *Scheme, r, z0, z1, low float64) {
	st := plain(sizeBody).heavy()
	sides := 0
	for _, part := range s.Parts {
		switch {
		case part.Pull[2] > 0.5:
			y := v.y(z1) + 2.5
			p.pullArrow(point{v.x(0) + 4, y}, 0, 1)
			p.text(v.x(0)+6, y+1.6, part.Name, st, left)
		case part.Pull[2] < -0.5:
			y := v.y(z0) - 2.5
			p.pullArrow(point{v.x(0) + 4, y}, 0, -1)
			p.text(v.x(0)+6, y-3.6, part.Name, st, left)
		default:
			sides++
			if sides > 2 {
				continue // in the section only two side parts are seen
			}
			sign := 1.0
			if sides == 2 {
				sign = -1
			}
			x, y := v.x(sign*r)+sign*2.5, v.y((part.ZFrom+part.ZTo)/2-low)
			p.pullArrow(point{x, y}, sign, 0)
			a := left
			if sign < 0 {
				a = right
			}
			p.text(x, y+1.8, part.Name, st, a)
		}
	}
}

// pullArrow is a heavy arrow of 6 mm from q along (dx, dy).
func (p *page) pullArrow(q point, dx, dy float64) {
	const length, head, half = 6.0, 2.6, 1.1
	p.line(q.x, q.y, q.x+dx*(length-head), q.y+dy*(length-head), outline.of(0.7))
	bx, by := q.x+dx*(length-head), q.y+dy*(length-head)
	p.fill([]point{{q.x + dx*length, q.y + dy*length}, {bx - dy*half, by + dx*half}, {bx + dy*half, by - dx*half}}, black)
}

// catchWords tells one catch.
func catchWords(c Catch) string {
	s := fmt.Sprintf("Catches by %s from %s to %s mm, blocked at %s mm.", mm1(c.DepthMM), num(c.ZFrom, 1), num(c.ZTo, 1), num(c.BlockedAtZ, 1))
	if c.ClayForgives {
		s += " Only the positive catches; the shrunken cast lets go."
	}
	return s
}
