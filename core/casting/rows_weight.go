package casting

import "moldwright/core/words"

// Rows for weights, forces and lifting.

var weightRows = []rowSpec{
	{
		Row{GroupWeights, "castVolume", words.Say("Wet clay of the cast"), 0, words.Plain("ml"), 1,
			words.Say("cavity − inside"),
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.CastVolume }, nil,
	},
	{
		Row{GroupWeights, "castWet", words.Say("Cast, wet from the mold"), 0, words.Plain("g"), 1,
			words.Say("dry / (1 − moisture)"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.CastWet }, nil,
	},
	{
		Row{GroupWeights, "castDry", words.Say("Cast, bone dry"), 0, words.Plain("g"), 1,
			words.Say("clay × solids by volume × g"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.CastDry }, nil,
	},
	{
		Row{GroupWeights, "castFired", words.Say("Cast, fired"), 0, words.Plain("g"), 1,
			words.Say("dry × (1 − loss on ignition)"),
			words.Say("clay minerals lose up to 14 %%, a body about half that; or as entered"), StatusCommon},
		func(f *Figures) float64 { return f.CastFired }, nil,
	},
	{
		Row{GroupWeights, "glaze", words.Say("Glaze on it, inside and out"), 0, words.Plain("g"), 1,
			words.Say("thickness × fired surface × density"),
			words.Say("density of silicate glass, handbooks"), StatusMemory},
		func(f *Figures) float64 { return f.Glaze }, func(f *Figures) bool { return f.Glaze > 0 },
	},
	{
		Row{GroupWeights, "castGlazed", words.Say("Cast, fired and glazed"), 0, words.Plain("g"), 1,
			words.Say("fired + glaze"),
			words.Say("from the two rows above"), StatusDerived},
		func(f *Figures) float64 { return f.CastGlazed }, func(f *Figures) bool { return f.Glaze > 0 },
	},
	{
		Row{GroupWeights, "capacityWet", words.Say("Wet cast holds, to the brim"), 0, words.Plain("ml"), 1,
			words.Say("inside of the cast"),
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.CapacityWet }, func(f *Figures) bool { return f.CapacityWet > 0 },
	},
	{
		Row{GroupWeights, "capacityFired", words.Say("Fired pot holds, to the brim"), 0, words.Plain("ml"), 1,
			words.Say("inside × (1 − S)³, less a coat of glaze"),
			words.Say("from the total shrinkage"), StatusDerived},
		func(f *Figures) float64 { return f.CapacityFired }, func(f *Figures) bool { return f.CapacityWet > 0 },
	},
	{
		Row{GroupWeights, "fillWet", words.Say("Wet cast holds, to the fill line"), 0, words.Plain("ml"), 1,
			words.Say("inside to the line"),
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.FillWet }, func(f *Figures) bool { return f.FillWet > 0 },
	},
	{
		Row{GroupWeights, "fillFired", words.Say("Fired pot holds, to the fill line"), 0, words.Plain("ml"), 1,
			words.Say("inside to the line × (1 − S)³, less its share of the coat of glaze"),
			words.Say("from the total shrinkage"), StatusDerived},
		func(f *Figures) float64 { return f.FillFired }, func(f *Figures) bool { return f.FillWet > 0 },
	},
}

var forceRows = []rowSpec{
	{
		Row{GroupForces, "liftForce", words.Say("Lift on the upper part when full"), 0, words.Plain("N"), 1,
			words.Say("ρ g × slip that would stand over its pot surface up to the fill level"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.LiftForce }, func(f *Figures) bool { return f.LiftForce > 0 },
	},
	{
		Row{GroupForces, "liftNet", words.Say("The same, less the dry weight of the upper part"), 0, words.Plain("N"), 1,
			words.Say("lift − weight; below 0 it stays down of itself"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.LiftNet }, func(f *Figures) bool { return f.LiftForce > 0 },
	},
	{
		Row{GroupForces, "slipPressure", words.Say("Pressure of the slip at the middle of the seam"), 0, words.Plain("kPa"), 2,
			words.Plain("ρ g h"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.SlipPressure }, func(f *Figures) bool { return f.SeamForce > 0 },
	},
	{
		Row{GroupForces, "seamForce", words.Say("Force parting the side parts when full"), 0, words.Plain("N"), 1,
			words.Say("ρ g h A, A the cavity as seen through the seam, h the depth of its middle"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.SeamForce }, func(f *Figures) bool { return f.SeamForce > 0 },
	},
	{
		Row{GroupForces, "bandForce", words.Say("Force the bands must hold"), 0, words.Plain("N"), 1,
			words.Say("the greater of lift and parting force, no weight counted"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.BandForce }, func(f *Figures) bool { return f.BandForce > 0 },
	},
	{
		Row{GroupForces, "bandsRound", words.Say("Bands round the side parts"), 0, words.Text{}, 0,
			words.Say("safety × force / (2 × pull of a band), at least 2"),
			words.Say("a band of 50 N, safety 2; or as entered"), StatusCommon},
		func(f *Figures) float64 { return float64(f.BandsRound) }, func(f *Figures) bool { return f.BandsRound > 0 },
	},
	{
		Row{GroupForces, "bandsOver", words.Say("Bands over the upper part"), 0, words.Text{}, 0,
			words.Say("safety × force / (2 × pull of a band), at least 1"),
			words.Say("a band of 50 N, safety 2; or as entered"), StatusCommon},
		func(f *Figures) float64 { return float64(f.BandsOver) }, func(f *Figures) bool { return f.BandsOver > 0 },
	},
	{
		Row{GroupForces, "cottlePressure", words.Say("Pressure of wet plaster at the foot of the cottle"), 0, words.Plain("kPa"), 2,
			words.Plain("ρ g h"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottlePressure }, func(f *Figures) bool { return f.CottlePressure > 0 },
	},
	{
		Row{GroupForces, "cottleForce", words.Say("Force parting the cottle down its middle"), 0, words.Plain("N"), 1,
			words.Plain("ρ g H² r"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottleForce }, func(f *Figures) bool { return f.CottleForce > 0 },
	},
	{
		Row{GroupForces, "cottleHoop", words.Say("Tension in all bands round the cottle together"), 0, words.Plain("N"), 1,
			words.Plain("ρ g H² r / 2"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottleHoop }, func(f *Figures) bool { return f.CottleHoop > 0 },
	},
	{
		Row{GroupForces, "cottleHoopFoot", words.Say("The same at its foot, per metre of height"), 0, words.Plain("N/m"), 0,
			words.Plain("ρ g H r"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottleHoopFoot }, func(f *Figures) bool { return f.CottleHoop > 0 },
	},
	{
		Row{GroupForces, "flotation", words.Say("Push that floats the positive, if plaster gets under it"), 0, words.Plain("N"), 1,
			words.Plain("(ρ V − m) g"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.Flotation }, func(f *Figures) bool { return f.Flotation > 0 },
	},
	{
		Row{GroupForces, "flotationMass", words.Say("Weight that holds it down"), 0, words.Plain("g"), 0,
			words.Plain("ρ V − m"),
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.FlotationMass }, func(f *Figures) bool { return f.Flotation > 0 },
	},
}

var liftingRows = []rowSpec{
	{
		Row{GroupLifting, "liftFull", words.Say("Full mold, as poured, with slip"), 0, words.Plain("kg"), 1,
			words.Say("poured mold + slip to fill"),
			words.Say("from the weights above"), StatusDerived},
		func(f *Figures) float64 { return f.LiftFull }, nil,
	},
	{
		Row{GroupLifting, "liftPart", words.Say("Heaviest part, as poured"), 0, words.Plain("kg"), 1,
			words.Say("plaster + water"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.LiftPart }, nil,
	},
	{
		Row{GroupLifting, "liftLimit", words.Say("Reference weight for this lift"), 0, words.Plain("kg"), 1,
			words.Say("23 × 25/H × (1 − 0.003 |V − 75|) × (0.82 + 4.5/D) × (1 − 0.0032 A)"),
			srcNIOSH, StatusPublished},
		func(f *Figures) float64 { return f.LiftLimit }, nil,
	},
	{
		Row{GroupLifting, "liftingIndex", words.Say("Full mold against that reference"), 0, words.Plain("×"), 2,
			words.Say("weight / reference; above 1 get help or split the lift"),
			srcNIOSH, StatusPublished},
		func(f *Figures) float64 { return f.LiftingIndex }, nil,
	},
}
