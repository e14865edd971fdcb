package tooling

// The positive of a lower or upper part: the pot's surface that the part holds,
// standing on a plate in the plane of the seam, printed with the part's pull
// upward. It is hollow from below where that leaves a wall all over and a roof
// of at most 45 degrees.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// Measures of the kit, mm; common practice, no source, but where they say.
const (
	leastPlate   = 6.0
	plateFloor   = 2.0 // left under a natch's hollow or the groove
	grooveDepth  = 3.0
	rimWidth     = 10.0 // of the plate outside the groove, room for marks
	plugAbove    = 5.0  // the opening's plug stands so far out of the plaster
	freeboard    = 8.0  // the cottle stands so far above the plaster
	staveLeast   = 4.0  // 2 to 3 and ribs hold slurry in common practice; lap joints take two layers
	footEdge     = 0.6  // taken off the edge on the bed, at 45 degrees, against elephant's foot
	leastHollow  = 8.0  // radius below which hollowing saves nothing
	printDensity = 1.24 // g/ml of PLA; from memory, filament data sheets
	filamentWide = 1.75 // mm
)

// linesOfWall is the least wall in lines of the nozzle: 0.8 mm with a nozzle
// of 0.4, as printing guides have it (printparams.com, real-world fit).
const linesOfWall = 2

// shell is the wall of a hollow piece, mm.
func shell(j *job.Job) float64 {
	return math.Max(j.Printer.Shell, linesOfWall*j.Printer.Nozzle)
}

// LeastMass is the least that a positive of so many cm2 weighs, in g, however
// little a slicer fills it: its surface in the least wall.
func LeastMass(j *job.Job, cm2 float64) float64 {
	return cm2 * linesOfWall * j.Printer.Nozzle / 10 * printDensity
}

func staveThickness(j *job.Job) float64 { return math.Max(shell(j), staveLeast) }

// plateRadius is that of the plate's edge, in the middle of a face.
func plateRadius(j *job.Job, md *mold.Mold) float64 {
	return md.Block.R + staveThickness(j) + j.Printer.Clearance + grooveRib + rimWidth
}

// plateThickness leaves a floor under the groove and under the hollows that
// form a part's domes.
func plateThickness(natches []mold.Natch) float64 {
	t := math.Max(leastPlate, grooveDepth+plateFloor)
	for _, n := range natches {
		if !n.Socket {
			t = math.Max(t, solid.DomeHeight(n.Radius, n.HalfAngle)+plateFloor)
		}
	}
	return t
}

// positive lays out the positive of a cap. Heights h run from the seam along
// the pull: up for the upper part, down for the lower. full leaves the hollow
// out.
func positive(j *job.Job, md *mold.Mold, p *mold.Part, full bool) (*turned, solid.Vec) {
	way := 1.0
	wall := append([]form.Point{}, p.Outline[:p.Pot+1]...) // from the seam along the pull
	if p.Name == "upper" {
		for i := range wall {
			wall[i] = p.Outline[p.Pot-i]
		}
	} else {
		way = -1
	}
	seam := wall[0].Z
	for i := range wall {
		wall[i].Z = way * (wall[i].Z - seam)
	}
	apart := md.PlugApart && p.Name == "upper"
	keyed := apart || len(underCore(md, p)) > 0 // a piece stands on it
	if apart {                                  // up to the trim line: the plug stands upon it
		wall = wall[:len(wall)-len(md.Opening)+1]
	} else if end := wall[len(wall)-1]; end.R > 0 { // an opening: its plug stands out of the plaster
		wall = append(wall, form.Point{R: end.R, Z: end.Z + plugAbove})
	}
	var natches []mold.Natch // not those under a core, at the part's other end
	for _, n := range p.Natches {
		if n.At.Z == seam {
			natches = append(natches, n)
		}
	}
	t := &turned{md: md, to: 360, natches: natches, clear: j.Printer.Clearance, cones: int(way)}
	add := func(s shape, pts ...form.Point) {
		for _, q := range pts {
			t.section = append(t.section, corner{Point: q, shape: s})
		}
	}
	next := func(e edge) { t.section[len(t.section)-1].edge = e }
	thick := plateThickness(natches)
	for _, q := range wall { // a recess of the foot is a hollow in the plate
		thick = math.Max(thick, plateFloor-q.Z)
	}
	edge := plateRadius(j, md)
	inner, outer := md.Block.R, md.Block.R+staveThickness(j)+j.Printer.Clearance+grooveRib
	if j.Mold.Staves == 1 { // a cottle in one piece goes over the disc
		inner -= j.Printer.Clearance
	}
	inside := wall
	if keyed { // sockets are sunk into the top
		inside = append([]form.Point{}, wall...)
		deep, end := keyMost+j.Printer.Clearance*math.Sqrt2, &inside[len(wall)-1]
		thick = math.Max(thick, deep+plateFloor-end.Z)
		end.Z -= deep
	}
	if roof := hollow(j, inside, thick); roof != nil && md.Section.Round && !full {
		add(asPot, roof...)
	} else {
		add(asPot, form.Point{R: 0, Z: -thick})
	}
	add(asOutside, form.Point{R: edge - footEdge/md.Block.MostReach(), Z: -thick}, form.Point{R: edge, Z: footEdge - thick}, form.Point{R: edge})
	next(rimEdge)
	add(asOutside, form.Point{R: outer}, form.Point{R: outer, Z: -grooveDepth}, form.Point{R: inner, Z: -grooveDepth})
	if high, in := bevel(p, seam); in > 0 { // a lip takes the edge off
		foot := md.Block.R - in
		add(asOutside, form.Point{R: inner, Z: high * (inner - foot) / in}, form.Point{R: foot})
	} else {
		add(asOutside, form.Point{R: inner})
	}
	next(seamEdge)
	add(asPot, wall...)
	if wall[len(wall)-1].R > 0 {
		if keyed {
			next(plugEdge)
			t.cones = -1
		}
		add(asPot, form.Point{R: 0, Z: wall[len(wall)-1].Z})
	}
	t.marks = mold.Letter(p.Name) + "@"
	t.place(way, seam)
	if keyed && !full {
		t.plug = t.plugKeys()
	}
	return t, solid.Vec{0, 0, way}
}

