package solid

// Whether a mesh passes through or touches itself. Every pair of triangles whose
// boxes meet is tested with exact orientations on the coordinates that a file
// holds (float32), so the answer is right for the exported solid: neighbours
// may share the vertices and edges that they name in common and nothing else.

// SelfIntersects says whether two triangles of the mesh meet anywhere but in
// shared vertices and edges, and which two.
func SelfIntersects(m *Mesh) (bool, [2]int32) {
	v := rounded(m)
	var pair [2]int32
	clean := growTree(v, m.T).selfPairs(func(a, b int32) bool {
		if !trianglesMeet(v, m.T[a], m.T[b]) {
			return true
		}
		pair = [2]int32{min(a, b), max(a, b)}
		return false
	})
	return !clean, pair
}

// trianglesMeet says whether two triangles have a point in common apart from
// the vertices and the edge that they name in common.
func trianglesMeet(v []Vec, s, t [3]int32) bool {
	var i, j [3]int // places of shared vertices in s and in t
	n := 0
	for x, a := range s {
		for y, b := range t {
			if a == b {
				i[n%3], j[n%3] = x, y
				n++
			}
		}
	}
	corner := func(t [3]int32, k int) Vec { return v[t[k%3]] }
	switch n {
	case 0:
		ts := [3]Vec{v[s[0]], v[s[1]], v[s[2]]}
		tt := [3]Vec{v[t[0]], v[t[1]], v[t[2]]}
		return !parted(&ts, &tt, 0) && !parted(&tt, &ts, 0) && apartMeet(ts, tt)
	case 1:
		ts := [3]Vec{corner(s, i[0]), corner(s, i[0]+1), corner(s, i[0]+2)}
		tt := [3]Vec{corner(t, j[0]), corner(t, j[0]+1), corner(t, j[0]+2)}
		return !parted(&ts, &tt, 1) && !parted(&tt, &ts, 1) &&
			(edgeMeets(ts[1], ts[2], tt) || edgeMeets(tt[1], tt[2], ts))
	case 2:
		a, b := v[s[i[0]]], v[s[i[1]]]
		c, d := corner(s, 3-i[0]-i[1]), corner(t, 3-j[0]-j[1])
		ab := sub(b, a)
		m, n := cross(ab, sub(c, a)), cross(ab, sub(d, a))
		if fold := dot(m, n); fold < 0 && fold*fold > 1e-12*dot(m, m)*dot(n, n) {
			return false // they open away from one another
		}
		if orient3(a, b, c, d) != 0 {
			return false
		}
		flat := flatten([3]Vec{a, b, c})
		return sameSide(orient2(flat(a), flat(b), flat(c)), orient2(flat(a), flat(b), flat(d)))
	}
	return true
}

// parted says whether the plane of triangle s, or one upright on it along an
// edge, clearly has t on its far side: most pairs are settled so, without exact
// arithmetic. With shared = 1 the triangles have their first corner in common,
// and only planes through it count.
func parted(s, t *[3]Vec, shared int) bool {
	e, f := sub(s[1], s[0]), sub(s[2], s[0])
	n := cross(e, f)
	if side := beyond(s[0], n, t, shared); side != 0 {
		return true
	}
	return beyond(s[0], cross(e, n), t, shared) > 0 ||
		beyond(s[0], cross(n, f), t, shared) > 0 ||
		shared == 0 && beyond(s[1], cross(sub(s[2], s[1]), n), t, 0) > 0
}

// beyond is 1 where the corners of t, from the first unshared on, clearly lie
// before the plane through o of normal n, -1 where behind, 0 where neither.
func beyond(o, n Vec, t *[3]Vec, shared int) int {
	side := 0
	nn := 1e-18 * dot(n, n)
	for _, p := range t[shared:] {
		d := sub(p, o)
		h := dot(d, n)
		if h*h <= nn*dot(d, d) {
			return 0
		}
		way := 1
		if h < 0 {
			way = -1
		}
		if side != 0 && way != side {
			return 0
		}
		side = way
	}
	return side
}

// apartMeet is for triangles that share no vertex.
func apartMeet(s, t [3]Vec) bool {
	for range 2 {
		a, b, c := orient3(s[0], s[1], s[2], t[0]), orient3(s[0], s[1], s[2], t[1]), orient3(s[0], s[1], s[2], t[2])
		if a > 0 && b > 0 && c > 0 || a < 0 && b < 0 && c < 0 {
			return false
		}
		s, t = t, s
	}
	for k := range 3 {
		if edgeMeets(s[k], s[(k+1)%3], t) || edgeMeets(t[k], t[(k+1)%3], s) {
			return true
		}
	}
	return false
}

// edgeMeets says whether the segment p q and the triangle have a point in
// common, ends and edges included.
func edgeMeets(p, q Vec, t [3]Vec) bool {
	a, b := orient3(t[0], t[1], t[2], p), orient3(t[0], t[1], t[2], q)
	if sameSide(a, b) {
		return false
	}
	if a == 0 && b == 0 {
		return flatEdgeMeets(p, q, t)
	}
	u, v, w := orient3(p, q, t[0], t[1]), orient3(p, q, t[1], t[2]), orient3(p, q, t[2], t[0])
	return u >= 0 && v >= 0 && w >= 0 || u <= 0 && v <= 0 && w <= 0
}

// flatEdgeMeets is edgeMeets within the triangle's plane.
func flatEdgeMeets(p, q Vec, t [3]Vec) bool {
	flat := flatten(t)
	a, b := flat(p), flat(q)
	c := [3][2]float64{flat(t[0]), flat(t[1]), flat(t[2])}
	in := true
	way := orient2(c[0], c[1], c[2])
	for k := range 3 {
		d, e := c[k], c[(k+1)%3]
		side := orient2(d, e, a)
		if side != 0 && !sameSide(side, way) {
			in = false
		}
		if segmentsMeet(a, b, d, e) {
			return true
		}
	}
	return in
}

// segmentsMeet says whether two segments of the plane have a point in common.
func segmentsMeet(a, b, c, d [2]float64) bool {
	for k := range 2 {
		lo, hi := span2(a[k], b[k])
		from, to := span2(c[k], d[k])
		if hi < from || to < lo {
			return false
		}
	}
	return !sameSide(turns(&a, &b, &c), turns(&a, &b, &d)) && !sameSide(turns(&c, &d, &a), turns(&c, &d, &b))
}

// flatten drops the coordinate along which the triangle's normal is longest.
func flatten(t [3]Vec) func(Vec) [2]float64 {
	n := cross(sub(t[1], t[0]), sub(t[2], t[0]))
	k := 0
	for i := range n {
		if n[i]*n[i] > n[k]*n[k] {
			k = i
		}
	}
	i, j := (k+1)%3, (k+2)%3
	return func(p Vec) [2]float64 { return [2]float64{p[i], p[j]} }
}
