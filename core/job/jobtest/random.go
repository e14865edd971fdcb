// Package jobtest invents jobs for the tests of other rooms. The same source
// of numbers gives the same job.
package jobtest

import (
	"math"
	"math/rand/v2"

	"moldwright/core/job"
)

func corner(r, z float64) job.Node { return job.Node{R: r, Z: z, Corner: true} }
func smooth(r, z float64) job.Node { return job.Node{R: r, Z: z} }

// Random is an invented job: a wall of random radii between a foot, which
// may be flat, recessed or round, and a rim or a closed top, with random
// plaster, opening and kit.
func Random(r *rand.Rand) *job.Job {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	between := func(a, b float64) float64 { return math.Round(100*(a+(b-a)*r.Float64())) / 100 }
	foot, height := between(12, 60), between(25, 220)
	var n []job.Node
	switch r.IntN(3) {
	case 0:
		n = []job.Node{corner(0, 0), corner(foot, 0)}
	case 1:
		deep := between(1, 8)
		n = []job.Node{corner(0, deep), corner(foot-between(4, 8), deep), corner(foot-between(1, 3), 0), corner(foot, 0)}
	default:
		n = []job.Node{smooth(0, 0)}
	}
	count := 1 + r.IntN(4)
	last := n[len(n)-1].Z
	for i := range count {
		z := height * (float64(i) + 1) / float64(count+1)
		if z > last+1 {
			n = append(n, job.Node{R: between(15, 90), Z: z, Corner: r.IntN(3) == 0})
		}
	}
	if r.IntN(3) == 0 {
		n = append(n, smooth(0, height))
	} else {
		n = append(n, corner(between(15, 90), height))
	}
	j.Form.Outer = n
	j.Plaster.Wall, j.Plaster.Base = between(12, 45), between(12, 45)
	j.Printer.Clearance = between(0.1, 0.5)
	j.Mold.Staves = 1 + r.IntN(4)
	if r.IntN(2) == 0 {
		j.Plaster.Outside = job.OutsideStraight
	}
	if r.IntN(3) == 0 {
		d := between(4, 20)
		j.Mold.DrainHole = &d
	}
	if r.IntN(4) == 0 {
		d := between(10, 40)
		j.Mold.FillHole = &d
	}
	switch r.IntN(4) {
	case 0:
		j.Mold.Spare = nil
	case 1:
		j.Mold.Spare = &job.Spare{Height: between(5, 40), Flared: r.IntN(2) == 0}
	}
	switch r.IntN(24) {
	case 0:
		j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: between(0.5, 1)}
	case 1:
		j.Form.Section = job.Section{Kind: job.SectionPolygon, Count: 3 + r.IntN(6), Rounding: between(0, 60)}
	case 2:
		j.Form.Section = job.Section{Kind: job.SectionFlutes, Count: 5 + r.IntN(4), Depth: between(1, 10)}
	}
	if r.IntN(6) == 0 {
		six := 6
		j.Mold.Sides = &six
	}
	return &j
}
