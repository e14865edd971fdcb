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
	Settings job.Casting // start from job.DefaultCasting

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
