package casting

import "moldwright/core/words"

// Rows for shrinkage and plaster: label, unit, formula, source and standing of
// each figure. The figures themselves are made in compute.go.

var clayRows = []rowSpec{
	{
		Row{GroupShrinkage, "dryingShrinkage", words.Say("Drying shrinkage"), 0, words.Plain("%"), 2,
			words.Say("(wet − dry) / wet length"),
			srcC326, StatusPublished},
		func(f *Figures) float64 { return f.DryingShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "firingShrinkage", words.Say("Firing shrinkage"), 0, words.Plain("%"), 2,
			words.Say("(dry − fired) / dry length"),
			srcC326, StatusPublished},
		func(f *Figures) float64 { return f.FiringShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "totalShrinkage", words.Say("Total shrinkage"), 0, words.Plain("%"), 2,
			words.Say("1 − (1 − drying)(1 − firing)"),
			srcC326, StatusPublished},
		func(f *Figures) float64 { return f.TotalShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "volumeShrinkage", words.Say("Shrinkage of volume"), 0, words.Plain("%"), 2,
			words.Say("1 − (1 − S)³, S the total shrinkage"),
			words.Say("from the total shrinkage"), StatusDerived},
		func(f *Figures) float64 { return f.VolumeShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "oversize", words.Say("Wet length for each fired length"), 0, words.Plain("×"), 4,
			words.Plain("1 / (1 − S)"),
			words.Say("from the total shrinkage"), StatusDerived},
		func(f *Figures) float64 { return f.Oversize }, nil,
	},
	{
		Row{GroupShrinkage, "oversizeVolume", words.Say("Wet volume for each fired volume"), 0, words.Plain("×"), 4,
			words.Plain("1 / (1 − S)³"),
			words.Say("from the total shrinkage"), StatusDerived},
		func(f *Figures) float64 { return f.OversizeVolume }, nil,
	},
	{
		Row{GroupShrinkage, "plasterCorrection", words.Say("Correction of the positive for the plaster's expansion"), 0, words.Plain("×"), 4,
			words.Say("1 / (1 + e), e the setting expansion asked for"),
			words.Say("plaster maker's data sheet: 0.19 to 0.22 %% linear (US Gypsum)"), StatusPublished},
		func(f *Figures) float64 { return f.PlasterCorrection }, func(f *Figures) bool { return f.PlasterCorrection != 1 },
	},
}

