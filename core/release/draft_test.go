package release

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

const rad = math.Pi / 180

func meridian(t testing.TB, nodes ...job.Node) *form.Meridian {
	t.Helper()
	m, err := formtest.Build(nodes)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func c(r, z float64) job.Node { return job.Node{R: r, Z: z, Corner: true} }

// bent is a meridian whose curve is given exactly: place and tangent angle for
// shares 0 to 1 of its length, between a flat foot and a flat top where it does
// not reach the axis.
func bent(n int, at func(t float64) (form.Point, float64)) *form.Meridian {
	m := &form.Meridian{}
	point := func(p form.Point) {
		m.Pts = append(m.Pts, p)
		m.Corner = append(m.Corner, false)
		m.Node = append(m.Node, -1)
	}
	first, a := at(0)
	if first.R > 1e-9 {
		point(form.Point{R: 0, Z: first.Z})
		m.Spans = append(m.Spans, form.Span{})
	}
	point(first)
	for i := 1; i <= n; i++ {
		p, b := at(float64(i) / float64(n))
		m.Spans = append(m.Spans, form.Span{A0: a, A1: b})
		point(p)
		a = b
	}
	if m.Rim().R > 1e-9 {
		point(form.Point{R: 0, Z: m.Rim().Z})
		m.Spans = append(m.Spans, form.Span{A0: math.Pi, A1: math.Pi})
	}
	m.Pts[len(m.Pts)-1].R = 0
	m.Closed = true
	return m
}

// arc is a circle about (r, z) from polar angle a to b, degrees.
func arc(r, z, radius, a, b float64) func(float64) (form.Point, float64) {
	return func(t float64) (form.Point, float64) {
		phi := (a + t*(b-a)) * rad
		return form.Point{R: r + radius*math.Cos(phi), Z: z + radius*math.Sin(phi)}, phi + math.Copysign(math.Pi/2, b-a)
	}
}

// below is the area in mm2 under the pull, over all spans, with less draft
// than t degrees, the area of those spans and their least draft.
func below(m *form.Meridian, pull Pull, sides int, t float64, spans func(i int) bool) (part, all, least float64) {
	sum := []float64{0}
	least = 90
	for i := range m.Spans {
		if spans(i) {
			a, d := SpanSurface(m, i, pull, sides, NewEdges(t), sum)
			all += a
			least = math.Min(least, d)
		}
	}
	return sum[0], all, least
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.6f, want %.6f", what, got, want)
	}
}

// On a sphere the draft of an axial pull is the latitude, and a zone of height
// h has area 2 pi R h (Archimedes), so that 2 pi R^2 sin t lies below t degrees
// on the half that the pull frees; for two side parts likewise, about their own
// axis. The upper half catches under a downward pull by R - r.
func TestSphere(t *testing.T) {
	const R = 60.0
	m := bent(180, arc(0, R, R, -90, 90))
	for _, edge := range []float64{0.5, 3, 10, 30, 60, 89} {
		want := 2 * math.Pi * R * R * math.Sin(edge*rad)
		got, _, _ := below(m, Down, 0, edge, func(i int) bool { return i < 90 })
		near(t, "area below, down", got, want, 2e-4*want)
		got, _, _ = below(m, Up, 0, edge, func(i int) bool { return i >= 90 })
		near(t, "area below, up", got, want, 2e-4*want)
		got, _, _ = below(m, Out, 2, edge, func(int) bool { return true })
		near(t, "area below, two side parts", got, 2*want, 5e-3*2*want)
	}
	s := New(m)
	for _, x := range s.All(Down) {
		want := 0.0
		if x.P.Z > R {
			want = R - x.P.R
		}
		near(t, "depth down", x.Depth, want, 0.01)
		latitude := math.Atan2(R-x.P.Z, x.P.R) / rad
		a := m.Spans[x.Span].A0 + x.T*(m.Spans[x.Span].A1-m.Spans[x.Span].A0)
		near(t, "draft down", Draft(a, Down), latitude, 0.01)
		near(t, "draft up", Draft(a, Up), -latitude, 0.01)
		near(t, "draft out", Draft(a, Out), math.Asin(math.Cos(latitude*rad))/rad, 0.01)
	}
	for _, x := range s.All(Out) {
		near(t, "depth out", x.Depth, 0, 0.01)
	}
}

