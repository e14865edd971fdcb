// Package words lets the core say its sentences in more than one language. A
// sentence is a Text: its English format, which is the key of the catalogs, and
// what stands in it. It is put into words once, when a reply is written; until
// then nothing needs to know the language. The room lies at the bottom of the
// house and knows nothing of pots.
package words

import (
	"slices"
	"strings"
)

// Language is one of those that the core speaks, by its ISO 639-1 code.
type Language string

// English is the language of the formats; the others have a catalog each.
const (
	English Language = "en"
	German  Language = "de"
	French  Language = "fr"
	Spanish Language = "es"
)

// Languages are all that the core speaks.
func Languages() []Language { return []Language{English, German, French, Spanish} }

// Parse is the language of a code; an empty one is English. It is false for a
// code that the core does not speak.
func Parse(code string) (Language, bool) {
	if code == "" {
		return English, true
	}
	return Language(code), slices.Contains(Languages(), Language(code))
}

// entry is a format and what it is in another language. One without words is
// said in English.
type entry struct{ key, words string }

// catalog is what a language has, sorted by key.
func (l Language) catalog() []entry {
	switch l {
	case German:
		return german
	case French:
		return french
	case Spanish:
		return spanish
	}
	return nil
}

// format is the format of a key in the language, or the English one.
func (l Language) format(context, english string) string {
	if l == Long {
		return lengthen(english)
	}
	list := l.catalog()
	if len(list) == 0 {
		return english
	}
	at, ok := slices.BinarySearchFunc(list, keyOf(context, english), func(e entry, key string) int {
		return strings.Compare(e.key, key)
	})
	if !ok || list[at].words == "" {
		return english
	}
	return list[at].words
}

// keyOf is a format's key in the catalogs: the format itself, behind its context
// where it has one.
func keyOf(context, english string) string {
	if context == "" {
		return english
	}
	return "[" + context + "] " + english
}

// decimal is a number written in the language: point or comma, no grouping, a true
// minus (U+2212) and none before a zero.
func (l Language) decimal(s string) string {
	if l != English {
		s = strings.Replace(s, ".", ",", 1)
	}
	number := strings.TrimLeft(s, " ") // the padding that a verb asks for
	if !strings.HasPrefix(number, "-") {
		return s
	}
	if strings.Trim(number, "-0., ") == "" {
		return s[:len(s)-len(number)] + number[1:]
	}
	return s[:len(s)-len(number)] + "−" + number[1:]
}
