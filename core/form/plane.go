package form

import (
	"cmp"
	"math"
	"slices"
)

// A level plane that sinks through a space finds its pockets. What of the space
// stands above the plane falls into rooms; a pocket is a room that is not open
// until the plane has sunk to where it meets an open one: its spill level. (The
// merge tree of the heights of the space; its branches are joined as sets are.)
// In the half-plane, the space falls into strips between two chords, each turned
// about the axis a frustum less a frustum: exact, but for the grain of points.
// The work is a sort, a search and a step for every chord, and a glance at every
// chord that the plane cuts: O(n log n + n m), m the most chords that one plane cuts,
// few in pots. A roof of teeth, whose m grows with n, is the worst, at O(n^2): the
// benchmark holds it beside a vase.

// strand is a chord that the plane cuts, with the strip of space or solid
// between it and the next one toward the axis.
type strand struct {
	hi, lo Point
	way    int // 1 where the line runs up the chord, -1 where down
	turns  int // how often the line runs round the strip: once on its left;
	// less than never in the loops that an inset line may make the wrong way
	top  float64 // where the strip begins
	room int     // that the strip belongs to; -1 for solid
}

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

// room is a connected piece of the space above the plane. Rooms that have met
// are one, found by their parents; room 0 is open.
type room struct {
	parent              int
	top, bottom, volume float64 // mm, ml
}

// plane is the level plane as it sinks along a line.
type plane struct {
	line  []Point
	space Side
	cut   []strand // from the axis outward; the last one is at infinity
	rooms []room
	found []Pocket

	before, after []strand // of the stretch that changes, kept to save memory
	near          []int
}

// grain is the number of steps per mm to which points are rounded, so that
// stretches of an inset line that touch do so exactly, and leave nothing open.
const grain = 1 << 30

// sink finds all pockets of the space beside a line, as the plane meets them.
func sink(line []Point, space Side) []Pocket {
	line = slices.Clone(line)
	for i, p := range line {
		line[i] = Point{math.Round(p.R*grain) / grain, math.Round(p.Z*grain) / grain}
	}
	s := &plane{line: line, space: space, rooms: make([]room, 1, 8)}
	all := make([]strand, 0, len(line))
	levels := make([]float64, len(line))
	for i := range line { // from the top of most lines, so that little is left to sort
		p := line[len(line)-1-i]
		levels[i] = p.Z
		if i == 0 {
			continue
		}
		if q := line[len(line)-i]; p.Z < q.Z {
			all = append(all, strand{hi: q, lo: p, way: 1})
		} else if p.Z > q.Z {
			all = append(all, strand{hi: p, lo: q, way: -1})
		}
	}
	slices.SortFunc(all, func(a, b strand) int { return cmp.Compare(b.hi.Z, a.hi.Z) })
	slices.SortFunc(levels, func(a, b float64) int { return cmp.Compare(b, a) })
	far := strand{hi: Point{math.Inf(1), math.Inf(-1)}, lo: Point{math.Inf(1), math.Inf(-1)}, top: math.Inf(1), room: -1}
	if space == Right {
		far.room = 0
	}
	s.cut = append(make([]strand, 0, 16), far)
	for _, z := range slices.Compact(levels) {
		n := 0
		for n < len(all) && all[n].hi.Z == z {
			n++
		}
		s.pass(z, all[:n])
		all = all[n:]
	}
	for i, r := range s.rooms[1:] { // shut all round: the line touches itself
		if r.parent == i+1 {
			s.found = append(s.found, Pocket{r.bottom, r.top, r.volume})
		}
	}
	return s.found
}

