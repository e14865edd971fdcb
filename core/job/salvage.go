package job

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"moldwright/core/words"
)

// leastRows is how many nodes make a profile worth saving: with fewer there is
// nothing that could be planned.
const leastRows = 3

// Salvage reads what it can of a job document that Read refuses: one that is
// cut short, spoiled in places, of a newer version, or with figures no bench
// has. Keys that fit are kept, the others stand at their defaults, and every
// one left out is told in a note with its field and line. It is for showing to
// a person, who decides; nothing of it is sure. A document without three rows
// of its outline is an error.
func Salvage(text []byte) (*Job, Faults, error) {
	j := Defaults()
	j.Rules.LeastDraft = math.NaN()
	s := salvager{walker: walker{d: json.NewDecoder(bytes.NewReader(text)), text: text}}
	s.d.UseNumber()
	s.value(reflect.ValueOf(&j).Elem(), "")
	if s.broken {
		// the walk ends at the first damage; rows may stand beyond it
		if rows := scanRows(text); len(rows) > len(j.Form.Outer) {
			j.Form.Outer = rows
		}
		s.note("cutShort", "", s.d.InputOffset(), "What follows line %d could not be read in order; keys that are missing stand at their usual values.", lineAt(text, s.d.InputOffset()))
	}
	if j.Format != Format {
		return nil, nil, Faults{Faultf("badValue", "format", "The file says its format is %q; a job says %q.", clip(j.Format), Format)}
	}
	if j.Version != Version {
		s.note("newerVersion", "version", 0, "The file is of version %d; this page reads version %d, and keys that it does not know were left out.", j.Version, Version)
		j.Version = Version
	}
	if math.IsNaN(j.Rules.LeastDraft) {
		j.Rules.LeastDraft = LeastDraftFor(j.Printer.Layer)
	}
	if len(j.Form.Outer) < leastRows {
		return nil, nil, Faults{Faultf("nothingToSave", "form.outer", "Only %d rows of the outline can be read; a form needs at least %d.", len(j.Form.Outer), leastRows)}
	}
	if f := s.mend(&j); len(f) > 0 {
		return nil, nil, f
	}
	return &j, s.notes, nil
}

// salvager fills a value from JSON and notes what does not fit, where the
// walker of Read stops.
type salvager struct {
	walker
	notes  Faults
	broken bool // the text ended, or is no JSON from here on
}

func (s *salvager) note(code, field string, offset int64, format string, args ...any) {
	f := Faultf(code, field, format, args...)
	if offset > 0 {
		f = f.AtLine(lineAt(s.text, offset))
	}
	s.notes = append(s.notes, f)
}

// token is the next one; false where the text is damaged.
func (s *salvager) token() (json.Token, bool) {
	tok, err := s.d.Token()
	if err != nil {
		s.broken = true
	}
	return tok, err == nil
}

// value fills v, and says whether it was there and whole.
func (s *salvager) value(v reflect.Value, path string) bool {
	tok, ok := s.token()
	if !ok {
		return false
	}
	if tok == nil {
		if v.Kind() == reflect.Pointer || v.Kind() == reflect.Slice {
			v.SetZero()
		}
		return true
	}
	if v.Kind() == reflect.Pointer {
		into := reflect.New(v.Type().Elem())
		if !s.filled(into.Elem(), tok, path) {
			return false
		}
		v.Set(into)
		return true
	}
	return s.filled(v, tok, path)
}

// filled fills v from a token that has been read and what belongs to it.
func (s *salvager) filled(v reflect.Value, tok json.Token, path string) bool {
	at := s.d.InputOffset()
	switch v.Kind() {
	case reflect.Struct:
		if tok == json.Delim('{') {
			return s.object(v, path)
		}
	case reflect.Slice, reflect.Array:
		if tok == json.Delim('[') {
			return s.list(v, path)
		}
	case reflect.Float64:
		if n, ok := tok.(json.Number); ok {
			if x, err := n.Float64(); err == nil {
				v.SetFloat(x)
				return true
			}
		}
	case reflect.Int:
		if n, ok := tok.(json.Number); ok {
			if x, err := n.Int64(); err == nil {
				v.SetInt(x)
				return true
			}
		}
	case reflect.String:
		if t, ok := tok.(string); ok {
			v.SetString(t)
			return true
		}
	case reflect.Bool:
		if t, ok := tok.(bool); ok {
			v.SetBool(t)
			return true
		}
	}
	s.skip(tok)
	name := words.Plain(path)
	if path == "" {
		name = words.Say("The file")
	}
	s.note("wrongType", path, at, "%s holds %s; it takes %s. It was left out.", name, spoken(tok), article(v.Type()))
	return false
}

// skip passes over the rest of a value whose first token has been read.
func (s *salvager) skip(tok json.Token) {
	depth := 0
	for {
		switch tok {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		}
		if depth == 0 {
			return
		}
		var ok bool
		if tok, ok = s.token(); !ok {
			return
		}
	}
}

