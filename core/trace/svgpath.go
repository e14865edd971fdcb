// Path data of SVG (W3C SVG 2, chapter 9): all commands, absolute and relative,
// read into cubic pieces. Elliptical arcs follow the implementation notes of
// SVG 2, appendix B.2, each quarter turn or less by one cubic.

package trace

import (
	"math"
	"strconv"

	"moldwright/core/job"
)

// bezier is one piece; straight ones are marked.
type bezier struct {
	p    [4]pt
	line bool
}

// subpath is a run of joined pieces.
type subpath struct {
	pieces []bezier
	closed bool
}

// mostPieces of a path; a drawing of a pot has a few dozen.
const mostPieces = 100_000

type pathReader struct {
	s          string
	i          int
	out        []subpath
	start, now pt
	control    pt // of the last curve, for smooth joins
	last       byte
}

// readPath reads path data; what comes before a fault is kept, as the standard
// asks, and the fault told.
func readPath(s string) ([]subpath, error) {
	r := &pathReader{s: s}
	var cmd byte
	for n := 0; ; n++ {
		r.skip()
		if r.i >= len(r.s) {
			return r.out, nil
		}
		c := r.s[r.i]
		switch {
		case c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z':
			cmd = c
			r.i++
		case cmd == 0 || cmd == 'Z' || cmd == 'z':
			return r.out, misread("a command is missing at character %d", r.i+1)
		case cmd == 'M':
			cmd = 'L'
		case cmd == 'm':
			cmd = 'l'
		}
		if n == 0 && cmd != 'M' && cmd != 'm' {
			return nil, misread("it does not begin with M")
		}
		if n > mostPieces {
			return r.out, misread("it has more than %d pieces", mostPieces)
		}
		if err := r.command(cmd); err != nil {
			return r.out, err
		}
		r.last = cmd | 0x20
	}
}

func (r *pathReader) skip() {
	for r.i < len(r.s) {
		switch r.s[r.i] {
		case ' ', '\t', '\n', '\r', '\f', ',':
			r.i++
		default:
			return
		}
	}
}

// number reads one number.
func (r *pathReader) number() (float64, error) {
	r.skip()
	j := r.i
	if j < len(r.s) && (r.s[j] == '+' || r.s[j] == '-') {
		j++
	}
	dot, exp := false, false
	for ; j < len(r.s); j++ {
		c := r.s[j]
		switch {
		case c >= '0' && c <= '9':
		case c == '.' && !dot && !exp:
			dot = true
		case (c == 'e' || c == 'E') && !exp && j > r.i:
			exp = true
			if j+1 < len(r.s) && (r.s[j+1] == '+' || r.s[j+1] == '-') {
				j++
			}
		default:
			goto end
		}
	}
end:
	v, err := strconv.ParseFloat(r.s[r.i:j], 64)
	if err != nil || math.Abs(v) > 1e9 {
		return 0, misread("there is no number at character %d", r.i+1)
	}
	r.i = j
	return v, nil
}

func (r *pathReader) numbers(v []float64) error {
	for i := range v {
		var err error
		if v[i], err = r.number(); err != nil {
			return err
		}
	}
	return nil
}

// flag reads one 0 or 1, which may stand without space before the next number.
func (r *pathReader) flag() (bool, error) {
	r.skip()
	if r.i < len(r.s) && (r.s[r.i] == '0' || r.s[r.i] == '1') {
		r.i++
		return r.s[r.i-1] == '1', nil
	}
	return false, misread("there is no flag 0 or 1 at character %d", r.i+1)
}

func (r *pathReader) add(b bezier) {
	if len(r.out) == 0 || r.out[len(r.out)-1].closed {
		r.out = append(r.out, subpath{})
	}
	s := &r.out[len(r.out)-1]
	s.pieces = append(s.pieces, b)
	r.now = b.p[3]
}

func straight(a, b pt) bezier {
	return bezier{[4]pt{a, a.lerp(b, 1.0/3), a.lerp(b, 2.0/3), b}, true}
}

