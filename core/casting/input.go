// Package casting holds every figure that a maker weighs, times or lifts:
// shrinkage, plaster and water, slip, the growing wall, the mold's water,
// weights and forces. It is formulas only: volumes, areas and heads are handed
// in by whoever knows the geometry. Each figure carries its formula, its
// source and how far it may be trusted (see Rows).
//
// Lengths are mm, areas cm2, volumes ml, masses g, times min, forces N,
// densities g/ml, shares percent, unless a name says otherwise.
package casting

import "moldwright/core/job"

// This file is what Compute is given: the maker's settings and the geometry of
// one mold, all at mold size (wet).

// Input is one mold and its cast. Areas and volumes that are not known may be
// left 0; the figures that rest on them are then 0 and have no row.
type Input struct {
	Clay     job.Clay
	Plaster  job.Plaster
	Settings Settings // start from DefaultSettings

	// CavityML is the volume within the pot's outline up to the trim line,
	// InsideML that within the wet cast to the brim (0 for a form cast solid
	// without a hollow), so that the wet clay is CavityML - InsideML.
	CavityML, InsideML float64
	// InsideFillML is the inside up to the fill line; 0 if there is none.
	InsideFillML float64
	// SpareML is the volume of the spare above the trim line,
	// SpareContactCM2 its wall on the plaster.
	SpareML, SpareContactCM2 float64
	// FillAreaCM2 is the free surface of the slip in the full mold, at the top
	// of the spare or at the rim.
	FillAreaCM2 float64
	// ContactCM2 is the area of the cavity wall that touches plaster,
	// InsideAreaCM2 that of the inside of the wet cast, OutsideCM2 the outer
	// surface of the closed mold, open to the air.
	ContactCM2, InsideAreaCM2, OutsideCM2 float64
	// CornerDeg is the sharpest angle, measured in the slip, at which two
	// plaster walls meet; 0 is taken as a right angle.
	CornerDeg float64

	// Solid is true for a pot cast between two plaster faces (a core, or no
	// hollow at all). SolidWallMM is then its thickest wall; 0 takes
	// Clay.Wall.
	Solid       bool
	SolidWallMM float64

	// Parts are the plaster parts in the order of pouring.
	Parts []Part

	// UpperLiftML is the integral of (zFill - z) n_z over the pot surface of
	// the upper part, zFill the level of the full slip (top of the spare) and
	// n the pot's outward unit normal: the volume of the column of slip that
	// would stand between that surface and the fill level. Slip presses on
	// the plaster along n with rho g (zFill - z), so rho g UpperLiftML is the
	// whole upward force.
	UpperLiftML float64
	// SeamAreaCM2 is the area of the cavity projected on the plane of the
	// side seam that is pressed hardest, SeamHeadMM the depth of that area's
	// centroid below the fill level. 0 without side parts.
	SeamAreaCM2, SeamHeadMM float64

	// PositiveML is the outer volume of the printed positive that stands in
	// the plaster, PositiveMassG what it weighs (0 is the worst case).
	PositiveML, PositiveMassG float64
	// CottleHeightMM is the depth of wet plaster against the cottle,
	// CottleRadiusMM the cottle's inner radius.
	CottleHeightMM, CottleRadiusMM float64
}

// UpperName is the name of the part that UpperLiftML lifts.
const UpperName = "upper"

// Part is one plaster part: its name as the plan has it, its volume, and the
// area of the cavity wall that it forms.
type Part struct {
	Name       string
	ML         float64
	ContactCM2 float64
}

// CastWallML is the volume of the wet clay, ml.
func (in *Input) CastWallML() float64 { return in.CavityML - in.InsideML }

