package form_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

func build(t testing.TB, nodes ...job.Node) *form.Meridian {
	t.Helper()
	m, err := formtest.Build(nodes)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func c(r, z float64) job.Node { return formtest.Corner(r, z) }
func s(r, z float64) job.Node { return formtest.Smooth(r, z) }

// check is what holds of every meridian.
func check(m *form.Meridian, nodes int) string {
	n := len(m.Pts)
	switch {
	case len(m.Spans) != n-1 || len(m.Corner) != n || len(m.Node) != n:
		return "lists of unlike length"
	case m.Pts[0].R != 0:
		return "does not start on the axis"
	case m.Closed != (m.Rim().R == 0):
		return "closed or open, against its end"
	case !m.Corner[0] || !m.Corner[n-1]:
		return "an end is no corner"
	case !(m.Volume() > 0):
		return "no volume"
	}
	low, last := math.Inf(1), -1
	for i, p := range m.Pts {
		if math.IsNaN(p.R+p.Z) || math.IsInf(p.R+p.Z, 0) || p.R < 0 {
			return "a point that is no place"
		}
		low = math.Min(low, p.Z)
		if m.Node[i] >= 0 {
			if m.Node[i] != last+1 {
				return "nodes out of order"
			}
			last = m.Node[i]
		}
		if i == 0 {
			continue
		}
		sp := m.Spans[i-1]
		if !(math.Abs(sp.A1-sp.A0) <= math.Pi) {
			return "a span turns by more than half a turn"
		}
		if p == m.Pts[i-1] {
			return "a point repeats"
		}
	}
	switch {
	case low != 0:
		return "the foot is not at 0"
	case last != nodes-1:
		return "a node is missing"
	}
	return ""
}

// Between two nodes both r and z run one way, so that a widest or a narrowest
// place is always a node; flattening keeps the order.
func TestNoOvershoot(t *testing.T) {
	for k := range uint64(5000) {
		m, nodes := formtest.Meridian(formtest.Rand(21, k))
		if bad := check(m, len(nodes)); bad != "" {
			t.Fatalf("profile %d: %s\n%v", k, bad, nodes)
		}
		from := 0
		for i := 1; i < len(m.Pts); i++ {
			if m.Node[i] < 0 {
				continue
			}
			a, b := m.Pts[from], m.Pts[i]
			for j := from + 1; j <= i; j++ {
				p, q := m.Pts[j-1], m.Pts[j]
				if (q.R-p.R)*(b.R-a.R) < -1e-9 || (q.Z-p.Z)*(b.Z-a.Z) < -1e-9 || a.R == b.R && q.R != p.R && math.Abs(q.R-p.R) > 1e-9 {
					t.Fatalf("profile %d: between nodes %d and %d the curve turns back: %v %v\n%v", k, m.Node[from], m.Node[i], p, q, nodes)
				}
			}
			from = i
		}
	}
}

// Between two corners the stretch is one straight span.
func TestStraightBetweenCorners(t *testing.T) {
	m := build(t, c(0, 0), c(30, 0), c(40, 50), s(60, 80), c(50, 120))
	for i := range 2 {
		if m.Node[i] != i || m.Node[i+1] != i+1 || m.Spans[i].A0 != m.Spans[i].A1 {
			t.Errorf("stretch %d is not one straight span", i)
		}
	}
	if m.Node[3] == 3 {
		t.Error("the stretch to a smooth node is one chord")
	}
}

// A smooth node on the axis runs across it level, and a smooth node is passed
// without an edge.
func TestSmoothNodes(t *testing.T) {
	m := build(t, s(0, 0), s(50, 50), s(0, 100))
	if a := m.Spans[0].A0; math.Abs(a) > 1e-9 {
		t.Errorf("the curve sets out at %.6f radians from the axis, want level", a)
	}
	if a := m.Spans[len(m.Spans)-1].A1; math.Abs(a-math.Pi) > 1e-9 {
		t.Errorf("the curve arrives at %.6f radians, want pi", a)
	}
	for i := 1; i < len(m.Spans); i++ {
		if d := math.Remainder(m.Spans[i].A0-m.Spans[i-1].A1, 2*math.Pi); math.Abs(d) > 1e-9 {
			t.Errorf("an edge of %.6f radians at point %d", d, i)
		}
	}
}

// hermite is the curve between two nodes, refined far beyond the meridian: its
// own span points and tangents tell the cubic, at the stretch's two ends.
func hermite(a, b form.Point, ta, tb float64, la, lb float64) func(float64) form.Point {
	return func(t float64) form.Point {
		h00, h10, h01, h11 := 2*t*t*t-3*t*t+1, t*t*t-2*t*t+t, 3*t*t-2*t*t*t, t*t*t-t*t
		return form.Point{
			R: h00*a.R + h10*la*math.Cos(ta) + h01*b.R + h11*lb*math.Cos(tb),
			Z: h00*a.Z + h10*la*math.Sin(ta) + h01*b.Z + h11*lb*math.Sin(tb),
		}
	}
}

// Worked by hand: nodes (40,0), smooth (60,60), (40,120), evenly spaced chords of
// length L = sqrt(20^2 + 60^2). At the middle node r has an extreme, so its slope
// is 0; z rises by 60/L on both sides. At the ends the parabola through the next
// nodes: in r, chord slopes 20/L and -20/L give 20/L + (20/L + 20/L)/2 = 40/L; in
// z 60/L. The true curve is the cubic Hermite over chord length; the meridian's
// points lie on it, its chords within ChordTol, no span turns by more than
// TurnTol, and tangents are the curve's own.
func TestFlattening(t *testing.T) {
	m := build(t, c(0, 0), c(40, 0), s(60, 60), c(40, 120))
	at := 1 // the stretch starts at (40, 0)
	end := at
	for m.Node[end] != 2 {
		end++
	}
	true1 := hermite(form.Point{R: 40, Z: 0}, form.Point{R: 60, Z: 60},
		math.Atan2(60, 40), math.Pi/2, math.Hypot(40, 60), 60)
	var dense []form.Point
	const fine = 20000
	for i := range fine + 1 {
		dense = append(dense, true1(float64(i)/fine))
	}
	k := 0
	for i := at; i < end; i++ {
		p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
		if turn := math.Abs(sp.A1 - sp.A0); turn > form.TurnTol {
			t.Errorf("span %d turns by %.5f", i, turn)
		}
		for ; dense[k].Z < q.Z; k++ {
			d := dense[k]
			off := math.Abs((q.R-p.R)*(d.Z-p.Z)-(q.Z-p.Z)*(d.R-p.R)) / p.Dist(q)
			if off > form.ChordTol {
				t.Fatalf("the curve departs by %.5f mm from chord %d", off, i)
			}
		}
		near := dense[k]
		if near.Dist(q) > 2*60.0/fine {
			t.Errorf("point %v is not on the curve: %v", q, near)
		}
		if k+1 < len(dense) {
			tangent := math.Atan2(dense[k+1].Z-dense[k-1].Z, dense[k+1].R-dense[k-1].R)
			if math.Abs(tangent-sp.A1) > 1e-3 {
				t.Errorf("tangent %.5f at point %d, differences give %.5f", sp.A1, i+1, tangent)
			}
		}
	}
}

// Every curve keeps to the two tolerances: turns by the tangents it tells, and
// chords, as far as a chord and its end tangents tell the curve between.
func TestTolerances(t *testing.T) {
	for k := range uint64(2000) {
		m, nodes := formtest.Meridian(formtest.Rand(22, k))
		for i, sp := range m.Spans {
			p, q := m.Pts[i], m.Pts[i+1]
			l := p.Dist(q)
			turn := math.Abs(sp.A1 - sp.A0)
			if turn > form.TurnTol+1e-9 && l > 0.05 {
				t.Fatalf("profile %d: span %d of %.4f mm turns by %.4f\n%v", k, i, l, turn, nodes)
			}
			// a curve that turns steadily stays under the lower tangent triangle
			if l*turn/2 > 8*form.ChordTol && l > 0.05 {
				chord := math.Atan2(q.Z-p.Z, q.R-p.R)
				a, b := math.Abs(math.Remainder(chord-sp.A0, 2*math.Pi)), math.Abs(math.Remainder(chord-sp.A1, 2*math.Pi))
				if high := l * math.Tan(a) * math.Tan(b) / (math.Tan(a) + math.Tan(b)); high > 8*form.ChordTol {
					t.Fatalf("profile %d: span %d of %.3f mm may stand %.4f mm off its chord\n%v", k, i, l, high, nodes)
				}
			}
		}
	}
}

// A polyline is refused if and only if two of its chords meet, by trying all
// pairs with exact-enough arithmetic of its own.
func TestCrossingAgainstAllPairs(t *testing.T) {
	crossed, plain := 0, 0
	for k := range uint64(20_000) {
		g := formtest.Rand(23, k)
		nodes := []job.Node{c(0, 0)}
		for range 3 + g.IntN(6) {
			nodes = append(nodes, c(1+float64(g.IntN(400))/10, float64(g.IntN(400))/10))
		}
		nodes = append(nodes, c(20, 60))
		_, err := formtest.Build(nodes)
		told := false
		if faults, ok := err.(job.Faults); ok {
			told = faults[0].Code == "crossesItself"
			if !told {
				continue // repeated points and the like come first
			}
		}
		if want := crosses(nodes); told != want {
			t.Fatalf("profile %d: told %v, all pairs say %v\n%v", k, told, want, nodes)
		}
		if told {
			crossed++
		} else {
			plain++
		}
	}
	if crossed < 1000 || plain < 1000 {
		t.Errorf("%d crossed, %d plain: too few of one", crossed, plain)
	}
}

// crosses works in tenths of a millimetre, which are whole numbers here, so
// that all signs are exact.
func crosses(nodes []job.Node) bool {
	type pt struct{ r, z int64 }
	var p []pt
	for _, n := range nodes {
		p = append(p, pt{int64(math.Round(n.R * 10)), int64(math.Round(n.Z * 10))})
	}
	turn := func(a, b, c pt) int64 {
		v := (b.r-a.r)*(c.z-a.z) - (b.z-a.z)*(c.r-a.r)
		return min(1, max(-1, v))
	}
	on := func(a, b, c pt) bool { // c, on the line, lies between a and b
		return min(a.r, b.r) <= c.r && c.r <= max(a.r, b.r) && min(a.z, b.z) <= c.z && c.z <= max(a.z, b.z)
	}
	for i := 0; i+1 < len(p); i++ {
		for j := i + 1; j+1 < len(p); j++ {
			a, b, c, d := p[i], p[i+1], p[j], p[j+1]
			if j == i+1 {
				if turn(a, b, d) == 0 && (on(a, b, d) || on(b, d, a)) {
					return true
				}
				continue
			}
			o1, o2, o3, o4 := turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)
			if o1 != o2 && o3 != o4 || o1 == 0 && on(a, b, c) || o2 == 0 && on(a, b, d) || o3 == 0 && on(c, d, a) || o4 == 0 && on(c, d, b) {
				return true
			}
		}
	}
	return false
}

