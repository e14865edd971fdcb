package exercise

import (
	"fmt"
	"math"
	"os"
	"slices"
	"sort"
	"strings"
	"sync"
	"testing"

	"moldwright/core/form"
	"moldwright/core/parting"
	"moldwright/core/release"
)

// seeds is how many questions of each kind are solved twice: 600, or 10,000
// with MOLDWRIGHT_LONG set.
func seeds() int {
	if os.Getenv("MOLDWRIGHT_LONG") != "" {
		return 10_000
	}
	if testing.Short() {
		return 90
	}
	return 600
}

// spread is a class of answers, by which the spread is shown, and least the
// number of classes that must turn up.
func spread(t task) string {
	switch x := t.(type) {
	case *catchTask:
		return fmt.Sprint(pullIDs[x.pull], " ", len(x.list))
	case *countTask:
		return x.count + " " + x.right[0]
	case *whereTask:
		return fmt.Sprintf("%d0 %%", int(10*x.middle()/x.height))
	case *pullTask:
		var all []string
		for _, p := range x.parts {
			all = append(all, strings.Join(p.answer, "/"))
		}
		return strings.Join(all, " ")
	case *draftTask:
		return fmt.Sprintf("%s %+d°", pullIDs[x.pull], 15*int(math.Floor(x.truth/15)))
	case *sizeTask:
		return x.variant
	case *drainTask:
		slip, air := x.truth()
		return slip + " " + air
	case *saveTask:
		return fmt.Sprintf("%s of %d", x.scheme, x.fewest)
	}
	return ""
}

var leastClasses = map[string]int{"catch": 8, "count": 7, "where": 6, "pull": 6, "draft": 12, "size": 6, "drain": 4, "save": 3}

// Every question of thousands of seeds can be drawn, is solved alike by the core
// and by the slow solver, stands away from every threshold, and its worked
// solution is marked right; the answers spread.
func TestSeeds(t *testing.T) {
	for _, k := range kinds {
		t.Run(k.id, func(t *testing.T) {
			t.Parallel()
			n := seeds()
			var mu sync.Mutex
			classes, tries, most := map[string]int{}, 0, 0
			var wg sync.WaitGroup
			for w := range 2 {
				wg.Go(func() {
					for i := w; i < n; i += 2 {
						r := Ref{Kind: k.id, Difficulty: 1 + i%Hardest, Seed: (i / Hardest * 277) % Seeds}
						var tk task
						a := 0
						for ; a < attempts && tk == nil; a++ {
							tk = k.make(r.gen(&k, 0), r.gen(&k, a+1), r.Difficulty)
						}
						code := Code(k.id, r.Difficulty, r.Seed)
						if tk == nil {
							t.Errorf("%s: no question", code)
							continue
						}
						s := tk.solve()
						if m := markTask(tk, &s.Answer, 0); m.Mark != Right {
							t.Errorf("%s: its own solution is marked %q: %s %+v", code, m.Mark, m.Words, m.Invalid)
						}
						if bad := disagree(tk); bad != "" {
							t.Errorf("%s: %s", code, bad)
						}
						mu.Lock()
						classes[spread(tk)]++
						tries += a
						most = max(most, a)
						mu.Unlock()
					}
				})
			}
			wg.Wait()
			var list []string
			for c, m := range classes {
				list = append(list, fmt.Sprintf("%s: %d", c, m))
				if float64(m) > 0.6*float64(n) {
					t.Errorf("%q is the answer of %d of %d questions", c, m, n)
				}
			}
			sort.Strings(list)
			t.Logf("%d questions, %.2f drawn for one, at most %d\n%s", n, float64(tries)/float64(n), most, strings.Join(list, "\n"))
			if len(classes) < leastClasses[k.id] {
				t.Errorf("%d classes of answers, want %d or more", len(classes), leastClasses[k.id])
			}
		})
	}
}

// disagree tells where the slow solver and the task differ, or "".
func disagree(t task) string {
	switch x := t.(type) {
	case *catchTask:
		return x.disagree()
	case *countTask:
		return x.disagree()
	case *whereTask:
		return x.disagree()
	case *pullTask:
		return x.disagree()
	case *draftTask:
		return x.disagree()
	case *sizeTask:
		return x.disagree()
	case *drainTask:
		return x.disagree()
	case *saveTask:
		return x.disagree()
	}
	return "unknown task"
}

