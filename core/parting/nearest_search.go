package parting

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
)

// The search for the nearest form: the regression's figures from the nodes, the
// places where two parts can meet in the order of their cost, and the rounds in
// which curved stretches that still rub are asked for more draft.

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
		s.weight[i] = max(s.weight[i], 1e-3*total/float64(n))
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
			gap[i] = min(levelGap, math.Abs(s.r[i+1]-s.r[i])/2)
		}
	}
	return gap
}

func (s *search) radii(gap []float64) *radii {
	return newRadii(s.r, s.weight, gap, s.closed, min(leastRim, s.r[len(s.r)-1]))
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
	step := max(s.slope, 0.01) / 2
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
				more[i] += step * max(rubs[i], 0.05)
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
	const code, field = "noNearestForm", "form.outer"
	draft, refused := s.job.Rules.LeastDraft, s.refused
	switch two := s.scheme == "two"; {
	case two && refused != nil:
		return job.Faultf(code, field, "No change of radii alone makes this form let go in a lower and an upper part with %.1f° of draft. With such radii: %s", draft, job.Words(refused))
	case two:
		return job.Faultf(code, field, "No change of radii alone makes this form let go in a lower and an upper part with %.1f° of draft: some curved stretch keeps too little draft however far it is moved; make its nodes corners, or give it more nodes.", draft)
	case refused != nil:
		return job.Faultf(code, field, "No change of radii alone makes this form let go in one part with %.1f° of draft. With such radii: %s", draft, job.Words(refused))
	}
	return job.Faultf(code, field, "No change of radii alone makes this form let go in one part with %.1f° of draft: some curved stretch keeps too little draft however far it is moved; make its nodes corners, or give it more nodes.", draft)
}
