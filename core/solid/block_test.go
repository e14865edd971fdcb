package solid

import (
	"math"
	"testing"
)

// A square block with a round bore: rows that are not of the profile's section.
func TestSquareBlock(t *testing.T) {
	const n, half = 96, 50.0
	az := NewAzimuths(n)
	side := func(z float64) func(i int) Vec {
		return func(i int) Vec {
			r := half / max(math.Abs(az.Cos[i]), math.Abs(az.Sin[i]))
			return Vec{r * az.Cos[i], r * az.Sin[i], z}
		}
	}
	for _, span := range []Span{FullTurn(n), {n, 0, 24}, {n, 12, 60}} {
		b := NewBuilder(az.Round, span)
		rings := []Loop{b.Ring(20, 0), b.Row(side(0)), b.Row(side(40)), b.Ring(20, 40)}
		b.Walls(rings)
		if !span.Whole() {
			b.End(Near, rings)
			b.End(Far, rings)
		}
		m, err := b.Done()
		part := float64(span.To-span.From) / n
		near(t, "volume", sound(t, m, err).VolumeMM3, part*40*(100*100-math.Pi*400*ratio(n)), 1e-7)
	}
}

// A wedge of five planar faces in odd directions.
func TestFaces(t *testing.T) {
	b := &Builder{}
	var v Loop
	for _, p := range []Vec{{0, 0, 0}, {9, 0, 0}, {0, 7, 0}, {1, 1, 5}, {10, 1, 5}, {1, 8, 5}} {
		v = append(v, b.Vertex(p))
	}
	for _, f := range []Loop{{v[0], v[2], v[1]}, {v[3], v[4], v[5]}, {v[0], v[1], v[4], v[3]}, {v[1], v[2], v[5], v[4]}, {v[2], v[0], v[3], v[5]}} {
		p, q, r := b.mesh.V[f[0]], b.mesh.V[f[1]], b.mesh.V[f[2]]
		b.Face(cross(sub(q, p), sub(r, p)), f)
	}
	m, err := b.Done()
	near(t, "volume", sound(t, m, err).VolumeMM3, 9*7.0/2*5, 1e-9)
}
