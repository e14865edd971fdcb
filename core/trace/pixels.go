// The picture and its coarse twin. All the pixels are touched once at most, and
// then sparsely: the outline is found on a picture of a few hundred pixels and
// only its neighbourhood is looked at again in full.

package trace

import (
	"math"
	"sync"
)

// pt is a place in the picture, pixels.
type pt struct{ x, y float64 }

func (p pt) add(q pt) pt             { return pt{p.x + q.x, p.y + q.y} }
func (p pt) sub(q pt) pt             { return pt{p.x - q.x, p.y - q.y} }
func (p pt) mul(s float64) pt        { return pt{p.x * s, p.y * s} }
func (p pt) dot(q pt) float64        { return p.x*q.x + p.y*q.y }
func (p pt) length() float64         { return math.Sqrt(p.x*p.x + p.y*p.y) }
func (p pt) dist(q pt) float64       { return p.sub(q).length() }
func (p pt) lerp(q pt, t float64) pt { return pt{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)} }

// picture is RGBA rows and the part of them that is looked at.
type picture struct {
	w, h           int
	pix            []byte
	x0, y0, x1, y1 int // the crop, half open
}

// rgb is a pixel over magenta, which no pot and no backdrop is, so that a
// picture that is cut out already stays so.
func (p *picture) rgb(x, y int) (r, g, b int32) {
	i := 4 * (y*p.w + x)
	q := p.pix[i : i+4 : i+4]
	r, g, b = int32(q[0]), int32(q[1]), int32(q[2])
	if a := int32(q[3]); a < 255 {
		r = (r*a + 255*(255-a)) / 255
		g = g * a / 255
		b = (b*a + 255*(255-a)) / 255
	}
	return r, g, b
}

// colour is a smoothed sample: the mean of n by n points spread over a square
// of the given width about (x, y).
func (p *picture) colour(x, y, width float64, n int) (c [3]float32) {
	if n <= 1 {
		return p.between(x, y)
	}
	for j := range n {
		for i := range n {
			s := p.between(x+width*((float64(i)+0.5)/float64(n)-0.5), y+width*((float64(j)+0.5)/float64(n)-0.5))
			c[0] += s[0]
			c[1] += s[1]
			c[2] += s[2]
		}
	}
	m := 1 / float32(n*n)
	return [3]float32{c[0] * m, c[1] * m, c[2] * m}
}

// between is the bilinear sample at (x, y), the border repeated.
func (p *picture) between(x, y float64) [3]float32 {
	x -= 0.5
	y -= 0.5
	fx, fy := math.Floor(x), math.Floor(y)
	u, v := float32(x-fx), float32(y-fy)
	ix, iy := int(fx), int(fy)
	xa, xb := min(max(ix, 0), p.w-1), min(max(ix+1, 0), p.w-1)
	ya, yb := min(max(iy, 0), p.h-1), min(max(iy+1, 0), p.h-1)
	r0, g0, b0 := p.rgb(xa, ya)
	r1, g1, b1 := p.rgb(xb, ya)
	r2, g2, b2 := p.rgb(xa, yb)
	r3, g3, b3 := p.rgb(xb, yb)
	w0, w1, w2, w3 := (1-u)*(1-v), u*(1-v), (1-u)*v, u*v
	return [3]float32{
		float32(r0)*w0 + float32(r1)*w1 + float32(r2)*w2 + float32(r3)*w3,
		float32(g0)*w0 + float32(g1)*w1 + float32(g2)*w2 + float32(g3)*w3,
		float32(b0)*w0 + float32(b1)*w1 + float32(b2)*w2 + float32(b3)*w3,
	}
}

// plane is the coarse picture in CIE L*a*b* (1976), D65.
type plane struct {
	w, h    int
	k       int // pixels of the picture to one of the plane
	l, a, b []float32
}

