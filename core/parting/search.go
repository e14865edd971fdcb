package parting

import (
	"math"
	"slices"
	"sort"

	"moldwright/core/release"
)

// The search for seams is exact in its verdict: where some seams make a scheme
// clear it finds such seams, else where some free it of catches it finds those,
// else the seams with the shallowest catch. Points where something changes are
// tried first, since the seam one would choose is nearly always one of them;
// only where those fail are all points gone through, in O(n) for a given depth.

// search finds the best seams for a kind; heights bind it where there are as
// many as it has seams. It fails where no plane runs outward at such heights.
func (l *ledger) search(k kind, heights []float64) (trial, bool) {
	lows, highs, free, ok := l.pinned(k, heights)
	if !ok {
		return trial{}, false
	}
	best, found := l.best(k, lows, highs)
	if !free || found && best.verdict == Clear {
		return best, found
	}
	consider := func(a, b int) {
		if t := l.try(k, a, b, l.depth(k, a, b)); !found || l.better(&t, &best) {
			best, found = t, true
		}
	}
	if k.seams() < 2 { // a single seam: all of them
		onLow := k.lower && (k.sides > 0 || k.upper)
		t, ok := l.best(k, l.every(onLow, 0), l.every(!onLow, l.end))
		if ok && (!found || l.better(&t, &best)) {
			best, found = t, true
		}
		return best, found
	}
	if a, b, ok := l.clearPair(k); ok {
		consider(a, b)
		return best, found
	}
	depth := CatchDepth
	if !found || best.verdict == Catches {
		depth = l.leastDepth(k)
	}
	if a, b, ok := l.leastPair(k, depth); ok {
		consider(a, b)
	}
	return best, found
}

// pinned are the points to try as the seams of a kind; free tells that they are
// not bound by heights.
func (l *ledger) pinned(k kind, heights []float64) (lows, highs []int, free, ok bool) {
	lows, highs = []int{0}, []int{l.end}
	if k.seams() == 0 {
		if k.sides == 0 {
			lows = []int{l.end}
		}
		return lows, highs, false, true
	}
	var bound []int
	if len(heights) == k.seams() {
		for _, z := range heights {
			p, ok := l.at(z)
			if !ok {
				return nil, nil, false, false
			}
			bound = append(bound, p)
		}
	}
	some := l.places()
	one := func(i int) []int {
		if bound != nil {
			return []int{bound[i]}
		}
		return some
	}
	if k.lower {
		lows = one(0)
	}
	if k.upper && k.sides > 0 {
		highs = one(k.seams() - 1)
	}
	return lows, highs, bound == nil, true
}

// best is the best trial of all pairs of the points.
func (l *ledger) best(k kind, lows, highs []int) (best trial, found bool) {
	for _, a := range lows {
		if found && k.lower && hopeless(l.down[a], &best) {
			continue
		}
		for _, b := range highs {
			if k.sides == 0 {
				b = a
			} else if a >= b {
				continue
			}
			if found && k.upper && hopeless(l.up[b], &best) {
				continue
			}
			depth := l.depth(k, a, b)
			if found && (hopeless(depth, &best) || best.rank != rankClear && l.behind(k, a, b, depth, &best)) {
				continue
			}
			if t := l.try(k, a, b, depth); !found || l.better(&t, &best) {
				best, found = t, true
			}
		}
	}
	return best, found
}

// behind tells of nearly all seams that are not better than some that catch or rub that
// they are not: all that most need be asked.
func (l *ledger) behind(k kind, a, b int, depth float64, best *trial) bool {
	limit, all, rubs := l.rules.RubShare/100*1.000001, 0.0, false
	if k.lower {
		t := l.caps[release.Down]
		rub := t.rub[a]
		all, rubs = rub, rub > limit*t.area[a]
	}
	if k.sides > 0 {
		t := l.sides[k.sides].tables
		if len(t) > 1 {
			return false // they share what rubs
		}
		rub := t[0].rub[b] - t[0].rub[a]
		all += rub
		rubs = rubs || rub > limit*(t[0].area[b]-t[0].area[a])
	}
	if k.upper {
		t := l.caps[release.Up]
		rub := t.rub[l.end] - t.rub[b]
		all += rub
		rubs = rubs || rub > limit*(t.area[l.end]-t.area[b])
	}
	switch {
	case depth > CatchDepth:
		if best.rank != rankCatches {
			return true
		}
		if d := best.depth - depth; d > 0.999*likeDepth {
			return false
		}
	case best.rank == rankCatches || !rubs:
		return false
	}
	more, like := all-best.rub, likeRub*l.area()
	return more > 1.001*like || more > -0.999*like && depth > best.depth-0.999*likeHook
}

// every is all points that may carry a seam, or just the point else.
func (l *ledger) every(all bool, other int) []int {
	if !all {
		return []int{other}
	}
	return l.open
}

// at is the point of the contour whose seam lies at height z.
func (l *ledger) at(z float64) (int, bool) {
	best, at := 0.01, -1
	for k := 1; k <= l.end; k++ {
		if d := math.Abs(l.m.Pts[k].Z - z); l.seam[k] && d < best {
			best, at = d, k
		}
	}
	return at, at > 0 && at < l.end
}

// fewPlaces is how many points are tried pairwise at most.
const fewPlaces = 24

