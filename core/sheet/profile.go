package sheet

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// The profile at true size: outline, axis, ground, rim and foot, the main
// dimensions and the check bars. It goes upright or across, whichever holds
// it on one page; what neither holds is tiled, see tile.go.

// ProfileLines says which size is drawn.
type ProfileLines int

const (
	FiredLine ProfileLines = iota // the finished pot
	WetLine                       // the fresh cast, as the mold has it
	BothLines
)

// ProfileOptions choose what a profile sheet shows.
type ProfileOptions struct {
	Lines ProfileLines
	Full  bool // the whole silhouette, else the half right of the axis
	// Template draws the half profile with a margin of card around it, to be
	// cut out: one piece to lay against the pot, one to lay within it.
	Template bool
	// MeasuredX and MeasuredY are the lengths in mm that the 100 mm bars of an
	// earlier sheet had on paper, across and up; 0 is 100. The sheet is drawn
	// larger or smaller to make up for that printer.
	MeasuredX, MeasuredY float64
}

// compensation is the factor that makes up for a bar of the measured length.
func compensation(field string, measured float64) (float64, error) {
	if measured == 0 {
		return 1, nil
	}
	if !(measured >= 90 && measured <= 110) {
		return 0, job.Faultf("bar", field, "A bar of 100 mm should measure between 90 and 110 mm on paper, not %s. Outside that the printer is set to fit the page: set it to 100 %%, actual size.", words.Number(measured, 1))
	}
	return 100 / measured, nil
}

// profileDrawing is what the single and the tiled sheets have in common.
type profileDrawing struct {
	tongue
	in      Input
	opt     ProfileOptions
	main    silhouette
	second  *silhouette // the wet line beside the fired one
	kx, ky  float64
	maxR    float64 // over both lines
	height  float64
	sizeTag string // fired or wet, or both
	ofSize  string // the same said of the drawing
	number  string
}

func newProfileDrawing(in Input, opt ProfileOptions) (*profileDrawing, error) {
	if opt.Template {
		opt.Full = false
		if opt.Lines == BothLines {
			return nil, job.Faultf("lines", "lines", "A template is cut along one line: choose the fired or the wet size.")
		}
	}
	d := &profileDrawing{tongue: tongueOf(in.Language), in: in, opt: opt}
	var err error
	if d.kx, err = compensation("measuredX", opt.MeasuredX); err != nil {
		return nil, err
	}
	if d.ky, err = compensation("measuredY", opt.MeasuredY); err != nil {
		return nil, err
	}
	if opt.Lines != WetLine {
		if err := checkLine("fired", in.Fired); err != nil {
			return nil, err
		}
		d.main = newSilhouette(in.Fired)
		d.sizeTag, d.ofSize = d.sayIn("size of a drawing", "fired"), d.say("fired size")
	}
	if opt.Lines != FiredLine {
		if err := checkLine("wet", in.Wet); err != nil {
			return nil, err
		}
		wet := newSilhouette(in.Wet)
		if opt.Lines == WetLine {
			d.main = wet
			d.sizeTag, d.ofSize = d.sayIn("size of a drawing", "wet"), d.say("wet size")
		} else {
			d.second = &wet
			d.sizeTag, d.ofSize = d.sayIn("size of a drawing", "fired, wet"), d.say("fired, wet size")
		}
	}
	d.maxR, d.height = d.main.maxR, d.main.height
	if d.second != nil {
		d.maxR, d.height = math.Max(d.maxR, d.second.maxR), math.Max(d.height, d.second.height)
	}
	var second []form.Point
	if d.second != nil {
		second = d.second.pts
	}
	d.number = drawingNumber(in.Name, d.main.pts, second)
	return d, nil
}

// Room in mm around the profile for its dimensions.
const (
	padSide = 10.0 // beyond the axis or the left outline
	padDims = 22.0 // right: words and the height
	padTop  = 15.0
	padFoot = 15.0
)

