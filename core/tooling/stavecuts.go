package tooling

// Where a cottle parts into staves. Staves of a round block are even. Those of a
// straight-sided one part at its edges, or in the middles of its faces, where a
// stave is as wide as a face but folded round an edge; faces wider than the bed
// are parted more than once, so that no face but those between two cuts in it
// lies flat.

import (
	"iter"
	"math"

	"moldwright/core/mold"
	"moldwright/core/solid"
)

const (
	mostStaves   = 12 // of a round block
	mostFaceCuts = 4  // in a face of a straight-sided one
)

// staveCuts are the ways to part a cottle into the number of staves asked for, or
// the next that meets a straight-sided block evenly, and then into more, the
// fewest first: azimuths in degrees over a full turn, both ends included.
func staveCuts(md *mold.Mold, asked int) iter.Seq[[]float64] {
	faces := md.Block.Facets
	even := func(n int, from float64) []float64 {
		cuts := make([]float64, n+1)
		for k := range cuts {
			cuts[k] = from + 360/float64(n)*float64(k)
		}
		return cuts
	}
	return func(yield func([]float64) bool) {
		if faces == 0 {
			for n := asked; n <= mostStaves && yield(even(n, 0)); n++ {
			}
			return
		}
		half := 180 / float64(faces)
		for n := min(asked, faces); n <= faces; n++ {
			if faces%n == 0 && !(yield(even(n, half)) && yield(even(n, 0))) {
				return
			}
		}
		for _, cuts := range cutFaces(faces, half) {
			if !yield(cuts) {
				return
			}
		}
	}
}

// cutFaces are the ways to part a straight-sided cottle in all its faces, each half of
// which spans so many degrees.
func cutFaces(faces int, half float64) (out [][]float64) {
	// in shares of a half-face, from its middle
	for m := 2; m <= mostFaceCuts; m++ {
		var edges, folded []float64
		for i := range m {
			edges = append(edges, 1-2*float64(i)/float64(m))
			folded = append(folded, (1-1.2/float64(m))*(1-2*float64(i)/float64(m-1)))
		}
		for _, shares := range [2][]float64{folded, edges} {
			var cuts []float64
			for f := range faces {
				for i := range shares {
					cuts = append(cuts, 2*half*float64(f)+onFace(half, shares[len(shares)-1-i]))
				}
			}
			out = append(out, append(cuts, cuts[0]+360))
		}
	}
	return out
}

// onFace is the azimuth from the middle of a face, in degrees, of a place at a
// share of the way to where it ends.
func onFace(half, share float64) float64 {
	if share == 1 || share == -1 {
		return share * half
	}
	sin, cos := solid.SinCosDeg(half)
	return math.Atan(share*sin/cos) * 180 / math.Pi
}
