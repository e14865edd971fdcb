package tooling

// The keys of a cut: cones that stand out of the one side and their sockets in the
// other, each in sound matter of the uncut print (keytube.go), clear of the sockets
// of other cuts.

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/solid"
)

// keysAt are the keys of a cut through a mesh: up to two wherever a region of the
// cut lies between the other cuts that meet it.
func (d *hewn) keysAt(m *solid.Mesh, s *split, at float64, within extent) (out []key, err error) {
	one, two := (s.axis+1)%3, (s.axis+2)%3
	lines := [2][]float64{{within.lo[one], within.hi[one]}, {within.lo[two], within.hi[two]}}
	for k, axis := range [2]int{one, two} {
		for _, side := range [2]*split{s.below, s.above} {
			lines[k] = append(lines[k], side.places(axis)...)
		}
		slices.Sort(lines[k])
		lines[k] = slices.Compact(lines[k])
	}
	spare := spareOf(d.j.Printer.Clearance)
	cuts, err := solid.Section(m, d.axes[s.axis], at)
	if err != nil {
		return nil, err
	}
	tube := tubeAbout(m, d.axes[s.axis], func(x, y float64) solid.Vec { return d.spot(s.axis, at, [2]float64{x, y}) }, spare)
	sizes := [3]float64{keyOf(d.j.Printer.Bed[s.axis]), keyMost / 3, keyMost / 6}
	var over [3][][]form.Point // levels above the tips of their sockets
	for _, c := range cuts {
		here := d.loops(s.axis, []solid.Cut{c})
		for i := range len(lines[0]) - 1 {
			for k := range len(lines[1]) - 1 {
				cell := [2][2]float64{{lines[0][i], lines[0][i+1]}, {lines[1][k], lines[1][k+1]}}
				var mine []key
				for size, most := range sizes {
					if len(mine) > 0 {
						break
					}
					if over[size] == nil { // wanted
						if over[size], err = d.section(m, s.axis, at+most+spare); err != nil {
							return nil, err
						}
					}
					for range 2 {
						p, room := roomiestIn(cell, [2][][]form.Point{here, over[size]}, mine)
						k := key{at: p, radius: math.Min(most, room-spare)}
						if k.radius = tube.holds(k, spare); k.radius == 0 {
							break
						}
						mine = append(mine, k)
					}
				}
				out = append(out, mine...)
			}
		}
	}
	return out, nil
}

// section are the loops of a level across an axis.
func (d *hewn) section(m *solid.Mesh, axis int, at float64) ([][]form.Point, error) {
	cuts, err := solid.Section(m, d.axes[axis], solid.Clearing(m, d.axes[axis], at))
	if err != nil {
		return nil, err
	}
	return d.loops(axis, cuts), nil
}

// loops are the outlines and holes of cuts, thinned to what matters to a key.
func (d *hewn) loops(axis int, cuts []solid.Cut) (out [][]form.Point) {
	const coarse = 0.1 // mm
	for _, c := range cuts {
		for _, pts := range c.Points {
			loop := make([]form.Point, 0, len(pts)+1)
			for i := range len(pts) + 1 {
				q := d.flat(axis, pts[i%len(pts)])
				loop = append(loop, form.Point{R: q[0], Z: q[1]})
			}
			thin, _ := form.Thin(loop, make([]bool, len(loop)), coarse)
			out = append(out, thin)
		}
	}
	return out
}

// roomiestIn is the place in a cell, within each of the sets of loops, that is
// farthest from their edges and the cell's, up to the room that the largest key
// takes and then farthest from the keys that are there; and its distance from the
// edges. The best of a grid, then of finer ones around it.
func roomiestIn(cell [2][2]float64, sets [2][][]form.Point, others []key) (best [2]float64, room float64) {
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, l := range sets[0] {
		for _, q := range l {
			lo, hi = [2]float64{min(lo[0], q.R), min(lo[1], q.Z)}, [2]float64{max(hi[0], q.R), max(hi[1], q.Z)}
		}
	}
	for k := range 2 {
		if lo[k], hi[k] = max(lo[k], cell[k][0]), min(hi[k], cell[k][1]); lo[k] >= hi[k] {
			return best, 0
		}
	}
	var edges [2]depths
	for i, set := range sets {
		for _, l := range set {
			edges[i].edges = append(edges[i].edges, chordsOf(l)...)
		}
	}
	depth := func(p [2]float64) float64 {
		least := min(p[0]-cell[0][0], cell[0][1]-p[0], p[1]-cell[1][0], cell[1][1]-p[1])
		for i := range edges {
			d, _ := edges[i].depth(form.Point{R: p[0], Z: p[1]}, math.Inf(-1))
			least = min(least, d)
		}
		return least
	}
	most := math.Inf(-1)
	for n := 12; n >= 6; n -= 3 {
		from, step := lo, [2]float64{(hi[0] - lo[0]) / float64(n), (hi[1] - lo[1]) / float64(n)}
		for i := range n {
			for k := range n {
				p := [2]float64{from[0] + (float64(i)+0.5)*step[0], from[1] + (float64(k)+0.5)*step[1]}
				apart := math.Inf(1)
				for _, o := range others {
					apart = math.Min(apart, math.Hypot(p[0]-o.at[0], p[1]-o.at[1])-o.radius)
				}
				d := math.Min(depth(p), apart/2)
				score := math.Min(d, keyMost+2*keyWall)
				if len(others) > 0 {
					score += 0.02 * apart
				}
				if score > most {
					best, room, most = p, d, score
				}
			}
		}
		for k := range 2 {
			lo[k], hi[k] = max(cell[k][0], best[k]-step[k]), min(cell[k][1], best[k]+step[k])
		}
	}
	return best, room
}

// keyPlace is the foot of a key in the mold.
type keyPlace struct {
	at     solid.Vec
	radius float64
}

// in tells whether the key is one of the body's, which spans from lo to hi.
func (k *keyPlace) in(m *solid.Mesh, lo, hi solid.Vec) bool {
	far := k.radius + 0.1
	for i := range 3 {
		if k.at[i] < lo[i]-far || k.at[i] > hi[i]+far {
			return false
		}
	}
	for i := range m.V {
		v := &m.V[i]
		if x, y, z := v[0]-k.at[0], v[1]-k.at[1], v[2]-k.at[2]; x*x+y*y+z*z < far*far {
			return true
		}
	}
	return false
}
