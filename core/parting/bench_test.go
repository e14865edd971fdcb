package parting

import (
	"fmt"
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
	"moldwright/core/release"
)

// vase is a form of some n points: a wavy wall, smooth or of ridges.
func vase(b *testing.B, kind string, n int) *form.Meridian {
	nodes := []job.Node{formtest.Corner(0, 0)}
	for i := range n {
		z := 300 * float64(i) / float64(n)
		r := 60 + 25*math.Sin(z/40)
		if kind == "zigzag" {
			r += float64(i % 2)
		}
		nodes = append(nodes, job.Node{R: r, Z: z, Corner: kind == "zigzag" || i == 0})
	}
	m, err := formtest.Build(nodes)
	if err != nil {
		b.Fatal(err)
	}
	return m
}

// Survey and judging together, as a plan runs them.
func BenchmarkJudge(b *testing.B) {
	j := job.Defaults()
	rules := RulesOf(&j)
	for _, kind := range []string{"smooth", "zigzag"} {
		for _, n := range []int{500, 5_000, 50_000, 100_000} {
			m := vase(b, kind, n)
			b.Run(fmt.Sprintf("%s/%d", kind, n), func(b *testing.B) {
				for b.Loop() {
					Judge(release.New(m), len(m.Pts)-1, rules, Wanted{})
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/point")
			})
		}
	}
}
