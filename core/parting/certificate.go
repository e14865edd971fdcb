package parting

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/release"
)

// The certificate of the least number of parts: for every scheme with fewer,
// places that rule it out wherever its parts meet. Let p and q be places on the
// contour, p no later than q, p held from going down and q from going up. A
// lower and an upper part that meet after p leave p to the lower part, which
// catches; and any that meet before leave q to the upper, which does. With side
// parts it is a chain alike, one place for each kind of part in their order along
// the contour. Where no level plane runs outward between q and p, the order of the two
// does not count; and where none does before p, or after it, the chain ends or begins
// with it. Anyone can check such places by looking along the pulls, without trying a
// seam. Places that the half-plane does not show stand among them: in the
// flutes and corners of a section, and in dimples. For side parts these hold as the
// section or the pattern stands turned to their seams (Scheme.Turn): it is turned so
// that they catch least.

// Evidence is one entry of the certificate: a place that a part cannot leave, or
// a part that rubs, of the family of pulls considered.
type Evidence struct {
	Scheme string  `json:"scheme"`
	Part   string  `json:"part"`
	Code   string  `json:"code"` // catch or rub
	R      float64 `json:"r"`    // mm, the plaster that is held
	Z      float64 `json:"z"`
	BlockR float64 `json:"blockR"` // mm, the pot that holds it
	BlockZ float64 `json:"blockZ"`
	Depth  float64 `json:"depth"` // mm; 0 for rub
	Share  float64 `json:"share"` // percent that rubs; 0 for catch
	// Azimuths are those of the two, degrees from the first seam of side parts, as
	// sectors are, or from the section's own beginning where there are none; nil where
	// it is so on every azimuth.
	Azimuths []float64 `json:"azimuths"`
}

// Certificate gives, for every scheme with fewer parts than the chosen one, a
// chain of places that rules it out whatever its seams. Where there is none, since it
// rubs, or since only seams through a dimple or for a cap that would hold nothing but
// what catches are left, it gives each part that does not let go and the deepest place
// where it is held with the seams that serve best.
func (d *Judged) Certificate(all []Scheme, chosen int) []Evidence {
	out := []Evidence{}
	for i := range all {
		sc := &all[i]
		if sc.Count >= all[chosen].Count {
			continue
		}
		if sc.Verdict == Catches {
			if links := d.ledger.heldChain(sc); links != nil {
				for _, c := range links {
					out = append(out, c.evidence(sc))
				}
				continue
			}
		}
		for k := range sc.Parts {
			p := &sc.Parts[k]
			e := Evidence{Scheme: sc.ID, Part: p.Name}
			switch p.Verdict {
			case Catches:
				c := p.worst()
				e.Code, e.R, e.Z, e.BlockR, e.BlockZ, e.Depth = "catch", c.AtR, c.AtZ, c.BlockedAtR, c.BlockedAtZ, c.Depth
			case Rubs:
				e.Code, e.Share = "rub", p.RubShare
			default:
				continue
			}
			out = append(out, e)
		}
	}
	return out
}

// kinds are the kinds of parts in their order along the contour, side parts by
// their first.
func (s *Scheme) kinds() []string {
	var out []string
	if s.Lower {
		out = append(out, "lower")
	}
	if s.Sides > 0 {
		out = append(out, "A")
	}
	if s.Upper {
		out = append(out, "upper")
	}
	return out
}

// held is a place that a part cannot leave: of the half-plane, or at an azimuth.
type held struct {
	spot
	depth  float64
	part   string
	sample *release.Sample // or
	place  *Evidence
}

// evidence is its entry in the certificate of a scheme.
func (h *held) evidence(sc *Scheme) Evidence {
	var e Evidence
	if c := h.sample; c != nil {
		e = Evidence{R: c.P.R, Z: c.P.Z, BlockR: c.Block.R, BlockZ: c.Block.Z}
	} else {
		e = *h.place
		if h.part == "lower" || h.part == "upper" { // the pot is turned against side parts
			e.Azimuths = []float64{degrees((e.Azimuths[0] + sc.Turn) * math.Pi / 180), degrees((e.Azimuths[1] + sc.Turn) * math.Pi / 180)}
		}
	}
	e.Scheme, e.Part, e.Code, e.Depth = sc.ID, h.part, "catch", h.depth
	return e
}

// link is one of a chain.
type link struct {
	least float64 // depth of the shallowest link up to this
	at    *held
	from  *link
}

