package tooling

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"moldwright/core/job"
	"moldwright/core/job/jobtest"
	"moldwright/core/mold"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// smallBeds visits molds of random jobs for printers of which no piece but the
// smallest fits whole; a bed is 50 mm wide and high at least.
func smallBeds(jobs uint64, visit func(name string, j *job.Job, md *mold.Mold)) {
	beds := [][3]float64{{120, 120, 120}, {100, 100, 60}, {150, 150, 50}, {80, 60, 100}, {50, 50, 50}, {220, 90, 250}}
	for seed := range jobs {
		j := jobtest.Random(rand.New(rand.NewPCG(seed, 5)))
		j.Printer.Bed = beds[seed%uint64(len(beds))]
		all, lay := laid(j)
		if len(all) == 0 {
			continue
		}
		k := int(seed) % len(all)
		visit(fmt.Sprintf("seed %d, %s, bed %v", seed, all[k].ID, j.Printer.Bed), j, lay(k))
	}
}

// groups are the pieces that each divided print is made in, in order.
func groups(kit []Piece) (names []string, of map[string][]Piece) {
	of = map[string][]Piece{}
	for _, p := range kit {
		i := strings.LastIndex(p.Name, ", ")
		if i < 0 || !p.HasMesh() {
			continue
		}
		name := p.Name[:i]
		if of[name] == nil {
			names = append(names, name)
		}
		of[name] = append(of[name], p)
	}
	return names, of
}

// Whatever the printer, from the least bed that a job may name, every print that
// can be made at all fits it, whole or divided. Divided prints are sound, and with no
// clearance at their keys sum to the whole to 0.1 %. Beside how many pieces they
// are made in stands into how many even boxes their own boxes would be cut.
func TestEveryPrintFits(t *testing.T) {
	divided, pieces, bound, unkeyed := 0, 0, 0, 0
	smallBeds(30, func(name string, j *job.Job, md *mold.Mold) {
		j.Printer.Clearance = 0
		large := *j
		large.Printer.Bed = [3]float64{2000, 2000, 2000}
		whole := map[string]Piece{}
		for _, p := range Kit(&large, md) {
			whole[p.Name] = p
		}
		so := mold.NewCoarse(md)
		kit := Kit(j, md)
		for _, p := range kit {
			if p.HasMesh() && !p.FitsBed {
				t.Errorf("%s, %s: %.0f is refused", name, p.Name, p.Size)
			}
		}
		names, of := groups(kit)
		for _, g := range names {
			w, ok := whole[g]
			if !ok || w.Kind == "stave" && (md.Block.Facets > 0 || strings.Contains(of[g][0].Note.In(words.English), "staves to fit")) {
				continue // of other staves
			}
			wm, _, err := w.Mesh(so)
			if err != nil {
				t.Fatal(err)
			}
			sum := 0.0
			for _, p := range of[g] {
				m, _, err := p.Mesh(so)
				if err != nil { // what planes cut is sure on the mesh that is handed out
					m, _, err = p.Mesh(md.Solids())
				}
				if err != nil {
					t.Errorf("%s, %s: %v", name, p.Name, err)
					continue
				}
				sound(t, name+", "+p.Name, m)
				if p.unkeyed {
					unkeyed++
				}
				sum += m.Volume()
			}
			if v := wm.Volume(); v-sum > 1e-3*v || sum-v > 1e-3*v+marksOf*float64(len(of[g])) && !hollowed(w, of[g]) {
				t.Errorf("%s, %s: %d pieces of %.3f ml, the whole has %.3f", name, g, len(of[g]), sum/1000, v/1000)
			}
			divided++
			pieces += len(of[g])
			bound += boxes(w.Size, j.Printer.Bed)
		}
	})
	t.Logf("%d divided prints in %d pieces, %d of them without a key; their boxes alone would take %d", divided, pieces, unkeyed, bound)
	if divided < 100 {
		t.Errorf("only %d divided prints", divided)
	}
}

// marksOf is the most that the mark of a piece takes, mm3: many pieces carry one.
const marksOf = 80

