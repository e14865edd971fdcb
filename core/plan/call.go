package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"runtime/debug"
	"slices"
	"strings"

	"moldwright/core/casting"
	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/trace"
	"moldwright/core/words"
)

// Progress hears how far a long op has come, from 0 to 1, and with what.
type Progress func(fraction float64, words string)

// call is one request: its JSON, the bytes beside it, the language of the reply,
// and who hears how far it has come. The reply is put into the language when it
// is written; only an op that makes bytes of words needs to know it.
type call struct {
	json, blob []byte
	language   words.Language
	progress   Progress
}

// say tells how far a long op has come.
func (a *call) say(fraction float64, with words.Text) {
	if a.progress != nil {
		a.progress(fraction, with.In(a.language))
	}
}

// op is one entry of the boundary; its reply is to be written as JSON.
type op func(a *call) (reply any, blobs [][]byte, err error)

var ops = map[string]op{
	"read":     read,
	"plan":     makePlan,
	"bars":     bars,
	"figures":  figures,
	"solids":   solids,
	"nearest":  nearest,
	"remedies": remedies,
	"sheet":    sheets,
	"exercise": exercises,
	"paths":    paths,
	"drawn":    drawn,
	"trace":    traced,
	"wire":     wire,
}

// Call answers one request at the boundary, in the language that its key
// "language" names. It never panics: whatever goes wrong is told in the reply as
// {"error": {code, message, field, line}}, with every fault under "errors" where
// there are several.
func Call(name string, request, blob []byte, progress Progress) (reply []byte, blobs [][]byte) {
	l := words.English
	defer func() {
		if r := recover(); r != nil {
			reply, blobs = failure(l, job.Faultf("internal", "", "Something went wrong inside (%v). The job is unharmed; please keep it and report this.\n%s", r, place(debug.Stack()))), nil
		}
	}()
	f, ok := ops[name]
	if !ok {
		return failure(l, job.Faultf("unknownOp", "op", "There is no operation %q; there are %s.", name, strings.Join(slices.Sorted(maps.Keys(ops)), ", "))), nil
	}
	code, request := words.Cut(request)
	known, ok := words.Parse(code)
	if !ok {
		return failure(l, choice("language", code, "en", "de", "fr", "es")), nil
	}
	l = known
	out, blobs, err := f(&call{request, blob, l, progress})
	if err != nil {
		return failure(l, err), nil
	}
	words.Put(l, &out)
	if reply, err = encode(out); err != nil {
		return failure(l, job.Faultf("internal", "", "The reply could not be written: %s.", err)), nil
	}
	return reply, blobs
}

// place is the first line of a stack that lies in the core.
func place(stack []byte) string {
	for _, line := range strings.Split(string(stack), "\n") {
		if strings.Contains(line, "core/") && strings.Contains(line, ".go:") && !strings.Contains(line, "call.go") {
			line = line[strings.Index(line, "core/"):]
			return strings.Fields(line)[0]
		}
	}
	return ""
}

// failure is the reply that tells an error in the language: all of its faults, up
// to mostFaults.
func failure(l words.Language, err error) []byte {
	const mostFaults = 100
	var many job.Faults
	var one *job.Fault
	if !errors.As(err, &many) {
		if !errors.As(err, &one) {
			one = &job.Fault{Code: "internal", Message: job.Words(err)}
		}
		many = job.Faults{one}
	}
	out := struct {
		Error  *job.Fault `json:"error"`
		Errors job.Faults `json:"errors,omitempty"`
	}{Error: many[0]}
	if len(many) > 1 {
		out.Errors = many[:min(len(many), mostFaults)]
	}
	words.Put(l, &out)
	b, err := json.Marshal(out)
	if err != nil { // not reached: a Fault holds text and numbers only
		return []byte(`{"error":{"code":"internal","message":"The error could not be written."}}`)
	}
	return b
}

// decode reads a request, with unknown keys as errors.
func decode(request []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(request))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return job.Faultf("badRequest", "", "The request cannot be read. %s", job.Verbatim(err))
	}
	return nil
}

// jobOf reads the job that a request carries.
func jobOf(raw json.RawMessage) (*job.Job, error) {
	if len(raw) == 0 {
		return nil, job.Faultf("noJob", "job", "The request carries no job.")
	}
	return job.Read(raw)
}

