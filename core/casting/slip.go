package casting

// Slip: its dry content by Brongniart's formula, and its volume balance as it
// turns into a wall. Volumes of clay and water are taken to add; the few parts
// in a thousand of deflocculant are left out.

// Water in the measures by which slip is weighed, for Brongniart: g a litre,
// and oz an imperial pint (568.261 ml; a US pint is not the same measure).
// Degrees Twaddell are 200 (SG - 1), from memory.
const (
	WaterGramsPerLitre = 1000.0
	WaterOuncesPerPint = 20.0
	twaddellPerUnit    = 200.0
)

// Brongniart is the dry body in a measure of slip: (P - w) g/(g - 1), where P
// is what the measure weighs full of slip, w full of water, and g the density
// of the dry solids in g/ml. With w = WaterGramsPerLitre it is g a litre, with
// w = WaterOuncesPerPint oz an imperial pint. A. Brongniart, Traité des Arts
// Céramiques, vol. 1 (1854), p. 249; imperial form in Cardew, Pioneer Pottery,
// p. 269.
func Brongniart(weight, water, solidsDensity float64) float64 {
	return (weight - water) * solidsDensity / (solidsDensity - 1)
}

// SolidsVolume is the share of a slip's volume that is solid, 0 to 1:
// (SG - 1)/(g - 1).
func SolidsVolume(slipDensity, solidsDensity float64) float64 {
	return (slipDensity - 1) / (solidsDensity - 1)
}

// SlipWater is the share of a slip's mass that is water, 0 to 1.
func SlipWater(slipDensity, solidsDensity float64) float64 {
	return 1 - SolidsVolume(slipDensity, solidsDensity)*solidsDensity/slipDensity
}

// CastSolidsVolume is the share of the wet cast's volume that is solid, 0 to
// 1: (1/g)/(1/g + m), m the water a dry mass, from the moisture in percent of
// the wet mass. The cast is taken to have no air in it.
func CastSolidsVolume(moisturePercent, solidsDensity float64) float64 {
	m := moisturePercent / (100 - moisturePercent)
	return (1 / solidsDensity) / (1/solidsDensity + m)
}

// WaterPerCastVolume is n, the volume of water that the plaster takes for a
// volume of cast: phi_cast/phi_slip - 1.
func WaterPerCastVolume(slipDensity, solidsDensity, moisturePercent float64) float64 {
	return CastSolidsVolume(moisturePercent, solidsDensity)/SolidsVolume(slipDensity, solidsDensity) - 1
}
