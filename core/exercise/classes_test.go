package exercise

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

// answers are many answers to a task: right, nearly, and wrong in every way that
// there is a class for.
func answers(t task) []Answer {
	right := t.solve().Answer
	out := []Answer{right}
	value := func(v float64, unit string) {
		out = append(out, Answer{Value: Typed(strconv.FormatFloat(v, 'f', 4, 64)), Unit: unit})
	}
	choices := func(fields []Field) {
		all := []map[string]string{{}}
		for _, f := range fields {
			var next []map[string]string
			for _, m := range all {
				for _, o := range f.Options {
					n := map[string]string{f.ID: o.ID}
					for k, v := range m {
						n[k] = v
					}
					next = append(next, n)
				}
			}
			all = next
		}
		for _, m := range all {
			out = append(out, Answer{Choices: m})
		}
	}
	switch x := t.(type) {
	case *catchTask:
		mark := func(p form.Point) Mark { return Mark{&p.R, p.Z} }
		out = append(out, Answer{Choices: map[string]string{"marks": "none"}})
		for i := range right.Marks {
			m := right.Marks[i]
			out = append(out, Answer{Marks: []Mark{m}}, Answer{Marks: []Mark{mark(form.Point{R: *m.R + 60, Z: m.Z})}})
			b := x.list[i].block
			for _, list := range x.other { // what catches for the other pulls
				for k := range list {
					out = append(out, Answer{Marks: []Mark{mark(list[k].middle())}})
				}
			}
			out = append(out, Answer{Marks: []Mark{mark(b)}}, Answer{Marks: []Mark{{nil, m.Z}}})
		}
		for _, p := range x.m.Pts[x.from : x.end+1] {
			out = append(out, Answer{Marks: append(slices.Clone(right.Marks), mark(p))})
		}
	case *countTask:
		choices(x.fields())
	case *whereTask:
		for z := -10.0; z < x.height+12; z += 1.7 {
			value(z, "mm")
		}
		value(x.height/2, "mm")
		value(x.wide.R, "mm")
	case *pullTask:
		var fields []Field
		for i := range x.parts {
			fields = append(fields, x.field(&x.parts[i]))
		}
		choices(fields)
	case *draftTask:
		for d := -90.0; d <= 90; d += 1.3 {
			value(d, "°")
		}
		for _, s := range x.slips() {
			value(s.value, "°")
		}
	case *sizeTask:
		for _, s := range x.slips {
			value(s.value, x.units()[0])
		}
		for k := -12.0; k <= 12; k++ {
			value(x.truth+k*x.tol(), x.units()[0])
		}
	case *drainTask:
		choices(x.fields())
	case *saveTask:
		near := x.nearest.Nodes
		given := x.job.Form.Outer
		for _, f := range [...]float64{0, 0.5, 0.97, 1.2, 2.5, 4, 30} {
			j := *x.job
			j.Form.Outer = slices.Clone(given)
			for i := range given {
				j.Form.Outer[i].R = math.Max(0, given[i].R+f*(near[i].R-given[i].R))
			}
			out = append(out, Answer{Job: text(&j)})
		}
		j := *x.job // straightened, but left without draft
		j.Form.Outer = slices.Clone(given)
		r := 0.0
		for i := range given {
			r = math.Max(r, given[i].R)
			if given[i].R > 20 && x.scheme == "one" {
				j.Form.Outer[i].R = r
			}
		}
		out = append(out, Answer{Job: text(&j)})
	}
	return out
}

func text(j *job.Job) json.RawMessage {
	b, err := j.Write()
	if err != nil {
		panic(err)
	}
	return b
}

// clean finds words that are missing or not filled in, in anything that is
// sent.
func clean(v any) error {
	b, err := json.Marshal(v)
	if err != nil {
		return err
	}
	var any any
	json.Unmarshal(b, &any)
	return walk(any)
}

var bare = regexp.MustCompile(`^(kind|pot|pull|part|given|ask|tolerance|invalid|reason|fault|notFit|catch|count|where|draft|size|drain|save|table|note|mark)\.[A-Za-z0-9+.]+$`)

func walk(v any) error {
	switch x := v.(type) {
	case string:
		if strings.ContainsAny(x, "{}") && !strings.HasPrefix(x, "{") || bare.MatchString(x) || strings.Contains(x, "NaN") || strings.Contains(x, "Inf") {
			return fmt.Errorf("words not filled in: %q", x)
		}
	case []any:
		for _, e := range x {
			if err := walk(e); err != nil {
				return err
			}
		}
	case map[string]any:
		for _, e := range x {
			if err := walk(e); err != nil {
				return err
			}
		}
	}
	return nil
}

