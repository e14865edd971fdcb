package solid

import (
	"fmt"
	"math"
	"testing"
)

func TestOverlapOfBricks(t *testing.T) {
	base := Vec{0, 0, 0}
	for name, c := range map[string]struct {
		a, b *Mesh
		want bool
	}{
		"apart":                  {brick(t, base, Vec{1, 1, 1}), brick(t, Vec{2, 0, 0}, Vec{3, 1, 1}), false},
		"one face shared":        {brick(t, base, Vec{1, 1, 1}), brick(t, Vec{1, 0, 0}, Vec{2, 1, 1}), false},
		"face within a face":     {brick(t, base, Vec{3, 3, 1}), brick(t, Vec{1, 1, 1}, Vec{2, 2, 2}), false},
		"faces cross":            {brick(t, base, Vec{3, 1, 1}), brick(t, Vec{1, -1, 1}, Vec{2, 2, 2}), false},
		"one edge shared":        {brick(t, base, Vec{1, 1, 1}), brick(t, Vec{1, 1, 0}, Vec{2, 2, 1}), false},
		"edges touch across":     {brick(t, base, Vec{1, 1, 1}), brick(t, Vec{1, 0.25, 1}, Vec{2, 0.5, 3}), false},
		"one corner shared":      {brick(t, base, Vec{1, 1, 1}), brick(t, Vec{1, 1, 1}, Vec{2, 2, 2}), false},
		"less than the touch":    {brick(t, base, Vec{1, 1, 1}), brick(t, Vec{0.9995, 0, 0}, Vec{2, 1, 1}), false},
		"pushed in along faces":  {brick(t, base, Vec{2, 1, 1}), brick(t, Vec{1, 0, 0}, Vec{3, 1, 1}), true},
		"a hair in along faces":  {brick(t, base, Vec{2, 1, 1}), brick(t, Vec{1.99, 0, 0}, Vec{3, 1, 1}), true},
		"corner in":              {brick(t, base, Vec{1, 1, 1}), brick(t, Vec{0.9, 0.9, 0.9}, Vec{2, 2, 2}), true},
		"bar through":            {brick(t, base, Vec{9, 9, 1}), brick(t, Vec{4, 4, -3}, Vec{5, 5, 3}), true},
		"bar up to the far face": {brick(t, base, Vec{9, 9, 1}), brick(t, Vec{4, 4, 0}, Vec{5, 5, 3}), true},
		"within":                 {brick(t, base, Vec{9, 9, 9}), brick(t, Vec{4, 4, 4}, Vec{5, 5, 5}), true},
		"within, on the floor":   {brick(t, base, Vec{9, 9, 9}), brick(t, Vec{4, 4, 0}, Vec{5, 5, 5}), true},
		"the same":               {brick(t, base, Vec{1, 2, 3}), brick(t, base, Vec{1, 2, 3}), true},
		"same but for length":    {brick(t, base, Vec{1, 2, 3}), brick(t, base, Vec{1, 2, 4}), true},
		"two shells, one within": {brick(t, base, Vec{9, 9, 9}), Merge(brick(t, Vec{20, 0, 0}, Vec{21, 1, 1}), brick(t, Vec{4, 4, 4}, Vec{5, 5, 5})), true},
	} {
		for turn := range 3 {
			a, b := c.a.Clone(), c.b.Clone()
			for _, m := range []*Mesh{a, b} {
				m.RotateX(17.3 * float64(turn))
				m.RotateZ(31.7 * float64(turn))
			}
			for range 2 {
				if got, at := Overlap(NewBody(a), NewBody(b), TouchMM); got != c.want {
					t.Errorf("%s, turn %d: %v at %v", name, turn, got, at)
				}
				a, b = b, a
			}
		}
	}
}