// A cone of half-angle h opening upward has draft h all over; pulled up, its
// wall catches by the rim's radius less its own.
func TestCone(t *testing.T) {
	for _, h := range []float64{0.1, 1, 3, 30, 80} {
		top := 20 + 100*math.Tan(h*rad)
		m := meridian(t, c(0, 0), c(20, 0), c(top, 100))
		near(t, "draft down", Draft(m.Spans[1].A0, Down), h, 1e-9)
		near(t, "draft up", Draft(m.Spans[1].A0, Up), -h, 1e-9)
		near(t, "draft out", Draft(m.Spans[1].A0, Out), 90-h, 1e-9)
		area := math.Pi * (20 + top) * 100 / math.Cos(h*rad)
		for _, d := range []float64{-0.01, 0.01} {
			got, all, least := below(m, Down, 0, h+d, func(i int) bool { return i == 1 })
			near(t, "area", all, area, 1e-6*area)
			near(t, "area below", got, map[bool]float64{true: area}[d > 0], 1e-6*area)
			near(t, "least draft", least, h, 1e-9)
		}
		for _, x := range New(m).All(Up) {
			near(t, "depth up", x.Depth, top-x.P.R, 0.01)
		}
	}
}

// A vertical wall in k side parts: the seams' draft is 90 - 180/k degrees, 0,
// 30 and 45 for 2, 3 and 4; a share of 1 - (90-t)/(180/k) lies below t.
func TestCylinderInSideParts(t *testing.T) {
	m := meridian(t, c(0, 0), c(40, 0), c(40, 100))
	wall := func(i int) bool { return i == 1 }
	for k, seam := range map[int]float64{2: 0, 3: 30, 4: 45, 6: 60} {
		for _, edge := range []float64{-10, 0, 1, 3, 29.9, 30.1, 44.9, 45.1, 60, 80, 89.99} {
			got, all, least := below(m, Out, k, edge, wall)
			near(t, "seam draft", least, seam, 1e-9)
			want := math.Max(0, 1-(90-edge)/(180/float64(k)))
			near(t, "share", got/all, want, 1e-9)
		}
	}
	for _, pull := range []Pull{Down, Up} {
		_, _, least := below(m, pull, 0, 1, wall)
		near(t, "axial draft", least, 0, 1e-9)
		for _, x := range New(m).All(pull) {
			if x.Span == 1 {
				near(t, "depth", x.Depth, 0, 1e-4)
			}
		}
	}
}

// The outer half of a torus, tube radius a about a circle of radius R: pulled
// down its lower half frees, with 2 pi a (R t + a sin t) below t; its upper half
// catches by R + a - r. The inner half, a hollow, frees outward alone and
// catches both ways by the greatest radius short of it.
func TestTorus(t *testing.T) {
	const R, a = 50.0, 20.0
	m := bent(180, arc(R, a, a, -90, 90))
	for _, edge := range []float64{1, 3, 20, 70} {
		want := 2 * math.Pi * a * (R*edge*rad + a*math.Sin(edge*rad))
		got, _, _ := below(m, Down, 0, edge, func(i int) bool { return i > 0 && i <= 90 })
		near(t, "area below", got, want, 2e-4*want)
	}
	s := New(m)
	for _, x := range s.All(Down) {
		if x.P.Z > a && x.Span <= 180 {
			near(t, "depth down", x.Depth, R+a-x.P.R, 0.01)
		}
	}
	hollow := bent(180, arc(R, a, a, 270, 90))
	s = New(hollow)
	for _, pull := range [2]Pull{Down, Up} {
		for _, x := range s.All(pull) {
			if x.Span > 0 && x.Span <= 180 {
				near(t, "depth of the hollow", x.Depth, R-x.P.R, 0.01)
			}
		}
	}
	for _, x := range s.All(Out) {
		near(t, "depth out of the hollow", x.Depth, 0, 0.01)
	}
	if traps := s.Traps(); len(traps) > 0 {
		t.Errorf("a plain hollow traps %v", traps)
	}
}

