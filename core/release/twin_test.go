package release

import (
	"math"
	"slices"

	"moldwright/core/form"
)

// twin answers every question of a survey slowly, straight from what the words
// mean, by rays and strips against all chords. It shares no code with the
// sweeps.
type twin struct {
	m *form.Meridian
	// body is the outline of the pot from the axis under the foot to the axis
	// again: the meridian and, for an open form, the disc at the rim.
	body []form.Point
}

func newTwin(m *form.Meridian) *twin {
	w := &twin{m: m, body: slices.Clone(m.Pts)}
	if !m.Closed {
		w.body = append(w.body, form.Point{R: 0, Z: m.Rim().Z})
	}
	return w
}

// crosses counts the chords that a ray from p meets: it runs along +r, or up
// or down.
func (w *twin) crosses(p form.Point, pull Pull) int {
	n := 0
	for i := 0; i+1 < len(w.body); i++ {
		a, b := w.body[i], w.body[i+1]
		if pull == Out {
			if (a.Z > p.Z) != (b.Z > p.Z) && a.R+(p.Z-a.Z)/(b.Z-a.Z)*(b.R-a.R) > p.R {
				n++
			}
			continue
		}
		if (a.R > p.R) == (b.R > p.R) {
			continue
		}
		z := a.Z + (p.R-a.R)/(b.R-a.R)*(b.Z-a.Z)
		if pull == Down && z < p.Z || pull == Up && z > p.Z {
			n++
		}
	}
	return n
}

func (w *twin) inside(p form.Point) bool { return w.crosses(p, Out)%2 == 1 }

func (w *twin) free(p form.Point, pull Pull) bool { return w.crosses(p, pull) == 0 }

// turned gives a place's coordinate across the pull and how far it lies along
// it.
func turned(p form.Point, pull Pull) (across, ahead float64) {
	switch pull {
	case Down:
		return p.R, -p.Z
	case Up:
		return p.R, p.Z
	}
	return p.Z, p.R
}

// shadow is where, across the pull, the pot stands ahead of the line through
// p: the shade it throws back on that line. Strips that touch are joined.
func (w *twin) shadow(ahead float64, pull Pull) []interval {
	var all []interval
	for i := 0; i+1 < len(w.body); i++ {
		xa, ya := turned(w.body[i], pull)
		xb, yb := turned(w.body[i+1], pull)
		switch {
		case ya <= ahead && yb <= ahead:
			continue
		case ya <= ahead:
			xa += (ahead - ya) / (yb - ya) * (xb - xa)
		case yb <= ahead:
			xb += (ahead - yb) / (ya - yb) * (xa - xb)
		}
		all = append(all, interval{math.Min(xa, xb), math.Max(xa, xb)})
	}
	slices.SortFunc(all, func(a, b interval) int { return sign(a.a - b.a) })
	var out []interval
	for _, s := range all {
		if n := len(out); n > 0 && s.a <= out[n-1].b {
			out[n-1].b = math.Max(out[n-1].b, s.b)
		} else {
			out = append(out, s)
		}
	}
	return out
}

// wall tells whether pot stands between p and the place x on the line through
// p across the pull.
func (w *twin) wall(p form.Point, x float64, pull Pull) bool {
	px, py := turned(p, pull)
	for i := 0; i+1 < len(w.body); i++ {
		xa, ya := turned(w.body[i], pull)
		xb, yb := turned(w.body[i+1], pull)
		if (ya > py) == (yb > py) {
			continue
		}
		at := xa + (py-ya)/(yb-ya)*(xb-xa)
		if at > math.Min(px, x)+1e-7 && at < math.Max(px, x)-1e-7 {
			return true
		}
		// the place itself lies 1e-9 off the contour, on one side of it
		if math.Abs(at-px) <= 1e-7 && (at-px)*(x-px) > 0 && math.Abs(at-px) < math.Abs(x-px) && math.Abs(x-px) > 1e-6 {
			return true
		}
	}
	return false
}

// depth is how far across the pull the plaster at p would have to shift: to
// the nearest place of its own gap that is free or, where it has none, to the
// nearest free place at all.
func (w *twin) depth(p form.Point, pull Pull) float64 {
	x, ahead := turned(p, pull)
	if w.free(p, pull) {
		return 0
	}
	for _, s := range w.shadow(ahead, pull) {
		if x < s.a || x > s.b {
			continue
		}
		same, any := math.Inf(1), math.Inf(1)
		for _, to := range [2]float64{s.a, s.b} {
			if to <= 0 && pull != Out {
				continue // the axis is no way out
			}
			any = math.Min(any, math.Abs(to-x))
			if !w.wall(p, to, pull) {
				same = math.Min(same, math.Abs(to-x))
			}
		}
		if !math.IsInf(same, 1) {
			return same
		}
		return any
	}
	return 0
}

