package sheet

import (
	"math"
	"strings"
	"unicode/utf8"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// Input is everything that a sheet may show, as plain values. Lengths are mm;
// Fired is at the size of the finished pot, everything else at mold size.
type Input struct {
	// Language is that of the sheet; what is given in words is in it already.
	Language words.Language
	Name     string
	// Fired and Wet are the outer surface from the axis under the foot to the
	// rim (r > 0) or back to the axis. Either may be empty where no sheet that
	// needs it is asked for.
	Fired, Wet []form.Point
	// Rims and RimsLeft are what is seen of the rims of dimples on the right and on
	// the left half of the fresh cast, r being how far off the axis they are seen.
	Rims, RimsLeft [][]form.Point

	// Inner is the inside of the wet cast, from the axis up to the mouth; empty
	// where the pot is cast solid.
	Inner []form.Point
	Solid *SolidWall // of a pot cast solid: Inner is a surface of its own, formed by a core

	Verdict     string   // the verdict line, in words
	WhyNotFewer string   // said where no scheme has fewer parts
	Chosen      string   // id of the chosen scheme
	Schemes     []Scheme // every scheme judged, fewest parts first
	Order       []string // letters of the parts, in the order they come off
	Traps       []Trap
	Findings    []Finding
	Cautions    []string
	Prints      []Print
	Mold        Mold

	Traced *Traced // of a form that was traced from a picture

	Casting      []Figure // every casting figure, in the order of the work
	Batches      []Batch
	LaterMinutes []float64 // casting times of a day's casts, the first one first
	Assumed      []Figure  // what the plan rests on: settings with their source
}

// Traced is how good a traced form is, at the size of the finished pot.
type Traced struct {
	RMSMM, MaxMM float64 // from the contour that was seen
	BandMM       float64 // half the band that holds the true profile
	NotSeen      []Gap   // heights above the foot
}

// Gap is a stretch of heights of which a picture tells nothing.
type Gap struct {
	ZFrom, ZTo float64
	Why        string
}

// words tell a trace in one sentence or two, at a scale of the finished size.
func (t *Traced) words(l tongue, scale float64) string {
	s := l.say("Traced from a picture: the true profile lies within %s mm either way; the line is off the contour seen by %s mm (RMS), %s mm at most.",
		l.num(scale*t.BandMM, 2), l.num(scale*t.RMSMM, 2), l.num(scale*t.MaxMM, 2))
	var gaps []string
	for _, g := range t.NotSeen {
		gaps = append(gaps, g.words(l, scale))
	}
	if len(gaps) > 0 {
		s += " " + l.say("Not seen, and drawn by guess: %s.", strings.Join(gaps, ", "))
	}
	return s
}

// words are the heights and the reason; of a place without height, as the
// ground under a foot is, the reason alone.
func (g *Gap) words(l tongue, scale float64) string {
	if g.Why != "" && scale*(g.ZTo-g.ZFrom) < 0.05 {
		return g.Why
	}
	s := l.say("%s to %s", l.num(scale*g.ZFrom, 1), l.mm1(scale*g.ZTo))
	if g.Why != "" {
		s += " (" + g.Why + ")"
	}
	return s
}

// Scheme is one way to part the mold, judged.
type Scheme struct {
	ID             string
	Name           string // its parts in words
	Against        string // what stands against it, in words
	Count          int
	Verdict        string // clear, rubs or catches
	PartingHeights []float64
	Parts          []Part
	// Regions are its plaster parts cut by the half-plane, to be hatched; of
	// side parts, which are alike, only the first. A picture goes without
	// plaster where there are none.
	Regions []Region
}

// Part is one plaster part of a scheme.
type Part struct {
	Letter          string // L, U, A, B, … as on the drawings
	Name            string // lower part, upper part, side part, in words
	Side            bool
	Sector          [2]float64 // of a side part: degrees about the axis, from and to
	Pull            [3]float64 // unit vector
	ZFrom, ZTo      float64
	Verdict         string
	MinDraftDeg     float64
	RubbingAreaCM2  float64
	RubSharePercent float64
	Bands           []Band
	Catches         []Catch
	PlasterG        float64
	WaterG          float64
	DryG            float64
}

// Band is the pot surface of a part with a draft from FromDeg up to ToDeg.
type Band struct {
	FromDeg, ToDeg float64
	AreaCM2        float64
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

// Finding is something to know about the chosen scheme, and what to do.
type Finding struct{ Text, Remedy string }

// Figure is one row of a table of figures. Key names a casting figure; a
// setting has none.
type Figure struct {
	Key, Group, Label, Value, Unit string
	Formula, Source, Status        string
}

// words are the figure's value and unit.
func (g *Figure) words() string {
	if g.Unit == "" {
		return g.Value
	}
	return g.Value + nbsp + g.Unit
}

// Batch is the buckets for one part: so many, each of so much.
type Batch struct {
	Letter           string
	Count            int
	WaterG, PlasterG float64
}

// Print is one printed piece, or several alike.
type Print struct {
	Name    string
	Size    [3]float64
	FitsBed bool
	// Of a piece that every side part has one of: which it is, and the part's
	// letter.
	Each   EachPart
	Letter string
}

// EachPart tells the pieces that every side part has one of.
type EachPart int

const (
	NoPart EachPart = iota // one of a kind, or of several alike
	Tray
	LowerEnd
	UpperEnd
)

// Region is a closed outline in the half-plane, lettered and hatched.
type Region struct {
	Letter  string
	Side    bool
	Outline []form.Point
	Pot     int // so many points, from the first, are of the pot, the opening or the drain
}

// Mold is the closed mold of the chosen scheme beyond its parts.
type Mold struct {
	// Opening runs from the pot's mouth through the plaster to the top.
	Opening       []form.Point
	Drain         []form.Point // the wall of the hole through the foot, from the block's foot up; or none
	Spare         bool         // else it is a fill hole
	TrimZ         float64
	Radius        float64 // of the block at its widest
	ZBottom, ZTop float64
	Natches       []Natch
	// Dimples are those of the wall in the half-plane, a line for each row, as if
	// one lay in it.
	Dimples [][]form.Point
	// Block and Pot tell how far the block and the pot stand from the axis
	// around it, at equal steps of azimuth from 0: of the block over Radius, of
	// the pot over the radii of its profile. Empty where round.
	Block, Pot []float64
}

// Natch is a dome; its socket in the neighbour is not told apart.
type Natch struct {
	Letter   string // of the part that carries it
	At       form.Point
	Azimuth  float64 // degrees
	RadiusMM float64 // of its base
	RiseMM   float64 // of the dome: up where positive, in a level seam
	Level    bool    // in a level seam, else in an upright one
}

// mostReach is the greatest value of Block.
func (m *Mold) mostReach() float64 {
	most := 1.0
	for _, v := range m.Block {
		most = math.Max(most, v)
	}
	return most
}

// around is the value of a shape around the axis at an azimuth in degrees.
func around(shape []float64, deg float64) float64 {
	n := len(shape)
	if n == 0 {
		return 1
	}
	at := math.Mod(math.Mod(deg, 360)+360, 360) / 360 * float64(n)
	i := int(at)
	return shape[i%n] + (shape[(i+1)%n]-shape[i%n])*(at-float64(i))
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

// sides are the side parts.
func (s *Scheme) sides() (out []Part) {
	for _, p := range s.Parts {
		if p.Side {
			out = append(out, p)
		}
	}
	return out
}

// axial are the letters of the parts that are pulled up, and down.
func (s *Scheme) axial() (up, down string) {
	add := func(list *string, letter string) {
		if *list != "" {
			*list += ", "
		}
		*list += letter
	}
	for _, p := range s.Parts {
		switch {
		case p.Pull[2] > 0.5:
			add(&up, p.Letter)
		case p.Pull[2] < -0.5:
			add(&down, p.Letter)
		}
	}
	return up, down
}

// shownSides are the side parts that a section shows at the right and at the
// left of the axis: the first, and the one over against it; of three the
// second, since none is opposite. They are no parts where there are none.
func (s *Scheme) shownSides() (right, left Part) {
	if all := s.sides(); len(all) > 0 {
		right, left = all[0], all[len(all)/2]
	}
	return right, left
}

// part is the part of the chosen scheme with the letter, or nil.
func (in *Input) part(letter string) *Part {
	if s := in.chosen(); s != nil {
		for i := range s.Parts {
			if s.Parts[i].Letter == letter {
				return &s.Parts[i]
			}
		}
	}
	return nil
}

// named is the name of the part with the letter.
func (in *Input) named(letter string) string {
	if p := in.part(letter); p != nil {
		return p.Name
	}
	return ""
}

// figure is the casting figure of the key, or nil.
func (in *Input) figure(key string) *Figure {
	for i := range in.Casting {
		if in.Casting[i].Key == key {
			return &in.Casting[i]
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

// lowest is the height of the lowest point.
func lowest(pts []form.Point) float64 {
	low := pts[0].Z
	for _, q := range pts {
		low = math.Min(low, q.Z)
	}
	return low
}

// newSilhouette stands the profile on z = 0 and finds its main places.
func newSilhouette(pts []form.Point) silhouette {
	low := lowest(pts)
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
	return tongueOf(in.Language).say("Unnamed pot")
}

// tidy drops what has no place in a line of text: control and direction
// marks, line breaks, doubled spaces.
func tidy(s string) string {
	if isTidy(s) {
		return s
	}
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

// isTidy tells whether tidy would leave the text as it is.
func isTidy(s string) bool {
	space := true
	for _, r := range s {
		switch {
		case r == ' ' && space, r < ' ', r >= 0x7f && r < 0xa0, r == '\u00ad', r >= '\u200b' && r <= '\u200f', r >= '\u2028' && r <= '\u202e',
			r >= '\u2060' && r <= '\u2069', r == '\ufeff', r == utf8.RuneError:
			return false
		}
		space = r == ' '
	}
	return !space || s == ""
}
