package solid

// Moving meshes. Every move keeps a solid closed and facing outward: a mirror
// turns its triangles round as well. Quarter turns are exact, so that a piece
// turned and turned back has the very same vertices.

import "math"

// Translate moves the mesh by d.
func (m *Mesh) Translate(d Vec) {
	x, y, z := d[0], d[1], d[2]
	for i := range m.V {
		v := &m.V[i]
		v[0], v[1], v[2] = v[0]+x, v[1]+y, v[2]+z
	}
}

// RotateX, RotateY and RotateZ turn the mesh about an axis through the origin,
// counterclockwise seen from the axis' positive end, by degrees.
func (m *Mesh) RotateX(deg float64) { m.rotate(1, 2, deg) }

// RotateY: see RotateX.
func (m *Mesh) RotateY(deg float64) { m.rotate(2, 0, deg) }

// RotateZ: see RotateX.
func (m *Mesh) RotateZ(deg float64) { m.rotate(0, 1, deg) }

func (m *Mesh) rotate(i, j int, deg float64) {
	s, c := SinCosDeg(deg)
	for k := range m.V {
		v := &m.V[k]
		a, b := v[i], v[j]
		v[i] = float64(a*c) - float64(b*s)
		v[j] = float64(a*s) + float64(b*c)
	}
}

// TurnUp turns the mesh so that the direction d (any length but zero) points
// up: first about z until d lies in the xz plane, then about y.
func (m *Mesh) TurnUp(d Vec) {
	m.RotateZ(-math.Atan2(d[1], d[0]) * 180 / math.Pi)
	m.RotateY(-math.Atan2(math.Hypot(d[0], d[1]), d[2]) * 180 / math.Pi)
}

// Rest moves the mesh so that its lowest point has z = 0.
func (m *Mesh) Rest() {
	lo, _ := m.Bounds()
	m.Translate(Vec{0, 0, -lo[2]})
}

// Mirror reflects along one axis (0 x, 1 y, 2 z) through the origin.
func (m *Mesh) Mirror(axis int) {
	for i := range m.V {
		m.V[i][axis] = -m.V[i][axis]
	}
	for i, t := range m.T {
		m.T[i] = [3]int32{t[0], t[2], t[1]}
	}
}

// SinCosDeg is sine and cosine of an angle in degrees, exact at quarter turns
// and the same, up to sign and order, in all eight octants.
func SinCosDeg(deg float64) (sin, cos float64) {
	if deg < 0 || deg >= 360 {
		if deg = math.Mod(deg, 360); deg < 0 {
			deg += 360
		}
	}
	quarter := math.Floor(deg / 90)
	rest := deg - 90*quarter
	turned := rest > 45
	if turned {
		rest = 90 - rest
	}
	if k := int(4 * rest); float64(k) == 4*rest {
		sin, cos = quarterDegrees[k][0], quarterDegrees[k][1]
	} else {
		sin, cos = math.Sincos(rest * math.Pi / 180)
	}
	if turned {
		sin, cos = cos, sin
	}
	return quarters(sin, cos, int(quarter))
}

// quarterDegrees is sine and cosine of every quarter of a degree of an octant:
// most angles that are asked for are among them.
var quarterDegrees = func() (t [181][2]float64) {
	for k := range 180 {
		t[k][0], t[k][1] = math.Sincos(float64(k) / 4 * math.Pi / 180)
	}
	t[180] = [2]float64{math.Sqrt2 / 2, math.Sqrt2 / 2}
	return t
}()

// quarters turns an angle on by so many quarter turns.
func quarters(sin, cos float64, n int) (float64, float64) {
	switch n & 3 {
	case 1:
		sin, cos = cos, -sin
	case 2:
		sin, cos = -sin, -cos
	case 3:
		sin, cos = -cos, sin
	}
	return sin + 0, cos + 0 // no negative zero
}
