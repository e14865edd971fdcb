package casting

import "math"

// The revised NIOSH lifting equation, for one even, two-handed lift now and
// then (frequency and coupling multipliers 1): a reference for thought, not a
// licence. Load constant and the H, V and D multipliers as given by CCOHS; the
// asymmetry multiplier and the limits of range from memory, Waters,
// Putz-Anderson & Garg, DHHS (NIOSH) 94-110.

// RWL is the recommended weight limit in kg: reach H of the hands out from the
// ankles, hands V above the floor and travel D in cm, twist A in degrees.
// It is 0 beyond H 63, V 175, D 175 or A 135, where nothing should be lifted.
func RWL(reach, hands, travel, twist float64) float64 {
	if reach > 63 || hands > 175 || travel > 175 || twist > 135 {
		return 0
	}
	const loadConstant = 23 // kg
	hm := 25 / math.Max(reach, 25)
	vm := 1 - 0.003*math.Abs(hands-75)
	dm := 0.82 + 4.5/math.Max(travel, 25)
	am := 1 - 0.0032*twist
	return loadConstant * hm * vm * dm * am
}
