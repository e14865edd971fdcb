package plan

import (
	"encoding/json"
	"testing"
)

// Exercises at the boundary: a question by its code, its own solution marked
// right, and faults as replies.
func TestExerciseCall(t *testing.T) {
	ask := func(request string, into any) {
		t.Helper()
		reply, _ := Call("exercise", []byte(request), nil, nil)
		if err := json.Unmarshal(reply, into); err != nil {
			t.Fatal(err)
		}
	}
	var q struct {
		Code, Text string
		Job        json.RawMessage
	}
	ask(`{"do":"pose","kind":"count","difficulty":2,"seed":5}`, &q)
	if q.Code == "" || q.Text == "" {
		t.Fatalf("%+v", q)
	}
	// the planner itself counts as many parts
	var p struct {
		Chosen  string
		Schemes []struct {
			ID      string
			Count   int
			Verdict string
		}
	}
	reply, _ := Call("plan", []byte(`{"job":`+string(q.Job)+`}`), nil, nil)
	if err := json.Unmarshal(reply, &p); err != nil {
		t.Fatal(err)
	}
	var s struct {
		Answer struct{ Choices map[string]string }
	}
	ask(`{"do":"solve","code":"`+q.Code+`","key":true}`, &s)
	for _, c := range p.Schemes {
		if want := map[bool]string{true: string(rune('0' + c.Count)), false: "none"}[c.Verdict == "clear"]; c.ID == p.Chosen && s.Answer.Choices["count"] != want {
			t.Errorf("the plan takes %+v, the exercise %v", c, s.Answer.Choices)
		}
	}
	answer, err := json.Marshal(s.Answer)
	if err != nil {
		t.Fatal(err)
	}
	var m struct{ Mark string }
	ask(`{"do":"mark","code":"`+q.Code+`","answer":`+string(answer)+`}`, &m)
	if m.Mark != "right" {
		t.Errorf("%+v", m)
	}
	for request, want := range map[string]string{
		`{"do":"dance"}`: "do", `{"do":"pose","code":"C2-0A7K-0"}`: "codeCheck", `{"do":"solve","kind":"size"}`: "tooSoon",
		`{"do":"pose","kind":"catch","job":{"format":"moldwright-job","version":1,"form":{"outer":[{"r":1,"z":1}]}}}`: "tooFewPoints",
		`{"do":"pose","wrong":1}`: "badRequest",
	} {
		var f struct {
			Error struct{ Code, Message string }
		}
		if ask(request, &f); f.Error.Code != want || f.Error.Message == "" {
			t.Errorf("%s: %+v, want %s", request, f, want)
		}
	}
}
