// A profile drawn on paper: ink is what is darker than the paper around it, the
// paper's shading taken out by a wide mean. A drawing that closes around an area
// is read as the whole outline; else each stroke is thinned to its middle line
// (Zhang and Suen 1984) and read as one side or, for two strokes, as both. A
// straight upright stroke beside a side is taken for the axis.
//
// Limits: hatching, shading and lettering beside the drawing should be brushed
// away or cropped off.

package trace

import (
	"math"
	"slices"

	"moldwright/core/job"
)

const sketchPixels = 700 // longer side of the picture that strokes are found on

func sketched(r *Request, p *picture) (*drawn, *job.Fault) {
	c := shrink(p, sketchPixels)
	if c.w < 12 || c.h < 12 {
		return nil, job.Faultf("pictureTooSmall", "width", "The scan or crop has only %d by %d pixels; a sketch needs 500 or more.", p.x1-p.x0, p.y1-p.y0)
	}
	ink := inkMask(c)
	for i, b := range brushMask(p, c, r.Brush) {
		if b == behind {
			ink[i] = false
		}
	}
	k := float64(c.k)
	up := func(o []pt) []pt {
		for i := range o {
			o[i] = pt{o[i].x*k + float64(p.x0), o[i].y*k + float64(p.y0)}
		}
		return o
	}
	nothing := job.Faultf("nothingFound", "", "No drawn line stands out from the paper; use a dark pen, or take the picture in even light.")
	if mask, ok := enclosed(ink, c.w, c.h); ok {
		o := up(smooth(follow(mask, c.w, c.h), 4, true))
		// the mask ends at the line's outer edge: its middle is a few pixels in
		half := lineWidth(ink, c.w, c.h) * k / 2
		o = snapping{step: 1.5 * k, reach: 2*half + 2*k, sample: math.Max(k/2, 0.5), width: math.Max(half, 1), grid: 3, line: true}.snap(p, o, true)
		return &drawn{outline: windLeft(smooth(o, 2, true)), closed: true}, nil
	}
	label, ps := pieces(ink, c.w, c.h)
	slices.SortStableFunc(ps, func(a, b piece) int { return (b.y1 - b.y0 + b.x1 - b.x0) - (a.y1 - a.y0 + a.x1 - a.x0) })
	var lines [][]pt
	var ax *axis
	width := lineWidth(ink, c.w, c.h)
	for _, q := range ps[:min(len(ps), 6)] {
		if max(q.x1-q.x0, q.y1-q.y0)*8 < max(c.w, c.h) {
			break
		}
		line := middleLine(label, q, c.w, c.h)
		if len(line) < 8 {
			continue
		}
		line = up(toTips(line, ink, c.w, c.h, width))
		if a, straight := uprightLine(line); straight && ax == nil {
			ax = &a
			continue
		}
		lines = append(lines, smooth(line, 4, false))
	}
	if r.Axis != nil {
		a := throughPoints(*r.Axis)
		ax = &a
	}
	if len(lines) == 0 {
		return nil, nothing
	}
	exact := snapping{step: k, reach: 2 * k, sample: math.Max(k/2, 0.5), width: math.Max(width*k/2, 1), grid: 3, line: true}
	for i := range lines[:min(2, len(lines))] {
		lines[i] = smooth(exact.snap(p, lines[i], false), 2, false)
	}
	if len(lines) > 1 && extent(lines[1]) > 0.6*extent(lines[0]) && ax == nil {
		a, b := footFirst(lines[0]), footFirst(lines[1])
		slices.Reverse(b)
		return &drawn{outline: windLeft(append(a, b...)), closed: true}, nil
	}
	if ax == nil {
		return nil, job.Faultf("noAxis", "axis", "One side is drawn and no axis; set two points on the axis, or draw it as a straight upright line.")
	}
	return &drawn{outline: footFirst(lines[0]), axis: ax}, nil
}

func extent(o []pt) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range o {
		lo, hi = math.Min(lo, q.y), math.Max(hi, q.y)
	}
	return hi - lo
}

