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

// The kinds of form that have a mold of their own, each against a twin of its own
// body, laid out here from the nodes as given: the clay between two surfaces, a lid
// upside down, a closed form with the clay that stands in its fill hole, a pot with
// a recess under its foot.

// kindForms is how many random forms of each kind are tried.
const kindForms = 4000

// kindOf makes a random form of a kind and tells the first disagreement about one,
// "" for none; ok is false where the nodes make no form.
type kindOf struct {
	name string
	make func(g *rand.Rand) [][]job.Node
	bad  func(nodes [][]job.Node, g *rand.Rand, dense bool) (bad string, ok bool)
}

var kindsOfForm = []kindOf{
	{"core", func(g *rand.Rand) [][]job.Node {
		outer, inner := formtest.Cored(g)
		return [][]job.Node{outer, inner}
	}, coreBad},
	{"lid", func(g *rand.Rand) [][]job.Node { return [][]job.Node{formtest.Lid(g)} }, lidBad},
	{"closed", func(g *rand.Rand) [][]job.Node { return [][]job.Node{formtest.Closed(g)} }, closedBad},
	{"foot", func(g *rand.Rand) [][]job.Node { return [][]job.Node{formtest.Footed(g)} }, footBad},
}

// angular tells whether all nodes are corners, so that the outline is known without
// any curve.
func angular(nodes []job.Node) bool {
	return !slices.ContainsFunc(nodes[1:len(nodes)-1], func(n job.Node) bool { return !n.Corner })
}

// outline is that of angular nodes, z times up, standing on 0.
func outline(nodes []job.Node, up float64) []form.Point {
	out := make([]form.Point, len(nodes))
	low := math.Inf(1)
	for i, n := range nodes {
		out[i] = form.Point{R: n.R, Z: up * n.Z}
		low = math.Min(low, out[i].Z)
	}
	for i := range out {
		out[i].Z -= low
	}
	return out
}

// coreBad: the core lies within the clay between both surfaces and is drawn up. What
// stands in its way is any clay, that of the outer wall's lip too.
func coreBad(nodes [][]job.Node, g *rand.Rand, dense bool) (string, bool) {
	m, in, err := formtest.Solid(nodes[0], nodes[1])
	if err != nil || m.Closed || formtest.Near(m.Pts, in.Pts, 1e-6) {
		return "", false
	}
	s := NewCore(in, m)
	w := &twin{m: in, body: slices.Concat(m.Pts, in.Pts)}
	if bad := s.spotsLike(g, dense, len(in.Spans), []Pull{Up}, func(form.Point, Pull) *twin { return w }); bad != "" {
		return bad, true
	}
	if len(w.body) > 40 && !dense || len(w.body) > 100 { // which take long
		return "", true
	}
	return sumOf(s.CoreTraps()).like(w.trapsExactly(w.behind)), true
}

// spotsLike asks for places beside the first spans of the contour, of some pulls, the
// twin that is to answer for a place.
func (s *Survey) spotsLike(g *rand.Rand, dense bool, spans int, pulls []Pull, answers func(plaster form.Point, pull Pull) *twin) string {
	places := 30
	if dense {
		places = 40 * spans
	}
	for range places {
		span, t := spot(s.M, g)
		if span >= spans {
			continue
		}
		wall := s.wall(span)
		_, plaster := wall.beside(t)
		for _, pull := range pulls {
			if bad := s.besideLike(answers(plaster, pull), pull, span, t); bad != "" {
				return bad
			}
		}
	}
	return ""
}

// lidBad: a lid is cast upside down, so what stands above in its nodes lies below.
func lidBad(nodes [][]job.Node, g *rand.Rand, dense bool) (string, bool) {
	m, err := formtest.Build(nodes[0])
	if err != nil || !m.Turned {
		return "", false
	}
	over := slices.Clone(nodes[0])
	for i := range over {
		over[i].Z = -over[i].Z
	}
	b, err := formtest.Build(over)
	if err != nil || b.Turned || len(b.Pts) != len(m.Pts) {
		return fmt.Sprintf("turned: a bowl of %v, %v", over, err), true
	}
	w := newTwin(b)
	if angular(over) {
		w.body = append(outline(over, 1), form.Point{R: 0, Z: b.Rim().Z})
	}
	for i, p := range m.Pts {
		if p.Dist(b.Pts[i]) > 1e-9 {
			return fmt.Sprintf("turned: point %d stands at %v, in the bowl at %v", i, p, b.Pts[i]), true
		}
	}
	return New(m).like(w, g, dense), true
}

