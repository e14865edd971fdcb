package solid

// Reading 3MF: the mesh objects of the model part and the items built of them.
// Core specification only; an object put together from others (components) is
// refused by name, and extensions are passed over.

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"

	"moldwright/core/job"
)

const modelType = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"

// modelLimit is the most bytes of XML that are unpacked: a small forged file
// could name any number.
const modelLimit = 512 << 20

// builtLimit is the most vertices and triangles of all items together: an
// object may be built any number of times.
const builtLimit = 20e6

func bad3MF(format string, args ...any) error {
	return job.Faultf("bad3MF", "file", "this 3MF file cannot be read: "+format+"; export it again", args...)
}

// millimeters of each unit that the specification knows.
var unitMM = map[string]float64{
	"micron": 0.001, "millimeter": 1, "centimeter": 10, "inch": 25.4, "foot": 304.8, "meter": 1000,
}

// ReadThreeMF reads the built items of a 3MF file, in build order. Coordinates
// are in mm whatever the file's unit. An item that is moved only has At; any
// other transform is applied to its mesh. Errors are *job.Fault.
func ReadThreeMF(data []byte) ([]Piece, error) {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, bad3MF("it is no zip package")
	}
	rels, err := unpack(z, "_rels/.rels")
	if err != nil {
		return nil, err
	}
	var links struct {
		Relationship []struct {
			Target string `xml:",attr"`
			Type   string `xml:",attr"`
		}
	}
	if err := xml.Unmarshal(rels, &links); err != nil {
		return nil, bad3MF("its list of parts is damaged")
	}
	for _, l := range links.Relationship {
		if l.Type == modelType {
			model, err := unpack(z, strings.TrimPrefix(l.Target, "/"))
			if err != nil {
				return nil, err
			}
			return readModel(model)
		}
	}
	return nil, bad3MF("it names no model")
}

func unpack(z *zip.Reader, name string) ([]byte, error) {
	for _, f := range z.File {
		if !strings.EqualFold(f.Name, name) {
			continue
		}
		r, err := f.Open()
		if err != nil {
			return nil, bad3MF("%s is damaged", name)
		}
		defer r.Close()
		data, err := io.ReadAll(io.LimitReader(r, modelLimit+1))
		if err != nil {
			return nil, bad3MF("%s is damaged", name)
		}
		if len(data) > modelLimit {
			return nil, bad3MF("%s is larger than %d MB", name, modelLimit>>20)
		}
		return data, nil
	}
	return nil, bad3MF("%s is missing", name)
}

// model is what has been read of the model part.
type model struct {
	unit    float64
	objects map[string]*Piece
	now     *Piece // the object being read
	pieces  []Piece
	built   int // vertices and triangles of the pieces
}

func readModel(data []byte) ([]Piece, error) {
	d := xml.NewDecoder(bytes.NewReader(data))
	m := &model{objects: map[string]*Piece{}}
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, bad3MF("its XML is damaged near byte %d", d.InputOffset())
		}
		start, ok := tok.(xml.StartElement)
		if !ok || start.Name.Space != coreSpace {
			continue
		}
		if err := m.element(start); err != nil {
			return nil, err
		}
	}
	if len(m.pieces) == 0 {
		return nil, bad3MF("it builds nothing")
	}
	return m.pieces, nil
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Space == "" && a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (m *model) element(e xml.StartElement) error {
	switch e.Name.Local {
	case "model":
		u := attr(e, "unit")
		if u == "" {
			u = "millimeter" // the default of the specification
		}
		if m.unit = unitMM[u]; m.unit == 0 {
			return bad3MF("its unit %q is not one of the standard", u)
		}
	case "object":
		m.now = &Piece{Name: attr(e, "name"), Mesh: &Mesh{}}
		m.objects[attr(e, "id")] = m.now
	case "components":
		return bad3MF("object %q is put together from others, which is not supported", m.now.nameOr("?"))
	case "vertex":
		var v Vec
		for k, name := range [3]string{"x", "y", "z"} {
			x, err := strconv.ParseFloat(attr(e, name), 64)
			if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
				return bad3MF("a vertex has %s = %q", name, attr(e, name))
			}
			v[k] = x * m.unit
		}
		if m.now == nil || m.unit == 0 {
			return bad3MF("a vertex stands outside an object")
		}
		m.now.Mesh.V = append(m.now.Mesh.V, v)
	case "triangle":
		if m.now == nil {
			return bad3MF("a triangle stands outside an object")
		}
		var t [3]int32
		for k, name := range [3]string{"v1", "v2", "v3"} {
			i, err := strconv.ParseUint(attr(e, name), 10, 31)
			if err != nil || int(i) >= len(m.now.Mesh.V) {
				return bad3MF("a triangle has %s = %q", name, attr(e, name))
			}
			t[k] = int32(i)
		}
		m.now.Mesh.T = append(m.now.Mesh.T, t)
	case "item":
		o := m.objects[attr(e, "objectid")]
		if o == nil {
			return bad3MF("it builds object %q, which it does not hold", attr(e, "objectid"))
		}
		if m.built += len(o.Mesh.V) + len(o.Mesh.T); m.built > builtLimit {
			return bad3MF("it builds more than %d million vertices and triangles", int(builtLimit/1e6))
		}
		p := Piece{Name: o.Name, Mesh: o.Mesh.Clone()}
		if err := m.transform(&p, attr(e, "transform")); err != nil {
			return err
		}
		m.pieces = append(m.pieces, p)
	}
	return nil
}

func (p *Piece) nameOr(s string) string {
	if p == nil {
		return s
	}
	return p.Name
}

// transform moves the piece by a row-major affine matrix of 12 numbers, of
// which the last three are the move.
func (m *model) transform(p *Piece, text string) error {
	if text == "" {
		return nil
	}
	fields := strings.Fields(text)
	if len(fields) != 12 {
		return bad3MF("a transform has %d numbers where 12 belong", len(fields))
	}
	var a [12]float64
	for i, f := range fields {
		x, err := strconv.ParseFloat(f, 64)
		if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
			return bad3MF("a transform has the number %q", f)
		}
		a[i] = x
	}
	p.At = Vec{a[9] * m.unit, a[10] * m.unit, a[11] * m.unit}
	if [9]float64(a[:9]) == [9]float64{1, 0, 0, 0, 1, 0, 0, 0, 1} {
		return nil
	}
	for i, v := range p.Mesh.V {
		for k := range 3 {
			p.Mesh.V[i][k] = v[0]*a[k] + v[1]*a[3+k] + v[2]*a[6+k]
		}
	}
	if dot(Vec(a[0:3]), cross(Vec(a[3:6]), Vec(a[6:9]))) < 0 { // a mirror
		for i, t := range p.Mesh.T {
			p.Mesh.T[i] = [3]int32{t[0], t[2], t[1]}
		}
	}
	return nil
}
