package casting

import (
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
)

var (
	nan = math.NaN()
	inf = math.Inf(1)
)

// Nonsense is answered with its field and a remedy.
func TestNonsense(t *testing.T) {
	for _, c := range []struct {
		name, field, code string
		change            func(*Input)
	}{
		{"shrinkage 100", "clay.dryingShrinkage", codeRange, func(in *Input) { in.Clay.DryingShrinkage = 100 }},
		{"shrinkage negative", "clay.firingShrinkage", codeRange, func(in *Input) { in.Clay.FiringShrinkage = -1 }},
		{"shrinkage NaN", "clay.firingShrinkage", codeRange, func(in *Input) { in.Clay.FiringShrinkage = nan }},
		{"nothing left", "clay.firingShrinkage", codeRange, func(in *Input) { in.Clay.DryingShrinkage, in.Clay.FiringShrinkage = 80, 80 }},
		{"release", "clay.releaseShrinkage", codeRange, func(in *Input) { in.Clay.ReleaseShrinkage = 100 }},
		{"slip is water", "clay.slipDensity", codeRange, func(in *Input) { in.Clay.SlipDensity = 1 }},
		{"slip below water", "clay.slipDensity", codeRange, func(in *Input) { in.Clay.SlipDensity = 0.9 }},
		{"slip in g/l", "clay.slipDensity", codeRange, func(in *Input) { in.Clay.SlipDensity = 1750 }},
		{"slip as solids", "clay.slipDensity", codeRange, func(in *Input) { in.Clay.SlipDensity = 2.6 }},
		{"slip drier than cast", "clay.slipDensity", codeDense, func(in *Input) { in.Clay.SlipDensity = 2.0 }},
		{"slip NaN", "clay.slipDensity", codeRange, func(in *Input) { in.Clay.SlipDensity = nan }},
		{"solids", "clay.solidsDensity", codeRange, func(in *Input) { in.Clay.SolidsDensity = inf }},
		{"wall 0", "clay.wall", codeRange, func(in *Input) { in.Clay.Wall = 0 }},
		{"wall negative", "clay.wall", codeRange, func(in *Input) { in.Clay.Wall = -4 }},
		{"wall thicker than the neck", "clay.wall", codeNeck, func(in *Input) { in.InsideML = 0 }},
		{"far thicker", "clay.wall", codeNeck, func(in *Input) { in.InsideML = -3 }},
		{"no clay", "clay.wall", codeRange, func(in *Input) { in.InsideML = in.CavityML }},
		{"test wall", "clay.testCast.wall", codeRange, func(in *Input) { in.Clay.TestCast.Wall = 0 }},
		{"test minutes", "clay.testCast.minutes", codeRange, func(in *Input) { in.Clay.TestCast.Minutes = 0 }},
		{"more tests", "casting.testCasts[1].minutes", codeRange, func(in *Input) { in.Settings.TestCasts = []job.TestCast{{Wall: 3, Minutes: 9}, {Wall: 3, Minutes: -9}} }},
		{"consistency as ratio", "plaster.consistency", codeRange, func(in *Input) { in.Plaster.Consistency = 0.7 }},
		{"consistency upside down", "plaster.consistency", codeRange, func(in *Input) { in.Plaster.Consistency = 143 }},
		{"consistency NaN", "plaster.consistency", codeRange, func(in *Input) { in.Plaster.Consistency = nan }},
		{"moisture", "casting.castMoisture", codeRange, func(in *Input) { in.Settings.CastMoisture = 0 }},
		{"bucket", "casting.bucket", codeRange, func(in *Input) { in.Settings.Bucket = 0 }},
		{"waste", "casting.waste", codeRange, func(in *Input) { in.Settings.Waste = -1 }},
		{"band", "casting.bandTension", codeRange, func(in *Input) { in.Settings.BandTension = 0 }},
		{"reach", "casting.reach", codeRange, func(in *Input) { in.Settings.Reach = 100 }},
		{"published density in lb", "casting.publishedWetDensity", codeRange, func(in *Input) { in.Settings.PublishedWetDensity = 99 }},
		{"cavity", "form.outer", codeRange, func(in *Input) { in.CavityML = 0 }},
		{"cavity infinite", "form.outer", codeRange, func(in *Input) { in.CavityML = inf }},
		{"inside NaN", "form.outer", codeRange, func(in *Input) { in.InsideML = nan }},
		{"fill line over the brim", "form.outer", codeRange, func(in *Input) { in.InsideFillML = in.InsideML + 1 }},
		{"spare", "form.outer", codeRange, func(in *Input) { in.SpareML = -1 }},
		{"head", "form.outer", codeRange, func(in *Input) { in.SeamHeadMM = nan }},
		{"no part", "mold.scheme", codeMissing, func(in *Input) { in.Parts = nil }},
		{"part", "plaster.wall", codeRange, func(in *Input) { in.Parts[0].ML = nan }},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := workedCup()
			c.change(&in)
			f, faults := Compute(in)
			if len(faults) != 1 {
				t.Fatalf("%d faults, want one: %v", len(faults), faults)
			}
			if faults[0].Field != c.field || faults[0].Code != c.code {
				t.Errorf("fault %s at %s, want %s at %s", faults[0].Code, faults[0].Field, c.code, c.field)
			}
			if m := faults[0].Message.String(); len(m) < 40 || !strings.HasSuffix(m, ".") || strings.Contains(m, "%!") {
				t.Errorf("no remedy in %q", m)
			}
			if f.Minutes != 0 || f.Parts != nil {
				t.Error("figures were given beside the fault")
			}
		})
	}
}

// All that is wrong is told at once, in a fixed order.
func TestAllFaultsTold(t *testing.T) {
	in := workedCup()
	in.Clay.Wall, in.Plaster.Consistency, in.Settings.Waste, in.CavityML = -1, 0, -1, -1
	_, faults := Compute(in)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	if got := strings.Join(fields, " "); got != "clay.wall plaster.consistency casting.waste form.outer" {
		t.Errorf("faults at %s", got)
	}
}
