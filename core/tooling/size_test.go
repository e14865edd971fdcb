package tooling

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/job/jobtest"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/release"
)

// laid are the molds of a job's schemes, by the pipeline's own steps; with an
// inner surface each has its core. nil for a job that is refused.
func laid(j *job.Job) (all []parting.Scheme, lay func(k int) *mold.Mold) {
	d, err := parting.JudgeJob(j, mold.MouthRadius)
	if err != nil {
		return nil, nil
	}
	m, end, all := d.M, d.End, d.Schemes
	core, err := form.BuildInner(j, m)
	if err != nil {
		return nil, nil
	}
	if core != nil {
		inside := parting.Core(release.NewCore(core, m), parting.RulesOf(j))
		for i := range all {
			all[i] = parting.WithCore(all[i], inside)
		}
	}
	base := mold.NewBase(m, end, all, core)
	return all, func(k int) *mold.Mold {
		md := mold.Lay(j, base, &all[k])
		md.PlaceNatches(j.Printer.Clearance)
		return md
	}
}

// Every piece of every sample pot and of a hundred random molds, for printers
// small and large, is as large and overhangs as far as the plan says: its size is
// the box of its own mesh, and its overhang the steepest downward face of it.
func TestSizeAndOverhangOfEveryPiece(t *testing.T) {
	pieces, kinds := 0, map[string]int{}
	check := func(name string, j *job.Job, md *mold.Mold) {
		so := md.Solids()
		for _, p := range Kit(j, md) {
			if !p.HasMesh() {
				continue
			}
			at := name + ", " + p.Name
			m, _, err := p.Mesh(so)
			if err != nil {
				t.Errorf("%s: %v", at, err)
				continue
			}
			pieces++
			kinds[p.Kind]++
			const within = 0.01
			size := m.Size()
			for k := range 3 {
				if math.Abs(size[k]-p.Size[k]) > within {
					t.Errorf("%s: %.3f, the plan says %.3f", at, size, p.Size)
					break
				}
			}
			if got := steepest(m); math.Abs(got-p.Overhang) > 0.5 {
				t.Errorf("%s: overhang of %.2f degrees, the plan says %.2f", at, got, p.Overhang)
			}
		}
	}
	files, err := filepath.Glob("../../site/samples/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no samples", err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		j, err := job.Read(text)
		if err != nil {
			t.Fatal(f, err)
		}
		all, lay := laid(j)
		for i := range all {
			check(filepath.Base(f)+", "+all[i].ID, j, lay(i))
		}
	}
	for seed, made := uint64(1), 0; made < 100; seed++ {
		r := rand.New(rand.NewPCG(seed, 12))
		j := jobtest.Random(r)
		j.Printer.Bed = [][3]float64{{220, 220, 250}, {150, 140, 60}, {120, 120, 120}, {400, 400, 400}, {110, 220, 200}}[r.IntN(5)]
		if r.IntN(8) == 0 {
			hollowOut(j)
		}
		all, lay := laid(j)
		if all == nil {
			continue
		}
		made++
		k := r.IntN(len(all))
		check(fmt.Sprintf("seed %d, %s", seed, all[k].ID), j, lay(k))
	}
	t.Log(pieces, kinds)
	if pieces < 3000 || len(kinds) < 6 {
		t.Errorf("only %d pieces: %v", pieces, kinds)
	}
}

// hollowOut gives a job an inner surface, a few mm within its outer one.
func hollowOut(j *job.Job) {
	top := j.Form.Outer[len(j.Form.Outer)-1]
	if top.R < 20 || top.Z < 30 {
		return
	}
	j.Form.Inner = []job.Node{c(0, 12), c(8, 12), c(top.R-5, top.Z)}
}
