package sheet

import (
	_ "embed"
	"encoding/base64"
	"fmt"
	"image/color"
	"strings"

	"github.com/tdewolff/canvas"
)

// The one typeface of all sheets, in two weights: a Latin subset of an openly
// licensed humanist sans, see fonts/OFL.txt. TTF is parsed in a fraction of
// the time of WOFF2 (no decompression) and serves measuring and PDF; WOFF2 is
// a third of the size and is what an SVG carries.

//go:embed fonts/MoldwrightSans-Regular.ttf
var regularTTF []byte

//go:embed fonts/MoldwrightSans-Bold.ttf
var boldTTF []byte

//go:embed fonts/MoldwrightSans-Regular.woff2
var regularWOFF2 []byte

//go:embed fonts/MoldwrightSans-Bold.woff2
var boldWOFF2 []byte

// familyName is written into an SVG as the font's family; the generic name
// after it serves viewers that ignore fonts carried in the file.
const familyName = "Moldwright Sans, sans-serif"

// The one type scale, in points; each step about 1.25 of the one below.
const (
	sizeSmall = 7.0
	sizeBody  = 8.75
	sizeLead  = 11.0
	sizeHead  = 13.75
	sizeTitle = 21.5
)

const mmPerPt = 25.4 / 72

// style is how a piece of text is set.
type style struct {
	size  float64 // points
	bold  bool
	color color.RGBA
}

var (
	black = color.RGBA{0, 0, 0, 255}
	grey  = color.RGBA{85, 85, 85, 255} // 7.5:1 on white
	white = color.RGBA{255, 255, 255, 255}
	pale  = color.RGBA{200, 200, 200, 255}
	// From the palette of Okabe and Ito, safe for colour-blind eyes.
	blue      = color.RGBA{0, 114, 178, 255}
	vermilion = color.RGBA{213, 94, 0, 255}
)

func (s style) at(size float64) style { s.size = size; return s }
func (s style) heavy() style          { s.bold = true; return s }
func (s style) in(c color.RGBA) style { s.color = c; return s }
func (s style) lead() float64         { return s.size * mmPerPt * 1.26 }
func (s style) capHeight() float64    { return s.size * mmPerPt * 0.7165 }
func plain(size float64) style        { return style{size: size, color: black} }
func faint(size float64) style        { return style{size: size, color: grey} }

// fonts are the faces of one document.
type fonts struct {
	family *canvas.FontFamily
	faces  map[style]*canvas.FontFace
	holder map[style]*canvas.Text // of one line, to be filled with letters and written
	lines  map[lineKey]*setLine   // set once for all places where they stand
	weight [2]weight              // regular, bold
}

// weight is what setting a line needs of one font: the glyphs and advances of
// ASCII at hand, the others from the font.
type weight struct {
	font    *canvas.Font
	glyph   [128]uint16
	advance [128]uint16 // font units
	kern    *kerning
}

func loadFonts() (*fonts, error) {
	f := &fonts{family: canvas.NewFontFamily(familyName), faces: map[style]*canvas.FontFace{},
		holder: map[style]*canvas.Text{}, lines: map[lineKey]*setLine{}}
	if err := f.family.LoadFont(regularTTF, 0, canvas.FontRegular); err != nil {
		return nil, fmt.Errorf("regular font: %w", err)
	}
	if err := f.family.LoadFont(boldTTF, 0, canvas.FontBold); err != nil {
		return nil, fmt.Errorf("bold font: %w", err)
	}
	for i, st := range [...]style{plain(sizeBody), plain(sizeBody).heavy()} {
		w := &f.weight[i]
		w.font = f.face(st).Font
		sfnt := w.font.SFNT
		for c := range w.glyph {
			w.glyph[c] = sfnt.GlyphIndex(rune(c))
			w.advance[c] = sfnt.GlyphAdvance(w.glyph[c])
		}
		var err error
		if w.kern, err = readKerning(sfnt.Tables["GPOS"], int(sfnt.NumGlyphs())); err != nil {
			return nil, err
		}
	}
	return f, nil
}

// of is the weight of a style.
func (f *fonts) of(st style) *weight {
	if st.bold {
		return &f.weight[1]
	}
	return &f.weight[0]
}

// letter is the glyph of a letter and its advance.
func (w *weight) letter(r rune) (glyph, advance uint16) {
	if r < 128 {
		return w.glyph[r], w.advance[r]
	}
	glyph = w.font.SFNT.GlyphIndex(r)
	return glyph, w.font.SFNT.GlyphAdvance(glyph)
}

func (f *fonts) face(st style) *canvas.FontFace {
	face := f.faces[st]
	if face == nil {
		weight := canvas.FontRegular
		if st.bold {
			weight = canvas.FontBold
		}
		face = f.family.Face(st.size, st.color, weight)
		f.faces[st] = face
	}
	return face
}

// holds tells whether the fonts have the letter. Both weights hold the same.
func (f *fonts) holds(r rune) bool {
	glyph, _ := f.weight[0].letter(r)
	return glyph != 0
}

// fontRules are the CSS rules that carry the weights used into an SVG. The
// address is left unquoted: its letters need no quotes, and quotes would be
// escaped on their way into the file.
func fontRules(regular, bold bool) string {
	var b strings.Builder
	rule := func(weight int, data []byte) {
		fmt.Fprintf(&b, "@font-face{font-family:Moldwright Sans;font-weight:%d;src:url(data:font/woff2;base64,%s)}",
			weight, base64.StdEncoding.EncodeToString(data))
	}
	if regular {
		rule(400, regularWOFF2)
	}
	if bold {
		rule(700, boldWOFF2)
	}
	return b.String()
}
