// Package mold turns a chosen scheme into plaster parts: the block, the
// opening above the pot, the seams, the outlines of every part in the
// half-plane, and the natches that locate them. Part outlines share their
// corner points, so that the solids made of them share vertices.
package mold

import (
	"math"
	"slices"

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
	// PlugApart tells that the opening widens away from the pull of the upper
	// part that holds it: whatever forms or fills it must be drawn out upward
	// before the part is lifted.
	PlugApart bool
	Block     Block
	Parts     []Part
	// TrimZ is the height of the trim line, mm; Spare tells that the opening
	// is a spare rather than a fill hole.
	TrimZ float64
	Spare bool
	// Drain runs from the foot of the block up to the foot of the pot: the
	// wall of the drain hole; nil without one. Cavity goes on across it, as
	// the plug closes it while the mold is full.
	Drain []form.Point
	// Section is the cut of the pot across the axis, turned as it stands to the
	// seams; radii of the cavity, the opening and the drain are its largest.
	Section *form.Section
	// Inner is the inner surface of a solid-cast pot, from the axis to its rim;
	// nil for a drain-cast one.
	Inner []form.Point

	solids  *Solids // made when first asked for
	dimples *dimples
}

// Part is one plaster part.
type Part struct {
	*parting.Part
	// Outline is the part's section in the half-plane, counterclockwise. It
	// starts at the first point of the pot's contour that it holds (the last,
	// going against the contour, is Outline[0]).
	Outline []form.Point
	// Pot is how many edges of Outline, from its start, are pot surface,
	// opening or drain; they run against the contour. The points after them
	// that are off the axis stand on the outside of the block.
	Pot     int
	Natches []Natch

	plan, pot float64 // see Block.PlanShare and form.Section.MeanSquare
	bumps     float64 // ml that fill the dimples
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
	leastDrain  = 1.5 // radius, at the foot of the block
	mouthMargin = 12.0
	feedHole    = 14.0 // diameter, through the foot of a solid-cast pot
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
	Section      *form.Section
	Inner        []form.Point // see Mold.Inner
	index        []int        // of the meridian's points in Cavity
	hollows      *hollows
	blocks       []Block // of the schemes laid so far
}

// NewBase thins the meridian's contour, which ends at point end, and keeps
// every seam of the schemes. inner is the inner surface of a solid-cast form,
// from its rim to the axis, or nil.
func NewBase(m *form.Meridian, end int, schemes []parting.Scheme, inner *form.Meridian) *Base {
	keep := make([]bool, end+1)
	for _, s := range schemes {
		keep[s.K1], keep[s.K2] = true, true
	}
	b := &Base{Closed: m.Closed, Section: m.Section, hollows: newHollows(m, end)}
	b.Cavity, b.index = form.Thin(m.Pts[:end+1], keep, ChordTol)
	if inner != nil {
		b.Inner, _ = form.Thin(inner.Pts, make([]bool, len(inner.Pts)), ChordTol)
		slices.Reverse(b.Inner)
	}
	for _, p := range b.Cavity {
		b.Height, b.MaxR = math.Max(b.Height, p.Z), math.Max(b.MaxR, p.R)
	}
	return b
}

// Lay lays a scheme out in plaster around the contour, without natches.
func Lay(j *job.Job, base *Base, s *parting.Scheme) *Mold {
	mouth := base.Cavity[len(base.Cavity)-1]
	md := &Mold{Scheme: s, Cavity: base.Cavity, TrimZ: mouth.Z, Spare: !base.Closed, Section: base.Section.Turned(s.Turn * math.Pi / 180)}
	top := base.Height + j.Plaster.Base
	if s.Core {
		md.Inner, md.Spare = base.Inner, false
	}
	if !base.Closed {
		top = mouth.Z
		if j.Mold.Spare != nil && !s.Core {
			top += j.Mold.Spare.Height
		}
		if base.Height > mouth.Z+0.01 { // a lip that rises above its own rim
			top = math.Max(top, base.Height+j.Plaster.Base)
		}
	}
	flared := md.Spare && j.Mold.Spare != nil && j.Mold.Spare.Flared && base.Height <= mouth.Z+0.01
	md.Opening = opening(j, s, mouth, top, base.Height, base.Closed, flared)
	md.PlugApart = flared && s.Upper && len(md.Opening) > 1
	maxR := base.MaxR
	for _, p := range md.Opening {
		maxR = math.Max(maxR, p.R+mouthMargin-j.Plaster.Wall)
	}
	k1, k2 := base.index[s.K1], base.index[s.K2]
	seam := base.Cavity[k1].Z
	if base.hollows != nil {
		k1, k2 = md.dimple(base, s)
	}
	if s.Core { // it lies upon the rim
		top += j.Plaster.Base
	}
	md.Block = block(j, s, seam, maxR+j.Plaster.Wall, top)
	md.Block.face(base.blocks)
	base.blocks = append(base.blocks, md.Block)
	md.parts(j, k1, k2)
	for i := range md.Parts {
		md.Parts[i].bumps = md.bumps(&md.Parts[i])
	}
	return md
}

