package release

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"moldwright/core/form"
	"moldwright/core/form/formtest"
	"moldwright/core/job"
)

// profiles is how many random profiles the twin is asked about, and seed the
// one they all come from.
const (
	profiles = 20_000
	seed     = 0x6d6f6c64
)

// How far the sweeps may stand from the twin: mm across the pull, shares of
// area and volume.
const (
	depthTol = 0.01
	shareTol = 1e-4
)

// compare asks survey and twin the same questions at some places of the form
// and tells the first disagreement, or "". dense asks at very many, and takes
// the traps' sizes exactly.
func compare(m *form.Meridian, g *rand.Rand, dense bool) string {
	return New(m).like(newTwin(m), g, dense)
}

// like asks them.
func (s *Survey) like(w *twin, g *rand.Rand, dense bool) string {
	m, places := s.M, 10
	if dense {
		places = 40 * len(m.Spans)
	}
	for k := range places {
		span, t := spot(m, g)
		if dense && k%2 == 0 {
			span, t = k/2%len(m.Spans), 1e-3+0.998*g.Float64()
		}
		for _, pull := range Pulls {
			if bad := s.besideLike(w, pull, span, t); bad != "" {
				return bad
			}
		}
	}
	if bad := s.emptyLike(w, g, places); bad != "" {
		return bad
	}
	return s.trapsLike(w, dense)
}

// spot is a place on the contour: anywhere, close to an end of a span, or level
// with or beside another point of the form, where depth leaps.
func spot(m *form.Meridian, g *rand.Rand) (span int, t float64) {
	span, t = g.IntN(len(m.Spans)), g.Float64()
	switch g.IntN(4) {
	case 0:
		t = math.Pow(10, -1-4*g.Float64())
		if g.IntN(2) == 0 {
			t = 1 - t
		}
	case 1, 2:
		v := m.Pts[g.IntN(len(m.Pts))]
		near := (g.Float64() - 0.5) * math.Pow(10, -4*g.Float64())
		level := g.IntN(2) == 0
		var at []int
		for i := range m.Spans {
			p, q := m.Pts[i], m.Pts[i+1]
			if level && (p.Z > v.Z+near) != (q.Z > v.Z+near) || !level && (p.R > v.R+near) != (q.R > v.R+near) {
				at = append(at, i)
			}
		}
		if len(at) > 0 {
			span = at[g.IntN(len(at))]
			p, q := m.Pts[span], m.Pts[span+1]
			if t = (v.Z + near - p.Z) / (q.Z - p.Z); !level {
				t = (v.R + near - p.R) / (q.R - p.R)
			}
		}
	}
	l := m.Pts[span].Dist(m.Pts[span+1])
	e := math.Min(2e-6/l, 0.3)
	return span, math.Max(e, math.Min(1-e, t))
}

// besideLike compares one place beside the contour: free or not, how deep, and
// no deeper than the samples to either side of it.
func (s *Survey) besideLike(w *twin, pull Pull, span int, t float64) string {
	wall := s.wall(span)
	at, plaster := wall.beside(t)
	f := &s.frames[pull]
	v := f.to(plaster)
	if a, b := f.env.free(v.x, v.y), w.free(plaster, pull); a != b {
		return fmt.Sprintf("label: pull %d span %d t %.9f (%.6f %.6f): free %v, twin %v", pull, span, t, at.R, at.Z, a, b)
	}
	var here Sample
	s.take(f, &wall, t, &here)
	fast := here.Depth
	slow := w.depth(plaster, pull)
	if math.Abs(fast-slow) > depthTol {
		return fmt.Sprintf("depth: pull %d span %d t %.9f (%.6f %.6f): %.6f, twin %.6f", pull, span, t, at.R, at.Z, fast, slow)
	}
	deepest := 0.0
	on := s.All(pull)
	from, _ := slices.BinarySearchFunc(on, span, func(x Sample, span int) int { return x.Span - span })
	to, _ := slices.BinarySearchFunc(on, span+1, func(x Sample, span int) int { return x.Span - span })
	for k, x := range on[from:to] { // the ones beside it, or at the span's end
		if before, after := x.T <= t, x.T >= t; before && (from+k+1 == to || on[from+k+1].T >= t) || after && (k == 0 || on[from+k-1].T <= t) {
			deepest = max(deepest, x.Depth)
		}
	}
	if slow > deepest+depthTol && !hair(w, plaster, pull, deepest+depthTol) {
		class := "missed"
		if w.shut(plaster, pull) {
			class = "missed in a shut gap"
		}
		return fmt.Sprintf(class+": pull %d span %d t %.9f (%.6f %.6f) is %.6f deep, samples beside it %.6f", pull, span, t, at.R, at.Z, slow, deepest)
	}
	return ""
}

