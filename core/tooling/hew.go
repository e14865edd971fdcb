package tooling

// Division by planes: the way for prints that their own way of dividing leaves too
// large. The closed mesh is cut through its length, then each slice across, then
// each of these columns across the way up of the printer, as often as it takes, so
// that a piece stands on a cut or on the print's own foot and overhangs no more
// than the whole. Every cut goes right through what the cuts before it left, and
// its keys look along its own normal: so whatever lies on one side of it, glued
// together, slides straight on to what lies on the other, and nothing locks. What
// falls apart beside a cut, as two bulges of a pot do, is a piece each.
//
// Planes are tried wherever the print's own way does not fit or takes more than two
// pieces, and taken where they make fewer. Fewest is meant of these ways and, of
// planes, of such grids: of each number of columns the cuts are laid as evenly as
// natches and marks let them be, and columns that are low enough stay whole. Cuts
// laid askew or offset from slice to slice could make fewer still.

import (
	"errors"
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
	"moldwright/core/words"
)

const (
	mostHewn  = 96  // pieces; nobody glues more
	leastHewn = 2   // no way makes fewer
	hewnSlice = 4.0 // mm, the thinnest slice
	hewnThin  = 2.0 // mm; a flake beside a cut is no piece to handle
	hewnStep  = 0.5 // mm, between the places tried for a cut
	hewnTries = 6   // to shift cuts that leave flakes
)

// hewn is a print to be divided by planes.
type hewn struct {
	j    *job.Job
	md   *mold.Mold
	p    Piece
	axes [3]solid.Vec // along, across, and up on the printer
	// bare is the print without a mark that can move, marked the print with the
	// mark where the cuts leave it room.
	bare   func(so *mold.Solids) (*solid.Mesh, error)
	marked func(tree *split, so *mold.Solids) (*solid.Mesh, error)
	avoid  []extent       // what cuts keep clear of where they can: natches and marks
	any    bool           // they cannot
	missed [][2][]float64 // cuts of slices and columns that leave a body too large
	whole  extent         // of the print
}

// extent is a box along the axes of a print.
type extent struct{ lo, hi [3]float64 }

// orHewn is a print as it is divided, or by planes where that does not fit or takes
// more pieces. along is a direction across its way up; corners gives those of the whole
// that may lie outermost, clear those of what cuts keep clear of.
func orHewn(j *job.Job, md *mold.Mold, list []Piece, whole Piece, along solid.Vec, corners func() []solid.Vec, clear func() [][]solid.Vec) []Piece {
	if list[0].FitsBed && len(list) <= leastHewn {
		return list
	}
	d := &hewn{j: j, md: md, p: whole, axes: [3]solid.Vec{along, crossed(whole.up, along), whole.up}, bare: whole.build}
	d.whole = d.extent(corners())
	d.marked = func(_ *split, so *mold.Solids) (*solid.Mesh, error) { return whole.build(so) }
	for _, l := range clear() {
		d.avoid = append(d.avoid, d.extent(l))
	}
	return d.better(list)
}

// better is the print by planes where that is the only way or takes fewer pieces
// than list, else list.
func (d *hewn) better(list []Piece) []Piece {
	most := mostHewn + 1
	if list[0].FitsBed {
		most = len(list)
	}
	if best := d.fewest(most); best != nil {
		return best
	}
	return list
}

// extent is the box of some points.
func (d *hewn) extent(list []solid.Vec) extent {
	e := extent{[3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}, [3]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}}
	for _, p := range list {
		for k, a := range d.axes {
			x := dotted(p, a)
			e.lo[k], e.hi[k] = min(e.lo[k], x), max(e.hi[k], x)
		}
	}
	return e
}

// fewest tries the numbers of slices and columns, the fewest first.
func (d *hewn) fewest(most int) (best []Piece) {
	most = min(most, mostHewn+1)
	var ways [][2]int
	layers := int(math.Ceil((d.whole.hi[2]-d.whole.lo[2])/d.j.Printer.Bed[2] - 1e-9)) // of the highest column at least
	for m := 1; m < most; m++ {
		for n := 1; n*m+layers-1 < most; n++ {
			if fitsTurned((d.whole.hi[0]-d.whole.lo[0])/float64(m), (d.whole.hi[1]-d.whole.lo[1])/float64(n), d.j.Printer.Bed) {
				ways = append(ways, [2]int{m, n})
			}
		}
	}
	if len(ways) == 0 {
		return nil
	}
	coarse, err := d.bare(mold.NewCoarse(d.md))
	if err != nil {
		return nil
	}
	box := d.extent(coarse.V)
	slices.SortStableFunc(ways, func(a, b [2]int) int { return a[0]*a[1] - b[0]*b[1] })
	for _, d.any = range [2]bool{false, true} {
		d.missed = nil
		for _, w := range ways {
			if w[0]*w[1] >= most {
				break
			}
			var banned [3][][2]float64
			for range 3 {
				tree, n := d.laid(coarse, box, w, most, banned)
				if tree == nil {
					break
				}
				list, fell := d.pieces(tree)
				if fell == n {
					if list != nil {
						best, most = list, n
					}
					break
				}
				for _, at := range tree.places(2) { // what is held by a neck is shifted
					banned[2] = append(banned[2], [2]float64{at - hewnThin, at + hewnThin})
				}
			}
		}
		if best != nil || most <= mostHewn || len(d.avoid) == 0 {
			break // or the print has been divided otherwise
		}
	}
	return best
}

