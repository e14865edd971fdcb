package solid

// Orientation predicates whose sign is right for every finite input whose
// products neither overflow nor underflow. A floating-point value with a proven
// error bound decides nearly always; where it cannot, the determinant is summed
// exactly as an expansion of non-overlapping terms. Method and error bounds:
// J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust
// Geometric Predicates", Discrete & Computational Geometry 18:305-363, 1997.

import "math"

const (
	roundOff     = 1.0 / (1 << 53)
	orient2Bound = (3 + 16*roundOff) * roundOff
	orient3Bound = (7 + 56*roundOff) * roundOff
)

// orient2 is positive where a, b, c turn counterclockwise, negative where
// clockwise, zero where they lie on one line. Only its sign is exact.
func orient2(a, b, c [2]float64) float64 { return turns(&a, &b, &c) }

// turns is orient2 of points that stay where they are.
func turns(a, b, c *[2]float64) float64 {
	l := float64((a[0] - c[0]) * (b[1] - c[1]))
	r := float64((a[1] - c[1]) * (b[0] - c[0]))
	det := l - r
	if bound := orient2Bound * (math.Abs(l) + math.Abs(r)); det > bound || -det > bound || bound == 0 {
		return det
	}
	ax, ay := diff(a[0], c[0]), diff(a[1], c[1])
	bx, by := diff(b[0], c[0]), diff(b[1], c[1])
	return top(plus(times(ax, by), negated(times(ay, bx))))
}

// orient3 is positive where d lies behind the triangle a, b, c, that is on the
// side from which it is seen clockwise; zero where the four lie in one plane.
// Only its sign is exact.
func orient3(a, b, c, d Vec) float64 {
	u, v, w := sub(a, d), sub(b, d), sub(c, d)
	vw1, vw2 := float64(v[0]*w[1]), float64(v[1]*w[0])
	wu1, wu2 := float64(w[0]*u[1]), float64(w[1]*u[0])
	uv1, uv2 := float64(u[0]*v[1]), float64(u[1]*v[0])
	det := float64(u[2]*(vw1-vw2)) + float64(v[2]*(wu1-wu2)) + float64(w[2]*(uv1-uv2))
	perm := (math.Abs(vw1)+math.Abs(vw2))*math.Abs(u[2]) +
		(math.Abs(wu1)+math.Abs(wu2))*math.Abs(v[2]) +
		(math.Abs(uv1)+math.Abs(uv2))*math.Abs(w[2])
	if bound := orient3Bound * perm; det > bound || -det > bound || bound == 0 {
		return det
	}
	var e [3][3]expansion
	for k, p := range [3]Vec{a, b, c} {
		for x := range 3 {
			e[k][x] = diff(p[x], d[x])
		}
	}
	minor := func(p, q [3]expansion) expansion {
		return plus(times(p[0], q[1]), negated(times(p[1], q[0])))
	}
	s := times(minor(e[1], e[2]), e[0][2])
	s = plus(s, times(minor(e[2], e[0]), e[1][2]))
	s = plus(s, times(minor(e[0], e[1]), e[2][2]))
	return top(s)
}

// expansion is an exact number: the sum of its terms, which do not overlap and
// grow in magnitude; zero terms are left out.
type expansion []float64

func diff(a, b float64) expansion {
	x := a - b
	bv := a - x
	av := x + bv
	return pack((a-av)+(bv-b), x)
}

func pack(lo, hi float64) expansion {
	switch {
	case lo == 0 && hi == 0:
		return nil
	case lo == 0:
		return expansion{hi}
	}
	return expansion{lo, hi}
}

// grow adds one number to e, in place where there is room.
func grow(e expansion, b float64) expansion {
	q := b
	out := e[:0]
	for _, t := range e {
		s := q + t
		tv := s - q
		if lo := (q - (s - tv)) + (t - tv); lo != 0 {
			out = append(out, lo)
		}
		q = s
	}
	if q != 0 {
		out = append(out, q)
	}
	return out
}

func plus(e, f expansion) expansion {
	out := append(make(expansion, 0, len(e)+len(f)), e...)
	for _, t := range f {
		out = grow(out, t)
	}
	return out
}

func times(e, f expansion) expansion {
	out := make(expansion, 0, 2*len(e)*len(f))
	for _, a := range e {
		for _, b := range f {
			p := float64(a * b)
			if lo := math.FMA(a, b, -p); lo != 0 {
				out = grow(out, lo)
			}
			out = grow(out, p)
		}
	}
	return out
}

func negated(e expansion) expansion {
	for i := range e {
		e[i] = -e[i]
	}
	return e
}

// top is the largest term, which has the sign of the whole.
func top(e expansion) float64 {
	if len(e) == 0 {
		return 0
	}
	return e[len(e)-1]
}
