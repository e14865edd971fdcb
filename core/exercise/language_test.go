package exercise

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"moldwright/core/words"
)

// wordKeys are the keys of replies under which there are words.
var wordKeys = map[string]bool{"words": true, "title": true, "text": true, "given": true, "tolerance": true, "name": true,
	"short": true, "steps": true, "slips": true, "honest": true, "label": true, "notes": true, "columns": true, "csv": true, "message": true}

// wordless is a reply without its words.
func wordless(v any) any {
	switch x := v.(type) {
	case map[string]any:
		for k := range x {
			if wordKeys[k] {
				x[k] = nil
			} else {
				x[k] = wordless(x[k])
			}
		}
	case []any:
		for i := range x {
			x[i] = wordless(x[i])
		}
	}
	return v
}

// A code gives the same question, the same answer and the same marks in every
// language: only words differ.
func TestOneQuestionInEveryLanguage(t *testing.T) {
	for _, k := range Kinds() {
		for d := 1; d <= Hardest; d++ {
			for seed := range 5 {
				code := Code(k, d, 311*seed)
				var worked struct{ Answer json.RawMessage }
				call(t, `{"do":"solve","key":true,"code":"`+code+`"}`, &worked)
				for _, do := range []string{`"do":"pose"`, `"do":"hint","level":3`, `"do":"solve","tries":2`, `"do":"mark","answer":` + string(worked.Answer),
					`"do":"mark","answer":{"value":"1,5"}`, `"do":"mark","answer":{"value":"31,5 mm","marks":[{"z":30}]}`} {
					said := map[words.Language]string{}
					for _, l := range words.Languages() {
						var reply any
						callIn(t, l, `{`+do+`,"code":"`+code+`"}`, &reply)
						said[l] = quoted(wordless(reply))
						if said[l] = strings.ReplaceAll(said[l], quoted(potName(t, code, l)), `""`); said[l] != said[words.English] {
							t.Errorf("%s %s: %s has\n%.2000s\nand English\n%.2000s", code, do, l, said[l], said[words.English])
						}
					}
				}
			}
		}
	}
}

func potName(t *testing.T, code string, l words.Language) string {
	t.Helper()
	q, err := Ask(Ref{Code: code})
	if err != nil {
		t.Fatal(err)
	}
	return q.Name.In(l)
}

// Students who answered in different languages are collected in any one: the
// marks are those of the core, and the words those of the reader.
func TestCollectAcrossLanguages(t *testing.T) {
	var set struct{ Text string }
	call(t, `{"do":"set","set":{"format":"moldwright-class","version":1,"title":"Tuesday","questions":[{"kind":"catch","job":`+string(ownPot(t, "round-jar"))+`}]},
		"draw":{"kinds":["size","where","save"],"difficulty":2,"each":1,"seed":40}}`, &set)
	s, err := ReadSet([]byte(set.Text))
	if err != nil {
		t.Fatal(err)
	}
	var given []Given
	for i, r := range s.Questions {
		worked, err := Solve(r, 0, true)
		if err != nil {
			t.Fatal(err)
		}
		// a comma is typed where the page says numbers with one
		worked.Answer.Value = Typed(strings.Replace(string(worked.Answer.Value), ".", ",", 1))
		if given = append(given, Given{Tries: []Answer{worked.Answer}}); i == 2 {
			given[i].Tries = []Answer{{Value: "2 Zoll"}, {Value: "x"}, {Value: "1,5 mm"}}
		}
	}
	var files []string
	for _, l := range words.Languages() {
		var out struct{ Text string }
		callIn(t, l, `{"do":"result","set":`+quoted(set.Text)+`,"student":"`+string(l)+`","answers":`+quoted(given)+`}`, &out)
		files = append(files, quoted(out.Text))
	}
	for _, l := range words.Languages() {
		var table Table
		callIn(t, l, `{"do":"collect","set":`+quoted(set.Text)+`,"results":[`+strings.Join(files, ",")+`]}`, &table)
		if len(table.Rows) != 4 || len(table.Bad) != 0 || len(table.Columns) != 4 {
			t.Fatalf("%s: %+v", l, table)
		}
		for i := range table.Rows {
			r := &table.Rows[i]
			if r.Score != 3 || r.Of != 4 || r.Tries != 6 || len(r.Notes) != 0 {
				t.Errorf("%s: row %d: %+v", l, i, r)
			}
			if got, want := fmt.Sprint(r.Cells), fmt.Sprint(table.Rows[0].Cells); got != want {
				t.Errorf("%s: row %d says %s, row 0 %s", l, i, got, want)
			}
		}
		if got, want := table.Rows[0].Cells[2].Words.String(), say("mark.notYet").In(l); !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q in it", l, got, want)
		}
		in := csv.NewReader(strings.NewReader(table.CSV))
		if l != words.English {
			in.Comma = ';'
		}
		rows, err := in.ReadAll()
		if want := words.Number(3, 1).In(l); err != nil || len(rows) != 5 || len(rows[1]) != 14 || rows[1][6] != want {
			t.Errorf("%s: %v\n%s", l, err, table.CSV)
		}
	}
}

// Units written out in any of the languages are read.
func TestUnitsOfEveryLanguage(t *testing.T) {
	for text, want := range map[string]float64{"2 Zoll": 50.8, "2 pouces": 50.8, "2 pulgadas": 50.8, "12,5 mm": 12.5} {
		a := Answer{Value: Typed(text)}
		if v, bad := a.readNumber(lengthUnits...); bad != nil || v != want {
			t.Errorf("%q is read as %g %+v", text, v, bad)
		}
	}
	for _, text := range []string{"−3 Grad", "-3 degrés", "-3 grados", "-3°"} {
		a := Answer{Value: Typed(text)}
		if v, bad := a.readNumber("°"); bad != nil || v != -3 {
			t.Errorf("%q is read as %g %+v", text, v, bad)
		}
	}
	for _, text := range []string{"7,5 Prozent", "7,5 pour cent", "7,5 por ciento", "7.5 %"} {
		a := Answer{Value: Typed(text)}
		if v, bad := a.readNumber("%"); bad != nil || v != 7.5 {
			t.Errorf("%q is read as %g %+v", text, v, bad)
		}
	}
}

// Every gap of a template is one that its callers fill: none is left open in
// what is said. Gaps are letters in braces; anything else in braces is a slip.
func TestTemplatesHaveSoundGaps(t *testing.T) {
	for key, text := range english {
		rest := string(text)
		for {
			_, after, open := strings.Cut(rest, "{")
			if !open {
				break
			}
			gap, tail, shut := strings.Cut(after, "}")
			if !shut || gap == "" || strings.ContainsAny(gap, " {%") {
				t.Errorf("%s: %q", key, text)
				break
			}
			rest = tail
		}
	}
}
