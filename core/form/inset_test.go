package form

import (
	"math"
	"testing"
)

// A plain cylinder, worked by hand: a wall and floor of 4 mm inside a radius of
// 45.4545 and a height of 113.636 mm leave pi 41.4545^2 109.636 mm3.
func TestInsetOfCylinder(t *testing.T) {
	r, h := 80/0.88/2, 100/0.88
	in := Inset([]Point{{0, 0}, {r, 0}, {r, h}}, 4)
	got := LoopVolume(append(in, Point{0, h}))
	want := math.Pi * (r - 4) * (r - 4) * (h - 4)
	if math.Abs(got-want) > 1e-6*want {
		t.Errorf("inside volume %.3f, want %.3f (%v)", got, want, in)
	}
}

// A wall that leans in to its mouth, by hand: the inside is the frustum offset
// square to the wall, 4 mm / cos of its lean from the upright.
func TestInsetOfLeaningWall(t *testing.T) {
	in := Inset([]Point{{0, 0}, {60, 0}, {30, 150}}, 4)
	lean := 4 / math.Cos(math.Atan2(30, 150))
	want := 60 - 30.0/150*4 - lean
	found := false
	for _, p := range in {
		found = found || math.Abs(p.Z-4) < 1e-9 && math.Abs(p.R-want) < 1e-9
	}
	if !found {
		t.Errorf("no corner at r %.4f, z 4: %v", want, in)
	}
}

// A wall thicker than the mouth leaves no bore; a thin neck closes the space
// below it.
func TestInsetOfNarrowMouth(t *testing.T) {
	if in := Inset([]Point{{0, 0}, {40, 0}, {3, 100}}, 4); in != nil {
		t.Errorf("a 3 mm mouth with a 4 mm wall has a bore: %v", in)
	}
	in := Inset([]Point{{0, 0}, {40, 0}, {40, 40}, {3, 60}, {3, 65}, {30, 100}}, 4)
	if in == nil || in[0].Z < 60 || in[0].R != 0 {
		t.Errorf("the bore should end at the closed neck: %v", in)
	}
}

// Every point of the inset of a wavy form keeps its distance, and the middle
// of every chord of the contour that can see the inset is at it.
func TestInsetKeepsDistance(t *testing.T) {
	var c []Point
	c = append(c, Point{0, 3}, Point{20, 3}, Point{22, 0}, Point{30, 0})
	for i := 0; i <= 200; i++ {
		z := float64(i)
		c = append(c, Point{40 + 12*math.Sin(z/18), z + 1})
	}
	const w = 5
	in := Inset(c, w)
	tree := NewTree(c)
	for _, p := range in {
		if p.Z > 195 {
			continue // beside the rim the wall goes on up the spare
		}
		near := math.Inf(1)
		tree.Visit(p.R-2*w, p.R+2*w, p.Z-2*w, p.Z+2*w, func(i int) {
			near = math.Min(near, distanceToChord(p, c[i], c[i+1]))
		})
		if math.Abs(near-w) > 0.02 {
			t.Errorf("point %v lies %.3f from the contour, want %d", p, near, w)
		}
	}
}
