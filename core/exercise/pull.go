package exercise

import (
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/parting"
	"moldwright/core/release"
	"moldwright/core/words"
)

// Kind pull: choose the arrow of each given part. A part that goes all round
// can only leave along the axis; one of several side parts may go outward too.
// Every other part is thought away. Right is every pull under which the part is
// clear or, where there is none, under which it only rubs.

type pullTask struct {
	*look
	parts []pullPart
}

// letters names the parts in a drawn order, so that no name tells a place: none is the letter of a kind of part.
func (t *pullTask) letters(g *Gen) {
	names := []string{"p", "q", "r"}[:len(t.parts)]
	g.shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	for i := range t.parts {
		t.parts[i].id = names[i]
	}
}

func makePull(first, g *Gen, difficulty int) task {
	type draw struct{ pot, scheme string }
	list := []draw{{"jar", "two"}, {"keeled", "two"}, {"bottle", "two"}, {"vase", "sides2+lower"}, {"goblet", "sides2+lower"}}
	if difficulty > 1 {
		list = append(list[2:], draw{"jar", "high"}, draw{"keeled", "low"}, draw{"vase", "neck"}, draw{"cylinder", "sides2+lower"}, draw{"gourd", "sides2+lower"})
	}
	if difficulty > 2 {
		list = append(list[2:], draw{"candlestick", "sides2+lower+upper"}, draw{"roundCandlestick", "sides2+upper"}, draw{"dovetailVase", "sides2+lower"},
			draw{"vase", "belly"}, draw{"jar", "halves"}, draw{"closedGoblet", "high"})
	}
	c := pick(first, list...)
	j := family(g, c.pot)
	at, sides := 0, 0 // percent of the height
	switch c.scheme {
	case "high":
		at = g.Between(80, 90)
	case "low":
		at = g.Between(10, 18)
	case "neck":
		at = g.Between(74, 84)
	case "belly":
		at, sides = g.Between(36, 60), 2
	case "halves":
		at, sides = g.Between(20, 28), 2
	}
	var t *pullTask
	if at > 0 {
		last := j.Form.Outer[len(j.Form.Outer)-1].Z
		t = split(j, tenth(last*float64(at)/100), sides)
	} else if l, err := j.look(); err == nil {
		all := l.judge()
		if i := parting.Index(all, c.scheme); i >= 0 {
			t = l.ofScheme(&all[i])
		}
	}
	if t == nil || !t.sound() {
		return nil
	}
	t.letters(g)
	return t
}

// sound tells that no part stands near a threshold for any pull.
func (t *pullTask) sound() bool {
	for i := range t.parts {
		p := &t.parts[i]
		if p.b-p.a < 1 || t.m.Pts[p.a].Dist(t.m.Pts[p.b]) < 2.03 {
			return false
		}
		for _, w := range p.ways {
			if w.verdict == parting.Catches && w.depth < soundDepth || w.verdict == parting.Rubs && w.share < soundRubs ||
				w.verdict == parting.Clear && w.share > soundClear {
				return false
			}
			for _, s := range t.s.Samples[w.pull] { // free, not nearly so
				if w.verdict != parting.Catches && s.Span >= p.a && s.Span < p.b && s.Depth > release.Free {
					return false
				}
			}
		}
	}
	return true
}

func ownPull(j *job.Job, g *Gen, difficulty int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	all := l.judge()
	var some []int
	for i := range all {
		if all[i].Count > 1 && all[i].Sides <= 2 {
			some = append(some, i)
		}
	}
	best := parting.Choose(all, 0, func(int) float64 { return 0 })
	if difficulty > 1 || all[best].Count == 1 {
		best = pick(g, some...)
	}
	t := l.ofScheme(&all[best])
	if len(t.parts) > 3 {
		t.parts = t.parts[:3]
	}
	t.letters(g)
	return t, nil
}

func (t *pullTask) field(p *pullPart) Field {
	f := Field{ID: p.id, Type: TypeChoice, Words: say("ask.pull", "part", t.name(p))}
	for _, id := range [...]string{"up", "down", "out"} {
		f.Options = append(f.Options, Option{id, say("pull." + id)})
	}
	f.Options = append(f.Options, Option{noneID, say("ask.pullNone")})
	return f
}

func (t *pullTask) name(p *pullPart) words.Text {
	return say("part." + p.id)
}

func (t *pullTask) pose(q *Question) {
	q.Job = t.job
	q.Text = say("pull.text")
	q.Drawing = t.drawing("parts")
	for i := range t.parts {
		p := &t.parts[i]
		q.Answer = append(q.Answer, t.field(p))
		what := say("pull.round", "part", t.name(p))
		if p.sides > 0 {
			what = say("pull.sector", "part", t.name(p), "n", p.sides)
		}
		q.Given = append(q.Given, what)
		q.Drawing.Parts = append(q.Drawing.Parts, Region{p.id, what, points(t.outline(p))})
	}
	q.Given = append(q.Given, say("given.rules", "draft", plain(t.rules.LeastDraft), "share", plain(t.rules.RubShare)))
	q.Tolerance = say("tolerance.choices")
}

