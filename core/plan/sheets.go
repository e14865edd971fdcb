package plan

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"moldwright/core/casting"
	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/sheet"
	"moldwright/core/solid"
	"moldwright/core/tooling"
	"moldwright/core/words"
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
	in := p.paper(a.language)
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

func partWords(part string, side bool) words.Text {
	switch {
	case side:
		return words.Say("side part")
	case part == "core":
		return words.SayIn("part of a mold", "core")
	case part == "upper":
		return words.Say("upper part")
	}
	return words.Say("lower part")
}

// paper hands the plan to the sheets in a language: the same values that the
// page shows.
func (p *Plan) paper(l words.Language) sheet.Input {
	w := p.work
	in := sheet.Input{Language: l, Name: w.job.Name, Inner: w.inner, Verdict: p.Verdict.In(l), WhyNotFewer: p.WhyNotFewer.In(l), Chosen: p.Chosen,
		LaterMinutes: p.Casting.LaterCast}
	if w.mold.Inner != nil {
		in.Solid = &sheet.SolidWall{At: w.thickest, ThickMM: p.Casting.SolidWall}
	}
	for _, c := range p.Cautions {
		in.Cautions = append(in.Cautions, c.In(l))
	}
	in.Wet, _ = form.Thin(w.meridian.Pts, w.meridian.Corner, 0.01)
	shrink := 1 - w.job.Clay.Shrinkage()
	in.Rims, in.RimsLeft = asPoints(seen(w.mold.DimpleRims(270, 360), 1)), asPoints(seen(w.mold.DimpleRims(180, 270), -1))
	for _, q := range in.Wet {
		in.Fired = append(in.Fired, form.Point{R: q.R * shrink, Z: q.Z * shrink})
	}
	for _, name := range p.Order {
		in.Order = append(in.Order, mold.Letter(name))
	}
	for i := range p.Schemes {
		in.Schemes = append(in.Schemes, p.paperScheme(&p.Schemes[i], l))
	}
	for _, t := range p.Traps {
		in.Traps = append(in.Traps, sheet.Trap{ZFrom: t.ZFrom, ZTo: t.ZTo, DepthMM: t.Depth, VolumeML: t.Volume})
	}
	if told := p.robustWords(); !told.IsZero() {
		in.Findings = append(in.Findings, sheet.Finding{Text: told.In(l), Remedy: words.Say("Measure the positive against the profile before pouring plaster.").In(l)})
	}
	for _, f := range p.Findings {
		in.Findings = append(in.Findings, sheet.Finding{Text: f.Text.In(l), Remedy: f.Remedy.In(l)})
	}
	for _, r := range p.Casting.Rows() {
		in.Casting = append(in.Casting, sheet.Figure{Key: r.Key, Group: casting.Heading(r.Group).In(l), Label: r.Label.In(l), Value: words.Number(r.Value, r.Digits).In(l), Unit: r.Unit.In(l),
			Formula: r.Formula.In(l), Source: r.Source.In(l), Status: r.Status.In(l)})
	}
	for _, b := range p.Casting.Batches {
		in.Batches = append(in.Batches, sheet.Batch{Letter: mold.Letter(b.Part), Count: b.Count, WaterG: b.Water, PlasterG: b.Plaster})
	}
	in.Traced = p.paperTraced(l)
	in.Prints = p.paperPrints(l)
	in.Mold = p.paperMold()
	in.Assumed = p.assumed(l)
	return in
}

// paperTraced is what is known of a traced form, brought to the finished size
// and to heights above the foot; nil for one that was not traced.
func (p *Plan) paperTraced(l words.Language) *sheet.Traced {
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
		out.NotSeen = append(out.NotSeen, sheet.Gap{ZFrom: fired * from, ZTo: fired * to, Why: notSeen(g.Why).In(l)})
	}
	return out
}

// robustWords tell by how much the radii may be wrong before the choice of
// scheme is in doubt, or nothing where no error could change it.
func (p *Plan) robustWords() words.Text {
	r := p.Robust
	if math.IsInf(r.RadiusMM, 0) {
		return words.Text{}
	}
	switch r.Reason {
	case "fewer", "other":
		for i := range p.Schemes {
			if s := &p.Schemes[i]; s.ID == r.Scheme {
				return words.Say("The choice holds while every radius is true to %.2f mm. Beyond that %s might let go, between %.1f and %.1f mm above the foot.", r.RadiusMM, s.Name, r.ZFrom, r.ZTo)
			}
		}
	case "catch":
		return words.Say("The choice holds while every radius is true to %.2f mm. Beyond that the chosen scheme might catch, between %.1f and %.1f mm above the foot.", r.RadiusMM, r.ZFrom, r.ZTo)
	case "rub":
		return words.Say("The choice holds while every radius is true to %.2f mm. Beyond that the chosen scheme might rub, between %.1f and %.1f mm above the foot.", r.RadiusMM, r.ZFrom, r.ZTo)
	}
	return words.Text{}
}

