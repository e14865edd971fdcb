package form

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// A shoulder with a ring-shaped hollow above the edge of its mouth, by hand: a
// square ring from r 30 to 50 and z 60 to 70 above a lip at z 60 holds
// pi (50^2 - 30^2) 10 mm3 = 50.27 ml.
func TestPocketUnderShoulder(t *testing.T) {
	line := []Point{{0, 0}, {50, 0}, {50, 70}, {30, 70}, {30, 60}, {20, 60}, {20, 90}}
	got := Pockets(line, Left, 0.01)
	want := math.Pi * (50*50 - 30*30) * 10 / 1000
	if len(got) != 1 || math.Abs(got[0].Volume-want) > 1e-9 || got[0].ZFrom != 60 || got[0].ZTo != 70 {
		t.Fatalf("pockets %+v, want one of %.3f ml from 60 to 70", got, want)
	}
	if p := Pockets([]Point{{0, 0}, {50, 0}, {60, 40}, {20, 90}}, Left, 0.01); len(p) != 0 {
		t.Errorf("a plain bottle has pockets: %+v", p)
	}
}

// Two hollows, the inner one behind the lower lip: both spill at the lower
// level and count as one each.
func TestPocketsSpillAtTheLowestLaterLip(t *testing.T) {
	line := []Point{{0, 0}, {60, 0}, {60, 80}, {50, 80}, {50, 70}, {40, 70}, {40, 85}, {30, 85}, {30, 60}, {20, 60}, {20, 100}}
	got := Pockets(line, Left, 0.01)
	if len(got) != 1 || got[0].ZFrom != 60 || got[0].ZTo != 85 {
		t.Fatalf("pockets %+v, want one that spills at 60", got)
	}
}

// A rim that curls in and down is a lip itself: by hand, the ring under the
// shoulder from r 30 to 50 and z 60 to 70.
func TestPocketAboveASunkenRim(t *testing.T) {
	got := Pockets([]Point{{0, 0}, {50, 0}, {50, 70}, {30, 70}, {30, 60}}, Left, 0.01)
	want := math.Pi * (50*50 - 30*30) * 10 / 1000
	if len(got) != 1 || math.Abs(got[0].Volume-want) > 1e-9 {
		t.Fatalf("pockets %+v, want one of %.3f ml", got, want)
	}
}

// A ledge that dips outside the space is a floor: nothing is held under it.
func TestFloorIsNoLip(t *testing.T) {
	if p := Pockets([]Point{{0, 0}, {20, 0}, {20, 50}, {40, 40}, {45, 60}, {50, 90}}, Left, 0.01); len(p) != 0 {
		t.Errorf("a floor that dips holds %+v", p)
	}
}

// A pot of straight chords whose floors rise inside a pocket, by hand: above the
// lip at r 5, z 30 stands the ring between the lip, the roof and the floor that
// comes up at r 15 to r 10, z 35 and falls to r 45, z 30. What of the floor is
// solid below z 35 holds no air.
func TestPocketOverARisenFloor(t *testing.T) {
	got := Pockets([]Point{{0, 5}, {15, 25}, {50, 0}, {45, 15}, {40, 20}, {30, 20}, {20, 25}, {10, 35}, {45, 30}, {45, 40}, {15, 50}, {5, 30}, {15, 65}}, Left, 0)
	// r2 dz of the frusta by their sides: the wall and the roof less the floor and the neck
	want := math.Pi / 3 * (10*3*45*45 + 10*(45*45+45*15+15*15) - 20*(15*15+15*5+5*5) +
		5*(15*15+15*10+10*10) - 5*(10*10+10*45+45*45)) / 1000
	if len(got) != 1 || math.Abs(got[0].Volume-want) > 1e-9 || got[0].ZFrom != 30 || got[0].ZTo != 50 {
		t.Fatalf("pockets %+v, want one of %.3f ml from 30 to 50", got, want)
	}
}

// Two hollows whose lips are level with the opening's are two pockets, though
// they spill at one level; a hollow within a hollow is one with it. By hand, in
// rings of pi (R2 - r2) h.
func TestPocketsThatMeet(t *testing.T) {
	got := Pockets([]Point{{0, 0}, {60, 0}, {60, 80}, {50, 80}, {50, 60}, {40, 60}, {40, 70}, {30, 70}, {30, 60}, {20, 60}, {20, 100}}, Left, 0)
	if len(got) != 2 || got[0].ZFrom != 60 || got[1].ZFrom != 60 || got[0].ZTo != 70 || got[1].ZTo != 80 ||
		math.Abs(got[0].Volume-math.Pi*(40*40-30*30)*10/1000) > 1e-9 || math.Abs(got[1].Volume-math.Pi*(60*60-50*50)*20/1000) > 1e-9 {
		t.Errorf("pockets %+v, want two that spill at 60", got)
	}
	got = Pockets([]Point{{0, 0}, {60, 0}, {60, 80}, {50, 80}, {50, 65}, {40, 65}, {40, 70}, {30, 70}, {30, 60}, {20, 60}, {20, 100}}, Left, 0)
	want := math.Pi * ((60*60-30*30)*5 + (40*40-30*30)*5 + (60*60-50*50)*15) / 1000
	if len(got) != 1 || got[0].ZFrom != 60 || got[0].ZTo != 80 || math.Abs(got[0].Volume-want) > 1e-9 {
		t.Errorf("pockets %+v, want one of %.3f ml", got, want)
	}
}

