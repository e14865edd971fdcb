// Package form turns profile nodes into the meridian: the curve in the (r, z)
// half-plane that, turned about the axis, is the pot's outer surface. It also
// reads typed coordinates. It knows nothing of molds.
package form

import (
	"math"
	"slices"
	"strings"

	"moldwright/core/job"
)

// Point is a place in the half-plane: R from the axis, Z up along it, mm.
type Point struct{ R, Z float64 }

// Sub is p - q.
func (p Point) Sub(q Point) Point { return Point{p.R - q.R, p.Z - q.Z} }

// Lerp is the point a share t of the way from p to q.
func (p Point) Lerp(q Point, t float64) Point {
	return Point{p.R + t*(q.R-p.R), p.Z + t*(q.Z-p.Z)}
}

// Dist is the distance from p to q, mm: what math.Hypot gives, short enough to
// be inlined, since nothing is asked for more often.
func (p Point) Dist(q Point) float64 {
	a, b := math.Abs(p.R-q.R), math.Abs(p.Z-q.Z)
	if a < b {
		a, b = b, a
	}
	if a > 0 {
		b /= a
		a *= math.Sqrt(1 + b*b)
	}
	return a
}

// Span is one piece of the meridian, from point I of the meridian to point
// I+1. Its tangent turns steadily from angle A0 to A1 (radians from the +r
// direction, A1 within a half turn of A0): spans end wherever the curve has an
// extreme of r, an extreme of z or an inflection.
type Span struct{ A0, A1 float64 }

// Meridian is the outer curve at mold size, foot at z = 0, from the axis under
// the foot to the rim or back to the axis. Points lie on the true curve; the
// chord between two neighbours departs from it by at most ChordTol. The body
// lies to the left of the direction of travel.
type Meridian struct {
	Pts   []Point
	Spans []Span // one fewer than Pts
	// Corner tells whether the meridian turns sharply at a point; the ends
	// count as corners.
	Corner []bool
	// Node is the index of the job's node that a point is, or -1.
	Node []int
	// Closed forms end on the axis; open ones at a rim.
	Closed bool
	// Lift is what was added to every z of the scaled nodes so that the
	// lowest point lies at 0, mm.
	Lift float64
	// Turned tells that the form is cast upside down: its nodes run from the
	// axis down to an open rim, as those of a lid do, so that z is Lift less
	// the scaled z of the nodes.
	Turned bool
	// Section is the cut across the axis; R of the points is its largest
	// radius. Dimples are hollows in the wall at mold size, heights of the
	// meridian; nil for none.
	Section *Section
	Dimples *job.Dimples
}

// ChordTol is the largest distance in mm between the true curve and the chords
// of a Meridian; TurnTol the largest turn of a span in radians.
const (
	ChordTol = 0.002
	TurnTol  = 3 * math.Pi / 180
)

// Limits of size, mm at mold size: smaller is a slip of units, larger is no
// pot that anyone lifts.
const (
	leastSize   = 2
	largestSize = 2000
)

// leastStep is the least distance in mm between two nodes that are told apart.
const leastStep = 1e-10

// Rim is the last point: the rim of an open form, the top of a closed one.
func (m *Meridian) Rim() Point { return m.Pts[len(m.Pts)-1] }

// Extent is the greatest z and the greatest r, mm.
func (m *Meridian) Extent() (height, maxRadius float64) {
	for _, p := range m.Pts {
		height = max(height, p.Z)
		maxRadius = max(maxRadius, p.R)
	}
	return height, maxRadius
}

// Build makes the meridian of the job's outer nodes at mold size. Errors are
// job.Faults that name each bad node.
func Build(j *job.Job) (*Meridian, error) {
	scale := j.Scale()
	m, faults := fromNodes(j.Form.Outer, scale)
	if len(faults) > 0 {
		return nil, faults
	}
	m.Section = NewSection(j.Form.Section)
	if d := j.Form.Section.Dimples; d != nil {
		m.Dimples = &job.Dimples{Around: d.Around, Diameter: d.Diameter * scale, Depth: d.Depth * scale}
		for i, z := range d.Heights {
			h := m.meridianZ(z * scale)
			if k, _ := m.Outermost(h); k < 0 {
				return nil, job.Faults{job.Faultf("outsideForm", "form.section.dimples.heights["+itoa(i)+"]", "The row of dimples at %g mm lies above or below the pot; move it onto the wall.", z)}
			}
			m.Dimples.Heights = append(m.Dimples.Heights, h)
		}
	}
	return m, nil
}