// fitsTurned tells whether a rectangle of mm fits the bed, turned as it may be
// (W. B. Carver, "Solution to Problem E 1225", American Mathematical Monthly 64,
// 1957).
func fitsTurned(p, q float64, bed [3]float64) bool {
	p, q = max(p, q), min(p, q)
	a, b := max(bed[0], bed[1]), min(bed[0], bed[1])
	if p <= a || q > b {
		return q <= b && p <= a
	}
	return b*(p*p+q*q) >= 2*p*q*a+(p*p-q*q)*math.Sqrt(p*p+q*q-a*a)
}

// laid lays the cuts of so many slices and columns, clear of the banned places, and
// tells how many pieces they make; nil where not all fit or they are as many as most.
func (d *hewn) laid(coarse *solid.Mesh, box extent, way [2]int, most int, banned [3][][2]float64) (tree *split, n int) {
	for range hewnTries {
		again := false
		next, k := d.grid(coarse, box, way, most, banned, func(axis int, flake [2]float64) { banned[axis], again = append(banned[axis], flake), true })
		if next == nil {
			break
		}
		if tree, n = next, k; !again {
			break
		}
	}
	return tree, n
}

// grid lays the cuts clear of the banned places; flaked is called with those that
// leave a flake.
func (d *hewn) grid(coarse *solid.Mesh, box extent, way [2]int, most int, banned [3][][2]float64, flaked func(axis int, at [2]float64)) (*split, int) {
	var cuts [2][]float64
	for k := range 2 {
		cuts[k], _ = d.evenly(k, box.lo[k], box.hi[k], way[k], banned[k], d.avoid)
	}
	columns := chain(0, cuts[0], func() *split { return chain(1, cuts[1], func() *split { return &split{axis: -1} }) })
	free := len(banned[2]) == 0
	if free && slices.ContainsFunc(d.missed, func(m [2][]float64) bool { return slices.Equal(m[0], cuts[0]) && slices.Equal(m[1], cuts[1]) }) {
		return nil, 0 // as of fewer slices or columns
	}
	n := 0
	err := columns.fall(d, coarse, box, nil, func(leaf *split, column []*solid.Mesh, within extent) error {
		if len(column) == 0 {
			return nil
		}
		merged := solid.Merge(column...)
		c := d.extent(merged.V)
		var near []extent
		for _, a := range d.avoid {
			if a.lo[0] < c.hi[0] && a.hi[0] > c.lo[0] && a.lo[1] < c.hi[1] && a.hi[1] > c.lo[1] {
				near = append(near, a)
			}
		}
		bed := d.j.Printer.Bed[2]
		layers := []float64{}
		for k := 2; c.hi[2]-c.lo[2] > bed; k++ {
			at, high := d.evenly(2, c.lo[2], c.hi[2], k, banned[2], near)
			if high <= bed {
				layers = at
				break
			}
			if float64(k) > 4*(c.hi[2]-c.lo[2])/bed+2 {
				return errMisfit
			}
		}
		*leaf = *chain(2, layers, func() *split { return &split{axis: -1} })
		return leaf.fall(d, merged, within, nil, func(_ *split, bodies []*solid.Mesh, in extent) error {
			for _, m := range bodies {
				if n++; n >= most || !d.fits(m, in, box) {
					return errMisfit
				}
				d.flake(m, in, box, flaked)
			}
			return nil
		})
	})
	if err != nil {
		if free {
			d.missed = append(d.missed, cuts)
		}
		return nil, 0
	}
	return columns, n
}

// errMisfit ends the cutting of a print of which a body does not fit, or that falls
// into too many.
var errMisfit = errors.New("a body does not fit")

