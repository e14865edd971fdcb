package solid

// A closed mesh made ready for questions of place: is a point well inside it,
// and which triangles are near another body. Unit normals, neighbours and the
// tree are computed once and serve every step of a simulated pull.

import "math"

// Body is a sound mesh with what Overlap and PullClear need of it. It keeps the
// mesh, which must not change as long as the body is used.
type Body struct {
	mesh   *Mesh
	tree   *tree
	normal []Vec
	next   [][3]int32 // the triangle across edge k, which runs from corner k
}

// NewBody prepares a mesh for which Check finds no flaw.
func NewBody(m *Mesh) *Body {
	b := &Body{mesh: m, tree: growTree(m.V, m.T), normal: make([]Vec, len(m.T)), next: make([][3]int32, len(m.T))}
	twin, _ := twinEdges(len(m.V), m.T)
	for i, t := range m.T {
		b.normal[i] = unit(m.normal2(t))
		for k := range 3 {
			b.next[i][k] = twin[3*i+k] / 3
		}
	}
	return b
}

func (b *Body) at(t int32) [3]Vec {
	i := b.mesh.T[t]
	return [3]Vec{b.mesh.V[i[0]], b.mesh.V[i[1]], b.mesh.V[i[2]]}
}

// Inside says whether p lies within the body, farther than tol from its
// surface.
func (b *Body) Inside(p Vec, tolMM float64) bool {
	if !b.tree.boxes[1].meets(box{p, p}) {
		return false
	}
	near := box{p, p}.grown(Vec{}, tolMM)
	if !b.tree.within(near, func(t int32) bool { return distance(p, b.at(t)) > tolMM }) {
		return false
	}
	// Rays in odd directions, until one passes clear of every edge.
	odd := false
	for k := range 8 {
		s, c := SinCosDeg(36.87 + 137.507764*float64(k))
		d := unit(Vec{c, s, 0.3137 - 0.0871*float64(k)})
		sure := true
		odd = false
		b.alongRay(p, d, func(t int32) bool {
			hit, ok := rayHits(p, d, b.at(t))
			if !ok {
				sure = false
			}
			odd = odd != hit
			return sure
		})
		if sure {
			break
		}
	}
	return odd
}

// alongRay calls f for triangles of the leaves that the ray meets.
func (b *Body) alongRay(p, d Vec, f func(t int32) bool) {
	inv := Vec{1 / d[0], 1 / d[1], 1 / d[2]}
	var stack [64]int
	stack[0] = 1
	for top := 1; top > 0; {
		top--
		n := stack[top]
		q := &b.tree.boxes[n]
		lo, hi := 0.0, math.Inf(1)
		for k := range 3 {
			u, v := (q.lo[k]-p[k])*inv[k], (q.hi[k]-p[k])*inv[k]
			lo, hi = max(lo, min(u, v)), min(hi, max(u, v))
		}
		if !(lo <= hi*(1+1e-12)) {
			continue
		}
		if n < b.tree.first {
			stack[top], stack[top+1] = 2*n+1, 2*n
			top += 2
			continue
		}
		for i, j := b.tree.leaf(n); i < j; i++ {
			if !f(b.tree.order[i]) {
				return
			}
		}
	}
}

// rayHits says whether the ray meets the triangle; ok is false where it passes
// too near an edge, or within the plane, to tell (T. Möller and B. Trumbore,
// "Fast, Minimum Storage Ray/Triangle Intersection", J. Graphics Tools 2, 1997).
func rayHits(p, d Vec, t [3]Vec) (hit, ok bool) {
	const eps = 1e-9
	e, f := sub(t[1], t[0]), sub(t[2], t[0])
	h := cross(d, f)
	det := dot(e, h)
	size := length(e) * length(f)
	s := sub(p, t[0])
	if math.Abs(det) <= eps*size {
		n := cross(e, f)
		return false, math.Abs(dot(s, n)) > 1e-6*length(n)
	}
	u := dot(s, h) / det
	q := cross(s, e)
	v := dot(d, q) / det
	w := 1 - u - v
	if u < -eps || v < -eps || w < -eps {
		return false, true
	}
	if dot(f, q)/det <= 0 {
		return false, true
	}
	return true, u > eps && v > eps && w > eps
}

// distance is from p to the nearest point of the triangle (C. Ericson,
// "Real-Time Collision Detection", 2005, 5.1.5).
func distance(p Vec, t [3]Vec) float64 {
	ab, ac, ap := sub(t[1], t[0]), sub(t[2], t[0]), sub(p, t[0])
	d1, d2 := dot(ab, ap), dot(ac, ap)
	if d1 <= 0 && d2 <= 0 {
		return length(ap)
	}
	bp := sub(p, t[1])
	d3, d4 := dot(ab, bp), dot(ac, bp)
	if d3 >= 0 && d4 <= d3 {
		return length(bp)
	}
	vc := d1*d4 - d3*d2
	if vc <= 0 && d1 >= 0 && d3 <= 0 {
		return length(sub(ap, scale(ab, d1/(d1-d3))))
	}
	cp := sub(p, t[2])
	d5, d6 := dot(ab, cp), dot(ac, cp)
	if d6 >= 0 && d5 <= d6 {
		return length(cp)
	}
	vb := d5*d2 - d1*d6
	if vb <= 0 && d2 >= 0 && d6 <= 0 {
		return length(sub(ap, scale(ac, d2/(d2-d6))))
	}
	va := d3*d6 - d5*d4
	if va <= 0 && d4 >= d3 && d5 >= d6 {
		return length(sub(bp, scale(sub(t[2], t[1]), (d4-d3)/((d4-d3)+(d5-d6)))))
	}
	den := 1 / (va + vb + vc)
	return length(sub(sub(ap, scale(ab, vb*den)), scale(ac, vc*den)))
}
