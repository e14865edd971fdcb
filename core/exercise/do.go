package exercise

import (
	"bytes"
	"encoding/json"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Request is what the op "exercise" takes; which keys count depends on Do.
type Request struct {
	Do string `json:"do"`
	Ref
	Answer  *Answer         `json:"answer"`
	Tries   int             `json:"tries"` // marked before
	Level   int             `json:"level"` // of the hint
	Key     bool            `json:"key"`   // for a teacher's key
	Set     json.RawMessage `json:"set"`
	Draw    *Drawn          `json:"draw"`
	Student string          `json:"student"`
	Answers []Given         `json:"answers"`
	// Results are result documents, as objects or as texts.
	Results []json.RawMessage `json:"results"`
}

// Drawn asks for questions to be drawn and put at the end of a set.
type Drawn struct {
	Kinds      []string `json:"kinds"`
	Difficulty int      `json:"difficulty"`
	Each       int      `json:"each"`
	Seed       int      `json:"seed"`
}

// SetReply is the reply to set.
type SetReply struct {
	Set *Set `json:"set"`
	// Text is the document as saved.
	Text string `json:"text"`
	// Questions are those of the student named, or of the set itself.
	Questions []*Question `json:"questions"`
	Print     string      `json:"print"`
	Honest    words.Text  `json:"honest"`
}

// ResultReply is the reply to result.
type ResultReply struct {
	Result *Sheet `json:"result"`
	Text   string `json:"text"`
}

// Do answers one request of the op "exercise". What a reply says is put into
// words by whoever writes it; what is written here already (the names of pots in
// jobs, the result document, the table as CSV) is in the language. Errors are
// *job.Fault or job.Faults.
func Do(q *Request, l words.Language) (any, error) {
	switch q.Do {
	case "pose":
		return ask(q.Ref, l)
	case "mark":
		if q.Answer == nil {
			q.Answer = &Answer{}
		}
		return MarkAnswer(q.Ref, q.Answer, q.Tries)
	case "hint":
		return GiveHint(q.Ref, q.Level)
	case "solve":
		return solve(q, l)
	case "next":
		r, err := q.Next()
		if err != nil {
			return nil, err
		}
		return ask(r, l)
	case "set":
		return q.makeSet(l)
	case "result":
		s, err := q.readSet()
		if err != nil {
			return nil, err
		}
		sheet, err := HandIn(s, q.Student, q.Answers)
		if err != nil {
			return nil, err
		}
		words.Put(l, sheet)
		text, err := write(sheet)
		return &ResultReply{sheet, string(text)}, err
	case "collect":
		return q.collect(l)
	}
	return nil, fault("fault.do", "do", "do", clip(q.Do))
}

// ask is Ask with the pot's name in the language in its job too.
func ask(ref Ref, l words.Language) (*Question, error) {
	q, err := Ask(ref)
	if err == nil && q.Job != nil && !q.Own {
		j := *q.Job
		j.Name = q.Name.In(l)
		q.Job = &j
	}
	return q, err
}

// solve is Solve with the pot's name in the language in a changed job too.
func solve(q *Request, l words.Language) (*Solution, error) {
	s, err := Solve(q.Ref, q.Tries, q.Key)
	if err != nil || len(s.Answer.Job) == 0 || q.own() {
		return s, err
	}
	j, err := job.Read(s.Answer.Job)
	if err != nil {
		return nil, err
	}
	posed, err := Ask(q.Ref)
	if err != nil {
		return nil, err
	}
	j.Name = posed.Name.In(l)
	text, err := j.Write()
	s.Answer.Job = text
	return s, err
}

// unwrapped is a document that may stand in the request as an object or as the
// text of its file.
func unwrapped(raw json.RawMessage) []byte {
	raw = bytes.TrimSpace(raw)
	var text string
	if len(raw) > 0 && raw[0] == '"' && json.Unmarshal(raw, &text) == nil {
		return []byte(text)
	}
	return raw
}

func (q *Request) readSet() (*Set, error) {
	if len(q.Set) == 0 || string(q.Set) == "null" {
		return nil, fault("fault.noSet", "set")
	}
	return ReadSet(unwrapped(q.Set))
}

func (q *Request) makeSet(l words.Language) (any, error) {
	s := NewSet()
	if len(q.Set) > 0 && string(q.Set) != "null" {
		given, err := q.readSet()
		if err != nil {
			return nil, err
		}
		s = *given
	}
	if q.Draw != nil {
		more, err := Draw(q.Draw.Kinds, q.Draw.Difficulty, q.Draw.Each, q.Draw.Seed)
		if err != nil {
			return nil, err
		}
		s.Questions = append(s.Questions, more...)
		if err := s.complete(); err != nil {
			return nil, err
		}
	}
	text, err := write(&s)
	if err != nil {
		return nil, err
	}
	refs, err := s.For(q.Student)
	if err != nil {
		return nil, err
	}
	out := &SetReply{Set: &s, Text: string(text), Questions: []*Question{}, Print: s.Print(), Honest: say("honest")}
	for i, r := range refs {
		p, err := ask(r, l)
		if err != nil {
			return nil, at(err, "questions["+digit(i)+"]")
		}
		out.Questions = append(out.Questions, p)
	}
	return out, nil
}

func (q *Request) collect(l words.Language) (any, error) {
	var set *Set
	if len(q.Set) > 0 && string(q.Set) != "null" {
		var err error
		if set, err = q.readSet(); err != nil {
			return nil, err
		}
	}
	texts := make([][]byte, len(q.Results))
	for i, r := range q.Results {
		texts[i] = unwrapped(r)
	}
	return Collect(texts, set, l)
}

// Reasons are the codes that Result.Code takes for a kind.
func Reasons(kind string) []string { return classes[kind] }

// classes of answers, by kind, the right one first.
var classes = map[string][]string{
	"catch": {"all", "free", "saidFree", "isFree", "missed", "slightlyOff", "blocker", "otherPull", "freeWall", "offWall"},
	"count": {"all", "none", "wrongReason", "notStuck", "stuck", "tooMany", "tooFewCatches", "tooFewRubs"},
	"where": {"within", "nearHigh", "nearLow", "tooHigh", "tooLow", "half", "radius", "offForm"},
	"pull":  {"all", "sticks", "locked", "rubs", "saidNone", "roundOut"},
	"draft": {"within", "near", "sign", "double", "middle", "complement", "slope", "wrongSide", "far"},
	"size": {"within", "near", "far", "unchanged", "wrongWay", "enlarged", "divided", "added", "onlyDrying", "onlyFiring", "kept",
		"same", "factor", "onWet", "onFired", "wholeBar"},
	"drain": {"all", "missedSlip", "falseSlip", "missedAir", "falseAir", "closes"},
	"save":  {"clears", "tooMuch", "stillCatches", "stillRubs", "unchanged", "otherForm"},
}
