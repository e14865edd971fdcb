package exercise

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Answer is what a student gives: of its fields those that the question asks
// for.
type Answer struct {
	Marks []Mark `json:"marks,omitempty"`
	// Value is a number as typed, with a comma or a point, with its unit behind
	// it or in Unit.
	Value Typed  `json:"value,omitempty"`
	Unit  string `json:"unit,omitempty"`
	// Choices are ids of options by id of field.
	Choices map[string]string `json:"choices,omitempty"`
	Job     json.RawMessage   `json:"job,omitempty"`
}

// Mark is a marked place in mm at mold size. Without R it is the outermost
// place of the contour at that height.
type Mark struct {
	R *float64 `json:"r"`
	Z float64  `json:"z"`
}

// Typed is a text that may also stand as a number in JSON.
type Typed string

// UnmarshalJSON takes a string, a number or null.
func (t *Typed) UnmarshalJSON(b []byte) error {
	if len(b) > 0 && b[0] != '"' && !bytes.Equal(b, []byte("null")) {
		var n json.Number
		if err := json.Unmarshal(b, &n); err != nil {
			return err
		}
		*t = Typed(n)
		return nil
	}
	var s string
	err := json.Unmarshal(b, &s)
	*t = Typed(s)
	return err
}

// Invalid tells why an answer was not marked. It costs no try.
type Invalid struct {
	Code  string     `json:"code"`
	Field string     `json:"field"`
	Words words.Text `json:"words"`
}

func invalid(code, field string, args ...any) *Invalid {
	return &Invalid{code, field, say("invalid."+code, args...)}
}

// units are, for every spelling, the unit's usual name; ratio how many mm,
// degrees or percent one is.
var units = []struct {
	name, spelling string
	ratio          float64
}{
	{"mm", "mm", 1}, {"cm", "cm", 10}, {"m", "m", 1000}, {"in", "in", 25.4}, {"in", "\"", 25.4}, {"in", "″", 25.4},
	{"°", "°", 1}, {"°", "deg", 1}, {"°", "degree", 1}, {"°", "degrees", 1}, {"%", "%", 1}, {"%", "percent", 1},
	// as written out in the other languages: an answer reads alike whatever the page is set to
	{"in", "Zoll", 25.4}, {"in", "po", 25.4}, {"in", "pouce", 25.4}, {"in", "pouces", 25.4}, {"in", "pulgada", 25.4}, {"in", "pulgadas", 25.4}, {"in", "pulg", 25.4},
	{"°", "Grad", 1}, {"°", "degré", 1}, {"°", "degrés", 1}, {"°", "grado", 1}, {"°", "grados", 1},
	{"%", "Prozent", 1}, {"%", "pour cent", 1}, {"%", "pourcent", 1}, {"%", "por ciento", 1},
}

// readNumber reads the value of an answer in one of the allowed units, and
// gives it in mm, degrees or percent.
func (a *Answer) readNumber(allowed ...string) (float64, *Invalid) {
	text := strings.TrimSpace(string(a.Value))
	if text == "" {
		return 0, invalid("noNumber", "value")
	}
	cut := len(text)
	for i, c := range text {
		if !strings.ContainsRune("0123456789.,+-−eE \u00a0\u202f", c) || (c == 'e' || c == 'E') && !digitAfter(text[i+1:]) {
			cut = i
			break
		}
	}
	number, unit := strings.TrimSpace(text[:cut]), strings.TrimSpace(text[cut:])
	number = strings.NewReplacer("−", "-", ",", ".", " ", "", "\u00a0", "", "\u202f", "").Replace(number)
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsInf(v, 0) || math.Abs(v) > 1e6 {
		return 0, invalid("unreadable", "value", "text", clip(text))
	}
	if unit == "" {
		unit = strings.TrimSpace(a.Unit)
	}
	if unit == "" {
		return 0, invalid("noUnit", "value", "units", strings.Join(allowed, ", "))
	}
	for _, u := range units {
		if strings.EqualFold(u.spelling, unit) {
			if !slices.Contains(allowed, u.name) {
				break
			}
			return v * u.ratio, nil
		}
	}
	return 0, invalid("wrongUnit", "value", "unit", clip(unit), "units", strings.Join(allowed, ", "))
}

func digitAfter(s string) bool {
	s = strings.TrimLeft(s, "+-")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}

// tenfold tells whether v is right but for a slip of ten, a hundred or a
// thousand either way.
func tenfold(v, truth, tolerance float64) *Invalid {
	if math.Abs(v-truth) <= tolerance || truth == 0 {
		return nil
	}
	for _, f := range [...]float64{10, 100, 1000, 0.1, 0.01, 0.001} {
		if math.Abs(v-f*truth) <= f*tolerance {
			return invalid("tenfold", "value")
		}
	}
	return nil
}

// readChoice is the id chosen in a field.
func (a *Answer) readChoice(f Field) (string, *Invalid) {
	id := a.Choices[f.ID]
	if id == "" {
		return "", invalid("noChoice", f.ID, "what", f.Words)
	}
	for _, o := range f.Options {
		if o.ID == id {
			return id, nil
		}
	}
	return "", invalid("noSuchChoice", f.ID, "id", clip(id))
}

// readJob is the edited job of an answer.
func (a *Answer) readJob() (*job.Job, *Invalid) {
	if len(a.Job) == 0 || string(a.Job) == "null" {
		return nil, invalid("noJob", "job")
	}
	j, err := job.Read(a.Job)
	if err != nil {
		return nil, invalid("badForm", "job", "message", why(err))
	}
	return j, nil
}
