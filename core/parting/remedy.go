package parting

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"moldwright/core/job"
)

// Local remedies: what a maker would try first before a form is changed as a
// whole. Each is one stretch of the profile drawn in at one end or out at the
// other until it has the least draft, or a pinned parting moved to where it
// serves. Each is carried out on the nodes and judged as the plan judges; only
// those that then let go, in fewer parts than anything does now, are told. Remedies that need
// two places changed at once are left to the nearest form; so are those that
// would spare a cap beside side parts.

// Remedy is a change of one place after which a scheme is clear.
type Remedy struct {
	// Finding tells it: Code is taper, tiltFoot or moveParting, Measure the
	// largest change in mm at mold size, from ZFrom to ZTo.
	Finding
	// Scheme is clear after the change, with Saves parts fewer than the fewest
	// that are clear now; where none is, or a parting is moved, it may be 0.
	Scheme string `json:"scheme"`
	Saves  int    `json:"saves"`
	// Nodes are the job's with the change. PartingHeights are its pinned heights;
	// a single one is set free by a taper, since the form has changed under it.
	Nodes          []job.Node `json:"-"`
	PartingHeights []float64  `json:"-"`
}

// Apply is a copy of the job with the change made.
func (r *Remedy) Apply(j *job.Job) *job.Job {
	out := *j
	out.Form.Outer = r.Nodes
	out.Mold.PartingHeights = r.PartingHeights
	return &out
}

// A remedy is told only where it moves no radius by more than mostShare of the
// form's greatest radius, and none more than those of the stretch it is about:
// more is another form.
const (
	mostShare    = 0.2
	mostRemedies = 6
	mostTrials   = 100 // surveys made in search of remedies
)

// tapers are by how much more than the least draft's slope a stretch through
// smooth nodes is tapered, one after the other, until it is clear: its curve is
// steeper in places than its chords.
var tapers = []float64{1, 1.25, 1.5, 2, 3}

// Remedies finds local changes that save parts, against all schemes as judged
// on the job and the one chosen: most parts saved first, then the smallest
// change. A form that cannot be built has none.
func Remedies(j *job.Job, all []Scheme, chosen int, mouth Mouth) []Remedy {
	f := &remedies{job: j, mouth: mouth, fewest: math.MaxInt}
	for i := range all {
		if all[i].Verdict == Clear {
			f.fewest = min(f.fewest, all[i].Count)
		}
	}
	f.moveParting(&all[chosen])
	free := *j
	if len(j.Mold.PartingHeights) == 1 {
		free.Mold.PartingHeights = nil
	}
	f.job = &free
	for _, id := range [2]string{"one", "two"} {
		if i := Index(all, id); i < 0 || all[i].Verdict == Clear || all[i].Count >= f.fewest {
			continue
		}
		l, err := lookAt(&free, mouth, id)
		if err != nil || l.scheme(id) == nil || id == "one" && l.m.Closed {
			continue
		}
		f.look = l
		f.s = newSearch(&free, id, mouth, l)
		for _, k := range f.peaks() {
			f.tapers(k)
		}
	}
	slices.SortStableFunc(f.found, func(a, b Remedy) int {
		return cmp.Or(cmp.Compare(b.Saves, a.Saves), cmp.Compare(a.Measure, b.Measure))
	})
	return f.found[:min(len(f.found), mostRemedies)]
}

// remedies is one search for them.
type remedies struct {
	job    *job.Job
	mouth  Mouth
	fewest int // parts of the fewest that are clear now
	look   *look
	s      *search // the nodes' radii, rises and least gains
	trials int
	found  []Remedy
}

