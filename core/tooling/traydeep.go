package tooling

// A tray that is deeper than the bed is high is cut across its pull into layers.
// The cut is laid through the tray's own mesh, where it keeps clear of natches and
// of the mark, so that a layer prints with the pull upward as the whole does: on
// its cut face, with nothing that overhangs more. Layers are keyed to one another.
// What stands apart above a cut, as two bulges of a pot do, is a piece of its own.

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
)

const mostLayers = 4

// layer is one body of a piece of a tray between two depths along the pull.
type layer struct {
	*tray
	low, high float64 // infinite at the tray's own ends
	body      int
}

// build makes the layer, in the mold's frame.
func (l *layer) build(so *mold.Solids) (*solid.Mesh, error) {
	m, err := l.tray.build(so)
	if err != nil {
		return nil, err
	}
	list, err := l.bodies(m)
	if err != nil {
		return nil, err
	}
	return list[min(l.body, len(list)-1)], nil
}

// bodies are what of the tray's mesh lies between the layer's depths, in the order
// of their heights in the mold, then across the pull.
func (l *layer) bodies(m *solid.Mesh) ([]*solid.Mesh, error) {
	whole := m
	for _, end := range [2]struct{ at, way float64 }{{l.low, 1}, {l.high, -1}} {
		if math.IsInf(end.at, 0) {
			continue
		}
		axis := l.at(1, 0, 0)
		at := solid.Clearing(whole, axis, end.at)
		way := solid.Vec{end.way * axis[0], end.way * axis[1], 0}
		b, cuts, err := solid.Beyond(m, way, end.way*at)
		if err != nil {
			return nil, err
		}
		facing := solid.Vec{-way[0], -way[1], 0}
		all, err := l.cutKeys(whole, at, cuts)
		if err != nil {
			return nil, err
		}
		for i, c := range cuts {
			keys := all[i]
			for i := range keys {
				keys[i].out = end.way < 0 // cones stand up
			}
			open, holes := keyHoles(b, keys, l.clear, facing, func(x, y float64) solid.Vec { return l.at(at, x, y) })
			b.Face(facing, c.Outline, append(c.Holes, holes...)...)
			closeKeys(b, open, keys)
		}
		if m, err = b.Done(); err != nil {
			return nil, err
		}
	}
	list := solid.Bodies(m)
	slices.SortStableFunc(list, func(a, b *solid.Mesh) int {
		ca, cb := middle(a), middle(b)
		if math.Abs(ca[2]-cb[2]) > 1 {
			return cmp.Compare(ca[2], cb[2])
		}
		return cmp.Compare(l.sideways(ca), l.sideways(cb))
	})
	return list, nil
}

func middle(m *solid.Mesh) solid.Vec {
	lo, hi := m.Bounds()
	return mean(lo, hi)
}

// sideways is how far a point in the mold lies across the pull.
func (t *tray) sideways(p solid.Vec) float64 {
	sin, cos := solid.SinCosDeg(t.mid)
	return p[1]*cos - p[0]*sin
}

// cutKeys are the keys in a cut at a depth, in (v, z), by region: within what stands
// over the cut as high as a socket is deep, since a tray only narrows along its
// pull. A part that catches has none.
func (l *layer) cutKeys(whole *solid.Mesh, at float64, cuts []solid.Cut) ([][]key, error) {
	out := make([][]key, len(cuts))
	if l.p.Verdict == parting.Catches {
		return out, nil
	}
	axis := l.at(1, 0, 0)
	spare := keyWall + l.clear*math.Sqrt2
	for _, most := range [2]float64{keyMost, keyMost / 2} {
		keyed := make([]bool, len(cuts)) // by larger keys
		for i := range keyed {
			keyed[i] = len(out[i]) > 0
		}
		_, over, err := solid.Beyond(whole, axis, solid.Clearing(whole, axis, at+most+spare))
		if err != nil {
			return nil, err
		}
		for _, c := range over {
			for _, k := range keysIn(l.region(c), l.clear) {
				k.radius = math.Min(k.radius, most)
				for _, d := range l.toJoints(k.at) {
					k.radius = math.Min(k.radius, d-keyMost-2*spare)
				}
				if k.radius < keyLeast {
					continue
				}
				p := form.Point{R: k.at[0], Z: k.at[1]}
				i := slices.IndexFunc(cuts, func(c solid.Cut) bool { return encloses(l.region(c), p) })
				if i >= 0 && !keyed[i] && len(out[i]) < 2 {
					out[i] = append(out[i], k)
				}
			}
		}
	}
	return out, nil
}

// toJoints are the distances of a place in (v, z) from the piece's other joints,
// whose sockets reach in.
func (t *tray) toJoints(at [2]float64) (out []float64) {
	if t.w != 0 {
		out = append(out, math.Abs(at[0]))
	}
	if t.from > t.lo {
		out = append(out, at[1]-t.from)
	}
	if t.to < t.hi {
		out = append(out, t.to-at[1])
	}
	return out
}

// region is the loop round a region of a cut, in (v, z), its holes tied to its
// first corner.
func (t *tray) region(c solid.Cut) (loop []form.Point) {
	for i, pts := range c.Points {
		for k := range len(pts) + 1 {
			p := pts[k%len(pts)]
			loop = append(loop, form.Point{R: t.sideways(p), Z: p[2]})
		}
		if i > 0 {
			loop = append(loop, loop[0])
		}
	}
	return loop
}

