package release

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

// hookOf is how deep a dimple in the middle of a straight wall catches: the wall leans
// by so many degrees from upright and is r mm out at the dimple.
func hookOf(r, leans, diameter, depth float64, pull form.Vec3) float64 {
	a := (90 - leans) * math.Pi / 180
	sin, cos := math.Sincos(a)
	w := form.NewWall([]form.Point{{R: r - 40*cos, Z: -40 * sin}, {R: r + 40*cos, Z: 40 * sin}}, form.NewSection(job.Section{}))
	b := form.NewBall(w, 40, 0, a, diameter, depth)
	return DimpleHook(w, &b, a, pull).Depth
}

func level(deg float64) form.Vec3 {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return form.Vec3{cos, sin, 0}
}

// On a wall as good as flat, by hand: a hemisphere hooks under any pull that leans, a
// cap of 60 degrees at a pull that leans by 45 is 15 past its outline, and at one that
// leans by 29.9 it lets go.
func TestDimpleOnAFlatWall(t *testing.T) {
	const flat = 1e6
	r := 5 / math.Sin(math.Pi/3)
	depth := r * (1 - math.Cos(math.Pi/3))
	if got, want := hookOf(flat, 0, 10, depth, level(45)), r*(1-math.Cos(15*math.Pi/180)); math.Abs(got-want) > 1e-4 {
		t.Errorf("hook %.5f, want %.5f", got, want)
	}
	if got := hookOf(flat, 0, 10, depth, level(29.9)); got != 0 {
		t.Errorf("a cap of 60 degrees hooks by %g under a pull that leans by 29.9", got)
	}
	if got, want := hookOf(flat, 0, 10, 5, level(3)), 5*(1-math.Cos(3*math.Pi/180)); math.Abs(got-want) > 1e-4 {
		t.Errorf("a hemisphere hooks by %.5f under a pull that leans by 3, want %.5f", got, want)
	}
}

// On a turned wall, by hand: in the level cut through the dimple's middle two circles
// meet, the wall's and the ball's, at cos t = (f2 + R2 - r2) / 2 f R from the line of
// their centres, f apart; the rim leans past the ball's outline by t + lean - 90. Along
// the axis an upright wall is straight, and the dimple catches by all its depth.
func TestDimpleOnATurnedWall(t *testing.T) {
	for _, r := range []float64{15, 30, 60, 120} {
		for _, dimple := range [][2]float64{{8, 3.5}, {8, 1}, {12, 4}, {4, 0.3}} {
			ball := (dimple[0]*dimple[0]/4 + dimple[1]*dimple[1]) / (2 * dimple[1])
			far := r + ball - dimple[1]
			rim := math.Acos((far*far+ball*ball-r*r)/(2*far*ball)) * 180 / math.Pi
			for _, lean := range []float64{0, 20, 45, 60, 75, 89} {
				want := 0.0
				if over := rim + lean - 90; over > 0 {
					want = ball * (1 - math.Cos(over*math.Pi/180))
				}
				for _, way := range []float64{-1, 1} {
					if got := hookOf(r, 0, dimple[0], dimple[1], level(way*lean)); math.Abs(got-want) > 1e-9 {
						t.Errorf("dimple %v, wall %g mm out, pull at %g: hook %.6f, want %.6f", dimple, r, way*lean, got, want)
					}
				}
			}
			for _, up := range []float64{-1, 1} {
				if got := hookOf(r, 0, dimple[0], dimple[1], form.Vec3{0, 0, up}); math.Abs(got-dimple[1]) > 1e-9 {
					t.Errorf("dimple %v, wall %g mm out, pull along the axis: hook %.6f", dimple, r, got)
				}
			}
		}
	}
}

// How far the rim draws away when the pot draws together by 1.5 %, by hand. On a
// cylinder the rim stands at the azimuth where the two circles of the level cut meet,
// cos u = (f2 + r2 - R2) / 2 f r, and draws away by the part of its way that lies across
// the pull, r sin(lean - u): past the pull's own plane it hooks deeper. Along the axis
// of a cone the rim below stands nearer to the axis than the middle, or farther out, by
// half the diameter along the wall.
func TestDimpleOfTheShrunkenPot(t *testing.T) {
	const shrunk = 0.015
	catch := func(r, leans, diameter, depth float64, pull form.Vec3) DimpleCatch {
		a := (90 - leans) * math.Pi / 180
		sin, cos := math.Sincos(a)
		w := form.NewWall([]form.Point{{R: r - 40*cos, Z: -40 * sin}, {R: r + 40*cos, Z: 40 * sin}}, form.NewSection(job.Section{}))
		b := form.NewBall(w, 40, 0, a, diameter, depth)
		return DimpleHook(w, &b, a, pull)
	}
	for _, r := range []float64{15, 30, 60, 120} {
		for _, dimple := range [][2]float64{{8, 3.5}, {12, 4}, {4, 0.3}} {
			ball := (dimple[0]*dimple[0]/4 + dimple[1]*dimple[1]) / (2 * dimple[1])
			far := r + ball - dimple[1]
			rim := math.Acos((far*far + r*r - ball*ball) / (2 * far * r))
			for _, lean := range []float64{10, 45, 60, 89} {
				c := catch(r, 0, dimple[0], dimple[1], level(lean))
				if want := shrunk * r * math.Sin(lean*math.Pi/180-rim); c.Depth > 0 && math.Abs(c.Away(shrunk)-want) > 1e-9 {
					t.Errorf("dimple %v, wall %g mm out, pull at %g: the rim draws away by %.6f, want %.6f", dimple, r, lean, c.Away(shrunk), want)
				}
			}
		}
	}
	for _, leans := range []float64{-20, -5, 3, 10} {
		for _, up := range []float64{-1, 1} {
			c := catch(50, leans, 8, 3, form.Vec3{0, 0, up})
			if want := shrunk * (50 + up*4*math.Sin(leans*math.Pi/180)); math.Abs(c.Away(shrunk)-want) > 1e-9 {
				t.Errorf("wall leaning by %g, pull %g along the axis: the rim draws away by %.6f, want %.6f", leans, up, c.Away(shrunk), want)
			}
		}
	}
}

// A cone leans from its axis: its dimples catch along it as on a flat wall that leans
// so, since its lines are straight.
func TestDimpleOnACone(t *testing.T) {
	slope := func(d, depth float64) float64 { return 2 * math.Atan(2*depth/d) * 180 / math.Pi }
	for _, leans := range []float64{-20, -5, 3, 10, 25} {
		for _, depth := range []float64{0.2, 0.6, 1.5, 3} {
			want := 0.0
			ball := (16 + depth*depth) / (2 * depth)
			if over := slope(8, depth) - leans; over > 0 {
				want = ball * (1 - math.Cos(min(over, 2*slope(8, depth))*math.Pi/180))
			}
			// up: a wall that widens upward looks down, away from the pull
			if got := hookOf(50, leans, 8, depth, form.Vec3{0, 0, -1}); math.Abs(got-want) > 1e-9 {
				t.Errorf("wall leaning by %g, %g mm deep: hook %.6f, want %.6f", leans, depth, got, want)
			}
		}
	}
}
