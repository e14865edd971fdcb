package form

import "math"

// The chords that a level plane cuts, in their order outward: a list of neighbours,
// and over it a search tree whose branches stand as the ranks of strands tell,
// numbers with no order of their own, so that it is as deep as the logarithm of
// their count (Seidel and Aragon, Randomized search trees, Algorithmica 16, 1996).
// A strand's rank is scrambled from its number, so the same line gives the same tree.

// strand is a chord that the plane cuts, with the strip of space or solid
// between it and the next one toward the axis.
type strand struct {
	hi, lo Point
	way    int // 1 where the line runs up the chord, -1 where down
	turns  int // how often the line runs round the strip: once on its left;
	// less than never in the loops that an inset line may make the wrong way
	top   float64 // where the strip begins
	room  int     // that the strip belongs to; -1 for solid
	tag   int32   // by which its room knows it, -1 for none
	state state
	seen  int // the height, counted, at which its run was found

	prev, next int32    // toward the axis, and outward; -1 for none
	up         int32    // in the tree, and its two branches alike
	kids       [2]int32 // toward the axis, and outward
	rank       uint32
}

// state of a strand at the height that the plane passes: it goes on, has begun or
// has ended there.
type state int8

const (
	steady state = iota
	fresh
	over
)

// at is the radius of the chord at height z.
func (s *strand) at(z float64) float64 {
	switch {
	case z >= s.hi.Z:
		return s.hi.R
	case z <= s.lo.Z:
		return s.lo.R
	}
	return s.hi.R + (s.hi.Z-z)/(s.hi.Z-s.lo.Z)*(s.lo.R-s.hi.R)
}

// within tells whether s lies nearer the axis than t below the height z, where
// both have a place: halfway down what they have in common.
func (s *strand) within(t *strand, z float64) bool {
	mid := (z + max(s.lo.Z, t.lo.Z)) / 2
	return s.at(mid) < t.at(mid)
}

// strands are all that have been cut, by number; those taken out are kept.
type strands struct {
	all  []strand
	root int32
}

// far is the number of a strand at infinity, which is always there.
const far = 0

func newStrands() strands {
	end := Point{math.Inf(1), math.Inf(-1)}
	s := strands{all: make([]strand, 1, 16)}
	s.all[far] = strand{hi: end, lo: end, top: math.Inf(1), tag: -1, prev: -1, next: -1, up: -1, kids: [2]int32{-1, -1}, rank: math.MaxUint32}
	return s
}

// first is the strand nearest to the axis.
func (s *strands) first() int32 {
	i := s.root
	for s.all[i].kids[0] >= 0 {
		i = s.all[i].kids[0]
	}
	return i
}

// insert puts a strand that begins at height z in its place, and gives its number.
func (s *strands) insert(c strand, z float64) int32 {
	i := int32(len(s.all))
	c.prev, c.next, c.up, c.kids, c.rank = -1, -1, -1, [2]int32{-1, -1}, scramble(uint32(i))
	side := 0
	for k := s.root; k >= 0; k = s.all[k].kids[side] {
		c.up = k
		if s.all[k].within(&c, z) {
			side, c.prev = 1, k
		} else {
			side, c.next = 0, k
		}
	}
	s.all = append(s.all, c)
	s.all[c.up].kids[side] = i
	s.all[c.next].prev = i // far is beyond all
	if c.prev >= 0 {
		s.all[c.prev].next = i
	}
	for s.all[i].up >= 0 && s.all[s.all[i].up].rank < s.all[i].rank {
		s.lift(i)
	}
	return i
}

// remove takes a strand out.
func (s *strands) remove(i int32) {
	c := &s.all[i]
	for c.kids[0] >= 0 || c.kids[1] >= 0 {
		k := c.kids[0]
		if k < 0 || c.kids[1] >= 0 && s.all[c.kids[1]].rank > s.all[k].rank {
			k = c.kids[1]
		}
		s.lift(k)
	}
	s.hang(c.up, i, -1)
	s.all[c.next].prev = c.prev
	if c.prev >= 0 {
		s.all[c.prev].next = c.next
	}
}

// lift makes a strand change places with the one above it in the tree.
func (s *strands) lift(i int32) {
	p := s.all[i].up
	side := 0
	if s.all[p].kids[1] == i {
		side = 1
	}
	kid := s.all[i].kids[1-side]
	s.hang(s.all[p].up, p, i)
	s.all[i].kids[1-side], s.all[p].up = p, i
	if s.all[p].kids[side] = kid; kid >= 0 {
		s.all[kid].up = p
	}
}

// hang puts a strand, or none, in another's place below p.
func (s *strands) hang(p, from, to int32) {
	switch {
	case p < 0:
		s.root = to
	case s.all[p].kids[0] == from:
		s.all[p].kids[0] = to
	default:
		s.all[p].kids[1] = to
	}
	if to >= 0 {
		s.all[to].up = p
	}
}

// scramble makes of a number one that looks like chance (the finalizer of
// MurmurHash3, Appleby, public domain).
func scramble(x uint32) uint32 {
	x = (x ^ x>>16) * 0x85ebca6b
	x = (x ^ x>>13) * 0xc2b2ae35
	return x ^ x>>16
}
