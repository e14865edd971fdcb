package exercise

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// ownPot is one of the pots worked by hand.
func ownPot(t testing.TB, name string) json.RawMessage {
	b, err := os.ReadFile("../../testdata/pots/" + name + ".txt")
	if err != nil {
		t.Fatal(err)
	}
	nodes, faults := form.ReadRows(string(b), form.Columns{Units: "mm"})
	if faults != nil {
		t.Fatal(faults)
	}
	j := job.Defaults()
	j.Name, j.Form.Size, j.Form.Outer = "Own "+name, job.SizeMold, nodes
	return text(&j)
}

var pots = []string{"open-bowl", "round-jar", "straight-cylinder", "tall-vase", "tapered-foot", "waisted-vase", "dovetail-foot"}

// Pots worked by hand, beside their files in testdata: what is right follows
// from there.
func TestOwnPots(t *testing.T) {
	for _, c := range []struct{ pot, kind, field, want string }{
		{"open-bowl", "count", "count", "1"}, {"open-bowl", "count", "reason", "free"},
		{"round-jar", "count", "count", "2"}, {"round-jar", "count", "reason", "narrows"},
		{"straight-cylinder", "count", "count", "3"}, {"straight-cylinder", "count", "reason", "straight+lower"},
		{"dovetail-foot", "count", "count", noneID}, {"open-bowl", "drain", "slip", "drains"},
	} {
		s, err := Solve(Ref{Kind: c.kind, Difficulty: 1, Job: ownPot(t, c.pot)}, 0, true)
		if err != nil || s.Answer.Choices[c.field] != c.want {
			t.Errorf("%s %s: %v %v, want %s", c.pot, c.kind, s, err, c.want)
		}
	}
	// the round jar parts at its equator, z = 40
	for v, want := range map[string]string{"40 mm": Right, "4 cm": Right, "45,5 mm": Close, "60 mm": NotYet, "20 mm": NotYet} {
		m, err := MarkAnswer(Ref{Kind: "where", Job: ownPot(t, "round-jar")}, &Answer{Value: Typed(v)}, 0)
		if err != nil || m.Mark != want {
			t.Errorf("where %s: %+v %v, want %s", v, m, err, want)
		}
	}
	for _, pot := range pots {
		for _, k := range Kinds() {
			for d := 1; d <= Hardest; d++ {
				r := Ref{Kind: k, Difficulty: d, Seed: 5 * d, Job: ownPot(t, pot)}
				q, err := Ask(r)
				if err != nil {
					if f, ok := err.(job.Faults); !ok || f[0].Code != "notFit" {
						t.Errorf("%s %s: %v", pot, k, err)
					}
					continue
				}
				if q.Code != "" || !q.Own || q.Name.String() != "Own "+pot {
					t.Errorf("%s %s: %+v", pot, k, q)
				}
				s, err := Solve(r, 0, true)
				if err != nil {
					t.Fatal(err)
				}
				if m, err := MarkAnswer(r, &s.Answer, 0); err != nil || m.Mark != Right {
					t.Errorf("%s %s %d: own solution is marked %+v %v", pot, k, d, m, err)
				}
				if err := clean([]any{q, s}); err != nil {
					t.Errorf("%s %s: %v", pot, k, err)
				}
			}
		}
	}
}

// call does a request as it comes over the boundary.
func call(t *testing.T, request string, reply any) {
	t.Helper()
	callIn(t, words.English, request, reply)
}

// callIn does it in a language.
func callIn(t *testing.T, l words.Language, request string, reply any) {
	t.Helper()
	var q Request
	if err := json.Unmarshal([]byte(request), &q); err != nil {
		t.Fatal(err)
	}
	r, err := Do(&q, l)
	if err != nil {
		t.Fatalf("%s: %v", request, err)
	}
	words.Put(l, &r)
	b, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, reply); err != nil {
		t.Fatal(err)
	}
}

func quoted(v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return string(b)
}

// A teacher draws a set with an own pot in it, two students answer and hand in,
// and the table shows what the core marks, whatever the files say.
func TestClassroom(t *testing.T) {
	var set struct {
		Text      string
		Questions []struct{ Code string }
		Honest    string
	}
	own := `{"kind":"count","difficulty":1,"job":` + string(ownPot(t, "round-jar")) + `}`
	call(t, `{"do":"set","set":{"format":"moldwright-class","version":1,"title":"Tuesday","shuffle":true,"questions":[`+own+`]},
		"draw":{"kinds":["catch","size","where"],"difficulty":1,"each":2,"seed":40}}`, &set)
	if len(set.Questions) != 7 || set.Honest == "" {
		t.Fatalf("%+v", set)
	}
	text := quoted(set.Text)
	var again struct{ Text string }
	call(t, `{"do":"set","set":`+text+`}`, &again)
	if again.Text != set.Text {
		t.Error("a set that was read and saved is another")
	}
	hand := func(student string, wrong bool) string {
		s, err := ReadSet([]byte(set.Text))
		if err != nil {
			t.Fatal(err)
		}
		refs, err := s.For(student)
		if err != nil {
			t.Fatal(err)
		}
		var given []Given
		for _, r := range refs {
			sol, err := Solve(r, 0, true)
			if err != nil {
				t.Fatal(err)
			}
			g := Given{Tries: []Answer{sol.Answer}}
			if wrong && r.Kind == "size" {
				g = Given{Tries: []Answer{{Value: "1 mm"}, {Value: "2 mm"}}, Hints: 3, Solution: true}
			}
			given = append(given, g)
		}
		var out struct{ Text string }
		call(t, `{"do":"result","set":`+text+`,"student":`+quoted(student)+`,"answers":`+quoted(given)+`}`, &out)
		return out.Text
	}
	a, b := hand("Ada, \"the\" potter", false), hand("=Ben", true)
	forged := strings.Replace(b, `"mark": "notYet"`, `"mark": "right"`, 2)
	forged = strings.Replace(forged, `"score": 0,`, `"score": 1,`, 2)
	var table Table
	call(t, `{"do":"collect","set":`+text+`,"results":[`+quoted(a)+`,`+b+`,`+quoted(forged)+`,"no file",{"format":"moldwright-job"}]}`, &table)
	if len(table.Rows) != 3 || len(table.Bad) != 2 || len(table.Columns) != 7 {
		t.Fatalf("%d rows, %d bad, %d columns", len(table.Rows), len(table.Bad), len(table.Columns))
	}
	for i, want := range []struct {
		score float64
		tries int
		notes int
	}{{7, 7, 0}, {5, 9, 0}, {5, 9, 1}} {
		r := table.Rows[i]
		if r.Score != want.score || r.Of != 7 || r.Tries != want.tries || len(r.Notes) != want.notes {
			t.Errorf("row %d: %+v, want %+v", i, r, want)
		}
	}
	if table.Rows[1].Hints != 6 || table.Rows[1].Solved != 2 {
		t.Errorf("%+v", table.Rows[1])
	}
	rows, err := csv.NewReader(strings.NewReader(table.CSV)).ReadAll()
	if err != nil || len(rows) != 4 || rows[1][0] != "Ada, \"the\" potter" || rows[2][0] != "'=Ben" || rows[1][9] != "7.0" {
		t.Errorf("%v\n%s", err, table.CSV)
	}
}