func (t *pullTask) check(a *Answer) *Invalid {
	for i := range t.parts {
		if _, bad := a.readChoice(t.field(&t.parts[i])); bad != nil {
			return bad
		}
	}
	return nil
}

func (t *pullTask) mark(a *Answer) Result {
	var r Result
	bad, worst := 0, -1
	for i := range t.parts {
		p := &t.parts[i]
		d, pic := t.markPart(p, a.Choices[p.id])
		d.Index = i
		r.Details = append(r.Details, d)
		r.Pictures = append(r.Pictures, pic...)
		if d.Mark != Right {
			if d.Mark == NotYet {
				bad++
			}
			if worst < 0 || d.Mark == NotYet && r.Details[worst].Mark == Close {
				worst = i
			}
		}
	}
	if worst < 0 {
		r.Mark, r.Code, r.Words = Right, "all", say("pull.all", "n", len(t.parts))
		return r
	}
	r.Mark, r.Code, r.Words = NotYet, r.Details[worst].Code, r.Details[worst].Words
	if bad == 0 || bad == 1 && len(t.parts) > 2 {
		r.Mark = Close
	}
	return r
}

func (t *pullTask) markPart(p *pullPart, id string) (Detail, []Picture) {
	name := t.name(p)
	tell := func(mark, code string, args ...any) Detail {
		args = append(args, "part", name, "pull", say("pull."+id), "right", t.answers(p))
		return Detail{Field: p.id, Mark: mark, Code: code, Words: say("pull."+code, args...)}
	}
	if slices.Contains(p.answer, id) {
		if id == noneID {
			return tell(Right, "isNone"), nil
		}
		return tell(Right, "goes"), nil
	}
	if id == noneID {
		return tell(NotYet, "saidNone"), nil
	}
	if id == "out" && p.sides == 0 {
		return tell(NotYet, "roundOut"), nil
	}
	for _, w := range p.ways {
		if pullIDs[w.pull] != id {
			continue
		}
		if w.verdict == parting.Rubs {
			return tell(Close, "rubs", "share", int(math.Round(w.share))), nil
		}
		var best stretch
		for _, c := range w.caught {
			if c.depth > best.depth {
				best = c
			}
		}
		code := "sticks"
		if p.answer[0] == noneID {
			code = "locked"
		}
		pic := best.picture(p.id, w.pull)
		return tell(NotYet, code, "depth", hundredths(best.depth), "z", best.at.Z, "block", best.block.Z), []Picture{pic}
	}
	return tell(NotYet, "sticks"), nil // not reached: every id has its way
}

// answers are the right pulls of a part, in words.
func (t *pullTask) answers(p *pullPart) words.Text {
	var list []words.Text
	for _, id := range p.answer {
		if id == noneID {
			list = append(list, say("ask.pullNone"))
		} else {
			list = append(list, say("pull."+id))
		}
	}
	return words.Or(list...)
}

func (t *pullTask) hint(level int) Hint {
	p := &t.parts[0]
	if level < 3 {
		return Hint{Words: say("pull.hint" + digit(level))}
	}
	return Hint{Words: say("pull.hint3", "part", t.name(p), "right", t.answers(p)), Heights: []float64{micron(t.m.Pts[p.b].Z)}}
}

func (t *pullTask) solve() Solution {
	s := Solution{Answer: Answer{Choices: map[string]string{}}}
	var short []words.Text
	for i := range t.parts {
		p := &t.parts[i]
		s.Answer.Choices[p.id] = p.answer[0]
		short = append(short, say("pull.short", "part", t.name(p), "right", t.answers(p)))
		for _, w := range p.ways {
			step := say("pull.stepClear", "part", t.name(p), "pull", say("pull."+pullIDs[w.pull]))
			switch w.verdict {
			case parting.Rubs:
				step = say("pull.stepRubs", "part", t.name(p), "pull", say("pull."+pullIDs[w.pull]), "share", int(math.Round(w.share)))
			case parting.Catches:
				for _, c := range w.caught {
					if c.depth == w.depth {
						pic := c.picture(p.id, w.pull)
						step = pic.Words
						s.Pictures = append(s.Pictures, pic)
					}
				}
			}
			s.Steps = append(s.Steps, step)
		}
	}
	s.Short = words.Join("; ", short...)
	s.Slips = []words.Text{say("pull.slip.round"), say("pull.slip.opposite")}
	return s
}
