package parting

import (
	"slices"

	"moldwright/core/release"
)

// The certificate of the least number of parts: for every scheme with fewer,
// places that rule it out wherever its parts meet. Let p and q be places on the
// contour, p no later than q, p held from going down and q from going up. A
// lower and an upper part that meet after p leave p to the lower part, which
// catches; and any that meet before leave q to the upper, which does. With side
// parts it is a chain alike, one place for each kind of part in their order along
// the contour. Anyone can check such places by looking along the pulls, without
// trying a seam.

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
}

// Certificate gives, for every scheme with fewer parts than the chosen one, a
// chain of places that rules it out whatever its seams. Where there is none,
// since it rubs, hooks within its section, or meets no level plane that runs
// outward, it gives each part that does not let go and the deepest place where
// it is held with the seams that serve best.
func Certificate(s *release.Survey, end int, all []Scheme, chosen int) []Evidence {
	out := []Evidence{}
	for i := range all {
		sc := &all[i]
		if sc.Count >= all[chosen].Count {
			continue
		}
		links := []*release.Sample(nil)
		if sc.Verdict == Catches {
			links = heldChain(s, end, sc)
		}
		names := sc.kinds()
		for k, c := range links {
			out = append(out, Evidence{Scheme: sc.ID, Part: names[k], Code: "catch",
				R: c.P.R, Z: c.P.Z, BlockR: c.Block.R, BlockZ: c.Block.Z, Depth: c.Depth})
		}
		if links != nil {
			continue
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

// heldChain finds, for each kind of part in their order along the contour, a place
// that its pull does not free, none on an earlier span than the one before,
// such that the shallowest of them is as deep as can be; nil where there are
// none that count.
func heldChain(s *release.Survey, end int, sc *Scheme) []*release.Sample {
	pulls := map[string]release.Pull{"lower": release.Down, "A": release.Out, "upper": release.Up}
	type link struct {
		least float64 // depth of the shallowest link up to this
		at    *release.Sample
		from  *link
	}
	var best []link // by the span that a chain of the kinds so far reaches at most
	for _, kind := range sc.kinds() {
		deepest := make([]*release.Sample, end)
		samples := s.Samples[pulls[kind]]
		for i := range samples {
			if c := &samples[i]; c.Span < end && c.Depth > CatchDepth && (deepest[c.Span] == nil || c.Depth > deepest[c.Span].Depth) {
				deepest[c.Span] = c
			}
		}
		next := make([]link, end)
		for i := range next {
			if i > 0 {
				next[i] = next[i-1]
			}
			c := deepest[i]
			if c == nil {
				continue
			}
			l := link{least: c.Depth, at: c}
			if best != nil {
				l.from, l.least = &best[i], min(l.least, best[i].least)
			}
			if l.least > next[i].least {
				next[i] = l
			}
		}
		best = next
	}
	if len(best) == 0 || best[end-1].least <= CatchDepth {
		return nil
	}
	var out []*release.Sample
	for l := &best[end-1]; l != nil; l = l.from {
		out = append(out, l.at)
	}
	slices.Reverse(out)
	return out
}
