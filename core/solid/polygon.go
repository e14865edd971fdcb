package solid

// Triangles of a planar polygon with holes, using its own corners and no
// others, so that the walls that stand on its edges share their vertices.
// Method: holes are joined to the outline by bridges and ears are clipped,
// shortest cut first, with exact orientation tests (G. H. Meisters, "Polygons
// have ears", Amer. Math. Monthly 82, 1975; D. Eberly, "Triangulation by Ear
// Clipping", for the bridges); refine.go then trades slivers for better shapes.
// A grid keeps the look-up of corners inside an ear local.
//
// Limits: loops must be simple and must not touch one another; those that are
// not are refused (polygonsound.go).

import (
	"fmt"
	"math"
	"sort"
)

// Triangulate covers the polygon whose outline and holes are loops of indices
// into p: the first loop is the outline, counterclockwise; the others are holes,
// clockwise. The triangles are counterclockwise and use those indices. Points
// on a straight stretch are kept as corners. An error says what is wrong with
// the loops.
func Triangulate(p [][2]float64, loops ...[]int32) ([][3]int32, error) {
	if err := soundLoops(p, loops); err != nil {
		return nil, err
	}
	ring, err := bridged(p, loops)
	if err != nil {
		return nil, err
	}
	tris, err := clipEars(p, ring)
	if err != nil {
		return nil, err
	}
	twin, err := checked(p, tris, loops)
	if err != nil {
		return nil, err
	}
	refine(p, tris, twin)
	return tris, nil
}

// CheckTriangles says what is wrong with a triangulation of the loops, or nil:
// every triangle counterclockwise, every edge of a loop used once and in its
// direction, every other edge used once each way, and the areas sum to that of
// the polygon. For simple loops these together leave no gap and no overlap.
func CheckTriangles(p [][2]float64, tris [][3]int32, loops ...[]int32) error {
	_, err := checked(p, tris, loops)
	return err
}

// checked is CheckTriangles, with the twins of the edges that it has found.
func checked(p [][2]float64, tris [][3]int32, loops [][]int32) ([]int32, error) {
	want, got, span, corners := 0.0, 0.0, 0.0, 0
	next := make([]int32, len(p)) // along the loops: corner + 1
	for _, l := range loops {
		a := loopArea(p, l)
		want += a
		span += math.Abs(a)
		corners += len(l)
		for i, c := range l {
			next[c] = l[(i+1)%len(l)] + 1
		}
	}
	if need := corners + 2*len(loops) - 4; len(tris) != need {
		return nil, fmt.Errorf("%d triangles where a polygon of %d corners and %d holes has %d", len(tris), corners, len(loops)-1, need)
	}
	for _, t := range tris {
		if turns(&p[t[0]], &p[t[1]], &p[t[2]]) <= 0 {
			return nil, fmt.Errorf("triangle %v is flat or turned over", t)
		}
		got += loopArea(p, t[:])
	}
	if math.Abs(got-want) > 1e-9*span {
		return nil, fmt.Errorf("triangles cover %g of a polygon of area %g", got, want)
	}
	twin, ok := twinEdges(len(p), tris)
	if !ok {
		return nil, fmt.Errorf("an edge is used twice in one direction")
	}
	for h, o := range twin {
		t, k := h/3, h%3
		if onLoop := next[tris[t][k]] == tris[t][(k+1)%3]+1; onLoop != (o < 0) {
			return nil, fmt.Errorf("edge %d of triangle %v does not pair up", k, tris[t])
		} else if onLoop {
			corners--
		}
	}
	if corners != 0 {
		return nil, fmt.Errorf("%d edges of the loops belong to no triangle", corners)
	}
	return twin, nil
}

// loopArea is the signed area of a loop, positive counterclockwise.
func loopArea(p [][2]float64, loop []int32) float64 {
	if len(loop) == 0 {
		return 0
	}
	o, sum := p[loop[0]], 0.0
	for i := 1; i+1 < len(loop); i++ {
		a, b := p[loop[i]], p[loop[i+1]]
		sum += float64((a[0]-o[0])*(b[1]-o[1])) - float64((a[1]-o[1])*(b[0]-o[0]))
	}
	return sum / 2
}

