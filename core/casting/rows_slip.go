package casting

// Rows for slip, the growing wall and the mold's water.

var slipRows = []rowSpec{
	{
		Row{GroupSlip, "litreWeight", "A litre of slip weighs", 0, "g", 0,
			"1000 × density",
			srcMeasure, StatusDerived},
		func(f *Figures) float64 { return f.LitreWeight }, nil,
	},
	{
		Row{GroupSlip, "pintWeight", "An imperial pint of slip weighs", 0, "oz", 1,
			"20 × density (a pint of water is 20 oz)",
			srcMeasure, StatusDerived},
		func(f *Figures) float64 { return f.PintWeight }, nil,
	},
	{
		Row{GroupSlip, "twaddell", "Density in degrees Twaddell", 0, "°Tw", 0,
			"200 (density - 1)",
			"definition of the scale", StatusMemory},
		func(f *Figures) float64 { return f.Twaddell }, nil,
	},
	{
		Row{GroupSlip, "slipDryPerLitre", "Dry body in a litre of slip", 0, "g", 0,
			"(P - 1000) g / (g - 1), P the litre weight, g the density of the solids",
			srcBrong, StatusPublished},
		func(f *Figures) float64 { return f.SlipDryPerLitre }, nil,
	},
	{
		Row{GroupSlip, "slipDryPerPint", "Dry body in an imperial pint of slip", 0, "oz", 2,
			"(P - 20) g / (g - 1), P the pint weight",
			srcBrong, StatusPublished},
		func(f *Figures) float64 { return f.SlipDryPerPint }, nil,
	},
	{
		Row{GroupSlip, "slipWaterLitre", "Water in a litre of slip", 0, "g", 0,
			"litre weight - dry body",
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipWaterLitre }, nil,
	},
	{
		Row{GroupSlip, "slipWaterShare", "Water in the slip", 0, "% of mass", 1,
			"1 - dry body / litre weight",
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipWaterShare }, nil,
	},
	{
		Row{GroupSlip, "slipSolidsVolume", "Solids in the slip", 0, "% of volume", 1,
			"(density - 1) / (g - 1)",
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipSolidsVolume }, nil,
	},
	{
		Row{GroupSlip, "slipFill", "Slip to fill", 0, "ml", 0,
			"cavity + spare",
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.SlipFill }, nil,
	},
	{
		Row{GroupSlip, "slipFillMass", "Slip to fill", 0, "g", 0,
			"volume × density",
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.SlipFillMass }, nil,
	},
	{
		Row{GroupSlip, "slipFillDry", "Dry body in that slip", 0, "g", 0,
			"volume × dry body of a litre",
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipFillDry }, nil,
	},
	{
		Row{GroupSlip, "slipFillWater", "Water in that slip", 0, "g", 0,
			"slip - dry body",
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipFillWater }, nil,
	},
	{
		Row{GroupSlip, "slipTaken", "Slip taken by the wall", 0, "ml", 1,
			"wall × (1 + n), n the water that leaves each volume of cast",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipTaken }, nil,
	},
	{
		Row{GroupSlip, "slipTakenMass", "Slip taken by the wall", 0, "g", 1,
			"volume × density",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipTakenMass }, nil,
	},
	{
		Row{GroupSlip, "spareTaken", "Slip taken by the wall of the spare, trimmed off (estimate)", 0, "ml", 0,
			"spare's surface × wall × (1 + n)",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SpareTaken }, func(f *Figures) bool { return f.SpareTaken > 0 },
	},
	{
		Row{GroupSlip, "levelDropVolume", "Fall of the slip while it stands", 0, "ml", 1,
			"(wall + wall of the spare) × n",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.LevelDropVolume }, nil,
	},
	{
		Row{GroupSlip, "levelDrop", "Fall of the level (estimate)", 0, "mm", 1,
			"volume / surface at the top",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.LevelDrop }, func(f *Figures) bool { return f.LevelDrop > 0 },
	},
	{
		Row{GroupSlip, "slipTopUp", "Slip to top up so that the rim stays covered", 0, "ml", 0,
			"fall - slip in the spare, if more than nothing",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipTopUp }, func(f *Figures) bool { return f.SlipTopUp > 0 },
	},
	{
		Row{GroupSlip, "slipReturned", "Slip left to return", 0, "ml", 0,
			"filled + topped up - taken",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipReturned }, nil,
	},
}

