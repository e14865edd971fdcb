package parting

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// The slow twin is the quadratic program written plainly: least weighted sum of
// squares under linear inequalities, solved by trying every set of inequalities
// as equalities (Karush, Kuhn and Tucker: the optimum is the best feasible one
// of these).

// row is an inequality: the sum of by[i] x[i] is at least, or for a fixed row
// equal to, least.
type row struct {
	by    []float64
	least float64
	fixed bool
}

func quadraticProgram(y, w []float64, rows []row) (x []float64, cost float64) {
	cost = math.Inf(1)
	for set := range 1 << len(rows) {
		var held []row
		skip := false
		for i, c := range rows {
			in := set>>i&1 == 1
			skip = skip || c.fixed && !in
			if in {
				held = append(held, c)
			}
		}
		if skip {
			continue
		}
		v := heldAt(y, w, held)
		if v == nil {
			continue
		}
		sum := 0.0
		for i := range y {
			sum += w[i] * (v[i] - y[i]) * (v[i] - y[i])
		}
		for _, c := range rows {
			s := -c.least
			for i, b := range c.by {
				s += b * v[i]
			}
			if s < -1e-9 {
				sum = math.Inf(1)
			}
		}
		if sum < cost {
			x, cost = v, sum
		}
	}
	return x, cost
}

// heldAt is the weighted least squares with every row an equality, by
// elimination of the Lagrange equations; nil where the rows are dependent.
func heldAt(y, w []float64, rows []row) []float64 {
	n, k := len(y), len(rows)
	a := make([][]float64, n+k)
	for i := range a {
		a[i] = make([]float64, n+k+1)
	}
	for i := range n {
		a[i][i], a[i][n+k] = w[i], w[i]*y[i]
	}
	for j, c := range rows {
		for i, b := range c.by {
			a[n+j][i], a[i][n+j] = b, b
		}
		a[n+j][n+k] = c.least
	}
	for p := range a {
		best := p
		for q := p; q < len(a); q++ {
			if math.Abs(a[q][p]) > math.Abs(a[best][p]) {
				best = q
			}
		}
		if math.Abs(a[best][p]) < 1e-12 {
			return nil
		}
		a[p], a[best] = a[best], a[p]
		for q := range a {
			if f := a[q][p] / a[p][p]; q != p && f != 0 {
				for m := p; m < len(a[q]); m++ {
					a[q][m] -= f * a[p][m]
				}
			}
		}
	}
	x := make([]float64, n)
	for i := range x {
		x[i] = a[i][n+k] / a[i][i]
	}
	return x
}

// program writes the regression's rules out as rows, for a peak at node k.
func program(n, k int, gap []float64, closed bool, leastEnd float64) []row {
	var rows []row
	one := func(i int, s float64) []float64 {
		by := make([]float64, n)
		by[i] = s
		return by
	}
	rows = append(rows, row{one(0, 1), 0, true})
	if closed {
		rows = append(rows, row{one(n-1, 1), 0, true})
	} else {
		rows = append(rows, row{one(n-1, 1), leastEnd, false})
	}
	for i := range gap {
		by := one(i, -1)
		by[i+1] = 1
		if i >= k {
			by[i], by[i+1] = 1, -1
		}
		rows = append(rows, row{by, gap[i], false})
	}
	return rows
}

func TestRadiiAgainstQuadraticProgram(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 5))
	compare := func(what string, got, want []float64) {
		t.Helper()
		for i := range want {
			if math.Abs(got[i]-want[i]) > 1e-6 {
				t.Fatalf("%s: node %d is %.9f, the quadratic program has %.9f\n%v\n%v", what, i, got[i], want[i], got, want)
			}
		}
	}
	for trial := range 400 {
		n := 3 + rnd.IntN(5)
		r, w, gap := make([]float64, n), make([]float64, n), make([]float64, n-1)
		closed := trial%3 == 0
		steep := []float64{0.1, 1, 10, 60}[rnd.IntN(4)] // wide gaps press all against the bounds
		for i := 1; i < n; i++ {
			r[i] = 50 * rnd.Float64()
			if rnd.IntN(5) == 0 {
				r[i] = r[i-1] // ties
			}
			gap[i-1] = steep * rnd.Float64()
		}
		for i := range w {
			w[i] = math.Exp(3 * rnd.NormFloat64())
		}
		if closed {
			r[n-1] = 0
		}
		p := newRadii(r, w, gap, closed, 1)
		cost := func(x []float64) float64 {
			s := 0.0
			for i := range x {
				s += w[i] * (x[i] - r[i]) * (x[i] - r[i])
			}
			return s
		}
		for k := 1; k < n-1; k++ {
			want, least := quadraticProgram(r, w, program(n, k, gap, closed, 1))
			got := p.peaked(k)
			compare(fmt.Sprintf("trial %d, peak at %d of %d", trial, k, n), got, want)
			radius, c := p.peak(k)
			about(t, "radius of the peak", radius, want[k], 1e-6)
			about(t, "told cost", c, cost(got), 1e-6*(1+least))
			about(t, "cost", c, least, 1e-6*(1+least))
		}
		if !closed {
			want, _ := quadraticProgram(r, w, program(n, n-1, gap, false, 0))
			compare("rising", p.rising(), want)
		}
	}
}

// By hand, no gaps: 1 9 6 pools the last two at their mean; of 4 1 8 2 with its
// peak at the third, the first two pool at 2.5 and the last stays.
func TestRadiiByHand(t *testing.T) {
	p := newRadii([]float64{0, 1, 9, 6}, []float64{1, 1, 1, 2}, []float64{0, 0, 0}, false, 0)
	for i, want := range []float64{0, 1, 7, 7} {
		about(t, "rising", p.rising()[i], want, 1e-12)
	}
	p = newRadii([]float64{0, 4, 1, 8, 2}, []float64{1, 1, 1, 1, 1}, []float64{0, 0, 0, 0}, false, 0)
	for i, want := range []float64{0, 2.5, 2.5, 8, 2} {
		about(t, "peaked", p.peaked(3)[i], want, 1e-12)
	}
	if _, cost := p.peak(3); math.Abs(cost-4.5) > 1e-12 {
		t.Errorf("cost %g, want 4.5", cost)
	}
}

// Every peak's cost, for walls that pool little, much and all; time for each
// node must not grow with their number.
func BenchmarkAllPeaks(b *testing.B) {
	rnd := rand.New(rand.NewPCG(1, 1))
	shapes := []struct {
		name string
		at   func(i, n int) float64
	}{
		{"noise", func(i, n int) float64 { return 50 * rnd.Float64() }},
		{"belly", func(i, n int) float64 { return 50*math.Sin(math.Pi*float64(i)/float64(n)) + rnd.Float64() }},
		{"hollow", func(i, n int) float64 { return 60 - 50*math.Sin(math.Pi*float64(i)/float64(n)) }},
		{"teeth", func(i, n int) float64 { return 40 + float64(i%7) }},
	}
	for _, s := range shapes {
		for _, n := range []int{1000, 10_000, 100_000} {
			r, w, gap := make([]float64, n), make([]float64, n), make([]float64, n-1)
			for i := range r {
				r[i], w[i] = s.at(i, n), 1
			}
			r[0] = 0
			for i := range gap {
				gap[i] = 100 * math.Tan(3*math.Pi/180) / float64(n)
			}
			b.Run(fmt.Sprintf("%s/%d", s.name, n), func(b *testing.B) {
				for b.Loop() {
					p := newRadii(r, w, gap, false, 1)
					for k := 1; k < n-1; k++ {
						p.peak(k)
					}
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/node")
			})
		}
	}
}
