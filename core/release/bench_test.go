package release

import (
	"fmt"
	"math"
	"testing"

	"moldwright/core/form"
)

// line is a meridian of corners and straight spans.
func line(pts []form.Point) *form.Meridian {
	m := &form.Meridian{Pts: pts, Corner: make([]bool, len(pts)), Node: make([]int, len(pts))}
	for i := range pts {
		m.Corner[i], m.Node[i] = true, i
		if i > 0 {
			a := math.Atan2(pts[i].Z-pts[i-1].Z, pts[i].R-pts[i-1].R)
			m.Spans = append(m.Spans, form.Span{A0: a, A1: a})
		}
	}
	return m
}

// big are forms of n points: a smooth wavy vase, a wall of n/2 ridges, and a
// flange with moats above and teeth below, whose gaps are shut for every pull
// but one.
func big(kind string, n int) *form.Meridian {
	pts := []form.Point{{R: 0, Z: 0}}
	switch kind {
	case "smooth":
		for i := range n {
			z := 300 * float64(i) / float64(n)
			pts = append(pts, form.Point{R: 60 + 25*math.Sin(z/40), Z: z})
		}
	case "zigzag":
		for i := range n {
			pts = append(pts, form.Point{R: 60 + 25*math.Sin(float64(i)/float64(n)*7) + float64(i%2), Z: 300 * float64(i) / float64(n)})
		}
	case "teeth":
		for i := range n / 2 {
			pts = append(pts, form.Point{R: 10 + 200*float64(i)/float64(n), Z: float64(i%2) * (1 + 5*float64(i)/float64(n))})
		}
		for i := n / 2; i > 0; i-- {
			pts = append(pts, form.Point{R: 10 + 200*float64(i)/float64(n), Z: 20 + float64(i%2)*(1+5*float64(i)/float64(n))})
		}
		pts = append(pts, form.Point{R: 9, Z: 60})
	}
	return line(pts)
}

func BenchmarkSurvey(b *testing.B) {
	for _, kind := range []string{"smooth", "zigzag", "teeth"} {
		for _, n := range []int{500, 5_000, 50_000, 100_000} {
			m := big(kind, n)
			b.Run(fmt.Sprintf("%s/%d", kind, n), func(b *testing.B) {
				for b.Loop() {
					New(m).Traps()
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/point")
			})
		}
	}
}
