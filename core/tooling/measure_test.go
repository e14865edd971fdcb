package tooling

import (
	"math"
	"math/rand/v2"
	"testing"

	"moldwright/core/job"
	"moldwright/core/solid"
)

// A piece lies on the bed as it would if every turn had been tried, whether or not
// it ends early for being much like a rectangle.
func TestTheTurnIsThatOfAllTurns(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 8))
	j := job.Defaults()
	for n := range 400 {
		wide, deep, by := 20+300*rnd.Float64(), 20+200*rnd.Float64(), float64(rnd.IntN(4)*30)
		cut := []float64{0, 0.5, 3, 15}[n%4] // off the corners of a rectangle
		sin, cos := solid.SinCosDeg(by)
		var corners []solid.Vec
		for _, q := range [8][2]float64{{cut, 0}, {wide - cut, 0}, {wide, cut}, {wide, deep - cut}, {wide - cut, deep}, {cut, deep}, {0, deep - cut}, {0, cut}} {
			corners = append(corners, solid.Vec{q[0]*cos - q[1]*sin, q[0]*sin + q[1]*cos, 0})
		}
		corners = append(corners, solid.Vec{corners[0][0], corners[0][1], 30})
		piece := Piece{up: solid.Vec{0, 0, 1}}
		piece.measure(&j, append([]solid.Vec(nil), corners...), 1)
		var plan [][2]float64
		for _, q := range corners {
			plan = append(plan, [2]float64{q[0], q[1]})
		}
		bed, least, turn, fit := j.Printer.Bed, math.Inf(1), 0.0, false
		for deg := range 180 {
			w, d := box(plan, float64(deg))
			fits := w <= bed[0]+1e-6 && d <= bed[1]+1e-6
			if deg == 0 || fits && w*d < 0.99*least {
				turn, fit, least = float64(deg), fits, math.Inf(1)
				if fits {
					least = w * d
				}
			}
		}
		if piece.turn != turn || piece.FitsBed != fit {
			t.Errorf("%.1f x %.1f mm turned by %g lies at %g degrees (fits: %v), of all turns at %g (%v)", wide, deep, by, piece.turn, piece.FitsBed, turn, fit)
		}
	}
}
