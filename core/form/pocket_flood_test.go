package form_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
)

// A slow second finding of pockets, by no shared code: the space beside a line is
// laid in thin level rings, and a flood runs through them until nothing changes.

// ring is the space between two radii at one height; best is how high the lowest
// place of the best path from it to the opening lies.
type ring struct{ from, to, best float64 }

func step(begins bool) int {
	if begins {
		return 1
	}
	return -1
}

// rings lays the space beside a line in rows of rings.
func rings(line []form.Point, space form.Side, rows int) (at []float64, all [][]ring) {
	lo, hi, wide := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range line {
		lo, hi, wide = min(lo, p.Z), max(hi, p.Z), max(wide, p.R)
	}
	start, end := line[0], line[len(line)-1]
	for k := range rows {
		z := lo + (float64(k)+0.5)*(hi-lo)/float64(rows)
		// where the line, closed along the axis, meets this height, and
		// whether the space left of it begins or ends there, going outward
		type meet struct {
			r    float64
			step int
		}
		var cut []meet
		if (start.Z > z) != (end.Z > z) {
			cut = append(cut, meet{0, step(end.Z > z)})
		}
		for i := 1; i < len(line); i++ {
			if p, q := line[i-1], line[i]; (p.Z > z) != (q.Z > z) {
				cut = append(cut, meet{p.R + (z-p.Z)/(q.Z-p.Z)*(q.R-p.R), step(p.Z > z)})
			}
		}
		if space == form.Right {
			cut = append(cut, meet{0, 0}, meet{wide + 1, 0})
		}
		slices.SortFunc(cut, func(a, b meet) int { return cmp.Or(cmp.Compare(a.r, b.r), a.step-b.step) })
		var row []ring
		next, turns := lo+(float64(k)+1.5)*(hi-lo)/float64(rows), 0
		for i := 0; i+1 < len(cut); i++ {
			if turns += cut[i].step; (turns > 0) != (space == form.Left) {
				continue
			}
			r := ring{cut[i].r, cut[i+1].r, math.Inf(-1)}
			if space == form.Right && (r.to > wide || k == rows-1) || space == form.Left && z < end.Z && (next >= end.Z || k == rows-1) && r.from < end.R {
				r.best = z
			}
			row = append(row, r)
		}
		at, all = append(at, z), append(all, row)
	}
	return at, all
}

// held is the volume in ml of the rings from which every path to the opening
// dips below them.
func held(line []form.Point, space form.Side, rows int) float64 {
	at, all := rings(line, space, rows)
	for again := true; again; {
		again = false
		for n := range 2 * rows {
			k := min(n, 2*rows-1-n) // up, then down
			for i := range all[k] {
				c := &all[k][i]
				for _, o := range [2]int{k - 1, k + 1} {
					if o < 0 || o == rows {
						continue
					}
					for _, d := range all[o] {
						if min(c.to, d.to) <= max(c.from, d.from) {
							continue
						}
						if b := min(at[k], d.best); b > c.best {
							c.best, again = b, true
						}
					}
				}
			}
		}
	}
	v, dz := 0.0, at[1]-at[0]
	for k, row := range all {
		for _, c := range row {
			if c.best < at[k]-dz/2 {
				v += math.Pi * (c.to*c.to - c.from*c.from) * dz / 1000
			}
		}
	}
	return v
}

// Air held in random pots with hooks, grooves and flanges, and in plaster over
// them, and slip held in their casts, is what a flood leaves.
func TestPocketsAgainstFlood(t *testing.T) {
	forms, rows := uint64(3000), 1500
	if testing.Short() {
		forms = 250
	}
	seen, some := [3]int{}, [3]int{}
	for k := range forms {
		m, nodes := formtest.Meridian(formtest.Rand(51, k))
		h, w := m.Extent()
		for n, space := range [3]form.Side{form.Left, form.Right, form.Left} {
			line := m.Pts
			if n == 2 {
				if m.Closed {
					continue
				}
				if line = form.Inset(line, 3); line == nil {
					continue
				}
			} else if space == form.Right { // from where the form last stands on its plate
				for i, p := range m.Pts {
					if p.Z == 0 {
						line = m.Pts[i:]
					}
				}
				if len(line) < 3 {
					continue
				}
			} else if m.Closed {
				line = m.Pts[:m.CutMouth(w/4)+1]
				if len(line) < 3 || slices.ContainsFunc(line[:len(line)-1], func(p form.Point) bool { return p.Z >= line[len(line)-1].Z && p.R <= w/4 }) {
					continue
				}
			}
			seen[n]++
			got := 0.0
			for _, p := range form.Pockets(line, space, 0) {
				if !(p.Volume >= 0) || p.ZTo < p.ZFrom {
					t.Errorf("profile %d: pocket %+v", k, p)
				}
				got += p.Volume
			}
			// a row or two too many or too few of the widest ring; level slits
			// thinner than a row stop the flood, so there it tries finer rows
			want, tol := held(line, space, rows), 0.0
			if tol = 0.001*want + 2*math.Pi*w*w*h/float64(rows)/1000; math.Abs(got-want) > tol {
				want = held(line, space, 16*rows)
			}
			if want > 1 {
				some[n]++
			}
			if math.Abs(got-want) > tol {
				t.Errorf("profile %d, line %d: pockets hold %.3f ml, the flood leaves %.3f (within %.2f)\n%v", k, n, got, want, tol, nodes)
			}
		}
	}
	t.Logf("%v lines, %v of them hold air", seen, some)
	if uint64(min(some[0], some[1], 2*some[2])) < forms/50 {
		t.Errorf("only %v lines hold air", some)
	}
}
