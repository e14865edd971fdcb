package exercise

import (
	"encoding/json"
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/words"
)

// Kind save: the smallest change of the form that makes it go in fewer parts.
// Judged live on the edited form. Right is a form that is clear in the wanted
// parts and departs from the given one by no more than the limit, which is
// saveFactor times the change of the nearest releasing form and saveMore on
// top; close is one that is clear but departs farther.

const (
	saveFactor = 1.5
	saveMore   = 1.0 // mm
	// otherPot is the share of the greatest radius beyond which it is another
	// pot.
	otherPot = 0.3
	// unmoved is the change in mm below which nothing was changed.
	unmoved = 0.005
)

type saveTask struct {
	*look
	scheme  string // one or two
	now     parting.Scheme
	fewest  int // parts of the fewest that are clear now; 0 for none
	nearest *parting.Nearest
	limit   float64 // mm
}

// newSave tells false where there is no part to save.
func newSave(l *look, scheme string) (*saveTask, bool) {
	t := &saveTask{look: l, scheme: scheme}
	all := l.judge()
	i := parting.Index(all, scheme)
	if i < 0 || all[i].Verdict == parting.Clear {
		return nil, false
	}
	t.now = all[i]
	best := &all[parting.Choose(all, 0, func(int) float64 { return 0 })]
	if best.Verdict == parting.Clear {
		if t.fewest = best.Count; t.fewest <= t.now.Count {
			return nil, false
		}
	}
	n, err := parting.NearestForm(l.job, scheme, l.rules.LeastDraft, mold.MouthRadius)
	if err != nil {
		return nil, false
	}
	t.nearest = n
	// as the contour departs, which is what an answer is measured by
	if d, ok := t.departs(n.Apply(l.job)); ok {
		t.limit = tenth(saveFactor*math.Max(d, n.MaxChangeMM)+saveMore) + 0.05
		return t, true
	}
	return nil, false
}

func makeSave(first, g *Gen, difficulty int) task {
	type draw struct{ pot, scheme string }
	list := []draw{{"grooved", "one"}, {"turnedIn", "one"}}
	if difficulty > 1 {
		list = []draw{{"grooved", "one"}, {"lipped", "two"}, {"turnedIn", "one"}, {"flared", "one"}}
	}
	if difficulty > 2 {
		list = []draw{{"lipped", "two"}, {"waisted", "two"}, {"flared", "one"}, {"lipped", "two"}}
	}
	c := pick(first, list...)
	s := &shaper{Gen: g}
	name := "jar"
	switch c.pot {
	case "grooved":
		s.grooved(s.Between(14, 30))
		name = "grooved"
	case "turnedIn": // a cup whose rim turns in
		f, h := s.Between(280, 420), s.Between(700, 1200)
		wide := f + h*s.Between(12, 22)/100
		s.foot(f)
		s.corner(wide, h-s.Between(120, 220))
		s.corner(wide-s.Between(12, 36), h)
		name = "cup"
	case "flared": // a cup whose foot spreads
		f, h := s.Between(300, 420), s.Between(700, 1200)
		in := s.Between(14, 34)
		s.foot(f)
		s.corner(f-in, s.Between(80, 160))
		s.corner(f+h*s.Between(12, 24)/100, h)
		name = "cup"
	case "lipped": // a jar whose lip spreads a little
		w := s.Between(420, 700)
		h := w * s.Between(120, 190) / 100
		f, neck := w*s.Between(45, 62)/100, w*s.Between(48, 66)/100
		z := h * s.Between(34, 56) / 100
		zNeck := h - s.Between(80, 160)
		s.foot(f)
		s.corner(w, z)
		s.corner(neck, zNeck)
		s.corner(neck+s.Between(14, 36), h)
	case "waisted": // a jar with a step in its shoulder
		w := s.Between(420, 700)
		h := w * s.Between(130, 190) / 100
		f, rim := w*s.Between(45, 62)/100, w*s.Between(42, 56)/100
		z := h * s.Between(30, 42) / 100
		s.foot(f)
		s.corner(w, z)
		z1 := share(z, h, s.Between(34, 44))
		r1 := share(w, rim, s.Between(42, 52))
		s.corner(r1, z1)
		s.corner(r1+s.Between(14, 32), z1+s.Between(60, 130))
		s.corner(rim, h)
	}
	l, err := s.pot(name).look()
	if err != nil {
		return nil
	}
	t, ok := newSave(l, c.scheme)
	if !ok || t.now.Depth < soundDepth || t.fewest == 0 || !newCount(l, g).sound() || t.nearest.MaxChangeMM < 0.43 || t.nearest.MaxChangeMM > 0.12*t.maxR {
		return nil
	}
	return t
}

