package exercise

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/release"
	"moldwright/core/words"
)

// Kind draft: read the draft at a marked point for a given pull. Draft is
// asin(n.d); of a wall that leans by t from the axis it is t or -t for a pull
// along the axis, and asin(cos t cos az) for a side part, az from its middle.

const (
	draftTol  = 1.0 // degrees
	draftNear = 3.0
)

type draftTask struct {
	*look
	pull  release.Pull
	az    int // degrees from the middle of the side part
	span  int
	t     float64 // share of the span
	truth float64 // degrees
	lean  float64 // of the wall outward as it rises, degrees
	from  form.Point
	to    form.Point // a stretch of wall to read the slope from
}

func newDraft(l *look, pull release.Pull, az, span int, t float64) *draftTask {
	d := &draftTask{look: l, pull: pull, az: az, span: span, t: t}
	sp := l.m.Spans[span]
	a := sp.A0 + t*(sp.A1-sp.A0)
	d.truth = release.Draft(a, pull)
	if pull == release.Out && az != 0 {
		d.truth = deg(math.Asin(math.Sin(a) * math.Cos(rad(float64(az)))))
	}
	d.lean = release.Draft(a, release.Down)
	d.from, d.to = l.m.Pts[span], l.m.Pts[span+1]
	return d
}

func deg(a float64) float64 { return a * 180 / math.Pi }
func rad(a float64) float64 { return a * math.Pi / 180 }

// makeDraft draws the lean of one facet first and then a pot of straight
// facets around it.
func makeDraft(first, g *Gen, difficulty int) task {
	s := &shaper{Gen: g}
	lean := s.Between(5, 38) * (1 - 2*first.Int(2))
	pull, az := pick(first, release.Down, release.Up), 0
	switch {
	case difficulty == 2 && first.Int(8) == 0:
		lean = 0
	case difficulty == 2:
		pull = pick(first, release.Down, release.Up, release.Out)
	case difficulty == 3:
		if pull = pick(first, release.Down, release.Up, release.Out, release.Out, release.Out); pull == release.Out {
			az = pick(first, 30, 45, 60)
		}
	}
	n := s.Between(3, 4)
	chosen := s.Int(n)
	r := s.Between(250, 420)
	s.flat(r)
	z, before := 0, 99
	for i := range n {
		a := lean
		if i != chosen {
			for k := 0; ; k++ {
				a = s.Between(5, 38) * (1 - 2*s.Int(2))
				apart := a - before
				if i+1 == chosen {
					apart = min(max(a-lean, lean-a), max(apart, -apart))
				}
				if max(apart, -apart) >= 9 && (r < 700 || a < 0) && (r > 300 || a > 0) || k > 20 {
					break
				}
			}
		}
		dz := s.Between(220, 420)
		r += int(math.Round(float64(dz) * math.Tan(rad(float64(a)))))
		z += dz
		s.corner(r, z)
		before = a
		if r < 120 || r > 1100 {
			return nil
		}
	}
	l, err := s.pot("faceted").look()
	if err != nil {
		return nil
	}
	for i := range l.m.Spans {
		if l.m.Node[i] == 1+chosen {
			d := newDraft(l, pull, az, i, float64(s.Between(35, 65))/100)
			if !d.sound() {
				return nil
			}
			return d
		}
	}
	return nil
}

// sound tells that no slip comes near the answer.
func (t *draftTask) sound() bool {
	for _, s := range t.slips() {
		if math.Abs(s.value-t.truth) < 2.27*draftTol && t.lean != 0 {
			return false
		}
	}
	return true
}

func ownDraft(j *job.Job, g *Gen, difficulty int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	// a place on the wall where the draft is steady enough to read
	var spans []int
	foot := l.foot()
	for i := foot; i < l.end; i++ {
		sp := l.m.Spans[i]
		if math.Abs(deg(sp.A1-sp.A0)) <= draftTol && l.m.Pts[i].Dist(l.m.Pts[i+1]) > 0.5 {
			spans = append(spans, i)
		}
	}
	if len(spans) == 0 {
		return nil, notFit("draft")
	}
	pulls := []release.Pull{release.Down, release.Up}
	az := 0
	if difficulty > 1 {
		pulls = append(pulls, release.Out)
	}
	pull := pick(g, pulls...)
	if difficulty > 2 && pull == release.Out {
		az = pick(g, 30, 45, 60)
	}
	return newDraft(l, pull, az, pick(g, spans...), 0.5), nil
}

// slip is a wrong answer that tells what went wrong.
type slip struct {
	code  string
	value float64
}

