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
// of the outline and the holes, are kept. The tris must be a sound cover, twin as
// twinEdges gives it, which is kept true.
func refine(p [][2]float64, tris [][3]int32, twin []int32) {
	after := func(h int32) int32 { return h - h%3 + (h%3+1)%3 }
	from := func(h int32) int32 { return tris[h/3][h%3] }
	work := make([]int32, 0, len(twin))
	for h, o := range twin {
		if int32(h) < o {
			work = append(work, int32(h))
		}
	}
	join := func(h, o int32) {
		twin[h] = o
		if o >= 0 {
			twin[o] = h
		}
	}
	for budget := 64 * len(tris); len(work) > 0 && budget > 0; budget-- {
		h := work[len(work)-1]
		work = work[:len(work)-1]
		o := twin[h]
		if o < 0 {
			continue
		}
		// h runs from a to b, with c on its left and d on its right.
		bc, ad := after(h), after(o)
		ca, db := after(bc), after(ad)
		a, b, c, d := from(h), from(o), from(ca), from(db)
		pa, pb, pc, pd := &p[a], &p[b], &p[c], &p[d]
		if !gains(pa, pb, pc, pd) && !unfolds(pa, pb, pc, pd) || turns(pa, pd, pc) <= 0 || turns(pd, pb, pc) <= 0 {
			continue
		}
		tbc, tca, tad, tdb := twin[bc], twin[ca], twin[ad], twin[db]
		s, t := h/3, o/3
		tris[s] = [3]int32{a, d, c}
		tris[t] = [3]int32{d, b, c}
		join(3*s, tad)
		join(3*s+1, 3*t+2)
		join(3*s+2, tca)
		join(3*t, tdb)
		join(3*t+1, tbc)
		work = append(work, 3*s, 3*s+2, 3*t, 3*t+1)
	}
}

// twinEdges is, for edge k of triangle t at place 3t+k, the place of the same
// edge in the other direction, or -1. It is not ok where a directed edge is
// used twice.
func twinEdges(points int, tris [][3]int32) (twin []int32, ok bool) {
	start, corner := corners(points, tris)
	twin = make([]int32, 3*len(tris))
	out := make([]int32, points) // by neighbour: place + 1 of the edge out to it
	ok = true
	for v := range points {
		fan := corner[start[v]:start[v+1]]
		for _, c := range fan {
			w := tris[c/3][(c%3+1)%3]
			ok = ok && out[w] == 0
			out[w] = c + 1
		}
		for _, c := range fan {
			in := c - c%3 + (c%3+2)%3 // the edge that comes in
			twin[in] = out[tris[in/3][in%3]] - 1
		}
		for _, c := range fan {
			out[tris[c/3][(c%3+1)%3]] = 0
		}
	}
	return twin, ok
}

// unfolds says whether one of the triangles abc and bad is without area, and
// neither of those that the other diagonal makes. Beside corners that lie far
// off gains cannot tell, as its rounding grows with their distance.
func unfolds(a, b, c, d *[2]float64) bool {
	return (flat(a, b, c) || flat(b, a, d)) && !flat(a, d, c) && !flat(d, b, c)
}

// flat says whether three points lie on a line but for rounding.
func flat(a, b, c *[2]float64) bool {
	far := 0.0
	for k := range 2 {
		lo, hi := span3(a[k], b[k], c[k])
		if hi-lo > far {
			far = hi - lo
		}
	}
	return math.Abs(turns(a, b, c)) <= 1e-9*far*far
}

// gains says whether d lies clearly inside the circle through a, b, c.
func gains(a, b, c, d *[2]float64) bool {
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
