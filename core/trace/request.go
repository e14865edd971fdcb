// Package trace turns a photo or a scan of a pot into profile nodes, and reads
// and writes profiles as SVG paths. A silhouette is found against its
// surroundings, brought to sub-pixel accuracy, set upright on its axis of
// symmetry, freed of perspective in closed form, and fitted with few nodes by
// the curve rule of package form. Every result says how good it is in mm.
//
// Limits: the camera is level (its picture plane parallel to the pot's axis)
// and free of lens distortion; what a camera cannot see (the underside of the
// foot, hollows behind a shoulder) is marked, not guessed.
package trace

import (
	"encoding/json"
	"math"

	"moldwright/core/job"
	"moldwright/core/words"
)

// MaxPixels is the largest picture taken; a larger one is scaled by the page.
const MaxPixels = 100_000_000

// Known lengths a picture can be scaled by.
const (
	ScaleHeight      = "height"      // foot to rim
	ScaleMaxDiameter = "maxDiameter" // widest place
	ScaleRimDiameter = "rimDiameter" // outside of the rim
	ScaleBar         = "bar"         // two points in the picture
)

// Modes of a request.
const (
	ModePhoto  = "photo"  // a pot before a background
	ModeSketch = "sketch" // a line drawn on paper
)

// Sides of the pot that a profile can be taken from.
const (
	SideLeft  = "left"
	SideRight = "right"
	SideMean  = "mean"
)

// Tops of a form.
const (
	TopAuto   = "auto"   // as the outline suggests
	TopOpen   = "open"   // ends at a rim
	TopClosed = "closed" // ends on the axis
)

// Request says what to trace. Pixels are counted from the upper left corner of
// the picture, x to the right, y down; the middle of the first pixel is at
// (0.5, 0.5). Lengths are mm.
type Request struct {
	Width  int         `json:"width"`
	Height int         `json:"height"`
	Crop   *[4]float64 `json:"crop,omitempty"` // x, y, width, height in pixels
	Mode   string      `json:"mode,omitempty"` // photo unless told
	Scale  Scale       `json:"scale"`
	Camera Camera      `json:"camera"`
	Side   string      `json:"side,omitempty"` // mean unless told
	Top    string      `json:"top,omitempty"`  // auto unless told
	Size   string      `json:"size,omitempty"` // fired unless told
	// Point is a place on the wanted pot, where there are several.
	Point *[2]float64 `json:"point,omitempty"`
	// Axis is two points on the pot's axis; nil finds it by symmetry. A single
	// drawn or wired side needs it.
	Axis  *[4]float64 `json:"axis,omitempty"`
	Brush []Stroke    `json:"brush,omitempty"`
	Wire  *Wire       `json:"wire,omitempty"`
	// ToleranceMM is the largest distance wanted between the outline and the
	// fitted curve; 0 takes what suits the size and the picture.
	ToleranceMM float64 `json:"tolerance,omitempty"`
	// Draft stops at the first outline: no nodes, no scale needed.
	Draft bool `json:"draft,omitempty"`
}

// Scale is one known length. A bare number in its place is mm per pixel in the
// plane of the axis.
type Scale struct {
	What string  `json:"what"`
	MM   float64 `json:"mm"`
	// X0, Y0 to X1, Y1 are the ends of a bar in the picture.
	X0 float64 `json:"x0,omitempty"`
	Y0 float64 `json:"y0,omitempty"`
	X1 float64 `json:"x1,omitempty"`
	Y1 float64 `json:"y1,omitempty"`
	// InFrontMM is how far the bar stood before the pot's axis.
	InFrontMM float64 `json:"inFront,omitempty"`
}

// UnmarshalJSON takes the object, or a number of mm per pixel.
func (s *Scale) UnmarshalJSON(text []byte) error {
	var perPixel float64
	if json.Unmarshal(text, &perPixel) == nil {
		*s = Scale{What: ScaleBar, MM: perPixel, X1: 1}
		return nil
	}
	type plain Scale
	return json.Unmarshal(text, (*plain)(s))
}

