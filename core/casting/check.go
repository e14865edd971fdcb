package casting

import (
	"fmt"
	"math"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Nonsense is turned away here, before any figure is worked out, with the
// field and the remedy. The bounds also keep every figure finite.

const (
	codeRange   = "badValue"
	codeMissing = "missing"
	codeNeck    = "wallTooThick"
	codeDense   = "slipTooDense"

	lengthMax = 1e5 // mm
	areaMax   = 1e8 // cm2
	volumeMax = 1e9 // ml
	// Smaller than this is no pot and no pool of slip: ml, cm2.
	volumeMin = 1e-3
	areaMin   = 1e-2
)

type checker struct{ faults job.Faults }

func (c *checker) fault(code, field, format string, args ...any) {
	c.faults = append(c.faults, job.Faultf(code, field, format, args...))
}

// within faults a value outside lo to hi, NaN included.
func (c *checker) within(field string, v, lo, hi float64, what, remedy words.Text) bool {
	if v >= lo && v <= hi {
		return true
	}
	c.fault(codeRange, field, "%s is %g; it must lie between %g and %g. %s", what, v, lo, hi, remedy)
	return false
}

// orNone is within, but 0 is allowed and means that there is none.
func (c *checker) orNone(field string, v, lo, hi float64, what, remedy words.Text) bool {
	return v == 0 || c.within(field, v, lo, hi, what, words.Join(" ", remedy, words.Say("0 is none.")))
}

// check returns all that is wrong with the input.
func (in *Input) check() job.Faults {
	var c checker
	c.clay(&in.Clay)
	c.within("plaster.consistency", in.Plaster.Consistency, 30, 120, words.Say("Consistency"), words.Say("It is parts of water to 100 of plaster by weight, about 70 for a casting mold; a maker's 1.43 : 1 of plaster to water is 70."))
	c.settings(&in.Settings)
	c.geometry(in)
	if len(c.faults) > 0 {
		return c.faults
	}
	s := &in.Settings
	if n := WaterPerCastVolume(in.Clay.SlipDensity, in.Clay.SolidsDensity, s.CastMoisture); n < 1e-3 {
		c.fault(codeDense, "clay.slipDensity",
			"Slip of %g g/ml would hold no more water than a cast of %g percent moisture, so no wall could grow. Weigh a litre again: a casting slip is about 1.75; or enter the moisture of a fresh cast.",
			in.Clay.SlipDensity, s.CastMoisture)
	}
	return c.faults
}

func (c *checker) clay(k *job.Clay) {
	percent := words.Say("Enter percent of length, as 6 for 6 mm in 100 mm, from a test bar.")
	drying := c.shrinkage("clay.dryingShrinkage", k.DryingShrinkage, words.Say("Drying shrinkage"), percent)
	firing := c.shrinkage("clay.firingShrinkage", k.FiringShrinkage, words.Say("Firing shrinkage"), percent)
	c.shrinkage("clay.releaseShrinkage", k.ReleaseShrinkage, words.Say("Shrinkage at release"), percent)
	if total := TotalShrinkage(k.DryingShrinkage, k.FiringShrinkage); drying && firing && total > 90 {
		c.fault(codeRange, "clay.firingShrinkage", "Drying and firing together shrink the clay by %.3g percent; hardly anything would be left. %s", total, percent)
	}
	c.within("clay.wall", k.Wall, 0.1, 200, words.Say("The wall in mm"), words.Say("Enter the wet wall you want, about 3 to 5 mm for tableware."))
	solids := c.within("clay.solidsDensity", k.SolidsDensity, 1.5, 8, words.Say("The density of the dry solids in g/ml"), words.Say("Clay bodies are about 2.6."))
	if !(k.SlipDensity > 1) || k.SlipDensity > 8 {
		c.fault(codeRange, "clay.slipDensity", "Slip of %g g/ml is no denser than water, or denser than any clay: weigh a litre of it; a casting slip is about 1.75 g/ml.", k.SlipDensity)
	} else if solids && k.SlipDensity >= k.SolidsDensity {
		c.fault(codeRange, "clay.slipDensity", "Slip of %g g/ml is as dense as the dry solids in it (%g): weigh a litre of it; a casting slip is about 1.75 g/ml.", k.SlipDensity, k.SolidsDensity)
	} else if k.SlipDensity < 1.01 {
		c.fault(codeRange, "clay.slipDensity", "Slip of %g g/ml is water: weigh a litre of it; a casting slip is about 1.75 g/ml.", k.SlipDensity)
	}
	c.trial("clay.testCast", k.TestCast)
}

func (c *checker) shrinkage(field string, v float64, what, remedy words.Text) bool {
	if v >= 0 && v < 100 {
		return true
	}
	c.fault(codeRange, field, "%s is %g percent; it must be 0 or more and below 100. %s", what, v, remedy)
	return false
}

func (c *checker) trial(field string, t job.TestCast) {
	c.within(field+".wall", t.Wall, 0.1, 200, words.Say("The wall of the test cast in mm"), words.Say("Cut a trial across and measure its wall wet."))
	c.within(field+".minutes", t.Minutes, 0.05, 1e4, words.Say("The time of the test cast in minutes"), words.Say("Enter the time from full to draining."))
}

func (c *checker) settings(s *job.Casting) {
	const f = "casting."
	c.within(f+"castMoisture", s.CastMoisture, 5, 40, words.Say("Moisture of the cast in percent of its wet mass"), words.Say("Weigh a fresh cast wet and bone dry; about 20 is usual."))
	c.within(f+"lossOnIgnition", s.LossOnIgnition, 0, 50, words.Say("Loss on ignition in percent"), words.Say("Weigh a piece bone dry and fired; about 7 is usual."))
	for i, t := range s.TestCasts {
		c.trial(fmt.Sprintf(f+"testCasts[%d]", i), t)
	}
	c.within(f+"minutes", s.Minutes, 0.05, 1e4, words.Say("The time in minutes"), words.Say("Enter how long the slip stays in."))
	c.within(f+"laterCastSlowdown", s.LaterCastSlowdown, 0, 500, words.Say("The slowing of later casts in percent"), words.Say("About 17 is usual."))
	c.within(f+"waste", s.Waste, 0, 100, words.Say("The allowance for waste in percent"), words.Say("5 to 10 is usual."))
	c.within(f+"bucket", s.Bucket, 100, 1e6, words.Say("The bucket in ml"), words.Say("A 10 litre bucket is 10000."))
	c.within(f+"bucketFill", s.BucketFill, 10, 100, words.Say("How full the bucket may be in percent"), words.Say("75 leaves room to stir."))
	c.orNone(f+"publishedWetDensity", s.PublishedWetDensity, 1.2, 2.2, words.Say("The published wet density in g/ml"), words.Say("Data sheets give about 1.58; divide lb/ft3 by 62.43."))
	c.orNone(f+"absorption", s.Absorption, 1, 100, words.Say("Absorption in percent of the dry mass"), words.Say("Data sheets give 36 to 41."))
	c.within(f+"settingExpansion", s.SettingExpansion, 0, 2, words.Say("Setting expansion in percent"), words.Say("Data sheets give about 0.2."))
	c.within(f+"halfRateWater", s.HalfRateWater, 0.5, 50, words.Say("Water at half the rate, in percent of the dry mold"), words.Say("5 is published."))
	c.within(f+"dryingRate", s.DryingRate, 1e-5, 1, words.Say("The drying rate in g per cm2 and minute"), words.Say("0.01 is published for a typical shop."))
	c.within(f+"glaze", s.Glaze, 0, 10, words.Say("The thickness of the fired glaze in mm"), words.Say("0.2 to 0.5 is usual, 0 is none."))
	c.within(f+"glazeDensity", s.GlazeDensity, 1, 8, words.Say("The density of the fired glaze in g/ml"), words.Say("About 2.4 is usual."))
	c.within(f+"bandTension", s.BandTension, 1, 1e4, words.Say("The tension of a band in N"), words.Say("Hang a weight on it: 5 kg is about 50 N."))
	c.within(f+"bandSafety", s.BandSafety, 1, 20, words.Say("The safety factor of the bands"), words.Say("2 is usual."))
	c.within(f+"reach", s.Reach, 0, 63, words.Say("The reach in cm"), words.Say("Hold the mold closer; beyond 63 nothing should be lifted."))
	c.within(f+"hands", s.Hands, 0, 175, words.Say("The height of the hands in cm"), words.Say("Set the mold lower; above 175 nothing should be lifted."))
	c.within(f+"travel", s.Travel, 0, 175, words.Say("The height lifted in cm"), words.Say("Lift in two steps."))
	c.within(f+"fillLine", s.FillLine, 0, 2000, words.Say("The fill line in mm below the brim"), words.Say("0 is full to the brim."))
	c.within(f+"twist", s.Twist, 0, 135, words.Say("The turn of the body in degrees"), words.Say("Turn with the feet."))
}

func (c *checker) geometry(in *Input) {
	form := words.Say("Check the profile and its unit.")
	amount := func(what words.Text, v, most float64) bool {
		if v >= 0 && v <= most {
			return true
		}
		c.fault(codeRange, "form.outer", "%s comes to %g; it must be 0 or more and no more than %g. %s", what, v, most, form)
		return false
	}
	cavity := c.within("form.outer", in.CavityML, volumeMin, volumeMax, words.Say("The volume of the pot in ml"), form)
	if math.IsNaN(in.InsideML) || math.IsInf(in.InsideML, 0) {
		c.fault(codeRange, "form.outer", "The inside of the cast comes to %g ml. %s", in.InsideML, form)
	} else if in.InsideML < 0 || in.InsideML < volumeMin && !in.Solid {
		c.fault(codeNeck, "clay.wall", "A wall of %g mm leaves no hollow: the neck or the whole pot closes before it has grown. Choose a thinner wall or a wider form, or cast it solid.", in.Clay.Wall)
	} else if cavity && in.CastWallML() < volumeMin {
		c.fault(codeRange, "clay.wall", "The inside of the cast (%g ml) is as large as the cavity (%g ml), which leaves no clay. Choose a thicker wall.", in.InsideML, in.CavityML)
	}
	if amount(words.Say("The inside up to the fill line in ml"), in.InsideFillML, volumeMax) && in.InsideFillML > math.Max(in.InsideML, 0)*(1+1e-9) {
		c.fault(codeRange, "form.outer", "The fill line lies above the brim: the inside holds %g ml to the line and %g ml to the brim. Lower the line.", in.InsideFillML, in.InsideML)
	}
	amount(words.Say("The spare in ml"), in.SpareML, volumeMax)
	amount(words.Say("The wall of the spare in cm2"), in.SpareContactCM2, areaMax)
	amount(words.Say("The surface of the slip in cm2"), in.FillAreaCM2, areaMax)
	amount(words.Say("The wall of the cavity in cm2"), in.ContactCM2, areaMax)
	amount(words.Say("The inside of the cast in cm2"), in.InsideAreaCM2, areaMax)
	amount(words.Say("The outside of the mold in cm2"), in.OutsideCM2, areaMax)
	c.orNone("form.outer", in.CornerDeg, 1, 360, words.Say("The corner between two plaster walls in degrees"), form)
	c.orNone("form.outer", in.SolidWallMM, 0.1, lengthMax, words.Say("The thickest wall in mm"), form)
	if len(in.Parts) == 0 {
		c.fault(codeMissing, "mold.scheme", "The mold has no plaster part, so there is nothing to weigh out. Choose a scheme.")
	}
	for _, p := range in.Parts {
		c.within("plaster.wall", p.ML, volumeMin, volumeMax, words.Say("The volume of a plaster part in ml"), words.Say("Check the plaster wall and the profile."))
		amount(words.Say("The cavity wall of a plaster part in cm2"), p.ContactCM2, areaMax)
	}
	amount(words.Say("The slip over the upper part in ml"), in.UpperLiftML, volumeMax)
	amount(words.Say("The seam's area in cm2"), in.SeamAreaCM2, areaMax)
	amount(words.Say("The depth of the seam in mm"), in.SeamHeadMM, lengthMax)
	amount(words.Say("The positive in ml"), in.PositiveML, volumeMax)
	amount(words.Say("The positive in g"), in.PositiveMassG, volumeMax)
	amount(words.Say("The height of the cottle in mm"), in.CottleHeightMM, lengthMax)
	amount(words.Say("The radius of the cottle in mm"), in.CottleRadiusMM, lengthMax)
}
