// One side of a drawn path as a profile: the axis found, the side chosen, the
// ends put on the axis, corners told from joints of a curve.

package trace

import (
	"math"
	"slices"

	"moldwright/core/job"
)

// flatten is the piece as points close enough to fit by, with its corners.
func (s *subpath) flatten() (p []pt, corner []bool) {
	total := 0.0
	for _, b := range s.pieces {
		total += b.p[0].dist(b.p[3])
	}
	dir := func(a, b pt) pt {
		d := b.sub(a)
		if l := d.length(); l > 0 {
			return d.mul(1 / l)
		}
		return pt{}
	}
	starts, ends := make([]pt, len(s.pieces)), make([]pt, len(s.pieces))
	for i, b := range s.pieces {
		starts[i], ends[i] = dir(b.p[0], b.p[3]), dir(b.p[0], b.p[3])
		for k := 3; k >= 1; k-- {
			if b.p[k].dist(b.p[0]) > 1e-9 {
				starts[i] = dir(b.p[0], b.p[k])
			}
			if b.p[3-k].dist(b.p[3]) > 1e-9 {
				ends[i] = dir(b.p[3-k], b.p[3])
			}
		}
	}
	for i, b := range s.pieces {
		turn := math.Pi
		if k := i - 1; i > 0 || s.closed {
			k = (k + len(s.pieces)) % len(s.pieces)
			a, c := ends[k], starts[i]
			turn = math.Abs(math.Atan2(a.x*c.y-a.y*c.x, a.dot(c)))
			o := s.pieces[k]
			if b.line != o.line && math.Max(b.p[0].dist(b.p[3]), o.p[0].dist(o.p[3])) > total/40 {
				turn = math.Pi // where a straight stretch begins or ends
			}
			if b.line && o.line {
				// many short chords are a curve, long ones are meant
				short := math.Min(b.p[0].dist(b.p[3]), o.p[0].dist(o.p[3])) < total/40
				if short && turn < 20*math.Pi/180 {
					turn = 0
				}
			}
		}
		p, corner = append(p, b.p[0]), append(corner, turn > 3*math.Pi/180)
		n := int(math.Max(12, math.Min(80, 400*(b.p[0].dist(b.p[1])+b.p[1].dist(b.p[2])+b.p[2].dist(b.p[3]))/math.Max(total, 1e-9))))
		if b.line {
			n = max(n/4, 2)
			if b.p[0].dist(b.p[3]) < total/200 {
				n = 1
			}
		}
		for k := 1; k < n; k++ {
			t := float64(k) / float64(n)
			u := 1 - t
			c := b.p[0].mul(u * u * u).add(b.p[1].mul(3 * u * u * t)).add(b.p[2].mul(3 * u * t * t)).add(b.p[3].mul(t * t * t))
			p, corner = append(p, c), append(corner, false)
		}
	}
	if !s.closed && len(s.pieces) > 0 {
		p, corner = append(p, s.pieces[len(s.pieces)-1].p[3]), append(corner, true)
	}
	return p, corner
}

// halfOf is one side of the drawing as a profile, foot first, z up from 0.
func halfOf(p []pt, corner []bool, closed bool, o SVGOptions) ([]rz, []bool, *job.Fault) {
	lo, hi := pt{math.Inf(1), math.Inf(1)}, pt{math.Inf(-1), math.Inf(-1)}
	for _, q := range p {
		lo = pt{math.Min(lo.x, q.x), math.Min(lo.y, q.y)}
		hi = pt{math.Max(hi.x, q.x), math.Max(hi.y, q.y)}
	}
	w, h := hi.x-lo.x, hi.y-lo.y
	const least = 0.5 // mm
	switch {
	case w > 5000 || h > 5000:
		return nil, nil, job.Faultf("absurdSize", "units", "The path is %.3g mm wide and %.3g mm high; check the drawing's units.", w, h)
	case w < least && h < least:
		return nil, nil, job.Faultf("absurdSize", "units", "The path is less than half a millimetre wide and high; check the drawing's units.")
	case h < least:
		return nil, nil, job.Faultf("noHeight", "", "The path is a level line, with no height; a profile runs from the foot up.")
	case w < least && (o.AxisMM == nil || math.Abs(lo.x-*o.AxisMM) < least):
		return nil, nil, job.Faultf("noWidth", "axis", "The path is a line straight up, and nothing tells how far from the axis it stands; draw the foot with it, or say where the axis is.")
	}
	near := 0.004 * math.Max(w, h)
	n := len(p)
	if !closed && p[0].dist(p[n-1]) < 1e-6 {
		closed = true
		p, corner = p[:n-1], corner[:n-1]
		n--
	}
	x := (lo.x + hi.x) / 2
	if o.AxisMM != nil {
		x = *o.AxisMM
	} else if !mirrored(p, closed, x, 2*near) {
		// the axis is where a half drawing stands straight, or where its ends lie
		left, right := alongSide(p, closed, lo.x, near), alongSide(p, closed, hi.x, near)
		switch {
		case left > h/3 || right > h/3:
			x = lo.x
			if right > left {
				x = hi.x
			}
		case !closed:
			x = p[0].x
			if p[n-1].y > p[0].y {
				x = p[n-1].x
			}
		default:
			return nil, nil, job.Faultf("noAxis", "axis", "The path is closed but neither symmetrical nor straight along an axis; say where the axis is.")
		}
	}
	// signed distance from the axis, the larger side taken
	side := 1.0
	if x-lo.x > hi.x-x+1e-9 {
		side = -1
	}
	q := make([]rz, n)
	for i, v := range p {
		q[i] = rz{side * (v.x - x), hi.y - v.y}
	}
	run, sharp := outside(q, corner, closed, near)
	if len(run) < 2 {
		return nil, nil, job.Faultf("noAxis", "axis", "The path does not run along one side of the axis; say where the axis is.")
	}
	if run[0].z > run[len(run)-1].z {
		slices.Reverse(run)
		slices.Reverse(sharp)
	}
	low := math.Inf(1)
	for i := range run {
		if run[i].r < near && (i == 0 || i == len(run)-1) {
			run[i].r = 0
		}
		run[i].r = math.Max(run[i].r, 0)
		low = math.Min(low, run[i].z)
	}
	for i := range run {
		run[i].z -= low
	}
	if run[0].r > 0 {
		run, sharp = slices.Insert(run, 0, rz{0, run[0].z}), slices.Insert(sharp, 0, true)
		sharp[1] = true
	}
	// a level line from the rim to the axis draws the opening
	k := len(run) - 1
	if run[k].r == 0 && o.Top != TopClosed {
		j := k
		for j > 0 && math.Abs(run[j-1].z-run[k].z) < near/8 {
			j--
		}
		if j < k && run[j].r > near && j > 0 {
			run, sharp = run[:j+1], sharp[:j+1]
			sharp[j] = true
		}
	}
	for i := range run { // an axis crossing along the way is no profile
		if i > 0 && i < len(run)-1 && run[i].r < 0.05 {
			run[i].r = 0.05
		}
	}
	// smooth over the axis only where a curve arrives level
	sharp[0] = !crossesSmoothly(run, sharp)
	slices.Reverse(run)
	slices.Reverse(sharp)
	if run[0].r == 0 {
		sharp[0] = !crossesSmoothly(run, sharp)
	}
	slices.Reverse(run)
	slices.Reverse(sharp)
	return run, sharp, nil
}

