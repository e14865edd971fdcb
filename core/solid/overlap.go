package solid

// Whether two solids share space, for the simulated pull. Parts of a mold touch
// along whole faces, and a part that slides out goes on touching along those
// that run with the pull: so touching must not count, however the two sides are
// cut into triangles. Two solids share space where some point of one's surface
// lies inside the other, or where their surfaces coincide and face the same way.
// The surfaces are split into stretches by the lines in which they meet; points
// to either side of every such line, and one of every stretch that meets
// nothing, are tested for being inside by more than the tolerance.
//
// Limit: an overlap less deep than the tolerance, or where the surfaces meet at
// less than about a degree and part by less than 64 tolerances, can be missed.

import "math"

// TouchMM is the default tolerance of Overlap and PullClear: solids that press
// into one another by less are said to touch. It lies well above what float32
// loses at the size of a mold and well below what a printer or plaster shows.
const TouchMM = 0.001

// Overlap says whether the two bodies share space deeper than tol mm, and gives
// a point of it.
func Overlap(a, b *Body, tolMM float64) (bool, Vec) {
	return overlapMoved(a, Vec{}, b, tolMM)
}

// PullHit is where a pull sticks: how far the moving part had come, which of
// the fixed bodies it met and a point that both then claim.
type PullHit struct {
	DistanceMM float64
	Fixed      int
	At         Vec
}

// PullClear moves a body by each distance along the direction (any length but
// zero) and says whether it shares no space with any of the fixed bodies; if it
// does, the first hit. Distances are tried in the order given.
func PullClear(moving *Body, fixed []*Body, dir Vec, distancesMM []float64, tolMM float64) (bool, PullHit) {
	d := unit(dir)
	for _, s := range distancesMM {
		for i, f := range fixed {
			if hit, at := overlapMoved(moving, scale(d, s), f, tolMM); hit {
				return false, PullHit{s, i, at}
			}
		}
	}
	return true, PullHit{}
}

// meeting is one comparison of body a, moved by d, with body b.
type meeting struct {
	a, b   *Body
	d      Vec
	tol    float64
	cutA   []bool // triangles that meet the other's surface along a line
	cutB   []bool
	sameA  []bool // triangles that the other has too, facing the other way
	sameB  []bool
	shared Vec // a point of both, once found
}

func overlapMoved(a *Body, d Vec, b *Body, tol float64) (bool, Vec) {
	if !a.tree.boxes[1].grown(d, tol).meets(b.tree.boxes[1]) {
		return false, Vec{}
	}
	m := &meeting{
		a: a, b: b, d: d, tol: tol,
		cutA: make([]bool, len(a.mesh.T)), cutB: make([]bool, len(b.mesh.T)),
		sameA: make([]bool, len(a.mesh.T)), sameB: make([]bool, len(b.mesh.T)),
	}
	if d == (Vec{}) {
		a.tree.pairs(b.tree, d, 0, func(i, j int32) bool {
			if opposite(a.at(i), b.at(j)) {
				m.sameA[i], m.sameB[j], m.cutA[i], m.cutB[j] = true, true, true, true
			}
			return true
		})
	}
	clear := a.tree.pairs(b.tree, d, tol, func(i, j int32) bool { return !m.pair(i, j) }) &&
		!m.stretches(a, m.cutA, m.inB) && !m.stretches(b, m.cutB, m.inA)
	return !clear, m.shared
}

// opposite says whether two triangles have the same corners in opposite order.
func opposite(s, t [3]Vec) bool {
	for k := range 3 {
		if s[0] == t[k] {
			return s[1] == t[(k+2)%3] && s[2] == t[(k+1)%3]
		}
	}
	return false
}

func (m *meeting) inA(p Vec) bool {
	if !m.a.Inside(sub(p, m.d), m.tol) {
		return false
	}
	m.shared = p
	return true
}

func (m *meeting) inB(p Vec) bool {
	if !m.b.Inside(p, m.tol) {
		return false
	}
	m.shared = p
	return true
}

// stretches tests one point of every stretch of a surface that no line cuts.
func (m *meeting) stretches(s *Body, cut []bool, in func(Vec) bool) bool {
	move := Vec{}
	if s == m.a {
		move = m.d
	}
	seen := make([]bool, len(cut))
	var work []int32
	for i := range cut {
		if cut[i] || seen[i] {
			continue
		}
		seen[i] = true
		work = append(work[:0], int32(i))
		// A stretch may lie against the other surface in part: try some more.
		for tries := 0; len(work) > 0; {
			t := work[len(work)-1]
			work = work[:len(work)-1]
			if tries < 8 {
				tries++
				if in(add(middle(s.at(t)), move)) {
					return true
				}
			}
			for _, n := range s.next[t] {
				if !cut[n] && !seen[n] {
					seen[n] = true
					work = append(work, n)
				}
			}
		}
	}
	return false
}

func middle(t [3]Vec) Vec { return scale(add(add(t[0], t[1]), t[2]), 1.0/3) }