// trapped is where, at height z, empty space is shut in under all three pulls.
// The opening inside an open rim, above the disc, holds no plaster.
func (w *twin) trapped(z float64) []interval {
	var cross []float64
	for i := 0; i+1 < len(w.body); i++ {
		a, b := w.body[i], w.body[i+1]
		if (a.Z > z) != (b.Z > z) {
			cross = append(cross, a.R+(z-a.Z)/(b.Z-a.Z)*(b.R-a.R))
		}
	}
	slices.Sort(cross)
	// an odd number of crossings means pot at the axis
	var gaps []interval
	if len(cross)%2 == 0 && len(cross) > 0 && (w.m.Closed || z < w.m.Rim().Z) {
		gaps = append(gaps, interval{0, cross[0]})
	}
	for i := 2 - len(cross)%2 - 1; i+1 < len(cross); i += 2 {
		gaps = append(gaps, interval{cross[i], cross[i+1]})
	}
	var out []interval
	down, up := w.shadow(-z, Down), w.shadow(z, Up)
	for _, g := range gaps {
		for _, d := range down {
			for _, u := range up {
				a, b := max(g.a, d.a, u.a), min(g.b, d.b, u.b)
				if b > a {
					out = append(out, interval{a, b})
				}
			}
		}
	}
	return out
}

// measure is what all traps come to between two heights.
type measure struct {
	area, volume, wide, zFrom, zTo float64
}

func (t *measure) add(z, h float64, list []interval) {
	for _, iv := range list {
		if iv.b-iv.a < 1e-7 {
			continue
		}
		t.area += h * (iv.b - iv.a)
		t.volume += h * math.Pi * (iv.b*iv.b - iv.a*iv.a)
		t.wide = math.Max(t.wide, iv.b-iv.a)
		t.zFrom, t.zTo = math.Min(t.zFrom, z-h/2), math.Max(t.zTo, z+h/2)
	}
}

// trapsBetween sums strips of equal height, each by its middle line.
func (w *twin) trapsBetween(z0, z1 float64, strips int) measure {
	t := measure{zFrom: math.Inf(1), zTo: math.Inf(-1)}
	h := (z1 - z0) / float64(strips)
	for k := range strips {
		z := z0 + (float64(k)+0.5)*h
		t.add(z, h, w.trapped(z))
	}
	return t
}

// trapsExactly cuts at every height where a vertical through a vertex meets a
// chord, between which all edges of shadows run straight, and sums each slab
// by two Gauss points, which is exact there.
func (w *twin) trapsExactly() measure {
	var zs []float64
	for _, p := range w.body {
		zs = append(zs, p.Z)
		for i := 0; i+1 < len(w.body); i++ {
			a, b := w.body[i], w.body[i+1]
			if (a.R > p.R) != (b.R > p.R) {
				zs = append(zs, a.Z+(p.R-a.R)/(b.R-a.R)*(b.Z-a.Z))
			}
		}
	}
	slices.Sort(zs)
	t := measure{zFrom: math.Inf(1), zTo: math.Inf(-1)}
	for i := 0; i+1 < len(zs); i++ {
		h := zs[i+1] - zs[i]
		if h < 1e-9 {
			continue
		}
		mid := (zs[i] + zs[i+1]) / 2
		for _, g := range [2]float64{-1, 1} {
			half := measure{zFrom: math.Inf(1), zTo: math.Inf(-1)}
			half.add(mid+g*h/(2*math.Sqrt(3)), h/2, w.trapped(mid+g*h/(2*math.Sqrt(3))))
			t.area += half.area
			t.volume += half.volume
			t.wide = math.Max(t.wide, half.wide)
			if half.area > 0 {
				t.zFrom, t.zTo = math.Min(t.zFrom, zs[i]), math.Max(t.zTo, zs[i+1])
			}
		}
		for _, z := range [2]float64{zs[i] + 1e-6*h, zs[i+1] - 1e-6*h} {
			for _, iv := range w.trapped(z) {
				t.wide = math.Max(t.wide, iv.b-iv.a)
			}
		}
	}
	return t
}

// shut tells whether the gap at p has no free place on its own level.
func (w *twin) shut(p form.Point, pull Pull) bool {
	x, ahead := turned(p, pull)
	for _, s := range w.shadow(ahead, pull) {
		if x < s.a || x > s.b {
			continue
		}
		for _, to := range [2]float64{s.a, s.b} {
			if to <= 0 && pull != Out {
				continue // the axis is no way out
			}
			if !w.wall(p, to, pull) {
				return false
			}
		}
	}
	return true
}
