package tooling

// Turned pieces that are larger than the bed are divided: by level joints into
// slices, by upright joints through the axis into even sectors, or both, into the
// fewest that fit, or by planes (hew.go) where these take fewer. Joints keep clear of
// natches and of the plate. It is the fewest of these ways, not of all there are.

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
	"moldwright/core/words"
)

const (
	mostSlices  = 6
	mostDivided = 16
	clearOfSeam = 15.0 // mm, of a level joint from the plate or a natch
	leastJoint  = 3.0  // mm, the narrowest level joint
)

// divisions are the ways to divide, the fewest pieces first: slices, sectors.
// The azimuth tables have a step at every edge of these sectors.
var divisions = func() [][2]int {
	var out [][2]int
	for m := 1; m <= mostSlices; m++ {
		for _, n := range [6]int{1, 2, 3, 4, 6, 8} {
			if m*n <= mostDivided {
				out = append(out, [2]int{m, n})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b [2]int) int { return a[0]*a[1] - b[0]*b[1] })
	return out
}()

// divided is a turned piece, whole where it fits the bed, else in the fewest
// pieces that do, keyed to one another. full gives the piece without its hollow,
// whose wall is too thin for level joints; nil where it has none.
func divided(j *job.Job, p Piece, t *turned, full func() *turned) []Piece {
	one := func(t *turned) Piece {
		q := p
		q.build = t.build
		q.measure(j, t.corners(), t.volume())
		q.Overhang = t.overhang(p.up[2])
		return q
	}
	whole := one(t)
	if whole.FitsBed {
		return []Piece{whole}
	}
	p.build = t.build
	list := []Piece{whole}
	bed := j.Printer.Bed[2]
	var sliced *turned
	for _, way := range divisions[1:] {
		m, n := way[0], way[1]
		of := t
		if m > 1 {
			if sliced == nil {
				if sliced = t; full != nil {
					sliced = full()
				}
				sliced.whole, sliced.asked = sliced, &asked{}
			}
			of = sliced
		}
		lo, hi := of.levels()
		room := bed // the cones of all but one slice stand out of it
		if m > 1 {
			room -= keyMost
		}
		if hi-lo > float64(m)*room+1e-9 {
			continue
		}
		levels, ok := of.joints(m, room)
		if !ok {
			continue
		}
		from, ok := of.cut(n)
		if !ok {
			continue
		}
		var out []Piece
		fit := true
		for i := range m {
			layer := of.between(levels[i], levels[i+1])
			layer.asked = &asked{}
			for k := range n {
				part := *layer
				if n > 1 {
					part.from = from + 360/float64(n)*float64(k)
					part.to = part.from + 360/float64(n)
					bare := p
					if bare.measure(j, part.corners(), 0); !bare.FitsBed {
						fit = false
						break // without a look at its keys
					}
					part.key()
				}
				q := one(&part)
				q.unkeyed = part.unkeyed()
				q.share(i*n+k, m*n)
				if n > 3 {
					q.Note = noted(q.Note, words.Say("Of its sectors glue one half together, then the other, then these to one another."))
				}
				if m > 1 && n > 1 {
					q.Note = noted(q.Note, rowsFirst())
				}
				fit = fit && q.FitsBed
				out = append(out, q)
			}
			if !fit {
				break
			}
		}
		if fit {
			list = out
			break
		}
	}
	return orHewn(j, t.md, list, p, solid.Vec{1, 0, 0}, t.corners, t.clears)
}

// clears are the corners of what cuts keep clear of: natches and marks.
func (t *turned) clears() (out [][]solid.Vec) {
	panels := t.panels(t.md.Solids())
	for i, a := range t.section {
		c := t.section[(i+1)%len(t.section)]
		way := -1.0
		if a.R > c.R {
			way = 1
		}
		if s, ok := t.ringSign(a, c, way); ok && a.edge == rimEdge && t.marks != "" {
			out = append(out, s.corners(nil))
		}
		if panels[i].ok {
			out = append(out, panels[i].sign.corners(nil))
		}
		for _, n := range t.natches {
			if sin, cos := solid.SinCosDeg(n.Azimuth); a.edge == seamEdge {
				out = append(out, around(solid.Vec{n.At.R * cos, n.At.R * sin, a.Z}, n.Radius))
			}
		}
	}
	return out
}

// levels are the least and the greatest height of the section.
func (t *turned) levels() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, q := range t.section {
		lo, hi = math.Min(lo, q.Z), math.Max(hi, q.Z)
	}
	return lo, hi
}

// joints finds heights, ends included, that divide the section into m slices no
// higher than the bed, as even as can be, each where a joint crosses matter once.
func (t *turned) joints(m int, bed float64) ([]float64, bool) {
	lo, hi := t.levels()
	out := []float64{lo}
	for k := 1; k < m; k++ {
		even := lo + (hi-lo)*float64(k)/float64(m)
		least, most := math.Max(hi-float64(m-k)*bed, out[k-1]+1), math.Min(out[k-1]+bed, lo+float64(k)*bed)
		found := false
		for d := 0.0; !found && (even-d >= least || even+d <= most); d++ {
			for _, z := range [2]float64{even - d, even + d} {
				if z >= least && z <= most && t.jointAt(z) {
					out, found = append(out, z), true
					break
				}
			}
		}
		if !found {
			return nil, false
		}
	}
	return append(out, hi), true
}

