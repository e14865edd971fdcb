package form

import (
	"math"
	"slices"

	"moldwright/core/job"
)

// curve is the true curve through the nodes: cubic Hermite pieces over chord
// length, with slopes limited in each coordinate (Fritsch and Carlson 1980,
// limiter after Hyman 1983; from memory), so that between nodes the curve
// neither bulges nor hollows: a widest or narrowest place is always a node.
// Stretches between two corners are straight.
type curve struct {
	pts  []Point
	h    []float64 // chord lengths
	in   []Point   // slope on arriving at a node
	out  []Point   // slope on leaving a node
	line []bool    // the stretch after node i is straight
}

func newCurve(nodes []job.Node, pts []Point) *curve {
	n := len(pts)
	c := &curve{pts: pts, h: make([]float64, n-1), in: make([]Point, n), out: make([]Point, n), line: make([]bool, n-1)}
	d := make([]Point, n-1)
	for i := range d {
		c.h[i] = pts[i].Dist(pts[i+1])
		d[i] = Point{(pts[i+1].R - pts[i].R) / c.h[i], (pts[i+1].Z - pts[i].Z) / c.h[i]}
	}
	sharp := func(i int) bool {
		// a smooth node on the axis runs across it, level, at a speed within the
		// bound for a monotone cubic
		return nodes[i].Corner || (i == n-1 && pts[i].R > 0)
	}
	for i := range d {
		c.line[i] = sharp(i) && sharp(i+1)
	}
	for i := range pts {
		switch {
		case i > 0 && i < n-1 && !sharp(i):
			s := Point{
				limited(d[i-1].R, d[i].R, c.h[i-1], c.h[i]),
				limited(d[i-1].Z, d[i].Z, c.h[i-1], c.h[i]),
			}
			c.in[i], c.out[i] = s, s
		case i == 0 && !sharp(i):
			c.out[i] = Point{min(1, 3*d[0].R), 0}
		case i == n-1 && !sharp(i):
			c.in[i] = Point{max(-1, 3*d[n-2].R), 0}
		default:
			if i < n-1 {
				c.out[i] = endSlope(d, c.h, i, 1, sharp)
			}
			if i > 0 {
				c.in[i] = endSlope(d, c.h, i, -1, sharp)
			}
		}
	}
	return c
}

// limited is the parabola's slope through three values with chord slopes a and
// b, held where the values have an extreme and kept within three times the
// smaller slope, the bound for a monotone cubic.
func limited(a, b, ha, hb float64) float64 {
	if a*b <= 0 {
		return 0
	}
	s := (a*hb + b*ha) / (ha + hb)
	most := 3 * min(math.Abs(a), math.Abs(b))
	return max(-most, min(most, s))
}

// endSlope is the slope at a sharp node i toward the stretch on its step side
// (+1 after, -1 before): the parabola through the next nodes, limited.
func endSlope(d []Point, h []float64, i, step int, sharp func(int) bool) Point {
	k, next := i, i+1
	if step < 0 {
		k, next = i-1, i-1
	}
	if sharp(next) || next == 0 || next == len(h) {
		return d[k]
	}
	l := k + step
	end := func(a, b float64) float64 {
		s := a + (a-b)*h[k]/(h[k]+h[l])
		if s*a <= 0 {
			return 0
		}
		return math.Copysign(min(math.Abs(s), 3*math.Abs(a)), a)
	}
	return Point{end(d[k].R, d[l].R), end(d[k].Z, d[l].Z)}
}

// cubic is one piece in Bezier form.
type cubic [4]Point

func (c *curve) piece(i int) cubic {
	p, q, t := c.pts[i], c.pts[i+1], c.h[i]/3
	return cubic{p, {p.R + c.out[i].R*t, p.Z + c.out[i].Z*t}, {q.R - c.in[i+1].R*t, q.Z - c.in[i+1].Z*t}, q}
}

func (b *cubic) at(t float64) Point {
	u := 1 - t
	w0, w1, w2, w3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{
		w0*b[0].R + w1*b[1].R + w2*b[2].R + w3*b[3].R,
		w0*b[0].Z + w1*b[1].Z + w2*b[2].Z + w3*b[3].Z,
	}
}

// heading is the tangent angle at t; at an end where the piece stands still,
// that of the direction in which it sets out or arrives.
func (b *cubic) heading(t float64) float64 {
	u := 1 - t
	v := func(a, c, d, e float64) float64 {
		return u*u*(c-a) + 2*u*t*(d-c) + t*t*(e-d)
	}
	r := v(b[0].R, b[1].R, b[2].R, b[3].R)
	z := v(b[0].Z, b[1].Z, b[2].Z, b[3].Z)
	if still := 1e-9 * b[0].Dist(b[3]); r*r+z*z < still*still {
		d := b[2].Sub(b[0])
		if t > 0.5 {
			d = b[3].Sub(b[1])
		}
		return math.Atan2(d.Z, d.R)
	}
	return math.Atan2(z, r)
}

