package tooling

import (
	"math"

	"moldwright/core/job"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// measure fills in size, fit and material from the piece's corners in plan as
// printed, its height (mm) and its volume (ml). The piece is turned on the bed
// so that it fits and takes the least room.
func (p *Piece) measure(j *job.Job, plan [][2]float64, high, ml float64) {
	p.Volume, p.Mass = ml, ml*printDensity
	p.Filament = ml / (math.Pi / 4 * filamentWide * filamentWide)
	bed := j.Printer.Bed
	least := math.Inf(1)
	span := calipers{loop: hull(plan)}
	for deg := range 180 {
		w, d := span.box(float64(deg))
		const noise = 1e-6
		fits := w <= bed[0]+noise && d <= bed[1]+noise && high <= bed[2]+noise
		if deg == 0 || fits && w*d < 0.99*least {
			p.Size, p.FitsBed, p.turn = [3]float64{w, d, high}, fits, float64(deg)
			least = math.Inf(1)
			if fits {
				least = w * d
			}
		}
	}
	p.Size[0], p.Size[1] = box(plan, p.turn)
	if p.FitsBed {
		return
	}
	p.Note = words.Say("It measures %.0f × %.0f × %.0f mm and fits the bed of %.0f × %.0f × %.0f mm neither turned nor divided; it needs a larger printer.",
		p.Size[0], p.Size[1], p.Size[2], bed[0], bed[1], bed[2])
}

// box is the width and depth of a plan turned by degrees.
func box(plan [][2]float64, deg float64) (w, d float64) {
	sin, cos := solid.SinCosDeg(deg)
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, q := range plan {
		x, y := q[0]*cos-q[1]*sin, q[0]*sin+q[1]*cos
		x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
	}
	return x1 - x0, y1 - y0
}

// points are the corners of a stave's course in plan as printed, and its volume
// in ml.
func (s *stave) points(up solid.Vec) ([][2]float64, float64) {
	const steps = 144
	list, _ := s.plan(steps)
	bare := make([]staveCorner, 0, len(list))
	for _, q := range list {
		if !q.tip {
			bare = append(bare, q)
		}
	}
	v, heights := 0.0, s.bends()
	for i, h := range heights[1:] {
		of := list
		if heights[i] >= s.flangeEnd {
			of = bare
		}
		v += (loopArea(s.at(of, heights[i])) + loopArea(s.at(of, h))) / 2 * (h - heights[i])
	}
	if s.lo >= s.flangeEnd {
		list = bare
	}
	full := append(s.at(list, min(s.hi, s.bevel[0])), s.at(bare, s.hi)...)
	if up[2] < 0 {
		for i := range full {
			full[i][1] = -full[i][1]
		}
	}
	return full, v / 1000
}

// points are the corners of a sector in plan, those that may lie outermost.
func (t *turned) points() [][2]float64 {
	least, most := t.reaches()
	var out [][2]float64
	for d := t.from; d <= t.to+1e-9; d += 0.5 {
		sin, cos := solid.SinCosDeg(d)
		for s, far := range most {
			if far < 0 {
				continue
			}
			f := t.reach(shape(s), d)
			for _, r := range [2]float64{least[s], far} {
				out = append(out, [2]float64{r * f * cos, r * f * sin})
			}
		}
	}
	sin, cos := solid.SinCosDeg(t.from)
	for _, k := range t.ends[0] { // the tips of the cones
		out = append(out, [2]float64{k.at[0]*cos + k.radius*sin, k.at[0]*sin - k.radius*cos})
	}
	return out
}

// letters are the ends in plan of what stands out of a whole ring's upright wall
// as its mark.
func (t *turned) letters() (out [][2]float64) {
	_, wide := lettering(t.marks)
	for i, a := range t.section {
		c := t.section[(i+1)%len(t.section)]
		if a.edge != markEdge || t.marks == "" || math.Abs(c.Z-a.Z) < bandLeast {
			continue
		}
		az := t.places()[0]
		sin, cos := solid.SinCosDeg(az)
		far := math.Max(a.R, c.R) * t.reach(asOutside, az)
		if t.md.Block.Facets == 0 { // on a chord
			far *= math.Cos(math.Atan((wide/2 + markRoom) / far))
		}
		far += markRaised
		for _, x := range [2]float64{-wide / 2, wide / 2} {
			out = append(out, [2]float64{far*cos - x*sin, far*sin + x*cos})
		}
	}
	return out
}
