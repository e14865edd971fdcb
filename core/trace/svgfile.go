// The shapes in an SVG file, each brought to mm: transforms of all ancestors,
// viewBox and physical size (W3C SVG 2, chapters 8 and 9; absolute units of
// CSS Values 3: 1 in = 25.4 mm = 96 px = 72 pt = 6 pc, 1 Q = 0.25 mm).

package trace

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"moldwright/core/job"
	"moldwright/core/words"
)

// matrix is x' = a x + c y + e, y' = b x + d y + f.
type matrix [6]float64

func (m matrix) apply(p pt) pt {
	return pt{m[0]*p.x + m[2]*p.y + m[4], m[1]*p.x + m[3]*p.y + m[5]}
}

// then is n applied first, m after it.
func (m matrix) then(n matrix) matrix {
	o := m.apply(pt{n[4], n[5]})
	return matrix{
		m[0]*n[0] + m[2]*n[1], m[1]*n[0] + m[3]*n[1],
		m[0]*n[2] + m[2]*n[3], m[1]*n[2] + m[3]*n[3],
		o.x, o.y,
	}
}

// svgShape is a path of the file in mm, y down.
type svgShape struct {
	id   string
	line int
	subs []subpath
	note words.Text // what was wrong with its data, if anything
}

// unitsMM are the absolute units of CSS.
var unitsMM = map[string]float64{"mm": 1, "cm": 10, "in": 25.4, "px": 25.4 / 96, "pt": 25.4 / 72, "pc": 25.4 / 6, "Q": 0.25}

const (
	maxSVGBytes = 32 << 20
	maxDepth    = 200
	maxShapes   = 5000
)

// readShapes lists the shapes in the order of the file. units is what a bare
// number means where the file gives no physical size.
func readShapes(text []byte, units string) ([]svgShape, *job.Fault) {
	if len(text) > maxSVGBytes {
		return nil, job.Faultf("tooLarge", "text", "The drawing has more than %d megabytes; save only the profile's path.", maxSVGBytes>>20)
	}
	bare, ok := unitsMM[units]
	if !ok {
		return nil, job.Faultf("unknownUnits", "units", "The units %q are not known; say mm, cm, in or px.", units)
	}
	d := xml.NewDecoder(bytes.NewReader(text))
	d.Entity = xml.HTMLEntity
	// the text was decoded by whoever read the file, whatever it says of its encoding
	d.CharsetReader = func(_ string, text io.Reader) (io.Reader, error) { return text, nil }
	line := func() int { return 1 + bytes.Count(text[:min(int(d.InputOffset()), len(text))], []byte("\n")) }
	var out []svgShape
	stack := []matrix{{bare, 0, 0, bare, 0, 0}}
	unseen := 0 // depth of the outermost element that is not drawn
	root := false
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if bad := (*xml.SyntaxError)(nil); errors.As(err, &bad) {
			return nil, job.Faultf("notSVG", "text", "The file is no SVG, or it is damaged or cut short at line %d; save the drawing anew and open that.", bad.Line).AtLine(bad.Line)
		}
		if err != nil {
			return nil, job.Faultf("notSVG", "text", "The file cannot be read as SVG; save the drawing anew as plain SVG and open that. %s", job.Verbatim(err)).AtLine(line())
		}
		switch e := tok.(type) {
		case xml.StartElement:
			if len(stack) > maxDepth {
				return nil, job.Faultf("tooDeep", "text", "The drawing is nested more than %d deep; save only the profile's path.", maxDepth).AtLine(line())
			}
			at := attributes(e)
			m := stack[len(stack)-1]
			if !root {
				if e.Name.Local != "svg" {
					return nil, job.Faultf("notSVG", "text", "The file begins with <%s>, not with <svg>.", clipped(e.Name.Local)).AtLine(line())
				}
				root = true
				m = rootMatrix(at, bare)
			} else if e.Name.Local == "svg" {
				m = m.then(matrix{1, 0, 0, 1, length(at["x"], 1), length(at["y"], 1)})
			}
			if t, err := transform(at["transform"]); err != nil {
				return nil, job.Faultf("badTransform", "text", "The transform %q cannot be read.", clipped(at["transform"])).AtLine(line())
			} else {
				m = m.then(t)
			}
			stack = append(stack, m)
			switch e.Name.Local {
			case "defs", "clipPath", "mask", "symbol", "pattern", "marker":
				if unseen == 0 {
					unseen = len(stack)
				}
			}
			if unseen > 0 {
				continue
			}
			if data, ok := pathData(e.Name.Local, at); ok {
				if len(out) >= maxShapes {
					return nil, job.Faultf("tooManyPaths", "text", "The drawing has more than %d paths; save only the profile's path.", maxShapes).AtLine(line())
				}
				s := svgShape{id: at["id"], line: line()}
				subs, err := readPath(data)
				if err != nil {
					s.note = job.Words(err)
				}
				for _, sub := range subs {
					if len(sub.pieces) == 0 {
						continue
					}
					for i := range sub.pieces {
						for k := range 4 {
							sub.pieces[i].p[k] = m.apply(sub.pieces[i].p[k])
						}
					}
					s.subs = append(s.subs, sub)
				}
				out = append(out, s)
			}
		case xml.EndElement:
			if unseen == len(stack) {
				unseen = 0
			}
			stack = stack[:len(stack)-1]
		}
	}
	if !root {
		return nil, job.Faultf("notSVG", "text", "There is no <svg> in the file; open an SVG drawing.")
	}
	return out, nil
}

