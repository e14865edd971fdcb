package parting

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"moldwright/core/form"
	"moldwright/core/job"
)

// The nearest form that lets go in one part, or in a lower and an upper one.
//
// A lower part alone holds every place of the contour from which the ray
// straight down is free, and so all of it if and only if the radius never falls
// on the way from the axis under the foot to the rim, through recess, foot ring,
// grooves and flanges alike. With a least draft t, each stretch must gain
// |dz| tan t in radius: a recess narrows upward by it, a wall widens upward by
// it. With an upper part the radius gains up to the parting and loses after it.
// Heights, their order and the kind of each node stay; only radii change. The
// change is least in the sense of least squares, each node weighted by half the
// heights of the two stretches beside it: arc length as seen from the side,
// since along a level stretch a change of radius moves nothing but its end.
//
// Every stretch keeps the least draft: the share that may rub decides whether a
// form has to change at all, and is not used up. Straight stretches obey exactly
// and the result is the optimum. A curve
// through smooth nodes neither bulges nor hollows between nodes, but may stand
// steeper there than its chord; so each result is judged as the plan judges it,
// and where it is not clear the stretches that rub are asked for more, until it
// is. There the result is near the least change and not proven least.

// Nearest is a form that lets go, and how far it is from the one given.
type Nearest struct {
	// Nodes are at the job's own size, in the same order, with the same heights
	// and corners as the job's.
	Nodes []job.Node `json:"-"`
	// MaxChangeMM is the largest change of a radius and RMSChangeMM the root of the
	// mean square by weight of all nodes off the axis, mm at mold size.
	MaxChangeMM float64 `json:"maxChange"`
	RMSChangeMM float64 `json:"rmsChange"`
	// AtZ is where the largest change is, mm above the foot at mold size.
	AtZ float64 `json:"atZ"`
	// PartingHeight is where the two parts meet, mm above the foot at mold size;
	// nil for one part.
	PartingHeight *float64 `json:"partingHeight"`
	Places        []Change `json:"places"`
}

// Change is a stretch of the profile whose radii all grow, or all shrink, by
// more than leastTold.
type Change struct {
	ZFrom float64 `json:"zFrom"` // mm above the foot at mold size
	ZTo   float64 `json:"zTo"`
	AtZ   float64 `json:"atZ"`
	// By is the largest change in mm at mold size, negative inward; it is at AtZ.
	By float64 `json:"by"`
}

const (
	// leastTold is the change in mm below which a node counts as staying.
	leastTold = 0.001
	// overSlope is added to the tangent of the least draft: at 100 mm of wall
	// it makes 0.0001 micron, and keeps rounding from undercutting the draft.
	overSlope = 1e-9
	// levelGap is the least length in mm that a level stretch keeps.
	levelGap = 0.01
	// leastRim is the least radius in mm that a rim keeps.
	leastRim = 1
	// moreRounds is how often the stretches that rub are asked for more, each
	// time by moreGrowth times what it was before; tryPeaks is how many parting
	// places are tried so.
	moreRounds = 30
	moreGrowth = 1.25
	tryPeaks   = 12
)

// Apply is a copy of the job with the nearest form's nodes. A single parting
// height that the job holds goes to where the two parts now meet.
func (n *Nearest) Apply(j *job.Job) *job.Job {
	out := *j
	out.Form.Outer = n.Nodes
	if n.PartingHeight != nil && len(j.Mold.PartingHeights) == 1 {
		out.Mold.PartingHeights = []float64{*n.PartingHeight}
	}
	return &out
}

// NearestForm finds the smallest change of radii that gives every stretch the
// least draft in degrees under the scheme, "one" or "two", and judges the result
// clear with the job's share that may rub. A form that is clear already stays as it is. Errors are job.Fault or
// job.Faults: a bad request, a form that cannot be built, or one that no change
// of radii alone frees.
func NearestForm(j *job.Job, scheme string, leastDraftDeg float64, mouth Mouth) (*Nearest, error) {
	if scheme != "one" && scheme != "two" {
		return nil, job.Faultf("badValue", "scheme", "scheme is %q; the nearest form is found for one or two.", scheme)
	}
	if !(leastDraftDeg >= 0 && leastDraftDeg <= 45) {
		return nil, job.Faultf("badValue", "leastDraft", "The least draft is %g degrees; it lies between 0 and 45.", leastDraftDeg)
	}
	given := *j
	given.Rules.LeastDraft = leastDraftDeg
	if len(j.Mold.PartingHeights) == 1 {
		given.Mold.PartingHeights = nil
	}
	now, err := lookAt(&given, mouth, scheme)
	if err != nil {
		return nil, err
	}
	s := newSearch(&given, scheme, mouth, now)
	if now.clear(scheme) {
		return s.tell(j.Form.Outer, now), nil
	}
	if scheme == "one" {
		if now.m.Closed {
			return nil, job.Faultf("closedForm", "form.outer", "The profile closes at the top, which holds a lower part alone whatever the wall does; ask for two parts, or end the profile at its rim.")
		}
		last := len(s.r) - 1
		for i, z := range s.z[:last] {
			if z >= s.z[last] { // the rim comes outermost, so its disc would cut the pot there
				return nil, job.Faultf("rimNotHighest", fmt.Sprintf("form.outer[%d]", i), "The profile is as high as its rim at point %d already and runs on, level, inward or down; a lower part alone cannot hold what lies beyond. End the outer profile there.", i+1)
			}
		}
		if nodes, l := s.clearAt(last); l != nil {
			return s.tell(nodes, l), nil
		}
		return nil, s.fault()
	}
	for _, k := range s.peaks() {
		if nodes, l := s.clearAt(k); l != nil {
			return s.tell(nodes, l), nil
		}
	}
	return nil, s.fault()
}

