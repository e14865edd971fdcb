// Package mold turns a chosen scheme into plaster parts: the block, the
// opening above the pot, the seams, the outlines of every part in the
// half-plane, and the natches that locate them. Part outlines share their
// corner points, so that the solids made of them share vertices.
package mold

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/parting"
)

// Mold is a scheme in plaster.
type Mold struct {
	Scheme *parting.Scheme
	// Cavity is the contour of the pot from the axis under the foot to the
	// mouth, thinned to ChordTol.
	Cavity []form.Point
	// Opening runs on from the mouth through the plaster to the top: the wall
	// of the spare or the fill hole. It holds the mouth only where the mold
	// ends at the rim.
	Opening []form.Point
	Block   Block
	Parts   []Part
	// TrimZ is the height of the trim line, mm; Spare tells that the opening
	// is a spare rather than a fill hole.
	TrimZ float64
	Spare bool
}

// Block is the outside of the closed mold, mm: round, and upright unless a
// cottle in one piece must be drawn off it.
type Block struct {
	R             float64 // at the seam, its widest
	RBottom, RTop float64
	ZBottom, ZTop float64
}

// Part is one plaster part.
type Part struct {
	*parting.Part
	// Outline is the part's section in the half-plane, counterclockwise. It
	// starts at the first point of the pot's contour that it holds (the last,
	// going against the contour, is Outline[0]).
	Outline []form.Point
	// Pot is how many edges of Outline, from its start, are pot surface or
	// opening; they run against the contour.
	Pot     int
	Natches []Natch
}

// ChordTol is how far in mm the thinned contour may lie from the meridian. With
// the chord error of the turns it stays within the meshes' stated 0.02 mm.
const ChordTol = 0.008

// Measures of the opening, mm and degrees; common practice, no source. The
// step above the trim line guides the knife.
const (
	step        = 2.0
	spareFlare  = 8.0
	leastMouth  = 4.0 // radius
	mouthMargin = 12.0
)

// DefaultFillHole is the diameter in mm of the hole into a closed form where
// the job leaves it to the planner: wide enough to drain, narrow on small pots.
func DefaultFillHole(maxRadius float64) float64 {
	return math.Round(math.Max(8, math.Min(30, 0.6*maxRadius)))
}

// MouthRadius is the radius in mm at which a closed form opens into its fill
// hole.
func MouthRadius(j *job.Job, maxRadius float64) float64 {
	if j.Mold.FillHole != nil {
		return math.Min(*j.Mold.FillHole/2, 0.9*maxRadius)
	}
	return DefaultFillHole(maxRadius) / 2
}

// Base is the contour that all schemes of one form are laid around, thinned
// once for all of them.
type Base struct {
	Cavity       []form.Point // see Mold.Cavity
	Height, MaxR float64      // mm
	Closed       bool
	index        []int // of the meridian's points in Cavity
}

// NewBase thins the meridian's contour, which ends at point end, and keeps
// every seam of the schemes.
func NewBase(m *form.Meridian, end int, schemes []parting.Scheme) *Base {
	keep := make([]bool, end+1)
	for _, s := range schemes {
		keep[s.K1], keep[s.K2] = true, true
	}
	b := &Base{Closed: m.Closed}
	b.Cavity, b.index = form.Thin(m.Pts[:end+1], keep, ChordTol)
	for _, p := range b.Cavity {
		b.Height, b.MaxR = math.Max(b.Height, p.Z), math.Max(b.MaxR, p.R)
	}
	return b
}

// Lay lays a scheme out in plaster around the contour, without natches.
func Lay(j *job.Job, base *Base, s *parting.Scheme) *Mold {
	mouth := base.Cavity[len(base.Cavity)-1]
	md := &Mold{Scheme: s, Cavity: base.Cavity, TrimZ: mouth.Z, Spare: !base.Closed}
	top := base.Height + j.Plaster.Base
	if !base.Closed {
		top = mouth.Z
		if j.Mold.Spare != nil {
			top += j.Mold.Spare.Height
		}
		if base.Height > mouth.Z+0.01 { // a lip that rises above its own rim
			top = math.Max(top, base.Height+j.Plaster.Base)
		}
	}
	md.Opening = opening(j, s, mouth, top, base.Height, base.Closed)
	maxR := base.MaxR
	for _, p := range md.Opening {
		maxR = math.Max(maxR, p.R+mouthMargin-j.Plaster.Wall)
	}
	k1, k2 := base.index[s.K1], base.index[s.K2]
	md.Block = block(j, s, base.Cavity[k1].Z, maxR+j.Plaster.Wall, top)
	md.parts(k1, k2)
	return md
}

