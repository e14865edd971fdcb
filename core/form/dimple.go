package form

// Dimples as balls taken out of the pot. A dimple is a cap of a sphere: its
// ball stands on the wall's normal so far out that its deepest place lies the
// dimple's depth within the wall, and on a flat wall its rim is a circle of the
// dimple's diameter. What is cut away is exactly what the ball and the pot have
// in common, so on a round wall the rim is a little narrower around than up.

import (
	"math"
	"slices"
)

// Vec3 is a place or a direction in space: x, y across the axis, z up, mm.
type Vec3 = [3]float64

// Wall is a line of the half-plane by its length, turned about the axis with a
// section.
type Wall struct {
	Pts     []Point
	Arc     []float64 // mm along the line, by point
	Section *Section
}

// NewWall measures the line.
func NewWall(pts []Point, s *Section) *Wall {
	w := &Wall{Pts: pts, Arc: make([]float64, len(pts)), Section: s}
	for i := 1; i < len(pts); i++ {
		w.Arc[i] = w.Arc[i-1] + pts[i].Dist(pts[i-1])
	}
	return w
}

// At is the point so many mm along the line; a point of the line is given as it
// is.
func (w *Wall) At(s float64) Point {
	i, _ := slices.BinarySearch(w.Arc, s)
	switch {
	case i <= 0:
		return w.Pts[0]
	case i >= len(w.Arc):
		return w.Pts[len(w.Pts)-1]
	case w.Arc[i] == s:
		return w.Pts[i]
	}
	return w.Pts[i-1].Lerp(w.Pts[i], (s-w.Arc[i-1])/(w.Arc[i]-w.Arc[i-1]))
}

// On is the point of the surface so many mm along the line, at azimuth a
// (radians).
func (w *Wall) On(s, a float64) Vec3 {
	p := w.At(s)
	g := 1.0
	if !w.Section.Round {
		g, _ = w.Section.At(a)
	}
	sin, cos := math.Sincos(a)
	return Vec3{p.R * g * cos, p.R * g * sin, p.Z}
}

// Ball is one dimple's.
type Ball struct {
	S, Azimuth float64 // of its middle on the wall, mm and radians
	Centre     Vec3
	Normal     Vec3 // of the wall in its middle, outward
	Radius     float64
}

// NewBall is the ball of a dimple of the diameter and depth (mm) in the wall at
// s, azimuth a, where the meridian's tangent has the angle tangent (radians).
func NewBall(w *Wall, s, a, tangent, diameter, depth float64) Ball {
	b := Ball{S: s, Azimuth: a, Radius: (diameter*diameter/4 + depth*depth) / (2 * depth)}
	g, slope := 1.0, 0.0
	if !w.Section.Round {
		g, slope = w.Section.At(a)
	}
	dz, dr := math.Sincos(tangent)
	// the tangents around and along, crossed
	n := Vec3{g * dz, -slope * dz, -g * g * dr}
	l := math.Sqrt(n[0]*n[0] + n[1]*n[1] + n[2]*n[2])
	sin, cos := math.Sincos(a)
	b.Normal = Vec3{(n[0]*cos - n[1]*sin) / l, (n[0]*sin + n[1]*cos) / l, n[2] / l}
	on := w.On(s, a)
	for k := range 3 {
		b.Centre[k] = on[k] + (b.Radius-depth)*b.Normal[k]
	}
	return b
}

// Beyond is how far in mm2 a place lies outside the ball, in squares; negative
// within.
func (b *Ball) Beyond(p Vec3) float64 {
	x, y, z := p[0]-b.Centre[0], p[1]-b.Centre[1], p[2]-b.Centre[2]
	return x*x + y*y + z*z - b.Radius*b.Radius
}

// Rim is how far the ball reaches on the wall from the place s, a within it: the
// factor of the step (ds mm, da radians) at which the way leaves it, at most
// most; ok is false where it never does.
func (b *Ball) Rim(w *Wall, s, a, ds, da, most float64) (float64, bool) {
	const steps = 24
	in, out := 0.0, -1.0
	for k := 1; k <= steps; k++ {
		t := most * float64(k) / steps
		if b.Beyond(w.On(s+t*ds, a+t*da)) > 0 {
			out = t
			break
		}
		in = t
	}
	if out < 0 {
		return most, false
	}
	for range 48 {
		mid := (in + out) / 2
		if b.Beyond(w.On(s+mid*ds, a+mid*da)) > 0 {
			out = mid
		} else {
			in = mid
		}
	}
	return (in + out) / 2, true
}

// Taken is the volume in mm3 that the ball has in common with the body within
// the wall, between two heights (mm) and two azimuths (radians, within half a
// turn of the ball's): level cuts are summed, and in each the rays from the axis.
// The wall is taken where the line is widest near the ball.
func (b *Ball) Taken(w *Wall, low, high, from, to float64) float64 {
	const levels, rays = 48, 96
	far := math.Hypot(b.Centre[0], b.Centre[1])
	mid := math.Atan2(b.Centre[1], b.Centre[0])
	turn := func(a float64) float64 { return math.Remainder(a-mid, 2*math.Pi) }
	lo, hi := math.Max(-1, (low-b.Centre[2])/b.Radius), math.Min(1, (high-b.Centre[2])/b.Radius)
	if lo >= hi || far <= b.Radius {
		return 0
	}
	b0, b1 := math.Asin(lo), math.Asin(hi)
	g0, g1 := -math.Pi/2, math.Pi/2
	sum := 0.0
	for i := range levels {
		sinB, cosB := math.Sincos(b0 + (b1-b0)*(float64(i)+0.5)/levels)
		z, r := b.Centre[2]+b.Radius*sinB, b.Radius*cosB
		wall := w.widest(z, b.S, 2*b.Radius)
		if wall <= far-r {
			continue
		}
		most := math.Asin(r / far)
		if to-from < 2*math.Pi {
			g0 = math.Asin(max(-1, min(1, turn(from)/most)))
			g1 = math.Asin(max(-1, min(1, turn(to)/most)))
		}
		level := 0.0
		for k := range rays {
			sinG, cosG := math.Sincos(g0 + (g1-g0)*(float64(k)+0.5)/rays)
			a := most * sinG
			sin, cos := math.Sincos(a)
			root := math.Sqrt(max(0, r*r-far*far*sin*sin))
			near, back := far*cos-root, far*cos+root
			rim := wall
			if !w.Section.Round {
				g, _ := w.Section.At(mid + a)
				rim *= g
			}
			if rim = min(rim, back); rim > near {
				level += (rim*rim - near*near) / 2 * most * cosG
			}
		}
		sum += level * (g1 - g0) / rays * b.Radius * cosB
	}
	return sum * (b1 - b0) / levels
}

// widest is the greatest radius of the line at a height, within reach mm of s.
func (w *Wall) widest(z, s, reach float64) float64 {
	r := 0.0
	first, _ := slices.BinarySearch(w.Arc, s-reach)
	for i := max(0, first-1); i+1 < len(w.Pts) && w.Arc[i] < s+reach; i++ {
		p, q := w.Pts[i], w.Pts[i+1]
		if (p.Z-z)*(q.Z-z) > 0 || p.Z == q.Z {
			continue
		}
		r = max(r, p.R+(z-p.Z)/(q.Z-p.Z)*(q.R-p.R))
	}
	return r
}
