package solid

import (
	"bytes"
	"testing"
)

// half a million triangles: a cup of 500 profile points and 512 steps.
func bigCup(b *testing.B) *Mesh {
	b.Helper()
	m, err := Revolve(cup(245), round(512), FullTurn(512))
	if err != nil {
		b.Fatal(err)
	}
	return m
}

func BenchmarkRevolve500k(b *testing.B) {
	outline := cup(245)
	for b.Loop() {
		m, err := Revolve(outline, round(512), FullTurn(512))
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(m.T)), "triangles")
	}
}

func BenchmarkSTL500k(b *testing.B) {
	m := bigCup(b)
	b.SetBytes(int64(84 + 50*len(m.T)))
	for b.Loop() {
		STL(m, "cup")
	}
}

func BenchmarkAppendSTL500k(b *testing.B) {
	m := bigCup(b)
	b.SetBytes(int64(84 + 50*len(m.T)))
	buf := STL(m, "cup")
	for b.Loop() {
		buf = AppendSTL(buf[:0], m, "cup")
	}
}

// The library's writer, from triangles laid out for it beforehand.
func BenchmarkSTLLibrary500k(b *testing.B) {
	m := bigCup(b)
	s := librarySolid(m, "cup")
	b.SetBytes(int64(84 + 50*len(m.T)))
	for b.Loop() {
		var out bytes.Buffer
		out.Grow(84 + 50*len(m.T))
		if err := s.WriteAll(&out); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadSTL500k(b *testing.B) {
	data := STL(bigCup(b), "cup")
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := ReadSTL(data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkThreeMF500k(b *testing.B) {
	m := bigCup(b)
	for b.Loop() {
		data, err := ThreeMF("cup", []Piece{{"cup", m, Vec{}}})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(data))/1e6, "MB")
	}
}

func BenchmarkCheck500k(b *testing.B) {
	m := bigCup(b)
	for b.Loop() {
		if !Check(m).Sound() {
			b.Fatal("not sound")
		}
	}
}

func BenchmarkSelfIntersects500k(b *testing.B) {
	m := bigCup(b)
	for b.Loop() {
		if bad, _ := SelfIntersects(m); bad {
			b.Fatal("meets itself")
		}
	}
}

// The end of a sector: a cup's wall of 1000 points in a block.
func BenchmarkTriangulate1000(b *testing.B) {
	p := cup(500)
	for b.Loop() {
		if _, err := Triangulate(p, upTo(0, len(p))); err != nil {
			b.Fatal(err)
		}
	}
}

// A ring of 2 x 512 points with four natches of 48.
func BenchmarkTriangulateRing(b *testing.B) {
	loops := [][][2]float64{circle(0, 0, 90, 512), backwardPoints(circle(0, 0, 50, 512))}
	for k := range 4 {
		s, c := SinCosDeg(90*float64(k) + 7)
		loops = append(loops, backwardPoints(circle(70*c, 70*s, 8, 48)))
	}
	p, ids := join(loops...)
	for b.Loop() {
		if _, err := Triangulate(p, ids...); err != nil {
			b.Fatal(err)
		}
	}
}

// Two side parts and a cast of about 13,000 triangles each, four steps.
func BenchmarkPullClear(b *testing.B) {
	wall := cup(60)[1:61]
	cast, err := Revolve(append(append([][2]float64{{0, 0}}, wall...), [2]float64{0, wall[59][1]}), round(192), FullTurn(192))
	if err != nil {
		b.Fatal(err)
	}
	outline := append([][2]float64{}, backwardPoints(wall)...)
	outline = append(outline, [2]float64{30, -0.001}, [2]float64{90, -0.001}, [2]float64{90, wall[59][1]})
	var parts []*Body
	for s := range 2 {
		m, err := Revolve(outline, round(192), Span{192, 96 * s, 96 * (s + 1)})
		if err != nil {
			b.Fatal(err)
		}
		parts = append(parts, NewBody(m))
	}
	fixed := []*Body{NewBody(cast), parts[1]}
	for b.Loop() {
		if ok, hit := PullClear(parts[0], fixed, Vec{0, 1, 0}, []float64{0, 0.5, 2, 10, 100}, TouchMM); !ok {
			b.Fatal(hit)
		}
	}
}
