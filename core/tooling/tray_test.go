package tooling

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
)

// trayJob is an invented job with side parts, its walls and bed at random.
func trayJob(seed uint64) *job.Job {
	r := rand.New(rand.NewPCG(seed, 7))
	between := func(a, b float64) float64 { return math.Round(100*(a+(b-a)*r.Float64())) / 100 }
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	high := between(40, 160)
	j.Form.Outer = []job.Node{c(0, 0), c(between(15, 50), 0), s(between(20, 70), high*between(0.3, 0.7)), c(between(15, 60), high)}
	if r.IntN(2) == 0 {
		j.Form.Outer = append([]job.Node{c(0, 3), c(10, 3)}, j.Form.Outer[1:]...)
	}
	j.Plaster.Wall, j.Plaster.Base = between(14, 40), between(14, 40)
	j.Printer.Clearance = between(0.1, 0.5)
	j.Mold.StrapGrooves = r.IntN(3) > 0
	switch r.IntN(3) {
	case 0:
		j.Printer.Bed = [3]float64{between(90, 160), between(90, 160), between(40, 90)}
	case 1:
		j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: between(0.6, 1)}
	}
	return &j
}

// trays visits molds of random jobs that have side parts.
func trays(t *testing.T, jobs uint64, visit func(name string, j *job.Job, md *mold.Mold)) {
	for seed := range jobs {
		j := trayJob(seed)
		k := uint64(0)
		layouts(t, j, func(md *mold.Mold) {
			if md.Scheme.Sides == 0 {
				return
			}
			if k++; (k+seed)%5 == 0 {
				visit(fmt.Sprintf("seed %d, %s", seed, md.Scheme.ID), j, md)
			}
		})
	}
}

// The tray and boards of a side part are sound, share no space with one another
// or with the plaster, and come off it where the part comes off the pot: the
// plaster along its pull from the tray, boards square to their faces.
func TestTraysAndBoardsComeOff(t *testing.T) {
	pulled, lips := 0, 0
	trays(t, 30, func(name string, j *job.Job, md *mold.Mold) {
		so := mold.NewCoarse(md)
		var first *mold.Part
		for i := range md.Parts {
			if md.Parts[i].Sector != nil {
				first = &md.Parts[i]
				break
			}
		}
		m, err := so.Part(first)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		plaster := solid.NewBody(m)
		var bodies []*solid.Body
		var names []string
		for _, p := range Kit(j, md) {
			if p.Part != first.Name || !p.HasMesh() {
				continue
			}
			m, rows, err := p.Mesh(so)
			if err != nil {
				t.Errorf("%s, %s: %v", name, p.Name, err)
				continue
			}
			if r := solid.Check(m); !r.Sound() || r.Shells != 1 {
				t.Errorf("%s, %s: %v, %d shells", name, p.Name, r.Err(), r.Shells)
			}
			if bad, at := solid.SelfIntersects(m); bad {
				t.Errorf("%s, %s passes through itself at %.2f", name, p.Name, m.V[m.T[at[0]][0]])
			}
			if got := steepest(m); got > math.Min(p.Overhang, 45)+1 && p.Verdict == parting.Clear {
				t.Errorf("%s, %s: overhang of %.1f degrees", name, p.Name, got)
			}
			b := solid.NewBody(inMold(m, rows))
			if hit, at := solid.Overlap(plaster, b, 0.02); hit {
				t.Errorf("%s, %s shares space with the plaster at %.2f", name, p.Name, at)
			}
			for i, o := range bodies {
				if hit, at := solid.Overlap(o, b, 0.02); hit {
					t.Errorf("%s: %s and %s share space at %.2f", name, names[i], p.Name, at)
				}
			}
			bodies, names = append(bodies, b), append(names, p.Name)
			way := p.up
			if p.Kind == "board" { // off the plaster, as its inside looks
				way = solid.Vec{-way[0], -way[1], -way[2]}
				if bevelled := strings.Contains(p.Name, "end board"); bevelled {
					lips++
				}
				if ok, hit := solid.PullClear(b, []*solid.Body{plaster}, way, []float64{0.5, 2, 10, 100}, 0.03); !ok {
					t.Errorf("%s, %s sticks at %g mm, at %.2f", name, p.Name, hit.DistanceMM, hit.At)
				}
			} else if first.Verdict != parting.Catches {
				if ok, hit := solid.PullClear(plaster, []*solid.Body{b}, way, []float64{0.5, 2, 10, 100}, 0.06); !ok {
					t.Errorf("%s: the part sticks in its %s at %g mm, at %.2f", name, p.Name, hit.DistanceMM, hit.At)
				}
			}
			pulled++
		}
	})
	t.Logf("%d pieces", pulled)
	if pulled < 100 || lips == 0 {
		t.Errorf("only %d pieces, %d end boards", pulled, lips)
	}
}
