package release

import "math"

// envelope is the lower envelope y(x) of the chords of a connected curve that
// does not cross itself: of all the curve above a place x, the least y. Built
// from the curve's runs of one x-direction, merged pairwise, in O(n log n)
// (fewer runs, less work). Because the curve is connected the envelope has no
// gaps; because chords do not cross, which of two is lower can be told
// anywhere between their ends.
type envelope struct {
	pts    []vec // the curve
	pieces []piece
	ends   [][2]float64 // the heights of each piece at x0 and x1
	// most is a heap-ordered tree of the greatest y of runs of pieces.
	most []float64
	size int
	// upTo is the greatest y of each piece and all before it.
	upTo []float64
	near int // the piece found last: places are asked for along the curve, so it or a neighbour is the next
}

type vec struct{ x, y float64 }

// piece is the part of a chord between x0 < x1.
type piece struct {
	x0, x1 float64
	chord  int // from pts[chord] to pts[chord+1]
}

func newEnvelope(pts []vec) *envelope {
	e := &envelope{pts: pts}
	var runs [][]piece
	for i := 0; i+1 < len(pts); {
		d := sign(pts[i+1].x - pts[i].x)
		if d == 0 {
			i++
			continue
		}
		k := i
		for k+1 < len(pts) && sign(pts[k+1].x-pts[k].x) == d {
			k++
		}
		run := make([]piece, 0, k-i)
		if d > 0 {
			for c := i; c < k; c++ {
				run = append(run, piece{pts[c].x, pts[c+1].x, c})
			}
		} else {
			for c := k - 1; c >= i; c-- {
				run = append(run, piece{pts[c+1].x, pts[c].x, c})
			}
		}
		runs = append(runs, run)
		i = k
	}
	for len(runs) > 1 {
		var next [][]piece
		for i := 0; i+1 < len(runs); i += 2 {
			next = append(next, e.merge(runs[i], runs[i+1]))
		}
		if len(runs)%2 == 1 {
			next = append(next, runs[len(runs)-1])
		}
		runs = next
	}
	if len(runs) == 1 {
		e.pieces = runs[0]
	}
	e.index()
	return e
}

