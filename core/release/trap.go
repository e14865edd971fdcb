package release

import (
	"math"
	"slices"
)

// Trap is empty space from which neither a lower, an upper nor a side part can
// leave or, within a pot cast solid, no core: plaster there stays locked whatever
// the scheme.
type Trap struct {
	ZFrom, ZTo float64 // mm
	RFrom, RTo float64 // mm
	Depth      float64 // mm, the greatest width of the trap across the axis
	Area       float64 // mm2 in the half-plane
	Volume     float64 // mm3 turned about the axis
}

type interval struct{ a, b float64 }

// growing is a trap that may go on above height z, over its last interval.
type growing struct {
	Trap
	z    float64
	last interval
}

// Traps finds every trapped region. The half-plane is cut into slabs at all
// heights where the contour or an envelope turns; inside a slab all edges of
// trapped space run straight, so that two Gauss points are exact for area and
// volume.
func (s *Survey) Traps() []Trap {
	if !s.anyTrap() {
		return nil
	}
	return s.regions(s.trapped)
}

// CoreTraps finds every region within a pot cast solid that a core cannot be drawn up
// out of; s is a survey by NewCore. They are behind what the inner surface draws in to.
func (s *Survey) CoreTraps() []Trap {
	if !slices.ContainsFunc(s.Deepest[Up], func(d float64) bool { return d > Free }) {
		return nil
	}
	return s.regions(s.behind)
}

// regions puts together what is found at every height, deepest first.
func (s *Survey) regions(at func(z float64) []interval) []Trap {
	zs := s.heights()
	var open []growing
	var done []Trap
	for i := 0; i+1 < len(zs); i++ {
		z0, z1 := zs[i], zs[i+1]
		var still []growing
		for _, p := range slab(z0, z1, at) {
			low := p.at(z0)
			t := growing{p.trap(z0, z1), z1, p.at(z1)}
			for k := range open {
				if o := &open[k]; o.z == z0 && o.last.a <= low.b+contact && low.a <= o.last.b+contact {
					t.join(o.Trap)
					o.z = math.Inf(-1)
				}
			}
			still = append(still, t)
		}
		for _, o := range open {
			if !math.IsInf(o.z, -1) {
				done = append(done, o.Trap)
			}
		}
		open = still
	}
	for _, o := range open {
		done = append(done, o.Trap)
	}
	slices.SortStableFunc(done, func(a, b Trap) int { return sign(b.Depth - a.Depth) })
	return slices.DeleteFunc(done, func(t Trap) bool { return t.Depth < 1e-3 })
}

// contact is how near in mm trapped space on two sides of a height must come
// to be one.
const contact = 1e-5

// strip is trapped space between two heights of a slab, with straight edges:
// its intervals at the slab's Gauss points.
type strip struct {
	za, zb float64
	ia, ib interval
}

// slab tells the trapped strips between two neighbouring heights.
func slab(z0, z1 float64, at func(z float64) []interval) []strip {
	mid, g := (z0+z1)/2, (z1-z0)/(2*math.Sqrt(3))
	za, zb := mid-g, mid+g
	a, b := at(za), at(zb)
	if len(a) != len(b) { // one is too thin to tell at one of them
		a = at(mid)
		b = a
	}
	out := make([]strip, len(a))
	for i := range a {
		out[i] = strip{za, zb, a[i], b[i]}
	}
	return out
}

// at is the strip's interval at height z.
func (p strip) at(z float64) interval {
	t := (z - p.za) / (p.zb - p.za)
	return interval{p.ia.a + t*(p.ib.a-p.ia.a), p.ia.b + t*(p.ib.b-p.ia.b)}
}

// thinnest is the height in mm of a slab below which its edges are not drawn out to its
// ends: within it what lies nearly level runs far, and heights next to one another were
// taken for one.
const thinnest = 1e-5

// trap is the strip by itself.
func (p strip) trap(z0, z1 float64) Trap {
	low, high := p.at(z0), p.at(z1)
	if z1-z0 < thinnest {
		low, high = p.ia, p.ib
	}
	ring := func(iv interval) float64 { return math.Pi * (iv.b*iv.b - iv.a*iv.a) }
	return Trap{
		ZFrom: z0, ZTo: z1,
		RFrom: min(low.a, high.a), RTo: max(low.b, high.b),
		Depth:  max(low.b-low.a, high.b-high.a),
		Area:   (z1 - z0) / 2 * (p.ia.b - p.ia.a + p.ib.b - p.ib.a),
		Volume: (z1 - z0) / 2 * (ring(p.ia) + ring(p.ib)),
	}
}

func (t *Trap) join(o Trap) {
	t.ZFrom, t.ZTo = min(t.ZFrom, o.ZFrom), max(t.ZTo, o.ZTo)
	t.RFrom, t.RTo = min(t.RFrom, o.RFrom), max(t.RTo, o.RTo)
	t.Depth = max(t.Depth, o.Depth)
	t.Area += o.Area
	t.Volume += o.Volume
}