// bumps is how much plaster of a part fills dimples, ml.
func (md *Mold) bumps(p *Part) float64 {
	s := md.Scheme
	if md.dimples == nil || p.Name == "core" {
		return 0
	}
	low, high := math.Inf(-1), math.Inf(1)
	from, to := p.Outline[p.Pot].Z, p.Outline[0].Z // of the pot's surface, upward
	if p.Name == "upper" || p.Sector != nil && s.Lower {
		low = from
	}
	if p.Name == "lower" && (s.Upper || s.Sides > 0) || p.Sector != nil && s.Upper {
		high = to
	}
	return md.DimpleVolume(p.Sector, low, high)
}

// dimple lays the dimples out in the cavity, and tells where the seams' points
// lie in it now.
func (md *Mold) dimple(base *Base, s *parting.Scheme) (k1, k2 int) {
	h := base.hollows
	var arc []float64 // of the cavity's points
	for i, k := range base.index {
		if k >= 0 {
			arc = append(arc, h.wall.Arc[i])
		}
	}
	var levels, upright []float64
	s1, s2 := h.wall.Arc[s.K1], h.wall.Arc[s.K2]
	if s.Lower && (s.Upper || s.Sides > 0) {
		levels = append(levels, s1)
	}
	if s.Upper && s2 != s1 {
		levels = append(levels, s2)
	}
	for i := range s.Sides {
		upright = append(upright, 360*float64(i)/float64(s.Sides))
	}
	md.dimples = h.lay(md.Section, s.Turn, levels, upright)
	md.Cavity, arc = md.dimples.contour(base.Cavity, arc)
	k1, _ = slices.BinarySearch(arc, s1)
	k2, _ = slices.BinarySearch(arc, s2)
	return k1, k2
}

