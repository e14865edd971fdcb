package form

import (
	"math"
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
