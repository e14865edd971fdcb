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
// The chords that the plane cuts stand in a tree in their order outward
// (`strands.go`), a room knows its strips, and at a height only those are looked at
// that end or begin there or lie beside: O(n log n) for a line of n points,
// whatever its form. (Expected, by the tree's priorities; the heights at which the
// line begins and ends look at all that the plane cuts there.)

// room is a connected piece of the space above the plane. Rooms that have met
// are one, found by their parents; room 0 is open.
type room struct {
	parent              int
	top, bottom, volume float64 // mm, ml
	first, last         int32   // of its strips' tags
	seen                int     // the height, counted, at which it was last near
}

// tag says that a strip was given to a room; it holds as long as the strand has it.
type tag struct{ strand, next int32 }

// plane is the level plane as it sinks along a line.
type plane struct {
	strands // that it cuts
	line    []Point
	space   Side
	on      []int32 // by chord of the line: its strand
	rooms   []room
	tags    []tag
	found   []Pocket
	count   int // heights passed where more changed than a line that goes on down

	changed []int32 // strands that end or begin at a height, kept to save memory
	runs    []run
	before  []strip
	near    []shut
}

// run is neighbours among the strands, each of which ends or begins at a height,
// and the one beyond them, which goes on.
type run struct {
	first, bound int32
	before       [2]int // the strips that came down to it
}

// strip is what of a strip matters where it ends: its room and its outer radius.
type strip struct {
	room int
	to   float64
}

// shut is a room that is not open, as it is before rooms meet at a height.
type shut struct {
	Pocket
	room        int
	first, last int32
}

// grain is the number of steps per mm to which points are rounded, so that
// stretches of an inset line that touch do so exactly, and leave nothing open.
const grain = 1 << 30

// sink finds all pockets of the space beside a line, as the plane meets them.
func sink(line []Point, space Side) []Pocket {
	line = slices.Clone(line)
	order := make([]int32, len(line))
	for i, p := range line {
		line[i] = Point{math.Round(p.R*grain) / grain, math.Round(p.Z*grain) / grain}
		order[len(line)-1-i] = int32(i) // from the top of most lines, so that little is left to sort
	}
	slices.SortFunc(order, func(a, b int32) int { return cmp.Compare(line[b].Z, line[a].Z) })
	s := &plane{line: line, space: space, on: make([]int32, len(line)-1), rooms: make([]room, 1, 8), strands: newStrands()}
	if space == Left {
		s.all[far].room = -1
	}
	for len(order) > 0 {
		n, z := 1, line[order[0]].Z
		for n < len(order) && line[order[n]].Z == z {
			n++
		}
		if n > 1 || !s.goesOn(int(order[0])) {
			s.pass(z, order[:n])
		}
		order = order[n:]
	}
	for i, r := range s.rooms[1:] { // shut all round: the line touches itself
		if r.parent == i+1 {
			s.found = append(s.found, Pocket{r.bottom, r.top, r.volume})
		}
	}
	return s.found
}

// goesOn takes the plane through a point at whose height nothing happens but that
// the line goes on down, which is nearly always; it tells whether it is so.
func (s *plane) goesOn(i int) bool {
	last := len(s.line) - 1
	z := s.line[i].Z
	if i == 0 || i == last || z == s.line[0].Z || z == s.line[last].Z {
		return false
	}
	from, to, lo := i-1, i, i+1
	if s.line[i-1].Z < z {
		from, to, lo = i, i-1, i-1
	}
	if s.line[2*i-lo].Z <= z || s.line[lo].Z >= z {
		return false
	}
	k := s.on[from]
	c := &s.all[k]
	next := strand{hi: s.line[i], lo: s.line[lo]}
	if c.prev >= 0 && !s.all[c.prev].within(&next, z) || s.all[c.next].within(&next, z) {
		return false // it touches another and changes places with it
	}
	s.end(k, c.prev, z)
	s.end(c.next, k, z)
	c.hi, c.lo = next.hi, next.lo
	s.on[to] = k
	return true
}

