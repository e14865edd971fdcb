package sheet

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// What poppler, a reader that knows nothing of how the sheets are made, makes
// of the PDFs: paper size, bars and extremes to 0.1 mm, fonts, text in order.

// poppler runs one of its tools on a sheet.
func poppler(t *testing.T, pdf []byte, tool string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(tool); err != nil {
		t.Skipf("%s is not installed (Debian package poppler-utils or qpdf)", tool)
	}
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "IN" {
			args[i] = file
		}
	}
	out, err := exec.Command(tool, args...).Output()
	if err != nil {
		t.Fatalf("%s: %v", tool, err)
	}
	return string(out)
}

func pdfOf(t *testing.T, name string) []byte {
	t.Helper()
	for _, c := range cases() {
		if c.name == name {
			blobs, _ := c.write(t, PDF)
			return blobs[0]
		}
	}
	t.Fatalf("no case %s", name)
	return nil
}

// A4 is 210 x 297 mm (ISO 216), 595.276 x 841.890 units of 1/72 in (ISO
// 32000-1, 8.3.2.3); Letter is 8.5 x 11 in (ANSI/ASME Y14.1).
func TestPaperSize(t *testing.T) {
	for name, want := range map[string][2]float64{"report": {595.276, 841.890}, "report-letter": {612, 792}, "report-a3": {841.890, 1190.551}, "profile-dish": {841.890, 595.276}, "section-a3": {841.890, 1190.551}, "workshop-letter": {612, 792}} {
		info := poppler(t, pdfOf(t, name), "pdfinfo", "-box", "IN")
		m := regexp.MustCompile(`(?m)^MediaBox:\s+(\S+)\s+(\S+)\s+(\S+)\s+(\S+)`).FindStringSubmatch(info)
		size := regexp.MustCompile(`(?m)^Page size:\s+(\S+) x (\S+) pts`).FindStringSubmatch(info)
		if m == nil || size == nil {
			t.Fatalf("%s: pdfinfo says %s", name, info)
		}
		for i, s := range size[1:] {
			if v, _ := strconv.ParseFloat(s, 64); math.Abs(v-want[i]) > 0.006 {
				t.Errorf("%s: page size %s, want %v", name, s, want[i])
			}
		}
	}
}

func TestDocumentFacts(t *testing.T) {
	pdf := pdfOf(t, "report-foreign-name")
	info := poppler(t, pdf, "pdfinfo", "IN")
	for _, want := range []string{"Title:           花瓶 – mold report\n", "Creator:         Moldwright\n", "Pages:           3\n", "Encrypted:       no\n"} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo lacks %q:\n%s", want, info)
		}
	}
	for _, bad := range []string{"CreationDate", "ModDate"} {
		if strings.Contains(info, bad) || bytes.Contains(pdf, []byte(bad)) {
			t.Errorf("the file holds a %s", bad)
		}
	}
	for _, want := range []string{"/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>", "/Lang(en)"} {
		if !bytes.Contains(pdf, []byte(want)) {
			t.Errorf("the catalog lacks %s", want)
		}
	}
	if out := poppler(t, pdf, "qpdf", "--check", "IN"); !strings.Contains(out, "No syntax or stream encoding errors found") {
		t.Error(out)
	}
}

func TestFontsEmbeddedAndSubset(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(poppler(t, pdfOf(t, "report"), "pdffonts", "IN")), "\n")[2:]
	if len(lines) != 2 {
		t.Errorf("%d fonts, want 2", len(lines))
	}
	for _, l := range lines {
		// name, type (two words), encoding, embedded, subset, unicode
		f := strings.Fields(l)
		if !strings.HasPrefix(f[0], "SUBSET+MoldwrightSans-") || f[4] != "yes" || f[5] != "yes" || f[6] != "yes" {
			t.Errorf("font %s", l)
		}
	}
}