// BuildInner makes the inner surface of a solid-cast form, in the place that it
// has inside m, running from its rim down to the axis so that the clay lies on
// its left as it does for m. It is nil where the job has none. Errors are
// job.Faults.
func BuildInner(j *job.Job, m *Meridian) (*Meridian, error) {
	nodes := j.Form.Inner
	if nodes == nil {
		return nil, nil
	}
	if m.Closed {
		return nil, job.Faults{job.Faultf("closedInner", "form.inner", "A form that closes to the axis has no opening for a core; leave form.inner null, or end the outer profile at a rim.")}
	}
	in, faults := fromNodes(nodes, j.Scale())
	if len(faults) == 0 && in.Closed {
		faults = job.Faults{job.Faultf("closedInner", "form.inner", "The inner surface comes back to the axis; it runs from the axis inside the floor out and up to the rim.")}
	}
	if len(faults) > 0 {
		for _, f := range faults {
			f.Field = strings.Replace(f.Field, "form.outer", "form.inner", 1)
		}
		return nil, faults
	}
	for i := range in.Pts { // fromNodes stands it on its own foot
		in.Pts[i].Z += m.Lift - in.Lift
	}
	in.Lift, in.Turned, in.Section = m.Lift, m.Turned, m.Section
	if i, ok := outside(in, m); ok {
		return nil, job.Faults{job.Faultf("innerOutside", "form.inner["+itoa(in.nodeBefore(i))+"]",
			"The inner surface comes through the outer one near node %d, at about r %.2f, z %.2f mm of mold size; leave clay between them.", in.nodeBefore(i)+1, in.Pts[i].R, in.Pts[i].Z)}
	}
	slices.Reverse(in.Spans)
	for i, sp := range in.Spans {
		turn := math.Pi // to within a turn of what runs upward
		if sp.A1 > 0 {
			turn = -math.Pi
		}
		in.Spans[i] = Span{sp.A1 + turn, sp.A0 + turn}
	}
	slices.Reverse(in.Pts)
	slices.Reverse(in.Corner)
	slices.Reverse(in.Node)
	in.Closed = true // it ends on the axis; its rim is no disc of clay
	return in, nil
}

// outside finds a point of in that does not lie within m, or from which a chord
// passes out through m.
func outside(in, m *Meridian) (int, bool) {
	rim := m.Rim()
	tree := NewTree(append(slices.Clone(m.Pts), Point{0, rim.Z}))
	last := len(in.Pts) - 1
	for i, p := range in.Pts {
		if i == last && p.Z <= rim.Z+1e-6 && p.R < rim.R { // its rim lies in the disc
			continue
		}
		crossings := 0
		tree.Visit(p.R, math.Inf(1), p.Z, p.Z, func(k int) {
			a, b := tree.pts[k], tree.pts[k+1]
			if (a.Z > p.Z) != (b.Z > p.Z) && a.R+(p.Z-a.Z)/(b.Z-a.Z)*(b.R-a.R) > p.R {
				crossings++
			}
		})
		if crossings%2 == 0 {
			return i, true
		}
	}
	for i, q := range in.Pts[1:] {
		p, through := in.Pts[i], false
		tree.Visit(min(p.R, q.R), max(p.R, q.R), min(p.Z, q.Z), max(p.Z, q.Z), func(k int) {
			through = through || k+1 < len(m.Pts) && meet(p, q, m.Pts[k], m.Pts[k+1])
		})
		if through {
			return i, true
		}
	}
	return 0, false
}

// meridianZ is the height at which a scaled node of the height z stands.
func (m *Meridian) meridianZ(z float64) float64 {
	if m.Turned {
		return m.Lift - z
	}
	return m.Lift + z
}

// Outermost is the span at which the form is widest at height z, and that
// radius in mm; -1 where it has no such height.
func (m *Meridian) Outermost(z float64) (span int, r float64) {
	span = -1
	for i := 0; i+1 < len(m.Pts); i++ {
		p, q := m.Pts[i], m.Pts[i+1]
		if (p.Z-z)*(q.Z-z) > 0 || p.Z == q.Z {
			continue
		}
		if x := p.R + (z-p.Z)/(q.Z-p.Z)*(q.R-p.R); span < 0 || x > r {
			span, r = i, x
		}
	}
	return span, r
}

