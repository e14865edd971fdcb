package casting

import "moldwright/core/words"

// Rows for slip, the growing wall and the mold's water.

var slipRows = []rowSpec{
	{
		Row{GroupSlip, "litreWeight", words.Say("A litre of slip weighs"), 0, words.Plain("g"), 0,
			words.Say("1000 × density"),
			srcMeasure, StatusDerived},
		func(f *Figures) float64 { return f.LitreWeight }, nil,
	},
	{
		Row{GroupSlip, "pintWeight", words.Say("An imperial pint of slip weighs"), 0, words.Plain("oz"), 1,
			words.Say("20 × density (a pint of water is 20 oz)"),
			srcMeasure, StatusDerived},
		func(f *Figures) float64 { return f.PintWeight }, nil,
	},
	{
		Row{GroupSlip, "twaddell", words.Say("Density in degrees Twaddell"), 0, words.Plain("°Tw"), 0,
			words.Say("200 (density − 1)"),
			words.Say("definition of the scale"), StatusMemory},
		func(f *Figures) float64 { return f.Twaddell }, nil,
	},
	{
		Row{GroupSlip, "slipDryPerLitre", words.Say("Dry body in a litre of slip"), 0, words.Plain("g"), 0,
			words.Say("(P − 1000) g / (g − 1), P the litre weight, g the density of the solids"),
			srcBrong, StatusPublished},
		func(f *Figures) float64 { return f.SlipDryPerLitre }, nil,
	},
	{
		Row{GroupSlip, "slipDryPerPint", words.Say("Dry body in an imperial pint of slip"), 0, words.Plain("oz"), 2,
			words.Say("(P − 20) g / (g − 1), P the pint weight"),
			srcBrong, StatusPublished},
		func(f *Figures) float64 { return f.SlipDryPerPint }, nil,
	},
	{
		Row{GroupSlip, "slipWaterLitre", words.Say("Water in a litre of slip"), 0, words.Plain("g"), 0,
			words.Say("litre weight − dry body"),
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipWaterLitre }, nil,
	},
	{
		Row{GroupSlip, "slipWaterShare", words.Say("Water in the slip"), 0, words.Say("%% of mass"), 1,
			words.Say("1 − dry body / litre weight"),
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipWaterShare }, nil,
	},
	{
		Row{GroupSlip, "slipSolidsVolume", words.Say("Solids in the slip"), 0, words.Say("%% of volume"), 1,
			words.Say("(density − 1) / (g − 1)"),
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipSolidsVolume }, nil,
	},
	{
		Row{GroupSlip, "slipFill", words.Say("Slip to fill"), 0, words.Plain("ml"), 0,
			words.Say("cavity + spare"),
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.SlipFill }, nil,
	},
	{
		Row{GroupSlip, "slipFillMass", words.Say("Slip to fill"), 0, words.Plain("g"), 0,
			words.Say("volume × density"),
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.SlipFillMass }, nil,
	},
	{
		Row{GroupSlip, "slipFillDry", words.Say("Dry body in that slip"), 0, words.Plain("g"), 0,
			words.Say("volume × dry body of a litre"),
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipFillDry }, nil,
	},
	{
		Row{GroupSlip, "slipFillWater", words.Say("Water in that slip"), 0, words.Plain("g"), 0,
			words.Say("slip − dry body"),
			srcBrong, StatusDerived},
		func(f *Figures) float64 { return f.SlipFillWater }, nil,
	},
	{
		Row{GroupSlip, "slipTaken", words.Say("Slip taken by the wall"), 0, words.Plain("ml"), 1,
			words.Say("wall × (1 + n), n the water that leaves each volume of cast"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipTaken }, nil,
	},
	{
		Row{GroupSlip, "slipTakenMass", words.Say("Slip taken by the wall"), 0, words.Plain("g"), 1,
			words.Say("volume × density"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipTakenMass }, nil,
	},
	{
		Row{GroupSlip, "spareTaken", words.Say("Slip taken by the wall of the spare, trimmed off (estimate)"), 0, words.Plain("ml"), 0,
			words.Say("spare's surface × wall × (1 + n)"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SpareTaken }, func(f *Figures) bool { return f.SpareTaken > 0 },
	},
	{
		Row{GroupSlip, "levelDropVolume", words.Say("Fall of the slip while it stands"), 0, words.Plain("ml"), 1,
			words.Say("(wall + wall of the spare) × n"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.LevelDropVolume }, nil,
	},
	{
		Row{GroupSlip, "levelDrop", words.Say("Fall of the level (estimate)"), 0, words.Plain("mm"), 1,
			words.Say("volume / surface at the top"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.LevelDrop }, func(f *Figures) bool { return f.LevelDrop > 0 },
	},
	{
		Row{GroupSlip, "slipTopUp", words.Say("Slip to top up so that the rim stays covered"), 0, words.Plain("ml"), 0,
			words.Say("fall − slip in the spare, if more than nothing"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipTopUp }, func(f *Figures) bool { return f.SlipTopUp > 0 },
	},
	{
		Row{GroupSlip, "slipReturned", words.Say("Slip left to return"), 0, words.Plain("ml"), 0,
			words.Say("filled + topped up − taken"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.SlipReturned }, nil,
	},
}

var wallRows = []rowSpec{
	{
		Row{GroupWall, "castingRate", words.Say("Casting rate k"), 0, words.Plain("mm²/min"), 2,
			words.Say("L² / t of the test cast; of several, least squares of L on the root of t"),
			srcRoot, StatusPublished},
		func(f *Figures) float64 { return f.CastingRate }, nil,
	},
	{
		Row{GroupWall, "castingRateLow", words.Say("Slowest of the test casts"), 0, words.Plain("mm²/min"), 2,
			words.Say("least L² / t"),
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.CastingRateLow }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "castingRateHigh", words.Say("Fastest of the test casts"), 0, words.Plain("mm²/min"), 2,
			words.Say("greatest L² / t"),
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.CastingRateHigh }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "testSpread", words.Say("Spread of the test casts about the law"), 0, words.Plain("mm"), 2,
			words.Say("standard deviation of L − root(k t), on n − 1"),
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.TestSpread }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "solidWall", words.Say("Thickest wall between two faces of plaster"), 0, words.Plain("mm"), 1,
			words.Say("the largest ball that the clay holds"),
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.SolidWall }, func(f *Figures) bool { return f.SolidWall > 0 },
	},
	{
		Row{GroupWall, "minutes", words.Say("Time for the wanted wall"), 0, words.Plain("min"), 1,
			words.Say("L² / k; between two plaster faces (L/2)² / k"),
			srcRoot, StatusPublished},
		func(f *Figures) float64 { return f.Minutes }, nil,
	},
	{
		Row{GroupWall, "minutesLow", words.Say("The same, by the fastest test"), 0, words.Plain("min"), 1,
			words.Plain("L² / k"),
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.MinutesLow }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "minutesHigh", words.Say("The same, by the slowest test"), 0, words.Plain("min"), 1,
			words.Plain("L² / k"),
			srcRoot, StatusDerived},
		func(f *Figures) float64 { return f.MinutesHigh }, func(f *Figures) bool { return f.CastingRateLow < f.CastingRateHigh },
	},
	{
		Row{GroupWall, "wallMinutes", words.Say("Time asked about"), 0, words.Plain("min"), 0,
			words.Say("as entered"),
			srcMeasure, StatusDerived},
		func(f *Figures) float64 { return f.WallMinutes }, nil,
	},
	{
		Row{GroupWall, "wallAfter", words.Say("Wall after that time"), 0, words.Plain("mm"), 1,
			words.Say("root(k t)"),
			srcRoot, StatusPublished},
		func(f *Figures) float64 { return f.WallAfter }, nil,
	},
	{
		Row{GroupWall, "lastMinutes", words.Say("Time for the day's last cast listed"), 0, words.Plain("min"), 1,
			words.Say("t (1 + (n − 1) × slowing)"),
			words.Say("a supplier's published 3, 3.5 and 4 min for one wall (hot-clay.com, terracotta casting slip); or the slowing entered"), StatusPublished},
		func(f *Figures) float64 { return f.LastMinutes }, func(f *Figures) bool { return len(f.LaterCast) > 1 },
	},
	{
		Row{GroupWall, "cornerAngle", words.Say("Sharpest corner between two plaster walls"), 0, words.Plain("°"), 0,
			words.Say("a right angle where none is known"),
			srcGeo, StatusDerived},
		func(f *Figures) float64 { return f.CornerAngle }, func(f *Figures) bool { return f.SolidWall == 0 },
	},
	{
		Row{GroupWall, "cornerWall", words.Say("Wall in that corner (estimate)"), 0, words.Plain("mm"), 1,
			words.Say("L / sin(angle / 2): two layers that meet; in truth rounder and somewhat thicker"),
			words.Say("geometry of two equal layers"), StatusDerived},
		func(f *Figures) float64 { return f.CornerWall }, func(f *Figures) bool { return f.SolidWall == 0 },
	},
}

var waterRows = []rowSpec{
	{
		Row{GroupWater, "castSolidsVolume", words.Say("Solids in the fresh cast"), 0, words.Say("%% of volume"), 1,
			words.Say("(1/g) / (1/g + m), m water by dry mass"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.CastSolidsVolume }, nil,
	},
	{
		Row{GroupWater, "waterPerCastVolume", words.Say("Water that leaves each ml of cast"), 0, words.Plain("ml"), 3,
			words.Say("n = solids in cast / solids in slip − 1"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.WaterPerML }, nil,
	},
	{
		Row{GroupWater, "waterPerArea", words.Say("Water that enters each cm² of plaster"), 0, words.Plain("g"), 3,
			words.Plain("n L"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.WaterPerCM2 }, nil,
	},
	{
		Row{GroupWater, "waterPerCast", words.Say("Water the mold takes at each cast"), 0, words.Plain("g"), 1,
			words.Say("n × clay of cast and spare"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.WaterPerCast }, nil,
	},
	{
		Row{GroupWater, "moldRise", words.Say("Rise of the mold's water at each cast"), 0, words.Say("%% of dry mass"), 2,
			words.Say("water / dry mold"),
			srcBalance, StatusMemory},
		func(f *Figures) float64 { return f.MoldRise }, nil,
	},
	{
		Row{GroupWater, "absorption", words.Say("What dry plaster takes up"), 0, words.Say("%% of dry mass"), 1,
			words.Say("36 at consistency 70, 41 at 74; elsewhere by the share of the pores that fills"),
			words.Say("plaster maker's data sheets (US Gypsum), taken as percent of dry mass; or as entered"), StatusPublished},
		func(f *Figures) float64 { return f.Absorption }, nil,
	},
	{
		Row{GroupWater, "moldCapacity", words.Say("What the dry mold can take up"), 0, words.Plain("g"), 0,
			words.Say("absorption × dry mold"),
			words.Say("plaster maker's data sheets (US Gypsum)"), StatusPublished},
		func(f *Figures) float64 { return f.MoldCapacity }, nil,
	},
	{
		Row{GroupWater, "castsToFull", words.Say("Casts until the mold is full, no drying"), 0, words.Text{}, 1,
			words.Say("capacity / water of a cast, the whole mold wetting evenly"),
			words.Say("from the two rows above"), StatusDerived},
		func(f *Figures) float64 { return f.CastsToFull }, nil,
	},
	{
		Row{GroupWater, "castsToHalfRate", words.Say("Casts until the mold draws half as fast"), 0, words.Text{}, 1,
			words.Say("5 %% of the dry part / its water of a cast, for the part that wets first"),
			srcIG526, StatusPublished},
		func(f *Figures) float64 { return f.CastsToHalfRate }, nil,
	},
	{
		Row{GroupWater, "castsPerDay", words.Say("Casts in a day from a dry mold"), 0, words.Text{}, 0,
			words.Say("the row above, rounded down, at least 1; studios make 1 to 3"),
			srcIG526, StatusPublished},
		func(f *Figures) float64 { return float64(f.CastsPerDay) }, nil,
	},
	{
		Row{GroupWater, "dryingBetween", words.Say("Drying between casts, at the very least"), 0, words.Plain("min"), 0,
			words.Say("water of a cast / (rate × open surface); the inside dries far slower: overnight is better"),
			words.Say("US Gypsum bulletin IG526 (rev. 4-03) (0.01 g/cm² min in a typical shop)"), StatusPublished},
		func(f *Figures) float64 { return f.DryingBetween }, func(f *Figures) bool { return f.DryingBetween > 0 },
	},
}
