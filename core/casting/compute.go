package casting

import (
	"math"

	"moldwright/core/job"
)

// Compute works out every figure of a mold and its cast, or returns all that
// is wrong with the input and no figure. The same input gives the same bits.
func Compute(in Input) (Figures, job.Faults) {
	if faults := in.check(); len(faults) > 0 {
		return Figures{}, faults
	}
	var f Figures
	f.shrink(&in)
	f.plaster(&in)
	f.weights(&in)
	f.slip(&in)
	f.wall(&in)
	f.water(&in)
	f.forces(&in)
	f.lifting(&in)
	f.Cautions = f.cautions(&in)
	return f, nil
}

func (f *Figures) shrink(in *Input) {
	f.DryingShrinkage = in.Clay.DryingShrinkage
	f.FiringShrinkage = in.Clay.FiringShrinkage
	f.TotalShrinkage = TotalShrinkage(f.DryingShrinkage, f.FiringShrinkage)
	f.VolumeShrinkage = VolumeShrinkage(f.TotalShrinkage)
	f.Oversize = Oversize(f.TotalShrinkage)
	f.OversizeVolume = cube(f.Oversize)
	f.PlasterCorrection = 1 / (1 + in.Settings.SettingExpansion/100)
}

func (f *Figures) plaster(in *Input) {
	s, c := &in.Settings, in.Plaster.Consistency
	f.WetDensity, f.DryDensity, f.Porosity = WetDensity(c), DryDensity(c), 100*Porosity(c)
	f.Parts = make([]PartFigures, len(in.Parts))
	for i, p := range in.Parts {
		f.Parts[i] = PartFigures{Name: p.Name, ML: p.ML, Mix: MixFor(p.ML, c, f.WetDensity)}
		f.MoldML += p.ML
	}
	whole := MixFor(f.MoldML, c, f.WetDensity)
	f.Plaster, f.PlasterWater = whole.Plaster, whole.Water
	f.MoldWet, f.MoldDry, f.WaterToDry = whole.Wet, whole.Dry, whole.FreeWater

	f.MixML = f.MoldML * (1 + s.Waste/100)
	mixed := MixFor(f.MixML, c, f.WetDensity)
	f.MixPlaster, f.MixWater = mixed.Plaster, mixed.Water
	f.PublishedDensity = s.PublishedWetDensity
	if sheet, ok := Published(c); ok && f.PublishedDensity == 0 {
		f.PublishedDensity = sheet.WetDensity
	}
	published := MixFor(f.MixML, c, f.PublishedDensity)
	f.PublishedPlaster, f.PublishedWater = published.Plaster, published.Water

	f.Batches = Batches(in.Parts, c, s.Waste, s.Bucket, s.BucketFill)
	for _, b := range f.Batches {
		f.Buckets += b.Count
	}
	f.SetRiseLow, f.SetRiseHigh = SetRise(c)
	if open := in.ContactCM2 + in.OutsideCM2; open >= areaMin {
		f.DryingLeast = f.WaterToDry / (s.DryingRate * open) / 60
	}
}

func (f *Figures) weights(in *Input) {
	s := &in.Settings
	solids := CastSolidsVolume(s.CastMoisture, in.Clay.SolidsDensity)
	left := 1 - f.TotalShrinkage/100
	f.CastSolidsVolume = 100 * solids
	f.CastVolume = in.CastWallML()
	f.CastDry = f.CastVolume * solids * in.Clay.SolidsDensity
	f.CastWet = f.CastDry / (1 - s.CastMoisture/100)
	f.CastFired = f.CastDry * (1 - s.LossOnIgnition/100)
	f.Glaze = s.Glaze / 10 * s.GlazeDensity * (in.ContactCM2 + in.InsideAreaCM2) * left * left
	f.CastGlazed = f.CastFired + f.Glaze
	f.CapacityWet, f.FillWet = in.InsideML, in.InsideFillML
	// A coat of glaze on the inside takes its volume from what the pot holds.
	coat := s.Glaze / 10 * in.InsideAreaCM2 * left * left
	f.CapacityFired = math.Max(0, f.CapacityWet*cube(left)-coat)
	if f.CapacityWet > 0 {
		f.FillFired = math.Max(0, f.FillWet*cube(left)-coat*f.FillWet/f.CapacityWet)
	}
}