// Camera is where the picture was taken from; what is nil is found from the
// rim and foot ellipses, as far as they show it.
type Camera struct {
	DistanceMM *float64 `json:"distance,omitempty"` // lens to the pot's axis
	HeightMM   *float64 `json:"height,omitempty"`   // lens above the table
	// OpticalRow is the picture's row at the height of the lens: the middle row
	// of a level, uncropped picture.
	OpticalRow *float64 `json:"opticalRow,omitempty"`
	// FocalPixels is the focal length in pixels; with it the distance follows
	// from the scale.
	FocalPixels *float64 `json:"focalPixels,omitempty"`
}

// Stroke is a round brush drawn over the picture.
type Stroke struct {
	Kind   string       `json:"kind"` // "exclude" or "include"
	Radius float64      `json:"radius"`
	Points [][2]float64 `json:"points"`
}

// Wire is a few points on the edge that the outline is led through: all around
// the pot when Closed, else along one side from the foot to the rim.
type Wire struct {
	Points [][2]float64 `json:"points"`
	Closed bool         `json:"closed,omitempty"`
}

// ReadRequest reads a request from JSON; the error is a *job.Fault.
func ReadRequest(text []byte) (Request, error) {
	var r Request
	if err := json.Unmarshal(text, &r); err != nil {
		return r, job.Faultf("badRequest", "", "The request to trace cannot be read: %s.", err)
	}
	return r, nil
}

const mostPoints = 10_000 // of a stroke or a wire, far more than a hand makes

// check fills in what is left out and finds what no picture has.
func (r *Request) check(bytes int) *job.Fault {
	or := func(s *string, d string) {
		if *s == "" {
			*s = d
		}
	}
	or(&r.Mode, ModePhoto)
	or(&r.Side, SideMean)
	or(&r.Top, TopAuto)
	or(&r.Size, job.SizeFired)
	oneOf := func(field, v string, allowed ...string) *job.Fault {
		for _, a := range allowed {
			if v == a {
				return nil
			}
		}
		return job.Faultf("badValue", field, "%s is %q; it takes one of %q.", field, v, allowed)
	}
	for _, f := range []*job.Fault{
		oneOf("mode", r.Mode, ModePhoto, ModeSketch),
		oneOf("side", r.Side, SideLeft, SideRight, SideMean),
		oneOf("top", r.Top, TopAuto, TopOpen, TopClosed),
		oneOf("size", r.Size, job.SizeFired, job.SizeMold),
	} {
		if f != nil {
			return f
		}
	}
	if r.Width <= 0 || r.Height <= 0 || bytes == 0 {
		return job.Faultf("emptyPicture", "width", "The picture is empty; open a photo or a scan.")
	}
	if r.Width > MaxPixels/r.Height {
		return job.Faultf("pictureTooLarge", "width", "The picture has %d by %d pixels; scale it below %d megapixels first.", r.Width, r.Height, MaxPixels/1_000_000)
	}
	if bytes != 4*r.Width*r.Height {
		return job.Faultf("wrongPixels", "width", "The picture should hold %d bytes (%d by %d pixels of 4) but holds %d.", 4*r.Width*r.Height, r.Width, r.Height, bytes)
	}
	numbers := func(field string, vs ...float64) *job.Fault {
		for _, v := range vs {
			if math.IsNaN(v) || math.Abs(v) > 1e7 {
				return job.Faultf("badValue", field, "%s holds %g, which is no length or place in a picture.", field, v)
			}
		}
		return nil
	}
	positive := func(field string, v *float64, least, most float64) *job.Fault {
		if v != nil && !(*v >= least && *v <= most) {
			return job.Faultf("badValue", field, "%s is %g; it lies between %g and %g.", field, *v, least, most)
		}
		return nil
	}
	c := &r.Camera
	for _, f := range []*job.Fault{
		numbers("scale", r.Scale.MM, r.Scale.X0, r.Scale.Y0, r.Scale.X1, r.Scale.Y1, r.Scale.InFrontMM),
		positive("camera.distance", c.DistanceMM, 50, 1e5),
		positive("camera.height", c.HeightMM, -1e4, 1e4),
		positive("camera.opticalRow", c.OpticalRow, -1e6, 1e6),
		positive("camera.focalPixels", c.FocalPixels, 10, 1e6),
		positive("tolerance", &r.ToleranceMM, 0, 20),
	} {
		if f != nil {
			return f
		}
	}
	for _, v := range []*[4]float64{r.Crop, r.Axis} {
		if v != nil {
			if f := numbers("crop", v[:]...); f != nil {
				return f
			}
		}
	}
	if r.Axis != nil && math.Hypot(r.Axis[2]-r.Axis[0], r.Axis[3]-r.Axis[1]) < 3 {
		return job.Faultf("badValue", "axis", "The two points of the axis lie on top of one another; set them far apart.")
	}
	if r.Point != nil {
		if f := numbers("point", r.Point[:]...); f != nil {
			return f
		}
	}
	total := 0
	for _, s := range r.Brush {
		if f := oneOf("brush.kind", s.Kind, "exclude", "include"); f != nil {
			return f
		}
		if f := numbers("brush", s.Radius); f != nil {
			return f
		}
		for _, p := range s.Points {
			if f := numbers("brush", p[:]...); f != nil {
				return f
			}
		}
		total += len(s.Points)
	}
	if r.Wire != nil {
		for _, p := range r.Wire.Points {
			if f := numbers("wire", p[:]...); f != nil {
				return f
			}
		}
		total += len(r.Wire.Points)
		if len(r.Wire.Points) < 2 || (r.Wire.Closed && len(r.Wire.Points) < 3) {
			return job.Faultf("tooFewPoints", "wire.points", "The edge needs at least 2 points along one side, or 3 around the pot.")
		}
	}
	if total > mostPoints {
		return job.Faultf("tooManyPoints", "brush", "There are %d points in the brush strokes and the wire; use at most %d.", total, mostPoints)
	}
	return nil
}