// hair tells whether the answer hangs on less than a hair: whether the place
// is no deeper than most once it is moved by that much along the pull.
func hair(w *twin, p form.Point, pull Pull, most float64) bool {
	const width = 1e-5
	for _, by := range [2]float64{width, -width} {
		to := p
		if pull == Out {
			to.R += by
		} else {
			to.Z += by
		}
		if w.depth(to, pull) <= most {
			return true
		}
	}
	return false
}

// emptyLike compares labels, depth and trapped or not at places anywhere
// around the form.
func (s *Survey) emptyLike(w *twin, g *rand.Rand, places int) string {
	h, r := s.M.Extent()
	for range places {
		p := form.Point{R: 1.1 * r * g.Float64(), Z: h * (1.2*g.Float64() - 0.1)}
		if w.inside(p) {
			continue
		}
		trapped := true
		for _, pull := range Pulls {
			f := &s.frames[pull]
			v := f.to(p)
			a, b := f.env.free(v.x, v.y), w.free(p, pull)
			if a != b {
				return fmt.Sprintf("label: pull %d (%.6f %.6f): free %v, twin %v", pull, p.R, p.Z, a, b)
			}
			trapped = trapped && !a
			var here Sample
			s.depth(f, p, false, &here)
			fast := here.Depth
			if slow := w.depth(p, pull); math.Abs(fast-slow) > depthTol {
				return fmt.Sprintf("depth: pull %d (%.6f %.6f): %.6f, twin %.6f", pull, p.R, p.Z, fast, slow)
			}
		}
		in := false
		for _, iv := range s.trapped(p.Z) {
			in = in || p.R > iv.a && p.R < iv.b
		}
		opening := !s.M.Closed && p.Z > s.M.Rim().Z && p.R < w.mouth(p.Z)
		if in != (trapped && !opening) {
			return fmt.Sprintf("trap: (%.6f %.6f): %v, twin %v", p.R, p.Z, in, trapped)
		}
	}
	return ""
}

// mouth is how far the opening reaches from the axis at height z above the rim.
func (w *twin) mouth(z float64) float64 {
	r := math.Inf(1)
	for i := 0; i+1 < len(w.body); i++ {
		a, b := w.body[i], w.body[i+1]
		if (a.Z > z) != (b.Z > z) {
			r = math.Min(r, a.R+(z-a.Z)/(b.Z-a.Z)*(b.R-a.R))
		}
	}
	return r
}

// trapsLike compares what all traps come to.
func (s *Survey) trapsLike(w *twin, exact bool) string {
	fast := sumOf(s.Traps())
	var slow measure
	tol := shareTol
	h, _ := s.M.Extent()
	const strips = 24
	if exact {
		slow = w.trapsExactly(w.trapped)
	} else {
		slow = w.trapsBetween(0, h, strips)
		tol = 0.3
		if max(fast.area, slow.area) < 8*h/strips*max(fast.wide, slow.wide) { // too small for strips
			tol = 2
		}
	}
	differ := func(a, b, least float64) bool { return math.Abs(a-b) > math.Max(least, tol*math.Max(a, b)) }
	if !exact {
		if slow.wide > 0.01 && fast.area == 0 {
			return fmt.Sprintf("traps: none, twin %+v", slow)
		}
		if tol < 1 && differ(fast.area, slow.area, 0) {
			if slow = w.trapsBetween(0, h, 50*strips); !differ(fast.area, slow.area, 0) {
				return "" // many thin ones
			}
			return fmt.Sprintf("traps: %+v, twin by strips %+v", fast, slow)
		}
		return ""
	}
	return fast.like(slow)
}

// like compares what all traps come to, exactly, "" where it is the same.
func (fast measure) like(slow measure) string {
	differ := func(a, b, least float64) bool { return math.Abs(a-b) > math.Max(least, shareTol*math.Max(a, b)) }
	if slow.wide < 2e-3 || slow.area < 1e-3 { // narrower or lower than what counts as a trap
		return ""
	}
	if differ(fast.area, slow.area, 1e-2) || differ(fast.volume, slow.volume, 1) || math.Abs(fast.wide-slow.wide) > depthTol {
		return fmt.Sprintf("traps: %+v, twin %+v", fast, slow)
	}
	return ""
}

