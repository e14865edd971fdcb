package plan

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"moldwright/core/casting"
	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/sheet"
	"moldwright/core/solid"
)

func sheets(a *call) (any, [][]byte, error) {
	var q struct {
		Job       json.RawMessage `json:"job"`
		Sheet     string          `json:"sheet"`
		Paper     string          `json:"paper"`
		As        string          `json:"as"`
		MeasuredX float64         `json:"measuredX"` // what the 100 mm bars came out as, mm
		MeasuredY float64         `json:"measuredY"`
		Full      bool            `json:"full"`
		Lines     string          `json:"lines"`    // fired, wet or both
		Template  bool            `json:"template"` // of the profile: with a margin of card, to be cut out
		Summary   bool            `json:"summary"`  // of the report: the first page only
		classRequest
	}
	if err := decode(a.json, &q); err != nil {
		return nil, nil, err
	}
	if err := choice("sheet", q.Sheet, "profile", "section", "report", "workshop", "worksheet", "key", "result"); err != nil {
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
	var blobs [][]byte
	var n int
	if q.Sheet == "worksheet" || q.Sheet == "key" || q.Sheet == "result" {
		blobs, n, err = q.classSheet(q.Sheet, q.Job, paper, as, a.language)
		return map[string]any{"pages": n}, blobs, err
	}
	p, err := planned(q.Job)
	if err != nil {
		return nil, nil, err
	}
	in := p.paper()
	switch q.Sheet {
	case "profile":
		lines := map[string]sheet.ProfileLines{"": sheet.FiredLine, "fired": sheet.FiredLine, "wet": sheet.WetLine, "both": sheet.BothLines}
		if _, ok := lines[q.Lines]; !ok {
			return nil, nil, choice("lines", q.Lines, "fired", "wet", "both")
		}
		opt := sheet.ProfileOptions{Lines: lines[q.Lines], Full: q.Full, Template: q.Template, MeasuredX: q.MeasuredX, MeasuredY: q.MeasuredY}
		blobs, n, err = sheet.Profile(in, paper, as, opt)
	case "section":
		blobs, n, err = sheet.Section(in, paper, as)
	case "workshop":
		blobs, n, err = sheet.Workshop(in, paper, as)
	default:
		blobs, n, err = sheet.Report(in, paper, as, sheet.ReportOptions{Summary: q.Summary})
	}
	return map[string]any{"pages": n}, blobs, err
}

// letter is what a part is called on a drawing: side parts have their letters
// already.
func letter(part string) string {
	switch part {
	case "lower":
		return "L"
	case "upper":
		return "U"
	case "core":
		return "K"
	}
	return part
}

func partWords(part string, side bool) string {
	switch {
	case side:
		return "side part"
	case part == "core":
		return part
	}
	return part + " part"
}

// paper hands the plan to the sheets: the same values that the page shows.
func (p *Plan) paper() sheet.Input {
	w := p.work
	in := sheet.Input{Name: w.job.Name, Inner: w.inner, Verdict: p.Verdict.String(), WhyNotFewer: p.WhyNotFewer.String(), Chosen: p.Chosen,
		LaterMinutes: p.Casting.LaterCast}
	for _, c := range p.Cautions {
		in.Cautions = append(in.Cautions, c.String())
	}
	in.Wet, _ = form.Thin(w.meridian.Pts, w.meridian.Corner, 0.01)
	shrink := 1 - w.job.Clay.Shrinkage()
	for _, q := range in.Wet {
		in.Fired = append(in.Fired, form.Point{R: q.R * shrink, Z: q.Z * shrink})
	}
	for _, name := range p.Order {
		in.Order = append(in.Order, letter(name))
	}
	for i := range p.Schemes {
		in.Schemes = append(in.Schemes, p.paperScheme(&p.Schemes[i]))
	}
	for _, t := range p.Traps {
		in.Traps = append(in.Traps, sheet.Trap{ZFrom: t.ZFrom, ZTo: t.ZTo, DepthMM: t.Depth, VolumeML: t.Volume})
	}
	if words := p.robustWords(); words != "" {
		in.Findings = append(in.Findings, sheet.Finding{Text: words, Remedy: "Measure the positive against the profile before pouring plaster."})
	}
	for _, f := range p.Findings {
		in.Findings = append(in.Findings, sheet.Finding{Text: f.Text.String(), Remedy: f.Remedy.String()})
	}
	for _, r := range p.Casting.Rows() {
		in.Casting = append(in.Casting, sheet.Figure{Key: r.Key, Group: casting.Heading(r.Group).String(), Label: r.Label.String(), Value: strings.Replace(strconv.FormatFloat(r.Value, 'f', r.Digits, 64), "-", "−", 1), Unit: r.Unit.String(),
			Formula: r.Formula.String(), Source: r.Source.String(), Status: r.Status.String()})
	}
	for _, b := range p.Casting.Batches {
		in.Batches = append(in.Batches, sheet.Batch{Letter: letter(b.Part), Count: b.Count, WaterG: b.Water, PlasterG: b.Plaster})
	}
	in.Traced = p.paperTraced()
	in.Prints = p.paperPrints()
	in.Mold = p.paperMold()
	in.Assumed = p.assumed()
	return in
}

// paperTraced is what is known of a traced form, brought to the finished size
// and to heights above the foot; nil for one that was not traced.
func (p *Plan) paperTraced() *sheet.Traced {
	j, m := p.work.job, p.work.meridian
	t := j.Form.Traced
	if t == nil {
		return nil
	}
	wet, fired := 1.0, 1-j.Clay.Shrinkage() // from the form to wet, from wet to fired
	if j.Form.Size != job.SizeMold {
		wet = 1 / fired
	}
	k := wet * fired
	out := &sheet.Traced{RMSMM: k * t.RMS, MaxMM: k * t.Max, BandMM: k * t.ErrorBand}
	for _, g := range t.NotSeen {
		from, to := m.Lift+wet*g.ZFrom, m.Lift+wet*g.ZTo
		if m.Turned {
			from, to = m.Lift-wet*g.ZTo, m.Lift-wet*g.ZFrom
		}
		out.NotSeen = append(out.NotSeen, sheet.Gap{ZFrom: fired * from, ZTo: fired * to, Why: notSeen(g.Why).String()})
	}
	return out
}

// robustWords tell by how much the radii may be wrong before the choice of
// scheme is in doubt, or nothing where no error could change it.
func (p *Plan) robustWords() string {
	r := p.Robust
	var what string
	switch r.Reason {
	case "fewer":
		for i := range p.Schemes {
			if s := &p.Schemes[i]; s.ID == r.Scheme {
				what = fmt.Sprintf("%s might let go", s.Name)
			}
		}
	case "catch":
		what = "the chosen scheme might catch"
	case "rub":
		what = "the chosen scheme might rub"
	}
	if what == "" || math.IsInf(r.RadiusMM, 0) {
		return ""
	}
	return fmt.Sprintf("The choice holds while every radius is true to %.2f mm. Beyond that %s, between %.1f and %.1f mm above the foot.", r.RadiusMM, what, r.ZFrom, r.ZTo)
}

func (p *Plan) paperScheme(s *Scheme) sheet.Scheme {
	out := sheet.Scheme{ID: s.ID, Name: s.Name.String(), Against: s.Against.String(), Count: s.Count, Verdict: string(s.Verdict), PartingHeights: s.PartingHeights}
	for k := range s.Parts {
		part := &s.Parts[k]
		o := sheet.Part{Letter: letter(part.Name), Name: partWords(part.Name, part.Sector != nil), Side: part.Sector != nil,
			Pull: part.Pull, ZFrom: part.ZFrom, ZTo: part.ZTo, Verdict: string(part.Verdict),
			MinDraftDeg: part.MinDraft, RubbingAreaCM2: part.RubArea, RubSharePercent: part.RubShare,
			PlasterG: part.Plaster, WaterG: part.Water, DryG: part.Dry}
		if o.Side {
			o.Sector = *part.Sector
		}
		for _, b := range part.Bands {
			o.Bands = append(o.Bands, sheet.Band{FromDeg: b.From, ToDeg: b.To, AreaCM2: b.Area})
		}
		for _, c := range part.Catches {
			o.Catches = append(o.Catches, sheet.Catch{ZFrom: c.ZFrom, ZTo: c.ZTo, DepthMM: c.Depth, BlockedAtZ: c.BlockedAtZ, ClayForgives: c.ClayForgives})
		}
		out.Parts = append(out.Parts, o)
	}
	md := p.work.mold
	if s.ID != p.Chosen {
		md = mold.Lay(p.work.job, p.work.base, s.Scheme)
	}
	told := false
	for i := range md.Parts {
		part := &md.Parts[i]
		if part.Sector != nil && told {
			continue // one section stands for all side parts
		}
		told = told || part.Sector != nil
		line, pot := part.Outline, part.Pot+1
		if s.ID != p.Chosen {
			line, _ = form.Thin(line, make([]bool, len(line)), 0.1)
			pot = 0 // its picture is small: the profile as it is
		}
		out.Regions = append(out.Regions, sheet.Region{Letter: letter(part.Name), Side: part.Sector != nil, Outline: line, Pot: pot})
	}
	return out
}

// paperPrints lists the printed pieces, those alike in one row: "lower cottle
// stave 1, 2".
func (p *Plan) paperPrints() (out []sheet.Print) {
	for i, f := range p.Prints {
		if i > 0 && f.No > 1 {
			if b := p.Prints[i-1]; b.No == f.No-1 && f.Part == b.Part && f.Kind == b.Kind && sheet.SameSize(f.Size, b.Size) {
				out[len(out)-1].Name += fmt.Sprintf(", %d", f.No)
				continue
			}
		}
		out = append(out, sheet.Print{Name: f.Label.String(), Size: f.Size, FitsBed: f.FitsBed})
	}
	return out
}

func (p *Plan) paperMold() sheet.Mold {
	md := p.work.mold
	out := sheet.Mold{Opening: md.Opening, Spare: md.Spare, TrimZ: md.TrimZ, Radius: md.Block.R, ZBottom: md.Block.ZBottom, ZTop: md.Block.ZTop}
	const steps = 720
	for i := range steps {
		deg := 360.0 / steps * float64(i)
		if md.Block.Facets > 0 {
			out.Block = append(out.Block, md.Block.Reach(deg))
		}
		if !md.Section.Round {
			g, _ := md.Section.At(deg * math.Pi / 180)
			out.Pot = append(out.Pot, g)
		}
	}
	for i := range md.Parts {
		for _, n := range md.Parts[i].Natches {
			if n.Socket {
				continue
			}
			rise := solid.DomeHeight(n.Radius, n.HalfAngle)
			if n.Seam == mold.Below {
				rise = -rise
			}
			out.Natches = append(out.Natches, sheet.Natch{Letter: letter(md.Parts[i].Name), At: n.At, Azimuth: n.Azimuth,
				RadiusMM: n.Radius, RiseMM: rise, Level: n.Seam == mold.Below || n.Seam == mold.Above})
		}
	}
	return out
}

// assumed is what the plan rests on beside the form: the job's settings, and
// where the job leaves a choice to the program, on what ground it was made.
func (p *Plan) assumed() []sheet.Figure {
	j := p.work.job
	var out []sheet.Figure
	add := func(label, value, unit, source string) {
		out = append(out, sheet.Figure{Label: label, Value: value, Unit: unit, Source: source})
	}
	num := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	add("Drying shrinkage, on the wet length", num(j.Clay.DryingShrinkage), "%", "measure a test bar (ASTM C326)")
	add("Firing shrinkage, on the dry length", num(j.Clay.FiringShrinkage), "%", "measure a test bar (ASTM C326)")
	add("Shrinkage when the cast lets go", num(j.Clay.ReleaseShrinkage), "%", "what the clay forgives a catch")
	add("Wall of the cast", num(j.Clay.Wall), "mm", "")
	add("Density of the slip", num(j.Clay.SlipDensity), "g/ml", "weigh a litre")
	add("Density of the dry clay", num(j.Clay.SolidsDensity), "g/ml", "")
	add("Test cast", num(j.Clay.TestCast.Wall)+" mm in "+num(j.Clay.TestCast.Minutes), "min", "your own trial with this slip and this plaster")
	add("Consistency of the plaster", num(j.Plaster.Consistency), "", "water to 100 of plaster by mass; the maker's data sheet")
	add("Plaster wall and base", num(j.Plaster.Wall)+" and "+num(j.Plaster.Base), "mm", "")
	draft := ""
	if j.Rules.LeastDraft == job.LeastDraftFor(j.Printer.Layer) {
		draft = "1° and 1° more for each 0.025 mm of ridge, a quarter of the layer (texture rule of injection molding practice, by analogy)"
	}
	add("Least draft", num(j.Rules.LeastDraft), "°", draft)
	add("Share of a part that may rub", num(j.Rules.RubShare), "%", "")
	add("Printer's bed", fmt.Sprintf("%s × %s × %s", num(j.Printer.Bed[0]), num(j.Printer.Bed[1]), num(j.Printer.Bed[2])), "mm", "")
	add("Layer, clearance, shell", num(j.Printer.Layer)+", "+num(j.Printer.Clearance)+", "+num(j.Printer.Shell), "mm", "")
	return out
}
