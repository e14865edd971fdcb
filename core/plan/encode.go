package plan

// Writing a reply. encoding/json writes all but plans, which are sent many times a
// second: their schemes are written in encode_schemes.go, what is told in words and
// figures in encode_rest.go, and their drawing, thousands of numbers, here. Numbers of
// schemes end with the sixth decimal, and signs beyond ASCII are escaped; but for that
// the bytes are those of encoding/json.

import (
	"bytes"
	"encoding/json"
	"math"
	"reflect"
	"strconv"
)

// encode is the reply as JSON, one line with its end.
func encode(out any) ([]byte, error) {
	p, ok := out.(*Plan)
	if !ok {
		return library(out)
	}
	d := &p.Drawing
	b := make([]byte, 0, 3000*len(p.Schemes)+26000+100*len(d.Contour)) // nearly always enough
	v := reflect.ValueOf(p).Elem()
	for _, f := range planLayout().fields {
		b = append(b, f.key...)
		if f.of == schemes {
			b = appendSchemes(b, p.Schemes)
		} else {
			b = f.append(b, v.Field(f.at))
		}
	}
	b = d.append(append(b, `,"drawing":`...))
	return append(b, "}\n"...), nil
}

// library is what encoding/json writes of a value, one line with its end.
func library(out any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(out)
	return b.Bytes(), err
}

// append writes the drawing as encoding/json would.
func (d *Drawing) append(b []byte) []byte {
	b = appendNumber(append(b, `{"lift":`...), d.Lift)
	b = strconv.AppendBool(append(b, `,"turned":`...), d.Turned)
	b = appendLine(append(b, `,"contour":`...), d.Contour)
	b = appendLine(append(b, `,"inner":`...), d.Inner)
	b = appendLine(append(b, `,"opening":`...), d.Opening)
	b = append(b, `,"parts":[`...)
	for i, r := range d.Parts {
		if i > 0 {
			b = append(b, ',')
		}
		b = strconv.AppendQuote(append(b, `{"name":`...), r.Name)
		b = append(appendLine(append(b, `,"outline":`...), r.Outline), '}')
	}
	b = append(b, `],"natches":[`...)
	for i, n := range d.Natches {
		if i > 0 {
			b = append(b, ',')
		}
		b = strconv.AppendQuote(append(b, `{"part":`...), n.Part)
		b = appendNumber(append(b, `,"at":[`...), n.At[0])
		b = appendNumber(append(b, ','), n.At[1])
		b = appendNumber(append(b, `],"azimuth":`...), n.Azimuth)
		b = appendNumber(append(b, `,"radius":`...), n.Radius)
		b = append(strconv.AppendBool(append(b, `,"level":`...), n.Level), '}')
	}
	b = append(b, `],"dimples":[`...)
	for i, line := range d.Dimples {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendLine(b, line)
	}
	if b = append(b, `],"thickest":`...); d.Thickest == nil {
		b = append(b, "null"...)
	} else {
		b = appendThree(b, d.Thickest)
	}
	b = append(b, `,"innerDraft":`...)
	if d.InnerDraft == nil {
		b = append(b, "null"...)
	} else {
		sep := byte('[')
		for _, v := range d.InnerDraft {
			b = appendNumber(append(b, sep), v)
			sep = ','
		}
		b = append(b, ']')
	}
	b = append(b, `,"stretches":[`...)
	for i := range d.Stretches {
		if i > 0 {
			b = append(b, ',')
		}
		s := &d.Stretches[i]
		b = appendThree(append(b, `{"draft":`...), &s.Draft)
		b = append(appendThree(append(b, `,"depth":`...), &s.Depth), '}')
	}
	return append(b, "]}"...)
}

func appendThree(b []byte, v *[3]float64) []byte {
	if math.Float64bits(v[0])|math.Float64bits(v[1])|math.Float64bits(v[2]) == 0 { // most depths
		return append(b, "[0,0,0]"...)
	}
	b = appendNumber(append(b, '['), v[0])
	b = appendNumber(append(b, ','), v[1])
	return append(appendNumber(append(b, ','), v[2]), ']')
}

// appendLine writes points as pairs.
func appendLine(b []byte, line [][2]float64) []byte {
	if line == nil {
		return append(b, "null"...)
	}
	b = append(b, '[')
	for i, p := range line {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendNumber(append(b, '['), p[0])
		b = append(appendNumber(append(b, ','), p[1]), ']')
	}
	return append(b, ']')
}
