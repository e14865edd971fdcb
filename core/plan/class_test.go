package plan

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"moldwright/core/exercise"
	"moldwright/core/sheet"
	"moldwright/core/words"
)

func ask(t *testing.T, request string) (pages int, blobs [][]byte, fault string) {
	t.Helper()
	reply, blobs := Call("sheet", []byte(request), nil, nil)
	var r struct {
		Pages int
		Error struct{ Code, Message string }
	}
	if err := json.Unmarshal(reply, &r); err != nil {
		t.Fatal(err)
	}
	return r.Pages, blobs, r.Error.Code
}

// Every kind at every difficulty makes a worksheet and a key of one side each,
// A4 and Letter, within 200 kB; the worksheet's input holds nothing of the
// solution, the key's holds reasons for all and every tick and drawing it needs.
func TestWorksheetOfEveryKind(t *testing.T) {
	for _, kind := range exercise.Kinds() {
		for d := 1; d <= exercise.Hardest; d++ {
			q, err := exercise.Ask(exercise.Ref{Kind: kind, Difficulty: d, Seed: 40 + d})
			if err != nil {
				t.Fatal(err)
			}
			for _, paper := range []string{"A4", "Letter"} {
				for _, s := range []string{"worksheet", "key"} {
					n, blobs, fault := ask(t, fmt.Sprintf(`{"sheet":%q,"paper":%q,"as":"pdf","code":%q}`, s, paper, q.Code))
					if n != 1 || fault != "" || len(blobs) != 1 || len(blobs[0]) > 200_000 {
						t.Errorf("%s of %s on %s: %d pages, fault %q", s, q.Code, paper, n, fault)
					}
				}
			}
			set := exercise.NewSet()
			open, err := paperSet(&set, []*exercise.Question{q}, "", false, words.English)
			if err != nil {
				t.Fatal(err)
			}
			if k := open.Questions[0].Key; k.Short != "" || k.Ticked != nil || k.Marks != nil || k.Steps != nil || k.Held != nil || k.Line != nil {
				t.Errorf("the worksheet of %s knows its answer: %+v", q.Code, k)
			}
			full, err := paperSet(&set, []*exercise.Question{q}, "", true, words.English)
			if err != nil {
				t.Fatal(err)
			}
			p := full.Questions[0]
			if p.Key.Short == "" || len(p.Key.Steps) == 0 || len(p.Key.Ticked) != len(p.Asks) || p.TrueSize != trueSize[kind] || (kind == "size") != (p.Shape.Contour == nil) {
				t.Errorf("the key of %s lacks something: %+v", q.Code, p.Key)
			}
			for i, a := range p.Asks {
				if a.Kind == sheet.Tick && p.Key.Ticked[i] < 0 {
					t.Errorf("%s: nothing is ticked for %q", q.Code, a.Words)
				}
			}
			if (kind == "save") && len(p.Key.Line) < 2 || kind == "where" && len(p.Key.Levels) != 1 || kind == "catch" && len(p.Key.Marks) != len(p.Key.Held) {
				t.Errorf("the key of %s draws too little: %+v", q.Code, p.Key)
			}
		}
	}
}