func sign(v float64) int {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// on is the height of a chord's line at x.
func (e *envelope) on(chord int, x float64) float64 {
	p, q := e.pts[chord], e.pts[chord+1]
	if p.x == q.x {
		return min(p.y, q.y)
	}
	if x == p.x {
		return p.y
	}
	if x == q.x {
		return q.y
	}
	return p.y + (x-p.x)/(q.x-p.x)*(q.y-p.y)
}

// later is the greater of two numbers: unlike max it asks for no more, and is
// inlined in wasm too.
func later(a, b float64) float64 {
	if a > b {
		return a
	}
	return b
}

// merge is the lower of two envelopes. Two runs that follow one another along
// the curve need not overlap in x; between them there may then be a gap, which
// a later merge fills.
func (e *envelope) merge(a, b []piece) []piece {
	out := make([]piece, 0, len(a)+len(b))
	add := func(p piece) {
		if n := len(out); n > 0 && out[n-1].chord == p.chord && out[n-1].x1 == p.x0 {
			out[n-1].x1 = p.x1
			return
		}
		out = append(out, p)
	}
	i, j := 0, 0
	x := math.Inf(-1)
	for i < len(a) || j < len(b) {
		switch {
		case j == len(b) || i < len(a) && a[i].x1 <= later(x, b[j].x0):
			add(piece{later(x, a[i].x0), a[i].x1, a[i].chord})
			x = a[i].x1
			i++
		case i == len(a) || b[j].x1 <= later(x, a[i].x0):
			add(piece{later(x, b[j].x0), b[j].x1, b[j].chord})
			x = b[j].x1
			j++
		default:
			a0, b0 := later(x, a[i].x0), later(x, b[j].x0)
			if a0 < b0 {
				add(piece{a0, b0, a[i].chord})
			} else if b0 < a0 {
				add(piece{b0, a0, b[j].chord})
			}
			x0, x1 := later(a0, b0), a[i].x1
			if b[j].x1 < x1 {
				x1 = b[j].x1
			}
			mid := (x0 + x1) / 2
			c := a[i].chord
			if e.on(b[j].chord, mid) < e.on(c, mid) {
				c = b[j].chord
			}
			add(piece{x0, x1, c})
			x = x1
			if a[i].x1 <= x {
				i++
			}
			if j < len(b) && b[j].x1 <= x {
				j++
			}
		}
	}
	return out
}

func (e *envelope) index() {
	e.size = 1
	for e.size < len(e.pieces) {
		e.size *= 2
	}
	room := make([]float64, 2*e.size+len(e.pieces))
	e.most, e.upTo = room[:2*e.size], room[2*e.size:]
	for i := e.size + len(e.pieces); i < len(e.most); i++ {
		e.most[i] = math.Inf(-1)
	}
	e.ends = make([][2]float64, len(e.pieces))
	greatest := math.Inf(-1)
	for i := range e.pieces {
		p, at := &e.pieces[i], &e.ends[i]
		at[0], at[1] = e.on(p.chord, p.x0), e.on(p.chord, p.x1)
		y := later(at[0], at[1])
		greatest = later(greatest, y)
		e.most[e.size+i], e.upTo[i] = y, greatest
	}
	for i := e.size - 1; i > 0; i-- {
		e.most[i] = later(e.most[2*i], e.most[2*i+1])
	}
}

// find is the index of the piece over x, or -1.
func (e *envelope) find(x float64) int {
	n := len(e.pieces)
	k := e.near
	switch {
	case k < n && e.pieces[k].x1 > x && (k == 0 || e.pieces[k-1].x1 <= x):
	case k+1 < n && e.pieces[k].x1 <= x && e.pieces[k+1].x1 > x:
		k++
		e.near = k
	case k > 0 && k < n && e.pieces[k-1].x1 > x && (k == 1 || e.pieces[k-2].x1 <= x):
		k--
		e.near = k
	default:
		lo, hi := 0, n // the first that ends beyond x
		for lo < hi {
			if mid := int(uint(lo+hi) >> 1); e.pieces[mid].x1 > x {
				hi = mid
			} else {
				lo = mid + 1
			}
		}
		if k = lo; k == n {
			return -1
		}
		e.near = k
	}
	if e.pieces[k].x0 > x {
		return -1
	}
	return k
}

// free tells whether no point of the curve lies below (x, y).
func (e *envelope) free(x, y float64) bool {
	k := e.find(x)
	return k < 0 || e.on(e.pieces[k].chord, x) >= y
}

// exit is the nearest place across the pull from which the curve lies nowhere
// below a height.
type exit struct {
	at    float64
	block float64 // the least y of the curve just before it: what stands in the way
	piece int     // whose end or slope it is
	// beyond tells that there is none before the curve's end, which at then is.
	beyond bool
}

// next is the nearest exit at or beyond x for the height y, going in direction
// dir (+1, -1).
func (e *envelope) next(x, y float64, dir int) exit {
	k := e.find(x)
	if k < 0 {
		return exit{x, y, -1, true}
	}
	return e.from(k, x, e.on(e.pieces[k].chord, x), y, dir)
}

// from is next where piece k lies over x, at height yx.
func (e *envelope) from(k int, x, yx, y float64, dir int) exit {
	far, yf := e.pieces[k].x1, e.ends[k][1]
	if dir < 0 {
		far, yf = e.pieces[k].x0, e.ends[k][0]
	}
	if yf >= y && yx < y {
		return exit{x + (y-yx)/(yf-yx)*(far-x), y, k, false}
	}
	// the rest of this piece is blocked, whatever it was behind x
	switch k += dir; {
	case k < 0 || k == len(e.pieces) || e.most[1] < y:
		k = -1
	case dir > 0:
		k = e.scan(k, y)
	default:
		k = e.scanBack(k, y)
	}
	if k < 0 {
		if dir > 0 {
			last := len(e.pieces) - 1
			return exit{e.pieces[last].x1, e.ends[last][1], len(e.pieces), true}
		}
		return exit{e.pieces[0].x0, e.ends[0][0], -1, true}
	}
	p, ends := &e.pieces[k], &e.ends[k]
	near, yn, before := p.x0, ends[0], 1
	far, yf = p.x1, ends[1]
	if dir < 0 {
		near, yn, far, yf, before = far, yf, near, yn, 0
	}
	if yn >= y { // the piece begins free: the one before it ends the block
		return exit{near, e.ends[k-dir][before], k, false}
	}
	return exit{near + (y-yn)/(yf-yn)*(far-near), y, k, false}
}

// scan is the first piece after or at k that reaches y somewhere, or -1.
func (e *envelope) scan(k int, y float64) int {
	i := e.size + k
	for e.most[i] < y {
		for i&1 == 1 {
			i >>= 1
		}
		if i == 0 {
			return -1
		}
		i++
	}
	for i < e.size {
		i *= 2
		if e.most[i] < y {
			i++
		}
	}
	return i - e.size
}

// scanBack is the last piece before or at k that reaches y somewhere, or -1.
func (e *envelope) scanBack(k int, y float64) int {
	i := e.size + k
	for e.most[i] < y {
		for i&1 == 0 {
			i >>= 1
		}
		if i == 1 {
			return -1
		}
		i--
	}
	for i < e.size {
		i = 2*i + 1
		if e.most[i] < y {
			i--
		}
	}
	return i - e.size
}
