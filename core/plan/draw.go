package plan

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/release"
)

// Drawing is what the page draws, in the half-plane: every point is [r, z] in
// mm at mold size, rounded to a thousandth.
type Drawing struct {
	// A node's z stands at Lift + z times the scale; where the form is cast
	// upside down (Turned) at Lift - z times the scale.
	Lift    float64      `json:"lift"`
	Turned  bool         `json:"turned"`
	Contour [][2]float64 `json:"contour"`
	Inner   [][2]float64 `json:"inner"`
	Opening [][2]float64 `json:"opening"`
	Parts   []Region     `json:"parts"`
	Natches []NatchMark  `json:"natches"`
	// Dimples are what is seen of the rims of dimples on the left half of the
	// elevation, as lines; their r is how far left of the axis they are seen.
	Dimples [][][2]float64 `json:"dimples"`
	// Thickest is the largest ball in the wall of a pot cast solid: where its
	// middle stands, and its diameter. Null for others.
	Thickest *[3]float64 `json:"thickest"`
	// InnerDraft is the draft in degrees of each piece of the inner surface of such
	// a pot, from one point to the next, as the core is pulled up; null for others.
	InnerDraft []float64 `json:"innerDraft"`
	// Stretches tell how each piece of the contour, from one point to the
	// next, stands to the three pulls down, up and outward.
	Stretches []Stretch `json:"stretches"`
}

// Region is a plaster part cut by the half-plane.
type Region struct {
	Name    string       `json:"name"`
	Outline [][2]float64 `json:"outline"`
}

// NatchMark is where a natch stands.
type NatchMark struct {
	Part    string     `json:"part"`
	At      [2]float64 `json:"at"`
	Azimuth float64    `json:"azimuth"` // degrees
	Radius  float64    `json:"radius"`
	Level   bool       `json:"level"` // in a level seam, else in an upright one
}

// Stretch is draft in degrees and depth of catch in mm, for the pulls down, up
// and outward.
type Stretch struct {
	Draft [3]float64 `json:"draft"`
	Depth [3]float64 `json:"depth"`
}

func mm(v float64) float64 { return rounded(v*1000) / 1000 }

// rounded is math.Round, short enough to be inlined.
func rounded(v float64) float64 {
	t := math.Trunc(v)
	if math.Abs(v-t) >= 0.5 {
		t += math.Copysign(1, v)
	}
	return t
}

func points(list []form.Point) [][2]float64 {
	out := make([][2]float64, len(list))
	for i, p := range list {
		out[i] = [2]float64{mm(p.R), mm(p.Z)}
	}
	return out
}

func (p *Plan) draw() {
	w := p.work
	md, m := w.mold, w.meridian
	d := &p.Drawing
	d.Lift, d.Turned = mm(m.Lift), m.Turned
	d.Inner, d.Opening = points(w.inner), points(md.Opening)
	d.Parts, d.Natches = []Region{}, []NatchMark{}
	if md.Inner != nil {
		d.Thickest = &[3]float64{mm(w.thickest.R), mm(w.thickest.Z), mm(p.Casting.SolidWall)}
		d.InnerDraft = make([]float64, len(w.inner)-1)
		for i := range d.InnerDraft {
			a := w.inner[i+1].Sub(w.inner[i])
			d.InnerDraft[i] = rounded(100*math.Atan2(a.R, a.Z)*180/math.Pi) / 100
		}
	}
	done := false
	for i := range md.Parts {
		part := &md.Parts[i]
		if part.Sector == nil || !done {
			d.Parts = append(d.Parts, Region{part.Name, points(part.Outline)})
			done = done || part.Sector != nil
		}
		for _, n := range part.Natches {
			if !n.Socket {
				d.Natches = append(d.Natches, NatchMark{part.Name, [2]float64{mm(n.At.R), mm(n.At.Z)}, n.Azimuth, mm(n.Radius), n.Seam <= 1})
			}
		}
	}
	d.Dimples = seen(md.DimpleRims(180, 270), -1)
	p.stretches()
}

// seen is what of loops on the pot is seen on one half of its elevation, from
// azimuth 270: the left (way -1) or the right. The lines are [r, z].
func seen(loops [][]form.Vec3, way float64) [][][2]float64 {
	out := [][][2]float64{}
	for _, loop := range loops {
		var line [][2]float64
		end := func() {
			if len(line) > 1 {
				out = append(out, line)
			}
			line = nil
		}
		for _, q := range loop {
			if r := way * q[0]; r >= 0 && q[1] <= 0 {
				line = append(line, [2]float64{mm(r), mm(q[2])})
			} else {
				end()
			}
		}
		end()
	}
	return out
}

// stretches gives the contour in its full fineness with what the survey found.
func (p *Plan) stretches() {
	m, s := p.work.meridian, p.work.survey
	d := &p.Drawing
	d.Contour = points(m.Pts)
	d.Stretches = make([]Stretch, len(m.Spans))
	at := math.NaN() // the angle whose drafts are at hand: that at which most spans go on
	var down, out float64
	look := func(a float64) (float64, float64) {
		if a != at {
			at, down, out = a, release.Draft(a, release.Down), release.Draft(a, release.Out)
		}
		return down, out
	}
	for i := range m.Spans {
		sp, draft := &m.Spans[i], &d.Stretches[i].Draft
		a, c := look(sp.A0)
		b, e := look(sp.A1)
		draft[release.Down], draft[release.Up], draft[release.Out] = rounded(50*(a+b))/100, rounded(50*(-a-b))/100, rounded(50*(c+e))/100
	}
	for _, pull := range release.Pulls {
		for i, depth := range s.Deepest[pull] {
			if depth > 0 {
				d.Stretches[i].Depth[pull] = mm(depth)
			}
		}
	}
}
