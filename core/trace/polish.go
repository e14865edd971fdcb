// Nodes moved by least squares so that the curve of package form runs through
// the middle of the points.

package trace

import (
	"math"
	"slices"
)

// normal is the direction across the polyline at a knot.
func (f *fitter) normal(i int) rz {
	a, b := f.p[max(i-3, 0)], f.p[min(i+3, len(f.p)-1)]
	l := a.dist(b)
	if l == 0 {
		return rz{1, 0}
	}
	return rz{(b.z - a.z) / l, -(b.r - a.r) / l}
}

// polish moves the smooth nodes across the curve by Gauss-Newton steps, the
// derivatives by differences. A node acts on two stretches to either side, so
// every fifth node is tried at once.
func (f *fitter) polish() {
	var free []int // knots that may move
	for k := 1; k+1 < len(f.knots); k++ {
		if !f.knots[k].corner {
			free = append(free, k)
		}
	}
	n := len(free)
	if n == 0 {
		return
	}
	const h = 0.01
	sum := func(d []float64) (s float64) {
		for _, v := range d {
			s += v * v
		}
		return s
	}
	for range 2 {
		base := slices.Clone(f.dev)
		trial := make([]float64, len(f.dev))
		jac := make([][]float64, n) // rows: free knots, over the points they act on
		from := make([]int, n)
		for phase := range 5 {
			knots := slices.Clone(f.knots)
			for _, k := range free {
				if k%5 == phase {
					d := f.normal(knots[k].at)
					knots[k].pos = rz{knots[k].pos.r + h*d.r, knots[k].pos.z + h*d.z}
				}
			}
			if _, ok := f.measure(knots, trial); !ok {
				return
			}
			for c, k := range free {
				if k%5 != phase {
					continue
				}
				a, b := f.knots[max(k-2, 0)].at, f.knots[min(k+2, len(f.knots)-1)].at
				from[c] = a
				jac[c] = make([]float64, b-a+1)
				for i := a; i <= b; i++ {
					jac[c][i-a] = (trial[i] - base[i]) / h
				}
			}
		}
		step := solveNormal(jac, from, base)
		knots := slices.Clone(f.knots)
		for c, k := range free {
			d := f.normal(knots[k].at)
			s := math.Max(-1, math.Min(1, step[c]))
			knots[k].pos = rz{knots[k].pos.r + s*d.r, knots[k].pos.z + s*d.z}
		}
		if _, ok := f.measure(knots, trial); !ok || sum(trial) >= sum(base) {
			return
		}
		f.knots, f.dev = knots, trial
	}
}

// solveNormal is the least-squares step for rows of derivatives and residuals.
func solveNormal(jac [][]float64, from []int, res []float64) []float64 {
	n := len(jac)
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n+1)
		for j := range a {
			lo := max(from[i], from[j])
			hi := min(from[i]+len(jac[i]), from[j]+len(jac[j]))
			for k := lo; k < hi; k++ {
				a[i][j] += jac[i][k-from[i]] * jac[j][k-from[j]]
			}
		}
		a[i][i] += 1e-6
		for k, v := range jac[i] {
			a[i][n] -= v * res[from[i]+k]
		}
	}
	// the matrix is positive definite: no pivoting is needed
	for i := range a {
		for j := i + 1; j < n; j++ {
			if f := a[j][i] / a[i][i]; f != 0 {
				for k := i; k <= n; k++ {
					a[j][k] -= f * a[i][k]
				}
			}
		}
	}
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		x[i] = a[i][n]
		for j := i + 1; j < n; j++ {
			x[i] -= a[i][j] * x[j]
		}
		x[i] /= a[i][i]
	}
	return x
}
