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
	p := putter{l, map[reflect.Type]bool{textType: true}, map[reflect.Type][]int{}}
	if e := reflect.ValueOf(v).Elem(); p.can(e.Type()) {
		p.put(e)
	}
}

// putter knows the types that it has met: whether they can hold a Text, and in
// which fields a struct can.
type putter struct {
	l      Language
	holds  map[reflect.Type]bool
	fields map[reflect.Type][]int
}

var textType = reflect.TypeFor[Text]()

// can tells whether a value of the type can hold a Text. A type that is met
// within itself counts as one that can.
func (p *putter) can(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Interface:
		return true
	case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
		return p.can(t.Elem())
	case reflect.Struct:
	default:
		return false
	}
	if known, ok := p.holds[t]; ok {
		return known
	}
	p.holds[t] = true
	var fields []int
	for i := range t.NumField() {
		if f := t.Field(i); written(f) && p.can(f.Type) {
			fields = append(fields, i)
		}
	}
	p.holds[t], p.fields[t] = fields != nil, fields
	return fields != nil
}

// written tells whether JSON writes the field.
func written(f reflect.StructField) bool {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return (f.IsExported() || f.Anonymous) && name != "-"
}

// put walks a value that can be set and whose type can hold a Text.
func (p *putter) put(v reflect.Value) {
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
		if v.Type() == textType {
			if t := v.Addr().Interface().(*Text); t.bound() {
				t.said = t.In(p.l)
			}
			return
		}
		for _, i := range p.fields[v.Type()] {
			p.put(v.Field(i))
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
