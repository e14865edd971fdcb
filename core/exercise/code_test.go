package exercise

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"flag"
	"os"
	"strings"
	"testing"
)

// The first numbers of SplitMix64 from seed 1234567 and from 0, as published
// with the reference code by Vigna (from memory).
func TestSplitMix64(t *testing.T) {
	for _, c := range []struct {
		seed uint64
		want []uint64
	}{
		{1234567, []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821}},
		{0, []uint64{0xe220a8397b1dcdaf, 0x6e789e6aa1b965f4, 0x06c45d188009454f}},
	} {
		g := NewGen(c.seed)
		for i, want := range c.want {
			if got := g.Next(); got != want {
				t.Errorf("seed %d, number %d: %d, want %d", c.seed, i, got, want)
			}
		}
	}
	g := NewGen(7)
	n := [6]int{}
	for range 60000 {
		n[g.Int(6)]++
	}
	for i, v := range n {
		if v < 9600 || v > 10400 {
			t.Errorf("%d came %d times of 60000", i, v)
		}
	}
}

// A code reads back, however it is typed; any one wrong character and any two
// neighbours swapped are found.
func TestCodes(t *testing.T) {
	g := NewGen(1)
	for range 300 {
		kind, d, seed := kinds[g.Int(len(kinds))].id, g.Between(1, 3), g.Int(Seeds)
		code := Code(kind, d, seed)
		want := Ref{Kind: kind, Difficulty: d, Seed: seed}
		same := func(typed string) {
			r, err := ReadCode(typed)
			if err != nil || r.Kind != want.Kind || r.Difficulty != want.Difficulty || r.Seed != want.Seed {
				t.Errorf("%q read as %+v, %v; want %+v", typed, r, err, want)
			}
		}
		same(code)
		same(strings.ToLower(code))
		same(" " + strings.ReplaceAll(code, "-", " – ") + "\n")
		same(strings.NewReplacer("-", "", "0", "O", "1", "l").Replace(code))
		b := strings.ReplaceAll(code, "-", "")
		for i := range b {
			for _, c := range digits {
				if byte(c) != b[i] {
					if _, err := ReadCode(b[:i] + string(c) + b[i+1:]); err == nil {
						t.Fatalf("%s with %c at %d is taken", code, c, i)
					}
				}
			}
			if i > 0 && i < 6 && b[i] != b[i-1] {
				if _, err := ReadCode(b[:i-1] + b[i:i+1] + b[i-1:i] + b[i+1:]); err == nil {
					t.Fatalf("%s with %d and %d swapped is taken", code, i-1, i)
				}
			}
		}
	}
	for _, bad := range []string{"", "C", "C2-0A7K", "C2-0A7K-XX", "C2-0A7K-*", "日本", strings.Repeat("A", 500)} {
		if _, err := ReadCode(bad); err == nil {
			t.Errorf("%q is taken", bad)
		}
	}
}

var update = flag.Bool("update", false, "write the golden files anew")

// print is what must never change of a question: form, wall, pull, marked
// point, parts, choices, and the answer but for what is measured along a curve.
func print(r Ref) (string, error) {
	q, err := Ask(r)
	if err != nil {
		return "", err
	}
	s, err := Solve(r, 0, true)
	if err != nil {
		return "", err
	}
	pull, ids := "", []string{}
	if q.Drawing.Pull != nil {
		pull = q.Drawing.Pull.ID
	}
	for _, f := range q.Answer {
		for _, o := range f.Options {
			ids = append(ids, f.ID+"="+o.ID)
		}
	}
	parts := []int{}
	for _, p := range q.Drawing.Parts {
		parts = append(parts, len(p.Outline))
	}
	a := s.Answer
	parts = append(parts, len(a.Marks))
	a.Marks, a.Job = nil, nil // measured by the core, to the last digit
	if q.Kind == "where" {
		a.Value = ""
	}
	b, err := json.Marshal([]any{q.Code, q.Name, q.Job.Form, q.Job.Clay.Wall, q.Job.Rules, pull, q.Drawing.Points, ids, parts, a})
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:6]), err
}

// Same code, same question, forever and on every processor: the prints of 480
// questions.
func TestGolden(t *testing.T) {
	var b strings.Builder
	for _, k := range Kinds() {
		for d := 1; d <= Hardest; d++ {
			for i := range 20 {
				code := Code(k, d, i*46099)
				p, err := print(Ref{Code: code})
				if err != nil {
					t.Fatal(code, err)
				}
				b.WriteString(code + " " + p + "\n")
			}
		}
	}
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("testdata/questions.txt", []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile("testdata/questions.txt")
	if err != nil {
		t.Fatal(err)
	}
	w := strings.Split(string(want), "\n")
	for i, line := range strings.Split(b.String(), "\n") {
		if i >= len(w) || line != w[i] {
			t.Fatalf("line %d: %q is no longer %q: a code that was printed must keep its question; give a changed generator a letter of its own", i+1, line, w[min(i, len(w)-1)])
		}
	}
}

func FuzzCode(f *testing.F) {
	f.Add("C2-0A7K-X")
	f.Add("n3 1111 1")
	f.Fuzz(func(t *testing.T, s string) {
		r, err := ReadCode(s)
		if err != nil {
			return
		}
		again, err := ReadCode(Code(r.Kind, r.Difficulty, r.Seed))
		if err != nil || again.Kind != r.Kind || again.Seed != r.Seed || again.Difficulty != r.Difficulty {
			t.Errorf("%q: %+v, then %+v %v", s, r, again, err)
		}
	})
}
