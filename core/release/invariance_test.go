package release

import (
	"math"
	"slices"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

// deepest is the deepest catch of every span under a pull.
func deepest(s *Survey, pull Pull) []float64 {
	d := make([]float64, len(s.M.Spans))
	for _, x := range s.All(pull) {
		d[x.Span] = math.Max(d[x.Span], x.Depth)
	}
	return d
}

func total(traps []Trap) (t measure) {
	for _, x := range traps {
		t.area += x.Area
		t.volume += x.Volume
		t.wide = math.Max(t.wide, x.Depth)
	}
	return t
}

// random is a random meridian with no feature of a hair's width, on which the
// fixed steps of the survey tell.
func random(k uint64) (*form.Meridian, []job.Node) {
	g := formtest.Rand(7, k)
	for {
		nodes := formtest.Nodes(g)
		for i := range nodes {
			nodes[i].R, nodes[i].Z = math.Round(nodes[i].R*4)/4, math.Round(nodes[i].Z*4)/4
		}
		if m, err := formtest.Build(nodes); err == nil {
			return m, nodes
		}
	}
}

const invariant = 400

func same(t *testing.T, what string, k uint64, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("profile %d: %s is %.6f, was %.6f", k, what, got, want)
	}
}

// Turned upside down, a closed form catches upward as it caught downward.
func TestMirrorSwapsPulls(t *testing.T) {
	for k := range uint64(invariant) {
		m, _ := random(k)
		if !m.Closed {
			continue
		}
		h, _ := m.Extent()
		w := &form.Meridian{Closed: true}
		for _, p := range slices.Backward(m.Pts) {
			w.Pts = append(w.Pts, form.Point{R: p.R, Z: h - p.Z})
		}
		for _, sp := range slices.Backward(m.Spans) {
			turn := sp.A1 - sp.A0
			a := math.Remainder(math.Pi-sp.A1, 2*math.Pi)
			w.Spans = append(w.Spans, form.Span{A0: a, A1: a + turn})
		}
		a, b := New(m), New(w)
		for pull, mirrored := range map[Pull]Pull{Down: Up, Up: Down, Out: Out} {
			da, db := deepest(a, pull), deepest(b, mirrored)
			for i := range da {
				j := len(db) - 1 - i
				same(t, "depth", k, db[j], da[i], 0.01)
				for _, edge := range []float64{0.5, 3} {
					one := func(k int) func(int) bool { return func(i int) bool { return i == k } }
					pa, _, la := below(m, pull, 3, edge, one(i))
					pb, _, lb := below(w, mirrored, 3, edge, one(j))
					same(t, "area below", k, pb, pa, 1e-6*(1+pa))
					same(t, "least draft", k, lb, la, 1e-6)
				}
			}
		}
		ta, tb := total(a.Traps()), total(b.Traps())
		same(t, "trapped area", k, tb.area, ta.area, 1e-4*(1+ta.area))
		same(t, "trapped volume", k, tb.volume, ta.volume, 1e-4*(1+ta.volume))
	}
}

// At twice the size all lengths are doubled, and drafts stay.
func TestScale(t *testing.T) {
	for k := range uint64(invariant) {
		m, _ := random(k)
		w := *m
		w.Pts = slices.Clone(m.Pts)
		for i := range w.Pts {
			w.Pts[i].R *= 2
			w.Pts[i].Z *= 2
		}
		a, b := New(m), New(&w)
		for _, pull := range Pulls {
			da, db := deepest(a, pull), deepest(b, pull)
			for i := range da {
				same(t, "depth", k, db[i], 2*da[i], 0.02)
			}
			pa, _, la := below(m, pull, 2, 3, func(int) bool { return true })
			pb, _, lb := below(&w, pull, 2, 3, func(int) bool { return true })
			same(t, "area below", k, pb, 4*pa, 1e-6*(1+pa))
			same(t, "least draft", k, lb, la, 1e-9)
		}
		ta, tb := total(a.Traps()), total(b.Traps())
		same(t, "trapped area", k, tb.area, 4*ta.area, 1e-3*(1+ta.area))
		same(t, "trapped volume", k, tb.volume, 8*ta.volume, 1e-3*(1+ta.volume))
		same(t, "trap's width", k, tb.wide, 2*ta.wide, 0.01)
	}
}

// Points put into straight stretches change nothing.
func TestRefiningStraightStretches(t *testing.T) {
	for k := range uint64(invariant) {
		m, _ := random(k)
		g := formtest.Rand(9, k)
		w := &form.Meridian{Closed: m.Closed, Pts: []form.Point{m.Pts[0]}}
		var from []int // the span of m that each span of w is of
		for i, sp := range m.Spans {
			if sp.A0 == sp.A1 {
				n := 1 + g.IntN(4)
				for j := 1; j < n; j++ {
					w.Pts = append(w.Pts, m.Pts[i].Lerp(m.Pts[i+1], (float64(j)+0.5*g.Float64())/float64(n)))
					w.Spans, from = append(w.Spans, sp), append(from, i)
				}
			}
			w.Pts = append(w.Pts, m.Pts[i+1])
			w.Spans, from = append(w.Spans, sp), append(from, i)
		}
		a, b := New(m), New(w)
		for _, pull := range Pulls {
			da, db := deepest(a, pull), make([]float64, len(m.Spans))
			for j, d := range deepest(b, pull) {
				db[from[j]] = math.Max(db[from[j]], d)
			}
			for i := range da {
				same(t, "depth", k, db[i], da[i], 0.01)
			}
			pa, _, _ := below(m, pull, 4, 3, func(int) bool { return true })
			pb, _, _ := below(w, pull, 4, 3, func(int) bool { return true })
			same(t, "area below", k, pb, pa, 1e-6*(1+pa))
		}
		ta, tb := total(a.Traps()), total(b.Traps())
		same(t, "trapped area", k, tb.area, ta.area, 1e-3*(1+ta.area))
		same(t, "trapped volume", k, tb.volume, ta.volume, 1e-3*(1+ta.volume))
		same(t, "number of traps", k, float64(len(b.Traps())), float64(len(a.Traps())), 0)
	}
}

// Nodes given higher up or lower down are the same form.
func TestShift(t *testing.T) {
	for k := range uint64(invariant) {
		m, nodes := random(k)
		for i := range nodes {
			nodes[i].Z -= 128
		}
		w, err := formtest.Build(nodes)
		if err != nil {
			t.Errorf("profile %d: %v", k, err)
			continue
		}
		h0, r0 := m.Extent()
		h1, r1 := w.Extent()
		same(t, "height", k, h1, h0, 1e-9)
		same(t, "radius", k, r1, r0, 1e-9)
		same(t, "volume", k, w.Volume(), m.Volume(), 1e-9*m.Volume())
		a, b := New(m), New(w)
		for _, pull := range Pulls {
			same(t, "depth", k, slices.Max(deepest(b, pull)), slices.Max(deepest(a, pull)), 0.01)
		}
		ta, tb := total(a.Traps()), total(b.Traps())
		same(t, "trapped volume", k, tb.volume, ta.volume, 1e-3*(1+ta.volume))
	}
}
