package casting

// Rows for weights, forces and lifting.

var weightRows = []rowSpec{
	{
		Row{GroupWeights, "castVolume", "Wet clay of the cast", 0, "ml", 1,
			"cavity - inside",
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.CastVolume }, nil,
	},
	{
		Row{GroupWeights, "castWet", "Cast, wet from the mold", 0, "g", 1,
			"dry / (1 - moisture)",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.CastWet }, nil,
	},
	{
		Row{GroupWeights, "castDry", "Cast, bone dry", 0, "g", 1,
			"clay × solids by volume × g",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.CastDry }, nil,
	},
	{
		Row{GroupWeights, "castFired", "Cast, fired", 0, "g", 1,
			"dry × (1 - loss on ignition)",
			"clay minerals lose up to 14 %, a body about half that; or as entered", StatusCommon},
		func(f *Figures) float64 { return f.CastFired }, nil,
	},
	{
		Row{GroupWeights, "glaze", "Glaze on it, inside and out", 0, "g", 1,
			"thickness × fired surface × density",
			"density of silicate glass, handbooks", StatusMemory},
		func(f *Figures) float64 { return f.Glaze }, func(f *Figures) bool { return f.Glaze > 0 },
	},
	{
		Row{GroupWeights, "castGlazed", "Cast, fired and glazed", 0, "g", 1,
			"fired + glaze",
			"from the two rows above", StatusDerived},
		func(f *Figures) float64 { return f.CastGlazed }, func(f *Figures) bool { return f.Glaze > 0 },
	},
	{
		Row{GroupWeights, "capacityWet", "Wet cast holds, to the brim", 0, "ml", 1,
			"inside of the cast",
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.CapacityWet }, func(f *Figures) bool { return f.CapacityWet > 0 },
	},
	{
		Row{GroupWeights, "capacityFired", "Fired pot holds, to the brim", 0, "ml", 1,
			"inside × (1 - S)³, less a coat of glaze",
			"from the total shrinkage", StatusDerived},
		func(f *Figures) float64 { return f.CapacityFired }, func(f *Figures) bool { return f.CapacityWet > 0 },
	},
	{
		Row{GroupWeights, "fillWet", "Wet cast holds, to the fill line", 0, "ml", 1,
			"inside to the line",
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.FillWet }, func(f *Figures) bool { return f.FillWet > 0 },
	},
	{
		Row{GroupWeights, "fillFired", "Fired pot holds, to the fill line", 0, "ml", 1,
			"inside to the line × (1 - S)³, less its share of the coat of glaze",
			"from the total shrinkage", StatusDerived},
		func(f *Figures) float64 { return f.FillFired }, func(f *Figures) bool { return f.FillWet > 0 },
	},
}

var forceRows = []rowSpec{
	{
		Row{GroupForces, "liftForce", "Lift on the upper part when full", 0, "N", 1,
			"ρ g × slip that would stand over its pot surface up to the fill level",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.LiftForce }, func(f *Figures) bool { return f.LiftForce > 0 },
	},
	{
		Row{GroupForces, "liftNet", "The same, less the dry weight of the upper part", 0, "N", 1,
			"lift - weight; below 0 it stays down of itself",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.LiftNet }, func(f *Figures) bool { return f.LiftForce > 0 },
	},
	{
		Row{GroupForces, "slipPressure", "Pressure of the slip at the middle of the seam", 0, "kPa", 2,
			"ρ g h",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.SlipPressure }, func(f *Figures) bool { return f.SeamForce > 0 },
	},
	{
		Row{GroupForces, "seamForce", "Force parting the side parts when full", 0, "N", 1,
			"ρ g h A, A the cavity as seen through the seam, h the depth of its middle",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.SeamForce }, func(f *Figures) bool { return f.SeamForce > 0 },
	},
	{
		Row{GroupForces, "bandForce", "Force the bands must hold", 0, "N", 1,
			"the greater of lift and parting force, no weight counted",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.BandForce }, func(f *Figures) bool { return f.BandForce > 0 },
	},
	{
		Row{GroupForces, "bandsRound", "Bands round the side parts", 0, "", 0,
			"safety × force / (2 × pull of a band), at least 2",
			"a band of 50 N, safety 2; or as entered", StatusCommon},
		func(f *Figures) float64 { return float64(f.BandsRound) }, func(f *Figures) bool { return f.BandsRound > 0 },
	},
	{
		Row{GroupForces, "bandsOver", "Bands over the upper part", 0, "", 0,
			"safety × force / (2 × pull of a band), at least 1",
			"a band of 50 N, safety 2; or as entered", StatusCommon},
		func(f *Figures) float64 { return float64(f.BandsOver) }, func(f *Figures) bool { return f.BandsOver > 0 },
	},
	{
		Row{GroupForces, "cottlePressure", "Pressure of wet plaster at the foot of the cottle", 0, "kPa", 2,
			"ρ g h",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottlePressure }, func(f *Figures) bool { return f.CottlePressure > 0 },
	},
	{
		Row{GroupForces, "cottleForce", "Force parting the cottle down its middle", 0, "N", 1,
			"ρ g H² r",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottleForce }, func(f *Figures) bool { return f.CottleForce > 0 },
	},
	{
		Row{GroupForces, "cottleHoop", "Tension in all bands round the cottle together", 0, "N", 1,
			"ρ g H² r / 2",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottleHoop }, func(f *Figures) bool { return f.CottleHoop > 0 },
	},
	{
		Row{GroupForces, "cottleHoopFoot", "The same at its foot, a metre of height", 0, "N/m", 0,
			"ρ g H r",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.CottleHoopFoot }, func(f *Figures) bool { return f.CottleHoop > 0 },
	},
	{
		Row{GroupForces, "flotation", "Push that floats the positive, if plaster gets under it", 0, "N", 1,
			"(ρ V - m) g",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.Flotation }, func(f *Figures) bool { return f.Flotation > 0 },
	},
	{
		Row{GroupForces, "flotationMass", "Weight that holds it down", 0, "g", 0,
			"ρ V - m",
			srcHydro, StatusDerived},
		func(f *Figures) float64 { return f.FlotationMass }, func(f *Figures) bool { return f.Flotation > 0 },
	},
}

var liftingRows = []rowSpec{
	{
		Row{GroupLifting, "liftFull", "Full mold, as poured, with slip", 0, "kg", 1,
			"poured mold + slip to fill",
			"from the weights above", StatusDerived},
		func(f *Figures) float64 { return f.LiftFull }, nil,
	},
	{
		Row{GroupLifting, "liftPart", "Heaviest part, as poured", 0, "kg", 1,
			"plaster + water",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.LiftPart }, nil,
	},
	{
		Row{GroupLifting, "liftLimit", "Reference weight for this lift", 0, "kg", 1,
			"23 × 25/H × (1 - 0.003 |V - 75|) × (0.82 + 4.5/D) × (1 - 0.0032 A)",
			srcNIOSH, StatusPublished},
		func(f *Figures) float64 { return f.LiftLimit }, nil,
	},
	{
		Row{GroupLifting, "liftingIndex", "Full mold against that reference", 0, "×", 2,
			"weight / reference; above 1 get help or split the lift",
			srcNIOSH, StatusPublished},
		func(f *Figures) float64 { return f.LiftingIndex }, nil,
	},
}