// Text comes out letter for letter, and in the order in which it is read.
func TestTextInOrder(t *testing.T) {
	for name, order := range map[string][]string{
		"report": {"Harbour jar", "Two parts, parted 68.6 mm above the foot. Clear.", "Wet 137.3 mm high, Ø 96.1 mm, rim Ø 64.1 mm. Fired 120.0 mm high", "Section", "68.6 mm",
			"Why not fewer", "A lower part alone: the lower part catches by 16.0 mm", "Order of taking apart", "1 U upper part up", "2 L lower part down", "Parts", "clear",
			"Also judged", "A lower and an upper part 68.6 Chosen: clear", "Two side parts Each side part rubs on 12 %", "One more, with still more parts, was judged.",
			"Casting", "Casting time 18 min", "Printed kit", "176.1 × 176.1 × 98.6", "Larger than the printer's bed.", "Take care", "Plaster burns skin", "page 1 of 3",
			"Taking apart, step by step", "1 Closed", "2 U upper part, up", "4 The cast is free", "Findings", "leather hard", "The schemes that were not chosen", "Catches. The lower part catches", "16.0 mm",
			"Printed kit", "too large", "What was assumed", "ASTM C326", "Formula", "L² / k 1, published", "Sources", "1 the maker's own trial"},
		"section": {"Section of the closed mold", "1:2", "Harbour jar", "L lower part, pulled down", "U upper part, pulled up", "Natches, turned into the section", "Seam at 68.6 mm, from above",
			"S–S", "68.6", "137.3", "187.3", "30.0", "20.0", "Ø 156.1"},
		"workshop": {"Harbour jar", "Plaster: water first", "L lower part 1 1.42 kg 2.02 kg", "Slip to fill", "862 ml", "Casting time", "18 min", "21, 24 min", "Order of taking apart", "U", "upper part, up",
			"Bands and weights", "Full mold with slip", "7.4 kg", "Take care", "Plaster burns skin"},
		"worksheet": {"Undercuts, first week", "Name", "Date", "Try first, then ask.", "1", "True size", "S2-0003-F", "Length", "unit", "2", "How many parts?", "Fewest parts", "Your reasons",
			"3", "Where does it catch?", "True size, 1:1", "It catches nowhere", "4", "Which way", "own pot", "Pull of part P", "5", "Read the draft", "6", "Save a part", "draw the new outline"},
		"key":                {"Key, for the teacher", "True size", "123.55 mm", "Reasons", "108 / (1", "Common errors, and where they come from", "94.41 mm", "Fewest parts: 2", "68.6 to 137.3 mm", "16.0 mm", "Pull of part P: straight down"},
		"result":             {"Undercuts, first week", "Ann Őszi", "1.5 of 3", "Handed in", "C2-0A7K-X", "right", "not yet", "The marks in the file differ", "keeps no secrets", "page 1 of 1"},
		"profile-template":   {"Template to cut out, true size", "1:1", "Harbour jar", "Cut along the wide line", "Axis", "fired", "outside", "fired", "inside"},
		"profile-traced":     {"Traced from a picture", "0.80 mm either way", "0.21 mm (RMS), 0.64 mm at most", "by guess: 0.0 to 3.5 mm (hidden by the foot), 70.0 to 84.0 mm (glare), under the foot."},
		"profile-traced-wet": {"0.92 mm either way", "80.1 to 96.1 mm"},
		"report-traced":      {"What was assumed", "Form traced Traced from a picture"},
		"report-accents":     {"Žluťoučký džbán – façade № 4, Ærø", "Two parts"},
		"profile-both":       {"Half profile at true size", "Harbour jar", "Print at 100 %, actual size; if this bar measures 97 mm the", "printer is at 97 %.", "Ø 56.0", "Rim", "Ø 84.0", "Ø 50.0", "Foot", "120.0"},
	} {
		text := poppler(t, pdfOf(t, name), "pdftotext", "-raw", "IN", "-")
		at := 0
		for _, want := range order {
			i := strings.Index(text[at:], want)
			if i < 0 {
				t.Errorf("%s: %q does not come next in\n%s", name, want, text[at:])
				break
			}
			at += i + len(want)
		}
	}
}

func TestNames(t *testing.T) {
	for name, want := range map[string]string{"report-no-name": "Unnamed pot", "report-foreign-name": "Name not in Latin letters", "profile-mixed-name": "? Vase № 3", "profile-long-name": longName} {
		text := strings.Join(strings.Fields(poppler(t, pdfOf(t, name), "pdftotext", "-raw", "IN", "-")), " ")
		if !strings.Contains(text, want) {
			t.Errorf("%s: %q is not in %q", name, want, text)
		}
	}
}

// picture is a page in grey at so many dots to the inch.
type greyPage struct {
	w, h int
	pix  []byte
	dpi  float64
}

