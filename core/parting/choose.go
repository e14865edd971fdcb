package parting

import (
	"fmt"
	"math"
	"strings"
)

// Choose picks the scheme to make: of those that are clear the one with the
// fewest parts, then the least rubbing area, then the least plaster. Where
// none is clear it is the one that rubs least; where all catch, the one whose
// deepest catch is shallowest. sides binds the choice to schemes with so many
// side parts, unless it is 0. plaster gives the mass of a scheme's plaster by
// its index.
func Choose(all []Scheme, sides int, plaster func(int) float64) int {
	best := -1
	for i := range all {
		if sides > 0 && all[i].Sides != sides {
			continue
		}
		if best < 0 || preferred(&all[i], &all[best], func() bool { return plaster(i) < plaster(best) }) {
			best = i
		}
	}
	return best
}

func preferred(a, b *Scheme, lessPlaster func() bool) bool {
	if x, y := a.Verdict.rank(), b.Verdict.rank(); x != y {
		return x < y
	}
	switch a.Verdict {
	case Catches:
		if math.Abs(a.Depth-b.Depth) > 1e-3 {
			return a.Depth < b.Depth
		}
	case Rubs:
		if x, y := a.worstShare(), b.worstShare(); math.Abs(x-y) > 1 {
			return x < y
		}
	}
	if a.Count != b.Count {
		return a.Count < b.Count
	}
	if math.Abs(a.RubArea-b.RubArea) > 0.01 {
		return a.RubArea < b.RubArea
	}
	return lessPlaster()
}

// worstShare is the greatest percent of a part's surface that rubs.
func (s *Scheme) worstShare() float64 {
	w := 0.0
	for _, p := range s.Parts {
		w = math.Max(w, p.RubShare)
	}
	return w
}

// Index is the place of the scheme with the id, or -1.
func Index(all []Scheme, id string) int {
	for i := range all {
		if all[i].ID == id {
			return i
		}
	}
	return -1
}

// Name tells a scheme's parts in words: "two side parts and a lower part".
func (s *Scheme) Name() string {
	var words []string
	switch {
	case s.Sides > 0:
		words = append(words, Count(s.Sides)+" side parts")
	case !s.Upper && !s.Core:
		return "a lower part alone"
	case s.Upper && !s.Core:
		return "a lower and an upper part"
	}
	if s.Lower {
		words = append(words, "a lower part")
	}
	if s.Upper {
		words = append(words, "an upper part")
	}
	if s.Core {
		words = append(words, "a core")
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return words[0]
}

// Count is a small number in words.
func Count(n int) string {
	words := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight"}
	if n >= 0 && n < len(words) {
		return words[n]
	}
	return fmt.Sprint(n)
}

// WhyNotFewer tells, for each scheme with fewer parts than the chosen one,
// what stands against it.
func WhyNotFewer(all []Scheme, chosen int) string {
	c := &all[chosen]
	var lines []string
	for i := range all {
		s := &all[i]
		if s.Count < c.Count && i != chosen {
			lines = append(lines, upperFirst(s.Name())+": "+s.Against()+".")
		}
	}
	switch {
	case c.Count == 1:
		return "One part is the fewest there can be."
	case len(lines) == 0:
		return "No scheme has fewer parts."
	}
	return strings.Join(lines, " ")
}

// Against tells what stands against a scheme, or that nothing does.
func (s *Scheme) Against() string {
	var worst *Part
	for i := range s.Parts {
		p := &s.Parts[i]
		if worst == nil || p.Verdict.rank() > worst.Verdict.rank() ||
			p.Verdict == worst.Verdict && (p.deepest() > worst.deepest() || p.deepest() == worst.deepest() && p.RubShare > worst.RubShare) {
			worst = p
		}
	}
	who := "the " + worst.Name + " part"
	if worst.Sector != nil {
		who = "each side part"
	}
	switch worst.Verdict {
	case Catches:
		c := worst.worst()
		where := fmt.Sprintf("from %.1f to %.1f mm", c.ZFrom, c.ZTo)
		if c.ZTo-c.ZFrom < 0.1 {
			where = fmt.Sprintf("at %.1f mm", c.ZFrom)
		}
		text := fmt.Sprintf("%s catches by %.2f mm %s above the foot, behind what stands at %.1f mm", who, c.Depth, where, c.BlockedAtZ)
		if c.ClayForgives {
			text += " (the shrunken clay would let go, the rigid positive does not)"
		}
		return text
	case Rubs:
		return fmt.Sprintf("%s rubs on %.0f %% of its surface (%.0f cm²)", who, worst.RubShare, worst.RubArea)
	}
	return "it lets go as well"
}

// worst is the deepest catch of a part.
func (p *Part) worst() Catch {
	var worst Catch
	for _, c := range p.Catches {
		if c.Depth > worst.Depth {
			worst = c
		}
	}
	return worst
}

func (p *Part) deepest() float64 { return p.worst().Depth }

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// Evidence is one entry of the certificate that no fewer parts do: the place
// that rules a scheme out, of the family of pulls considered.
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

// Certificate gives, for every scheme with fewer parts than the chosen one,
// each part that does not let go and the deepest place where it is held.
func Certificate(all []Scheme, chosen int) []Evidence {
	out := []Evidence{}
	for i := range all {
		s := &all[i]
		if s.Count >= all[chosen].Count {
			continue
		}
		for k := range s.Parts {
			p := &s.Parts[k]
			e := Evidence{Scheme: s.ID, Part: p.Name}
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
