package release

import (
	"math"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

func section(s job.Section, turn float64) *form.Section { return form.NewSection(s).Turned(turn) }

// A polygon whose corners are fully rounded is a circle: the tables must agree
// with the closed form for turned surfaces.
func TestTablesOfARoundPolygon(t *testing.T) {
	round := section(job.Section{Kind: job.SectionPolygon, Count: 5, Rounding: 100}, 0.3)
	edges := NewEdges(0, 1, 3, 10, 30)
	for _, slope := range []float64{-1.2, -0.4, 0.1, 0.9, 1.3, 2, 3} {
		m := &form.Meridian{Pts: []form.Point{{R: 30, Z: 10}, {R: 30 + 5*math.Cos(slope), Z: 10 + 5*math.Sin(slope)}}, Spans: []form.Span{{A0: slope, A1: slope}}}
		for _, n := range []int{2, 3, 4} {
			want, got := make([]float64, 5), make([]float64, 5)
			area, least := SpanSurface(m, 0, Out, n, edges, want)
			a, l := NewSide(round, 1, math.Pi/float64(n), edges).Span(m, 0, got)
			if math.Abs(a-area) > 1e-3*area || math.Abs(l-least) > 0.7 {
				t.Errorf("slope %g, %d sides: area %.3f and least draft %.2f, want %.3f and %.2f", slope, n, a, l, area, least)
			}
			for e := range want {
				if math.Abs(got[e]-want[e]) > 0.02*area {
					t.Errorf("slope %g, %d sides, below %g: %.2f, want %.2f", slope, n, edges.Deg[e], got[e], want[e])
				}
			}
		}
		for _, pull := range []Pull{Down, Up} {
			_, least := SpanSurface(m, 0, pull, 0, edges, make([]float64, 5))
			if _, got := NewCap(round, pull, edges).Span(m, 0, make([]float64, 5)); math.Abs(got-least) > 0.01 {
				t.Errorf("slope %g, pull %d: least draft %.4f, want %.4f", slope, pull, got, least)
			}
		}
	}
}

// Draft, area and least draft of an oval and a fluted cone against finite
// differences on the surface itself.
func TestSectionAgainstFiniteDifferences(t *testing.T) {
	const half, mid = math.Pi / 2, 0.4
	slope := 1.2 // of the meridian
	m := &form.Meridian{Pts: []form.Point{{R: 30, Z: 0}, {R: 30 + math.Cos(slope), Z: math.Sin(slope)}}, Spans: []form.Span{{A0: slope, A1: slope}}}
	for _, js := range []job.Section{{Kind: job.SectionOval, Ratio: 0.6}, {Kind: job.SectionFlutes, Count: 8, Depth: 10}} {
		s := section(js, 0.25)
		edges := NewEdges(0, 5, 20)
		got := make([]float64, 3)
		area, least := NewSide(s, mid, half, edges).Span(m, 0, got)
		at := func(a, z float64) [3]float64 {
			g, _ := s.At(a)
			r := (30 + z/math.Tan(slope)) * g
			return [3]float64{r * math.Cos(a), r * math.Sin(a), z}
		}
		sum, low, below := 0.0, 90.0, make([]float64, 3)
		const steps, h = 4000, 1e-5
		for k := range steps {
			a := mid + (2*(float64(k)+0.5)/steps-1)*half
			z := math.Sin(slope) / 2
			var u, v [3]float64
			for i := range u {
				u[i] = (at(a+h, z)[i] - at(a-h, z)[i]) / (2 * h)
				v[i] = (at(a, z+h)[i] - at(a, z-h)[i]) / (2 * h) / math.Sin(slope) * math.Sin(slope)
			}
			n := [3]float64{u[1]*v[2] - u[2]*v[1], u[2]*v[0] - u[0]*v[2], u[0]*v[1] - u[1]*v[0]}
			l := math.Sqrt(n[0]*n[0] + n[1]*n[1] + n[2]*n[2])
			draft := math.Asin((n[0]*math.Cos(mid)+n[1]*math.Sin(mid))/l) * 180 / math.Pi
			da := l * 2 * half / steps * math.Sin(slope)
			sum += da
			low = math.Min(low, draft)
			for e, d := range edges.Deg {
				if draft < d {
					below[e] += da
				}
			}
		}
		share := half / math.Pi
		if math.Abs(area*share-sum) > 2e-3*sum || math.Abs(least-low) > 0.6 {
			t.Errorf("%s: area %.4f and least draft %.3f, differences give %.4f and %.3f", js.Kind, area*share, least, sum, low)
		}
		for e := range below {
			if math.Abs(got[e]*share-below[e]) > 0.01*sum {
				t.Errorf("%s below %g: %.4f, differences give %.4f", js.Kind, edges.Deg[e], got[e]*share, below[e])
			}
		}
	}
}

// Hooks against rays: plaster beside the section is moved along the pull in
// small steps, and what it meets is measured across the pull.
func TestHookAgainstRays(t *testing.T) {
	for _, js := range []job.Section{{Kind: job.SectionRound}, {Kind: job.SectionOval, Ratio: 0.6}, {Kind: job.SectionPolygon, Count: 5, Rounding: 10}, {Kind: job.SectionFlutes, Count: 12, Depth: 8}} {
		for _, n := range []int{2, 3, 4} {
			for _, turn := range []float64{0, 0.2, 0.5} {
				s := section(js, turn)
				half := math.Pi / float64(n)
				for _, shrunk := range []float64{0, 0.02} {
					got := Hook(s, half, half, shrunk).Depth
					want := slowHook(s, half, half, shrunk)
					if math.Abs(got-want) > 0.004 {
						t.Errorf("%s, %d sides, turned %g, shrunk by %g: hook %.4f, rays give %.4f", js.Kind, n, turn, shrunk, got, want)
					}
				}
			}
		}
	}
}

// slowHook looks, at each lateral place, for plaster of the sector that lies
// nearer the axis than pot at the same lateral place, and how far aside the
// nearest lateral place is at which none stands in its way. The pot alone has
// shrunk, by the share given.
func slowHook(s *form.Section, mid, half, shrunk float64) float64 {
	const n = 1200
	var x, y [n + 1]float64 // along and across the pull
	for k := range x {
		a := (2*float64(k)/n - 1) * half
		g, _ := s.At(mid + a)
		x[k], y[k] = g*math.Cos(a), g*math.Sin(a)
	}
	ahead := func(at float64) float64 { // the farthest pot at a lateral place
		far := math.Inf(-1)
		at /= 1 - shrunk
		for k := range n {
			if (y[k]-at)*(y[k+1]-at) <= 0 && y[k] != y[k+1] {
				far = math.Max(far, x[k]+(at-y[k])/(y[k+1]-y[k])*(x[k+1]-x[k]))
			}
		}
		return far * (1 - shrunk)
	}
	deepest := 0.0
	for k := 0; k <= n; k += 8 {
		if ahead(y[k]) <= x[k]+1e-6 {
			continue
		}
		d := 0.0
		for d = 0; d < 2; d += 0.0005 {
			if ahead(y[k]+d) <= x[k] || ahead(y[k]-d) <= x[k] {
				break
			}
		}
		deepest = math.Max(deepest, d)
	}
	return deepest
}
