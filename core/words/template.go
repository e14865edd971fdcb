package words

import (
	"fmt"
	"strconv"
	"strings"
)

// Template is a sentence with named gaps: "Pulled {pull}, {part} is held." It is
// for tables of sentences that are chosen by a code and filled from one list of
// values, each taking those that it names; where a sentence stands alone, Say is
// checked better. It is a key of the catalogs as it is.
type Template string

// With is the Text of the template with its gaps filled: names and values by
// turns. Texts among the values are said in the same language.
func (t Template) With(pairs ...any) Text {
	return Text{how: filled, format: string(t), args: pairs}
}

// fill puts the values into the gaps of a template in the language.
func (l Language) fill(template string, pairs []any) string {
	pairs = l.args(pairs)
	gaps := make([]string, 0, len(pairs))
	for i := 0; i+1 < len(pairs); i += 2 {
		gaps = append(gaps, "{"+fmt.Sprint(pairs[i])+"}", fmt.Sprint(pairs[i+1]))
	}
	return strings.NewReplacer(gaps...).Replace(template)
}

// Number is a number with so many decimals, or with -1 with as many as it has.
func Number(v float64, decimals int) Text {
	return Text{how: figure, args: []any{strconv.FormatFloat(v, 'f', decimals, 64)}}
}