// pass takes the plane through the height z, at which some chords end and those
// of starts begin.
func (s *plane) pass(z float64, starts []strand) {
	first, last := len(s.cut), -1 // strips that change
	for i := range s.cut {
		if s.cut[i].lo.Z == z {
			first, last = min(first, i), i+1
		}
	}
	for k := range starts {
		i := place(s.cut, &starts[k], z)
		first, last = min(first, i), max(last, i)
	}
	begin, end := s.line[0], s.line[len(s.line)-1]
	if z == begin.Z || z == end.Z { // solid and space may change places
		first, last = 0, len(s.cut)-1
	}
	if last < 0 {
		return
	}
	if last == first+1 && len(starts) == 1 && s.cut[first].lo == starts[0].hi && s.cut[first].way == starts[0].way && z != begin.Z && z != end.Z {
		// the line goes on down
		s.end(first, z)
		s.end(last, z)
		s.cut[first].hi, s.cut[first].lo = starts[0].hi, starts[0].lo
		return
	}
	// whether the space goes on outward without end just below z
	open := s.space == Right && z > begin.Z || s.space == Left && z > end.Z && z <= begin.Z

	s.before = append(s.before[:0], s.cut[first:last+1]...)
	s.after = s.after[:0]
	for _, c := range s.before[:len(s.before)-1] {
		if c.lo.Z < z {
			s.after = append(s.after, c)
		}
	}
	for k := range starts {
		s.after = slices.Insert(s.after, place(s.after, &starts[k], z), starts[k])
	}
	s.after = append(s.after, s.before[len(s.before)-1])
	mouth := s.space == Left && z == end.Z
	shut := s.shut(z, first, last, mouth || open)

	from := 0.0
	if first > 0 {
		from = s.cut[first-1].at(z)
	}
	outermost := len(s.cut) - len(s.before) + len(s.after) - 1
	turns := 0
	if first+len(s.after)-1 < outermost {
		turns = s.cut[last+1].turns + s.cut[last].way
	} else if open == (s.space == Left) {
		turns = 1
	}
	for i := len(s.after) - 1; i >= 0; i-- {
		if i < len(s.after)-1 {
			turns += s.after[i].way
		}
		s.after[i].turns = turns
	}
	k, r := 0, from // of before, and where its strip begins
	for i := range s.after {
		c := &s.after[i]
		to := c.at(z)
		c.top, c.room = z, -1
		if (c.turns > 0) == (s.space == Left) {
			if first+i == outermost || mouth && (first+i == 0 || from < end.R) {
				c.room = 0 // beyond all chords, or under the opening
			}
			for k < len(s.before) && s.before[k].at(z) <= from {
				r = s.before[k].at(z)
				k++
			}
			for j, a := k, r; j < len(s.before) && a < to; j++ {
				b := s.before[j].at(z)
				if s.before[j].room >= 0 && min(b, to) > max(a, from) {
					c.room = s.join(c.room, s.before[j].room)
				}
				a = b
			}
			if c.room < 0 {
				c.room = len(s.rooms)
				s.rooms = append(s.rooms, room{parent: c.room, top: z})
			}
		}
		from = to
	}
	s.cut = slices.Replace(s.cut, first, last+1, s.after...)
	for i, p := range shut {
		if s.find(s.near[i]) == 0 {
			s.found = append(s.found, p)
		}
	}
}

// place is where a new chord belongs among those that the plane cuts at z.
func place(cut []strand, c *strand, z float64) int {
	lo, hi := 0, len(cut)
	for lo < hi {
		if mid := (lo + hi) / 2; cut[mid].within(c, z) {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}

// end ends the strip before chord i at z, and lets it begin anew.
func (s *plane) end(i int, z float64) {
	c := &s.cut[i]
	if c.room > 0 && c.top > z {
		if r := s.find(c.room); r > 0 {
			v := frustum(Point{c.at(z), z}, Point{c.at(c.top), c.top})
			if i > 0 {
				in := &s.cut[i-1]
				v -= frustum(Point{in.at(z), z}, Point{in.at(c.top), c.top})
			}
			s.rooms[r].volume += v / 1000
			s.rooms[r].bottom = z
		}
	}
	c.top = z
}

// shut ends the strips from first to last at z and puts those of their rooms
// that are shut into near. Where an open one may meet them, all their strips end
// and they are told as the pockets that they are then.
func (s *plane) shut(z float64, first, last int, open bool) []Pocket {
	s.near = s.near[:0]
	for i := first; i <= last; i++ {
		s.end(i, z)
		if s.cut[i].room < 0 {
			continue
		}
		if r := s.find(s.cut[i].room); r == 0 {
			open = true
		} else if !slices.Contains(s.near, r) {
			s.near = append(s.near, r)
		}
	}
	if !open || len(s.near) == 0 {
		return nil
	}
	for i := range s.cut {
		if c := &s.cut[i]; c.room > 0 && slices.Contains(s.near, s.find(c.room)) {
			s.end(i, z)
		}
	}
	out := make([]Pocket, len(s.near))
	for i, r := range s.near {
		out[i] = Pocket{z, s.rooms[r].top, s.rooms[r].volume}
	}
	return out
}

// find is the room that r is now part of.
func (s *plane) find(r int) int {
	for s.rooms[r].parent != r {
		s.rooms[r].parent = s.rooms[s.rooms[r].parent].parent
		r = s.rooms[r].parent
	}
	return r
}

// join makes two rooms one, and tells which; a is -1 for none yet.
func (s *plane) join(a, b int) int {
	b = s.find(b)
	if a < 0 {
		return b
	}
	if a = s.find(a); a == b {
		return a
	}
	if b < a {
		a, b = b, a
	}
	s.rooms[b].parent = a
	s.rooms[a].top = max(s.rooms[a].top, s.rooms[b].top)
	s.rooms[a].volume += s.rooms[b].volume
	return a
}