// opening is the wall from the mouth to the top of the block. The part that
// holds it settles its slope: an upper part is lifted off it, so it narrows
// upward, unless it is to be flared; a lower part is drawn down from it and side
// parts outward, so it may widen.
func opening(j *job.Job, s *parting.Scheme, mouth form.Point, top, height float64, closed, flared bool) []form.Point {
	out := []form.Point{mouth}
	h := top - mouth.Z
	if h < 1e-9 {
		return out
	}
	r := mouth.R
	narrows := s.Upper && !flared || height > mouth.Z+0.01 && !closed
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

// drain is the wall of the drain hole, from the foot of the block up to the
// pot, and how many points of the cavity it takes the place of. The hole
// narrows downward, so that a lower part is drawn off its plug. There is none
// where the foot that the lower part holds is too small for it.
func (md *Mold) drain(j *job.Job, k1 int) int {
	r := 0.0
	switch {
	case j.Mold.DrainHole != nil:
		r = *j.Mold.DrainHole / 2
	case md.Scheme.Core && j.Mold.FillHole != nil: // filled through the foot, upside down
		r = *j.Mold.FillHole / 2
	case md.Scheme.Core:
		r = feedHole / 2
	default:
		return 0
	}
	for k := 1; k < len(md.Cavity); k++ {
		a, b := md.Cavity[k-1], md.Cavity[k]
		if k1 > 0 && k >= k1 && r > 0.9*md.Cavity[k1].R {
			return 0
		}
		if b.R <= r+0.01 {
			continue
		}
		at := a.Lerp(b, (r-a.R)/(b.R-a.R))
		taper := math.Tan(math.Max(j.Rules.LeastDraft, 2) * math.Pi / 180)
		low := math.Max(r-(at.Z-md.Block.ZBottom)*taper, math.Min(leastDrain, 0.8*r))
		md.Drain = []form.Point{{R: low, Z: md.Block.ZBottom}, at}
		return k
	}
	return 0
}

// parts outlines every part; k1 and k2 are the seams' points in the cavity.
func (md *Mold) parts(j *job.Job, k1, k2 int) {
	s, b := md.Scheme, &md.Block
	cut := md.drain(j, k1)
	wall := slices.Concat(md.Drain, md.Cavity[cut:], md.Opening[1:])
	shift := len(md.Drain) - cut
	k1, k2 = k1+shift, k2+shift
	if !s.Lower && s.Sides > 0 {
		k1 = 0
	}
	last := len(wall) - 1
	plan := b.PlanShare()
	side := -1 // the first side part; the others have its outline
	md.Parts = make([]Part, 0, len(s.Parts))
	for i := range s.Parts {
		p := Part{Part: &s.Parts[i], plan: plan, pot: md.SectionShare(s.Parts[i].Sector)}
		from, to := 0, last
		low, high := end{z: b.ZBottom, free: true}, end{z: b.ZTop, free: true}
		if s.Core {
			high = end{z: md.TrimZ}
		}
		switch {
		case p.Name == "core":
			md.Parts = append(md.Parts, md.core(p, wall[last]))
			continue
		case p.Name == "lower" && s.Sides == 0 && !s.Upper:
		case p.Name == "lower":
			to = k1
			high = end{z: wall[k1].Z}
		case p.Name == "upper":
			from = k2
			low = end{z: wall[k2].Z}
		default:
			if s.Lower {
				from = k1
				low = end{z: wall[k1].Z}
			}
			if s.Upper {
				to = k2
				high = end{z: wall[k2].Z}
			}
		}
		if p.Sector != nil && side >= 0 {
			like := &md.Parts[side]
			p.Outline, p.Pot = like.Outline, like.Pot
			md.Parts = append(md.Parts, p)
			continue
		}
		out := b.outside(low, high, p.Sector != nil)
		p.Pot = to - from
		foot := from == 0 && len(md.Drain) == 0
		room := p.Pot + 1 + len(out)
		if foot {
			room++
		}
		p.Outline = make([]form.Point, 0, room)
		for k := to; k >= from; k-- {
			p.Outline = append(p.Outline, wall[k])
		}
		if foot {
			p.Outline = append(p.Outline, form.Point{R: 0, Z: b.ZBottom})
		}
		p.Outline = append(p.Outline, out...)
		if p.Sector != nil {
			side = len(md.Parts)
		}
		md.Parts = append(md.Parts, p)
	}
}

// core is the part that fills the inside of a solid-cast pot and lies upon its
// rim and upon the top of the other parts.
func (md *Mold) core(p Part, rim form.Point) Part {
	p.Outline = append(append(p.Outline, md.Inner...), rim)
	p.Pot = len(md.Inner)
	p.Outline = append(p.Outline, md.Block.outside(end{z: rim.Z}, end{z: md.Block.ZTop, free: true}, false)...)
	p.Outline = append(p.Outline, form.Point{R: 0, Z: md.Block.ZTop})
	return p
}

// SectionShare is the mean square of the pot's section within a sector, in
// degrees, or of the whole turn.
func (md *Mold) SectionShare(sector *[2]float64) float64 {
	if sector == nil || md.Section.Round {
		return md.Section.MeanSquare
	}
	const n = 180
	sum := 0.0
	for i := range n {
		deg := sector[0] + (float64(i)+0.5)/n*(sector[1]-sector[0])
		g, _ := md.Section.At(deg * math.Pi / 180)
		sum += g * g
	}
	return sum / n
}

// Volume is the part's volume in ml without its natches: the integral along
// its outline, the outside counted with its shape in plan.
func (p *Part) Volume() float64 {
	share := 1.0
	if p.Sector != nil {
		share = (p.Sector[1] - p.Sector[0]) / 360
	}
	v := 0.0
	for i, a := range p.Outline {
		c := p.Outline[0]
		if i+1 < len(p.Outline) {
			c = p.Outline[i+1]
		}
		w := (a.R*a.R + a.R*c.R + c.R*c.R) * (c.Z - a.Z)
		if i > p.Pot {
			w *= p.plan
		} else if i < p.Pot {
			w *= p.pot
		}
		v += w
	}
	return share*v*math.Pi/3/1000 + p.bumps
}

// OpeningVolume is the volume in ml of the spare or fill hole above the mouth.
func (md *Mold) OpeningVolume() float64 { return md.Section.MeanSquare * column(md.Opening) }

// DrainVolume is the volume in ml of the drain hole.
func (md *Mold) DrainVolume() float64 {
	if md.Drain == nil {
		return 0
	}
	top := md.Drain[1]
	v := column(md.Drain)
	for k := 1; k < len(md.Cavity); k++ { // the hole ends at the cavity, not at a level
		a, c := md.Cavity[k-1], md.Cavity[k]
		if c.R >= top.R {
			c = top
		}
		v -= math.Pi / 3 * (a.R*a.R + a.R*c.R + c.R*c.R) * (c.Z - a.Z) / 1000
		if c == top {
			break
		}
	}
	return v * md.Section.MeanSquare
}

// column is the volume in ml inside a line that runs up, turned about the axis.
func column(line []form.Point) float64 {
	v := 0.0
	for i := 1; i < len(line); i++ {
		a, c := line[i-1], line[i]
		v += math.Pi / 3 * (a.R*a.R + a.R*c.R + c.R*c.R) * (c.Z - a.Z)
	}
	return v / 1000
}
