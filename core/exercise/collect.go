package exercise

import (
	"slices"
	"strings"

	"moldwright/core/job"
)

// Table is many result sheets side by side.
type Table struct {
	Columns []string `json:"columns"` // the questions, as numbers or, where all answered the same, codes
	Rows    []Row    `json:"rows"`    // in the order of the files
	CSV     string   `json:"csv"`
	// Bad are the files that could not be read.
	Bad    []BadFile `json:"bad"`
	Honest string    `json:"honest"`
}

// Row is one student's sheet, marked anew.
type Row struct {
	Student string   `json:"student"`
	Title   string   `json:"title"`
	Cells   []Cell   `json:"cells"`
	Score   float64  `json:"score"`
	Of      int      `json:"of"`
	Right   int      `json:"right"`
	Close   int      `json:"close"`
	Tries   int      `json:"tries"`
	Hints   int      `json:"hints"`
	Solved  int      `json:"solutions"`
	Notes   []string `json:"notes"`
}

// Cell is one question of a row.
type Cell struct {
	Label string `json:"label"`
	Mark  string `json:"mark"`
	Code  string `json:"code"` // of the last try
	Tries int    `json:"tries"`
	Hints int    `json:"hints"`
	Words string `json:"words"`
}

// BadFile is a file that is no result sheet.
type BadFile struct {
	Index int        `json:"index"`
	Fault *job.Fault `json:"fault"`
}

// Collect reads and marks anew many result documents. set, where it is given,
// is what they should have answered.
func Collect(texts [][]byte, set *Set) (*Table, error) {
	if len(texts) > mostResults {
		return nil, fault("fault.manyFiles", "results", "n", len(texts), "most", mostResults)
	}
	t := &Table{Columns: []string{}, Rows: []Row{}, Bad: []BadFile{}, Honest: say("honest")}
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
			} else if t.Columns[i] != c.Label {
				t.Columns[i] = digit(i + 1)
			}
		}
	}
	t.CSV = t.csv()
	return t, nil
}

func (s *Sheet) row(set *Set) Row {
	r := Row{Student: s.Student, Title: s.Title, Cells: []Cell{}, Of: s.Of, Notes: []string{}}
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
			r.Notes = append(r.Notes, say("note.unmarked", "n", i+1, "why", err.Error()))
		}
		changed = changed || before != a.Mark || !slices.EqualFunc(marks, a.Marks, func(x, y Brief) bool { return x.Mark == y.Mark })
		c := Cell{Label: a.Label, Mark: a.Mark, Tries: len(a.Tries), Hints: a.Hints}
		if n := len(a.Marks); n > 0 {
			c.Code = a.Marks[n-1].Code
		}
		c.Words = say("mark." + a.Mark)
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
// spreadsheet would take for a formula gets an apostrophe before it.
func (t *Table) csv() string {
	var b strings.Builder
	line := func(cells ...string) {
		for i, c := range cells {
			if i > 0 {
				b.WriteByte(',')
			}
			if c != "" && strings.ContainsRune("=+-@\t\r", rune(c[0])) {
				c = "'" + c
			}
			if strings.ContainsAny(c, ",\"\r\n") {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			b.WriteString(c)
		}
		b.WriteString("\r\n")
	}
	head := []string{say("table.student"), say("table.title")}
	head = append(head, t.Columns...)
	line(append(head, say("table.score"), say("table.of"), say("table.right"), say("table.close"), say("table.tries"),
		say("table.hints"), say("table.solved"), say("table.note"))...)
	for _, r := range t.Rows {
		cells := []string{r.Student, r.Title}
		for i := range t.Columns {
			c := ""
			if i < len(r.Cells) {
				c = r.Cells[i].Words
			}
			cells = append(cells, c)
		}
		line(append(cells, one(r.Score), digit(r.Of), digit(r.Right), digit(r.Close), digit(r.Tries), digit(r.Hints), digit(r.Solved), strings.Join(r.Notes, " "))...)
	}
	return b.String()
}