// A pointed ogive, an arc of radius g about (R-g, 0): pulled up it has draft
// asin(z/g), with 2 pi g ((R-g) t + g sin t) below t; pulled down it catches by
// R - r.
func TestOgive(t *testing.T) {
	const R, g = 40.0, 110.0
	tip := math.Acos((g-R)/g) / rad
	m := bent(200, arc(R-g, 0, g, 0, tip))
	for _, edge := range []float64{1, 3, 20, 45} {
		want := 2 * math.Pi * g * ((R-g)*edge*rad + g*math.Sin(edge*rad))
		got, _, least := below(m, Up, 0, edge, func(i int) bool { return i > 0 })
		near(t, "area below", got, want, 2e-4*want)
		near(t, "least draft", least, 0, 1e-9)
	}
	for _, x := range New(m).All(Down) {
		if x.Span > 0 {
			near(t, "depth", x.Depth, R-x.P.R, 0.01)
			sp := m.Spans[x.Span]
			near(t, "draft", Draft(sp.A0+x.T*(sp.A1-sp.A0), Up), math.Asin(x.P.Z/g)/rad, 0.01)
		}
	}
}

// Drafts against finite differences: the tangents that spans keep are those of
// the chords of the curve, refined, turned about the axis; the share of azimuths
// below an edge is the share counted.
func TestDraftByDifferences(t *testing.T) {
	pulls := map[Pull][3]float64{Down: {0, 0, -1}, Up: {0, 0, 1}, Out: {1, 0, 0}}
	for k := range uint64(2000) {
		g := formtest.Rand(3, k)
		m, _ := formtest.Meridian(g)
		i := g.IntN(len(m.Spans))
		p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
		turn := sp.A1 - sp.A0
		chord := math.Atan2(q.Z-p.Z, q.R-p.R)
		off := math.Remainder(chord-(sp.A0+sp.A1)/2, 2*math.Pi)
		if math.Abs(off) > math.Abs(turn)/2+1e-6 {
			t.Errorf("profile %d span %d: chord %.4f degrees off its tangents, which turn %.4f", k, i, off/rad, turn/rad)
		}
		if math.Abs(turn) > 1e-9 || k%10 > 0 {
			continue
		}
		// straight: the surface is a cone about the axis
		at := func(s, az float64) [3]float64 {
			p := p.Lerp(q, s)
			return [3]float64{p.R * math.Cos(az), p.R * math.Sin(az), p.Z}
		}
		diff := func(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
		draft := func(az float64, d [3]float64) float64 {
			const h = 1e-4
			u, v := diff(at(0.5+h, az), at(0.5-h, az)), diff(at(0.5, az+h), at(0.5, az-h))
			n := [3]float64{v[1]*u[2] - v[2]*u[1], v[2]*u[0] - v[0]*u[2], v[0]*u[1] - v[1]*u[0]}
			return math.Asin((n[0]*d[0]+n[1]*d[1]+n[2]*d[2])/math.Sqrt(n[0]*n[0]+n[1]*n[1]+n[2]*n[2])) / rad
		}
		for pull, d := range pulls {
			near(t, "draft", Draft(sp.A0, pull), draft(0, d), 0.01)
		}
		const steps = 20000
		for _, sides := range []int{2, 3, 4} {
			half := math.Pi / float64(sides)
			edge := 90 * (g.Float64()*2 - 1)
			n, least := 0, 90.0
			for j := range steps {
				az := half * (float64(j) + 0.5) / steps
				d := math.Asin(math.Sin(chord)*math.Cos(az)) / rad
				least = math.Min(least, d)
				if d < edge {
					n++
				}
			}
			got, all, min := below(m, Out, sides, edge, func(k int) bool { return k == i })
			near(t, "share", got/all, float64(n)/steps, 2e-4)
			near(t, "least", min, least, 0.02)
		}
	}
}
