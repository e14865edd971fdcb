package exercise

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/release"
)

// slow answers every question from what the words mean, by rays against all
// chords and plain sums over short pieces of the wall. It shares the chords of
// the contour with the survey and nothing else.
type slow struct {
	l       *look
	body    []form.Point
	pieces  []piece
	leastSn float64
}

// piece is a short piece of the wall.
type piece struct {
	p      form.Point // its middle
	x      float64    // place along the contour, as a number of points
	nr, nz float64    // outward normal of its chord
	area   float64
	free   [3]bool
	rub    map[int]float64 // area below the least draft: by -1 down, -2 up, sides
}

const slowStep = 0.45 // mm

func newSlow(j *job.Job) *slow {
	l, err := lookAt(j)
	if err != nil {
		panic(err)
	}
	s := &slow{l: l, body: append([]form.Point{}, l.m.Pts...), leastSn: math.Sin(rad(j.Rules.LeastDraft))}
	if !l.m.Closed {
		s.body = append(s.body, form.Point{R: 0, Z: l.m.Rim().Z})
	}
	for i := 0; i < l.end; i++ {
		a, b := l.m.Pts[i], l.m.Pts[i+1]
		d := a.Dist(b)
		n := int(math.Ceil(d / slowStep))
		for k := range n {
			t0, t1 := float64(k)/float64(n), float64(k+1)/float64(n)
			p, q := a.Lerp(b, t0), a.Lerp(b, t1)
			c := piece{p: p.Lerp(q, 0.5), x: float64(i) + (t0+t1)/2, nr: (b.Z - a.Z) / d, nz: (a.R - b.R) / d, rub: map[int]float64{}}
			c.area = 2 * math.Pi * c.p.R * p.Dist(q)
			at := form.Point{R: c.p.R + 1e-4*c.nr, Z: c.p.Z + 1e-4*c.nz}
			for _, pull := range release.Pulls {
				c.free[pull] = s.nearlyFree(at, pull)
			}
			if -c.nz < s.leastSn {
				c.rub[-1] = c.area
			}
			if c.nz < s.leastSn {
				c.rub[-2] = c.area
			}
			for _, sides := range [3]int{2, 3, 4} {
				const rays = 60
				low := 0
				for ray := range rays {
					az := (float64(ray) + 0.5) / rays * math.Pi / float64(sides)
					if c.nr*math.Cos(az) < s.leastSn {
						low++
					}
				}
				c.rub[sides] = c.area * float64(low) / rays
			}
			s.pieces = append(s.pieces, c)
		}
	}
	return s
}

// hits tells whether a ray from p along the pull meets the pot.
func (s *slow) hits(p form.Point, pull release.Pull) bool {
	for i := 0; i+1 < len(s.body); i++ {
		a, b := s.body[i], s.body[i+1]
		if pull == release.Out {
			if (a.Z > p.Z) != (b.Z > p.Z) && a.R+(p.Z-a.Z)/(b.Z-a.Z)*(b.R-a.R) > p.R {
				return true
			}
			continue
		}
		if (a.R > p.R) == (b.R > p.R) {
			continue
		}
		z := a.Z + (p.R-a.R)/(b.R-a.R)*(b.Z-a.Z)
		if pull == release.Down && z < p.Z || pull == release.Up && z > p.Z {
			return true
		}
	}
	return false
}

func (s *slow) inside(p form.Point) bool {
	n := 0
	for i := 0; i+1 < len(s.body); i++ {
		a, b := s.body[i], s.body[i+1]
		if (a.Z > p.Z) != (b.Z > p.Z) && a.R+(p.Z-a.Z)/(b.Z-a.Z)*(b.R-a.R) > p.R {
			n++
		}
	}
	return n%2 == 1
}

// across is p moved by d across the pull.
func across(p form.Point, pull release.Pull, d float64) form.Point {
	if pull == release.Out {
		return form.Point{R: p.R, Z: p.Z + d}
	}
	return form.Point{R: p.R + d, Z: p.Z}
}

