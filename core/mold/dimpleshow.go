package mold

// Where dimples are seen: their rims on the wall, for elevations, and their depth
// in the half-plane, for sections.

import (
	"math"

	"moldwright/core/form"
)

const rimSteps = 24 // corners of a rim as it is drawn

// DimpleRims are the rims, as closed loops in mm, of the dimples that reach between
// two azimuths in degrees.
func (md *Mold) DimpleRims(from, to float64) (rims [][]form.Vec3) {
	d := md.dimples
	if d == nil {
		return nil
	}
	mid, half := (from+to)/2, (to-from)/2
	for i := range d.rows {
		r := &d.rows[i]
		var like []form.Vec3 // of the first, on a round pot
		for k := range d.Around {
			at := d.turn + 360*float64(k)/float64(d.Around)
			if math.Abs(math.Remainder(at-mid, 360)) > half+r.side*180/math.Pi {
				continue
			}
			turn := 0.0
			if d.Section().Round {
				turn, at = at*math.Pi/180, 0
			}
			loop := like
			if loop == nil {
				loop = d.rim3(r, at*math.Pi/180)
			}
			if d.Section().Round {
				like = loop
			}
			sin, cos := math.Sincos(turn)
			out := make([]form.Vec3, len(loop))
			for n, p := range loop {
				out[n] = form.Vec3{p[0]*cos - p[1]*sin, p[0]*sin + p[1]*cos, p[2]}
			}
			rims = append(rims, out)
		}
	}
	return rims
}

// rim3 is the rim of a row's dimple at an azimuth in radians.
func (d *dimples) rim3(r *dimpleRow, at float64) (loop []form.Vec3) {
	b := d.ball(d.wall, r.hollowRow, at)
	radius := d.wall.At(r.s).R
	for i := range rimSteps + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i%rimSteps) / rimSteps)
		t, _ := b.Rim(d.wall, r.s, at, sin, cos/radius, 2*d.Diameter)
		loop = append(loop, d.wall.On(r.s+t*sin, at+t*cos/radius))
	}
	return loop
}

// DimpleArcs are the dimples in the half-plane, a line for each row, as if one lay
// in it: radii are the largest, as those of the cavity.
func (md *Mold) DimpleArcs() (arcs [][]form.Point) {
	d := md.dimples
	if d == nil {
		return nil
	}
	const steps = 12
	for i := range d.rows {
		r := &d.rows[i]
		b := &r.balls[0]
		g, _ := d.hollows.wall.Section.At(b.Azimuth)
		mid := form.Point{R: math.Hypot(b.Centre[0], b.Centre[1]) / g, Z: b.Centre[2]}
		from, to := d.wall.At(r.s-r.down).Sub(mid), d.wall.At(r.s+r.up).Sub(mid)
		a0 := math.Atan2(from.Z, from.R)
		turn := math.Remainder(math.Atan2(to.Z, to.R)-a0, 2*math.Pi)
		r0, r1 := math.Hypot(from.R, from.Z), math.Hypot(to.R, to.Z)
		var arc []form.Point
		for k := range steps + 1 {
			t := float64(k) / steps
			sin, cos := math.Sincos(a0 + t*turn)
			arc = append(arc, form.Point{R: mid.R + (r0+t*(r1-r0))*cos, Z: mid.Z + (r0+t*(r1-r0))*sin})
		}
		arcs = append(arcs, arc)
	}
	return arcs
}
