package parting

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/release"
)

// ledger holds, for one surveyed form, all that judging a scheme adds up, as
// running sums along the contour, so that any choice of seams is judged in
// constant time but for the deepest side catch, which is a table of ranges.
type ledger struct {
	m     *form.Meridian
	s     *release.Survey
	rules Rules
	end   int // the contour ends at this point: rim, top or edge of the fill hole
	// deepest[pull][i] is the deepest catch in mm on span i.
	deepest [3][]float64
	down    []float64   // down[k] is the deepest Down catch before point k
	up      []float64   // up[k] is the deepest Up catch from point k on
	out     [][]float64 // out[j][i] is the deepest Out catch on 2^j spans from i
	area    []float64   // area[k] is the surface in mm2 before point k
	tables  map[way]*table
	seam    []bool // a seam may run straight outward from point k
}

// way is a pull, with the number of side parts where it is Out.
type way struct {
	pull  release.Pull
	sides int
}

// table tells how the surface stands to one way.
type table struct {
	// below[e][k] is the area in mm2 before point k with less draft than edge
	// e: the least draft, then the edges of the bands.
	below [][]float64
	least []float64 // of each span, degrees
}

func (l *ledger) table(w way, edges release.Edges) *table {
	t := &table{below: make([][]float64, len(edges.Deg)), least: make([]float64, l.end)}
	for e := range t.below {
		t.below[e] = make([]float64, l.end+1)
	}
	sum := make([]float64, len(edges.Deg))
	for i := range l.end {
		_, t.least[i] = release.SpanSurface(l.m, i, w.pull, w.sides, edges, sum)
		for e, v := range sum {
			t.below[e][i+1] = v
		}
	}
	return t
}

func newLedger(s *release.Survey, end int, rules Rules, sides []int) *ledger {
	m := s.M
	l := &ledger{m: m, s: s, rules: rules, end: end, tables: map[way]*table{}}
	for _, pull := range release.Pulls {
		l.deepest[pull] = make([]float64, len(m.Spans))
		for _, c := range s.Samples[pull] {
			l.deepest[pull][c.Span] = math.Max(l.deepest[pull][c.Span], c.Depth)
		}
	}
	n := end + 1
	l.down, l.up, l.area = make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range end {
		l.down[i+1] = math.Max(l.down[i], l.deepest[release.Down][i])
		l.area[i+1] = l.area[i] + form.BandArea(m.Pts[i], m.Pts[i+1])
	}
	for i := end - 1; i >= 0; i-- {
		l.up[i] = math.Max(l.up[i+1], l.deepest[release.Up][i])
	}
	l.out = [][]float64{l.deepest[release.Out][:end]}
	for w := 1; 2*w <= end; w *= 2 {
		last := l.out[len(l.out)-1]
		next := make([]float64, end-2*w+1)
		for i := range next {
			next[i] = math.Max(last[i], last[i+w])
		}
		l.out = append(l.out, next)
	}
	edges := release.NewEdges(append([]float64{rules.LeastDraft}, bandEdges...)...)
	ways := []way{{release.Down, 0}, {release.Up, 0}}
	for _, k := range sides {
		ways = append(ways, way{release.Out, k})
	}
	for _, w := range ways {
		l.tables[w] = l.table(w, edges)
	}
	l.seam = make([]bool, n)
	for k := 1; k < n; k++ {
		l.seam[k] = s.OpenOutward(k)
	}
	return l
}

// outDepth is the deepest Out catch on spans a to b-1.
func (l *ledger) outDepth(a, b int) float64 {
	if a >= b {
		return 0
	}
	j := 0
	for 2<<j <= b-a {
		j++
	}
	return math.Max(l.out[j][a], l.out[j][b-1<<j])
}

// rub is the area in mm2 between two points below the least draft.
func (l *ledger) rub(w way, a, b int) float64 {
	below := l.tables[w].below[0]
	return below[b] - below[a]
}

// trial is a kind with its seams settled, judged.
type trial struct {
	k1, k2  int
	verdict Verdict
	depth   float64 // mm
	rub     float64 // mm2
	corners int     // seams that lie on an edge of the form
}

// try judges a kind with its seams at points k1 and k2.
func (l *ledger) try(k kind, k1, k2 int) trial {
	t := trial{k1: k1, k2: k2}
	worst := 0.0
	part := func(depth, area, rub float64) {
		t.depth = math.Max(t.depth, depth)
		t.rub += rub
		if area > 0 {
			worst = math.Max(worst, rub/area)
		}
	}
	if k.lower {
		part(l.down[k1], l.area[k1], l.rub(way{release.Down, 0}, 0, k1))
	}
	if k.sides > 0 {
		part(l.outDepth(k1, k2), l.area[k2]-l.area[k1], l.rub(way{release.Out, k.sides}, k1, k2))
	}
	if k.upper {
		part(l.up[k2], l.area[l.end]-l.area[k2], l.rub(way{release.Up, 0}, k2, l.end))
	}
	switch {
	case t.depth > CatchDepth:
		t.verdict = Catches
	case worst*100 > l.rules.RubShare:
		t.verdict = Rubs
	default:
		t.verdict = Clear
	}
	for _, at := range [2]int{k1, k2} {
		if at > 0 && at < l.end && l.m.Corner[at] {
			t.corners++
		}
	}
	return t
}

// better tells whether a is the better trial of the same kind: by verdict,
// then the shallower catch; among those that are clear, seams on edges of the
// form, where they show least; then the least rubbing area, to a share of the
// surface that no bench could tell; then the shallower hook, which sets the
// seam on a belly's widest place.
func (l *ledger) better(a, b trial) bool {
	if x, y := a.verdict.rank(), b.verdict.rank(); x != y {
		return x < y
	}
	switch a.verdict {
	case Catches:
		if math.Abs(a.depth-b.depth) > 1e-4 {
			return a.depth < b.depth
		}
	case Clear:
		if a.corners != b.corners {
			return a.corners > b.corners
		}
	}
	if math.Abs(a.rub-b.rub) > 0.001*l.area[l.end] {
		return a.rub < b.rub
	}
	return a.depth < b.depth-1e-6
}
