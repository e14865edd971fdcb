package sheet

import (
	"math"
	"strings"

	"moldwright/core/form"
	"moldwright/core/job"
)

// Input is everything that a sheet may show, as plain values. Lengths are mm;
// Fired is at the size of the finished pot, everything else at mold size.
type Input struct {
	Name string
	// Fired and Wet are the outer surface from the axis under the foot to the
	// rim (r > 0) or back to the axis. Either may be empty where no sheet that
	// needs it is asked for.
	Fired, Wet []form.Point

	Verdict     string   // the verdict line, in words
	WhyNotFewer string   // why fewer parts do not do
	Chosen      string   // id of the chosen scheme
	Schemes     []Scheme // every scheme judged, fewest parts first
	Order       []string // part names, in the order they come off
	Traps       []Trap
	Cautions    []string
	Casting     []Figure
	Prints      []Print
	// Regions are the plaster parts cut by the half-plane, to be hatched; the
	// picture goes without plaster where there are none.
	Regions []Region
}

// Scheme is one way to part the mold, judged.
type Scheme struct {
	ID             string
	Count          int
	Verdict        string // clear, rubs or catches
	PartingHeights []float64
	Parts          []Part
}

// Part is one plaster part of a scheme.
type Part struct {
	Name            string
	Pull            [3]float64 // unit vector
	ZFrom, ZTo      float64
	Verdict         string
	MinDraftDeg     float64
	RubbingAreaCM2  float64
	RubSharePercent float64
	Catches         []Catch
	PlasterG        float64
	WaterG          float64
}

// Catch is a stretch of a part that the pot stands in the way of.
type Catch struct {
	ZFrom, ZTo   float64
	DepthMM      float64
	BlockedAtZ   float64
	ClayForgives bool // the shrunken cast lets go, only the positive catches
}

// Trap is a space that no pull frees.
type Trap struct {
	ZFrom, ZTo float64
	DepthMM    float64
	VolumeML   float64
}

// Figure is one row of a table of figures.
type Figure struct{ Label, Value, Unit string }

// Print is one printed piece.
type Print struct {
	Name    string
	Size    [3]float64
	FitsBed bool
}

// Region is a closed outline in the half-plane, lettered and hatched.
type Region struct {
	Letter  string
	Outline []form.Point
}

// chosen is the scheme that was chosen, or nil.
func (in *Input) chosen() *Scheme {
	for i := range in.Schemes {
		if in.Schemes[i].ID == in.Chosen {
			return &in.Schemes[i]
		}
	}
	return nil
}

// MaxLengthMM is the largest radius or height that a sheet is drawn of.
const MaxLengthMM = 3000

// checkLine refuses a profile that cannot be drawn.
func checkLine(field string, pts []form.Point) error {
	if len(pts) < 2 {
		return job.Faultf("no-profile", field, "There is no profile to draw. Give at least two points.")
	}
	for _, p := range pts {
		// The negated form also refuses NaN.
		if !(math.Abs(p.R) <= MaxLengthMM && math.Abs(p.Z) <= MaxLengthMM) {
			return job.Faultf("size", field, "A sheet is drawn of profiles up to %d mm. Check the units.", MaxLengthMM)
		}
	}
	return nil
}

// silhouette is a profile with the places that dimensions refer to.
type silhouette struct {
	pts          []form.Point
	height, maxR float64
	maxRZ        float64 // height of the widest place
	footR        float64 // outer edge of the foot on the ground
	rim          form.Point
	open         bool
}

// newSilhouette stands the profile on z = 0 and finds its main places.
func newSilhouette(pts []form.Point) silhouette {
	low := pts[0].Z
	for _, p := range pts {
		low = math.Min(low, p.Z)
	}
	s := silhouette{pts: make([]form.Point, len(pts))}
	for i, p := range pts {
		q := form.Point{R: math.Max(p.R, 0), Z: p.Z - low}
		s.pts[i] = q
		s.height = math.Max(s.height, q.Z)
		if q.R > s.maxR {
			s.maxR, s.maxRZ = q.R, q.Z
		}
		if q.Z < 0.01 {
			s.footR = math.Max(s.footR, q.R)
		}
	}
	s.rim = s.pts[len(s.pts)-1]
	s.open = s.rim.R > 0.05
	return s
}

// radiusAt is the outermost radius at the height z, 0 where the profile does
// not reach it.
func (s *silhouette) radiusAt(z float64) float64 {
	r := 0.0
	for i := 1; i < len(s.pts); i++ {
		a, b := s.pts[i-1], s.pts[i]
		if (a.Z-z)*(b.Z-z) > 0 {
			continue
		}
		if a.Z == b.Z {
			r = math.Max(r, math.Max(a.R, b.R))
			continue
		}
		r = math.Max(r, a.R+(b.R-a.R)*((z-a.Z)/(b.Z-a.Z)))
	}
	return r
}

// title is the name to show, or what stands for a pot without one.
func (in *Input) title() string {
	if name := tidy(in.Name); name != "" {
		return name
	}
	return "Unnamed pot"
}

// tidy drops what has no place in a line of text: control and direction
// marks, line breaks, doubled spaces.
func tidy(s string) string {
	var b strings.Builder
	for _, r := range strings.ToValidUTF8(s, "") {
		switch {
		case r == '\u00a0':
			b.WriteRune(r)
		case r <= ' ' || r == 0x7f || (r >= 0x80 && r < 0xa0) || r == '\u2028' || r == '\u2029':
			b.WriteByte(' ')
		case (r >= '\u200b' && r <= '\u200f') || (r >= '\u202a' && r <= '\u202e') || (r >= '\u2060' && r <= '\u2069') || r == '\ufeff' || r == '\u00ad':
			// invisible marks
		default:
			b.WriteRune(r)
		}
	}
	return strings.Join(strings.FieldsFunc(b.String(), func(r rune) bool { return r == ' ' }), " ")
}
