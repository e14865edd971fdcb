package plan

// Writing what is not drawn: figures, prints, findings, cautions. The fields of the
// types are looked up once, with the signs that go before each; encoding/json looks
// at every value anew, for what a plan never holds.

import (
	"reflect"
	"strconv"
	"strings"
	"sync"
	"unicode/utf16"
	"unicode/utf8"

	"moldwright/core/words"
)

// layout is how the values of a type are written.
type layout struct {
	kind   reflect.Kind // Invalid for a Text
	fields []field      // of a struct
	of     *layout      // of a list, its values
}

// field is one of a struct: its place, and the key with the signs before it, empty
// where its own fields stand in the struct that holds it.
type field struct {
	at  int
	key string
	*layout
}

// schemes stands for the layout of schemes, which appendSchemes writes.
var schemes = &layout{}

var planLayout = sync.OnceValue(func() *layout { return layoutOf(reflect.TypeFor[Plan](), new(bool)) })

// layoutOf is that of a type. A struct within another goes on where that one's fields
// have begun.
func layoutOf(t reflect.Type, begun *bool) *layout {
	l := &layout{kind: t.Kind()}
	switch {
	case t == reflect.TypeFor[words.Text]():
		l.kind = reflect.Invalid
	case t == reflect.TypeFor[[]Scheme]():
		l.of = schemes
	case l.kind == reflect.Slice, l.kind == reflect.Array, l.kind == reflect.Pointer:
		l.of = layoutOf(t.Elem(), new(bool))
	case l.kind == reflect.Struct:
		for i := range t.NumField() {
			f := t.Field(i)
			name := f.Tag.Get("json")
			switch {
			case f.Anonymous:
				l.fields = append(l.fields, field{at: i, layout: layoutOf(f.Type, begun)})
				continue
			case !f.IsExported() || name == "-":
				continue
			case name == "" || strings.Contains(name, ","):
				panic("no plain key: " + f.Name) // a test meets it first
			}
			sign := ","
			if !*begun {
				sign, *begun = "{", true
			}
			l.fields = append(l.fields, field{i, sign + `"` + name + `":`, layoutOf(f.Type, new(bool))})
		}
	case l.kind == reflect.Float64, l.kind == reflect.Int, l.kind == reflect.String, l.kind == reflect.Bool:
	default:
		panic("nothing of a plan: " + t.String())
	}
	return l
}

// append writes a value that can be set, of the layout's type.
func (l *layout) append(b []byte, v reflect.Value) []byte {
	switch l.kind {
	case reflect.Invalid:
		return appendString(b, v.Addr().Interface().(*words.Text).String())
	case reflect.Float64:
		return appendNumber(b, v.Float())
	case reflect.Int:
		return strconv.AppendInt(b, v.Int(), 10)
	case reflect.String:
		return appendString(b, v.String())
	case reflect.Bool:
		return strconv.AppendBool(b, v.Bool())
	case reflect.Struct:
		return append(l.inner(b, v), '}')
	case reflect.Pointer:
		if v.IsNil() {
			return append(b, "null"...)
		}
		return l.of.append(b, v.Elem())
	case reflect.Slice:
		if v.IsNil() {
			return append(b, "null"...)
		}
	}
	b = append(b, '[')
	for i := range v.Len() {
		if i > 0 {
			b = append(b, ',')
		}
		b = l.of.append(b, v.Index(i))
	}
	return append(b, ']')
}

// inner writes a struct's fields, each with its key.
func (l *layout) inner(b []byte, v reflect.Value) []byte {
	for i := range l.fields {
		f := &l.fields[i]
		if f.key == "" {
			b = f.inner(b, v.Field(f.at))
			continue
		}
		b = f.append(append(b, f.key...), v.Field(f.at))
	}
	return b
}

// appendString writes a string, ASCII alone: browsers take that in several times
// faster than anything else.
func appendString(b []byte, s string) []byte {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c == '"' || c == '\\' || c >= utf8.RuneSelf {
			return appendEscaped(b, s)
		}
	}
	return append(append(append(b, '"'), s...), '"')
}

func appendEscaped(b []byte, s string) []byte {
	b = append(b, '"')
	for _, r := range s {
		if r < utf8.RuneSelf && r >= ' ' && r != '"' && r != '\\' {
			b = append(b, byte(r))
			continue
		}
		if at := strings.IndexRune("\"\\\b\f\n\r\t", r); at >= 0 {
			b = append(b, '\\', `"\bfnrt`[at])
			continue
		}
		if hi, lo := utf16.EncodeRune(r); hi != utf8.RuneError {
			b, r = appendUnit(b, hi), lo
		}
		b = appendUnit(b, r)
	}
	return append(b, '"')
}

// appendUnit writes a unit of UTF-16 as its escape.
func appendUnit(b []byte, u rune) []byte {
	const digits = "0123456789abcdef"
	return append(b, '\\', 'u', digits[u>>12&15], digits[u>>8&15], digits[u>>4&15], digits[u&15])
}