// anyTrap tells whether some place on the contour catches under every pull.
// Every trapped region has contour on its edge, and its ends there are onsets
// of catching, which the samples hold; so it is sought on spans that have samples
// that catch under each pull.
func (s *Survey) anyTrap() bool {
	caught := make([]uint8, len(s.M.Spans)) // a bit for each pull
	for _, pull := range Pulls {
		for i := range s.Samples[pull] {
			if c := &s.Samples[pull][i]; c.Depth > Free {
				caught[c.Span] |= 1 << pull
			}
		}
	}
	if !slices.Contains(caught, 1<<len(Pulls)-1) {
		return false
	}
	for _, pull := range Pulls {
		for i := range s.Samples[pull] {
			c := &s.Samples[pull][i]
			if c.Depth <= Free || caught[c.Span] != 1<<len(Pulls)-1 {
				continue
			}
			w := s.wall(c.Span)
			_, plaster := w.beside(c.T)
			if !slices.ContainsFunc(Pulls[:], func(other Pull) bool {
				f := &s.frames[other]
				v := f.to(plaster)
				return other != pull && f.env.free(v.x, v.y)
			}) {
				return true
			}
		}
	}
	return false
}

// heights are all z at which the contour or an envelope turns, rising.
func (s *Survey) heights() []float64 {
	var zs []float64
	for _, p := range s.M.Pts {
		zs = append(zs, p.Z)
	}
	for _, pull := range Pulls {
		f := &s.frames[pull]
		for _, p := range f.env.pieces {
			for _, x := range [2]float64{p.x0, p.x1} {
				zs = append(zs, f.from(vec{x, f.env.on(p.chord, x)}).Z)
			}
		}
	}
	slices.Sort(zs)
	return slices.CompactFunc(zs, func(a, b float64) bool { return math.Abs(b-a) < 1e-6 })
}

// trapped are the intervals of r at height z from which no pull frees.
func (s *Survey) trapped(z float64) []interval {
	var cross []float64
	s.tree.Visit(0, math.Inf(1), z, z, func(i int) {
		if i+1 == len(s.M.Pts) {
			return // the disc at the rim lies level
		}
		p, q := s.M.Pts[i], s.M.Pts[i+1]
		if (p.Z >= z) != (q.Z >= z) {
			cross = append(cross, p.R+(z-p.Z)/(q.Z-p.Z)*(q.R-p.R))
		}
	})
	slices.Sort(cross)
	// Outside the last crossing all is free outward. Inward from it, pot and
	// gap alternate.
	var out []interval
	for k := len(cross) - 2; k >= 0; k -= 2 {
		gap := interval{0, cross[k]}
		if k > 0 {
			gap.a = cross[k-1]
		}
		if s.underRim(gap, z) {
			continue
		}
		down := s.frames[Down].env.blocked(gap, z)
		up := s.frames[Up].env.blocked(gap, -z)
		for _, d := range down {
			for _, u := range up {
				if a, b := max(d.a, u.a), min(d.b, u.b); b-a > 1e-9 {
					out = append(out, interval{a, b})
				}
			}
		}
	}
	return out
}

// behind are the intervals of r at height z within the clay's inner surface over which
// clay stands. From the axis to the outer surface hollow and clay alternate; what is
// bounded outward by the inner surface is the core's.
func (s *Survey) behind(z float64) []interval {
	type edge struct {
		r     float64
		inner bool
	}
	var cross []edge
	s.tree.Visit(0, math.Inf(1), z, z, func(i int) {
		p, q := s.body[i], s.body[i+1]
		if (p.Z >= z) != (q.Z >= z) {
			cross = append(cross, edge{p.R + (z-p.Z)/(q.Z-p.Z)*(q.R-p.R), i < len(s.M.Spans)})
		}
	})
	slices.SortFunc(cross, func(a, b edge) int { return sign(a.r - b.r) })
	var out []interval
	for k := len(cross) - 2; k >= 0; k -= 2 {
		gap := interval{0, cross[k].r}
		if k > 0 {
			gap.a = cross[k-1].r
		}
		if cross[k].inner {
			out = append(out, s.frames[Up].env.blocked(gap, -z)...)
		}
	}
	return slices.DeleteFunc(out, func(v interval) bool { return v.b-v.a <= 1e-9 })
}

// underRim tells whether a gap at height z is the inside of the pot above its
// rim, as where a lip curls down: that is opening, not plaster.
func (s *Survey) underRim(gap interval, z float64) bool {
	return !s.M.Closed && gap.a == 0 && z > s.M.Rim().Z
}

// blocked are the parts of the gap over which the curve lies below y.
func (e *envelope) blocked(gap interval, y float64) []interval {
	var out []interval
	add := func(a, b float64) {
		if n := len(out); n > 0 && out[n-1].b >= a {
			out[n-1].b = b
		} else if b > a {
			out = append(out, interval{a, b})
		}
	}
	k := max(e.find(gap.a), 0)
	for ; k < len(e.pieces) && e.pieces[k].x0 < gap.b; k++ {
		p := e.pieces[k]
		a, b := max(p.x0, gap.a), min(p.x1, gap.b)
		ya, yb := e.on(p.chord, a), e.on(p.chord, b)
		switch {
		case ya < y && yb < y:
			add(a, b)
		case ya < y:
			add(a, a+(y-ya)/(yb-ya)*(b-a))
		case yb < y:
			add(a+(y-ya)/(yb-ya)*(b-a), b)
		}
	}
	return out
}