// Every class of wrong answer is reached, has its words, and says them in full;
// no answer falls in a class that is not listed.
func TestClasses(t *testing.T) {
	for _, k := range Kinds() {
		seen := map[string]string{}
		for i := range 60 {
			r := Ref{Kind: k, Difficulty: 1 + i%Hardest, Seed: 31*i + 7}
			_, tk, err := r.made()
			if err != nil {
				t.Fatal(err)
			}
			q, err := Ask(r)
			if err != nil {
				t.Fatal(err)
			}
			if err := clean(q); err != nil {
				t.Errorf("%s: %v", q.Code, err)
			}
			for level := 1; level <= Hints; level++ {
				if h := tk.hint(level); h.Words.IsZero() || clean(h) != nil {
					t.Errorf("%s: hint %d: %v", q.Code, level, clean(h))
				}
			}
			s := tk.solve()
			if err := clean(s); err != nil || s.Short.IsZero() || len(s.Steps) == 0 {
				t.Errorf("%s: solution %+v: %v", q.Code, s, err)
			}
			for _, a := range answers(tk) {
				m := markTask(tk, &a, 0)
				if err := clean(m); err != nil {
					t.Errorf("%s: %v", q.Code, err)
				}
				if !m.Valid {
					continue
				}
				if !slices.Contains(Reasons(k), m.Code) {
					t.Errorf("%s: class %q is not listed", q.Code, m.Code)
				}
				if m.Words.IsZero() || m.Mark == Right && m.Tries != 1 {
					t.Errorf("%s: %q without words", q.Code, m.Code)
				}
				first := m.Code == Reasons(k)[0] || k == "catch" && m.Code == "free" || k == "count" && m.Code == "none"
				if first != (m.Mark == Right) {
					t.Errorf("%s: %q is marked %s", q.Code, m.Code, m.Mark)
				}
				seen[m.Code] = m.Words.String()
			}
		}
		for _, c := range Reasons(k) {
			if seen[c] == "" {
				t.Errorf("%s: class %q was not reached", k, c)
			} else {
				t.Logf("%s %s: %s", k, c, seen[c])
			}
		}
	}
}

// Every key of the table is asked for somewhere, and every key asked for in full
// is in the table.
func TestKeys(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var source strings.Builder
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") || f == "words.go" {
			continue
		}
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		source.Write(b)
	}
	code := source.String()
	for _, m := range regexp.MustCompile(`(?:say|fault)\("([A-Za-z0-9.+]+)"[,)]`).FindAllStringSubmatch(code, -1) {
		if _, ok := english[m[1]]; !ok {
			t.Errorf("%q has no words", m[1])
		}
	}
	for key := range english {
		key = strings.TrimSuffix(key, ".1") // of one thing
		_, last, _ := strings.Cut(key, ".")
		if i := strings.LastIndex(key, "."); i >= 0 {
			last = key[i+1:]
		}
		tail := strings.TrimPrefix(strings.TrimPrefix(last, "hint1"), "hint2")
		found := strings.Contains(code, `"`+key+`"`) || strings.Contains(code, `"`+last+`"`) || strings.Contains(code, `"`+tail+`"`) || strings.HasPrefix(last, "hint") ||
			strings.HasPrefix(key, "drain.") || strings.HasPrefix(key, "save.out") || strings.HasPrefix(key, "save.in") || strings.HasPrefix(key, "reason.") || strings.HasPrefix(key, "draft.slip.")
		if !found {
			t.Errorf("nothing says %q", key)
		}
	}
}

func TestReadNumber(t *testing.T) {
	for _, c := range []struct {
		text, unit string
		want       float64
		bad        string
	}{
		{"12,5", "mm", 12.5, ""}, {"12.5 mm", "", 12.5, ""}, {"1,25cm", "", 12.5, ""}, {" 1 in ", "", 25.4, ""}, {`2"`, "", 50.8, ""},
		{"1 250,5", "mm", 1250.5, ""}, {"−3", "mm", -3, ""}, {"1e2", "mm", 100, ""},
		{"", "mm", 0, "noNumber"}, {"abc", "mm", 0, "unreadable"}, {"12", "", 0, "noUnit"}, {"12 kg", "", 0, "wrongUnit"}, {"12 °", "", 0, "wrongUnit"},
		{"1.2.3", "mm", 0, "unreadable"}, {"1e999", "mm", 0, "unreadable"}, {"NaN", "mm", 0, "unreadable"},
	} {
		a := Answer{Value: Typed(c.text), Unit: c.unit}
		v, bad := a.readNumber(lengthUnits...)
		switch {
		case c.bad == "" && (bad != nil || math.Abs(v-c.want) > 1e-9):
			t.Errorf("%q %q: %g %+v, want %g", c.text, c.unit, v, bad, c.want)
		case c.bad != "" && (bad == nil || bad.Code != c.bad || bad.Words.IsZero()):
			t.Errorf("%q %q: %g %+v, want %s", c.text, c.unit, v, bad, c.bad)
		}
	}
}

// What cannot be marked costs no try; a slip of ten is told and not marked.
func TestValidationCostsNoTry(t *testing.T) {
	r := Ref{Kind: "size", Difficulty: 1, Seed: 12}
	_, tk, err := r.made()
	if err != nil {
		t.Fatal(err)
	}
	truth := tk.(*sizeTask).truth
	for _, c := range []struct{ text, want string }{
		{"", "noNumber"}, {one(truth), "noUnit"}, {one(truth) + " cm", "tenfold"}, {two(truth/10) + " mm", "tenfold"}, {"x mm", "unreadable"},
	} {
		m, err := MarkAnswer(r, &Answer{Value: Typed(c.text)}, 1)
		if err != nil || m.Valid || m.Invalid.Code != c.want || m.Tries != 1 {
			t.Errorf("%q: %+v %v, want %s", c.text, m, err, c.want)
		}
	}
	m, err := MarkAnswer(r, &Answer{Value: Typed(two(truth/10) + " cm")}, 1)
	if err != nil || m.Mark != Right || m.Tries != 2 {
		t.Errorf("in cm: %+v %v", m, err)
	}
	if _, err := Solve(r, 1, false); err == nil {
		t.Error("solved after one try")
	}
	for _, n := range []int{2, 5} {
		if _, err := Solve(r, n, false); err != nil {
			t.Error(err)
		}
	}
	if _, err := Solve(r, 0, true); err != nil {
		t.Error(err)
	}
}
