// What the picture would show without the pot: the colours along the border of
// the crop, carried inward by a bilinearly blended patch (Coons 1967), which is
// exact for backdrops that shade from side to side, from top to bottom, or
// change at a level table edge. Limit: a pattern inside the backdrop.

package trace

import (
	"math"
	"slices"
)

// backdrop is how far each pixel of the plane departs from what stands behind.
type backdrop struct {
	d      []float32 // colour distance, Delta E (CIE 1976)
	shadow []bool    // darker and no other colour: could be cast shadow
	noise  float64   // the border's own scatter, Delta E
}

// sides of the border in the order of series
const (
	north = iota
	south
	west
	east
)

// jumpDeltaE tells the backdrop from something that reaches into the border.
const jumpDeltaE = 15

func newBackdrop(c *plane) *backdrop {
	n := c.w * c.h
	s := borderSeries(c)
	b := &backdrop{d: make([]float32, n), shadow: make([]bool, n)}
	b.noise = borderNoise(c, s)
	corner := [4]colour{} // nw, ne, sw, se
	corner[0] = mid(s[north][0], s[west][0])
	corner[1] = mid(s[north][c.w-1], s[east][0])
	corner[2] = mid(s[south][0], s[west][c.h-1])
	corner[3] = mid(s[south][c.w-1], s[east][c.h-1])
	i := 0
	quiet := float32(3 * b.noise)
	for y := range c.h {
		v := (float32(y) + 0.5) / float32(c.h)
		for x := range c.w {
			u := (float32(x) + 0.5) / float32(c.w)
			var m colour
			for k := range 3 {
				m[k] = (1-u)*s[west][y][k] + u*s[east][y][k] + (1-v)*s[north][x][k] + v*s[south][x][k] -
					((1-u)*(1-v)*corner[0][k] + u*(1-v)*corner[1][k] + (1-u)*v*corner[2][k] + u*v*corner[3][k])
			}
			dl, da, db := c.l[i]-m[0], c.a[i]-m[1], c.b[i]-m[2]
			b.d[i] = sqrt32(dl*dl + da*da + db*db)
			if dl < -3 && m[0] > 1 && c.l[i] > 0.25*m[0] {
				// less of the same light scales a* and b* as L* + 16 (CIE 1976)
				rho := (c.l[i] + 16) / (m[0] + 16)
				ra, rb := c.a[i]-rho*m[1], c.b[i]-rho*m[2]
				b.shadow[i] = sqrt32(ra*ra+rb*rb) < quiet-0.2*dl
			}
			i++
		}
	}
	return b
}

func sqrt32(v float32) float32 { return float32(math.Sqrt(float64(v))) }

type colour [3]float32

func mid(a, b colour) colour {
	return colour{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2}
}

func (a colour) dist(b colour) float32 {
	x, y, z := a[0]-b[0], a[1]-b[1], a[2]-b[2]
	return sqrt32(x*x + y*y + z*z)
}

// borderSeries is the colour along each side, a few pixels deep, smoothed by a
// running median, and mended where something other than the backdrop reaches
// into one side: there the opposite side stands in for it.
func borderSeries(c *plane) [4][]colour {
	var s [4][]colour
	depth := max(min(c.w, c.h)/60, 1)
	for side := range s {
		n := c.w
		if side >= west {
			n = c.h
		}
		raw := make([]colour, n)
		for i := range raw {
			for k := range depth {
				var at int
				switch side {
				case north:
					at = k*c.w + i
				case south:
					at = (c.h-1-k)*c.w + i
				case west:
					at = i*c.w + k
				case east:
					at = i*c.w + c.w - 1 - k
				}
				raw[i][0] += c.l[at]
				raw[i][1] += c.a[at]
				raw[i][2] += c.b[at]
			}
			for k := range 3 {
				raw[i][k] /= float32(depth)
			}
		}
		s[side] = runningMedian(raw, max(n/60, 2))
	}
	mend(s[west], s[east])
	mend(s[north], s[south])
	return s
}

// mend repairs rows in which the two sides disagree: the side that departs more
// from the common colour of both takes the other's.
func mend(a, b []colour) {
	both := append(slices.Clone(a), b...)
	usual := medianColour(both)
	for i := range a {
		da, db := a[i].dist(usual), b[i].dist(usual)
		if a[i].dist(b[i]) < jumpDeltaE {
			continue
		}
		if da > 2*db {
			a[i] = b[i]
		} else if db > 2*da {
			b[i] = a[i]
		}
	}
}

func medianColour(s []colour) colour {
	var out colour
	v := make([]float32, len(s))
	for k := range 3 {
		for i := range s {
			v[i] = s[i][k]
		}
		slices.Sort(v)
		out[k] = v[len(v)/2]
	}
	return out
}

func runningMedian(s []colour, reach int) []colour {
	out := make([]colour, len(s))
	for i := range s {
		out[i] = medianColour(s[max(i-reach, 0):min(i+reach+1, len(s))])
	}
	return out
}

// borderNoise is the median distance between border pixels and their series.
func borderNoise(c *plane, s [4][]colour) float64 {
	var d []float32
	add := func(i int, m colour) {
		d = append(d, colour{c.l[i], c.a[i], c.b[i]}.dist(m))
	}
	for x := range c.w {
		add(x, s[north][x])
		add((c.h-1)*c.w+x, s[south][x])
	}
	for y := range c.h {
		add(y*c.w, s[west][y])
		add(y*c.w+c.w-1, s[east][y])
	}
	slices.Sort(d)
	return float64(d[len(d)/2])
}

// split is the distance that parts the pot from its surroundings best (Otsu
// 1979), held between what the border's noise forbids and what an eye sees.
func (b *backdrop) split() float32 {
	var hist [256]int
	for _, d := range b.d {
		hist[min(int(2*d), 255)]++
	}
	total, sum := 0.0, 0.0
	for i, n := range hist {
		total += float64(n)
		sum += float64(i) * float64(n)
	}
	best, at := 0.0, 0
	w0, s0 := 0.0, 0.0
	for i, n := range hist {
		w0 += float64(n)
		s0 += float64(i) * float64(n)
		if w0 == 0 || w0 == total {
			continue
		}
		m0, m1 := s0/w0, (sum-s0)/(total-w0)
		if v := w0 * (total - w0) * (m0 - m1) * (m0 - m1); v > best {
			best, at = v, i
		}
	}
	least := max(5, 5*b.noise)
	return float32(min(max(float64(at+1)/2, least), max(22, least)))
}
