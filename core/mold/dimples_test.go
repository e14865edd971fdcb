package mold

import (
	"fmt"
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/parting"
	"moldwright/core/release"
	"moldwright/core/solid"
)

// dimpled are invented pots with dimples, each for one place where they may lie.
var dimpled = []struct {
	name    string
	nodes   []job.Node
	dimples job.Dimples
	section job.Section
	scheme  string
	heights []float64 // of partings, where they are set
	left    int       // rows left out
}{
	{"straight wall", []job.Node{c(0, 0), c(30, 0), c(42, 96)}, job.Dimples{Around: 12, Heights: []float64{30, 50, 70}, Diameter: 10, Depth: 1.5}, job.Section{}, "sides3+lower", nil, 0},
	{"belly", []job.Node{c(0, 0), c(25, 0), {R: 45, Z: 45}, {R: 30, Z: 90}, c(34, 110)}, job.Dimples{Around: 9, Heights: []float64{30, 60}, Diameter: 9, Depth: 2}, job.Section{}, "sides3+lower", nil, 0},
	{"half balls", []job.Node{c(0, 0), c(30, 0), c(35, 80)}, job.Dimples{Around: 2, Heights: []float64{40}, Diameter: 12, Depth: 6}, job.Section{}, "sides2+lower", nil, 0},
	{"across side seams", []job.Node{c(0, 0), c(30, 0), c(35, 80)}, job.Dimples{Around: 7, Heights: []float64{40}, Diameter: 20, Depth: 1.5}, job.Section{}, "sides3+lower", nil, 0},
	{"across a parting", []job.Node{c(0, 0), c(20, 0), {R: 48, Z: 55}, c(30, 100)}, job.Dimples{Around: 8, Heights: []float64{53}, Diameter: 16, Depth: 1}, job.Section{}, "two", []float64{57}, 0},
	{"over an edge", []job.Node{c(0, 0), c(30, 0), c(45, 50), c(36, 100)}, job.Dimples{Around: 8, Heights: []float64{20, 47}, Diameter: 16, Depth: 1}, job.Section{}, "two", nil, 1},
	{"across both", []job.Node{c(0, 0), c(38, 0), c(44, 80)}, job.Dimples{Around: 7, Heights: []float64{38}, Diameter: 22, Depth: 1.5}, job.Section{}, "sides3+lower", []float64{36}, 0},
	{"shallow, one part", []job.Node{c(0, 0), c(30, 0), c(60, 60)}, job.Dimples{Around: 10, Heights: []float64{20, 40}, Diameter: 9, Depth: 0.9}, job.Section{}, "one", nil, 0},
	{"oval", []job.Node{c(0, 0), c(36, 0), c(40, 80)}, job.Dimples{Around: 6, Heights: []float64{40}, Diameter: 12, Depth: 1.5}, job.Section{Kind: job.SectionOval, Ratio: 0.75}, "sides2+lower", nil, 0},
	{"rows that run into one another", []job.Node{c(0, 0), c(30, 0), c(42, 96)}, job.Dimples{Around: 12, Heights: []float64{30, 35, 94}, Diameter: 10, Depth: 1.5}, job.Section{}, "sides3+lower", nil, 2},
}

// dimpledMold lays one out.
func dimpledMold(t *testing.T, k int) (*job.Job, *Mold, *Base) {
	t.Helper()
	d := &dimpled[k]
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = d.nodes
	j.Form.Section = d.section
	if d.section.Kind == "" {
		j.Form.Section.Kind = job.SectionRound
	}
	j.Form.Section.Dimples = &d.dimples
	j.Mold.PartingHeights = d.heights
	m, err := form.Build(&j)
	if err != nil {
		t.Fatal(err)
	}
	all, base, err := schemesOf(&j)
	if err != nil {
		t.Fatal(err)
	}
	if d.heights != nil {
		m.Cut(d.heights)
		all = parting.Judge(release.New(m), len(m.Pts)-1, parting.RulesOf(&j), parting.Wanted{Heights: d.heights})
		base = NewBase(m, len(m.Pts)-1, all, nil)
	}
	i := parting.Index(all, d.scheme)
	if i < 0 {
		t.Fatalf("no scheme %s", d.scheme)
	}
	md := Lay(&j, base, &all[i])
	md.PlaceNatches(j.Printer.Clearance)
	return &j, md, base
}

// circle is the share of a circle's area that chords between the steps enclose.
func (s *Solids) circle() float64 {
	sum := 0.0
	for i := range s.Turn.Steps() {
		sum += math.Sin((s.Turn.Deg(i+1) - s.Turn.Deg(i)) * math.Pi / 180)
	}
	return sum / (2 * math.Pi)
}

