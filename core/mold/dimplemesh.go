package mold

// The grid of the wall bent to its dimples. In a block the squares of cells
// about its centre become circles about the dimple: those within the rim lie on
// the ball, the one on the rim where ball and wall meet, those beyond between
// the rim and the block's edge, which is plain wall. Vertices move, none is added
// and none goes, so walls, seams and ends are laid as on a wall without dimples,
// and solids that touch share them bit for bit.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/solid"
)

// columns are the azimuths of a table's fixed steps with the columns of the blocks
// among them: within a block a column is moved to each of them.
func (d *dimples) columns(fixed []float64) []float64 {
	var list []float64
	for _, deg := range fixed {
		if !d.inBlock(deg) {
			list = append(list, deg)
		}
	}
	for k := range d.Around {
		columns := make([]float64, 0, 2*d.all+1)
		for p := -d.all; p <= d.all; p++ {
			columns = append(columns, d.column(k, float64(p)))
		}
		snapped := make([]bool, len(columns))
		for _, deg := range fixed {
			deg += 360 * math.Ceil((columns[0]-deg)/360) // within the turn from the block on
			best := -1
			if deg < columns[0]+1e-7 || deg > columns[2*d.all]-1e-7 || math.Abs(deg-columns[d.all]) < 1e-7 {
				continue
			}
			for p := 1; p < 2*d.all; p++ {
				if p != d.all && !snapped[p] && (best < 0 || math.Abs(columns[p]-deg) < math.Abs(columns[best]-deg)) &&
					deg > columns[p-1]+1e-7 && deg < columns[p+1]-1e-7 {
					best = p
				}
			}
			if best >= 0 {
				columns[best], snapped[best] = deg, true
			}
		}
		for _, deg := range columns {
			list = append(list, tidy(deg))
		}
	}
	return sorted(list)
}

// inBlock tells whether an azimuth lies within the block of a dimple.
func (d *dimples) inBlock(deg float64) bool {
	for k := range d.Around {
		if math.Abs(math.Remainder(deg-d.turn-360*float64(k)/float64(d.Around), 360)) < d.half-1e-7 {
			return true
		}
	}
	return false
}

// column is the azimuth in degrees of column p of dimple k, -all to all.
func (d *dimples) column(k int, p float64) float64 {
	at, c := d.turn+360*float64(k)/float64(d.Around), d.centre[k]
	switch t := p / float64(d.all); {
	case t <= -1:
		return at - d.half
	case t >= 1:
		return at + d.half
	case t < 0:
		return c + t*(c-at+d.half)
	default:
		return c + t*(at+d.half-c)
	}
}

// key names a point of the contour to a millionth of a mm, as it comes back
// from shifts along the axis.
type key [2]int64

// place is the Place of the pot's wall with its dimples.
func (d *dimples) place(s *Solids) solid.Place {
	plain := s.Place
	rows := map[key][]solid.Vec{}
	n := s.Turn.Steps()
	var like []solid.Vec
	for i := range d.rows {
		r := &d.rows[i]
		table := make([][]solid.Vec, 2*d.all+1)
		for q := range table {
			p := d.wall.At(r.at(float64(q-d.all), d.all))
			if q == 0 || q == 2*d.all {
				continue // plain wall
			}
			table[q] = make([]solid.Vec, n)
			for k := range n {
				table[q][k] = plain(p.R, p.Z, k)
			}
			for _, a := range [2]float64{math.Floor(p.R * 1e6), math.Ceil(p.R * 1e6)} {
				for _, b := range [2]float64{math.Floor(p.Z * 1e6), math.Ceil(p.Z * 1e6)} {
					rows[key{int64(a), int64(b)}] = table[q]
				}
			}
		}
		like = nil
		for k := range d.Around {
			turn := d.turn + 360*float64(k)/float64(d.Around)
			first := s.Turn.Step(d.column(k, float64(-d.all)))
			var block []solid.Vec
			sin, cos := 0.0, 1.0
			if d.Section().Round && d.centre[k] == turn {
				if like == nil {
					like = d.block(r, 0, -d.half*math.Pi/180, 0, d.half*math.Pi/180)
				}
				block = like
				sin, cos = solid.SinCosDeg(turn)
			} else {
				block = d.block(r, turn*math.Pi/180, (turn-d.half)*math.Pi/180, d.centre[k]*math.Pi/180, (turn+d.half)*math.Pi/180)
			}
			for q := 1; q < 2*d.all; q++ {
				for p := 1; p < 2*d.all; p++ {
					v := block[q*(2*d.all+1)+p]
					table[q][((first+p)%n+n)%n] = solid.Vec{v[0]*cos - v[1]*sin, v[0]*sin + v[1]*cos, v[2]}
				}
			}
		}
	}
	return func(r, z float64, i int) solid.Vec {
		if row, ok := rows[key{int64(math.Round(r * 1e6)), int64(math.Round(z * 1e6))}]; ok {
			if i %= n; i < 0 {
				i += n
			}
			return row[i]
		}
		return plain(r, z, i)
	}
}

