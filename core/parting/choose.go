package parting

import (
	"math"

	"moldwright/core/words"
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
func (s *Scheme) Name() words.Text {
	if s.Sides == 0 && !s.Core {
		if s.Upper {
			return words.Say("a lower and an upper part")
		}
		return words.Say("a lower part alone")
	}
	var parts []words.Text
	if s.Sides > 0 {
		parts = append(parts, words.Say("%s side parts", count(s.Sides)))
	}
	if s.Lower {
		parts = append(parts, words.Say("a lower part"))
	}
	if s.Upper {
		parts = append(parts, words.Say("an upper part"))
	}
	if s.Core {
		parts = append(parts, words.Say("a core"))
	}
	return words.And(parts...)
}

// Parts is how many parts there are, in words: "one part".
func Parts(n int) words.Text {
	if n == 1 {
		return words.Say("one part")
	}
	return words.Say("%s parts", count(n))
}

// count is a small number from two up in words.
func count(n int) words.Text {
	switch n {
	case 2:
		return words.Say("two")
	case 3:
		return words.Say("three")
	case 4:
		return words.Say("four")
	case 5:
		return words.Say("five")
	case 6:
		return words.Say("six")
	case 7:
		return words.Say("seven")
	case 8:
		return words.Say("eight")
	}
	return words.Say("%d", n)
}

// WhyNotFewer tells, for each scheme with fewer parts than the chosen one,
// what stands against it.
func WhyNotFewer(all []Scheme, chosen int) words.Text {
	c := &all[chosen]
	var lines []words.Text
	for i := range all {
		s := &all[i]
		if s.Count < c.Count && i != chosen {
			lines = append(lines, words.Say("%s: %s.", words.Capital(s.Name()), s.Against()))
		}
	}
	switch {
	case c.Count == 1:
		return words.Say("One part is the fewest there can be.")
	case len(lines) == 0:
		return words.Say("No scheme has fewer parts.")
	}
	return words.Join(" ", lines...)
}

// Against tells what stands against a scheme, or that nothing does.
func (s *Scheme) Against() words.Text {
	var worst *Part
	for i := range s.Parts {
		p := &s.Parts[i]
		if worst == nil || p.Verdict.rank() > worst.Verdict.rank() ||
			p.Verdict == worst.Verdict && (p.deepest() > worst.deepest() || p.deepest() == worst.deepest() && p.RubShare > worst.RubShare) {
			worst = p
		}
	}
	switch worst.Verdict {
	case Catches:
		c := worst.worst()
		place := words.Say("from %.1f to %.1f mm", c.ZFrom, c.ZTo)
		if c.ZTo-c.ZFrom < 0.1 {
			place = words.Say("at %.1f mm", c.ZFrom)
		}
		text := words.Say("%s catches by %.2f mm %s above the foot, behind what stands at %.1f mm", within(worst), c.Depth, place, c.BlockedAtZ)
		if c.ClayForgives {
			return words.Say("%s (the shrunken clay would let go, the rigid positive does not)", text)
		}
		return text
	case Rubs:
		return words.Say("%s rubs on %.0f %% of its surface (%.0f cm²)", within(worst), worst.RubShare, worst.RubArea)
	}
	return words.Say("it lets go as well")
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
