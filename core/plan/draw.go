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

func mm(v float64) float64 { return math.Round(v*1000) / 1000 }

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
	p.stretches()
}

// stretches gives the contour in its full fineness with what the survey found.
func (p *Plan) stretches() {
	m, s := p.work.meridian, p.work.survey
	d := &p.Drawing
	d.Contour = points(m.Pts)
	d.Stretches = make([]Stretch, len(m.Spans))
	for i, sp := range m.Spans {
		for _, pull := range release.Pulls {
			d.Stretches[i].Draft[pull] = math.Round(50*(release.Draft(sp.A0, pull)+release.Draft(sp.A1, pull))) / 100
		}
	}
	for _, pull := range release.Pulls {
		for _, c := range s.Samples[pull] {
			depth := &d.Stretches[c.Span].Depth[pull]
			*depth = max(*depth, mm(c.Depth))
		}
	}
}