// Section is the pot's, as it stands to the seams.
func (d *dimples) Section() *form.Section { return d.wall.Section }

// block are the vertices of a dimple's block, row by row, of a dimple at azimuth
// at whose columns reach from a0 by the centre to a1, in radians.
func (d *dimples) block(r *dimpleRow, at, a0, centre, a1 float64) []solid.Vec {
	n := 2*d.all + 1
	out := make([]solid.Vec, n*n)
	b := d.ball(d.wall, r.hollowRow, at)
	radius := d.wall.At(r.mid).R
	most := d.Diameter * 2
	apex, across := d.apex(r, &b, centre)
	level := b.Centre
	level[2] = apex[2]
	for j := range n {
		for i := range n {
			p, q := i-d.all, j-d.all
			ring := max(p, -p, q, -q)
			if ring == 0 {
				out[j*n+i] = apex
				continue
			}
			dx, dy := direction(p, q)
			t, _ := b.Rim(d.wall, r.mid, centre, dy, dx/radius, most)
			s, a := r.mid+t*dy, centre+t*dx/radius
			if ring > d.rim {
				share := float64(ring-d.rim) / float64(d.all-d.rim)
				edge := float64(d.all) / float64(ring)
				to := a1
				x := float64(p) * edge / float64(d.all)
				if x < 0 {
					to, x = a0, -x
				}
				s += share * (r.at(float64(q)*edge, d.all) - s)
				a += share * (centre + x*(to-centre) - a)
				out[j*n+i] = d.wall.On(s, a)
				continue
			}
			rim := d.wall.On(s, a)
			about := b.Centre
			switch {
			case p == 0:
				about = across
			case q == 0 && r.level:
				about = level
			}
			v := arc(apex, rim, about, float64(ring)/float64(d.rim))
			if q == 0 && r.level {
				v[2] = apex[2]
			}
			out[j*n+i] = v
		}
	}
	return out
}

// apex is the middle of the bent grid on the ball, straight behind the centre in
// the half-plane of its azimuth, and the middle of the circle that this
// half-plane cuts from the ball.
func (d *dimples) apex(r *dimpleRow, b *form.Ball, centre float64) (apex, across solid.Vec) {
	sin, cos := math.Sincos(centre)
	in := -(b.Normal[0]*cos + b.Normal[1]*sin)
	down := -b.Normal[2]
	if r.level {
		down = 0
	}
	l := math.Hypot(in, down)
	way := solid.Vec{in / l * cos, in / l * sin, down / l}
	from := d.wall.On(r.mid, centre)
	half, c := 0.0, b.Beyond(from)
	for k := range 3 {
		half += (from[k] - b.Centre[k]) * way[k]
	}
	t := -half + math.Sqrt(max(0, half*half-c))
	for k := range 3 {
		apex[k] = from[k] + t*way[k]
	}
	off := b.Centre[1]*cos - b.Centre[0]*sin
	return apex, solid.Vec{b.Centre[0] + off*sin, b.Centre[1] - off*cos, b.Centre[2]}
}

// direction is the way from the centre to a cell of the square, as that of the
// circle's point it becomes.
func direction(p, q int) (dx, dy float64) {
	x, y := float64(p), float64(q)
	if math.Abs(x) >= math.Abs(y) {
		dx, dy = math.Copysign(1, x), math.Tan(math.Pi/4*y/math.Abs(x))
	} else {
		dx, dy = math.Tan(math.Pi/4*x/math.Abs(y)), math.Copysign(1, y)
	}
	l := math.Hypot(dx, dy)
	return dx / l, dy / l
}

// arc is the point at share t of the arc from a to b about c.
func arc(a, b, c solid.Vec, t float64) solid.Vec {
	if t == 1 {
		return b
	}
	var u, v solid.Vec
	uu, vv, uv := 0.0, 0.0, 0.0
	for k := range 3 {
		u[k], v[k] = a[k]-c[k], b[k]-c[k]
		uu += u[k] * u[k]
		vv += v[k] * v[k]
		uv += u[k] * v[k]
	}
	w := math.Acos(max(-1, min(1, uv/math.Sqrt(uu*vv))))
	f, g := 1-t, t
	if sin := math.Sin(w); sin > 1e-9 {
		f, g = math.Sin((1-t)*w)/sin, math.Sin(t*w)/sin
	}
	for k := range 3 {
		c[k] += f*u[k] + g*v[k]
	}
	return c
}
