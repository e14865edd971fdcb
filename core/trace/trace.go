// The whole way from a request and its pixels to a result: outline, axis, halves,
// scale and camera, contour, nodes, and how good they are.

package trace

import (
	"math"

	"moldwright/core/job"
	"moldwright/core/words"
)

// Sizes of the coarse picture and of the steps on the full one.
const (
	coarsePixels = 420  // longer side of the plane
	finePoints   = 2600 // at most, around the pot
)

// Trace finds the pot in the picture (RGBA rows, 4 bytes a pixel, not
// premultiplied) and the nodes of its profile, in mm, foot at z = 0, at the
// size the request says. The same request and picture give the same bytes of
// result. Errors are *job.Fault.
func Trace(req Request, rgba []byte) (Result, error) {
	res, fault := trace(req, rgba)
	if fault != nil {
		return Result{}, fault
	}
	return res, nil
}

func trace(req Request, rgba []byte) (Result, *job.Fault) {
	r := &req
	if f := r.check(len(rgba)); f != nil {
		return Result{}, f
	}
	p, f := cropped(r, rgba)
	if f != nil {
		return Result{}, f
	}
	d, f := findOutline(r, p)
	if f != nil {
		return Result{}, f
	}
	if r.Draft {
		return d.draft(), nil
	}
	return d.profile(r)
}

func cropped(r *Request, rgba []byte) (*picture, *job.Fault) {
	p := &picture{w: r.Width, h: r.Height, pix: rgba, x1: r.Width, y1: r.Height}
	if c := r.Crop; c != nil {
		clamp := func(v float64, most int) int { return int(math.Max(0, math.Min(float64(most), math.Round(v)))) }
		p.x0, p.x1 = clamp(c[0], p.w), clamp(c[0]+c[2], p.w)
		p.y0, p.y1 = clamp(c[1], p.h), clamp(c[1]+c[3], p.h)
		if p.x1 <= p.x0 || p.y1 <= p.y0 {
			return nil, job.Faultf("emptyCrop", "crop", "The crop holds nothing of the picture; draw it around the pot.")
		}
	}
	return p, nil
}

// drawn is an outline in pixels, closed around the pot, or one side with its
// axis.
type drawn struct {
	outline []pt
	closed  bool
	axis    *axis
}

// findOutline dispatches on what the request holds.
func findOutline(r *Request, p *picture) (*drawn, *job.Fault) {
	switch {
	case r.Wire != nil:
		return wired(r, p)
	case r.Mode == ModeSketch:
		return sketched(r, p)
	}
	c := shrink(p, coarsePixels)
	mask, f := silhouette(p, c, r)
	if f != nil {
		return nil, f
	}
	k := float64(c.k)
	o := smooth(follow(mask, c.w, c.h), 4, true)
	for i := range o {
		o[i] = pt{o[i].x*k + float64(p.x0), o[i].y*k + float64(p.y0)}
	}
	d := &drawn{outline: o, closed: true}
	if r.Draft {
		d.outline = resample(o, 2*k, true)
		return d, nil
	}
	d.outline = refineEdge(p, o, k)
	return d, nil
}

// refineEdge draws a closed outline, true to about k pixels, to the edge: on
// samples a third of k wide, then on single pixels.
func refineEdge(p *picture, o []pt, k float64) []pt {
	if k >= 3 {
		w := k / 3
		o = snapping{step: k, reach: 2.4 * k, sample: w, width: w, grid: min(int(w+0.5), 4)}.snap(p, o, true)
		o = smooth(o, 1, true)
		k = w
	}
	total := 0.0
	for i := range o {
		total += o[i].dist(o[(i+1)%len(o)])
	}
	step := math.Max(1, total/finePoints)
	if k > 3 {
		o = snapping{step: math.Max(step, 2), reach: math.Max(2*k, 3), sample: 1, width: 2, grid: 2}.snap(p, o, true)
		o = smooth(o, 1, true)
		k = 1.5
	}
	o = snapping{step: step, reach: 2.5 * math.Max(k, 1), sample: 0.5, width: 1, grid: 1}.snap(p, o, true)
	return smooth(o, 1, true)
}

func places(o []pt) [][2]float64 {
	out := make([][2]float64, len(o))
	for i, q := range o {
		out[i] = [2]float64{math.Round(q.x*100) / 100, math.Round(q.y*100) / 100}
	}
	return out
}

