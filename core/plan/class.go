package plan

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"moldwright/core/exercise"
	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/sheet"
	"moldwright/core/words"
)

// Worksheets, keys and result sheets: exercises are put, solved and marked by
// their own package, and handed to the sheets as plain values.

// classRequest is what a sheet of exercises may be asked of: a class set, or one
// question by code or by kind, difficulty and seed (on the job where one is
// given), or a job alone, of which every kind that fits is asked.
type classRequest struct {
	Set        json.RawMessage `json:"set"`
	Code       string          `json:"code"`
	Kind       string          `json:"kind"`
	Difficulty int             `json:"difficulty"`
	Seed       int             `json:"seed"`
	Student    string          `json:"student"` // of a set that shuffles; stands on the sheet
	Result     json.RawMessage `json:"result"`  // a result document, of sheet result
}

// absent tells that a key was left out or null.
func absent(raw json.RawMessage) bool { return len(raw) == 0 || string(raw) == "null" }

// classSet puts the questions of a request; the set is complete.
func (q *classRequest) classSet(rawJob json.RawMessage, l words.Language) (*exercise.Set, []*exercise.Question, error) {
	if !absent(q.Set) {
		reply, err := exercise.Do(&exercise.Request{Do: "set", Set: q.Set, Student: q.Student}, l)
		if err != nil {
			return nil, nil, err
		}
		r := reply.(*exercise.SetReply)
		return r.Set, r.Questions, nil
	}
	set := exercise.NewSet()
	ref := exercise.Ref{Code: q.Code, Kind: q.Kind, Difficulty: q.Difficulty, Seed: q.Seed}
	if q.Code == "" && !absent(rawJob) {
		j, err := jobOf(rawJob)
		if err != nil {
			return nil, nil, err
		}
		set.Title, ref.Job = j.Name, rawJob
	}
	refs := []exercise.Ref{ref}
	all := q.Code == "" && q.Kind == "" && !absent(rawJob)
	if all {
		refs = nil
		// Those that can share a side come first.
		kinds := exercise.Kinds()
		slices.SortStableFunc(kinds, func(a, b string) int { return fresh(a) - fresh(b) })
		for _, kind := range kinds {
			r := ref
			r.Kind = kind
			refs = append(refs, r)
		}
	}
	var list []*exercise.Question
	for _, r := range refs {
		question, err := exercise.Ask(r)
		if all && noFit(err) {
			continue
		}
		if err != nil {
			return nil, nil, err
		}
		list = append(list, question)
		set.Questions = append(set.Questions, question.Ref)
	}
	return &set, list, nil
}

// noFit tells that a kind cannot be asked about a pot.
func noFit(err error) bool {
	var many job.Faults
	return errors.As(err, &many) && len(many) == 1 && many[0].Code == "notFit"
}

// number is the print of a set as it stands on paper.
func number(print string) string {
	return strings.ToUpper(print[:min(8, len(print))])
}

// paperSet hands a set to the sheets in a language, with its solutions where they
// are wanted.
func paperSet(set *exercise.Set, list []*exercise.Question, student string, solved bool, l words.Language) (sheet.ClassSet, error) {
	out := sheet.ClassSet{Language: l, Title: set.Title, Note: set.Note, Student: student, Number: number(set.Print())}
	for _, q := range list {
		p := paperQuestion(q, l)
		if solved {
			s, err := exercise.Solve(q.Ref, 0, true)
			if err != nil {
				return out, err
			}
			if p.Key, err = paperKey(q, s, l); err != nil {
				return out, err
			}
		}
		out.Questions = append(out.Questions, p)
	}
	return out, nil
}

func fromPoints(list [][2]float64) []form.Point {
	out := make([]form.Point, len(list))
	for i, p := range list {
		out[i] = form.Point{R: p[0], Z: p[1]}
	}
	return out
}

func allIn(list []words.Text, l words.Language) []string {
	out := make([]string, len(list))
	for i, t := range list {
		out[i] = t.In(l)
	}
	return out
}

// trueSize are the kinds of question in which something is measured, marked or
// drawn on the drawing; of the others the look of the form is enough, and of
// a size there is nothing to draw.
var trueSize = map[string]bool{"catch": true, "where": true, "draft": true, "drain": true, "save": true}

// fresh is 1 for a kind that gets a side of its own.
func fresh(kind string) int {
	if trueSize[kind] {
		return 1
	}
	return 0
}

func paperQuestion(q *exercise.Question, l words.Language) sheet.Question {
	out := sheet.Question{Code: q.Code, Kind: q.Title.In(l), Pot: q.Name.In(l), Text: q.Text.In(l), Given: allIn(q.Given, l), Tolerance: q.Tolerance.In(l), TrueSize: trueSize[q.Kind]}
	for _, f := range q.Answer {
		a := sheet.Ask{Words: f.Words.In(l), Kind: map[string]sheet.AskKind{exercise.TypeChoice: sheet.Tick, exercise.TypeNumber: sheet.Number,
			exercise.TypeMarks: sheet.Marks, exercise.TypeJob: sheet.Redraw}[f.Type]}
		for _, o := range f.Options {
			a.Options = append(a.Options, o.Words.In(l))
		}
		out.Asks = append(out.Asks, a)
	}
	if q.Kind == "size" {
		return out
	}
	d := &q.Drawing
	out.Shape = sheet.Shape{Contour: fromPoints(d.Contour), Turned: d.Turned}
	if d.Pull != nil {
		out.Shape.Pull = &d.Pull.Vector
	}
	for _, s := range d.Points {
		out.Shape.Spots = append(out.Shape.Spots, form.Point{R: s.R, Z: s.Z})
	}
	for _, r := range d.Parts {
		out.Shape.Parts = append(out.Shape.Parts, sheet.Region{Letter: strings.ToUpper(r.ID), Outline: fromPoints(r.Outline)})
	}
	return out
}

