package parting

import (
	"math"
	"math/bits"
	"slices"

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
	down    []float64               // down[k] is the deepest Down catch before point k
	up      []float64               // up[k] is the deepest Up catch from point k on
	extra   map[way][]extra         // catches that the half-plane does not show
	caps    [2]*table               // of Down and Up
	sides   [maxSides + 1]*surround // by their number
	out     [][]float64             // ranges of the half-plane's Out catches, once found
	seam    []bool                  // a seam may run straight outward from point k
	open    []int                   // those points, short of the end
	some    []int                   // the points to try first as seams, once found
	wall    *form.Wall              // that has dimples
	told    []told                  // the stretches that schemes have told so far
	held    map[way][]held          // what a way holds by what counts, once found
	planes  []reach                 // where level planes run outward, once found
	wide    []release.Stretch       // the pot's outermost stretches, once found
	links   [3][]link               // room for the chains of a certificate
	room    [maxSides + 1]*rooms    // by the number of side parts, once found
	caught  *limits                 // once found
}

// way is a pull; where it is Out, with the number of side parts and, where
// they are not alike, which of them.
type way struct {
	pull  release.Pull
	sides int
	part  int
}

// maxSides is the greatest number of side parts.
const maxSides = 6

// of is the table of a way.
func (l *ledger) of(w way) *table {
	if w.pull == release.Out {
		return l.sides[w.sides].tables[w.part]
	}
	return l.caps[w.pull]
}

func newLedger(s *release.Survey, end int, rules Rules, sides []int) *ledger {
	m := s.M
	l := &ledger{m: m, s: s, rules: rules, end: end, extra: map[way][]extra{}, held: map[way][]held{}}
	for _, pull := range release.Pulls {
		l.deepest[pull] = s.Deepest[pull]
		if m.Dimples != nil { // which add theirs
			l.deepest[pull] = slices.Clone(l.deepest[pull])
		}
	}
	edges := newMeasures(rules.LeastDraft)
	var round []*table
	if m.Section.Round {
		round = l.turned(sides, edges)
	}
	for _, pull := range [2]release.Pull{release.Down, release.Up} {
		if !m.Section.Round {
			l.caps[pull] = l.unround(release.NewCap(m.Section, pull, edges.all))
		}
		l.dimple(way{pull: pull})
	}
	for k, n := range sides {
		a := &surround{}
		if m.Section.Round {
			a.tables = round[k : k+1]
		}
		l.surround(a, n, edges)
	}
	n := end + 1
	l.down, l.up = make([]float64, n), make([]float64, n)
	deepest := 0.0
	for i, d := range l.deepest[release.Down][:end] {
		if d > deepest {
			deepest = d
		}
		l.down[i+1] = deepest
	}
	deepest = 0
	for i := end - 1; i >= 0; i-- {
		if d := l.deepest[release.Up][i]; d > deepest {
			deepest = d
		}
		l.up[i] = deepest
	}
	l.seam, l.open = make([]bool, n), make([]int, 0, n)
	for k := 1; k < n; k++ {
		if l.seam[k] = s.OpenOutward(k); l.seam[k] && k < end {
			l.open = append(l.open, k)
		}
	}
	return l
}

// ranges is a table of the greatest of any stretch of values: row j holds it
// for 2^j of them from each place on. Where all are alike, as where nothing catches, one
// row is all there is.
func ranges(v []float64) [][]float64 {
	out := [][]float64{v}
	if !slices.ContainsFunc(v, func(x float64) bool { return x != v[0] }) {
		return out
	}
	for w := 1; 2*w <= len(v); w *= 2 {
		last := out[len(out)-1]
		next := make([]float64, len(v)-2*w+1)
		for i := range next {
			next[i] = last[i]
			if last[i+w] > last[i] {
				next[i] = last[i+w]
			}
		}
		out = append(out, next)
	}
	return out
}

