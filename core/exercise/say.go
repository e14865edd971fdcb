package exercise

import (
	"math"
	"strconv"
	"strings"

	"moldwright/core/words"
)

// say is the words of a key of the table english, with {name} replaced by the
// value that follows the name in args: texts and whole numbers as they are,
// other numbers to one decimal. Where the whole number n is 1, the key with .1
// behind it goes before. A sentence begins with a capital letter.
func say(key string, args ...any) words.Text {
	text, ok := english[key]
	if !ok {
		return words.Plain(key) // a test lists every key that is asked for
	}
	args = append([]any(nil), args...)
	for i := 0; i+1 < len(args); i += 2 {
		if single, has := english[key+".1"]; has && args[i] == "n" && args[i+1] == 1 {
			text = single
		}
		if v, ok := args[i+1].(float64); ok {
			args[i+1] = words.Number(v, 1)
		}
	}
	out := text.With(args...)
	if sentence(string(text)) {
		out = words.Capital(out)
	}
	return out
}

// sentence tells that a template is a sentence of its own: in a language in
// which a value begins it, that value gets a capital letter.
func sentence(text string) bool {
	return strings.HasSuffix(text, ".") && (text[0] < 'a' || text[0] > 'z')
}

// hundredths is a number to two decimals, as it is told.
func hundredths(v float64) words.Text { return words.Number(v, 2) }

// plain is a number of a rule, with no more decimals than it has, up to two.
func plain(v float64) words.Text { return words.Number(math.Round(v*100)/100, -1) }

// one and two are a number to one or two decimals as it is typed, with a hyphen for
// a minus: in answers and files it is alike in every language.
func one(v float64) string { return fixed(v, 1) }
func two(v float64) string { return fixed(v, 2) }

func fixed(v float64, decimals int) string {
	return strings.Replace(words.Number(v, decimals).In(words.English), "\u2212", "-", 1)
}

func digit(n int) string { return strconv.Itoa(n) }
