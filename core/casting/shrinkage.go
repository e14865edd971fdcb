package casting

import (
	"math"

	"moldwright/core/job"
)

// Shrinkage as ASTM C326 (Drying and Firing Shrinkages of Ceramic Whiteware
// Clays) has it: drying on the plastic length, firing on the DRY length, total
// on the plastic length. The two do not add, they compound. Lengths are taken
// to shrink alike in all directions; real casts warp and slump a little.

// TotalShrinkage is the total linear shrinkage, percent of the wet length, of
// a body that shrinks by drying percent of its wet length and then by firing
// percent of its dry length.
func TotalShrinkage(drying, firing float64) float64 {
	return 100 * (1 - (1-drying/100)*(1-firing/100))
}

// VolumeShrinkage is the percent of volume lost at a linear shrinkage in
// percent: 1 - (1 - S)^3.
func VolumeShrinkage(linear float64) float64 {
	return 100 * (1 - cube(1-linear/100))
}

// Oversize is the factor by which a wet length exceeds the fired one at a
// linear shrinkage in percent: 1 / (1 - S). For volumes it is cubed.
func Oversize(linear float64) float64 { return 1 / (1 - linear/100) }

// CompoundExpansion is the linear expansion, percent, of plasters cast one in
// the other (block, case, working mold), each expanding by so many percent.
func CompoundExpansion(percents ...float64) float64 {
	f := 1.0
	for _, p := range percents {
		f *= 1 + p/100
	}
	return 100 * (f - 1)
}

// Bar is a test bar measured between the same two marks, in any one unit.
type Bar struct {
	Wet   float64 `json:"wet"`
	Dry   float64 `json:"dry"`
	Fired float64 `json:"fired"`
}

// BarShrinkage is what a bar, or several, showed: percents, drying and total
// on the wet length, firing on the dry one. Spread is the sample standard
// deviation of the totals in points of percent, 0 for a single bar.
type BarShrinkage struct {
	Drying float64 `json:"drying"`
	Firing float64 `json:"firing"`
	Total  float64 `json:"total"`
	Spread float64 `json:"spread"`
}

// TestBar is the shrinkage of one bar by ASTM C326. A fault names the length
// that cannot be.
func TestBar(wet, dry, fired float64) (BarShrinkage, *job.Fault) {
	switch {
	case !(wet > 0) || wet > lengthMax:
		return BarShrinkage{}, job.Faultf(codeRange, "bar.wet", "The wet length is not a length above 0: measure the bar between its marks while it is wet.")
	case !(dry > 0) || dry > wet:
		return BarShrinkage{}, job.Faultf(codeRange, "bar.dry", "The dry length must be above 0 and no longer than the wet length %g: check which bar and which unit was measured.", wet)
	case !(fired > 0) || fired > dry:
		return BarShrinkage{}, job.Faultf(codeRange, "bar.fired", "The fired length must be above 0 and no longer than the dry length %g: check which bar and which unit was measured.", dry)
	}
	return BarShrinkage{
		Drying: 100 * (wet - dry) / wet,
		Firing: 100 * (dry - fired) / dry,
		Total:  100 * (wet - fired) / wet,
	}, nil
}

// TestBars is the mean shrinkage of several bars (ASTM C326 asks for ten) and
// its spread.
func TestBars(bars []Bar) (BarShrinkage, *job.Fault) {
	if len(bars) == 0 {
		return BarShrinkage{}, job.Faultf(codeMissing, "bar", "No test bar was given: measure at least one, wet, dry and fired.")
	}
	var mean BarShrinkage
	totals := make([]float64, len(bars))
	n := float64(len(bars))
	for i, b := range bars {
		s, fault := TestBar(b.Wet, b.Dry, b.Fired)
		if fault != nil {
			return BarShrinkage{}, fault.AtLine(i + 1)
		}
		mean.Drying += s.Drying / n
		mean.Firing += s.Firing / n
		mean.Total += s.Total / n
		totals[i] = s.Total
	}
	if len(bars) > 1 {
		var squares float64
		for _, t := range totals {
			squares += (t - mean.Total) * (t - mean.Total)
		}
		mean.Spread = math.Sqrt(squares / (n - 1))
	}
	return mean, nil
}

func cube(x float64) float64 { return x * x * x }