// pass takes the plane through the height z of the points, at which some chords
// end and others begin.
func (s *plane) pass(z float64, points []int32) {
	s.count++
	s.change(z, points)
	begin, end := s.line[0], s.line[len(s.line)-1]
	s.gather(z, z == begin.Z || z == end.Z) // where solid and space may change places
	// whether the space goes on outward without end just below z
	open := s.space == Right && z > begin.Z || s.space == Left && z > end.Z && z <= begin.Z
	mouth := s.space == Left && z == end.Z

	s.finish(z)
	for k := len(s.runs) - 1; k >= 0; k-- {
		r := &s.runs[k]
		turns := 0
		if r.bound != far {
			next := s.all[r.bound].next
			turns = s.all[next].turns + s.all[r.bound].way
		} else if open == (s.space == Left) {
			turns = 1
		}
		s.all[r.bound].turns = turns
		for i := s.all[r.bound].prev; i != r.first; i = s.all[i].prev {
			turns += s.all[i].way
			s.all[i].turns = turns
		}
	}
	for k := range s.runs {
		s.furnish(z, &s.runs[k], mouth)
	}
	for i := range s.near {
		if p := &s.near[i]; s.find(p.room) == 0 {
			s.found = append(s.found, s.whole(p, z))
		}
	}
}

// change marks the strands that end at the points and puts in those that begin.
func (s *plane) change(z float64, points []int32) {
	s.changed = s.changed[:0]
	for _, i := range points {
		for _, by := range [2]int32{-1, 1} {
			to, chord := i+by, min(i, i+by)
			if to < 0 || int(to) == len(s.line) {
				continue
			}
			switch p := s.line[to]; {
			case p.Z > z:
				s.all[s.on[chord]].state = over
				s.changed = append(s.changed, s.on[chord])
			case p.Z < z:
				s.on[chord] = s.insert(strand{hi: s.line[i], lo: p, way: -int(by), state: fresh, tag: -1}, z)
				s.changed = append(s.changed, s.on[chord])
			}
		}
	}
}

// gather finds the runs of strands that change, from the axis outward; all is one
// where the whole plane does.
func (s *plane) gather(z float64, whole bool) {
	s.runs = s.runs[:0]
	if whole {
		first := int32(far)
		for s.all[first].prev >= 0 {
			first = s.all[first].prev
		}
		s.runs = append(s.runs, run{first: first, bound: far})
		return
	}
	for _, k := range s.changed {
		if s.all[k].seen == s.count {
			continue
		}
		first := k
		for p := s.all[first].prev; p >= 0 && s.all[p].state != steady; p = s.all[p].prev {
			first = p
		}
		bound := first
		for ; s.all[bound].state != steady; bound = s.all[bound].next {
			s.all[bound].seen = s.count
		}
		s.runs = append(s.runs, run{first: first, bound: bound})
	}
	if len(s.runs) > 1 {
		slices.SortFunc(s.runs, func(a, b run) int {
			x, y := &s.all[a.bound], &s.all[b.bound]
			return cmp.Or(cmp.Compare(x.at(z), y.at(z)), step(y.within(x, z))-step(x.within(y, z)))
		})
	}
}

