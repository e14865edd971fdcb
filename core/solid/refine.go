package solid

// Better-shaped triangles from the same corners: an edge between two triangles
// is turned to the other diagonal of their quadrilateral where that brings them
// nearer to Delaunay's (C. L. Lawson, "Software for C1 surface interpolation",
// 1977). A sliver that ear clipping left would otherwise vanish when a file
// rounds its corners. Every turn is checked with exact orientations, so the
// result stays a triangulation; a turn must gain by more than rounding, so the
// work ends.

import "math"

// refine turns edges of tris in place. Edges used by one triangle only, those
// of the outline and the holes, are kept.
func refine(p [][2]float64, tris [][3]int32) {
	type side struct{ t, k int32 } // edge k of triangle t runs from corner k
	across := make(map[[2]int32]side, 3*len(tris))
	work := make([][2]int32, 0, 3*len(tris))
	for t := range tris {
		for k := range 3 {
			e := [2]int32{tris[t][k], tris[t][(k+1)%3]}
			across[e] = side{int32(t), int32(k)}
			if e[0] > e[1] {
				work = append(work, e)
			}
		}
	}
	for budget := 64 * len(tris); len(work) > 0 && budget > 0; budget-- {
		e := work[len(work)-1]
		work = work[:len(work)-1]
		s, ok1 := across[e]
		o, ok2 := across[[2]int32{e[1], e[0]}]
		if !ok1 || !ok2 {
			continue
		}
		a, b := e[0], e[1]
		c, d := tris[s.t][(s.k+2)%3], tris[o.t][(o.k+2)%3]
		if !gains(p[a], p[b], p[c], p[d]) ||
			orient2(p[a], p[d], p[c]) <= 0 || orient2(p[d], p[b], p[c]) <= 0 {
			continue
		}
		delete(across, e)
		delete(across, [2]int32{b, a})
		tris[s.t] = [3]int32{a, d, c}
		tris[o.t] = [3]int32{d, b, c}
		for _, t := range [2]int32{s.t, o.t} {
			for k := range int32(3) {
				across[[2]int32{tris[t][k], tris[t][(k+1)%3]}] = side{t, k}
			}
		}
		work = append(work, [2]int32{a, d}, [2]int32{d, b}, [2]int32{b, c}, [2]int32{c, a})
	}
}

// gains says whether d lies clearly inside the circle through a, b, c.
func gains(a, b, c, d [2]float64) bool {
	ax, ay := a[0]-d[0], a[1]-d[1]
	bx, by := b[0]-d[0], b[1]-d[1]
	cx, cy := c[0]-d[0], c[1]-d[1]
	a2, b2, c2 := float64(ax*ax)+float64(ay*ay), float64(bx*bx)+float64(by*by), float64(cx*cx)+float64(cy*cy)
	bc1, bc2 := float64(bx*cy), float64(by*cx)
	ca1, ca2 := float64(cx*ay), float64(cy*ax)
	ab1, ab2 := float64(ax*by), float64(ay*bx)
	det := float64(a2*(bc1-bc2)) + float64(b2*(ca1-ca2)) + float64(c2*(ab1-ab2))
	size := a2*(math.Abs(bc1)+math.Abs(bc2)) + b2*(math.Abs(ca1)+math.Abs(ca2)) + c2*(math.Abs(ab1)+math.Abs(ab2))
	return det > 1e-10*size
}
