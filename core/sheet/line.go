package sheet

import (
	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/text"
)

// Setting a line: letters to glyphs, their advances and the kerning between
// them. A line of plain letters is set here, once for each weight, whatever
// its sizes; one with accents that stand alone, or in another script, by the
// library's shaper, which knows what to do with them.

// lineKey is what a line's setting hangs on.
type lineKey struct {
	s  string
	st style
}

// setLine is a line of text ready to be written.
type setLine struct {
	s      string
	glyphs []text.Glyph // nil where the shaper has set it
	held   *canvas.Text
	width  float64 // mm
}

// line is the line of text, set once for all places where it stands.
func (f *fonts) line(s string, st style) *setLine {
	key := lineKey{s, st}
	l := f.lines[key]
	if l == nil {
		l = f.newLine(s, st)
		f.lines[key] = l
	}
	return l
}

func (f *fonts) newLine(s string, st style) *setLine {
	if !isPlain(s) {
		t := canvas.NewTextLine(f.face(st), s, canvas.Left)
		return &setLine{s: s, held: t, width: t.Width}
	}
	held := f.holder[st]
	if held == nil {
		held = canvas.NewTextLine(f.face(st), "x", canvas.Left)
		f.holder[st] = held
	}
	glyphs, units := f.of(st).glyphs(s)
	return &setLine{s: s, glyphs: glyphs, held: held, width: float64(units) * f.face(st).MmPerEm}
}

// isPlain tells whether every letter stands for itself: Latin without
// combining accents, punctuation, signs and arrows.
func isPlain(s string) bool {
	for _, r := range s {
		if r < ' ' || r >= 0x2c0 && r < 0x1e00 || r >= 0x2300 {
			return false
		}
	}
	return true
}

// glyphs sets a plain line; units is its length.
func (w *weight) glyphs(s string) (out []text.Glyph, units int32) {
	out = make([]text.Glyph, 0, len(s))
	for i, r := range s {
		id, advance := w.letter(r)
		if n := len(out); n > 0 {
			shift := w.kern.between(out[n-1].ID, id)
			out[n-1].XAdvance += shift
			units += shift
		}
		out = append(out, text.Glyph{ID: id, Cluster: uint32(i), XAdvance: int32(advance), Text: r})
		units += int32(advance)
	}
	return out, units
}

// write puts the line on the page. Lines of a style share what holds them: it
// is filled anew for each, and the library keeps nothing of it.
func (l *setLine) write(r canvas.Renderer, m canvas.Matrix) {
	if l.glyphs != nil {
		l.held.WalkLines(func(_ float64, spans []canvas.TextSpan) {
			spans[0].Text, spans[0].Glyphs, spans[0].Width = l.s, l.glyphs, l.width
		})
	}
	r.RenderText(l.held, m)
}
