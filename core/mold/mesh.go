package mold

import (
	"fmt"
	"math"

	"moldwright/core/form"
	"moldwright/core/solid"
)

// Solids makes meshes of one mold: they all use one table of azimuths, so that
// parts that touch share the very same vertices.
type Solids struct {
	md    *Mold
	Turn  *solid.Azimuths
	Place solid.Place

	reach, section []float64 // Block.Reach and the pot's section by step of Turn
}

// turnTol is the chord error in mm allowed to turning, of the 0.02 mm that the
// meshes keep in all; the thinned contour may take ChordTol.
const turnTol = 0.012

// natchSteps are the corners of a natch's base circle.
const natchSteps = 36

// Solids are the meshes of the mold, whose chords lie within 0.02 mm of the
// curves they stand for.
func (md *Mold) Solids() *Solids {
	if md.solids == nil {
		md.solids = newSolids(md, turnTol)
	}
	return md.solids
}

// NewCoarse makes meshes with chords up to 1 mm within their curves, for looking
// at and for checks of many molds.
func NewCoarse(md *Mold) *Solids { return newSolids(md, 1) }

func newSolids(md *Mold, tol float64) *Solids {
	t := md.azimuths(tol)
	steps := t.Steps()
	s := &Solids{md: md, Turn: t, reach: make([]float64, steps), section: make([]float64, steps)}
	for i := range steps {
		s.reach[i] = md.Block.Reach(t.Deg(i))
		s.section[i], _ = md.Section.At(t.Deg(i) * math.Pi / 180)
	}
	s.Place = func(r, z float64, i int) solid.Vec { return t.Round(r*s.section[i%steps], z, i) }
	if md.dimples != nil {
		s.Place = md.dimples.place(s)
	}
	return s
}

// Outside is the Place of points on the outside of the block.
func (s *Solids) Outside(r, z float64, i int) solid.Vec {
	return s.Turn.Round(r*s.reach[i%len(s.reach)], z, i)
}

// span is the stretch of the azimuth table that a part reaches over.
func (s *Solids) span(p *Part) solid.Span {
	n := s.Turn.Steps()
	if p.Sector == nil {
		return solid.FullTurn(n)
	}
	return solid.Span{Steps: n, From: s.Turn.Step(p.Sector[0]), To: s.Turn.Step(p.Sector[1])}
}

// Part is the mesh of a plaster part where it stands in the closed mold.
func (s *Solids) Part(p *Part) (*solid.Mesh, error) {
	b := solid.NewBuilder(s.Place, s.span(p))
	room := len(p.Outline) * (s.span(p).To - s.span(p).From + 1)
	b.Grow(room, 2*room)
	rings := make([]solid.Loop, len(p.Outline))
	for i, q := range p.Outline {
		if i > p.Pot && q.R > 0 {
			rings[i] = b.Row(func(k int) solid.Vec { return s.Outside(q.R, q.Z, k) })
		} else {
			rings[i] = b.Ring(q.R, q.Z)
		}
	}
	for i := range rings {
		from, to := rings[i], rings[(i+1)%len(rings)]
		list := p.natchesOn(i)
		if len(list) == 0 {
			b.Wall(from, to)
			continue
		}
		level(b, from, to, list)
	}
	if p.Sector != nil {
		for _, end := range [2]struct {
			side solid.Side
			seam Seam
		}{{solid.Near, Start}, {solid.Far, End}} {
			var list []Natch
			var circles []solid.Circle
			for _, n := range p.Natches {
				if n.Seam == end.seam {
					list = append(list, n)
					circles = append(circles, circle(n, [2]float64{n.At.R, n.At.Z}))
				}
			}
			closeNatches(b, b.End(end.side, rings, circles...), list)
		}
	}
	m, err := b.Done()
	if err != nil {
		return nil, fmt.Errorf("part %s: %w", p.Name, err)
	}
	return m, nil
}

// CastNatches lays a level face that a part's seam is poured upon: each of the
// part's domes is a hollow in it, each of its sockets a dome.
func CastNatches(b *solid.Builder, from, to solid.Loop, natches []Natch) {
	level(b, from, to, turnedOut(natches))
}

