package exercise

import (
	"encoding/json"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// Ref names a question: a generated one by its code or by kind, difficulty and
// seed; one on a given job by that job, kind, difficulty and seed.
type Ref struct {
	Code       string          `json:"code,omitempty"`
	Kind       string          `json:"kind,omitempty"`
	Difficulty int             `json:"difficulty,omitempty"` // 1 to Hardest; 0 is 1
	Seed       int             `json:"seed,omitempty"`       // 0 to Seeds-1
	Job        json.RawMessage `json:"job,omitempty"`
}

// own tells that the question is on a given job.
func (r *Ref) own() bool { return len(r.Job) > 0 && string(r.Job) != "null" }

// full is the reference with everything filled in: of a generated question the
// code too. Errors are *job.Fault.
func (r Ref) full() (Ref, error) {
	if r.Code != "" && !r.own() {
		return ReadCodeFull(r.Code)
	}
	r.Code = ""
	if r.Difficulty == 0 {
		r.Difficulty = 1
	}
	if kindOf(r.Kind) == nil {
		return r, fault("fault.kind", "kind", "kind", clip(r.Kind))
	}
	if r.Difficulty < 1 || r.Difficulty > Hardest {
		return r, fault("fault.difficulty", "difficulty")
	}
	if r.Seed < 0 || r.Seed >= Seeds {
		return r, fault("fault.seed", "seed", "most", Seeds-1)
	}
	if !r.own() {
		r.Code = Code(r.Kind, r.Difficulty, r.Seed)
	}
	return r, nil
}

// ReadCodeFull is ReadCode with the code itself, as this program writes it, in
// the reference.
func ReadCodeFull(code string) (Ref, error) {
	r, err := ReadCode(code)
	if err == nil {
		r.Code = Code(r.Kind, r.Difficulty, r.Seed)
	}
	return r, err
}

// Next is another question like this one: the next seed, so that of a given job
// another place or pull is asked about where the kind has several.
func (r Ref) Next() (Ref, error) {
	r, err := r.full()
	if err != nil {
		return r, err
	}
	return r.at(r.Seed + 1).full()
}

// at is the question of another seed; the code of the old one goes with it.
func (r Ref) at(seed int) Ref {
	r.Seed, r.Code = seed%Seeds, ""
	return r
}

// Question is what is asked. It holds nothing that gives the answer away but
// the form itself.
type Question struct {
	Ref   Ref        `json:"ref"`
	Code  string     `json:"code"` // of a generated question
	Kind  string     `json:"kind"`
	Title words.Text `json:"title"` // the kind in words
	Own   bool       `json:"own"`   // asked about a given job
	Name  words.Text `json:"name"`  // of the pot
	Text  words.Text `json:"text"`
	// Given are the facts to work with, one a line.
	Given     []words.Text `json:"given"`
	Job       *job.Job     `json:"job"`
	Answer    []Field      `json:"answer"`
	Tolerance words.Text   `json:"tolerance"`
	Drawing   Drawing      `json:"drawing"`
	Hints     int          `json:"hints"` // how many there are
}

// Types of answer field.
const (
	TypeMarks  = "marks"
	TypeNumber = "number"
	TypeChoice = "choice"
	TypeJob    = "job"
)

// Field is one thing to answer.
type Field struct {
	// ID is "marks", "value", "job", or the key under choices.
	ID    string     `json:"id"`
	Type  string     `json:"type"`
	Words words.Text `json:"words"`
	// Units are those that a number may come in, the usual one first.
	Units []string `json:"units,omitempty"`
	// Options are those of a choice; of marks the one that says there is none,
	// which is answered by choosing it under the field's id.
	Options []Option `json:"options,omitempty"`
	// Most is the greatest number of marks.
	Most int `json:"most,omitempty"`
}

// Option is one choice.
type Option struct {
	ID    string     `json:"id"`
	Words words.Text `json:"words"`
}

// Drawing is what there is to draw for a question, in the half-plane: every
// point is [r, z] in mm at mold size, rounded to a thousandth.
type Drawing struct {
	Contour   [][2]float64 `json:"contour"`
	Inner     [][2]float64 `json:"inner,omitempty"`
	Closed    bool         `json:"closed"`
	Turned    bool         `json:"turned"` // the form opens downward and is drawn upside down
	Height    float64      `json:"height"`
	MaxRadius float64      `json:"maxRadius"`
	Pull      *Pulled      `json:"pull,omitempty"`
	Points    []Spot       `json:"points,omitempty"`
	Parts     []Region     `json:"parts,omitempty"`
	// Show are the layers that the page may draw, and no more: form, pull,
	// point, parts, inner, ruler, handles.
	Show []string `json:"show"`
}

// Pulled is an arrow: the way in which plaster is pulled.
type Pulled struct {
	ID     string     `json:"id"` // down, up or out
	Vector [3]float64 `json:"vector"`
	Words  words.Text `json:"words"`
}

// Spot is a marked point.
type Spot struct {
	ID string  `json:"id"`
	R  float64 `json:"r"`
	Z  float64 `json:"z"`
}

// Region is a part of the mold cut by the half-plane.
type Region struct {
	ID      string       `json:"id"`
	Words   words.Text   `json:"words"`
	Outline [][2]float64 `json:"outline"`
}

// attempts is how often a question is drawn anew where what came was no good
// one.
const attempts = 250

// made is the task of a reference, and its job as asked about.
func (r Ref) made() (Ref, task, error) {
	r, err := r.full()
	if err != nil {
		return r, nil, err
	}
	k := kindOf(r.Kind)
	if r.own() {
		j, err := job.Read(r.Job)
		if err != nil {
			return r, nil, err
		}
		if err := canAsk(k.id, j); err != nil {
			return r, nil, err
		}
		t, err := k.own(asked(j), r.gen(k, 1), r.Difficulty)
		return r, t, err
	}
	for i := range attempts {
		if t := k.make(r.gen(k, 0), r.gen(k, i+1), r.Difficulty); t != nil {
			return r, t, nil
		}
	}
	return r, nil, fault("fault.noQuestion", "seed")
}

// canAsk tells why a kind cannot be asked about a job, or nil: most look at one
// half-plane, which is the whole pot only where it is round, and at a cast that
// is drained, which has no inner surface of its own.
func canAsk(kind string, j *job.Job) error {
	s := j.Form.Section
	if (s.Kind != job.SectionRound || s.Dimples != nil) && kind != "size" && kind != "count" {
		return notFit("section")
	}
	if j.Form.Inner != nil && kind != "size" && kind != "catch" && kind != "draft" {
		return notFit("inner")
	}
	return nil
}

// gen is the generator of the i-th attempt at a question: kind, difficulty,
// seed and attempt side by side are its state.
func (r Ref) gen(k *kind, i int) *Gen {
	return NewGen(uint64(k.letter)<<56 | uint64(r.Difficulty)<<48 | uint64(r.Seed)<<16 | uint64(i))
}

// asked is the job as a question shows it: without what the maker has settled
// about the mold, which would give answers away.
func asked(j *job.Job) *job.Job {
	out := *j
	d := job.Defaults()
	out.Mold.Scheme, out.Mold.PartingHeights, out.Mold.Sides = d.Mold.Scheme, nil, nil
	return &out
}

// Ask puts the question. Errors are *job.Fault or job.Faults.
func Ask(ref Ref) (*Question, error) {
	r, t, err := ref.made()
	if err != nil {
		return nil, err
	}
	q := &Question{Ref: r, Code: r.Code, Kind: r.Kind, Title: say("kind." + r.Kind), Own: r.own(), Given: []words.Text{}, Hints: Hints}
	t.pose(q)
	q.Name = t.pot()
	return q, nil
}

// Hints is the number of hints of every question.
const Hints = 3

func points(list []form.Point) [][2]float64 {
	out := make([][2]float64, len(list))
	for i, p := range list {
		out[i] = [2]float64{micron(p.R), micron(p.Z)}
	}
	return out
}
