package exercise

import (
	"moldwright/core/job"
	"moldwright/core/words"
)

// Marks of an answer.
const (
	Right  = "right"
	Close  = "close"
	NotYet = "notYet"
)

// MarkWords tells a mark, or that there is None.
func MarkWords(mark string) words.Text { return say("mark." + mark) }

// Result is an answer marked. Code names the class that the answer falls in,
// one of Reasons(kind); Words say which point, angle or pull.
type Result struct {
	Mark     string     `json:"mark"`
	Code     string     `json:"code"`
	Words    words.Text `json:"words"`
	Details  []Detail   `json:"details"` // of each point or part, where there are several
	Pictures []Picture  `json:"pictures"`
}

// Detail is the mark of one point, part or choice of an answer.
type Detail struct {
	Field string     `json:"field"`
	Index int        `json:"index"`
	Mark  string     `json:"mark"`
	Code  string     `json:"code"`
	Words words.Text `json:"words"`
}

// Hint is one hint; the third may come with the arrow or the height to look at.
type Hint struct {
	Level   int        `json:"level"`
	Words   words.Text `json:"words"`
	Heights []float64  `json:"heights"` // mm, where to look
}

// Solution is the worked solution: an answer that is right, the steps to it,
// and the pictures of what sticks.
type Solution struct {
	Answer   Answer       `json:"answer"`
	Short    words.Text   `json:"short"` // the answer in words, for a key
	Steps    []words.Text `json:"steps"`
	Pictures []Picture    `json:"pictures"`
	// Slips are the common errors and what each would give, for a key.
	Slips []words.Text `json:"slips"`
}

// TriesForSolution is how many marked tries unlock the worked solution.
const TriesForSolution = 2

// Marked is the reply to an answer: not valid, which costs no try, or marked.
type Marked struct {
	Valid   bool     `json:"valid"`
	Invalid *Invalid `json:"invalid"`
	Result
	Tries    int  `json:"tries"`    // marked so far, with this one
	MaySolve bool `json:"maySolve"` // the worked solution is open
}

// MarkAnswer marks an answer after so many tries marked before it. Errors are
// those of the question, not of the answer.
func MarkAnswer(ref Ref, a *Answer, tries int) (*Marked, error) {
	_, t, err := ref.made()
	if err != nil {
		return nil, err
	}
	return markTask(t, a, tries), nil
}

func markTask(t task, a *Answer, tries int) *Marked {
	tries = max(0, tries)
	if bad := t.check(a); bad != nil {
		return &Marked{Invalid: bad, Tries: tries, MaySolve: tries >= TriesForSolution,
			Result: Result{Details: []Detail{}, Pictures: []Picture{}}}
	}
	m := &Marked{Valid: true, Result: t.mark(a), Tries: tries + 1}
	if m.Details == nil {
		m.Details = []Detail{}
	}
	if m.Pictures == nil {
		m.Pictures = []Picture{}
	}
	m.MaySolve = m.Mark == Right || m.Tries >= TriesForSolution
	return m
}

// GiveHint is the hint of strength 1 to Hints.
func GiveHint(ref Ref, level int) (*Hint, error) {
	if level < 1 || level > Hints {
		return nil, fault("fault.hint", "level", "most", Hints)
	}
	_, t, err := ref.made()
	if err != nil {
		return nil, err
	}
	h := t.hint(level)
	h.Level = level
	if h.Heights == nil {
		h.Heights = []float64{}
	}
	return &h, nil
}

// Solve is the worked solution, once there were enough tries; key leaves the
// tries aside, for a teacher's key. What stands in a local page can be read by
// who knows how: this keeps an answer from coming too soon, not secret.
func Solve(ref Ref, tries int, key bool) (*Solution, error) {
	if tries < TriesForSolution && !key {
		return nil, fault("fault.tooSoon", "tries", "n", TriesForSolution)
	}
	_, t, err := ref.made()
	if err != nil {
		return nil, err
	}
	s := t.solve()
	if s.Pictures == nil {
		s.Pictures = []Picture{}
	}
	if s.Slips == nil {
		s.Slips = []words.Text{}
	}
	return &s, nil
}

// result is a Result with the words of its code.
func result(kind, mark, code string, args ...any) Result {
	return Result{Mark: mark, Code: code, Words: say(kind+"."+code, args...)}
}

// notFit is the fault of a kind that cannot be asked about a job.
func notFit(kind string, args ...any) error {
	return job.Faults{fault("fault.notFit", "kind", "why", say("notFit."+kind, args...))}
}
