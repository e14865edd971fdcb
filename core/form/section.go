package form

import (
	"math"

	"moldwright/core/job"
)

// Section is the shape of a cut across the axis: the surface stands at radius
// r(z) g(a) at azimuth a, with g at most 1. It is the same at every height, so
// that along the axis a place is hidden on every azimuth or on none.
type Section struct {
	Round bool
	// MeanSquare is the mean of g squared over the turn: areas across the axis,
	// and volumes, are so many times those of a round pot.
	MeanSquare float64
	// Repeats is how often the section repeats in a turn.
	Repeats int
	// Bends are azimuths in radians, of the section as it is not turned, within
	// one repeat: its corners, where its curve begins and ends in straights, where
	// it stands out and in most. Between them and their repeats it is smooth.
	Bends []float64
	// By is how far it is turned, radians.
	By float64
	at func(a float64) (g, slope float64)
}

// At is g at azimuth a (radians) and its slope dg/da.
func (s *Section) At(a float64) (g, slope float64) { return s.at(a) }

// Turned is the section turned counterclockwise by so many radians.
func (s *Section) Turned(by float64) *Section {
	if s.Round || by == 0 {
		return s
	}
	t := *s
	t.By += by
	t.at = func(a float64) (float64, float64) { return s.at(a - by) }
	return &t
}

// NewSection is the section that the job names.
func NewSection(s job.Section) *Section {
	out := &Section{Repeats: 1}
	n := float64(s.Count)
	switch s.Kind {
	case job.SectionOval:
		k := 1/(s.Ratio*s.Ratio) - 1 // g = 1 / sqrt(cos^2 + sin^2 / ratio^2)
		out.Repeats = 2
		out.MeanSquare = s.Ratio // of the ellipse, to its circle
		out.Bends = []float64{0, math.Pi / 2}
		out.at = func(a float64) (float64, float64) {
			sin, cos := math.Sincos(a)
			g := 1 / math.Sqrt(1+k*sin*sin)
			return g, -g * g * g * k * sin * cos
		}
	case job.SectionPolygon:
		out.Repeats = s.Count
		out.at, out.Bends, out.MeanSquare = polygon(n, s.Rounding/100)
	case job.SectionFlutes:
		d := s.Depth / 200
		out.MeanSquare = 1 - 2*d + 1.5*d*d
		out.Repeats = s.Count
		out.Bends = []float64{0, math.Pi / n}
		out.at = func(a float64) (float64, float64) {
			sin, cos := math.Sincos(n * a)
			return 1 - d*(1-cos), -d * n * sin
		}
	default:
		out.Round = true
		out.MeanSquare = 1
		out.at = func(float64) (float64, float64) { return 1, 0 }
		return out
	}
	return out
}

// polygon is a regular polygon of n faces a unit from the axis, corners of the
// radius round, all scaled so that a corner's tip stands at 1. A face looks
// along azimuth 0.
func polygon(n, round float64) (at func(float64) (g, slope float64), bends []float64, meanSquare float64) {
	half := math.Pi / n
	centre := (1 - round) / math.Cos(half) // of a corner's arc, at azimuth half
	tip := centre + round
	// the arc begins at the foot of its centre on the face
	from := math.Atan2((1-round)*math.Tan(half), 1)
	// a polygon of the corners' centres, a strip along its faces, and a circle
	flat, in := n*math.Tan(half), 1-round
	area := flat*in*in + 2*flat*in*round + math.Pi*round*round
	bends = []float64{half}
	if half-from > 1e-6 {
		bends = []float64{from, half, 2*half - from}
	}
	return func(a float64) (float64, float64) {
		turn := math.Round(a / (2 * half))
		f := a - turn*2*half // from the middle of the face
		if math.Abs(f) <= from {
			cos := math.Cos(f)
			return 1 / cos / tip, math.Tan(f) / cos / tip
		}
		side := math.Copysign(1, f)
		sin, cos := math.Sincos(f - side*half) // from the corner
		root := math.Sqrt(max(1e-18, round*round-centre*centre*sin*sin))
		g := centre*cos + root
		return g / tip, (-centre*sin - centre*centre*sin*cos/root) / tip
	}, bends, area / (math.Pi * tip * tip)
}
