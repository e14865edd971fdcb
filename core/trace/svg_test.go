package trace

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

func meridian(t *testing.T, nodes []job.Node) *form.Meridian {
	t.Helper()
	m, err := form.Build(&job.Job{Form: job.Form{Size: job.SizeMold, Outer: nodes}})
	if err != nil {
		t.Fatalf("%v: %v", err, nodes)
	}
	return m
}

// TestReadPath holds every command against points worked out from the
// definitions in W3C SVG 2, chapter 9.
func TestReadPath(t *testing.T) {
	for _, c := range []struct {
		d    string
		ends []pt
	}{
		{"M1 2L3 4", []pt{{3, 4}}},
		{"M1,2l3-4.5.5.5", []pt{{4, -2.5}, {4.5, -2}}}, // numbers without spaces
		{"m1 2 3 4 5 6", []pt{{4, 6}, {9, 12}}},        // further pairs are lines
		{"M1 2H5V6h-1v-1", []pt{{5, 2}, {5, 6}, {4, 6}, {4, 5}}},
		{"M0 0C1 0 2 1 2 2S3 4 4 4", []pt{{2, 2}, {4, 4}}},
		{"M0 0Q1 1 2 0T4 0", []pt{{2, 0}, {4, 0}}},
		{"M0 0 L4 0 4 4z", []pt{{4, 0}, {4, 4}, {0, 0}}},
		{"M0 0A5 5 0 01 10 0", []pt{{5, -5}, {10, 0}}}, // flags without spaces: half a circle over the top
		{"M1e1 2E-1L-.5+.5", []pt{{-0.5, 0.5}}},
	} {
		subs, err := readPath(c.d)
		if err != nil {
			t.Errorf("%s: %v", c.d, err)
			continue
		}
		var got []pt
		for _, s := range subs {
			for _, b := range s.pieces {
				got = append(got, b.p[3])
			}
		}
		if len(got) != len(c.ends) {
			t.Errorf("%s: %v, not %v", c.d, got, c.ends)
			continue
		}
		for i := range got {
			if got[i].dist(c.ends[i]) > 1e-9 {
				t.Errorf("%s: piece %d ends at %v, not %v", c.d, i, got[i], c.ends[i])
			}
		}
	}
	for _, d := range []string{"", "   "} {
		if subs, err := readPath(d); err != nil || len(subs) != 0 {
			t.Errorf("%q: %v %v", d, subs, err)
		}
	}
	for _, d := range []string{"L1 2", "M", "M1", "M1 2 X", "M1 2 L3", "M0 0A1 1 0 2 0 3 3", "M0 0Z1 1", "Mnan nan"} {
		if _, err := readPath(d); err == nil {
			t.Errorf("%q is read without a word", d)
		}
	}
}

// TestArcs compares arcs of ellipses with their implicit equation.
func TestArcs(t *testing.T) {
	for _, b := range ellipse(pt{30, 0}, pt{0, 20}, 30, 20, 0, false, true) {
		for k := 0; k <= 10; k++ {
			u, v := float64(k)/10, 1-float64(k)/10
			p := b.p[0].mul(v * v * v).add(b.p[1].mul(3 * u * v * v)).add(b.p[2].mul(3 * u * u * v)).add(b.p[3].mul(u * u * u))
			if e := p.x*p.x/900 + p.y*p.y/400 - 1; math.Abs(e) > 6e-4 { // a quarter by one cubic: 2.7e-4 of the radius
				t.Errorf("%v misses the ellipse by %g", p, e)
			}
		}
	}
}

func TestTransforms(t *testing.T) {
	for _, c := range []struct {
		s    string
		want pt // image of (1, 2)
	}{
		{"", pt{1, 2}}, {"translate(3)", pt{4, 2}}, {"translate(3,4)", pt{4, 6}}, {"scale(2)", pt{2, 4}},
		{"scale(2 3)translate(1 1)", pt{4, 9}}, {"rotate(90)", pt{-2, 1}}, {"rotate(90 1 1)", pt{0, 1}},
		{"matrix(1 2 3 4 5 6)", pt{12, 16}}, {"skewX(45)", pt{3, 2}}, {"skewY(45)", pt{1, 3}},
	} {
		m, err := transform(c.s)
		if err != nil || m.apply(pt{1, 2}).dist(c.want) > 1e-9 {
			t.Errorf("%s: %v %v", c.s, m.apply(pt{1, 2}), err)
		}
	}
}

