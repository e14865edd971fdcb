package words

import (
	"reflect"
	"strings"
)

// Put sets every Text that JSON would write of the value to the language; v is a
// pointer. Only what can hold a Text is walked, so long lists of numbers cost
// nothing. English needs no walk, since a Text is in English until it is put.
func Put(l Language, v any) {
	if l == English {
		return
	}
	p := putter{l, map[reflect.Type]bool{}}
	p.put(reflect.ValueOf(v).Elem())
}

type putter struct {
	l     Language
	holds map[reflect.Type]bool // of the types met: whether they can hold a Text
}

var textType = reflect.TypeFor[Text]()

// can tells whether a value of the type can hold a Text. A type that is met
// within itself counts as one that can.
func (p *putter) can(t reflect.Type) bool {
	if t == textType {
		return true
	}
	if known, ok := p.holds[t]; ok {
		return known
	}
	p.holds[t] = true
	can := false
	switch t.Kind() {
	case reflect.Interface:
		can = true
	case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
		can = p.can(t.Elem())
	case reflect.Struct:
		for i := range t.NumField() {
			if f := t.Field(i); written(f) && p.can(f.Type) {
				can = true
			}
		}
	}
	p.holds[t] = can
	return can
}

// written tells whether JSON writes the field.
func written(f reflect.StructField) bool {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return (f.IsExported() || f.Anonymous) && name != "-"
}

// put walks a value that can be set.
func (p *putter) put(v reflect.Value) {
	if !p.can(v.Type()) {
		return
	}
	if v.Type() == textType {
		t := v.Addr().Interface().(*Text)
		if t.bound() {
			t.said = t.In(p.l)
		}
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			p.put(v.Elem())
		}
	case reflect.Interface:
		if !v.IsNil() && p.can(v.Elem().Type()) {
			v.Set(p.copied(v.Elem()))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			p.put(v.Index(i))
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			v.SetMapIndex(k, p.copied(v.MapIndex(k)))
		}
	case reflect.Struct:
		t := v.Type()
		for i := range t.NumField() {
			if f := t.Field(i); written(f) {
				p.put(v.Field(i))
			}
		}
	}
}

// copied is a put copy of what cannot be set where it is.
func (p *putter) copied(v reflect.Value) reflect.Value {
	c := reflect.New(v.Type()).Elem()
	c.Set(v)
	p.put(c)
	return c
}