func clipped(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

func attributes(e xml.StartElement) map[string]string {
	m := make(map[string]string, len(e.Attr))
	for _, a := range e.Attr {
		if a.Name.Space == "" {
			m[a.Name.Local] = a.Value
		}
	}
	return m
}

// pathData is the path of a drawn element, by the equivalents that the standard
// gives.
func pathData(name string, at map[string]string) (string, bool) {
	switch name {
	case "path":
		return at["d"], true
	case "polyline":
		return "M" + at["points"], true
	case "polygon":
		return "M" + at["points"] + "Z", true
	case "line":
		f := func(k string) string { return strconv.FormatFloat(length(at[k], 1), 'g', -1, 64) }
		return "M" + f("x1") + " " + f("y1") + "L" + f("x2") + " " + f("y2"), true
	}
	return "", false
}

// length is a number with an absolute unit, bare numbers times bare; 0 where it
// cannot be read.
func length(s string, bare float64) float64 {
	v, unit := measure(s)
	if unit == "" {
		return v * bare
	}
	return v * unitsMM[unit]
}

// measure parts a length from its unit.
func measure(s string) (float64, string) {
	s = strings.TrimSpace(s)
	unit := ""
	for u := range unitsMM {
		if strings.HasSuffix(s, u) {
			unit = u
		}
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(s, unit)), 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > 1e9 {
		return 0, ""
	}
	return v, unit
}

// rootMatrix is from user units of the file to mm.
func rootMatrix(at map[string]string, bare float64) matrix {
	w, wu := measure(at["width"])
	h, hu := measure(at["height"])
	real := func(u string) bool { return u != "" && u != "px" }
	var box [4]float64
	f := strings.FieldsFunc(at["viewBox"], func(c rune) bool { return c == ' ' || c == ',' || c == '\t' || c == '\n' || c == '\r' })
	hasBox := len(f) == 4
	for i := range box {
		if hasBox {
			v, err := strconv.ParseFloat(f[i], 64)
			hasBox = err == nil && math.Abs(v) < 1e9
			box[i] = v
		}
	}
	hasBox = hasBox && box[2] > 0 && box[3] > 0
	k := math.Inf(1)
	if hasBox && real(wu) && w > 0 {
		k = w * unitsMM[wu] / box[2]
	}
	if hasBox && real(hu) && h > 0 {
		k = math.Min(k, h*unitsMM[hu]/box[3])
	}
	switch {
	case !math.IsInf(k, 1):
	case !hasBox && real(wu):
		k = unitsMM["px"] // a physical size without viewBox leaves CSS pixels
	default:
		k = bare
	}
	if !hasBox {
		return matrix{k, 0, 0, k, 0, 0}
	}
	return matrix{k, 0, 0, k, -k * box[0], -k * box[1]}
}

// transform reads a transform list.
func transform(s string) (matrix, error) {
	m := matrix{1, 0, 0, 1, 0, 0}
	bad := fmt.Errorf("bad transform")
	for n := 0; ; n++ {
		s = strings.TrimLeft(s, " \t\r\n,")
		if s == "" {
			return m, nil
		}
		name, rest, ok := strings.Cut(s, "(")
		if !ok || n > 100 {
			return m, bad
		}
		args, after, ok := strings.Cut(rest, ")")
		if !ok {
			return m, bad
		}
		s = after
		r := &pathReader{s: args}
		var v []float64
		for r.skip(); r.i < len(r.s) && len(v) < 7; r.skip() {
			x, err := r.number()
			if err != nil {
				return m, bad
			}
			v = append(v, x)
		}
		name = strings.TrimSpace(name)
		var t matrix
		rad := math.Pi / 180
		switch {
		case name == "matrix" && len(v) == 6:
			copy(t[:], v)
		case name == "translate" && len(v) == 1:
			t = matrix{1, 0, 0, 1, v[0], 0}
		case name == "translate" && len(v) == 2:
			t = matrix{1, 0, 0, 1, v[0], v[1]}
		case name == "scale" && len(v) == 1:
			t = matrix{v[0], 0, 0, v[0], 0, 0}
		case name == "scale" && len(v) == 2:
			t = matrix{v[0], 0, 0, v[1], 0, 0}
		case name == "rotate" && (len(v) == 1 || len(v) == 3):
			sin, cos := math.Sincos(v[0] * rad)
			t = matrix{cos, sin, -sin, cos, 0, 0}
			if len(v) == 3 {
				t = matrix{1, 0, 0, 1, v[1], v[2]}.then(t).then(matrix{1, 0, 0, 1, -v[1], -v[2]})
			}
		case name == "skewX" && len(v) == 1:
			t = matrix{1, 0, math.Tan(v[0] * rad), 1, 0, 0}
		case name == "skewY" && len(v) == 1:
			t = matrix{1, math.Tan(v[0] * rad), 0, 1, 0, 0}
		default:
			return m, bad
		}
		m = m.then(t)
	}
}
