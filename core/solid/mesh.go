// Package solid makes closed triangle meshes by construction, checks them and
// writes them as files.
//
// A mesh here is never the result of a boolean operation. It is put together
// from strips of revolution or loft, planar faces with holes and natch domes,
// which share vertices by index, so that it is closed because it was built
// closed; Check, SelfIntersects and Overlap then say so of what is exported.
//
// Lengths are mm, volumes mm3. The frame is that of the pot: z up along the
// axis. Seen from outside a solid its triangles run counterclockwise.
package solid

import "math"

// Vec is a point or a direction in space, mm.
type Vec = [3]float64

// Mesh is an indexed triangle mesh: T holds indices into V. Its order is that
// in which it was built, so the same calls give the same bytes.
type Mesh struct {
	V []Vec
	T [][3]int32
}

// Append adds a copy of o, sharing nothing with what is there.
func (m *Mesh) Append(o *Mesh) {
	base := int32(len(m.V))
	m.V = append(m.V, o.V...)
	for _, t := range o.T {
		m.T = append(m.T, [3]int32{t[0] + base, t[1] + base, t[2] + base})
	}
}

// Merge is one mesh that holds copies of all.
func Merge(ms ...*Mesh) *Mesh {
	nv, nt := 0, 0
	for _, m := range ms {
		nv += len(m.V)
		nt += len(m.T)
	}
	out := &Mesh{V: make([]Vec, 0, nv), T: make([][3]int32, 0, nt)}
	for _, m := range ms {
		out.Append(m)
	}
	return out
}

// Clone is a copy that shares no memory.
func (m *Mesh) Clone() *Mesh { return Merge(m) }

// Bounds is the least box, axis by axis; both zero for a mesh of no vertices.
func (m *Mesh) Bounds() (lo, hi Vec) {
	if len(m.V) == 0 {
		return
	}
	x0, y0, z0 := m.V[0][0], m.V[0][1], m.V[0][2]
	x1, y1, z1 := x0, y0, z0
	for i := range m.V {
		v := &m.V[i]
		x, y, z := v[0], v[1], v[2]
		if x < x0 {
			x0 = x
		} else if x > x1 {
			x1 = x
		}
		if y < y0 {
			y0 = y
		} else if y > y1 {
			y1 = y
		}
		if z < z0 {
			z0 = z
		} else if z > z1 {
			z1 = z
		}
	}
	return Vec{x0, y0, z0}, Vec{x1, y1, z1}
}

// Size is the extent along x, y and z, mm.
func (m *Mesh) Size() Vec {
	lo, hi := m.Bounds()
	return sub(hi, lo)
}

// Volume is the signed volume in mm3, positive where triangles face outward:
// the sum of the prisms from its triangles down to one level (divergence theorem).
// It is the volume of the solid for a closed mesh only.
func (m *Mesh) Volume() float64 {
	if len(m.V) == 0 {
		return 0
	}
	o := m.V[0][2]
	sum := 0.0
	for _, t := range m.T {
		a, b, c := &m.V[t[0]], &m.V[t[1]], &m.V[t[2]]
		plan := float64((b[0]-a[0])*(c[1]-a[1])) - float64((b[1]-a[1])*(c[0]-a[0]))
		sum += float64(plan * ((a[2] - o) + (b[2] - o) + (c[2] - o)))
	}
	return sum / 6
}

// Area is the surface in mm2.
func (m *Mesh) Area() float64 {
	sum := 0.0
	for _, t := range m.T {
		sum += length(m.normal2(t))
	}
	return sum / 2
}

// normal2 is the outward normal of a triangle, twice its area long.
func (m *Mesh) normal2(t [3]int32) Vec {
	a := m.V[t[0]]
	return cross(sub(m.V[t[1]], a), sub(m.V[t[2]], a))
}

func sub(a, b Vec) Vec              { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func add(a, b Vec) Vec              { return Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func scale(a Vec, s float64) Vec    { return Vec{a[0] * s, a[1] * s, a[2] * s} }
func along(a, d Vec, s float64) Vec { return add(a, scale(d, s)) }
func dot(a, b Vec) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}
func cross(a, b Vec) Vec {
	return Vec{
		float64(a[1]*b[2]) - float64(a[2]*b[1]),
		float64(a[2]*b[0]) - float64(a[0]*b[2]),
		float64(a[0]*b[1]) - float64(a[1]*b[0]),
	}
}
func length(a Vec) float64 { return math.Sqrt(dot(a, a)) }
func unit(a Vec) Vec       { return scale(a, 1/length(a)) }
