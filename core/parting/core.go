package parting

import (
	"math"

	"moldwright/core/release"
)

// Core is the plaster that fills the inside of a solid-cast form and is drawn up
// out of it, of any scheme. inner is the survey of the inner surface
// (release.NewCore).
func Core(inner *release.Survey, rules Rules) Part {
	end := len(inner.M.Pts) - 1
	l := newLedger(inner, end, rules, nil)
	return l.part("core", [3]float64{0, 0, 1}, way{pull: release.Up}, 0, end)
}

// WithCore is a scheme of outer parts with the core added.
func WithCore(outer Scheme, core Part) Scheme {
	s := outer
	s.Core = true
	s.Count++
	s.Parts = append(append([]Part{}, outer.Parts...), core)
	s.RubArea += core.RubArea
	s.Depth = math.Max(s.Depth, core.deepest())
	if core.Verdict.rank() > s.Verdict.rank() {
		s.Verdict = core.Verdict
	}
	return s
}

// CoreID is the id of the scheme that is made of a solid-cast form: the chosen
// outer parts and the core.
const CoreID = "core"