func (d *drawn) draft() Result {
	return Result{Outline: places(d.outline), Quality: Quality{NotSeen: []Gap{}, Warnings: []Note{}},
		Form: job.Form{Section: job.Section{Kind: job.SectionRound}}, Contour: [][2]float64{}}
}

func noted(n []Note) []Note {
	if n == nil {
		return []Note{}
	}
	return n
}

// profile goes on from the outline to the nodes.
func (d *drawn) profile(r *Request) (Result, *job.Fault) {
	var notes []Note
	var a axis
	var h half
	var residual float64 // between the two sides, pixels
	hidden := brushedAway(d.outline, r.Brush)
	if d.closed {
		var lopsided float64
		if r.Axis != nil {
			a = throughPoints(*r.Axis).grounded(d.outline)
		} else {
			a, residual, lopsided = findAxis(d.outline)
		}
		left, right, ok := cut(d.outline, hidden, a)
		if !ok {
			return Result{}, job.Faultf("noAxis", "axis", "No upright axis parts the outline into two sides; set two points on the pot's axis.")
		}
		switch r.Side {
		case SideLeft:
			h = left
		case SideRight:
			h = right
		default:
			var alone float64
			h, alone = mean(left, right)
			if alone > 0.04 && hidden == nil {
				notes = append(notes, Note{Code: "sidesDiffer", Measure: math.Round(alone * 100),
					Sentence: words.Say("The two sides differ along %.0f %% of the outline; there the quieter side alone was taken.", math.Round(100*alone)),
					Remedy:   words.Say("If a handle, a hand or a shadow is in the way, choose the other side or brush it away.")})
			}
		}
		if lopsided > 0.25 {
			notes = append(notes, Note{Code: "lopsided", Measure: math.Round(lopsided * 100),
				Sentence: words.Say("The outline is far from symmetrical, so the axis is in doubt."),
				Remedy:   words.Say("Set two points on the pot's axis, or take the picture straight on.")})
		}
	} else {
		a = d.axis.grounded(d.outline)
		h = oneSide(d.outline, hidden, a)
	}
	if tilt := a.tiltDeg(); math.Abs(tilt) > 5 {
		notes = append(notes, Note{Code: "tilted", Measure: math.Round(tilt*10) / 10,
			Sentence: words.Say("The pot leans in the picture; the lean was taken out."), Remedy: words.Say("Hold the camera level.")})
	}
	h = h.even(math.Max(1, h.length()/1400))
	var optical *float64
	if row := r.Camera.OpticalRow; row != nil {
		v := a.to(pt{a.o.x, *row}).y
		optical = &v
	}
	s, more, f := settle(r, h, optical, !d.closed)
	if f != nil {
		return Result{}, f
	}
	return d.finish(r, s, a, h, residual, append(notes, more...))
}

func (d *drawn) finish(r *Request, s *settled, a axis, h half, residual float64, notes []Note) (Result, *job.Fault) {
	p, corner := s.contour()
	p, corner = thinOut(p, corner, s.height()/450)
	if len(p) < 3 {
		return Result{}, nothingFound()
	}
	tol := r.ToleranceMM
	if tol == 0 {
		tol = math.Max(0.1, math.Max(s.height()/900, 0.8*s.mm))
	}
	nodes, rms, most, ok := fitNodes(p, corner, tol)
	if !ok {
		notes = append(notes, Note{Code: "unsound", Measure: most,
			Sentence: words.Say("The outline as found is no sound profile (it may cross itself), so it was kept as straight stretches."),
			Remedy:   words.Say("Brush away what does not belong to the pot, or mend the points by hand.")})
	}
	if s.mm > 0.5 {
		notes = append(notes, Note{Code: "coarse", Measure: s.mm,
			Sentence: words.Say("A pixel is more than half a millimetre on the pot, so small curves are lost."), Remedy: words.Say("Take the picture with more pixels on the pot.")})
	}
	sym := residual * s.mm
	gaps := s.gaps
	if s.foot != nil {
		gaps = append([]Gap{{0, 0, words.Say("under the foot")}}, gaps...)
	}
	if gaps == nil {
		gaps = []Gap{}
	}
	res := Result{
		Form: job.Form{Size: r.Size, Outer: nodes, Section: job.Section{Kind: job.SectionRound}},
		Quality: Quality{RmsMM: round(rms), MaxMM: round(most), TiltDeg: round(a.tiltDeg()), SymmetryResidualMM: round(sym),
			ErrorBandMM: round(most + sym/2 + s.mm/4 + s.doubt(r.Mode)), ToleranceMM: round(tol), NotSeen: gaps, Warnings: noted(notes)},
		Outline: places(d.outline), MMPerPixel: s.mm, Camera: s.view,
	}
	for i := range gaps {
		gaps[i].ZFrom, gaps[i].ZTo = round(gaps[i].ZFrom), round(gaps[i].ZTo)
	}
	res.Camera.HeightMM = round(s.view.HeightMM - s.low)
	res.Camera.DistanceMM = round(s.view.DistanceMM)
	for _, q := range p {
		res.Contour = append(res.Contour, [2]float64{round(q.r), round(q.z)})
	}
	top := 0.0
	for _, q := range h.p {
		top = math.Max(top, q.y)
	}
	up := a.from(pt{0, top})
	res.Axis = [4]float64{a.o.x, a.o.y, up.x, up.y}
	seat := a.from(pt{0, s.low / s.mm})
	res.Seat = [2]float64{seat.x, seat.y}
	return res, nil
}

