// Package tooling gives the printed pieces that plaster is poured against. For
// a lower or upper part: a positive of the pot on a plate in the plane of the
// seam, a cottle that stands in the plate's groove, and a collar that holds it
// together. For a side part: a tray that holds the pot's surface and both seam
// faces, open at the back, with boards that close its ends and sides. A working
// face that lets go along a pull has no overhang when printed with that pull
// upward, so nothing needs supports.
package tooling

import (
	"fmt"
	"math"

	"moldwright/core/form"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// Piece is one printed piece.
type Piece struct {
	Name string `json:"name"` // Label in English: files are called by it
	Part string `json:"part"` // the plaster part it serves
	// Label is what the piece is called. Of several alike it ends in No, behind
	// what they are called together; else No is 0.
	Label    words.Text `json:"label"`
	Together words.Text `json:"-"`
	No       int        `json:"-"`
	Kind     string     `json:"kind"` // positive, plug, stave, collar, tray or board
	// Size is the extent in mm as it is printed, resting on z = 0, turned to
	// fit the bed.
	Size    [3]float64 `json:"size"`
	FitsBed bool       `json:"fitsBed"`
	Note    words.Text `json:"note"` // what to know: why it is divided, or does not fit
	// Volume is ml of material when printed full, Mass g and Filament m of it;
	// a slicer's infill takes less.
	Volume   float64 `json:"volume"`
	Mass     float64 `json:"mass"`
	Filament float64 `json:"filament"`
	// Overhang is the steepest overhang in degrees from upright, as printed.
	Overhang float64 `json:"overhang"`
	// Draft is the least draft in degrees with which the piece and the plaster
	// come apart, and Verdict what follows from it by the same rules as for
	// the plaster parts. A piece that touches no plaster is clear.
	Draft   float64         `json:"draft"`
	Verdict parting.Verdict `json:"verdict"`

	up      solid.Vec // of the mold, when printed
	turn    float64   // degrees about the vertical, to fit the bed
	unkeyed bool      // none of its joints has room for a key
	build   func(so *mold.Solids) (*solid.Mesh, error)
}

// HasMesh tells whether the piece can be made.
func (p *Piece) HasMesh() bool { return p.build != nil }

// Mesh is the piece turned for printing, resting on z = 0 about the axis, and
// the rows of the turn and shift (mm) that take it back to where it stands in
// the mold.
func (p *Piece) Mesh(so *mold.Solids) (*solid.Mesh, [12]float64, error) {
	m, err := p.build(so)
	if err != nil {
		return nil, [12]float64{}, fmt.Errorf("%s: %w", p.Name, err)
	}
	frame := &solid.Mesh{V: []solid.Vec{{}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}
	for _, x := range [2]*solid.Mesh{m, frame} {
		p.stand(x)
		x.RotateZ(p.turn)
	}
	lo, hi := m.Bounds()
	shift := solid.Vec{-(lo[0] + hi[0]) / 2, -(lo[1] + hi[1]) / 2, -lo[2]}
	m.Translate(shift)
	frame.Translate(shift)
	var back [12]float64
	o := frame.V[0]
	for row := range 3 {
		e := frame.V[row+1]
		at := 0.0
		for k := range 3 {
			back[4*row+k] = e[k] - o[k]
			at -= (e[k] - o[k]) * o[k]
		}
		back[4*row+3] = at
	}
	return m, back, nil
}

// stand turns a mesh from where the piece stands in the mold to how it is
// printed, before it is turned to fit the bed.
func (p *Piece) stand(m *solid.Mesh) {
	if p.up == (solid.Vec{0, 0, -1}) {
		m.RotateX(180)
	} else {
		m.TurnUp(p.up)
	}
}

// shape tells how a point of a section goes round the axis.
type shape int

const (
	asPot     shape = iota // with the section of the pot
	asOutside              // with the outside of the block
	asCircle
)

// edge tells what the edge from a corner to the next one is, beside a wall.
type edge int

const (
	plain    edge = iota
	seamEdge      // in the seam: it carries the natches
	rimEdge       // level: it carries the mark
	markEdge      // upright: it carries the mark where there is room
	keyEdge       // level: a joint between pieces of one print, keyed by cones
	plugEdge      // level: the joint of a positive and its plug
)

// corner is a point of a turned piece's section, in the frame of the mold.
type corner struct {
	form.Point
	shape shape
	edge  edge
}

// turned is a piece turned about the axis, whole or over a sector.
type turned struct {
	md       *mold.Mold
	section  []corner // counterclockwise, matter on the left
	from, to float64  // degrees
	natches  []mold.Natch
	marks    string
	clear    float64  // of keys in their sockets, mm
	ends     [2][]key // in the ends of a sector
	plug     []key    // in the joint with a plug, of both pieces
	cones    int      // the way of level faces whose keys stand out: 1 up, -1 down
	reads    int      // the way that marks on walls read up, where it is not that
	whole    *turned  // before it was cut level
	asked    *asked   // of its joints
}

func (t *turned) build(so *mold.Solids) (*solid.Mesh, error) {
	span := t.span(so)
	b := solid.NewBuilder(so.Place, span)
	n := len(t.section) * (span.To - span.From + 1)
	b.Grow(n, 2*n)
	panels := t.panels(so)
	rings := make([]solid.Loop, len(t.section))
	for i, q := range t.section {
		if q.R == 0 {
			rings[i] = b.Ring(q.R, q.Z)
		} else {
			rings[i] = b.Row(t.row(so, panels, i))
		}
	}
	for i := range rings {
		from, to := rings[i], rings[(i+1)%len(rings)]
		a, c := t.section[i], t.section[(i+1)%len(rings)]
		switch {
		case a.edge == seamEdge:
			var here []mold.Natch
			for _, n := range t.natches {
				if span.Whole() || inside(n.Azimuth, t.from, t.to) {
					here = append(here, n)
				}
			}
			mold.CastNatches(b, from, to, here)
		case a.edge == keyEdge || a.edge == plugEdge:
			keys := t.keysOf(i)
			closeKeys(b, b.Flat(from, to, circles(keys, t.clear)...), keys)
		case a.edge == rimEdge:
			t.markRing(b, from, to, a, c)
		case panels[i].ok:
			panels[i].wall(b, span, from, to)
		default:
			b.Wall(from, to)
		}
	}
	if !span.Whole() {
		for _, side := range [2]solid.Side{solid.Near, solid.Far} {
			keys := t.ends[side]
			closeKeys(b, b.End(side, rings, circles(keys, t.clear)...), keys)
		}
	}
	return b.Done()
}

// span is the stretch of the azimuth table that the piece goes over.
func (t *turned) span(so *mold.Solids) solid.Span {
	n := so.Turn.Steps()
	if t.to-t.from >= 360 {
		return solid.FullTurn(n)
	}
	return solid.Span{Steps: n, From: so.Turn.Step(t.from), To: so.Turn.Step(t.to)}
}

// panels are the flats of the piece's marks, by edge of the section.
func (t *turned) panels(so *mold.Solids) []panel {
	out := make([]panel, len(t.section))
	for i, q := range t.section {
		if q.edge == markEdge {
			out[i] = t.panel(so, t.span(so), q, t.section[(i+1)%len(t.section)])
		}
	}
	return out
}

// row is where corner i of the section stands at each step of the turn.
func (t *turned) row(so *mold.Solids, panels []panel, i int) func(k int) solid.Vec {
	at := t.standing(so, t.section[i])
	if k := flatAt(panels, i); k >= 0 {
		return panels[k].flatten(at)
	}
	return at
}

// flatAt is the edge whose flat corner i of the section ends, -1 without one.
func flatAt(panels []panel, i int) int {
	for _, k := range [2]int{i, (i + len(panels) - 1) % len(panels)} {
		if panels[k].ok {
			return k
		}
	}
	return -1
}

// standing is where a corner of the section stands at each step of the turn, but
// for the flats of marks.
func (t *turned) standing(so *mold.Solids, q corner) func(k int) solid.Vec {
	switch q.shape {
	case asPot:
		return func(k int) solid.Vec { return so.Place(q.R, q.Z, k) }
	case asOutside:
		return func(k int) solid.Vec { return so.Outside(q.R, q.Z, k) }
	}
	return func(k int) solid.Vec { return so.Turn.Round(q.R, q.Z, k) }
}

// inside tells whether an azimuth lies between two others, degrees.
func inside(az, from, to float64) bool {
	d := math.Mod(az-from, 360)
	if d < 0 {
		d += 360
	}
	return d < to-from
}

// volume in ml of the section swept round, each edge with its own shape.
func (t *turned) volume() float64 {
	sector := &[2]float64{t.from, t.to}
	if t.to-t.from >= 360 {
		sector = nil
	}
	share := [3]float64{asPot: t.md.SectionShare(sector), asOutside: t.md.Block.PlanShare(), asCircle: 1}
	if sector != nil && t.md.Block.Facets > 0 {
		const n = 360
		sum := 0.0
		for i := range n {
			r := t.md.Block.Reach(t.from + (float64(i)+0.5)/n*(t.to-t.from))
			sum += r * r
		}
		share[asOutside] = sum / n
	}
	v := 0.0
	low, high := t.levels() // of the pot's surface: no dimples lie beside a plate
	for i, a := range t.section {
		if a.edge == seamEdge && a.Z-low < high-a.Z {
			low = a.Z
		} else if a.edge == seamEdge {
			high = a.Z
		}
		c := t.section[(i+1)%len(t.section)]
		of := a.shape
		if a.R == 0 {
			of = c.shape
		}
		v += share[of] * (a.R*a.R + a.R*c.R + c.R*c.R) * (c.Z - a.Z)
	}
	return v*math.Pi/3/1000*(t.to-t.from)/360 - t.md.DimpleVolume(sector, low, high)
}
