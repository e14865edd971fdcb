// Few nodes for many points. Corners come first; between them smooth nodes are
// put in where the curve departs most, moved by least squares, and taken out
// again where the curve stays within the tolerance without them. The curve is
// always the one that package form draws through the nodes.

package trace

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
)

// fitter fits nodes to a polyline.
type fitter struct {
	p     []rz
	knots []knot
	dev   []float64 // of each point from the curve, signed by side
}

// knot is a node and the point of the polyline that it stands for.
type knot struct {
	at     int
	pos    rz
	corner bool
}

// maxKnots bounds the work on a contour that no curve fits.
const maxKnots = 80

// fitNodes is the nodes and their rms and largest distance from the polyline.
// ok is false where no sound profile comes of the polyline: the nodes are then
// corners on it, within the tolerance of their chords.
func fitNodes(p []rz, corner []bool, tol float64) (nodes []job.Node, rms, most float64, ok bool) {
	f := &fitter{p: p, dev: make([]float64, len(p))}
	for i := range p {
		if corner[i] || i == 0 || i == len(p)-1 {
			f.knots = append(f.knots, knot{i, p[i], corner[i]})
		}
	}
	f.addExtremes(tol)
	if !f.refine(tol) {
		return chords(p, corner, tol)
	}
	f.polish()
	f.prune(tol)
	f.polish()
	f.refine(tol)
	var sum float64
	for _, d := range f.dev {
		sum += d * d
		most = math.Max(most, math.Abs(d))
	}
	return f.nodes(f.knots), math.Sqrt(sum / float64(len(p))), most, true
}

// chords is the polyline thinned to straight stretches.
func chords(p []rz, corner []bool, tol float64) ([]job.Node, float64, float64, bool) {
	pts := make([]form.Point, len(p))
	for i, q := range p {
		pts[i] = form.Point{R: q.r, Z: q.z}
	}
	thin, _ := form.Thin(pts, corner, tol)
	nodes := make([]job.Node, len(thin))
	for i, q := range thin {
		nodes[i] = job.Node{R: round(q.R), Z: round(q.Z), Corner: true}
	}
	return nodes, tol / 2, tol, false
}

// round keeps a thousandth of a mm, finer than any picture tells.
func round(v float64) float64 { return math.Round(v*1000)/1000 + 0 }

func (f *fitter) nodes(knots []knot) []job.Node {
	out := make([]job.Node, len(knots))
	for i, k := range knots {
		r := round(math.Max(k.pos.r, 0))
		if i > 0 && i < len(knots)-1 {
			r = math.Max(r, 0.05)
		}
		out[i] = job.Node{R: r, Z: round(k.pos.z), Corner: k.corner}
	}
	return out
}

// addExtremes puts a smooth node at each widest and narrowest, highest and
// lowest place inside a stretch that stands out by more than the tolerance: the
// curve rule can only turn back at a node.
func (f *fitter) addExtremes(tol float64) {
	ends := f.knots
	f.knots = nil
	for s := 0; s+1 < len(ends); s++ {
		a, b := ends[s].at, ends[s+1].at
		var at []int
		at = extremes(at, f.p, a, b, tol, func(q rz) float64 { return q.r })
		at = extremes(at, f.p, a, b, tol, func(q rz) float64 { return q.z })
		slices.Sort(at)
		f.knots = append(f.knots, ends[s])
		for _, i := range at {
			if l := f.knots[len(f.knots)-1]; i > l.at+2 && i < b-2 && f.p[i].dist(l.pos) > 4*tol {
				f.knots = append(f.knots, knot{i, f.p[i], false})
			}
		}
	}
	f.knots = append(f.knots, ends[len(ends)-1])
}