func (t *catchTask) disagree() string {
	s := newSlow(t.job)
	runs, deep := s.stretches(t.pull, float64(t.from))
	n := 0
	for i, d := range deep {
		if d < 0.35 {
			return fmt.Sprintf("a stretch of only %.2f mm about point %.1f", d, runs[i][0])
		}
		n++
	}
	if n != len(t.list) {
		return fmt.Sprintf("%d stretches, slow %d", len(t.list), n)
	}
	for i := range t.list {
		p := t.list[i].middle()
		best, at := math.Inf(1), piece{}
		for _, c := range s.pieces {
			if d := c.p.Dist(p); d < best {
				best, at = d, c
			}
		}
		if best > slowStep || at.free[t.pull] {
			return fmt.Sprintf("the middle of stretch %d (%.2f %.2f) is free", i, p.R, p.Z)
		}
	}
	return ""
}

func (t *countTask) disagree() string {
	all, axial := newSlow(t.job).fewest()
	want := noneID
	if all > 0 {
		want = digit(all)
	}
	if want != t.count {
		return fmt.Sprintf("count %s, slow %s", t.count, want)
	}
	axialOnly := slices.Contains([]string{"free", "narrows", "thin"}, t.right[0])
	if all > 0 && axialOnly != (axial == all) {
		return fmt.Sprintf("reason %s, slow says %d of %d parts axial", t.right[0], axial, all)
	}
	return ""
}

func (t *whereTask) disagree() string {
	s := newSlow(t.job)
	held := func(v float64) (lower, upper bool) {
		for _, c := range s.pieces { // a jar's wall passes each height once above the foot
			if c.p.Z < v && !c.free[release.Down] {
				lower = true
			}
			if c.p.Z > v && c.x > float64(s.l.foot()) && !c.free[release.Up] {
				upper = true
			}
		}
		return lower, upper
	}
	if a, b := held(t.middle()); a || b {
		return fmt.Sprintf("parted at %.2f mm: lower held %v, upper %v", t.middle(), a, b)
	}
	if a, _ := held(t.hi + t.tol); !a {
		return fmt.Sprintf("lower not held at %.2f", t.hi+t.tol)
	}
	if _, b := held(t.lo - t.tol); !b {
		return fmt.Sprintf("upper not held at %.2f", t.lo-t.tol)
	}
	return ""
}

func (t *pullTask) disagree() string {
	j := *t.job
	s := newSlow(&j)
	// pieces of a part are those between its ends, found by place
	index := func(k int) float64 {
		p := t.m.Pts[k]
		best, at := math.Inf(1), 0.0
		for i := 0; i < s.l.end; i++ {
			a, b := s.l.m.Pts[i], s.l.m.Pts[i+1]
			if d := toLine(p, []form.Point{a, b}); d < best-1e-9 {
				best, at = d, float64(i)+p.Dist(a)/a.Dist(b)
			}
		}
		return at
	}
	for i := range t.parts {
		p := &t.parts[i]
		from, to := index(p.a), index(p.b)
		var clear, rubs []string
		for _, w := range [3]struct {
			pull release.Pull
			key  int
		}{{release.Down, -1}, {release.Up, -2}, {release.Out, p.sides}} {
			if w.pull == release.Out && p.sides == 0 {
				continue
			}
			held, area, rub := 0, 0.0, 0.0
			for _, c := range s.pieces {
				if c.x > from && c.x < to {
					area += c.area
					rub += c.rub[w.key]
					if !c.free[w.pull] {
						held++
					}
				}
			}
			switch {
			case held > 0:
			case 100*rub > t.rules.RubShare*area:
				rubs = append(rubs, pullIDs[w.pull])
			default:
				clear = append(clear, pullIDs[w.pull])
			}
		}
		want := clear
		if len(want) == 0 {
			want = rubs
		}
		if len(want) == 0 {
			want = []string{noneID}
		}
		if !slices.Equal(want, p.answer) {
			return fmt.Sprintf("part %s: %v, slow %v", p.id, p.answer, want)
		}
	}
	return ""
}