func FuzzBuild(f *testing.F) {
	f.Add([]byte{0, 0, 1, 30, 0, 1, 60, 80, 0})
	f.Add([]byte{0, 10, 0, 200, 10, 0, 0, 90, 0})
	f.Add([]byte{1, 2})
	f.Add([]byte{0, 48, 0, 32, 49, 0, 251, 251, 0, 251, 0, 0, 40, 90, 0}) // points 1e-300 mm apart
	odd := []float64{0, 1, -1, 0.1, 1e-9, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1), math.Copysign(0, -1), 1999, 2001, 5e-324}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 600 {
			return
		}
		g := rand.New(rand.NewPCG(1, uint64(len(data))))
		value := func(b byte) float64 {
			switch {
			case int(b) >= 256-len(odd):
				return odd[256-1-int(b)]
			case b >= 200:
				return float64(b) / 4 * (1 + 1e-12*g.Float64())
			}
			return float64(b) / 2
		}
		var nodes []job.Node
		for i := 0; i+2 < len(data); i += 3 {
			nodes = append(nodes, job.Node{R: value(data[i]), Z: value(data[i+1]), Corner: data[i+2]%2 == 0})
		}
		m, err := formtest.Build(nodes)
		if err != nil {
			faults, ok := err.(job.Faults)
			if !ok || len(faults) == 0 || faults[0].Code == "" || faults[0].Message.IsZero() {
				t.Fatalf("an error that tells nothing: %#v", err)
			}
			return
		}
		if bad := check(m, len(nodes)); bad != "" {
			t.Fatalf("%s: %v", bad, nodes)
		}
	})
}