// sumOf is what traps come to.
func sumOf(traps []Trap) measure {
	sum := measure{zFrom: math.Inf(1), zTo: math.Inf(-1)}
	for _, t := range traps {
		sum.area += t.Area
		sum.volume += t.Volume
		sum.wide = math.Max(sum.wide, t.Depth)
		sum.zFrom, sum.zTo = math.Min(sum.zFrom, t.ZFrom), math.Max(sum.zTo, t.ZTo)
	}
	return sum
}

// The survey agrees with the twin on random profiles: wavy, near vertical, near
// level, hooked, untangled from random points, with hair-thin necks, grooves
// that widen inward, drooping flanges, recessed feet, closed, smooth, and
// snapped to a grid so that edges stand exactly over one another.
func TestAgainstTwin(t *testing.T) {
	n := uint64(profiles)
	if testing.Short() {
		n /= 20
	}
	var mu sync.Mutex
	failed := map[string]int{}
	work := make(chan uint64)
	var wg sync.WaitGroup
	for range 2 {
		wg.Go(func() {
			for k := range work {
				g := formtest.Rand(seed, k)
				m, nodes := formtest.Meridian(g)
				bad := compare(m, g, k%100 == 0 && len(m.Pts) < 100)
				if bad == "" {
					continue
				}
				class, _, _ := strings.Cut(bad, ":")
				mu.Lock()
				failed[class]++
				if failed[class] <= 3 {
					t.Errorf("profile %d: %s\n%s", k, bad, rows(shrink(nodes, class)))
				}
				mu.Unlock()
			}
		})
	}
	for k := range n {
		work <- k
	}
	close(work)
	wg.Wait()
	if len(failed) > 0 {
		t.Errorf("disagreements by kind: %v", failed)
	}
}

// shrink drops nodes and rounds coordinates as long as the same kind of
// disagreement stays.
func shrink(nodes []job.Node, class string) []job.Node {
	return shrinkBy(nodes, func(n []job.Node) bool {
		m, err := formtest.Build(n)
		if err != nil {
			return false
		}
		bad := compare(m, formtest.Rand(1, 1), true)
		return strings.HasPrefix(bad, class)
	})
}

// shrinkBy does so for any disagreement.
func shrinkBy(nodes []job.Node, fails func([]job.Node) bool) []job.Node {
	if !fails(nodes) {
		return nodes
	}
	for again := true; again; {
		again = false
		for i := range nodes {
			less := append(append([]job.Node{}, nodes[:i]...), nodes[i+1:]...)
			if fails(less) {
				nodes, again = less, true
				break
			}
		}
	}
	for i := range nodes {
		for _, grid := range []float64{10, 5, 1, 0.1, 0.01} {
			round := append([]job.Node{}, nodes...)
			round[i].R, round[i].Z = math.Round(nodes[i].R/grid)*grid, math.Round(nodes[i].Z/grid)*grid
			if fails(round) {
				nodes = round
				break
			}
		}
		straight := append([]job.Node{}, nodes...)
		straight[i].Corner = true
		if fails(straight) {
			nodes = straight
		}
	}
	return nodes
}

func rows(nodes []job.Node) string {
	var b strings.Builder
	for _, n := range nodes {
		fmt.Fprintf(&b, "%.12g %.12g", n.R, n.Z)
		if !n.Corner {
			b.WriteString(" smooth")
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// Profiles on which sweeps and twin once differed, each named after the cause,
// and the pots worked by hand; all compared closely.
func TestFixtures(t *testing.T) {
	for _, dir := range []string{"release", "pots"} {
		files, err := filepath.Glob("../../testdata/" + dir + "/*.txt")
		if err != nil || len(files) == 0 {
			t.Fatalf("no profiles in %s: %v", dir, err)
		}
		for _, name := range files {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			nodes, faults := form.ReadRows(string(text), form.Columns{Units: "mm"})
			if faults != nil {
				t.Fatalf("%s: %v", name, faults)
			}
			m, err := formtest.Build(nodes)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if bad := compare(m, formtest.Rand(2, 2), true); bad != "" {
				t.Errorf("%s: %s", filepath.Base(name), bad)
			}
		}
	}
}
