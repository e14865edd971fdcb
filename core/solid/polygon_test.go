package solid

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

func backwardPoints(p [][2]float64) [][2]float64 {
	out := make([][2]float64, len(p))
	for i, q := range p {
		out[len(p)-1-i] = q
	}
	return out
}

// randomStar is a jagged outline round (50, 0).
func randomStar(d *rand.Rand, n int) [][2]float64 {
	p := make([][2]float64, n)
	for i := range p {
		r := 5 + 35*d.Float64()
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.9*d.Float64()) / float64(n))
		p[i] = [2]float64{50 + r*c, r * s}
	}
	if loopArea(p, upTo(0, n)) <= 0 {
		return randomStar(d, n+1)
	}
	return p
}

func upTo(from, to int) []int32 {
	l := make([]int32, 0, to-from)
	for i := from; i < to; i++ {
		l = append(l, int32(i))
	}
	return l
}

// join numbers the points of several loops.
func join(loops ...[][2]float64) (p [][2]float64, ids [][]int32) {
	for _, l := range loops {
		ids = append(ids, upTo(len(p), len(p)+len(l)))
		p = append(p, l...)
	}
	return
}

// triangulated must have an answer, and CheckTriangles nothing to say of it.
func triangulated(p [][2]float64, ids [][]int32) error {
	tris, err := Triangulate(p, ids...)
	if err != nil {
		return err
	}
	return CheckTriangles(p, tris, ids...)
}

