package words

import (
	"regexp"
	"strings"
	"sync"
	"unicode"
)

// Long is a made-up language, none that a request may name: English with letters
// written twice, every third one in a sentence, every second one in a few words,
// all in a single short one. What is laid out in it has room for real languages:
// sentences grow by a third, labels by more (common practice in testing layouts).
// Words of one or two letters, as units are, stay.
const Long Language = "long"

// kept is what stands in a format for something else: a verb or a gap.
var kept = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`%[-+# 0]*[0-9]*(?:\.[0-9]+)?(?:\[[0-9]+\])?.|\{[a-z][A-Za-z0-9]*\}`)
})

var longWord = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\pL{3,}`) })

// lengthen is an English format in the language Long.
func lengthen(english string) string {
	var b strings.Builder
	at, step := 0, 3
	switch n := letters(kept().ReplaceAllString(english, "")); {
	case n <= 6:
		step = 1
	case n <= 12:
		step = 2
	}
	stretch := func(to int) {
		b.WriteString(longWord().ReplaceAllStringFunc(english[at:to], func(word string) string {
			var out []rune
			for i, r := range []rune(word) {
				if out = append(out, r); i%step == step/2 {
					out = append(out, r)
				}
			}
			return string(out)
		}))
	}
	for _, k := range kept().FindAllStringIndex(english, -1) {
		stretch(k[0])
		b.WriteString(english[k[0]:k[1]])
		at = k[1]
	}
	stretch(len(english))
	return b.String()
}

// letters is how many letters there are.
func letters(s string) (n int) {
	for _, r := range s {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}
