package parting

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

// pot tells, in space and without any sweep, whether a place is pot: within the
// section at its azimuth, the section turned by turn (radians), and in no dimple.
func (w *spaced) pot(p form.Vec3) bool {
	r := math.Hypot(p[0], p[1])
	a := math.Atan2(p[1], p[0])
	g, _ := w.m.Section.At(a - w.turn)
	n := 0
	body := append(append([]form.Point{}, w.m.Pts...), form.Point{R: 0, Z: w.m.Rim().Z})
	for i := range len(body) - 1 {
		p0, p1 := body[i], body[i+1]
		if (p0.Z > p[2]) != (p1.Z > p[2]) && g*(p0.R+(p[2]-p0.Z)/(p1.Z-p0.Z)*(p1.R-p0.R)) > r {
			n++
		}
	}
	if n%2 == 0 {
		return false
	}
	for _, b := range w.balls {
		if math.Hypot(math.Hypot(p[0]-b[0], p[1]-b[1]), p[2]-b[2]) < b[3] {
			return false
		}
	}
	return true
}

type spaced struct {
	m     *form.Meridian
	turn  float64
	balls [][4]float64
}

// newSpaced lays out the pot of a scheme, dimples as balls by hand on a straight wall
// of a round pot.
func newSpaced(m *form.Meridian, s *Scheme) *spaced {
	w := &spaced{m: m, turn: s.Turn * math.Pi / 180}
	if d := m.Dimples; d != nil {
		r := (d.Diameter*d.Diameter/4 + d.Depth*d.Depth) / (2 * d.Depth)
		for _, z := range d.Heights {
			span, at := m.Outermost(z)
			p, q := m.Pts[span], m.Pts[span+1]
			l := p.Dist(q)
			nr, nz := (q.Z-p.Z)/l, -(q.R-p.R)/l
			for k := range d.Around {
				sin, cos := math.Sincos(2*math.Pi*float64(k)/float64(d.Around) + w.turn)
				far := at + (r-d.Depth)*nr
				w.balls = append(w.balls, [4]float64{far * cos, far * sin, z + (r-d.Depth)*nz, r})
			}
		}
	}
	return w
}

// heldFrom tells whether pot stands along the pull from a place just beside the one
// that the evidence names, which is none itself.
func (w *spaced) heldFrom(e Evidence, pull [3]float64) (empty, held bool) {
	a := e.Azimuths[0] * math.Pi / 180
	sin, cos := math.Sincos(a)
	at := form.Vec3{e.R * cos, e.R * sin, e.Z}
	// off the wall: the emptiest way of those around
	const off = 1e-3
	for k := range 26 {
		i := k + k/13
		way := form.Vec3{float64(i%3 - 1), float64(i/3%3 - 1), float64(i/9 - 1)}
		l := math.Sqrt(way[0]*way[0] + way[1]*way[1] + way[2]*way[2])
		p := form.Vec3{at[0] + off*way[0]/l, at[1] + off*way[1]/l, at[2] + off*way[2]/l}
		if w.pot(p) {
			continue
		}
		empty = true
		for t := 0.0; t < 40; t += 0.02 {
			if w.pot(form.Vec3{p[0] + t*pull[0], p[1] + t*pull[1], p[2] + t*pull[2]}) {
				return true, true
			}
		}
	}
	return empty, false
}

