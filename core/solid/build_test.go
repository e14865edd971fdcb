package solid

import (
	"fmt"
	"math"
	"testing"
)

// ratio is the volume of a solid with n flat sides over that of the turned one.
func ratio(n int) float64 { return float64(n) / (2 * math.Pi) * math.Sin(2*math.Pi/float64(n)) }

// Larson and Edwards, Calculus, section 7.6, example 7: the torus of a circle of
// radius 1 about an axis 2 away has volume 4 pi^2 = 39.478 (Pappus).
func TestTorusOfTextbook(t *testing.T) {
	const n = 720
	m, err := Revolve(circle(2, 0, 1, n), round(n), FullTurn(n))
	r := sound(t, m, err)
	near(t, "volume", r.VolumeMM3, 39.478, 0.002)
	near(t, "surface", r.AreaMM2, 8*math.Pi*math.Pi, 0.004)
	if r.Genus != 1 || r.Shells != 1 || r.Voids != 0 {
		t.Errorf("a torus has one shell and one handle: %+v", r)
	}
	// Exactly: Pappus for the polygon, and the flats of the turn.
	near(t, "volume of the flats", r.VolumeMM3, 2*math.Pi*2*(math.Pi*ratio(n))*ratio(n), 1e-9)
}

// A bucket of radii 15 and 5 and height 24: pi h (R^2 + Rr + r^2) / 3 = 8168.14,
// a worked textbook exercise that gives 8171.42 with pi = 22/7.
func TestBucketOfTextbook(t *testing.T) {
	const n = 64
	m, err := Revolve([][2]float64{{0, 0}, {5, 0}, {15, 24}, {0, 24}}, round(n), FullTurn(n))
	r := sound(t, m, err)
	near(t, "volume", r.VolumeMM3/ratio(n), 8168.14, 0.01)
	// The deficit of 64 flats is 0.1606 %: (n / 2 pi) sin(2 pi / n).
	near(t, "deficit in percent", 100*(1-r.VolumeMM3/8168.1409), 0.1606, 1e-4)
	if r.Genus != 0 {
		t.Errorf("a bucket of solid matter has no handle: %+v", r)
	}
}

// Larson, Calculus, chapter 7, "Modeling Data": a vase by circumference every
// three inches. By cone frusta it holds 5215.55 in3 (derived from the data).
func TestVaseOfTextbook(t *testing.T) {
	girth := []float64{50, 65.5, 70, 66, 58, 51, 48}
	p := [][2]float64{{0, 0}}
	for i, g := range girth {
		p = append(p, [2]float64{g / (2 * math.Pi), 3 * float64(i)})
	}
	p = append(p, [2]float64{0, 18})
	const n = 360
	m, err := Revolve(p, round(n), FullTurn(n))
	near(t, "volume", sound(t, m, err).VolumeMM3/ratio(n), 5215.55, 0.01)
}

func TestPappusOfRandomSectors(t *testing.T) {
	d := dice(1)
	for k := range 200 {
		p := randomStar(d, 3+d.IntN(40))
		all := make([]int32, len(p))
		zr := 0.0 // integral of r over the outline, times 6
		for i := range p {
			all[i] = int32(i)
			a, b := p[i], p[(i+1)%len(p)]
			zr += (a[0] + b[0]) * (a[0]*b[1] - b[0]*a[1])
		}
		n := 3 + d.IntN(60)
		from := d.IntN(n)
		span := Span{n, from, from + 1 + d.IntN(n-1)}
		if 360*(span.To-span.From) == 180*n {
			span.To++
		}
		if k%3 == 0 {
			span = FullTurn(n)
		}
		m, err := Revolve(p, round(n), span)
		r := sound(t, m, err)
		turn := 2 * math.Pi * float64(span.To-span.From) / float64(n)
		near(t, fmt.Sprintf("case %d", k), r.VolumeMM3/(turn*ratio(n)*zr/6), 1, 1e-9)
		if handles := 0; span.Whole() && k >= 0 {
			handles = 1
			if r.Genus != handles {
				t.Errorf("case %d has genus %d", k, r.Genus)
			}
		} else if r.Genus != 0 {
			t.Errorf("sector %d has genus %d", k, r.Genus)
		}
	}
}

