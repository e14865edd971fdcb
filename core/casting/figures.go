package casting

import "moldwright/core/words"

// Figures is the reply: all figures as plain numbers, for which Rows gives the
// words. The key of a row is the JSON key of its figure here.
type Figures struct {
	// Shrinkage, percent linear unless named; Oversize factors from fired to
	// wet.
	DryingShrinkage float64 `json:"dryingShrinkage"`
	FiringShrinkage float64 `json:"firingShrinkage"`
	TotalShrinkage  float64 `json:"totalShrinkage"`
	VolumeShrinkage float64 `json:"volumeShrinkage"`
	Oversize        float64 `json:"oversize"`
	OversizeVolume  float64 `json:"oversizeVolume"`
	// PlasterCorrection is the factor for the positive's lengths that makes up
	// for the plaster's expansion; 1 where none is asked.
	PlasterCorrection float64 `json:"plasterCorrection"`

	// Plaster: the whole mold by theory, g; densities g/ml; then as mixed,
	// with waste; then by the maker's published wet density (0 without one).
	WetDensity       float64 `json:"plasterWetDensity"`
	DryDensity       float64 `json:"plasterDryDensity"`
	Porosity         float64 `json:"plasterPorosity"` // percent
	MoldML           float64 `json:"moldVolume"`
	Plaster          float64 `json:"plaster"`
	PlasterWater     float64 `json:"plasterWater"`
	MoldWet          float64 `json:"moldWet"`
	MoldDry          float64 `json:"moldDry"`
	WaterToDry       float64 `json:"waterToDry"`
	MixML            float64 `json:"mixVolume"`
	MixPlaster       float64 `json:"mixPlaster"`
	MixWater         float64 `json:"mixWater"`
	PublishedDensity float64 `json:"publishedDensity"`
	PublishedPlaster float64 `json:"publishedPlaster"`
	PublishedWater   float64 `json:"publishedWater"`
	Buckets          int     `json:"buckets"`
	SetRiseLow       float64 `json:"setRiseLow"`  // K
	SetRiseHigh      float64 `json:"setRiseHigh"` // K
	DryingLeast      float64 `json:"dryingLeast"` // h

	// Slip: by measure, then for this mold, ml and g.
	LitreWeight      float64 `json:"litreWeight"`      // g
	PintWeight       float64 `json:"pintWeight"`       // oz an imperial pint
	Twaddell         float64 `json:"twaddell"`         // degrees
	SlipDryPerLitre  float64 `json:"slipDryPerLitre"`  // g
	SlipDryPerPint   float64 `json:"slipDryPerPint"`   // oz
	SlipWaterLitre   float64 `json:"slipWaterLitre"`   // g a litre
	SlipWaterShare   float64 `json:"slipWaterShare"`   // percent by mass
	SlipSolidsVolume float64 `json:"slipSolidsVolume"` // percent by volume
	SlipFill         float64 `json:"slipFill"`
	SlipFillMass     float64 `json:"slipFillMass"`
	SlipFillDry      float64 `json:"slipFillDry"`
	SlipFillWater    float64 `json:"slipFillWater"`
	SlipTaken        float64 `json:"slipTaken"`
	SlipTakenMass    float64 `json:"slipTakenMass"`
	SpareTaken       float64 `json:"spareTaken"`
	SlipTopUp        float64 `json:"slipTopUp"`
	SlipReturned     float64 `json:"slipReturned"`
	LevelDropVolume  float64 `json:"levelDropVolume"`
	LevelDrop        float64 `json:"levelDrop"` // mm

	// Wall: rates mm2/min, walls mm, times min.
	CastingRate     float64 `json:"castingRate"`
	CastingRateLow  float64 `json:"castingRateLow"`
	CastingRateHigh float64 `json:"castingRateHigh"`
	TestSpread      float64 `json:"testSpread"`
	SolidWall       float64 `json:"solidWall"` // thickest, between two faces of plaster; 0 of a drained cast
	Minutes         float64 `json:"minutes"`
	MinutesLow      float64 `json:"minutesLow"`
	MinutesHigh     float64 `json:"minutesHigh"`
	WallMinutes     float64 `json:"wallMinutes"`
	WallAfter       float64 `json:"wallAfter"`
	LastMinutes     float64 `json:"lastMinutes"`
	CornerAngle     float64 `json:"cornerAngle"` // degrees
	CornerWall      float64 `json:"cornerWall"`

	// The mold's water, g unless named.
	CastSolidsVolume float64 `json:"castSolidsVolume"` // percent
	WaterPerML       float64 `json:"waterPerCastVolume"`
	WaterPerCM2      float64 `json:"waterPerArea"`
	WaterPerCast     float64 `json:"waterPerCast"`
	MoldRise         float64 `json:"moldRise"` // percent of dry mass
	Absorption       float64 `json:"absorption"`
	MoldCapacity     float64 `json:"moldCapacity"`
	CastsToFull      float64 `json:"castsToFull"`
	CastsToHalfRate  float64 `json:"castsToHalfRate"`
	CastsPerDay      int     `json:"castsPerDay"`
	DryingBetween    float64 `json:"dryingBetween"` // min

	// Weights of one cast, g; what it holds, ml.
	CastVolume    float64 `json:"castVolume"`
	CastWet       float64 `json:"castWet"`
	CastDry       float64 `json:"castDry"`
	CastFired     float64 `json:"castFired"`
	Glaze         float64 `json:"glaze"`
	CastGlazed    float64 `json:"castGlazed"`
	CapacityWet   float64 `json:"capacityWet"`
	CapacityFired float64 `json:"capacityFired"`
	FillWet       float64 `json:"fillWet"`
	FillFired     float64 `json:"fillFired"`

	// Forces, N unless named.
	SlipPressure   float64 `json:"slipPressure"` // kPa, at the seam's centroid
	LiftForce      float64 `json:"liftForce"`
	LiftNet        float64 `json:"liftNet"`
	SeamForce      float64 `json:"seamForce"`
	BandForce      float64 `json:"bandForce"`
	BandsRound     int     `json:"bandsRound"`
	BandsOver      int     `json:"bandsOver"`
	CottlePressure float64 `json:"cottlePressure"` // kPa
	CottleForce    float64 `json:"cottleForce"`
	CottleHoop     float64 `json:"cottleHoop"`
	CottleHoopFoot float64 `json:"cottleHoopFoot"` // N a metre of height
	Flotation      float64 `json:"flotation"`
	FlotationMass  float64 `json:"flotationMass"` // g to weigh it down

	// Lifting, kg; the index is a ratio.
	LiftFull     float64 `json:"liftFull"`
	LiftPart     float64 `json:"liftPart"`
	LiftLimit    float64 `json:"liftLimit"`
	LiftingIndex float64 `json:"liftingIndex"`

	Parts     []PartFigures `json:"parts"`
	Batches   []Batch       `json:"batches"`
	Walls     []WallAt      `json:"walls"`
	LaterCast []float64     `json:"laterCasts"` // min, the first cast first
	Cautions  []Caution     `json:"cautions"`
}

// PartFigures are those of one plaster part.
type PartFigures struct {
	Name string  `json:"name"`
	ML   float64 `json:"volume"`
	Mix
	// WaterPerCast is what one cast leaves in the part, g, by its share of the
	// cavity wall; CastsToHalfRate is 0 for a part without cavity wall.
	WaterPerCast    float64 `json:"waterPerCast"`
	CastsToHalfRate float64 `json:"castsToHalfRate"`
}

// WallAt is the wall in mm after a time in minutes.
type WallAt struct {
	Minutes float64 `json:"minutes"`
	Wall    float64 `json:"wall"`
}

// Caution is a warning in words, told where the hazard is.
type Caution struct {
	Code string     `json:"code"`
	Text words.Text `json:"text"`
}
