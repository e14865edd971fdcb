package plan

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/mold"
)

// What a pot cast solid asks besides: the clay grows from both of its faces until
// they meet, last where the largest ball has room between them; and it is filled
// through the foot, upside down.

// thickStep is the grain in mm along the inner surface at which balls are tried.
const thickStep = 0.5

// thickest is the largest ball between the inner surface of a pot cast solid and its
// contour, both from the axis to the rim: where its middle stands, and its diameter
// in mm. A ball that touches
// the inner surface at a place grows until it touches another; the largest over a
// grain of places falls short by no more than the grain lets the wall change.
func thickest(inner, contour []form.Point) (middle form.Point, diameter float64) {
	ring := slices.Clone(contour)
	slices.Reverse(ring)
	ring = slices.Concat(inner, ring) // the clay lies on its right
	largest := 0.0
	grow := func(p, n form.Point, i, j int) { // on chords i to j
		rho := math.Inf(1)
		for k := 1; k < len(ring); k++ {
			if k-1 < i || k-1 > j {
				rho = reach(p, n, ring[k-1], ring[k], rho)
			}
		}
		if rho > largest && !math.IsInf(rho, 1) {
			largest, middle = rho, form.Point{R: p.R + rho*n.R, Z: p.Z + rho*n.Z}
		}
	}
	right := func(i int) form.Point {
		d, l := inner[i+1].Sub(inner[i]), inner[i].Dist(inner[i+1])
		return form.Point{R: d.Z / l, Z: -d.R / l}
	}
	for i := range len(inner) - 1 {
		n := right(i)
		steps := int(inner[i].Dist(inner[i+1])/thickStep) + 1
		for k := range steps {
			grow(inner[i].Lerp(inner[i+1], (float64(k)+0.5)/float64(steps)), n, i, i)
		}
		if i == 0 {
			continue
		}
		before := right(i - 1)
		if before.R*n.Z-before.Z*n.R <= 0 { // a corner that the clay draws in to
			continue
		}
		const fan = 8 // normals of a corner that stands out into the clay
		for k := range fan + 1 {
			at := before.Lerp(n, float64(k)/fan)
			l := math.Hypot(at.R, at.Z)
			grow(inner[i], form.Point{R: at.R / l, Z: at.Z / l}, i-1, i)
		}
	}
	return middle, 2 * largest
}

// reach is how large a ball that touches p, with its middle along n, can grow before
// it meets the chord from a to b; most where it does not sooner.
func reach(p, n, a, b form.Point, most float64) float64 {
	for _, q := range [2]form.Point{a, b} {
		d := q.Sub(p)
		if ahead := d.R*n.R + d.Z*n.Z; ahead > 1e-12 {
			most = min(most, (d.R*d.R+d.Z*d.Z)/(2*ahead))
		}
	}
	l := a.Dist(b)
	if l == 0 {
		return most
	}
	u := form.Point{R: (b.R - a.R) / l, Z: (b.Z - a.Z) / l}
	m, d := form.Point{R: -u.Z, Z: u.R}, p.Sub(a)
	off := d.R*m.R + d.Z*m.Z
	if off < 0 {
		off, m = -off, form.Point{R: -m.R, Z: -m.Z}
	}
	if left := 1 - n.R*m.R - n.Z*m.Z; left > 1e-12 {
		rho := off / left
		if foot := d.R*u.R + d.Z*u.Z + rho*(n.R*u.R+n.Z*u.Z); foot >= 0 && foot <= l {
			most = min(most, rho)
		}
	}
	return most
}

// airUnder is the air that stays in a pot cast solid when slip is poured in through
// its foot, upside down, in heights of the mold as it is drawn.
func airUnder(md *mold.Mold) []form.Pocket {
	if md.Drain == nil {
		return []form.Pocket{}
	}
	hole := md.Drain[1]
	line := slices.Clone(md.Inner)
	for k := len(md.Cavity) - 1; k > 0; k-- {
		a, b := md.Cavity[k-1], md.Cavity[k]
		line = append(line, b)
		if a.R <= hole.R && b.R > hole.R && hole.Dist(a.Lerp(b, (hole.R-a.R)/(b.R-a.R))) < 1e-9 {
			break
		}
	}
	line = append(line, hole)
	for i := range line {
		line[i].Z = -line[i].Z
	}
	out := pockets(md, line, form.Left)
	for i, q := range out {
		out[i].ZFrom, out[i].ZTo = -q.ZTo, -q.ZFrom
	}
	return out
}