// Where solids touch, their vertices are the same to the bit and the shared
// wall has the same triangles: cast and block of every section close the gap.
func TestNeighboursShareTheWall(t *testing.T) {
	az := NewAzimuths(96)
	oval := func(r, z float64, i int) Vec {
		s, c := az.Sin[i%96], az.Cos[i%96]
		f := 1 + 0.2*(c*c-s*s)
		return Vec{r * f * c, r * f * s, z}
	}
	for name, place := range map[string]Place{"round": az.Round, "oval": oval} {
		wall := [][2]float64{{0, 0}, {30, 0}, {41, 30}, {37, 60}, {37, 80}, {0, 80}}
		cast, err := Revolve(wall, place, FullTurn(96))
		sound(t, cast, err)
		for _, span := range []Span{{96, 0, 32}, {96, 32, 64}, {96, 64, 96}} {
			side, err := Revolve([][2]float64{{30, 0}, {60, 0}, {60, 80}, {37, 80}, {37, 60}, {41, 30}}, place, span)
			sound(t, side, err)
			shared := 0
			tris := map[[3]Vec]bool{}
			for i := range cast.T {
				p := points(cast, int32(i))
				for k := range 3 {
					tris[[3]Vec{p[k], p[(k+1)%3], p[(k+2)%3]}] = true
				}
			}
			for i := range side.T {
				p := points(side, int32(i))
				if tris[[3]Vec{p[0], p[2], p[1]}] {
					shared++
				}
			}
			if shared != 3*32*2 {
				t.Errorf("%s: side shares %d triangles with the cast, want %d", name, shared, 3*32*2)
			}
			if hit, at := Overlap(NewBody(side), NewBody(cast), TouchMM); hit {
				t.Errorf("%s: side and cast overlap at %v", name, at)
			}
		}
	}
}

// A lower part with natches in its seam, a side part with natches in its ends
// and an upper part with a fill hole: closed, and of the volume of their pieces.
func TestNatchesAndFillHole(t *testing.T) {
	const n, rho, half = 128, 6.0, 50.0
	place := round(n)
	outline := [][2]float64{{0, 0}, {70, 0}, {70, 60}, {40, 60}, {30, 30}, {0, 30}}
	plain, err := Revolve(outline, place, FullTurn(n))
	before := sound(t, plain, err).VolumeMM3
	b := NewBuilder(place, FullTurn(n))
	rings := b.Rings(outline)
	b.Walls(rings, 2)
	holes := b.Flat(rings[2], rings[3],
		Circle{At: [2]float64{55, 0}, RadiusMM: rho, Steps: 48},
		Circle{At: [2]float64{-20, 50}, RadiusMM: rho, Steps: 48},
		Circle{At: [2]float64{-20, -51}, RadiusMM: rho, Steps: 48})
	for _, h := range holes[:2] {
		b.Dome(h, half)
	}
	b.Socket(holes[2], half)
	m, err := b.Done()
	r := sound(t, m, err)
	h := DomeHeight(rho, half)
	one := math.Pi * h * (3*rho*rho + h*h) / 6 // cap of a sphere
	near(t, "one natch more", r.VolumeMM3-before, one, 0.02*one)
	lo, hi := m.Bounds()
	near(t, "top of natch", hi[2], 60+h, 1e-12)
	near(t, "foot", lo[2], 0, 0)
	if r.Genus != 0 || r.Shells != 1 {
		t.Errorf("%+v", r)
	}

	b = NewBuilder(place, Span{n, 0, 43})
	rings = b.Rings([][2]float64{{30, 0}, {80, 0}, {80, 90}, {35, 90}, {50, 40}})
	b.Walls(rings)
	near3 := b.End(Near, rings, Circle{[2]float64{66, 20}, 5, 32}, Circle{[2]float64{65, 75}, 5, 32})
	far := b.End(Far, rings, Circle{[2]float64{66, 20}, 5.15, 32}, Circle{[2]float64{65, 75}, 5.15, 32})
	for k := range near3 {
		b.Dome(near3[k], 40)
		b.Socket(far[k], 40)
	}
	m, err = b.Done()
	if r := sound(t, m, err); r.Genus != 0 || r.Shells != 1 {
		t.Errorf("%+v", r)
	}

	b = NewBuilder(place, FullTurn(n))
	rings = b.Rings([][2]float64{{0, 60}, {70, 60}, {70, 90}, {0, 90}})
	b.Walls(rings, 0, 2)
	low := b.Flat(rings[0], rings[1], Circle{RadiusMM: 8, Steps: n})
	top := b.Flat(rings[2], rings[3], Circle{RadiusMM: 12, Steps: n})
	b.Passage(top[0], low[0])
	m, err = b.Done()
	r = sound(t, m, err)
	if r.Genus != 1 {
		t.Errorf("an upper part with a hole has one handle: %+v", r)
	}
	near(t, "volume", r.VolumeMM3, ratio(n)*(math.Pi*70*70*30-math.Pi*30*(144+96+64)/3), 1e-6)
}

func TestPrism(t *testing.T) {
	hole := backwardPoints(circle(10, 10, 4, 40))
	m, err := Prism(0, 5, [][2]float64{{0, 0}, {40, 0}, {40, 20}, {0, 20}}, hole)
	r := sound(t, m, err)
	near(t, "volume", r.VolumeMM3, 5*(800-math.Pi*16*ratio(40)), 1e-9)
	if r.Genus != 1 {
		t.Errorf("%+v", r)
	}
}

