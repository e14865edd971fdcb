package solid

// The steps round the axis. All solids of one mold take their azimuths from one
// table, so that where they touch their vertices are equal bit for bit.

import (
	"math"
	"slices"
)

// ChordMM is the default chord error: how far a flat of a mesh may lie within
// the curve it stands for.
const ChordMM = 0.02

// Chord is the number of steps round a circle of the radius for which the
// middle of no chord lies deeper than tol within the circle, rounded up to a
// multiple of k: r(1 - cos(pi/n)) <= tol. Both lengths in mm; at least 12
// steps, and at most 4096, which is the limit of what it promises.
func Chord(radius, tol float64, k int) int {
	const least, most = 12, 4096
	k = max(k, 1)
	n := float64(most)
	if s := math.Sqrt(tol / (2 * radius)); s > 0 { // false for NaN
		n = least
		if s < 1 {
			n = min(max(math.Ceil(math.Pi/(2*math.Asin(s))), least), most)
		}
	}
	return (int(n) + k - 1) / k * k
}

// Place gives the vertex of a profile point at step i of the azimuth table. It
// must be the same function for all solids of one mold, must keep z, and must
// put all points of one step in the half-plane of its azimuth. A loft scales r
// by azimuth and height here.
type Place func(r, z float64, i int) Vec

// Azimuths is a table of steps round the full turn, counterclockwise from the x
// axis seen from above. Equal steps that mirror one another in the octants have
// the same numbers.
type Azimuths struct {
	Cos, Sin []float64
	deg      []float64 // of steps that are not equal
}

// NewAzimuths is the table of so many steps, at least three.
func NewAzimuths(steps int) *Azimuths {
	a := &Azimuths{Cos: make([]float64, steps), Sin: make([]float64, steps)}
	for i := range steps {
		a.Sin[i], a.Cos[i] = stepSinCos(i, steps)
	}
	return a
}

// NewAzimuthsAt is the table of steps at the given azimuths in degrees, rising
// from 0 to less than 360.
func NewAzimuthsAt(deg []float64) *Azimuths {
	a := &Azimuths{Cos: make([]float64, len(deg)), Sin: make([]float64, len(deg)), deg: deg}
	for i, d := range deg {
		a.Sin[i], a.Cos[i] = SinCosDeg(d)
	}
	return a
}

// Deg is the azimuth of step i in degrees; steps may go on past the full turn.
func (a *Azimuths) Deg(i int) float64 {
	n := len(a.Cos)
	if a.deg == nil {
		return 360 * float64(i) / float64(n)
	}
	turn := 0
	for ; i < 0; i += n {
		turn--
	}
	return 360*float64(turn+i/n) + a.deg[i%n]
}

// Step is the step nearest to an azimuth in degrees; it goes on past the full
// turn.
func (a *Azimuths) Step(deg float64) int {
	n := len(a.Cos)
	if a.deg == nil {
		return int(math.Round(deg / 360 * float64(n)))
	}
	turn := math.Floor(deg / 360)
	deg -= 360 * turn
	i, _ := slices.BinarySearch(a.deg, deg)
	if i > 0 && (i < n && deg-a.deg[i-1] < a.deg[i]-deg || i == n && deg-a.deg[n-1] < 360-deg) {
		i--
	}
	return int(turn)*n + i
}

// stepSinCos is sine and cosine of i of n equal steps, 0 <= i < n, brought to
// the first octant in whole numbers.
func stepSinCos(i, n int) (sin, cos float64) {
	quarter, rest := 4*i/n, 4*i%n
	if 2*rest > n {
		cos, sin = SinCosDeg(90 * float64(n-rest) / float64(n))
	} else {
		sin, cos = SinCosDeg(90 * float64(rest) / float64(n))
	}
	return quarters(sin, cos, quarter)
}

// Steps is the length of the table.
func (a *Azimuths) Steps() int { return len(a.Cos) }

// Round is the Place of a turned form. Step i is taken round the turn.
func (a *Azimuths) Round(r, z float64, i int) Vec {
	if i < 0 || i >= len(a.Cos) {
		if i %= len(a.Cos); i < 0 {
			i += len(a.Cos)
		}
	}
	return Vec{r * a.Cos[i], r * a.Sin[i], z}
}

// Span is a stretch of the azimuth table, from step From counterclockwise to
// step To, of Steps to the full turn.
type Span struct {
	Steps, From, To int
}

// FullTurn is the span all round.
func FullTurn(steps int) Span { return Span{steps, 0, steps} }

// Whole says whether the span closes on itself.
func (s Span) Whole() bool { return s.To-s.From == s.Steps }
