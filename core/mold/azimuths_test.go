package mold

import (
	"math"
	"testing"

	"moldwright/core/job"
	"moldwright/core/solid"
)

// No chord of a pot that is not round lies farther within its section than the
// turns are allowed, and every corner of a polygon is a vertex, however the
// section stands to the seams: held against the section itself at a hundred places
// to a chord.
func TestChordErrorOfSections(t *testing.T) {
	for _, s := range []job.Section{
		{Kind: job.SectionOval, Ratio: 0.5},
		{Kind: job.SectionPolygon, Count: 3},
		{Kind: job.SectionPolygon, Count: 5, Rounding: 4},
		{Kind: job.SectionPolygon, Count: 7, Rounding: 50},
		{Kind: job.SectionPolygon, Count: 8},
		{Kind: job.SectionFlutes, Count: 12, Depth: 6},
		{Kind: job.SectionFlutes, Count: 31, Depth: 10},
	} {
		j := job.Defaults()
		j.Form.Size, j.Form.Section = job.SizeMold, s
		j.Form.Outer = []job.Node{{R: 0, Z: 0, Corner: true}, {R: 40, Z: 0, Corner: true}, {R: 60, Z: 80, Corner: true}}
		all, base, err := schemesOf(&j)
		if err != nil {
			t.Fatal(err)
		}
		for i := range all {
			if all[i].ID != "one" && all[i].ID != "sides3" {
				continue
			}
			all[i].Turn = 7.3 * float64(i)
			md := Lay(&j, base, &all[i])
			so := md.Solids()
			at := func(deg float64) (x, y float64) {
				g, _ := md.Section.At(deg * math.Pi / 180)
				sin, cos := math.Sincos(deg * math.Pi / 180)
				return 60 * g * cos, 60 * g * sin
			}
			worst, where, most := 0.0, 0.0, 0.0
			for k := range so.Turn.Steps() {
				a, b := so.Turn.Deg(k), so.Turn.Deg(k+1)
				ax, ay := at(a)
				bx, by := at(b)
				for n := 1; n < 100; n++ {
					x, y := at(a + (b-a)*float64(n)/100)
					if off := math.Abs((bx-ax)*(y-ay)-(by-ay)*(x-ax)) / math.Hypot(bx-ax, by-ay); off > worst {
						worst, where = off, a
					}
				}
				most = math.Max(most, so.section[k])
			}
			t.Logf("%s %d, %s: %d steps, chord error %.4f mm at %.2f", s.Kind, s.Count, all[i].ID, so.Turn.Steps(), worst, where)
			if worst > 1.05*turnTol || worst+ChordTol > solid.ChordMM+1e-3 {
				t.Errorf("%s %d, %s: chord error %.4f mm at %.2f", s.Kind, s.Count, all[i].ID, worst, where)
			}
			if most < 1-1e-9 {
				t.Errorf("%s %d, %s: the farthest vertex stands at %.6f of the corner", s.Kind, s.Count, all[i].ID, most)
			}
			if _, err := soundParts(so); err != nil {
				t.Errorf("%s %d, %s: %v", s.Kind, s.Count, all[i].ID, err)
			}
		}
	}
}