// extremes appends the turning points of v between a and b that stand out by
// tol on both sides.
func extremes(out []int, p []rz, a, b int, tol float64, v func(rz) float64) []int {
	lo, hi := a, a
	dir := 0
	for i := a; i <= b; i++ {
		x := v(p[i])
		if x > v(p[hi]) {
			hi = i
		}
		if x < v(p[lo]) {
			lo = i
		}
		switch {
		case dir >= 0 && x < v(p[hi])-tol:
			if dir > 0 || v(p[hi]) > v(p[a])+tol {
				out = append(out, hi)
			}
			dir, lo = -1, i
		case dir <= 0 && x > v(p[lo])+tol:
			if dir < 0 || v(p[lo]) < v(p[a])-tol {
				out = append(out, lo)
			}
			dir, hi = 1, i
		}
	}
	return out
}

// measure fills dev with the distances from the curve through the knots and
// tells the largest; ok is false where form refuses the nodes.
func (f *fitter) measure(knots []knot, dev []float64) (most float64, ok bool) {
	j := job.Job{Form: job.Form{Size: job.SizeMold, Outer: f.nodes(knots)}}
	m, err := form.Build(&j)
	if err != nil {
		return 0, false
	}
	at := make([]int, 0, len(knots))
	for i, n := range m.Node {
		if n >= 0 {
			at = append(at, i)
		}
	}
	for k := 0; k+1 < len(knots); k++ {
		lo, hi := at[max(k-1, 0)], at[min(k+2, len(at)-1)]
		c := at[k]
		for i := knots[k].at; i <= knots[k+1].at; i++ {
			q := f.p[i]
			z := q.z + m.Lift
			best, side := math.Inf(1), 0.0
			// from the last nearest chord outward until it only gets farther
			try := func(s int) float64 {
				a, b := m.Pts[s], m.Pts[s+1]
				dr, dz := b.R-a.R, b.Z-a.Z
				l := dr*dr + dz*dz
				t := 0.0
				if l > 0 {
					t = math.Max(0, math.Min(1, ((q.r-a.R)*dr+(z-a.Z)*dz)/l))
				}
				er, ez := q.r-a.R-t*dr, z-a.Z-t*dz
				d := er*er + ez*ez
				if d < best {
					best, side, c = d, er*dz-ez*dr, s
				}
				return d
			}
			c0 := min(max(c, lo), hi-1)
			for s, far := c0, 0; s < hi && far < 6; s++ {
				if try(s) > best {
					far++
				} else {
					far = 0
				}
			}
			for s, far := c0-1, 0; s >= lo && far < 6; s-- {
				if try(s) > best {
					far++
				} else {
					far = 0
				}
			}
			dev[i] = math.Copysign(math.Sqrt(best), side)
			most = math.Max(most, math.Sqrt(best))
		}
	}
	return most, true
}

// refine adds nodes where the curve departs most until all is within tol.
func (f *fitter) refine(tol float64) bool {
	for range 14 {
		most, ok := f.measure(f.knots, f.dev)
		if !ok {
			return false
		}
		if most <= tol || len(f.knots) >= maxKnots {
			return true
		}
		next := f.knots[:1:1]
		added := false
		for k := 0; k+1 < len(f.knots); k++ {
			a, b := f.knots[k].at, f.knots[k+1].at
			worst, at := tol, -1
			for i := a + 2; i < b-1; i++ {
				if d := math.Abs(f.dev[i]); d > worst {
					worst, at = d, i
				}
			}
			if at > 0 && f.p[at].dist(f.p[a]) > 3*tol && f.p[at].dist(f.p[b]) > 3*tol {
				next = append(next, knot{at, f.p[at], false})
				added = true
			}
			next = append(next, f.knots[k+1])
		}
		if !added {
			return true
		}
		if _, ok := f.measure(next, f.dev); !ok {
			f.measure(f.knots, f.dev)
			return true
		}
		f.knots = next
	}
	return true
}

// prune takes out smooth nodes that the tolerance does not need.
func (f *fitter) prune(tol float64) {
	trial := make([]float64, len(f.dev))
	for k := 1; k+1 < len(f.knots); {
		if f.knots[k].corner {
			k++
			continue
		}
		knots := slices.Delete(slices.Clone(f.knots), k, k+1)
		if most, ok := f.measure(knots, trial); ok && most <= tol {
			f.knots = knots
			f.dev, trial = trial, f.dev
			continue
		}
		k++
	}
}