// Every part and the cast of a pot with dimples is closed and passes nowhere
// through itself, every vertex on the cavity is one of the pot's, the dimples
// take the volume of their integral, and no triangle in them lies farther from
// ball and wall than the stated chord error.
func TestDimpledSolids(t *testing.T) {
	for k, d := range dimpled {
		t.Run(d.name, func(t *testing.T) {
			_, md, _ := dimpledMold(t, k)
			if got := md.DimplesLeft(); len(got) != d.left {
				t.Errorf("left out: %v", got)
			}
			so := md.Solids()
			check := func(name string, make func() (*solid.Mesh, error)) *solid.Mesh {
				m, err := make()
				if err != nil {
					t.Fatalf("%s: %v", name, err)
				}
				if r := solid.Check(m); !r.Sound() || r.Shells != 1 {
					t.Errorf("%s: %v, %d shells", name, r.Err(), r.Shells)
				}
				if bad, at := solid.SelfIntersects(m); bad {
					t.Errorf("%s passes through itself at %.3f", name, m.V[m.T[at[0]][0]])
				}
				return m
			}
			pot := check("pot", so.positive)
			of := map[solid.Vec]bool{}
			for _, v := range pot.V {
				of[v] = true
			}
			triangles, walls := len(pot.T), map[solid.Vec]int{}
			for i := range md.Parts {
				p := &md.Parts[i]
				m := check(p.Name, func() (*solid.Mesh, error) { return so.Part(p) })
				triangles += len(m.T)
				own := map[solid.Vec]bool{}
				for _, v := range m.V {
					own[v] = true
					walls[v]++
				}
				span, missing := so.span(p), 0
				for _, q := range p.Outline[:p.Pot+1] {
					for step := span.From; step <= span.To && q.R > 0; step++ {
						if v := so.Place(q.R, q.Z, step); !own[v] || !of[v] {
							missing++
						}
					}
				}
				if missing > 0 {
					t.Errorf("%s: %d points of its wall are not both its own and the pot's", p.Name, missing)
				}
				want := p.Volume() * so.circle()
				if md.Section.Round && md.Block.Facets == 0 {
					if got := m.Volume() / 1000; math.Abs(got-want) > 2e-3*want {
						t.Errorf("%s: %.3f ml, the integral is %.3f", p.Name, got, want)
					}
				}
			}
			for i := range md.Parts {
				if at, ok := so.seamsShared(&md.Parts[i], walls); !ok {
					t.Errorf("%s: the point %.3f of its seam is no vertex of a neighbour", md.Parts[i].Name, at)
				}
			}
			// the dimples alone: the pot with them and without on one grid
			plain := *so
			plain.Place = func(r, z float64, i int) solid.Vec { return so.Turn.Round(r*so.section[i%so.Turn.Steps()], z, i) }
			bare, err := plain.positive()
			if err != nil {
				t.Fatal(err)
			}
			got, want := (bare.Volume()-pot.Volume())/1000, md.DimpleVolume(nil, math.Inf(-1), math.Inf(1))
			if math.Abs(got-want) > 0.02*want || got < 0.01 {
				t.Errorf("the dimples take %.4f ml, their integral is %.4f", got, want)
			}
			far, at := so.chordError(pot)
			t.Logf("%d triangles, %d steps, dimples %.4f ml (integral %.4f), chord error %.4f mm at %.2f", triangles, so.Turn.Steps(), got, want, far, at)
			if far > solid.ChordMM {
				t.Errorf("a triangle lies %.4f mm off at %.3f", far, at)
			}
		})
	}
}

// chordError is how far the triangles of the pot lie from the surface that they
// stand for, at their middles and those of their edges: from the ball within
// it, from the wall elsewhere.
func (s *Solids) chordError(m *solid.Mesh) (far float64, where solid.Vec) {
	d := s.md.dimples
	var balls []form.Ball
	low, high := math.Inf(1), math.Inf(-1)
	for i := range d.rows {
		r := &d.rows[i]
		low, high = min(low, d.wall.At(r.lo).Z), max(high, d.wall.At(r.hi).Z)
		for k := range d.Around {
			balls = append(balls, d.ball(d.wall, r.hollowRow, (d.turn+360*float64(k)/float64(d.Around))*math.Pi/180))
		}
	}
	for _, tri := range m.T {
		var p [3]solid.Vec
		for i := range 3 {
			p[i] = m.V[tri[i]]
		}
		for _, w := range [4][3]float64{{1. / 3, 1. / 3, 1. / 3}, {.5, .5, 0}, {0, .5, .5}, {.5, 0, .5}} {
			var q solid.Vec
			for i := range 3 {
				q[i] = w[0]*p[0][i] + w[1]*p[1][i] + w[2]*p[2][i]
			}
			if q[2] < low || q[2] > high {
				continue
			}
			r := d.wall.Pts[0].R
			for i := 1; i < len(d.wall.Pts); i++ {
				a, b := d.wall.Pts[i-1], d.wall.Pts[i]
				if (a.Z-q[2])*(b.Z-q[2]) <= 0 && a.Z != b.Z {
					r = max(r, a.R+(q[2]-a.Z)/(b.Z-a.Z)*(b.R-a.R))
				}
			}
			g, _ := d.wall.Section.At(math.Atan2(q[1], q[0]))
			off := math.Abs(math.Hypot(q[0], q[1]) - r*g)
			for i := range balls {
				b := &balls[i]
				if x := math.Sqrt(max(0, b.Beyond(q)+b.Radius*b.Radius)) - b.Radius; math.Abs(x) < off {
					off = math.Abs(x)
				}
			}
			if off > far && math.Hypot(q[0], q[1]) > r*g*0.5 {
				far, where = off, q
			}
		}
	}
	return far, where
}

