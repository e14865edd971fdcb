// Package job holds the document a user saves: one pot and everything that
// its mold is planned from. It reads, checks, completes and writes that
// document, and knows nothing of geometry.
//
// Lengths are mm, shrinkages percent linear, masses g, volumes ml, times min.
package job

// Format and Version name the document; Read refuses any other.
const (
	Format  = "moldwright-job"
	Version = 1
)

// Job is the whole document. Every key but Form.Outer may be left out of the
// file; Defaults says what stands in its place.
type Job struct {
	Format  string  `json:"format"`
	Version int     `json:"version"`
	Name    string  `json:"name"`
	Form    Form    `json:"form"`
	Clay    Clay    `json:"clay"`
	Plaster Plaster `json:"plaster"`
	Casting Casting `json:"casting"`
	Printer Printer `json:"printer"`
	Rules   Rules   `json:"rules"`
	Mold    Mold    `json:"mold"`
}

// Sizes at which a form may be given.
const (
	SizeFired = "fired" // lengths of the finished pot
	SizeMold  = "mold"  // lengths of the wet cast, as the mold has them
)

// Form is the shape of the pot.
type Form struct {
	// Size says whether lengths are those of the fired pot or of the mold.
	Size string `json:"size"`
	// Outer runs from the axis under the foot, out, up, and to the rim
	// (r > 0, an open form) or back to the axis (a closed form).
	Outer []Node `json:"outer"`
	// Inner is the inner surface of a solid-cast form, in the same order as
	// Outer; nil where the pot is drain cast.
	Inner []Node `json:"inner"`
	// Section is the cross-section across the axis.
	Section Section `json:"section"`
	// Traced is where a traced form came from and how good it is; nil for one
	// that was typed or drawn.
	Traced *Traced `json:"traced,omitempty"`
}

// Traced is what a picture told of a form, mm in the size of the form.
type Traced struct {
	// RMS and Max are how far the form lies from the contour that was seen;
	// ErrorBand is half the width of the band that holds the true profile.
	RMS       float64 `json:"rms"`
	Max       float64 `json:"max"`
	ErrorBand float64 `json:"errorBand"`
	// NotSeen are the heights that the camera cannot have seen.
	NotSeen []Gap `json:"notSeen"`
	// Contour is the raw contour, r and z, foot to rim.
	Contour [][2]float64 `json:"contour"`
}

// Gap is a stretch of heights in mm, and why nothing is known of it, in English
// whatever the language: a file is the same in all of them.
type Gap struct {
	ZFrom float64 `json:"zFrom"`
	ZTo   float64 `json:"zTo"`
	Why   string  `json:"why"`
}

// Node is one point of a profile, in mm. Corner is a sharp node; a node
// without it is smooth; between two corners the stretch is straight.
type Node struct {
	R      float64 `json:"r"`
	Z      float64 `json:"z"`
	Corner bool    `json:"corner,omitempty"`
}

// The kinds of cross-section. Whatever the kind, r of the profile is the
// section's largest radius, and every height has the same section, scaled.
const (
	SectionRound   = "round"
	SectionOval    = "oval"    // an ellipse, Ratio as wide one way as the other
	SectionPolygon = "polygon" // a regular polygon of Count faces, its corners rounded
	SectionFlutes  = "flutes"  // Count hollows around, Depth deep
)

// Section is the shape of a cut across the axis.
type Section struct {
	Kind string `json:"kind"`
	// Ratio of an oval is its narrow width over its wide one, 0.2 to 1.
	Ratio float64 `json:"ratio,omitempty"`
	// Count is the number of faces of a polygon, or of flutes.
	Count int `json:"count,omitempty"`
	// Rounding of a polygon's corners is their radius in percent of the
	// distance from the axis to a face; 0 is sharp, 100 round.
	Rounding float64 `json:"rounding,omitempty"`
	// Depth of flutes is percent of the radius.
	Depth float64 `json:"depth,omitempty"`
	// Dimples are a pattern of hollows in the wall; nil for none.
	Dimples *Dimples `json:"dimples,omitempty"`
}

// Dimples are round hollows, caps of a sphere, in rows around the wall.
type Dimples struct {
	Around int `json:"around"` // in a row
	// Heights of the rows in mm, in the size and from the zero of the form.
	Heights  []float64 `json:"heights"`
	Diameter float64   `json:"diameter"` // mm, in the size of the form
	Depth    float64   `json:"depth"`    // mm
}

// Clay is the body and how it casts.
type Clay struct {
	// DryingShrinkage is percent of the wet length (ASTM C326).
	DryingShrinkage float64 `json:"dryingShrinkage"`
	// FiringShrinkage is percent of the dry length (ASTM C326).
	FiringShrinkage float64 `json:"firingShrinkage"`
	// ReleaseShrinkage is what the cast has shrunk when it leaves the mold,
	// percent of the wet length.
	ReleaseShrinkage float64 `json:"releaseShrinkage"`
	// Wall is the wanted wet wall of the cast, mm.
	Wall float64 `json:"wall"`
	// SlipDensity and SolidsDensity are g/ml.
	SlipDensity   float64 `json:"slipDensity"`
	SolidsDensity float64 `json:"solidsDensity"`
	// TestCast is the maker's own trial, from which the casting rate follows.
	TestCast TestCast `json:"testCast"`
}