// Plaster over a mushroom holds air under its cap, above the edge; a hollow top
// holds none.
func TestPocketInPlaster(t *testing.T) {
	got := Pockets([]Point{{10, 0}, {10, 50}, {40, 50}, {40, 40}, {45, 40}, {45, 60}, {20, 60}, {0, 45}}, Right, 0)
	want := math.Pi * (40*40 - 10*10) * 10 / 1000
	if len(got) != 1 || got[0].ZFrom != 40 || got[0].ZTo != 50 || math.Abs(got[0].Volume-want) > 1e-9 {
		t.Errorf("pockets %+v, want one of %.3f ml", got, want)
	}
	if got := Pockets([]Point{{30, 0}, {20, -5}, {10, -20}, {0, -12}}, Right, 0); len(got) != 0 {
		t.Errorf("a hollow foot, turned up, holds %+v", got)
	}
}

// Lines that are no more than a stretch, or level, hold nothing.
func TestNoPockets(t *testing.T) {
	for _, line := range [][]Point{nil, {{0, 0}}, {{0, 0}, {20, 0}}, {{0, 0}, {20, 0}, {30, 0}}, {{10, 0}, {10, 40}}} {
		for _, space := range []Side{Left, Right} {
			if got := Pockets(line, space, 0); len(got) != 0 {
				t.Errorf("%v, side %g: %+v", line, space, got)
			}
		}
	}
}

// A comb of ever so many level teeth that hang from a stepped roof, by hand: over a
// gap or a tooth the air reaches down to the lowest tooth between it and the mouth.
func TestPocketsOfACombByHand(t *testing.T) {
	for k, teeth := range []int{1, 2, 3, 5, 8, 20, 300, 5000} {
		for _, even := range []bool{false, true} {
			g := rand.New(rand.NewPCG(61, uint64(k)))
			depth := func(from float64) float64 {
				if even { // so that many end at one height
					return from + 8*float64(g.IntN(5))
				}
				return from + 32*g.Float64()
			}
			step := 190 / float64(2*teeth)
			line, r := []Point{{0, 0}, {200, 0}}, 200.0
			type column struct{ from, to, roof float64 }
			var columns []column // gap, tooth, gap, tooth, from the wall to the mouth
			for range teeth {
				for _, z := range [2]float64{depth(60), depth(20)} {
					line = append(line, Point{r, z}, Point{r - step, z})
					columns = append(columns, column{r - step, r, z})
					r -= step
				}
			}
			line = append(line, Point{r, 100})
			want, deepest, lowest := 0.0, 0.0, math.Inf(1)
			for i := len(columns) - 1; i >= 0; i-- {
				c := columns[i]
				if i%2 == 1 {
					lowest = min(lowest, c.roof)
				}
				want += math.Pi * (c.to*c.to - c.from*c.from) * (c.roof - lowest) / 1000
				if c.roof > lowest {
					deepest = lowest
				}
			}
			got, from := 0.0, math.Inf(1)
			for _, p := range Pockets(line, Left, 0) {
				got += p.Volume
				from = min(from, p.ZFrom)
			}
			if math.Abs(got-want) > 1e-7*want || math.Abs(from-deepest) > 1e-8 {
				t.Errorf("%d teeth (even: %v) hold %.9f ml from %g mm, want %.9f from %g", teeth, even, got, from, want, deepest)
			}
		}
	}
}

// How the search for pockets grows: a vase, whose planes cut few chords, and a pot
// with ever more teeth that hang from its roof, where a plane cuts most of them at
// once.
func BenchmarkPockets(b *testing.B) {
	for _, kind := range []string{"vase", "teeth"} {
		for _, n := range []int{500, 5_000, 50_000, 100_000} {
			line := []Point{{0, 0}, {400, 0}}
			if kind == "vase" {
				for i := range n - 2 {
					t := float64(i) / float64(n-3)
					line = append(line, Point{45 + 12*math.Sin(5*t) + 4*math.Sin(17*t), 180 * t})
				}
			} else {
				step := 390 / float64(n/4)
				for i := range n / 4 {
					r, d := 400-step*float64(i), 20*math.Sin(1.7*float64(i))
					line = append(line, Point{r, 300 + d}, Point{r - step/3, 300 - d/2}, Point{r - step/2, 100 + d}, Point{r - step/1.2, 100 + d/2})
				}
				line = append(line, Point{5, 350})
			}
			b.Run(fmt.Sprintf("%s/%d", kind, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					Pockets(line, Left, 0.01)
				}
			})
		}
	}
}
