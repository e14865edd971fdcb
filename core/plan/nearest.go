package plan

import (
	"encoding/json"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
)

// nearest gives the smallest change of the radii that makes the form let go in
// one part, or in a lower and an upper one.
func nearest(a *call) (any, [][]byte, error) {
	var q struct {
		Job        json.RawMessage `json:"job"`
		Scheme     string          `json:"scheme"`
		LeastDraft *float64        `json:"leastDraft"` // degrees; the job's where left out
	}
	if err := decode(a.json, &q); err != nil {
		return nil, nil, err
	}
	if err := choice("scheme", q.Scheme, "one", "two"); err != nil {
		return nil, nil, err
	}
	j, err := jobOf(q.Job)
	if err != nil {
		return nil, nil, err
	}
	draft := j.Rules.LeastDraft
	if q.LeastDraft != nil {
		if draft = *q.LeastDraft; !(draft >= 0 && draft <= 45) {
			return nil, nil, job.Faultf("badValue", "leastDraft", "leastDraft is %g; the least draft in degrees lies between 0 and 45.", draft)
		}
	}
	n, err := parting.NearestForm(j, q.Scheme, draft, mold.MouthRadius)
	if err != nil {
		return nil, nil, err
	}
	return struct {
		Job *job.Job `json:"job"`
		*parting.Nearest
	}{n.Apply(j), n}, nil, nil
}

// remedies gives the small local changes of form that would save a part, each
// with the job that makes it.
func remedies(a *call) (any, [][]byte, error) {
	p, err := planOf(a.json)
	if err != nil {
		return nil, nil, err
	}
	type remedy struct {
		parting.Finding
		Scheme string   `json:"scheme"`
		Saves  int      `json:"saves"` // parts
		Job    *job.Job `json:"job"`
	}
	out := []remedy{}
	for _, r := range p.remedies() {
		out = append(out, remedy{r.Finding, r.Scheme, r.Saves, r.Apply(p.work.job)})
	}
	return map[string]any{"remedies": out}, nil, nil
}

func (p *Plan) remedies() []parting.Remedy {
	all := make([]parting.Scheme, len(p.Schemes))
	chosen := 0
	for i := range p.Schemes {
		all[i] = *p.Schemes[i].Scheme
		if all[i].ID == p.Chosen {
			chosen = i
		}
	}
	return parting.Remedies(p.work.job, all, chosen, mold.MouthRadius)
}
