package mold

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/job/jobtest"
	"moldwright/core/parting"
	"moldwright/core/release"
	"moldwright/core/solid"
)

// everyJob asks for the slow checks on all random jobs: some minutes.
var everyJob = flag.Bool("all", false, "search and pull apart the molds of all random jobs, not of a share of them")

// schemesOf judges the job and gives its base, as the pipeline does.
func schemesOf(j *job.Job) ([]parting.Scheme, *Base, error) {
	m, err := form.Build(j)
	if err != nil {
		return nil, nil, err
	}
	_, maxR := m.Extent()
	end := len(m.Pts) - 1
	if m.Closed {
		end = m.CutMouth(MouthRadius(j, maxR))
	}
	w := parting.Wanted{}
	if j.Mold.Sides != nil {
		w.Sides = *j.Mold.Sides
	}
	all := parting.Judge(release.New(m), end, parting.RulesOf(j), w)
	return all, NewBase(m, end, all, nil), nil
}

// shares are those of the block and of the pot's section, cut into chords, within
// a part's sector, which need not be a turn of the other sectors'; of a circle that
// is cut into chords all round.
func (s *Solids) shares(p *Part) (plan, pot float64) {
	part, from, to := 1.0, 0, len(s.reach)
	if p != nil && p.Sector != nil {
		span := s.span(p)
		part, from, to = (p.Sector[1]-p.Sector[0])/360, span.From, span.To
	}
	n := len(s.reach)
	for i := from; i < to; i++ {
		k, next := i%n, (i+1)%n
		w := math.Sin((s.Turn.Deg(i+1)-s.Turn.Deg(i))*math.Pi/180) / (2 * math.Pi * s.circle() * part)
		plan += w * s.reach[k] * s.reach[next]
		pot += w * s.section[k] * s.section[next]
	}
	return plan, pot
}

// polygon is the share of a circle's area that its chords enclose, and the
// shares of the block and of the pot's section when cut into chords.
func (s *Solids) polygon() (circle, plan, pot float64) {
	plan, pot = s.shares(nil)
	return s.circle(), plan, pot
}

// positive is the mesh of all that the plaster stands around.
func (s *Solids) positive() (*solid.Mesh, error) {
	var o [][2]float64
	add := func(list []form.Point) {
		for _, p := range list {
			o = append(o, [2]float64{p.R, p.Z})
		}
	}
	md := s.md
	if md.Drain != nil {
		add([]form.Point{{R: 0, Z: md.Block.ZBottom}})
		add(md.Drain)
		k := 0 // the hole takes the place of the cavity's first points
		for md.Cavity[k].R <= md.Drain[1].R+0.01 {
			k++
		}
		add(md.Cavity[k:])
	} else {
		add(md.Cavity)
	}
	if md.PlugApart { // what fills the spare is taken out first
		add([]form.Point{{R: 0, Z: md.TrimZ}})
		return solid.Revolve(o, s.Place, solid.FullTurn(s.Turn.Steps()))
	}
	add(md.Opening[1:])
	add([]form.Point{{R: 0, Z: md.Block.ZTop}})
	return solid.Revolve(o, s.Place, solid.FullTurn(s.Turn.Steps()))
}

// Every part of every scheme of 2,000 random jobs is closed, oriented and of
// the genus it was designed with; its volume is that of its outline; parts,
// cavity and openings fill the block; parts that touch share their vertices all
// along their seams.
// On one job in three, or on every one with -all, no part passes through itself.
// On one in seven, or on every one, each comes away along its pull, in order,
// unless the scheme is said to catch, and then some part sticks. One job in
// fourteen takes a scheme that does not catch.
func TestRandomJobs(t *testing.T) {
	const jobs = 2000
	seen := map[string]int{}
	made, parts, whole, pulled, odd, stuck := 0, 0, 0, 0, 0, 0
	for seed := uint64(1); made < jobs; seed++ {
		r := rand.New(rand.NewPCG(seed, 11))
		j := jobtest.Random(r)
		all, base, err := schemesOf(j)
		if err != nil {
			continue // a wall that crosses itself or the like
		}
		made++
		sc := &all[r.IntN(len(all))]
		if made%14 == 0 {
			for i := range all {
				if all[i].Verdict != parting.Catches {
					sc = &all[i]
					break
				}
			}
		}
		seen[sc.ID]++
		md := Lay(j, base, sc)
		md.PlaceNatches(j.Printer.Clearance)
		so := NewCoarse(md)
		meshes, err := soundParts(so)
		if err != nil {
			t.Errorf("seed %d, %s: %v", seed, sc.ID, err)
			continue
		}
		parts += len(meshes)
		if *everyJob || made%3 == 0 {
			for i, m := range meshes {
				whole++
				if bad, at := solid.SelfIntersects(m); bad {
					t.Errorf("seed %d, %s: part %s passes through itself at %.2f", seed, sc.ID, md.Parts[i].Name, m.V[m.T[at[0]][0]])
				}
			}
		}
		if *everyJob || made%7 == 0 {
			ok, err := pulls(so, meshes, []float64{0.5, 2, 10, 100}, 0.06)
			if h := catchHigh(sc); ok == "" && err == nil && h > 0 && h < 1 {
				// a hook so low is passed before the first distance; one still
				// lower is thinned away with the contour
				ok, err = pulls(so, meshes, []float64{h / 2}, solid.TouchMM)
			}
			switch {
			case err != nil:
				t.Errorf("seed %d, %s: %v", seed, sc.ID, err)
			case ok != "" && sc.Verdict != parting.Catches:
				t.Errorf("seed %d, %s is said to be %s but %s", seed, sc.ID, sc.Verdict, ok)
			case ok == "" && sc.Verdict == parting.Catches && sc.Depth > 2 && catchHigh(sc)/2 > 2*ChordTol+solid.TouchMM:
				t.Errorf("seed %d, %s is said to catch by %.2f mm but comes apart", seed, sc.ID, sc.Depth)
			}
			pulled++
			if !md.Section.Round {
				odd++
			}
			if ok != "" {
				stuck++
			}
		}
	}
	t.Logf("%d jobs, %d parts, %d of them searched for places where they meet themselves, %d jobs pulled apart, of which %d are not round and %d stick; %v", made, parts, whole, pulled, odd, stuck, seen)
	if len(seen) < 16 || stuck < 10 || odd < 20 {
		t.Errorf("only %d schemes, %d not round and %d that stick", len(seen), odd, stuck)
	}
}

