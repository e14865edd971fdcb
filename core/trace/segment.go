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
func silhouette(p *picture, c *plane, r *Request) ([]bool, *job.Fault) {
	if c.w < 12 || c.h < 12 {
		return nil, job.Faultf("pictureTooSmall", "width", "The picture or crop has only %d by %d pixels; a profile needs at least 12 by 12, better 500 or more.", p.x1-p.x0, p.y1-p.y0)
	}
	b := newBackdrop(c)
	if b.noise > 1 {
		c.calm(min(int(b.noise+1), 5))
		b = newBackdrop(c)
	}
	brushed := brushMask(p, c, r.Brush)
	object, fault := findObject(p, c, b, brushed, r)
	if fault != nil {
		return nil, fault
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
		return nil, nothingFound()
	}
	keepLargest(mask, c.w, c.h)
	fillHoles(mask, c.w, c.h)
	return mask, nil
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

// findObject is the rough mask of the one pot that is meant.
func findObject(p *picture, c *plane, b *backdrop, brushed []byte, r *Request) ([]bool, *job.Fault) {
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
		return nil, nothingFound()
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
			return nil, nothingFound()
		}
		return nil, job.Faultf("touchesBorder", "crop", "The pot reaches the border of the picture or crop; leave some background all around it.")
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
	if r.Point == nil {
		for _, q := range big {
			if take[q.label] || q.area*3 < main.area {
				continue
			}
			if !atBorder(q) {
				return nil, job.Faultf("severalPots", "point", "There are several pots in the picture; click the one you mean or crop the picture to it.")
			}
		}
	}
	out := make([]bool, n)
	for i := range out {
		out[i] = take[label[i]]
	}
	return out, nil
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
