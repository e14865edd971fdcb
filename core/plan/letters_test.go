package plan

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/job/jobtest"
	"moldwright/core/sheet"
	"moldwright/core/words"
)

// Reports and sections of the samples, and of random forms of every kind: no letter
// lies on another or on a line of text, whatever the shape of the parts.
func TestLettersLieOnNothing(t *testing.T) {
	each := 12
	if testing.Short() {
		each = 3
	}
	made := 0
	check := func(name string, j *job.Job) {
		p, err := Make(j)
		if err != nil {
			return // no such form
		}
		made++
		in := p.paper(words.English)
		for sheetName, make := range map[string]func() ([][]byte, int, error){
			"report":  func() ([][]byte, int, error) { return sheet.Report(in, sheet.A4, sheet.PDF, sheet.ReportOptions{}) },
			"section": func() ([][]byte, int, error) { return sheet.Section(in, sheet.A4, sheet.PDF) },
			"profile": func() ([][]byte, int, error) {
				return sheet.Profile(in, sheet.A4, sheet.PDF, sheet.ProfileOptions{})
			},
		} {
			blobs, _, err := make()
			if err != nil {
				t.Errorf("%s, %s: %v", name, sheetName, err)
				continue
			}
			for _, f := range faultsOf(t, blobs[0]) {
				t.Errorf("%s, %s: %s", name, sheetName, f)
			}
		}
	}
	files, err := filepath.Glob("../../site/samples/*.json")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d samples, %v", len(files), err)
	}
	for i, file := range files {
		if testing.Short() && i%4 != 0 {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planned(text)
		if err != nil {
			t.Fatal(err)
		}
		check(filepath.Base(file), p.work.job)
	}
	for kind, nodes := range []func(g *rand.Rand) (outer, inner []job.Node){
		formtest.Cored, dish,
		func(g *rand.Rand) (outer, inner []job.Node) { return formtest.Lid(g), nil },
		func(g *rand.Rand) (outer, inner []job.Node) { return formtest.Closed(g), nil },
		func(g *rand.Rand) (outer, inner []job.Node) { return formtest.Footed(g), nil },
		func(g *rand.Rand) (outer, inner []job.Node) { return formtest.Nodes(g), nil },
	} {
		for i := range each {
			j := job.Defaults()
			j.Form.Outer, j.Form.Inner = nodes(formtest.Rand(77, uint64(100*kind+i)))
			check(fmt.Sprintf("kind %d, form %d", kind, i), &j)
		}
	}
	for i := range each {
		check(fmt.Sprintf("random job %d", i), jobtest.Random(formtest.Rand(78, uint64(i))))
	}
	if made < 5*each {
		t.Errorf("only %d forms could be made", made)
	}
}

// dish is a low form with an inside of its own: an upper part of it is a sliver.
func dish(g *rand.Rand) (outer, inner []job.Node) {
	r, h, wall := 20+60*g.Float64(), 6+50*g.Float64(), 2+5*g.Float64()
	if wall > h/3 {
		wall = h / 3
	}
	out, in := r*(1.2+0.3*g.Float64()), r*(1.3+0.6*g.Float64())
	outer = []job.Node{node(0, 0), node(r, 0), {R: out, Z: 0.4 * h}, node(in, h)}
	inner = []job.Node{node(0, wall), {R: 0.7 * r, Z: 1.1 * wall}, {R: out - 1.4*wall, Z: 0.45 * h}, node(in-wall, h)}
	return outer, inner
}
