package mold

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/parting"
	"moldwright/core/release"
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
	m, err := form.Build(&j)
	if err != nil {
		t.Fatal(err)
	}
	_, maxR := m.Extent()
	end := len(m.Pts) - 1
	if m.Closed {
		end = m.CutMouth(MouthRadius(&j, maxR))
	}
	six := 6
	j.Mold.Sides = &six
	all := parting.Judge(release.New(m), end, parting.RulesOf(&j), parting.Wanted{Sides: 6})
	base := NewBase(m, end, all)
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

// Every part of every scheme is a sound solid whose volume is the meridian
// integral to 0.1 %, natches apart, and the parts, the cavity and the opening
// fill the block.
func TestPartsAreSoundAndFillTheBlock(t *testing.T) {
	for name, nodes := range pots {
		staves := 2 - len(name)%2
		laid(t, nodes, staves, func(j *job.Job, md *Mold) {
			so := NewSolids(md)
			sum := 0.0
			for i := range md.Parts {
				p := &md.Parts[i]
				m, err := so.Part(p)
				if err != nil {
					t.Errorf("%s, %s: %v", name, md.Scheme.ID, err)
					return
				}
				r := solid.Check(m)
				if !r.Sound() || r.Shells != 1 || r.Genus != p.genus() {
					t.Errorf("%s, %s, part %s: %v, %d shells, genus %d, want %d", name, md.Scheme.ID, p.Name, r.Err(), r.Shells, r.Genus, p.genus())
				}
				if i < 2 { // the other side parts are turns of these
					if bad, at := solid.SelfIntersects(m); bad {
						t.Errorf("%s, %s, part %s passes through itself at triangles %v", name, md.Scheme.ID, p.Name, at)
					}
				}
				natches := 0.0
				for _, n := range p.Natches {
					natches += n.volume()
				}
				if got, want := m.Volume()/1000, p.Volume()+natches; math.Abs(got-want) > 0.001*want {
					t.Errorf("%s, %s, part %s: volume %.3f ml, want %.3f", name, md.Scheme.ID, p.Name, got, want)
				}
				sum += p.Volume()
			}
			loop := append([]form.Point{}, md.Cavity...)
			loop = append(loop, form.Point{R: 0, Z: md.TrimZ})
			sum += form.LoopVolume(loop)/1000 + md.OpeningVolume()
			b := md.Block
			block := form.LoopVolume([]form.Point{{R: 0, Z: b.ZBottom}, {R: b.RBottom, Z: b.ZBottom}, {R: b.R, Z: md.seamZ()}, {R: b.RTop, Z: b.ZTop}, {R: 0, Z: b.ZTop}}) / 1000
			if math.Abs(sum-block) > 1e-9*block {
				t.Errorf("%s, %s: parts and openings make %.3f ml, the block is %.3f", name, md.Scheme.ID, sum, block)
			}
		})
	}
}

// seamZ is the height of the widest place of the block.
func (md *Mold) seamZ() float64 {
	if h := md.Scheme.PartingHeights; len(h) > 0 {
		return h[0]
	}
	return md.Block.ZTop
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
