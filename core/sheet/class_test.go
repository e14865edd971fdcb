package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"moldwright/core/form"
)

// A worksheet with every way to ask and to answer, its key, and a result.

func sampleClass() ClassSet {
	wet := scaled(jar(), wetScale)
	inner := []form.Point{{R: 0, Z: 8}, {R: 24, Z: 8}, {R: 42, Z: 68}, {R: 28, Z: 137}}
	upper := []form.Point{{R: 48, Z: 68.6}, {R: 80, Z: 68.6}, {R: 80, Z: 160}, {R: 32, Z: 160}, {R: 32, Z: 137.3}}
	lower := []form.Point{{R: 48, Z: 68.6}, {R: 80, Z: 68.6}, {R: 80, Z: -30}, {R: 0, Z: -30}, {R: 0, Z: 3.4}, {R: 28, Z: 0}}
	down, out := [3]float64{0, 0, -1}, [3]float64{1, 0, 0}
	held := []Held{{wet[44:], 16, down}}
	reasons := []string{"Follow every place of the wall straight down.", "Held from 68.6 to 137.3 mm above the foot, 16.0 mm deep."}
	slips := []string{"Marking what stands in the way in place of the wall behind it.", "Sign turned: −17.9°."}
	return ClassSet{Title: "Undercuts, first week", Note: "Try first, then ask.", Number: "0A1B2C3D", Questions: []Question{
		{Code: "S2-0003-F", Kind: "True size", Pot: "Harbour jar", Text: "The finished pot shall measure 108 mm. How long is that in the mold?", Tolerance: "Right within 0.2 mm.",
			Asks: []Ask{{Number, "Length", nil}}, Key: Worked{Short: "123.55 mm", Ticked: []int{-1}, Steps: []string{"108 / (1 − 12.6/100) = 123.55 mm."}, Slips: []string{"94.41 mm: The wrong way round."}}},
		{Code: "N2-0003-C", Kind: "How many parts?", Pot: "Harbour jar", Text: "What is the smallest number of parts?", Given: []string{"A part may rub on 5 %."},
			Asks:  []Ask{{Tick, "Fewest parts", []string{"1", "2", "3", "No number of parts will do"}}, {Tick, "What rules out fewer?", []string{"Nothing: no pot stands in the way of one lower part.", "The form narrows above its widest place, or closes, which holds a lower part alone."}}},
			Shape: Shape{Contour: wet}, Key: Worked{Short: "2", Ticked: []int{1, 1}, Held: held, Steps: []string{"1: a lower part alone catches."}, Slips: slips}},
		{Code: "C1-0007-T", Kind: "Where does it catch?", Pot: "Harbour jar", Text: "All the plaster is one lower part. Mark where it catches.", TrueSize: true,
			Asks:  []Ask{{Marks, "Mark every stretch that catches, once", []string{"It catches nowhere"}}},
			Shape: Shape{Contour: wet, Pull: &down}, Key: Worked{Short: "68.6 to 137.3 mm", Ticked: []int{-1}, Marks: []form.Point{wet[60]}, Held: held, Steps: reasons, Slips: slips}},
		{Kind: "Which way is each part pulled?", Pot: "花瓶", Text: "The mold is split into the parts drawn. Choose the way in which each is pulled.", Given: []string{"Part P goes all round the pot in one piece."},
			Asks:  []Ask{{Tick, "Pull of part P", []string{"straight up", "straight down", "straight outward", "none of these lets it go"}}, {Tick, "Pull of part Q", []string{"straight up", "straight down", "straight outward", "none of these lets it go"}}},
			Shape: Shape{Contour: wet, Parts: []Region{{"P", false, lower, 0}, {"Q", false, upper, 0}}},
			Key:   Worked{Ticked: []int{1, 0}, Held: []Held{{wet[44:], 16, down}, {wet[4:44], 62.9, [3]float64{0, 0, 1}}}, Steps: reasons, Slips: slips}},
		{Code: "D3-0004-C", Kind: "Read the draft", Pot: "Harbour jar", Text: "A side part is pulled outward. What is the draft at the mark?", TrueSize: true,
			Asks:  []Ask{{Number, "Draft at the mark", nil}},
			Shape: Shape{Contour: wet, Turned: true, Pull: &out, Spots: []form.Point{wet[60]}}, Key: Worked{Short: "17.9°", Ticked: []int{-1}, Levels: []float64{80}, Steps: reasons, Slips: slips}},
		{Code: "E2-0003-5", Kind: "Save a part", Pot: "Harbour jar", Text: "Change the form as little as you can.", TrueSize: true,
			Asks: []Ask{{Redraw, "Change the form", nil}}, Shape: Shape{Contour: wet}, Key: Worked{Short: "move the contour by 2.30 mm", Ticked: []int{-1}, Line: inner, Steps: reasons, Slips: slips}},
	}}
}

