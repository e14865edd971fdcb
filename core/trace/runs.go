// The half outline parted at its sharp turns into smooth runs, and the runs
// brought to profile points. Place and tangent come from a local parabola over
// a short window that never reaches across a turn.

package trace

import (
	"math"
	"slices"
)

// strip is a smooth stretch of the half outline: places and unit tangents.
type strip struct {
	p, t   []pt
	broken bool // something was brushed away before it
}

// run is a strip inverted to the profile, mm.
type run struct {
	p      []rz
	broken bool
}

// even resamples the half to equal steps of about step pixels.
func (h half) even(step float64) half {
	p := resample(h.p, step, false)
	out := half{p: p, hidden: make([]bool, len(p))}
	k := 0
	for i, q := range p {
		for k+1 < len(h.p) && h.p[k+1].dist(q) <= h.p[k].dist(q) {
			k++
		}
		out.hidden[i] = h.hidden[k]
	}
	return out
}

const (
	sharpTurn = 35 * math.Pi / 180 // over two windows, a corner
	trimPx    = 2.5                // rounded off by lens and samples at a corner
)

// breakRuns finds the strips of the wall between the foot's and the rim's edge.
func breakRuns(h half, foot, top arc, open bool) []strip {
	n := len(h.p)
	step := h.length() / float64(n-1)
	trim := int(trimPx/step + 0.999)
	window := max(int(max(5/step, 0.009*float64(n))), 3)
	widest := 0.0
	for _, p := range h.p {
		widest = math.Max(widest, p.x)
	}
	start, end := 0, n-1
	if foot.edge {
		start = foot.end + 2*trim
	} else {
		for start < n-1 && h.p[start].x < 0.12*widest {
			start++
		}
	}
	if open {
		end = n - 1 - top.end - 2*trim
	} else {
		for end > 0 && h.p[end].x < 0.12*widest {
			end--
		}
	}
	turn := make([]float64, n)
	for i := max(start+window, window); i < min(end, n-1)-window; i++ {
		a, b := h.p[i].sub(h.p[i-window]), h.p[i+window].sub(h.p[i])
		turn[i] = math.Abs(math.Atan2(a.x*b.y-a.y*b.x, a.dot(b)))
	}
	var out []strip
	from, broken := start, false
	flush := func(to int) {
		if to-from >= 4 {
			out = append(out, fitStrip(h.p[from:to+1], max(int(max(6/step, 0.013*float64(n))), 3), broken))
			broken = false
		}
	}
	for i := start; i <= end; i++ {
		if h.hidden[i] {
			flush(i - 1 - trim)
			for i <= end && h.hidden[i] {
				i++
			}
			from, broken = i+trim, true
			continue
		}
		if turn[i] < sharpTurn {
			continue
		}
		peak := true
		for j := max(i-2*window, 0); j <= min(i+2*window, n-1); j++ {
			if turn[j] > turn[i] || (turn[j] == turn[i] && j < i) {
				peak = false
				break
			}
		}
		if peak {
			flush(i - trim)
			from = i + trim
		}
	}
	flush(end)
	return out
}

// fitStrip fits a parabola around each point, at most reach points to either
// side.
func fitStrip(p []pt, reach int, broken bool) strip {
	n := len(p)
	s := strip{p: make([]pt, n), t: make([]pt, n), broken: broken}
	for i := range p {
		lo, hi := max(i-reach, 0), min(i+reach, n-1)
		// near an end the window leans inward and keeps its width
		if lo == 0 {
			hi = min(max(hi, reach), n-1)
		}
		if hi == n-1 {
			lo = max(min(lo, n-1-reach), 0)
		}
		var m [5]float64
		var bx, by [3]float64
		scale := 1 / float64(reach)
		for j := lo; j <= hi; j++ {
			t := float64(j-i) * scale
			u := t * t
			m[0]++
			m[1] += t
			m[2] += u
			m[3] += u * t
			m[4] += u * u
			q := p[j].sub(p[i])
			bx[0], bx[1], bx[2] = bx[0]+q.x, bx[1]+t*q.x, bx[2]+u*q.x
			by[0], by[1], by[2] = by[0]+q.y, by[1]+t*q.y, by[2]+u*q.y
		}
		cx, cy := parabola(m, bx), parabola(m, by)
		s.p[i] = p[i].add(pt{cx[0], cy[0]})
		d := pt{cx[1], cy[1]}
		if l := d.length(); l > 0 {
			d = d.mul(1 / l)
		}
		s.t[i] = d
	}
	return s
}