func rasterise(t *testing.T, pdf []byte, page, dpi int) greyPage {
	raw := poppler(t, pdf, "pdftoppm", "-gray", "-r", fmt.Sprint(dpi), "-f", fmt.Sprint(page), "-l", fmt.Sprint(page), "IN")
	r := bufio.NewReader(strings.NewReader(raw))
	var g greyPage
	var depth int
	if _, err := fmt.Fscanf(r, "P5\n%d %d\n%d\n", &g.w, &g.h, &depth); err != nil {
		t.Fatal(err)
	}
	g.pix = make([]byte, g.w*g.h)
	if _, err := readFull(r, g.pix); err != nil {
		t.Fatal(err)
	}
	g.dpi = float64(dpi)
	return g
}

func readFull(r *bufio.Reader, b []byte) (int, error) {
	n := 0
	for n < len(b) {
		k, err := r.Read(b[n:])
		if err != nil {
			return n, err
		}
		n += k
	}
	return n, nil
}

// crossings are the middles in mm of the dark runs met between a and b along
// a row at height y (or, upright, a column at x), from the lower left corner.
func (g greyPage) crossings(at, a, b float64, upright bool) (out []float64) {
	px := func(mm float64) int { return int(mm / 25.4 * g.dpi) }
	dark := func(i int) bool {
		if upright {
			return g.pix[(g.h-1-i)*g.w+px(at)] < 128
		}
		return g.pix[(g.h-1-px(at))*g.w+i] < 128
	}
	start := -1
	for i := px(a); i <= px(b); i++ {
		if dark(i) && start < 0 {
			start = i
		}
		if !dark(i) && start >= 0 {
			out = append(out, float64(start+i)/2/g.dpi*25.4)
			start = -1
		}
	}
	return out
}

func span(c []float64) float64 {
	if len(c) < 2 {
		return 0
	}
	return c[len(c)-1] - c[0]
}

// The bars, rasterised at 600 dots to the inch and measured by their tallest
// ticks, to 0.1 mm; and, compensated for a printer at 97 % and 98.5 %, as long
// as that printer makes 100 mm of. 1 in = 25.4 mm exactly.
func TestBars(t *testing.T) {
	for _, c := range []struct {
		name   string
		page   int
		kx, ky float64
		y0     float64 // foot of the strip
	}{
		{"profile-half", 1, 1, 1, 32},
		{"profile-full", 1, 1, 1, 32},
		{"profile-compensated", 1, 1 / 0.97, 1 / 0.985, 32},
		{"profile-tiled", 2, 1, 1, 10},
		{"worksheet", 2, 1, 1, 10 + 6.4},
		{"worksheet-tall", 1, 1, 1, 10 + 6.4},
	} {
		g := rasterise(t, pdfOf(t, c.name), c.page, 600)
		across := g.crossings(c.y0+11.2+3.2, 20.5, 22+102.2*c.kx, false)
		if len(across) != 3 || math.Abs(span(across)-100*c.kx) > 0.1 {
			t.Errorf("%s: bar across %v", c.name, across)
		}
		inches := g.crossings(c.y0+9.8-2.6, 20.5, 22+102.2*c.kx, false)
		if len(inches) != 5 || math.Abs(span(inches)-4*25.4*c.kx) > 0.1 {
			t.Errorf("%s: inch bar %v", c.name, inches)
		}
		mid := float64(g.h) / g.dpi * 25.4 / 2
		up := g.crossings(12+3.2, mid-60, mid+60, true)
		if len(up) != 3 || math.Abs(span(up)-100*c.ky) > 0.1 {
			t.Errorf("%s: bar up %v", c.name, up)
		}
	}
}

// A path in poppler's own SVG of a page, and what is read of it; older and
// newer versions write the width as a style or as an attribute.
var (
	cairoPath   = regexp.MustCompile(`<path [^>]*>`)
	cairoWidth  = regexp.MustCompile(`stroke-width[:=]"?([0-9.]+)`)
	cairoD      = regexp.MustCompile(` d="([^"]*)"`)
	cairoMatrix = regexp.MustCompile(`transform="matrix\(([^)]*)\)"`)
)

// widePath is the extent in mm of a wide line (0.5 mm) and how many numbers
// make it up.
type widePath struct {
	w, h float64
	n    int
}

