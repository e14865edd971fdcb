// What the camera makes of a turned pot, and back. A point of the outline and
// its tangent span, with the lens, a plane that touches the pot; the normal of
// a surface of revolution meets the axis; the two together give the point of
// the profile in closed form. At an edge (rim, foot) the plane touches the
// edge's circle, whose every tangent plane has its trace square to the radius:
// the same formula then gives the edge for each point of its ellipse.
//
// Derivation: camera at (D, 0, zc), the pot's axis x = y = 0, the picture's
// plane x = 0. For the outline point (0, Y, Z) with tangent (0, dY, dZ) the
// plane's normal is m = (-D, Y, Z-zc) x (0, dY, dZ), so m_x = Y dZ - (Z-zc) dY
// and m_y = D dZ. The contact point P = (D(1-s), sY, zc + s(Z-zc)) satisfies
// P_x m_y = P_y m_x, hence s = D m_y / (D m_y + Y m_x).

package trace

import "math"

// farMM stands for a camera at no known distance: rays are parallel.
const farMM = 1e7

func (v Viewpoint) distance() float64 {
	if v.DistanceMM <= 0 {
		return farMM
	}
	return v.DistanceMM
}

// Invert is the profile point (r, z) whose surface shows at the outline point
// (y, z) of the plane through the axis, mm, where the outline has the tangent
// (dy, dz). ok is false where the outline is level (the middle of an ellipse),
// which tells nothing.
func (v Viewpoint) Invert(y, z, dy, dz float64) (r, zOut float64, ok bool) {
	d := v.distance()
	h := z - v.HeightMM
	mx, my := y*dz-h*dy, d*dz
	den := d*my + y*mx
	if den == 0 {
		return 0, 0, false
	}
	s := d * my / den
	if !(s > 0 && s < 2) {
		return 0, 0, false
	}
	return math.Hypot(d*(1-s), s*y), v.HeightMM + s*h, true
}

// Project is where the outline shows the profile point (r, z) of slope dr/dz.
// ok is false where the camera does not see the surface edge-on there: the
// profile turns away and the outline passes in front of it.
func (v Viewpoint) Project(r, z, slope float64) (y, zOut float64, ok bool) {
	d := v.distance()
	cos := (r + slope*(v.HeightMM-z)) / d
	if math.Abs(cos) > 1 {
		return 0, 0, false
	}
	s := d / (d - r*cos)
	return s * r * math.Sqrt(1-cos*cos), v.HeightMM + s*(z-v.HeightMM), true
}

// edgeHeight is the height of a circle of radius r whose outline meets the axis
// at height z in the picture: the near side of the circle for one above the
// lens at the top or below it at the foot, else (a rim seen from above) the far
// side.
func (v Viewpoint) edgeHeight(z, r float64, top bool) float64 {
	d := v.distance()
	if top && z < v.HeightMM {
		r = -r
	}
	return v.HeightMM + (z-v.HeightMM)*(d-r)/d
}

// arc is the part of a half outline that crosses the axis at the foot or at the
// top: an edge's ellipse, if it fits one.
type arc struct {
	edge   bool
	end    int     // index in the half at which the wall takes over
	a, b   float64 // half axes, pixels; b > 0 bulges away from the pot
	centre float64 // height of the ellipse's centre, pixels
	mid    float64 // height at the axis, pixels
}

// flattest is the largest b/a of an ellipse taken for an edge: a lens stands
// seldom nearer than three heights, unless the request says so.
func (c *Camera) flattest() float64 {
	if c.DistanceMM != nil && c.HeightMM != nil {
		return math.Max(0.35, math.Min(1.3*math.Abs(*c.HeightMM)/(*c.DistanceMM), 0.9))
	}
	return 0.35
}

// findArc looks at the half from its start (foot) or its end (top).
func findArc(p []pt, top bool, flattest float64) arc {
	n := len(p)
	at := func(i int) pt {
		if top {
			return p[n-1-i]
		}
		return p[i]
	}
	sign := 1.0
	if top {
		sign = -1
	}
	w := max(n/50, 4)
	heading := func(i, j int) float64 {
		d := at(j).sub(at(i))
		return math.Atan2(sign*d.y, d.x)
	}
	// the sharpest turn from level to wall
	most, end := 0.0, -1
	for i := w; i < n*45/100; i++ {
		h := heading(i, i+w)
		if t := h - heading(i-w, i); t > most && at(i).x > 4 {
			most, end = t, i
		}
		if h > 1.2 && heading(i-w, i) > 1.0 {
			break
		}
	}
	g := arc{end: w}
	if end < 0 || most < 0.2 {
		g.mid = at(0).y
		return g
	}
	g.end = end
	for i := max(end-w, 0); i <= end; i++ {
		g.a = max(g.a, at(i).x)
	}
	// v = centre - sign b sqrt(1 - (u/a)^2), linear in centre and b; where the
	// wall flares the ellipse is a little wider than the place where it shows
	inner, rms := 0.93*g.a, math.Inf(1)
	for k, a0 := 0, g.a; k <= 12; k++ {
		a := a0 * (1 + 0.005*float64(k))
		c, b, e := fitEllipse(at, end, inner, a, sign)
		if e < 0.99*rms {
			g.a, g.centre, g.b, rms = a, c, b, e
		}
	}
	if math.IsInf(rms, 1) {
		g.mid = at(0).y
		return g
	}
	g.mid = g.centre - sign*g.b
	g.edge = rms < max(1.5, 0.008*g.a) && math.Abs(g.b) < flattest*g.a && g.b > -max(2, 0.02*g.a)
	if !g.edge {
		g.mid = at(0).y
	}
	return g
}

// fitEllipse is the centre and the upright half axis of the ellipse of half
// width a through the points up to inner from the axis, and their rms distance.
func fitEllipse(at func(int) pt, end int, inner, a, sign float64) (centre, b, rms float64) {
	var s1, sx, sxx, sy, sxy, syy float64
	for i := 0; i < end; i++ {
		q := at(i)
		if q.x >= inner {
			continue
		}
		x := -sign * math.Sqrt(1-(q.x/a)*(q.x/a))
		y := q.y - at(0).y
		s1, sx, sxx, sy, sxy, syy = s1+1, sx+x, sxx+x*x, sy+y, sxy+x*y, syy+y*y
	}
	det := s1*sxx - sx*sx
	if det <= 1e-9 {
		return 0, 0, math.Inf(1)
	}
	c := (sy*sxx - sx*sxy) / det
	b = (s1*sxy - sx*sy) / det
	e := syy - c*sy - b*sxy
	return c + at(0).y, b, math.Sqrt(math.Max(e, 0) / s1)
}

// offset is the height difference in mm between an edge and the lens that its
// ellipse tells, and the ellipse centre's height less that of the lens, for a
// camera d mm away.
func (g arc) offset(mm, d float64) (q, centre float64) {
	a, b := g.a*mm, math.Max(g.b*mm, 0)
	r := a * d / math.Sqrt(a*a+d*d)
	q = b * (d*d - r*r) / (d * r)
	return q, q * d * d / (d*d - r*r)
}
