package sheet

import (
	"math"
	"strings"
)

// Setting text: measuring, wrapping, shrinking to fit, and what to do with
// letters that the sheet's Latin font does not hold.

// nbsp holds a number and its unit together; it is set as a plain space.
const nbsp = "\u00a0"

// printable is the text as the font can set it: letters that it lacks give
// way to one "?" for each run of them.
func (f *fonts) printable(s string) string {
	s = tidy(s)
	if f.settable(s) {
		return s
	}
	var b strings.Builder
	lacking := false
	for _, r := range s {
		if r == '\u00a0' || r == '\u202f' || r == '\u2009' {
			r = ' '
		}
		if f.holds(r) {
			b.WriteRune(r)
			lacking = false
		} else if !lacking {
			b.WriteByte('?')
			lacking = true
		}
	}
	return b.String()
}

// settable tells whether the fonts have every letter, and no space is a
// special one.
func (f *fonts) settable(s string) bool {
	for _, r := range s {
		if r >= 0x7f && (r == '\u00a0' || r == '\u202f' || r == '\u2009' || !f.holds(r)) {
			return false
		}
	}
	return true
}

// shownName is the name as a sheet shows it, and whether letters were lost. A
// name with no letter or digit left is not shown as a row of question marks.
func (d *document) shownName(name string) (shown string, lost bool) {
	shown = d.fonts.printable(name)
	lost = strings.ReplaceAll(name, nbsp, " ") != shown && strings.Contains(shown, "?")
	if lost && strings.Trim(shown, " ?.,-") == "" {
		shown = d.say("Name not in Latin letters")
	}
	return shown, lost
}

// width is the width in mm of a line before kerning, which as good as always
// takes away: enough for breaking lines, and without shaping them. A line that
// is set knows its own width.
func (f *fonts) width(s string, st style) float64 {
	w := f.of(st)
	units := 0
	for _, r := range s {
		_, advance := w.letter(r)
		units += int(advance)
	}
	return float64(units) * f.face(st).MmPerEm
}

// wrap breaks text into lines no wider than w, at spaces, and within a word
// only where the word alone is wider.
func (f *fonts) wrap(s string, st style, w float64) []string {
	var lines []string
	var cur string
	curW, space := 0.0, f.width(" ", st)
	for _, word := range unbroken(strings.Split(tidy(s), " ")) {
		word = f.printable(word)
		ww := f.width(word, st)
		if cur != "" && curW+space+ww <= w {
			cur += " " + word
			curW += space + ww
			continue
		}
		if cur != "" {
			lines = append(lines, cur)
		}
		for ww > w && word != "" {
			n := f.breakAt(word, st, w)
			lines = append(lines, word[:n])
			word = word[n:]
			ww = f.width(word, st)
		}
		cur, curW = word, ww
	}
	if cur != "" {
		lines = append(lines, cur)
	}
	return lines
}

// widest is the width in mm of the longest word of a text.
func (f *fonts) widest(s string, st style) (w float64) {
	for _, word := range unbroken(strings.Split(tidy(s), " ")) {
		w = math.Max(w, f.width(f.printable(word), st))
	}
	return w
}

// units are held to the number before them.
var units = map[string]bool{"mm": true, "cm²": true, "ml": true, "g": true, "kg": true, "N": true, "kPa": true, "K": true, "°C": true, "%": true, "min": true, "h": true}

// unbroken joins a number and its unit into one word.
func unbroken(words []string) []string {
	out := words[:0]
	for _, w := range words {
		if n := len(out); n > 0 && units[strings.TrimRight(w, ".,;:)")] {
			if last := out[n-1]; last != "" && last[len(last)-1] >= '0' && last[len(last)-1] <= '9' {
				out[n-1] = last + nbsp + w
				continue
			}
		}
		out = append(out, w)
	}
	return out
}

// breakAt is the number of bytes of the word that fit the width, at least one
// letter.
func (f *fonts) breakAt(word string, st style, w float64) int {
	n := 0
	for i := range word {
		if i > 0 && f.width(word[:i], st) > w {
			break
		}
		if i > 0 {
			n = i
		}
	}
	if n == 0 {
		n = len(word)
		for i := range word {
			if i > 0 {
				n = i
				break
			}
		}
	}
	return n
}

// fit sets the text in at most max lines of width w, in the largest of the
// sizes from st.size down to least in half points; what then is still too
// long is cut with an ellipsis.
func (f *fonts) fit(s string, st style, w, least float64, max int) ([]string, style) {
	for size := st.size; ; size -= 0.5 {
		size = math.Max(size, least)
		lines := f.wrap(s, st.at(size), w)
		if len(lines) <= max {
			return lines, st.at(size)
		}
		if size == least {
			lines = lines[:max]
			last := []rune(lines[max-1])
			for len(last) > 0 && f.width(string(last)+"…", st.at(size)) > w {
				last = last[:len(last)-1]
			}
			lines[max-1] = strings.TrimRight(string(last), " ") + "…"
			return lines, st.at(size)
		}
	}
}

// sizeLeast is the smallest type that a label may shrink to in a language whose
// words are long for its room.
const sizeLeast = 5.5

// textIn sets one line as text does, smaller where the room of width w asks it.
func (p *page) textIn(x, y, w float64, s string, st style, a align) {
	lines, st := p.doc.fonts.fit(s, st, w, sizeLeast, 1)
	if len(lines) > 0 {
		p.text(x, y, lines[0], st, a)
	}
}

// textEnds sets a line at the left and one at the right end of a room, the left
// one smaller where they would meet.
func (p *page) textEnds(x0, x1, y float64, at, end string, st style) {
	p.textIn(x0, y, x1-x0-p.doc.fonts.width(end, st)-3, at, st, left)
	p.text(x1, y, end, st, right)
}

// paragraph sets wrapped text with the top of its first line at y and gives
// the y below its last line.
func (p *page) paragraph(x, y, w float64, s string, st style) float64 {
	for _, line := range p.doc.fonts.wrap(s, st, w) {
		y -= st.lead()
		p.text(x, y+0.26*st.size*mmPerPt, line, st, left)
	}
	return y
}

// height is the height in mm that paragraph takes.
func (f *fonts) height(s string, st style, w float64) float64 {
	return float64(len(f.wrap(s, st, w))) * st.lead()
}
