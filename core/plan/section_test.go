package plan

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
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
		m, err := md.Solids().Cast(nil)
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

// What is trapped in a pot that is not round, plaster, air and slip alike, is
// that of the round pot times the mean square of the section: of an ellipse
// with the axes 1 and k it is k, its area over the circle's.
func TestTrapsAndPocketsOfAnOval(t *testing.T) {
	const ratio = 0.6
	shoulder := []job.Node{node(0, 6), node(22, 6), node(20, 0), node(50, 0), node(50, 70), node(30, 70), node(30, 60), node(20, 60), node(20, 90)}
	of := func(s job.Section) *Plan {
		j := job.Defaults()
		j.Form.Size, j.Form.Outer, j.Form.Section = job.SizeMold, shoulder, s
		return made(t, &j)
	}
	round, oval := of(job.Section{Kind: job.SectionRound}), of(job.Section{Kind: job.SectionOval, Ratio: ratio})
	if len(round.Traps) == 0 || len(round.Traps) != len(oval.Traps) || len(round.Flow.Air) == 0 || len(round.Flow.Air) != len(oval.Flow.Air) || len(round.Flow.Slip) != len(oval.Flow.Slip) {
		t.Fatalf("round %+v %+v, oval %+v %+v", round.Traps, round.Flow, oval.Traps, oval.Flow)
	}
	for i := range round.Traps {
		near(t, "trapped", oval.Traps[i].Volume, ratio*round.Traps[i].Volume, 1e-5)
		near(t, "its area in the half-plane", oval.Traps[i].Area, round.Traps[i].Area, 1e-9)
	}
	for i := range round.Flow.Air {
		near(t, "air", oval.Flow.Air[i].Volume, ratio*round.Flow.Air[i].Volume, 1e-5)
	}
	for i := range round.Flow.Slip {
		near(t, "slip", oval.Flow.Slip[i].Volume, ratio*round.Flow.Slip[i].Volume, 1e-5)
	}
}

// What is seen of dimples lies on the front of the left half of the elevation, and
// a job without dimples shows none.
func TestDimplesOnTheDrawing(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{{R: 0, Z: 0, Corner: true}, {R: 40, Z: 0, Corner: true}, {R: 44, Z: 80, Corner: true}}
	p, err := Make(&j)
	if err != nil || len(p.Drawing.Dimples) != 0 {
		t.Fatal(err, p.Drawing.Dimples)
	}
	j.Form.Section.Dimples = &job.Dimples{Around: 8, Heights: []float64{20, 50}, Diameter: 10, Depth: 1}
	if p, err = Make(&j); err != nil {
		t.Fatal(err)
	}
	if n := len(p.Drawing.Dimples); n < 4 || n > 8 {
		t.Errorf("%d dimples are seen", n)
	}
	for _, line := range p.Drawing.Dimples {
		for _, q := range line {
			if q[0] < 0 || q[0] > 44 || min(math.Abs(q[1]-20), math.Abs(q[1]-50)) > 5.1 {
				t.Errorf("a rim is seen at %v", q)
			}
		}
	}
}

// An oval cylinder cast with an even wall: the inside of an ellipse's parallel curve is
// A - P w + pi w^2 (Steiner, for w below the least radius of curvature, b^2/a), and
// the perimeter P is Ramanujan's of 1914, here right to 1e-6. The figures keep that
// wall, full and to a line below the rim, and the mesh's is said.
func TestEvenWallOfAnOval(t *testing.T) {
	j := job.Defaults()
	const a, b, high, wall, down = 50.0, 30.0, 90.0, 5.0, 20.0
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{node(0, 0), node(a, 0), node(a, high)}
	j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: b / a}
	j.Clay.DryingShrinkage, j.Clay.FiringShrinkage, j.Clay.Wall = 0, 0, wall
	j.Casting.FillLine = down
	p := made(t, &j)
	h := (a - b) * (a - b) / ((a + b) * (a + b))
	around := math.Pi * (a + b) * (1 + 3*h/(10+math.Sqrt(4-3*h)))
	flat := (math.Pi*a*b - around*wall + math.Pi*wall*wall) / 1000
	near(t, "capacity", p.Size.CapacityFired, flat*(high-wall), 0.05)
	near(t, "to the line", p.Casting.FillFired, flat*(high-wall-down), 0.05)
	near(t, "clay", p.Casting.CastVolume, math.Pi*a*b*high/1000-flat*(high-wall), 0.05)
	said := ""
	for _, c := range p.Cautions {
		if strings.HasPrefix(c.String(), "The clay builds an even wall") {
			said = c.String()
		}
	}
	scaled := math.Pi * b / a * (a - wall) * (a - wall) * (high - wall) / 1000
	if want := fmt.Sprintf("as thin as %.1f mm", wall*b/a); !strings.Contains(said, want) || scaled-flat*(high-wall) < 10 {
		t.Errorf("%q lacks %q; %.1f ml between", said, want, scaled-flat*(high-wall))
	}
	j.Form.Section = job.Section{Kind: job.SectionRound}
	for _, c := range made(t, &j).Cautions {
		if strings.HasPrefix(c.String(), "The clay builds an even wall") {
			t.Errorf("said of a round pot: %s", c)
		}
	}
}
