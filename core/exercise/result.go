package exercise

import (
	"encoding/binary"
	"encoding/hex"
	"hash/fnv"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Given is what a student gave to one question: every marked try in order, and
// the help that was taken.
type Given struct {
	Tries    []Answer `json:"tries"`
	Hints    int      `json:"hints"`    // the strongest hint seen, 0 to Hints
	Solution bool     `json:"solution"` // the worked solution was seen
}

// Sheet is the result document: what a student hands in. Marks are those of the
// core when the sheet was made; Collect marks anew.
type Sheet struct {
	Format  string `json:"format"`
	Version int    `json:"version"`
	Title   string `json:"title"`
	// Set tells which set was answered: a print of its questions.
	Set     string     `json:"set"`
	Student string     `json:"student"`
	Answers []Taken    `json:"answers"`
	Score   float64    `json:"score"`
	Of      int        `json:"of"`
	Honest  words.Text `json:"honest"`
}

// Taken is one question and what came of it.
type Taken struct {
	Ref   Ref        `json:"ref"`
	Label words.Text `json:"label"` // the code, or the pot's name and the kind
	Given
	Marks []Brief `json:"marks"` // of the tries
	// Mark is that of the last try: right, close, notYet, or none.
	Mark string `json:"mark"`
	// Score is 1 for right, 1/2 for close.
	Score float64 `json:"score"`
}

// Brief is the mark of one try.
type Brief struct {
	Mark  string     `json:"mark"` // "" where the answer was not valid
	Code  string     `json:"code"`
	Words words.Text `json:"words"`
}

// None is the mark of a question that was not answered.
const None = "none"

// Print is a short print of a set's questions, by which a sheet names its set.
func (s *Set) Print() string {
	h := fnv.New64a()
	for _, q := range s.Questions {
		h.Write([]byte(q.Kind))
		h.Write(q.Job)
		h.Write(binary.BigEndian.AppendUint64(nil, uint64(q.Difficulty)<<32|uint64(q.Seed)))
	}
	return hex.EncodeToString(h.Sum(nil))
}

// HandIn marks everything that a student gave to a set's questions and makes
// the result sheet. Errors are *job.Fault or job.Faults.
func HandIn(s *Set, student string, given []Given) (*Sheet, error) {
	if err := longText("student", student); err != nil {
		return nil, err
	}
	refs, err := s.For(student)
	if err != nil {
		return nil, err
	}
	if len(given) > len(refs) {
		return nil, fault("fault.answers", "answers", "n", len(given), "of", len(refs))
	}
	out := &Sheet{Format: ResultFormat, Version: DocVersion, Title: s.Title, Set: s.Print(), Student: student,
		Answers: []Taken{}, Of: len(refs), Honest: say("honest")}
	for i, r := range refs {
		t := Taken{Ref: r}
		if i < len(given) {
			t.Given = given[i]
		}
		if len(t.Tries) > mostTries {
			return nil, fault("fault.tries", "answers["+digit(i)+"]", "n", i+1, "tries", len(t.Tries), "most", mostTries)
		}
		if err := t.remark(); err != nil {
			return nil, at(err, "answers["+digit(i)+"]")
		}
		out.Answers = append(out.Answers, t)
		out.Score += t.Score
	}
	return out, nil
}

// remark marks all tries anew.
func (t *Taken) remark() error {
	r, task, err := t.Ref.made()
	if err != nil {
		return err
	}
	t.Ref = r
	if t.Label = words.Plain(r.Code); r.own() {
		if j, err := job.Read(r.Job); err == nil {
			t.Label = say("own", "name", j.Name, "kind", say("kind."+r.Kind))
		}
	}
	t.Hints = min(max(t.Hints, 0), Hints)
	t.Mark, t.Score, t.Marks = None, 0, []Brief{}
	if t.Tries == nil {
		t.Tries = []Answer{}
	}
	for i := range t.Tries {
		m := markTask(task, &t.Tries[i], i)
		if !m.Valid {
			t.Marks = append(t.Marks, Brief{"", m.Invalid.Code, m.Invalid.Words})
			continue
		}
		t.Marks = append(t.Marks, Brief{m.Mark, m.Code, m.Words})
		t.Mark = m.Mark
	}
	switch t.Mark {
	case Right:
		t.Score = 1
	case Close:
		t.Score = 0.5
	}
	return nil
}

// ReadSheet reads a result document. Errors are *job.Fault.
func ReadSheet(text []byte) (*Sheet, error) {
	s := &Sheet{}
	if err := readDocument(text, s, ResultFormat); err != nil {
		return nil, err
	}
	if err := longText("student", s.Student); err != nil {
		return nil, err
	}
	if err := longText("title", s.Title); err != nil {
		return nil, err
	}
	if len(s.Answers) > mostQuestions {
		return nil, fault("fault.manyItems", "answers", "n", len(s.Answers), "most", mostQuestions)
	}
	for i := range s.Answers {
		if n := len(s.Answers[i].Tries); n > mostTries {
			return nil, fault("fault.tries", "answers", "n", i+1, "tries", n, "most", mostTries)
		}
	}
	return s, nil
}