func profileDocument(in Input, paper Paper, opt ProfileOptions) (*document, error) {
	d, err := newProfileDrawing(in, opt)
	if err != nil {
		return nil, err
	}
	doc, err := newDocument(d.say("%s – profile 1:1", in.title()), d.tongue)
	if err != nil {
		return nil, err
	}
	ext := d.extent()
	need := rect{0, 0, d.kx*ext.w() + padSide + padDims, d.ky*ext.h() + padTop + padFoot}
	if opt.Template {
		need = rect{0, 0, d.kx*ext.w() + 2*templatePad, d.ky*ext.h() + 2*templatePad}
	}
	for _, paper := range [...]Paper{paper, paper.across()} {
		fr := drawingFrame(paper)
		if need.w() <= fr.w() && need.h() <= fr.h()-blockHeight-d.stripHeight()-d.tracedHeight(doc, fr) {
			d.single(doc, paper, need)
			return doc, nil
		}
	}
	if err := d.tiled(doc, paper); err != nil {
		return nil, err
	}
	return doc, nil
}

// extent is the room of the drawing in model mm: of the pot, or of the card.
func (d *profileDrawing) extent() rect {
	if d.opt.Template {
		return rect{0, -cardMargin, d.maxR + cardMargin, d.height + cardMargin}
	}
	return rect{d.leftEdge(), 0, d.maxR, d.height}
}

// leftEdge is the leftmost x of the drawing in model mm.
func (d *profileDrawing) leftEdge() float64 {
	if d.opt.Full {
		return -d.maxR
	}
	return 0
}

// single draws the profile on one page.
func (d *profileDrawing) single(doc *document, paper Paper, need rect) {
	p := doc.newPage(paper)
	area := p.titleBlock(blockFields{name: d.in.title(), kind: d.kind(), number: d.number, scale: "1:1", size: d.sizeTag, sheet: 1, of: 1})
	area = p.barStrip(area, d)
	if words := d.tracedWords(); words != "" {
		area.y1 = p.paragraph(area.x0+3, area.y1-1.5, area.w()-6, words, plain(sizeSmall)) - 1
	}
	x, y := area.x0+(area.w()-need.w())/2, area.y0+(area.h()-need.h())/2
	if d.opt.Template {
		d.template(p, view{point{x + templatePad, y + templatePad + d.ky*cardMargin}, d.kx, d.ky})
		return
	}
	v := view{point{x + padSide - d.kx*d.leftEdge(), y + padFoot}, d.kx, d.ky}
	d.draw(p, v, nil)
	d.dimensions(p, v)
}

// word is what the sheet is, in one word.
func (d *profileDrawing) word() string {
	if d.opt.Template {
		return d.say("Template")
	}
	return d.say("Profile")
}

func (d *profileDrawing) kind() string {
	if d.opt.Template {
		return d.say("Template to cut out, true size")
	}
	if d.opt.Full {
		return d.say("Silhouette at true size")
	}
	return d.say("Half profile at true size")
}

// barStrip draws the check bars and the key to the lines along the foot of
// the area and gives the room above.
func (p *page) barStrip(area rect, d *profileDrawing) rect {
	height := d.stripHeight()
	top := area.y0 + height
	p.line(area.x0, top, area.x1, top, thin)
	p.checkBars(area.x0, area.y0, area.w(), height, d.kx, d.ky)
	x, y := area.x0+2+101.6*d.kx+6, area.y0+6+height-barStripHeight
	p.key(x, y, outline, d.lineWords(d.main, d.opt.Lines == WetLine))
	if d.second != nil {
		y -= keyStep
		p.key(x, y, beforeLine, d.lineWords(*d.second, true))
	}
	d.insideKey(p, x, y-keyStep)
	return rect{area.x0, top, area.x1, area.y1}
}

func (d *profileDrawing) lineWords(s silhouette, wet bool) string {
	high, across := d.num(s.height, 1), d.num(2*s.maxR, 1)
	if wet {
		return d.say("Wet: %s high, Ø %s mm", high, across)
	}
	return d.say("Fired: %s high, Ø %s mm", high, across)
}

