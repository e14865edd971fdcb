package exercise

import (
	"math"
	"slices"
	"strconv"

	"moldwright/core/job"
	"moldwright/core/parting"
	"moldwright/core/words"
)

// Kind count: the fewest parts, and what rules out fewer. Fewest is said of the
// family of schemes that the planner judges.

// reasons are all that can rule out fewer parts, in the order of their sizes.
var reasons = [...]string{"free", "narrows", "thin", "waist", "waist+lower", "waist+upper", "waist+lower+upper",
	"straight", "straight+lower", "straight+upper", "straight+lower+upper", "trap"}

// Margins of drawn questions: a scheme that catches does so by soundDepth, one
// that rubs on soundRubs of its worst part, one that is clear rubs on no more
// than soundClear; percent, against the 10 that the rules allow.
const (
	soundRubs  = 15.03
	soundClear = 6.03
)

const noneID = "none"

type countTask struct {
	*look
	all     []parting.Scheme
	best    int      // the scheme to make
	count   string   // its parts, or noneID
	right   []string // the reasons that are right
	options []string // the reasons offered
}

func newCount(l *look, g *Gen) *countTask {
	t := &countTask{look: l, all: l.judge()}
	t.best = parting.Choose(t.all, 0, func(int) float64 { return 0 })
	c := &t.all[t.best]
	if c.Verdict != parting.Clear {
		t.count, t.right = noneID, []string{"trap"}
	} else {
		t.count = strconv.Itoa(c.Count)
		for i := range t.all {
			if s := &t.all[i]; t.asGood(s) && s.Verdict == parting.Clear {
				if r := t.reason(s); !slices.Contains(t.right, r) {
					t.right = append(t.right, r)
				}
			}
		}
	}
	t.offer(g)
	return t
}

// asGood tells that a scheme has as few parts as the best, and parts of the
// same sort: where a lower and an upper part let go, no waist is the reason,
// though two side parts may do as well.
func (t *countTask) asGood(s *parting.Scheme) bool {
	best := t.best
	if i := parting.Index(t.all, "two"); i >= 0 && t.all[i].Verdict == parting.Clear && t.all[i].Count == t.all[best].Count {
		best = i
	}
	return s.Count == t.all[best].Count && (s.Sides == 0) == (t.all[best].Sides == 0)
}

// reason is what makes a clear scheme need its parts.
func (t *countTask) reason(s *parting.Scheme) string {
	at := func(id string) parting.Verdict {
		if i := parting.Index(t.all, id); i >= 0 {
			return t.all[i].Verdict
		}
		return parting.Catches
	}
	switch {
	case s.ID == "one":
		return "free"
	case s.ID == "two" && at("one") == parting.Rubs:
		return "thin"
	case s.ID == "two":
		return "narrows"
	}
	id := "waist"
	if at("two") == parting.Rubs {
		id = "straight"
	}
	if s.Lower {
		id += "+lower"
	}
	if s.Upper {
		id += "+upper"
	}
	return id
}

// offer draws three reasons to stand beside the right one.
func (t *countTask) offer(g *Gen) {
	var wrong []string
	for _, r := range [...]string{"free", "narrows", "waist", "waist+lower", "waist+lower+upper", "straight+lower", "trap"} {
		if !slices.Contains(t.right, r) {
			wrong = append(wrong, r)
		}
	}
	g.shuffle(len(wrong), func(i, j int) { wrong[i], wrong[j] = wrong[j], wrong[i] })
	t.options = append([]string{t.right[0]}, wrong[:3]...)
	slices.SortFunc(t.options, func(a, b string) int { return slices.Index(reasons[:], a) - slices.Index(reasons[:], b) })
}

func makeCount(first, g *Gen, difficulty int) task {
	type draw struct{ pot, count, reason string }
	list := []draw{{"bowl", "1", "free"}, {"cup", "1", "free"}, {"jar", "2", "narrows"}, {"keeled", "2", "narrows"}, {"bottle", "2", "narrows"}, {"vase", "3", "waist+lower"}}
	if difficulty > 1 {
		list = append(list[2:], draw{"flask", "2", "waist"}, draw{"goblet", "3", "waist+lower"}, draw{"cylinder", "3", "straight+lower"}, draw{"grooved", "3", "waist+lower"}, draw{"dovetailCup", noneID, "trap"})
	}
	if difficulty > 2 {
		list = append(list[4:], draw{"candlestick", "4", "waist+lower+upper"}, draw{"roundCandlestick", "3", "waist+upper"}, draw{"dovetailJar", noneID, "trap"},
			draw{"dovetailVase", noneID, "trap"}, draw{"fineGrooved", "3", "waist+lower"}, draw{"sunken", "2", "narrows"})
	}
	c := pick(first, list...)
	l, err := family(g, c.pot).look()
	if err != nil {
		return nil
	}
	t := newCount(l, g)
	if !t.sound() || t.count != c.count || !slices.Contains(t.right, c.reason) {
		return nil
	}
	return t
}

