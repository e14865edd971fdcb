package tooling

import (
	"math"
	"slices"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// A mark adds the area of its letters times their height to a piece, and
// nothing else: on plates, whole or in sectors, and on the flat outsides of
// staves and collars; on round outsides, less the flat that it stands on. All
// of them stay sound at the meshes' own fineness.
func TestMarksAreRaised(t *testing.T) {
	for _, outside := range []string{job.OutsideRound, job.OutsideStraight} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = pots["jar"]
		j.Plaster.Outside = outside
		layouts(t, &j, func(md *mold.Mold) {
			if md.Scheme.ID != "two" {
				return
			}
			so := md.Solids()
			for i := range md.Parts {
				p := &md.Parts[i]
				plate, _ := positive(&j, md, p, true)
				sector := *plate
				sector.from, sector.to, sector.natches = 90, 180, nil
				ring, wall := collar(&j, md, p), newStave(&j, md, p, 0, slices.Collect(staveCuts(md, 2))[0])
				for _, w := range []struct {
					name  string
					marks *string
					build func(*mold.Solids) (*solid.Mesh, error)
					flat  bool
				}{
					{"plate", &plate.marks, plate.build, true},
					{"sector of a plate", &sector.marks, sector.build, true},
					{"collar", &ring.marks, ring.build, outside != job.OutsideRound},
					{"stave", &wall.marks, wall.build, outside != job.OutsideRound},
				} {
					text := *w.marks
					list, wide := lettering(text)
					area := 0.0
					for _, g := range list {
						for _, l := range g {
							area += loopArea(l)
						}
					}
					var volume [2]float64
					for k, s := range [2]string{"", text} {
						*w.marks = s
						m, err := w.build(so)
						if err != nil {
							t.Fatalf("%s %s: %v", w.name, p.Name, err)
						}
						sound(t, w.name+" "+p.Name, m)
						volume[k] = m.Volume()
					}
					got, want := volume[1]-volume[0], area*markRaised
					slack := 1e-6 * volume[0] // of many more triangles
					if !w.flat {              // the segments under the flat
						slack = flatMost * (wide + 4*markRoom) * wall.top
					}
					if area < 8 || math.Abs(got-want) > slack || got == 0 {
						t.Errorf("%s %s: the mark %q adds %.3f mm3, its letters make %.3f", w.name, p.Name, text, got, want)
					}
				}
			}
		})
	}
}

// Letters stand the right way round for a reader outside: x, y and the normal
// of a mark are a right-handed frame, y leans up or, on a plate, inward.
func TestMarksReadFromOutside(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = pots["jar"]
	layouts(t, &j, func(md *mold.Mold) {
		if md.Scheme.ID != "two" {
			return
		}
		so := md.Solids()
		for i := range md.Parts {
			p := &md.Parts[i]
			way := p.Pull[2]
			plate, _ := positive(&j, md, p, true)
			for k, q := range plate.section {
				if q.edge != rimEdge {
					continue
				}
				s, ok := plate.ringSign(q, plate.section[(k+1)%len(plate.section)], way)
				if !ok || dotted(crossed(s.x, s.y), s.n) < 0.999 || dotted(s.n, p.Pull) < 0.999 || dotted(s.y, s.o) > 0 {
					t.Errorf("%s plate: %+v", p.Name, s)
				}
			}
			ring := collar(&j, md, p)
			for k, q := range ring.section {
				if q.edge != markEdge {
					continue
				}
				f := ring.panel(so, solid.FullTurn(so.Turn.Steps()), q, ring.section[(k+1)%len(ring.section)])
				s := f.sign
				if !f.ok || dotted(crossed(s.x, s.y), s.n) < 0.999 || dotted(s.n, s.o) <= 0 || dotted(s.y, p.Pull) < 0.9 {
					t.Errorf("%s collar: %+v", p.Name, s)
				}
			}
		}
	})
}