// Result is the profile and how it came about.
type Result struct {
	Form    job.Form `json:"form"`
	Quality Quality  `json:"quality"`
	// Outline is the silhouette found, in pixels, all around or along one side.
	Outline [][2]float64 `json:"outline"`
	// Contour is what the nodes were fitted to: r and z in mm, foot to rim.
	Contour [][2]float64 `json:"contour"`
	// Axis is the axis in pixels, foot first.
	Axis [4]float64 `json:"axis"`
	// Seat is where r = 0, z = 0 of the profile lies in the picture, in pixels:
	// on the axis, above the lowest place of the outline by what a foot's front
	// edge, nearer to the lens, shows below it.
	Seat [2]float64 `json:"seat"`
	// Camera is what the perspective was taken out with; distance 0 is none.
	Camera Viewpoint `json:"camera"`
	// MMPerPixel holds in the plane through the axis.
	MMPerPixel float64 `json:"mmPerPixel"`
}

// Viewpoint is a camera as it was used, in mm.
type Viewpoint struct {
	DistanceMM float64 `json:"distance"`
	HeightMM   float64 `json:"height"`
	// From says where the two came from: "given", "focal", "row", "ellipses",
	// "middle" or "none".
	DistanceFrom string `json:"distanceFrom"`
	HeightFrom   string `json:"heightFrom"`
}

// Quality says how far the profile can be trusted.
type Quality struct {
	RmsMM       float64 `json:"rms"` // contour to fitted curve
	MaxMM       float64 `json:"max"`
	ErrorBandMM float64 `json:"errorBand"` // half width of the band that holds the true profile, see band
	TiltDeg     float64 `json:"tilt"`      // clockwise lean that was taken out
	// SymmetryResidualMM is the rms distance between the two sides.
	SymmetryResidualMM float64 `json:"symmetryResidual"`
	ToleranceMM        float64 `json:"tolerance"`
	NotSeen            []Gap   `json:"notSeen"`
	Warnings           []Note  `json:"warnings"`
}

// Gap is a stretch of the profile that the picture does not show.
type Gap struct {
	ZFrom float64    `json:"zFrom"`
	ZTo   float64    `json:"zTo"`
	Why   words.Text `json:"why"`
}

// Note is a finding about the picture.
type Note struct {
	Code     string     `json:"code"`
	Sentence words.Text `json:"sentence"`
	Remedy   words.Text `json:"remedy"`
	Measure  float64    `json:"measure"` // mm, degrees or pixels, as the sentence says
}
