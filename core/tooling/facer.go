package tooling

// Bodies of flat faces, such as boards: each face is given by its corners and by
// a direction that it looks along, and is turned the right way round.

import "moldwright/core/solid"

type facer struct {
	*solid.Builder
	at []solid.Vec // by vertex
}

func (f *facer) vertex(p solid.Vec) int32 {
	i := f.Vertex(p)
	for int(i) >= len(f.at) {
		f.at = append(f.at, solid.Vec{})
	}
	f.at[i] = p
	return i
}

// face lays the polygon of the loop, which may run either way, to look along
// the hint; holes are as solid.Builder.Face takes them.
func (f *facer) face(hint solid.Vec, loop solid.Loop, holes ...solid.Loop) {
	var n solid.Vec // Newell: twice the area along each axis
	for i, v := range loop {
		c := crossed(f.at[v], f.at[loop[(i+1)%len(loop)]])
		for k := range 3 {
			n[k] += c[k]
		}
	}
	if n[0]*hint[0]+n[1]*hint[1]+n[2]*hint[2] < 0 {
		loop = reversed(loop)
		n = solid.Vec{-n[0], -n[1], -n[2]}
	}
	f.Face(n, loop, holes...)
}

// keyed lays such a face with keys in it: place gives a point of their
// coordinates.
func (f *facer) keyed(hint solid.Vec, loop solid.Loop, keys []key, clearance float64, place func(x, y float64) solid.Vec) {
	open, holes := keyHoles(f.Builder, keys, clearance, hint, place)
	f.face(hint, loop, holes...)
	closeKeys(f.Builder, open, keys)
}