var wallRows = []rowSpec{
	{
		Row{GroupWall, "castingRate", "Casting rate k", 0, "mm²/min", 2,
			"L² / t of the test cast; of several, least squares of L on the root of t",
			srcRoot, StatusPublished},
		func(f *Figures) float64 { return f.CastingRate }, nil,
	},
	{
		Row{GroupWall, "castingRateLow", "Slowest of the test casts", 0, "mm²/min", 2,
			"least L² / t",
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.CastingRateLow }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "castingRateHigh", "Fastest of the test casts", 0, "mm²/min", 2,
			"greatest L² / t",
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.CastingRateHigh }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "testSpread", "Spread of the test casts about the law", 0, "mm", 2,
			"standard deviation of L - root(k t), on n - 1",
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.TestSpread }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "minutes", "Time for the wanted wall", 0, "min", 1,
			"L² / k; between two plaster faces (L/2)² / k",
			srcRoot, StatusPublished},
		func(f *Figures) float64 { return f.Minutes }, nil,
	},
	{
		Row{GroupWall, "minutesLow", "The same, by the fastest test", 0, "min", 1,
			"L² / k",
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.MinutesLow }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "minutesHigh", "The same, by the slowest test", 0, "min", 1,
			"L² / k",
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.MinutesHigh }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "wallMinutes", "Time asked about", 0, "min", 0,
			"as entered",
			srcMeasure, StatusDerived},
		func(f *Figures) float64 { return f.WallMinutes }, nil,
	},
	{
		Row{GroupWall, "wallAfter", "Wall after that time", 0, "mm", 1,
			"root(k t)",
			srcRoot, StatusPublished},
		func(f *Figures) float64 { return f.WallAfter }, nil,
	},
	{
		Row{GroupWall, "lastMinutes", "Time for the day's last cast listed", 0, "min", 1,
			"t (1 + (n - 1) × slowing)",
			"a supplier's published 3, 3.5 and 4 min for one wall (hot-clay.com, terracotta casting slip); or the slowing entered", StatusPublished},
		func(f *Figures) float64 { return f.LastMinutes }, func(f *Figures) bool { return len(f.LaterCast) > 1 },
	},
	{
		Row{GroupWall, "cornerAngle", "Sharpest corner between two plaster walls", 0, "°", 0,
			"a right angle where none is known",
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.CornerAngle }, nil,
	},
	{
		Row{GroupWall, "cornerWall", "Wall in that corner (estimate)", 0, "mm", 1,
			"L / sin(angle / 2): two layers that meet; in truth rounder and somewhat thicker",
			"geometry of two equal layers", StatusDerived},
		func(f *Figures) float64 { return f.CornerWall }, nil,
	},
}

var waterRows = []rowSpec{
	{
		Row{GroupWater, "castSolidsVolume", "Solids in the fresh cast", 0, "% of volume", 1,
			"(1/g) / (1/g + m), m water by dry mass",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.CastSolidsVolume }, nil,
	},
	{
		Row{GroupWater, "waterPerCastVolume", "Water that leaves each ml of cast", 0, "ml", 3,
			"n = solids in cast / solids in slip - 1",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.WaterPerML }, nil,
	},
	{
		Row{GroupWater, "waterPerArea", "Water that enters each cm² of plaster", 0, "g", 3,
			"n L",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.WaterPerCM2 }, nil,
	},
	{
		Row{GroupWater, "waterPerCast", "Water the mold takes at each cast", 0, "g", 1,
			"n × clay of cast and spare",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.WaterPerCast }, nil,
	},
	{
		Row{GroupWater, "moldRise", "Rise of the mold's water at each cast", 0, "% of dry mass", 2,
			"water / dry mold",
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.MoldRise }, nil,
	},
	{
		Row{GroupWater, "absorption", "What dry plaster takes up", 0, "% of dry mass", 1,
			"36 at consistency 70, 41 at 74; elsewhere by the share of the pores that fills",
			"plaster maker's data sheets (US Gypsum), taken as percent of dry mass; or as entered", StatusPublished},
		func(f *Figures) float64 { return f.Absorption }, nil,
	},
	{
		Row{GroupWater, "moldCapacity", "What the dry mold can take up", 0, "g", 0,
			"absorption × dry mold",
			"plaster maker's data sheets (US Gypsum)", StatusPublished},
		func(f *Figures) float64 { return f.MoldCapacity }, nil,
	},
	{
		Row{GroupWater, "castsToFull", "Casts until the mold is full, no drying", 0, "", 1,
			"capacity / water of a cast, the whole mold wetting evenly",
			"from the two rows above", StatusDerived},
		func(f *Figures) float64 { return f.CastsToFull }, nil,
	},
	{
		Row{GroupWater, "castsToHalfRate", "Casts until the mold draws half as fast", 0, "", 1,
			"5 % of the dry part / its water of a cast, for the part that wets first",
			srcIG526, StatusPublished},
		func(f *Figures) float64 { return f.CastsToHalfRate }, nil,
	},
	{
		Row{GroupWater, "castsPerDay", "Casts in a day from a dry mold", 0, "", 0,
			"the row above, rounded down, at least 1; studios make 1 to 3",
			srcIG526, StatusPublished},
		func(f *Figures) float64 { return float64(f.CastsPerDay) }, nil,
	},
	{
		Row{GroupWater, "dryingBetween", "Drying between casts, at the very least", 0, "min", 0,
			"water of a cast / (rate × open surface); the inside dries far slower: overnight is better",
			srcIG526 + " (0.01 g/cm² min in a typical shop)", StatusPublished},
		func(f *Figures) float64 { return f.DryingBetween }, func(f *Figures) bool { return f.DryingBetween > 0 },
	},
}
