package exercise

import (
	"math"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Kind size: true size and oversize from shrinkage. Drying shrinkage is taken
// on the wet length and firing shrinkage on the dry one (ASTM C326), so that
// 1 - S = (1 - d)(1 - f), and a mold is made 1/(1 - S) times the fired size.

const (
	lengthTol      = 0.2   // mm
	lengthTolShare = 0.001 // of the length, where that is more
	percentTol     = 0.1   // percent points
	sizeNear       = 5     // times the tolerance is close
)

type sizeTask struct {
	*look
	variant string
	drying  float64 // percent; 0 where only the total is given
	firing  float64
	total   float64 // percent
	length  float64 // the given length, mm
	bar     [3]float64
	truth   float64
	percent bool // the answer is in percent
	slips   []slip
}

// newSize works out the truth and the slips of a variant:
//
//	enlarge    fired length, total shrinkage -> mold
//	shrink     length in the mold, total shrinkage -> fired
//	total      drying and firing shrinkage -> total shrinkage
//	both       fired length, drying and firing shrinkage -> mold
//	oversize   total shrinkage -> percent to enlarge by
//	bar        marks on a test bar wet, dry, fired -> firing shrinkage
//	barMold    the same bar, fired length -> mold
func newSize(l *look, variant string, length, drying, firing, total float64, bar [3]float64) *sizeTask {
	t := &sizeTask{look: l, variant: variant, length: length, drying: drying, firing: firing, total: total, bar: bar}
	if variant == "bar" || variant == "barMold" {
		t.drying, t.firing, t.total = 100*(1-bar[1]/bar[0]), 100*(1-bar[2]/bar[1]), 100*(1-bar[2]/bar[0])
	} else if drying > 0 || firing > 0 {
		t.total = 100 * (1 - (1-drying/100)*(1-firing/100))
	}
	d, f, s := t.drying/100, t.firing/100, t.total/100
	switch variant {
	case "enlarge", "both", "barMold":
		t.truth = length / (1 - s)
		t.slips = []slip{{"unchanged", length}, {"wrongWay", length * (1 - s)}, {"enlarged", length * (1 + s)}}
		if variant != "enlarge" {
			t.slips = append(t.slips, slip{"added", length / (1 - d - f)}, slip{"added", length * (1 + d + f)},
				slip{"onlyDrying", length / (1 - d)}, slip{"onlyFiring", length / (1 - f)})
		}
	case "shrink":
		t.truth = length * (1 - s)
		t.slips = []slip{{"unchanged", length}, {"wrongWay", length / (1 - s)}, {"divided", length / (1 + s)}}
	case "total":
		t.truth, t.percent = 100*s, true
		t.slips = []slip{{"added", 100 * (d + f)}, {"onlyDrying", 100 * d}, {"onlyFiring", 100 * f}, {"kept", 100 * (1 - s)}}
	case "oversize":
		t.truth, t.percent = 100*s/(1-s), true
		t.slips = []slip{{"same", 100 * s}, {"factor", 100 / (1 - s)}, {"kept", 100 * (1 - s)}}
	case "bar":
		t.truth, t.percent = 100*f, true
		t.slips = []slip{{"onWet", 100 * (bar[1] - bar[2]) / bar[0]}, {"wholeBar", 100 * s}, {"onlyDrying", 100 * d}, {"onFired", 100 * (bar[1] - bar[2]) / bar[2]}}
	}
	return t
}

func (t *sizeTask) tol() float64 {
	if t.percent {
		return percentTol
	}
	return math.Max(lengthTol, lengthTolShare*t.truth)
}

func makeSize(first, g *Gen, difficulty int) task {
	variants := [][]string{{"enlarge", "shrink"}, {"total", "both", "oversize"}, {"bar", "barMold", "both", "oversize"}}[difficulty-1]
	variant := pick(first, variants...)
	l, err := family(g, pick(g, "bowl", "cup", "jar", "bottle", "vase", "goblet", "keeled")).look()
	if err != nil {
		return nil
	}
	half := func(lo, hi int) float64 { return float64(g.Between(2*lo, 2*hi)) / 2 }
	d, f, s := half(4, 8), half(5, 10), half(8, 16)
	if variant != "total" && variant != "both" {
		d, f = 0, 0
	}
	bar := [3]float64{100, 100 - half(4, 8), 0}
	bar[2] = bar[1] - half(5, 10)
	t := newSize(l, variant, float64(g.Between(100, 300)), d, f, s, bar)
	for _, k := range t.slips {
		if math.Abs(k.value-t.truth) < 2.27*t.tol() {
			return nil
		}
	}
	return t
}

func ownSize(j *job.Job, g *Gen, difficulty int) (task, error) {
	l, err := lookAt(j)
	if err != nil {
		return nil, err
	}
	s := j.Clay.Shrinkage()
	if s < 0.005 {
		return nil, notFit("size")
	}
	fired := tenth(l.height * (1 - s))
	d, f := j.Clay.DryingShrinkage, j.Clay.FiringShrinkage
	switch difficulty {
	case 1:
		return newSize(l, "enlarge", fired, 0, 0, tenth(100*s), [3]float64{}), nil
	case 2:
		return newSize(l, pick(g, "both", "total"), fired, d, f, 0, [3]float64{}), nil
	}
	return newSize(l, "both", fired, d, f, 0, [3]float64{}), nil
}

func (t *sizeTask) units() []string {
	if t.percent {
		return []string{"%"}
	}
	return lengthUnits
}

func (t *sizeTask) args() []any {
	return []any{"mm", plain(t.length), "d", plain(t.drying), "f", plain(t.firing), "s", plain(t.total), "b0", plain(t.bar[0]), "b1", plain(t.bar[1]), "b2", plain(t.bar[2])}
}

func (t *sizeTask) pose(q *Question) {
	q.Job = t.job
	q.Text = say("size.text."+t.variant, t.args()...)
	q.Answer = []Field{{ID: "value", Type: TypeNumber, Words: say("ask.size." + map[bool]string{false: "length", true: "percent"}[t.percent]), Units: t.units()}}
	unit := words.Plain("mm")
	if t.percent {
		unit = say("points")
	}
	q.Tolerance = say("tolerance.size", "tol", plain(t.tol()), "near", plain(sizeNear*t.tol()), "unit", unit)
	q.Drawing = t.drawing()
}

func (t *sizeTask) check(a *Answer) *Invalid {
	v, bad := a.readNumber(t.units()...)
	if bad != nil {
		return bad
	}
	return tenfold(v, t.truth, t.tol())
}

func (t *sizeTask) mark(a *Answer) Result {
	v, _ := a.readNumber(t.units()...)
	off := math.Abs(v - t.truth)
	tell := func(mark, code string) Result {
		return result("size", mark, code, append(t.args(), "v", hundredths(v), "off", hundredths(off), "unit", t.units()[0])...)
	}
	if off <= t.tol()+1e-9 {
		return tell(Right, "within")
	}
	for _, s := range t.slips {
		if math.Abs(v-s.value) <= t.tol() {
			return tell(NotYet, s.code)
		}
	}
	if off <= sizeNear*t.tol() {
		return tell(Close, "near")
	}
	return tell(NotYet, "far")
}

func (t *sizeTask) hint(level int) Hint {
	return Hint{Words: say("size.hint"+digit(level)+"."+t.variant, t.args()...)}
}

func (t *sizeTask) solve() Solution {
	unit := t.units()[0]
	v := hundredths(t.truth)
	s := Solution{Answer: Answer{Value: Typed(two(t.truth)), Unit: unit}, Short: say("size.short", "v", v, "unit", unit)}
	s.Steps = []words.Text{say("size.step."+t.variant, append(t.args(), "v", v)...), say("size.why")}
	for _, k := range t.slips {
		s.Slips = append(s.Slips, say("size.slip", "v", hundredths(k.value), "unit", unit, "why", say("size."+k.code, append(t.args(), "v", hundredths(k.value), "unit", unit, "off", "")...)))
	}
	return s
}
