package casting

// Rows for shrinkage and plaster: label, unit, formula, source and standing of
// each figure. The figures themselves are made in compute.go.

var clayRows = []rowSpec{
	{
		Row{GroupShrinkage, "dryingShrinkage", "Drying shrinkage", 0, "%", 2,
			"(wet - dry) / wet length",
			srcC326, StatusPublished},
		func(f *Figures) float64 { return f.DryingShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "firingShrinkage", "Firing shrinkage", 0, "%", 2,
			"(dry - fired) / dry length",
			srcC326, StatusPublished},
		func(f *Figures) float64 { return f.FiringShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "totalShrinkage", "Total shrinkage", 0, "%", 2,
			"1 - (1 - drying)(1 - firing)",
			srcC326, StatusPublished},
		func(f *Figures) float64 { return f.TotalShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "volumeShrinkage", "Shrinkage of volume", 0, "%", 2,
			"1 - (1 - S)³, S the total shrinkage",
			"from the total shrinkage", StatusDerived},
		func(f *Figures) float64 { return f.VolumeShrinkage }, nil,
	},
	{
		Row{GroupShrinkage, "oversize", "Wet length for each fired length", 0, "×", 4,
			"1 / (1 - S)",
			"from the total shrinkage", StatusDerived},
		func(f *Figures) float64 { return f.Oversize }, nil,
	},
	{
		Row{GroupShrinkage, "oversizeVolume", "Wet volume for each fired volume", 0, "×", 4,
			"1 / (1 - S)³",
			"from the total shrinkage", StatusDerived},
		func(f *Figures) float64 { return f.OversizeVolume }, nil,
	},
	{
		Row{GroupShrinkage, "plasterCorrection", "Correction of the positive for the plaster's expansion", 0, "×", 4,
			"1 / (1 + e), e the setting expansion asked for",
			"plaster maker's data sheet: 0.19 to 0.22 % linear (US Gypsum)", StatusPublished},
		func(f *Figures) float64 { return f.PlasterCorrection }, func(f *Figures) bool { return f.PlasterCorrection != 1 },
	},
}

var plasterRows = []rowSpec{
	{
		Row{GroupPlaster, "plasterWetDensity", "Density of the mix", 0, "g/ml", 3,
			"(1 + c) / (1/2.75 + c), c = consistency / 100",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.WetDensity }, nil,
	},
	{
		Row{GroupPlaster, "plasterDryDensity", "Density of the dry plaster", 0, "g/ml", 3,
			"1.1862 / (1/2.75 + c)",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.DryDensity }, nil,
	},
	{
		Row{GroupPlaster, "plasterPorosity", "Pores of the dry plaster", 0, "% of volume", 1,
			"1 - dry density / 2.32",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.Porosity }, nil,
	},
	{
		Row{GroupPlaster, "moldVolume", "Plaster in the mold", 0, "ml", 0,
			"sum of the parts",
			"volume of the plaster parts", StatusDerived},
		func(f *Figures) float64 { return f.MoldML }, nil,
	},
	{
		Row{GroupPlaster, "plaster", "Plaster that ends in the mold", 0, "g", 0,
			"V / (1/2.75 + c)",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.Plaster }, nil,
	},
	{
		Row{GroupPlaster, "plasterWater", "Water that ends in the mold", 0, "g", 0,
			"c × plaster",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.PlasterWater }, nil,
	},
	{
		Row{GroupPlaster, "mixVolume", "Mix with allowance for waste", 0, "ml", 0,
			"V (1 + waste)",
			"5 to 10 % is usual; or as entered", StatusCommon},
		func(f *Figures) float64 { return f.MixML }, nil,
	},
	{
		Row{GroupPlaster, "mixPlaster", "Plaster to weigh out", 0, "g", 0,
			"V (1 + waste) / (1/2.75 + c)",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MixPlaster }, nil,
	},
	{
		Row{GroupPlaster, "mixWater", "Water to weigh out", 0, "g", 0,
			"c × plaster",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MixWater }, nil,
	},
	{
		Row{GroupPlaster, "publishedDensity", "Density of the mix as the maker publishes it", 0, "g/ml", 3,
			"read off the data sheet",
			srcSheet, StatusPublished},
		func(f *Figures) float64 { return f.PublishedDensity }, func(f *Figures) bool { return f.PublishedDensity > 0 },
	},
	{
		Row{GroupPlaster, "publishedPlaster", "Plaster to weigh out by that density", 0, "g", 0,
			"V (1 + waste) × density / (1 + c)",
			srcSheet, StatusPublished},
		func(f *Figures) float64 { return f.PublishedPlaster }, func(f *Figures) bool { return f.PublishedDensity > 0 },
	},
	{
		Row{GroupPlaster, "publishedWater", "Water to weigh out by that density", 0, "g", 0,
			"c × plaster",
			srcSheet, StatusPublished},
		func(f *Figures) float64 { return f.PublishedWater }, func(f *Figures) bool { return f.PublishedDensity > 0 },
	},
	{
		Row{GroupPlaster, "buckets", "Buckets to mix", 0, "", 0,
			"for each part: mix / (bucket × fill), rounded up",
			"a bucket three quarters full leaves room to stir; or as entered", StatusCommon},
		func(f *Figures) float64 { return float64(f.Buckets) }, nil,
	},
	{
		Row{GroupPlaster, "moldWet", "Mold as poured", 0, "g", 0,
			"plaster + water",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MoldWet }, nil,
	},
	{
		Row{GroupPlaster, "moldDry", "Mold when dry", 0, "g", 0,
			"1.1862 × plaster (CaSO4·½H2O + 1½ H2O = CaSO4·2H2O)",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.MoldDry }, nil,
	},
	{
		Row{GroupPlaster, "waterToDry", "Water to dry out of a new mold", 0, "g", 0,
			"(c - 0.1862) × plaster",
			srcMix, StatusDerived},
		func(f *Figures) float64 { return f.WaterToDry }, nil,
	},
	{
		Row{GroupPlaster, "dryingLeast", "Drying of a new mold, at the very least", 0, "h", 1,
			"water to dry out / (rate × open surface); the inside dries far slower: allow 1 to 2 weeks",
			"US Gypsum bulletin IG526 (0.01 g/cm² min in a typical shop); 1 week small, 10 to 14 days large (potters.org/subject81292)", StatusPublished},
		func(f *Figures) float64 { return f.DryingLeast }, func(f *Figures) bool { return f.DryingLeast > 0 },
	},
	{
		Row{GroupPlaster, "setRiseLow", "Warming as it sets in a thick mass, low", 0, "K", 0,
			"heat of setting / heat capacity, no heat lost",
			"Lewry & Williamson, J. Mater. Sci. 29 (1994) 5279; Wirsching in Ullmann's", StatusMemory},
		func(f *Figures) float64 { return f.SetRiseLow }, nil,
	},
	{
		Row{GroupPlaster, "setRiseHigh", "Warming as it sets in a thick mass, high", 0, "K", 0,
			"heat of setting / heat capacity, no heat lost",
			"Lewry & Williamson, J. Mater. Sci. 29 (1994) 5279; Wirsching in Ullmann's", StatusMemory},
		func(f *Figures) float64 { return f.SetRiseHigh }, nil,
	},
}
