package tooling

// The cuts of a print that is divided by planes (hew.go), as a tree: each goes
// through what lies on one side of the cut above it in the tree, and lays the two
// faces of its joint, with their keys, at once. Its plane is the same on both
// sides, so the pieces share the vertices of the joint.

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/mold"
	"moldwright/core/solid"
)

// split is a cut across an axis, or with axis -1 a place where bodies lie.
type split struct {
	axis         int
	at           float64
	below, above *split
}

// chain are cuts across one axis, one beyond the other, with leaves between.
func chain(axis int, at []float64, leaf func() *split) *split {
	if len(at) == 0 {
		return leaf()
	}
	return &split{axis: axis, at: at[0], below: leaf(), above: chain(axis, at[1:], leaf)}
}

// ways adds the axes across which a tree cuts.
func (s *split) ways(to [3]bool) [3]bool {
	if s.axis < 0 {
		return to
	}
	to[s.axis] = true
	return s.above.ways(s.below.ways(to))
}

// places are the cuts of a tree across an axis.
func (s *split) places(axis int) (out []float64) {
	if s.axis < 0 {
		return nil
	}
	if s.axis == axis {
		out = append(out, s.at)
	}
	return append(append(out, s.below.places(axis)...), s.above.places(axis)...)
}

// fall cuts a closed mesh by the tree, keys and all where keyed is given, and
// visits the bodies at each leaf, in the order of their places along the axes, and
// the box that its cuts leave; an error of visit ends it.
func (s *split) fall(d *hewn, m *solid.Mesh, within extent, keyed *[]keyPlace, visit func(leaf *split, bodies []*solid.Mesh, within extent) error) error {
	if s.axis < 0 {
		list := solid.Bodies(m)
		slices.SortStableFunc(list, func(a, b *solid.Mesh) int {
			ca, cb := middle(a), middle(b)
			for _, axis := range d.axes {
				if x, y := dotted(ca, axis), dotted(cb, axis); math.Abs(x-y) > 1 {
					return cmp.Compare(x, y)
				}
			}
			return 0
		})
		return visit(s, list, within)
	}
	axis := d.axes[s.axis]
	at := solid.Clearing(m, axis, s.at)
	var keys []key
	if keyed != nil {
		var err error
		if keys, err = d.keysAt(m, s, at, within); err != nil {
			return err
		}
		for _, k := range keys {
			*keyed = append(*keyed, keyPlace{d.spot(s.axis, at, k.at), k.wide(d.j.Printer.Clearance)})
		}
	}
	for _, way := range [2]float64{-1, 1} {
		normal := plus(solid.Vec{}, axis, way)
		b, cuts, err := solid.Beyond(m, normal, way*at)
		if err != nil {
			return err
		}
		facing := plus(solid.Vec{}, normal, -1)
		for _, c := range cuts {
			var list []key
			for _, k := range keys {
				if c.Encloses(d.spot(s.axis, at, k.at)) {
					k.out = way < 0 // cones stand out along the axis
					list = append(list, k)
				}
			}
			open, holes := keyHoles(b, list, d.j.Printer.Clearance, facing, func(x, y float64) solid.Vec { return d.spot(s.axis, at, [2]float64{x, y}) })
			b.Face(facing, c.Outline, append(c.Holes, holes...)...)
			closeKeys(b, open, list)
		}
		half, err := b.Done()
		if err != nil {
			return err
		}
		in, next := within, s.below
		if way < 0 {
			in.hi[s.axis] = s.at
		} else {
			in.lo[s.axis], next = s.at, s.above
		}
		if err := next.fall(d, half, in, keyed, visit); err != nil {
			return err
		}
	}
	return nil
}

// spot is a place in the plane of a cut, along the other two axes, in the mold.
func (d *hewn) spot(axis int, at float64, p [2]float64) solid.Vec {
	x := plus(solid.Vec{}, d.axes[axis], at)
	return plus(plus(x, d.axes[(axis+1)%3], p[0]), d.axes[(axis+2)%3], p[1])
}

// flat is a point along the two axes in the plane of a cut.
func (d *hewn) flat(axis int, p solid.Vec) [2]float64 {
	return [2]float64{dotted(p, d.axes[(axis+1)%3]), dotted(p, d.axes[(axis+2)%3])}
}

// hewing is a print as it falls into pieces, kept for the solids last asked for:
// one piece is asked for after the other.
type hewing struct {
	*hewn
	tree  *split
	so    *mold.Solids
	list  []*solid.Mesh
	keyed []bool // by body: a joint of it has a key
}

func (h *hewing) bodies(so *mold.Solids) error {
	if h.so == so {
		return nil
	}
	m, err := h.marked(h.tree, so)
	if err != nil {
		return err
	}
	h.so, h.list, h.keyed = nil, nil, nil
	var keys []keyPlace
	err = h.tree.fall(h.hewn, m, h.extent(m.V), &keys, func(_ *split, bodies []*solid.Mesh, _ extent) error { h.list = append(h.list, bodies...); return nil })
	if err != nil {
		return err
	}
	for _, b := range h.list {
		lo, hi := b.Bounds()
		h.keyed = append(h.keyed, slices.ContainsFunc(keys, func(k keyPlace) bool { return k.in(b, lo, hi) }))
	}
	h.so = so
	return nil
}

// body is one of the bodies, to be moved as is liked.
func (h *hewing) body(so *mold.Solids, i int) (*solid.Mesh, error) {
	if err := h.bodies(so); err != nil {
		return nil, err
	}
	return h.list[min(i, len(h.list)-1)].Clone(), nil
}

func middle(m *solid.Mesh) solid.Vec {
	lo, hi := m.Bounds()
	return mean(lo, hi)
}
