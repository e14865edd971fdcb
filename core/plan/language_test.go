package plan

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"moldwright/core/exercise"
	"moldwright/core/sheet"
	"moldwright/core/words"
)

// wordBox is a word on a page as poppler finds it, in points from the upper left.
type wordBox struct {
	text           string
	x0, y0, x1, y1 float64
}

var (
	pageTag = regexp.MustCompile(`<page width="([0-9.]+)" height="([0-9.]+)">`)
	wordTag = regexp.MustCompile(`<word xMin="([-0-9.]+)" yMin="([-0-9.]+)" xMax="([-0-9.]+)" yMax="([-0-9.]+)">(.*)</word>`)
)

// faultsOf are the words of a PDF that lie on one another, run out of the page
// or are cut, as poppler reads it.
func faultsOf(t *testing.T, pdf []byte) (out []string) {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed (Debian package poppler-utils)")
	}
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command("pdftotext", "-bbox", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	num := func(s string) float64 { v, _ := strconv.ParseFloat(s, 64); return v }
	var list []wordBox
	var wide, high float64
	for _, line := range strings.Split(string(text), "\n") {
		if m := pageTag.FindStringSubmatch(line); m != nil {
			list, wide, high = nil, num(m[1]), num(m[2])
		}
		m := wordTag.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		a := wordBox{m[5], num(m[1]), num(m[2]), num(m[3]), num(m[4])}
		// poppler's boxes are as high as a line; the letters fill the middle
		if a.x1-a.x0 > a.y1-a.y0 || len(a.text) < 3 {
			a.y0, a.y1 = a.y0+0.27*(a.y1-a.y0), a.y1-0.27*(a.y1-a.y0)
		} else { // it reads upward
			a.x0, a.x1 = a.x0+0.27*(a.x1-a.x0), a.x1-0.27*(a.x1-a.x0)
		}
		const edge = 7 * 72 / 25.4
		if a.x0 < edge || a.y0 < edge || a.x1 > wide-edge || a.y1 > high-edge {
			out = append(out, fmt.Sprintf("%q runs out", a.text))
		}
		if strings.Contains(a.text, "…") {
			out = append(out, fmt.Sprintf("%q is cut", a.text))
		}
		for _, b := range list {
			if math.Min(a.x1, b.x1)-math.Max(a.x0, b.x0) > 0.3 && math.Min(a.y1, b.y1)-math.Max(a.y0, b.y0) > 0.3 {
				out = append(out, fmt.Sprintf("%q lies on %q", a.text, b.text))
			}
		}
		list = append(list, a)
	}
	return out
}

// Every sheet of every sample, in a made-up language that runs a third longer and
// in those that are spoken: nothing overlaps, runs out or is cut, and summary and
// card keep to one page.
func TestSheetsInEveryLanguage(t *testing.T) {
	files, err := filepath.Glob("../../site/samples/*.json")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d samples, %v", len(files), err)
	}
	for i, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planned(text)
		if err != nil {
			t.Fatal(err)
		}
		tried := []words.Language{words.Long}
		if i%3 == 0 && !testing.Short() {
			tried = append(tried, words.Languages()...)
		}
		for _, l := range tried {
			in := p.paper(l)
			paper := []sheet.Paper{sheet.A4, sheet.Letter}[i%2]
			for name, make := range map[string]func() ([][]byte, int, error){
				"profile": func() ([][]byte, int, error) {
					return sheet.Profile(in, paper, sheet.PDF, sheet.ProfileOptions{Lines: sheet.BothLines})
				},
				"template": func() ([][]byte, int, error) {
					return sheet.Profile(in, paper, sheet.PDF, sheet.ProfileOptions{Template: true})
				},
				"section":  func() ([][]byte, int, error) { return sheet.Section(in, paper, sheet.PDF) },
				"workshop": func() ([][]byte, int, error) { return sheet.Workshop(in, paper, sheet.PDF) },
				"report":   func() ([][]byte, int, error) { return sheet.Report(in, paper, sheet.PDF, sheet.ReportOptions{}) },
				"summary": func() ([][]byte, int, error) {
					return sheet.Report(in, paper, sheet.PDF, sheet.ReportOptions{Summary: true})
				},
			} {
				what := filepath.Base(file) + " " + name + " " + string(l)
				blobs, pages, err := make()
				if err != nil {
					t.Fatalf("%s: %v", what, err)
				}
				if pages > 1 && (name == "workshop" || name == "summary") {
					t.Errorf("%s: %d pages", what, pages)
				}
				for _, f := range faultsOf(t, blobs[0]) {
					t.Errorf("%s: %s", what, f)
				}
			}
		}
	}
}

// Every kind of question on paper, likewise: one side each.
func TestWorksheetsInEveryLanguage(t *testing.T) {
	for _, kind := range exercise.Kinds() {
		for d := 1; d <= exercise.Hardest; d++ {
			q, err := exercise.Ask(exercise.Ref{Kind: kind, Difficulty: d, Seed: 40 + d})
			if err != nil {
				t.Fatal(err)
			}
			set := exercise.NewSet()
			tried := []words.Language{words.Long}
			if d == 2 && !testing.Short() {
				tried = append(tried, words.Languages()...)
			}
			for _, l := range tried {
				in, err := paperSet(&set, []*exercise.Question{q}, "", true, l)
				if err != nil {
					t.Fatal(err)
				}
				for name, make := range map[string]func(sheet.ClassSet, sheet.Paper, sheet.Format) ([][]byte, int, error){"worksheet": sheet.Worksheet, "key": sheet.Key} {
					blobs, pages, err := make(in, sheet.A4, sheet.PDF)
					if err != nil || pages != 1 {
						t.Fatalf("%s of %s in %s: %d pages, %v", name, q.Code, l, pages, err)
					}
					for _, f := range faultsOf(t, blobs[0]) {
						t.Errorf("%s of %s in %s: %s", name, q.Code, l, f)
					}
				}
			}
		}
	}
}

// At the boundary the key "language" chooses: a worksheet says so, and a result
// handed in in one language is put on paper in another.
func TestSheetRequestLanguage(t *testing.T) {
	var handed struct{ Text string }
	set := `{"format":"moldwright-class","version":1,"title":"T","questions":[{"code":"` + exercise.Code("size", 1, 7) + `"}]}`
	reply, _ := Call("exercise", []byte(`{"language":"fr","do":"result","student":"Ann","set":`+set+`,"answers":[{"tries":[{"value":"100,5 mm"}]}]}`), nil, nil)
	if err := json.Unmarshal(reply, &handed); err != nil || handed.Text == "" {
		t.Fatalf("%v: %s", err, reply)
	}
	result, err := json.Marshal(handed.Text)
	if err != nil {
		t.Fatal(err)
	}
	for _, rest := range []string{`"sheet":"worksheet","set":` + set, `"sheet":"key","set":` + set, `"sheet":"result","result":` + string(result)} {
		for _, l := range words.Languages() {
			n, blobs, fault := ask(t, `{"language":"`+string(l)+`","paper":"A4","as":"pdf",`+rest+`}`)
			if n != 1 || fault != "" || !strings.Contains(string(blobs[0]), "/Lang("+string(l)+")") {
				t.Errorf("%s %.20s: %d pages, %s", l, rest, n, fault)
			}
		}
	}
	if _, _, fault := ask(t, `{"language":"long","paper":"A4","as":"pdf","sheet":"worksheet","set":`+set+`}`); fault != "badValue" {
		t.Errorf("the made-up language may be asked for: %q", fault)
	}
}