// at is the index of a place of the picture in the plane, clamped.
func (c *plane) at(p *picture, x, y float64) int {
	ix := min(max(int((x-float64(p.x0))/float64(c.k)), 0), c.w-1)
	iy := min(max(int((y-float64(p.y0))/float64(c.k)), 0), c.h-1)
	return iy*c.w + ix
}

// shrink makes the plane of the crop, its longer side at most most pixels. Of a
// large square only a grid of 4 by 4 is read: the noise is that of 16 pixels,
// which is far below what decides here.
func shrink(p *picture, most int) *plane {
	cw, ch := p.x1-p.x0, p.y1-p.y0
	k := (max(cw, ch) + most - 1) / most
	c := &plane{w: max(cw/k, 1), h: max(ch/k, 1), k: k}
	n := c.w * c.h
	buf := make([]float32, 3*n)
	c.l, c.a, c.b = buf[:n], buf[n:2*n], buf[2*n:]
	step := max((k+3)/4, 1)
	lab := labTables()
	i := 0
	for y := range c.h {
		for x := range c.w {
			var r, g, b, m int32
			for v := step / 2; v < k; v += step {
				py := min(p.y0+y*k+v, p.y1-1)
				for u := step / 2; u < k; u += step {
					px := min(p.x0+x*k+u, p.x1-1)
					i := 4 * (py*p.w + px)
					q := p.pix[i : i+4 : i+4]
					if q[3] == 255 {
						r, g, b, m = r+int32(q[0]), g+int32(q[1]), b+int32(q[2]), m+1
						continue
					}
					dr, dg, db := p.rgb(px, py)
					r, g, b, m = r+dr, g+dg, b+db, m+1
				}
			}
			c.l[i], c.a[i], c.b[i] = lab.from(r/m, g/m, b/m)
			i++
		}
	}
	return c
}

// calm smooths the plane by the binomial filter 1 2 1, both ways, a few times.
func (c *plane) calm(times int) {
	row := make([]float32, max(c.w, c.h))
	pass := func(v []float32, n, step int) {
		for i := range n {
			row[i] = v[i*step]
		}
		for i := range n {
			v[i*step] = (row[max(i-1, 0)] + 2*row[i] + row[min(i+1, n-1)]) / 4
		}
	}
	for range times {
		for _, v := range [3][]float32{c.l, c.a, c.b} {
			for y := range c.h {
				pass(v[y*c.w:], c.w, 1)
			}
			for x := range c.w {
				pass(v[x:], c.h, c.w)
			}
		}
	}
}

// labTable holds the two functions of the conversion: the decoding of sRGB
// (IEC 61966-2-1) and the cube root of CIE 1976, by table.
type labTable struct {
	linear [256]float32
	root   [4097]float32
}

var labTables = sync.OnceValue(func() *labTable {
	t := new(labTable)
	for i := range t.linear {
		v := float64(i) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		t.linear[i] = float32(v)
	}
	for i := range t.root {
		v := float64(i) / 4096
		if v > 216.0/24389 {
			v = math.Cbrt(v)
		} else {
			v = (24389.0/27*v + 16) / 116
		}
		t.root[i] = float32(v)
	}
	return t
})

func (t *labTable) from(r, g, b int32) (l, a, bb float32) {
	lr, lg, lb := t.linear[r], t.linear[g], t.linear[b]
	f := func(v float32) float32 {
		s := v * 4096
		i := min(int(s), 4095)
		u := s - float32(i)
		return t.root[i] + u*(t.root[i+1]-t.root[i])
	}
	// sRGB to XYZ over the D65 white
	x := f((0.4124*lr + 0.3576*lg + 0.1805*lb) / 0.9505)
	y := f(0.2126*lr + 0.7152*lg + 0.0722*lb)
	z := f((0.0193*lr + 0.1192*lg + 0.9505*lb) / 1.089)
	return 116*y - 16, 500 * (x - y), 200 * (y - z)
}