// bowls drawn in every way that a profile is drawn: foot radius 30, rim radius
// 80, height 60, wall one cubic.
func TestReadSVGShapes(t *testing.T) {
	half := "M100 160 H130 C150 160 180 140 180 100"
	left := "M100 160 H70 C50 160 20 140 20 100"
	cases := map[string]string{
		"a right half":                `<svg viewBox="0 0 200 200" width="200mm" height="200mm"><path d="` + half + `"/></svg>`,
		"a left half":                 `<svg viewBox="0 0 200 200" width="200mm" height="200mm"><path d="` + left + `"/></svg>`,
		"from the rim down":           `<svg viewBox="0 0 200 200" width="200mm"><path d="M180 100C180 140 150 160 130 160H100"/></svg>`,
		"closed along the axis":       `<svg viewBox="0 0 200 200" width="20cm"><path d="` + half + `H100Z"/></svg>`,
		"both sides, closed":          `<svg viewBox="0 0 200 200" width="200mm"><path d="M20 100C20 140 50 160 70 160H130C150 160 180 140 180 100Z"/></svg>`,
		"both sides, open":            `<svg viewBox="0 0 200 200" width="200mm"><path d="M20 100C20 140 50 160 70 160H130C150 160 180 140 180 100"/></svg>`,
		"transforms on ancestors":     `<svg viewBox="0 0 200 200" width="200mm"><g transform="translate(50 0)"><g transform="scale(.5)"><path transform="scale(2) translate(-50,0)" d="` + half + `"/></g></g></svg>`,
		"in pixels":                   `<svg width="800" height="800" viewBox="0 0 755.9055118110236 755.9055118110236"><path transform="scale(3.779527559055118)" d="` + half + `"/></svg>`,
		"relative":                    `<svg viewBox="0 0 200 200" width="200mm"><path d="m100 160h30c20 0 50-20 50-60"/></svg>`,
		"other shapes in the drawing": `<svg viewBox="0 0 200 200" width="200mm"><defs><path d="M0 0L500 500"/></defs><line x1="0" y1="0" x2="10" y2="0"/><path d="` + half + `"/></svg>`,
		"another encoding":            `<?xml version="1.0" encoding="ISO-8859-1"?><svg viewBox="0 0 200 200" width="200mm"><path id="Gefäß" d="` + half + `"/></svg>`,
		"a namespace and a doctype":   `<?xml version="1.0"?><!DOCTYPE svg><svg:svg xmlns:svg="http://www.w3.org/2000/svg" viewBox="0 0 200 200" width="200mm"><svg:path d="` + half + `"/></svg:svg>`,
	}
	for name, text := range cases {
		t.Run(name, func(t *testing.T) {
			units := "mm"
			if name == "in pixels" {
				units = "px"
			}
			nodes, err := ReadSVG([]byte(text), SVGOptions{Units: units, Path: -1})
			if err != nil {
				t.Fatal(err)
			}
			m := meridian(t, nodes)
			if n := nodes[0]; n.R != 0 || n.Z != 0 {
				t.Errorf("begins at %v", n)
			}
			if n := nodes[len(nodes)-1]; math.Abs(n.R-80) > 0.02 || math.Abs(n.Z-60) > 0.02 {
				t.Errorf("ends at %v", n)
			}
			if len(nodes) > 12 {
				t.Errorf("%d nodes", len(nodes))
			}
			for k := 0; k <= 100; k++ { // the cubic by its definition
				u := float64(k) / 100
				v := 1 - u
				p := form.Point{R: 30*v*v*v + 150*u*v*v + 240*u*u*v + 80*u*u*u, Z: 60*u*u*u + 60*u*u*v}
				best := math.Inf(1)
				for i := 1; i < len(m.Pts); i++ {
					a, b := m.Pts[i-1], m.Pts[i]
					s := ((p.R-a.R)*(b.R-a.R) + (p.Z-a.Z)*(b.Z-a.Z)) / math.Pow(a.Dist(b), 2)
					best = math.Min(best, p.Dist(a.Lerp(b, math.Max(0, math.Min(1, s)))))
				}
				if best > 0.06 {
					t.Fatalf("%.3f mm off at r %.1f z %.1f\n%v", best, p.R, p.Z, nodes)
				}
			}
		})
	}
}

func TestSVGRoundTrip(t *testing.T) {
	for _, nodes := range [][]job.Node{
		{{R: 0, Z: 0, Corner: true}, {R: 30, Z: 0, Corner: true}, {R: 55, Z: 60}, {R: 28, Z: 140}, {R: 36, Z: 165, Corner: true}},
		{{R: 0, Z: 4, Corner: true}, {R: 26, Z: 4, Corner: true}, {R: 28, Z: 0, Corner: true}, {R: 32, Z: 0, Corner: true}, {R: 40, Z: 90, Corner: true}},
		{{R: 0, Z: 0}, {R: 40, Z: 30}, {R: 15, Z: 80}, {R: 0, Z: 90}},
	} {
		text, err := WriteSVG(nodes, "Jar & <lid>")
		if err != nil {
			t.Fatal(err)
		}
		closed := nodes[len(nodes)-1].R == 0
		o := SVGOptions{Units: "mm", Path: 1}
		if closed {
			o.Top = TopClosed
		}
		back, err := ReadSVG(text, o)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		a, b := meridian(t, nodes), meridian(t, back)
		if e := b.Volume()/a.Volume() - 1; math.Abs(e) > 2e-3 || a.Closed != b.Closed {
			t.Errorf("volume off by %g: %v", e, back)
		}
		again, err := WriteSVG(nodes, "Jar & <lid>")
		if err != nil || string(again) != string(text) {
			t.Error("not the same bytes twice")
		}
	}
}