// TestCast is a trial: a wall of so many mm after so many minutes.
type TestCast struct {
	Wall    float64 `json:"wall"`
	Minutes float64 `json:"minutes"`
}

// Plaster is the mix and the block.
type Plaster struct {
	// Consistency is parts of water to 100 parts of plaster, by weight.
	Consistency float64 `json:"consistency"`
	// Wall is the least plaster around the pot, Base below (and above a
	// closed form), mm.
	Wall float64 `json:"wall"`
	Base float64 `json:"base"`
	// Outside is the block in plan: OutsideRound or OutsideStraight. A mold
	// with side parts is straight-sided whatever this says.
	Outside string `json:"outside"`
}

// The two outsides of a block.
const (
	OutsideRound    = "round"
	OutsideStraight = "straight"
)

// Printer is what the tooling is printed on.
type Printer struct {
	Bed       [3]float64 `json:"bed"`       // mm, x y z
	Layer     float64    `json:"layer"`     // mm
	Clearance float64    `json:"clearance"` // mm, a side
	Shell     float64    `json:"shell"`     // mm, the wall of a hollow piece
	Nozzle    float64    `json:"nozzle"`    // mm; no wall is thinner than two of its lines
	Solid     bool       `json:"solid"`     // positives are printed full, not hollow from below
}

// Rules decide between clear and rubs.
type Rules struct {
	// LeastDraft is degrees. Where the file leaves it out it follows from the
	// layer height, see LeastDraftFor.
	LeastDraft float64 `json:"leastDraft"`
	// RubShare is the percent of a part's pot surface that may lie below
	// LeastDraft before the part is said to rub.
	RubShare float64 `json:"rubShare"`
}

// SchemeAuto lets the planner choose.
const SchemeAuto = "auto"

// Mold is what the user has settled about the mold.
type Mold struct {
	// Scheme is SchemeAuto or the id of a scheme, e.g. "sides2+lower".
	Scheme string `json:"scheme"`
	// PartingHeights are mm above the foot at mold size, lowest first; nil
	// lets the planner choose.
	PartingHeights []float64 `json:"partingHeights"`
	// Sides is the number of side parts; nil lets the planner choose.
	Sides *int `json:"sides"`
	// FillHole and DrainHole are diameters in mm; nil is none, or the
	// planner's choice where a closed form cannot do without.
	FillHole  *float64 `json:"fillHole"`
	DrainHole *float64 `json:"drainHole"`
	// Spare is nil for a mold without one.
	Spare *Spare `json:"spare"`
	// Staves is the number of cottle staves, 1 to 4.
	Staves  int  `json:"staves"`
	Natches bool `json:"natches"`
	// StrapGrooves are grooves round the side parts, in which bands lie.
	StrapGrooves bool `json:"strapGrooves"`
}

// Spare is the reservoir above the trim line; Height is mm.
type Spare struct {
	Height float64 `json:"height"`
	// Flared lets the spare widen upward in an upper part too, where it would
	// else narrow so that the part lifts off it. A plug of its own then forms
	// it, drawn before the part is lifted, and its clay is cut out first.
	Flared bool `json:"flared,omitempty"`
}

// Defaults is a job with no form, every other key as the planner takes it
// where the file leaves it out. Plaster and slip figures are common working
// values for pottery plaster and earthenware slip; common practice, no source.
func Defaults() Job {
	return Job{
		Format: Format, Version: Version,
		Form: Form{Size: SizeFired, Section: Section{Kind: SectionRound}},
		Clay: Clay{DryingShrinkage: 6, FiringShrinkage: 7, ReleaseShrinkage: 1.5, Wall: 4,
			SlipDensity: 1.75, SolidsDensity: 2.6, TestCast: TestCast{Wall: 3, Minutes: 10}},
		Plaster: Plaster{Consistency: 70, Wall: 30, Base: 30, Outside: OutsideRound},
		Casting: DefaultCasting(),
		Printer: Printer{Bed: [3]float64{220, 220, 250}, Layer: 0.2, Clearance: 0.3, Shell: 2.4, Nozzle: 0.4},
		Rules:   Rules{LeastDraft: LeastDraftFor(0.2), RubShare: 5},
		Mold:    Mold{Scheme: SchemeAuto, Spare: &Spare{Height: 20}, Staves: 2, Natches: true, StrapGrooves: true},
	}
}

// LeastDraftFor is the least draft in degrees for a wall printed in layers of
// the given height in mm: 1 degree, and 1 degree more for each 0.025 mm of
// ridge depth (texture rule of injection molding practice; by analogy), the
// ridge taken as a quarter of the layer.
func LeastDraftFor(layer float64) float64 { return 1 + 0.25*layer/0.025 }

// Shrinkage is the total linear shrinkage S of the clay as a fraction:
// 1 - (1-d)(1-f), drying on wet length and firing on dry length.
func (c Clay) Shrinkage() float64 {
	return 1 - (1-c.DryingShrinkage/100)*(1-c.FiringShrinkage/100)
}

// Scale is the factor from the lengths of the form as given to mold size.
func (j *Job) Scale() float64 {
	if j.Form.Size == SizeMold {
		return 1
	}
	return 1 / (1 - j.Clay.Shrinkage())
}