// search is one request.
type search struct {
	job       *job.Job
	scheme    string
	mouth     Mouth
	scale     float64   // from the nodes to mold size
	z         []float64 // of the nodes, as the mold stands
	turned    bool      // the form opens downward and stands turned over in the mold
	slope     float64   // tangent of the least draft
	r, weight []float64 // of the nodes, at mold size
	rise      []float64 // |dz| of the stretch after each node, mold size
	gap       []float64 // what that stretch must gain by the least draft
	closed    bool
	refused   error // by the form, of the last try
}

// newSearch takes the regression's figures from the nodes of a job, looked at.
func newSearch(j *job.Job, scheme string, mouth Mouth, now *look) *search {
	nodes := j.Form.Outer
	n := len(nodes)
	s := &search{job: j, scheme: scheme, mouth: mouth, scale: j.Scale(), turned: now.m.Turned,
		slope: math.Tan(j.Rules.LeastDraft*math.Pi/180) + overSlope}
	up := s.scale
	if s.turned {
		up = -up
	}
	s.r, s.z, s.weight = make([]float64, n), make([]float64, n), make([]float64, n)
	s.rise = make([]float64, n-1)
	total := 0.0
	for i := range nodes {
		s.r[i], s.z[i] = nodes[i].R*s.scale, nodes[i].Z*up+now.m.Lift
		if i > 0 {
			s.rise[i-1] = math.Abs(nodes[i].Z-nodes[i-1].Z) * s.scale
			s.weight[i-1] += s.rise[i-1] / 2
			s.weight[i] += s.rise[i-1] / 2
			total += s.rise[i-1]
		}
	}
	for i := range s.weight { // within a level stretch a node still holds its place, weakly
		s.weight[i] = math.Max(s.weight[i], 1e-3*total/float64(n))
	}
	s.closed = nodes[n-1].R == 0
	s.gap = s.gaps(nil, 0)
	return s
}

// gaps are what each stretch must gain, with a share of more added to the
// slopes.
func (s *search) gaps(more []float64, share float64) []float64 {
	gap := make([]float64, len(s.rise))
	for i, dz := range s.rise {
		slope := s.slope
		if more != nil {
			slope += share * more[i]
		}
		gap[i] = slope * dz
		if dz == 0 {
			gap[i] = math.Min(levelGap, math.Abs(s.r[i+1]-s.r[i])/2)
		}
	}
	return gap
}

func (s *search) radii(gap []float64) *radii {
	return newRadii(s.r, s.weight, gap, s.closed, math.Min(leastRim, s.r[len(s.r)-1]))
}

// peaks are the nodes at which two parts can meet, nearest form first, cut to
// those worth trying. The profile must turn left there, so that the upper part's
// contour sets out above the lower part's.
func (s *search) peaks() []int {
	p := s.radii(s.gap)
	type peak struct {
		k    int
		cost float64
	}
	var all []peak
	for k := 1; k < len(s.r)-1; k++ {
		_, cost := p.peak(k)
		all = append(all, peak{k, cost})
	}
	slices.SortStableFunc(all, func(a, b peak) int { return cmp.Compare(a.cost, b.cost) })
	var out []int
	for _, q := range all[:min(len(all), 4*tryPeaks)] {
		if len(out) == tryPeaks {
			break
		}
		if s.turnsLeft(p, q.k) {
			out = append(out, q.k)
		}
	}
	return out
}

// turnsLeft tells whether the fit with its peak at node k turns left there.
func (s *search) turnsLeft(p *radii, k int) bool {
	fit := p.peaked(k)
	a := form.Point{R: fit[k] - fit[k-1], Z: s.z[k] - s.z[k-1]}
	b := form.Point{R: fit[k+1] - fit[k], Z: s.z[k+1] - s.z[k]}
	return a.R*b.Z-a.Z*b.R > 0
}

