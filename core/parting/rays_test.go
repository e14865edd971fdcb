package parting

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/release"
)

// What rays tell of a body from one place beside it: whether plaster there is free
// along a pull, and how far across it the way out lies.

// rays looks at a body from the plaster about it, line by line along one pull. Lines
// are told by where they stand across the pull.
type rays struct {
	pull release.Pull
	xs   []float64 // of the body's outline, across the pull
	ys   []float64 // and along it
}

func raysOf(body []form.Point, pull release.Pull) *rays {
	w := &rays{pull: pull}
	for _, p := range body {
		x, y := w.turn(p)
		w.xs, w.ys = append(w.xs, x), append(w.ys, y)
	}
	return w
}

func (w *rays) turn(p form.Point) (x, y float64) {
	switch w.pull {
	case release.Down:
		return p.R, -p.Z
	case release.Up:
		return p.R, p.Z
	}
	return p.Z, p.R
}

// rounding is what coordinates may be wrong by, mm: what stands no farther in the way
// than that holds nothing. It is what release says that counts.
const rounding = 1e-6

// free tells whether a ray from (x, y) along the pull meets nothing. A line along which
// something begins or ends is taken to lie just this side of it or beyond, as seen from
// a place in the direction -dir: what touches it there from this side does not count,
// and neither does chord own.
func (w *rays) free(x, y, dir float64, own int) bool {
	for i := range len(w.xs) - 1 {
		ax, bx := w.xs[i], w.xs[i+1]
		if i == own {
			continue
		}
		if dir > 0 && (ax > x) != (bx > x) || dir < 0 && (ax < x) != (bx < x) {
			if w.ys[i]+(x-ax)/(bx-ax)*(w.ys[i+1]-w.ys[i]) > y {
				return false
			}
		}
	}
	return true
}

// within tells whether a place lies in the body.
func (w *rays) within(p form.Point) bool {
	x, y := w.turn(p)
	n := 0
	for i := range len(w.xs) - 1 {
		ax, bx := w.xs[i], w.xs[i+1]
		if (ax > x) != (bx > x) && w.ys[i]+(x-ax)/(bx-ax)*(w.ys[i+1]-w.ys[i]) > y {
			n++
		}
	}
	return n%2 == 1
}

// wayOut is how a place is caught: the nearest line that is free, and whether there is one
// in its own gap.
type wayOut struct {
	to   float64 // across the pull
	far  float64 // mm, from the place
	shut bool
}

// out finds it; ok is false where the place is free, or no line is.
func (w *rays) out(p form.Point) (way wayOut, ok bool) {
	x, y := w.turn(p)
	if w.free(x, y+rounding, 1, -1) {
		return way, false
	}
	// On the level of the place, the shade of what stands ahead: lines along which a
	// ray would meet it. It ends where a chord comes to that level or an outline turns.
	type edge struct {
		at  float64
		own int // the chord that comes to the level there, or none
	}
	var ends []edge
	var walls []float64
	for i := range len(w.xs) - 1 {
		ax, ay, bx, by := w.xs[i], w.ys[i], w.xs[i+1], w.ys[i+1]
		if ay > y+rounding {
			ends = append(ends, edge{ax, -1})
		}
		if (ay > y+rounding) != (by > y+rounding) {
			ends = append(ends, edge{ax + (y+rounding-ay)/(by-ay)*(bx-ax), i})
		}
		if (ay > y) != (by > y) {
			walls = append(walls, ax+(y-ay)/(by-ay)*(bx-ax))
		}
	}
	slices.SortFunc(ends, func(a, b edge) int { return cmp.Compare(math.Abs(a.at-x), math.Abs(b.at-x)) })
	way = wayOut{far: math.Inf(1), shut: true}
	left, right := false, false // an end of the shade has been found on that side
	for _, end := range ends {
		to := end.at
		if w.pull != release.Out && to <= rounding || to < x && left || to > x && right || left && right {
			continue // the axis is no way out
		}
		if !w.free(to, y+rounding, to-x, end.own) {
			continue
		}
		left, right = left || to <= x, right || to >= x
		far, open := math.Abs(to-x), true
		for _, at := range walls {
			// the place lies beside its own wall, on one side of it
			if d := (at - x) * math.Copysign(1, to-x); d > 0 && d < far-rounding {
				open = false
			}
		}
		if open == way.shut && open || open != way.shut && far < way.far {
			way = wayOut{to, far, !open}
		}
	}
	return way, !math.IsInf(way.far, 1)
}
