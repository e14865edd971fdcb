package sheet

import "math"

// Where the letters of parts stand in a picture. They are set last, when all lines
// and words of the picture are known: each in its own part, with as much room
// around it as there is, clear of every line, and of all words on the page; in a
// part with no room for it beside the part, on blank paper, with a leader. Places
// are tried on a grid, so the room found is the largest to within a step of it.

// lettering gathers what letters have to keep clear of.
type lettering struct {
	p     *page
	lines []inked
	marks []partMark
}

// inked is a line that is drawn, and the box around it.
type inked struct {
	pts []point
	box rect
}

// ink notes a line.
func (l *lettering) ink(pts ...point) {
	l.lines = append(l.lines, inked{pts, boxOf(pts)})
}

// boxOf is the box around places.
func boxOf(pts []point) rect {
	b := rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, q := range pts {
		b.x0, b.x1, b.y0, b.y1 = math.Min(b.x0, q.x), math.Max(b.x1, q.x), math.Min(b.y0, q.y), math.Max(b.y1, q.y)
	}
	return b
}

// partMark is a letter that is wanted, and the part it names.
type partMark struct {
	letter string
	part   []point // its outline on the page
}

const (
	letterPad  = 0.7  // mm of white around a letter
	letterRoom = 0.25 // mm from there to the nearest line, at least
)

// lettering begins to note the lines that are drawn on the page.
func (p *page) lettering() *lettering {
	p.letters = &lettering{p: p}
	return p.letters
}

// add asks for a letter.
func (l *lettering) add(letter string, part []point) {
	l.marks = append(l.marks, partMark{letter, part})
}

// set places all letters, those with least room first. Beside their parts they
// stand within the box.
func (l *lettering) set(box rect, st style) {
	l.p.letters = nil
	type place struct {
		at   point
		room float64
	}
	places := make([]place, len(l.marks))
	taken := make([]bool, len(l.marks))
	find := func(i int) {
		places[i].at, places[i].room = l.within(&l.marks[i], st)
	}
	for i := range l.marks {
		find(i)
	}
	for range l.marks {
		next := -1
		for i := range l.marks {
			if !taken[i] && (next < 0 || places[i].room < places[next].room) {
				next = i
			}
		}
		taken[next] = true
		m := &l.marks[next]
		if places[next].room >= letterRoom && l.clear(l.box(m.letter, places[next].at, st), letterRoom) < letterRoom {
			find(next) // a letter that stands by now is in its way
		}
		at := places[next].at
		if places[next].room < letterRoom {
			from := at
			if at = l.beside(m, from, box, st); at != from {
				b := l.box(m.letter, at, st)
				l.p.line(from.x, from.y, clamp(from.x, b.x0+0.3, b.x1-0.3), clamp(from.y, b.y0+0.3, b.y1-0.3), thin)
				l.p.dot(from, 0.45)
			}
		}
		b := l.box(m.letter, at, st)
		l.p.fillRect(b, white)
		l.p.text(at.x, at.y-st.capHeight()/2, m.letter, st, center)
		l.ink(point{b.x0, b.y0}, point{b.x1, b.y0}, point{b.x1, b.y1}, point{b.x0, b.y1}, point{b.x0, b.y0})
	}
}

func clamp(v, lo, hi float64) float64 { return math.Max(lo, math.Min(hi, v)) }

// dot marks where a leader ends.
func (p *page) dot(q point, r float64) {
	ring := ringLine(q, r, 12)
	p.fill(ring[:len(ring)-1], black)
}

// box is the white room of a letter whose middle is at a place.
func (l *lettering) box(letter string, at point, st style) rect {
	w, h := l.p.doc.fonts.width(letter, st)/2+letterPad, st.capHeight()/2+letterPad
	return rect{at.x - w, at.y - h, at.x + w, at.y + h}
}

// within is the place inside its part where a letter has most room to all lines
// and words, and that room in mm; less than letterRoom where there is none, and then
// the place farthest from the part's edges on which no words lie.
func (l *lettering) within(m *partMark, st style) (at point, room float64) {
	b := boxOf(m.part)
	half := st.capHeight()/2 + letterPad
	deepest, deep := point{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2}, 0.0
	room = -1
	grids := []int{12, 36} // finer where the part is thin
	if math.Min(b.w(), b.h()) < 2*(half+letterRoom) {
		grids = grids[:1] // no room however fine
	}
	for _, n := range grids {
		for i := 1; i < n; i++ {
			for j := 1; j < n; j++ {
				q := point{b.x0 + b.w()*float64(i)/float64(n), b.y0 + b.h()*float64(j)/float64(n)}
				least := half + max(room, letterRoom)
				d := depthInside(m.part, q, min(deep, least*least))
				if d > deep && !l.overWords(q, q) {
					deepest, deep = q, d
				}
				if d < least*least {
					continue
				}
				if c := l.clear(l.box(m.letter, q, st), room); c > room {
					at, room = q, c
				}
			}
		}
		if room >= letterRoom {
			return at, room
		}
	}
	return deepest, -1
}