func (f *Figures) slip(in *Input) {
	rho, g := in.Clay.SlipDensity, in.Clay.SolidsDensity
	f.LitreWeight = rho * WaterGramsPerLitre
	f.PintWeight = rho * WaterOuncesPerPint
	f.Twaddell = twaddellPerUnit * (rho - 1)
	f.SlipDryPerLitre = Brongniart(f.LitreWeight, WaterGramsPerLitre, g)
	f.SlipDryPerPint = Brongniart(f.PintWeight, WaterOuncesPerPint, g)
	f.SlipWaterLitre = f.LitreWeight - f.SlipDryPerLitre
	f.SlipWaterShare = 100 * SlipWater(rho, g)
	f.SlipSolidsVolume = 100 * SolidsVolume(rho, g)

	f.SlipFill = in.CavityML + in.SpareML
	if in.Solid {
		f.SlipFill = f.CastVolume + in.SpareML
	}
	f.SlipFillMass = f.SlipFill * rho
	f.SlipFillDry = f.SlipFill / 1000 * f.SlipDryPerLitre
	f.SlipFillWater = f.SlipFillMass - f.SlipFillDry

	f.WaterPerML = WaterPerCastVolume(rho, g, in.Settings.CastMoisture)
	f.SlipTaken = f.CastVolume * (1 + f.WaterPerML)
	f.SlipTakenMass = f.SlipTaken * rho
	spareWall := math.Min(in.SpareContactCM2*in.Clay.Wall/10, in.SpareML)
	f.SpareTaken = spareWall * (1 + f.WaterPerML)

	// Clay stays where it was; only the water that leaves lowers the level.
	f.LevelDropVolume = (f.CastVolume + spareWall) * f.WaterPerML
	f.SlipTopUp = math.Max(0, f.LevelDropVolume-(in.SpareML-spareWall))
	if in.FillAreaCM2 >= areaMin {
		f.LevelDrop = 10 * f.LevelDropVolume / in.FillAreaCM2
	}
	f.SlipReturned = math.Max(0, f.SlipFill+f.SlipTopUp-f.SlipTaken-f.SpareTaken)
}

// wallTimes are the minutes for which the wall is listed.
var wallTimes = [...]float64{5, 10, 15, 20, 30, 45, 60, 90}

// laterCasts is how many casts of a day are listed at most.
const laterCasts = 8

func (f *Figures) wall(in *Input) {
	s := &in.Settings
	trials := append([]job.TestCast{in.Clay.TestCast}, s.TestCasts...)
	rate := FitTestCasts(trials)
	f.CastingRate, f.CastingRateLow, f.CastingRateHigh = rate.K, rate.Low, rate.High
	f.TestSpread = rate.SpreadMM
	wall := in.Clay.Wall
	if in.Solid {
		// Two faces grow towards each other, each half of the thickness.
		if in.SolidWallMM > 0 {
			wall = in.SolidWallMM
			f.SolidWall = wall
		}
		wall /= 2
	}
	f.Minutes = MinutesFor(wall, rate.K)
	f.MinutesLow, f.MinutesHigh = MinutesFor(wall, rate.High), MinutesFor(wall, rate.Low)
	f.WallMinutes = s.Minutes
	f.WallAfter = WallAfter(s.Minutes, rate.K)
	f.Walls = make([]WallAt, len(wallTimes))
	for i, t := range wallTimes {
		f.Walls[i] = WallAt{t, WallAfter(t, rate.K)}
	}
	f.CornerAngle = in.CornerDeg
	if f.CornerAngle == 0 {
		f.CornerAngle = 90
	}
	f.CornerWall = CornerWall(in.Clay.Wall, f.CornerAngle)
}