func step(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// finish ends the strips that come down to the runs, takes out the strands that
// end, and puts the rooms that are shut into near. A run's first is then the strand
// before it.
func (s *plane) finish(z float64) {
	s.before, s.near = s.before[:0], s.near[:0]
	for k := range s.runs {
		r := &s.runs[k]
		r.before[0] = len(s.before)
		i := r.first
		r.first = s.all[i].prev
		for inner := r.first; ; {
			c := &s.all[i]
			next, ended := c.next, c.state == over
			if c.state != fresh {
				s.end(i, inner, z)
				s.before = append(s.before, strip{c.room, c.at(z)})
				if c.room >= 0 {
					if n := s.find(c.room); n > 0 && s.rooms[n].seen != s.count {
						s.rooms[n].seen = s.count
						s.near = append(s.near, shut{room: n})
					}
				}
				inner = i
			}
			done := i == r.bound
			c.state = steady
			if ended {
				// what is inside of the next strip still ends at it
				s.all[i].tag = -1
				s.remove(i)
			}
			if done {
				break
			}
			i = next
		}
		r.before[1] = len(s.before)
	}
	for i := range s.near {
		p := &s.near[i]
		r := &s.rooms[p.room]
		p.Pocket, p.first, p.last = Pocket{z, r.top, r.volume}, r.first, r.last
	}
}

// furnish gives the strips that go down from a run to rooms: to those above them
// that they have room in common with, which are one room then.
func (s *plane) furnish(z float64, r *run, mouth bool) {
	before := s.before[r.before[0]:r.before[1]]
	from := 0.0
	if r.first >= 0 {
		from = s.all[r.first].at(z)
	}
	k, inner := 0, from // of before, and where its strip begins
	for i := r.first; i != r.bound; {
		if i < 0 {
			i = s.first()
		} else {
			i = s.all[i].next
		}
		c := &s.all[i]
		to := c.at(z)
		c.top, c.room, c.tag = z, -1, -1
		if (c.turns > 0) == (s.space == Left) {
			if i == far || mouth && (c.prev < 0 || from < s.line[len(s.line)-1].R) {
				c.room = 0 // beyond all chords, or under the opening
			}
			for k < len(before) && before[k].to <= from {
				inner = before[k].to
				k++
			}
			for j, a := k, inner; j < len(before) && a < to; j++ {
				b := &before[j]
				if b.room >= 0 && min(b.to, to) > max(a, from) {
					c.room = s.join(c.room, b.room)
				}
				a = b.to
			}
			if c.room < 0 {
				c.room = len(s.rooms)
				s.rooms = append(s.rooms, room{parent: c.room, top: z, first: -1, last: -1})
			}
			s.give(i, c.room)
		}
		from = to
	}
}

// end ends the strip of a strand at z, inner being the strand on its inner side,
// and lets it begin anew.
func (s *plane) end(i, inner int32, z float64) {
	c := &s.all[i]
	if c.room > 0 && c.top > z {
		if r := s.find(c.room); r > 0 {
			s.rooms[r].volume += s.volume(c, inner, z)
			s.rooms[r].bottom = z
		}
	}
	c.top = z
}

// volume is that of a strip down to z, ml.
func (s *plane) volume(c *strand, inner int32, z float64) float64 {
	v := frustum(Point{c.at(z), z}, Point{c.at(c.top), c.top})
	if inner >= 0 {
		in := &s.all[inner]
		v -= frustum(Point{in.at(z), z}, Point{in.at(c.top), c.top})
	}
	return v / 1000
}

// whole is the pocket of a room that opens at z, with its strips that go on there.
func (s *plane) whole(p *shut, z float64) Pocket {
	for t := p.first; t >= 0; t = s.tags[t].next {
		if c := &s.all[s.tags[t].strand]; c.tag == t && c.top > z {
			p.Volume += s.volume(c, c.prev, z)
		}
		if t == p.last {
			break
		}
	}
	return p.Pocket
}

// give tags a strip for its room, unless that is open.
func (s *plane) give(i int32, room int) {
	r := &s.rooms[s.find(room)]
	if r.parent == 0 {
		return
	}
	t := int32(len(s.tags))
	s.tags = append(s.tags, tag{i, -1})
	s.all[i].tag = t
	if r.last >= 0 {
		s.tags[r.last].next = t
	} else {
		r.first = t
	}
	r.last = t
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
	x, y := &s.rooms[a], &s.rooms[b]
	y.parent = a
	x.top = max(x.top, y.top)
	x.volume += y.volume
	if a > 0 {
		s.tags[x.last].next = y.first
		x.last = y.last
	}
	return a
}