// sound tells that no scheme that bears on the answer stands near a threshold.
func (t *countTask) sound() bool {
	for i := range t.all {
		s := &t.all[i]
		if t.count != noneID && s.Count >= t.all[t.best].Count && !t.asGood(s) {
			continue
		}
		worst := 0.0
		for _, p := range s.Parts {
			worst = math.Max(worst, p.RubShare)
		}
		switch s.Verdict {
		case parting.Catches:
			if s.Depth < soundDepth {
				return false
			}
		case parting.Rubs:
			if worst < soundRubs {
				return false
			}
		default:
			if worst > soundClear {
				return false
			}
		}
	}
	return true
}

func ownCount(j *job.Job, g *Gen, _ int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	return newCount(l, g), nil
}

func (t *countTask) fields() []Field {
	count := Field{ID: "count", Type: TypeChoice, Words: say("ask.count")}
	for n := 1; n <= 6; n++ {
		count.Options = append(count.Options, Option{strconv.Itoa(n), words.Plain(strconv.Itoa(n))})
	}
	count.Options = append(count.Options, Option{noneID, say("ask.countNone")})
	why := Field{ID: "reason", Type: TypeChoice, Words: say("ask.reason")}
	for _, r := range t.options {
		why.Options = append(why.Options, Option{r, say("reason." + r)})
	}
	return []Field{count, why}
}

func (t *countTask) pose(q *Question) {
	q.Job = t.job
	q.Text = say("count.text")
	q.Given = append(q.Given, say("given.rules", "draft", plain(t.rules.LeastDraft), "share", plain(t.rules.RubShare)))
	q.Answer = t.fields()
	q.Tolerance = say("tolerance.count")
	q.Drawing = t.drawing()
}

func (t *countTask) check(a *Answer) *Invalid {
	for _, f := range t.fields() {
		if _, bad := a.readChoice(f); bad != nil {
			return bad
		}
	}
	return nil
}

// with is the best scheme of n parts, or nil.
func (t *countTask) with(n int) *parting.Scheme {
	var list []parting.Scheme
	for _, s := range t.all {
		if s.Count == n {
			list = append(list, s)
		}
	}
	if len(list) == 0 {
		return nil
	}
	return &list[parting.Choose(list, 0, func(int) float64 { return 0 })]
}

func (t *countTask) mark(a *Answer) Result {
	n, why := a.Choices["count"], a.Choices["reason"]
	best := &t.all[t.best]
	whyRight := slices.Contains(t.right, why)
	switch {
	case n == t.count && whyRight && n == noneID:
		return result("count", Right, "none", "why", say("reason."+why))
	case n == t.count && whyRight:
		return result("count", Right, "all", "name", best.Name(), "why", say("reason."+why))
	case n == t.count:
		r := result("count", Close, "wrongReason", "why", say("reason."+why))
		r.Pictures = t.evidence()
		return r
	case n == noneID:
		return result("count", NotYet, "notStuck", "n", best.Count, "name", best.Name())
	case t.count == noneID:
		r := result("count", NotYet, "stuck")
		if p, ok := t.schemePicture(best); ok {
			r.Pictures = []Picture{p}
			r.Words = words.Join(" ", r.Words, p.Words)
		}
		return r
	}
	given, _ := strconv.Atoi(n)
	if given > best.Count {
		mark := NotYet
		if given == best.Count+1 && whyRight {
			mark = Close
		}
		return result("count", mark, "tooMany", "n", best.Count, "name", best.Name())
	}
	s := t.with(given)
	if s.Verdict == parting.Rubs {
		return result("count", NotYet, "tooFewRubs", "name", s.Name(), "against", s.Against())
	}
	r := result("count", NotYet, "tooFewCatches", "name", s.Name(), "against", s.Against())
	if p, ok := t.schemePicture(s); ok {
		r.Pictures = []Picture{p}
	}
	return r
}

// evidence is what sticks in the best scheme with one part fewer.
func (t *countTask) evidence() []Picture {
	var s *parting.Scheme
	if t.count == noneID {
		s = &t.all[t.best]
	} else if s = t.with(t.all[t.best].Count - 1); s == nil {
		return nil
	}
	if p, ok := t.schemePicture(s); ok {
		return []Picture{p}
	}
	return nil
}

func (t *countTask) hint(level int) Hint {
	if level < 3 {
		return Hint{Words: say("count.hint" + digit(level))}
	}
	if e := t.evidence(); len(e) > 0 {
		return Hint{Words: say("count.hint3", "z", e[0].Z), Heights: []float64{e[0].Z}}
	}
	return Hint{Words: say("count.hint3free")}
}

func (t *countTask) solve() Solution {
	best := &t.all[t.best]
	s := Solution{Answer: Answer{Choices: map[string]string{"count": t.count, "reason": t.right[0]}}, Pictures: t.evidence()}
	if t.count == noneID {
		s.Short = say("count.shortNone")
		s.Steps = []words.Text{say("count.stepNone", "name", best.Name(), "against", best.Against())}
		return s
	}
	s.Short = say("count.short", "n", best.Count, "name", best.Name())
	for i := range t.all {
		if c := &t.all[i]; c.Count < best.Count {
			s.Steps = append(s.Steps, say("count.step", "n", c.Count, "name", c.Name(), "against", c.Against()))
		}
	}
	s.Steps = append(s.Steps, say("count.stepLast", "name", best.Name(), "why", say("reason."+t.right[0])))
	s.Slips = []words.Text{say("count.slip.tooFew"), say("count.slip.tooMany")}
	return s
}