// soundParts makes and checks every part of a mold.
func soundParts(so *Solids) ([]*solid.Mesh, error) {
	md := so.md
	circle, plan, pot := so.polygon()
	var out []*solid.Mesh
	sum, walls := 0.0, map[solid.Vec]int{}
	for i := range md.Parts {
		p := &md.Parts[i]
		m, err := so.Part(p)
		if err != nil {
			return nil, err
		}
		r := solid.Check(m)
		if !r.Sound() || r.Shells != 1 || r.Genus != p.genus() {
			return nil, fmt.Errorf("part %s: %v, %d shells, genus %d, want %d", p.Name, r.Err(), r.Shells, r.Genus, p.genus())
		}
		p.plan, p.pot = so.shares(p)
		want := p.Volume() * circle
		slack := 0.0 // a dome of few flats is a little less than its cap
		for _, n := range p.Natches {
			want += n.polygonVolume()
			slack += 0.02 * math.Abs(n.polygonVolume())
		}
		if got := m.Volume() / 1000; math.Abs(got-want) > 1e-3*want+slack {
			return nil, fmt.Errorf("part %s: volume %.4f ml, the integral is %.4f", p.Name, got, want)
		}
		sum += p.Volume() * circle
		out = append(out, m)
		for _, v := range m.V {
			walls[v]++
		}
	}
	for i := range md.Parts {
		p := &md.Parts[i]
		if at, ok := so.seamsShared(p, walls); !ok {
			return nil, fmt.Errorf("part %s: the point %.3f of its seam is no vertex of a neighbour", p.Name, at)
		}
	}
	cavity := form.LoopVolume(append(append([]form.Point{}, md.Cavity...), form.Point{R: 0, Z: md.TrimZ})) / 1000
	sum += (cavity + column(md.Opening) + md.DrainVolume()/md.Section.MeanSquare) * pot * circle
	block := md.blockVolume(plan) * circle
	if math.Abs(sum-block) > 1e-3*block {
		return nil, fmt.Errorf("parts, cavity and openings make %.3f ml, the block is %.3f", sum, block)
	}
	return out, nil
}

// seamsShared tells whether every vertex on the edges of a part's seams, all along
// them, is a vertex of a neighbour too: walls counts the parts that have it.
func (s *Solids) seamsShared(p *Part, walls map[solid.Vec]int) (solid.Vec, bool) {
	span := s.span(p)
	last := len(p.Outline) - 1
	at := func(k, step int) solid.Vec {
		q := p.Outline[k]
		switch {
		case q.R == 0:
			return solid.Vec{0, 0, q.Z}
		case k > p.Pot:
			return s.Outside(q.R, q.Z, step%span.Steps)
		}
		return s.Place(q.R, q.Z, step%span.Steps)
	}
	for _, e := range [2][2]int{{0, last}, {p.Pot, p.Pot + 1}} {
		z := p.Outline[e[0]].Z
		if p.Outline[e[1]].Z != z || z <= s.md.Block.ZBottom || z >= s.md.Block.ZTop {
			continue // no level seam, but the foot or the top of the block
		}
		for _, k := range e {
			for step := span.From; step <= span.To; step++ {
				if v := at(k, step); walls[v] < 2 {
					return v, false
				}
			}
		}
	}
	if p.Sector == nil {
		return solid.Vec{}, true
	}
	for k := range p.Outline {
		for _, step := range [2]int{span.From, span.To} {
			if v := at(k, step); walls[v] < 2 {
				return v, false
			}
		}
	}
	return solid.Vec{}, true
}