// moveParting tells where a pinned parting would serve better.
func (f *remedies) moveParting(c *Scheme) {
	if len(f.job.Mold.PartingHeights) == 0 || len(c.PartingHeights) != len(f.job.Mold.PartingHeights) || c.Verdict == Clear {
		return
	}
	free := *f.job
	free.Mold.PartingHeights = nil
	l, err := lookAt(&free, f.mouth, c.ID)
	if err != nil || !l.clear(c.ID) {
		return
	}
	best := l.scheme(c.ID)
	moved := free
	moved.Mold.PartingHeights = best.PartingHeights
	if l, err = lookAt(&moved, f.mouth, c.ID); err != nil || !l.clear(c.ID) {
		return
	}
	r := Remedy{Scheme: c.ID, Saves: f.saves(c.Count), Nodes: f.job.Form.Outer, PartingHeights: best.PartingHeights}
	r.Finding = Finding{Code: "moveParting", Part: best.Parts[0].Name, Unit: "mm"}
	at := 0
	for i, h := range best.PartingHeights {
		if by := math.Abs(h - c.PartingHeights[i]); by > r.Measure {
			r.Measure, at = by, i
		}
	}
	from, to := c.PartingHeights[at], best.PartingHeights[at]
	r.ZFrom, r.ZTo = math.Min(from, to), math.Max(from, to)
	place := "to"
	for _, k := range [2]int{best.K1, best.K2} {
		if k > 0 && k < l.end && l.m.Corner[k] && math.Abs(l.m.Pts[k].Z-to) < 1e-6 {
			place = "to the edge at"
		}
	}
	r.Text = fmt.Sprintf("Parted at %.1f mm, %s: %s.", from, c.Name(), c.Against())
	r.Remedy = fmt.Sprintf("Move the parting %s %.1f mm above the foot: %s.", place, to, goes(c))
	f.keep(r)
}

// saves is how many parts a scheme of so many saves; 0 where none is clear now.
func (f *remedies) saves(count int) int {
	if f.fewest == math.MaxInt {
		return 0
	}
	return max(0, f.fewest-count)
}

// keep stores a remedy, unless the like is there.
func (f *remedies) keep(r Remedy) {
	for _, o := range f.found {
		if o.Scheme == r.Scheme && slices.Equal(o.Nodes, r.Nodes) && slices.Equal(o.PartingHeights, r.PartingHeights) {
			return
		}
	}
	f.found = append(f.found, r)
}

// peaks are the nodes up to which the radius has to gain: the rim for one part;
// for two the judged seam, the widest node and the outer edge of the foot.
func (f *remedies) peaks() []int {
	last := len(f.s.r) - 1
	if f.s.scheme == "one" {
		return []int{last}
	}
	seam, widest := 0, 1
	for i := range f.look.scheme("two").K1 + 1 {
		seam = max(seam, f.look.m.Node[i])
	}
	for i := range last {
		if f.s.r[i] > f.s.r[widest] {
			widest = i
		}
	}
	out := []int{max(seam, 1), widest, f.foot()}
	slices.Sort(out)
	out = slices.Compact(out)
	return slices.DeleteFunc(out, func(k int) bool { return k < 1 || k >= last })
}

// foot is the outer edge of the foot: the last of the lowest nodes.
func (f *remedies) foot() int {
	low := 0
	for i, z := range f.s.z {
		if z <= f.s.z[low] {
			low = i
		}
	}
	return low
}

// gain is what the stretch after node i gains in radius in the sense that its
// pull asks for, with the peak at node k.
func (f *remedies) gain(r []float64, i, k int) float64 {
	if i < k {
		return r[i+1] - r[i]
	}
	return r[i] - r[i+1]
}

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
	way := "out"
	if by < 0 {
		way = "in"
	}
	what, code := "wall", "taper"
	if b <= f.foot() {
		what, code = "foot wall", "tiltFoot"
	}
	part := "lower"
	if a >= k {
		part = "upper"
	}
	rem := Remedy{Scheme: sc.ID, Saves: f.saves(sc.Count), Nodes: out.Form.Outer, PartingHeights: out.Mold.PartingHeights}
	rem.Finding = Finding{Code: code, Part: part, ZFrom: low, ZTo: high, Measure: math.Abs(by), Unit: "mm"}
	rem.Text = fmt.Sprintf("The %s between %.1f and %.1f mm has %.1f° of draft for the %s part, less than %.1f°.",
		what, math.Min(s.z[a], s.z[b]), math.Max(s.z[a], s.z[b]), before, part, f.job.Rules.LeastDraft)
	rem.Remedy = fmt.Sprintf("Draw it %s by %.1f mm at %.1f mm above the foot, a taper of %.1f°: %s.",
		way, math.Abs(by), s.z[most], after, goes(sc))
	switch {
	case f.fewest == math.MaxInt:
		rem.Remedy += " Now no scheme does."
	case rem.Saves == 1:
		rem.Remedy += " That saves a part."
	default:
		rem.Remedy += " That saves " + Count(rem.Saves) + " parts."
	}
	f.keep(rem)
}

// goes tells that a scheme's parts let go.
func goes(s *Scheme) string {
	if s.Count == 1 {
		return s.Name() + " then lets go"
	}
	return s.Name() + " then let go"
}