func (f *Figures) water(in *Input) {
	s := &in.Settings
	f.WaterPerCM2 = f.WaterPerML * in.Clay.Wall / 10
	f.WaterPerCast = f.LevelDropVolume // ml of water, so g
	f.MoldRise = 100 * f.WaterPerCast / f.MoldDry
	f.Absorption = s.Absorption
	if f.Absorption == 0 {
		f.Absorption = AbsorptionPercent(in.Plaster.Consistency)
	}
	f.MoldCapacity = f.MoldDry * f.Absorption / 100
	f.CastsToFull = f.MoldCapacity / f.WaterPerCast

	// The part that wets fastest for its weight sets the day; where no areas
	// are known the water is shared by weight.
	var contact float64
	for _, p := range in.Parts {
		contact += p.ContactCM2
	}
	f.CastsToHalfRate = math.Inf(1)
	for i := range f.Parts {
		p := &f.Parts[i]
		share := p.Dry / f.MoldDry
		if contact >= areaMin {
			share = in.Parts[i].ContactCM2 / contact
		}
		p.WaterPerCast = f.WaterPerCast * share
		if share < 1e-6 {
			continue
		}
		p.CastsToHalfRate = s.HalfRateWater / 100 * p.Dry / p.WaterPerCast
		f.CastsToHalfRate = math.Min(f.CastsToHalfRate, p.CastsToHalfRate)
	}
	// A dry mold always gives one cast; see the caution on a thin mold.
	f.CastsPerDay = max(1, int(math.Floor(math.Min(f.CastsToHalfRate, 1e6)+1e-9)))
	f.LaterCast = make([]float64, min(f.CastsPerDay, laterCasts))
	for i := range f.LaterCast {
		f.LaterCast[i] = LaterCast(f.Minutes, i+1, s.LaterCastSlowdown)
	}
	f.LastMinutes = f.LaterCast[len(f.LaterCast)-1]
	if open := in.ContactCM2 + in.OutsideCM2; open >= areaMin {
		f.DryingBetween = f.WaterPerCast / (s.DryingRate * open)
	}
}

func (f *Figures) forces(in *Input) {
	s, rho := &in.Settings, in.Clay.SlipDensity
	f.LiftForce = LiftForce(rho, in.UpperLiftML)
	f.LiftNet = f.LiftForce
	for _, p := range f.Parts {
		if p.Name == UpperName {
			f.LiftNet -= p.Dry * gravity / 1000
		}
	}
	f.SlipPressure = Pressure(rho, in.SeamHeadMM)
	f.SeamForce = SeamForce(rho, in.SeamAreaCM2, in.SeamHeadMM)
	f.BandForce = math.Max(f.SeamForce, f.LiftForce)
	f.BandsRound = BandCount(f.SeamForce, s.BandTension, s.BandSafety, 2)
	f.BandsOver = BandCount(f.LiftForce, s.BandTension, s.BandSafety, 1)
	f.CottlePressure = Pressure(f.WetDensity, in.CottleHeightMM)
	f.CottleForce = WallForce(f.WetDensity, in.CottleHeightMM, 2*in.CottleRadiusMM)
	f.CottleHoop, f.CottleHoopFoot = CottleHoop(f.WetDensity, in.CottleHeightMM, in.CottleRadiusMM)
	f.Flotation = Flotation(f.WetDensity, in.PositiveML, in.PositiveMassG)
	f.FlotationMass = math.Max(0, f.Flotation) / gravity * 1000
}

func (f *Figures) lifting(in *Input) {
	s := &in.Settings
	f.LiftFull = (f.MoldWet + f.SlipFillMass) / 1000
	for _, p := range f.Parts {
		f.LiftPart = math.Max(f.LiftPart, p.Wet/1000)
	}
	f.LiftLimit = RWL(s.Reach, s.Hands, s.Travel, s.Twist)
	f.LiftingIndex = f.LiftFull / f.LiftLimit
}