// nearlyFree tells whether p, or a place of its gap within the depth that
// counts across the pull, is free.
func (s *slow) nearlyFree(p form.Point, pull release.Pull) bool {
	if !s.hits(p, pull) {
		return true
	}
	for _, d := range [2]float64{0.05, -0.05} {
		q := across(p, pull, d)
		if q.R > 0 && !s.inside(q) && !s.hits(q, pull) {
			return true
		}
	}
	return false
}

// depth is how far p is from a free place of its gap, to half a mm.
func (s *slow) depth(p form.Point, pull release.Pull) float64 {
	wall := [2]bool{}
	for d := 0.0; d < 60; d += 0.2 {
		for k, dir := range [2]float64{1, -1} {
			q := across(p, pull, dir*d)
			if wall[k] || q.R < 0 {
				continue
			}
			if d > 0 && s.inside(q) {
				wall[k] = true
				continue
			}
			if !s.hits(q, pull) {
				return d
			}
		}
		if wall[0] && wall[1] {
			return math.Max(d, 1) // shut on both sides: it is locked
		}
	}
	return 60
}

// stretches counts the runs of pieces from x on that are held, and gives for
// each its deepest piece.
func (s *slow) stretches(pull release.Pull, from float64) (runs [][2]float64, deep []float64) {
	open := false
	for _, c := range s.pieces {
		if c.x < from {
			continue
		}
		if c.free[pull] {
			open = false
			continue
		}
		if !open {
			runs, deep = append(runs, [2]float64{c.x, c.x}), append(deep, 0)
			open = true
		}
		k := len(runs) - 1
		runs[k][1] = c.x
		at := form.Point{R: c.p.R + 1e-4*c.nr, Z: c.p.Z + 1e-4*c.nz}
		if deep[k] < 0.7 {
			deep[k] = math.Max(deep[k], s.depth(at, pull))
		}
	}
	return runs, deep
}

// sums are running totals over the pieces.
type sums struct {
	held [3][]int
	rub  map[int][]float64
	area []float64
}

func (s *slow) sums() *sums {
	n := len(s.pieces)
	t := &sums{rub: map[int][]float64{}, area: make([]float64, n+1)}
	for p := range t.held {
		t.held[p] = make([]int, n+1)
	}
	for _, k := range [...]int{-1, -2, 2, 3, 4} {
		t.rub[k] = make([]float64, n+1)
	}
	for i, c := range s.pieces {
		t.area[i+1] = t.area[i] + c.area
		for p := range t.held {
			t.held[p][i+1] = t.held[p][i]
			if !c.free[p] {
				t.held[p][i+1]++
			}
		}
		for k := range t.rub {
			t.rub[k][i+1] = t.rub[k][i] + c.rub[k]
		}
	}
	return t
}

// clear tells whether the pieces from a to b let go for the pull.
func (s *slow) clear(t *sums, pull release.Pull, key, a, b int) bool {
	if t.held[pull][b] > t.held[pull][a] {
		return false
	}
	area := t.area[b] - t.area[a]
	return area <= 0 || 100*(t.rub[key][b]-t.rub[key][a])/area <= s.l.rules.RubShare
}

// fewest is the fewest parts of any scheme that lets go, 0 for none, and the
// fewest without side parts.
func (s *slow) fewest() (all, axial int) {
	t := s.sums()
	n := len(s.pieces)
	all, axial = 99, 99
	if s.clear(t, release.Down, -1, 0, n) {
		axial = 1
	}
	level := func(k int) bool { return s.pieces[k].free[release.Out] && s.pieces[max(k-1, 0)].free[release.Out] }
	var lows, highs []int
	for k := 1; k < n; k++ {
		lower, upper := s.clear(t, release.Down, -1, 0, k), s.clear(t, release.Up, -2, k, n)
		if lower && upper {
			axial = min(axial, 2)
		}
		if lower && level(k) {
			lows = append(lows, k)
		}
		if upper && level(k) {
			highs = append(highs, k)
		}
	}
	all = axial
	lows, highs = append(lows, 0), append(highs, n)
	for _, a := range lows {
		for _, b := range highs {
			count := 0
			if a > 0 {
				count++
			}
			if b < n {
				count++
			}
			if a >= b || count+2 >= all || t.held[release.Out][b] > t.held[release.Out][a] {
				continue
			}
			for sides := 2; sides <= 4 && count+sides < all; sides++ {
				if s.clear(t, release.Out, sides, a, b) {
					all = count + sides
				}
			}
		}
	}
	if all == 99 {
		all = 0
	}
	if axial == 99 {
		axial = 0
	}
	return all, axial
}

