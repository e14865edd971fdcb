package casting

import "math"

// Plaster and water from first principles: the mix takes the absolute volume
// of its hemihydrate and its water, and keeps that volume as it sets. Makers'
// published wet densities lie 0.6 to 1.6 percent below (entrained air,
// impurity), so a weight by theory runs a little over, on the safe side.
// Consistency is parts of water to 100 of plaster by weight; c below is that
// over 100.

// Densities in kg/l (hemihydrate 2.75, from memory: CRC Handbook gives 2.73 to
// 2.76; dihydrate 2.32: constants of the VCCTL cement-hydration code) and
// molar masses in g/mol from the standard atomic weights
// (Ca 40.078, S 32.06, O 15.999, H 1.008).
const (
	hemihydrateDensity = 2.75
	dihydrateDensity   = 2.32

	molarWater       = 2*1.008 + 15.999
	molarAnhydrite   = 40.078 + 32.06 + 4*15.999
	molarHemihydrate = molarAnhydrite + molarWater/2
	molarDihydrate   = molarAnhydrite + 2*molarWater
)

// HydrationWater is the water that sets, g a g of plaster:
// CaSO4 1/2H2O + 3/2 H2O -> CaSO4 2H2O. All water above it must dry out.
const HydrationWater = 1.5 * molarWater / molarHemihydrate

// SetMass is the mass of dry set gypsum a mass of plaster.
const SetMass = molarDihydrate / molarHemihydrate

// MixVolume is the volume of mix that a kg of plaster makes at a consistency,
// in litres: 1/rho + c.
func MixVolume(consistency float64) float64 {
	return 1/hemihydrateDensity + consistency/100
}

// WetDensity is the density of the mix in g/ml by theory, (1 + c)/(1/rho + c).
func WetDensity(consistency float64) float64 {
	return (1 + consistency/100) / MixVolume(consistency)
}

// DryDensity is the density of the dried plaster in g/ml by theory: SetMass
// over the same volume.
func DryDensity(consistency float64) float64 { return SetMass / MixVolume(consistency) }

// Porosity is the share of a dried plaster's volume that is pore, 0 to 1.
func Porosity(consistency float64) float64 {
	return 1 - DryDensity(consistency)/dihydrateDensity
}

// Mix is what goes into a volume of plaster and what comes of it, in g.
type Mix struct {
	Plaster   float64 `json:"plaster"`
	Water     float64 `json:"water"`
	Wet       float64 `json:"wet"`       // as poured
	Dry       float64 `json:"dry"`       // when all free water is gone
	FreeWater float64 `json:"freeWater"` // to dry out
}

// MixFor is the mix of a volume in ml at a consistency, at a wet density in
// g/ml: WetDensity, or the one on the maker's data sheet.
func MixFor(ml, consistency, wetDensity float64) Mix {
	c := consistency / 100
	p := ml * wetDensity / (1 + c)
	return Mix{
		Plaster: p, Water: c * p, Wet: (1 + c) * p,
		Dry: SetMass * p, FreeWater: (c - HydrationWater) * p,
	}
}

// DataSheet is a plaster as its maker publishes it. Densities are g/ml,
// Absorption percent of the dry mass (0 where the sheet gives none),
// SettingExpansion percent linear.
type DataSheet struct {
	Consistency      float64
	WetDensity       float64
	DryDensity       float64
	Absorption       float64
	SettingExpansion float64
	Source           string
}

const lbPerCubicFoot = 0.01601846 // g/ml

// dataSheets are the published grades for slip-casting molds, least water
// first.
var dataSheets = [...]DataSheet{
	{65, 100.0 * lbPerCubicFoot, 72.5 * lbPerCubicFoot, 0, 0.22, "maker's table for casting plaster, consistency 65 (plaster.com/mixing.html)"},
	{70, 99.0 * lbPerCubicFoot, 69.0 * lbPerCubicFoot, 36, 0.21, "maker's data sheet, No. 1 pottery plaster, consistency 70 (US Gypsum)"},
	{74, 97.6 * lbPerCubicFoot, 66.0 * lbPerCubicFoot, 41, 0.19, "maker's data sheet IG1365, pottery plaster, consistency 74 (US Gypsum)"},
}

// Published is the data sheet of the grade at a consistency, if one was
// published at that very consistency; grades differ too much to read between
// them.
func Published(consistency float64) (DataSheet, bool) {
	for _, s := range dataSheets {
		if s.Consistency == consistency {
			return s, true
		}
	}
	return DataSheet{}, false
}

// AbsorptionPercent is the water that dry plaster of a consistency takes up,
// percent of its dry mass. It is 36 at 70 and 41 at 74, as published; between
// and beyond, the share of the pores that fills is read off those two (77 and
// 82 percent) and the pores follow from the theory.
func AbsorptionPercent(consistency float64) float64 {
	lo, hi := dataSheets[1], dataSheets[2]
	share := func(s DataSheet) float64 { return s.Absorption / poreWater(s.Consistency) }
	at := math.Min(math.Max((consistency-lo.Consistency)/(hi.Consistency-lo.Consistency), 0), 1)
	return (share(lo)*(1-at) + share(hi)*at) * poreWater(consistency)
}

// poreWater is the water that would fill every pore, percent of the dry mass.
func poreWater(consistency float64) float64 {
	return 100 * Porosity(consistency) / DryDensity(consistency)
}

// SetRise is by how many K a thick mass of plaster can warm as it sets, low
// and high: the heat of hydration, 17.2 to 19 kJ a mol of hemihydrate, over
// the heat capacity of gypsum (1.09 J/gK) and free water (4.18), no heat lost.
// From memory: Lewry & Williamson, J. Mater. Sci. 29 (1994) 5279; Wirsching in
// Ullmann's. A court was told of 60 C in a large batch.
func SetRise(consistency float64) (low, high float64) {
	capacity := SetMass*1.09 + (consistency/100-HydrationWater)*4.18
	return 17200 / molarHemihydrate / capacity, 19000 / molarHemihydrate / capacity
}

// Batch is what to mix for one part: Count equal buckets, each of the same
// mix, poured one onto the other while wet.
type Batch struct {
	Part    string  `json:"part"`
	Count   int     `json:"count"`
	ML      float64 `json:"ml"`      // mix in each bucket
	Water   float64 `json:"water"`   // g, weighed first
	Plaster float64 `json:"plaster"` // g, sifted into the water
}

// Batches are the buckets for each part in the order of pouring. A part has
// buckets of its own, since the one before must set before it is poured.
// Volumes are ml; wastePercent is mixed on top.
func Batches(parts []Part, consistency, wastePercent, bucketML, bucketFillPercent float64) []Batch {
	batches := make([]Batch, 0, len(parts))
	room := bucketML * bucketFillPercent / 100
	for _, p := range parts {
		ml := p.ML * (1 + wastePercent/100)
		// A hair's breadth over a full bucket is no reason for another one.
		n := math.Max(1, math.Ceil(ml/room-1e-9))
		m := MixFor(ml/n, consistency, WetDensity(consistency))
		batches = append(batches, Batch{Part: p.Name, Count: int(n), ML: ml / n, Water: m.Water, Plaster: m.Plaster})
	}
	return batches
}
