package plan

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"moldwright/core/job"
	"moldwright/core/words"
)

// What a trace tells goes to paper at the finished size, whichever size the
// form was traced at.
func TestPaperTraced(t *testing.T) {
	for _, size := range []string{job.SizeFired, job.SizeMold} {
		j := wavy(40)
		j.Form.Size = size
		j.Form.Traced = &job.Traced{RMS: 0.2, Max: 0.5, ErrorBand: 0.8, NotSeen: []job.Gap{{ZFrom: 10, ZTo: 20, Why: "glare"}}}
		p, err := Make(j)
		if err != nil {
			t.Fatal(err)
		}
		k := 1.0
		if size == job.SizeMold {
			k = 1 - j.Clay.Shrinkage()
		}
		in := p.paper(words.English)
		if in.Traced == nil || len(in.Traced.NotSeen) != 1 {
			t.Fatalf("%s: %+v", size, in.Traced)
		}
		near := func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
		if g := in.Traced.NotSeen[0]; !near(in.Traced.BandMM, 0.8*k) || !near(in.Traced.RMSMM, 0.2*k) || !near(in.Traced.MaxMM, 0.5*k) || !near(g.ZFrom, 10*k) || !near(g.ZTo, 20*k) {
			t.Errorf("%s: %+v, want times %g", size, in.Traced, k)
		}
	}
	if p, err := Make(wavy(40)); err != nil || p.paper(words.English).Traced != nil {
		t.Errorf("a form that was drawn is called traced (%v)", err)
	}
}

// The summary of every sample's report keeps to one page, A4 and Letter.
func TestSummariesKeepToOnePage(t *testing.T) {
	files, err := filepath.Glob("../../site/samples/*.json")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d samples, %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, paper := range []string{"A4", "Letter"} {
			if n, _, fault := ask(t, `{"sheet":"report","summary":true,"paper":"`+paper+`","as":"pdf","job":`+string(text)+`}`); n != 1 || fault != "" {
				t.Errorf("%s on %s: %d pages, %s", filepath.Base(file), paper, n, fault)
			}
		}
	}
}
