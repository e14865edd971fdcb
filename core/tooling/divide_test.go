package tooling

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
)

// A flared spare in an upper part: the part cannot be lifted while the plug is in
// it, the plug can be drawn up, and then the part comes off its positive. The
// plug's key leaves the clearance.
func TestPlugIsDrawnFirst(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{c(0, 4), c(26, 4), c(28, 0), c(34, 0), s(56, 50), c(36, 96)}
	j.Mold.Spare.Flared = true
	found := 0
	for _, wide := range [2]float64{500, 220} { // the positive whole, and divided under the plug
		j.Printer.Bed[0], j.Printer.Bed[1] = wide, wide
		layouts(t, &j, func(md *mold.Mold) {
			name := md.Scheme.ID
			if !md.PlugApart || md.Scheme.Verdict == parting.Catches {
				return
			}
			so := mold.NewCoarse(md)
			bodies := map[string][]*solid.Body{}
			for _, p := range Kit(&j, md) {
				if p.Part == "upper" && (p.Kind == "plug" || p.Kind == "positive") {
					m, rows, err := p.Mesh(so)
					if err != nil {
						t.Fatalf("%s, %s: %v", name, p.Name, err)
					}
					bodies[p.Kind] = append(bodies[p.Kind], solid.NewBody(inMold(m, rows)))
				}
			}
			for i := range md.Parts {
				if p := &md.Parts[i]; p.Name == "upper" {
					m, err := so.Part(p)
					if err != nil {
						t.Fatalf("%s: %v", name, err)
					}
					bodies["plaster"] = []*solid.Body{solid.NewBody(m)}
				}
			}
			found++
			up := solid.Vec{0, 0, 1}
			way := []float64{0.5, 2, 10, 100}
			fixed := func(kinds ...string) (out []*solid.Body) {
				for _, k := range kinds {
					out = append(out, bodies[k]...)
				}
				return
			}
			plug, plaster := bodies["plug"][0], bodies["plaster"][0]
			for _, b := range bodies["positive"] {
				if hit, at := solid.Overlap(plug, b, 0.001); hit {
					t.Errorf("%s: plug and positive share space at %.2f", name, at)
				}
			}
			if ok, _ := solid.PullClear(plaster, fixed("plug"), up, way, 0.01); ok {
				t.Errorf("%s: the part lifts with the plug in it", name)
			}
			if ok, hit := solid.PullClear(plug, fixed("plaster", "positive"), up, way, 0.01); !ok {
				t.Errorf("%s: the plug sticks at %g mm, at %.2f", name, hit.DistanceMM, hit.At)
			}
			if ok, hit := solid.PullClear(plaster, fixed("positive"), up, way, 0.01); !ok {
				t.Errorf("%s: the part sticks on its positive at %g mm, at %.2f", name, hit.DistanceMM, hit.At)
			}
		})
	}
	if found < 6 {
		t.Errorf("only %d plugs", found)
	}
}

// The pieces of a divided print fill what the whole would: they touch, share no
// space, and their volumes sum to the whole's but for the gaps at keys. No fewer
// pieces of equal size could fit, and level and upright joints both occur.
func TestDividedPieces(t *testing.T) {
	sliced, both := 0, 0
	check := func(name string, j *job.Job, md *mold.Mold) {
		so := mold.NewCoarse(md)
		groups := map[string][]Piece{}
		var order []string
		for _, p := range Kit(j, md) {
			if base, _, ok := strings.Cut(p.Name, ", "); ok && p.HasMesh() {
				if groups[base] == nil {
					order = append(order, base)
				}
				groups[base] = append(groups[base], p)
			}
		}
		large := *j
		large.Printer.Bed = [3]float64{2000, 2000, 2000}
		whole := map[string]float64{}
		for _, p := range Kit(&large, md) {
			whole[p.Name] = p.Volume
		}
		for _, base := range order {
			list := groups[base]
			var bodies []*solid.Body
			sum, heights := 0.0, map[int]bool{}
			for _, p := range list {
				m, rows, err := p.Mesh(so)
				if err != nil {
					t.Fatalf("%s, %s: %v", name, p.Name, err)
				}
				there := inMold(m, rows)
				lo, _ := there.Bounds()
				heights[int(lo[2]/3)] = true
				sum += m.Volume() / 1000
				bodies = append(bodies, solid.NewBody(there))
			}
			if len(heights) > 1 && len(list) > len(heights) {
				both++
			} else if len(heights) > 1 {
				sliced++
			}
			for i, a := range bodies {
				for k := i + 1; k < len(bodies); k++ {
					if hit, at := solid.Overlap(a, bodies[k], 0.01); hit {
						t.Errorf("%s, %s: pieces %d and %d share space at %.2f", name, base, i+1, k+1, at)
					}
				}
			}
			if w := whole[base]; !strings.Contains(list[0].Note.String(), "staves to fit") && (sum < 0.97*w-1 || len(heights) == 1 && sum > 1.03*w+1) {
				t.Errorf("%s, %s: %d pieces of %.1f ml, the whole has %.1f", name, base, len(list), sum, w)
			}
		}
	}
	for _, bed := range [3][3]float64{{150, 140, 60}, {300, 300, 60}, {110, 220, 200}} {
		for pot, scheme := range map[string]string{"beaker": "one", "jar": "two", "waist": "sides3+lower+upper"} {
			j := job.Defaults()
			j.Form.Size = job.SizeMold
			j.Form.Outer = pots[pot]
			j.Printer.Bed = bed
			layouts(t, &j, func(md *mold.Mold) {
				if md.Scheme.ID == scheme {
					check(fmt.Sprint(pot, bed), &j, md)
				}
			})
		}
	}
	if sliced == 0 || both == 0 {
		t.Errorf("%d sliced, %d sliced and cut", sliced, both)
	}
}

// The keys of a plug lie in sound matter of the positive where a neck runs in below
// them: a socket and the wall about it stay within the neck down to beyond its tip.
func TestPlugKeysStayInTheNeck(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{c(0, 0), c(30, 0), s(56, 40), c(9, 80), c(24, 88)}
	j.Mold.Spare.Flared = true
	found := 0
	layouts(t, &j, func(md *mold.Mold) {
		for i := range md.Parts {
			p := &md.Parts[i]
			if p.Name != "upper" || !md.PlugApart || p.Outline[0].Z-p.Outline[p.Pot].Z < 10 {
				continue
			}
			base, _ := positive(&j, md, p, false)
			if len(base.plug) == 0 {
				t.Errorf("%s: no keys", md.Scheme.ID)
			}
			for _, k := range base.plug {
				found++
				reach := math.Hypot(k.at[0], k.at[1]) + k.radius + spareOf(j.Printer.Clearance)
				deep := k.radius + spareOf(j.Printer.Clearance)
				if at := 24 - 15*deep/8; reach > at+0.1 {
					t.Errorf("%s: a key of %.2f mm reaches out to %.2f mm, the neck to %.2f", md.Scheme.ID, k.radius, reach, at)
				}
			}
		}
	})
	if found < 3 {
		t.Errorf("only %d keys", found)
	}
}
