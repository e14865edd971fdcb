package mold

import (
	"math"
	"slices"

	"moldwright/core/form"
)

// Seam is where a natch stands: in a level seam below or above a part, or in
// the upright seam face at the start or end of a side part's sector.
type Seam int

// The seam faces of a part.
const (
	Below Seam = iota
	Above
	Start
	End
)

// Natch is a dome on one part or its socket in the neighbour: a cap of a
// sphere, unequally spaced so that the mold closes one way only.
type Natch struct {
	Seam   Seam
	Socket bool
	// At is the middle in the half-plane, Azimuth its direction in degrees.
	At      form.Point
	Azimuth float64
	// Radius is that of the base in mm; HalfAngle in degrees is the slope of
	// the dome at its base: it lets go along a pull that leans from the face's
	// normal by at most 90 degrees less this.
	Radius    float64
	HalfAngle float64
}

// Measures of natches, mm: a third of the seam across, 12 to 25 where there is
// room, and well clear of the cavity and the outside. Common practice, no
// source; the least is what still prints and pours cleanly.
const (
	leastNatch  = 4.0 // radius
	mostNatch   = 12.5
	natchMargin = 4.0
	// natchLean is kept between a dome's slope and the steepest that lets go,
	// degrees.
	natchLean = 10.0
	// steepest is the slope of a dome that nothing limits, degrees.
	steepest = 60.0
)

// capAzimuths are the directions in degrees of the natches on a level seam:
// one at least for each side part that it meets, and no turn but the full one
// carries the set onto itself.
func capAzimuths(sides int) []float64 {
	switch sides {
	case 2:
		return []float64{50, 125, 235, 320}
	case 3:
		return []float64{50, 180, 314}
	case 4:
		return []float64{37, 135, 231, 315}
	case 6:
		return []float64{25, 90, 154, 210, 270, 330}
	}
	return []float64{20, 130, 265}
}

// socketOf is the hollow that leaves the clearance c all over the dome: the
// sphere about the same centre, larger by c.
func socketOf(n Natch, c float64) Natch {
	t := n.HalfAngle * math.Pi / 180
	ball := n.Radius / math.Sin(t)
	deep := ball * math.Cos(t)
	n.Socket = true
	n.Radius = math.Sqrt((ball+c)*(ball+c) - deep*deep)
	n.HalfAngle = math.Acos(deep/(ball+c)) * 180 / math.Pi
	return n
}

// natchRadius is the base radius for a seam of the given width, or false where
// there is no room for one.
func natchRadius(width float64) (float64, bool) {
	r := min(width/6, mostNatch)
	if r < leastNatch {
		r = min(leastNatch, width/2-natchMargin)
	}
	return r, r >= 0.75*leastNatch
}

// PlaceNatches puts natches into every seam that has room for them, their
// sockets larger by the clearance (mm).
func (md *Mold) PlaceNatches(clearance float64) {
	md.placeLevel(clearance)
	if md.Scheme.Sides > 0 {
		md.placeUpright(clearance)
	}
}

func (md *Mold) placeLevel(clearance float64) {
	for low := range md.Parts {
		for high := range md.Parts {
			a, b := &md.Parts[low], &md.Parts[high]
			if !md.carries(a, b) {
				continue
			}
			at := a.Outline[0]
			if b.Sector == nil {
				at = b.Outline[b.Pot]
			}
			sunk := b // the part that has the sockets
			if b.Name == "core" && a.Name == "upper" {
				sunk = a // it is poured open at the top, where a print may hang in
			}
			at, r, ok := seat(sunk, at, md.Block.R)
			if !ok {
				continue
			}
			for _, az := range capAzimuths(md.Scheme.Sides) {
				if !holds(a, az) || !holds(b, az) {
					continue
				}
				n := Natch{Seam: Above, At: at, Azimuth: az, Radius: r, HalfAngle: steepest}
				over := n
				over.Seam = Below
				if sunk == a {
					n = socketOf(n, clearance)
				} else {
					over = socketOf(over, clearance)
				}
				a.Natches, b.Natches = append(a.Natches, n), append(b.Natches, over)
			}
		}
	}
}

// carries tells whether part b stands on part a in a level seam.
func (md *Mold) carries(a, b *Part) bool {
	sides, upper := md.Scheme.Sides > 0, md.Scheme.Upper
	switch {
	case b.Name == "core":
		return a.Name == "upper" || !upper && (a.Sector != nil || !sides && a.Name == "lower")
	case b.Name == "upper":
		return a.Sector != nil || !sides && a.Name == "lower"
	}
	return b.Sector != nil && a.Name == "lower"
}