func fromNodes(nodes []job.Node, scale float64) (*Meridian, job.Faults) {
	if f := checkNodes(nodes, scale); len(f) > 0 {
		return nil, f
	}
	low := math.Inf(1)
	pts := make([]Point, len(nodes))
	up := scale
	m := &Meridian{Closed: nodes[len(nodes)-1].R == 0, Turned: turned(nodes), Section: NewSection(job.Section{})}
	if m.Turned {
		up = -scale
	}
	for i, n := range nodes {
		pts[i] = Point{n.R * scale, n.Z * up}
	}
	size := len(nodes) * 4
	m.Pts = make([]Point, 0, size)
	m.Spans = make([]Span, 0, size)
	m.Corner = make([]bool, 0, size)
	m.Node = make([]int, 0, size)
	c := newCurve(nodes, pts)
	for i := range pts {
		m.point(pts[i], nodes[i].Corner || i == 0 || i == len(pts)-1, i)
		if i+1 < len(pts) {
			c.flatten(m, i)
		}
	}
	for _, p := range m.Pts {
		low = min(low, p.Z)
	}
	m.Lift = -low
	for i := range m.Pts {
		m.Pts[i].Z -= low
	}
	return m, checkMeridian(m)
}

// turned tells whether an open form opens downward: whether the body between
// its chords and the axis lies on their wrong side.
func turned(nodes []job.Node) bool {
	v := 0.0
	for i := 1; i < len(nodes); i++ {
		v += frustum(Point{nodes[i-1].R, nodes[i-1].Z}, Point{nodes[i].R, nodes[i].Z})
	}
	return v < 0 && nodes[len(nodes)-1].R > 0
}

func (m *Meridian) point(p Point, corner bool, node int) {
	m.Pts = append(m.Pts, p)
	m.Corner = append(m.Corner, corner)
	m.Node = append(m.Node, node)
}

// Normal is the outward unit normal at the tangent angle a: to the right of
// the direction of travel.
func Normal(a float64) Point {
	s, c := math.Sincos(a)
	return Point{s, -c}
}

// Volume is the volume in mm3 of the body of revolution under the meridian,
// closed at the rim by a flat disc: exact for the chords (frusta).
func (m *Meridian) Volume() float64 {
	v := 0.0
	for i := 1; i < len(m.Pts); i++ {
		v += frustum(m.Pts[i-1], m.Pts[i])
	}
	return v
}

// frustum is the signed volume between a chord and the axis.
func frustum(p, q Point) float64 {
	return math.Pi / 3 * (q.Z - p.Z) * (p.R*p.R + p.R*q.R + q.R*q.R)
}

// BandArea is the area in mm2 swept by a chord turned about the axis.
func BandArea(p, q Point) float64 { return math.Pi * (p.R + q.R) * p.Dist(q) }

// Area is the outer surface in mm2, without the disc at an open rim.
func (m *Meridian) Area() float64 {
	a := 0.0
	for i := 1; i < len(m.Pts); i++ {
		a += BandArea(m.Pts[i-1], m.Pts[i])
	}
	return a
}

// LoopVolume is the volume in mm3 of a closed loop of points turned about the
// axis (Pappus): positive where the loop runs counterclockwise with r to the
// right and z up.
func LoopVolume(loop []Point) float64 {
	v := 0.0
	for i, p := range loop {
		v += frustum(p, loop[(i+1)%len(loop)])
	}
	return v
}

// Cut puts points into the meridian where its outermost wall stands at each of
// the heights z (mm), unless it has one there already. Heights outside the
// form are left out.
func (m *Meridian) Cut(heights []float64) {
	for _, z := range heights {
		best, _ := m.Outermost(z)
		if best >= 0 {
			p, q := m.Pts[best], m.Pts[best+1]
			m.split(best, (z-p.Z)/(q.Z-p.Z))
		}
	}
}

// CutMouth puts a point into a closed meridian where it last comes within r
// of the axis, and tells its index: the edge of a hole through the top.
func (m *Meridian) CutMouth(r float64) int {
	for i := len(m.Pts) - 2; i > 0; i-- {
		if p, q := m.Pts[i], m.Pts[i+1]; p.R > r {
			return m.split(i, (p.R-r)/(p.R-q.R))
		}
	}
	return len(m.Pts) - 1
}

// leastPart is the shortest span in mm that a cut leaves.
const leastPart = 1e-3

// split cuts a span at share t of its length and tells the index of the point
// there; a cut next to an end takes that end.
func (m *Meridian) split(i int, t float64) int {
	p, q := m.Pts[i], m.Pts[i+1]
	l := p.Dist(q)
	switch {
	case t*l < leastPart:
		return i
	case (1-t)*l < leastPart:
		return i + 1
	}
	sp := m.Spans[i]
	mid := sp.A0 + t*(sp.A1-sp.A0)
	m.Pts = slices.Insert(m.Pts, i+1, p.Lerp(q, t))
	m.Corner = slices.Insert(m.Corner, i+1, false)
	m.Node = slices.Insert(m.Node, i+1, -1)
	m.Spans = slices.Insert(m.Spans, i+1, Span{mid, sp.A1})
	m.Spans[i].A1 = mid
	return i + 1
}
