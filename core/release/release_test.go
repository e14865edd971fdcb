package release

import (
	"fmt"
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

func meridian(t testing.TB, nodes ...job.Node) *form.Meridian {
	t.Helper()
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	m, err := form.Build(&j)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func c(r, z float64) job.Node { return job.Node{R: r, Z: z, Corner: true} }
func s(r, z float64) job.Node { return job.Node{R: r, Z: z} }

func dump(sv *Survey) {
	for _, p := range Pulls {
		for _, x := range sv.Samples[p] {
			fmt.Printf("%d span %d t %.6f (%.3f %.3f) depth %.5f block %.3f %.3f\n", p, x.Span, x.T, x.P.R, x.P.Z, x.Depth, x.Block.R, x.Block.Z)
		}
	}
	fmt.Println(sv.Traps())
}

func TestDump(t *testing.T) {
	dump(New(meridian(t, c(0, 6), c(20, 6), c(18, 0), c(25, 0), c(60, 80))))
	_ = math.Pi
	_ = s
}
