package plan

import (
	"encoding/json"
	"fmt"
	"strings"

	"moldwright/core/mold"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// File tells of one mesh that solids hands out.
type File struct {
	Name      string     `json:"name"`
	Kind      string     `json:"kind"` // print, plaster or cast
	Part      string     `json:"part"`
	Label     words.Text `json:"label,omitzero"` // of a print, in words
	Triangles int        `json:"triangles"`
	Volume    float64    `json:"volume"` // ml
	Size      [3]float64 `json:"size"`   // mm
	// ToMold takes a print back to where it stands around its plaster part:
	// three rows of a turn and a shift in mm; nil for what stands there already.
	ToMold *[12]float64 `json:"toMold"`

	mesh *solid.Mesh
}

// Meshes makes the meshes of the given kind: prints turned for printing,
// plaster parts and cast where they stand in the closed mold.
func (p *Plan) Meshes(what string, say func(fraction float64, with words.Text)) ([]File, error) {
	w := p.work
	so := w.mold.Solids()
	var out []File
	add := func(name, kind, part string, m *solid.Mesh) {
		out = append(out, File{Name: fileName(w.job.Name, name), Kind: kind, Part: part,
			Triangles: len(m.T), Volume: m.Volume() / 1000, Size: m.Size(), mesh: m})
	}
	if what == "plaster" || what == "all" {
		for i := range w.mold.Parts {
			part := &w.mold.Parts[i]
			say(float64(i)/float64(len(w.mold.Parts)), words.Say("plaster part %s", mold.PartName(part.Name)))
			m, err := so.Part(part)
			if err != nil {
				return nil, err
			}
			add("plaster-"+part.Name, "plaster", part.Name, m)
		}
	}
	if what == "cast" || what == "all" {
		m, err := so.Cast(w.inner)
		if err != nil {
			return nil, fmt.Errorf("cast: %w", err)
		}
		add("cast", "cast", "", m)
	}
	if what == "prints" || what == "all" {
		for i := range p.Prints {
			piece := &p.Prints[i]
			if !piece.HasMesh() {
				continue
			}
			say(float64(i)/float64(len(p.Prints)), piece.Label)
			m, toMold, err := piece.Mesh(so)
			if err != nil {
				return nil, err
			}
			add("print-"+piece.Name, "print", piece.Part, m)
			out[len(out)-1].ToMold, out[len(out)-1].Label = &toMold, piece.Label
		}
	}
	return out, nil
}

// fileName is a name that every system takes: the pot's, then the piece's.
func fileName(pot, piece string) string {
	var b strings.Builder
	dash := false
	for _, r := range strings.ToLower(pot + " " + piece) {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			b.WriteRune(r)
			dash = false
		} else if !dash && b.Len() > 0 {
			b.WriteByte('-')
			dash = true
		}
	}
	return strings.Trim(b.String(), "-")
}

func solids(a *call) (any, [][]byte, error) {
	var q struct {
		Job   json.RawMessage `json:"job"`
		What  string          `json:"what"`
		As    string          `json:"as"`
		Paper string          `json:"paper"` // of the sheets in a zip; A4 where it is left out
	}
	if err := decode(a.json, &q); err != nil {
		return nil, nil, err
	}
	if err := choice("what", q.What, "prints", "plaster", "cast", "all"); err != nil {
		return nil, nil, err
	}
	if err := choice("as", q.As, "stl", "3mf", "zip"); err != nil {
		return nil, nil, err
	}
	p, err := planned(q.Job)
	if err != nil {
		return nil, nil, err
	}
	files, err := p.Meshes(q.What, a.say)
	if err != nil {
		return nil, nil, err
	}
	if files == nil {
		files = []File{}
	}
	var blobs [][]byte
	switch q.As {
	case "3mf":
		data, err := p.threeMF(files)
		if err != nil {
			return nil, nil, err
		}
		blobs = [][]byte{data}
		for i := range files {
			files[i].Name += ".3mf"
		}
	case "zip":
		data, err := p.bundle(files, q.Paper, a.language)
		if err != nil {
			return nil, nil, err
		}
		blobs = [][]byte{data}
		for i := range files {
			files[i].Name += ".stl"
		}
	default:
		for i := range files {
			blobs = append(blobs, solid.STL(files[i].mesh, files[i].Name))
			files[i].Name += ".stl"
		}
	}
	return map[string]any{"files": files}, blobs, nil
}