// parabola solves the normal equations with the power sums m.
func parabola(m [5]float64, b [3]float64) [2]float64 {
	a := [3][3]float64{{m[0], m[1], m[2]}, {m[1], m[2], m[3]}, {m[2], m[3], m[4]}}
	det := func(a [3][3]float64) float64 {
		return a[0][0]*(a[1][1]*a[2][2]-a[1][2]*a[2][1]) - a[0][1]*(a[1][0]*a[2][2]-a[1][2]*a[2][0]) + a[0][2]*(a[1][0]*a[2][1]-a[1][1]*a[2][0])
	}
	d := det(a)
	if d == 0 {
		return [2]float64{}
	}
	var out [2]float64
	for k := range out {
		c := a
		for i := range 3 {
			c[i][k] = b[i]
		}
		out[k] = det(c) / d
	}
	return out
}

// invert brings the strips to mm and finds foot, rim and gaps.
func (s *settled) invert(strips []strip, foot, top arc) {
	s.runs, s.gaps, s.foot, s.rim = nil, nil, nil, nil
	for _, t := range strips {
		n := run{broken: t.broken}
		step := 0.0
		for i := 1; i < len(t.p); i++ {
			step += t.p[i].dist(t.p[i-1]) * s.mm / float64(len(t.p)-1)
		}
		flush := func() {
			n.p = unheap(unheap(n.p, step), step)
			if len(n.p) >= 2 {
				s.runs = append(s.runs, n)
				n.broken = false
			}
			n.p = nil
		}
		for i, p := range t.p {
			q, ok := s.steady(p, t.t[i])
			if !ok {
				continue
			}
			if k := len(n.p); k > 0 && n.p[k-1].dist(q) > 12*trimPx*s.mm {
				flush()
			}
			n.p = append(n.p, q)
		}
		flush()
	}
	if len(s.runs) == 0 {
		return
	}
	first, last := s.runs[0].p, s.runs[len(s.runs)-1].p
	back := slices.Clone(last)
	slices.Reverse(back)
	if foot.edge {
		e := s.edge(first, foot, false)
		s.foot, s.low = &e, e.z
		for n := &s.runs[0]; len(n.p) > 2 && n.p[0].z < e.z+s.mm/2; {
			n.p = n.p[1:]
		}
	} else {
		s.low = onAxis(first)
	}
	if s.topOpen {
		e := s.edge(back, top, true)
		s.rim = &e
		for n := &s.runs[len(s.runs)-1]; len(n.p) > 2 && n.p[len(n.p)-1].z > e.z-s.mm/2; {
			n.p = n.p[:len(n.p)-1]
		}
	}
	for _, n := range s.runs {
		for _, p := range n.p {
			if s.foot == nil {
				s.low = math.Min(s.low, p.z)
			}
		}
	}
}

// steady inverts one point, unless a hundredth of a radian in the tangent would
// move the result far: along an edge's ellipse, towards its middle, the outline
// tells ever less of where on the ray the pot was touched.
func (s *settled) steady(p, t pt) (rz, bool) {
	var at [3]rz
	for k, turn := range [3]float64{0, 0.01, -0.01} {
		r, z, ok := s.view.Invert(p.x*s.mm, p.y*s.mm, t.x-turn*t.y, t.y+turn*t.x)
		if !ok {
			return rz{}, false
		}
		at[k] = rz{r, z}
	}
	far := math.Max(0.4, 2*s.mm)
	return at[0], at[1].dist(at[0]) < far && at[2].dist(at[0]) < far
}

// unheap makes one point of those at the end of a run that all show the same
// edge, and turns the run round. step is how far apart they show, mm.
func unheap(p []rz, step float64) []rz {
	heap, far := 0, 0.0
	for j := 1; j < len(p); j++ {
		far = math.Max(far, p[j].dist(p[0]))
		if j >= 8 && far < 0.35*float64(j)*step {
			heap = j
		}
	}
	if heap > 0 {
		r, z := make([]float64, heap), make([]float64, heap)
		for i, q := range p[:heap] {
			r[i], z[i] = q.r, q.z
		}
		slices.Sort(r)
		slices.Sort(z)
		p = slices.Clone(p[heap-1:])
		p[0] = rz{r[heap/2], z[heap/2]}
	}
	slices.Reverse(p)
	return p
}

// edge is where the wall, listed from the edge inward, meets the edge's height.
func (s *settled) edge(wall []rz, g arc, top bool) rz {
	k := min(max(len(wall)/40, 5), len(wall)-1)
	a, b := wall[0], wall[k]
	away := b.dist(a)
	if s.single && away > 0 {
		u := 2 * trimPx * s.mm / away
		return rz{math.Max(a.r+u*(a.r-b.r), 0), a.z + u*(a.z-b.z)}
	}
	r := a.r
	z := a.z
	for range 4 {
		z = s.view.edgeHeight(g.mid*s.mm, r, top)
		r = a.r
		if dz := b.z - a.z; math.Abs(dz) > 0.2*away {
			r += (z - a.z) * (b.r - a.r) / dz
		}
		most := 2 * trimPx * s.mm
		most += most * math.Abs(b.r-a.r) / math.Max(math.Abs(b.z-a.z), 0.2*away)
		r = math.Max(a.r-most, math.Min(a.r+most, r))
	}
	return rz{math.Max(r, 0), z}
}
