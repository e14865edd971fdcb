package release

import (
	"math"

	"moldwright/core/form"
)

// DimpleCatch is how a dimple catches: how deep, mm, and the place of the rim that the
// plaster would have to pass.
type DimpleCatch struct {
	Depth              float64
	Rim                form.Vec3
	centre, wall, pull form.Vec3 // of the ball; across the pull into the wall
	radius, from, over float64   // angles from the outline toward the rim
}

// Held is a place that is held, and how deep: at share 0 the deepest, and on from
// there toward the rim.
func (c *DimpleCatch) Held(share float64) (at form.Vec3, depth float64) {
	sin, cos := math.Sincos(c.from + share*(c.over-c.from))
	for k := range at {
		at[k] = c.centre[k] + c.radius*(cos*c.wall[k]+sin*c.pull[k])
	}
	return at, c.Depth - c.radius*(math.Cos(c.from)-cos)
}

// Away is how far in mm the rim draws away across the pull, out of the plaster's way,
// when the pot draws together toward its axis by the share shrunk; negative where it
// hooks deeper.
func (c *DimpleCatch) Away(shrunk float64) float64 {
	return -shrunk * (c.Rim[0]*c.wall[0] + c.Rim[1]*c.wall[1])
}

// DimpleHook is how a dimple catches under a pull (a unit vector): the part
// of the plaster's ball that stands behind the dimple's rim, across the pull. A ball
// hides behind its own outline along the pull what lies past it; where the rim leans
// past that outline by an angle, R (1 - cos) of the plaster has to pass it. The rim is
// where the ball leaves the wall toward the pull, found on the turned wall itself, so
// that it is as much nearer to the middle as the wall curves. Where the wall looks away
// from the pull, no more counts than the dimple is wide. tangent is the angle of the
// meridian in the dimple's middle, radians.
//
// Exact where the pull, the wall's normal and one of the wall's directions of curvature
// lie in a plane, as with pulls along the axis, or level to an upright wall.
func DimpleHook(w *form.Wall, b *form.Ball, tangent float64, pull form.Vec3) DimpleCatch {
	n := b.Normal
	ahead := dot(n, pull)
	g, slope := w.Section.At(b.Azimuth)
	r := w.At(b.S).R
	sin, cos := math.Sincos(b.Azimuth)
	tz, tr := math.Sincos(tangent)
	up := form.Vec3{tr * g * cos, tr * g * sin, tz}
	around := form.Vec3{r * (slope*cos - g*sin), r * (slope*sin + g*cos), 0}
	var v form.Vec3 // the pull along the wall
	for k := range v {
		v[k] = pull[k] - ahead*n[k]
	}
	long := math.Sqrt(dot(v, v))
	if long < 1e-9 {
		return DimpleCatch{} // square to the wall
	}
	aa, ab, bb := dot(up, up), dot(up, around), dot(around, around)
	p, q := dot(v, up)/long, dot(v, around)/long
	det := aa*bb - ab*ab
	ds, da := (p*bb-q*ab)/det, (q*aa-p*ab)/det
	past := func(way float64) (float64, form.Vec3) { // the angle by which the rim leans past the outline
		t, _ := b.Rim(w, b.S, b.Azimuth, way*ds, way*da, 2.5*b.Radius)
		on := w.On(b.S+way*t*ds, b.Azimuth+way*t*da)
		d := form.Vec3{on[0] - b.Centre[0], on[1] - b.Centre[1], on[2] - b.Centre[2]}
		return math.Atan2(dot(d, pull), (ahead*dot(d, pull)-dot(d, n))/long), on // across: into the wall
	}
	over, rim := past(1)
	if over <= 0 {
		return DimpleCatch{}
	}
	c := DimpleCatch{Rim: rim, centre: b.Centre, pull: pull, radius: b.Radius, over: over}
	for k := range c.wall {
		c.wall[k] = (ahead*pull[k] - n[k]) / long
	}
	if ahead < 0 {
		if near, _ := past(-1); near > 0 {
			c.from = near
		}
	}
	c.Depth = b.Radius * (1 - math.Cos(over-c.from))
	return c
}

func dot(a, b form.Vec3) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
