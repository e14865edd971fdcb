// The outline as a closed polygon: followed around the mask, smoothed, then
// drawn to the edge in the full picture. At each step samples are taken along
// the normals and the path of strongest edges is chosen by dynamic programming
// (after Amini, Weymouth and Jain 1990), so that a single stray edge does not
// pull the outline away; the place along a normal is the
// centre of gravity of the gradient's peak.

package trace

// follow is the boundary of the one piece in the mask, in plane coordinates,
// counterclockwise as seen with y down: the pot is on the right hand.
func follow(mask []bool, w, h int) []pt {
	at := func(x, y int) bool { return x >= 0 && y >= 0 && x < w && y < h && mask[y*w+x] }
	start := -1
	for i, m := range mask {
		if m {
			start = i
			break
		}
	}
	if start < 0 {
		return nil
	}
	// walk along the cracks between pixels, beginning on the left edge of the
	// first pixel, downward
	dx, dy := [4]int{0, 1, 0, -1}, [4]int{1, 0, -1, 0} // down, right, up, left
	x, y, dir := start%w, start/w, 0
	x0, y0 := x, y
	var out []pt
	for n := 0; n < 4*len(mask)+8; n++ {
		out = append(out, pt{float64(x) + 0.5*float64(dx[dir]), float64(y) + 0.5*float64(dy[dir])})
		x, y = x+dx[dir], y+dy[dir]
		if x == x0 && y == y0 {
			break
		}
		// the pixel ahead on the left and on the right of the new direction
		var l, r bool
		switch dir {
		case 0: // down: pot is at x, y (left of travel)
			l, r = at(x, y), at(x-1, y)
		case 1: // right
			l, r = at(x, y-1), at(x, y)
		case 2: // up
			l, r = at(x-1, y-1), at(x, y-1)
		case 3: // left
			l, r = at(x-1, y), at(x-1, y-1)
		}
		switch {
		case l && r:
			dir = (dir + 3) % 4 // turn right, around a hollow
		case !l:
			dir = (dir + 1) % 4 // turn left, around a corner
		}
	}
	return out
}

// resample is the closed polygon with about equal steps.
func resample(p []pt, step float64, closed bool) []pt {
	n := len(p)
	if n < 2 {
		return p
	}
	segs := n - 1
	if closed {
		segs = n
	}
	total := 0.0
	for i := range segs {
		total += p[i].dist(p[(i+1)%n])
	}
	m := max(int(total/step+0.5), 3)
	step = total / float64(m)
	out := make([]pt, 0, m+1)
	done, want := 0.0, 0.0
	for i := range segs {
		a, b := p[i], p[(i+1)%n]
		l := a.dist(b)
		for want < done+l && len(out) < m {
			out = append(out, a.lerp(b, (want-done)/l))
			want += step
		}
		done += l
	}
	if !closed {
		out = append(out, p[n-1])
	}
	return out
}

// smooth runs the binomial filter 1 2 1 over a polygon; ends of an open one
// stay.
func smooth(p []pt, times int, closed bool) []pt {
	n := len(p)
	if n < 3 {
		return p
	}
	q := make([]pt, n)
	for range times {
		for i := range p {
			if !closed && (i == 0 || i == n-1) {
				q[i] = p[i]
				continue
			}
			a, b, c := p[(i+n-1)%n], p[i], p[(i+1)%n]
			q[i] = pt{(a.x + 2*b.x + c.x) / 4, (a.y + 2*b.y + c.y) / 4}
		}
		p, q = q, p
	}
	return p
}

// snapping is one round of drawing the outline to the edge.
type snapping struct {
	step   float64 // along the outline
	reach  float64 // to either side, along the normal
	sample float64 // between samples on a normal
	width  float64 // of the square that a sample is the mean of
	grid   int     // samples a side in that square
	line   bool    // the middle of a dark line, not an edge
}