// blockVolume is the volume in ml of the block as a prism or frusta, less its
// edges and grooves, each by its own formula.
func (md *Mold) blockVolume(plan float64) float64 {
	b := md.Block
	ring := func(r0, r1, h float64) float64 { return math.Pi / 3 * h * (r0*r0 + r0*r1 + r1*r1) }
	v := ring(b.RBottom, b.R, b.seam-b.ZBottom) + ring(b.R, b.RTop, b.ZTop-b.seam)
	lowest, highest, grooves := math.Inf(1), math.Inf(-1), 0
	for i := range md.Parts {
		p := &md.Parts[i]
		lo, hi := p.extent()
		if lo < lowest {
			lowest = lo
			c := math.Min(EdgeMM, (hi-lo)/4)
			v -= ring(b.At(lo), b.At(lo+c), c) - ring(b.At(lo+c)-c/b.most, b.At(lo+c), c)
		}
		if p.Sector != nil && b.grooves && grooves == 0 {
			grooves = len(Grooves(lo, hi))
		}
	}
	for i := range md.Parts {
		p := &md.Parts[i]
		lo, hi := p.extent()
		if hi > highest && hi == b.ZTop {
			highest = hi
			c := math.Min(EdgeMM, (hi-lo)/4)
			v -= ring(b.At(hi), b.At(hi-c), c) - ring(b.At(hi-c)-c/b.most, b.At(hi-c), c)
		}
	}
	// Pappus: the trapezoid of a groove, from the outside inward
	a, g := float64(grooveWide), float64(grooveDeep)
	area := (a + a - 2*g) / 2 * g
	centre := g / 3 * (a + 2*(a-2*g)) / (2*a - 2*g)
	v -= float64(grooves) * 2 * math.Pi * (b.R - centre) * area
	return v * plan / 1000
}

// polygonVolume is the volume of a natch as its mesh has it, to the error of
// its base circle of natchSteps corners.
func (n Natch) polygonVolume() float64 {
	return n.volume() * natchSteps / (2 * math.Pi) * math.Sin(2*math.Pi/natchSteps)
}

// catchHigh is the height in mm of the deepest catch of a scheme, 0 without one.
func catchHigh(sc *parting.Scheme) float64 {
	high, deep := 0.0, 0.0
	for _, p := range sc.Parts {
		for _, c := range p.Catches {
			if c.Depth > deep {
				high, deep = c.ZTo-c.ZFrom, c.Depth
			}
		}
	}
	return high
}

// pulls moves each part in turn by the distances (mm) along its pull; it tells
// where one presses deeper than tol into what is still in place, or "".
func pulls(so *Solids, meshes []*solid.Mesh, distances []float64, tol float64) (string, error) {
	md := so.md
	pos, err := so.positive()
	if err != nil {
		return "", err
	}
	if err := solid.Check(pos).Err(); err != nil {
		return "", err
	}
	bodies := map[string]*solid.Body{}
	for i, m := range meshes {
		bodies[md.Parts[i].Name] = solid.NewBody(m)
	}
	positive := solid.NewBody(pos)
	order, err := md.Order()
	if err != nil {
		return "", err
	}
	for _, name := range order {
		var pull solid.Vec
		for i := range md.Parts {
			if md.Parts[i].Name == name {
				pull = md.Parts[i].Pull
			}
		}
		b := bodies[name]
		delete(bodies, name)
		fixed := []*solid.Body{positive}
		for i := range md.Parts {
			if o := bodies[md.Parts[i].Name]; o != nil {
				fixed = append(fixed, o)
			}
		}
		if ok, hit := solid.PullClear(b, fixed, pull, distances, tol); !ok {
			return fmt.Sprintf("part %s sticks at %g mm, at %.2f", name, hit.DistanceMM, hit.At), nil
		}
	}
	return "", nil
}

// A seam that meets the pot beside the axis: the corners of its small inner edge
// lie in rows far from all others, and no triangle is to join those of one row.
func TestSeamBesideTheAxis(t *testing.T) {
	j := jobtest.Random(rand.New(rand.NewPCG(228, 11)))
	all, base, err := schemesOf(j)
	if err != nil {
		t.Fatal(err)
	}
	for i := range all {
		if all[i].ID != "sides4+lower" {
			continue
		}
		md := Lay(j, base, &all[i])
		md.PlaceNatches(j.Printer.Clearance)
		if _, err := soundParts(NewCoarse(md)); err != nil || md.Parts[0].Outline[0].R > 1 {
			t.Errorf("a seam %.3f mm from the axis: %v", md.Parts[0].Outline[0].R, err)
		}
		return
	}
	t.Fatal("the scheme was not judged")
}
