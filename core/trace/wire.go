// The outline led by hand through a cluttered picture: between each two points
// the path of least cost is found, where strong edges are cheap (live-wire,
// after Mortensen and Barrett 1995). Costs are small whole numbers, so that
// the search runs on a ring of buckets (Dial 1969) and always gives the same
// path.

package trace

import (
	"math"

	"moldwright/core/job"
)

const (
	wirePixels = 900 // longer side of the picture that the wire runs on
	dearest    = 64  // cost of a straight step away from every edge
)

// LiveWire is the path along edges through the points, in pixels, for a page to
// show while points are set. The path has a point about each second pixel of a
// picture of at most 900 by 900. Errors are *job.Fault.
func LiveWire(req Request, rgba []byte) ([][2]float64, error) {
	if f := req.check(len(rgba)); f != nil {
		return nil, f
	}
	if req.Wire == nil {
		return nil, job.Faultf("tooFewPoints", "wire.points", "The edge needs at least 2 points; set them along the pot's side.")
	}
	p, f := cropped(&req, rgba)
	if f != nil {
		return nil, f
	}
	o, _ := wirePath(&req, p)
	return places(o), nil
}

// wirePath is the path in pixels, and how many pixels one of its steps spans.
func wirePath(r *Request, p *picture) ([]pt, float64) {
	c := shrink(p, wirePixels)
	cost := edgeCost(c)
	n := len(r.Wire.Points)
	legs := n - 1
	if r.Wire.Closed {
		legs = n
	}
	k := float64(c.k)
	place := func(i int) pt {
		return pt{float64(p.x0) + (float64(i%c.w)+0.5)*k, float64(p.y0) + (float64(i/c.w)+0.5)*k}
	}
	var out []pt
	for i := range legs {
		a, b := r.Wire.Points[i], r.Wire.Points[(i+1)%n]
		leg := cheapest(c, cost, c.at(p, a[0], a[1]), c.at(p, b[0], b[1]))
		for j, v := range leg {
			if j > 0 || i == 0 {
				out = append(out, place(v))
			}
		}
	}
	if r.Wire.Closed && len(out) > 1 {
		out = out[:len(out)-1]
	}
	return smooth(out, 2, r.Wire.Closed), k
}

// edgeCost is 1 on the strongest edges and dearest where there is none. An edge
// counts as strong beside the strongest within its neighbourhood, so that a
// faint edge still leads where it is alone.
func edgeCost(c *plane) []uint8 {
	g := gradient(c)
	const block = 48
	bw, bh := (c.w+block-1)/block, (c.h+block-1)/block
	top := make([]float64, bw*bh)
	for i, v := range g {
		b := i/c.w/block*bw + i%c.w/block
		top[b] = max(top[b], float64(v))
	}
	out := make([]uint8, len(g))
	for i, v := range g {
		bx, by := i%c.w/block, i/c.w/block
		strong := 20.0
		for y := max(by-1, 0); y <= min(by+1, bh-1); y++ {
			for x := max(bx-1, 0); x <= min(bx+1, bw-1); x++ {
				strong = max(strong, 0.7*top[y*bw+x])
			}
		}
		f := 1 - math.Min(float64(v)/strong, 1)
		out[i] = uint8(1 + (dearest-1)*f*f)
	}
	return out
}

// cheapest is the path of least cost from start to end, 8-connected, a diagonal
// step counted 7/5. The search keeps to the box of both, widened by half.
func cheapest(c *plane, cost []uint8, start, end int) []int {
	sx, sy, ex, ey := start%c.w, start/c.w, end%c.w, end/c.w
	pad := max(abs(sx-ex), abs(sy-ey))/2 + 12
	x0, x1 := max(min(sx, ex)-pad, 0), min(max(sx, ex)+pad, c.w-1)
	y0, y1 := max(min(sy, ey)-pad, 0), min(max(sy, ey)+pad, c.h-1)
	w := x1 - x0 + 1
	dist := make([]int32, w*(y1-y0+1))
	from := make([]int8, len(dist))
	for i := range dist {
		dist[i] = math.MaxInt32
	}
	local := func(x, y int) int { return (y-y0)*w + x - x0 }
	const ring = 7*dearest + 1
	var bucket [ring][]int32
	dist[local(sx, sy)] = 0
	bucket[0] = append(bucket[0], int32(local(sx, sy)))
	goal := local(ex, ey)
	waiting := 1
	for d := 0; waiting > 0; d++ {
		b := &bucket[d%ring]
		for len(*b) > 0 {
			i := int((*b)[len(*b)-1])
			*b = (*b)[:len(*b)-1]
			waiting--
			if int(dist[i]) != d {
				continue
			}
			if i == goal {
				waiting = 0
				break
			}
			x, y := x0+i%w, y0+i/w
			for k, s := range steps {
				nx, ny := x+s[0], y+s[1]
				if nx < x0 || nx > x1 || ny < y0 || ny > y1 {
					continue
				}
				v := int32(d + s[2]*int(cost[ny*c.w+nx]))
				if j := local(nx, ny); v < dist[j] {
					dist[j], from[j] = v, int8(k)
					bucket[int(v)%ring] = append(bucket[int(v)%ring], int32(j))
					waiting++
				}
			}
		}
	}
	var back []int
	for x, y := ex, ey; ; {
		back = append(back, y*c.w+x)
		if x == sx && y == sy {
			break
		}
		s := steps[from[local(x, y)]]
		x, y = x-s[0], y-s[1]
	}
	for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
		back[i], back[j] = back[j], back[i]
	}
	return back
}

// steps to the eight neighbours, with their length in fifths.
var steps = [8][3]int{{1, 0, 5}, {0, 1, 5}, {-1, 0, 5}, {0, -1, 5}, {1, 1, 7}, {-1, 1, 7}, {-1, -1, 7}, {1, -1, 7}}

func abs(v int) int { return max(v, -v) }

// wired is the outline along the wire, drawn to the edge.
func wired(r *Request, p *picture) (*drawn, *job.Fault) {
	if !r.Wire.Closed && r.Axis == nil {
		return nil, job.Faultf("noAxis", "axis", "The points run along one side only; set two points on the pot's axis too.")
	}
	o, k := wirePath(r, p)
	if len(o) < 8 {
		return nil, job.Faultf("tooFewPoints", "wire.points", "The points of the edge lie too close together; spread them along the pot's side.")
	}
	closed := r.Wire.Closed
	o = snapping{step: math.Max(1, k), reach: 1.5*k + 1, sample: 0.5, width: 1.5, grid: 2}.snap(p, o, closed)
	d := &drawn{outline: smooth(o, 1, closed), closed: closed}
	if closed {
		d.outline = windLeft(d.outline)
	} else {
		a := throughPoints(*r.Axis)
		d.axis = &a
	}
	return d, nil
}

// windLeft gives a closed outline the order that cut expects.
func windLeft(o []pt) []pt {
	area := 0.0
	for i, p := range o {
		q := o[(i+1)%len(o)]
		area += p.x*q.y - q.x*p.y
	}
	if area > 0 { // y runs down
		for i, j := 0, len(o)-1; i < j; i, j = i+1, j-1 {
			o[i], o[j] = o[j], o[i]
		}
	}
	return o
}