func ownSave(j *job.Job, _ *Gen, _ int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	for _, id := range [...]string{"one", "two"} {
		if t, ok := newSave(l, id); ok && t.nearest.MaxChangeMM <= otherPot*l.maxR/2 {
			return t, nil
		}
	}
	return nil, notFit("save")
}

// departs is how far the contour of another job departs from this one, either
// way, mm at mold size.
func (t *saveTask) departs(j *job.Job) (float64, bool) {
	m, err := form.Build(j)
	if err != nil {
		return 0, false
	}
	line := m.Pts
	d := 0.0
	for _, p := range t.m.Pts {
		d = math.Max(d, toLine(p, line))
	}
	for _, p := range line {
		d = math.Max(d, toLine(p, t.m.Pts))
	}
	return d, true
}

func (t *saveTask) pose(q *Question) {
	q.Job = t.job
	q.Text = say("save.text."+t.scheme, "name", t.now.Name())
	q.Given = append(q.Given, say("given.rules", "draft", plain(t.rules.LeastDraft), "share", plain(t.rules.RubShare)), say("given.limit", "mm", t.limit))
	q.Answer = []Field{{ID: "job", Type: TypeJob, Words: say("ask.job")}}
	q.Tolerance = say("tolerance.save", "mm", t.limit)
	q.Drawing = t.drawing("handles")
}

// edited is the job of an answer with everything but its form as asked.
func (t *saveTask) edited(a *Answer) (*look, *Invalid) {
	j, bad := a.readJob()
	if bad != nil {
		return nil, bad
	}
	out := *t.job
	out.Form.Outer = j.Form.Outer
	l, err := lookAt(&out)
	if err != nil {
		return nil, invalid("badForm", "job", "message", why(err))
	}
	if l.m.Closed != t.m.Closed {
		return nil, invalid("otherEnd", "job")
	}
	return l, nil
}

func (t *saveTask) check(a *Answer) *Invalid {
	_, bad := t.edited(a)
	return bad
}

func (t *saveTask) mark(a *Answer) Result {
	l, bad := t.edited(a)
	if bad != nil {
		return Result{Mark: NotYet, Code: bad.Code, Words: bad.Words} // not reached after check
	}
	d, _ := t.departs(l.job)
	all := l.judge()
	now := &all[parting.Index(all, t.scheme)]
	args := []any{"n", now.Count, "d", hundredths(d), "limit", t.limit, "name", now.Name(), "against", now.Against()}
	tell := func(mark, code string) Result { return result("save", mark, code, args...) }
	switch {
	case d < unmoved:
		r := tell(NotYet, "unchanged")
		r.Pictures = l.picturesOf(now)
		return r
	case d > otherPot*t.maxR:
		return tell(NotYet, "otherForm")
	case now.Verdict == parting.Catches:
		r := tell(NotYet, "stillCatches")
		r.Pictures = l.picturesOf(now)
		return r
	case now.Verdict == parting.Rubs && d <= t.limit:
		return tell(Close, "stillRubs")
	case now.Verdict == parting.Rubs:
		return tell(NotYet, "stillRubs")
	case d > t.limit:
		return tell(Close, "tooMuch")
	}
	return tell(Right, "clears")
}

func (l *look) picturesOf(s *parting.Scheme) []Picture {
	if p, ok := l.schemePicture(s); ok {
		return []Picture{p}
	}
	return nil
}

func (t *saveTask) hint(level int) Hint {
	switch level {
	case 1:
		p, _ := t.schemePicture(&t.now)
		return Hint{Words: say("save.hint1", "z", p.Z, "depth", hundredths(t.now.Depth)), Heights: []float64{p.Z}}
	case 2:
		return Hint{Words: say("save.hint2")}
	}
	return Hint{Words: say("save.hint3", "z", t.nearest.AtZ, "mm", hundredths(t.nearest.MaxChangeMM)), Heights: []float64{micron(t.nearest.AtZ)}}
}

func (t *saveTask) solve() Solution {
	text, err := t.nearest.Apply(t.job).Write()
	s := Solution{Answer: Answer{Job: json.RawMessage(text)}, Pictures: t.picturesOf(&t.now)}
	if err != nil {
		return s // not reached: a job that was read can be written
	}
	s.Short = say("save.short", "mm", hundredths(t.nearest.MaxChangeMM), "z", t.nearest.AtZ)
	s.Steps = []words.Text{say("save.step1", "name", t.now.Name(), "against", t.now.Against())}
	for _, c := range t.nearest.Places {
		way := "save.out"
		if c.By < 0 {
			way = "save.in"
		}
		if c.ZTo-c.ZFrom < 0.1 {
			way += "At"
		}
		s.Steps = append(s.Steps, say(way, "from", c.ZFrom, "to", c.ZTo, "at", c.AtZ, "mm", hundredths(math.Abs(c.By))))
	}
	s.Slips = []words.Text{say("save.slip.tooMuch")}
	return s
}
