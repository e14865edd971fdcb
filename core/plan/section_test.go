package plan

import (
	"math"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
)

// The figures of pots that are not round are those of their meshes: the volume
// of the cavity and the surface of the pot, each against the mesh of the cast
// cut fine.
func TestFiguresOfSections(t *testing.T) {
	for _, s := range []job.Section{
		{Kind: job.SectionRound},
		{Kind: job.SectionOval, Ratio: 0.6},
		{Kind: job.SectionPolygon, Count: 5, Rounding: 30},
		{Kind: job.SectionFlutes, Count: 12, Depth: 6},
	} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Section = s
		j.Mold.Scheme = "one"
		j.Form.Outer = []job.Node{{R: 0, Z: 0, Corner: true}, {R: 40, Z: 0, Corner: true}, {R: 55, Z: 60}, {R: 70, Z: 110, Corner: true}}
		p, err := Make(&j)
		if err != nil {
			t.Fatal(err)
		}
		md := p.work.mold
		m, err := mold.NewSolids(md).Cast(nil)
		if err != nil {
			t.Fatal(err)
		}
		rim := md.Cavity[len(md.Cavity)-1].R
		lid := math.Pi * rim * rim * md.Section.MeanSquare / 100
		if got, want := p.Casting.SlipFill-md.OpeningVolume(), m.Volume()/1000; math.Abs(got-want) > 2e-3*want {
			t.Errorf("%s: the cavity holds %.2f ml, its mesh %.2f", s.Kind, got, want)
		}
		if got, want := p.Size.CastArea, m.Area()/100-lid; math.Abs(got-want) > 4e-3*want {
			t.Errorf("%s: the pot has %.2f cm2, its mesh %.2f", s.Kind, got, want)
		}
	}
}
