package tooling

// A tray that is deeper than the bed is high is cut across its pull into layers.
// The cut is laid through the tray's own mesh, where it keeps clear of natches, and
// the mark moves out of its way, so that a layer prints with the pull upward as the whole does: on
// its cut face, with nothing that overhangs more. Layers are keyed to one another.
// What stands apart above a cut, as two bulges of a pot do, is a piece of its own.

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/mold"
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
	list, _, err := l.bodies(m)
	if err != nil {
		return nil, err
	}
	return list[min(l.body, len(list)-1)], nil
}

// bodies are what of the tray's mesh lies between the layer's depths, in the order
// of their heights in the mold, then across the pull; keyed are the keys in them.
func (l *layer) bodies(m *solid.Mesh) (list []*solid.Mesh, keyed []keyPlace, err error) {
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
			return nil, nil, err
		}
		facing := solid.Vec{-way[0], -way[1], 0}
		all, err := l.cutKeys(whole, at, cuts)
		if err != nil {
			return nil, nil, err
		}
		for i, c := range cuts {
			keys := all[i]
			for i := range keys {
				keys[i].out = end.way < 0 // cones stand up
				keyed = append(keyed, keyPlace{l.at(at, keys[i].at[0], keys[i].at[1]), keys[i].wide(l.clear)})
			}
			open, holes := keyHoles(b, keys, l.clear, facing, func(x, y float64) solid.Vec { return l.at(at, x, y) })
			b.Face(facing, c.Outline, append(c.Holes, holes...)...)
			closeKeys(b, open, keys)
		}
		if m, err = b.Done(); err != nil {
			return nil, nil, err
		}
	}
	list = solid.Bodies(m)
	slices.SortStableFunc(list, func(a, b *solid.Mesh) int {
		ca, cb := middle(a), middle(b)
		if math.Abs(ca[2]-cb[2]) > 1 {
			return cmp.Compare(ca[2], cb[2])
		}
		return cmp.Compare(l.sideways(ca), l.sideways(cb))
	})
	return list, keyed, nil
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

// layerAt tells whether a tray can be cut at a depth: clear of its natches.
func (t *tray) layerAt(u float64) bool {
	_, cos := solid.SinCosDeg(t.half)
	for _, n := range t.p.Natches {
		if (n.Seam == mold.Start || n.Seam == mold.End) && math.Abs(n.At.R*cos-u) < n.Radius+keyMost+1 {
			return false
		}
	}
	_, ground := t.side()
	return u > ground[0]+jointRoom
}

// markClear is the tray with its mark at the place on the flanks nearest to their
// middle that keeps clear of cuts at the depths; ok is false where there is none,
// and the tray without a mark.
func (t *tray) markClear(at []float64) (out *tray, ok bool) {
	foot, ground := t.side()
	out = new(tray)
	*out = *t
	out.unmarked = true
	most := (foot[0] - ground[0] - bandLeast) / 2 // as far as it may be moved
	for d := 0.0; d <= most; d++ {
		for _, off := range [2]float64{d, -d} {
			mid := (foot[0]+ground[0])/2 + off
			if !slices.ContainsFunc(at, func(u float64) bool { return math.Abs(u-mid) < markHigh/2+2*markRaised+1 }) {
				out.unmarked, out.markOff = false, off
				_, ok = out.flankSign(1)
				return out, ok
			}
		}
	}
	return out, false
}

// layers are the bodies of this piece of the tray, given as its mesh, cut at the
// depths and measured; nil where it cannot be cut there.
func (t *tray) layers(j *job.Job, p Piece, whole *solid.Mesh, at []float64) (out []Piece) {
	ends := append(append([]float64{math.Inf(-1)}, at...), math.Inf(1))
	up := t.at(1, 0, 0)
	for i := 1; i < len(ends); i++ {
		l := layer{tray: t, low: ends[i-1], high: ends[i]}
		list, keyed, err := l.bodies(whole)
		if err != nil {
			return nil
		}
		for k, m := range list {
			part := l
			part.body = k
			q := p
			q.unkeyed = !slices.ContainsFunc(keyed, func(k keyPlace) bool { return k.in(m) })
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
	var worst steep
	for _, f := range m.T {
		a, b, c := m.V[f[0]], m.V[f[1]], m.V[f[2]]
		if math.Max(dotted(a, up), math.Max(dotted(b, up), dotted(c, up))) < low+1e-6 {
			continue // on the bed
		}
		if n := crossed(minus(b, a), minus(c, a)); norm(n) >= 1 { // specks do not count
			worst.face(-dotted(n, up), norm(n))
		}
	}
	return worst.degrees()
}

// deep is the tray in the fewest layers, slices and halves that fit the bed, or nil.
// Places for cuts are sought on coarse meshes without the mark, which is then put
// where it keeps clear of them, and left out only where there is no such place.
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
	for _, w := range ways {
		var out []Piece
		pieces := split(w[1], w[2])
		for _, t := range pieces {
			if !t.floorFits(j) {
				continue next
			}
		}
		for _, t := range pieces {
			bare := *t
			bare.unmarked = true
			coarse, err := bare.build(so)
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

// floorFits tells whether the underside of this piece of the tray, which no layer
// makes smaller, fits the bed.
func (t *tray) floorFits(j *job.Job) bool {
	_, ground := t.side()
	var q Piece
	q.up = t.at(1, 0, 0)
	var corners []solid.Vec
	for _, z := range [2]float64{t.from, t.to} {
		for _, w := range [2]float64{-1, 1} {
			if t.w == -w {
				w = 0
			}
			corners = append(corners, t.at(ground[0], w*ground[1], z))
		}
	}
	q.measure(j, corners, 0)
	return q.FitsBed
}

// cutIn finds depths at which a piece of the tray falls into n layers that all fit,
// as even as can be, and into as many bodies a little farther on; nil where there
// are none. coarse is its mesh without the mark.
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
	var unmarked [][]float64 // depths that leave the mark no room
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
		marked, ok := t.markClear(at)
		if !ok {
			unmarked = append(unmarked, at)
			continue
		}
		if out := marked.fine(j, p, at); len(out) == len(list) && fits(out) {
			return out
		}
	}
	for _, at := range unmarked {
		bare, _ := t.markClear(at)
		if out := bare.fine(j, p, at); fits(out) {
			return out
		}
	}
	return nil
}

// fine are the layers of the tray's own mesh.
func (t *tray) fine(j *job.Job, p Piece, at []float64) []Piece {
	m, err := t.build(t.md.Solids())
	if err != nil {
		return nil
	}
	return t.layers(j, p, m, at)
}