// snap draws the outline to the nearest strong edges.
func (s snapping) snap(p *picture, outline []pt, closed bool) []pt {
	base := resample(outline, s.step, closed)
	n := len(base)
	m := int(s.reach/s.sample + 0.5)
	width := 2*m + 1
	score := make([]float32, n*width)
	normal := make([]pt, n)
	samples := make([][3]float32, width+2)
	tops := make([]float32, 0, n)
	for i := range base {
		a, b := base[max(i-2, 0)], base[min(i+2, n-1)]
		if closed {
			a, b = base[(i+n-2)%n], base[(i+2)%n]
		}
		t := b.sub(a)
		l := t.length()
		if l == 0 {
			l = 1
		}
		normal[i] = pt{t.y / l, -t.x / l}
		for j := range samples {
			q := base[i].add(normal[i].mul(float64(j-m-1) * s.sample))
			samples[j] = p.colour(q.x, q.y, s.width, s.grid)
		}
		row := score[i*width : (i+1)*width]
		if s.line {
			lineScore(row, samples)
		} else {
			for j := range row {
				row[j] = colour(samples[j]).dist(colour(samples[j+2]))
			}
		}
		top := float32(0)
		for _, v := range row {
			top = max(top, v)
		}
		tops = append(tops, top)
	}
	limit := max(quantile(tops, 0.5), 1)
	off := bestPath(score, n, width, limit)
	out := make([]pt, n)
	for i := range base {
		row := score[i*width : (i+1)*width]
		j := off[i]
		// the centre of the peak, between where it falls to half: for a sharp
		// edge its top, for a blurred one the middle of its flat top
		lo, hi := j, j
		for lo > 0 && row[lo-1] > row[j]/2 {
			lo--
		}
		for hi < width-1 && row[hi+1] > row[j]/2 {
			hi++
		}
		sum, moment := 0.0, 0.0
		for k := lo; k <= hi; k++ {
			sum += float64(row[k])
			moment += float64(row[k]) * float64(k-m)
		}
		t := float64(j - m)
		if sum > 0 {
			t = moment / sum
		}
		out[i] = base[i].add(normal[i].mul(t * s.sample))
	}
	return out
}

// lineScore is how much darker a sample is than the lightest one: the middle of
// a drawn line is darkest once the samples are as wide as the line.
func lineScore(row []float32, samples [][3]float32) {
	light := float32(0)
	for _, c := range samples {
		light = max(light, c[0]+c[1]+c[2])
	}
	for j := range row {
		c := samples[j+1]
		row[j] = (light - c[0] - c[1] - c[2]) / 3
	}
}

func quantile(v []float32, q float64) float32 {
	if len(v) == 0 {
		return 0
	}
	s := append([]float32(nil), v...)
	return quickselect(s, min(int(q*float64(len(s))), len(s)-1))
}

// bestPath is, for each row of scores, the column of the path with the greatest
// sum of scores (none counted above limit by more than a third of the excess)
// less a cost for each column stepped aside; at most two columns a row.
func bestPath(score []float32, n, width int, limit float32) []int {
	from := make([]int8, n*width)
	best := make([]float32, width)
	next := make([]float32, width)
	value := func(v float32) float32 {
		if v > limit {
			return limit + (v-limit)/3
		}
		return v
	}
	cost := [3]float32{0, 0.1 * limit, 0.35 * limit}
	for j := range best {
		best[j] = value(score[j])
	}
	for i := 1; i < n; i++ {
		row := score[i*width : (i+1)*width]
		for j := range next {
			b, f := best[j], int8(0)
			for d := -2; d <= 2; d++ {
				if k := j + d; d != 0 && k >= 0 && k < width {
					if v := best[k] - cost[max(d, -d)]; v > b {
						b, f = v, int8(d)
					}
				}
			}
			next[j] = b + value(row[j])
			from[i*width+j] = f
		}
		best, next = next, best
	}
	j := 0
	for k := range best {
		if best[k] > best[j] {
			j = k
		}
	}
	off := make([]int, n)
	for i := n - 1; i >= 0; i-- {
		off[i] = j
		j += int(from[i*width+j])
	}
	return off
}

// quickselect is the k-th smallest; v is put in another order.
func quickselect(v []float32, k int) float32 {
	lo, hi := 0, len(v)-1
	for lo < hi {
		p := v[(lo+hi)/2]
		i, j := lo, hi
		for i <= j {
			for v[i] < p {
				i++
			}
			for v[j] > p {
				j--
			}
			if i <= j {
				v[i], v[j] = v[j], v[i]
				i++
				j--
			}
		}
		switch {
		case k <= j:
			hi = j
		case k >= i:
			lo = i
		default:
			return v[k]
		}
	}
	return v[k]
}
