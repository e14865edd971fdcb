package tooling

// clipped adds to out what of a convex loop, in the plane or in space, lies where a
// coordinate is above a value (way 1) or below it (-1).
func clipped[P [2]float64 | [3]float64](out, loop []P, coordinate int, at, way float64) []P {
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		dp, dq := way*(p[coordinate]-at), way*(q[coordinate]-at)
		if dp >= 0 {
			out = append(out, p)
		}
		if dp > 0 && dq < 0 || dp < 0 && dq > 0 {
			t := dp / (dp - dq)
			for k := range len(p) {
				p[k] += t * (q[k] - p[k])
			}
			p[coordinate] = at
			out = append(out, p)
		}
	}
	return out
}
