// The pot among the rest of the picture. Colour distance from the backdrop says
// surely for most pixels; between what is surely pot and surely backdrop the
// boundary is put where the picture's gradient is strongest, by flooding from
// both (the watershed of Meyer 1991, with markers). A cast shadow has the
// backdrop's colour and a soft edge, a highlight lies inside the pot: neither
// draws the boundary.
package trace

import (
	"slices"

	"moldwright/core/job"
)

// labels of pixels
const (
	unknown byte = iota
	behind
	pot
)

// silhouette is the mask of the pot in the plane.
func silhouette(p *picture, c *plane, r *Request) ([]bool, []Note, *job.Fault) {
	if c.w < 12 || c.h < 12 {
		return nil, nil, job.Faultf("pictureTooSmall", "width", "The picture or crop has only %d by %d pixels; a profile needs at least 12 by 12, better 500 or more.", p.x1-p.x0, p.y1-p.y0)
	}
	b := newBackdrop(c)
	if b.noise > 1 {
		c.calm(min(int(b.noise+1), 5))
		b = newBackdrop(c)
	}
	brushed := brushMask(p, c, r.Brush)
	object, notes, fault := findObject(p, c, b, brushed, r)
	if fault != nil {
		return nil, nil, fault
	}
	seeds := seeds(c, b, object, brushed)
	flood(c, seeds)
	mask := make([]bool, len(seeds))
	sure := -1
	for i, s := range seeds {
		mask[i] = s == pot
		if sure < 0 && s == pot && object[i] {
			sure = i
		}
	}
	if sure < 0 {
		return nil, nil, nothingFound()
	}
	keepLargest(mask, c.w, c.h)
	fillHoles(mask, c.w, c.h)
	return mask, notes, nil
}

func nothingFound() *job.Fault {
	return job.Faultf("nothingFound", "", "No pot stands out from its background; take the picture before a plain background of another colour, or put points along the pot's edge by hand.")
}

// brushMask is what the strokes say of each pixel of the plane.
func brushMask(p *picture, c *plane, strokes []Stroke) []byte {
	if len(strokes) == 0 {
		return nil
	}
	m := make([]byte, c.w*c.h)
	k := float64(c.k)
	for _, s := range strokes {
		label := behind
		if s.Kind == "include" {
			label = pot
		}
		rad := max(s.Radius/k, 0.5)
		s.walk(k/2, func(q pt) {
			cx, cy := (q.x-float64(p.x0))/k, (q.y-float64(p.y0))/k
			for y := max(int(cy-rad), 0); y <= min(int(cy+rad), c.h-1); y++ {
				for x := max(int(cx-rad), 0); x <= min(int(cx+rad), c.w-1); x++ {
					dx, dy := float64(x)+0.5-cx, float64(y)+0.5-cy
					if dx*dx+dy*dy <= rad*rad {
						m[y*c.w+x] = label
					}
				}
			}
		})
	}
	return m
}

