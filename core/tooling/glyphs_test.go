package tooling

import (
	"flag"
	"fmt"
	"go/format"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
)

var update = flag.Bool("update", false, "write the outlines of letters from the font")

// The outlines of letters are those of the sheets' bold font, its curves cut
// into chords; -update takes them from the font anew.
func TestLettersAreTheFonts(t *testing.T) {
	font, err := canvas.LoadFontFile("../sheet/fonts/MoldwrightSans-Bold.ttf", canvas.FontBold)
	if err != nil {
		t.Fatal(err)
	}
	face := font.Face(1000, canvas.Black)
	path := func(s string) *canvas.Path {
		p, _, err := face.ToPath(s)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	scale := capHeight / path("H").FastBounds().H()
	var b strings.Builder
	b.WriteString(`package tooling

// Outlines of the letters and figures of the bold font that the sheets are set
// in (core/sheet/fonts, with its licence), for marks in plastic. Made by go test
// -update from the font; only these few are needed, so the font itself stays
// out of this room.

// capHeight is the height of a capital in the units of outlines.
const capHeight = 200

// outline is one letter: how far it sets the next one off, and its loops as
// pairs of x and y from the foot of its left edge. The first loop runs
// counterclockwise round the letter, the others clockwise round its counters.
type outline struct {
	wide  int16
	loops [][]int16
}

// letters are A to Z and 0 to 9.
var letters = [36]outline{
`)
	for _, r := range lettersInOrder {
		p := path(string(r)).Settle(canvas.NonZero) // curves are cut into fine chords
		var loops [][]int16
		for _, sub := range p.Split() {
			var l []int16
			for _, q := range sub.Coords() {
				x, y := int16(math.Round(q.X*scale)), int16(math.Round(q.Y*scale))
				if n := len(l); n < 2 || l[n-2] != x || l[n-1] != y {
					l = append(l, x, y)
				}
			}
			if n := len(l); l[0] == l[n-2] && l[1] == l[n-1] {
				l = l[:n-2]
			}
			loops = append(loops, fewer(l))
		}
		most := 0
		for i := range loops {
			if math.Abs(areaOf(loops[i])) > math.Abs(areaOf(loops[most])) {
				most = i
			}
		}
		loops[0], loops[most] = loops[most], loops[0]
		fmt.Fprintf(&b, "\t{%d, [][]int16{ // %c\n", int(math.Round(face.TextWidth(string(r))*scale)), r)
		for i, l := range loops {
			if (areaOf(l) > 0) != (i == 0) {
				turned := make([]int16, 0, len(l))
				for k := len(l) - 2; k >= 0; k -= 2 {
					turned = append(turned, l[k], l[k+1])
				}
				l = turned
			}
			fmt.Fprintf(&b, "\t\t{%s},\n", strings.Trim(strings.ReplaceAll(fmt.Sprint(l), " ", ", "), "[]"))
		}
		b.WriteString("\t}},\n")
	}
	b.WriteString("}\n")
	want, err := format.Source([]byte(b.String()))
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("glyphs.go", want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile("glyphs.go")
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Error("glyphs.go is not what the font gives; run go test ./core/tooling -run LettersAreTheFonts -update")
	}
}

// fewer leaves out corners of a loop that lie within the tolerance of the chord
// between those kept (D. Douglas and T. Peucker, 1973).
func fewer(l []int16) []int16 {
	const tol = 1.2 // of 200 to a capital: 0.04 mm in marks 6 mm high
	n := len(l) / 2
	at := func(i int) (x, y float64) { return float64(l[2*(i%n)]), float64(l[2*(i%n)+1]) }
	far := func(from, to int) (most float64, k int) {
		x0, y0 := at(from)
		x1, y1 := at(to)
		long := math.Hypot(x1-x0, y1-y0)
		for i := from + 1; i < to; i++ {
			x, y := at(i)
			d := math.Hypot(x-x0, y-y0)
			if long > 0 {
				t := math.Max(0, math.Min(1, ((x-x0)*(x1-x0)+(y-y0)*(y1-y0))/(long*long)))
				d = math.Hypot(x-x0-t*(x1-x0), y-y0-t*(y1-y0))
			}
			if d > most {
				most, k = d, i
			}
		}
		return most, k
	}
	first := 0 // the corner farthest to the left is kept
	for i := range n {
		if l[2*i] < l[2*first] {
			first = i
		}
	}
	l = append(append([]int16{}, l[2*first:]...), l[:2*first]...)
	var out []int16
	var keep func(from, to int)
	keep = func(from, to int) {
		if d, k := far(from, to); d > tol {
			keep(from, k)
			keep(k, to)
			return
		}
		out = append(out, l[2*from], l[2*from+1])
	}
	_, k := far(0, n)
	keep(0, k)
	keep(k, n)
	return out
}

const lettersInOrder = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"

func areaOf(l []int16) float64 {
	sum := 0.0
	for i := 0; i < len(l); i += 2 {
		k := (i + 2) % len(l)
		sum += float64(l[i])*float64(l[k+1]) - float64(l[k])*float64(l[i+1])
	}
	return sum / 2
}
