package form

import (
	"cmp"
	"math"
	"slices"
)

// Inset is the inner surface of a cast whose wall is w mm thick everywhere on
// a contour that runs from the axis to an open mouth: the edge of all points
// inside that lie at least w from the contour, from the axis (or where the
// bore closes) up to the level of the mouth. It is nil where the wall fills the
// mouth.
//
// The offset of every chord, with arcs about outward-turning corners, is cut
// wherever it crosses itself, and only pieces that keep their distance stay.
func Inset(contour []Point, w float64) []Point {
	mouth := contour[len(contour)-1]
	// the wall goes on up the spare, so the contour does too
	base := append(slices.Clone(contour), Point{mouth.R, mouth.Z + 3*w})
	raw := rawInset(base, w)
	tree := NewTree(base)
	kept := make([][2]Point, 0, len(raw))
	cuts := crossings(raw)
	for i := range len(raw) - 1 {
		p, q := raw[i], raw[i+1]
		from := 0.0
		keep := func(t float64) {
			if (t-from)*p.Dist(q) > 1e-9 {
				a, b := p.Lerp(q, from), p.Lerp(q, t)
				if a, b, ok := clipInset(a, b, mouth.Z); ok && tree.farther(a.Lerp(b, 0.5), w) {
					kept = append(kept, [2]Point{a, b})
				}
			}
			from = t
		}
		for ; len(cuts) > 0 && cuts[0].chord == i; cuts = cuts[1:] {
			keep(cuts[0].t)
		}
		keep(1)
	}
	// from the mouth down, as far as the bore is open
	out := make([]Point, 0, 2*len(kept)+1)
	for i := len(kept) - 1; i >= 0; i-- {
		a, b := kept[i][0], kept[i][1]
		if len(out) == 0 {
			if b.Z < mouth.Z-1e-6 {
				return nil
			}
			out = append(out, b)
		} else if out[len(out)-1].Dist(b) > 1e-6 {
			out = append(out, b)
		}
		out = append(out, a)
		if a.R <= 0 {
			break
		}
	}
	if len(out) < 2 {
		return nil
	}
	if last := out[len(out)-1]; last.R > 0 { // the floor ends beside the axis
		out = append(out, Point{0, last.Z})
	}
	slices.Reverse(out)
	return out
}

// rawInset is the chain of offset chords and corner arcs, loops and all.
func rawInset(base []Point, w float64) []Point {
	const arcStep = 8 * math.Pi / 180
	raw := make([]Point, 0, 2*len(base)+2*len(base)/4)
	last := 0.0
	for i := 0; i+1 < len(base); i++ {
		p, q := base[i], base[i+1]
		a := math.Atan2(q.Z-p.Z, q.R-p.R)
		n := Normal(a)
		if i > 0 {
			// inside lies to the left; the offset opens where the contour turns
			// right
			if turn := wrap(a - last); turn < 0 {
				// chords that touch the arc from without, so that they keep
				// their distance too
				steps := math.Ceil(-turn / arcStep)
				half := turn / (2 * steps)
				for k := 1.0; k < 2*steps; k += 2 {
					m, far := Normal(last+k*half), w/math.Cos(half)
					raw = append(raw, Point{p.R - far*m.R, p.Z - far*m.Z})
				}
			}
		}
		raw = append(raw, Point{p.R - w*n.R, p.Z - w*n.Z}, Point{q.R - w*n.R, q.Z - w*n.Z})
		last = a
	}
	return raw
}

// cut is a place on a chord, at a share t of its length.
type cut struct {
	chord int
	t     float64
}

// crossings are the places at which chords of a polyline cross others, in order.
func crossings(raw []Point) []cut {
	var out []cut
	t := NewTree(raw)
	t.pairs(1, 1, func(i, j int) bool {
		if j == i+1 {
			return false
		}
		p, q, r, s := raw[i], raw[i+1], raw[j], raw[j+1]
		a, b, c, d := side(p, q, r), side(p, q, s), side(r, s, p), side(r, s, q)
		if (a > 0) != (b > 0) && (c > 0) != (d > 0) {
			out = append(out, cut{i, c / (c - d)}, cut{j, a / (a - b)})
		}
		return false
	})
	slices.SortFunc(out, func(a, b cut) int { return cmp.Or(a.chord-b.chord, cmp.Compare(a.t, b.t)) })
	return out
}

// clipInset cuts a piece to r >= 0 and to the level of the mouth.
func clipInset(a, b Point, top float64) (Point, Point, bool) {
	if a.R <= 0 && b.R <= 0 || a.Z >= top && b.Z >= top {
		return a, b, false
	}
	if a.R < 0 {
		a = Point{0, a.Lerp(b, a.R/(a.R-b.R)).Z}
	} else if b.R < 0 {
		b = Point{0, a.Lerp(b, a.R/(a.R-b.R)).Z}
	}
	if a.Z > top {
		a = Point{a.Lerp(b, (a.Z-top)/(a.Z-b.Z)).R, top}
	} else if b.Z > top {
		b = Point{a.Lerp(b, (a.Z-top)/(a.Z-b.Z)).R, top}
	}
	return a, b, a.Dist(b) > 1e-9
}

// farther tells whether p lies no nearer than w to any chord.
func (t *Tree) farther(p Point, w float64) bool {
	least := w - 1e-6*max(1, w)
	beyond := least * least * (1 + sure)
	var stack [48]int // the tree is no deeper
	top := 1
	for stack[0] = 1; top > 0; {
		top--
		k := stack[top]
		if t.box[k].square(p.R, p.Z) > beyond {
			continue
		}
		if k < t.size {
			stack[top], stack[top+1] = 2*k+1, 2*k
			top += 2
			continue
		}
		i := k - t.size
		if c := newChord(t.pts[i], t.pts[i+1]); c.square(p.R, p.Z) > beyond {
			continue
		}
		if distanceToChord(p, t.pts[i], t.pts[i+1]) < least {
			return false
		}
	}
	return true
}