// walk visits the stroke's line in steps of at most step pixels, at most a few
// thousand a segment.
func (s *Stroke) walk(step float64, visit func(pt)) {
	for i, q := range s.Points {
		a := pt{q[0], q[1]}
		visit(a)
		if i+1 < len(s.Points) {
			b := pt{s.Points[i+1][0], s.Points[i+1][1]}
			n := min(int(a.dist(b)/step), 4000)
			for j := 1; j < n; j++ {
				visit(a.lerp(b, float64(j)/float64(n)))
			}
		}
	}
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

// findObject is the rough mask of the one pot that is meant.
func findObject(p *picture, c *plane, b *backdrop, brushed []byte, r *Request) ([]bool, []Note, *job.Fault) {
	n := c.w * c.h
	t := b.split()
	mask := make([]bool, n)
	all, lit := 0, 0
	for i, d := range b.d {
		if d > t {
			all++
			if !b.shadow[i] {
				lit++
			}
		}
	}
	// a pot that is itself no darker grey of the backdrop can do without the
	// pixels that might be its shadow
	noShadow := lit*3 > all
	for i, d := range b.d {
		mask[i] = d > t && !(noShadow && b.shadow[i])
		if brushed != nil && brushed[i] != unknown {
			mask[i] = brushed[i] == pot
		}
	}
	label, ps := pieces(mask, c.w, c.h)
	var big []piece
	for _, q := range ps {
		if q.area*2000 >= n {
			big = append(big, q)
		}
	}
	if len(big) == 0 {
		return nil, nil, nothingFound()
	}
	slices.SortStableFunc(big, func(a, b piece) int { return b.area - a.area })
	atBorder := func(q piece) bool { return q.touch > (c.w+c.h)/40 }
	chosen := -1
	if r.Point != nil {
		px, py := (r.Point[0]-float64(p.x0))/float64(c.k), (r.Point[1]-float64(p.y0))/float64(c.k)
		best := 1e18
		for i, q := range big {
			dx := max(float64(q.x0)-px, px-float64(q.x1), 0)
			dy := max(float64(q.y0)-py, py-float64(q.y1), 0)
			if d := dx*dx + dy*dy; d < best {
				best, chosen = d, i
			}
		}
	} else {
		for i, q := range big {
			if !atBorder(q) && q.area*4 >= big[0].area {
				chosen = i
				break
			}
		}
	}
	if chosen < 0 || atBorder(big[chosen]) {
		q := big[max(chosen, 0)]
		if q.area*10 > 9*n {
			return nil, nil, nothingFound()
		}
		return nil, nil, job.Faultf("touchesBorder", "crop", "The pot reaches the border of the picture or crop; leave some background all around it.")
	}
	main := big[chosen]
	// parts of the same pot stand over one another: a band in the backdrop's
	// own colour parts them
	take := map[int32]bool{main.label: true}
	x0, x1, y0, y1 := main.x0, main.x1, main.y0, main.y1
	for again := true; again; {
		again = false
		for _, q := range big {
			gap := max(q.y0-y1, y0-q.y1)
			mid := (q.x0 + q.x1) / 2
			if !take[q.label] && !atBorder(q) && mid > x0 && mid < x1 && gap*6 < y1-y0 {
				take[q.label] = true
				x0, x1, y0, y1 = min(x0, q.x0), max(x1, q.x1), min(y0, q.y0), max(y1, q.y1)
				again = true
			}
		}
	}
	var notes []Note
	if r.Point == nil {
		for _, q := range big {
			if take[q.label] || q.area*3 < main.area {
				continue
			}
			if !atBorder(q) {
				return nil, nil, job.Faultf("severalPots", "point", "There are several pots in the picture; click the one you mean or crop the picture to it.")
			}
		}
	}
	out := make([]bool, n)
	for i := range out {
		out[i] = take[label[i]]
	}
	return out, notes, nil
}

// seeds marks what is surely pot and surely backdrop. Surely pot is the middle
// of what both halves of the object share: neither a handle nor a shadow beside
// the pot is shared.
func seeds(c *plane, b *backdrop, object []bool, brushed []byte) []byte {
	s := make([]byte, len(object))
	left, right := make([]int, c.h), make([]int, c.h)
	var mids []int
	y0, y1 := c.h, -1
	for y := range c.h {
		left[y], right[y] = -1, -1
		for x := range c.w {
			if object[y*c.w+x] {
				if left[y] < 0 {
					left[y] = x
				}
				right[y] = x
			}
		}
		if left[y] >= 0 {
			y0, y1 = min(y0, y), max(y1, y)
			mids = append(mids, left[y]+right[y])
		}
	}
	axis := slices.Clone(mids[:max(len(mids)*3/4, 1)]) // shadows lie low
	slices.Sort(axis)
	m := axis[len(axis)/2]
	x0, x1 := c.w, 0
	inset := (y1-y0)/25 + 1
	for y := y0; y <= y1; y++ {
		if left[y] < 0 {
			continue
		}
		x0, x1 = min(x0, left[y]), max(x1, right[y])
		half := min(m-2*left[y], 2*right[y]-m) / 2
		if half <= 1 || y < y0+inset || y > y1-inset {
			continue
		}
		in := half * 3 / 5
		for x := max((m+1)/2-in, 0); x <= min(m/2+in, c.w-1); x++ {
			s[y*c.w+x] = pot
		}
	}
	// backdrop: like it, and joined to the border
	t := b.split() / 2
	calm := make([]bool, len(object))
	for i, d := range b.d {
		calm[i] = d < t && s[i] != pot
	}
	reach := spreadFromBorder(calm, c.w, c.h)
	for y := range c.h {
		for x := range c.w {
			i := y*c.w + x
			edge := x == 0 || y == 0 || x == c.w-1 || y == c.h-1
			if edge && s[i] != pot {
				s[i] = behind
				continue
			}
			if !edge && reach[i] && reach[i-1] && reach[i+1] && reach[i-c.w] && reach[i+c.w] {
				s[i] = behind
			}
		}
	}
	for i, v := range brushed {
		if v != unknown {
			s[i] = v
		}
	}
	return s
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