const keyStep = 3.6 // mm from one row of the key to the next

// key is a sample of a line and what it stands for.
func (p *page) key(x, y float64, l lineType, words string) {
	p.line(x, y+0.8, x+14, y+0.8, l)
	p.textIn(x+16, y, drawingFrame(p.paper).x1-x-17, words, plain(sizeSmall), left)
}

// lines are the drawn lines in model mm, outlines first.
func (d *profileDrawing) lines() (out []drawnLine) {
	add := func(s silhouette, l lineType) {
		pts := make([]point, len(s.pts))
		for i, q := range s.pts {
			pts[i] = point{q.R, q.Z}
		}
		out = append(out, drawnLine{pts, l, true})
		mouth := 0.0
		if d.opt.Full {
			mouth = -s.rim.R
			mirror := make([]point, len(pts))
			for i, q := range pts {
				mirror[i] = point{-q.x, q.y}
			}
			out = append(out, drawnLine{mirror, l, true})
		}
		if s.open {
			out = append(out, drawnLine{[]point{{mouth, s.rim.Z}, {s.rim.R, s.rim.Z}}, thin, false})
		}
	}
	add(d.main, outline)
	out = append(out, d.insideLines(&d.main, dashed)...)
	if wet := newSilhouette(d.in.Wet); !d.opt.Template && wet.height > 0 {
		k := d.main.height / wet.height
		rims := func(list [][]form.Point, way float64) {
			for _, l := range list {
				pts := make([]point, len(l))
				for i, q := range l {
					pts[i] = point{way * k * q.R, k * q.Z}
				}
				out = append(out, drawnLine{pts, thin, false})
			}
		}
		rims(d.in.Rims, 1)
		if d.opt.Full {
			rims(d.in.RimsLeft, -1)
		}
	}
	if d.second != nil {
		add(*d.second, beforeLine)
		out = append(out, d.insideLines(d.second, beforeLine)...)
	}
	if d.opt.Template {
		out = append(out, d.cutLines()...)
	}
	return out
}

// tracedScale is the drawn size over the finished one.
func (d *profileDrawing) tracedScale() float64 {
	if fired := newSilhouette(firstOf(d.in.Fired, d.in.Wet)); d.opt.Lines == WetLine && fired.height > 0 {
		return d.main.height / fired.height
	}
	return 1
}

// tracedWords tell how good a traced form is, or nothing of another.
func (d *profileDrawing) tracedWords() string {
	if d.in.Traced == nil {
		return ""
	}
	told := d.in.Traced.words(d.tongue, d.tracedScale())
	if len(d.in.Traced.NotSeen) > 0 {
		told += " " + d.say("A dashed line runs beside it there.")
	}
	return told
}

// tracedHeight is the room that these words take within the frame.
func (d *profileDrawing) tracedHeight(doc *document, fr rect) float64 {
	words := d.tracedWords()
	if words == "" {
		return 0
	}
	return doc.fonts.height(words, plain(sizeSmall), fr.w()-6) + 2.5
}

// notSeen are dashed lines beside the main outline where a picture did not
// show it.
func (d *profileDrawing) notSeen() (out []drawnLine) {
	if d.in.Traced == nil {
		return nil
	}
	const beside = 2.0 // mm
	k := d.tracedScale()
	line := make([]point, len(d.main.pts))
	for i, q := range d.main.pts {
		line[i] = point{q.R + beside, q.Z}
	}
	for _, g := range d.in.Traced.NotSeen {
		if k*(g.ZTo-g.ZFrom) < 0.05 {
			continue // without height there is nothing to run beside
		}
		for _, piece := range clipLine(line, rect{beside, k*g.ZFrom - 0.01, d.main.maxR + 2*beside, k*g.ZTo + 0.01}) {
			out = append(out, drawnLine{piece.pts, dashed.in(vermilion), false})
		}
	}
	return out
}

