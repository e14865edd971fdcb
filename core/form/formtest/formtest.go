// Package formtest makes random profiles for the tests of other rooms: plain
// pots and nasty ones, always the same for the same seed. What a family is
// nasty about stands beside it. A share of what it makes crosses itself or
// falls short otherwise; Meridian tries on until one can be built.
package formtest

import (
	"math"
	"math/rand/v2"

	"moldwright/core/form"
	"moldwright/core/job"
)

// Corner and Smooth are nodes in mm.
func Corner(r, z float64) job.Node { return job.Node{R: r, Z: z, Corner: true} }

// Smooth is a node through which the curve runs without an edge.
func Smooth(r, z float64) job.Node { return job.Node{R: r, Z: z} }

// Rand is the source for the profile with the given number: profiles do not
// depend on those before them.
func Rand(seed, number uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, number)) }

// Build is the meridian of nodes given at mold size.
func Build(nodes []job.Node) (*form.Meridian, error) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	return form.Build(&j)
}

// Solid is likewise a pot cast solid: the meridian and that of its inner surface.
func Solid(outer, inner []job.Node) (m, in *form.Meridian, err error) {
	j := job.Defaults()
	j.Form.Size, j.Form.Outer, j.Form.Inner = job.SizeMold, outer, inner
	if m, err = form.Build(&j); err == nil {
		in, err = form.BuildInner(&j, m)
	}
	return m, in, err
}

// Meridian is a random profile that can be built, and its nodes.
func Meridian(g *rand.Rand) (*form.Meridian, []job.Node) {
	for {
		nodes := Nodes(g)
		if m, err := Build(nodes); err == nil {
			return m, nodes
		}
	}
}

// Nodes are the nodes of a random profile, of any family.
func Nodes(g *rand.Rand) []job.Node {
	var nodes []job.Node
	switch g.IntN(8) {
	case 0:
		nodes = wall(g, 3+g.IntN(8), 12)
	case 1:
		nodes = steep(g)
	case 2:
		nodes = hooked(g)
	case 3:
		nodes = untangled(g)
	case 4:
		nodes = necked(g)
	case 5:
		nodes = level(g)
	case 6:
		nodes = grooved(g)
	default:
		nodes = droop(g)
	}
	if g.IntN(3) == 0 {
		nodes = foot(g, nodes)
	}
	if g.IntN(4) == 0 {
		nodes = shut(g, nodes)
	}
	smooth(g, nodes)
	switch g.IntN(4) {
	case 0:
		snap(nodes, 1) // so that heights and radii often agree exactly
	case 1:
		snap(nodes, 5)
	}
	return nodes
}

// wall is a plain pot: heights rise, radii wander.
func wall(g *rand.Rand, n int, step float64) []job.Node {
	r := 8 + 30*g.Float64()
	z := 0.0
	nodes := []job.Node{Corner(0, 0), Corner(r, 0)}
	for range n {
		z += step * (0.2 + g.Float64())
		r = math.Max(1, r+step*(g.Float64()*2-1))
		nodes = append(nodes, Corner(r, z))
	}
	return nodes
}

// steep has walls within a hair of vertical, on either side of it, and radii
// that repeat exactly.
func steep(g *rand.Rand) []job.Node {
	nodes := wall(g, 4+g.IntN(6), 10)
	for i := 2; i < len(nodes); i++ {
		switch g.IntN(4) {
		case 0:
			nodes[i].R = nodes[i-1].R
		case 1:
			nodes[i].R = nodes[i-1].R + (g.Float64()*2-1)*math.Pow(10, -float64(1+g.IntN(9)))
		case 2:
			nodes[i].R = nodes[1+g.IntN(i)].R
		}
	}
	return nodes
}

// level has shelves within a hair of horizontal, and heights that repeat.
func level(g *rand.Rand) []job.Node {
	nodes := wall(g, 4+g.IntN(6), 10)
	for i := 2; i < len(nodes); i++ {
		switch g.IntN(3) {
		case 0:
			nodes[i].Z = nodes[i-1].Z
		case 1:
			nodes[i].Z = nodes[i-1].Z + (g.Float64()*2-1)*math.Pow(10, -float64(1+g.IntN(9)))
		}
	}
	return nodes
}

// hooked walks anywhere, so that ledges, pockets and teeth come about.
func hooked(g *rand.Rand) []job.Node {
	nodes := wall(g, 3, 6)
	for range 3 + g.IntN(8) {
		last := nodes[len(nodes)-1]
		nodes = append(nodes, Corner(math.Max(0.5, last.R+24*(g.Float64()-0.5)), last.Z+20*(g.Float64()-0.3)))
	}
	return nodes
}

