package parting

import (
	"math"

	"moldwright/core/release"
)

// WithCore is a scheme of outer parts with a core added: the plaster that fills
// the inside of a solid-cast form and is drawn up out of it. inner is the
// survey of the inner surface, run from the rim down to the axis so that clay
// lies on its left.
func WithCore(outer Scheme, inner *release.Survey, rules Rules) Scheme {
	end := len(inner.M.Pts) - 1
	l := newLedger(inner, end, rules, nil)
	p := l.part("core", [3]float64{0, 0, 1}, way{pull: release.Up}, 0, end)
	s := outer
	s.Core = true
	s.Count++
	s.Parts = append(append([]Part{}, outer.Parts...), p)
	s.RubArea += p.RubArea
	s.Depth = math.Max(s.Depth, p.deepest())
	if p.Verdict.rank() > s.Verdict.rank() {
		s.Verdict = p.Verdict
	}
	return s
}

// CoreID is the id of the scheme that is made of a solid-cast form: the chosen
// outer parts and the core.
const CoreID = "core"
