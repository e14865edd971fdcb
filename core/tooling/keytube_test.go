package tooling

import (
	"math/rand/v2"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// Where the section of a turned piece, or the outline of a tray, says that a key lies
// deep in matter, no surface of its mesh comes into the tube about the key.
func TestDeepKeysHaveMatterAboutThem(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	settings := map[string]func(*job.Job){
		"plain":    func(*job.Job) {},
		"solid":    func(j *job.Job) { j.Printer.Solid = true },
		"straight": func(j *job.Job) { j.Plaster.Outside = job.OutsideStraight },
		"oval":     func(j *job.Job) { j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: 0.7} },
		"flutes":   func(j *job.Job) { j.Form.Section = job.Section{Kind: job.SectionFlutes, Count: 12, Depth: 2} },
	}
	tries, found := 40, map[string]int{}
	if testing.Short() {
		tries = 8
	}
	for what, set := range settings {
		for pot, nodes := range pots {
			j := job.Defaults()
			j.Form.Size = job.SizeMold
			j.Form.Outer = nodes
			set(&j)
			layouts(t, &j, func(md *mold.Mold) {
				holds := func(kind string, m *solid.Mesh, k key, normal solid.Vec, place func(x, y float64) solid.Vec) {
					found[kind]++
					spare := spareOf(j.Printer.Clearance)
					if r := tubeAbout(m, normal, place, spare).holds(k, spare); r < k.radius {
						t.Errorf("%s, %s, %s: a key of %.2f mm at %v in a %s has matter for one of %.2f", pot, what, md.Scheme.ID, k.radius, place(k.at[0], k.at[1]), kind, r)
					}
				}
				for i := range md.Parts {
					p := &md.Parts[i]
					if p.Sector == nil {
						piece, _ := positive(&j, md, p, false)
						piece.asked = &asked{}
						low, high := piece.levels()
						for range tries {
							k := key{radius: keyLeast + rng.Float64()*(keyMost-keyLeast)}
							r, z, deg := rng.Float64()*md.Block.R, low+rng.Float64()*(high-low), rng.Float64()*360
							sin, cos := solid.SinCosDeg(deg)
							normal := solid.Vec{sin, -cos, 0}
							place := func(x, y float64) solid.Vec { return solid.Vec{x * cos, x * sin, y} }
							k.at = [2]float64{r, z}
							if rng.IntN(2) == 0 {
								normal = solid.Vec{0, 0, float64(2*rng.IntN(2) - 1)}
								place = func(x, y float64) solid.Vec { return solid.Vec{x, y, z} }
								k.at = [2]float64{r * cos, r * sin}
							}
							if piece.deep(k.radius, place(k.at[0], k.at[1]), normal) {
								m, err := piece.build(md.Solids())
								if err != nil {
									t.Fatal(err)
								}
								holds("positive", m, k, normal, place)
							}
						}
						continue
					}
					tr, _ := newTray(&j, md, p)
					var m *solid.Mesh
					for range tries {
						k := key{radius: keyLeast + rng.Float64()*(keyMost-keyLeast)}
						x, y := tr.floor()+rng.Float64()*(md.Block.R-tr.floor()), tr.lo+rng.Float64()*(tr.hi-tr.lo)
						v := (2*rng.Float64() - 1) * md.Block.R
						k.at = [2]float64{x, v}
						level, middle := tr.deepLevel(k, y), tr.deepMiddle(key{at: [2]float64{x, y}, radius: k.radius})
						if m == nil && (level || middle) {
							var err error
							if m, err = tr.build(md.Solids()); err != nil {
								t.Fatal(err)
							}
						}
						if level {
							holds("tray", m, k, solid.Vec{0, 0, 1}, func(x, v float64) solid.Vec { return tr.at(x, v, y) })
						}
						if k.at[1] = y; middle {
							holds("tray's middle", m, k, tr.at(0, 1, 0), func(x, y float64) solid.Vec { return tr.at(x, 0, y) })
						}
					}
					break // side parts are much alike
				}
			})
		}
	}
	for _, kind := range [3]string{"positive", "tray", "tray's middle"} {
		if found[kind] < tries {
			t.Errorf("only %d keys were deep in a %s", found[kind], kind)
		}
	}
	t.Log(found)
}
