package plan

// Meshes put together for the way to the workshop: one 3MF file with the prints
// laid out on plates of the bed's size, and one zip with meshes, sheets, the
// job and a list of what is what. No clock is read: the same job gives the
// same bytes.

import (
	"archive/zip"
	"bytes"
	"fmt"
	"math"
	"strings"

	"moldwright/core/sheet"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// Gaps in mm between pieces on a plate and between plates; common practice, no
// source.
const (
	pieceGap = 5.0
	plateGap = 30.0
)

// threeMF is one file of all meshes: prints laid out on plates, plaster and
// cast where they stand in the closed mold, left of the first plate.
func (p *Plan) threeMF(files []File) ([]byte, error) {
	pieces := make([]solid.Piece, len(files))
	var prints []File
	left := 0.0
	for _, f := range files {
		if f.Kind == "print" {
			prints = append(prints, f)
		} else {
			_, hi := f.mesh.Bounds()
			left = math.Min(left, -hi[0]-plateGap)
		}
	}
	if len(prints) == 0 {
		left = 0
	}
	at := plates(prints, p.work.job.Printer.Bed)
	for i, f := range files {
		pieces[i] = solid.Piece{Name: f.Name, Mesh: f.mesh, At: solid.Vec{left, 0, 0}}
		if f.Kind == "print" {
			pieces[i].At, at = at[0], at[1:]
		}
	}
	return solid.ThreeMF(p.work.job.Name, pieces)
}

// plates lays pieces that stand about the axis out in rows on plates of the
// bed's size, side by side along x from the origin, in their order; a piece
// larger than the bed has a plate of its own.
func plates(files []File, bed [3]float64) []solid.Vec {
	out := make([]solid.Vec, len(files))
	plate, x, y, row := 0.0, 0.0, 0.0, 0.0 // the plate's corner; the next place on it; the row's depth
	widest := bed[0]
	for i, f := range files {
		w, d := f.Size[0], f.Size[1]
		if x > 0 && x+w > bed[0] { // next row
			x, y, row = 0, y+row+pieceGap, 0
		}
		if y > 0 && y+d > bed[1] { // next plate
			plate, x, y, row = plate+widest+plateGap, 0, 0, 0
			widest = bed[0]
		}
		out[i] = solid.Vec{plate + x + w/2, y + d/2, 0}
		x, row, widest = x+w+pieceGap, math.Max(row, d), math.Max(widest, x+w)
	}
	return out
}

// bundle is one zip in a folder of the pot's name: print/, plaster/, sheets/,
// all prints as one 3MF file, the job, and a list of it all.
func (p *Plan) bundle(files []File, paperName string, l words.Language) ([]byte, error) {
	if paperName == "" {
		paperName = "A4"
	}
	paper, err := sheet.PaperNamed(paperName)
	if err != nil {
		return nil, err
	}
	pot := fileName(p.work.job.Name, "")
	if pot == "" {
		pot = "pot"
	}
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	var list strings.Builder
	add := func(name string, what words.Text, data []byte) error {
		w, err := z.CreateHeader(&zip.FileHeader{Name: pot + "/" + name, Method: zip.Deflate})
		if err == nil {
			_, err = w.Write(data)
		}
		fmt.Fprintf(&list, "%s\n    %s\n", name, what.In(l))
		return err
	}
	fmt.Fprintf(&list, "%s\n%s\n\n", p.work.job.Name, p.Verdict.In(l))
	saved, err := p.work.job.Write()
	if err != nil {
		return nil, err
	}
	if err := add(pot+".moldwright.json", words.Say("The job. Open it in the page to go on with it."), saved); err != nil {
		return nil, err
	}
	in := p.paper(l)
	for _, s := range []struct {
		name string
		what words.Text
		make func() ([][]byte, int, error)
	}{
		{"report", words.Say("How the mold parts and why, and what to weigh."), func() ([][]byte, int, error) { return sheet.Report(in, paper, sheet.PDF, sheet.ReportOptions{}) }},
		{"section", words.Say("The mold in section."), func() ([][]byte, int, error) { return sheet.Section(in, paper, sheet.PDF) }},
		{"workshop", words.Say("The card for the bench."), func() ([][]byte, int, error) { return sheet.Workshop(in, paper, sheet.PDF) }},
		{"profile", words.Say("The profile at true scale. Print it at 100 %% and check the bars."), func() ([][]byte, int, error) { return sheet.Profile(in, paper, sheet.PDF, sheet.ProfileOptions{}) }},
	} {
		pages, _, err := s.make()
		if err != nil {
			return nil, err
		}
		if err := add("sheets/"+pot+"-"+s.name+".pdf", s.what, pages[0]); err != nil {
			return nil, err
		}
	}
	prints := 0
	for _, f := range files {
		if err := add(f.Kind+"/"+f.Name+".stl", f.words(), solid.STL(f.mesh, f.Name)); err != nil {
			return nil, err
		}
		if f.Kind == "print" {
			prints++
		}
	}
	if prints > 0 {
		data, err := p.threeMF(files)
		if err != nil {
			return nil, err
		}
		if err := add(pot+".3mf", words.Say("All meshes in one file, the prints laid out on plates."), data); err != nil {
			return nil, err
		}
	}
	if err := add("read-me.txt", words.Say("This list."), []byte(list.String())); err != nil {
		return nil, err
	}
	err = z.Close()
	return buf.Bytes(), err
}

// words tell what a mesh is for, and its size.
func (f *File) words() words.Text {
	x, y, z := f.Size[0], f.Size[1], f.Size[2]
	switch f.Kind {
	case "print":
		return words.Say("To print, standing as it is printed: %.0f × %.0f × %.0f mm.", x, y, z)
	case "plaster":
		return words.Say("A plaster part, to look at: pour it, do not print it: %.0f × %.0f × %.0f mm.", x, y, z)
	}
	return words.Say("The clay cast, to look at: %.0f × %.0f × %.0f mm.", x, y, z)
}