func (t *draftTask) slips() []slip {
	var out []slip
	if math.Abs(t.truth) > 2.27*draftTol {
		out = append(out, slip{"sign", -t.truth}, slip{"double", 2 * t.truth})
	}
	if t.az != 0 {
		out = append(out, slip{"middle", release.Draft(t.angle(), release.Out)})
	}
	if math.Abs(t.lean) > 2.27*draftTol || t.pull == release.Out {
		out = append(out, slip{"complement", math.Copysign(90-math.Abs(t.truth), t.truth)})
	}
	if t.pull != release.Out {
		out = append(out, slip{"slope", 100 * math.Tan(rad(t.truth))})
	}
	return out
}

func (t *draftTask) angle() float64 {
	sp := t.m.Spans[t.span]
	return sp.A0 + t.t*(sp.A1-sp.A0)
}

func (t *draftTask) point() form.Point { return t.m.Pts[t.span].Lerp(t.m.Pts[t.span+1], t.t) }

func (t *draftTask) pose(q *Question) {
	q.Job = t.job
	p := t.point()
	q.Text = say("draft.text."+pullIDs[t.pull], "pull", say("pull."+pullIDs[t.pull]), "z", p.Z)
	if t.az != 0 {
		q.Text = say("draft.text.az", "az", t.az, "z", p.Z)
	}
	q.Given = append(q.Given, say("given.wall", "r0", hundredths(t.from.R), "z0", hundredths(t.from.Z), "r1", hundredths(t.to.R), "z1", hundredths(t.to.Z)), say("given.sign"))
	q.Answer = []Field{{ID: "value", Type: TypeNumber, Words: say("ask.draft"), Units: []string{"°"}}}
	q.Tolerance = say("tolerance.draft", "deg", plain(draftTol), "near", plain(draftNear))
	q.Drawing = t.drawing("point", "pull")
	q.Drawing.Pull = arrow(t.pull)
	q.Drawing.Points = []Spot{{"p", micron(p.R), micron(p.Z)}}
}

func (t *draftTask) check(a *Answer) *Invalid {
	v, bad := a.readNumber("°")
	if bad != nil {
		return bad
	}
	if math.Abs(v) > 90 {
		if bad := tenfold(v, t.truth, draftTol); bad != nil {
			return bad
		}
		return invalid("notADraft", "value")
	}
	return nil
}

func (t *draftTask) mark(a *Answer) Result {
	v, _ := a.readNumber("°")
	tell := func(mark, code string) Result {
		return result("draft", mark, code, "v", v, "truth", t.truth, "lean", math.Abs(t.lean), "az", t.az, "pull", say("pull."+pullIDs[t.pull]))
	}
	if math.Abs(v-t.truth) <= draftTol+1e-9 {
		return tell(Right, "within")
	}
	for _, s := range t.slips() {
		if math.Abs(v-s.value) <= draftTol/2+1e-9 {
			return tell(NotYet, s.code)
		}
	}
	if math.Abs(v-t.truth) <= draftNear+1e-9 {
		return tell(Close, "near")
	}
	if (v < 0) != (t.truth < 0) && math.Abs(t.truth) > draftTol {
		return tell(NotYet, "wrongSide")
	}
	return tell(NotYet, "far")
}

func (t *draftTask) hint(level int) Hint {
	group := "axial"
	if t.pull == release.Out {
		group = "out"
	}
	if level == 1 {
		return Hint{Words: say("draft.hint1."+group, "pull", say("pull."+pullIDs[t.pull]))}
	}
	if level == 2 {
		return Hint{Words: say("draft.hint2." + group)}
	}
	return Hint{Words: say("draft.hint3", "dr", hundredths(math.Abs(t.to.R-t.from.R)), "dz", hundredths(math.Abs(t.to.Z-t.from.Z))), Heights: []float64{micron(t.from.Z), micron(t.to.Z)}}
}

func (t *draftTask) solve() Solution {
	s := Solution{Answer: Answer{Value: Typed(one(t.truth)), Unit: "°"}, Short: say("draft.short", "deg", t.truth)}
	s.Steps = []words.Text{say("draft.step1", "dr", hundredths(math.Abs(t.to.R-t.from.R)), "dz", hundredths(math.Abs(t.to.Z-t.from.Z)), "lean", math.Abs(t.lean))}
	switch {
	case t.pull == release.Out:
		s.Steps = append(s.Steps, say("draft.step2.out", "lean", math.Abs(t.lean), "az", t.az, "deg", t.truth))
	case t.truth < 0:
		s.Steps = append(s.Steps, say("draft.step2.under", "pull", say("pull."+pullIDs[t.pull]), "deg", t.truth))
	default:
		s.Steps = append(s.Steps, say("draft.step2.axial", "pull", say("pull."+pullIDs[t.pull]), "deg", t.truth))
	}
	for _, k := range t.slips() {
		s.Slips = append(s.Slips, say("draft.slip."+k.code, "deg", k.value))
	}
	return s
}
