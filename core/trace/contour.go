// The runs joined to one profile polyline: corners where two runs meet, gaps
// where something hides the wall, foot and rim at the ends.

package trace

import (
	"math"
	"slices"

	"moldwright/core/words"
)

// contour is the whole profile as a polyline with its corners, foot at z = 0.
func (s *settled) contour() (p []rz, corner []bool) {
	add := func(q rz, sharp bool) {
		q = rz{math.Max(q.r, 0), q.z - s.low}
		if n := len(p); n > 0 && p[n-1].dist(q) < 1e-3 {
			corner[n-1] = corner[n-1] || sharp
			return
		}
		p, corner = append(p, q), append(corner, sharp)
	}
	pixel := math.Max(s.mm, 0.02)
	if s.foot != nil {
		add(rz{0, s.foot.z}, true)
		add(*s.foot, true)
	} else {
		add(rz{0, onAxis(s.runs[0].p)}, false)
	}
	for i, n := range s.runs {
		if i > 0 {
			before := s.runs[i-1].p
			a, b := before[len(before)-1], n.p[0]
			switch c, ok := meet(before, n.p, 6*trimPx*pixel); {
			case n.broken || a.dist(b) > 12*trimPx*pixel:
				why := words.Say("hidden")
				if n.broken {
					why = words.Say("brushed away")
				}
				s.gaps = append(s.gaps, Gap{math.Min(a.z, b.z) - s.low, math.Max(a.z, b.z) - s.low, why})
				add(a, !n.broken)
				add(b, !n.broken)
			case ok:
				add(c, true)
			default:
				add(rz{(a.r + b.r) / 2, (a.z + b.z) / 2}, true)
			}
		}
		for _, q := range n.p {
			add(q, false)
		}
	}
	last := s.runs[len(s.runs)-1].p
	if s.rim != nil {
		add(*s.rim, true)
	} else {
		back := slices.Clone(last)
		slices.Reverse(back)
		add(rz{0, onAxis(back)}, false)
	}
	return p, corner
}

// meet is where the end of one run and the start of the next run into one
// another, if that is within reach of both.
func meet(a, b []rz, reach float64) (rz, bool) {
	k, l := min(max(len(a)/30, 4), len(a)-1), min(max(len(b)/30, 4), len(b)-1)
	p, q := a[len(a)-1], b[0]
	u, v := a[len(a)-1-k], b[l]
	d, e := rz{p.r - u.r, p.z - u.z}, rz{q.r - v.r, q.z - v.z}
	det := d.r*e.z - d.z*e.r
	if math.Abs(det) < 0.2*math.Hypot(d.r, d.z)*math.Hypot(e.r, e.z) {
		return rz{}, false
	}
	t := ((q.r-p.r)*e.z - (q.z-p.z)*e.r) / det
	c := rz{p.r + t*d.r, p.z + t*d.z}
	return c, c.dist(p) < reach && c.dist(q) < reach
}

// onAxis is the height at which a wall that begins near the axis crosses it,
// level: a parabola in r through its first stretch.
func onAxis(wall []rz) float64 {
	k := min(max(len(wall)/12, 3), len(wall)-1)
	a, b := wall[0], wall[k]
	if d := b.r*b.r - a.r*a.r; math.Abs(d) > 1e-9 {
		c := (b.z - a.z) / d
		return a.z - math.Max(-0.5, math.Min(0.5, c*a.r))*a.r
	}
	return a.z
}