func paperKey(q *exercise.Question, s *exercise.Solution, l words.Language) (sheet.Worked, error) {
	out := sheet.Worked{Short: s.Short.In(l), Steps: allIn(s.Steps, l), Slips: allIn(s.Slips, l)}
	for _, f := range q.Answer {
		out.Ticked = append(out.Ticked, slices.IndexFunc(f.Options, func(o exercise.Option) bool { return o.ID == s.Answer.Choices[f.ID] }))
	}
	for _, m := range s.Answer.Marks {
		if m.R != nil {
			out.Marks = append(out.Marks, form.Point{R: *m.R, Z: m.Z})
		}
	}
	if q.Kind == "drain" {
		out.Line = form.Inset(fromPoints(q.Drawing.Contour), q.Job.Clay.Wall)
	}
	if q.Kind == "where" {
		z, err := strconv.ParseFloat(string(s.Answer.Value), 64)
		if err != nil {
			return out, err
		}
		out.Levels = []float64{z}
	}
	if !absent(s.Answer.Job) {
		j, err := job.Read(s.Answer.Job)
		if err != nil {
			return out, err
		}
		m, err := form.Build(j)
		if err != nil {
			return out, err
		}
		out.Line = m.Pts
	}
	for _, p := range s.Pictures {
		out.Held = append(out.Held, sheet.Held{Stretch: fromPoints(p.Stretch), DepthMM: p.Depth, Pull: p.Pull})
	}
	return out, nil
}

// paperResult marks a result document anew and hands it to the sheets in a
// language, whichever it was written in.
func (q *classRequest) paperResult(l words.Language) (sheet.ClassResult, error) {
	var out sheet.ClassResult
	if absent(q.Result) {
		return out, job.Faultf("noResult", "result", "The request carries no result document.")
	}
	text := []byte(q.Result)
	var inner string
	if json.Unmarshal(q.Result, &inner) == nil {
		text = []byte(inner)
	}
	doc, err := exercise.ReadSheet(text)
	if err != nil {
		return out, err
	}
	request := &exercise.Request{Do: "collect", Results: []json.RawMessage{text}}
	if !absent(q.Set) {
		request.Set = q.Set
	}
	reply, err := exercise.Do(request, l)
	if err != nil {
		return out, err
	}
	table := reply.(*exercise.Table)
	if len(table.Bad) > 0 {
		return out, table.Bad[0].Fault
	}
	row := &table.Rows[0]
	out = sheet.ClassResult{Language: l, Student: row.Student, Title: row.Title, Number: number(doc.Set), Honest: table.Honest.In(l),
		Score: words.Say("%s of %d", words.Number(math.Round(2*row.Score)/2, -1), row.Of).In(l)}
	for _, n := range row.Notes {
		out.Notes = append(out.Notes, n.In(l))
	}
	for i, c := range row.Cells {
		r := sheet.ResultRow{Code: c.Label.In(l), Mark: exercise.MarkWords(c.Mark).In(l), Tries: c.Tries, Hints: c.Hints, Solution: doc.Answers[i].Solution}
		a, err := exercise.Ask(doc.Answers[i].Ref)
		if err == nil {
			r.Kind = a.Title.In(l)
			if a.Own {
				r.Code = a.Name.In(l)
			}
		}
		if n := len(doc.Answers[i].Tries); n > 0 && err == nil {
			m, err := exercise.MarkAnswer(a.Ref, &doc.Answers[i].Tries[n-1], n-1)
			if err == nil {
				if r.Words = m.Words.In(l); !m.Valid {
					r.Words = m.Invalid.Words.In(l)
				}
			}
		}
		out.Rows = append(out.Rows, r)
	}
	return out, nil
}

// classSheet draws a worksheet, a key or a result sheet.
func (q *classRequest) classSheet(kind string, rawJob json.RawMessage, paper sheet.Paper, as sheet.Format, l words.Language) ([][]byte, int, error) {
	if kind == "result" {
		r, err := q.paperResult(l)
		if err != nil {
			return nil, 0, err
		}
		return sheet.Result(r, paper, as)
	}
	set, list, err := q.classSet(rawJob, l)
	if err != nil {
		return nil, 0, err
	}
	in, err := paperSet(set, list, q.Student, kind == "key", l)
	if err != nil {
		return nil, 0, err
	}
	if kind == "key" {
		return sheet.Key(in, paper, as)
	}
	return sheet.Worksheet(in, paper, as)
}
