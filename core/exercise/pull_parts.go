package exercise

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/parting"
	"moldwright/core/release"
)

// The parts of kind pull: which stretch of the contour each holds, how it stands
// to every pull, and its outline.

type pullPart struct {
	id     string // p, q, r
	a, b   int    // holds the contour between these points
	sides  int    // of how many side parts it is one; 0 goes all round
	ways   []way
	answer []string
}

// way is how a part stands to a pull.
type way struct {
	pull    release.Pull
	verdict parting.Verdict
	caught  []stretch
	depth   float64
	share   float64 // percent that rubs
}

func (l *look) pullPart(a, b, sides int) pullPart {
	p := pullPart{a: a, b: b, sides: sides}
	best := parting.Catches
	for _, pull := range release.Pulls {
		if pull == release.Out && sides == 0 {
			continue
		}
		w := way{pull: pull, verdict: parting.Clear, caught: l.caught(pull, a, b)}
		w.depth = deepest(w.caught)
		n := 0
		if pull == release.Out {
			n = sides
		}
		w.share, _ = l.share(pull, n, a, b)
		switch {
		case w.depth > 0:
			w.verdict = parting.Catches
		case w.share > l.rules.RubShare:
			w.verdict = parting.Rubs
		}
		if w.verdict == parting.Clear || w.verdict == parting.Rubs && best == parting.Catches {
			best = w.verdict
		}
		p.ways = append(p.ways, w)
	}
	for _, w := range p.ways {
		if w.verdict == best && best != parting.Catches {
			p.answer = append(p.answer, pullIDs[w.pull])
		}
	}
	if len(p.answer) == 0 {
		p.answer = []string{noneID}
	}
	return p
}

// ofScheme are the parts of a judged scheme, one side part for all.
func (l *look) ofScheme(s *parting.Scheme) *pullTask {
	t := &pullTask{look: l}
	if s.Lower {
		t.parts = append(t.parts, l.pullPart(0, s.K1, 0))
	}
	if s.Sides > 0 {
		t.parts = append(t.parts, l.pullPart(s.K1, s.K2, s.Sides))
	}
	if s.Upper {
		t.parts = append(t.parts, l.pullPart(s.K2, l.end, 0))
	}
	return t
}

// split are a lower and an upper part that meet at height z; sides tells that
// the upper one is one of so many side parts.
func split(j drawn, z float64, sides int) *pullTask {
	l, err := j.look(z)
	if err != nil {
		return nil
	}
	for k := 1; k < l.end; k++ {
		if math.Abs(l.m.Pts[k].Z-z) < 0.01 && l.s.OpenOutward(k) {
			return &pullTask{look: l, parts: []pullPart{l.pullPart(0, k, 0), l.pullPart(k, l.end, sides)}}
		}
	}
	return nil
}

// outline is the part cut by the half-plane, in a block with 25 mm of plaster.
func (t *pullTask) outline(p *pullPart) []form.Point {
	const plaster = 25
	var out []form.Point
	for i := p.a; i <= p.b; i++ { // but for points that other schemes' seams put into straight stretches
		if i == p.a || i == p.b || t.m.Corner[i] || t.m.Spans[i-1].A0 != t.m.Spans[i].A1 {
			out = append(out, t.m.Pts[i])
		}
	}
	far := t.maxR + plaster
	top, bottom := t.m.Pts[p.b].Z, t.m.Pts[p.a].Z
	if p.b == t.end {
		top = math.Max(t.height, top)
		if t.m.Pts[p.b].Z < top || t.m.Closed {
			top += plaster
		}
		out = append(out, form.Point{R: t.m.Pts[p.b].R, Z: top})
	}
	if p.a == 0 {
		bottom = -plaster
	}
	out = append(out, form.Point{R: far, Z: top}, form.Point{R: far, Z: bottom})
	if p.a == 0 {
		out = append(out, form.Point{R: 0, Z: bottom})
	}
	return out
}