// crossesSmoothly tells whether the run begins on the axis with a level tangent
// that is not that of a straight stretch.
func crossesSmoothly(run []rz, sharp []bool) bool {
	a, b := run[0], run[1]
	if a.r != 0 || math.Abs(a.z-b.z) > 0.12*b.r {
		return false
	}
	end := 1
	for end < len(run)-1 && !sharp[end] {
		end++
	}
	for _, p := range run[:end+1] {
		if math.Abs(p.z-a.z) > 1e-3 {
			return true
		}
	}
	return false
}

// mirrored tells whether the points are their own image in the line at x.
func mirrored(p []pt, closed bool, x, near float64) bool {
	segs := len(p) - 1
	if closed {
		segs++
	}
	step := max(len(p)/150, 1)
	for i := 0; i < len(p); i += step {
		m := pt{2*x - p[i].x, p[i].y}
		best := math.Inf(1)
		for k := range segs {
			a, b := p[k], p[(k+1)%len(p)]
			d := b.sub(a)
			t := 0.0
			if l := d.dot(d); l > 0 {
				t = math.Max(0, math.Min(1, m.sub(a).dot(d)/l))
			}
			best = math.Min(best, m.dist(a.lerp(b, t)))
		}
		if best > near {
			return false
		}
	}
	return true
}

// alongSide is how far the path runs upright along x.
func alongSide(p []pt, closed bool, x, near float64) float64 {
	sum := 0.0
	for i := range p {
		if i+1 == len(p) && !closed {
			break
		}
		a, b := p[i], p[(i+1)%len(p)]
		if math.Abs(a.x-x) < near/4 && math.Abs(b.x-x) < near/4 {
			sum += math.Abs(a.y - b.y)
		}
	}
	return sum
}

// outside is the longest run of the line with r > 0, its ends put on the axis
// where it crosses.
func outside(q []rz, corner []bool, closed bool, near float64) ([]rz, []bool) {
	n := len(q)
	out := func(i int) bool { return q[i%n].r > near/4 }
	first, count := 0, n
	if closed {
		for first < n && out(first) {
			first++
		}
		if first == n {
			return nil, nil
		}
		count = n + 1
	}
	var best, now []rz
	var bestC, nowC []bool
	length := func(v []rz) (l float64) {
		for i := 1; i < len(v); i++ {
			l += v[i].dist(v[i-1])
		}
		return l
	}
	onAxis := func(a, b rz) rz {
		if d := a.r - b.r; math.Abs(d) > 1e-12 {
			t := math.Max(0, math.Min(1, a.r/d))
			return rz{0, a.z + t*(b.z-a.z)}
		}
		return rz{0, a.z}
	}
	flush := func() {
		if length(now) > length(best) {
			best, bestC = now, nowC
		}
		now, nowC = nil, nil
	}
	for k := range count {
		i := (first + k) % n
		switch {
		case out(i):
			if len(now) == 0 && (k > 0 || closed) {
				b := (i + n - 1) % n
				now, nowC = append(now, onAxis(q[i], q[b])), append(nowC, corner[b])
			}
			now, nowC = append(now, q[i]), append(nowC, corner[i])
		case len(now) > 0:
			b := (i + n - 1) % n
			now, nowC = append(now, onAxis(q[b], q[i])), append(nowC, corner[i])
			flush()
		}
	}
	flush()
	return best, bestC
}
