package solid

// Building a closed solid piece by piece. A Builder hands out loops of vertices
// and lays surfaces between them; a surface never makes a vertex on the edge
// that it shares with another, so the solid closes when every loop has been
// used from both sides. The outline of a solid of revolution or loft runs
// counterclockwise in the half-plane (r to the right, z up), matter on its left.

import (
	"fmt"
	"math"
	"slices"
)

// Loop is a row of vertices of a builder's mesh: all round for a whole turn,
// from end to end for a sector, one vertex for a point on the axis.
type Loop []int32

// Builder puts one solid together. The first mistake is kept and given by Done.
type Builder struct {
	mesh  Mesh
	place Place
	span  Span
	err   error
}

// NewBuilder starts a solid over the span.
func NewBuilder(place Place, span Span) *Builder {
	b := &Builder{place: place, span: span}
	if span.Steps < 3 || span.From >= span.To || span.To-span.From > span.Steps {
		b.fail(fmt.Errorf("span of steps %d to %d of %d is not a part of a turn", span.From, span.To, span.Steps))
		b.span = Span{3, 0, 3}
	}
	return b
}

func (b *Builder) fail(err error) {
	if b.err == nil {
		b.err = err
	}
}

// Done is the mesh, without vertices that no triangle uses, or the first
// mistake made in building. The builder must not be used after.
func (b *Builder) Done() (*Mesh, error) {
	if b.err != nil {
		return nil, b.err
	}
	to := make([]int32, len(b.mesh.V))
	for _, t := range b.mesh.T {
		to[t[0]], to[t[1]], to[t[2]] = 1, 1, 1
	}
	n := int32(0)
	for i, used := range to {
		if used == 1 {
			b.mesh.V[n] = b.mesh.V[i]
			to[i] = n
			n++
		}
	}
	if int(n) < len(b.mesh.V) {
		b.mesh.V = b.mesh.V[:n]
		for i, t := range b.mesh.T {
			b.mesh.T[i] = [3]int32{to[t[0]], to[t[1]], to[t[2]]}
		}
	}
	return &b.mesh, nil
}

// Grow makes room for so many more vertices and triangles.
func (b *Builder) Grow(vertices, triangles int) {
	b.mesh.V = slices.Grow(b.mesh.V, vertices)
	b.mesh.T = slices.Grow(b.mesh.T, triangles)
}

// Vertex adds one vertex.
func (b *Builder) Vertex(p Vec) int32 {
	b.mesh.V = append(b.mesh.V, p)
	return int32(len(b.mesh.V) - 1)
}

// Triangle adds one triangle, counterclockwise seen from outside.
func (b *Builder) Triangle(i, j, k int32) {
	b.mesh.T = append(b.mesh.T, [3]int32{i, j, k})
}

// Ring is the loop of the point (r, z) over the span.
func (b *Builder) Ring(r, z float64) Loop {
	if s := r + z; r < 0 || math.IsNaN(s) || math.IsInf(s, 0) {
		b.fail(fmt.Errorf("profile point (%g, %g) is not in the half-plane r >= 0", r, z))
	}
	if r == 0 {
		return Loop{b.Vertex(Vec{0, 0, z})}
	}
	l, at := b.row()
	for k, i := 0, b.span.From%b.span.Steps; k < len(at); k++ {
		at[k] = b.place(r, z, i)
		if i++; i == b.span.Steps {
			i = 0
		}
	}
	return l
}

// Row is a loop over the span with its vertices anywhere, for outsides that are
// not of the profile's section. Step i is that of the azimuth table.
func (b *Builder) Row(at func(i int) Vec) Loop {
	l, vs := b.row()
	for k, i := 0, b.span.From%b.span.Steps; k < len(vs); k++ {
		vs[k] = at(i)
		if i++; i == b.span.Steps {
			i = 0
		}
	}
	return l
}

// row adds the vertices of a loop over the span, still to be placed.
func (b *Builder) row() (Loop, []Vec) {
	n := b.span.To - b.span.From
	if !b.span.Whole() {
		n++
	}
	l := make(Loop, n)
	base := len(b.mesh.V)
	b.mesh.V = slices.Grow(b.mesh.V, n)[:base+n]
	for k := range l {
		l[k] = int32(base + k)
	}
	return l, b.mesh.V[base:]
}

