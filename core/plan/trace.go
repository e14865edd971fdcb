package plan

import (
	"moldwright/core/job"
	"moldwright/core/trace"
	"moldwright/core/words"
)

// traced is the op that turns a picture into a form. With draft it is the first
// outline alone.
func traced(a *call) (any, [][]byte, error) {
	q, err := trace.ReadRequest(a.json)
	if err != nil {
		return nil, nil, err
	}
	r, err := trace.Trace(q, a.blob)
	if err != nil {
		return nil, nil, err
	}
	if len(r.Form.Outer) > 0 {
		t := &job.Traced{RMS: r.Quality.RmsMM, Max: r.Quality.MaxMM, ErrorBand: r.Quality.ErrorBandMM, NotSeen: []job.Gap{}, Contour: r.Contour}
		for _, g := range r.Quality.NotSeen {
			t.NotSeen = append(t.NotSeen, job.Gap{ZFrom: g.ZFrom, ZTo: g.ZTo, Why: g.Why.In(words.English)})
		}
		r.Form.Traced = t
	}
	return r, nil, nil
}

// wire is the path that snaps to edges through the points of a request, for the
// page to show while they are set.
func wire(a *call) (any, [][]byte, error) {
	q, err := trace.ReadRequest(a.json)
	if err != nil {
		return nil, nil, err
	}
	path, err := trace.LiveWire(q, a.blob)
	return map[string]any{"path": path}, nil, err
}

// paths lists the paths of an SVG drawing, to choose one to read.
func paths(a *call) (any, [][]byte, error) {
	var q struct {
		Text  string `json:"text"`
		Units string `json:"units"`
	}
	if err := decode(a.json, &q); err != nil {
		return nil, nil, err
	}
	list, err := trace.ListSVG([]byte(q.Text), q.Units)
	return map[string]any{"paths": list}, nil, err
}

// drawn writes the form of a job as an SVG drawing at the size it is given in.
func drawn(a *call) (any, [][]byte, error) {
	p, err := planOf(a.json)
	if err != nil {
		return nil, nil, err
	}
	j := p.work.job
	text, err := trace.WriteSVG(j.Form.Outer, j.Name)
	return map[string]any{"name": fileName(j.Name, "profile") + ".svg"}, [][]byte{text}, err
}
