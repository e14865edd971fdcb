// Masks and floods on the coarse picture: connected pieces, what the border
// reaches, holes, and the watershed that puts the boundary on the strongest
// gradient (Meyer 1991).

package trace

// floodLevels is the number of steps of the gradient.
const floodLevels = 512

// flood gives every unknown pixel the label that reaches it over the lowest
// gradient, first come first served among equals.
func flood(c *plane, s []byte) {
	g := gradient(c)
	var queue [floodLevels][]int32
	level := 0
	enter := func(i int) {
		x := i % c.w
		for _, j := range [4]int{i - 1, i + 1, i - c.w, i + c.w} {
			if j < 0 || j >= len(s) || (j == i-1 && x == 0) || (j == i+1 && x == c.w-1) || s[j] != unknown {
				continue
			}
			s[j] = s[i]
			v := max(int(g[j]), level)
			queue[v] = append(queue[v], int32(j))
		}
	}
	var start []int32
	for i, v := range s {
		if v != unknown {
			start = append(start, int32(i))
		}
	}
	// a pixel is labelled when queued and spreads when its level comes up
	for _, i := range start {
		enter(int(i))
	}
	for level = 0; level < floodLevels; level++ {
		for k := 0; k < len(queue[level]); k++ {
			enter(int(queue[level][k]))
		}
		queue[level] = nil
	}
}

// gradient is the colour gradient in floodLevels steps, 0.2 Delta E each.
func gradient(c *plane) []uint16 {
	g := make([]uint16, c.w*c.h)
	for y := range c.h {
		up, down := max(y-1, 0)*c.w, min(y+1, c.h-1)*c.w
		row := y * c.w
		for x := range c.w {
			le, ri := max(x-1, 0), min(x+1, c.w-1)
			var sum float32
			for _, v := range [3][]float32{c.l, c.a, c.b} {
				dx := v[up+ri] + 2*v[row+ri] + v[down+ri] - v[up+le] - 2*v[row+le] - v[down+le]
				dy := v[down+le] + 2*v[down+x] + v[down+ri] - v[up+le] - 2*v[up+x] - v[up+ri]
				sum += dx*dx + dy*dy
			}
			g[row+x] = uint16(min(sqrt32(sum)/4*5, floodLevels-1))
		}
	}
	return g
}

// piece is a connected part of a mask.
type piece struct {
	area           int
	x0, x1, y0, y1 int // inclusive
	label          int32
	touch          int // pixels on the border of the plane
}

// pieces labels the 4-connected parts, counted from 1.
func pieces(mask []bool, w, h int) ([]int32, []piece) {
	label := make([]int32, len(mask))
	var out []piece
	var stack []int32
	for start := range mask {
		if !mask[start] || label[start] != 0 {
			continue
		}
		q := piece{x0: w, y0: h, x1: -1, y1: -1, label: int32(len(out) + 1)}
		stack = append(stack[:0], int32(start))
		label[start] = q.label
		for len(stack) > 0 {
			i := int(stack[len(stack)-1])
			stack = stack[:len(stack)-1]
			x, y := i%w, i/w
			q.area++
			q.x0, q.x1, q.y0, q.y1 = min(q.x0, x), max(q.x1, x), min(q.y0, y), max(q.y1, y)
			if x == 0 || y == 0 || x == w-1 || y == h-1 {
				q.touch++
			}
			push := func(j int) {
				if mask[j] && label[j] == 0 {
					label[j] = q.label
					stack = append(stack, int32(j))
				}
			}
			if x > 0 {
				push(i - 1)
			}
			if x < w-1 {
				push(i + 1)
			}
			if y > 0 {
				push(i - w)
			}
			if y < h-1 {
				push(i + w)
			}
		}
		out = append(out, q)
	}
	return label, out
}

// spreadFromBorder is the part of the mask that is joined to the border.
func spreadFromBorder(mask []bool, w, h int) []bool {
	out := make([]bool, len(mask))
	var stack []int32
	push := func(i int) {
		if mask[i] && !out[i] {
			out[i] = true
			stack = append(stack, int32(i))
		}
	}
	for x := range w {
		push(x)
		push((h-1)*w + x)
	}
	for y := range h {
		push(y * w)
		push(y*w + w - 1)
	}
	for len(stack) > 0 {
		i := int(stack[len(stack)-1])
		stack = stack[:len(stack)-1]
		if x := i % w; x > 0 {
			push(i - 1)
			if x < w-1 {
				push(i + 1)
			}
		} else if w > 1 {
			push(i + 1)
		}
		if i >= w {
			push(i - w)
		}
		if i < (h-1)*w {
			push(i + w)
		}
	}
	return out
}

func keepLargest(mask []bool, w, h int) {
	label, ps := pieces(mask, w, h)
	best := piece{}
	for _, q := range ps {
		if q.area > best.area {
			best = q
		}
	}
	for i := range mask {
		mask[i] = mask[i] && label[i] == best.label
	}
}

func fillHoles(mask []bool, w, h int) {
	empty := make([]bool, len(mask))
	for i, m := range mask {
		empty[i] = !m
	}
	outside := spreadFromBorder(empty, w, h)
	for i := range mask {
		mask[i] = !outside[i]
	}
}
