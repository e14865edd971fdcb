package tooling

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
)

// Faces of a straight-sided cottle that are wider than the bed are parted within
// the face, into the fewest staves that fit: four folded round the edges where
// half a face fits, eight where less does. Staves share no space with one another
// or with the plaster, come off it outward, and are sound.
func TestWideFacesArePartedWithin(t *testing.T) {
	for _, c := range []struct {
		wide   float64
		staves int
	}{{300, 2}, {155, 4}, {105, 8}, {80, 8}, {70, 12}, {58, 16}} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = pots["bowl"]
		j.Plaster.Outside = job.OutsideStraight
		j.Printer.Bed = [3]float64{c.wide, c.wide, 250}
		layouts(t, &j, func(md *mold.Mold) {
			if md.Scheme.ID != "one" {
				return
			}
			so := mold.NewCoarse(md)
			m, err := so.Part(&md.Parts[0])
			if err != nil {
				t.Fatal(err)
			}
			bodies, names := []*solid.Body{solid.NewBody(m)}, []string{"the plaster"}
			n, marked := 0, 0
			for _, p := range Kit(&j, md) {
				if p.Kind != "stave" {
					continue
				}
				n++
				at := fmt.Sprintf("bed %g, %s", c.wide, p.Name)
				if !p.FitsBed || p.Verdict != parting.Clear {
					t.Errorf("%s: fits %v, %s", at, p.FitsBed, p.Verdict)
				}
				m, rows, err := p.Mesh(so)
				if err != nil {
					t.Fatalf("%s: %v", at, err)
				}
				sound(t, at, m)
				if got := steepest(m); got > 46 {
					t.Errorf("%s: overhang of %.1f degrees", at, got)
				}
				for k, size := range m.Size() {
					if size > j.Printer.Bed[k]+0.1 || math.Abs(size-p.Size[k]) > 1+0.02*size {
						t.Errorf("%s: size %.2f, the plan says %.2f", at, m.Size(), p.Size)
						break
					}
				}
				there := inMold(m, rows)
				b := solid.NewBody(there)
				for i, o := range bodies {
					if hit, where := solid.Overlap(o, b, 0.02); hit {
						t.Errorf("%s shares space with %s at %.2f", at, names[i], where)
					}
				}
				cuts := slices.Collect(staveCuts(md, j.Mold.Staves))[0] // the first two ways are even
				mid := (cuts[0] + cuts[1]) / 2
				if n := len(cuts) - 1; c.staves > n {
					v := mean(there.V...)
					mid = math.Atan2(v[1], v[0]) * 180 / math.Pi
				} else {
					mid += 360 / float64(n) * float64(len(bodies)-1)
				}
				sin, cos := solid.SinCosDeg(mid)
				if ok, hit := solid.PullClear(b, bodies[:1], solid.Vec{cos, sin, 0}, []float64{0.5, 2, 10, 100}, 0.02); !ok {
					t.Errorf("%s sticks at %g mm, at %.2f", at, hit.DistanceMM, hit.At)
				}
				bodies, names = append(bodies, b), append(names, p.Name)
				if len(m.T) > 300 {
					marked++
				}
			}
			if n != c.staves || marked == 0 {
				t.Errorf("bed of %g mm: %d staves, want %d; %d marked", c.wide, n, c.staves, marked)
			}
		})
	}
}