// pair tests what two triangles show: the line in which they meet, or the area
// on which they lie on one another.
func (m *meeting) pair(i, j int32) bool {
	if m.sameA[i] && m.sameB[j] {
		return false
	}
	s, t := m.a.at(i), m.b.at(j)
	for k := range s {
		s[k] = add(s[k], m.d)
	}
	nt, ns := m.b.normal[j], m.a.normal[i]
	ds, ms := heights(s, t[0], nt)
	if ms > m.tol {
		return false
	}
	dt, mt := heights(t, s[0], ns)
	if mt > m.tol {
		return false
	}
	if flatTo(ds, m.tol) && flatTo(dt, m.tol) {
		return m.lieOn(i, j, s, t)
	}
	line := cross(ns, nt)
	if l := length(line); l > 1e-9 {
		line = scale(line, 1/l)
	} else {
		return false
	}
	s0, s1, ok := cutBy(s, ds, line)
	if !ok {
		return false
	}
	t0, t1, ok := cutBy(t, dt, line)
	if !ok {
		return false
	}
	lo, hi := max(s0.x, t0.x), min(s1.x, t1.x)
	if hi-lo <= m.tol {
		return false
	}
	m.cutA[i], m.cutB[j] = true, true
	mid := s0.p
	if s1.x > s0.x {
		mid = along(s0.p, sub(s1.p, s0.p), ((lo+hi)/2-s0.x)/(s1.x-s0.x))
	}
	return !m.sameA[i] && beside(mid, cross(line, ns), s, ns, m.tol, m.inB) ||
		!m.sameB[j] && beside(mid, cross(line, nt), t, nt, m.tol, m.inA)
}

// beside tests points of the triangle on both sides of a line through mid.
func beside(mid, across Vec, t [3]Vec, n Vec, tol float64, in func(Vec) bool) bool {
	for _, step := range [4]float64{4, -4, 64, -64} {
		p := along(mid, across, step*tol)
		if onTriangle(p, t, n) && in(p) {
			return true
		}
	}
	return false
}

func onTriangle(p Vec, t [3]Vec, n Vec) bool {
	for k := range 3 {
		if dot(cross(sub(t[(k+1)%3], t[k]), sub(p, t[k])), n) < 0 {
			return false
		}
	}
	return true
}

// heights are the distances of the corners from a plane, and the least size of
// a distance if all lie on one side, else zero.
func heights(s [3]Vec, o, n Vec) (h [3]float64, off float64) {
	for k, p := range s {
		h[k] = dot(sub(p, o), n)
	}
	if lo := min(h[0], h[1], h[2]); lo > 0 {
		off = lo
	} else if hi := max(h[0], h[1], h[2]); hi < 0 {
		off = -hi
	}
	return
}

func flatTo(h [3]float64, tol float64) bool {
	return math.Abs(h[0]) <= tol && math.Abs(h[1]) <= tol && math.Abs(h[2]) <= tol
}

// mark is a point on the line in which two planes meet, and its place along it.
type mark struct {
	p Vec
	x float64
}

// cutBy is the stretch of the line within the triangle whose corners have the
// given heights over the other's plane.
func cutBy(t [3]Vec, h [3]float64, line Vec) (lo, hi mark, ok bool) {
	const zero = 1e-9 // mm
	note := func(p Vec) {
		k := mark{p, dot(p, line)}
		if !ok || k.x < lo.x {
			lo = k
		}
		if !ok || k.x > hi.x {
			hi = k
		}
		ok = true
	}
	for k := range 3 {
		a, b := h[k], h[(k+1)%3]
		if math.Abs(a) <= zero {
			note(t[k])
		} else if math.Abs(b) > zero && (a > 0) != (b > 0) {
			note(along(t[k], sub(t[(k+1)%3], t[k]), a/(a-b)))
		}
	}
	return
}

// lieOn is for triangles in one plane: where they cover one another and face
// the same way, both bodies lie behind them.
func (m *meeting) lieOn(i, j int32, s, t [3]Vec) bool {
	ns, nt := m.a.normal[i], m.b.normal[j]
	area := clip(s, t, nt)
	if len(area) < 3 {
		return false
	}
	mid, wide := Vec{}, 0.0
	for k, p := range area {
		mid = add(mid, scale(p, 1/float64(len(area))))
		wide += length(cross(sub(p, area[0]), sub(area[(k+1)%len(area)], area[0]))) / 2
	}
	if wide <= m.tol*m.tol {
		return false
	}
	m.cutA[i], m.cutB[j] = true, true
	if dot(ns, nt) < 0 {
		return false
	}
	p := along(mid, nt, -4*m.tol)
	return m.inA(p) && m.inB(p)
}

// clip is the part of triangle s over triangle t, both in the plane of normal n
// (I. E. Sutherland and G. W. Hodgman, "Reentrant polygon clipping", 1974).
func clip(s, t [3]Vec, n Vec) []Vec {
	poly := append(make([]Vec, 0, 9), s[0], s[1], s[2])
	for k := range 3 {
		in := cross(n, sub(t[(k+1)%3], t[k]))
		kept := make([]Vec, 0, len(poly)+1)
		for x, p := range poly {
			q := poly[(x+1)%len(poly)]
			a, b := dot(sub(p, t[k]), in), dot(sub(q, t[k]), in)
			if a >= 0 {
				kept = append(kept, p)
			}
			if a > 0 && b < 0 || a < 0 && b > 0 {
				kept = append(kept, along(p, sub(q, p), a/(a-b)))
			}
		}
		if poly = kept; len(poly) == 0 {
			return nil
		}
	}
	return poly
}
