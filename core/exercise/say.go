package exercise

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// say is the words of a key of the table english, with {name} replaced by the
// value that follows the name in args: texts and whole numbers as they are,
// other numbers to one decimal. Where the whole number n is 1, the key with .1
// behind it goes before. A sentence begins with a capital letter.
func say(key string, args ...any) string {
	text, ok := english[key]
	for i := 0; i+1 < len(args); i += 2 {
		if single, has := english[key+".1"]; has && args[i] == "n" && args[i+1] == 1 {
			text = single
		}
	}
	if !ok {
		return key // a test lists every key that is asked for
	}
	pairs := make([]string, 0, len(args))
	for i := 0; i+1 < len(args); i += 2 {
		value := ""
		switch v := args[i+1].(type) {
		case string:
			value = v
		case float64:
			value = one(v)
		default:
			value = fmt.Sprint(v)
		}
		pairs = append(pairs, "{"+args[i].(string)+"}", value)
	}
	out := strings.NewReplacer(pairs...).Replace(text)
	if strings.HasSuffix(out, ".") && strings.HasPrefix(text, "{") {
		out = strings.ToUpper(out[:1]) + out[1:]
	}
	return out
}

// one and two are a number to one or two decimals, with no minus before zero.
func one(v float64) string { return fixed(v, 1) }
func two(v float64) string { return fixed(v, 2) }

// plain is a number of a rule, with no more decimals than it has, up to two.
func plain(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}

func fixed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return s
}

func digit(n int) string { return strconv.Itoa(n) }
