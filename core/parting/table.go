package parting

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/release"
)

// How surface adds up along the contour: what the search asks, area and rubbing, before
// every point; what a part is told with, its bands of draft, before the points only at
// which parts that are told begin or end.

// table tells how the surface stands to one way, as if it went all round.
type table struct {
	area []float64 // area[k] is the surface in mm2 before point k
	rub  []float64 // rub[k] is what of it has less than the least draft
	// least is the least draft in degrees of each span or, for side parts of a round
	// form, the least radial part of its normal; sides is then their number.
	least []float64
	sides int
	// tally sums up what has less draft than each of the inner edges of the bands, this
	// table's from place first on.
	tally *tally
	first int
}

// tally is sums along the contour that are wanted at few of its points.
type tally struct {
	places int // how many sums there are
	points []int
	sums   [][]float64                        // before those points
	add    func(from, to int, sums []float64) // of spans from to to-1
}

// before is what there is before point k, worked out from the nearest point before it
// that has been asked for.
func (t *tally) before(k int) []float64 {
	at, ok := slices.BinarySearch(t.points, k)
	if !ok {
		sums := make([]float64, t.places)
		from := 0
		if at > 0 {
			from = t.points[at-1]
			copy(sums, t.sums[at-1])
		}
		t.add(from, k, sums)
		t.points, t.sums = slices.Insert(t.points, at, k), slices.Insert(t.sums, at, sums)
	}
	return t.sums[at]
}

// mark has the tables sum up at all points at which parts of the choices begin or end,
// in their order, so that each goes along the contour once.
func (l *ledger) mark(best []choice) {
	points := make([]int, 0, 2*len(best)+1)
	for _, c := range best {
		if c.ok {
			points = append(points, c.k1, c.k2)
		}
	}
	slices.Sort(points)
	for _, k := range slices.Compact(points) {
		for _, t := range l.caps {
			t.tally.before(k)
		}
		for _, a := range l.sides {
			if a != nil {
				for _, t := range a.tables {
					t.tally.before(k)
				}
			}
		}
	}
}

// bands are the areas on spans a to b-1 by their draft, in units of mm2 over unit. All
// that there is has more draft than the first edge, and none has more than the last.
func (t *table) bands(a, b int, unit float64) []Band {
	from, to := t.tally.before(a)[t.first:], t.tally.before(b)[t.first:]
	out := make([]Band, len(bandEdges)-1)
	last := 0.0
	for e := range out {
		under := t.area[b] - t.area[a]
		if e < len(out)-1 {
			under = to[e] - from[e]
		}
		out[e] = Band{bandEdges[e], bandEdges[e+1], (under - last) * unit}
		last = under
	}
	return out
}

// leastDraft is the least draft in degrees on spans a to b-1, at most 90.
func (t *table) leastDraft(a, b int) float64 {
	least := 90.0
	for _, d := range t.least[a:b] {
		if d < least {
			least = d
		}
	}
	if t.sides == 0 || a >= b {
		return least
	}
	return math.Asin(release.LeastSine(min(1, least), t.sides)) * 180 / math.Pi
}

// measures are the drafts below which surface is counted: the least, the inner edges
// of the bands, and all of these.
type measures struct{ least, inner, all release.Edges }

func newMeasures(least float64) measures {
	inner := bandEdges[1 : len(bandEdges)-1]
	return measures{release.NewEdges(least), release.NewEdges(inner...), release.NewEdges(append([]float64{least}, inner...)...)}
}

// unround is the table of one way of a form that is not round; around tells of all
// measures.
func (l *ledger) unround(around *release.Around) *table {
	n := l.end
	room := make([]float64, 3*n+2)
	t := &table{area: room[: n+1 : n+1], rub: room[n+1 : 2*n+2 : 2*n+2], least: room[2*n+2:], first: 1}
	var sums [len(bandEdges) - 1]float64
	for i := range n {
		area, least := around.Span(l.m, i, sums[:])
		t.area[i+1], t.least[i], t.rub[i+1] = t.area[i]+area, least, sums[0]
	}
	t.tally = &tally{places: len(bandEdges) - 1, add: func(from, to int, sums []float64) {
		for i := from; i < to; i++ {
			around.Span(l.m, i, sums)
		}
	}}
	return t
}

// turned are the tables of a round form: of lower and upper parts, and of side parts by
// their numbers. They have the sums of areas and one tally in common, those of side
// parts also what tells their least draft.
func (l *ledger) turned(numbers []int, edges measures) []*table {
	n, inner := l.end, len(edges.inner.Deg)
	band, area := make([]float64, n), make([]float64, n+1)
	for i := range band {
		band[i] = form.BandArea(l.m.Pts[i], l.m.Pts[i+1])
		area[i+1] = area[i] + band[i]
	}
	f := release.NewFacing(l.m, 0, n, band, numbers)
	all := &tally{places: (2 + len(numbers)) * inner, add: func(from, to int, sums []float64) {
		edges.inner.Axial(l.m, from, to, release.Down, band, sums)
		edges.inner.Axial(l.m, from, to, release.Up, band, sums[inner:])
		f.Below(from, to, &edges.inner, sums[2*inner:])
	}}
	for _, pull := range [2]release.Pull{release.Down, release.Up} {
		t := &table{area: area, rub: make([]float64, n+1), least: make([]float64, n), tally: all, first: int(pull) * inner}
		edges.least.Rubbing(l.m, pull, band, t.least, t.rub)
		l.caps[pull] = t
	}
	around := make([]*table, len(numbers))
	for j, sides := range numbers {
		around[j] = &table{area: area, rub: make([]float64, n+1), least: f.Least, sides: sides, tally: all, first: (2 + j) * inner}
	}
	if len(numbers) > 0 {
		sum := make([]float64, len(numbers))
		for i := range n {
			f.Below(i, i+1, &edges.least, sum)
			for j, t := range around {
				t.rub[i+1] = sum[j]
			}
		}
	}
	return around
}
