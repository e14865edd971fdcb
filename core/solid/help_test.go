package solid

import (
	"math"
	"math/rand/v2"
	"testing"
)

func dice(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 7)) }

// sound fails the test unless the mesh is a solid without flaw and without a
// triangle that passes through another.
func sound(t *testing.T, m *Mesh, err error) Report {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	r := Check(m)
	if err := r.Err(); err != nil {
		t.Fatal(err)
	}
	if bad, pair := SelfIntersects(m); bad {
		t.Fatalf("triangles %v meet: %v %v", pair, points(m, pair[0]), points(m, pair[1]))
	}
	return r
}

func points(m *Mesh, t int32) [3]Vec {
	i := m.T[t]
	return [3]Vec{m.V[i[0]], m.V[i[1]], m.V[i[2]]}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.9g, want %.9g within %g", what, got, want, tol)
	}
}

func round(steps int) Place { return NewAzimuths(steps).Round }

// brick is the box between two corners.
func brick(t testing.TB, lo, hi Vec) *Mesh {
	t.Helper()
	m, err := Prism(lo[2], hi[2], [][2]float64{{lo[0], lo[1]}, {hi[0], lo[1]}, {hi[0], hi[1]}, {lo[0], hi[1]}})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// circle is a polygon of n corners on a circle, counterclockwise.
func circle(x, y, r float64, n int) [][2]float64 {
	p := make([][2]float64, n)
	for i := range p {
		s, c := SinCosDeg(360 * float64(i) / float64(n))
		p[i] = [2]float64{x + r*c, y + r*s}
	}
	return p
}

// cup is the outline of a thick-walled pot with a rounded belly of n points.
func cup(n int) [][2]float64 {
	p := [][2]float64{{0, 0}, {30, 0}}
	for i := 1; i < n; i++ {
		u := float64(i) / float64(n)
		p = append(p, [2]float64{30 + 22*math.Sin(math.Pi*u) + 6*u, 110 * u})
	}
	p = append(p, [2]float64{36, 110}, [2]float64{31, 110})
	for i := n - 1; i > 0; i-- {
		u := float64(i) / float64(n)
		p = append(p, [2]float64{25 + 22*math.Sin(math.Pi*u) + 6*u, 5 + 105*u})
	}
	return append(p, [2]float64{0, 5})
}