func footFirst(o []pt) []pt {
	if o[0].y < o[len(o)-1].y {
		slices.Reverse(o)
	}
	return o
}

// inkMask is what is darker than the mean of a wide square around it by a third
// of the way to the darkest ink, and by 12 of L* at least; and what is half as
// dark where it runs on from that (Canny 1986, two thresholds), since a pencil is
// pressed now more and now less.
func inkMask(c *plane) []bool {
	w, h := c.w, c.h
	sum := make([]float64, (w+1)*(h+1))
	for y := range h {
		row := 0.0
		for x := range w {
			row += float64(c.l[y*w+x])
			sum[(y+1)*(w+1)+x+1] = sum[y*(w+1)+x+1] + row
		}
	}
	reach := max(w, h) / 12
	dark := make([]float32, w*h)
	deepest := make([]float32, 0, w*h)
	for y := range h {
		for x := range w {
			x0, x1, y0, y1 := max(x-reach, 0), min(x+reach+1, w), max(y-reach, 0), min(y+reach+1, h)
			m := (sum[y1*(w+1)+x1] - sum[y0*(w+1)+x1] - sum[y1*(w+1)+x0] + sum[y0*(w+1)+x0]) / float64((x1-x0)*(y1-y0))
			dark[y*w+x] = float32(m) - c.l[y*w+x]
			deepest = append(deepest, dark[y*w+x])
		}
	}
	t := max(quantile(deepest, 0.999)/3, 12)
	ink := make([]bool, w*h)
	var queue []int
	for i, d := range dark {
		if d > t {
			ink[i] = true
			queue = append(queue, i)
		}
	}
	for k := 0; k < len(queue); k++ {
		x, y := queue[k]%w, queue[k]/w
		for _, s := range steps {
			u, v := x+s[0], y+s[1]
			if j := v*w + u; u >= 0 && v >= 0 && u < w && v < h && !ink[j] && dark[j] > t/2 {
				ink[j] = true
				queue = append(queue, j)
			}
		}
	}
	return ink
}

// enclosed is the drawing with what it closes around; ok when that is more than
// the ink alone by far. A gap of two pixels counts as closed.
func enclosed(ink []bool, w, h int) ([]bool, bool) {
	fat := widen(ink, w, h)
	label, ps := pieces(fat, w, h)
	var best piece
	for _, q := range ps {
		if (q.x1-q.x0)*(q.y1-q.y0) > (best.x1-best.x0)*(best.y1-best.y0) {
			best = q
		}
	}
	area := 0
	for i := range fat {
		fat[i] = fat[i] && label[i] == best.label
		if fat[i] {
			area++
		}
	}
	fillHoles(fat, w, h)
	full := 0
	for _, m := range fat {
		if m {
			full++
		}
	}
	return fat, full > 3*area && full*50 > w*h
}

func widen(m []bool, w, h int) []bool {
	out := make([]bool, len(m))
	for y := range h {
		for x := range w {
			if m[y*w+x] {
				for v := max(y-1, 0); v <= min(y+1, h-1); v++ {
					for u := max(x-1, 0); u <= min(x+1, w-1); u++ {
						out[v*w+u] = true
					}
				}
			}
		}
	}
	return out
}

// lineWidth is the usual width of the ink's runs, pixels of the plane: twice the
// area over the boundary's length.
func lineWidth(ink []bool, w, h int) float64 {
	area, rim := 0, 0
	for y := range h {
		for x := range w {
			i := y*w + x
			if !ink[i] {
				continue
			}
			area++
			if x == 0 || !ink[i-1] {
				rim++
			}
			if x == w-1 || !ink[i+1] {
				rim++
			}
			if y == 0 || !ink[i-w] {
				rim++
			}
			if y == h-1 || !ink[i+w] {
				rim++
			}
		}
	}
	return 2 * float64(area) / math.Max(float64(rim), 1)
}