type drawnLine struct {
	pts     []point
	l       lineType
	outline bool // of the pot, fired or wet
}

// draw sets the profile, the axis and the ground, within the clip where one
// is given.
func (d *profileDrawing) draw(p *page, v view, clip *rect) {
	lines := append(d.lines(), d.notSeen()...)
	if !d.opt.Template {
		far := 3 / d.kx
		lines = append(lines,
			drawnLine{[]point{{d.leftEdge() - far, 0}, {d.maxR + far, 0}}, thin, false},
			drawnLine{[]point{{0, -9 / v.ky}, {0, d.height + 12/v.ky}}, axisLine, false})
	}
	for _, dl := range lines {
		pts := make([]point, len(dl.pts))
		for i, q := range dl.pts {
			pts[i] = v.at(q.x, q.y)
		}
		if clip == nil {
			p.stroke(pts, dl.l, 0)
			continue
		}
		for _, piece := range clipLine(pts, *clip) {
			p.stroke(piece.pts, dl.l, piece.start)
		}
	}
}

// dimensions sets the height, the diameters at rim, widest place and foot,
// and the words for rim and foot, of the main line.
func (d *profileDrawing) dimensions(p *page, v view) {
	s, st := d.main, plain(sizeBody)
	side := v.x(d.maxR)
	across := func(r, y float64) {
		if d.opt.Full {
			p.dimAcross(v.x(-r), v.x(r), y, "Ø "+p.num(2*r, 1), st)
		} else {
			p.dimHalf(v.x(0), v.x(r), y, "Ø "+p.num(2*r, 1), st)
		}
	}
	extend := func(r, z, to float64) {
		gap := math.Copysign(1, to-v.y(z))
		p.line(v.x(r), v.y(z)+gap, v.x(r), to, thin)
		if d.opt.Full {
			p.line(v.x(-r), v.y(z)+gap, v.x(-r), to, thin)
		}
	}
	top := v.y(d.height)
	if s.open {
		extend(s.rim.R, s.rim.Z, top+9)
		across(s.rim.R, top+7)
		p.textIn(side+3.5, v.y(s.rim.Z)+0.9, 10.5, p.sayIn("of a pot", "Rim"), faint(sizeSmall), left)
		p.line(v.x(s.rim.R)+1, v.y(s.rim.Z), side+10, v.y(s.rim.Z), thin)
	}
	atRim := s.open && s.maxR-s.rim.R < 0.5 && s.rim.Z-s.maxRZ < 8
	atFoot := s.maxR-s.footR < 0.5 && s.maxRZ < 8
	if !atRim && !atFoot {
		if len(d.in.Rims)+len(d.in.RimsLeft) > 0 || d.in.Solid != nil { // no other line runs through the figure
			w := p.doc.fonts.width("Ø "+p.num(2*s.maxR, 1), st)
			x0, y0 := math.Max((v.x(0)+v.x(s.maxR))/2, v.x(0)+1.5+w/2)-w/2-0.6, v.y(s.maxRZ)+0.5
			if d.opt.Full {
				x0 = v.x(0) + 0.9
			}
			p.fillRect(rect{x0, y0, x0 + w + 1.2, y0 + 0.9 + st.capHeight()}, white)
		}
		across(s.maxR, v.y(s.maxRZ))
	}
	if s.footR > 2 {
		extend(s.footR, 0, v.y(0)-11)
		across(s.footR, v.y(0)-9)
	}
	p.textIn(side+3.5, v.y(0)+0.9, 10.5, p.sayIn("of a pot", "Foot"), faint(sizeSmall), left)
	dx := side + 15
	p.line(side+3, v.y(0), dx+2, v.y(0), thin)
	p.line(v.x(s.radiusAt(s.height))+1, v.y(s.height), dx+2, v.y(s.height), thin)
	p.dimUp(dx, v.y(0), v.y(s.height), p.num(s.height, 1), st)
}
