package casting

import "math"

// Forces of slip on the mold and of wet plaster on cottle and positive, all
// hydrostatic: p = rho g h. Both liquids are taken as heavy and frictionless
// and at rest, which overstates a thickening mix; a mold that is knocked or
// shaken feels more.

// gravity is the standard acceleration of free fall, m/s2.
const gravity = 9.80665

// Pressure is the pressure in kPa at a depth in mm under a liquid of a density
// in g/ml.
func Pressure(density, depth float64) float64 { return density * gravity * depth / 1000 }

// SeamForce is the force in N that parts two mold halves: density in g/ml, the
// projected area of the cavity in cm2, the depth of that area's centroid in mm.
func SeamForce(density, area, depth float64) float64 {
	return Pressure(density, depth) * area / 10
}

// LiftForce is the weight in N of a volume in ml at a density in g/ml: the
// lift on an upper part by the column of slip that it holds down (see
// Input.UpperLiftML), or the upward push on a sunk body.
func LiftForce(density, ml float64) float64 { return density * ml * gravity / 1000 }

// Flotation is the upward force in N on a body of so many ml and g, wholly
// under a liquid of a density in g/ml; negative when it sinks.
func Flotation(density, ml, mass float64) float64 {
	return LiftForce(density, ml) - mass*gravity/1000
}

// CottleHoop is the whole tension in N in the bands of a round cottle of a
// radius in mm, filled to a height in mm: rho g H^2 r / 2. PerMetre is the
// tension a metre of height at its foot, where it is greatest: p r.
func CottleHoop(density, height, radius float64) (total, perMetre float64) {
	p := Pressure(density, height)
	return p * height * radius / 2000, p * radius
}

// WallForce is the force in N on a flat cottle board of a width in mm filled
// to a height in mm, or on half of a round one as wide as its diameter:
// rho g H^2 W / 2, acting at two thirds of the depth.
func WallForce(density, height, width float64) float64 {
	return Pressure(density, height) * height * width / 2000
}

// BandCount is how many bands hold a force in N when each pulls so many N:
// a band crosses the seam on both sides of the mold, so it holds twice its
// tension. The count is 0 for no force, else not below least.
func BandCount(force, tension, safety float64, least int) int {
	if force <= 0 {
		return 0
	}
	return max(least, int(math.Ceil(safety*force/(2*tension)-1e-9)))
}