func TestBuilderRefuses(t *testing.T) {
	square := [][2]float64{{1, 0}, {2, 0}, {2, 1}, {1, 1}}
	for name, f := range map[string]func() error{
		"span":      func() error { _, err := Revolve(square, round(8), Span{8, 3, 12}); return err },
		"clockwise": func() error { _, err := Revolve(backwardPoints(square), round(8), FullTurn(8)); return err },
		"left": func() error {
			_, err := Revolve([][2]float64{{-1, 0}, {1, 0}, {1, 1}}, round(8), FullTurn(8))
			return err
		},
		"nan": func() error {
			_, err := Revolve([][2]float64{{0, 0}, {math.NaN(), 0}, {1, 1}}, round(8), FullTurn(8))
			return err
		},
		"crossing end": func() error {
			_, err := Revolve([][2]float64{{1, 0}, {4, 0}, {4, 3}, {2, -1}}, round(8), Span{8, 0, 3})
			return err
		},
		"hole over the edge": func() error {
			b := NewBuilder(round(64), FullTurn(64))
			rings := b.Rings([][2]float64{{10, 0}, {20, 0}, {20, 5}, {10, 5}})
			b.Walls(rings, 2)
			b.Flat(rings[2], rings[3], Circle{[2]float64{19, 0}, 3, 24})
			_, err := b.Done()
			return err
		},
		"flat that slopes": func() error {
			b := NewBuilder(round(64), FullTurn(64))
			rings := b.Rings([][2]float64{{10, 0}, {20, 0}, {20, 5}, {10, 6}})
			b.Flat(rings[2], rings[3], Circle{[2]float64{15, 0}, 1, 24})
			_, err := b.Done()
			return err
		},
	} {
		if f() == nil {
			t.Errorf("%s: not refused", name)
		}
	}
}

func TestChord(t *testing.T) {
	for _, r := range []float64{0.5, 3, 40, 60, 150, 400} {
		n := Chord(r, ChordMM, 4)
		if n%4 != 0 || r*(1-math.Cos(math.Pi/float64(n))) > ChordMM {
			t.Errorf("radius %g: %d steps leave %g", r, n, r*(1-math.Cos(math.Pi/float64(n))))
		}
		if n > 12 && r*(1-math.Cos(math.Pi/float64(n-5))) < ChordMM {
			t.Errorf("radius %g: %d steps are more than it needs", r, n)
		}
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		for _, n := range []int{Chord(bad, 0.02, 6), Chord(50, bad, 6)} {
			if n < 12 || n > 4098 || n%6 != 0 {
				t.Errorf("%g gives %d steps", bad, n)
			}
		}
	}
}

func TestAzimuthsMirror(t *testing.T) {
	for _, n := range []int{4, 8, 36, 84, 96, 124, 360, 1236} {
		a := NewAzimuths(n)
		for i := range n {
			if j := (n - i) % n; a.Cos[i] != a.Cos[j] || a.Sin[i] != -a.Sin[j] {
				t.Fatalf("step %d of %d does not mirror step %d", i, n, j)
			}
			if q := (i + n/4) % n; a.Cos[q] != -a.Sin[i] || a.Sin[q] != a.Cos[i] {
				t.Fatalf("step %d of %d is not a quarter turn from %d", q, n, i)
			}
		}
	}
}

func TestMovesKeepTheSolid(t *testing.T) {
	m, err := Revolve(cup(20), round(48), Span{48, 3, 20})
	v := sound(t, m, err).VolumeMM3
	for name, f := range map[string]func(*Mesh){
		"translate": func(m *Mesh) { m.Translate(Vec{3, -20, 7}) },
		"rotate":    func(m *Mesh) { m.RotateX(31); m.RotateY(-100); m.RotateZ(77) },
		"mirror":    func(m *Mesh) { m.Mirror(1) },
		"turn up":   func(m *Mesh) { m.TurnUp(Vec{1, -2, 0.5}); m.Rest() },
	} {
		c := m.Clone()
		f(c)
		near(t, name, sound(t, c, nil).VolumeMM3, v, 1e-8*v)
	}
	c := m.Clone()
	c.RotateX(90)
	c.RotateX(270)
	for i := range c.V {
		if c.V[i] != m.V[i] {
			t.Fatal("a quarter turn and back is not the same")
		}
	}
	for _, d := range []Vec{{0, 0, -1}, {0, 0, 2}, {1, 0, 0}, {-3, 4, 0}, {1, 1, -1}} {
		p := &Mesh{V: []Vec{d}}
		p.TurnUp(d)
		near(t, "x", p.V[0][0], 0, 1e-12)
		near(t, "y", p.V[0][1], 0, 1e-12)
		near(t, "z", p.V[0][2], length(d), 1e-12)
	}
}