func encloses(loop []form.Point, p form.Point) bool {
	in := false
	a := loop[len(loop)-1]
	for _, c := range loop {
		if (a.Z > p.Z) != (c.Z > p.Z) && p.R < a.R+(p.Z-a.Z)/(c.Z-a.Z)*(c.R-a.R) {
			in = !in
		}
		a = c
	}
	return in
}

// layerAt tells whether a tray can be cut at a depth: clear of its natches and of
// the mark on its flank.
func (t *tray) layerAt(u float64) bool {
	_, cos := solid.SinCosDeg(t.half)
	for _, n := range t.p.Natches {
		if (n.Seam == mold.Start || n.Seam == mold.End) && math.Abs(n.At.R*cos-u) < n.Radius+keyMost+1 {
			return false
		}
	}
	foot, ground := t.side()
	if _, ok := t.flankSign(1); ok && math.Abs(u-(foot[0]+ground[0])/2) < markHigh/2+2*markRaised+1 {
		return false
	}
	return u > ground[0]+jointRoom
}

// layers are the bodies of this piece of the tray, given as its mesh, cut at the
// depths and measured; nil where it cannot be cut there.
func (t *tray) layers(j *job.Job, p Piece, whole *solid.Mesh, at []float64) (out []Piece) {
	ends := append(append([]float64{math.Inf(-1)}, at...), math.Inf(1))
	up := t.at(1, 0, 0)
	for i := 1; i < len(ends); i++ {
		l := layer{tray: t, low: ends[i-1], high: ends[i]}
		list, err := l.bodies(whole)
		if err != nil {
			return nil
		}
		for k, m := range list {
			part := l
			part.body = k
			q := p
			q.build = part.build
			q.Overhang = steepestOf(m, up)
			q.measure(j, m.V, m.Volume()/1000)
			out = append(out, q)
		}
	}
	return out
}

// steepestOf is the overhang of a mesh that is printed with up upward, degrees.
func steepestOf(m *solid.Mesh, up solid.Vec) float64 {
	low := math.Inf(1)
	for _, v := range m.V {
		low = math.Min(low, dotted(v, up))
	}
	worst := 0.0
	for _, f := range m.T {
		a, b, c := m.V[f[0]], m.V[f[1]], m.V[f[2]]
		if math.Max(dotted(a, up), math.Max(dotted(b, up), dotted(c, up))) < low+1e-6 {
			continue // on the bed
		}
		if n := crossed(minus(b, a), minus(c, a)); norm(n) >= 1 { // specks do not count
			worst = math.Max(worst, leaning(-dotted(n, up), norm(n)))
		}
	}
	return worst
}

// deep is the tray in the fewest layers, slices and halves that fit the bed, or nil.
// Places for cuts are sought on coarse meshes; where the mark on the flanks is in
// the way of all of them, it is left out.
func (t *tray) deep(j *job.Job, p Piece, split func(m, n int) []*tray) []Piece {
	so := mold.NewCoarse(t.md)
	var ways [][3]int
	for k := 2; k <= mostLayers; k++ {
		for m := 1; m*k <= mostBoards; m++ {
			ways = append(ways, [3]int{k, m, 1}, [3]int{k, m, 2})
		}
	}
	slices.SortStableFunc(ways, func(a, b [3]int) int { return a[0]*a[1]*a[2] - b[0]*b[1]*b[2] })
next:
	for i := range 2 * len(ways) {
		w := ways[i/2]
		var out []Piece
		for _, t := range split(w[1], w[2]) {
			t.unmarked = i%2 == 1
			coarse, err := t.build(so)
			if err != nil {
				continue next
			}
			list := t.cutIn(j, p, coarse, w[0])
			if list == nil {
				continue next
			}
			out = append(out, list...)
		}
		for i := range out {
			out[i].share(i, len(out))
		}
		if out != nil {
			return out
		}
	}
	return nil
}

// cutIn finds depths at which a piece of the tray falls into n layers that all fit,
// as even as can be, and into as many bodies a little farther on; nil where there
// are none.
func (t *tray) cutIn(j *job.Job, p Piece, coarse *solid.Mesh, n int) []Piece {
	up := t.at(1, 0, 0)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range coarse.V {
		lo, hi = math.Min(lo, dotted(v, up)), math.Max(hi, dotted(v, up))
	}
	bed := j.Printer.Bed[2]
	const thin = 2.0 // mm; a flake above a cut is no piece to handle
	fits := func(list []Piece) bool {
		return len(list) > 0 && !slices.ContainsFunc(list, func(q Piece) bool { return !q.FitsBed || q.Size[2] < thin })
	}
	if hi-lo <= bed { // a half or slice that is low enough needs no cut
		if q := []Piece{t.measured(j, p)}; fits(q) {
			return q
		}
		return nil
	}
	slice := (hi - lo) / float64(n)
	room := bed - keyMost - slice // a cut may lie so far off even
	if room < 0 {
		return nil
	}
	const tries = 24
	for i := range tries {
		var at, off []float64
		for k := 1; k < n; k++ {
			d := room * float64((i+1)/2) / (tries / 2) * float64(1-2*(i%2))
			at = append(at, lo+slice*float64(k)+d)
			off = append(off, at[k-1]+0.7)
		}
		if slices.ContainsFunc(at, func(u float64) bool { return !t.layerAt(u) }) {
			continue
		}
		list := t.layers(j, p, coarse, at)
		if !fits(list) || len(t.layers(j, p, coarse, off)) != len(list) {
			continue
		}
		if fine, err := t.build(t.md.Solids()); err == nil {
			if out := t.layers(j, p, fine, at); len(out) == len(list) && fits(out) {
				return out
			}
		}
	}
	return nil
}