// Random bricks turned at random, against the separating axes of two boxes
// (exact for convex solids).
func TestOverlapAgainstSeparatingAxes(t *testing.T) {
	d := dice(6)
	count := [2]int{}
	for k := range 400 {
		var m [2]*Mesh
		for i := range m {
			m[i] = brick(t, Vec{}, Vec{1 + d.Float64(), 1 + d.Float64(), 1 + d.Float64()})
			m[i].RotateX(360 * d.Float64())
			m[i].RotateY(360 * d.Float64())
			m[i].Translate(Vec{2.2 * d.Float64(), 2.2 * d.Float64(), 2 * d.Float64()})
		}
		gap := separation(m[0], m[1])
		if math.Abs(gap) < 0.01 {
			continue
		}
		got, _ := Overlap(NewBody(m[0]), NewBody(m[1]), TouchMM)
		if got != (gap < 0) {
			t.Fatalf("case %d: %v where the gap is %g", k, got, gap)
		}
		if got {
			count[1]++
		} else {
			count[0]++
		}
	}
	if min(count[0], count[1]) < 50 {
		t.Errorf("lopsided: %v", count)
	}
}

// separation is the widest gap over all axes that can part two bricks, negative
// where they overlap.
func separation(a, b *Mesh) float64 {
	var axes []Vec
	var edges [2][]Vec
	for i, m := range []*Mesh{a, b} {
		for t := range m.T {
			axes = append(axes, unit(m.normal2(m.T[t])))
			for k := range 3 {
				edges[i] = append(edges[i], sub(m.V[m.T[t][(k+1)%3]], m.V[m.T[t][k]]))
			}
		}
	}
	for _, e := range edges[0] {
		for _, f := range edges[1] {
			if c := cross(e, f); length(c) > 1e-9 {
				axes = append(axes, unit(c))
			}
		}
	}
	best := math.Inf(-1)
	for _, n := range axes {
		var r [2][2]float64
		for i, m := range []*Mesh{a, b} {
			r[i] = [2]float64{math.Inf(1), math.Inf(-1)}
			for _, v := range m.V {
				r[i][0], r[i][1] = min(r[i][0], dot(v, n)), max(r[i][1], dot(v, n))
			}
		}
		best = max(best, r[0][0]-r[1][1], r[1][0]-r[0][1])
	}
	return best
}

func turned(t *testing.T, p [][2]float64, span Span) *Body {
	t.Helper()
	m, err := Revolve(p, round(span.Steps), span)
	sound(t, m, err)
	return NewBody(m)
}

var steps = []float64{0, 0.5, 2, 10, 100}

// A form that is widest in the middle, parted there, lets both parts go; parted
// elsewhere it holds the one part by as much as it is wider.
func TestPullOfTwoParts(t *testing.T) {
	const n = 120
	full := FullTurn(n)
	cast := turned(t, [][2]float64{{0, 0}, {30, 0}, {50, 40}, {35, 80}, {0, 80}}, full)
	lower := turned(t, [][2]float64{{0, -30}, {80, -30}, {80, 40}, {50, 40}, {30, 0}, {0, 0}}, full)
	upper := turned(t, [][2]float64{{50, 40}, {80, 40}, {80, 100}, {0, 100}, {0, 80}, {35, 80}}, full)
	down, up := Vec{0, 0, -1}, Vec{0, 0, 1}
	if ok, hit := PullClear(upper, []*Body{cast, lower}, up, steps, TouchMM); !ok {
		t.Errorf("upper part sticks: %+v", hit)
	}
	if ok, hit := PullClear(lower, []*Body{cast, upper}, down, steps, TouchMM); !ok {
		t.Errorf("lower part sticks: %+v", hit)
	}
	if ok, hit := PullClear(upper, []*Body{cast, lower}, down, steps, TouchMM); ok || hit.DistanceMM != 0.5 || hit.Fixed != 0 {
		t.Errorf("upper part went down through the cast: %+v", hit)
	}
	low := turned(t, [][2]float64{{0, -30}, {80, -30}, {80, 60}, {42.5, 60}, {50, 40}, {30, 0}, {0, 0}}, full)
	if ok, hit := PullClear(low, []*Body{cast}, down, steps, TouchMM); ok || hit.DistanceMM != 0.5 {
		t.Errorf("a part over the belly let go: %+v", hit)
	}
}