func (t *draftTask) disagree() string {
	p := t.point()
	nodes := t.job.Form.Outer
	best, truth := math.Inf(1), 0.0
	for i := 0; i+1 < len(nodes); i++ {
		a, b := form.Point{R: nodes[i].R, Z: nodes[i].Z}, form.Point{R: nodes[i+1].R, Z: nodes[i+1].Z}
		if d := toLine(p, []form.Point{a, b}); d < best {
			best = d
			// two tangents of the turned surface, and their product
			az := rad(float64(t.az))
			u := [3]float64{(b.R - a.R) * math.Cos(az), (b.R - a.R) * math.Sin(az), b.Z - a.Z}
			v := [3]float64{-math.Sin(az), math.Cos(az), 0}
			n := [3]float64{v[1]*u[2] - v[2]*u[1], v[2]*u[0] - v[0]*u[2], v[0]*u[1] - v[1]*u[0]}
			l := math.Sqrt(n[0]*n[0] + n[1]*n[1] + n[2]*n[2])
			d := pullVectors[t.pull]
			truth = deg(math.Asin((n[0]*d[0] + n[1]*d[1] + n[2]*d[2]) / l))
		}
	}
	if math.Abs(truth-t.truth) > 1e-6 {
		return fmt.Sprintf("draft %.6f, slow %.6f", t.truth, truth)
	}
	return ""
}

// A bar is dried, then fired, and the length in the mold is found by halving.
func (t *sizeTask) disagree() string {
	wet := 100.0
	dry, fired := wet*(100-t.drying)/100, 0.0
	fired = dry - dry*t.firing/100
	if t.variant == "enlarge" || t.variant == "shrink" || t.variant == "oversize" {
		fired = wet - wet*t.total/100
	}
	if t.bar[0] > 0 && strings.HasPrefix(t.variant, "bar") {
		wet, dry, fired = t.bar[0], t.bar[1], t.bar[2]
	}
	truth := 0.0
	switch t.variant {
	case "enlarge", "both", "barMold": // the mold length whose fired length is the given one, by halving
		lo, hi := t.length, 3*t.length
		for range 80 {
			if m := (lo + hi) / 2; m*fired/wet > t.length {
				hi = m
			} else {
				lo = m
			}
		}
		truth = lo
	case "shrink":
		truth = t.length * fired / wet
	case "total":
		truth = 100 * (wet - fired) / wet
	case "oversize":
		truth = 100 * (wet - fired) / fired
	case "bar":
		truth = 100 * (dry - fired) / dry
	}
	if math.Abs(truth-t.truth) > 1e-9*truth {
		return fmt.Sprintf("%s: %.9f, slow %.9f", t.variant, t.truth, truth)
	}
	return ""
}

func (t *drainTask) disagree() string {
	s := newSlow(t.job)
	g := s.cavity(0.5)
	air := g.held()
	slip := s.inset(g, t.job.Clay.Wall).held()
	if (air > 0.4) != (len(t.air) > 0) || (slip > 0.4) != t.holdsSlip() {
		return fmt.Sprintf("%s: air %v slip %v, slow %.2f and %.2f ml", t.job.Name, t.air, t.slip, air, slip)
	}
	if v, _, _ := volume(t.air); math.Abs(v-air) > 0.4+0.25*v {
		return fmt.Sprintf("%s: air %.2f ml, slow %.2f", t.job.Name, v, air)
	}
	return ""
}

func (t *saveTask) disagree() string {
	parts := t.now.Count
	if all, axial := newSlow(t.job).fewest(); axial > 0 && axial <= parts || all != t.fewest {
		return fmt.Sprintf("now: slow %d (axial %d), want %d", all, axial, t.fewest)
	}
	if _, axial := newSlow(t.nearest.Apply(t.job)).fewest(); axial == 0 || axial > parts {
		return fmt.Sprintf("after the nearest change: slow %d parts, want %d", axial, parts)
	}
	// no change by less than half the catch can free it
	if t.nearest.MaxChangeMM < (t.now.Depth-parting.CatchDepth)/2-1e-6 {
		return fmt.Sprintf("change %.3f for a catch of %.3f", t.nearest.MaxChangeMM, t.now.Depth)
	}
	return ""
}
