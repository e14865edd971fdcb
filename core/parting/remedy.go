package parting

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/words"
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
	onEdge := false
	for _, k := range [2]int{best.K1, best.K2} {
		onEdge = onEdge || k > 0 && k < l.end && l.m.Corner[k] && math.Abs(l.m.Pts[k].Z-to) < 1e-6
	}
	r.Text = words.Say("Parted at %.1f mm, %s: %s.", from, c.Name(), c.Against())
	if onEdge {
		r.Remedy = words.Say("Move the parting to the edge at %.1f mm above the foot: %s.", to, goes(c))
	} else {
		r.Remedy = words.Say("Move the parting to %.1f mm above the foot: %s.", to, goes(c))
	}
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