// Seeds hang on the name, not on its spaces and case.
func TestShuffle(t *testing.T) {
	s := NewSet()
	s.Questions, _ = Draw([]string{"catch", "draft"}, 2, 3, 1)
	seeds := func(name string) string {
		r, err := s.For(name)
		if err != nil {
			t.Fatal(err)
		}
		return quoted(r)
	}
	if seeds("Ada") != seeds("Ben") {
		t.Error("seeds differ without shuffling")
	}
	s.Shuffle = true
	if seeds("Ada") == seeds("Ben") || seeds("Ada  Lo") != seeds(" ada lo ") {
		t.Error("shuffling does not follow the name")
	}
}

// Bad documents are refused with a fault that says why.
func TestBadDocuments(t *testing.T) {
	for want, text := range map[string]string{
		"notJSON":   `{"format":`,
		"format":    `{"format":"moldwright-job","version":1}`,
		"version":   `{"format":"moldwright-class","version":2}`,
		"kind":      `{"format":"moldwright-class","version":1,"questions":[{"kind":"x"}]}`,
		"codeCheck": `{"format":"moldwright-class","version":1,"questions":[{"code":"C2-0A7K-0"}]}`,
		"longText":  `{"format":"moldwright-class","version":1,"title":"` + strings.Repeat("a", 999) + `"}`,
		"manyItems": `{"format":"moldwright-class","version":1,"questions":[` + strings.Repeat(`{"kind":"size"},`, 80) + `{"kind":"size"}]}`,
	} {
		_, err := ReadSet([]byte(text))
		if f, ok := err.(*job.Fault); !ok || f.Code != want || f.Message.IsZero() || strings.Contains(f.Message.String(), "{") && want != "notJSON" {
			t.Errorf("%s: %v", want, err)
		}
	}
}

// Whatever an answer holds, marking gives a reply that can be sent.
func FuzzAnswer(f *testing.F) {
	f.Add(uint8(0), uint16(3), `{"marks":[{"r":1e300,"z":-4}]}`)
	f.Add(uint8(1), uint16(3), `{"choices":{"count":"3","reason":"trap"}}`)
	f.Add(uint8(2), uint16(9), `{"value":"1e5","unit":"cm"}`)
	f.Add(uint8(4), uint16(9), `{"value":-12.5,"unit":"°"}`)
	f.Add(uint8(7), uint16(1), `{"job":{"format":"moldwright-job","version":1,"form":{"outer":[{"r":0,"z":0},{"r":30,"z":0},{"r":40,"z":50}]}}}`)
	f.Fuzz(func(t *testing.T, kind uint8, seed uint16, body string) {
		var a Answer
		if json.Unmarshal([]byte(body), &a) != nil {
			return
		}
		r := Ref{Kind: kinds[int(kind)%len(kinds)].id, Difficulty: 1 + int(seed)%3, Seed: int(seed)}
		m, err := MarkAnswer(r, &a, 0)
		if err != nil {
			t.Fatal(err)
		}
		if m.Valid == (m.Invalid != nil) || m.Valid && m.Words.IsZero() {
			t.Errorf("%+v", m)
		}
		if _, err := json.Marshal(m); err != nil {
			t.Error(err)
		}
	})
}

func BenchmarkPose(b *testing.B) {
	for _, k := range Kinds() {
		b.Run(k, func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				if _, err := Ask(Ref{Kind: k, Difficulty: 1 + i%3, Seed: i % 1000}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Questions drawn together differ, and the next one is another.
func TestDrawnQuestionsDiffer(t *testing.T) {
	list, err := Draw([]string{"catch", "count"}, 2, 3, Seeds-1) // over the end and round
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, r := range list {
		if seen[r.Code] {
			t.Errorf("%s is drawn twice", r.Code)
		}
		seen[r.Code] = true
	}
	next, err := list[0].Next()
	if err != nil || next.Code == list[0].Code || next.Seed != 0 {
		t.Errorf("after %s comes %s (seed %d), %v", list[0].Code, next.Code, next.Seed, err)
	}
}
