package formtest

import (
	"math"
	"math/rand/v2"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
)

// Forms of the kinds that have a mold of their own: cast solid between outer parts
// and a core, upside down as a lid, closed with a fill hole, and with a recess under
// the foot. Some of each kind are plain, some nasty in all the ways of Nodes.

// Cored is a random open form and its inner surface. The inner one is any open
// profile, shrunk to fit with a wall that is now thick, now a hair; a share of them
// comes through the outer one.
func Cored(g *rand.Rand) (outer, inner []job.Node) {
	outer, inner = open(g), open(g)
	switch g.IntN(3) {
	case 0: // an inside like the outside, under a wall of any thickness
		inner = append([]job.Node{}, outer...)
	case 1: // room for any inside
		outer = wall(g, 2, 1)
		outer = append(outer[:2], Corner(outer[1].R+10*g.Float64(), 60), Corner(outer[1].R+10*g.Float64(), 80+20*g.Float64()))
	}
	r, bottom, top := widest(outer), lowest(outer), outer[len(outer)-1].Z
	rim := outer[len(outer)-1].R
	share := 1 - math.Pow(10, -3*g.Float64())
	if g.IntN(2) == 0 {
		share = math.Min(share, rim/r)
	}
	floor := bottom + (top-bottom)*0.5*math.Pow(10, -2*g.Float64())
	ir, ib, it := widest(inner), lowest(inner), inner[len(inner)-1].Z
	if it-ib < 1 {
		it = ib + 1
	}
	for i := range inner {
		inner[i].R *= share * r / ir
		inner[i].Z = floor + (inner[i].Z-ib)*(top-floor)/(it-ib)
	}
	if n := &inner[len(inner)-1]; n.R >= rim {
		n.R = rim * (0.5 + 0.49*g.Float64())
	}
	inner[len(inner)-1].Z = top
	if g.IntN(3) == 0 {
		snap(outer, 1)
		snap(inner, 1)
	}
	return outer, inner
}

// open are the nodes of a random open profile.
func open(g *rand.Rand) []job.Node {
	for {
		if n := Nodes(g); n[len(n)-1].R > 0 {
			return n
		}
	}
}

func widest(nodes []job.Node) float64 {
	r := 0.0
	for _, n := range nodes {
		r = math.Max(r, n.R)
	}
	return r
}

func lowest(nodes []job.Node) float64 {
	z := math.Inf(1)
	for _, n := range nodes {
		z = math.Min(z, n.Z)
	}
	return z
}

// Lid is a random form that opens downward: a knob or a plain top, a dome, and mostly
// a gallery, the ring within the rim that sets it into its pot, which may lean in or
// out, stand above the rim or hang below it. Some are any profile upside down.
func Lid(g *rand.Rand) []job.Node {
	if g.IntN(4) == 0 {
		nodes := open(g)
		for i := range nodes {
			nodes[i].Z = -nodes[i].Z
		}
		return nodes
	}
	z := 0.0
	nodes := []job.Node{Corner(0, 0)}
	add := func(r, down float64) {
		z -= down
		nodes = append(nodes, Corner(math.Max(0.5, r), z))
	}
	r := 4 + 10*g.Float64()
	if g.IntN(3) > 0 { // a knob, waisted or not
		add(r, 0)
		add(r*(0.8+0.4*g.Float64()), 4+6*g.Float64())
		add(r*(0.4+0.7*g.Float64()), 2+6*g.Float64())
	}
	for range 1 + g.IntN(4) { // the dome
		r += 4 + 12*g.Float64()
		add(r, 8*(g.Float64()-0.15))
	}
	add(r+[]float64{0, 0, 1e-6, -1e-6, 3 * (g.Float64() - 0.5)}[g.IntN(5)], 2+3*g.Float64()) // its edge
	for range g.IntN(3) {                                                                    // the gallery
		r *= 0.75 + 0.2*g.Float64()
		add(r, []float64{0, 0, 1e-7, 2 * (g.Float64() - 0.5)}[g.IntN(4)]) // the seat
		add(r+[]float64{0, 0, 4 * (g.Float64() - 0.5), 1e-5 * (g.Float64() - 0.5)}[g.IntN(4)], 2+8*g.Float64())
	}
	smooth(g, nodes)
	switch g.IntN(4) {
	case 0:
		snap(nodes, 1)
	case 1:
		snap(nodes, 5)
	}
	return nodes
}

// Closed is a random form that comes back to the axis.
func Closed(g *rand.Rand) []job.Node {
	if g.IntN(4) > 0 {
		nodes := open(g)
		last := nodes[len(nodes)-1]
		for range g.IntN(3) { // a shoulder
			last = Corner(math.Max(0.5, last.R*(1.1*g.Float64())), last.Z+6*(g.Float64()-0.2))
			nodes = append(nodes, last)
		}
		return shut(g, nodes)
	}
	for {
		if n := Nodes(g); n[len(n)-1].R == 0 {
			return n
		}
	}
}

// Footed is a random open form with a recess under its foot: steps, rings of a hair,
// walls that lean under, and floors that hang down into it.
func Footed(g *rand.Rand) []job.Node {
	rest := open(g)
	for len(rest) > 2 && rest[0].Z != rest[1].Z { // a foot of its own, or none
		rest = open(g)
	}
	out, z := rest[1].R, rest[1].Z
	hair := math.Pow(10, -6*g.Float64())
	r := math.Max(out*0.1, out-math.Max(hair, 0.4*out*g.Float64()*float64(g.IntN(2))))
	ring := []job.Node{Corner(r, z)} // from the foot ring inward
	for range 1 + g.IntN(4) {
		last := ring[len(ring)-1]
		lean := []float64{0, 0, 1e-7, 2 * (g.Float64() - 0.5), 6 * (g.Float64() - 0.5)}[g.IntN(5)]
		up := []float64{0, 4 * g.Float64(), 4 * g.Float64(), 4 * (g.Float64() - 0.4)}[g.IntN(4)]
		ring = append(ring, Corner(math.Max(0.1, last.R-lean-[]float64{0, 3 * g.Float64()}[g.IntN(2)]), math.Max(z, last.Z+up)))
	}
	nodes := []job.Node{Corner(0, ring[len(ring)-1].Z+[]float64{0, 0, 2 * (g.Float64() - 0.5)}[g.IntN(3)])}
	for i := len(ring) - 1; i >= 0; i-- {
		nodes = append(nodes, ring[i])
	}
	nodes = append(nodes, rest[1:]...)
	smooth(g, nodes)
	if g.IntN(4) == 0 {
		snap(nodes, 1)
	}
	return nodes
}

// Near tells whether two lines come nearer to one another than least mm.
func Near(a, b []form.Point, least float64) bool {
	near := func(p form.Point, line []form.Point) bool {
		for i := range len(line) - 1 {
			q, d := line[i], line[i+1].Sub(line[i])
			t := ((p.R-q.R)*d.R + (p.Z-q.Z)*d.Z) / (d.R*d.R + d.Z*d.Z)
			if p.Dist(q.Lerp(line[i+1], math.Max(0, math.Min(1, t)))) < least {
				return true
			}
		}
		return false
	}
	return slices.ContainsFunc(a, func(p form.Point) bool { return near(p, b) }) ||
		slices.ContainsFunc(b, func(p form.Point) bool { return near(p, a) })
}
