package parting

import "math"

// The regression behind the nearest releasing form. A chain of radii that must
// rise by given gaps is an isotonic regression of the radii less the summed
// gaps; pooling adjacent violators solves it in one pass (Ayer, Brunk, Ewing,
// Reid and Silverman 1955), and the same pass leaves behind the solution for
// every beginning of the chain (Stout 2008, prefix isotonic regression; both
// from memory). A form for two parts rises up to a peak and falls after it. The
// peak is shared, so its radius and what pools with it are settled apart for
// each place of the peak: of the two chains that end beside it, blocks are
// taken in, highest first, while they stand higher than what is pooled so far.
// What is pooled stands at least as high as in the chain alone, so no peak takes
// in more blocks than its two chains merged there themselves: all peaks together
// cost O(n).

// block is a run of a chain's items that stand level in the regression of the
// items up to and with the block's last, whose index the block has in its chain.
type block struct {
	first  int     // its first item
	weight float64 // summed
	mean   float64 // of the items, by weight
	spread float64 // summed weight times squared distance from the mean
	cost   float64 // of this block and all before it, none of them below the floor
}

// join pools two runs.
func (b block) join(o block) block {
	w := b.weight + o.weight
	d := o.mean - b.mean
	b.spread += o.spread + b.weight*o.weight/w*d*d
	b.mean += o.weight / w * d
	b.weight = w
	b.first = min(b.first, o.first)
	return b
}

// chain holds the isotonic regression of every beginning of a list: the blocks
// of items 0 to i are chain.blocks[i] and, before it, the block whose index is
// one less than that one's first item.
type chain struct {
	blocks []block
	floor  float64 // no value may be less
}

func newChain(y, weight []float64, floor float64) chain {
	c := chain{make([]block, len(y)), floor}
	for i := range y {
		b := block{first: i, weight: weight[i], mean: y[i]}
		for b.first > 0 && c.blocks[b.first-1].mean >= b.mean {
			b = b.join(c.blocks[b.first-1])
		}
		short := max(0, floor-b.mean)
		b.cost = c.cost(b.first-1) + b.spread + b.weight*short*short
		c.blocks[i] = b
	}
	return c
}

// cost is the weighted sum of squares of the regression of items 0 to i.
func (c *chain) cost(i int) float64 {
	if i < 0 {
		return 0
	}
	return c.blocks[i].cost
}

// top is how high the regression of items 0 to i stands at i.
func (c *chain) top(i int) float64 {
	if i < 0 {
		return math.Inf(-1)
	}
	return c.blocks[i].mean
}

// values calls set with every item up to i and its value in the regression in
// which no value is more than ceiling.
func (c *chain) values(i int, ceiling float64, set func(item int, v float64)) {
	for i >= 0 {
		b := c.blocks[i]
		v := min(max(b.mean, c.floor), ceiling)
		for k := b.first; k <= i; k++ {
			set(k, v)
		}
		i = b.first - 1
	}
}

// radii is the regression of a profile's radii, by weight, such that neighbours
// differ by at least a gap. The first node stays on the axis; the last stays
// there too where the form is closed, and else keeps at least radius.
type radii struct {
	r, weight []float64
	fromAxis  []float64 // fromAxis[i] is the sum of the gaps before node i
	toEnd     []float64 // toEnd[i] is the sum of the gaps after node i
	last      int       // the last node that may move
	up        chain     // item i is node i+1, less fromAxis
	down      chain     // item i is node last-i, less toEnd
}

// newRadii takes gap[i] as the least difference between nodes i and i+1.
func newRadii(r, weight, gap []float64, closed bool, leastEnd float64) *radii {
	n := len(r)
	p := &radii{r: r, weight: weight, fromAxis: make([]float64, n), toEnd: make([]float64, n), last: n - 1}
	if closed {
		p.last, leastEnd = n-2, 0
	}
	for i := range gap {
		p.fromAxis[i+1] = p.fromAxis[i] + gap[i]
	}
	for i := n - 2; i >= 0; i-- {
		p.toEnd[i] = p.toEnd[i+1] + gap[i]
	}
	y, w := make([]float64, p.last), make([]float64, p.last)
	for i := range y {
		y[i], w[i] = r[i+1]-p.fromAxis[i+1], weight[i+1]
	}
	p.up = newChain(y, w, 0)
	for i := range y {
		k := p.last - i
		y[i], w[i] = r[k]-p.toEnd[k], weight[k]
	}
	p.down = newChain(y, w, leastEnd)
	return p
}

// rising is the nearest list of radii that rise from the axis to the last node
// (open forms only).
func (p *radii) rising() []float64 {
	out := make([]float64, len(p.r))
	p.up.values(p.last-1, math.Inf(1), func(i int, v float64) { out[i+1] = v + p.fromAxis[i+1] })
	return out
}

// peak is the radius of node k, and the weighted sum of squares of all changes,
// in the nearest list of radii that rise up to node k and fall after it.
func (p *radii) peak(k int) (radius, cost float64) {
	least := max(p.fromAxis[k], p.down.floor+p.toEnd[k])
	pool := func(held bool) (b block, i, j int) {
		b = block{weight: p.weight[k], mean: p.r[k]}
		i, j = k-2, p.last-k-1
		for {
			u, d := p.up.top(i)+p.fromAxis[k], p.down.top(j)+p.toEnd[k]
			level := b.mean
			if held {
				level = least
			}
			if max(u, d) <= level {
				return b, i, j
			}
			c := &p.up
			at, shift := &i, p.fromAxis[k]
			if d > u {
				c, at, shift = &p.down, &j, p.toEnd[k]
			}
			o := c.blocks[*at]
			*at = o.first - 1
			o.mean += shift
			b = b.join(o)
		}
	}
	b, i, j := pool(false)
	radius = b.mean
	if radius < least {
		b, i, j = pool(true)
		radius = least
	}
	d := radius - b.mean
	return radius, b.spread + b.weight*d*d + p.up.cost(i) + p.down.cost(j)
}

// peaked is the nearest list of radii that rise up to node k and fall after it.
func (p *radii) peaked(k int) []float64 {
	out := make([]float64, len(p.r))
	out[k], _ = p.peak(k)
	p.up.values(k-2, out[k]-p.fromAxis[k], func(i int, v float64) { out[i+1] = v + p.fromAxis[i+1] })
	p.down.values(p.last-k-1, out[k]-p.toEnd[k], func(i int, v float64) { out[p.last-i] = v + p.toEnd[p.last-i] })
	return out
}