// heldChain finds, for each kind of part in their order along the contour, a place
// that its pull does not free, such that no seam leaves each of them to a part of
// another kind and the shallowest is as deep as can be; nil where there are none that
// count.
func (l *ledger) heldChain(sc *Scheme) []*held {
	ways := map[string]way{"lower": {pull: release.Down}, "A": {release.Out, sc.Sides, 0}, "upper": {pull: release.Up}}
	if l.planes == nil {
		l.planes = l.outward()
	}
	seams := l.planes
	var best link
	var before []link // rising along the contour and in depth
	kinds := sc.kinds()
	for i, kind := range kinds {
		all, ok := l.held[ways[kind]]
		if !ok {
			all = l.heldBy(ways[kind], kind)
			l.held[ways[kind]] = all
		}
		links := l.links[i][:0]
		if links == nil {
			links = make([]link, 0, len(all))
		}
		var from *link
		ahead := seams
		for k := range all {
			h := &all[k]
			for len(ahead) > 0 && h.after(ahead[0].to) {
				ahead = ahead[1:]
			}
			next := spot{l.end, 0} // the first seam that there can be from here on
			if len(ahead) > 0 {
				next = later(h.spot, ahead[0].from)
			}
			for len(before) > 0 && !before[0].at.after(next) {
				from, before = &before[0], before[1:]
			}
			n := link{h.depth, h, from}
			if i > 0 && len(ahead) > 0 && (len(ahead) > 1 || ahead[0].to.after(h.spot)) { // seams after it
				if from == nil {
					continue
				}
				n.least = min(n.least, from.least)
			} else if from != nil && from.least >= h.depth {
				n.from = from
			} else {
				n.from = nil
			}
			if len(links) == 0 || n.least > links[len(links)-1].least {
				links = append(links, n)
			}
			if last := i+1 == len(kinds); (last || len(ahead) == len(seams) && !h.after(next)) && n.least > best.least &&
				(last || len(seams) == 0 || !h.after(seams[0].from)) {
				best = n
			}
		}
		before, l.links[i] = links, links
	}
	if best.at == nil {
		return nil
	}
	var out []*held
	for n := &best; n != nil; n = n.from {
		out = append(out, n.at)
	}
	slices.Reverse(out)
	return out
}

// outward are the stretches of the contour, and points of it, from which a level plane
// runs outward, in order; those that touch are one.
func (l *ledger) outward() []reach {
	wide := l.outermost()
	out := []reach{}
	add := func(r reach) {
		if n := len(out); n > 0 {
			last := &out[n-1].to
			if !r.from.after(*last) || last.t == 1 && r.from == (spot{last.span + 1, 0}) {
				*last = later(*last, r.to)
				return
			}
		}
		out = append(out, r)
	}
	for i := range l.end {
		if i > 0 && l.seam[i] {
			add(reach{spot{i, 0}, spot{i, 0}})
		}
		for len(wide) > 0 && wide[0].Span == i {
			add(reach{spot{i, wide[0].From}, spot{i, wide[0].To}})
			wide = wide[1:]
		}
	}
	return out
}

// dimplePlaces is of how many places a dimple is told, since a seam may run between
// some of them.
const dimplePlaces = 6

// heldBy are the places that a way holds by what counts, in order along the contour.
func (l *ledger) heldBy(w way, name string) []held {
	samples, deepest := l.s.Samples[w.pull], l.s.Deepest[w.pull][:l.end]
	some := 0
	for _, d := range deepest {
		if d > CatchDepth {
			some++
		}
	}
	out := make([]held, 0, some)
	for i := 0; len(out) < some; i++ { // of each span the deepest
		if c := &samples[i]; c.Depth > CatchDepth && c.Depth == deepest[c.Span] && (len(out) == 0 || out[len(out)-1].span != c.Span) {
			out = append(out, held{spot: spot{c.Span, c.T}, depth: c.Depth, part: name, sample: c})
		}
	}
	known := len(out)
	if a := l.sides[w.sides]; w.pull == release.Out && a.hook > 0 {
		g, _ := l.m.Section.Turned(a.turn).At(a.held.Azimuth)
		for i := range l.end {
			p, at := l.m.Pts[i], spot{i, 0}
			if q := l.m.Pts[i+1]; q.R > p.R {
				p, at.t = q, 1
			}
			if d := a.hook * p.R; d > CatchDepth {
				out = append(out, held{spot: at, depth: d, part: sideName(a.part), place: &Evidence{R: p.R * g, Z: p.Z, BlockR: p.R * a.held.BlockR, BlockZ: p.Z,
					Azimuths: []float64{degrees(a.held.Azimuth), degrees(a.held.BlockAzimuth)}}})
			}
		}
	}
	turn := 0.0
	if w.pull == release.Out {
		turn = l.sides[w.sides].turn
	}
	for _, e := range l.extra[w] {
		if e.held == nil || e.catch.Depth <= CatchDepth {
			continue
		}
		part, b := name, e.held.Rim
		if w.pull == release.Out {
			part = sideName(e.part)
		}
		for k := range dimplePlaces {
			h, depth := e.held.Held(float64(k) / dimplePlaces)
			span, r := l.m.Outermost(h[2])
			if span < 0 || span >= l.end || depth <= CatchDepth {
				continue
			}
			p := l.m.Pts[span]
			at := spot{span, form.Point{R: r, Z: h[2]}.Dist(p) / p.Dist(l.m.Pts[span+1])}
			out = append(out, held{spot: at, depth: depth, part: part, place: &Evidence{R: math.Hypot(h[0], h[1]), Z: h[2], BlockR: math.Hypot(b[0], b[1]), BlockZ: b[2],
				Azimuths: []float64{degrees(math.Atan2(h[1], h[0]) + turn), degrees(math.Atan2(b[1], b[0]) + turn)}}})
		}
	}
	if len(out) > known {
		slices.SortStableFunc(out, func(a, b held) int {
			switch {
			case a.after(b.spot):
				return 1
			case b.after(a.spot):
				return -1
			}
			return 0
		})
	}
	return out
}

// sideName is the letter of a side part.
func sideName(part int) string { return string(rune('A' + part)) }

// degrees is an angle in degrees, from 0 up to a full turn.
func degrees(a float64) float64 {
	d := math.Mod(a*180/math.Pi, 360)
	if d < 0 {
		d += 360
	}
	return d
}
