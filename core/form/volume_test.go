package form_test

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

const inch = 25.4 // mm, international inch of 1959

// The vase of Larson, Calculus, chapter 7, exercise "Modeling Data": its
// circumferences in inches at every third inch of height. For straight lines
// between them the frusta come to 5,215.55 in3, the outside wall to 1,168.64 in2
// (worked from the published data; frusta are exact for such a profile).
func TestTextbookVase(t *testing.T) {
	nodes := []job.Node{c(0, 0)}
	for i, around := range []float64{50, 65.5, 70, 66, 58, 51, 48} {
		nodes = append(nodes, c(around/(2*math.Pi)*inch, float64(3*i)*inch))
	}
	m := build(t, nodes...)
	if v := m.Volume() / (inch * inch * inch); math.Abs(v-5215.55) > 0.01 {
		t.Errorf("volume %.3f in3, want 5,215.55", v)
	}
	foot := math.Pi * m.Pts[1].R * m.Pts[1].R
	if a := (m.Area() - foot) / (inch * inch); math.Abs(a-1168.64) > 0.01 {
		t.Errorf("outside %.3f in2, want 1,168.64", a)
	}
}

// Larson and Edwards, Calculus, 7.6 Example 7: the torus of (x-2)^2 + y^2 = 1
// about the y axis has volume 4 pi^2 = 39.478 (theorem of Pappus).
func TestTorus(t *testing.T) {
	const n = 20000
	var loop []form.Point
	for i := range n {
		a := 2 * math.Pi * float64(i) / n
		loop = append(loop, form.Point{R: 2 + math.Cos(a), Z: math.Sin(a)})
	}
	if v := form.LoopVolume(loop); math.Abs(v-39.478) > 1e-3 {
		t.Errorf("volume %.5f, want 39.478", v)
	}
}

// A bucket of radii 15 and 5 cm, 24 cm high, holds pi h (R^2 + R r + r^2) / 3 =
// 8,168.14 cm3 (a school exercise gives 8,171.42 with pi taken as 22/7).
func TestBucket(t *testing.T) {
	m := build(t, c(0, 0), c(50, 0), c(150, 240))
	if v := m.Volume() / 1000; math.Abs(v-8168.14) > 0.01 {
		t.Errorf("volume %.3f cm3, want 8,168.14", v)
	}
}

// A frustum of radii 3 and 1, height 4: 54.4543 by its formula and by Pappus
// (area 8, centroid 13/12 from the axis), slant sqrt 20.
func TestFrustum(t *testing.T) {
	m := build(t, c(0, 0), c(3, 0), c(1, 4))
	if v := m.Volume(); math.Abs(v-54.4543) > 1e-4 {
		t.Errorf("volume %.5f, want 54.4543", v)
	}
	if a, want := form.BandArea(m.Pts[1], m.Pts[2]), math.Pi*4*math.Sqrt(20); math.Abs(a-want) > 1e-9 {
		t.Errorf("wall %.5f, want %.5f", a, want)
	}
}

// Cutting a meridian changes neither volume nor area, and puts points at the
// heights asked for; a cut at the mouth stands at the radius asked for.
func TestCuts(t *testing.T) {
	m := build(t, c(0, 0), s(50, 50), s(0, 100))
	v, a := m.Volume(), m.Area()
	m.Cut([]float64{12.5, 50, 77.7, 400})
	k := m.CutMouth(15)
	if math.Abs(m.Volume()-v) > 1e-6*v || math.Abs(m.Area()-a) > 1e-6*a {
		t.Errorf("cuts changed volume or area")
	}
	if bad := check(m, 3); bad != "" {
		t.Error(bad)
	}
	if math.Abs(m.Pts[k].R-15) > 2e-3 {
		t.Errorf("the mouth is cut at r %.4f, want 15", m.Pts[k].R)
	}
	for _, z := range []float64{12.5, 50, 77.7} {
		near := math.Inf(1)
		for _, p := range m.Pts {
			near = math.Min(near, math.Abs(p.Z-z))
		}
		if near > 2e-3 {
			t.Errorf("no point at height %g", z)
		}
	}
}
