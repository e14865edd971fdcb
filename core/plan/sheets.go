package plan

import (
	"encoding/json"
	"slices"
	"strconv"

	"moldwright/core/form"
	"moldwright/core/sheet"
)

func sheets(request []byte, _ Progress) (any, [][]byte, error) {
	var q struct {
		Job       json.RawMessage `json:"job"`
		Sheet     string          `json:"sheet"`
		Paper     string          `json:"paper"`
		As        string          `json:"as"`
		MeasuredX float64         `json:"measuredX"` // what the 100 mm bars came out as, mm
		MeasuredY float64         `json:"measuredY"`
		Full      bool            `json:"full"`
		Lines     string          `json:"lines"` // fired, wet or both
	}
	if err := decode(request, &q); err != nil {
		return nil, nil, err
	}
	if err := choice("sheet", q.Sheet, "profile", "report"); err != nil {
		return nil, nil, err
	}
	paper, err := sheet.PaperNamed(q.Paper)
	if err != nil {
		return nil, nil, err
	}
	as, err := sheet.FormatNamed(q.As)
	if err != nil {
		return nil, nil, err
	}
	p, err := planned(q.Job)
	if err != nil {
		return nil, nil, err
	}
	in := p.paper()
	var blobs [][]byte
	var n int
	if q.Sheet == "profile" {
		lines := map[string]sheet.ProfileLines{"": sheet.FiredLine, "fired": sheet.FiredLine, "wet": sheet.WetLine, "both": sheet.BothLines}
		if _, ok := lines[q.Lines]; !ok {
			return nil, nil, choice("lines", q.Lines, "fired", "wet", "both")
		}
		opt := sheet.ProfileOptions{Lines: lines[q.Lines], Full: q.Full, MeasuredX: q.MeasuredX, MeasuredY: q.MeasuredY}
		blobs, n, err = sheet.Profile(in, paper, as, opt)
	} else {
		blobs, n, err = sheet.Report(in, paper, as)
	}
	return map[string]any{"pages": n}, blobs, err
}

// reported are the casting figures that the report shows; the page has them
// all.
var reported = []string{"totalShrinkage", "oversize", "plaster", "plasterWater", "waterToDry", "slipFill", "slipTaken",
	"minutes", "castWet", "castFired", "capacityFired", "castsPerDay", "liftForce", "bandForce", "liftFull"}

// paper hands the plan to the sheets: the same values that the page shows.
func (p *Plan) paper() sheet.Input {
	w := p.work
	in := sheet.Input{Name: w.job.Name, Verdict: p.Verdict, WhyNotFewer: p.WhyNotFewer, Chosen: p.Chosen,
		Order: p.Order, Cautions: p.Cautions}
	in.Wet, _ = form.Thin(w.meridian.Pts, w.meridian.Corner, 0.01)
	shrink := 1 - w.job.Clay.Shrinkage()
	for _, q := range in.Wet {
		in.Fired = append(in.Fired, form.Point{R: q.R * shrink, Z: q.Z * shrink})
	}
	for i := range p.Schemes {
		s := &p.Schemes[i]
		out := sheet.Scheme{ID: s.ID, Count: s.Count, Verdict: string(s.Verdict), PartingHeights: s.PartingHeights}
		for k := range s.Parts {
			part := &s.Parts[k]
			o := sheet.Part{Name: part.Name, Pull: part.Pull, ZFrom: part.ZFrom, ZTo: part.ZTo, Verdict: string(part.Verdict),
				MinDraftDeg: part.MinDraft, RubbingAreaCM2: part.RubArea, RubSharePercent: part.RubShare,
				PlasterG: part.Plaster, WaterG: part.Water}
			for _, c := range part.Catches {
				o.Catches = append(o.Catches, sheet.Catch{ZFrom: c.ZFrom, ZTo: c.ZTo, DepthMM: c.Depth, BlockedAtZ: c.BlockedAtZ, ClayForgives: c.ClayForgives})
			}
			out.Parts = append(out.Parts, o)
		}
		in.Schemes = append(in.Schemes, out)
	}
	for _, t := range p.Traps {
		in.Traps = append(in.Traps, sheet.Trap{ZFrom: t.ZFrom, ZTo: t.ZTo, DepthMM: t.Depth, VolumeML: t.Volume})
	}
	for _, r := range p.Casting.Rows() {
		if !slices.Contains(reported, r.Key) {
			continue
		}
		in.Casting = append(in.Casting, sheet.Figure{Label: r.Label, Value: strconv.FormatFloat(r.Value, 'f', r.Digits, 64), Unit: r.Unit})
	}
	for _, f := range p.Prints {
		in.Prints = append(in.Prints, sheet.Print{Name: f.Name, Size: f.Size, FitsBed: f.FitsBed})
	}
	for i := range w.mold.Parts {
		part := &w.mold.Parts[i]
		letter := part.Name
		if part.Sector != nil && part.Sector[0] > 0 {
			continue // one section stands for all side parts
		}
		in.Regions = append(in.Regions, sheet.Region{Letter: letter, Outline: part.Outline})
	}
	return in
}