// places are the points to try first as a seam, at most fewPlaces: edges of the
// form, extremes of r, and where catching or rubbing under a pull begins or
// ends.
func (l *ledger) places() []int {
	if l.some != nil {
		return l.some
	}
	all, some := l.every(true, 0), []int{}
	if len(all) <= fewPlaces {
		some = all
	} else {
		state := l.states()
		for _, k := range all {
			if l.m.Corner[k] || state[k-1] != state[k] || l.m.Node[k] >= 0 && l.turnsAt(k) {
				some = append(some, k)
			}
		}
	}
	if len(some) > fewPlaces { // of so many, one is near any place
		for i := range fewPlaces {
			some[i] = some[i*len(some)/fewPlaces]
		}
		some = some[:fewPlaces]
	}
	l.some = some
	return some
}

// turnsAt tells whether r has an extreme at point k.
func (l *ledger) turnsAt(k int) bool {
	p, q, r := l.m.Pts[k-1], l.m.Pts[k], l.m.Pts[k+1]
	return (q.R-p.R)*(r.R-q.R) <= 0
}

// states tells of each span whether it catches, at all and so that it counts, and
// whether it rubs: a bit for each pull.
func (l *ledger) states() []uint8 {
	out := make([]uint8, l.end)
	for _, pull := range release.Pulls {
		for i, d := range l.deepest[pull][:l.end] {
			if d > release.Free {
				out[i] |= 1 << pull
				if d > CatchDepth {
					out[i] |= 8 << pull
				}
			}
		}
	}
	for _, pull := range [2]release.Pull{release.Down, release.Up} {
		before := 0.0
		for i, rub := range l.caps[pull].rub[1:] {
			if rub > before {
				out[i] |= 64 << pull
			}
			before = rub
		}
	}
	return out
}

// clearPair finds seams for a kind with both caps that make it clear.
//
// What the lower part asks concerns its seam alone, and so for the upper. What the
// sides ask concerns both: no deep catch between, and that of none of them rub -
// share area is greater at the upper seam than at the lower. So going up, of the
// lower seams since the last deep catch those are kept than which none other has as
// much for every side part: where they are alike, the one that has most.
func (l *ledger) clearPair(k kind) (k1, k2 int, ok bool) {
	down, up, sides := l.caps[release.Down], l.caps[release.Up], l.sides[k.sides]
	noLess := func(a, b int) bool {
		for _, t := range sides.tables {
			if l.excess(t, a) < l.excess(t, b) {
				return false
			}
		}
		return true
	}
	limit, upper, out := l.rules.RubShare/100, l.excess(up, l.end), sides.out[0]
	var front []int
	for p := 1; p < l.end; p++ {
		if out[p-1] > CatchDepth {
			front = front[:0]
		}
		if !l.seam[p] {
			continue
		}
		if len(front) > 0 && l.up[p] <= CatchDepth && up.rub[p]-limit*up.area[p] >= upper {
			for _, a := range front {
				if noLess(a, p) && l.try(k, a, p, l.depth(k, a, p)).verdict == Clear {
					return a, p, true
				}
			}
		}
		if l.down[p] <= CatchDepth && down.rub[p] <= limit*down.area[p] && !slices.ContainsFunc(front, func(a int) bool { return noLess(a, p) }) {
			front = append(slices.DeleteFunc(front, func(a int) bool { return noLess(p, a) }), p)
		}
	}
	return 0, 0, false
}

// leastPair finds seams for a kind with both caps whose catches are no deeper than
// depth, with the least that rubs: for every upper seam, the lower one since the last
// deep catch at which the lower part rubs least more than the sides would, taken
// together.
func (l *ledger) leastPair(k kind, depth float64) (k1, k2 int, ok bool) {
	down, up, sides := l.caps[release.Down].rub, l.caps[release.Up].rub, l.sides[k.sides]
	side := sides.tables[0].rub // rubbing of the sides before a point
	if share := 1 / float64(len(sides.tables)); share < 1 {
		side = make([]float64, l.end+1)
		for _, t := range sides.tables {
			for p, rub := range t.rub {
				side[p] += share * rub
			}
		}
	}
	best, most, least, all, out := -1, 0.0, math.Inf(1), up[l.end], sides.out[0]
	for p := 1; p < l.end; p++ {
		if out[p-1] > depth {
			best = -1
		}
		if !l.seam[p] {
			continue
		}
		spared := side[p] - down[p]
		if best >= 0 && l.up[p] <= depth {
			if rub := all - up[p] + side[p] - most; rub < least {
				least, k1, k2, ok = rub, best, p, true
			}
		}
		if l.down[p] <= depth && (best < 0 || spared > most) {
			best, most = p, spared
		}
	}
	return k1, k2, ok
}

// free tells whether a kind with both caps has seams whose catches are no deeper
// than depth: whether leastPair finds any.
func (l *ledger) free(k kind, depth float64) bool {
	out, low := l.sides[k.sides].out[0], false
	for p := 1; p < l.end; p++ {
		if out[p-1] > depth {
			low = false
		}
		if !l.seam[p] {
			continue
		}
		if low && l.up[p] <= depth {
			return true
		}
		low = low || l.down[p] <= depth
	}
	return false
}

// leastDepth is the least depth for which there are seams, from among the
// depths that the spans have.
func (l *ledger) leastDepth(k kind) float64 {
	depths := []float64{CatchDepth}
	for _, list := range [3][]float64{l.deepest[release.Down], l.deepest[release.Up], l.sides[k.sides].out[0]} {
		for _, d := range list[:l.end] {
			if d > CatchDepth {
				depths = append(depths, d)
			}
		}
	}
	slices.Sort(depths)
	at := sort.Search(len(depths), func(i int) bool { return l.free(k, depths[i]) })
	if at == len(depths) {
		return math.Inf(1)
	}
	return depths[at]
}