// hollowed tells whether a hollow positive is divided into slices, which are full.
func hollowed(w Piece, list []Piece) bool {
	return w.Kind == "positive" && len(list) > 1
}

// boxes is into how many even boxes that fit the bed a box has to be cut at least.
func boxes(size, bed [3]float64) int {
	least := math.MaxInt
	for m := 1; m < 60; m++ {
		for n := 1; m*n < least && n < 60; n++ {
			if fitsTurned(size[0]/float64(m), size[1]/float64(n), bed) {
				least = m * n
			}
		}
	}
	return least * int(math.Ceil(size[2]/bed[2]))
}

// The pieces of a divided print share no space, and can be put together: some half
// of them slides straight off the rest, and so on within both, the way of
// R. H. Wilson and J.-C. Latombe, "Geometric reasoning about mechanical assembly",
// Artificial Intelligence 71 (1994).
func TestDividedPrintsGoTogether(t *testing.T) {
	joined, pieces := 0, 0
	smallBeds(12, func(name string, j *job.Job, md *mold.Mold) {
		so := mold.NewCoarse(md)
		names, of := groups(Kit(j, md))
		for _, g := range names {
			var bodies []*solid.Body
			for _, p := range of[g] {
				m, rows, err := p.Mesh(so)
				if err != nil {
					t.Fatalf("%s, %s: %v", name, p.Name, err)
				}
				bodies = append(bodies, solid.NewBody(inMold(m, rows)))
			}
			if len(bodies) > 24 {
				continue
			}
			for i, a := range bodies {
				for k := range i {
					if hit, at := solid.Overlap(a, bodies[k], 0.005); hit {
						t.Errorf("%s, %s: pieces %d and %d share space at %.2f", name, g, k+1, i+1, at)
					}
				}
			}
			up := of[g][0].up
			ways := []solid.Vec{up, {-up[0], -up[1], -up[2]}}
			if up[2] == 0 {
				ways = append(ways, solid.Vec{0, 0, 1}, solid.Vec{0, 0, -1}, solid.Vec{up[1], -up[0], 0}, solid.Vec{-up[1], up[0], 0})
			} else {
				for deg := 0.0; deg < 360; deg += 15 {
					sin, cos := solid.SinCosDeg(deg)
					ways = append(ways, solid.Vec{cos, sin, 0})
				}
			}
			set := make([]int, len(bodies))
			for i := range set {
				set[i] = i
			}
			blocked := map[[3]int]bool{}
			blocks := func(w, a, b int) bool {
				key := [3]int{w, a, b}
				hit, ok := blocked[key]
				if !ok {
					free, _ := solid.PullClear(bodies[a], []*solid.Body{bodies[b]}, ways[w], []float64{0.5, 2, 10, 100}, 0.02)
					hit = !free
					blocked[key] = hit
				}
				return hit
			}
			if left := apart(set, len(ways), blocks); left != nil {
				t.Errorf("%s, %s: pieces %v lock", name, g, left)
			}
			joined++
			pieces += len(bodies)
		}
	})
	t.Logf("%d divided prints of %d pieces", joined, pieces)
	if joined < 40 {
		t.Errorf("only %d", joined)
	}
}

// apart takes a set to pieces: nil, or what of it no way takes apart.
func apart(set []int, ways int, blocks func(way, a, b int) bool) []int {
	if len(set) < 2 {
		return nil
	}
	for w := range ways {
		for _, seed := range set { // what has to move where it moves
			moves := map[int]bool{seed: true}
			list := []int{seed}
			for i := 0; i < len(list) && len(list) < len(set); i++ {
				for _, b := range set {
					if !moves[b] && blocks(w, list[i], b) {
						moves[b] = true
						list = append(list, b)
					}
				}
			}
			if len(list) == len(set) {
				continue
			}
			var rest []int
			for _, b := range set {
				if !moves[b] {
					rest = append(rest, b)
				}
			}
			if left := apart(list, ways, blocks); left != nil {
				return left
			}
			return apart(rest, ways, blocks)
		}
	}
	return set
}