// beside is the place on blank paper nearest to one in a part, such that neither
// the letter nor its leader lies on words; the place itself where there is none.
func (l *lettering) beside(m *partMark, from point, box rect, st style) point {
	const step = 1.0
	best, at := math.Inf(1), from
	for y := box.y0 + 2; y <= box.y1-2; y += step {
		for x := box.x0 + 2; x <= box.x1-2; x += step {
			q := point{x, y}
			d := math.Hypot(x-from.x, y-from.y)
			if d >= best {
				continue
			}
			b := l.box(m.letter, q, st)
			if l.inPart(q) || l.clear(b, 0) < letterRoom || l.overWords(from, q) {
				continue
			}
			best, at = d, q
		}
	}
	return at
}

// inPart tells whether a place lies in any part of the picture.
func (l *lettering) inPart(q point) bool {
	for i := range l.marks {
		if depthInside(l.marks[i].part, q, math.Inf(1)) > 0 {
			return true
		}
	}
	return false
}

// overWords tells whether a leader would run through a line of text.
func (l *lettering) overWords(a, b point) bool {
	for _, t := range l.p.boxes {
		if apart(&rect{t.x0, t.y0, t.x1, t.y1}, a, b) == 0 {
			return true
		}
	}
	return false
}

// clear is how far in mm a box is from the nearest line or words; it may stop
// looking once that is no more than enough.
func (l *lettering) clear(b rect, enough float64) float64 {
	room := math.Inf(1)
	for i := range l.p.boxes {
		t := &l.p.boxes[i]
		if d := off(&b, t.x0, t.x1, t.y0, t.y1); d < room {
			room = d
		}
	}
	for i := range l.lines {
		line := &l.lines[i]
		if off(&b, line.box.x0, line.box.x1, line.box.y0, line.box.y1) >= room {
			continue
		}
		for k := 1; k < len(line.pts); k++ {
			if d := apart(&b, line.pts[k-1], line.pts[k]); d < room {
				if room = d; room <= enough {
					return room
				}
			}
		}
	}
	return room
}

// off is how far one box is from another, at the corners the larger of both ways; 0
// where they meet.
func off(b *rect, x0, x1, y0, y1 float64) float64 {
	d := 0.0
	for _, v := range [...]float64{b.x0 - x1, x0 - b.x1, b.y0 - y1, y0 - b.y1} {
		if v > d {
			d = v
		}
	}
	return d
}

// apart is likewise how far a box is from a straight line between two places.
func apart(b *rect, p, q point) float64 {
	x0, x1, y0, y1 := p.x, q.x, p.y, q.y
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	if y0 > y1 {
		y0, y1 = y1, y0
	}
	if d := off(b, x0, x1, y0, y1); d > 0 {
		return d
	}
	// the boxes of both meet: the line passes all four corners on one side, or runs through
	nx, ny := q.y-p.y, p.x-q.x
	n := math.Sqrt(nx*nx + ny*ny)
	if n == 0 {
		return 0
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range [...]point{{b.x0, b.y0}, {b.x1, b.y0}, {b.x0, b.y1}, {b.x1, b.y1}} {
		s := ((c.x-p.x)*nx + (c.y-p.y)*ny) / n
		lo, hi = math.Min(lo, s), math.Max(hi, s)
	}
	return math.Max(math.Max(lo, -hi), 0)
}

// depthInside is the square of the distance from a place inside a closed outline to
// its nearest edge, 0 outside; it may stop looking once that is less than enough.
func depthInside(outline []point, q point, enough float64) float64 {
	inside := false
	b := outline[len(outline)-1]
	for _, a := range outline {
		if (a.y > q.y) != (b.y > q.y) && q.x < a.x+(b.x-a.x)*((q.y-a.y)/(b.y-a.y)) {
			inside = !inside
		}
		b = a
	}
	if !inside {
		return 0
	}
	near := math.Inf(1)
	for _, a := range outline {
		dx, dy := b.x-a.x, b.y-a.y
		t := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			if t = ((q.x-a.x)*dx + (q.y-a.y)*dy) / l; t < 0 {
				t = 0
			} else if t > 1 {
				t = 1
			}
		}
		ex, ey := q.x-a.x-t*dx, q.y-a.y-t*dy
		if d := ex*ex + ey*ey; d < near {
			if near = d; near < enough {
				return near
			}
		}
		b = a
	}
	return near
}
