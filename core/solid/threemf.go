package solid

// 3MF files: the pieces of a mold or kit in one file, with unit, names and
// places. Written after the 3MF Core Specification 1.3 (an open standard of the
// 3MF Consortium; the package is that of ECMA-376 part 2). Text is put together
// directly, since a general XML writer is many times slower at a million
// numbers. No clock is read: every entry carries the same date.

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/xml"
	"io"
	"strconv"
	"time"
)

// Piece is one object of a 3MF file, moved by At from where its mesh stands.
type Piece struct {
	Name string
	Mesh *Mesh
	At   Vec
}

const (
	coreSpace    = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
	modelPath    = "3D/3dmodel.model"
	contentTypes = xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
		`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
		`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>` +
		`</Types>`
	relationships = xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
		`<Relationship Target="/` + modelPath + `" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>` +
		`</Relationships>`
)

// ThreeMF is the pieces as one 3MF file, each an object with its name and one
// build item. The unit is the millimeter. Coordinates are rounded to float32 as
// in STL, so that both files hold the same solid; they are written as plain
// decimals that read back to it. The same pieces give the same bytes.
func ThreeMF(title string, pieces []Piece) ([]byte, error) {
	size := 0
	for _, p := range pieces {
		size += 60*len(p.Mesh.V) + 48*len(p.Mesh.T) + 300
	}
	model := appendModel(make([]byte, 0, size), title, pieces)
	var out bytes.Buffer
	out.Grow(len(model)/4 + 1024)
	z := zip.NewWriter(&out)
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) {
		return flate.NewWriter(w, flate.BestSpeed)
	})
	for _, e := range []struct {
		name string
		data []byte
	}{
		{"[Content_Types].xml", []byte(contentTypes)},
		{"_rels/.rels", []byte(relationships)},
		{modelPath, model},
	} {
		w, err := z.CreateHeader(&zip.FileHeader{
			Name: e.name, Method: zip.Deflate,
			Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC),
		})
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(e.data); err != nil {
			return nil, err
		}
	}
	err := z.Close()
	return out.Bytes(), err
}

func appendModel(b []byte, title string, pieces []Piece) []byte {
	b = append(b, xml.Header...)
	b = append(b, `<model unit="millimeter" xml:lang="en" xmlns="`+coreSpace+`">`+"\n"+`<metadata name="Title">`...)
	b = appendText(b, title)
	b = append(b, "</metadata>\n<resources>\n"...)
	for i, p := range pieces {
		b = append(b, `<object id="`...)
		b = strconv.AppendInt(b, int64(i)+1, 10)
		b = append(b, `" type="model" name="`...)
		b = appendText(b, p.Name)
		b = append(b, "\"><mesh><vertices>\n"...)
		for _, v := range p.Mesh.V {
			b = appendDecimal(append(b, `<vertex x="`...), v[0])
			b = appendDecimal(append(b, `" y="`...), v[1])
			b = appendDecimal(append(b, `" z="`...), v[2])
			b = append(b, "\"/>\n"...)
		}
		b = append(b, "</vertices><triangles>\n"...)
		for _, t := range p.Mesh.T {
			b = strconv.AppendInt(append(b, `<triangle v1="`...), int64(t[0]), 10)
			b = strconv.AppendInt(append(b, `" v2="`...), int64(t[1]), 10)
			b = strconv.AppendInt(append(b, `" v3="`...), int64(t[2]), 10)
			b = append(b, "\"/>\n"...)
		}
		b = append(b, "</triangles></mesh></object>\n"...)
	}
	b = append(b, "</resources>\n<build>\n"...)
	for i, p := range pieces {
		b = append(b, `<item objectid="`...)
		b = strconv.AppendInt(b, int64(i)+1, 10)
		if p.At != (Vec{}) {
			b = append(b, `" transform="1 0 0 0 1 0 0 0 1`...)
			for _, x := range p.At {
				b = appendDecimal(append(b, ' '), x)
			}
		}
		b = append(b, "\"/>\n"...)
	}
	return append(b, "</build>\n</model>\n"...)
}

// appendDecimal writes the shortest decimal that reads back to the float32.
func appendDecimal(b []byte, x float64) []byte {
	return strconv.AppendFloat(b, float64(float32(x))+0, 'f', -1, 32)
}

func appendText(b []byte, s string) []byte {
	var w bytes.Buffer
	xml.EscapeText(&w, []byte(s)) // writing to a buffer cannot fail
	return append(b, w.Bytes()...)
}
