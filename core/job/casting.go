package job

// Casting are the maker's own measurements and habits. Each has a default
// that works until it has been measured.
type Casting struct {
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
	TestCasts []TestCast `json:"testCasts"`
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
	// FillLine is how far below the brim of the fired pot it is filled in use,
	// mm. Default 0: to the brim.
	FillLine float64 `json:"fillLine"`
}

// DefaultCasting are the settings of a maker who has measured nothing yet.
func DefaultCasting() Casting {
	return Casting{
		CastMoisture: 20, LossOnIgnition: 7, Minutes: 15, LaterCastSlowdown: 100.0 / 6,
		TestCasts: []TestCast{}, Waste: 10, Bucket: 10000, BucketFill: 75,
		HalfRateWater: 5, DryingRate: 0.01, GlazeDensity: 2.4,
		BandTension: 50, BandSafety: 2,
		Reach: 40, Hands: 75, Travel: 25,
	}
}
