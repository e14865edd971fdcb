package casting

import (
	"math"

	"moldwright/core/job"
)

// The growing wall: thickness with the square root of time, L^2 = k t, since
// the cast itself is what the water must pass (Darcy's law; Adcock & McDowall,
// J. Am. Ceram. Soc. 40 (1957) 355-362, from memory; stated in Ceramics 8(1) 6,
// 2025). k is a number that the maker measures: it changes with slip, plaster,
// warmth and how wet the mold is.

// Rate is a casting rate fitted to trials.
type Rate struct {
	// K is the casting-rate constant, mm2 a minute; Low and High are the least
	// and greatest of the single trials.
	K, Low, High float64
	// SpreadMM is the standard deviation of the trials' walls about the law,
	// mm, on n - 1; 0 for a single trial.
	SpreadMM float64
}

// FitTestCasts fits L = sqrt(k t) to trials by least squares on the wall:
// sqrt(k) = sum(L sqrt(t)) / sum(t). One trial gives k = L^2/t. Walls and
// minutes must be above 0 and there must be one trial.
func FitTestCasts(trials []job.TestCast) Rate {
	var num, den float64
	r := Rate{Low: math.Inf(1)}
	for _, c := range trials {
		num += c.Wall * math.Sqrt(c.Minutes)
		den += c.Minutes
		k := c.Wall * c.Wall / c.Minutes
		r.Low, r.High = math.Min(r.Low, k), math.Max(r.High, k)
	}
	if len(trials) == 1 {
		r.K = r.High
		return r
	}
	root := num / den
	r.K = root * root
	var squares float64
	for _, c := range trials {
		d := c.Wall - root*math.Sqrt(c.Minutes)
		squares += d * d
	}
	r.SpreadMM = math.Sqrt(squares / float64(len(trials)-1))
	return r
}

// MinutesFor is the time for a wall in mm at a rate k in mm2 a minute.
func MinutesFor(wall, k float64) float64 { return wall * wall / k }

// WallAfter is the wall in mm after so many minutes at a rate k.
func WallAfter(minutes, k float64) float64 { return math.Sqrt(k * minutes) }

// LaterCast is the time of the nth cast of a day (1 is the first) when each
// takes slowdown percent of the first one's time longer than the one before.
func LaterCast(first float64, n int, slowdown float64) float64 {
	return first * (1 + float64(n-1)*slowdown/100)
}

// CornerWall is an ESTIMATE of the cast's thickness along the bisector of a
// corner where two plaster walls meet at an angle, in degrees, measured in the
// slip: the corner of two layers of the same wall, L / sin(angle/2). Slip in
// the corner gives water to both walls, so the true cast is rounder and
// somewhat thicker. Above 180 degrees (an edge of plaster that stands out into
// the slip) no estimate is made and the wall itself is returned.
func CornerWall(wall, angle float64) float64 {
	if angle >= 180 {
		return wall
	}
	return wall / math.Sin(angle*math.Pi/360)
}
