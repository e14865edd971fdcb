package parting

import (
	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/release"
)

// look is a job's form, surveyed and judged as the plan does it.
type look struct {
	m   *form.Meridian
	s   *release.Survey
	end int // the contour ends at this point of the meridian
	all []Scheme
}

// lookAt surveys the form and judges all schemes, or only the one with the id.
// Errors are job.Faults of the form.
func lookAt(j *job.Job, mouth Mouth, only string) (*look, error) {
	d, err := judgeJob(j, mouth, only)
	if err != nil {
		return nil, err
	}
	return &look{d.M, d.Survey, d.End, d.Schemes}, nil
}

// scheme is the judged scheme with the id, or nil.
func (l *look) scheme(id string) *Scheme {
	if i := Index(l.all, id); i >= 0 {
		return &l.all[i]
	}
	return nil
}

// clear tells whether the scheme with the id lets go.
func (l *look) clear(id string) bool {
	s := l.scheme(id)
	return s != nil && s.Verdict == Clear
}

// rubShares is, for the stretch after each of n nodes, the share of its area
// that has less than the draft in degrees when what comes before node peak is
// pulled down and what comes after it up.
func (l *look) rubShares(n, peak int, draft float64) []float64 {
	area, rub := make([]float64, n), make([]float64, n)
	node, edge := 0, release.NewEdges(draft)
	for i := range l.end {
		node = max(node, l.m.Node[i])
		pull := release.Down
		if node >= peak {
			pull = release.Up
		}
		a, _ := release.SpanSurface(l.m, i, pull, 0, edge, rub[node:node+1])
		area[node] += a
	}
	for i := range rub {
		if area[i] > 0 {
			rub[i] /= area[i]
		}
	}
	return rub
}