// Settings are the maker's own measurements and habits. Each has a default
// that works until it has been measured.
type Settings struct {
	// CastMoisture is the water in the cast when the mold is drained, percent
	// of the wet mass. Default 20: from memory, Ryan & Radford, Whitewares
	// (1987), and Reed, Principles of Ceramics Processing (20 to 22).
	CastMoisture float64 `json:"castMoisture"`
	// LossOnIgnition is the mass the dry clay loses in firing, percent.
	// Default 7: pure kaolinite loses 13.96 (2 H2O of Al2O3 2SiO2 2H2O), and a
	// body is about half clay; common practice, no source.
	LossOnIgnition float64 `json:"lossOnIgnition"`
	// TestCasts are further trials beside Clay.TestCast; the casting rate is
	// fitted to all of them. Default none.
	TestCasts []job.TestCast `json:"testCasts"`
	// Minutes is the time for which the wall is asked. Default 15.
	Minutes float64 `json:"minutes"`
	// LaterCastSlowdown is how much longer each further cast of a day takes,
	// percent of the first one's time. Default 100/6: a supplier's published
	// 3, 3.5 and 4 min for the same wall (hot-clay.com, terracotta casting
	// slip).
	LaterCastSlowdown float64 `json:"laterCastSlowdown"`
	// Waste is plaster mixed beyond the volume of the parts, percent. Default
	// 10: 5 to 10 is common practice, no source.
	Waste float64 `json:"waste"`
	// Bucket is the mixing bucket, ml, and BucketFill how full it may be,
	// percent. Defaults 10,000 and 75: common practice, no source.
	Bucket     float64 `json:"bucket"`
	BucketFill float64 `json:"bucketFill"`
	// PublishedWetDensity is the wet density on the plaster maker's data
	// sheet, g/ml. Default 0: the published table where it has this
	// consistency, else none.
	PublishedWetDensity float64 `json:"publishedWetDensity"`
	// Absorption is the water that dry plaster takes up, percent of its dry
	// mass, from the data sheet. Default 0: see AbsorptionPercent.
	Absorption float64 `json:"absorption"`
	// SettingExpansion is the linear expansion of the plaster as it sets,
	// percent, for which the positive is to be made smaller. Default 0, no
	// correction: about 0.2 is less than the doubt in any fired shrinkage.
	SettingExpansion float64 `json:"settingExpansion"`
	// HalfRateWater is the free water, percent of the dry mass, at which the
	// mold takes up water half as fast. Default 5: US Gypsum IG526.
	HalfRateWater float64 `json:"halfRateWater"`
	// DryingRate is how fast a mold dries, g of water a cm2 a minute. Default
	// 0.01, a typical clay shop: US Gypsum IG526.
	DryingRate float64 `json:"dryingRate"`
	// Glaze is the thickness of the fired glaze, mm, inside and out, and
	// GlazeDensity its density. Defaults 0 (none) and 2.4: from memory,
	// handbook densities of silicate glass.
	Glaze        float64 `json:"glaze"`
	GlazeDensity float64 `json:"glazeDensity"`
	// BandTension is the pull in one stretched band, N, and BandSafety by how
	// much the bands must outdo the slip. Defaults 50 and 2: common practice,
	// no source; hang a weight on a band to measure it.
	BandTension float64 `json:"bandTension"`
	BandSafety  float64 `json:"bandSafety"`
	// Reach, Hands and Travel are cm and Twist degrees, the lift as the NIOSH
	// equation has it: hands out from the ankles, hands above the floor,
	// height lifted, turn of the body. Defaults 40, 75, 25, 0: a mold lifted
	// a little from a bench.
	Reach  float64 `json:"reach"`
	Hands  float64 `json:"hands"`
	Travel float64 `json:"travel"`
	Twist  float64 `json:"twist"`
}

// DefaultSettings are the settings of a maker who has measured nothing yet.
func DefaultSettings() Settings {
	return Settings{
		CastMoisture: 20, LossOnIgnition: 7, Minutes: 15, LaterCastSlowdown: 100.0 / 6,
		Waste: 10, Bucket: 10000, BucketFill: 75,
		HalfRateWater: 5, DryingRate: 0.01, GlazeDensity: 2.4,
		BandTension: 50, BandSafety: 2,
		Reach: 40, Hands: 75, Travel: 25,
	}
}
