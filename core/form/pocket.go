package form

import "math"

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
// it is open. Air that rises to a place under a roof must pass below every
// later lip of it to come out; so a place is in a pocket when some later lip
// lies lower, and the pocket spills at the level of the lowest of them (the
// linear test for trapped air of Bose and others, for one profile). A lip is a
// lowest place at which the line turns away from the space, or the edge of the
// opening; where the line turns toward the space, that is a floor. Pockets below least ml are left out.
//
// The contour of a cavity holds air where the slip is poured in; the inner
// surface of a cast holds slip when the mold is turned over; a positive, from
// its plate up, holds air under what overhangs when plaster is poured over it.
func Pockets(line []Point, space Side, least float64) []Pocket {
	out := []Pocket{}
	n := len(line)
	spill := make([]float64, n) // the lowest later lip
	low := math.Inf(1)
	if n > 0 && line[n-1].R > 0 { // the edge of the opening is a lip too
		low = line[n-1].Z
		spill[n-1] = low
	}
	for i := n - 2; i > 0; i-- {
		spill[i] = low
		p, q, r := line[i-1], line[i], line[i+1]
		if q.Z < p.Z && r.Z >= q.Z && float64(space)*side(p, q, r) < 0 {
			low = min(low, q.Z)
		}
	}
	for i := 1; i < n-1; i++ {
		level := spill[i]
		if line[i].Z <= level {
			continue
		}
		// the line rises above the level between i-1 and i, or began above it,
		// and comes back to it at the first later place as low
		k := i
		for k < n-1 && line[k].Z > level {
			k++
		}
		a, b := line[i-1], line[i]
		loop := []Point{a}
		if a.Z < level {
			loop[0] = a.Lerp(b, (level-a.Z)/(b.Z-a.Z))
		}
		top := level
		for ; i <= k; i++ {
			loop = append(loop, line[i])
			top = max(top, line[i].Z)
		}
		i = k
		if v := float64(space) * LoopVolume(loop) / 1000; v >= least {
			out = append(out, Pocket{level, top, v})
		}
	}
	return out
}