// outDepth is the deepest Out catch of n side parts on spans a to b-1.
func (l *ledger) outDepth(n, a, b int) float64 {
	if a >= b {
		return 0
	}
	t := l.sides[n].out
	if len(t) == 1 {
		return t[0][0]
	}
	j := bits.Len(uint(b-a)) - 1 // the longest row that fits
	if x := t[j][b-1<<j]; x > t[j][a] {
		return x
	}
	return t[j][a]
}

// deepestOf is the deepest catch in mm of a part that holds points a to b: of a cap with
// one of the contour's ends.
func (l *ledger) deepestOf(w way, a, b int) float64 {
	switch w.pull {
	case release.Down:
		return l.down[b]
	case release.Up:
		return l.up[a]
	}
	return l.outDepth(w.sides, a, b)
}

// area is the whole surface in mm2.
func (l *ledger) area() float64 { return l.caps[release.Down].area[l.end] }

// trial is a kind with its seams settled, judged.
type trial struct {
	k1, k2  int
	verdict Verdict
	rank    int     // of the verdict
	depth   float64 // mm
	rub     float64 // mm2
	worst   float64 // the greatest share of a part that rubs
	corners int     // seams that lie on an edge of the form
}

// part adds a part: its area and what rubs of it.
func (t *trial) part(area, rub float64) {
	t.rub += rub
	if rub > t.worst*area && area > 0 {
		t.worst = rub / area
	}
}

// depth is the deepest catch in mm of a kind with its seams at points k1 and k2.
func (l *ledger) depth(k kind, k1, k2 int) float64 {
	deepest := 0.0
	if k.lower {
		deepest = l.down[k1]
	}
	if k.sides > 0 {
		if d := l.outDepth(k.sides, k1, k2); d > deepest {
			deepest = d
		}
	}
	if k.upper && l.up[k2] > deepest {
		deepest = l.up[k2]
	}
	return deepest
}

// hopeless tells that a trial with so deep a catch is not better than best.
func hopeless(depth float64, best *trial) bool {
	return depth > CatchDepth && (best.depth <= CatchDepth || depth > best.depth+likeDepth)
}

// likeDepth is by how much in mm two catches may differ and count as equal, likeRub by
// what share of the surface what rubs, likeHook by how much in mm hooks.
const (
	likeDepth = 1e-4
	likeRub   = 0.001
	likeHook  = 1e-6
)

// try judges a kind with its seams at points k1 and k2, whose deepest catch is
// depth.
func (l *ledger) try(k kind, k1, k2 int, depth float64) trial {
	t := trial{k1: k1, k2: k2, depth: depth}
	if k.lower {
		c := l.caps[release.Down]
		t.part(c.area[k1]-c.area[0], c.rub[k1]-c.rub[0])
	}
	if k.sides > 0 {
		tables := l.sides[k.sides].tables
		share := 1.0
		if len(tables) > 1 {
			share = 1 / float64(len(tables))
		}
		for _, s := range tables {
			area, rub := s.area, s.rub
			t.part(share*(area[k2]-area[k1]), share*(rub[k2]-rub[k1]))
		}
	}
	if k.upper {
		c := l.caps[release.Up]
		t.part(c.area[l.end]-c.area[k2], c.rub[l.end]-c.rub[k2])
	}
	switch {
	case t.depth > CatchDepth:
		t.verdict, t.rank = Catches, rankCatches
	case t.worst*100 > l.rules.RubShare:
		t.verdict, t.rank = Rubs, rankRubs
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
func (l *ledger) better(a, b *trial) bool {
	if a.rank != b.rank {
		return a.rank < b.rank
	}
	switch a.rank {
	case rankCatches:
		if math.Abs(a.depth-b.depth) > likeDepth {
			return a.depth < b.depth
		}
	case rankClear:
		if a.corners != b.corners {
			return a.corners > b.corners
		}
	}
	if math.Abs(a.rub-b.rub) > likeRub*l.area() {
		return a.rub < b.rub
	}
	return a.depth < b.depth-likeHook
}