var plasterRows = []rowSpec{
	{
		Row{GroupPlaster, "plasterWetDensity", words.Say("Density of the mix"), 0, words.Plain("g/ml"), 3,
			words.Say("(1 + c) / (1/2.75 + c), c = consistency / 100"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.WetDensity }, nil,
	},
	{
		Row{GroupPlaster, "plasterDryDensity", words.Say("Density of the dry plaster"), 0, words.Plain("g/ml"), 3,
			words.Say("1.1862 / (1/2.75 + c)"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.DryDensity }, nil,
	},
	{
		Row{GroupPlaster, "plasterPorosity", words.Say("Pores of the dry plaster"), 0, words.Say("%% of volume"), 1,
			words.Say("1 − dry density / 2.32"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.Porosity }, nil,
	},
	{
		Row{GroupPlaster, "moldVolume", words.Say("Plaster in the mold"), 0, words.Plain("ml"), 0,
			words.Say("sum of the parts"),
			words.Say("volume of the plaster parts"), StatusDerived},
		func(f *Figures) float64 { return f.MoldML }, nil,
	},
	{
		Row{GroupPlaster, "plaster", words.Say("Plaster that ends in the mold"), 0, words.Plain("g"), 0,
			words.Say("V / (1/2.75 + c)"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.Plaster }, nil,
	},
	{
		Row{GroupPlaster, "plasterWater", words.Say("Water that ends in the mold"), 0, words.Plain("g"), 0,
			words.Say("c × plaster"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.PlasterWater }, nil,
	},
	{
		Row{GroupPlaster, "mixVolume", words.Say("Mix with allowance for waste"), 0, words.Plain("ml"), 0,
			words.Say("V (1 + waste)"),
			words.Say("5 to 10 %% is usual; or as entered"), StatusCommon},
		func(f *Figures) float64 { return f.MixML }, nil,
	},
	{
		Row{GroupPlaster, "mixPlaster", words.Say("Plaster to weigh out"), 0, words.Plain("g"), 0,
			words.Say("V (1 + waste) / (1/2.75 + c)"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MixPlaster }, nil,
	},
	{
		Row{GroupPlaster, "mixWater", words.Say("Water to weigh out"), 0, words.Plain("g"), 0,
			words.Say("c × plaster"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MixWater }, nil,
	},
	{
		Row{GroupPlaster, "publishedDensity", words.Say("Density of the mix as the maker publishes it"), 0, words.Plain("g/ml"), 3,
			words.Say("read off the data sheet"),
			srcSheet, StatusPublished},
		func(f *Figures) float64 { return f.PublishedDensity }, func(f *Figures) bool { return f.PublishedDensity > 0 },
	},
	{
		Row{GroupPlaster, "publishedPlaster", words.Say("Plaster to weigh out by that density"), 0, words.Plain("g"), 0,
			words.Say("V (1 + waste) × density / (1 + c)"),
			srcSheet, StatusPublished},
		func(f *Figures) float64 { return f.PublishedPlaster }, func(f *Figures) bool { return f.PublishedDensity > 0 },
	},
	{
		Row{GroupPlaster, "publishedWater", words.Say("Water to weigh out by that density"), 0, words.Plain("g"), 0,
			words.Say("c × plaster"),
			srcSheet, StatusPublished},
		func(f *Figures) float64 { return f.PublishedWater }, func(f *Figures) bool { return f.PublishedDensity > 0 },
	},
	{
		Row{GroupPlaster, "buckets", words.Say("Buckets to mix"), 0, words.Text{}, 0,
			words.Say("for each part: mix / (bucket × fill), rounded up"),
			words.Say("a bucket three quarters full leaves room to stir; or as entered"), StatusCommon},
		func(f *Figures) float64 { return float64(f.Buckets) }, nil,
	},
	{
		Row{GroupPlaster, "moldWet", words.Say("Mold as poured"), 0, words.Plain("g"), 0,
			words.Say("plaster + water"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MoldWet }, nil,
	},
	{
		Row{GroupPlaster, "moldDry", words.Say("Mold when dry"), 0, words.Plain("g"), 0,
			words.Say("1.1862 × plaster (CaSO4·½H2O + 1½ H2O = CaSO4·2H2O)"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MoldDry }, nil,
	},
	{
		Row{GroupPlaster, "waterToDry", words.Say("Water to dry out of a new mold"), 0, words.Plain("g"), 0,
			words.Say("(c − 0.1862) × plaster"),
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.WaterToDry }, nil,
	},
	{
		Row{GroupPlaster, "dryingLeast", words.Say("Drying of a new mold, at the very least"), 0, words.Plain("h"), 1,
			words.Say("water to dry out / (rate × open surface); the inside dries far slower: allow 1 to 2 weeks"),
			words.Say("US Gypsum bulletin IG526 (0.01 g/cm² min in a typical shop); 1 week small, 10 to 14 days large (potters.org/subject81292)"), StatusPublished},
		func(f *Figures) float64 { return f.DryingLeast }, func(f *Figures) bool { return f.DryingLeast > 0 },
	},
	{
		Row{GroupPlaster, "setRiseLow", words.Say("Warming as it sets in a thick mass, low"), 0, words.Plain("K"), 0,
			words.Say("heat of setting / heat capacity, no heat lost"),
			words.Plain("Lewry & Williamson, J. Mater. Sci. 29 (1994) 5279; Wirsching in Ullmann's"), StatusMemory},
		func(f *Figures) float64 { return f.SetRiseLow }, nil,
	},
	{
		Row{GroupPlaster, "setRiseHigh", words.Say("Warming as it sets in a thick mass, high"), 0, words.Plain("K"), 0,
			words.Say("heat of setting / heat capacity, no heat lost"),
			words.Plain("Lewry & Williamson, J. Mater. Sci. 29 (1994) 5279; Wirsching in Ullmann's"), StatusMemory},
		func(f *Figures) float64 { return f.SetRiseHigh }, nil,
	},
}
