package solid

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/hschendel/stl"

	"moldwright/core/job"
)

// sideWithNatches is a piece with walls, flats, ends, domes and sockets.
func sideWithNatches(t testing.TB) *Mesh {
	t.Helper()
	b := NewBuilder(round(96), Span{96, 5, 37})
	rings := b.Rings([][2]float64{{30, 0}, {80, 0}, {80, 90}, {35, 90}, {50, 40}})
	b.Walls(rings)
	for _, h := range b.End(Near, rings, Circle{[2]float64{66, 20}, 5, 32}) {
		b.Dome(h, 40)
	}
	for _, h := range b.End(Far, rings, Circle{[2]float64{66, 20}, 5, 32}) {
		b.Socket(h, 40)
	}
	m, err := b.Done()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestSTLReadsBack(t *testing.T) {
	m := sideWithNatches(t)
	data := STL(m, "Harbour jar, side part A")
	if len(data) != 84+50*len(m.T) || !bytes.Equal(data, STL(m, "Harbour jar, side part A")) {
		t.Fatal("length or bytes differ")
	}
	used := bytes.Repeat([]byte{7}, 10+len(data)) // nothing of what was there may show
	if got := AppendSTL(used[:10], m, "Harbour jar, side part A"); !bytes.Equal(got[10:], data) || &got[0] != &used[0] {
		t.Error("appended to a used buffer, the bytes differ")
	}
	back, err := ReadSTL(data)
	r := sound(t, back, err)
	was := sound(t, m, nil)
	if len(back.V) != len(m.V) || len(back.T) != len(m.T) || r.Genus != was.Genus {
		t.Errorf("%+v came back as %+v", was, r)
	}
	near(t, "volume", r.VolumeMM3, was.VolumeMM3, 1e-6*was.VolumeMM3)
	for i := range m.T {
		for k := range 3 {
			for x := range 3 {
				if float64(float32(m.V[m.T[i][k]][x])) != back.V[back.T[i][k]][x] {
					t.Fatalf("triangle %d has moved", i)
				}
			}
		}
	}
	s, err := stl.ReadAll(bytes.NewReader(data))
	if err != nil || s.IsAscii || s.Name != "Harbour jar, side part A" {
		t.Fatalf("%v %q", err, s.Name)
	}
	for i, tri := range s.Triangles {
		want := unit(back.normal2(back.T[i]))
		for k := range 3 {
			if math.Abs(float64(tri.Normal[k])-want[k]) > 1e-6 || tri.Attributes != 0 {
				t.Fatalf("triangle %d: normal %v, want %v; attributes %d", i, tri.Normal, want, tri.Attributes)
			}
		}
	}
}

// The same solid written by the library, whose bytes ours must equal.
func TestSTLAgainstLibrary(t *testing.T) {
	m := sideWithNatches(t)
	ours := STL(m, "part")
	var theirs bytes.Buffer
	if err := librarySolid(m, "part").WriteAll(&theirs); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(ours, theirs.Bytes()) {
		t.Error("the library writes other bytes")
	}
}

func librarySolid(m *Mesh, name string) *stl.Solid {
	s := &stl.Solid{Name: name, Triangles: make([]stl.Triangle, len(m.T))}
	m = m.Clone()
	for i := range m.V {
		for k, x := range m.V[i] {
			m.V[i][k] = float64(float32(x))
		}
	}
	for i, t := range m.T {
		tri := &s.Triangles[i]
		for k, j := range t {
			tri.Vertices[k] = stl.Vec3{float32(m.V[j][0]), float32(m.V[j][1]), float32(m.V[j][2])}
		}
		n := m.normal2(t)
		l := 1 / length(n)
		tri.Normal = stl.Vec3{float32(n[0] * l), float32(n[1] * l), float32(n[2] * l)}
	}
	return s
}

func TestSTLHeader(t *testing.T) {
	m := brick(t, Vec{}, Vec{1, 1, 1})
	for name, want := range map[string]string{
		"lower part":             "lower part",
		"solid lower":            "_solid lower",
		"SOLIDS":                 "_SOLIDS",
		"Krug für Öl\n":          "Krug f_r _l_",
		strings.Repeat("x", 200): strings.Repeat("x", 80),
	} {
		data := STL(m, name)
		if got := string(bytes.TrimRight(data[:80], "\x00")); got != want {
			t.Errorf("%q gives %q, want %q", name, got, want)
		}
		if binary.LittleEndian.Uint32(data[80:]) != 12 {
			t.Error("wrong count")
		}
		if back, err := ReadSTL(data); err != nil || len(back.T) != 12 {
			t.Errorf("%q does not read back: %v", name, err)
		}
	}
}

func TestReadSTLText(t *testing.T) {
	s := librarySolid(brick(t, Vec{}, Vec{1, 2, 3}), "cube")
	s.IsAscii = true
	var b bytes.Buffer
	if err := s.WriteAll(&b); err != nil {
		t.Fatal(err)
	}
	m, err := ReadSTL(b.Bytes())
	near(t, "volume", sound(t, m, err).VolumeMM3, 6, 1e-12)
}

func TestReadSTLRefuses(t *testing.T) {
	good := STL(brick(t, Vec{}, Vec{1, 1, 1}), "x")
	forged := append([]byte(nil), good...)
	binary.LittleEndian.PutUint32(forged[80:], 0xFFFFFFFF)
	notFinite := append([]byte(nil), good...)
	put(notFinite[84+12:], float32(math.NaN()))
	for name, data := range map[string][]byte{
		"empty":       nil,
		"cut short":   good[:len(good)-7],
		"head only":   good[:60],
		"forged":      forged,
		"nan":         notFinite,
		"text":        []byte("hello"),
		"bad text":    []byte("solid x\nfacet normal 0 0\n"),
		"blank lines": append([]byte("solid x\n"), bytes.Repeat([]byte(" \n"), 1<<20)...),
		"long line":   append([]byte("solid "), bytes.Repeat([]byte("y"), 1<<20)...),
	} {
		_, err := ReadSTL(data)
		var fault *job.Fault
		if !errors.As(err, &fault) || fault.Field != "file" || fault.Code != "badSTL" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// admesh (Debian package admesh) repairs STL files and reports what it had to
// do; of ours it must have nothing to do.
func TestAdmeshRepairsNothing(t *testing.T) {
	admesh, err := exec.LookPath("admesh")
	if err != nil {
		t.Skip("admesh is not installed; install the Debian package admesh to run this check")
	}
	cupMesh, err := Revolve(cup(150), round(180), FullTurn(180))
	if err != nil {
		t.Fatal(err)
	}
	torus, err := Revolve(circle(40, 0, 9, 60), round(96), FullTurn(96))
	if err != nil {
		t.Fatal(err)
	}
	for name, m := range map[string]*Mesh{"side": sideWithNatches(t), "cup": cupMesh, "torus": torus, "brick": brick(t, Vec{1, 2, 3}, Vec{4, 5, 6})} {
		file := filepath.Join(t.TempDir(), name+".stl")
		if err := os.WriteFile(file, STL(m, name), 0o644); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command(admesh, file).CombinedOutput()
		if err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		for _, what := range []string{"Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed"} {
			got := regexp.MustCompile(`(?m)` + what + `\s*:\s*(\d+)(?:\s+(\d+))?`).FindSubmatch(out)
			if got == nil {
				t.Fatalf("admesh says nothing of %q:\n%s", what, out)
			}
			for _, n := range got[1:] {
				if len(n) > 0 && string(n) != "0" {
					t.Errorf("%s: %s", name, got[0])
				}
			}
		}
		got := regexp.MustCompile(`Volume\s*:\s*([-\d.]+)`).FindSubmatch(out)
		v, err := strconv.ParseFloat(string(got[1]), 64)
		if err != nil {
			t.Fatal(err)
		}
		near(t, name+" volume by admesh", v, m.Volume(), 2e-4*m.Volume())
	}
}

func FuzzReadSTL(f *testing.F) {
	f.Add(STL(brick(f, Vec{}, Vec{1, 1, 1}), "x"))
	f.Add([]byte("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid x\n"))
	f.Add([]byte("solid \n\n\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := ReadSTL(data)
		if err != nil {
			return
		}
		r := Check(m)
		if r.NotFinite+r.BadIndices > 0 {
			t.Fatalf("%+v", r)
		}
		back, err := ReadSTL(STL(m, "again"))
		if err != nil || len(back.T) != len(m.T) || len(back.V) != len(m.V) {
			t.Fatalf("does not come back: %v", err)
		}
	})
}
