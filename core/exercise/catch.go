package exercise

import (
	"math"

	"moldwright/core/job"
	"moldwright/core/release"
	"moldwright/core/words"
)

// Kind catch: mark where the plaster catches for a given pull. Right is a mark
// on every stretch that catches and none elsewhere.

// Margins of drawn questions, off the grid of a tenth of a mm so that no drawn
// number falls on them: a stretch that catches does so by soundDepth at least
// and is soundLength long.
const (
	soundDepth  = 0.73 // mm
	soundLength = 4.07
)

// markTol is how far off a stretch a mark may lie and still count as on it, mm
// and share of the height; nearTol how many times that is close.
const (
	markTol      = 2.0
	markTolShare = 0.02
	nearTol      = 2.5
	mostMarks    = 12
)

type catchTask struct {
	*look
	pull   release.Pull
	from   int // the contour asked about begins at this point
	list   []stretch
	others [2]release.Pull
	other  [2][]stretch // what catches for the two other pulls
	tol    float64
}

func newCatch(l *look, pull release.Pull) *catchTask {
	t := &catchTask{look: l, pull: pull}
	if pull == release.Up { // what stands under the foot is none of an upper part's
		t.from = l.foot()
	}
	t.list = l.caught(pull, t.from, l.end)
	n := 0
	for _, p := range release.Pulls {
		if p != pull {
			t.others[n], t.other[n] = p, l.caught(p, t.from, l.end)
			n++
		}
	}
	t.tol = math.Max(markTol, markTolShare*l.height)
	return t
}

func makeCatch(first, g *Gen, difficulty int) task {
	type draw struct {
		pot  string
		pull release.Pull
		n    int // how many stretches catch; -1 leaves it to the pot
	}
	const d, u, o = release.Down, release.Up, release.Out
	var list []draw
	switch difficulty {
	case 1:
		list = []draw{{"bowl", d, 0}, {"jar", d, 1}, {"keeled", d, 1}, {"bottle", d, 1}, {"vase", d, 1}, {"goblet", d, 1}, {"cup", d, 0}}
	case 2:
		list = []draw{{"closedGoblet", d, 2}, {"grooved", d, 1}, {"dovetailCup", d, 1}, {"dovetailJar", d, 2}, {"jar", u, 1},
			{"vase", u, 2}, {"bowl", u, 1}, {"goblet", u, 1}, {"gourd", o, -1}, {"flask", o, 0}}
	default:
		list = []draw{{"fineGrooved", d, 1}, {"dovetailVase", d, 2}, {"closedGoblet", d, 2}, {"vase", u, 2}, {"gourd", u, -1}, {"candlestick", o, 2},
			{"roundCandlestick", o, 1}, {"sunken", o, -1}, {"beaded", o, -1}, {"keeled", u, 1}, {"gourd", d, -1}, {"flask", o, 0}}
	}
	c := pick(first, list...)
	l, err := family(g, c.pot).look()
	if err != nil {
		return nil
	}
	t := newCatch(l, c.pull)
	if c.n >= 0 && len(t.list) != c.n || !t.sound() {
		return nil
	}
	return t
}

// sound tells that nothing about the question hangs on a threshold.
func (t *catchTask) sound() bool {
	for _, c := range t.list {
		if c.depth < soundDepth || c.length() < soundLength {
			return false
		}
	}
	n := 0 // stretches too shallow to count must not be there at all
	open := false
	for _, s := range t.s.All(t.pull) {
		in := s.Span >= t.from && s.Span < t.end && s.Depth > release.Free
		if in && !open {
			n++
		}
		open = in
	}
	return n == len(t.list) && len(t.list) <= 4
}

func ownCatch(j *job.Job, g *Gen, difficulty int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	pulls := []release.Pull{release.Down}
	if difficulty > 1 {
		pulls = append(pulls, release.Up, release.Out)
	}
	return newCatch(l, pick(g, pulls...)), nil
}

func (t *catchTask) field() Field {
	return Field{ID: "marks", Type: TypeMarks, Words: say("ask.marks"), Most: mostMarks,
		Options: []Option{{"none", say("ask.marksNone")}}}
}

func (t *catchTask) pose(q *Question) {
	q.Job = t.job
	id := pullIDs[t.pull]
	q.Text = say("catch.text."+id, "pull", say("pull."+id))
	q.Answer = []Field{t.field()}
	q.Tolerance = say("tolerance.marks", "mm", t.tol)
	q.Drawing = t.drawing("pull")
	q.Drawing.Pull = arrow(t.pull)
}

// none tells that the answer says that it catches nowhere.
func none(a *Answer) bool { return a.Choices["marks"] == "none" }

func (t *catchTask) check(a *Answer) *Invalid {
	if none(a) {
		if len(a.Marks) > 0 {
			return invalid("marksAndNone", "marks")
		}
		return nil
	}
	if a.Choices["marks"] != "" {
		_, bad := a.readChoice(t.field())
		return bad
	}
	if len(a.Marks) == 0 {
		return invalid("noMarks", "marks")
	}
	if len(a.Marks) > mostMarks {
		return invalid("tooManyMarks", "marks", "most", mostMarks)
	}
	far := 3 * (t.height + t.maxR)
	for i, m := range a.Marks {
		if math.IsNaN(m.Z) || math.Abs(m.Z) > far || m.R != nil && (math.IsNaN(*m.R) || *m.R < 0 || *m.R > far) {
			return invalid("badMark", "marks", "n", i+1)
		}
		if _, ok := t.outermost(m.Z); m.R == nil && !ok {
			return invalid("heightOff", "marks", "n", i+1, "z", m.Z, "h", t.height)
		}
	}
	return nil
}

func (t *catchTask) part() string {
	return [...]string{release.Down: "lower", release.Up: "upper", release.Out: "side"}[t.pull]
}

func (t *catchTask) hint(level int) Hint {
	id := pullIDs[t.pull]
	switch {
	case level < 3:
		return Hint{Words: say("catch.hint"+digit(level)+"."+id, "pull", say("pull."+id))}
	case len(t.list) == 0:
		return Hint{Words: say("catch.hint3none")}
	}
	c := t.list[0]
	return Hint{Words: say("catch.hint3", "n", len(t.list), "z", c.block.Z, "r", c.block.R), Heights: []float64{micron(c.block.Z)}}
}

func (t *catchTask) solve() Solution {
	id := pullIDs[t.pull]
	s := Solution{Steps: []words.Text{say("catch.step."+id, "pull", say("pull."+id))}}
	if len(t.list) == 0 {
		s.Answer.Choices = map[string]string{"marks": "none"}
		s.Short = say("catch.shortNone")
		s.Steps = append(s.Steps, say("catch.free", "pull", say("pull."+id)))
		return s
	}
	for i := range t.list {
		p := t.list[i].middle()
		r := micron(p.R)
		s.Answer.Marks = append(s.Answer.Marks, Mark{&r, micron(p.Z)})
	}
	s.Pictures = pictures(t.part(), t.pull, t.list)
	var short []words.Text
	for _, p := range s.Pictures {
		s.Steps = append(s.Steps, p.Words)
		short = append(short, say("catch.short", "from", p.ZFrom, "to", p.ZTo, "depth", hundredths(p.Depth)))
	}
	s.Short = words.Join("; ", short...)
	s.Slips = []words.Text{say("catch.slip.blocker"), say("catch.slip.otherPull")}
	return s
}