// jointAt tells whether a level joint can lie at a height: clear of the plate
// and the natches, of corners and of dimples, with enough to glue.
func (t *turned) jointAt(z float64) bool {
	var at []float64
	for i, a := range t.section {
		c := t.section[(i+1)%len(t.section)]
		if (a.edge == seamEdge || a.edge == rimEdge) && math.Abs(a.Z-z) < clearOfSeam || math.Abs(a.Z-z) < 1e-3 {
			return false
		}
		if (a.Z > z) != (c.Z > z) {
			at = append(at, a.Lerp(c.Point, (z-a.Z)/(c.Z-a.Z)).R)
		}
	}
	return len(at) == 2 && math.Abs(at[1]-at[0]) >= leastJoint && t.md.CutLevel(z)
}

// between is the piece between two heights at which joints can lie, or its ends.
func (t *turned) between(lo, hi float64) *turned {
	out := *t
	out.section = nil
	n := len(t.section)
	start := 0 // a corner within, so that each crossing is met on its way out first
	for i, q := range t.section {
		if q.Z >= lo && q.Z <= hi {
			start = i
			break
		}
	}
	for k := range n {
		a, c := t.section[(start+k)%n], t.section[(start+k+1)%n]
		in := a.Z >= lo && a.Z <= hi
		if in {
			out.section = append(out.section, a)
		}
		cross := func(z float64, leaving bool) {
			q := corner{Point: form.Point{R: a.Lerp(c.Point, (z-a.Z)/(c.Z-a.Z)).R, Z: z}, shape: a.shape, edge: a.edge}
			if a.R == 0 && c.R == 0 {
				q.R = 0
			} else if a.R == 0 {
				q.shape = c.shape
			}
			if leaving {
				q.edge = keyEdge
			}
			out.section = append(out.section, q)
		}
		switch {
		case a.Z == c.Z:
		case a.Z < lo && c.Z > hi:
			cross(lo, false)
			cross(hi, true)
		case a.Z > hi && c.Z < lo:
			cross(hi, false)
			cross(lo, true)
		case in && c.Z > hi:
			cross(hi, true)
		case in && c.Z < lo:
			cross(lo, true)
		case a.Z < lo && c.Z > lo:
			cross(lo, false)
		case a.Z > hi && c.Z < hi:
			cross(hi, false)
		}
	}
	return &out
}

// cut finds an azimuth from which the piece can be cut into n sectors, clear of
// its natches, of the keys of a plug and of the flanks of dimples.
func (t *turned) cut(n int) (float64, bool) {
	if n == 1 {
		return 0, true
	}
	for from := 0.0; from < 360/float64(n); from += 15 {
		ok := true
		clear := func(az, r, radius float64) {
			half := math.Asin(math.Min(1, (radius+2)/r)) * 180 / math.Pi
			for k := range n {
				d := math.Abs(math.Mod(az-from-360/float64(n)*float64(k)+900, 360) - 180)
				ok = ok && d > half
			}
		}
		for k := range n {
			ok = ok && t.md.CutUpright(from+360/float64(n)*float64(k))
		}
		for _, q := range t.natches {
			clear(q.Azimuth, q.At.R, q.Radius)
		}
		for _, k := range t.plug {
			clear(azimuth(k), math.Hypot(k.at[0], k.at[1]), k.wide(t.clear))
		}
		if ok {
			return from, true
		}
	}
	return 0, false
}

// plugOf is the plug of a spare that widens away from the pull of the upper
// part: it stands keyed on the positive, is drawn up out of the plaster before
// the part is lifted, and is printed standing on its wide end. What stands out of
// the plaster carries its mark and is what it is drawn by.
func plugOf(j *job.Job, md *mold.Mold, keys []key) *turned {
	t := &turned{md: md, to: 360, plug: keys, clear: j.Printer.Clearance, cones: -1, marks: mold.Letter("upper") + "^", reads: 1}
	foot, top := md.Opening[1], md.Opening[len(md.Opening)-1]
	const neck = 2 * flatMost // from the plaster up to the flat of the mark
	above := neck + bandLeast + footEdge
	high := top.Z + above
	slope := (top.R - foot.R) / (top.Z - foot.Z)
	end := top.R + slope*above
	at := func(h float64) form.Point { return form.Point{R: top.R + slope*h, Z: top.Z + h} }
	t.section = []corner{
		{Point: form.Point{R: 0, Z: foot.Z}},
		{Point: md.Opening[0], shape: asPot},
		{Point: foot, shape: asPot},
		{Point: at(0), shape: asPot},
		{Point: at(neck), shape: asPot, edge: markEdge},
		{Point: at(above - footEdge), shape: asPot},
		{Point: form.Point{R: end - footEdge, Z: high}, shape: asPot},
		{Point: form.Point{R: 0, Z: high}, shape: asPot},
	}
	t.section[0].edge, t.section[0].shape = plugEdge, asPot
	return t
}

// plugFor is the plug as a piece, or as several, with the keys of its positive.
func plugFor(j *job.Job, md *mold.Mold, keys []key) []Piece {
	foot, top := md.Opening[1], md.Opening[len(md.Opening)-1]
	slope := (top.R - foot.R) / (top.Z - foot.Z)
	p := Piece{Label: words.Say("upper plug"), Part: "upper", Kind: "plug", up: solid.Vec{0, 0, -1},
		Draft: math.Atan(slope) * 180 / math.Pi, Verdict: parting.Clear,
		Note: words.Say("It forms the flared spare. Stand it on the positive; when the plaster has set, draw it up before the part is lifted. At each cast cut the clay out of the spare before the upper part is lifted.")}
	return divided(j, p, plugOf(j, md, keys), nil)
}
