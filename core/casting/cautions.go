package casting

import "moldwright/core/words"

// Cautions in words: those that always hold where plaster, clay and heavy
// molds are handled, and those that this mold's own figures call for. They
// remind; local rules and licensed practice decide.

// Codes of the cautions; tests, page and sheets pick by them.
const (
	CautionBurn        = "plasterBurn"
	CautionDust        = "silicaDust"
	CautionDrains      = "drains"
	CautionDisposal    = "disposal"
	CautionCrumbs      = "plasterCrumbs"
	CautionHeat        = "setHeat"
	CautionFlotation   = "flotation"
	CautionCottle      = "cottle"
	CautionBands       = "bands"
	CautionLifting     = "lifting"
	CautionTooHeavy    = "tooHeavy"
	CautionFood        = "foodGlaze"
	CautionFirstCast   = "firstCast"
	CautionDrying      = "drying"
	CautionThinMold    = "thinMold"
	CautionSpare       = "spareRunsDry"
	CautionConsistency = "consistency"
	CautionSlip        = "slipDensity"
	CautionShrinkage   = "shrinkage"
)

// Bounds of what is usual: consistency 64 to 76 and shrinkage below 20 percent
// are common practice, no source; slip 1.65 to 1.9 spans the published 1.7 to
// 1.9 (digitalfire.com, toptimeceramics.com) with a little room.
const (
	consistencyLow, consistencyHigh = 64, 76
	slipLow, slipHigh               = 1.65, 1.9
	shrinkageHigh                   = 20
)

func (f *Figures) cautions(in *Input) []Caution {
	var list []Caution
	say := func(code, format string, args ...any) {
		list = append(list, Caution{code, words.Say(format, args...)})
	}
	c := in.Plaster.Consistency
	if c < consistencyLow || c > consistencyHigh {
		say(CautionConsistency, "A consistency of %g is outside the usual %d to %d for casting molds: lower is stronger but draws slower, higher is softer and wears sooner. Use one consistency for all parts of a mold, or the wall will differ from part to part.", c, consistencyLow, consistencyHigh)
	}
	if rho := in.Clay.SlipDensity; rho < slipLow || rho > slipHigh {
		say(CautionSlip, "Slip of %g g/ml is outside the usual %g to %g: thin slip shrinks more, casts slower and soaks the mold; thick slip drains badly. Weigh a litre again.", rho, slipLow, slipHigh)
	}
	if f.TotalShrinkage > shrinkageHigh {
		say(CautionShrinkage, "A total shrinkage of %.1f percent is more than any usual pottery clay shows; measure a test bar. Firing shrinkage is taken on the dry length, and the two may not be added.", f.TotalShrinkage)
	}

	say(CautionBurn, "Setting plaster burns: it grows hot and holds fast. Never enclose a hand or any part of the body in it; stir with a tool, wear gloves, wash splashes off at once. Follow the plaster maker's safety sheet and your local rules.")
	say(CautionHeat, "A thick mass may warm by %.0f to %.0f K as it sets, which can soften a thin printed positive (PLA softens at about 55 to 60 °C). Use cool water, or a positive of a plastic that stands the heat, and let it cool before opening.", f.SetRiseLow, f.SetRiseHigh)
	if f.Flotation > 0 {
		say(CautionFlotation, "Wet plaster lifts a hollow positive with up to %.1f N if it gets under it: screw it to its plate or hold it down with at least %.1f kg.", f.Flotation, f.FlotationMass/1000)
	}
	if f.CottlePressure > 0 {
		say(CautionCottle, "Wet plaster presses on the foot of the cottle with %.1f kPa: strap the staves and seal every joint before pouring, and keep clay at hand for leaks.", f.CottlePressure)
	}
	if len(f.Parts) > 1 {
		if f.BandForce > 0 {
			say(CautionBands, "Band the mold before filling: the slip pushes its parts asunder with up to %.1f N. Check the bands for wear, and keep the face out of their way.", f.BandForce)
		} else {
			say(CautionBands, "Band the mold before filling and before turning it over. Check the bands for wear, and keep the face out of their way.")
		}
	}
	if f.LiftingIndex > 1 {
		say(CautionTooHeavy, "Full of slip the mold weighs %.1f kg as poured, above the %.1f kg that the NIOSH equation takes as reference for this lift. Get help, use a hoist, drain by a hole instead of turning it over, or make the mold smaller.", f.LiftFull, f.LiftLimit)
	}
	say(CautionLifting, "Lift with the load close, hands dry and the way clear; a wet mold slips. The NIOSH figure is a reference for a healthy adult and an easy grip, no licence: local rules on lifting come first.")
	if f.CastsToHalfRate < 1 {
		say(CautionThinMold, "One cast wets this mold so far that it draws less than half as fast: make the plaster wall thicker, and dry it fully after each cast.")
	}
	if in.SpareML > 0 && f.SlipTopUp > 0 {
		say(CautionSpare, "The slip falls by %.0f ml while it stands, %.0f ml more than the spare gives: make the spare higher, or keep topping up, or the rim casts thin.", f.LevelDropVolume, f.SlipTopUp)
	}
	say(CautionDrying, "Drying times here are the least that the surface allows, no promise. Dry molds slowly, below 45 to 50 °C (hotter plaster turns to powder), and weigh them: a mold is dry when it stops losing weight.")
	say(CautionFirstCast, "Scrap the first casts of a new mold with their trimmings; do not return them to the slip.")
	say(CautionDust, "Dry clay and plaster dust harms the lungs; clay dust holds silica. Clean up wet, never dry sweep or sand without extraction, and keep to the local limits for respirable silica.")
	say(CautionDrains, "Plaster sets under water and plugs drains: never pour it or its wash water away. Let it settle in a bucket and bin the solids.")
	say(CautionDisposal, "Gypsum among rotting waste gives off hydrogen sulfide; follow local rules for its disposal.")
	say(CautionCrumbs, "Keep plaster away from clay: a crumb in the ware can burst it in the kiln or long after.")
	say(CautionFood, "A pot is fit for food only if its glaze is: use a glaze sold as such for this clay and firing, and have it tested for lead and cadmium release (ISO 6486) where your rules ask it.")
	return list
}