// Straight walls rub all the way and are still clear; side parts slide along
// their seams; a natch holds a part that is pulled along the seam.
func TestPullSlidesAlongFaces(t *testing.T) {
	const n = 96
	cast := turned(t, [][2]float64{{0, 0}, {40, 0}, {40, 80}, {0, 80}}, FullTurn(n))
	sleeve := turned(t, [][2]float64{{40, 0}, {70, 0}, {70, 80}, {40, 80}}, FullTurn(n))
	if ok, hit := PullClear(sleeve, []*Body{cast}, Vec{0, 0, 1}, steps, TouchMM); !ok {
		t.Errorf("a cylinder sticks: %+v", hit)
	}
	if ok, _ := PullClear(sleeve, []*Body{cast}, Vec{1, 0, 0}, steps, TouchMM); ok {
		t.Error("a sleeve went sideways through the cast")
	}
	for sides := 2; sides <= 4; sides++ {
		var parts []*Body
		wall := [][2]float64{{40, 0}, {70, 0}, {70, 80}, {40, 80}, {45, 60}, {30, 40}, {50, 20}}
		for s := range sides {
			parts = append(parts, turned(t, wall, Span{n, s * n / sides, (s + 1) * n / sides}))
		}
		vase := turned(t, [][2]float64{{0, 0}, {40, 0}, {50, 20}, {30, 40}, {45, 60}, {40, 80}, {0, 80}}, FullTurn(n))
		s, c := SinCosDeg(180 / float64(sides))
		if ok, hit := PullClear(parts[0], append(parts[1:], vase), Vec{c, s, 0}, steps, TouchMM); !ok {
			t.Errorf("side part of %d sticks: %+v", sides, hit)
		}
		if ok, hit := PullClear(parts[0], append(parts[1:], vase), Vec{c, s, 1.5}, steps, TouchMM); ok {
			t.Errorf("side part of %d went slantwise through the vase: %+v", sides, hit)
		}
		if ok, hit := PullClear(parts[0], append(parts[1:], vase), Vec{-c, -s, 0}, steps, TouchMM); ok {
			t.Errorf("side part of %d went in: %+v", sides, hit)
		}
	}
}

func TestPullOfNatches(t *testing.T) {
	const n = 96
	outline := [2][][2]float64{
		{{30, 0}, {70, 0}, {70, 40}, {30, 40}},
		{{30, 40}, {70, 40}, {70, 80}, {30, 80}},
	}
	for _, gap := range []float64{0.15, 0} { // clearance of the sockets
		var body [2]*Body
		for k, p := range outline {
			b := NewBuilder(round(n), FullTurn(n))
			rings := b.Rings(p)
			edge := []int{2, 0}[k]
			b.Walls(rings, edge)
			rho := 6 + gap*float64(k)
			for _, h := range b.Flat(rings[edge], rings[(edge+1)%4], Circle{[2]float64{50, 0}, rho, 40}, Circle{[2]float64{-45, 20}, rho, 40}) {
				if k == 0 {
					b.Dome(h, 40)
				} else {
					b.Socket(h, 40)
				}
			}
			m, err := b.Done()
			sound(t, m, err)
			body[k] = NewBody(m)
		}
		name := fmt.Sprintf("clearance %g", gap)
		fixed := []*Body{body[0]}
		if ok, hit := PullClear(body[1], fixed, Vec{0, 0, 1}, steps, TouchMM); !ok {
			t.Errorf("%s: sticks: %+v", name, hit)
		}
		if ok, hit := PullClear(body[1], fixed, Vec{1, 0, 0.36}, steps, TouchMM); ok {
			t.Errorf("%s: natches of 40 degrees let go at 20 degrees: %+v", name, hit)
		}
		if ok, hit := PullClear(body[1], fixed, Vec{1, 0, 1}, []float64{0.5, 2, 10, 100}, TouchMM); !ok {
			t.Errorf("%s: natches of 40 degrees hold at 45 degrees: %+v", name, hit)
		}
		if ok, _ := PullClear(body[1], fixed, Vec{0, 0, -1}, []float64{0.5}, TouchMM); ok {
			t.Errorf("%s: parts went through one another", name)
		}
	}
}
