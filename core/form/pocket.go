package form

// Pocket is a place under a roof from which nothing lighter can rise to the
// end of the line, and, turned over, from which nothing heavier can run out.
type Pocket struct {
	ZFrom  float64 `json:"zFrom"` // mm, the level at which it spills
	ZTo    float64 `json:"zTo"`
	Volume float64 `json:"volume"` // ml, all round the axis
}

// Pockets finds the pockets along a line that runs to an opening at its end,
// the space on its left. Air that rises to a place of the line must pass below
// every later dip of it to come out; so a place is in a pocket when some later
// place lies lower, and the pocket spills at the level of the lowest of them
// (the linear test for trapped air of Bose and others, for one profile). Those
// below least ml are left out.
//
// The contour of a cavity holds air where the slip is poured in; the inner
// surface of a cast holds slip when the mold is turned over.
func Pockets(line []Point, least float64) []Pocket {
	out := []Pocket{}
	n := len(line)
	spill := make([]float64, n) // the lowest later place
	for i := n - 1; i >= 0; i-- {
		spill[i] = line[i].Z
		if i+1 < n {
			spill[i] = min(spill[i], spill[i+1])
		}
	}
	for i := 1; i < n; i++ {
		if line[i].Z <= spill[i] {
			continue
		}
		// the line rises above the level between i-1 and i and comes back to it
		// at the first later place as low
		level := spill[i]
		k := i
		for line[k].Z > level {
			k++
		}
		a, b := line[i-1], line[i]
		loop := []Point{a.Lerp(b, (level-a.Z)/(b.Z-a.Z))}
		top := level
		for ; i <= k; i++ {
			loop = append(loop, line[i])
			top = max(top, line[i].Z)
		}
		i = k
		if v := LoopVolume(loop) / 1000; v >= least {
			out = append(out, Pocket{level, top, v})
		}
	}
	return out
}