// pocket is the volume in ml of the cells of a region from which nothing that
// moves down and sideways only, coming in at the top, is met: by filling a
// grid.
type grid struct {
	cell   float64
	nr, nz int
	in     []bool
	// door is the row and the width, in cells, of the opening.
	row, door int
}

func (s *slow) cavity(cell float64) *grid {
	g := &grid{cell: cell, nr: int(s.l.maxR/cell) + 2, nz: int(s.l.height/cell) + 1}
	rim := s.l.m.Pts[s.l.end]
	g.row, g.door = int(rim.Z/cell-0.5), int(rim.R/cell+0.5)
	g.in = make([]bool, g.nr*g.nz)
	for k := range g.nz { // a cell is inside when a level ray meets the contour an odd number of times
		z := (float64(k) + 0.5) * cell
		for i := 0; i+1 < len(s.body); i++ {
			a, b := s.body[i], s.body[i+1]
			if (a.Z > z) == (b.Z > z) {
				continue
			}
			r := a.R + (z-a.Z)/(b.Z-a.Z)*(b.R-a.R)
			for c := 0; c < g.nr && (float64(c)+0.5)*cell < r; c++ {
				g.in[k*g.nr+c] = !g.in[k*g.nr+c]
			}
		}
	}
	return g
}

// inset takes out all cells nearer than w to the contour.
func (s *slow) inset(g *grid, w float64) *grid {
	out := *g
	out.in = append([]bool{}, g.in...)
	reach := int(w/g.cell) + 1
	rim := s.l.m.Pts[s.l.end]
	var line []form.Point
	for i := 0; i < len(s.pieces); i += 2 {
		line = append(line, s.pieces[i].p)
	}
	for d := 0.0; d < 2*w; d += slowStep { // the wall goes on up the spare
		line = append(line, form.Point{R: rim.R, Z: rim.Z + d})
	}
	for _, p := range line {
		ci, ck := int(p.R/g.cell), int(p.Z/g.cell)
		for k := max(0, ck-reach); k <= min(g.nz-1, ck+reach); k++ {
			for i := max(0, ci-reach); i <= min(g.nr-1, ci+reach); i++ {
				q := form.Point{R: (float64(i) + 0.5) * g.cell, Z: (float64(k) + 0.5) * g.cell}
				if q.Dist(p) < w {
					out.in[k*g.nr+i] = false
				}
			}
		}
	}
	return &out
}

func (g *grid) held() float64 {
	seen := make([]bool, len(g.in))
	for k := g.nz - 1; k >= 0; k-- {
		row := k * g.nr
		for i := range g.nr {
			seen[row+i] = g.in[row+i] && (k == g.row && i < g.door || k+1 < g.nz && seen[row+g.nr+i])
		}
		for i := 1; i < g.nr; i++ {
			seen[row+i] = seen[row+i] || g.in[row+i] && seen[row+i-1]
		}
		for i := g.nr - 2; i >= 0; i-- {
			seen[row+i] = seen[row+i] || g.in[row+i] && seen[row+i+1]
		}
	}
	ml := 0.0
	for i := range g.in {
		if g.in[i] && !seen[i] {
			ml += 2 * math.Pi * (float64(i%g.nr) + 0.5) * g.cell * g.cell * g.cell / 1000
		}
	}
	return ml
}