func TestTriangulateFixtures(t *testing.T) {
	comb := [][2]float64{{0, 0}}
	for i := range 50 {
		x := float64(i)
		comb = append(comb, [2]float64{x, 0}, [2]float64{x + 0.5, 20})
	}
	comb = append([][2]float64{{0, -1}, {50, -1}}, backwardPoints(comb[1:])...)
	spiral := [][2]float64{}
	for i := range 200 {
		a := float64(i) * 0.15
		spiral = append(spiral, [2]float64{(1 + a) * math.Cos(a), (1 + a) * math.Sin(a)})
	}
	for i := 199; i >= 0; i-- {
		a := float64(i) * 0.15
		spiral = append(spiral, [2]float64{(0.5 + a) * math.Cos(a), (0.5 + a) * math.Sin(a)})
	}
	straight := [][2]float64{}
	for i := range 40 {
		straight = append(straight, [2]float64{float64(i), 0})
	}
	for i := range 40 {
		straight = append(straight, [2]float64{40, float64(i)})
	}
	straight = append(straight, [2]float64{40, 40}, [2]float64{0, 40}, [2]float64{0, 13})
	triangle := [][2]float64{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {2, 2}, {1, 4}, {0.5, 2}}
	var rows [][][2]float64
	rows = append(rows, [][2]float64{{0, 0}, {100, 0}, {100, 100}, {0, 100}})
	for i := range 81 {
		rows = append(rows, backwardPoints(circle(10+10*float64(i%9), 10+10*float64(i/9), 4.9, 16)))
	}
	eye := 1e-7
	for name, loops := range map[string][][][2]float64{
		"triangle":                 {{{0, 0}, {1, 0}, {0, 1}}},
		"corners on straight runs": {straight},
		"triangle with middles":    {triangle},
		"comb":                     {comb},
		"spiral":                   {backwardIfClockwise(spiral)},
		"holes in rows and lines":  rows,
		"hole almost touching":     {{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{eye, 5}, {5, 10 - eye}, {10 - eye, 5}, {5, eye}}},
		"needle":                   {{{0, 0}, {100, 1e-9}, {200, 0}, {100, 2e-9}}},
		"square hole in square":    {{{0, 0}, {3, 0}, {3, 3}, {0, 3}}, {{1, 1}, {1, 2}, {2, 2}, {2, 1}}},
		"holes at one left edge":   {{{0, 0}, {9, 0}, {9, 9}, {0, 9}}, {{1, 1}, {1, 2}, {2, 1.5}}, {{1, 3}, {1, 4}, {2, 3.5}}, {{1, 5}, {1, 6}, {2, 5.5}}},
		"ring":                     {circle(0, 0, 70, 200), backwardPoints(circle(0, 0, 40, 200)), backwardPoints(circle(55, 0, 6, 48))},
	} {
		p, ids := join(loops...)
		if err := triangulated(p, ids); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func backwardIfClockwise(p [][2]float64) [][2]float64 {
	if loopArea(p, upTo(0, len(p))) < 0 {
		return backwardPoints(p)
	}
	return p
}

func TestTriangulateRandom(t *testing.T) {
	d := dice(2)
	for k := range 3000 {
		outer := randomStar(d, 4+d.IntN(60))
		grid := k%4 == 1 // coordinates on a coarse grid meet in lines
		for i := range outer {
			outer[i] = [2]float64{(outer[i][0] - 50) * 20, outer[i][1] * 20}
			if grid {
				outer[i] = [2]float64{math.Round(outer[i][0] / 40), math.Round(outer[i][1] / 40)}
			}
		}
		loops := [][][2]float64{outer}
		if k%2 == 0 {
			// Holes within the disc that every outline of this kind holds.
			m := 1 + d.IntN(5)
			for j := range m {
				s, c := SinCosDeg(360 * float64(j) / float64(m))
				hole := circle(22*c, 22*s, 1+8*d.Float64(), 3+d.IntN(20))
				if m == 1 || inside(outer, hole) {
					loops = append(loops, backwardPoints(hole))
				}
			}
		}
		if !simple(loops) {
			continue
		}
		p, ids := join(loops...)
		if err := triangulated(p, ids); err != nil {
			t.Fatalf("case %d: %v\n%v", k, err, loops)
		}
	}
}

// inside says whether the corners of a hole lie within the outline.
func inside(outer, hole [][2]float64) bool {
	for _, q := range hole {
		odd := false
		for i, a := range outer {
			b := outer[(i+1)%len(outer)]
			if (a[1] > q[1]) != (b[1] > q[1]) && q[0] < a[0]+(b[0]-a[0])*(q[1]-a[1])/(b[1]-a[1]) {
				odd = !odd
			}
		}
		if !odd {
			return false
		}
	}
	return true
}

// simple is the plain test of all pairs of edges, and of holes within.
func simple(loops [][][2]float64) bool {
	type edge struct {
		a, b [2]float64
		l, i int
	}
	var all []edge
	for l, p := range loops {
		if l > 0 && !inside(loops[0], p) {
			return false
		}
		for i := range p {
			all = append(all, edge{p[i], p[(i+1)%len(p)], l, i})
		}
	}
	for i, e := range all {
		if e.a == e.b {
			return false
		}
		for _, f := range all[i+1:] {
			n := len(loops[e.l])
			switch {
			case e.l == f.l && (e.i+1)%n == f.i:
				if orient2(e.a, e.b, f.b) == 0 && (e.b[0]-e.a[0])*(f.b[0]-f.a[0])+(e.b[1]-e.a[1])*(f.b[1]-f.a[1]) < 0 {
					return false
				}
			case e.l == f.l && (f.i+1)%n == e.i:
				if orient2(f.a, f.b, e.b) == 0 && (e.b[0]-e.a[0])*(f.b[0]-f.a[0])+(e.b[1]-e.a[1])*(f.b[1]-f.a[1]) < 0 {
					return false
				}
			case segmentsMeet(e.a, e.b, f.a, f.b):
				return false
			}
		}
	}
	return loopArea(loops[0], upTo(0, len(loops[0]))) > 0
}

// What is not a polygon is refused: never a wrong cover, a hang or a crash.
func TestTriangulateRefuses(t *testing.T) {
	square := [][2]float64{{0, 0}, {4, 0}, {4, 4}, {0, 4}}
	for name, loops := range map[string][][][2]float64{
		"none":              {},
		"two points":        {{{0, 0}, {1, 0}}},
		"clockwise":         {backwardPoints(square)},
		"bow tie":           {{{0, 0}, {4, 0}, {0, 3}, {4, 4}}},
		"flat":              {{{0, 0}, {1, 0}, {2, 0}}},
		"not finite":        {{{0, 0}, {math.Inf(1), 0}, {2, 1}}},
		"point twice":       {{{0, 0}, {4, 0}, {2, 2}, {4, 4}, {0, 4}, {2, 2}}},
		"hole outside":      {square, backwardPoints(circle(9, 2, 1, 8))},
		"hole crosses":      {square, backwardPoints(circle(4, 2, 1, 9))},
		"hole is the other": {square, circle(2, 2, 1, 8)},
		"holes cross":       {square, backwardPoints(circle(2, 2, 1, 8)), backwardPoints(circle(2.5, 2, 1, 9))},
	} {
		p, ids := join(loops...)
		if _, err := Triangulate(p, ids...); err == nil {
			t.Errorf("%s: not refused", name)
		}
	}
	d := dice(3)
	for range 2000 { // tangles
		p := make([][2]float64, 3+d.IntN(12))
		for i := range p {
			p[i] = [2]float64{float64(d.IntN(6)), float64(d.IntN(6))}
		}
		_, err := Triangulate(p, upTo(0, len(p)))
		if want := simple([][][2]float64{p}); (err == nil) != want {
			t.Fatalf("%v: %v", p, err)
		}
	}
}

// CheckTriangles must find what is planted.
func TestCheckTrianglesFinds(t *testing.T) {
	p, ids := join(circle(0, 0, 9, 12), backwardPoints(circle(0, 0, 4, 7)))
	good, err := Triangulate(p, ids...)
	if err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func([][3]int32) [][3]int32{
		"missing": func(ts [][3]int32) [][3]int32 { return ts[1:] },
		"turned":  func(ts [][3]int32) [][3]int32 { ts[3][0], ts[3][1] = ts[3][1], ts[3][0]; return ts },
		"twice":   func(ts [][3]int32) [][3]int32 { ts[3] = ts[4]; return ts },
		"other":   func(ts [][3]int32) [][3]int32 { ts[0][2] = ts[len(ts)-1][1]; return ts },
	} {
		if CheckTriangles(p, spoil(append([][3]int32(nil), good...)), ids...) == nil {
			t.Errorf("%s: not found", name)
		}
	}
}

// The predicates against exact arithmetic, on points that all but line up.
func TestOrientationIsExact(t *testing.T) {
	d := dice(4)
	value := func() float64 { return (d.Float64() - 0.5) * 100 }
	for k := range 4000 {
		a, b := Vec{value(), value(), value()}, Vec{value(), value(), value()}
		c := Vec{value(), value(), value()}
		u, v := value()/50, value()/50
		e := add(add(a, scale(sub(b, a), u)), scale(sub(c, a), v))
		if k%3 == 0 {
			e = add(a, scale(sub(b, a), u))
		}
		if k%5 == 0 {
			for i := range 3 {
				a[i], b[i], c[i], e[i] = float64(float32(a[i])), float64(float32(b[i])), float64(float32(c[i])), float64(float32(e[i]))
			}
		}
		if got, want := sign(orient3(a, b, c, e)), bigOrient3(a, b, c, e); got != want {
			t.Fatalf("orient3(%v %v %v %v) has sign %d, want %d", a, b, c, e, got, want)
		}
		f := [2]float64{a[0] + (b[0]-a[0])*u, a[1] + (b[1]-a[1])*u}
		a2, b2 := [2]float64{a[0], a[1]}, [2]float64{b[0], b[1]}
		if got, want := sign(orient2(a2, b2, f)), bigOrient2(a2, b2, f); got != want {
			t.Fatalf("orient2(%v %v %v) has sign %d, want %d", a2, b2, f, got, want)
		}
	}
}

func sign(x float64) int {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

func rat(x, y float64) *big.Rat {
	a, b := new(big.Rat).SetFloat64(x), new(big.Rat).SetFloat64(y)
	return a.Sub(a, b)
}

func minor(a, b, c, d *big.Rat) *big.Rat {
	x, y := new(big.Rat).Mul(a, d), new(big.Rat).Mul(b, c)
	return x.Sub(x, y)
}

func bigOrient2(a, b, c [2]float64) int {
	return minor(rat(a[0], c[0]), rat(a[1], c[1]), rat(b[0], c[0]), rat(b[1], c[1])).Sign()
}

func bigOrient3(a, b, c, d Vec) int {
	var m [3][3]*big.Rat
	for i, p := range [3]Vec{a, b, c} {
		for k := range 3 {
			m[i][k] = rat(p[k], d[k])
		}
	}
	s := new(big.Rat)
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		x := minor(m[j][0], m[j][1], m[k][0], m[k][1])
		s.Add(s, x.Mul(x, m[i][2]))
	}
	return s.Sign()
}
