package solid

import (
	"math"
	"testing"
)

// A turned solid with a waist, cut level, askew and along its axis: the pieces on
// both sides are closed, sound, and fill what the whole did; across the waist one
// side falls into two bodies.
func TestCut(t *testing.T) {
	turn := NewAzimuths(96)
	whole, err := Revolve([][2]float64{{0, 0}, {40, 0}, {10, 30}, {40, 60}, {20, 60}, {6, 30}, {0, 20}}, turn.Round, FullTurn(96))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		normal Vec
		at     float64
		bodies [2]int // below, beyond
	}{{Vec{0, 0, 1}, 17, [2]int{1, 1}}, {Vec{1, 0, 0}, 0, [2]int{1, 1}}, {Vec{1, 0, 0}, 25, [2]int{1, 2}}, {Vec{0.6, 0, 0.8}, 33, [2]int{1, 1}}, {Vec{0, 0, 1}, 45, [2]int{1, 1}}} {
		at := Clearing(whole, c.normal, c.at)
		if math.Abs(at-c.at) > 0.021 {
			t.Errorf("%v: cut at %g, asked for %g", c.normal, at, c.at)
		}
		sum := 0.0
		for side, way := range [2]float64{-1, 1} {
			n := scale(c.normal, way)
			b, cuts, err := Beyond(whole, n, way*at)
			if err != nil {
				t.Fatalf("%v at %g: %v", n, at, err)
			}
			for _, k := range cuts {
				b.Face(scale(n, -1), k.Outline, k.Holes...)
			}
			m, err := b.Done()
			if err != nil {
				t.Fatalf("%v at %g: %v", n, at, err)
			}
			if r := Check(m); !r.Sound() || r.Shells != c.bodies[side] {
				t.Errorf("%v at %g: %v, %d shells, want %d", n, at, r.Err(), r.Shells, c.bodies[side])
			}
			if bad, _ := SelfIntersects(m); bad {
				t.Errorf("%v at %g passes through itself", n, at)
			}
			parts := 0.0
			for _, body := range Bodies(m) {
				parts += body.Volume()
			}
			if math.Abs(parts-m.Volume()) > 1e-6*m.Volume() || len(Bodies(m)) != c.bodies[side] {
				t.Errorf("%v at %g: bodies of %g in %g", n, at, parts, m.Volume())
			}
			sum += m.Volume()
		}
		if math.Abs(sum-whole.Volume()) > 1e-9*sum {
			t.Errorf("%v at %g: pieces of %g, the whole has %g", c.normal, at, sum, whole.Volume())
		}
	}
}
