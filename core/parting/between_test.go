package parting

import (
	"math"
	"testing"

	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

// refined has points put into every straight stretch, n pieces of each.
func refined(nodes []job.Node, n int) []job.Node {
	out := []job.Node{nodes[0]}
	for i := 1; i < len(nodes); i++ {
		p, q := nodes[i-1], nodes[i]
		if p.Corner && q.Corner {
			for k := 1; k < n; k++ {
				t := float64(k) / float64(n)
				out = append(out, job.Node{R: p.R + t*(q.R-p.R), Z: p.Z + t*(q.Z-p.Z), Corner: true})
			}
		}
		out = append(out, q)
	}
	return out
}

// banded is a random jar with a stretch near upright about its belly.
func banded(k uint64) []job.Node {
	g := formtest.Rand(17, k)
	r, z := 15+15*g.Float64(), 0.0
	nodes := []job.Node{corner(0, 0), corner(r, 0)}
	add := func(dr, dz float64) {
		r, z = math.Max(2, r+dr), z+dz
		nodes = append(nodes, corner(r, z))
	}
	add(10+20*g.Float64(), 20+30*g.Float64())
	for range 1 + g.IntN(3) {
		add(0.2*(g.Float64()-0.5), 1+3*g.Float64())
	}
	add(-10-15*g.Float64(), 20+30*g.Float64())
	add(-1, 0)
	return nodes
}

// Points put into straight stretches give a seam no place that serves better
// than what was found without them: the verdict on two parts stays. One part
// and side parts alone have no seam at all, and stay to the last figure.
func TestRefiningStraightStretchesKeepsTheVerdict(t *testing.T) {
	n := uint64(600)
	if testing.Short() {
		n = 150
	}
	within := 0
	for k := range n {
		nodes := banded(k)
		if k%2 == 1 {
			_, nodes = formtest.Meridian(formtest.Rand(18, k))
		}
		a, err := lookAt(potOf(nodes...), mouth15, "")
		if err != nil {
			t.Fatal(err)
		}
		b, err := lookAt(potOf(refined(nodes, 25)...), mouth15, "")
		if err != nil {
			continue // points nearer to one another than can be told apart
		}
		for _, id := range []string{"one", "two", "sides2", "sides3"} {
			x, y := a.scheme(id), b.scheme(id)
			if x == nil || y == nil {
				if x != y {
					t.Errorf("profile %d: %s judged %v, refined %v\n%v", k, id, x != nil, y != nil, nodes)
				}
				continue
			}
			if id != "two" {
				if x.Verdict != y.Verdict && math.Abs(x.Depth-CatchDepth) > 1e-4 || math.Abs(x.RubArea-y.RubArea) > 1e-6*(1+x.RubArea) || math.Abs(x.Depth-y.Depth) > 0.01 {
					t.Errorf("profile %d: %s is %s %.4f mm %.6f cm2, refined %s %.4f mm %.6f cm2\n%v", k, id, x.Verdict, x.Depth, x.RubArea, y.Verdict, y.Depth, y.RubArea, nodes)
				}
				continue
			}
			if x.Verdict.rank() > y.Verdict.rank() && (y.Verdict != Clear || y.worstShare() < 4.99) && math.Abs(x.Depth-CatchDepth) > 1e-4 {
				t.Errorf("profile %d: two parts are %s at %.3f, with more points %s at %.3f\n%v", k, x.Verdict, x.PartingHeights, y.Verdict, y.PartingHeights, nodes)
			}
			if x.Verdict == Clear && !a.m.Corner[x.K1] && a.m.Node[x.K1] < 0 && k%2 == 0 {
				within++
			}
		}
	}
	if within < int(n)/60 {
		t.Errorf("a seam within a stretch served on %d forms only", within)
	}
	t.Logf("a seam within a stretch served on %d of %d forms with a band", within, n/2)
}