// closedBad: the body is the form up to its fill hole and the clay that stands in it,
// as high as one likes. Where the hole's clay would run through the form there is no
// such mold.
func closedBad(nodes [][]job.Node, g *rand.Rand, dense bool) (string, bool) {
	m, err := formtest.Build(nodes[0])
	if err != nil || !m.Closed {
		return "", false
	}
	_, widest := m.Extent()
	end := m.CutMouth(0.05 * widest * float64(1+g.IntN(10)))
	mouth := m.Pts[end]
	for i := range end - 1 {
		p, q := m.Pts[i], m.Pts[i+1]
		if p.R <= mouth.R && q.R <= mouth.R && p.Z < mouth.Z && q.Z < mouth.Z || p.R > mouth.R && q.R > mouth.R {
			continue
		}
		if at := (mouth.R - p.R) / (q.R - p.R); max(p.Z, q.Z) >= mouth.Z && (p.R == q.R || p.Z+at*(q.Z-p.Z) >= mouth.Z || min(p.R, q.R) <= mouth.R) {
			return "", false
		}
	}
	w := &twin{m: m, body: append(slices.Clone(m.Pts[:end+1]), form.Point{R: mouth.R, Z: 1e4}, form.Point{R: 0, Z: 1e4})}
	pot := newTwin(m) // what shuts a gap is told of the pot alone
	return New(m).spotsLike(g, dense, end, Pulls[:], func(plaster form.Point, pull Pull) *twin {
		if w.shut(plaster, pull) {
			return pot
		}
		return w
	}), true
}

// footBad: the outline as the nodes give it.
func footBad(nodes [][]job.Node, g *rand.Rand, dense bool) (string, bool) {
	m, err := formtest.Build(nodes[0])
	if err != nil || m.Closed {
		return "", false
	}
	w := newTwin(m)
	if angular(nodes[0]) {
		body := outline(nodes[0], 1)
		w.body = append(body, form.Point{R: 0, Z: body[len(body)-1].Z})
	}
	return New(m).like(w, g, dense), true
}

func TestKindsOfFormAgainstTwins(t *testing.T) {
	n := kindForms
	if testing.Short() {
		n /= 20
	}
	for number, k := range kindsOfForm {
		t.Run(k.name, func(t *testing.T) {
			t.Parallel()
			var mu sync.Mutex
			failed, seen, tried := map[string]int{}, 0, uint64(0)
			var wg sync.WaitGroup
			for range 2 {
				wg.Go(func() {
					for {
						mu.Lock()
						tried++
						at, done := tried, seen >= n
						mu.Unlock()
						if done {
							return
						}
						g := formtest.Rand(uint64(100+number), at)
						nodes := k.make(g)
						bad, ok := k.bad(nodes, g, at%100 == 0)
						if !ok {
							continue
						}
						mu.Lock()
						seen++
						if bad != "" {
							class, _, _ := strings.Cut(bad, ":")
							failed[class]++
							if failed[class] <= 2 {
								t.Errorf("form %d: %s\n%s", at, bad, shrunk(k, nodes, class))
							}
						}
						mu.Unlock()
					}
				})
			}
			wg.Wait()
			t.Logf("%d forms of %d tried", seen, tried)
			if len(failed) > 0 {
				t.Errorf("disagreements by kind: %v", failed)
			}
		})
	}
}

// shrunk is the form made smaller as long as it fails alike, as rows.
func shrunk(k kindOf, nodes [][]job.Node, class string) string {
	nodes = slices.Clone(nodes)
	for i := range nodes {
		nodes[i] = shrinkBy(nodes[i], func(n []job.Node) bool {
			with := slices.Clone(nodes)
			with[i] = n
			bad, ok := k.bad(with, formtest.Rand(1, 1), true)
			return ok && strings.HasPrefix(bad, class)
		})
	}
	out := ""
	for _, n := range nodes {
		out += rows(n) + "\n"
	}
	return out
}

