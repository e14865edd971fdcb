package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"moldwright/core/words"
)

// maxName is as long as a title block takes in one line of small type.
const maxName = 200

// isScheme tells whether an id is auto or one of the schemes.
func isScheme(id string) bool {
	if n, ok := strings.CutPrefix(id, "sides"); ok {
		n = strings.TrimSuffix(n, "+upper")
		n = strings.TrimSuffix(n, "+lower")
		return slices.Contains([]string{"2", "3", "4", "6"}, n)
	}
	return slices.Contains([]string{SchemeAuto, "one", "two", "core"}, id)
}

// Check finds every figure that no bench has, each with its field and the
// remedy. The profile itself is checked where the meridian is made.
func (j *Job) Check() Faults {
	var faults Faults
	bad := func(field, format string, args ...any) {
		faults = append(faults, Faultf("badValue", field, format, args...))
	}
	number := func(field string, v, least, most float64, what words.Text) {
		if math.IsNaN(v) || v < least || v > most {
			bad(field, "%s is %g; %s lies between %g and %g.", field, v, what, least, most)
		}
	}
	if j.Format != Format {
		bad("format", "The file says its format is %q; a job says %q.", clip(j.Format), Format)
	}
	switch {
	case j.Version > Version:
		faults = append(faults, newer(j.Version))
	case j.Version < Version:
		bad("version", "The file is of version %d, which no job has; it says %d.", j.Version, Version)
	}
	if len([]rune(j.Name)) > maxName {
		bad("name", "The name has %d letters; use at most %d.", len([]rune(j.Name)), maxName)
	}
	if j.Form.Size != SizeFired && j.Form.Size != SizeMold {
		bad("form.size", "form.size is %q; it takes %q or %q.", clip(j.Form.Size), SizeFired, SizeMold)
	}
	if len(j.Form.Outer) == 0 {
		bad("form.outer", "The job has no profile; give form.outer at least 3 points.")
	}
	j.checkSection(bad, number)
	if n := len(j.Form.Inner); j.Form.Inner != nil && n < 3 {
		bad("form.inner", "The inner surface has %d nodes; it needs at least 3, from the axis inside the floor to the rim, or leave form.inner null.", n)
	}
	if t := j.Form.Traced; t != nil {
		number("form.traced.errorBand", t.ErrorBand, 0, 1000, words.Say("the error band of a trace in mm"))
	}
	number("clay.dryingShrinkage", j.Clay.DryingShrinkage, 0, 30, words.Say("drying shrinkage in percent"))
	number("clay.firingShrinkage", j.Clay.FiringShrinkage, 0, 40, words.Say("firing shrinkage in percent"))
	number("clay.releaseShrinkage", j.Clay.ReleaseShrinkage, 0, 10, words.Say("shrinkage at release in percent"))
	number("clay.wall", j.Clay.Wall, 0.5, 50, words.Say("the wall in mm"))
	number("clay.slipDensity", j.Clay.SlipDensity, 1.1, 2.3, words.Say("the density of slip in g/ml"))
	number("clay.solidsDensity", j.Clay.SolidsDensity, 2, 4, words.Say("the density of the dry clay in g/ml"))
	number("clay.testCast.wall", j.Clay.TestCast.Wall, 0.2, 50, words.Say("the wall of the test cast in mm"))
	number("clay.testCast.minutes", j.Clay.TestCast.Minutes, 0.1, 1440, words.Say("the time of the test cast in minutes"))
	if j.Clay.SlipDensity >= j.Clay.SolidsDensity {
		bad("clay.slipDensity", "The slip (%g g/ml) is as dense as the dry clay in it (%g g/ml); check both densities.", j.Clay.SlipDensity, j.Clay.SolidsDensity)
	}
	number("plaster.consistency", j.Plaster.Consistency, 30, 120, words.Say("consistency (water to 100 of plaster)"))
	number("plaster.wall", j.Plaster.Wall, 10, 150, words.Say("the plaster wall in mm"))
	number("plaster.base", j.Plaster.Base, 10, 150, words.Say("the plaster base in mm"))
	if j.Plaster.Outside != OutsideRound && j.Plaster.Outside != OutsideStraight {
		bad("plaster.outside", "plaster.outside is %q; it takes %q or %q.", clip(j.Plaster.Outside), OutsideRound, OutsideStraight)
	}
	for i, v := range j.Printer.Bed {
		number([3]string{"printer.bed[0]", "printer.bed[1]", "printer.bed[2]"}[i], v, 50, 2000, words.Say("the printer's bed in mm"))
	}
	number("printer.layer", j.Printer.Layer, 0.02, 1, words.Say("the layer in mm"))
	number("printer.clearance", j.Printer.Clearance, 0, 2, words.Say("the clearance in mm"))
	number("printer.shell", j.Printer.Shell, 0.4, 20, words.Say("the shell in mm"))
	number("printer.nozzle", j.Printer.Nozzle, 0.1, 2, words.Say("the nozzle in mm"))
	number("rules.leastDraft", j.Rules.LeastDraft, 0, 45, words.Say("the least draft in degrees"))
	number("rules.rubShare", j.Rules.RubShare, 0, 100, words.Say("the share that may rub in percent"))
	m := &j.Mold
	if !isScheme(m.Scheme) {
		bad("mold.scheme", "mold.scheme is %q; it takes auto, one, two, or sides2 to sides6 with +lower, +upper or both.", clip(m.Scheme))
	}
	if len(m.PartingHeights) > 2 {
		bad("mold.partingHeights", "There are %d parting heights; a mold has at most 2.", len(m.PartingHeights))
	}
	for i, v := range m.PartingHeights {
		number(fmt.Sprintf("mold.partingHeights[%d]", i), v, 0, 5000, words.Say("a parting height in mm"))
		if i > 0 && v <= m.PartingHeights[i-1] {
			bad(fmt.Sprintf("mold.partingHeights[%d]", i), "The parting heights must rise; put the lower one first.")
		}
	}
	if m.Sides != nil && *m.Sides != 2 && *m.Sides != 3 && *m.Sides != 4 && *m.Sides != 6 {
		bad("mold.sides", "There cannot be %d side parts; choose 2, 3, 4 or 6.", *m.Sides)
	}
	if m.FillHole != nil {
		number("mold.fillHole", *m.FillHole, 8, 500, words.Say("the fill hole's diameter in mm"))
	}
	if m.DrainHole != nil {
		number("mold.drainHole", *m.DrainHole, 3, 100, words.Say("the drain hole's diameter in mm"))
	}
	if m.Spare != nil {
		number("mold.spare.height", m.Spare.Height, 3, 200, words.Say("the height of the spare in mm"))
	}
	if m.Staves < 1 || m.Staves > 4 {
		bad("mold.staves", "There cannot be %d cottle staves; choose 1 to 4.", m.Staves)
	}
	return faults
}

