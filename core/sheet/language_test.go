package sheet

import (
	"strings"
	"testing"
	"unicode"

	"moldwright/core/words"
)

// Sheets in every language, and in a made-up one in which every word is about a
// third longer: nothing runs out, overlaps, or is cut.

// in is a sheet of the gallery in a language. What it is given in words comes
// stretched to any but English: the catalogs of these words are none of the
// sheets' own.
func (c sheetCase) inLanguage(l words.Language) sheetCase {
	if l == words.English {
		return c
	}
	long := func(list ...*string) {
		for _, s := range list {
			*s = words.Template(*s).With().In(words.Long)
		}
	}
	all := func(list []string) []string {
		list = append([]string(nil), list...)
		for i := range list {
			long(&list[i])
		}
		return list
	}
	in := &c.in
	in.Language = l
	long(&in.Verdict, &in.WhyNotFewer)
	in.Cautions = all(in.Cautions)
	in.Schemes = append([]Scheme(nil), in.Schemes...)
	for i := range in.Schemes {
		s := &in.Schemes[i]
		long(&s.Name, &s.Against)
		s.Parts = append([]Part(nil), s.Parts...)
		for k := range s.Parts {
			long(&s.Parts[k].Name)
		}
	}
	in.Findings = append([]Finding(nil), in.Findings...)
	for i := range in.Findings {
		long(&in.Findings[i].Text, &in.Findings[i].Remedy)
	}
	in.Prints = append([]Print(nil), in.Prints...)
	for i := range in.Prints {
		long(&in.Prints[i].Name)
	}
	in.Casting, in.Assumed = append([]Figure(nil), in.Casting...), append([]Figure(nil), in.Assumed...)
	for _, list := range [][]Figure{in.Casting, in.Assumed} {
		for i := range list {
			long(&list[i].Group, &list[i].Label, &list[i].Formula, &list[i].Source, &list[i].Status)
		}
	}
	c.class.Language, c.result.Language = l, l
	c.class.Questions = append([]Question(nil), c.class.Questions...)
	for i := range c.class.Questions {
		q := &c.class.Questions[i]
		long(&q.Kind, &q.Text, &q.Tolerance, &q.Key.Short)
		q.Given, q.Key.Steps, q.Key.Slips = all(q.Given), all(q.Key.Steps), all(q.Key.Slips)
		q.Asks = append([]Ask(nil), q.Asks...)
		for k := range q.Asks {
			long(&q.Asks[k].Words)
			q.Asks[k].Options = all(q.Asks[k].Options)
		}
	}
	long(&c.result.Score, &c.result.Honest)
	c.result.Notes = all(c.result.Notes)
	c.result.Rows = append([]ResultRow(nil), c.result.Rows...)
	for i := range c.result.Rows {
		long(&c.result.Rows[i].Kind, &c.result.Rows[i].Mark, &c.result.Rows[i].Words)
	}
	return c
}

// tried are the languages that layouts are tried in.
func tried() []words.Language { return append(words.Languages(), words.Long) }

// Every page in every language: text within the page and its margins, no two
// texts on one another, and nothing cut that English has whole. Sheets that keep
// to one page in English do so in all.
func TestEveryLanguageFits(t *testing.T) {
	for _, c := range cases() {
		pages, cut := 0, 0
		for _, l := range tried() {
			in := c.inLanguage(l)
			d, err := in.document()
			if err != nil {
				t.Fatalf("%s %s: %v", c.name, l, err)
			}
			n := 0
			for i, p := range d.pages {
				checkPage(t, c.name+" "+string(l), i+1, p)
				for _, b := range p.boxes {
					n += strings.Count(b.text, "…")
				}
			}
			if l == words.English {
				pages, cut = len(d.pages), n
			}
			if n > cut {
				t.Errorf("%s %s: %d texts are cut, %d in English", c.name, l, n, cut)
			}
			if pages == 1 && len(d.pages) > 1 {
				t.Errorf("%s %s: %d pages, one in English", c.name, l, len(d.pages))
			}
		}
	}
}

// In the made-up language no word is broken: each is one of English made longer.
func TestNoWordIsBroken(t *testing.T) {
	told := func(c sheetCase) (out []string) {
		d, err := c.document()
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range d.pages {
			for _, b := range p.boxes {
				out = append(out, strings.FieldsFunc(strings.ToLower(b.text), func(r rune) bool { return !unicode.IsLetter(r) })...)
			}
		}
		return out
	}
	long := func(s string) string { return words.Template(s).With().In(words.Long) }
	for _, c := range cases() {
		known := map[string]bool{}
		for _, w := range told(c) {
			// as it is, and as it stands alone, in few words and in a sentence
			for _, s := range []string{w, long(w), long(w + " abcdefg"[:min(8, max(1, 13-len(w)))]), long(w + " in a long sentence")} {
				s, _, _ = strings.Cut(s, " ")
				known[s] = true
			}
		}
		for _, w := range told(c.inLanguage(words.Long)) {
			if !known[w] {
				known[w] = true // told once
				t.Errorf("%s: %q is no whole word", c.name, w)
			}
		}
	}
}

// The letters of every language that is spoken are in the fonts, and a PDF says
// which language it is in.
func TestLettersAndTagOfEveryLanguage(t *testing.T) {
	f := newTestDocument(t).fonts
	for _, r := range "äöüßÄÖÜẞéèêëàâçîïôœùûÿæÉÈÊËÀÂÇÎÏÔŒÙÛŸÆñáíóúüÑÁÍÓÚÜ¿¡«»„“”’‘–—…·ºª°×−²³" {
		if !f.holds(r) {
			t.Errorf("no %c", r)
		}
	}
	for _, l := range words.Languages() {
		in := sampleInput()
		in.Language = l
		blobs, _, err := Section(in, A4, PDF)
		if err != nil || !strings.Contains(string(blobs[0]), "/Lang("+string(l)+")") {
			t.Errorf("%s: the file does not say its language (%v)", l, err)
		}
		blobs, _, err = Section(in, A4, SVG)
		if err != nil || !strings.Contains(string(blobs[0]), `xml:lang="`+string(l)+`"`) {
			t.Errorf("%s: the page does not say its language (%v)", l, err)
		}
		if comma := l != words.English; comma != strings.Contains(string(blobs[0]), ">68,6<") || comma == strings.Contains(string(blobs[0]), ">68.6<") {
			t.Errorf("%s: wrong decimal sign", l)
		}
	}
}

// A capital letter leaves a sign that is more than one byte whole.
func TestUpperFirst(t *testing.T) {
	for s, want := range map[string]string{"": "", "clear": "Clear", "−18.1°": "−18.1°", "émail": "Émail", "ñandú": "Ñandú"} {
		if got := upperFirst(s); got != want {
			t.Errorf("%q becomes %q, want %q", s, got, want)
		}
	}
}