func (r *pathReader) command(cmd byte) error {
	var v [6]float64
	rel := pt{}
	if cmd >= 'a' {
		rel = r.now
	}
	at := func(i int) pt { return pt{v[i], v[i+1]}.add(rel) }
	reflected := func(kinds ...byte) pt {
		for _, k := range kinds {
			if r.last == k {
				return r.now.mul(2).sub(r.control)
			}
		}
		return r.now
	}
	need := map[byte]int{'m': 2, 'l': 2, 'h': 1, 'v': 1, 'c': 6, 's': 4, 'q': 4, 't': 2, 'a': 3, 'z': 0}
	n, known := need[cmd|0x20]
	if !known {
		return misread("%q is no command", string(rune(cmd)))
	}
	if err := r.numbers(v[:n]); err != nil {
		return err
	}
	switch cmd | 0x20 {
	case 'm':
		r.now = at(0)
		r.start = r.now
		r.out = append(r.out, subpath{})
	case 'l':
		r.add(straight(r.now, at(0)))
	case 'h':
		r.add(straight(r.now, pt{v[0] + rel.x, r.now.y}))
	case 'v':
		r.add(straight(r.now, pt{r.now.x, v[0] + rel.y}))
	case 'c':
		r.control = at(2)
		r.add(bezier{p: [4]pt{r.now, at(0), at(2), at(4)}})
	case 's':
		c := reflected('c', 's')
		r.control = at(0)
		r.add(bezier{p: [4]pt{r.now, c, at(0), at(2)}})
	case 'q', 't':
		c, end := reflected('q', 't'), at(0)
		if cmd|0x20 == 'q' {
			c, end = at(0), at(2)
		}
		r.control = c
		r.add(bezier{p: [4]pt{r.now, r.now.lerp(c, 2.0/3), end.lerp(c, 2.0/3), end}})
	case 'a':
		large, err := r.flag()
		if err != nil {
			return err
		}
		sweep, err := r.flag()
		if err != nil {
			return err
		}
		var e [2]float64
		if err := r.numbers(e[:]); err != nil {
			return err
		}
		for _, b := range ellipse(r.now, pt{e[0], e[1]}.add(rel), v[0], v[1], v[2], large, sweep) {
			r.add(b)
		}
	case 'z':
		if len(r.out) > 0 {
			if r.now.dist(r.start) > 1e-9 {
				r.add(straight(r.now, r.start))
			}
			r.out[len(r.out)-1].closed = true
		}
		r.now = r.start
	}
	return nil
}

// ellipse is the arc from a to b as cubics.
func ellipse(a, b pt, rx, ry, turnDeg float64, large, sweep bool) []bezier {
	rx, ry = math.Abs(rx), math.Abs(ry)
	if rx < 1e-12 || ry < 1e-12 || a == b {
		return []bezier{straight(a, b)}
	}
	sin, cos := math.Sincos(turnDeg * math.Pi / 180)
	m := a.sub(b).mul(0.5)
	x, y := cos*m.x+sin*m.y, -sin*m.x+cos*m.y
	if l := x*x/(rx*rx) + y*y/(ry*ry); l > 1 {
		rx, ry = rx*math.Sqrt(l), ry*math.Sqrt(l)
	}
	den := rx*rx*y*y + ry*ry*x*x
	f := math.Sqrt(math.Max(0, (rx*rx*ry*ry-den)/den))
	if large == sweep {
		f = -f
	}
	cx, cy := f*rx*y/ry, -f*ry*x/rx
	c := pt{cos*cx - sin*cy, sin*cx + cos*cy}.add(a.lerp(b, 0.5))
	t0 := math.Atan2((y-cy)/ry, (x-cx)/rx)
	dt := math.Atan2((-y-cy)/ry, (-x-cx)/rx) - t0
	if sweep && dt < 0 {
		dt += 2 * math.Pi
	} else if !sweep && dt > 0 {
		dt -= 2 * math.Pi
	}
	n := int(math.Ceil(math.Abs(dt)/(math.Pi/2) - 1e-9))
	n = max(n, 1)
	k := 4.0 / 3 * math.Tan(dt/float64(n)/4)
	at := func(u, v float64) pt { return c.add(pt{cos*rx*u - sin*ry*v, sin*rx*u + cos*ry*v}) }
	var out []bezier
	for i := range n {
		s0, c0 := math.Sincos(t0 + dt*float64(i)/float64(n))
		s1, c1 := math.Sincos(t0 + dt*float64(i+1)/float64(n))
		out = append(out, bezier{p: [4]pt{at(c0, s0), at(c0-k*s0, s0+k*c0), at(c1+k*s1, s1-k*c1), at(c1, s1)}})
	}
	out[0].p[0], out[n-1].p[3] = a, b
	return out
}

// misread is what is wrong with path data.
func misread(format string, args ...any) error {
	return job.Faultf("badPath", "path", format, args...)
}