// flatten appends to m the points inside the stretch after node i, and its
// spans.
func (c *curve) flatten(m *Meridian, i int) {
	if c.line[i] {
		p, q := c.pts[i], c.pts[i+1]
		a := math.Atan2(q.Z-p.Z, q.R-p.R)
		m.Spans = append(m.Spans, Span{a, a})
		return
	}
	b := c.piece(i)
	var room [mostTurns + 1]float64
	ts := append(b.turns(room[:0]), 1)
	t0, a0, p := 0.0, 0.0, b[0]
	if s := c.out[i]; i > 0 && c.in[i] == s && s.R*s.R+s.Z*s.Z > 1e-6 { // it goes on as the piece before it ends
		a0 = wrap(m.Spans[len(m.Spans)-1].A1)
	} else {
		a0 = b.heading(0)
	}
	even := b.bulge() <= ChordTol
	for _, t := range ts {
		q, a := b[3], b.heading(t)
		if t < 1 {
			q = b.at(t)
		}
		if turn := wrap(a - a0); even && math.Abs(turn) <= TurnTol { // nearly always on a fine contour
			m.Spans = append(m.Spans, Span{a0, a0 + turn})
		} else {
			b.refine(m, t0, t, a0, a, p, q, 0)
		}
		if t < 1 {
			m.point(q, false, -1)
		}
		t0, a0, p = t, a, q
	}
}

// bulge is more than the distance in mm of any place of the piece from the chord of a
// stretch around it: an eighth of the greatest second derivative, which runs straight.
func (b *cubic) bulge() float64 {
	r0, z0 := b[2].R-2*b[1].R+b[0].R, b[2].Z-2*b[1].Z+b[0].Z
	r1, z1 := b[3].R-2*b[2].R+b[1].R, b[3].Z-2*b[2].Z+b[1].Z
	d, e := r0*r0+z0*z0, r1*r1+z1*z1
	if e > d {
		d = e
	}
	return 6. / 8 * math.Sqrt(d)
}

// refine appends the points strictly between t0 and t1, which lie at p and q, and
// the spans.
func (b *cubic) refine(m *Meridian, t0, t1, a0, a1 float64, p, q Point, depth int) {
	tm := (t0 + t1) / 2
	mid := b.at(tm)
	turn := wrap(a1 - a0)
	chord := p.Dist(q)
	off := math.Abs((q.R-p.R)*(mid.Z-p.Z) - (q.Z-p.Z)*(mid.R-p.R))
	if depth < 12 && chord > 0.02 && (off > ChordTol*chord || math.Abs(turn) > TurnTol) {
		am := b.heading(tm)
		b.refine(m, t0, tm, a0, am, p, mid, depth+1)
		m.point(mid, false, -1)
		b.refine(m, tm, t1, am, a1, mid, q, depth+1)
		return
	}
	m.Spans = append(m.Spans, Span{a0, a0 + turn})
}

// opposed tells whether a quadratic in t can have a root in [0, 1]: its Bernstein
// coefficients (it runs within their range) are not all of one sign.
func opposed(a, b, c float64) bool {
	return !(a > 0 && b > 0 && c > 0 || a < 0 && b < 0 && c < 0)
}

// mostTurns is how many a cubic has at most.
const mostTurns = 6

// turns appends the parameters inside (0, 1), rising, at which the piece has an
// extreme of r or z or an inflection: the roots of r', z' and r'z" - z'r".
func (b *cubic) turns(ts []float64) []float64 {
	// derivative as a quadratic in t: d0 + d1 t + d2 t^2
	quad := func(a, c, d, e float64) (q0, q1, q2 float64) {
		x, y, w := c-a, d-c, e-d
		return x, 2 * (y - x), x - 2*y + w
	}
	r0, r1, r2 := quad(b[0].R, b[1].R, b[2].R, b[3].R)
	z0, z1, z2 := quad(b[0].Z, b[1].Z, b[2].Z, b[3].Z)
	if opposed(b[1].R-b[0].R, b[2].R-b[1].R, b[3].R-b[2].R) {
		ts = roots(ts, r0, r1, r2)
	}
	if opposed(b[1].Z-b[0].Z, b[2].Z-b[1].Z, b[3].Z-b[2].Z) {
		ts = roots(ts, z0, z1, z2)
	}
	// the cubic terms of r'z" - z'r" cancel
	if c0, c1, c2 := r0*z1-z0*r1, 2*(r0*z2-z0*r2), r1*z2-z1*r2; opposed(c0, c0+c1/2, c0+c1+c2) {
		ts = roots(ts, c0, c1, c2)
	}
	if len(ts) < 2 { // nearly always
		return ts
	}
	slices.Sort(ts)
	return slices.CompactFunc(ts, func(a, b float64) bool { return math.Abs(b-a) < 1e-6 })
}

// roots appends the roots of c0 + c1 t + c2 t^2 that lie inside (0, 1).
func roots(ts []float64, c0, c1, c2 float64) []float64 {
	scale := math.Abs(c0) + math.Abs(c1) + math.Abs(c2)
	if scale == 0 {
		return ts
	}
	if math.Abs(c2) < 1e-12*scale {
		if c1 != 0 {
			ts = within(ts, -c0/c1)
		}
		return ts
	}
	disc := c1*c1 - 4*c2*c0
	if disc <= 0 {
		return ts
	}
	q := -(c1 + math.Copysign(math.Sqrt(disc), c1)) / 2
	ts = within(ts, q/c2)
	if q != 0 {
		ts = within(ts, c0/q)
	}
	return ts
}

// within appends a parameter that lies inside (0, 1).
func within(ts []float64, t float64) []float64 {
	const edge = 1e-6
	if t > edge && t < 1-edge {
		return append(ts, t)
	}
	return ts
}

// wrap brings an angle into (-pi, pi].
func wrap(a float64) float64 {
	for a > math.Pi {
		a -= 2 * math.Pi
	}
	for a <= -math.Pi {
		a += 2 * math.Pi
	}
	return a
}