// uprightLine is the axis through a line that is straight and nearly upright.
func uprightLine(o []pt) (axis, bool) {
	a, b := o[0], o[len(o)-1]
	l := a.dist(b)
	if l < 8 || math.Abs(b.x-a.x) > 0.15*l {
		return axis{}, false
	}
	n := pt{(b.y - a.y) / l, -(b.x - a.x) / l}
	var sum float64
	for _, q := range o {
		e := q.sub(a).dot(n)
		sum += e * e
	}
	if math.Sqrt(sum/float64(len(o))) > 0.006*l {
		return axis{}, false
	}
	return throughPoints([4]float64{a.x, a.y, b.x, b.y}), true
}

// middleLine is the longest path along the thinned piece, in plane coordinates.
func middleLine(label []int32, q piece, w, h int) []pt {
	bw, bh := q.x1-q.x0+3, q.y1-q.y0+3
	m := make([]bool, bw*bh)
	for y := q.y0; y <= q.y1; y++ {
		for x := q.x0; x <= q.x1; x++ {
			m[(y-q.y0+1)*bw+x-q.x0+1] = label[y*w+x] == q.label
		}
	}
	thin(m, bw, bh)
	far := func(start int) (int, []int32) {
		from := make([]int32, len(m))
		for i := range from {
			from[i] = -1
		}
		from[start] = int32(start)
		queue := []int32{int32(start)}
		last := start
		for k := 0; k < len(queue); k++ {
			i := int(queue[k])
			last = i
			for _, s := range steps {
				if j := i + s[0] + s[1]*bw; m[j] && from[j] < 0 {
					from[j] = int32(i)
					queue = append(queue, int32(j))
				}
			}
		}
		return last, from
	}
	start := slices.Index(m, true)
	if start < 0 {
		return nil
	}
	a, _ := far(start)
	b, from := far(a)
	var out []pt
	for i := b; ; i = int(from[i]) {
		out = append(out, pt{float64(i%bw+q.x0-1) + 0.5, float64(i/bw+q.y0-1) + 0.5})
		if i == a {
			return out
		}
	}
}

// toTips gives back to a thinned line what it lost at its ends: it reaches half
// a width short of where the ink ends.
func toTips(line []pt, ink []bool, w, h int, width float64) []pt {
	for range 2 {
		slices.Reverse(line)
		a, b := line[len(line)-1], line[max(len(line)-8, 0)]
		d := a.sub(b)
		d = d.mul(1 / math.Max(d.length(), 1e-9))
		t := 0.0
		for ; t < 4*width; t += 0.25 {
			q := a.add(d.mul(t))
			x, y := int(math.Floor(q.x)), int(math.Floor(q.y))
			if x < 0 || y < 0 || x >= w || y >= h || !ink[y*w+x] {
				break
			}
		}
		if t > width/2 {
			line = append(line, a.add(d.mul(t-width/2)))
		}
	}
	return line
}

// thin wears a mask with an empty border down to lines one pixel wide.
func thin(m []bool, w, h int) {
	ring := [8]int{-w, -w + 1, 1, w + 1, w, w - 1, -1, -w - 1} // from above, clockwise
	var gone []int
	for again := true; again; {
		again = false
		for pass := range 2 {
			gone = gone[:0]
			for y := 1; y < h-1; y++ {
				for x := 1; x < w-1; x++ {
					i := y*w + x
					if !m[i] {
						continue
					}
					count, turns := 0, 0
					for k := range ring {
						a, b := m[i+ring[k]], m[i+ring[(k+1)%8]]
						if a {
							count++
						}
						if !a && b {
							turns++
						}
					}
					n, e, s, v := m[i-w], m[i+1], m[i+w], m[i-1]
					open := !(n && e && s) && !(e && s && v)
					if pass == 1 {
						open = !(n && e && v) && !(n && s && v)
					}
					if count >= 2 && count <= 6 && turns == 1 && open {
						gone = append(gone, i)
					}
				}
			}
			for _, i := range gone {
				m[i] = false
				again = true
			}
		}
	}
}
