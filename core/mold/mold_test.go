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
			so := md.Solids()
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

// The mold closes one way only: turning a set of natches about the axis by any
// part of a turn does not bring it onto itself, so no part fits in the place of
// another and no cap fits turned.
func TestClosesOneWayOnly(t *testing.T) {
	for _, nodes := range pots {
		laid(t, nodes, 2, func(_ *job.Job, md *Mold) {
			type place struct{ az, z float64 }
			level, upright := map[float64][]place{}, []place{}
			for i := range md.Parts {
				for _, n := range md.Parts[i].Natches {
					switch {
					case n.Socket:
					case n.Seam == Above || n.Seam == Below:
						level[n.At.Z] = append(level[n.At.Z], place{n.Azimuth, n.At.Z})
					default:
						upright = append(upright, place{n.Azimuth, n.At.Z})
					}
				}
			}
			onto := func(set []place, turn float64) bool {
				for _, p := range set {
					met := false
					for _, q := range set {
						d := math.Abs(math.Mod(p.az+turn-q.az+540, 360) - 180)
						met = met || d < 1 && math.Abs(p.z-q.z) < 0.5
					}
					if !met {
						return false
					}
				}
				return true
			}
			for turn := 1.0; turn < 359.5; turn++ {
				for z, set := range level {
					if onto(set, turn) {
						t.Errorf("%s: the cap on the seam at %.1f fits when turned by %g degrees", md.Scheme.ID, z, turn)
						return
					}
				}
				if len(upright) > 0 && onto(upright, turn) && len(level) == 0 {
					t.Errorf("%s: side parts fit when turned by %g degrees: %v", md.Scheme.ID, turn, upright)
					return
				}
			}
		})
	}
}
