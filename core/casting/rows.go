package casting

import "moldwright/core/words"

// A row is a figure with its words: what it is, in what unit, by which formula,
// from which source, how far to trust it. Page and sheets both print from here,
// so they can never show two values for one thing.

// How far a figure may be trusted.
var (
	StatusPublished = words.Say("published")                  // the figure or its constants were printed by the source named
	StatusDerived   = words.Say("derived")                    // follows from the formula by arithmetic alone
	StatusCommon    = words.Say("common practice, no source") // what shops do
	StatusMemory    = words.Say("from memory")                // a source is named, but was not at hand
)

// Groups of rows, in the order of the work. They are ids; Heading has the words.
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

// Heading is what a group is called.
func Heading(group string) words.Text {
	switch group {
	case GroupShrinkage:
		return words.Say("Shrinkage")
	case GroupPlaster:
		return words.Say("Plaster")
	case GroupSlip:
		return words.Say("Slip")
	case GroupWall:
		return words.SayIn("of the cast", "Wall")
	case GroupWater:
		return words.Say("The mold's water")
	case GroupWeights:
		return words.Say("Weights and capacity")
	case GroupForces:
		return words.Say("Forces")
	}
	return words.Say("Lifting")
}

// Row is one figure. Group is an id. Key is its JSON key in Figures; Digits is how many
// decimals are worth showing in its Unit.
type Row struct {
	Group   string     `json:"group"`
	Key     string     `json:"key"`
	Label   words.Text `json:"label"`
	Value   float64    `json:"value"`
	Unit    words.Text `json:"unit"`
	Digits  int        `json:"digits"`
	Formula words.Text `json:"formula"`
	Source  words.Text `json:"source"`
	Status  words.Text `json:"status"`
}

// Sources named by more than one row.
var (
	srcC326    = words.Plain("ASTM C326, Drying and Firing Shrinkages of Ceramic Whiteware Clays")
	srcMix     = words.Say("absolute volumes: hemihydrate 2.75 (CRC Handbook), dihydrate 2.32 g/ml (VCCTL constants), standard atomic weights")
	srcSheet   = words.Say("plaster maker's data sheet (US Gypsum: consistency 70, No. 1 pottery plaster; 74, IG1365; plaster.com: 65), or the density entered")
	srcBrong   = words.Plain("A. Brongniart, Traité des Arts Céramiques, vol. 1 (1854), p. 249; Cardew, Pioneer Pottery, p. 269")
	srcMeasure = words.Say("definition of the measure")
	srcBalance = words.Say("volumes of clay and water add; cast moisture at draining: Ryan & Radford, Whitewares (1987); Reed, Principles of Ceramics Processing")
	srcRoot    = words.Say("Ceramics 8(1) 6 (2025), introduction; Adcock & McDowall, J. Am. Ceram. Soc. 40 (1957) 355-362 (from memory); rate from the maker's own trial")
	srcIG526   = words.Plain("US Gypsum bulletin IG526 (rev. 4-03)")
	srcGeo     = words.Say("volume between the meridians of pot and cast")
	srcHydro   = words.Say("hydrostatics, g = 9.80665 m/s²")
	srcNIOSH   = words.Say("revised NIOSH lifting equation (CCOHS); asymmetry and limits of range from memory, DHHS (NIOSH) 94-110")
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
