package tooling

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestRising holds the merging of runs to the library's sort: on rings, on
// scattered points, and where many stand above or on one another.
func TestRising(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for round := range 400 {
		var list [][2]float64
		for range r.IntN(4) {
			n, radius := r.IntN(70), float64(1+r.IntN(30))
			for k := range n {
				a := 2 * math.Pi * float64(k) / float64(n)
				list = append(list, [2]float64{radius * math.Cos(a), radius * math.Sin(a)})
			}
		}
		for range r.IntN(40) {
			list = append(list, [2]float64{float64(r.IntN(5)), float64(r.IntN(5))})
		}
		if round%3 == 0 {
			slices.Reverse(list)
		}
		want, given := slices.Clone(list), slices.Clone(list)
		slices.SortFunc(want, func(a, b [2]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
		if got := rising(list); !slices.Equal(got, want) {
			t.Fatalf("round %d: %v came as %v, not %v", round, list, got, want)
		}
		if !slices.Equal(list, given) {
			t.Fatalf("round %d: the points given were moved", round)
		}
	}
}