func (j *Job) checkSection(bad func(field, format string, args ...any), number func(string, float64, float64, float64, words.Text)) {
	s := &j.Form.Section
	switch s.Kind {
	case SectionRound:
	case SectionOval:
		number("form.section.ratio", s.Ratio, 0.2, 1, words.Say("the narrow width over the wide one"))
	case SectionPolygon:
		number("form.section.count", float64(s.Count), 3, 24, words.Say("the number of faces"))
		number("form.section.rounding", s.Rounding, 0, 100, words.Say("the rounding in percent"))
	case SectionFlutes:
		number("form.section.count", float64(s.Count), 3, 60, words.Say("the number of flutes"))
		number("form.section.depth", s.Depth, 0, 30, words.Say("the depth of the flutes in percent of the radius"))
	default:
		bad("form.section.kind", "form.section.kind is %q; it takes %s, %s, %s or %s.", clip(s.Kind), SectionRound, SectionOval, SectionPolygon, SectionFlutes)
	}
	d := s.Dimples
	if d == nil {
		return
	}
	number("form.section.dimples.around", float64(d.Around), 1, 200, words.Say("the number of dimples around"))
	number("form.section.dimples.diameter", d.Diameter, 1, 100, words.Say("the diameter of a dimple in mm"))
	number("form.section.dimples.depth", d.Depth, 0.1, d.Diameter/2, words.Say("the depth of a dimple in mm, at most half its diameter,"))
	if len(d.Heights) == 0 || len(d.Heights) > 100 {
		bad("form.section.dimples.heights", "Dimples stand in %d rows; give 1 to 100 heights.", len(d.Heights))
	}
	for i, z := range d.Heights {
		number(fmt.Sprintf("form.section.dimples.heights[%d]", i), z, -5000, 5000, words.Say("the height of a row in mm"))
	}
}
