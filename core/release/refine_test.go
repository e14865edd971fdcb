package release

import (
	"math"
	"slices"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

// Depth and draft do not hang on how finely a curve is cut: the same form made
// 25 times as large, on which chords keep within a 25th of the distance to the
// curve, catches as deep to 0.01 mm of the small one and has the same least
// draft to 0.01 degrees.
func TestFinerChordsChangeNothing(t *testing.T) {
	const finer = 25
	curved := 0
	for k := range uint64(400) {
		g := formtest.Rand(41, k)
		r, z := 8+8*g.Float64(), 0.0
		nodes := []job.Node{formtest.Corner(0, 0), formtest.Corner(r, 0)}
		for range 2 + g.IntN(5) {
			r, z = math.Min(38, math.Max(2, r+16*(g.Float64()-0.5))), z+4+6*g.Float64()
			nodes = append(nodes, formtest.Smooth(r, z))
		}
		nodes[len(nodes)-1].Corner = true
		large := slices.Clone(nodes)
		for i := range large {
			large[i].R *= finer
			large[i].Z *= finer
		}
		a, err := formtest.Build(nodes)
		if err != nil {
			t.Fatal(err)
		}
		b, err := formtest.Build(large)
		if err != nil {
			t.Fatalf("profile %d: %v", k, err)
		}
		if len(b.Pts) > len(a.Pts)*3/2 {
			curved++
		}
		s, w := New(a), New(b)
		for _, pull := range Pulls {
			same(t, "depth", k, slices.Max(deepest(w, pull))/finer, slices.Max(deepest(s, pull)), 0.01)
			least := func(m *form.Meridian) float64 {
				_, _, d := below(m, pull, 2, 3, func(int) bool { return true })
				return d
			}
			same(t, "least draft", k, least(b), least(a), 0.01)
		}
	}
	if curved < 200 {
		t.Errorf("only %d forms were cut much finer", curved)
	}
}
