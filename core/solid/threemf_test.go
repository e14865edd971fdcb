package solid

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"moldwright/core/job"
)

func TestThreeMFReadsBack(t *testing.T) {
	pieces := []Piece{
		{"side part A", sideWithNatches(t), Vec{110, 0, -3.5}},
		{`plate "B" <lower & upper> für ä`, brick(t, Vec{0, 0, 0}, Vec{20, 30.1, 4}), Vec{}},
	}
	data, err := ThreeMF("Harbour jar", pieces)
	if err != nil {
		t.Fatal(err)
	}
	again, _ := ThreeMF("Harbour jar", pieces)
	if !bytes.Equal(data, again) {
		t.Error("bytes differ from run to run")
	}
	back, err := ReadThreeMF(data)
	if err != nil {
		t.Fatal(err)
	}
	if len(back) != len(pieces) {
		t.Fatalf("%d pieces came back", len(back))
	}
	for i, p := range back {
		want := pieces[i]
		if p.Name != want.Name || p.At != want.At || len(p.Mesh.V) != len(want.Mesh.V) || len(p.Mesh.T) != len(want.Mesh.T) {
			t.Errorf("piece %d came back as %q at %v", i, p.Name, p.At)
		}
		sound(t, p.Mesh, nil)
		for j, v := range rounded(want.Mesh) {
			for k := range 3 {
				if float32(p.Mesh.V[j][k]) != float32(v[k]) {
					t.Fatalf("vertex %d is %v, was %v", j, p.Mesh.V[j], v)
				}
			}
		}
		for j, f := range want.Mesh.T {
			if p.Mesh.T[j] != f {
				t.Fatalf("triangle %d is %v, was %v", j, p.Mesh.T[j], f)
			}
		}
	}
}

// What the 3MF Core Specification 1.3 and ECMA-376 part 2 ask of the package:
// its parts, their types, the start relationship, unit, and well-formed XML.
func TestThreeMFPackage(t *testing.T) {
	data, err := ThreeMF("x", []Piece{{"a", brick(t, Vec{}, Vec{1, 1, 1}), Vec{5, 0, 0}}})
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	parts := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		b, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		parts[f.Name] = string(b)
		if f.Modified.Year() != 1980 {
			t.Errorf("%s is dated %v", f.Name, f.Modified)
		}
		if err := xml.Unmarshal(b, new(struct{ XMLName xml.Name })); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
	}
	for part, words := range map[string][]string{
		"[Content_Types].xml": {
			`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>`,
			`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>`,
		},
		"_rels/.rels": {`Target="/3D/3dmodel.model"`, `Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"`},
		"3D/3dmodel.model": {
			`<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">`,
			`<object id="1" type="model" name="a"><mesh><vertices>`,
			`<item objectid="1" transform="1 0 0 0 1 0 0 0 1 5 0 0"/>`,
		},
	} {
		for _, w := range words {
			if !strings.Contains(parts[part], w) {
				t.Errorf("%s lacks %s", part, w)
			}
		}
	}
}

// pack makes a 3MF package of the model text.
func packModel(t testing.TB, text string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, e := range [][2]string{{"_rels/.rels", relationships}, {"3D/3dmodel.model", text}} {
		w, err := z.Create(e[0])
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(e[1])); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

const tetra = `<mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="1" y="0" z="0"/><vertex x="0" y="1" z="0"/><vertex x="0" y="0" z="1"/></vertices>` +
	`<triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/><triangle v1="1" v2="2" v3="3"/><triangle v1="0" v2="3" v3="2"/></triangles></mesh>`

func TestReadThreeMFUnitsAndTransforms(t *testing.T) {
	head := `<model unit="inch" xmlns="` + coreSpace + `"><resources><object id="7">` + tetra + `</object></resources><build>`
	pieces, err := ReadThreeMF(packModel(t, head+
		`<item objectid="7"/><item objectid="7" transform="0 1 0 -1 0 0 0 0 1 2 0 0"/><item objectid="7" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/></build></model>`))
	if err != nil || len(pieces) != 3 {
		t.Fatal(err)
	}
	for i, p := range pieces {
		near(t, "volume", sound(t, p.Mesh, nil).VolumeMM3, 25.4*25.4*25.4/6, 1e-9)
		if want := (Vec{50.8 * float64(i&1)}); p.At != want {
			t.Errorf("piece %d stands at %v", i, p.At)
		}
	}
	// A row vector times the matrix: x goes to y.
	if v := pieces[1].Mesh.V[1]; v != (Vec{0, 25.4, 0}) {
		t.Errorf("turned to %v", v)
	}
}

func TestReadThreeMFRefuses(t *testing.T) {
	model := func(in string) []byte {
		return packModel(t, `<model xmlns="`+coreSpace+`">`+in+`</model>`)
	}
	good, err := ThreeMF("x", []Piece{{"a", brick(t, Vec{}, Vec{1, 1, 1}), Vec{}}})
	if err != nil {
		t.Fatal(err)
	}
	many := `<resources><object id="1">` + tetra + `</object></resources><build>` + strings.Repeat(`<item objectid="1" transform="1"/>`, 3) + `</build>`
	for name, data := range map[string][]byte{
		"empty":         nil,
		"no zip":        []byte("PK but not really"),
		"cut short":     good[:len(good)/2],
		"no model":      packNothing(t),
		"builds none":   model(`<resources/><build/>`),
		"wild index":    model(`<resources><object id="1"><mesh><triangles><triangle v1="0" v2="1" v3="2"/></triangles></mesh></object></resources>`),
		"not a number":  model(`<resources><object id="1"><mesh><vertices><vertex x="NaN" y="0" z="0"/></vertices></mesh></object></resources>`),
		"stray vertex":  model(`<vertex x="0" y="0" z="0"/>`),
		"components":    model(`<resources><object id="1"><components/></object></resources>`),
		"bare":          model(`<components/>`),
		"unknown unit":  packModel(t, `<model unit="cubit" xmlns="`+coreSpace+`"/>`),
		"unknown item":  model(`<build><item objectid="4"/></build>`),
		"bad transform": model(many),
		"unclosed":      packModel(t, `<model xmlns="`+coreSpace+`"><resources>`),
	} {
		_, err := ReadThreeMF(data)
		var fault *job.Fault
		if !errors.As(err, &fault) || fault.Code != "bad3MF" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func packNothing(t testing.TB) []byte {
	var b bytes.Buffer
	if err := zip.NewWriter(&b).Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func FuzzReadThreeMF(f *testing.F) {
	f.Add(`<resources><object id="7">` + tetra + `</object></resources><build><item objectid="7" transform="0 1 0 -1 0 0 0 0 1 2 0 0"/></build>`)
	f.Add(`<components/>`)
	f.Fuzz(func(t *testing.T, in string) {
		pieces, err := ReadThreeMF(packModel(t, `<model xmlns="`+coreSpace+`">`+in+`</model>`))
		if err != nil {
			return
		}
		for _, p := range pieces {
			if r := Check(p.Mesh); r.BadIndices > 0 {
				t.Fatalf("%+v", r)
			}
		}
	})
}
