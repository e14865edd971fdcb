package mold

// The outside of the block: round or straight-sided in plan, flat at foot and
// top, with its outer edges taken off, and with grooves for straps where bands
// hold side parts together. Side parts are poured lying on their seams with
// the back open, so their block is straight-sided: each has a flat back across
// its pull, and the seams run out in the middle of flat faces, square to them.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/parting"
	"moldwright/core/solid"
)

// Block is the outside of the closed mold, mm. Radii are those of a round
// block, or from the axis to the middle of a flat face; they are even from
// bottom to top unless a cottle in one piece must be drawn off.
type Block struct {
	R             float64 // at the seam, its widest
	RBottom, RTop float64
	ZBottom, ZTop float64
	// Facets is the number of flat faces, 0 for a round block. One of them
	// faces azimuth 0.
	Facets int

	seam    float64 // the height at which the radius is R
	grooves bool

	faces
}

// faces is what Reach needs of a straight-sided block, worked out once for all
// azimuths and for all blocks alike: half is where a flat face ends in degrees
// from its middle, cut how far from the axis an upright edge is taken off, most
// the greatest Reach, share the mean of its square.
type faces struct{ half, cut, most, share float64 }

// EdgeMM is how far below a free face the bevel on the block's outer edge begins;
// common practice, no source. It leans 45 degrees where it leans most, so that
// the bevel in the kit's rim that forms it prints without supports.
const EdgeMM = 3.0

// Measures of the outside, mm; common practice, no source. Straps are sold 20
// and 25 wide.
const (
	edgeCut     = 3.0 // taken off an upright edge, across
	grooveWide  = 26.0
	grooveDeep  = 2.0
	grooveRoom  = 20.0 // kept above and below a groove
	secondBand  = 140.0
	cottleTaper = 2.0 // degrees, the least draft of a cottle in one piece
)

// facetsFor is the number of flat faces of a block of so many side parts: two
// for each, so that seams and pulls meet faces squarely.
func facetsFor(j *job.Job, s *parting.Scheme) int {
	switch {
	case s.Sides > 0:
		return 2 * s.Sides
	case j.Plaster.Outside == job.OutsideStraight:
		return 4
	}
	return 0
}

// block is the outside for a pot that needs the radius r. A cottle in one
// piece is drawn off away from the seam on which its part was poured, so the
// block narrows that way.
func block(j *job.Job, s *parting.Scheme, seam, r, top float64) Block {
	b := Block{R: r, RBottom: r, RTop: r, ZBottom: -j.Plaster.Base, ZTop: top, Facets: facetsFor(j, s),
		seam: seam, grooves: s.Sides > 0 && j.Mold.StrapGrooves}
	if j.Mold.Staves > 1 || s.Sides > 0 {
		return b
	}
	if s.Sides == 0 && !s.Upper {
		b.seam = top
	}
	t := math.Tan(math.Max(cottleTaper, j.Rules.LeastDraft) * math.Pi / 180)
	low, high := (b.seam-b.ZBottom)*t, (top-b.seam)*t
	b.R = r + math.Max(low, high)
	b.RBottom, b.RTop = b.R-low, b.R-high
	return b
}

// face settles the faces of a block, as those of one among the others that is
// alike in plan, where there is one.
func (b *Block) face(others []Block) {
	for i := range others {
		if o := &others[i]; o.Facets == b.Facets && o.R == b.R {
			b.faces = o.faces
			return
		}
	}
	b.faces = faces{most: 1, share: 1}
	if b.Facets == 0 {
		return
	}
	b.half = 180 / float64(b.Facets)
	_, corner := solid.SinCosDeg(b.half)
	full := 1 / corner
	b.cut = max(full-edgeCut/b.R, 0.3*full+0.7)
	for i := range 33 {
		b.most = max(b.most, b.Reach(b.half*float64(i)/32))
	}
	const n = 90
	sum := 0.0
	for i := range n {
		r := b.Reach((float64(i) + 0.5) / n * 180 / float64(b.Facets))
		sum += r * r
	}
	b.share = sum / n
}

// At is the radius in mm of the block at height z, its edges not taken off.
func (b *Block) At(z float64) float64 {
	if z <= b.seam {
		if b.seam == b.ZBottom {
			return b.R
		}
		return b.RBottom + (b.R-b.RBottom)*(z-b.ZBottom)/(b.seam-b.ZBottom)
	}
	return b.R + (b.RTop-b.R)*(z-b.seam)/(b.ZTop-b.seam)
}

// Reach is how much farther from the axis the outside stands at an azimuth in
// degrees than in the middle of a face: 1 all round a round block. Upright
// edges are taken off square to the line from the axis.
func (b *Block) Reach(deg float64) float64 {
	if b.Facets == 0 {
		return 1
	}
	// from the middle of the nearest face: exact, since faces span whole degrees
	off := math.Abs(deg - 2*b.half*math.RoundToEven(deg/(2*b.half)))
	_, cos := solid.SinCosDeg(off)
	face := 1 / cos
	if face <= b.cut {
		return face
	}
	_, back := solid.SinCosDeg(b.half - off)
	return min(face, b.cut/back)
}

// FlatEnd is how far from the middle of a flat face its flat ends, for each mm
// that the face lies from the axis; the upright edge is taken off beyond.
func (b *Block) FlatEnd() float64 {
	sin, cos := solid.SinCosDeg(b.half)
	return (b.cut - cos) / sin
}

// MostReach is the greatest Reach.
func (b *Block) MostReach() float64 { return b.most }

// PlanShare is the area of the outside in plan over that of the circle in it.
func (b *Block) PlanShare() float64 { return b.share }

// end is the bottom or top of a part's outside: free, where its edge is taken
// off, or in a seam, where it must meet its neighbour.
type end struct {
	z    float64
	free bool
}

// outside is the line up the outside of a part.
func (b *Block) outside(low, high end, side bool) []form.Point {
	c := math.Min(EdgeMM, (high.z-low.z)/4)
	in := c / b.most
	lowR, highR := b.At(low.z), b.At(high.z)
	out := make([]form.Point, 0, 12)
	if low.free {
		out = append(out, form.Point{R: b.At(low.z+c) - in, Z: low.z}, form.Point{R: b.At(low.z + c), Z: low.z + c})
	} else {
		out = append(out, form.Point{R: lowR, Z: low.z})
	}
	if side && b.grooves {
		for _, z := range Grooves(low.z, high.z) {
			for _, q := range [4]form.Point{{R: 0, Z: -grooveWide / 2}, {R: grooveDeep, Z: grooveDeep - grooveWide/2},
				{R: grooveDeep, Z: grooveWide/2 - grooveDeep}, {R: 0, Z: grooveWide / 2}} {
				out = append(out, form.Point{R: b.At(z+q.Z) - q.R, Z: z + q.Z})
			}
		}
	}
	if high.free {
		return append(out, form.Point{R: b.At(high.z - c), Z: high.z - c}, form.Point{R: b.At(high.z-c) - in, Z: high.z})
	}
	return append(out, form.Point{R: highR, Z: high.z})
}

// Grooves are the heights in mm of the strap grooves of side parts that reach
// from one height to another: one in the middle, or two where they are tall,
// none where there is no room.
func Grooves(low, high float64) []float64 {
	h := high - low
	switch {
	case h < grooveWide+2*grooveRoom:
		return nil
	case h < secondBand:
		return []float64{(low + high) / 2}
	}
	return []float64{low + h/4, high - h/4}
}
