package exercise

import (
	"moldwright/core/job"
	"moldwright/core/words"
)

// Pots are drawn in whole tenths of a mm, so that every number of a question is
// the same on every processor and reads well on paper. Proportions are those
// of pots that are thrown and cast: feet of a third to a half of the width,
// foot rings of 3 to 5 mm, necks of a third; common practice, no source.

// shaper draws a profile node by node; lengths are tenths of a mm.
type shaper struct {
	*Gen
	nodes []job.Node
}

func (s *shaper) corner(r, z int) {
	s.nodes = append(s.nodes, job.Node{R: float64(r) / 10, Z: float64(z) / 10, Corner: true})
}

func (s *shaper) smooth(r, z int) {
	s.nodes = append(s.nodes, job.Node{R: float64(r) / 10, Z: float64(z) / 10})
}

// share is p percent of the way from a to b.
func share(a, b, p int) int { return a + (b-a)*p/100 }

// flat is a flat foot of radius r.
func (s *shaper) flat(r int) {
	s.corner(0, 0)
	s.corner(r, 0)
}

// ring is a foot of outer radius r on a ring: the recess narrows upward, so
// that a lower part draws out of it.
func (s *shaper) ring(r int) {
	h := s.Between(28, 48)
	in := r - s.Between(32, 48) // inner radius of the ring where it stands
	s.corner(0, h)
	s.corner(in-h*s.Between(35, 60)/100, h)
	s.corner(in, 0)
	s.corner(r, 0)
}

// dovetail is a foot of outer radius r whose recess widens upward by u.
func (s *shaper) dovetail(r, u int) {
	h := s.Between(45, 70)
	in := r - s.Between(62, 85)
	s.corner(0, h)
	s.corner(in+u, h)
	s.corner(in, 0)
	s.corner(r, 0)
}

// foot is a flat foot or one on a ring.
func (s *shaper) foot(r int) {
	if s.Int(3) == 0 {
		s.flat(r)
	} else {
		s.ring(r)
	}
}

// through bends the wall between (r0, z0) and (r1, z1) through one smooth node.
func (s *shaper) through(r0, z0, r1, z1, pr, pz int) {
	s.smooth(share(r0, r1, pr), share(z0, z1, pz))
}

// adjectives and places that no workshop owns; each is a key of the catalogs.
var firstNames = []words.Template{"Harbour", "Larch", "Pebble", "Thistle", "Quarry", "Heron", "Moss", "Lantern", "Willow", "Kestrel",
	"Orchard", "Driftwood", "Bramble", "Granary", "Meadow", "Chalk", "Fern", "Sparrow", "Tide", "Juniper"}

// drawn is a pot as drawn, with its name in every language; the job has it in
// English.
type drawn struct {
	*job.Job
	name words.Text
}

// look surveys the pot; see lookAt.
func (d drawn) look(heights ...float64) (*look, error) {
	l, err := lookAt(d.Job, heights...)
	if err == nil {
		l.name = d.name
	}
	return l, err
}

// pot is the job of a drawn profile: given at mold size, so that all heights
// are those of the drawing, and with rules that a question can state in one
// line.
func (s *shaper) pot(name string) drawn {
	j := job.Defaults()
	called := say("pot."+name, "first", firstNames[s.Int(len(firstNames))].With())
	j.Name = called.In(words.English)
	j.Form.Size = job.SizeMold
	j.Form.Outer = s.nodes
	j.Rules = job.Rules{LeastDraft: 1, RubShare: 10}
	return drawn{&j, called}
}