// fits tells whether a body between its cuts fits the bed with the cones that will
// stand out of it.
func (d *hewn) fits(m *solid.Mesh, in, box extent) bool {
	e := d.extent(m.V)
	list := slices.Clone(m.V)
	for k, a := range d.axes {
		if in.hi[k] < box.hi[k] && e.hi[k] > in.hi[k]-0.1 {
			for i := range m.V {
				if v := m.V[i]; dotted(v, a) > in.hi[k]-0.1 {
					list = append(list, plus(v, a, keyOf(d.j.Printer.Bed[k])))
				}
			}
		}
	}
	q := d.p
	q.measure(d.j, list, 0)
	return q.FitsBed
}

// flake tells of a body that a cut has left too thin.
func (d *hewn) flake(m *solid.Mesh, in, box extent, flaked func(axis int, at [2]float64)) {
	e := d.extent(m.V)
	for k := range 3 {
		if e.hi[k]-e.lo[k] >= hewnThin {
			continue
		}
		if in.lo[k] > box.lo[k] && e.lo[k] < in.lo[k]+0.1 {
			flaked(k, [2]float64{e.hi[k] - hewnThin - hewnStep, e.hi[k]})
		}
		if in.hi[k] < box.hi[k] && e.hi[k] > in.hi[k]-0.1 {
			flaked(k, [2]float64{e.lo[k], e.lo[k] + hewnThin + hewnStep})
		}
	}
}

// keyOf is how far cones stand out at most of pieces for a bed so large: on a small
// one they would take the room of another piece.
func keyOf(bed float64) float64 { return math.Min(keyMost, bed/10) }

// evenly are the cuts across an axis that divide a stretch into n at most, so that the
// longest piece, the cones of all but the last included, is as short as can be: and
// how long it is. Cuts keep clear of the boxes and of the banned places.
func (d *hewn) evenly(axis int, lo, hi float64, n int, banned [][2]float64, avoid []extent) ([]float64, float64) {
	key := keyOf(d.j.Printer.Bed[axis])
	count := int(math.Ceil((hi - lo) / hewnStep))
	step := (hi - lo) / float64(count)
	free := make([]bool, count+1)
	lay := func(most float64) []float64 { // as far as each piece may go
		out := []float64{}
		last := 0
		for hi-lo-step*float64(last) > most+1e-9 {
			k := min(count, last+int((most-key)/step+1e-9))
			for k > last && !free[k] {
				k--
			}
			if k == last || len(out) == n-1 {
				return nil
			}
			last = k
			out = append(out, lo+step*float64(k))
		}
		return out
	}
	for k := range free {
		x := lo + step*float64(k)
		free[k] = x-lo >= hewnSlice && hi-x >= hewnSlice
		for _, b := range banned {
			free[k] = free[k] && (x <= b[0] || x >= b[1])
		}
		for i := 0; !d.any && free[k] && i < len(avoid); i++ {
			free[k] = x <= avoid[i].lo[axis] || x >= avoid[i].hi[axis]
		}
	}
	least, most := (hi-lo)/float64(n), hi-lo
	best := []float64{}
	for range 16 {
		mid := (least + most) / 2
		if at := lay(mid); at != nil {
			best, most = at, mid
		} else {
			least = mid
		}
	}
	return best, most
}

// pieces are the bodies that a tree of cuts leaves, measured, and how many they are;
// nil where one does not fit after all.
func (d *hewn) pieces(tree *split) (out []Piece, n int) {
	h := &hewing{hewn: d, tree: tree}
	if h.bodies(d.md.Solids()) != nil {
		return nil, len(h.list)
	}
	for i := range h.list {
		q := d.p
		q.build = func(so *mold.Solids) (*solid.Mesh, error) { return h.body(so, i) }
		q.unkeyed = !h.keyed[i]
		q.Overhang = steepestOf(h.list[i], d.p.up)
		q.measure(d.j, slices.Clone(h.list[i].V), h.list[i].Volume()/1000)
		if !q.FitsBed {
			return nil, len(h.list)
		}
		out = append(out, q)
	}
	if len(out) < 2 {
		return nil, len(h.list)
	}
	ways := tree.ways([3]bool{})
	for i := range out {
		out[i].share(i, len(out))
		if ways[0] && ways[1] || ways[2] && (ways[0] || ways[1]) {
			out[i].Note = noted(out[i].Note, words.Say("Glue what lies above one another first, then these columns side by side, then the rows."))
		}
	}
	return out, len(out)
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
		const sliver = 0.01 // mm; narrower ones lean any way
		long := max(norm(minus(b, a)), norm(minus(c, a)), norm(minus(c, b)))
		if n := crossed(minus(b, a), minus(c, a)); norm(n) >= sliver*long {
			worst.face(-dotted(n, up), norm(n))
		}
	}
	return worst.degrees()
}

// plus is a point moved so far along a direction.
func plus(p, way solid.Vec, far float64) solid.Vec {
	return solid.Vec{p[0] + far*way[0], p[1] + far*way[1], p[2] + far*way[2]}
}
