package tooling

// How wide a plan is at every turn. Only the corners of its convex hull can be
// outermost, and as the plan is turned the outermost ones go round the hull
// with it, so that all turns together cost little more than one (rotating
// calipers; Shamos 1978, hull by Andrew 1979; from memory).

import "moldwright/core/solid"

// hull is the convex hull of points, counterclockwise.
func hull(points [][2]float64) [][2]float64 {
	list := rising(points)
	out := make([][2]float64, 0, len(list)+1)
	half := func(from int, q *[2]float64) {
		for n := len(out); n >= from+2; n-- {
			a, b := &out[n-2], &out[n-1]
			if (b[0]-a[0])*(q[1]-a[1])-(b[1]-a[1])*(q[0]-a[0]) > 0 {
				break
			}
			out = out[:n-1]
		}
		out = append(out, *q)
	}
	for i := range list {
		half(0, &list[i])
	}
	low := len(out) - 1
	for i := len(list) - 2; i >= 0; i-- {
		half(low, &list[i])
	}
	if len(out) > 1 {
		out = out[:len(out)-1] // the first once more
	}
	return out
}

// rising are the points from left to right, and upward where they stand one above
// the other. They come as rings and arcs, whose runs solid.Rising merges.
func rising(points [][2]float64) [][2]float64 {
	x := make([]float64, len(points))
	for i := range points {
		x[i] = points[i][0]
	}
	list := make([][2]float64, len(points))
	for k, i := range solid.Rising(x) {
		list[k] = points[i]
		for ; k > 0 && list[k-1][0] == list[k][0] && list[k-1][1] > list[k][1]; k-- {
			list[k-1], list[k] = list[k], list[k-1]
		}
	}
	return list
}

// calipers hold a hull and its corners that lie outermost to the right, left,
// top and bottom as it was last turned.
type calipers struct {
	loop [][2]float64
	at   [4]int
}

// box is the width and depth of the hull turned by degrees.
func (c *calipers) box(deg float64) (w, d float64) {
	sin, cos := solid.SinCosDeg(deg)
	return c.reach(0, cos, -sin) + c.reach(1, -cos, sin), c.reach(2, sin, cos) + c.reach(3, -sin, -cos)
}

// reach is how far the hull reaches along (x, y), found from corner at[k] on.
func (c *calipers) reach(k int, x, y float64) float64 {
	n := len(c.loop)
	i := c.at[k]
	best := c.loop[i][0]*x + c.loop[i][1]*y
	for _, step := range [2]int{n - 1, 1} {
		for {
			next := i + step
			if next >= n {
				next -= n
			}
			v := c.loop[next][0]*x + c.loop[next][1]*y
			if v <= best {
				break
			}
			i, best = next, v
		}
	}
	c.at[k] = i
	return best
}
