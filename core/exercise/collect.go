package exercise

import (
	"slices"
	"strings"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Table is many result sheets side by side.
type Table struct {
	Columns []words.Text `json:"columns"` // the questions, as numbers or, where all answered the same, codes
	Rows    []Row        `json:"rows"`    // in the order of the files
	CSV     string       `json:"csv"`
	// Bad are the files that could not be read.
	Bad    []BadFile  `json:"bad"`
	Honest words.Text `json:"honest"`
}

// Row is one student's sheet, marked anew.
type Row struct {
	Student string       `json:"student"`
	Title   string       `json:"title"`
	Cells   []Cell       `json:"cells"`
	Score   float64      `json:"score"`
	Of      int          `json:"of"`
	Right   int          `json:"right"`
	Close   int          `json:"close"`
	Tries   int          `json:"tries"`
	Hints   int          `json:"hints"`
	Solved  int          `json:"solutions"`
	Notes   []words.Text `json:"notes"`
}

// Cell is one question of a row.
type Cell struct {
	Label words.Text `json:"label"`
	Mark  string     `json:"mark"`
	Code  string     `json:"code"` // of the last try
	Tries int        `json:"tries"`
	Hints int        `json:"hints"`
	Words words.Text `json:"words"`
}

// BadFile is a file that is no result sheet.
type BadFile struct {
	Index int        `json:"index"`
	Fault *job.Fault `json:"fault"`
}

// Collect reads and marks anew many result documents. set, where it is given,
// is what they should have answered; the language is that of the CSV.
func Collect(texts [][]byte, set *Set, l words.Language) (*Table, error) {
	if len(texts) > mostResults {
		return nil, fault("fault.manyFiles", "results", "n", len(texts), "most", mostResults)
	}
	t := &Table{Columns: []words.Text{}, Rows: []Row{}, Bad: []BadFile{}, Honest: say("honest")}
	for i, text := range texts {
		s, err := ReadSheet(text)
		if err != nil {
			f, _ := err.(*job.Fault)
			t.Bad = append(t.Bad, BadFile{i, f})
			continue
		}
		t.Rows = append(t.Rows, s.row(set))
	}
	for _, r := range t.Rows {
		for i, c := range r.Cells {
			if i == len(t.Columns) {
				t.Columns = append(t.Columns, c.Label)
			} else if t.Columns[i].In(words.English) != c.Label.In(words.English) {
				t.Columns[i] = words.Plain(digit(i + 1))
			}
		}
	}
	t.CSV = t.csv(l)
	return t, nil
}

func (s *Sheet) row(set *Set) Row {
	r := Row{Student: s.Student, Title: s.Title, Cells: []Cell{}, Of: s.Of, Notes: []words.Text{}}
	if set != nil && set.Print() != s.Set {
		r.Notes = append(r.Notes, say("note.otherSet"))
	}
	if r.Of < len(s.Answers) || r.Of > mostQuestions {
		r.Of = len(s.Answers)
	}
	changed := false
	for i := range s.Answers {
		a := &s.Answers[i]
		before, marks := a.Mark, a.Marks
		if err := a.remark(); err != nil {
			a.Mark, a.Score, a.Marks = None, 0, nil
			r.Notes = append(r.Notes, say("note.unmarked", "n", i+1, "why", why(err)))
		}
		changed = changed || before != a.Mark || !slices.EqualFunc(marks, a.Marks, func(x, y Brief) bool { return x.Mark == y.Mark })
		c := Cell{Label: a.Label, Mark: a.Mark, Tries: len(a.Tries), Hints: a.Hints}
		if n := len(a.Marks); n > 0 {
			c.Code = a.Marks[n-1].Code
		}
		c.Words = MarkWords(a.Mark)
		if c.Tries > 0 {
			c.Words = say("cell", "mark", c.Words, "tries", c.Tries)
		}
		switch a.Mark {
		case Right:
			r.Right++
		case Close:
			r.Close++
		}
		r.Score += a.Score
		r.Tries += c.Tries
		r.Hints += a.Hints
		if a.Solution {
			r.Solved++
		}
		r.Cells = append(r.Cells, c)
	}
	if changed {
		r.Notes = append(r.Notes, say("note.changed"))
	}
	return r
}

// csv is the table as text after RFC 4180, lines ended by CR LF. A cell that a
// spreadsheet would take for a formula gets an apostrophe before it. Where
// numbers have a decimal comma, semicolons part the cells, as spreadsheets set to
// such a language write and read it (common practice).
func (t *Table) csv(l words.Language) string {
	var b strings.Builder
	between := ","
	score := func(v float64) string { return words.Number(v, 1).In(l) }
	if strings.Contains(score(0), ",") {
		between = ";"
	}
	line := func(cells ...string) {
		for i, c := range cells {
			if i > 0 {
				b.WriteString(between)
			}
			if c != "" && strings.ContainsRune("=+-@\t\r", rune(c[0])) {
				c = "'" + c
			}
			if strings.ContainsAny(c, between+"\"\r\n") {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			b.WriteString(c)
		}
		b.WriteString("\r\n")
	}
	head := []words.Text{say("table.student"), say("table.title")}
	head = append(head, t.Columns...)
	line(in(l, append(head, say("table.score"), say("table.of"), say("table.right"), say("table.close"), say("table.tries"),
		say("table.hints"), say("table.solved"), say("table.note")))...)
	for _, r := range t.Rows {
		cells := []string{r.Student, r.Title}
		for i := range t.Columns {
			c := ""
			if i < len(r.Cells) {
				c = r.Cells[i].Words.In(l)
			}
			cells = append(cells, c)
		}
		line(append(cells, score(r.Score), digit(r.Of), digit(r.Right), digit(r.Close), digit(r.Tries), digit(r.Hints), digit(r.Solved), words.Join(" ", r.Notes...).In(l))...)
	}
	return b.String()
}

// in is a list in a language.
func in(l words.Language, list []words.Text) []string {
	out := make([]string, len(list))
	for i, t := range list {
		out[i] = t.In(l)
	}
	return out
}