// bridged joins the holes to the outline, leftmost hole first, and gives one
// closed walk that passes over each bridge twice.
func bridged(p [][2]float64, loops [][]int32) ([]int32, error) {
	ring := append([]int32(nil), loops[0]...)
	type hole struct {
		loop  []int32
		start int // its leftmost corner, the lowest of those
	}
	holes := make([]hole, 0, len(loops)-1)
	for _, l := range loops[1:] {
		s := 0
		for i := range l {
			if a, b := p[l[i]], p[l[s]]; a[0] < b[0] || a[0] == b[0] && a[1] < b[1] {
				s = i
			}
		}
		holes = append(holes, hole{l, s})
	}
	sort.SliceStable(holes, func(i, j int) bool {
		a, b := p[holes[i].loop[holes[i].start]], p[holes[j].loop[holes[j].start]]
		return a[0] < b[0] || a[0] == b[0] && a[1] < b[1]
	})
	for _, h := range holes {
		at := bridgeEnd(p, ring, h.loop[h.start])
		if at < 0 {
			return nil, fmt.Errorf("a hole lies outside the outline, or they cross")
		}
		walk := make([]int32, 0, len(ring)+len(h.loop)+2)
		walk = append(walk, ring[:at+1]...)
		walk = append(walk, h.loop[h.start:]...)
		walk = append(walk, h.loop[:h.start+1]...)
		walk = append(walk, ring[at:]...)
		ring = walk
	}
	return ring, nil
}

// bridgeEnd is the place in the ring, left of corner h of a hole, that is
// nearest to h among those that see it; -1 where there is none. There is one
// when h is the leftmost corner of all holes still to be joined and lies inside.
func bridgeEnd(p [][2]float64, ring []int32, h int32) int {
	q := p[h]
	square := make([]float64, len(ring)) // of the distance; none of those that are not to the left or do not see it
	for i, r := range ring {
		d := p[r]
		if square[i] = math.Inf(1); d[0] < q[0] || d[0] == q[0] && d[1] < q[1] {
			square[i] = float64((d[0]-q[0])*(d[0]-q[0])) + float64((d[1]-q[1])*(d[1]-q[1]))
		}
	}
	for { // nearly always one of the nearest sees it
		near, least := -1, math.Inf(1)
		for i, d := range square {
			if d < least {
				near, least = i, d
			}
		}
		if near < 0 || inWedge(p, ring, near, q) && unhidden(p, ring, p[ring[near]], q) {
			return near
		}
		square[near] = math.Inf(1)
	}
}

// inWedge says whether q lies strictly within the inner angle of the ring at i.
func inWedge(p [][2]float64, ring []int32, i int, q [2]float64) bool {
	n := len(ring)
	a, b, c := p[ring[(i+n-1)%n]], p[ring[i]], p[ring[(i+1)%n]]
	if orient2(a, b, c) > 0 {
		return orient2(a, b, q) > 0 && orient2(b, c, q) > 0
	}
	return orient2(a, b, q) > 0 || orient2(b, c, q) > 0
}

// unhidden says whether the segment from corner a of the ring to q meets the
// ring at a only.
func unhidden(p [][2]float64, ring []int32, a, q [2]float64) bool {
	c := p[ring[len(ring)-1]]
	for _, i := range ring {
		b := c
		c = p[i]
		if b == a || c == a {
			far := b
			if b == a {
				far = c
			}
			if orient2(a, q, far) == 0 && onSegment(far, a, q) {
				return false
			}
			continue
		}
		if segmentsMeet(a, q, b, c) {
			return false
		}
	}
	return true
}

func sameSide(s, t float64) bool { return s > 0 && t > 0 || s < 0 && t < 0 }

// onSegment says whether q, known to be on the line a b, is within a b.
func onSegment(q, a, b [2]float64) bool {
	return q[0] >= min(a[0], b[0]) && q[0] <= max(a[0], b[0]) && q[1] >= min(a[1], b[1]) && q[1] <= max(a[1], b[1])
}