// CloseCast closes the holes left open for natches in a face that a part's
// seam is poured upon.
func CloseCast(b *solid.Builder, holes []solid.Hole, natches []Natch) {
	closeNatches(b, holes, turnedOut(natches))
}

func turnedOut(natches []Natch) []Natch {
	list := make([]Natch, len(natches))
	for i, n := range natches {
		n.Socket = !n.Socket
		list[i] = n
	}
	return list
}

// UprightCircle is the base of a natch in an upright seam, in the coordinates
// of a sector's end.
func UprightCircle(n Natch) solid.Circle { return circle(n, [2]float64{n.At.R, n.At.Z}) }

// LevelHole makes the base of a natch in a level face that looks up (way 1) or
// down (way -1), to be left open in the face.
func LevelHole(b *solid.Builder, n Natch, way float64) solid.Hole {
	sin, cos := solid.SinCosDeg(n.Azimuth)
	h := solid.Hole{Centre: solid.Vec{n.At.R * cos, n.At.R * sin, n.At.Z}, Normal: solid.Vec{0, 0, way}, RadiusMM: n.Radius}
	for i := range natchSteps {
		s, c := solid.SinCosDeg(way * 360 * float64(i) / natchSteps)
		h.Loop = append(h.Loop, b.Vertex(solid.Vec{h.Centre[0] + n.Radius*c, h.Centre[1] + n.Radius*s, n.At.Z}))
	}
	return h
}

// level lays a level face with natches.
func level(b *solid.Builder, from, to solid.Loop, list []Natch) {
	circles := make([]solid.Circle, len(list))
	for k, n := range list {
		sin, cos := solid.SinCosDeg(n.Azimuth)
		circles[k] = circle(n, [2]float64{n.At.R * cos, n.At.R * sin})
	}
	closeNatches(b, b.Flat(from, to, circles...), list)
}

func circle(n Natch, at [2]float64) solid.Circle {
	return solid.Circle{At: at, RadiusMM: n.Radius, Steps: natchSteps}
}

func closeNatches(b *solid.Builder, holes []solid.Hole, list []Natch) {
	for k, h := range holes {
		if list[k].Socket {
			b.Socket(h, list[k].HalfAngle)
		} else {
			b.Dome(h, list[k].HalfAngle)
		}
	}
}

// natchesOn are the natches in the level seam that is edge i of the outline.
func (p *Part) natchesOn(i int) []Natch {
	if i < p.Pot {
		return nil
	}
	a, b := p.Outline[i], p.Outline[(i+1)%len(p.Outline)]
	if a.Z != b.Z {
		return nil
	}
	way := Below // the outline runs outward along a part's foot
	if b.R < a.R {
		way = Above
	}
	var list []Natch
	for _, n := range p.Natches {
		if n.Seam == way && n.At.Z == a.Z {
			list = append(list, n)
		}
	}
	return list
}

// Cast is the mesh of the clay cast as it stands in the mold, trimmed at the
// trim line: between the contour and its inner surface, or solid where inner
// is nil. Slip builds an even wall, which this keeps where the section is round and
// beside dimples only: with another section the inside is the same section scaled,
// so that the wall is thinner where the section comes in (figures and a caution reckon
// with the even one), and behind dimples the inside is smooth.
func (s *Solids) Cast(inner []form.Point) (*solid.Mesh, error) {
	var outline [][2]float64
	for _, p := range s.md.Cavity {
		outline = append(outline, [2]float64{p.R, p.Z})
	}
	if inner == nil {
		outline = append(outline, [2]float64{0, s.md.TrimZ})
	}
	thin, _ := form.Thin(inner, make([]bool, len(inner)), ChordTol)
	for i := len(thin) - 1; i >= 0; i-- {
		outline = append(outline, [2]float64{thin[i].R, thin[i].Z})
	}
	return solid.Revolve(outline, s.Place, solid.FullTurn(s.Turn.Steps()))
}