// seat finds the middle and radius of the natches in the level seam that runs
// out from a point of the contour, such that their sockets in a part keep clear of
// its other faces.
func seat(sunk *Part, from form.Point, outer float64) (form.Point, float64, bool) {
	most, ok := natchRadius(outer - from.R)
	if !ok {
		return form.Point{}, 0, false
	}
	loop := append(append([]form.Point{}, sunk.Outline...), sunk.Outline[0])
	for _, r := range [3]float64{most, (most + leastNatch) / 2, 0.75 * leastNatch} {
		for share := 0.5; share < 0.9; share += 0.05 {
			at := form.Point{R: from.R + share*(outer-from.R), Z: from.Z}
			if at.R+r+natchMargin > outer {
				break
			}
			clear := math.Inf(1)
			for i := 1; i < len(loop); i++ {
				if loop[i-1].Z != at.Z || loop[i].Z != at.Z {
					clear = min(clear, distance(at, loop[i-1], loop[i]))
				}
			}
			if clear >= r+natchMargin {
				return at, min(r, most), true
			}
		}
	}
	return form.Point{}, 0, false
}

// holds tells whether a part reaches over the azimuth.
func holds(p *Part, az float64) bool {
	return p.Sector == nil || p.Sector[0] < az && az < p.Sector[1]
}

// placeUpright puts two natches in each seam between side parts, at heights
// that differ from seam to seam.
func (md *Mold) placeUpright(clearance float64) {
	n := md.Scheme.Sides
	first := 0
	for md.Parts[first].Sector == nil {
		first++
	}
	side := func(i int) *Part { return &md.Parts[first+i%n] }
	lo, hi := side(0).extent()
	// the pull leans from the seam face's normal by 90 less half a sector
	lean := 90 - 180/float64(n)
	angle := min(steepest, 90-lean-natchLean)
	loop := append(slices.Clone(side(0).Outline), side(0).Outline[0])
	tree := form.NewTree(loop)
	for i := range n {
		for _, share := range [2]float64{0.2 + 0.05*float64(i), 0.8 - 0.04*float64(i)} {
			at, r, ok := md.room(side(0), loop, tree, lo+share*(hi-lo))
			if !ok {
				continue
			}
			d := Natch{Seam: Start, At: at, Azimuth: 360 / float64(n) * float64(i), Radius: r, HalfAngle: angle}
			if clashes(side(i).Natches, d) {
				continue
			}
			side(i).Natches = append(side(i).Natches, d)
			d.Seam = End
			prev := side(i + n - 1)
			prev.Natches = append(prev.Natches, socketOf(d, clearance))
		}
	}
}

// clashes tells whether a natch comes too near another in the same face.
func clashes(list []Natch, n Natch) bool {
	for _, o := range list {
		if o.Seam == n.Seam && o.At.Dist(n.At) < o.Radius+n.Radius+2*natchMargin {
			return true
		}
	}
	return false
}

func (p *Part) extent() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, q := range p.Outline {
		lo, hi = min(lo, q.Z), max(hi, q.Z)
	}
	return lo, hi
}

// room finds the place nearest to height z where a natch fits in the upright
// section of a side part, clear of the contour, the outside and the level
// seams; loop is the part's closed outline, with its tree.
func (md *Mold) room(p *Part, loop []form.Point, tree *form.Tree, z float64) (form.Point, float64, bool) {
	lo, hi := p.extent()
	inner := func(z0, z1 float64) float64 { // farthest contour between two heights
		r := 0.0
		tree.Visit(0, math.Inf(1), z0, z1, func(i int) {
			if i < p.Pot {
				a, b := clipZ(loop[i], loop[i+1], z0, z1)
				r = max(r, max(a.R, b.R))
			}
		})
		return r
	}
	for d := 0.0; d < hi-lo; d += 2 {
		for _, z := range [2]float64{z - d, z + d} {
			wide := md.Block.R - inner(z-leastNatch, z+leastNatch)
			r, ok := natchRadius(wide)
			if !ok {
				continue
			}
			need := r + natchMargin
			at := form.Point{R: md.Block.R - (md.Block.R-inner(z-need, z+need))/2, Z: z}
			if within(loop, at, need) {
				return at, r, true
			}
		}
	}
	return form.Point{}, 0, false
}

// within tells whether a disc lies inside a closed loop.
func within(loop []form.Point, at form.Point, radius float64) bool {
	inside := false
	for i := 1; i < len(loop); i++ {
		a, b := loop[i-1], loop[i]
		if (a.Z > at.Z) != (b.Z > at.Z) && at.R < a.R+(at.Z-a.Z)/(b.Z-a.Z)*(b.R-a.R) {
			inside = !inside
		}
		if distance(at, a, b) < radius {
			return false
		}
	}
	return inside
}

// distance from a point to the chord a-b, mm.
func distance(p, a, b form.Point) float64 {
	u, v := b.Sub(a), p.Sub(a)
	t := 0.0
	if l := u.R*u.R + u.Z*u.Z; l > 0 {
		t = max(0, min(1, (u.R*v.R+u.Z*v.Z)/l))
	}
	return p.Dist(a.Lerp(b, t))
}

// clipZ is the piece of the chord a-b between two heights.
func clipZ(a, b form.Point, z0, z1 float64) (form.Point, form.Point) {
	cut := func(p, q form.Point) form.Point {
		switch {
		case p.Z < z0 && q.Z > z0:
			return p.Lerp(q, (z0-p.Z)/(q.Z-p.Z))
		case p.Z > z1 && q.Z < z1:
			return p.Lerp(q, (z1-p.Z)/(q.Z-p.Z))
		}
		return p
	}
	return cut(a, b), cut(b, a)
}