// doubt is what an unknown or roughly known camera may still falsify, mm. The
// whole perspective of a pot of radius R and height H at distance D is about
// R^2 / (2 D^2) (R + H / 2); a tenth of D wrong leaves a fifth of it. What the
// ellipses tell of distance and height is weighed by the rendered pictures of
// testdata/photos.
func (s *settled) doubt(mode string) float64 {
	if mode == ModeSketch && s.view.DistanceMM <= 0 { // a flat drawing has no perspective
		if s.single {
			return 0.015 * s.length(ScaleMaxDiameter) / 2 // a drawn axis wanders: sketch-half.png of testdata/photos, rounded up
		}
		return 0
	}
	r, h := s.length(ScaleMaxDiameter)/2, s.height()
	share, d := 0.2, s.view.DistanceMM
	switch {
	case d <= 0:
		share, d = 1, 4*math.Max(h, 2*r)
	case s.view.DistanceFrom == "ellipses":
		share = 0.5
	}
	switch s.view.HeightFrom {
	case "middle":
		share += 0.3
	case "ellipses": // less sure from far above or below
		share += 0.15 + 0.6*math.Abs(s.view.HeightMM-s.low-h/2)/h
	}
	return share * r * r / (2 * d * d) * (r + h/2)
}

// thinOut keeps corners and about one point in every step mm.
func thinOut(p []rz, corner []bool, step float64) ([]rz, []bool) {
	var q []rz
	var c []bool
	for i := range p {
		last := i == len(p)-1
		if n := len(q); corner[i] || last || n == 0 || p[i].dist(q[n-1]) >= step {
			q, c = append(q, p[i]), append(c, corner[i])
		}
	}
	return q, c
}

// brushedAway marks outline points inside or next to strokes that exclude.
func brushedAway(o []pt, strokes []Stroke) []bool {
	var out []bool
	for _, s := range strokes {
		if s.Kind != "exclude" {
			continue
		}
		if out == nil {
			out = make([]bool, len(o))
		}
		reach := s.Radius + 3
		s.walk(math.Max(s.Radius/2, 1), func(q pt) {
			for i, v := range o {
				if v.dist(q) < reach {
					out[i] = true
				}
			}
		})
	}
	return out
}

// oneSide is an open outline as a half, foot first, whichever side it is on,
// with level lines from its ends to the axis.
func oneSide(o []pt, hidden []bool, a axis) half {
	var h half
	sum := 0.0
	for _, p := range o {
		sum += a.to(p).x
	}
	for i, p := range o {
		q := a.to(p)
		h.p = append(h.p, pt{math.Max(math.Copysign(1, sum)*q.x, 0), q.y})
		h.hidden = append(h.hidden, hidden != nil && hidden[i])
	}
	n := len(h.p)
	if h.p[0].y > h.p[n-1].y {
		for i, j := 0, n-1; i < j; i, j = i+1, j-1 {
			h.p[i], h.p[j] = h.p[j], h.p[i]
			h.hidden[i], h.hidden[j] = h.hidden[j], h.hidden[i]
		}
	}
	h.p = append(append([]pt{{0, h.p[0].y}}, h.p...), pt{0, h.p[n-1].y})
	h.hidden = append(append([]bool{false}, h.hidden...), false)
	return h
}
