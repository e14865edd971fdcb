package parting

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/release"
)

// What tilting walls, which errors of the radii do, change of what rubs under an axial
// pull. A radius wrong by e one way and by e the other within a swing tilts the wall by
// 2e in it, whatever its length. What rubs grows or shrinks with its radii as well, and
// what does not the other way: the share is told with both at their worst.
//
// On a section that is not round the wall at an azimuth where r is g times the largest
// has less slope against the pull than the meridian has: g / sqrt(1 + (g'/g)^2) of it,
// by the normal of r = R(z) g(azimuth).

// tilts is the surface of a cap, span by span.
type tilts struct {
	spans []tiltSpan
	least float64 // slope of the least draft
	limit float64 // percent that may rub
	// over are, rising, by how much the meridian must have more than the least slope at
	// azimuths all round for it to do there, and share what of the surface has no more
	// than that.
	over, share []float64
}

type tiltSpan struct{ slope, area, r float64 }

// tiltSteps is of how many azimuths a section is told, between two of its repeats.
const tiltSteps = 64

// newTilts looks at points a to b under an axial pull.
func newTilts(m *form.Meridian, a, b int, pull release.Pull, rules Rules) *tilts {
	t := &tilts{least: tangent(rules.LeastDraft), limit: rules.RubShare, over: []float64{1}, share: []float64{1}}
	for i := a; i < b; i++ {
		draft := release.Draft((m.Spans[i].A0+m.Spans[i].A1)/2, pull)
		t.spans = append(t.spans, tiltSpan{tangent(draft), form.BandArea(m.Pts[i], m.Pts[i+1]), (m.Pts[i].R + m.Pts[i+1].R) / 2})
	}
	if m.Section.Round {
		return t
	}
	type place struct{ over, area float64 }
	var all []place
	sum := 0.0
	for k := range tiltSteps {
		g, slope := m.Section.At(2 * math.Pi * (float64(k) + 0.5) / tiltSteps / float64(m.Section.Repeats))
		long := math.Hypot(g, slope)
		all = append(all, place{long / (g * g), long})
		sum += long
	}
	slices.SortFunc(all, func(x, y place) int { return cmp.Compare(x.over, y.over) })
	t.over, t.share = nil, nil
	part := 0.0
	for _, p := range all {
		part += p.area / sum
		t.over, t.share = append(t.over, p.over), append(t.share, part)
	}
	return t
}

// rubs tells whether more rubs than may when radii are wrong by e, toward that or, where
// sign is -1, away from it.
func (t *tilts) rubs(e, sign float64) bool {
	rub, all := 0.0, 0.0
	for _, s := range t.spans {
		need := (s.slope - sign*2*e/swing) / t.least
		free := 0.0 // what of it has enough
		if k, ok := slices.BinarySearch(t.over, need); ok {
			free = t.share[k]
		} else if k > 0 {
			free = t.share[k-1]
		}
		grows := sign * e / max(s.r, e)
		x, y := s.area*(1-free)*(1+grows), s.area*free*(1-grows)
		rub += x
		all += x + y
	}
	return 100*rub > t.limit*all
}

// until is the error in mm, up to most, at which it comes to rub where it does not, or
// stops where it does; less by no more than a hundred-thousandth of most.
func (t *tilts) until(most float64) float64 {
	sign := 1.0
	if t.rubs(0, 1) {
		sign = -1
	}
	low, high := 0.0, most
	if t.rubs(high, sign) == (sign < 0) {
		return high
	}
	for range 17 {
		if mid := (low + high) / 2; t.rubs(mid, sign) == (sign < 0) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
