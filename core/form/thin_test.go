package form

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// thinned is Thin with every distance measured.
func thinned(pts []Point, keep []bool, tol float64) []Point {
	stay := make([]bool, len(pts))
	var part func(a, b int)
	part = func(a, b int) {
		stay[a], stay[b] = true, true
		far, at := tol, -1
		for i := a + 1; i < b; i++ {
			if d := distanceToChord(pts[i], pts[a], pts[b]); d > far {
				far, at = d, i
			}
		}
		if at > 0 {
			part(a, at)
			part(at, b)
		}
	}
	a := 0
	for b := 1; b < len(pts); b++ {
		if keep[b] || b == len(pts)-1 {
			part(a, b)
			a = b
		}
	}
	var out []Point
	for i, p := range pts {
		if stay[i] {
			out = append(out, p)
		}
	}
	return out
}

// Squares only tell which distances need not be measured: what is kept is the same,
// on waves, steps, points met twice and points that lie on a chord.
func TestThinKeepsWhatItsTwinKeeps(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 9))
	for n := range 300 {
		pts := make([]Point, 3+rnd.IntN(200))
		keep := make([]bool, len(pts))
		for i := range pts {
			x := float64(i) * 0.3
			pts[i] = Point{40 + 9*math.Sin(x/7) + 0.01*float64(n%4)*rnd.NormFloat64(), x}
			if n%3 == 0 { // level steps and points met twice
				pts[i] = Point{math.Round(pts[i].R*2) / 2, math.Round(x)}
			}
			keep[i] = rnd.IntN(40) == 0
		}
		if n%5 == 0 { // it ends where it began
			pts[len(pts)-1] = pts[0]
		}
		for _, tol := range []float64{0.008, 0.25, 1} {
			got, _ := Thin(pts, keep, tol)
			if want := thinned(pts, keep, tol); !slices.Equal(got, want) {
				t.Fatalf("%d: %d of %d points stay within %g mm, by its twin %d", n, len(got), len(pts), tol, len(want))
			}
		}
	}
}

// farther answers as if every chord were measured.
func TestFartherIsAsMeasured(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 5))
	pts := make([]Point, 90)
	for i := range pts {
		pts[i] = Point{30 + 10*math.Sin(float64(i)/9), float64(i / 2)}
	}
	tree := NewTree(pts)
	for range 5000 {
		p := Point{60 * rnd.Float64(), 60*rnd.Float64() - 5}
		near := math.Inf(1)
		for i := 1; i < len(pts); i++ {
			near = min(near, distanceToChord(p, pts[i-1], pts[i]))
		}
		for _, w := range []float64{3, near, near * (1 + 2e-6), near * (1 + 1e-9), near / 2} {
			if got, want := tree.farther(p, w), near >= w-1e-6*max(1, w); got != want {
				t.Fatalf("%v lies %.9f mm off; farther than %.9f: %v", p, near, w, got)
			}
		}
	}
}
