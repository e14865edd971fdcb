package sheet

import (
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"moldwright/core/form"
)

var (
	update  = flag.Bool("update", false, "renew the snapshots in testdata")
	gallery = flag.String("gallery", "", "a folder to write every sheet of the tests to, to be looked at")
)

// sheetCase is one sheet of the gallery.
type sheetCase struct {
	name  string
	in    Input
	paper Paper
	opt   *ProfileOptions // nil is what the name begins with
	class ClassSet        // of a worksheet or a key
	// result is what a result sheet shows.
	result ClassResult
}

const longName = "A very tall garden urn with a name of sixty characters, long"

// cases are the sheets that every general test goes through.
func cases() []sheetCase {
	var out []sheetCase
	add := func(name string, in Input, paper Paper, opt *ProfileOptions) {
		out = append(out, sheetCase{name: name, in: in, paper: paper, opt: opt})
	}
	named := func(name string) Input { in := sampleInput(); in.Name = name; return in }
	big := named(longName)
	big.Fired = scaled(jar(), 3.6)
	big.Wet = scaled(big.Fired, wetScale)
	low := named("Low dish")
	low.Fired = []pt{{R: 0, Z: 4}, {R: 30, Z: 4}, {R: 31, Z: 0}, {R: 34, Z: 0}, {R: 60, Z: 12}, {R: 92, Z: 18}}
	low.Wet = scaled(low.Fired, wetScale)
	closed := named("Float")
	closed.Fired = ball(30)
	closed.Wet = scaled(closed.Fired, wetScale)
	closed.Schemes = nil
	tiny := named("Bead")
	tiny.Fired = ball(4)
	tiny.Wet = scaled(tiny.Fired, wetScale)

	add("profile-half", sampleInput(), A4, &ProfileOptions{})
	add("profile-both", sampleInput(), A4, &ProfileOptions{Lines: BothLines})
	add("profile-full", sampleInput(), Letter, &ProfileOptions{Lines: WetLine, Full: true})
	add("profile-compensated", sampleInput(), A4, &ProfileOptions{Lines: BothLines, Full: true, MeasuredX: 97, MeasuredY: 98.5})
	add("profile-dish", low, A4, &ProfileOptions{Full: true})
	add("profile-closed", closed, A4, &ProfileOptions{Lines: BothLines})
	add("profile-tiny", tiny, A4, &ProfileOptions{})
	add("profile-tiny-full", tiny, A4, &ProfileOptions{Full: true})
	add("profile-a3", big, A3, &ProfileOptions{})
	add("profile-tiled", big, A4, &ProfileOptions{Lines: BothLines})
	add("profile-tiled-full", big, Letter, &ProfileOptions{Full: true, MeasuredX: 103})
	add("profile-long-name", named(longName), Letter, &ProfileOptions{})
	add("profile-no-name", named(""), A4, &ProfileOptions{})
	add("profile-mixed-name", named("花瓶 Vase № 3"), A4, &ProfileOptions{})

	for _, c := range []struct {
		name  string
		paper Paper
		opt   ProfileOptions
	}{{"half", A4, ProfileOptions{}}, {"both", A4, ProfileOptions{Lines: BothLines}}, {"full", Letter, ProfileOptions{Lines: WetLine, Full: true}}, {"template", A4, ProfileOptions{Template: true}}} {
		add("profile-solid-"+c.name, solidInput(1), c.paper, &c.opt)
	}
	add("profile-solid-tiled", solidInput(4), A4, &ProfileOptions{Lines: BothLines})

	add("report", sampleInput(), A4, nil)
	add("report-letter", sampleInput(), Letter, nil)
	add("report-a3", sampleInput(), A3, nil)
	add("report-long-name", named(longName), A4, nil)
	add("report-no-name", named(" \t"), A4, nil)
	add("report-foreign-name", named("花瓶"), A4, nil)
	add("report-accents", named("Žluťoučký džbán – façade № 4, Ærø"), A4, nil)
	catches := named("Inkwell")
	catches.Chosen = "one"
	catches.Verdict = "One part catches by 16.0 mm from 68.6 to 137.3 mm above the foot. No scheme is free of catches; this one catches least."
	catches.Traps = []Trap{{2, 6.4, 3.1, 12.7}}
	add("report-catches", catches, A4, nil)
	long := named("Long kit")
	for i := range 40 {
		long.Prints = append(long.Prints, Print{Name: fmt.Sprintf("stave %d", i+1), Size: [3]float64{181, 92.4, 110}, FitsBed: true})
		long.Cautions = append(long.Cautions, long.Cautions[i%3])
		long.Schemes = append(long.Schemes, long.Schemes[3])
	}
	add("report-long", long, A4, nil)
	closed.WhyNotFewer, closed.Order, closed.Casting, closed.Prints, closed.Cautions = "", nil, nil, nil, nil
	add("report-bare", closed, A4, nil)
	many := named("Crowded")
	many.Chosen = "one"
	many.Schemes = []Scheme{many.Schemes[0]}
	for i := range 30 {
		z := 60 + 0.8*float64(i)
		many.Schemes[0].Parts[0].Catches = append(many.Schemes[0].Parts[0].Catches, Catch{ZFrom: z, ZTo: z + 0.4, DepthMM: 0.1 * float64(i+1)})
	}
	add("report-crowded", many, A4, nil)
	add("report-sides", sidesInput(3), Letter, nil)

	add("profile-template", sampleInput(), A4, &ProfileOptions{Template: true})
	add("profile-template-closed", named("Ball"), Letter, &ProfileOptions{Template: true, Lines: WetLine})
	add("profile-template-tiled", big, A4, &ProfileOptions{Template: true, MeasuredX: 98})

	traced := named("Traced jar")
	traced.Traced = &Traced{RMSMM: 0.21, MaxMM: 0.64, BandMM: 0.8, NotSeen: []Gap{{0, 3.5, "hidden by the foot"}, {70, 84, "glare"}, {0, 0, "under the foot"}}}
	bigTraced := big
	bigTraced.Traced = traced.Traced
	add("profile-traced", traced, A4, &ProfileOptions{})
	add("profile-traced-wet", traced, Letter, &ProfileOptions{Lines: WetLine, Full: true})
	add("profile-traced-tiled", bigTraced, A4, &ProfileOptions{})
	add("report-traced", traced, A4, nil)

	add("section", sampleInput(), A4, nil)
	add("section-letter", sampleInput(), Letter, nil)
	add("section-a3", sampleInput(), A3, nil)
	add("section-sides2", sidesInput(2), A4, nil)
	add("section-sides3", sidesInput(3), A4, nil)
	add("section-sides6", sidesInput(6), Letter, nil)
	bead := sampleInput()
	bead.Name = longName
	bead.scale(0.07)
	core := sampleInput()
	core.Name = "Cast solid"
	core.Schemes[1].Parts = append(core.Schemes[1].Parts, Part{Letter: "K", Name: "core", Pull: [3]float64{0, 0, 1}, Verdict: "clear"})
	core.Schemes[1].Regions = append(core.Schemes[1].Regions, Region{"K", false, []form.Point{{R: 0, Z: 20}, {R: 20, Z: 20}, {R: 20, Z: 157}, {R: 0, Z: 157}}, 0})
	core.Order = append([]string{"K"}, core.Order...)
	add("section-core", core, A4, nil)
	add("report-core", core, A4, nil)
	add("section-tiny", bead, A4, nil)
	urn := sampleInput()
	urn.Name = "花瓶"
	urn.scale(7)
	add("section-huge", urn, A4, nil)

	add("workshop", sampleInput(), A4, nil)
	add("workshop-letter", named(longName), Letter, nil)
	add("workshop-a3", named("花瓶"), A3, nil)
	add("workshop-sides", sidesInput(6), A4, nil)
	return append(out, classCases()...)
}