// cottleTaper is the draft in degrees of a cottle in one piece.
const cottleTaper = 2.0

// block is the outside for a pot that needs the radius r. A cottle in one
// piece is drawn off away from the seam on which its part was poured, so the
// block narrows that way.
func block(j *job.Job, s *parting.Scheme, seam, r, top float64) Block {
	b := Block{R: r, RBottom: r, RTop: r, ZBottom: -j.Plaster.Base, ZTop: top}
	if j.Mold.Staves > 1 || s.Sides > 0 {
		return b
	}
	if s.Count == 1 {
		seam = top
	}
	t := math.Tan(cottleTaper * math.Pi / 180)
	low, high := (seam-b.ZBottom)*t, (top-seam)*t
	b.R = r + math.Max(low, high)
	b.RBottom, b.RTop = b.R-low, b.R-high
	return b
}

// opening is the wall from the mouth to the top of the block. The part that
// holds it settles its slope: an upper part is lifted off it, so it narrows
// upward; a lower part is drawn down from it and side parts outward, so it may
// widen.
func opening(j *job.Job, s *parting.Scheme, mouth form.Point, top, height float64, closed bool) []form.Point {
	out := []form.Point{mouth}
	h := top - mouth.Z
	if h < 1e-9 {
		return out
	}
	r := mouth.R
	narrows := s.Upper || height > mouth.Z+0.01 && !closed
	taper := math.Tan(math.Max(j.Rules.LeastDraft, 2) * math.Pi / 180)
	if narrows {
		if !closed {
			r -= math.Min(step, 0.1*r)
			if s.Upper && j.Mold.FillHole != nil && *j.Mold.FillHole/2 < r {
				r = *j.Mold.FillHole / 2
			}
			out = append(out, form.Point{R: r, Z: mouth.Z})
		}
		return append(out, form.Point{R: math.Max(r-h*taper, math.Min(leastMouth, 0.8*r)), Z: top})
	}
	flare := taper
	if !closed {
		r += step
		out = append(out, form.Point{R: r, Z: mouth.Z})
		flare = math.Tan(math.Max(j.Rules.LeastDraft, spareFlare) * math.Pi / 180)
	}
	return append(out, form.Point{R: r + h*flare, Z: top})
}

// parts outlines every part; k1 and k2 are the seams' points in the cavity.
func (md *Mold) parts(k1, k2 int) {
	s, b := md.Scheme, md.Block
	wall := append(append([]form.Point{}, md.Cavity...), md.Opening[1:]...)
	last := len(wall) - 1
	floor := []form.Point{{R: 0, Z: b.ZBottom}, {R: b.RBottom, Z: b.ZBottom}}
	ceiling := form.Point{R: b.RTop, Z: b.ZTop}
	seam := func(k int) form.Point { return form.Point{R: b.R, Z: wall[k].Z} }
	for i := range s.Parts {
		p := Part{Part: &s.Parts[i]}
		from, to := 0, last
		var outside []form.Point
		switch {
		case p.Name == "lower" && s.Count == 1:
			outside = append(floor, ceiling)
		case p.Name == "lower":
			to = k1
			outside = append(floor, seam(k1))
		case p.Name == "upper":
			from = k2
			outside = []form.Point{seam(k2), ceiling}
		default:
			outside = floor
			if s.Lower {
				from = k1
				outside = []form.Point{seam(k1)}
			}
			if s.Upper {
				to = k2
				outside = append(outside, seam(k2))
			} else {
				outside = append(outside, ceiling)
			}
		}
		for k := to; k >= from; k-- {
			p.Outline = append(p.Outline, wall[k])
		}
		p.Pot = to - from
		p.Outline = append(p.Outline, outside...)
		md.Parts = append(md.Parts, p)
	}
}

// Volume is the part's volume in ml without its natches: by Pappus, exact for
// the outline.
func (p *Part) Volume() float64 {
	share := 1.0
	if p.Sector != nil {
		share = (p.Sector[1] - p.Sector[0]) / 360
	}
	return share * form.LoopVolume(p.Outline) / 1000
}

// OpeningVolume is the volume in ml of the spare or fill hole above the mouth.
func (md *Mold) OpeningVolume() float64 {
	last := md.Opening[len(md.Opening)-1]
	loop := append([]form.Point{{R: 0, Z: md.Opening[0].Z}}, md.Opening...)
	return form.LoopVolume(append(loop, form.Point{R: 0, Z: last.Z})) / 1000
}
