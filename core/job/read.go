package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"reflect"
	"strings"

	"moldwright/core/words"
)

// Read reads a job document, fills in what it leaves out and checks every
// figure. Errors are Faults; each names the field, and the line where the
// text's structure is at fault. Keys that no job has are errors.
func Read(text []byte) (*Job, error) {
	j := blank()
	if !readFast(text, &j) {
		j = blank() // what may have been half read
		d := json.NewDecoder(bytes.NewReader(text))
		d.DisallowUnknownFields()
		if err := d.Decode(&j); err != nil {
			return nil, Faults{explain(text, err)}
		}
		if _, rest := d.Token(); rest != io.EOF {
			return nil, Faults{Faultf("trailingText", "", "There is more text after the end of the job; remove it.").AtLine(lineAt(text, d.InputOffset()))}
		}
	}
	if math.IsNaN(j.Rules.LeastDraft) {
		j.Rules.LeastDraft = LeastDraftFor(j.Printer.Layer)
	}
	if f := j.Check(); len(f) > 0 {
		return nil, f
	}
	return &j, nil
}

// blank is the job that a text fills in.
func blank() Job {
	j := Defaults()
	j.Rules.LeastDraft = math.NaN() // a mark for "left out", which no file can hold
	return j
}

// Write is the document as saved: indented, every key present, one final
// newline. Read(Write(j)) gives j, and writes the same bytes again.
func (j *Job) Write() ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	err := e.Encode(j)
	return b.Bytes(), err
}

// explain turns a decoding error into a Fault. Decoding errors do not carry
// the path of an unknown key, so the text is walked once more for it.
func explain(text []byte, err error) *Fault {
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		line := lineAt(text, syntax.Offset)
		return Faultf("notJSON", "", "The text is not a job file, or it is damaged in line %d.", line).AtLine(line)
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		return Faultf("cutShort", "", "The text ends before the job does; the file seems to be cut short.").AtLine(lineAt(text, int64(len(text))))
	}
	if n := versionOf(text); n > Version {
		return newer(n)
	}
	w := walker{d: json.NewDecoder(bytes.NewReader(text)), text: text}
	w.d.UseNumber()
	if f := w.value(reflect.TypeFor[Job](), ""); f != nil {
		return f
	}
	return Faultf("notJSON", "", "The text is not a job file. %s", Verbatim(err))
}

// versionOf is the version that a text names, whatever else it holds; 0 where it
// names none.
func versionOf(text []byte) int {
	var head struct {
		Version int `json:"version"`
	}
	if json.Unmarshal(text, &head) != nil {
		return 0
	}
	return head.Version
}

// newer refuses a document of a version to come, before its keys are judged.
func newer(version int) *Fault {
	return Faultf("newerVersion", "version", "The job is whole, but was saved by a newer page: it is of version %d, and this page reads version %d. Open it with the page that saved it.", version, Version)
}

func lineAt(text []byte, offset int64) int {
	offset = min(max(offset, 0), int64(len(text)))
	return 1 + bytes.Count(text[:offset], []byte("\n"))
}

// article is what a key of the type takes.
func article(t reflect.Type) words.Text {
	switch t.Kind() {
	case reflect.Float64:
		return words.Say("a number")
	case reflect.Int:
		return words.Say("a whole number")
	case reflect.String:
		return words.Say("a text")
	case reflect.Bool:
		return words.Say("true or false")
	case reflect.Slice, reflect.Array:
		return words.Say("a list")
	case reflect.Pointer:
		return words.Say("%s or null", article(t.Elem()))
	}
	return words.Say("an object")
}

// walker reads JSON beside the type that it should fit, to name the place of
// the first misfit.
type walker struct {
	d    *json.Decoder
	text []byte
}

func (w *walker) fault(code, path, format string, args ...any) *Fault {
	return Faultf(code, path, format, args...).AtLine(lineAt(w.text, w.d.InputOffset()))
}

func (w *walker) value(t reflect.Type, path string) *Fault {
	tok, err := w.d.Token()
	if err != nil {
		return w.fault("notJSON", path, "The text is not a job file. %s", Verbatim(err))
	}
	if t.Kind() == reflect.Pointer {
		if tok == nil {
			return nil
		}
		t = t.Elem()
	}
	if tok == nil {
		return nil // null leaves the default
	}
	name := words.Plain(path)
	if path == "" {
		name = words.Say("The file")
	}
	misfit := func() *Fault {
		return w.fault("wrongType", path, "%s holds %s; it takes %s.", name, spoken(tok), article(t))
	}
	switch t.Kind() {
	case reflect.Struct:
		if tok != json.Delim('{') {
			return misfit()
		}
		return w.object(t, path)
	case reflect.Slice, reflect.Array:
		if tok != json.Delim('[') {
			return misfit()
		}
		for i := 0; w.d.More(); i++ {
			if f := w.value(t.Elem(), fmt.Sprintf("%s[%d]", path, i)); f != nil {
				return f
			}
		}
		w.d.Token() // the closing bracket; More has seen it
		return nil
	case reflect.Float64, reflect.Int:
		n, ok := tok.(json.Number)
		if !ok {
			return misfit()
		}
		if _, err := n.Float64(); err != nil {
			return w.fault("badValue", path, "%s holds the number %s, which is beyond all bounds; check it.", name, clip(n.String()))
		}
		if _, err := n.Int64(); err != nil && t.Kind() == reflect.Int {
			return misfit()
		}
	case reflect.String:
		if _, ok := tok.(string); !ok {
			return misfit()
		}
	case reflect.Bool:
		if _, ok := tok.(bool); !ok {
			return misfit()
		}
	}
	return nil
}

func (w *walker) object(t reflect.Type, path string) *Fault {
	for w.d.More() {
		tok, err := w.d.Token()
		if err != nil {
			return w.fault("notJSON", path, "The text is not a job file. %s", Verbatim(err))
		}
		key, _ := tok.(string)
		full := key
		if path != "" {
			full = path + "." + key
		}
		var names []string
		var field *reflect.StructField
		for i := range t.NumField() {
			f := t.Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			names = append(names, name)
			if strings.EqualFold(name, key) {
				field = &f
			}
		}
		if field == nil {
			return w.fault("unknownKey", full, "%s is no key of a job; here it may be %s.", full, strings.Join(names, ", "))
		}
		if f := w.value(field.Type, full); f != nil {
			return f
		}
	}
	w.d.Token() // the closing brace; More has seen it
	return nil
}

func spoken(tok json.Token) words.Text {
	switch v := tok.(type) {
	case json.Delim:
		if v == '{' {
			return words.Say("an object")
		}
		return words.Say("a list")
	case string:
		return words.Say("the text %q", clip(v))
	case json.Number:
		return words.Say("the number %s", clip(v.String()))
	}
	return words.Plain(fmt.Sprint(tok)) // true or false, as the file has it
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
