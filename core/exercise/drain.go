package exercise

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// Kind drain: whether the cast drains when the mold is turned over, and whether
// air is held when slip is poured in. Judged by the pockets of the cavity and
// of the cast's inside, and by a waist that the growing wall closes.

const (
	leastPocket = 0.05 // ml, from which a pocket counts
	soundPocket = 1.03 // ml, of drawn questions
	// closedFloor is how many walls above the cavity's floor the inside may
	// begin before the bore counts as closed.
	closedFloor = 3
)

type drainTask struct {
	*look
	cavity    []form.Point
	inner     []form.Point
	air, slip []form.Pocket
	closed    bool // a waist or the mouth closes
}

func newDrain(l *look) *drainTask {
	t := &drainTask{look: l, cavity: l.m.Pts[:l.end+1]}
	t.inner = form.Inset(t.cavity, l.job.Clay.Wall)
	t.air = form.Pockets(t.cavity, form.Left, leastPocket)
	t.slip = form.Pockets(t.inner, form.Left, leastPocket)
	t.closed = t.inner == nil || t.inner[0].Z > t.cavity[0].Z+closedFloor*l.job.Clay.Wall
	return t
}

func (t *drainTask) holdsSlip() bool { return t.closed || len(t.slip) > 0 }

func makeDrain(first, g *Gen, difficulty int) task {
	type draw struct {
		pot       string
		air, slip bool
	}
	list := []draw{{"jar", false, false}, {"vase", false, false}, {"sunken", true, true}, {"bowl", false, false}, {"sunken", true, true}}
	if difficulty > 1 {
		list = append(list[1:3], draw{"gourd", false, false}, draw{"tightGourd", false, true}, draw{"sunken", true, true}, draw{"beaded", true, false})
	}
	if difficulty > 2 {
		list = append(list[2:], draw{"bottle", false, false}, draw{"tightGourd", false, true}, draw{"beaded", true, false}, draw{"candlestick", true, true})
	}
	c := pick(first, list...)
	j := family(g, c.pot)
	j.Clay.Wall = float64(g.Between(30, 50)) / 10
	if c.pot == "tightGourd" {
		j.Clay.Wall = float64(g.Between(75, 90)) / 10
	}
	l, err := j.look()
	if err != nil {
		return nil
	}
	t := newDrain(l)
	if !t.sound() || len(t.air) > 0 != c.air || t.holdsSlip() != c.slip {
		return nil
	}
	return t
}

// sound tells that no pocket is nearly one, and no waist nearly closed.
func (t *drainTask) sound() bool {
	for _, list := range [2][]form.Pocket{t.air, t.slip} {
		for _, p := range list {
			if p.Volume < soundPocket {
				return false
			}
		}
	}
	w := t.job.Clay.Wall
	for _, f := range [2]float64{0.87, 1.13} {
		inner := form.Inset(t.cavity, f*w)
		closed := inner == nil || inner[0].Z > t.cavity[0].Z+closedFloor*w
		if closed != t.closed || (len(form.Pockets(inner, form.Left, leastPocket)) > 0) != (len(t.slip) > 0) {
			return false
		}
	}
	return len(form.Pockets(t.cavity, form.Left, 1e-4)) == len(t.air)
}

func ownDrain(j *job.Job, _ *Gen, _ int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	return newDrain(l), nil
}

func (t *drainTask) fields() []Field {
	return []Field{
		{ID: "slip", Type: TypeChoice, Words: say("ask.slip"), Options: []Option{{"drains", say("ask.drains")}, {"holds", say("ask.holdsSlip")}}},
		{ID: "air", Type: TypeChoice, Words: say("ask.air"), Options: []Option{{"escapes", say("ask.escapes")}, {"holds", say("ask.holdsAir")}}},
	}
}

func (t *drainTask) truth() (slip, air string) {
	slip, air = "drains", "escapes"
	if t.holdsSlip() {
		slip = "holds"
	}
	if len(t.air) > 0 {
		air = "holds"
	}
	return slip, air
}

