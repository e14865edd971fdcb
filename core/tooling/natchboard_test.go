package tooling

import (
	"strings"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// Where a core lies on an upper part, the upper part has sockets, the core the
// domes, and a ring has domes as large as the sockets: it is sound, shares no
// space with the upper part, its positive or its cottle, comes straight off the
// plaster, and its domes fill the sockets.
func TestRingFormsTheSocketsUnderACore(t *testing.T) {
	found := 0
	for _, of := range []struct {
		section job.Section
		rim     float64 // mm
		keys    int
	}{{job.Section{Kind: job.SectionRound}, 45, 3}, {job.Section{Kind: job.SectionOval, Ratio: 0.7}, 45, 3}, {job.Section{Kind: job.SectionRound}, 6, 1}, {job.Section{Kind: job.SectionRound}, 2.8, 0}} {
		j := job.Defaults()
		j.Form.Size, j.Form.Section = job.SizeMold, of.section
		j.Form.Outer = []job.Node{c(0, 0), c(30, 0), s(60, 40), c(of.rim, 90)}
		j.Form.Inner = []job.Node{c(0, 12), c(of.rim/6, 12), c(of.rim-2, 90)}
		all, lay := laid(&j)
		for k := range all {
			if !all[k].Upper || !all[k].Core {
				continue
			}
			md := lay(k)
			so := mold.NewCoarse(md)
			var upper, core *mold.Part
			for i := range md.Parts {
				switch md.Parts[i].Name {
				case "upper":
					upper = &md.Parts[i]
				case "core":
					core = &md.Parts[i]
				}
			}
			sockets := 0
			for _, n := range upper.Natches {
				if n.Seam == mold.Above {
					if !n.Socket {
						t.Errorf("%s: a dome on the open face of the upper part", md.Scheme.ID)
					}
					sockets++
				}
			}
			for _, n := range core.Natches {
				if n.Socket {
					t.Errorf("%s: a socket in the core", md.Scheme.ID)
				}
			}
			m, err := so.Part(upper)
			if err != nil {
				t.Fatal(err)
			}
			plaster := solid.NewBody(m)
			var ring *solid.Body
			var others []*solid.Body
			var in *solid.Mesh
			note := ""
			for _, p := range Kit(&j, md) {
				if p.Part != "upper" {
					continue
				}
				m, rows, err := p.Mesh(so)
				if err != nil {
					t.Fatal(p.Name, err)
				}
				if p.Name != "upper natch ring" {
					others = append(others, solid.NewBody(inMold(m, rows)))
					continue
				}
				found++
				note = p.Note.In(words.English)
				sound(t, md.Scheme.ID+", "+p.Name, m)
				if got := steepest(m); got > 45.001 || p.Draft < j.Rules.LeastDraft {
					t.Errorf("%s: overhang %.1f, draft %.1f", p.Name, got, p.Draft)
				}
				// each dome reaches the bottom of its socket
				in = inMold(m, rows)
				domes := 0
				for _, n := range upper.Natches {
					if n.Seam != mold.Above {
						continue
					}
					sin, cos := solid.SinCosDeg(n.Azimuth)
					deep := solid.Vec{n.At.R * cos, n.At.R * sin, n.At.Z - solid.DomeHeight(n.Radius, n.HalfAngle)}
					for _, v := range in.V {
						if norm(minus(v, deep)) < 1e-6 {
							domes++
							break
						}
					}
				}
				if domes != sockets || domes < 2 {
					t.Errorf("%s: %d domes for %d sockets", md.Scheme.ID, domes, sockets)
				}
				ring = solid.NewBody(in)
				if ok, hit := solid.PullClear(plaster, []*solid.Body{ring}, solid.Vec{0, 0, -1}, []float64{0.5, 2, 10, 100}, 0.05); !ok {
					t.Errorf("%s sticks at %g mm", p.Name, hit.DistanceMM)
				}
			}
			if ring == nil {
				t.Fatalf("%s: no ring for %d sockets", md.Scheme.ID, sockets)
			}
			for _, o := range append(others, plaster) {
				if hit, at := solid.Overlap(o, ring, 0.02); hit {
					t.Errorf("%s: the ring shares space at %.2f", md.Scheme.ID, at)
				}
			}
			if base, _ := positive(&j, md, upper, false); len(base.plug) != of.keys {
				t.Errorf("%s, rim of %g mm: %d keys, want %d", md.Scheme.ID, of.rim, len(base.plug), of.keys)
			}
			if by := strings.Contains(note, "keys fit one way only"); by != (of.keys > 0) {
				t.Errorf("%s, %d keys: %s", md.Scheme.ID, of.keys, note)
			}
			for deg := 15.0; of.keys > 0 && deg < 360; deg += 15 { // no way but its own
				turned := in.Clone()
				turned.RotateZ(deg)
				held := false
				for _, o := range others {
					hit, _ := solid.Overlap(o, solid.NewBody(turned), 0.02)
					held = held || hit
				}
				if !held {
					t.Errorf("%s: the ring sits turned by %g degrees too", md.Scheme.ID, deg)
				}
			}
		}
	}
	if found < 8 {
		t.Errorf("only %d rings", found)
	}
}
