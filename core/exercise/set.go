package exercise

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"

	"moldwright/core/job"
	"moldwright/core/words"
)

// A class set is the document a teacher hands out: questions in order, by code
// or on a job of the teacher's own.
const (
	SetFormat    = "moldwright-class"
	ResultFormat = "moldwright-result"
	DocVersion   = 1
)

// Limits of documents.
const (
	mostQuestions = 60
	mostTries     = 40
	mostResults   = 500
	mostLetters   = 200
)

// Set is the document of a class set.
type Set struct {
	Format  string `json:"format"`
	Version int    `json:"version"`
	Title   string `json:"title"`
	Note    string `json:"note"`
	// Hints and Solutions tell whether students may have them.
	Hints     bool `json:"hints"`
	Solutions bool `json:"solutions"`
	// Shuffle gives each student seeds of their own, drawn from the name, so
	// that neighbours answer alike questions, not the same.
	Shuffle   bool  `json:"shuffle"`
	Questions []Ref `json:"questions"`
}

// NewSet is an empty set with hints and solutions on.
func NewSet() Set {
	return Set{Format: SetFormat, Version: DocVersion, Hints: true, Solutions: true, Questions: []Ref{}}
}

// ReadSet reads a class set and checks and completes every question of it.
// Errors are *job.Fault or job.Faults.
func ReadSet(text []byte) (*Set, error) {
	s := NewSet()
	if err := readDocument(text, &s, SetFormat); err != nil {
		return nil, err
	}
	return &s, s.complete()
}

// complete fills in every reference, in place, and checks that each can be
// asked.
func (s *Set) complete() error {
	if err := longText("title", s.Title); err != nil {
		return err
	}
	if err := longText("note", s.Note); err != nil {
		return err
	}
	if len(s.Questions) > mostQuestions {
		return fault("fault.manyItems", "questions", "n", len(s.Questions), "most", mostQuestions)
	}
	for i, q := range s.Questions {
		r, _, err := q.made()
		if err != nil {
			return at(err, "questions["+digit(i)+"]")
		}
		if r.own() { // as a job file holds it, complete
			j, err := job.Read(r.Job)
			if err == nil {
				r.Job, err = j.Write()
			}
			if err != nil {
				return at(err, "questions["+digit(i)+"]")
			}
		}
		s.Questions[i] = r
	}
	return nil
}

// at puts a path before the field of a fault.
func at(err error, path string) error {
	put := func(f *job.Fault) *job.Fault {
		g := *f
		if g.Field = path; f.Field != "" {
			g.Field += "." + f.Field
		}
		return &g
	}
	switch e := err.(type) {
	case *job.Fault:
		return put(e)
	case job.Faults:
		out := make(job.Faults, len(e))
		for i := range e {
			out[i] = put(e[i])
		}
		return out
	}
	return err
}

func longText(field, text string) error {
	if n := len([]rune(text)); n > mostLetters {
		return &job.Fault{Code: "longText", Field: field, Message: say("long."+field, "n", n, "most", mostLetters)}
	}
	return nil
}

// readDocument decodes a document of the given format over its defaults.
func readDocument(text []byte, into any, want string) error {
	var head struct {
		Format  string `json:"format"`
		Version int    `json:"version"`
	}
	what := say("document." + want)
	bad := func(err error) error {
		return fault("fault.notJSON", "", "what", what, "message", unread(err))
	}
	if err := json.Unmarshal(text, &head); err != nil {
		return bad(err)
	}
	if head.Format != want {
		return fault("fault.format", "format", "what", what, "format", clip(head.Format), "want", want)
	}
	if head.Version != DocVersion {
		return fault("fault.version", "version", "version", head.Version)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return bad(err)
	}
	if _, err := d.Token(); err != io.EOF {
		return bad(io.ErrUnexpectedEOF)
	}
	return nil
}

// unread is why a text did not decode: an unknown key, a value of another kind,
// a fault of the job in it, or else damage.
func unread(err error) words.Text {
	var kind *json.UnmarshalTypeError
	var many job.Faults
	var one *job.Fault
	switch key, unknown := strings.CutPrefix(err.Error(), "json: unknown field "); {
	case unknown:
		return say("unread.key", "key", clip(strings.Trim(key, `"`)))
	case errors.As(err, &many), errors.As(err, &one):
		return why(err)
	case errors.As(err, &kind):
		return say("unread.kind", "key", clip(kind.Field))
	}
	return say("unread.damaged")
}

// write is a document as saved: indented, one final newline.
func write(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	err := e.Encode(v)
	return b.Bytes(), err
}

// For are the questions that a student gets: those of the set, with seeds
// drawn from the name where the set shuffles. Case and spaces of the name do
// not matter. The seed of question i is the first draw below Seeds of SplitMix64
// started at the FNV-1a hash of the name, plus the question's own seed, plus i
// times 2^32.
func (s *Set) For(student string) ([]Ref, error) {
	out := make([]Ref, len(s.Questions))
	copy(out, s.Questions)
	name := strings.Join(strings.Fields(strings.ToLower(student)), " ")
	if !s.Shuffle || name == "" {
		return out, nil
	}
	h := uint64(14695981039346656037)
	for i := range len(name) {
		h = (h ^ uint64(name[i])) * 1099511628211
	}
	for i := range out {
		out[i].Seed = NewGen(h + uint64(out[i].Seed) + uint64(i)<<32).Int(Seeds)
		out[i].Code = ""
		var err error
		if out[i], err = out[i].full(); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// Draw is a set of n questions of each kind at a difficulty, from a seed on.
func Draw(wanted []string, difficulty, each, seed int) ([]Ref, error) {
	var out []Ref
	if each < 1 || each > mostQuestions || len(wanted)*each > mostQuestions {
		return nil, fault("fault.manyItems", "each", "n", each*len(wanted), "most", mostQuestions)
	}
	for _, k := range wanted {
		for i := range each {
			r, err := Ref{Kind: k, Difficulty: difficulty, Seed: seed}.full()
			if err != nil {
				return nil, err
			}
			if r, err = r.at(seed + i).full(); err != nil {
				return nil, err
			}
			out = append(out, r)
		}
	}
	return out, nil
}
