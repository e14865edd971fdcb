package exercise

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/parting"
	"moldwright/core/release"
	"moldwright/core/words"
)

// Kind where: the height at which a lower and an upper part must part. Right is
// any height at which neither catches, and heightTol around them.

const (
	heightTol     = 1.0 // mm
	heightNear    = 5.0
	heightTolPart = 0.01 // of the height, where that is more
)

type whereTask struct {
	*look
	lo, hi     float64 // between these heights neither part catches, mm
	wide       form.Point
	tol, close float64
}

// newWhere tells false where no height will do.
func newWhere(l *look) (*whereTask, bool) {
	t := &whereTask{look: l, tol: math.Max(heightTol, heightTolPart*l.height)}
	t.close = heightNear / heightTol * t.tol
	hi, ok1 := l.firstCaught(release.Down)
	lo, ok2 := l.lastCaught(release.Up)
	if !ok1 || !ok2 || lo > hi { // a lower part alone does, or nothing does
		return nil, false
	}
	a, b := l.along(lo), l.along(hi)
	t.lo, t.hi = math.Min(a.Z, b.Z), math.Max(a.Z, b.Z)
	for _, p := range l.m.Pts[:l.end+1] {
		if p.R > t.wide.R {
			t.wide = p
		}
	}
	return t, true
}

// along is the place of the contour at point number x, which may lie between
// two points.
func (l *look) along(x float64) form.Point {
	i := min(int(x), len(l.m.Pts)-2)
	return l.m.Pts[i].Lerp(l.m.Pts[i+1], x-float64(i))
}

// firstCaught is the first place on the contour, as a number of points, that
// catches for the pull by more than counts.
func (l *look) firstCaught(pull release.Pull) (float64, bool) {
	var last release.Sample
	for _, s := range l.s.All(pull) {
		if s.Span >= l.end {
			break
		}
		if s.Depth > parting.CatchDepth {
			return crossing(last, s), true
		}
		last = s
	}
	return 0, false
}

// lastCaught is the last such place.
func (l *look) lastCaught(pull release.Pull) (float64, bool) {
	list := l.s.All(pull)
	last := release.Sample{Span: l.end - 1, T: 1}
	for i := len(list) - 1; i >= 0; i-- {
		s := list[i]
		if s.Span >= l.end {
			continue
		}
		if s.Depth > parting.CatchDepth {
			return crossing(last, s), true
		}
		last = s
	}
	return 0, false
}

// crossing is where, from a free sample to a caught one, the depth passes the
// one that counts.
func crossing(free, caught release.Sample) float64 {
	a, b := float64(free.Span)+free.T, float64(caught.Span)+caught.T
	return a + (b-a)*(parting.CatchDepth-free.Depth)/(caught.Depth-free.Depth)
}

func makeWhere(first, g *Gen, difficulty int) task {
	s := &shaper{Gen: g}
	name := pick(first, "jar", "keeled", "bottle", "jar", "keeled")
	at := first.Between(30, 56) // percent of the height
	if difficulty > 1 {
		at = first.Between(24, 62)
	}
	if at > 43 { // well off the middle, which is a common guess
		at += 13
	}
	switch {
	case name == "bottle" && difficulty == 3 && first.Int(2) == 0:
		name = "sunken"
		s.sunken(s.Between(90, 140))
	case name == "bottle" && difficulty > 1:
		s.bottle()
	case name == "keeled":
		s.keeled(at)
	default:
		name = "jar"
		s.jar(min(at, 70))
	}
	l, err := s.pot(name).look()
	if err != nil {
		return nil
	}
	t, ok := newWhere(l)
	if !ok {
		return nil
	}
	all := l.judge()
	two := all[parting.Index(all, "two")]
	one := all[parting.Index(all, "one")]
	// The band must be narrow, and the slips told apart from the answer.
	far := func(v float64) bool { return math.Abs(v-t.middle()) > 2.27*t.tol+(t.hi-t.lo)/2 }
	if two.Verdict != parting.Clear || one.Depth < soundDepth || t.hi-t.lo > 8.03 || !far(l.height/2) || !far(t.wide.R) {
		return nil
	}
	return t
}

func ownWhere(j *job.Job, _ *Gen, _ int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	t, ok := newWhere(l)
	if !ok {
		return nil, notFit("where")
	}
	return t, nil
}

func (t *whereTask) middle() float64 { return (t.lo + t.hi) / 2 }

