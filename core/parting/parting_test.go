package parting

import (
	"fmt"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/release"
)

func c(r, z float64) job.Node  { return job.Node{R: r, Z: z, Corner: true} }
func sm(r, z float64) job.Node { return job.Node{R: r, Z: z} }

func judge(t testing.TB, nodes ...job.Node) []Scheme {
	t.Helper()
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	m, err := form.Build(&j)
	if err != nil {
		t.Fatal(err)
	}
	end := len(m.Pts) - 1
	if m.Closed {
		end = m.CutMouth(15)
	}
	s := release.New(m)
	fmt.Println(s.Traps())
	return Judge(s, end, RulesOf(&j), Wanted{})
}

func TestDump(t *testing.T) {
	for _, n := range [][]job.Node{
		{c(0, 0), c(30, 0), c(60, 80)},
		{sm(0, 0), sm(50, 50), sm(0, 100)},
		{c(0, 0), c(60, 0), c(30, 150)},
		{c(0, 0), c(40, 0), c(25, 60), c(45, 140)},
		{c(0, 0), c(40, 0), c(40, 100)},
		{c(0, 6), c(20, 6), c(22, 0), c(27, 0), c(60, 80)},
		{c(0, 6), c(22, 6), c(20, 0), c(27, 0), c(60, 80)},
	} {
		all := judge(t, n...)
		for _, s := range all {
			fmt.Println(s, s.RubArea, s.Depth)
		}
		k := Choose(all, 0, func(int) float64 { return 0 })
		fmt.Println("->", all[k].ID, WhyNotFewer(all, k))
	}
}
