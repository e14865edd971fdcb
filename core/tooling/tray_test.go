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
	"moldwright/core/words"
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
			sound(t, name+", "+p.Name, m)
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

// Trays deeper than the bed is high fall into layers that fit, of which the whole
// can be glued together again; none is refused.
func TestDeepTraysAreLayered(t *testing.T) {
	layered, apart, refused, catching, unkeyed, marks := 0, 0, 0, 0, 0, 0
	for pot, nodes := range map[string][]job.Node{
		"jar":   pots["jar"],
		"waist": pots["waist"],
		"two":   {c(0, 0), c(20, 0), s(60, 30), s(25, 70), s(60, 110), c(25, 140)},
	} {
		for _, high := range [2]float64{60, 50} {
			j := job.Defaults()
			j.Form.Size = job.SizeMold
			j.Form.Outer = nodes
			j.Printer.Bed = [3]float64{230, 230, high}
			layouts(t, &j, func(md *mold.Mold) {
				if !strings.HasSuffix(md.Scheme.ID, "+lower") && md.Scheme.ID != "sides2" {
					return
				}
				so := mold.NewCoarse(md)
				large := j
				large.Printer.Bed[2] = 500
				want := 0.0
				for _, p := range Kit(&large, md) {
					if p.Kind == "tray" && p.Part == "A" {
						want = p.Volume
					}
				}
				var bodies []*solid.Body
				sum := 0.0
				for _, p := range Kit(&j, md) {
					if p.Kind != "tray" || p.Part != "A" {
						continue
					}
					at := fmt.Sprintf("%s, %s, bed %g, %s", pot, md.Scheme.ID, high, p.Name)
					if !p.FitsBed {
						if p.Note.IsZero() {
							t.Errorf("%s does not fit and does not say so", at)
						}
						refused++
						return
					}
					m, rows, err := p.Mesh(so)
					if err != nil {
						t.Fatalf("%s: %v", at, err)
					}
					sound(t, at, m)
					if p.unkeyed != strings.Contains(p.Note.In(words.English), "no room for keys") {
						t.Errorf("%s: %s", at, p.Note)
					}
					if p.unkeyed {
						unkeyed++
					} else if p.Verdict == parting.Catches {
						catching++
					}
					for k, size := range m.Size() {
						if size > j.Printer.Bed[k]+0.1 || math.Abs(size-p.Size[k]) > 1.5+0.02*size {
							t.Errorf("%s: size %.2f, the plan says %.2f", at, m.Size(), p.Size)
						}
					}
					if got := steepest(m); got > 46 && p.Verdict == parting.Clear {
						t.Errorf("%s: overhang of %.1f degrees", at, got)
					}
					sum += m.Volume() / 1000
					b := solid.NewBody(inMold(m, rows))
					for _, o := range bodies {
						if hit, where := solid.Overlap(o, b, 0.01); hit {
							t.Errorf("%s shares space with another piece at %.2f", at, where)
						}
					}
					bodies = append(bodies, b)
				}
				if math.Abs(sum-want) > 0.02*want+1 {
					t.Errorf("%s, %s, bed %g: %d pieces of %.1f ml, the whole has %.1f", pot, md.Scheme.ID, high, len(bodies), sum, want)
				}
				if len(bodies) > 1 {
					layered++
					if lettered(&j, md, so) {
						marks++
					}
				}
				if len(bodies) > 2 {
					apart++
				}
			})
		}
	}
	t.Logf("%d layered, %d of them with their marks, %d in more than two pieces, %d refused; of parts that catch %d keyed pieces; %d pieces without keys", layered, marks, apart, refused, catching, unkeyed)
	if layered < 7 || marks < layered || apart == 0 || refused > 0 || catching == 0 {
		t.Errorf("%d layered, %d with marks, %d in more than two pieces, %d refused, %d keyed that catch", layered, marks, apart, refused, catching)
	}
}

// lettered tells whether the tray of part A keeps its mark whole: one of its pieces
// has all the tops of the letter and the arrow on a flank.
func lettered(j *job.Job, md *mold.Mold, so *mold.Solids) bool {
	list, _ := lettering("A^")
	tops := 0
	for _, g := range list {
		for _, l := range g {
			tops += len(l)
		}
	}
	for _, p := range Kit(j, md) {
		if p.Kind != "tray" || p.Part != "A" {
			continue
		}
		m, rows, err := p.Mesh(so)
		if err != nil {
			return false
		}
		var a *mold.Part
		for i := range md.Parts {
			if md.Parts[i].Name == "A" {
				a = &md.Parts[i]
			}
		}
		tr, _ := newTray(j, md, a)
		foot, _ := tr.side()
		n := 0
		for _, v := range inMold(m, rows).V {
			if math.Abs(tr.sideways(v)-foot[1]-markRaised) < 1e-6 {
				n++
			}
		}
		if n == tops {
			return true
		}
	}
	return false
}

// Where a side part would have to fill a recess beyond its level seam there is no
// tray, and such a part catches whatever it is poured on.
func TestNoTrayIntoARecess(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{c(0, 3), c(48, 3), c(53, 0), c(56, 0), s(46, 42), s(28, 128), s(0, 170)}
	told := 0
	layouts(t, &j, func(md *mold.Mold) {
		for _, p := range Kit(&j, md) {
			if p.Kind != "tray" || p.HasMesh() {
				continue
			}
			told++
			if note := p.Note.In(words.English); p.Verdict != parting.Catches || !strings.Contains(note, "3.0 mm past") {
				t.Errorf("%s, %s: %s, %s", md.Scheme.ID, p.Name, p.Verdict, note)
			}
		}
	})
	if told == 0 {
		t.Error("every side part has a tray")
	}
}
