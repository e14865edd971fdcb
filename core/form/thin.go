package form

// Thin drops points of a polyline that lie within tol (mm) of the chord of
// those kept (Douglas and Peucker 1973). Points marked keep stay. index tells,
// for each point of the input, its place in the output or -1.
func Thin(pts []Point, keep []bool, tol float64) (out []Point, index []int) {
	stay := make([]bool, len(pts))
	a := 0
	for b := 1; b < len(pts); b++ {
		if keep[b] || b == len(pts)-1 {
			thin(pts, stay, a, b, tol)
			a = b
		}
	}
	index = make([]int, len(pts))
	for i, p := range pts {
		index[i] = -1
		if stay[i] {
			index[i] = len(out)
			out = append(out, p)
		}
	}
	return out, index
}

func thin(pts []Point, stay []bool, a, b int, tol float64) {
	stay[a], stay[b] = true, true
	far, at := tol, -1
	for i := a + 1; i < b; i++ {
		if d := distanceToChord(pts[i], pts[a], pts[b]); d > far {
			far, at = d, i
		}
	}
	if at > 0 {
		thin(pts, stay, a, at, tol)
		thin(pts, stay, at, b, tol)
	}
}

// distanceToChord is the distance from p to the chord a-b, mm.
func distanceToChord(p, a, b Point) float64 {
	d, e := b.Sub(a), p.Sub(a)
	l := d.R*d.R + d.Z*d.Z
	if l == 0 {
		return p.Dist(a)
	}
	t := (e.R*d.R + e.Z*d.Z) / l
	if t < 0 {
		t = 0
	} else if t > 1 {
		t = 1
	}
	return p.Dist(a.Lerp(b, t))
}
