package parting

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/release"
)

// Robustness tells how far the verdict can be trusted when the radii of the
// form are not exact.
type Robustness struct {
	// RadiusMM is by how much every radius may be wrong, of the inside too, before
	// the chosen scheme might not let go or one with fewer parts might. Which of
	// several that let go with as many parts is preferred, for rubbing less or
	// taking less plaster, may change before: the mold that was chosen still serves.
	// Dimples and sections are taken to go with their wall, as they were.
	RadiusMM float64 `json:"radius"`
	// Reason is what would come about first: fewer (a scheme with fewer parts
	// would let go), other (one with no fewer would, where the chosen one does
	// not), catch (the chosen one would catch) or rub (it would rub); Scheme is
	// the one meant, ZFrom and ZTo where.
	Reason string  `json:"reason"`
	Scheme string  `json:"scheme"`
	ZFrom  float64 `json:"zFrom"`
	ZTo    float64 `json:"zTo"`
}

// swing is the length in mm over which errors of a radius are taken to change
// from one sign to the other: a shorter ripple is the printer's, not the
// form's.
const swing = 10.0

// Robust finds an error of the radii below which the choice stands. Radii are
// taken to be wrong by up to e each, freely but for the swing.
//
//   - Another scheme would have to let go: see freed.
//   - A cap catches when two places, a swing or more apart, that draw away from
//     one another by D are wrong by (D + the depth that counts)/2.
//   - It rubs when the draft that no more than the rules' share of its surface
//     stays below falls to the least draft, the wall tilting by 2e in a swing; of a
//     section that is not round, see tilts.
//   - Side parts rub when walls tilt by so much that more than that share of
//     them does. They come to catch on no account, what is level with what stays, but within
//     a section or a dimple: see robustPattern.
//   - A core is a cap of the inner surface, which runs from the rim down to the
//     axis; inner is nil where there is none.
func Robust(m *form.Meridian, end int, inner *form.Meridian, all []Scheme, chosen int, rules Rules) Robustness {
	r := Robustness{RadiusMM: math.Inf(1)}
	worse := func(e float64, reason, scheme string, a, b float64) {
		if e < r.RadiusMM {
			r = Robustness{max(0, e), reason, scheme, min(a, b), max(a, b)}
		}
	}
	c := &all[chosen]
	var outer falls
	var core coreHeld
	for i := range all {
		s := &all[i]
		if i == chosen || s.Verdict == Clear || s.Count >= c.Count && c.Verdict == Clear {
			continue
		}
		reason := "other"
		if s.Count < c.Count {
			reason = "fewer"
		}
		e, from, to := freed(m, end, s, rules, &outer, r.RadiusMM)
		if s.Core { // it must let go too
			if x, a, b := core.find(inner, rules); x > e {
				e, from, to = x, a, b
			}
		}
		worse(e, reason, s.ID, from, to)
	}
	parts, sides := c.Parts, false
	if c.Verdict == Catches { // whatever its other parts come to do
		parts = nil
	}
	for i := range parts {
		p := &parts[i]
		tell := func(e float64, reason string, a, b float64) { worse(e, reason, c.ID, a, b) }
		switch {
		case p.Name == "lower":
			robustCap(m, 0, c.K1, 1, tell)
			robustRub(m, 0, c.K1, release.Down, rules, p, r.RadiusMM, tell)
		case p.Name == "upper":
			robustCap(m, c.K2, end, -1, tell)
			robustRub(m, c.K2, end, release.Up, rules, p, r.RadiusMM, tell)
		case p.Name == "core":
			last := len(inner.Pts) - 1
			robustCap(inner, 0, last, -1, tell)
			robustRub(inner, 0, last, release.Up, rules, p, r.RadiusMM, tell)
		case p.Sector != nil && !sides && p.Verdict == Clear:
			sides = true
			tell(newSlopes(m, c.K1, c.K2, c.Sides, rules).until(p.RubShare), "rub", p.ZFrom, p.ZTo)
		}
	}
	if parts != nil {
		robustPattern(m, end, c, r.RadiusMM, func(e float64, reason string, a, b float64) { worse(e, reason, c.ID, a, b) })
	}
	if math.IsInf(r.RadiusMM, 1) {
		r.RadiusMM = -1
	}
	return r
}

// robustCap tells the error at which a cap that holds points a to b would
// catch; away is 1 for a lower part, which must widen along the contour, and
// -1 for an upper, which must narrow.
func robustCap(m *form.Meridian, a, b int, away float64, tell func(float64, string, float64, float64)) {
	along := make([]float64, b-a+1)
	for i := a + 1; i <= b; i++ {
		along[i-a] = along[i-a-1] + m.Pts[i-1].Dist(m.Pts[i])
	}
	least := b // the place from j on that has drawn away least
	j := b
	for i := b; i >= a; i-- {
		for j > i && along[j-a]-along[i-a] >= swing {
			if away*m.Pts[j].R < away*m.Pts[least].R || along[least-a]-along[i-a] < swing {
				least = j
			}
			j--
		}
		if along[least-a]-along[i-a] >= swing {
			d := away * (m.Pts[least].R - m.Pts[i].R)
			tell((d+CatchDepth)/2, "catch", m.Pts[i].Z, m.Pts[least].Z)
		}
	}
}

// robustRub tells the error at which a clear cap would rub; most is the error beyond
// which none matters.
func robustRub(m *form.Meridian, a, b int, pull release.Pull, rules Rules, p *Part, most float64, tell func(float64, string, float64, float64)) {
	if p.Verdict != Clear {
		return
	}
	if draft, i := draftAtShare(m, a, b, pull, rules); draft < 89 {
		e := swing / 2 * (tangent(draft) - tangent(rules.LeastDraft))
		if !m.Section.Round {
			e = newTilts(m, a, b, pull, rules).until(min(e, most))
		}
		tell(e, "rub", m.Pts[i].Z, m.Pts[i+1].Z)
	}
}

func tangent(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }

// draftAtShare is the draft in degrees that just more than the rules' share of
// the surface from point a to point b stays below, and the span that has it; 90
// where there is none.
func draftAtShare(m *form.Meridian, a, b int, pull release.Pull, rules Rules) (draft float64, i int) {
	type span struct {
		draft, area float64
		i           int
	}
	list := make([]span, 0, b-a)
	total := 0.0
	for i := a; i < b; i++ {
		area := form.BandArea(m.Pts[i], m.Pts[i+1])
		total += area
		list = append(list, span{release.Draft((m.Spans[i].A0+m.Spans[i].A1)/2, pull), area, i})
	}
	slices.SortStableFunc(list, func(x, y span) int { return cmp.Compare(x.draft, y.draft) })
	sum := 0.0
	for _, s := range list {
		if sum += s.area; 100*sum > rules.RubShare*total {
			return s.draft, s.i
		}
	}
	return 90, a
}