// Rings is a ring for each point.
func (b *Builder) Rings(points [][2]float64) []Loop {
	ls := make([]Loop, len(points))
	b.mesh.V = slices.Grow(b.mesh.V, len(points)*(b.span.To-b.span.From+1))
	for i, p := range points {
		ls[i] = b.Ring(p[0], p[1])
	}
	return ls
}

// Wall is the surface between two neighbours on the outline, in its direction.
// Between two axis points there is none. The diagonals depend on the two loops
// alone, not on their order, so that the solids on both sides of a wall cut it
// into the same triangles: from the lower loop forward to the upper one, but the
// other way where that is much shorter, as where a grid is bent round a corner.
func (b *Builder) Wall(from, to Loop) {
	n := max(len(from), len(to))
	if n == 1 {
		return
	}
	if len(from) != n && len(from) != 1 || len(to) != n && len(to) != 1 {
		b.fail(fmt.Errorf("a wall cannot join loops of %d and %d vertices", len(from), len(to)))
		return
	}
	quads := n
	if !b.span.Whole() {
		quads--
	}
	had := len(b.mesh.T)
	b.mesh.T = slices.Grow(b.mesh.T, 2*quads)
	if len(from) == 1 || len(to) == 1 {
		for i := range quads {
			j := i + 1
			if j == n {
				j = 0
			}
			if len(from) == 1 {
				b.Triangle(from[0], to[j], to[i])
			} else {
				b.Triangle(from[i], from[j], to[0])
			}
		}
		return
	}
	const much = 0.6 // of the square
	b.mesh.T = b.mesh.T[:had+2*quads]
	ts, vs := b.mesh.T[had:], b.mesh.V
	p, r := from[0], to[0]
	rising := below(vs[p], vs[r])
	for i := range quads {
		j := i + 1
		if j == n {
			j = 0
		}
		q, s := from[j], to[j]
		forward, back := apart(&vs[p], &vs[s]), apart(&vs[q], &vs[r])
		if rising && !(back < much*forward) || !rising && forward < much*back {
			ts[2*i], ts[2*i+1] = [3]int32{p, q, s}, [3]int32{p, s, r}
		} else {
			ts[2*i], ts[2*i+1] = [3]int32{p, q, r}, [3]int32{q, s, r}
		}
		p, r = q, s
	}
}

// apart is the square of the distance between two points.
func apart(p, q *Vec) float64 {
	x, y, z := p[0]-q[0], p[1]-q[1], p[2]-q[2]
	return float64(x*x) + float64(y*y) + float64(z*z)
}

// below orders two points of one half-plane by height, then by radius.
func below(p, q Vec) bool {
	if p[2] != q[2] {
		return p[2] < q[2]
	}
	return p[0]*p[0]+p[1]*p[1] < q[0]*q[0]+q[1]*q[1]
}

// Walls lays the walls of the closed outline through the rings, except on the
// edges named: edge k runs from ring k to the next.
func (b *Builder) Walls(rings []Loop, except ...int) {
	b.mesh.T = slices.Grow(b.mesh.T, 2*len(rings)*(b.span.To-b.span.From))
next:
	for k := range rings {
		for _, e := range except {
			if e == k {
				continue next
			}
		}
		b.Wall(rings[k], rings[(k+1)%len(rings)])
	}
}

// Revolve is the solid that a closed outline sweeps over the span: all round,
// or between two planar ends. The outline is counterclockwise in (r, z) and may
// touch or run along the axis. It must not cross itself.
func Revolve(outline [][2]float64, place Place, span Span) (*Mesh, error) {
	b := NewBuilder(place, span)
	all := make([]int32, len(outline))
	for i := range all {
		all[i] = int32(i)
	}
	if loopArea(outline, all) <= 0 {
		b.fail(fmt.Errorf("the outline must run counterclockwise round an area"))
	}
	rings := b.Rings(outline)
	b.Walls(rings)
	if !span.Whole() {
		b.End(Near, rings)
		b.End(Far, rings)
	}
	return b.Done()
}
