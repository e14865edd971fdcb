package exercise

import (
	"moldwright/core/job"
	"moldwright/core/words"
)

// Hardest is the greatest difficulty; the least is 1.
const Hardest = 3

// kind is one kind of question.
type kind struct {
	id     string
	letter byte
	// make draws a question, or nil where what was drawn is no good question.
	// What the answer shall be comes from first, which starts alike at every
	// attempt, and the pot built around it from g.
	make func(first, g *Gen, difficulty int) task
	// own asks about a given job; errors are job.Faults.
	own func(j *job.Job, g *Gen, difficulty int) (task, error)
}

var kinds = [...]kind{
	{"catch", 'C', makeCatch, ownCatch},
	{"count", 'N', makeCount, ownCount},
	{"where", 'H', makeWhere, ownWhere},
	{"pull", 'P', makePull, ownPull},
	{"draft", 'D', makeDraft, ownDraft},
	{"size", 'S', makeSize, ownSize},
	{"drain", 'F', makeDrain, ownDrain},
	{"save", 'E', makeSave, ownSave},
}

// Kinds are the ids of all kinds of question.
func Kinds() []string {
	var out []string
	for _, k := range kinds {
		out = append(out, k.id)
	}
	return out
}

func kindOf(id string) *kind {
	for i := range kinds {
		if kinds[i].id == id {
			return &kinds[i]
		}
	}
	return nil
}

// task is a question made: it can be put, marked, hinted at and solved.
type task interface {
	// pot is the name of the pot that is asked about.
	pot() words.Text
	// pose fills in the text, the shape of the answer and the drawing.
	pose(q *Question)
	// check tells what keeps an answer from being marked, or nil.
	check(a *Answer) *Invalid
	// mark marks an answer that check let pass.
	mark(a *Answer) Result
	// hint is the hint of strength 1 to 3.
	hint(level int) Hint
	// solve is the worked solution.
	solve() Solution
}
