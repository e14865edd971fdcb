package words

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Text is something said that can be said in every language. It goes into JSON
// as a string: in the language that Put has set, else in English. The zero Text
// is empty.
type Text struct {
	how     how
	context string
	format  string
	args    []any
	said    string // what was put or read; all there is where nothing is in args and format
}

type how uint8

const (
	spoken  how = iota // format is a key of the catalogs
	joined             // args are Texts, format stands between them
	capital            // the one arg is a Text that begins a sentence
	filled             // format is a Template, args its names and values by turns
	figure             // the one arg is a number as English writes it
)

// Say is a Text of a format of package fmt, to be looked up in the catalogs, and
// its arguments. Texts among them are said in the same language, and numbers
// get its decimal sign and a true minus. The format is a literal, so that it can
// be gathered for the catalogs.
func Say(format string, args ...any) Text {
	if false {
		_ = fmt.Sprintf(format, args...) // lets vet check the arguments
	}
	return Text{format: format, args: args}
}

// SayIn is Say for words that other languages say differently by what they
// mean: the context, a literal too, tells the meanings apart.
func SayIn(context, format string, args ...any) Text {
	if false {
		_ = fmt.Sprintf(format, args...)
	}
	return Text{context: context, format: format, args: args}
}

// Plain is a text that is the same in every language, as what a user has typed.
func Plain(s string) Text { return Text{said: s} }

// Join puts texts in a row, with a sign between them.
func Join(sep string, texts ...Text) Text {
	args := make([]any, len(texts))
	for i, t := range texts {
		args[i] = t
	}
	return Text{how: joined, format: sep, args: args}
}

// And is the list "a, b and c".
func And(texts ...Text) Text {
	n := len(texts)
	if n < 2 {
		return Join("", texts...)
	}
	return Say("%s and %s", Join(", ", texts[:n-1]...), texts[n-1])
}

// Or is the list "a, b or c".
func Or(texts ...Text) Text {
	n := len(texts)
	if n < 2 {
		return Join("", texts...)
	}
	return Say("%s or %s", Join(", ", texts[:n-1]...), texts[n-1])
}

// Capital is the text with its first letter large, to begin a sentence.
func Capital(t Text) Text { return Text{how: capital, args: []any{t}} }

// IsZero tells that nothing is said.
func (t Text) IsZero() bool { return !t.bound() && t.said == "" }

// bound tells that the words depend on the language.
func (t Text) bound() bool { return t.format != "" || len(t.args) > 0 }

// String is the text as put, else in English.
func (t Text) String() string {
	if t.said != "" || !t.bound() {
		return t.said
	}
	return t.In(English)
}

// MarshalText gives String; so JSON holds a string.
func (t Text) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText takes words as they were said; their language is settled.
func (t *Text) UnmarshalText(s []byte) error {
	*t = Text{said: string(s)}
	return nil
}

// In is the text in a language. What a catalog lacks is in English.
func (t Text) In(l Language) string {
	if !t.bound() {
		return t.said
	}
	if t.how == spoken && len(t.args) == 0 {
		if format := l.format(t.context, t.format); strings.IndexByte(format, '%') < 0 {
			return format // most of what is said
		}
	}
	var b strings.Builder
	b.Grow(len(t.format) + 24*len(t.args)) // mostly enough
	t.write(&b, l)
	return b.String()
}

// write puts the text in a language behind what was written.
func (t Text) write(b *strings.Builder, l Language) {
	if !t.bound() {
		b.WriteString(t.said)
		return
	}
	switch t.how {
	case joined:
		for i, a := range t.args {
			if i > 0 {
				b.WriteString(t.format)
			}
			a.(Text).write(b, l)
		}
		return
	case capital:
		s := t.args[0].(Text).In(l)
		first, n := utf8.DecodeRuneInString(s)
		b.WriteRune(unicode.ToUpper(first))
		b.WriteString(s[n:])
		return
	case filled:
		b.WriteString(l.fill(l.format(t.context, t.format), t.args))
		return
	case figure:
		b.WriteString(l.decimal(t.args[0].(string)))
		return
	}
	format := l.format(t.context, t.format)
	if !plain(format, t.args) {
		b.WriteString(fmt.Sprintf(format, l.args(t.args)...))
		return
	}
	for _, a := range t.args {
		at := strings.IndexByte(format, '%')
		for ; format[at+1] == '%'; at = strings.IndexByte(format, '%') {
			b.WriteString(format[:at+1])
			format = format[at+2:]
		}
		b.WriteString(format[:at])
		next := at + 2
		var room [32]byte
		switch a := a.(type) {
		case string:
			b.WriteString(a)
		case Text:
			a.write(b, l)
		case int:
			v := strconv.AppendInt(room[:0], int64(a), 10)
			b.WriteString(l.decimal(string(v)))
		case float64:
			v := strconv.AppendFloat(room[:0], a, 'f', int(format[at+2]-'0'), 64)
			b.WriteString(l.decimal(string(v)))
			next = at + 4
		}
		format = format[next:]
	}
	for at := strings.IndexByte(format, '%'); at >= 0; at = strings.IndexByte(format, '%') {
		b.WriteString(format[:at+1])
		format = format[at+2:]
	}
	b.WriteString(format)
}

// plain tells whether a format holds but the plainest verbs, for arguments of just
// their types: those are written several times faster than package fmt does.
func plain(format string, args []any) bool {
	for {
		at := strings.IndexByte(format, '%')
		if at < 0 {
			return len(args) == 0
		}
		format = format[at+1:]
		if strings.HasPrefix(format, "%") {
			format = format[1:]
			continue
		}
		if format == "" || len(args) == 0 {
			return false
		}
		ok := false
		switch args[0].(type) {
		case string, Text:
			ok = format[0] == 's'
		case int:
			ok = format[0] == 'd'
		case float64:
			if ok = len(format) > 2 && format[0] == '.' && format[1]-'0' < 10 && format[2] == 'f'; ok {
				format = format[2:]
			}
		}
		if !ok {
			return false
		}
		format, args = format[1:], args[1:]
	}
}

// args are arguments as the language says them.
func (l Language) args(args []any) []any {
	out := args
	for i, a := range args {
		switch v := a.(type) {
		case Text:
			a = v.In(l)
		case float64:
			a = number{l, v}
		case int:
			if v >= 0 {
				continue
			}
			a = number{l, v}
		default:
			continue
		}
		if &out[0] == &args[0] {
			out = append([]any(nil), args...)
		}
		out[i] = a
	}
	return out
}

// number is a float64 or an int that every verb writes with the signs of a language.
type number struct {
	l Language
	v any
}

// Format writes the number; the padding that a verb asks for stays as it is.
func (n number) Format(s fmt.State, verb rune) {
	fmt.Fprint(s, n.l.decimal(fmt.Sprintf(fmt.FormatString(s, verb), n.v)))
}