// scale makes the mold larger, for drawings of it.
func (in *Input) scale(k float64) {
	in.Wet, in.Inner, in.Mold.Opening = scaled(in.Wet, k), scaled(in.Inner, k), scaled(in.Mold.Opening, k)
	for i := range in.Schemes {
		s := &in.Schemes[i]
		for j := range s.PartingHeights {
			s.PartingHeights[j] *= k
		}
		for j := range s.Regions {
			s.Regions[j].Outline = scaled(s.Regions[j].Outline, k)
		}
	}
	m := &in.Mold
	m.TrimZ, m.Radius, m.ZBottom, m.ZTop = k*m.TrimZ, k*m.Radius, k*m.ZBottom, k*m.ZTop
	for i := range m.Natches {
		n := &m.Natches[i]
		n.At, n.RadiusMM, n.RiseMM = form.Point{R: k * n.At.R, Z: k * n.At.Z}, k*n.RadiusMM, k*n.RiseMM
	}
}

func (c *sheetCase) document() (*document, error) {
	kind, _, _ := strings.Cut(c.name, "-")
	switch kind {
	case "profile":
		return profileDocument(c.in, c.paper, *c.opt)
	case "section":
		return sectionDocument(c.in, c.paper)
	case "workshop":
		return workshopDocument(c.in, c.paper)
	case "worksheet":
		return worksheetDocument(c.class, c.paper)
	case "key":
		return keyDocument(c.class, c.paper)
	case "result":
		return resultDocument(c.result, c.paper)
	}
	return reportDocument(c.in, c.paper, ReportOptions{})
}

