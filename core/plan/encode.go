package plan

// Writing a reply. encoding/json writes all of it but what is most of a plan:
// its schemes, see encode_schemes.go, and its drawing, which has thousands of
// numbers of few decimals. Those are put down as whole numbers of the last
// decimal, several times faster, and the bytes are the same.

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
)

// encode is the reply as JSON, one line with its end.
func encode(out any) ([]byte, error) {
	p, ok := out.(*Plan)
	if !ok {
		return library(out)
	}
	rest := *p
	rest.Schemes = nil
	b, err := library(&rest)
	if err != nil {
		return nil, err
	}
	// in a string its quotes would be escaped, so this is the key
	at := bytes.Index(b, []byte(`"schemes":null`)) + len(`"schemes":`)
	d := &p.Drawing
	reply := make([]byte, 0, len(b)+4000*len(p.Schemes)+4000+40*len(d.Contour)+100*len(d.Stretches)) // nearly always enough
	reply = appendSchemes(append(reply, b[:at]...), p.Schemes)
	reply = append(reply, b[at+len("null"):len(b)-len("}\n")]...)
	reply = append(reply, `,"drawing":`...)
	return append(d.append(reply), "}\n"...), nil
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
	b = append(b, `],"stretches":[`...)
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

// appendNumber writes a number as encoding/json does: the shortest digits that
// read back as the same. For a quotient of a whole number by 1000 those are the
// whole number's own, as long as it has no more than 15.
func appendNumber(b []byte, v float64) []byte {
	n := math.RoundToEven(v * 1000)
	if math.Abs(n) >= 1e9 || n/1000 != v || v == 0 && math.Signbit(v) {
		j, err := json.Marshal(v)
		if err != nil {
			panic(err) // not finite: Call tells it as a fault of the program
		}
		return append(b, j...)
	}
	return appendDecimal(b, n, 1000)
}

// appendDecimal writes n / one, n a whole number below 1e15 and one a power of ten
// to 1e6, without zeros at its end.
func appendDecimal(b []byte, n float64, one int64) []byte {
	k := int64(math.Abs(n))
	whole, part := uint32(k/one), uint32(k%one)
	var room [20]byte
	at := len(room)
	put := func(c byte) {
		at--
		room[at] = c
	}
	if part > 0 {
		least := uint32(one) // of the decimals yet to be written
		for ; part%10 == 0; part /= 10 {
			least /= 10
		}
		for ; least > 1; least /= 10 {
			put('0' + byte(part%10))
			part /= 10
		}
		put('.')
	}
	for {
		put('0' + byte(whole%10))
		if whole /= 10; whole == 0 {
			break
		}
	}
	if n < 0 {
		put('-')
	}
	return append(b, room[at:]...)
}