func classCases() (out []sheetCase) {
	add := func(name string, set ClassSet, paper Paper) {
		out = append(out, sheetCase{name: name, class: set, paper: paper})
	}
	set := sampleClass()
	add("worksheet", set, A4)
	add("worksheet-letter", set, Letter)
	add("worksheet-a3", set, A3)
	add("key", set, A4)
	add("key-letter", set, Letter)
	one := func(i int, pts []form.Point) ClassSet {
		s := sampleClass()
		s.Questions = s.Questions[i : i+1]
		s.Questions[0].Shape.Contour = pts
		return s
	}
	add("worksheet-true", one(2, scaled(jar(), wetScale)), A4)
	tall := scaled(jar(), wetScale)
	for i := range tall {
		tall[i].R *= 36.0 / 42
		tall[i].Z *= 172.0 / 120
	}
	add("worksheet-tall", one(2, tall), A4)
	wide := scaled(jar(), wetScale)
	for i := range wide {
		wide[i].R *= 93 / (42 * wetScale)
	}
	add("worksheet-wide", one(2, wide), A4)
	add("worksheet-large", one(2, scaled(jar(), 3)), A4)
	add("key-large", one(2, scaled(jar(), 3)), A4)
	add("worksheet-tiny", one(5, ball(4)), Letter)
	named := sampleClass()
	named.Title, named.Student, named.Note = longName+" and "+longName, "Žofie Ærøskøbing-Łódź 花", ""
	add("worksheet-named", named, Letter)
	add("key-named", named, A4)
	none := sampleClass()
	none.Title = ""
	add("worksheet-untitled", none, A4)
	long := one(1, jar())
	for i := range 60 {
		long.Questions[0].Key.Steps = append(long.Questions[0].Key.Steps, fmt.Sprintf("Step %d: a lower part, an upper part and two side parts: each side part catches by 4.4 mm from 0.0 to 4.4 mm above the foot.", i))
	}
	add("key-long", long, A4)
	result := func(n int) ClassResult {
		r := ClassResult{Student: "Ann Őszi", Title: "Undercuts, first week", Number: "0A1B2C3D", Score: "1.5 of 3", Notes: []string{"The marks in the file differ from those of this page, which are shown."},
			Honest: "This page works without a server and keeps no secrets: who knows how can read the answers out of it. Use it to learn, not to examine."}
		for i := range n {
			r.Rows = append(r.Rows, ResultRow{"C2-0A7K-X", "Where does it catch?", []string{"right", "close", "not yet", "not answered"}[i%4], i % 5, i % 4, i%4 == 2, "Mark 1, at 33.0 mm, is what stands in the way. What catches is the plaster behind it; mark the wall there."})
		}
		return r
	}
	out = append(out, sheetCase{name: "result", result: result(5), paper: A4}, sheetCase{name: "result-most", result: result(60), paper: A4},
		sheetCase{name: "result-letter", result: result(30), paper: Letter})
	return out
}

// A question with a drawing at true size has a side of its own, all others
// keep to one side, and the answers stay in the key.
func TestWorksheetSides(t *testing.T) {
	for _, paper := range []Paper{A4, Letter, A3} {
		set := sampleClass()
		doc, err := worksheetDocument(set, paper)
		if err != nil {
			t.Fatal(err)
		}
		at := map[int][]int{}
		for n, p := range doc.pages {
			text := ""
			for _, b := range p.boxes {
				text += b.text + "\n"
			}
			if strings.Count("\n"+text, "\nName\n") != 1 || strings.Count(text, "\nDate\n") != 1 {
				t.Errorf("%s page %d has no one blank for name and date", paper.Name, n+1)
			}
			for i, q := range set.Questions {
				if strings.Contains(text, "\n"+q.Kind+"\n") {
					at[n] = append(at[n], i)
				}
				if q.TrueSize && strings.Contains(text, "\n"+q.Kind+"\n") && (!strings.Contains(text, "True size, 1:1") || !strings.Contains(text, "measures 97 mm")) {
					t.Errorf("%s: question %d is not at true size with its bars", paper.Name, i+1)
				}
				for _, s := range append(append([]string{}, q.Key.Steps...), q.Key.Slips...) {
					if strings.Contains(text, s) {
						t.Errorf("%s: the worksheet tells %q", paper.Name, s)
					}
				}
			}
		}
		asked := 0
		for n, list := range at {
			asked += len(list)
			for _, i := range list {
				if set.Questions[i].TrueSize && len(list) > 1 {
					t.Errorf("%s page %d: question %d shares its side", paper.Name, n+1, i+1)
				}
			}
		}
		if asked != len(set.Questions) {
			t.Errorf("%s: %d questions on paper, want %d", paper.Name, asked, len(set.Questions))
		}
	}
}

// A pot larger than the paper is drawn at a scale that is said; one that fits
// as a half is at true size.
func TestWorksheetScales(t *testing.T) {
	for name, want := range map[string]string{"worksheet-tall": "True size, 1:1", "worksheet-large": "Scale 1:2", "worksheet-tiny": "True size, 1:1"} {
		text := poppler(t, pdfOf(t, name), "pdftotext", "-raw", "IN", "-")
		if !strings.Contains(text, want) {
			t.Errorf("%s is not at %s:\n%s", name, want, text)
		}
	}
}

// Worksheet and key of a set carry the same number and the same codes.
func TestKeyBelongsToWorksheet(t *testing.T) {
	find := regexp.MustCompile(`Set [0-9A-F]{8}|[A-Z]\d-[0-9A-Z]{4}-[0-9A-Z]`)
	seen := map[string]map[string]bool{}
	for _, name := range []string{"worksheet", "key"} {
		seen[name] = map[string]bool{}
		for _, s := range find.FindAllString(poppler(t, pdfOf(t, name), "pdftotext", "-raw", "IN", "-"), -1) {
			seen[name][s] = true
		}
	}
	if len(seen["key"]) != 6 || fmt.Sprint(seen["key"]) != fmt.Sprint(seen["worksheet"]) {
		t.Errorf("%v", seen)
	}
}

// However many questions, a result is one page.
func TestResultIsOnePage(t *testing.T) {
	for _, c := range classCases() {
		if strings.HasPrefix(c.name, "result") {
			if d, err := c.document(); err != nil || len(d.pages) != 1 {
				t.Errorf("%s: %v", c.name, err)
			}
		}
	}
}