// The simulated pull agrees with what was judged of the dimples.
func TestDimpledPull(t *testing.T) {
	for k, d := range dimpled {
		j, md, base := dimpledMold(t, k)
		_ = base
		for _, depth := range []float64{d.dimples.Depth, d.dimples.Diameter / 2.5} {
			t.Run(fmt.Sprintf("%s %.1f", d.name, depth), func(t *testing.T) {
				deep := d.dimples
				deep.Depth = depth
				j.Form.Section.Dimples = &deep
				all, base, err := schemesOf(j)
				if err != nil {
					t.Fatal(err)
				}
				sc := &all[parting.Index(all, d.scheme)]
				md = Lay(j, base, sc)
				so := md.Solids()
				var meshes []*solid.Mesh
				for i := range md.Parts {
					m, err := so.Part(&md.Parts[i])
					if err != nil {
						t.Fatal(err)
					}
					meshes = append(meshes, m)
				}
				stuck, err := pulls(so, meshes, []float64{0.5, 2, 10, 100}, 0.06)
				t.Logf("%s by %.3f: %q", sc.Verdict, sc.Depth, stuck)
				if len(md.DimplesLeft()) > 0 && stuck == "" {
					return // rows left out are judged all the same
				}
				if err != nil || (stuck != "") != (sc.Verdict == parting.Catches) {
					t.Errorf("judged %s by %.3f mm: %q, %v", sc.Verdict, sc.Depth, stuck, err)
				}
			})
		}
	}
}

// Behind dimples in a nearly flat wall the inside of a cast of even wall is that of
// caps as deep as the dimples, of balls larger by the wall; on a pot of small
// radius they are less, since the wall falls away around, and never nothing.
func TestDimplesInTheInside(t *testing.T) {
	const wall, around = 4.0, 6
	for _, r := range []float64{40, 950} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = []job.Node{{R: 0, Z: 0, Corner: true}, {R: r, Z: 0, Corner: true}, {R: r, Z: 60, Corner: true}}
		j.Form.Section.Dimples = &job.Dimples{Around: around, Heights: []float64{30}, Diameter: 8, Depth: 1}
		all, base, err := schemesOf(&j)
		if err != nil {
			t.Fatal(err)
		}
		md := Lay(&j, base, &all[parting.Index(all, "sides2")])
		if len(md.dimples.rows) != 1 {
			t.Fatal(md.DimplesLeft())
		}
		const ball = (4*4 + 1*1) / 2.0
		flat := around * math.Pi * (ball + wall - 1./3) / 1000
		got := md.DimpleInside(form.Inset(md.Cavity, wall), wall)
		t.Logf("radius %g: %.4f ml, on a flat wall %.4f", r, got, flat)
		if r > 900 && math.Abs(got-flat) > 0.02*flat || got > flat || got < 0.5*flat {
			t.Errorf("radius %g: %.4f ml, on a flat wall %.4f", r, got, flat)
		}
	}
}

// Rims as they are drawn lie on the wall and on their balls, as many as there are
// dimples; the arcs of a section run from the wall as deep as the dimples are.
func TestDimplesAreShown(t *testing.T) {
	for k, d := range dimpled {
		_, md, _ := dimpledMold(t, k)
		ds := md.dimples
		rims := md.DimpleRims(0, 360)
		if want := len(ds.rows) * ds.Around; len(rims) != want {
			t.Fatalf("%s: %d rims of %d dimples", d.name, len(rims), want)
		}
		for i, rim := range rims {
			r := &ds.rows[i/ds.Around]
			b := ds.ball(ds.wall, r.hollowRow, (ds.turn+360*float64(i%ds.Around)/float64(ds.Around))*math.Pi/180)
			for _, p := range rim {
				if off := b.Beyond(p); math.Abs(off) > 1e-6*b.Radius*b.Radius {
					t.Fatalf("%s: a rim lies off its ball by %g mm2", d.name, off)
				}
			}
			if rim[0] != rim[len(rim)-1] {
				t.Errorf("%s: a rim is not closed", d.name)
			}
		}
		for i, arc := range md.DimpleArcs() {
			a, c, least := arc[0], arc[len(arc)-1], 0.0
			for _, q := range arc { // how far in from the chord
				u := c.Sub(a)
				least = math.Max(least, math.Abs(u.R*(q.Z-a.Z)-u.Z*(q.R-a.R))/c.Dist(a))
			}
			if least < 0.4*ds.Depth || least > 1.3*ds.Depth {
				t.Errorf("%s, row %d: an arc %.2f mm deep of dimples of %.2f", d.name, i, least, ds.Depth)
			}
		}
	}
}
