package sheet

import (
	"encoding/binary"
	"fmt"
)

// Kerning, read from a font's own GPOS table (OpenType specification, "GPOS",
// lookup type 2, pair adjustment). The sheets' fonts hold nothing else that
// moves a letter and no substitution at all (fonts/make.py), so that letters,
// advances and these pairs are the whole of setting a plain line; the general
// shaper, which the tests hold this against, takes a hundred times as long.
// What the fonts do not use is refused, not guessed.

// kerning is the pairs of one font, in font units.
type kerning struct{ lookups [][]pairs }

// pairs is one subtable. Of a pair of letters, first says which row the left
// one has, less one; none is 0.
type pairs struct {
	first  []uint16
	second [][]pairValue // by row: right glyph and shift, ascending (format 1)
	class  []uint16      // of the right glyph (format 2)
	row    []uint16      // class of the left glyph, by glyph (format 2)
	shift  []int16       // rows of classes2 shifts (format 2)
	wide   int
}

type pairValue struct {
	glyph uint16
	shift int16
}

// onlyAdvance is the value format of a pair that shifts what follows, and
// nothing else.
const onlyAdvance = 0x0004

// readKerning takes a GPOS table apart for a font of n glyphs.
func readKerning(gpos []byte, n int) (k *kerning, err error) {
	defer func() {
		if recover() != nil { // an offset beyond the table
			k, err = nil, fmt.Errorf("kerning: the table is cut short")
		}
	}()
	t := table16(gpos)
	list := t.from(t.at(8))
	k = &kerning{}
	for i := range list.at(0) {
		lookup := list.from(list.at(2 + 2*i))
		if lookup.at(0) != 2 || lookup.at(2) != 0 {
			return nil, fmt.Errorf("kerning: lookup of type %d, flags %d", lookup.at(0), lookup.at(2))
		}
		var subs []pairs
		for j := range lookup.at(4) {
			sub := lookup.from(lookup.at(6 + 2*j))
			if sub.at(4) != onlyAdvance || sub.at(6) != 0 {
				return nil, fmt.Errorf("kerning: values of format %d and %d", sub.at(4), sub.at(6))
			}
			p := pairs{first: sub.from(sub.at(2)).coverage(n)}
			switch sub.at(0) {
			case 1:
				p.second = sub.pairSets()
			case 2:
				p.row, p.class = sub.from(sub.at(8)).classes(n), sub.from(sub.at(10)).classes(n)
				p.wide = sub.at(14)
				for c := range sub.at(12) * p.wide {
					p.shift = append(p.shift, int16(sub.at(16+2*c)))
				}
			default:
				return nil, fmt.Errorf("kerning: pairs of format %d", sub.at(0))
			}
			subs = append(subs, p)
		}
		k.lookups = append(k.lookups, subs)
	}
	return k, nil
}

// between is the shift between two glyphs: of each lookup the first subtable
// that speaks of the pair.
func (k *kerning) between(left, right uint16) int32 {
	sum := int32(0)
	for _, subs := range k.lookups {
		for i := range subs {
			if v, ok := subs[i].shiftOf(left, right); ok {
				sum += int32(v)
				break
			}
		}
	}
	return sum
}

func (p *pairs) shiftOf(left, right uint16) (int16, bool) {
	row := p.first[left]
	if row == 0 {
		return 0, false
	}
	if p.second == nil {
		return p.shift[int(p.row[left])*p.wide+int(p.class[right])], true
	}
	set := p.second[row-1]
	lo, hi := 0, len(set)
	for lo < hi {
		if mid := (lo + hi) / 2; set[mid].glyph < right {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < len(set) && set[lo].glyph == right {
		return set[lo].shift, true
	}
	return 0, false
}

// table16 is a table of big-endian words of two bytes, addressed by byte.
type table16 []byte

func (t table16) at(i int) int          { return int(binary.BigEndian.Uint16(t[i:])) }
func (t table16) from(i int) table16    { return t[i:] }
func (t table16) glyph(i int) uint16    { return uint16(t.at(i)) }
func (t table16) span(i int) (int, int) { return t.at(i), t.at(i + 2) }

// pairSets are the lists of format 1, one a left glyph.
func (t table16) pairSets() (sets [][]pairValue) {
	for i := range t.at(8) {
		set := t.from(t.at(10 + 2*i))
		var list []pairValue
		for j := range set.at(0) {
			list = append(list, pairValue{set.glyph(2 + 4*j), int16(set.at(4 + 4*j))})
		}
		sets = append(sets, list)
	}
	return sets
}

// coverage is the index of each glyph that is covered, plus one.
func (t table16) coverage(n int) []uint16 {
	out := make([]uint16, n)
	for i := range t.at(2) {
		if t.at(0) == 1 {
			out[t.at(4+2*i)] = uint16(i + 1)
			continue
		}
		from, to := t.span(4 + 6*i)
		for g := from; g <= to; g++ {
			out[g] = uint16(t.at(8+6*i) + g - from + 1)
		}
	}
	return out
}

// classes is the class of each glyph; those not named have class 0.
func (t table16) classes(n int) []uint16 {
	out := make([]uint16, n)
	if t.at(0) == 1 {
		for i := range t.at(4) {
			out[t.at(2)+i] = t.glyph(6 + 2*i)
		}
		return out
	}
	for i := range t.at(2) {
		from, to := t.span(4 + 6*i)
		for g := from; g <= to; g++ {
			out[g] = t.glyph(8 + 6*i)
		}
	}
	return out
}