func (s *salvager) object(v reflect.Value, path string) bool {
	given := map[string]bool{}
	for s.d.More() {
		tok, ok := s.token()
		if !ok {
			return false
		}
		key, _ := tok.(string)
		full := strings.TrimPrefix(path+"."+key, ".")
		at := s.d.InputOffset()
		field := slices.IndexFunc(reflect.VisibleFields(v.Type()), func(f reflect.StructField) bool {
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			return strings.EqualFold(name, key)
		})
		if field < 0 {
			if tok, ok = s.token(); !ok {
				return false
			}
			s.skip(tok)
			s.note("unknownKey", full, at, "%s is no key of a job; it was left out.", full)
			continue
		}
		given[strings.ToLower(key)] = s.value(v.Field(field), full)
		if s.broken {
			return false
		}
	}
	if _, ok := s.token(); !ok {
		return false
	}
	// half a node is none
	return v.Type() != reflect.TypeFor[Node]() || (given["r"] && given["z"])
}

func (s *salvager) list(v reflect.Value, path string) bool {
	slice := v.Kind() == reflect.Slice
	if slice {
		v.Set(reflect.MakeSlice(v.Type(), 0, 0))
	}
	for i := 0; s.d.More(); i++ {
		item, at, notes := reflect.New(v.Type().Elem()).Elem(), s.d.InputOffset(), len(s.notes)
		full := fmt.Sprintf("%s[%d]", path, i)
		whole := s.value(item, full)
		switch {
		case s.broken:
			return false
		case whole && slice:
			v.Set(reflect.Append(v, item))
		case whole && i < v.Len():
			v.Index(i).Set(item)
		case len(s.notes) == notes:
			s.note("leftOut", full, at, "%s is not whole; it was left out.", full)
		}
	}
	_, ok := s.token()
	return ok
}

// mend puts figures that no bench has back to their defaults, with a note for
// each; it gives the faults that this does not heal.
func (s *salvager) mend(j *Job) Faults {
	usual := Defaults()
	usual.Rules.LeastDraft = LeastDraftFor(usual.Printer.Layer)
	var faults Faults
	for range 3 {
		if faults = j.Check(); len(faults) == 0 {
			return nil
		}
		for _, f := range faults {
			top, rest, _ := strings.Cut(f.Field, ".")
			if top == "form" && !strings.HasPrefix(rest, "section") && rest != "size" && !strings.HasPrefix(rest, "inner") && !strings.HasPrefix(rest, "traced") {
				return Faults{f}
			}
			if reset(reflect.ValueOf(j).Elem(), reflect.ValueOf(usual), f.Field) {
				s.notes = append(s.notes, Faultf("reset", f.Field, "%s It stands at its usual value.", f.Message))
			}
		}
	}
	return faults
}

// reset gives the field at the path, or the list or the section that holds it,
// the value it has in usual.
func reset(v, usual reflect.Value, path string) bool {
	path, _, _ = strings.Cut(path, "[")
	if strings.HasPrefix(path, "form.section") {
		path = "form.section"
	}
	for key := range strings.SplitSeq(path, ".") {
		if v.Kind() != reflect.Struct {
			break // a field inside of what may be null: all of it
		}
		i := slices.IndexFunc(reflect.VisibleFields(v.Type()), func(f reflect.StructField) bool {
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			return name == key
		})
		if i < 0 {
			return false
		}
		v, usual = v.Field(i), usual.Field(i)
	}
	v.Set(usual)
	return true
}

// scanRows finds the whole rows of the outline by their look alone, from the
// word "outer" to the end of its list.
func scanRows(text []byte) []Node {
	_, list, found := bytes.Cut(text, []byte(`"outer"`))
	if !found {
		return nil
	}
	if end := bytes.IndexByte(list, ']'); end >= 0 {
		list = list[:end]
	}
	// made here, not at every start of the program: few files are damaged
	const number = `\s*:\s*(-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)\s*[,}\n]`
	row, sharp := regexp.MustCompile(`\{[^{}\[\]]*\}`), regexp.MustCompile(`"corner"\s*:\s*true`)
	rowR, rowZ := regexp.MustCompile(`"r"`+number), regexp.MustCompile(`"z"`+number)
	var rows []Node
	for _, m := range row.FindAll(list, -1) {
		r, z := rowR.FindSubmatch(m), rowZ.FindSubmatch(m)
		if r == nil || z == nil {
			continue
		}
		n := Node{Corner: sharp.Match(m)}
		var errR, errZ error
		n.R, errR = strconv.ParseFloat(string(r[1]), 64)
		n.Z, errZ = strconv.ParseFloat(string(z[1]), 64)
		if errR == nil && errZ == nil {
			rows = append(rows, n)
		}
	}
	return rows
}