func (p *Plan) paperScheme(s *Scheme, l words.Language) sheet.Scheme {
	out := sheet.Scheme{ID: s.ID, Name: s.Name.In(l), Against: s.Against.In(l), Count: s.Count, Verdict: string(s.Verdict), PartingHeights: s.PartingHeights}
	for k := range s.Parts {
		part := &s.Parts[k]
		o := sheet.Part{Letter: mold.Letter(part.Name), Name: partWords(part.Name, part.Sector != nil).In(l), Side: part.Sector != nil,
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
		out.Regions = append(out.Regions, sheet.Region{Letter: mold.Letter(part.Name), Side: part.Sector != nil, Outline: line, Pot: pot})
	}
	return out
}

// paperPrints lists the printed pieces, those alike in one row: "lower cottle
// stave 1, 2".
func (p *Plan) paperPrints(l words.Language) (out []sheet.Print) {
	for i, f := range p.Prints {
		if i > 0 && f.No > 1 {
			if b := p.Prints[i-1]; b.No == f.No-1 && f.Part == b.Part && f.Kind == b.Kind && sheet.SameSize(f.Size, b.Size) {
				out[len(out)-1].Name += fmt.Sprintf(", %d", f.No)
				continue
			}
		}
		out = append(out, sheet.Print{Name: f.Label.In(l), Size: f.Size, FitsBed: f.FitsBed, Each: eachPart(&f), Letter: f.Part})
	}
	return out
}

// eachPart tells which of the pieces of a side part this is.
func eachPart(f *tooling.Piece) sheet.EachPart {
	switch {
	case f.Kind == "tray":
		return sheet.Tray
	case f.Kind == "board" && strings.HasSuffix(f.Name, " lower end board"):
		return sheet.LowerEnd
	case f.Kind == "board" && strings.HasSuffix(f.Name, " upper end board"):
		return sheet.UpperEnd
	}
	return sheet.NoPart
}

func asPoints(lines [][][2]float64) (out [][]form.Point) {
	for _, l := range lines {
		pts := make([]form.Point, len(l))
		for i, q := range l {
			pts[i] = form.Point{R: q[0], Z: q[1]}
		}
		out = append(out, pts)
	}
	return out
}

func (p *Plan) paperMold() sheet.Mold {
	md := p.work.mold
	out := sheet.Mold{Opening: md.Opening, Drain: md.Drain, Spare: md.Spare, TrimZ: md.TrimZ, Radius: md.Block.R, ZBottom: md.Block.ZBottom, ZTop: md.Block.ZTop}
	out.Dimples = md.DimpleArcs()
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
			out.Natches = append(out.Natches, sheet.Natch{Letter: mold.Letter(md.Parts[i].Name), At: n.At, Azimuth: n.Azimuth,
				RadiusMM: n.Radius, RiseMM: rise, Level: n.Seam == mold.Below || n.Seam == mold.Above})
		}
	}
	return out
}

// assumed is what the plan rests on beside the form: the job's settings, and
// where the job leaves a choice to the program, on what ground it was made.
func (p *Plan) assumed(l words.Language) []sheet.Figure {
	j := p.work.job
	var out []sheet.Figure
	add := func(label, value words.Text, unit string, source words.Text) {
		out = append(out, sheet.Figure{Label: label.In(l), Value: value.In(l), Unit: unit, Source: source.In(l)})
	}
	num := func(v float64) words.Text { return words.Number(v, -1) }
	none, bar := words.Text{}, words.Say("measure a test bar (ASTM C326)")
	add(words.Say("Drying shrinkage, on the wet length"), num(j.Clay.DryingShrinkage), "%", bar)
	add(words.Say("Firing shrinkage, on the dry length"), num(j.Clay.FiringShrinkage), "%", bar)
	add(words.Say("Shrinkage when the cast lets go"), num(j.Clay.ReleaseShrinkage), "%", words.Say("what the clay forgives a catch"))
	add(words.Say("Wall of the cast"), num(j.Clay.Wall), "mm", none)
	add(words.Say("Density of the slip"), num(j.Clay.SlipDensity), "g/ml", words.Say("weigh a litre"))
	add(words.Say("Density of the dry clay"), num(j.Clay.SolidsDensity), "g/ml", none)
	add(words.Say("Test cast"), words.Say("%s mm in %s", num(j.Clay.TestCast.Wall), num(j.Clay.TestCast.Minutes)), "min", words.Say("your own trial with this slip and this plaster"))
	add(words.Say("Consistency of the plaster"), num(j.Plaster.Consistency), "", words.Say("water to 100 of plaster by mass; the maker's data sheet"))
	add(words.Say("Plaster wall and base"), words.And(num(j.Plaster.Wall), num(j.Plaster.Base)), "mm", none)
	draft := none
	if j.Rules.LeastDraft == job.LeastDraftFor(j.Printer.Layer) {
		draft = words.Say("1° and 1° more for each 0.025 mm of ridge, a quarter of the layer (texture rule of injection molding practice, by analogy)")
	}
	add(words.Say("Least draft"), num(j.Rules.LeastDraft), "°", draft)
	add(words.Say("Share of a part that may rub"), num(j.Rules.RubShare), "%", none)
	bed := j.Printer.Bed
	add(words.Say("Printer's bed"), words.Join(" × ", num(bed[0]), num(bed[1]), num(bed[2])), "mm", none)
	add(words.Say("Layer, clearance, shell"), words.Join(list(l), num(j.Printer.Layer), num(j.Printer.Clearance), num(j.Printer.Shell)), "mm", none)
	return out
}

// list is the sign between numbers in a row, which is no comma where that is the
// decimal sign.
func list(l words.Language) string {
	if l == words.English {
		return ", "
	}
	return "; "
}
