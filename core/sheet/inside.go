package sheet

import (
	"math"

	"moldwright/core/form"
)

// The inside of a pot that is cast solid on the profile sheet: its surface as a
// hidden edge, the largest ball that the wall holds where it lies, and rows of the
// key that tell their measures.

// SolidWall is the wall of a pot cast solid between outer parts and a core.
type SolidWall struct {
	At      form.Point // the middle of the largest ball in it, at mold size
	ThickMM float64    // that ball's diameter
}

// inside is the drawn inside: the surface from the axis to the rim, and the ball.
type inside struct {
	pts   []form.Point
	at    form.Point
	thick float64
	deep  float64 // from the rim down to the floor on the axis
	floor float64 // clay on the axis
}

// insideOf is the inside at the size of a drawn line, nil where the pot is drained.
func (d *profileDrawing) insideOf(s *silhouette) *inside {
	if d.in.Solid == nil || len(d.in.Inner) < 2 || d.opt.Template || len(d.in.Wet) == 0 {
		return nil
	}
	wet := newSilhouette(d.in.Wet)
	k, low := s.height/wet.height, lowest(d.in.Wet)
	put := func(q form.Point) form.Point { return form.Point{R: k * q.R, Z: k * (q.Z - low)} }
	in := &inside{at: put(d.in.Solid.At), thick: k * d.in.Solid.ThickMM}
	for _, q := range d.in.Inner {
		in.pts = append(in.pts, put(q))
	}
	first, last := in.pts[0], in.pts[len(in.pts)-1]
	in.deep, in.floor = math.Abs(last.Z-first.Z), math.Abs(first.Z-s.pts[0].Z)
	return in
}

// insideLines are its surface, of a whole silhouette on both sides, and the ball.
func (d *profileDrawing) insideLines(s *silhouette, l lineType) (out []drawnLine) {
	in := d.insideOf(s)
	if in == nil {
		return nil
	}
	sides := []float64{1, -1}
	if !d.opt.Full {
		sides = sides[:1]
	}
	for _, way := range sides {
		line := make([]point, len(in.pts))
		for i, q := range in.pts {
			line[i] = point{way * q.R, q.Z}
		}
		out = append(out, drawnLine{line, l, false})
	}
	if s == &d.main {
		out = append(out, drawnLine{ringLine(point{in.at.R, in.at.Z}, in.thick/2, 48), thin, false})
	}
	return out
}

// insideKey sets the rows of the key that tell the inside, downward from y.
func (d *profileDrawing) insideKey(p *page, x, y float64) {
	in := d.insideOf(&d.main)
	if in == nil {
		return
	}
	p.key(x, y, dashed, d.say("Inside: %s deep, floor %s, rim Ø %s mm", d.num(in.deep, 1), d.num(in.floor, 1), d.num(2*in.pts[len(in.pts)-1].R, 1)))
	p.stroke(ringLine(point{x + 7, y - keyStep + 0.8}, 1.3, 48), thin, 0)
	p.textIn(x+16, y-keyStep, drawingFrame(p.paper).x1-x-17, d.say("Thickest wall: %s mm, %s mm above the foot", d.num(in.thick, 1), d.num(in.at.Z, 1)), plain(sizeSmall), left)
}

// stripHeight is the room of the check bars and the key beside them.
func (d *profileDrawing) stripHeight() float64 {
	rows := 1
	if d.second != nil {
		rows++
	}
	if d.insideOf(&d.main) != nil {
		rows += 2
	}
	return barStripHeight + keyStep*float64(max(0, rows-2))
}