// A set, as an object or as the text of its file; a job of one's own; a
// question on it; a class that shuffles by name.
func TestWorksheetRequests(t *testing.T) {
	set := `{"format":"moldwright-class","version":1,"title":"First week","shuffle":true,"questions":[{"code":"` + exercise.Code("catch", 1, 7) + `"},{"kind":"size","difficulty":2,"seed":3}]}`
	text, err := json.Marshal(set)
	if err != nil {
		t.Fatal(err)
	}
	jar, err := os.ReadFile("../../site/samples/harbour-jar.json")
	if err != nil {
		t.Fatal(err)
	}
	blobs := map[string]string{}
	for name, c := range map[string]struct {
		rest  string
		pages int
	}{
		"object": {`"set":` + set, 2}, "text": {`"set":` + string(text), 2}, "beside": {`"job":` + string(jar) + `,"set":` + set, 2},
		"student": {`"student":"Ann","set":` + set, 2}, "other student": {`"student":"Bo","set":` + set, 2},
		"job": {`"job":` + string(jar), 7}, "on job": {`"kind":"where","job":` + string(jar), 1},
		"code": {`"code":"` + exercise.Code("save", 2, 5) + `"`, 1}, "code beside": {`"code":"` + exercise.Code("save", 2, 5) + `","job":` + string(jar), 1},
	} {
		n, b, fault := ask(t, `{"sheet":"worksheet","paper":"A4","as":"pdf",`+c.rest+`}`)
		if fault != "" || n > c.pages || n < 1 {
			t.Errorf("%s: %d pages, want at most %d; %s", name, n, c.pages, fault)
			continue
		}
		blobs[name] = string(b[0])
		if n, _, fault = ask(t, `{"sheet":"key","paper":"A4","as":"svg",`+c.rest+`}`); fault != "" || n < 1 {
			t.Errorf("%s: key has %d pages; %s", name, n, fault)
		}
	}
	if blobs["object"] != blobs["text"] || blobs["object"] != blobs["beside"] || blobs["code"] != blobs["code beside"] {
		t.Error("the same set gives different sheets")
	}
	if blobs["student"] == blobs["other student"] || blobs["student"] == blobs["object"] {
		t.Error("a shuffled set gives every student the same")
	}
	for rest, want := range map[string]string{
		`"set":{"format":"moldwright-class","version":1,"questions":[]}`: "no-questions",
		`"set":{"format":"other","version":1}`:                           "format",
		`"code":"C2-0A7K-0"`:                                             "codeCheck",
		`"kind":"dance"`:                                                 "kind",
		`"job":{"format":"moldwright-job","version":1}`:                  "noForm",
	} {
		if _, _, fault := ask(t, `{"sheet":"worksheet","paper":"A4","as":"pdf",`+rest+`}`); fault == "" || want != "noForm" && fault != want {
			t.Errorf("%s: fault %q, want %q", rest, fault, want)
		}
	}
}

// A result sheet shows what the core marks, not what a file says.
func TestResultSheet(t *testing.T) {
	set := exercise.NewSet()
	set.Title = "First week"
	set.Questions = []exercise.Ref{{Kind: "size", Difficulty: 2, Seed: 3}, {Kind: "count", Difficulty: 2, Seed: 5}, {Kind: "catch", Difficulty: 1, Seed: 7}}
	worked, err := exercise.Solve(set.Questions[0], 0, true)
	if err != nil {
		t.Fatal(err)
	}
	second, err := exercise.Ask(set.Questions[1])
	if err != nil {
		t.Fatal(err)
	}
	wrong := map[string]string{"count": "6", "reason": second.Answer[1].Options[0].ID}
	handed, err := exercise.HandIn(&set, "Ann", []exercise.Given{{Tries: []exercise.Answer{{Value: "108", Unit: "mm"}, worked.Answer}, Hints: 2},
		{Tries: []exercise.Answer{{Choices: wrong}}, Solution: true}})
	if err != nil {
		t.Fatal(err)
	}
	handed.Answers[1].Mark, handed.Score = exercise.Right, 3 // forged
	text, err := json.Marshal(handed)
	if err != nil {
		t.Fatal(err)
	}
	r, err := (&classRequest{Result: text}).paperResult(words.English)
	if err != nil {
		t.Fatal(err)
	}
	if r.Student != "Ann" || r.Title != "First week" || r.Score != "1 of 3" || len(r.Rows) != 3 || len(r.Notes) != 1 || !strings.Contains(r.Honest, "no secrets") {
		t.Errorf("%+v", r)
	}
	for i, want := range []sheet.ResultRow{{Kind: "True size", Mark: "right", Tries: 2, Hints: 2}, {Kind: "How many parts?", Mark: "not yet", Tries: 1, Solution: true}, {Kind: "Where does it catch?", Mark: "not answered"}} {
		got := r.Rows[i]
		if (got.Words != "") != (want.Tries > 0) {
			t.Errorf("row %d says %q", i, got.Words)
		}
		if got.Code == "" {
			t.Errorf("row %d has no code", i)
		}
		got.Code, got.Words = "", ""
		if got != want {
			t.Errorf("row %d is %+v, want %+v", i, got, want)
		}
	}
	quoted, err := json.Marshal(string(text))
	if err != nil {
		t.Fatal(err)
	}
	for _, doc := range []string{string(text), string(quoted)} {
		if n, blobs, fault := ask(t, `{"sheet":"result","paper":"A4","as":"pdf","result":`+doc+`}`); n != 1 || len(blobs) != 1 || fault != "" {
			t.Errorf("%d pages, %s", n, fault)
		}
	}
	for rest, want := range map[string]string{``: "noResult", `,"result":{"format":"x","version":1}`: "format"} {
		if _, _, fault := ask(t, `{"sheet":"result","paper":"A4","as":"pdf"`+rest+`}`); fault != want {
			t.Errorf("%q: fault %q, want %q", rest, fault, want)
		}
	}
}
