package form

import (
	"cmp"
	"slices"
)

// Pocket is a place under a roof from which nothing lighter can rise to the
// end of the line, and, turned over, from which nothing heavier can run out.
type Pocket struct {
	ZFrom  float64 `json:"zFrom"` // mm, the level at which it spills
	ZTo    float64 `json:"zTo"`
	Volume float64 `json:"volume"` // ml, all round the axis
}

// Side tells on which side of a line, going along it, the space lies that is
// filled.
type Side float64

// Left for the inside of a cavity or cast, Right for plaster about a positive.
const (
	Left  Side = 1
	Right Side = -1
)

// Pockets finds the pockets along a line that runs up to where the space beside
// it is open, from the lowest spill level up. The space left of a line is closed
// by the axis and by level discs at both of its ends, and open through the last;
// the space right of it stands on a plate at the first point and is open outward
// and above. Where an inset line touches itself and so shuts a hollow all round,
// that is held whole, from its lowest place. Pockets below least ml are left out.
//
// Air is held at a place if every path from there to the opening dips below it,
// and then down to the lowest place of the path that dips least (Bose, van
// Kreveld and Toussaint, Filling polyhedral molds, CAD 30, 1998, for the
// question whether any is held). Exact for the chords.
//
// The contour of a cavity holds air where the slip is poured in; the inner
// surface of a cast holds slip when the mold is turned over; a positive, from
// its plate up, holds air under what overhangs when plaster is poured over it.
func Pockets(line []Point, space Side, least float64) []Pocket {
	out := []Pocket{}
	if len(line) < 2 {
		return out
	}
	for _, p := range sink(line, space) {
		if p.Volume >= least {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(p, q Pocket) int {
		return cmp.Or(cmp.Compare(p.ZFrom, q.ZFrom), cmp.Compare(p.ZTo, q.ZTo))
	})
	return out
}
