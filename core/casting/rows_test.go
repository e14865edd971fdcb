package casting

import (
	"encoding/json"
	"strings"
	"testing"
)

// Every number in the reply has a row, of a drained cast or of a solid one, every
// row is a number in the reply, and both say the same.
func TestRowsAreTheFigures(t *testing.T) {
	reply, seen := rowsAndReply(t, false)
	_, ofSolid := rowsAndReply(t, true)
	for key, v := range reply {
		if _, number := v.(float64); number && !seen[key] && !ofSolid[key] {
			t.Errorf("%s has no row", key)
		}
	}
	for _, key := range []string{"cornerAngle", "cornerWall"} { // no corner of a solid cast is slower than its thickest place
		if !seen[key] || ofSolid[key] {
			t.Errorf("%s: row of a drained cast %v, of a solid one %v", key, seen[key], ofSolid[key])
		}
	}
	if seen["solidWall"] {
		t.Error("a drained cast has a wall between two faces")
	}
	// The keys that others read.
	for _, key := range []string{"minutes", "slipFill", "slipTaken", "castWet", "castDry", "castFired", "castsPerDay", "liftForce", "bandForce"} {
		if _, ok := reply[key]; !ok {
			t.Errorf("%s is missing", key)
		}
	}
}

func rowsAndReply(t *testing.T, solid bool) (reply map[string]any, seen map[string]bool) {
	in := fourPiece()
	if in.Solid = solid; solid {
		in.SolidWallMM = 9
	}
	in.Settings.SettingExpansion = 0.2
	in.Parts[0].ML = 5000 // room for a day of several casts
	in.Parts[3].ML = 3000
	in.SpareML = 60 // less than the fall
	f := mustCompute(t, in)
	text, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &reply); err != nil {
		t.Fatal(err)
	}
	seen = map[string]bool{}
	for _, r := range f.Rows() {
		if seen[r.Key] {
			t.Errorf("%s has two rows", r.Key)
		}
		seen[r.Key] = true
		v, ok := reply[r.Key].(float64)
		if !ok || v != r.Value {
			t.Errorf("row %s = %g, reply has %v", r.Key, r.Value, reply[r.Key])
		}
		if r.Group == "" || r.Label.IsZero() || r.Formula.IsZero() || r.Source.IsZero() {
			t.Errorf("row %s lacks words: %+v", r.Key, r)
		}
		switch r.Status.String() {
		case "published", "derived", "common practice, no source", "from memory":
		default:
			t.Errorf("row %s has status %q", r.Key, r.Status)
		}
	}
	return reply, seen
}

// A one-part mold without spare has no rows on seams, lift or spare.
func TestRowsThatDoNotApply(t *testing.T) {
	f := mustCompute(t, workedCup())
	for _, r := range f.Rows() {
		switch r.Key {
		case "liftForce", "seamForce", "bandForce", "bandsRound", "spareTaken", "fillFired", "glaze", "testSpread", "plasterCorrection":
			t.Errorf("%s = %g has a row", r.Key, r.Value)
		}
	}
}

func TestCautions(t *testing.T) {
	codes := func(in Input) map[string]string {
		m := map[string]string{}
		for _, c := range mustCompute(t, in).Cautions {
			if m[c.Code] != "" {
				t.Errorf("%s twice", c.Code)
			}
			if !strings.HasSuffix(c.Text.String(), ".") || strings.Contains(c.Text.String(), "%!") {
				t.Errorf("%s: %q", c.Code, c.Text)
			}
			m[c.Code] = c.Text.String()
		}
		return m
	}
	plain := codes(workedCup())
	for _, c := range []string{CautionBurn, CautionDust, CautionDrains, CautionLifting, CautionFood, CautionHeat, CautionFlotation} {
		if plain[c] == "" {
			t.Errorf("caution %s is missing", c)
		}
	}
	for _, c := range []string{CautionBands, CautionTooHeavy, CautionThinMold, CautionConsistency, CautionSlip, CautionShrinkage, CautionSpare} {
		if plain[c] != "" {
			t.Errorf("caution %s without cause: %s", c, plain[c])
		}
	}
	for _, c := range []struct {
		code   string
		change func(*Input)
	}{
		{CautionBands, func(in *Input) { *in = fourPiece() }},
		{CautionTooHeavy, func(in *Input) { in.Parts[0].ML = 12000 }},
		{CautionThinMold, func(in *Input) { in.Parts[0].ML = 300 }},
		{CautionConsistency, func(in *Input) { in.Plaster.Consistency = 85 }},
		{CautionSlip, func(in *Input) { in.Clay.SlipDensity = 1.5 }},
		{CautionShrinkage, func(in *Input) { in.Clay.DryingShrinkage = 15 }},
		{CautionSpare, func(in *Input) { in.SpareML = 10 }},
	} {
		in := workedCup()
		c.change(&in)
		if codes(in)[c.code] == "" {
			t.Errorf("caution %s is missing", c.code)
		}
	}
}