func read(a *call) (any, [][]byte, error) {
	var q struct {
		Kind   string `json:"kind"`
		Text   string `json:"text"`
		Units  string `json:"units"`
		Across string `json:"across"` // radius, as without it, or diameter
		// Of a drawing: which path (the longest where left out), the axis's x in
		// mm (found where left out), and whether a level line at the top closes
		// the pot (open, closed or auto).
		Path *int     `json:"path"`
		Axis *float64 `json:"axis"`
		Top  string   `json:"top"`
	}
	if err := decode(a.json, &q); err != nil {
		return nil, nil, err
	}
	var j *job.Job
	var notes job.Faults
	switch q.Kind {
	case "salvage":
		var err error
		if j, notes, err = job.Salvage([]byte(q.Text)); err != nil {
			return nil, nil, err
		}
	case "job":
		var err error
		if j, err = job.Read([]byte(q.Text)); err != nil {
			return nil, nil, err
		}
	case "coordinates":
		if q.Across != "" && q.Across != "radius" && q.Across != "diameter" {
			return nil, nil, job.Faultf("badValue", "across", "across is %q; it takes radius or diameter.", q.Across)
		}
		nodes, faults := form.ReadRows(q.Text, form.Columns{Units: q.Units, Diameter: q.Across == "diameter"})
		if len(faults) > 0 {
			return nil, nil, faults
		}
		d := job.Defaults()
		j = &d
		j.Form.Outer = nodes
	case "svg":
		o := trace.SVGOptions{Units: q.Units, Path: -1, AxisMM: q.Axis, Top: q.Top}
		if q.Path != nil {
			o.Path = *q.Path
		}
		nodes, err := trace.ReadSVG([]byte(q.Text), o)
		if err != nil {
			return nil, nil, err
		}
		d := job.Defaults()
		j = &d
		j.Form.Outer = nodes
	default:
		return nil, nil, choice("kind", q.Kind, "coordinates", "svg", "job", "salvage")
	}
	saved, err := j.Write()
	if err != nil {
		return nil, nil, err
	}
	return struct {
		Job  *job.Job `json:"job"`
		Text string   `json:"text"` // the job as a file holds it
		// What a damaged job lost, at most the first 50.
		Notes job.Faults `json:"notes,omitempty"`
	}{j, string(saved), notes[:min(len(notes), 50)]}, nil, nil
}

// planned reads the job of a request and plans it.
func planned(raw json.RawMessage) (*Plan, error) {
	j, err := jobOf(raw)
	if err != nil {
		return nil, err
	}
	return Make(j)
}

// planOf plans the job of a request that holds nothing else.
func planOf(request []byte) (*Plan, error) {
	// every drag sends one: where it is sound it is read in one go
	if raw, ok := bytes.CutPrefix(request, []byte(`{"job":`)); ok && bytes.HasSuffix(raw, []byte("}")) {
		if j, err := job.Read(raw[:len(raw)-1]); err == nil {
			return Make(j)
		}
	}
	var q struct {
		Job json.RawMessage `json:"job"`
	}
	if err := decode(request, &q); err != nil {
		return nil, err
	}
	return planned(q.Job)
}

func makePlan(a *call) (any, [][]byte, error) {
	p, err := planOf(a.json)
	return p, nil, err
}

// figures gives the casting figures as rows, each with its formula and source.
func figures(a *call) (any, [][]byte, error) {
	p, err := planOf(a.json)
	if err != nil {
		return nil, nil, err
	}
	type row struct {
		casting.Row
		Heading words.Text `json:"heading"` // of the group
	}
	var rows []row
	for _, r := range p.Casting.Rows() {
		rows = append(rows, row{r, casting.Heading(r.Group)})
	}
	return map[string]any{"rows": rows}, nil, nil
}

// choice refuses a value that is not among those allowed.
func choice(field, value string, allowed ...string) error {
	for _, a := range allowed {
		if value == a {
			return nil
		}
	}
	list := make([]words.Text, len(allowed))
	for i, a := range allowed {
		list[i] = words.Plain(a)
	}
	return job.Faultf("badValue", field, "%s is %q; it takes %s.", field, value, words.Or(list...))
}