func widePaths(svg string) (out []widePath) {
	for _, tag := range cairoPath.FindAllString(svg, -1) {
		width, d := cairoWidth.FindStringSubmatch(tag), cairoD.FindStringSubmatch(tag)
		if width == nil || d == nil {
			continue
		}
		nums, f := numbers(d[1]), []float64{1, 0, 0, 1, 0, 0}
		if m := cairoMatrix.FindStringSubmatch(tag); m != nil {
			f = numbers(m[1])
		}
		sw, _ := strconv.ParseFloat(width[1], 64)
		if math.Abs(sw*math.Hypot(f[0], f[1])-0.5*72/25.4) > 0.01 {
			continue
		}
		x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
		for i := 0; i+1 < len(nums); i += 2 {
			x, y := f[0]*nums[i]+f[2]*nums[i+1], f[1]*nums[i]+f[3]*nums[i+1]
			x0, x1, y0, y1 = math.Min(x0, x), math.Max(x1, x), math.Min(y0, y), math.Max(y1, y)
		}
		out = append(out, widePath{(x1 - x0) * 25.4 / 72, (y1 - y0) * 25.4 / 72, len(nums)})
	}
	return out
}

// longestWide is the extent in mm of the wide line with most points: the
// outline.
func longestWide(t *testing.T, svg string) (w, h float64) {
	t.Helper()
	var best widePath
	for _, p := range widePaths(svg) {
		if p.n > best.n {
			best = p
		}
	}
	if best.n < 20 {
		t.Fatalf("no outline among the paths")
	}
	return best.w, best.h
}

func numbers(s string) (out []float64) {
	for _, f := range strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" ,MLZ", r) }) {
		v, err := strconv.ParseFloat(f, 64)
		if err == nil {
			out = append(out, v)
		}
	}
	return out
}

// The jar is 120 mm high and 42 mm from its axis to its widest place, by
// construction; wet it is larger by 1.1439.
func TestProfileExtremes(t *testing.T) {
	for name, want := range map[string][2]float64{
		"profile-half":        {42, 120},
		"profile-full":        {42 * wetScale, 120 * wetScale}, // each half is one line
		"profile-compensated": {42 / 0.97, 120 / 0.985},
		"profile-closed":      {30, 60},
		"profile-template":    {42, 120},
		"worksheet-true":      {42 * wetScale, 120 * wetScale},
		"worksheet-tall":      {36 * wetScale, 172 * wetScale}, // the answers beside it
		"worksheet-wide":      {93, 120 * wetScale},            // the right half
	} {
		w, h := longestWide(t, poppler(t, pdfOf(t, name), "pdftocairo", "-svg", "-noshrink", "-nocenter", "IN", "-"))
		if math.Abs(w-want[0]) > 0.1 || math.Abs(h-want[1]) > 0.1 {
			t.Errorf("%s: %.3f x %.3f mm, want %.3f x %.3f", name, w, h, want[0], want[1])
		}
	}
}

// The section is at the scale that its block says, a reduction of ISO 5455: by
// construction the jar's lower part reaches 42 x 1.1439 + 30 = 78.04 mm from the
// axis and from -30 to 60 x 1.1439 = 68.63 mm.
func TestSectionScale(t *testing.T) {
	pdf := pdfOf(t, "section")
	if text := poppler(t, pdf, "pdftotext", "-raw", "IN", "-"); !strings.Contains(text, "1:2") {
		t.Fatalf("not at 1:2:\n%s", text)
	}
	found := 0
	for _, p := range widePaths(poppler(t, pdf, "pdftocairo", "-svg", "-noshrink", "-nocenter", "IN", "-")) {
		if math.Abs(p.w-78.04/2) < 0.05 && math.Abs(p.h-98.63/2) < 0.05 {
			found++
		}
	}
	if found != 2 {
		t.Errorf("%d halves of the lower part at 1:2, want 2", found)
	}
}

// Ink keeps off the outer 7 mm of every page, which printers do not reach.
func TestInkKeepsItsMargin(t *testing.T) {
	for _, name := range []string{"report", "profile-both", "profile-tiled", "profile-compensated", "report-long", "section", "section-sides6", "section-huge", "workshop", "profile-template", "worksheet", "key", "result"} {
		g := rasterise(t, pdfOf(t, name), 1, 72)
		edge := int(7 / 25.4 * g.dpi)
		for y := range g.h {
			for x := range g.w {
				if (x < edge || y < edge || x >= g.w-edge || y >= g.h-edge) && g.pix[y*g.w+x] < 250 {
					t.Fatalf("%s: ink at %d, %d", name, x, y)
				}
			}
		}
	}
}