func (t *drainTask) pose(q *Question) {
	q.Job = t.job
	q.Text = say("drain.text")
	q.Given = append(q.Given, say("given.castWall", "mm", t.job.Clay.Wall), say("given.pocket", "ml", hundredths(leastPocket)))
	q.Answer = t.fields()
	q.Tolerance = say("tolerance.choices")
	q.Drawing = t.drawing()
}

func (t *drainTask) check(a *Answer) *Invalid {
	for _, f := range t.fields() {
		if _, bad := a.readChoice(f); bad != nil {
			return bad
		}
	}
	return nil
}

func volume(list []form.Pocket) (ml, from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for _, p := range list {
		ml += p.Volume
		from, to = math.Min(from, p.ZFrom), math.Max(to, p.ZTo)
	}
	return ml, from, to
}

// tell marks one of the two choices.
func (t *drainTask) tell(field, given, truth string) Detail {
	list, name := t.slip, "Slip"
	if field == "air" {
		list, name = t.air, "Air"
	}
	d := Detail{Field: field, Mark: Right, Code: "right" + name}
	if given != truth {
		d.Mark, d.Code = NotYet, "missed"+name
		if given == "holds" {
			d.Code = "false" + name
		} else if field == "slip" && t.closed {
			d.Code = "closes"
		}
	}
	ml, from, to := volume(list)
	if len(list) == 0 {
		from, to = 0, 0
	}
	d.Words = say("drain."+d.Code, "ml", ml, "from", from, "to", to, "wall", t.job.Clay.Wall, "z", t.closes())
	return d
}

// closes is the height of the narrowest place above the widest one below it,
// where the bore closes; the rim where nothing does.
func (t *drainTask) closes() float64 {
	at := t.cavity[len(t.cavity)-1]
	for i := 1; i+1 < len(t.cavity); i++ {
		if p := t.cavity[i]; p.Z > 0.15*t.height && p.R < at.R {
			at = p
		}
	}
	return at.Z
}

func (t *drainTask) mark(a *Answer) Result {
	slip, air := t.truth()
	r := Result{Details: []Detail{t.tell("slip", a.Choices["slip"], slip), t.tell("air", a.Choices["air"], air)}}
	r.Details[1].Index = 1
	wrong := slices.DeleteFunc(slices.Clone(r.Details), func(d Detail) bool { return d.Mark == Right })
	switch len(wrong) {
	case 0:
		r.Mark, r.Code, r.Words = Right, "all", say("drain.all")
	case 1:
		r.Mark, r.Code, r.Words = Close, wrong[0].Code, wrong[0].Words
	default:
		r.Mark, r.Code, r.Words = NotYet, wrong[0].Code, words.Join(" ", wrong[0].Words, wrong[1].Words)
	}
	return r
}

func (t *drainTask) hint(level int) Hint {
	if level < 3 {
		return Hint{Words: say("drain.hint"+digit(level), "wall", t.job.Clay.Wall)}
	}
	if t.closed {
		z := t.closes()
		return Hint{Words: say("drain.hint3closes", "z", z, "wall", t.job.Clay.Wall), Heights: []float64{micron(z)}}
	}
	if len(t.air) == 0 && len(t.slip) == 0 {
		return Hint{Words: say("drain.hint3none")}
	}
	list := t.air
	if len(list) == 0 {
		list = t.slip
	}
	return Hint{Words: say("drain.hint3", "z", list[0].ZFrom), Heights: []float64{micron(list[0].ZFrom), micron(list[0].ZTo)}}
}

func (t *drainTask) solve() Solution {
	slip, air := t.truth()
	s := Solution{Answer: Answer{Choices: map[string]string{"slip": slip, "air": air}}}
	s.Short = words.Join("; ", say("drain.short."+slip), say("drain.short."+air+"Air"))
	// what is told of the wrong choice is the reason for the right one
	other := map[string]string{"drains": "holds", "escapes": "holds"}
	s.Steps = []words.Text{say("drain.step1"), t.tell("air", other[air], air).Words,
		say("drain.step2", "wall", t.job.Clay.Wall), t.tell("slip", other[slip], slip).Words}
	s.Slips = []words.Text{say("drain.slip.bead"), say("drain.slip.waist")}
	return s
}