// A tray carries its letter on both flanks, whatever the number of side parts.
func TestTraysAreMarked(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = pots["waist"]
	found := 0
	layouts(t, &j, func(md *mold.Mold) {
		if md.Scheme.ID != "sides4" && md.Scheme.ID != "sides2" {
			return
		}
		so := md.Solids()
		for i := range md.Parts {
			tr, _ := newTray(&j, md, &md.Parts[i])
			area := 0.0
			for _, w := range [2]float64{1, -1} {
				s, ok := tr.flankSign(w)
				if !ok {
					continue
				}
				found++
				if dotted(crossed(s.x, s.y), s.n) < 0.999 || dotted(s.y, tr.p.Pull) < 0.999 || dotted(s.n, tr.at(0, w, 0)) < 0.999 {
					t.Errorf("%s: %+v", tr.p.Name, s)
				}
				for _, g := range s.list {
					for _, l := range g {
						area += loopArea(l)
					}
				}
			}
			m, err := tr.build(so)
			if err != nil {
				t.Fatal(err)
			}
			sound(t, md.Scheme.ID, m)
			bare := *tr
			bare.glyphs, bare.wide = lettering("^")
			less, err := bare.build(so) // the arrow alone
			if err != nil {
				t.Fatal(err)
			}
			letter, _ := lettering(tr.p.Name)
			want := 0.0
			for _, l := range letter[0] {
				want += 2 * markRaised * loopArea(l)
			}
			if got := m.Volume() - less.Volume(); math.Abs(got-want) > 0.01*want {
				t.Errorf("tray %s: its letters add %.3f mm3, their outlines make %.3f", tr.p.Name, got, want)
			}
		}
	})
	if found != 12 {
		t.Errorf("%d flanks marked of 12", found)
	}
}

// The plug of a flared spare carries its letter on what stands out of the plaster,
// upright as it stands in the mold and printing without supports, whole and in a
// pot that is not round; its flat stays clear of the plaster.
func TestPlugsAreMarked(t *testing.T) {
	found := 0
	for _, ratio := range []float64{1, 0.8} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = []job.Node{c(0, 4), c(26, 4), c(28, 0), c(34, 0), s(56, 50), c(36, 96)}
		j.Mold.Spare.Flared = true
		j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: ratio}
		layouts(t, &j, func(md *mold.Mold) {
			if !md.PlugApart {
				return
			}
			so := md.Solids()
			p := plugFor(&j, md, nil)[0]
			m, _, err := p.Mesh(so)
			if err != nil {
				t.Fatal(err)
			}
			sound(t, md.Scheme.ID, m)
			if p.Overhang > 45.5 {
				t.Errorf("the plug overhangs by %.1f degrees", p.Overhang)
			}
			plug := plugOf(&j, md, nil)
			for i, f := range plug.panels(so) {
				if !f.ok {
					continue
				}
				found++
				s := f.sign
				if low := plug.section[i].Z; low <= md.Block.ZTop || dotted(crossed(s.x, s.y), s.n) < 0.999 || dotted(s.n, s.o) <= 0 || s.y[2] < 0.9 || s.lean != -1 {
					t.Errorf("%s: %+v from %.2f up", md.Scheme.ID, s, low)
				}
			}
		})
	}
	if found < 6 {
		t.Errorf("only %d plugs are marked", found)
	}
}

// A side board carries the letters of the parts that it serves on its strip beyond
// the back: they add their area times their height and nothing else.
func TestSideBoardsAreMarked(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = pots["waist"]
	found := 0
	layouts(t, &j, func(md *mold.Mold) {
		if md.Scheme.Sides == 0 || md.Scheme.Lower || md.Scheme.Upper {
			return
		}
		tr, _ := newTray(&j, md, &md.Parts[0])
		for _, w := range [2]float64{1, -1} {
			b := sideBoard{tray: tr, w: w, from: tr.lo, to: tr.hi}
			b.near, b.far = b.spanUV()
			m, _, ok := b.mark()
			if !ok || len(m.list) != md.Scheme.Sides+2 || dotted(crossed(m.x, m.y), m.n) < 0.999 || dotted(m.y, md.Parts[0].Pull) < 0 {
				t.Errorf("%s: %+v", md.Scheme.ID, m)
			}
			mesh, err := b.build(md.Solids())
			if err != nil {
				t.Fatal(err)
			}
			sound(t, md.Scheme.ID, mesh)
			area := 0.0
			for _, g := range m.list {
				for _, l := range g {
					area += loopArea(l)
				}
			}
			bare := b.measured(&j, Piece{up: b.way(0, -1)}).Volume * 1000
			if got := mesh.Volume() - bare; math.Abs(got-area*markRaised) > 0.02*area {
				t.Errorf("%s: letters add %.2f mm3, their outlines make %.2f", md.Scheme.ID, got, area*markRaised)
			}
			found++
		}
	})
	if found < 6 {
		t.Errorf("only %d boards", found)
	}
}