// untangled strings random points together and pulls the crossings out: the
// wildest shape that still does not cross itself.
func untangled(g *rand.Rand) []job.Node {
	n := 6 + g.IntN(8)
	nodes := []job.Node{Corner(0, 20*g.Float64())}
	for range n {
		nodes = append(nodes, Corner(1+50*g.Float64(), 60*g.Float64()))
	}
	nodes[n].Z = 60 + 10*g.Float64() // the rim, above all
	turn := func(a, b, c job.Node) bool { return (b.R-a.R)*(c.Z-a.Z)-(b.Z-a.Z)*(c.R-a.R) > 0 }
	for again, tries := true, 0; again && tries < 200; tries++ {
		again = false
		for i := 0; i+1 < n; i++ {
			for k := i + 2; k < n; k++ {
				p, q, r, s := nodes[i], nodes[i+1], nodes[k], nodes[k+1]
				if turn(p, q, r) != turn(p, q, s) && turn(r, s, p) != turn(r, s, q) {
					for a, b := i+1, k; a < b; a, b = a+1, b-1 {
						nodes[a], nodes[b] = nodes[b], nodes[a]
					}
					again = true
				}
			}
		}
	}
	return nodes
}

// necked closes to a hair and opens again.
func necked(g *rand.Rand) []job.Node {
	nodes := wall(g, 3+g.IntN(3), 12)
	last := nodes[len(nodes)-1]
	thin := math.Pow(10, -float64(g.IntN(4)))
	nodes = append(nodes, Corner(thin, last.Z+10*g.Float64()))
	last = nodes[len(nodes)-1]
	nodes = append(nodes, Corner(thin*(1+g.Float64()), last.Z+5*g.Float64()+0.1), Corner(20*g.Float64()+thin, last.Z+20))
	return nodes
}

// grooved cuts slots into the wall: some widen inward (a dovetail), some taper,
// some have square corners, so that their mouths lie exactly over their floors.
func grooved(g *rand.Rand) []job.Node {
	r, z := 30+20*g.Float64(), 0.0
	nodes := []job.Node{Corner(0, 0), Corner(r, 0)}
	for range 1 + g.IntN(3) {
		z += 3 + 8*g.Float64()
		h, d := 2+6*g.Float64(), 1+10*g.Float64()
		skew := 2 * (g.Float64() - 0.5)
		if g.IntN(3) == 0 {
			skew = 0
		}
		tilt := 4 * (g.Float64() - 0.5)
		if g.IntN(2) == 0 {
			tilt = 0
		}
		nodes = append(nodes, Corner(r, z), Corner(r-d, z-skew+tilt), Corner(r-d, z+h+skew+tilt), Corner(r, z+h))
		z += h
		r += 6 * (g.Float64() - 0.4)
	}
	return append(nodes, Corner(r, z+10))
}

// droop has flanges whose edge hangs down over a pocket, or whose edge stands
// up round a moat.
func droop(g *rand.Rand) []job.Node {
	nodes := wall(g, 2+g.IntN(2), 12)
	for range 1 + g.IntN(2) {
		last := nodes[len(nodes)-1]
		w, t, d := 4+10*g.Float64(), 1+3*g.Float64(), 12*(g.Float64()-0.6)
		z := last.Z + 6 + 6*g.Float64()
		top := z + t
		if d > 0 {
			top += d
		}
		nodes = append(nodes, Corner(last.R, z), Corner(last.R+w, z), Corner(last.R+w, z+d), Corner(last.R+w+t, z+d), Corner(last.R+w+t, top+t))
		if g.IntN(2) == 0 {
			nodes = append(nodes, Corner(last.R+w/2, top+t+g.Float64()))
		} else {
			nodes = append(nodes, Corner(last.R+w/2, top+t))
		}
	}
	last := nodes[len(nodes)-1]
	return append(nodes, Corner(math.Max(1, last.R+10*(g.Float64()-0.5)), last.Z+15))
}

// foot cuts a recess under the foot: tapered, square or undercut.
func foot(g *rand.Rand, nodes []job.Node) []job.Node {
	if len(nodes) < 3 || nodes[1].Z != nodes[0].Z || nodes[1].R < 6 {
		return nodes
	}
	r, z := nodes[1].R, nodes[1].Z
	deep := 0.5 + 4*g.Float64()
	in := r * (0.3 + 0.4*g.Float64())
	under := 3 * (g.Float64() - 0.5)
	if g.IntN(3) == 0 {
		under = 0
	}
	out := []job.Node{Corner(0, z+deep), Corner(in+under, z+deep), Corner(in, z)}
	return append(out, nodes[1:]...)
}

// shut closes an open form over its top.
func shut(g *rand.Rand, nodes []job.Node) []job.Node {
	last := nodes[len(nodes)-1]
	switch g.IntN(3) {
	case 0:
		return append(nodes, Corner(0, last.Z))
	case 1:
		return append(nodes, Corner(0, last.Z+10*(g.Float64()-0.5)))
	}
	nodes[len(nodes)-1].Corner = false
	return append(nodes, Smooth(0, last.Z+10*g.Float64()))
}

// smooth rounds some of the nodes.
func smooth(g *rand.Rand, nodes []job.Node) {
	switch g.IntN(3) {
	case 0:
		return
	case 1:
		for i := 1; i+1 < len(nodes); i++ {
			nodes[i].Corner = nodes[i].Corner && g.IntN(2) == 0
		}
	default:
		k := 1 + g.IntN(len(nodes)-1)
		nodes[k].Corner = k == len(nodes)-1
	}
}

func snap(nodes []job.Node, grid float64) {
	for i := range nodes {
		n := &nodes[i]
		n.Z = math.Round(n.Z/grid) * grid
		if n.R > 0 {
			n.R = math.Max(grid, math.Round(n.R/grid)*grid)
		}
	}
}
