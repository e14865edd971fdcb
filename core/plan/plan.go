// Package plan is the one pipeline: job in, plan out. It runs the job through
// form, release, parting, mold, tooling and casting, and hands the same values
// to the page, the sheets and the meshes. It reads no clock and keeps nothing
// between calls.
package plan

import (
	"moldwright/core/casting"
	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/release"
	"moldwright/core/tooling"
	"moldwright/core/words"
)

// Plan is everything that follows from a job. Lengths and heights are mm at
// mold size.
type Plan struct {
	// Verdict is the verdict in words; Next what to do next.
	Verdict words.Text   `json:"verdict"`
	Next    []words.Text `json:"next"`
	Scale   float64      `json:"scale"` // from the form as given to mold size
	Size    Size         `json:"size"`
	Schemes []Scheme     `json:"schemes"`
	// Chosen is the id of the scheme to make: the job's own where it names
	// one, else the planner's.
	Chosen      string     `json:"chosen"`
	Advised     string     `json:"advised"` // the planner's choice
	WhyNotFewer words.Text `json:"whyNotFewer"`
	// Certificate is what rules out every scheme with fewer parts.
	Certificate []parting.Evidence `json:"certificate"`
	Robust      parting.Robustness `json:"robust"`
	Order       []string           `json:"order"`
	Flow        Flow               `json:"flow"`
	Traps       []Trap             `json:"traps"`
	Findings    []parting.Finding  `json:"findings"`
	Cautions    []words.Text       `json:"cautions"`
	Casting     casting.Figures    `json:"casting"`
	Prints      []tooling.Piece    `json:"prints"`
	Drawing     Drawing            `json:"-"` // the last key, see encode

	work *work
}

// Size is the pot's main measures.
type Size struct {
	Height        float64 `json:"height"`
	MaxRadius     float64 `json:"maxRadius"`
	FiredHeight   float64 `json:"firedHeight"`
	FiredRadius   float64 `json:"firedRadius"`
	CapacityFired float64 `json:"capacityFired"` // ml, to the brim
	CastArea      float64 `json:"castArea"`      // cm2 of pot on plaster
}

// Flow tells how slip and air move: air held under the roof of the cavity when
// slip is poured in, slip held in the cast when the mold is turned over, and
// air held under a positive when the plaster of a part is poured over it.
type Flow struct {
	Air     []form.Pocket `json:"air"`
	Slip    []form.Pocket `json:"slip"`
	Drains  *bool         `json:"drains"` // fully; nil where nothing is poured out, of a pot cast solid
	Plaster []PartPocket  `json:"plaster"`
}

// PartPocket is a pocket of air in the plaster of a part, in heights of the
// mold.
type PartPocket struct {
	Part string `json:"part"`
	form.Pocket
}

// Scheme is a judged scheme with the plaster it takes.
type Scheme struct {
	*parting.Scheme
	Name    words.Text `json:"name"`    // its parts in words
	Against words.Text `json:"against"` // what stands against it, or that nothing does
	Parts   []Part     `json:"parts"`
	Plaster float64    `json:"plaster"` // g, all parts
}

// Part is a judged part with its plaster.
type Part struct {
	*parting.Part
	Volume  float64 `json:"volume"`  // ml, natches apart
	Plaster float64 `json:"plaster"` // g of dry plaster to weigh out
	Water   float64 `json:"water"`   // g of water to weigh out
	Wet     float64 `json:"wet"`     // g as poured
	Dry     float64 `json:"dry"`     // g dried out
}

// Trap is space that no pull frees.
type Trap struct {
	// Surface is that of the pot that shuts it in: outer or, of a pot cast solid and its
	// core, inner.
	Surface string  `json:"surface"`
	ZFrom   float64 `json:"zFrom"`
	ZTo     float64 `json:"zTo"`
	RFrom   float64 `json:"rFrom"`
	RTo     float64 `json:"rTo"`
	Depth   float64 `json:"depth"`
	Area    float64 `json:"area"`   // mm2 in the half-plane
	Volume  float64 `json:"volume"` // ml
}

// work is what later steps (sheets, meshes) need of the pipeline.
type work struct {
	job      *job.Job
	meridian *form.Meridian
	base     *mold.Base
	mold     *mold.Mold
	inner    []form.Point
	thickest form.Point // where the wall of a pot cast solid is thickest
	bumps    float64    // ml that dimples take from the inside of the cast
	thin     float64    // ml that an even wall takes from it beyond the section scaled
	survey   *release.Survey
}