func (c *sheetCase) write(t testing.TB, as Format) ([][]byte, int) {
	t.Helper()
	kind, _, _ := strings.Cut(c.name, "-")
	var blobs [][]byte
	var n int
	var err error
	switch kind {
	case "profile":
		blobs, n, err = Profile(c.in, c.paper, as, *c.opt)
	case "section":
		blobs, n, err = Section(c.in, c.paper, as)
	case "workshop":
		blobs, n, err = Workshop(c.in, c.paper, as)
	case "worksheet":
		blobs, n, err = Worksheet(c.class, c.paper, as)
	case "key":
		blobs, n, err = Key(c.class, c.paper, as)
	case "result":
		blobs, n, err = Result(c.result, c.paper, as)
	default:
		blobs, n, err = Report(c.in, c.paper, as, ReportOptions{})
	}
	if err != nil {
		t.Fatalf("%s: %v", c.name, err)
	}
	return blobs, n
}

// Every page: text within the page and its margins, no two texts overlapping.
func TestNothingOverlapsOrRunsOver(t *testing.T) {
	for _, c := range cases() {
		d, err := c.document()
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		for n, p := range d.pages {
			checkPage(t, c.name, n+1, p)
		}
	}
}

// checkPage finds text that runs out of the page, and text that lies on other.
func checkPage(t *testing.T, name string, n int, p *page) {
	t.Helper()
	const room = 7 // mm that every printer leaves; the bar stands in the filing margin
	for i, a := range p.boxes {
		if a.x0 < room || a.y0 < room || a.x1 > p.paper.W-marginOther+0.01 || a.y1 > p.paper.H-marginOther+0.01 {
			t.Errorf("%s page %d: %q runs out to %.1f %.1f %.1f %.1f", name, n, a.text, a.x0, a.y0, a.x1, a.y1)
		}
		for _, b := range p.boxes[:i] {
			if min(a.x1, b.x1)-max(a.x0, b.x0) > 0.05 && min(a.y1, b.y1)-max(a.y0, b.y0) > 0.05 {
				t.Errorf("%s page %d: %q lies on %q", name, n, a.text, b.text)
			}
		}
	}
}

func TestSizesAndPages(t *testing.T) {
	for _, c := range cases() {
		for _, as := range []Format{PDF, SVG} {
			blobs, n := c.write(t, as)
			if want := map[Format]int{PDF: 1, SVG: n}[as]; len(blobs) != want {
				t.Errorf("%s: %d blobs for %d pages", c.name, len(blobs), n)
			}
			for _, b := range blobs {
				if len(b) > 200_000 {
					t.Errorf("%s: %d bytes, more than 200 kB", c.name, len(b))
				}
			}
			if *gallery != "" {
				for i, b := range blobs {
					name := fmt.Sprintf("%s.pdf", c.name)
					if as == SVG {
						name = fmt.Sprintf("%s-%d.svg", c.name, i+1)
					}
					if err := os.WriteFile(filepath.Join(*gallery, name), b, 0o644); err != nil {
						t.Fatal(err)
					}
				}
			}
		}
	}
}

// Same input, same bytes, twenty times over.
func TestSameBytesEachTime(t *testing.T) {
	for _, c := range cases() {
		if c.name != "report" && c.name != "profile-tiled" && c.name != "report-accents" && c.name != "section-sides3" && c.name != "workshop" && c.name != "worksheet" && c.name != "key" {
			continue
		}
		for _, as := range []Format{PDF, SVG} {
			first, _ := c.write(t, as)
			for range 20 {
				again, _ := c.write(t, as)
				for i := range first {
					if !bytes.Equal(first[i], again[i]) {
						t.Fatalf("%s: a second writing differs", c.name)
					}
				}
			}
		}
	}
}

// The sums in testdata were written on amd64; the same test run with GOOS=js
// GOARCH=wasm holds the two together. Deflate is Go's, so that a new release
// of Go may ask for -update.
func TestSameBytesOnEveryProcessor(t *testing.T) {
	var got strings.Builder
	for _, c := range cases() {
		for _, as := range []Format{PDF, SVG} {
			blobs, _ := c.write(t, as)
			for i, b := range blobs {
				fmt.Fprintf(&got, "%s %d %d %x\n", c.name, as, i, sha256.Sum256(b))
			}
		}
	}
	compare(t, "testdata/sums.txt", got.String())
}

var fontRule = regexp.MustCompile(`@font-face\{[^}]*\}`)