// Forms on which sweeps and twin once differed, each named after the cause: the kind
// comes first in its name, and an empty line parts the outer nodes from the inner.
func TestKindFixtures(t *testing.T) {
	files, err := filepath.Glob("../../testdata/release/kinds/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no forms: %v", err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var nodes [][]job.Node
		for part := range strings.SplitSeq(string(text), "\n\n") {
			n, faults := form.ReadRows(part, form.Columns{Units: "mm"})
			if faults != nil {
				t.Fatalf("%s: %v", name, faults)
			}
			nodes = append(nodes, n)
		}
		kind, _, _ := strings.Cut(filepath.Base(name), "-")
		k := slices.IndexFunc(kindsOfForm, func(k kindOf) bool { return k.name == kind })
		if bad, ok := kindsOfForm[k].bad(nodes, formtest.Rand(2, 2), true); !ok || bad != "" {
			t.Errorf("%s: a form %v, %s", filepath.Base(name), ok, bad)
		}
	}
}

// A core in a cone that closes upward, by hand: every place of the wall catches by how
// far it lies out beyond the rim, whether it looks up or down.
func TestCoreIsHeldByTheWholeWall(t *testing.T) {
	corner := formtest.Corner
	m, in, err := formtest.Solid([]job.Node{corner(0, 0), corner(40, 0), corner(50, 70)}, []job.Node{corner(0, 1), corner(10, 20), corner(2, 68)})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range NewCore(in, m).All(Up) {
		if want := math.Max(0, c.P.R-2); math.Abs(c.Depth-want) > 1e-6 {
			t.Errorf("at (%g %g) the core catches by %g, want %g", c.P.R, c.P.Z, c.Depth, want)
		}
	}
}

// What a core is shut in by, by Pappus: a belly behind the rim, a triangle of 4 by 54 mm
// whose middle stands a third of its height out; and a groove of half a circle in an
// upright wall, half a disc whose middle stands 4/(3 pi) of its radius out.
func TestCoreTrapsByPappus(t *testing.T) {
	corner := formtest.Corner
	groove := []job.Node{corner(0, 6), corner(34, 6)}
	const rho, steps = 3.0, 200
	for k := range steps + 1 {
		s, c := math.Sincos(math.Pi * float64(k) / steps)
		groove = append(groove, corner(34+rho*s, 30-rho*c))
	}
	groove = append(groove, corner(34, 60))
	for _, c := range []struct {
		name                  string
		inner                 []job.Node
		from, to, depth, area float64
		middle, share         float64
	}{
		{"belly", []job.Node{corner(0, 6), corner(34, 6), corner(38, 30), corner(34, 60)}, 6, 60, 4, 108, 34 + 4.0/3, 1e-9},
		{"groove", groove, 27, 33, rho, math.Pi * rho * rho / 2, 34 + 4*rho/(3*math.Pi), 1e-4},
		{"open dish", []job.Node{corner(0, 6), corner(34, 6), corner(42, 60)}, 0, 0, 0, 0, 0, 0},
	} {
		m, in, err := formtest.Solid([]job.Node{corner(0, 0), corner(45, 0), corner(50, 60)}, c.inner)
		if err != nil {
			t.Fatal(err)
		}
		all := NewCore(in, m).CoreTraps()
		if c.depth == 0 {
			if len(all) > 0 {
				t.Errorf("%s: %+v", c.name, all)
			}
			continue
		}
		if len(all) != 1 {
			t.Fatalf("%s: %+v", c.name, all)
		}
		x, volume := all[0], 2*math.Pi*c.middle*c.area
		if math.Abs(x.ZFrom-c.from) > 1e-6 || math.Abs(x.ZTo-c.to) > 1e-6 || math.Abs(x.RFrom-34) > 1e-6 || math.Abs(x.RTo-34-c.depth) > 1e-6 || math.Abs(x.Depth-c.depth) > 1e-6 ||
			math.Abs(x.Area-c.area) > c.share*c.area || math.Abs(x.Volume-volume) > c.share*volume {
			t.Errorf("%s: %+v, want %+v and %.3f mm3", c.name, x, c, volume)
		}
	}
}
