package release

import (
	"math"
	"slices"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
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

// noise is what coordinates may be wrong by, mm: pot that stands no farther in the way
// holds nothing, and a wall no nearer than that before a free place leaves it free.
const noise = 1e-6

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
		if way := math.Copysign(1, x-px); (at-px)*way > 1e-7 && (x-at)*way > noise {
			return true
		}
		// the place itself lies 1e-9 off the contour, on one side of it
		if math.Abs(at-px) <= 1e-7 && (at-px)*(x-px) > 0 && math.Abs(at-px) < math.Abs(x-px) && math.Abs(x-px) > noise {
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
	for _, s := range w.shadow(ahead+noise, pull) {
		if x < s.a || x > s.b {
			continue
		}
		same, any := math.Inf(1), math.Inf(1)
		for _, to := range [2]float64{s.a, s.b} {
			if to <= noise && pull != Out {
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

// behind is where, at height z, a core is shut in: the body being the clay of a pot cast
// solid, whose inner surface is m, places out of it from which the ray outward comes to
// that surface first and the ray up to any clay.
func (w *twin) behind(z float64) []interval {
	type wall struct {
		r     float64
		inner bool
	}
	var cross []wall
	for i := 0; i+1 < len(w.body); i++ {
		a, b := w.body[i], w.body[i+1]
		if (a.Z > z) != (b.Z > z) {
			inner := false
			for k := 0; k+1 < len(w.m.Pts); k++ {
				inner = inner || a == w.m.Pts[k] && b == w.m.Pts[k+1]
			}
			cross = append(cross, wall{a.R + (z-a.Z)/(b.Z-a.Z)*(b.R-a.R), inner})
		}
	}
	slices.SortFunc(cross, func(a, b wall) int { return sign(a.r - b.r) })
	var out []interval
	from := 0.0
	for _, x := range cross {
		mid := form.Point{R: (from + x.r) / 2, Z: z}
		if x.inner && w.crosses(mid, Out)%2 == 0 {
			for _, u := range w.shadow(z, Up) {
				if a, b := max(from, u.a), min(x.r, u.b); b > a {
					out = append(out, interval{a, b})
				}
			}
		}
		from = x.r
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
func (w *twin) trapsExactly(trapped func(z float64) []interval) measure {
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
			half.add(mid+g*h/(2*math.Sqrt(3)), h/2, trapped(mid+g*h/(2*math.Sqrt(3))))
			t.area += half.area
			t.volume += half.volume
			if h > thinnest { // a slit that is no higher has no width that is told
				t.wide = math.Max(t.wide, half.wide)
			}
			if half.area > 0 {
				t.zFrom, t.zTo = math.Min(t.zFrom, zs[i]), math.Max(t.zTo, zs[i+1])
			}
		}
		if h <= thinnest {
			continue
		}
		for _, z := range [2]float64{zs[i] + 1e-6*h, zs[i+1] - 1e-6*h} {
			for _, iv := range trapped(z) {
				t.wide = math.Max(t.wide, iv.b-iv.a)
			}
		}
	}
	return t
}

// shut tells whether the gap at p has no free place on its own level.
func (w *twin) shut(p form.Point, pull Pull) bool {
	x, ahead := turned(p, pull)
	for _, s := range w.shadow(ahead+noise, pull) {
		if x < s.a || x > s.b {
			continue
		}
		for _, to := range [2]float64{s.a, s.b} {
			if to <= noise && pull != Out {
				continue // the axis is no way out
			}
			if !w.wall(p, to, pull) {
				return false
			}
		}
	}
	return true
}

// What stands in the way by no more than the rounding of coordinates holds nothing,
// and what stands more is told by its whole depth. By hand: a groove 5 mm deep whose
// lower lip ends level with a corner of its back wall, or above it by a hair; then
// the plaster along the back wall below has no way out on its own level, until the
// wall above the lip ends.
func TestRoundingNoiseHoldsNothing(t *testing.T) {
	for _, c := range []struct{ by, depth float64 }{{0, 5}, {3e-9, 5}, {0.5e-6, 5}, {3e-6, 10}, {1e-3, 10}} {
		m, err := formtest.Build([]job.Node{formtest.Corner(0, 0), formtest.Corner(35, 0), formtest.Corner(35, 10+c.by), formtest.Corner(30, 5),
			formtest.Corner(30, 10), formtest.Corner(35, 15), formtest.Corner(40, 25)})
		if err != nil {
			t.Fatal(err)
		}
		s, w := New(m), newTwin(m)
		deepest, slow := 0.0, 0.0
		for _, x := range s.All(Out) {
			if x.Span != 3 {
				continue
			}
			deepest = max(deepest, x.Depth)
			wall := s.wall(3)
			_, plaster := wall.beside(x.T)
			slow = max(slow, w.depth(plaster, Out))
		}
		if math.Abs(deepest-c.depth) > 0.001 || math.Abs(slow-c.depth) > 0.001 {
			t.Errorf("a lip higher by %g mm: %.6f mm, twin %.6f, want %g", c.by, deepest, slow, c.depth)
		}
	}
}

// A flange of a hair, by hand: plaster on top of it has its whole width to go to come
// down past its edge, and none where the flange is no thicker than noise.
func TestFlangeOfAHair(t *testing.T) {
	for _, c := range []struct{ thick, depth float64 }{{3e-9, 0}, {0.9e-6, 0}, {1e-4, 20}} {
		m, err := formtest.Build([]job.Node{formtest.Corner(0, 0), formtest.Corner(20, 0), formtest.Corner(20, 30), formtest.Corner(40, 30),
			formtest.Corner(20, 30+c.thick), formtest.Corner(20, 60)})
		if err != nil {
			t.Fatal(err)
		}
		s, w := New(m), newTwin(m)
		for _, x := range s.All(Down) {
			if x.Span != 3 || x.T < 0.999 {
				continue
			}
			wall := s.wall(3)
			_, plaster := wall.beside(x.T)
			if slow := w.depth(plaster, Down); math.Abs(x.Depth-c.depth) > 0.001 || math.Abs(slow-c.depth) > 0.001 {
				t.Errorf("a flange of %g mm: %.6f mm at %v, twin %.6f, want %g", c.thick, x.Depth, x.P, slow, c.depth)
			}
		}
	}
}
