package casting

// A row is a figure with its words: what it is, in what unit, by which formula,
// from which source, how far to trust it. Page and sheets both print from here,
// so they can never show two values for one thing.

// How far a figure may be trusted.
const (
	StatusPublished = "published"                  // the figure or its constants were printed by the source named
	StatusDerived   = "derived"                    // follows from the formula by arithmetic alone
	StatusCommon    = "common practice, no source" // what shops do
	StatusMemory    = "from memory"                // a source is named, but was not at hand
)

// Groups of rows, in the order of the work.
const (
	GroupShrinkage = "Shrinkage"
	GroupPlaster   = "Plaster"
	GroupSlip      = "Slip"
	GroupWall      = "Wall"
	GroupWater     = "The mold's water"
	GroupWeights   = "Weights and capacity"
	GroupForces    = "Forces"
	GroupLifting   = "Lifting"
)

// Row is one figure. Key is its JSON key in Figures; Digits is how many
// decimals are worth showing in its Unit.
type Row struct {
	Group   string  `json:"group"`
	Key     string  `json:"key"`
	Label   string  `json:"label"`
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"`
	Digits  int     `json:"digits"`
	Formula string  `json:"formula"`
	Source  string  `json:"source"`
	Status  string  `json:"status"`
}

// Sources named by more than one row.
const (
	srcC326    = "ASTM C326, Drying and Firing Shrinkages of Ceramic Whiteware Clays"
	srcMix     = "absolute volumes: hemihydrate 2.75 (CRC Handbook), dihydrate 2.32 g/ml (VCCTL constants), standard atomic weights"
	srcSheet   = "plaster maker's data sheet (US Gypsum: consistency 70, No. 1 pottery plaster; 74, IG1365; plaster.com: 65), or the density entered"
	srcBrong   = "A. Brongniart, Traité des Arts Céramiques, vol. 1 (1854), p. 249; Cardew, Pioneer Pottery, p. 269"
	srcMeasure = "definition of the measure"
	srcBalance = "volumes of clay and water add; cast moisture at draining: Ryan & Radford, Whitewares (1987); Reed, Principles of Ceramics Processing"
	srcRoot    = "Ceramics 8(1) 6 (2025), introduction; Adcock & McDowall, J. Am. Ceram. Soc. 40 (1957) 355-362 (from memory); rate from the maker's own trial"
	srcIG526   = "US Gypsum bulletin IG526 (rev. 4-03)"
	srcGeo     = "volume between the meridians of pot and cast"
	srcHydro   = "hydrostatics, g = 9.80665 m/s²"
	srcNIOSH   = "revised NIOSH lifting equation (CCOHS); asymmetry and limits of range from memory, DHHS (NIOSH) 94-110"
)

// rowSpec is a row without its value: where the value is found, and when the
// row says anything (nil is always).
type rowSpec struct {
	Row
	value func(*Figures) float64
	when  func(*Figures) bool
}

// Rows are the figures that apply to this mold, in the order of the work.
func (f *Figures) Rows() []Row {
	var rows []Row
	for _, specs := range [][]rowSpec{clayRows, plasterRows, slipRows, wallRows, waterRows, weightRows, forceRows, liftingRows} {
		for i := range specs {
			s := &specs[i]
			if s.when != nil && !s.when(f) {
				continue
			}
			r := s.Row
			r.Value = s.value(f)
			rows = append(rows, r)
		}
	}
	return rows
}