// SVG snapshots, without the fonts they carry.
func TestSnapshots(t *testing.T) {
	for _, c := range cases() {
		if c.name != "report" && c.name != "profile-both" && c.name != "profile-tiled" && c.name != "report-catches" && c.name != "section" && c.name != "workshop" && c.name != "profile-template" && c.name != "worksheet-tall" && c.name != "key" && c.name != "result" {
			continue
		}
		blobs, _ := c.write(t, SVG)
		for i, b := range blobs {
			text := fontRule.ReplaceAllString(string(b), "")
			text = strings.NewReplacer("><", ">\n<").Replace(text) + "\n"
			compare(t, fmt.Sprintf("testdata/%s-%d.svg", c.name, i+1), text)
		}
	}
}

func compare(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v (renew with -update)", err)
	}
	a, b := strings.Split(string(want), "\n"), strings.Split(got, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			t.Fatalf("%s line %d (renew with -update once looked at)\n have %s\n want %s", file, i+1, b[i], a[i])
		}
	}
	if len(a) != len(b) {
		t.Fatalf("%s: %d lines, want %d", file, len(b), len(a))
	}
}

// SVG is well-formed, true in mm, titled, and holds its text as text.
func TestSVG(t *testing.T) {
	c := sheetCase{name: "report", in: sampleInput(), paper: A4}
	blobs, _ := c.write(t, SVG)
	dec := xml.NewDecoder(bytes.NewReader(blobs[0]))
	var text strings.Builder
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if s, ok := tok.(xml.CharData); ok {
			text.WriteString(string(s) + "\n")
		}
	}
	head := string(blobs[0][:200])
	if !strings.Contains(head, `width="210mm" height="297mm" viewBox="0 0 210 297"`) || !strings.Contains(head, "<title>Harbour jar") {
		t.Errorf("head is %s", head)
	}
	for _, want := range []string{"Harbour jar\n", "Two parts, parted 68.6 mm above the foot.", "@font-face{font-family:Moldwright Sans;font-weight:700;src:url(data:font/woff2;base64,"} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("no %q", want)
		}
	}
}

func TestBadInput(t *testing.T) {
	in := sampleInput()
	inf := sampleInput()
	inf.Fired[3].R = 1 / (inf.Fired[0].R) // +Inf
	huge := sampleInput()
	huge.Fired = scaled(huge.Fired, 24)
	for name, f := range map[string]func() error{
		"no points":   func() error { _, _, err := Profile(Input{}, A4, PDF, ProfileOptions{}); return err },
		"no report":   func() error { _, _, err := Report(Input{}, A4, PDF, ReportOptions{}); return err },
		"infinite":    func() error { _, _, err := Profile(inf, A4, PDF, ProfileOptions{}); return err },
		"many pages":  func() error { _, _, err := Profile(huge, A4, PDF, ProfileOptions{Full: true}); return err },
		"no mold":     func() error { _, _, err := Section(Input{Wet: in.Wet}, A4, PDF); return err },
		"no question": func() error { _, _, err := Worksheet(ClassSet{}, A4, PDF); return err },
		"no key":      func() error { _, _, err := Key(ClassSet{}, A4, PDF); return err },
		"no answers":  func() error { _, _, err := Result(ClassResult{}, A4, PDF); return err },
		"huge question": func() error {
			_, _, err := Worksheet(ClassSet{Questions: []Question{{Shape: Shape{Contour: scaled(jar(), 30)}}}}, A4, PDF)
			return err
		},
		"no card": func() error { _, _, err := Workshop(Input{}, A4, PDF); return err },
		"template": func() error {
			_, _, err := Profile(in, A4, PDF, ProfileOptions{Template: true, Lines: BothLines})
			return err
		},
		"bar":    func() error { _, _, err := Profile(in, A4, PDF, ProfileOptions{MeasuredX: 9.7}); return err },
		"paper":  func() error { _, err := PaperNamed("B5"); return err },
		"format": func() error { _, err := FormatNamed("png"); return err },
	} {
		if f() == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if p, err := PaperNamed("letter"); err != nil || p != Letter {
		t.Errorf("letter: %v %v", p, err)
	}
}

func BenchmarkReport(b *testing.B)    { bench(b, "report", PDF) }
func BenchmarkReportSVG(b *testing.B) { bench(b, "report", SVG) }
func BenchmarkProfile(b *testing.B)   { bench(b, "profile-both", PDF) }
func BenchmarkTiled(b *testing.B)     { bench(b, "profile-tiled", PDF) }

func BenchmarkSection(b *testing.B)   { bench(b, "section", PDF) }
func BenchmarkWorksheet(b *testing.B) { bench(b, "worksheet", PDF) }
func BenchmarkKey(b *testing.B)       { bench(b, "key", PDF) }
func BenchmarkWorkshop(b *testing.B)  { bench(b, "workshop", PDF) }

func bench(b *testing.B, name string, as Format) {
	for _, c := range cases() {
		if c.name == name {
			for b.Loop() {
				c.write(b, as)
			}
		}
	}
}
