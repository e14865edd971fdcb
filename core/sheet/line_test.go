package sheet

import (
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/text"
)

// The general shaper of the library (a port of HarfBuzz) is the slow twin of
// our own setting: every pair of the letters that are set plainly, in both
// weights, comes out as the same glyphs with the same advances.
func TestPlainLinesAreSetAsTheShaperSetsThem(t *testing.T) {
	f, err := loadFonts()
	if err != nil {
		t.Fatal(err)
	}
	var letters []rune
	for r := ' '; r < 0x2300; r++ {
		if isPlain(string(r)) && f.holds(r) {
			letters = append(letters, r)
		}
	}
	if len(letters) < 400 {
		t.Fatalf("only %d letters are set plainly", len(letters))
	}
	step := 1
	if testing.Short() {
		step = 7
	}
	for _, st := range []style{plain(10), plain(10).heavy()} {
		shifted := 0
		for i := 0; i < len(letters); i += step {
			// One letter with all others, before and behind it.
			var b strings.Builder
			for _, r := range letters {
				b.WriteRune(letters[i])
				b.WriteRune(r)
			}
			got, units := f.of(st).glyphs(b.String())
			var want []text.Glyph
			canvas.NewTextLine(f.face(st), b.String(), canvas.Left).WalkSpans(func(_, _ float64, span canvas.TextSpan) {
				want = append(want, span.Glyphs...)
			})
			if !slices.Equal(got, want) {
				for k := range min(len(got), len(want)) {
					if got[k] != want[k] {
						t.Fatalf("glyph %d after %q: %v, the shaper has %v", k, letters[i], got[k], want[k])
					}
				}
				t.Fatalf("%d glyphs, the shaper has %d", len(got), len(want))
			}
			sum := int32(0)
			for _, g := range want {
				sum += g.XAdvance
				if int32(f.face(st).Font.SFNT.GlyphAdvance(g.ID)) != g.XAdvance {
					shifted++
				}
			}
			if sum != units {
				t.Fatalf("a line of %d units, the shaper has %d", units, sum)
			}
		}
		if shifted < 1000/step {
			t.Errorf("only %d kerned pairs were met", shifted)
		}
	}
}

// A table of pairs that is cut anywhere is refused or read, never a crash.
func TestKerningCutShort(t *testing.T) {
	f, err := loadFonts()
	if err != nil {
		t.Fatal(err)
	}
	sfnt := f.of(plain(10)).font.SFNT
	table := sfnt.Tables["GPOS"]
	refused := 0
	for n := 0; n < len(table); n += 13 {
		if _, err := readKerning(table[:n], int(sfnt.NumGlyphs())); err != nil {
			refused++
		}
	}
	if refused < len(table)/13-2 {
		t.Errorf("%d of %d cuts refused", refused, len(table)/13)
	}
}

// What is passed as tidy must be what tidying leaves alone.
func TestTidyTextIsLeftAlone(t *testing.T) {
	for _, s := range []string{"", "plain", " outer", "outer ", "a  b", "a\tb", "a\u00a0b", "\u00a0", "12\u00a0mm", "soft\u00adhyphen", "zero\u200bwidth",
		"line\u2028break", "\ufeffmark", "\xff broken", "\ufffd", "right\u202eto", "isolate\u2066d", "Krügle – ½", "del\x7f", "c1\u0085"} {
		once := tidy(s)
		if isTidy(s) != (once == s) && s != "\ufffd" {
			t.Errorf("%q: taken for tidy %v, tidied to %q", s, isTidy(s), once)
		}
		if !isTidy(once) && once != "\ufffd" || tidy(once) != once {
			t.Errorf("%q tidied to %q, which is not tidy", s, once)
		}
	}
}
