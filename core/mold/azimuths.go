package mold

// The azimuths at which a mold's solids have their vertices. A round pot takes
// equal steps, as many as its chord error asks for. One that is not round has a
// step at every corner of its section besides, and between those as many as the
// curve there asks for: a chord h radians wide lies h^2/8 times the curvature
// within the curve, to the third order in h, both measured along the azimuth.

import (
	"math"
	"slices"

	"moldwright/core/solid"
)

// mostSteps is the limit of what chord error is kept, steps to the turn.
const mostSteps = 4096

// azimuths is the table for a chord error of tol mm in the turns.
func (md *Mold) azimuths(tol float64) *solid.Azimuths {
	// a multiple of 24 has an azimuth at every seam of 2, 3, 4 or 6 side parts
	// and at every edge of their blocks, but for the edges of 8 faces
	k, pot := 24, 0.0
	for _, p := range md.Parts {
		for _, q := range p.Outline[:p.Pot+1] {
			pot = math.Max(pot, q.R)
		}
	}
	r := md.Block.R
	if md.Block.Facets > 0 {
		r = pot
		if md.Block.Facets == 8 {
			k = 48
		}
	}
	steps := solid.Chord(r, tol, k)
	dimpled := md.dimples != nil && len(md.dimples.rows) > 0
	if md.Section.Round && !dimpled {
		return solid.NewAzimuths(steps)
	}
	fixed := make([]float64, 0, 2*k)
	for i := range k {
		fixed = append(fixed, 360*float64(i)/float64(k))
	}
	if s := md.Section; !s.Round {
		for i := range s.Repeats {
			for _, a := range s.Bends {
				fixed = append(fixed, tidy((s.By+a)*180/math.Pi+360*float64(i)/float64(s.Repeats)))
			}
		}
		fixed = sorted(fixed)
	}
	if dimpled {
		fixed = md.dimples.columns(fixed)
	}
	most := 360 / float64(steps)
	var out []float64
	for i, a := range fixed {
		b := 360.0
		if i+1 < len(fixed) {
			b = fixed[i+1]
		}
		out = append(out, a)
		if dimpled && md.dimples.inBlock((a+b)/2) {
			continue
		}
		n := math.Ceil((b-a)/most - 1e-9)
		if !md.Section.Round {
			n = max(n, math.Ceil((b-a)/md.widest(a, b, pot, tol)-1e-9))
		}
		for j := 1.0; j < n; j++ {
			out = append(out, a+(b-a)*j/n)
		}
	}
	return solid.NewAzimuthsAt(out)
}

// widest is how wide a step may be between two azimuths in degrees, between which
// the section is smooth, for a chord error of tol mm at the radius r.
func (md *Mold) widest(a, b, r, tol float64) float64 {
	const samples, near = 4, 1e-3
	deg := math.Pi / 180
	worst := 0.0
	for i := range samples + 1 {
		x := (a + (b-a)*(near+(1-2*near)*float64(i)/samples)) * deg
		d := (b - a) * deg * near / 2
		g, s := md.Section.At(x)
		_, s0 := md.Section.At(x - d)
		_, s1 := md.Section.At(x + d)
		bent := math.Abs(2*s*s + g*g - g*(s1-s0)/(2*d)) // of the curve g, times its speed cubed
		worst = max(worst, bent/math.Hypot(g, s))
	}
	return max(math.Sqrt(8*tol/(r*worst))/deg, 360.0/mostSteps)
}

// tidy is an azimuth from 0 to less than 360, to the half degree where it is that
// near to one.
func tidy(deg float64) float64 {
	if deg = math.Mod(deg, 360); deg < 0 {
		deg += 360
	}
	if r := math.Round(2*deg) / 2; math.Abs(deg-r) < 1e-7 {
		deg = r
	}
	if deg >= 360-1e-7 {
		return 0
	}
	return deg
}

// sorted are azimuths in order, each once.
func sorted(list []float64) []float64 {
	slices.Sort(list)
	return slices.CompactFunc(list, func(a, b float64) bool { return math.Abs(a-b) < 1e-7 })
}
