package mold

import (
	"reflect"
	"testing"

	"moldwright/core/job"
)

// Caps go before the sides that their natches hold, the upper one first.
func TestOrder(t *testing.T) {
	want := map[string][]string{
		"one": {"lower"}, "two": {"upper", "lower"},
		"sides2": {"A", "B"}, "sides3+lower": {"lower", "A", "B", "C"}, "sides2+lower+upper": {"upper", "lower", "A", "B"},
	}
	laid(t, pots["waist"], 2, func(_ *job.Job, md *Mold) {
		got, err := md.Order()
		if err != nil {
			t.Errorf("%s: %v", md.Scheme.ID, err)
		}
		if w := want[md.Scheme.ID]; w != nil && !reflect.DeepEqual(got, w) {
			t.Errorf("%s: order %v, want %v", md.Scheme.ID, got, w)
		}
	})
}

// A natch too steep for its pull locks the side parts; the fault names them.
func TestOrderNamesPartsThatLock(t *testing.T) {
	laid(t, pots["jar"], 2, func(_ *job.Job, md *Mold) {
		if md.Scheme.ID != "sides3" {
			return
		}
		for i := range md.Parts {
			for k := range md.Parts[i].Natches {
				md.Parts[i].Natches[k].HalfAngle = 80
			}
		}
		_, err := md.Order()
		f, ok := err.(job.Faults)
		if !ok || f[0].Code != "partsLock" || f[0].Field != "mold.natches" {
			t.Errorf("got %v, want a fault partsLock", err)
		}
	})
}