// Random pots with a section or with dimples: what catches within them and rules a
// scheme out is told by a real place, with azimuth and depth, that rays in space find
// held; and a scheme that catches has a chain of such places, nearly always: now and
// then a seam through a dimple leaves each of the places tried to the other part.
func TestCertificateInSectionsAndDimples(t *testing.T) {
	n := uint64(600)
	if testing.Short() {
		n = 60
	}
	placed, chained, lone := map[string]int{}, 0, 0
	for k := range n {
		j := unlike(k)
		g := formtest.Rand(41, k)
		kind := "section"
		switch g.IntN(3) {
		case 0:
			j.Form.Section = job.Section{Kind: job.SectionFlutes, Count: 3 + g.IntN(14), Depth: 2 + 14*g.Float64()}
		case 1:
			j.Form.Section = job.Section{Kind: job.SectionPolygon, Count: 3 + g.IntN(7), Rounding: 60 * g.Float64()}
		}
		if k%4 > 0 {
			r := 20 + 20*g.Float64()
			lean := 8 * (g.Float64() - 0.3)
			j.Form.Outer = []job.Node{corner(0, 0), corner(r, 0), corner(r+lean, 50), corner(r+lean-6, 90)}
		}
		if k%2 == 1 {
			kind = "dimples"
			wide := 4 + 6*g.Float64()
			j.Form.Section = job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: 3 + g.IntN(6), Heights: []float64{15 + 20*g.Float64()}, Diameter: wide, Depth: wide * (0.05 + 0.4*g.Float64())}}
		}
		d, err := JudgeJob(j, mouth15)
		if err != nil {
			continue
		}
		all := d.Schemes
		for _, e := range d.Certificate(all, len(all)-1) {
			if e.Azimuths == nil {
				continue
			}
			s := &all[Index(all, e.Scheme)]
			var pull [3]float64
			for _, p := range s.Parts {
				if p.Name == e.Part {
					pull = p.Pull
					if p.Sector != nil && (e.Azimuths[0] < p.Sector[0]-1e-6 || e.Azimuths[0] > p.Sector[1]+1e-6) {
						t.Errorf("pot %d: %s, part %s of %v is held at azimuth %.2f", k, s.ID, p.Name, *p.Sector, e.Azimuths[0])
					}
				}
			}
			w := newSpaced(d.M, s)
			if empty, held := w.heldFrom(e, pull); !empty || !held {
				t.Errorf("pot %d: %s, %s at r %.4f z %.4f, %.2f degrees: empty %v, held %v, depth %.4f\n%+v %+v", k, s.ID, e.Part, e.R, e.Z, e.Azimuths[0], empty, held, e.Depth, j.Form.Outer, j.Form.Section)
			}
			placed[kind]++
		}
		for i := range all {
			if all[i].Verdict != Catches || k%4 == 0 { // no caps of slivers, which are not sought
				continue
			}
			if links := d.ledger.heldChain(&all[i]); links == nil {
				lone++
			} else {
				chained++
			}
		}
	}
	t.Logf("%v places with an azimuth; %d schemes ruled out by chains, %d are not", placed, chained, lone)
	if !testing.Short() && (placed["section"] < 20 || placed["dimples"] < 20 || lone*30 > chained) {
		t.Errorf("%v places with an azimuth, %d chains, %d without", placed, chained, lone)
	}
}

// By hand: a hemisphere of a dimple in an upright wall holds a lower part by all its
// depth, at its deepest, behind the rim below it; and an oval of which two halves part
// across its long side hooks nowhere, so that no place has an azimuth.
func TestCertificateOfADimple(t *testing.T) {
	j := potOf(corner(0, 0), corner(40, 0), corner(40, 80))
	j.Form.Section = job.Section{Kind: job.SectionRound, Dimples: &job.Dimples{Around: 4, Heights: []float64{40}, Diameter: 8, Depth: 4}}
	d, err := JudgeJob(j, mouth15)
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, e := range d.Certificate(d.Schemes, Index(d.Schemes, "sides2+lower")) {
		if e.Scheme != "one" {
			continue
		}
		found = true
		if e.Azimuths == nil || math.Abs(e.R-36) > 1e-6 || math.Abs(e.Z-40) > 1e-6 || math.Abs(e.Azimuths[0]) > 1e-9 || math.Abs(e.Depth-4) > 1e-6 ||
			math.Abs(e.BlockR-40) > 1e-6 || math.Abs(e.BlockZ-36) > 1e-6 {
			t.Errorf("got %+v", e)
		}
	}
	if !found {
		t.Error("one part is not ruled out")
	}
}