// clearAt is the nearest form with its peak at node k that is judged clear, or
// nil. For one part the peak is the rim.
func (s *search) clearAt(k int) ([]job.Node, *look) {
	n := len(s.r)
	more := make([]float64, n-1)
	step := math.Max(s.slope, 0.01) / 2
	for round := range moreRounds {
		nodes, l := s.try(k, more, 1)
		if l == nil {
			return nil, nil
		}
		if l.clear(s.scheme) {
			if round == 0 {
				return nodes, l
			}
			return s.leastShare(k, more, nodes, l)
		}
		rubs := l.rubShares(n, k, s.job.Rules.LeastDraft)
		step *= moreGrowth
		any := false
		for i := range more {
			if rubs[i] > 0 && s.rise[i] > 0 {
				more[i] += step * math.Max(rubs[i], 0.05)
				any = true
			}
		}
		if !any {
			break
		}
	}
	return nil, nil
}

// leastShare looks for the least share of the added slopes that is still clear.
func (s *search) leastShare(k int, more []float64, nodes []job.Node, l *look) ([]job.Node, *look) {
	low, high := 0.0, 1.0
	for range 8 {
		mid := (low + high) / 2
		if nn, ll := s.try(k, more, mid); ll != nil && ll.clear(s.scheme) {
			nodes, l, high = nn, ll, mid
		} else {
			low = mid
		}
	}
	return nodes, l
}

// try fits the radii with a share of the added slopes and judges the form; nil
// where the form cannot be built so.
func (s *search) try(k int, more []float64, share float64) ([]job.Node, *look) {
	p := s.radii(s.gaps(more, share))
	var fit []float64
	if k == len(s.r)-1 {
		fit = p.rising()
	} else {
		fit = p.peaked(k)
	}
	trial := *s.job
	trial.Form.Outer = slices.Clone(s.job.Form.Outer)
	for i := range trial.Form.Outer {
		if math.Abs(fit[i]-s.r[i]) > 1e-9 { // nodes that stay, stay to the last bit
			trial.Form.Outer[i].R = fit[i] / s.scale
		}
	}
	l, err := lookAt(&trial, s.mouth, s.scheme)
	if err == nil && l.m.Turned != s.turned {
		err = job.Faultf("turnsOver", "form.outer", "The form would open the other way.")
	}
	if err != nil {
		s.refused = err
		return nil, nil
	}
	return trial.Form.Outer, l
}

func (s *search) fault() error {
	parts := "in one part"
	if s.scheme == "two" {
		parts = "in a lower and an upper part"
	}
	why := "some curved stretch keeps too little draft however far it is moved; make its nodes corners, or give it more nodes"
	if s.refused != nil {
		text := s.refused.Error()
		why = "with such radii " + strings.ToLower(text[:1]) + text[1:]
	}
	return job.Faultf("noNearestForm", "form.outer", "No change of radii alone makes this form let go %s with %.1f° of draft: %s", parts, s.job.Rules.LeastDraft, why)
}

// tell measures the change from the job's nodes to the new ones.
func (s *search) tell(nodes []job.Node, l *look) *Nearest {
	out := &Nearest{Nodes: slices.Clone(nodes), Places: []Change{}}
	if s.scheme == "two" {
		h := l.scheme("two").PartingHeights[0]
		out.PartingHeight = &h
	}
	last := len(nodes) - 1
	if s.closed {
		last--
	}
	sum, weight := 0.0, 0.0
	var open *Change
	for i := 1; i <= last; i++ {
		by := nodes[i].R*s.scale - s.r[i]
		if nodes[i].R == s.job.Form.Outer[i].R {
			by = 0
		}
		z := s.z[i]
		sum += s.weight[i] * by * by
		weight += s.weight[i]
		if math.Abs(by) > out.MaxChangeMM {
			out.MaxChangeMM, out.AtZ = math.Abs(by), z
		}
		if math.Abs(by) <= leastTold {
			open = nil
			continue
		}
		if open == nil || open.By*by < 0 {
			out.Places = append(out.Places, Change{ZFrom: z, ZTo: z})
			open = &out.Places[len(out.Places)-1]
		}
		open.ZFrom, open.ZTo = math.Min(open.ZFrom, z), math.Max(open.ZTo, z)
		if math.Abs(by) > math.Abs(open.By) {
			open.AtZ, open.By = z, by
		}
	}
	if out.MaxChangeMM > 0 {
		out.RMSChangeMM = math.Sqrt(sum / weight)
	}
	return out
}
