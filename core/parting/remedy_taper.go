package parting

import (
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Tapers: a run of stretches with too little draft is given it by moving one of
// its ends, carried out on the radii and judged.

// tapers tries every run of stretches without enough draft, at either end.
func (f *remedies) tapers(k int) {
	s := f.s
	last := len(s.r) - 1
	bad := func(i int) bool { return f.gain(s.r, i, k) < s.gap[i]*(1-1e-6) }
	for a := 0; a < last; {
		if !bad(a) {
			a++
			continue
		}
		b := a + 1
		for b < last && b != k && bad(b) {
			b++
		}
		for _, far := range [2]bool{false, true} {
			f.taper(a, b, k, far)
		}
		a = b
	}
}

// taper tries to give the stretches from node a to node b draft by moving their
// far end, or their near one, and whatever that end would then run into.
func (f *remedies) taper(a, b, k int, far bool) {
	smooth := false
	for i := a; i <= b; i++ {
		smooth = smooth || !f.job.Form.Outer[i].Corner
	}
	for _, more := range tapers {
		if f.trials >= mostTrials {
			return
		}
		r, ok := f.moved(a, b, k, far, more)
		if !ok || !f.local(r, a, b) {
			return
		}
		out := *f.job
		out.Form.Outer = slices.Clone(f.job.Form.Outer)
		for i := range r {
			if r[i] != f.s.r[i] {
				out.Form.Outer[i].R = r[i] / f.s.scale
			}
		}
		f.trials++
		l, err := lookAt(&out, f.mouth, f.s.scheme)
		if err != nil || l.m.Turned != f.s.turned {
			return
		}
		if l.clear(f.s.scheme) {
			f.tell(a, b, k, r, &out, l.scheme(f.s.scheme))
			return
		}
		if !smooth {
			return
		}
	}
}

// local tells whether the largest change lies on the stretches from node a to
// node b, and is no more than a remedy may be.
func (f *remedies) local(r []float64, a, b int) bool {
	widest, by, at := 0.0, 0.0, a
	for i := range r {
		widest = math.Max(widest, f.s.r[i])
		if d := math.Abs(r[i] - f.s.r[i]); d > by+1e-9 {
			by, at = d, i
		}
	}
	return by <= mostShare*widest && at >= a && at <= b
}

// moved are the radii after a taper, and whether they can be.
func (f *remedies) moved(a, b, k int, far bool, more float64) ([]float64, bool) {
	s := f.s
	r := slices.Clone(s.r)
	last := len(r) - 1
	from, to := 0, k // the side of the peak on which the stretch lies
	if a >= k {
		from, to = k, last
	}
	toward := 1.0 // the sign of the gain
	if a >= k {
		toward = -1
	}
	need := func(i int) float64 {
		if i >= a && i < b {
			return s.gap[i] * more
		}
		return s.gap[i]
	}
	if far {
		for i := a; i < to && (i < b || f.gain(r, i, k) < s.gap[i]); i++ {
			if f.gain(r, i, k) < need(i) {
				r[i+1] = r[i] + toward*need(i)
			}
		}
	} else {
		for i := b - 1; i >= from && (i >= a || f.gain(r, i, k) < s.gap[i]); i-- {
			if f.gain(r, i, k) < need(i) {
				r[i] = r[i+1] - toward*need(i)
			}
		}
	}
	for i := range r {
		if r[i] < 0 || i > 0 && i < last && r[i] == 0 {
			return nil, false
		}
	}
	return r, r[0] == 0 && (!s.closed || r[last] == 0)
}

// tell stores a taper that was judged clear.
func (f *remedies) tell(a, b, k int, r []float64, out *job.Job, sc *Scheme) {
	s := f.s
	degrees := func(r []float64, i int) float64 {
		return math.Atan2(f.gain(r, i, k), s.rise[i]) * 180 / math.Pi
	}
	most, before, after := a, 90.0, 90.0
	low, high := math.Min(s.z[a], s.z[b]), math.Max(s.z[a], s.z[b])
	for i := range r {
		if r[i] != s.r[i] {
			low, high = math.Min(low, s.z[i]), math.Max(high, s.z[i])
		}
		if math.Abs(r[i]-s.r[i]) > math.Abs(r[most]-s.r[most]) {
			most = i
		}
	}
	for i := a; i < b; i++ {
		before, after = math.Min(before, degrees(s.r, i)), math.Min(after, degrees(r, i))
	}
	by := r[most] - s.r[most]
	foot := b <= f.foot()
	code := "taper"
	if foot {
		code = "tiltFoot"
	}
	part := "lower"
	if a >= k {
		part = "upper"
	}
	rem := Remedy{Scheme: sc.ID, Saves: f.saves(sc.Count), Nodes: out.Form.Outer, PartingHeights: out.Mold.PartingHeights}
	rem.Finding = Finding{Code: code, Part: part, ZFrom: low, ZTo: high, Measure: math.Abs(by), Unit: "mm"}
	zFrom, zTo, asked := math.Min(s.z[a], s.z[b]), math.Max(s.z[a], s.z[b]), f.job.Rules.LeastDraft
	switch upper := part == "upper"; {
	case foot && upper:
		rem.Text = words.Say("The foot wall between %.1f and %.1f mm has %.1f° of draft for the upper part, less than %.1f°.", zFrom, zTo, before, asked)
	case foot:
		rem.Text = words.Say("The foot wall between %.1f and %.1f mm has %.1f° of draft for the lower part, less than %.1f°.", zFrom, zTo, before, asked)
	case upper:
		rem.Text = words.Say("The wall between %.1f and %.1f mm has %.1f° of draft for the upper part, less than %.1f°.", zFrom, zTo, before, asked)
	default:
		rem.Text = words.Say("The wall between %.1f and %.1f mm has %.1f° of draft for the lower part, less than %.1f°.", zFrom, zTo, before, asked)
	}
	move := words.Say("Draw it out by %.1f mm at %.1f mm above the foot, a taper of %.1f°: %s.", by, s.z[most], after, goes(sc))
	if by < 0 {
		move = words.Say("Draw it in by %.1f mm at %.1f mm above the foot, a taper of %.1f°: %s.", -by, s.z[most], after, goes(sc))
	}
	gain := words.Say("That saves %s parts.", count(rem.Saves))
	switch {
	case f.fewest == math.MaxInt:
		gain = words.Say("Now no scheme does.")
	case rem.Saves == 1:
		gain = words.Say("That saves a part.")
	}
	rem.Remedy = words.Join(" ", move, gain)
	f.keep(rem)
}

// goes tells that a scheme's parts let go.
func goes(s *Scheme) words.Text {
	if s.Count == 1 {
		return words.Say("%s then lets go", s.Name())
	}
	return words.Say("%s then let go", s.Name())
}
