package parting

import (
	"fmt"
	"math"
	"slices"

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
				return nil, job.Faultf("rimNotHighest", fmt.Sprintf("form.outer[%d]", i), "The profile is as high as its rim at node %d already and runs on, level, inward or down; a lower part alone cannot hold what lies beyond. End the outer profile there.", i+1)
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