func TestSVGUnits(t *testing.T) {
	for head, want := range map[string]float64{
		`viewBox="0 0 100 100" width="10cm" height="10cm"`:  50,
		`viewBox="0 0 100 100" width="10in" height="10in"`:  127,
		`viewBox="0 0 100 100" width="72pt" height="72pt"`:  12.7,
		`width="100mm" height="100mm"`:                      50 * 25.4 / 96,
		`viewBox="0 0 100 100"`:                             50,
		`viewBox="0 0 100 100" width="100%" height="100%"`:  50,
		`viewBox="0 0 100 100" width="200mm" height="10mm"`: 5,
	} {
		list, err := ListSVG([]byte(`<svg `+head+`><path id="p" d="M0 0L30 50"/></svg>`), "mm")
		if err != nil || len(list) != 1 || math.Abs(list[0].Height-want) > 1e-3 || list[0].ID != "p" {
			t.Errorf("%s: %+v %v, want %g", head, list, err, want)
		}
	}
}

func TestSVGFaults(t *testing.T) {
	for text, code := range map[string]string{
		"":                                    "notSVG",
		"hello":                               "notSVG",
		"<html></html>":                       "notSVG",
		"<svg><path":                          "notSVG",
		`<?xml version="1.1"?><svg/>`:         "notSVG",
		"<svg></svg>":                         "noPath",
		`<svg><path d=""/></svg>`:             "noPath",
		"<svg>\n<path d=\"X\"/></svg>":        "badPath",
		`<svg><path d="M0 0L1e9 1e9"/></svg>`: "absurdSize",
		`<svg><path d="M9 9l.1 .1"/></svg>`:   "absurdSize",
		`<svg><path d="M30 0V80"/></svg>`:     "noWidth",
		`<svg><path d="M0 30H80"/></svg>`:     "noHeight",
		// a line straight up whose ends differ in the last bits
		`<svg><g transform="rotate(90)"><path d="M0 30H80"/></g></svg>`: "noWidth",
		`<svg><path d="M0 0L50 10L60 60L20 80Z"/></svg>`:                "noAxis",
		`<svg><g transform="wobble(3)"><path d="M0 0L1 1"/></g></svg>`:  "badTransform",
		"<svg>" + strings.Repeat("<g>", 5000):                           "tooDeep",
	} {
		_, err := ReadSVG([]byte(text), SVGOptions{Units: "mm", Path: -1})
		var f *job.Fault
		if !errors.As(err, &f) || f.Code != code {
			t.Errorf("%.60q: %v, not %s", text, err, code)
		}
	}
}

// A line straight up is a cylinder where the axis is told, and what is said of
// one without is a sentence without a measure of nothing.
func TestSVGLineStraightUp(t *testing.T) {
	text := []byte(`<svg><path d="M30 0V80"/></svg>`)
	axis := 5.0
	nodes, err := ReadSVG(text, SVGOptions{Units: "mm", Path: -1, AxisMM: &axis})
	if err != nil {
		t.Fatal(err)
	}
	meridian(t, nodes)
	if n := len(nodes); nodes[0].R != 0 || math.Abs(nodes[n-1].R-25) > 0.01 || math.Abs(nodes[n-1].Z-80) > 0.01 {
		t.Errorf("not a cylinder of radius 25, 80 high: %v", nodes)
	}
	if _, err = ReadSVG(text, SVGOptions{Units: "mm", Path: -1}); err == nil || strings.ContainsAny(err.Error(), "0123456789") {
		t.Errorf("said: %v", err)
	}
}

func FuzzReadSVG(f *testing.F) {
	f.Add([]byte(`<svg viewBox="0 0 200 200" width="200mm"><path d="M100 160 H130 C150 160 180 140 180 100"/></svg>`))
	f.Add([]byte(`<svg><g transform="rotate(3)"><polygon points="0,0 50,0 50,50"/></g></svg>`))
	f.Add([]byte(`<svg><path d="M0 0A5 9 30 01 10 0T4 4S5 5 6 6Q1 2 3 4z"/></svg>`))
	f.Fuzz(func(t *testing.T, text []byte) {
		list, err := ListSVG(text, "mm")
		if err != nil {
			return
		}
		for i := -1; i < min(len(list), 4); i++ {
			nodes, err := ReadSVG(text, SVGOptions{Units: "mm", Path: i})
			if err == nil {
				if _, err := WriteSVG(nodes, "x"); err != nil {
					t.Fatal(fmt.Sprint(err, nodes))
				}
			}
		}
	})
}
