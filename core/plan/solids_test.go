package plan

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"io"
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
	"moldwright/core/solid"
)

func solidsOf(t *testing.T, j *job.Job, what, as string) ([]File, [][]byte) {
	t.Helper()
	saved, err := j.Write()
	if err != nil {
		t.Fatal(err)
	}
	request, err := json.Marshal(map[string]any{"job": json.RawMessage(saved), "what": what, "as": as})
	if err != nil {
		t.Fatal(err)
	}
	reply, blobs := Call("solids", request, nil, nil)
	var r struct {
		Files []File
		Error *job.Fault
	}
	if err := json.Unmarshal(reply, &r); err != nil || r.Error != nil {
		t.Fatalf("%v %v", err, r.Error)
	}
	return r.Files, blobs
}

// Every mesh reads back through the STL and the 3MF reader as the same solid,
// and the prints of a 3MF file stand on plates without meeting one another.
func TestSolidsReadBack(t *testing.T) {
	for _, name := range []string{"waisted-vase", "round-jar"} {
		j := pot(t, name)
		files, stls := solidsOf(t, j, "all", "stl")
		_, packed := solidsOf(t, j, "all", "3mf")
		pieces, err := solid.ReadThreeMF(packed[0])
		if err != nil || len(pieces) != len(files) {
			t.Fatalf("%d pieces in the 3MF file, %d files: %v", len(pieces), len(files), err)
		}
		var placed []solid.Piece
		for i, f := range files {
			m, err := solid.ReadSTL(stls[i])
			if err != nil {
				t.Fatal(err)
			}
			a, b := solid.Check(m), solid.Check(pieces[i].Mesh)
			if !a.Sound() || !b.Sound() || a.Triangles != f.Triangles || a.Genus != b.Genus || a.Shells != b.Shells || a.Vertices != b.Vertices {
				t.Errorf("%s: as STL %+v, as 3MF %+v", f.Name, a, b)
			}
			near(t, "volume of "+f.Name, a.VolumeMM3/1000, f.Volume, 1e-4*f.Volume)
			near(t, "volume of "+f.Name+" in 3MF", b.VolumeMM3, a.VolumeMM3, 1e-6*a.VolumeMM3)
			if f.Kind == "print" {
				placed = append(placed, pieces[i])
			}
		}
		for i, a := range placed {
			for _, b := range placed[:i] {
				if !apart(a, b) {
					t.Errorf("%s and %s lie on one another", a.Name, b.Name)
				}
			}
		}
	}
}

// apart tells whether the boxes of two placed pieces keep clear in plan.
func apart(a, b solid.Piece) bool {
	alo, ahi := a.Mesh.Bounds()
	blo, bhi := b.Mesh.Bounds()
	for k := range 2 {
		gap := math.Max(alo[k]+a.At[k]-bhi[k]-b.At[k], blo[k]+b.At[k]-ahi[k]-a.At[k])
		if gap > pieceGap-0.01 {
			return true
		}
	}
	return false
}

// The zip holds the job, the sheets, every mesh and a list that names them all,
// and comes out the same twice.
func TestBundle(t *testing.T) {
	j := pot(t, "round-jar")
	files, blobs := solidsOf(t, j, "prints", "zip")
	_, again := solidsOf(t, j, "prints", "zip")
	if !bytes.Equal(blobs[0], again[0]) {
		t.Error("the same job gives another zip")
	}
	z, err := zip.NewReader(bytes.NewReader(blobs[0]), int64(len(blobs[0])))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	list := ""
	for _, f := range z.File {
		names = append(names, f.Name)
		if strings.HasSuffix(f.Name, "read-me.txt") || strings.HasSuffix(f.Name, ".json") {
			r, err := f.Open()
			if err != nil {
				t.Fatal(err)
			}
			text, err := io.ReadAll(r)
			if err != nil {
				t.Fatal(err)
			}
			if strings.HasSuffix(f.Name, ".json") {
				if k, err := job.Read(text); err != nil || k.Name != j.Name {
					t.Errorf("the job does not read back: %v", err)
				}
			} else {
				list = string(text)
			}
		}
	}
	want := []string{"round-jar/round-jar.moldwright.json", "round-jar/sheets/round-jar-report.pdf", "round-jar/sheets/round-jar-profile.pdf", "round-jar/round-jar.3mf", "round-jar/read-me.txt"}
	for _, f := range files {
		want = append(want, "round-jar/print/"+f.Name)
	}
	all := strings.Join(names, "\n") + "\n"
	for _, w := range want {
		if !strings.Contains(all, w+"\n") {
			t.Errorf("the zip has no %s; it has\n%s", w, all)
		}
		if !strings.HasSuffix(w, "read-me.txt") && !strings.Contains(list, strings.TrimPrefix(w, "round-jar/")) {
			t.Errorf("the list does not name %s", w)
		}
	}
}