// Make plans the job. Errors are job.Faults.
func Make(j *job.Job) (*Plan, error) {
	d, err := parting.JudgeJob(j, mold.MouthRadius)
	if err != nil {
		return nil, err
	}
	m, end, survey, schemes := d.M, d.End, d.Survey, d.Schemes
	core, err := form.BuildInner(j, m)
	if err != nil {
		return nil, err
	}
	var within *release.Survey // of the inner surface
	if core != nil {
		within = release.NewCore(core, m)
		inside := parting.Core(within, parting.RulesOf(j))
		for i := range schemes {
			schemes[i] = parting.WithCore(schemes[i], inside)
		}
	}
	w := &work{job: j, meridian: m, survey: survey, base: mold.NewBase(m, end, schemes, core)}
	p := &Plan{Scale: j.Scale(), work: w, Findings: []parting.Finding{}, Next: []words.Text{}, Prints: []tooling.Piece{}}
	molds := p.lay(schemes)
	advised := parting.Choose(schemes, d.Wanted.Sides, func(i int) float64 { return p.Schemes[i].Plaster })
	chosen := advised
	if j.Mold.Scheme != job.SchemeAuto && !(core != nil && j.Mold.Scheme == parting.CoreID) {
		if chosen = parting.Index(schemes, j.Mold.Scheme); chosen < 0 {
			return nil, job.Faults{job.Faultf("noSuchScheme", "mold.scheme",
				"The scheme %q cannot be laid out on this form with these parting heights; free the heights or choose another scheme.", j.Mold.Scheme)}
		}
	}
	if core != nil { // the chosen outer parts and the core go by one name
		schemes[chosen].ID = parting.CoreID
	}
	w.mold = molds[chosen]
	if j.Mold.Natches {
		w.mold.PlaceNatches(j.Printer.Clearance)
	}
	p.Chosen, p.Advised = schemes[chosen].ID, schemes[advised].ID
	p.WhyNotFewer = parting.WhyNotFewer(schemes, chosen)
	p.Certificate = d.Certificate(schemes, chosen)
	p.Robust = parting.Robust(m, end, core, schemes, chosen, parting.RulesOf(j))
	if p.Order, err = w.mold.Order(); err != nil {
		return nil, err
	}
	p.Traps = traps(survey, end, within)
	p.Findings = append(p.Findings, parting.Findings(survey, end, &schemes[chosen], parting.RulesOf(j))...)
	p.Prints = append(p.Prints, tooling.Kit(j, w.mold)...)
	if err := p.cast(); err != nil {
		return nil, err
	}
	p.draw()
	p.words()
	return p, nil
}

// lay lays out every scheme, for its plaster.
func (p *Plan) lay(schemes []parting.Scheme) []*mold.Mold {
	j := p.work.job
	molds := make([]*mold.Mold, len(schemes))
	wet := casting.WetDensity(j.Plaster.Consistency)
	for i := range schemes {
		s := &schemes[i]
		md := mold.Lay(j, p.work.base, s)
		molds[i] = md
		out := Scheme{Scheme: s, Name: s.Name(), Against: s.Against()}
		for k := range md.Parts {
			ml := md.Parts[k].Volume()
			mix := casting.MixFor(ml, j.Plaster.Consistency, wet)
			out.Parts = append(out.Parts, Part{Part: &s.Parts[k], Volume: ml,
				Plaster: mix.Plaster, Water: mix.Water, Wet: mix.Wet, Dry: mix.Dry})
			out.Plaster += mix.Plaster
		}
		p.Schemes = append(p.Schemes, out)
	}
	return molds
}

// traps are those of the contour, which ends at point end: in the opening of a closed
// form there is no plaster, and none worth telling in a slit of no height. Those of a
// pot cast solid follow, within being the survey of its inner surface: a core has one
// pull, so that no more than what counts as a catch is shut in nowhere.
func traps(s *release.Survey, end int, within *release.Survey) []Trap {
	out := []Trap{}
	square := s.M.Section.MeanSquare
	add := func(surface string, t release.Trap) {
		out = append(out, Trap{surface, t.ZFrom, t.ZTo, t.RFrom, t.RTo, t.Depth, t.Area, square * t.Volume / 1000})
	}
	mouth := s.M.Pts[end]
	for _, t := range s.Traps() {
		const slit = 1e-3 // mm
		if t.ZTo-t.ZFrom < slit || s.M.Closed && t.RTo <= mouth.R+release.Free && t.ZTo > mouth.Z {
			continue
		}
		add("outer", t)
	}
	if within != nil {
		for _, t := range within.CoreTraps() {
			if t.Depth > parting.CatchDepth {
				add("inner", t)
			}
		}
	}
	return out
}

// chosen is the chosen scheme.
func (p *Plan) chosen() *Scheme {
	for i := range p.Schemes {
		if p.Schemes[i].ID == p.Chosen {
			return &p.Schemes[i]
		}
	}
	return nil // not reached: Make picks an id of the list
}
