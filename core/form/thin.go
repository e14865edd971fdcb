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
	c := newChord(pts[a], pts[b])
	least := far * far * (1 - sure)
	for i := a + 1; i < b; i++ {
		if p := &pts[i]; !(c.square(p.R, p.Z) < least) {
			if d := distanceToChord(*p, pts[a], pts[b]); d > far {
				far, at = d, i
				least = far * far * (1 - sure)
			}
		}
	}
	if at > 0 {
		thin(pts, stay, a, at, tol)
		thin(pts, stay, at, b, tol)
	}
}

// chord is one that many points are held against.
type chord struct{ r, z, dr, dz, one float64 }

// sure is far beyond what rounding does to a square of a distance, relative to it.
const sure = 1e-6

func newChord(a, b Point) chord {
	dr, dz := b.R-a.R, b.Z-a.Z
	return chord{a.R, a.Z, dr, dz, 1 / (dr*dr + dz*dz)}
}

// square is the square of the distance to the chord, mm2, for telling the near from
// the far before any is measured; not a number where the chord has no length.
func (c *chord) square(r, z float64) float64 {
	r, z = r-c.r, z-c.z
	t := (r*c.dr + z*c.dz) * c.one
	if t < 0 {
		t = 0
	} else if t > 1 {
		t = 1
	}
	r, z = r-t*c.dr, z-t*c.dz
	return r*r + z*z
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