func (t *whereTask) pose(q *Question) {
	q.Job = t.job
	q.Text = say("where.text")
	q.Answer = []Field{{ID: "value", Type: TypeNumber, Words: say("ask.height"), Units: lengthUnits}}
	q.Tolerance = say("tolerance.height", "mm", plain(t.tol), "near", plain(t.close))
	q.Drawing = t.drawing("handles")
}

var lengthUnits = []string{"mm", "cm", "in"}

func (t *whereTask) check(a *Answer) *Invalid {
	v, bad := a.readNumber(lengthUnits...)
	if bad == nil && (v < -t.tol || v > t.height+t.tol) {
		bad = tenfold(v, t.middle(), t.tol+(t.hi-t.lo)/2)
	}
	return bad
}

// off is how far a height lies from where the parts may part.
func (t *whereTask) off(v float64) float64 { return math.Max(0, math.Max(t.lo-v, v-t.hi)) }

func (t *whereTask) mark(a *Answer) Result {
	v, _ := a.readNumber(lengthUnits...)
	off := t.off(v)
	code, mark := "within", Right
	switch {
	case off <= t.tol:
	case off <= t.close && v > t.hi:
		code, mark = "nearHigh", Close
	case off <= t.close:
		code, mark = "nearLow", Close
	case v < 0 || v > t.height:
		code, mark = "offForm", NotYet
	case math.Abs(v-t.height/2) <= 0.51:
		code, mark = "half", NotYet
	case math.Abs(v-t.wide.R) <= 0.51 || math.Abs(v-2*t.wide.R) <= 0.51:
		code, mark = "radius", NotYet
	case v > t.hi:
		code, mark = "tooHigh", NotYet
	default:
		code, mark = "tooLow", NotYet
	}
	pic, sticks := t.sticks(v)
	r := result("where", mark, code, "v", v, "lo", t.lo, "hi", t.hi, "off", off, "h", t.height,
		"part", say("part."+pic.Part), "depth", hundredths(pic.Depth), "z", pic.Z)
	if sticks && mark != Right {
		r.Pictures = []Picture{pic}
	}
	return r
}

// sticks is what sticks when the parts meet at height v.
func (t *whereTask) sticks(v float64) (Picture, bool) {
	part, pull := "lower", release.Down
	if v < t.lo {
		part, pull = "upper", release.Up
	}
	var best Picture
	best.Part = part
	l, err := lookAt(t.job, v)
	if err != nil {
		return best, false
	}
	k, gap := 0, math.Inf(1)
	for i, p := range l.m.Pts[:l.end+1] { // the outermost point at that height
		if d := math.Abs(p.Z - v); d < gap-1e-6 || d < gap+1e-6 && p.R > l.m.Pts[k].R {
			k, gap = i, d
		}
	}
	a, b := 0, k
	if pull == release.Up {
		a, b = k, l.end
	}
	for _, c := range l.caught(pull, a, b) {
		if c.depth > best.Depth {
			best = c.picture(part, pull)
		}
	}
	return best, best.Depth > 0
}

func (t *whereTask) hint(level int) Hint {
	switch level {
	case 1:
		return Hint{Words: say("where.hint1")}
	case 2:
		return Hint{Words: say("where.hint2")}
	}
	lo, hi := math.Max(0, t.middle()-0.12*t.height), math.Min(t.height, t.middle()+0.09*t.height)
	return Hint{Words: say("where.hint3", "lo", plain(math.Round(lo)), "hi", plain(math.Round(hi))), Heights: []float64{math.Round(lo), math.Round(hi)}}
}

func (t *whereTask) solve() Solution {
	v := tenth(t.middle())
	low, _ := t.sticks(math.Max(0, t.lo-2*t.close))
	high, _ := t.sticks(math.Min(t.height, t.hi+2*t.close))
	s := Solution{Answer: Answer{Value: Typed(one(v)), Unit: "mm"}, Short: say("where.short", "lo", t.lo, "hi", t.hi)}
	s.Steps = []words.Text{say("where.step1"), say("where.step2", "r", t.wide.R, "lo", t.lo, "hi", t.hi), say("where.step3")}
	for _, p := range [2]Picture{low, high} {
		if p.Depth > 0 {
			s.Pictures = append(s.Pictures, p)
			s.Steps = append(s.Steps, p.Words)
		}
	}
	s.Slips = []words.Text{say("where.slip.half", "z", t.height/2), say("where.slip.radius", "r", t.wide.R)}
	return s
}