// place moves a section from heights along the pull to the frame of the mold.
func (t *turned) place(way, seam float64) {
	for i := range t.section {
		t.section[i].Z = seam + way*t.section[i].Z
	}
	if way > 0 {
		return
	}
	n := len(t.section)
	for i := range n / 2 {
		t.section[i], t.section[n-1-i] = t.section[n-1-i], t.section[i]
	}
	// an edge belongs to the corner at its start, which was its end
	first := t.section[0].edge
	for i := range n - 1 {
		t.section[i].edge = t.section[i+1].edge
	}
	t.section[n-1].edge = first
}

// hollow is the roof of the hollow under a positive, from the axis down and out
// to the bed: the widest that keeps the shell all over and is nowhere flatter
// than 45 degrees. nil where it would save nothing.
func hollow(j *job.Job, wall []form.Point, thick float64) []form.Point {
	if j.Printer.Solid {
		return nil
	}
	s := shell(j)
	top := math.Inf(1) // of the hollow on the axis
	for _, q := range wall {
		if q.R < leastHollow {
			top = math.Min(top, q.Z)
		}
	}
	if last := wall[len(wall)-1]; last.R >= leastHollow {
		top = math.Min(top, last.Z)
	}
	top -= s
	if top < leastHollow {
		return nil
	}
	// r at height h is at most (top - h), and at most the wall's, less the
	// shell laid across a slope of 45 degrees, at every height above
	const steps = 32
	places := make([]form.Point, 0, 2*len(wall)) // of the wall, its chords' middles too
	for i, q := range wall {
		if i > 0 {
			places = append(places, wall[i-1].Lerp(q, 0.5))
		}
		places = append(places, q)
	}
	line := []form.Point{{R: 0, Z: top}}
	most := 0.0
	for k := 1; k <= steps; k++ {
		h := top + (-thick-top)*float64(k)/steps
		if k == steps {
			h = -thick // to the bit: it lies on the bed
		}
		r := top - h
		for _, q := range places {
			if q.Z >= h-s*math.Sqrt2 {
				r = min(r, q.R-s*math.Sqrt2+max(0, q.Z-h))
			}
		}
		if r <= line[len(line)-1].R { // no narrower below: the way out stays open
			r = line[len(line)-1].R
		}
		most = math.Max(most, r)
		line = append(line, form.Point{R: r, Z: h})
	}
	for i := 1; i < len(line); i++ { // keep it only where the wall is kept
		for k := 1; k < len(wall); k++ {
			if near(wall[k-1], wall[k], line[i-1], line[i], s) && clearance(wall[k-1], wall[k], line[i-1], line[i]) < s-1e-9 {
				return nil
			}
		}
	}
	if most < leastHollow {
		return nil
	}
	var out []form.Point
	for i, q := range line {
		if i > 0 && i+1 < len(line) && q.R == line[i-1].R && q.R == line[i+1].R {
			continue
		}
		out = append(out, q)
	}
	return out
}

// near tells whether the boxes about chords a-b and c-d come within s mm of one
// another.
func near(a, b, c, d form.Point, s float64) bool {
	return min(a.R, b.R)-s <= max(c.R, d.R) && min(c.R, d.R)-s <= max(a.R, b.R) &&
		min(a.Z, b.Z)-s <= max(c.Z, d.Z) && min(c.Z, d.Z)-s <= max(a.Z, b.Z)
}

// clearance is the least distance of chord c-d from the ends of chord a-b, and
// the other way round, mm.
func clearance(a, b, c, d form.Point) float64 {
	least := math.Inf(1)
	for _, q := range [2]form.Point{a, b} {
		least = math.Min(least, toChord(q, c, d))
	}
	for _, q := range [2]form.Point{c, d} {
		least = math.Min(least, toChord(q, a, b))
	}
	return least
}

func toChord(p, a, b form.Point) float64 {
	u, v := b.Sub(a), p.Sub(a)
	t := 0.0
	if l := u.R*u.R + u.Z*u.Z; l > 0 {
		t = math.Max(0, math.Min(1, (u.R*v.R+u.Z*v.Z)/l))
	}
	return p.Dist(a.Lerp(b, t))
}
