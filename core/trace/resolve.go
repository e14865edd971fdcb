// From pixels to mm. The scale, the camera and the profile hang together: the
// known length holds for the true profile, the perspective for true lengths.
// A few rounds settle them.

package trace

import (
	"math"
	"slices"

	"moldwright/core/job"
	"moldwright/core/words"
)

// settled is a half outline brought to mm.
type settled struct {
	mm      float64 // per pixel
	view    Viewpoint
	runs    []run
	foot    *rz // the edge of the foot; nil where the bottom is round
	rim     *rz // the edge of the rim; nil where the top closes
	low     float64
	gaps    []Gap
	topOpen bool
	single  bool
}

// rz is a point of the profile, mm.
type rz struct{ r, z float64 }

func (p rz) dist(q rz) float64 { return math.Hypot(p.r-q.r, p.z-q.z) }

// settle finds scale and camera and inverts the outline. optical is the height
// of the lens in pixels above the half's lowest point, where a row gave it; single
// tells that the half was one line, whose ends show no ellipses.
func settle(r *Request, h half, optical *float64, single bool) (*settled, []Note, *job.Fault) {
	flat := r.Camera.flattest()
	foot, top := findArc(h.p, false, flat), findArc(h.p, true, flat)
	open := top.edge
	switch r.Top {
	case TopOpen:
		open = true
	case TopClosed:
		open = false
	}
	lowest, highest, widest := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range h.p {
		lowest, highest, widest = min(lowest, p.y), max(highest, p.y), max(widest, p.x)
	}
	tall := highest - lowest
	if tall < 8 || widest < 4 {
		return nil, nil, job.Faultf("pictureTooSmall", "", "The pot is only %.0f pixels high in the picture; take it larger, 500 or more.", tall)
	}
	s := &settled{topOpen: open, single: single}
	what := r.Scale.What
	if what == "" || !(r.Scale.MM > 0) {
		return nil, nil, job.Faultf("noScale", "scale", "No length is known; give the pot's height, its widest diameter, the rim's diameter or a bar in the picture, in mm.")
	}
	switch what {
	case ScaleHeight:
		s.mm = r.Scale.MM / tall
	case ScaleMaxDiameter:
		s.mm = r.Scale.MM / (2 * widest)
	case ScaleRimDiameter:
		if !open {
			return nil, nil, job.Faultf("noRim", "scale.what", "The rim is given as scale, but the top of the pot seems closed; say that it is open, or give another length.")
		}
		s.mm = r.Scale.MM / (2 * math.Max(h.p[len(h.p)-1-top.end].x, 1))
	case ScaleBar:
		l := math.Hypot(r.Scale.X1-r.Scale.X0, r.Scale.Y1-r.Scale.Y0)
		if !(l > 0) {
			return nil, nil, job.Faultf("badValue", "scale", "The two ends of the bar lie on top of one another; set them at its ends.")
		}
		s.mm = r.Scale.MM / l
	default:
		return nil, nil, job.Faultf("badValue", "scale.what", "scale.what is %q; it takes height, maxDiameter, rimDiameter or bar.", what)
	}
	bar := s.mm
	pieces := breakRuns(h, foot, top, open)
	if len(pieces) == 0 {
		return nil, nil, nothingFound()
	}
	var notes []Note
	for round := range 8 {
		notes = s.lookFrom(r, foot, top, tall, optical, open)
		if what == ScaleBar && s.view.DistanceMM > 0 {
			s.mm = bar / math.Max(0.1, 1-r.Scale.InFrontMM/s.view.DistanceMM)
		}
		s.invert(pieces, foot, top)
		if what == ScaleBar {
			if round > 2 {
				break
			}
			continue
		}
		got := s.length(what)
		if !(got > 0) {
			return nil, nil, nothingFound()
		}
		f := math.Max(0.5, math.Min(2, r.Scale.MM/got))
		s.mm *= f
		if math.Abs(f-1) < 1e-7 && round > 1 {
			break
		}
	}
	if h := s.height(); h < 2 || h > 5000 {
		return nil, nil, job.Faultf("absurdSize", "scale.mm", "With this scale the pot would be %.2f mm high; check the known length and its units.", h)
	}
	return s, notes, nil
}

// height is foot to top, mm.
func (s *settled) height() float64 { return s.length(ScaleHeight) }

// length is the profile's own value for a known length.
func (s *settled) length(what string) float64 {
	high, wide := math.Inf(-1), 0.0
	for _, n := range s.runs {
		for _, p := range n.p {
			high, wide = math.Max(high, p.z), math.Max(wide, p.r)
		}
	}
	for _, e := range []*rz{s.foot, s.rim} {
		if e != nil {
			high, wide = math.Max(high, e.z), math.Max(wide, e.r)
		}
	}
	if n := len(s.runs); n > 0 && !s.topOpen {
		last := slices.Clone(s.runs[n-1].p)
		slices.Reverse(last)
		high = math.Max(high, onAxis(last))
	}
	switch what {
	case ScaleHeight:
		return high - s.low
	case ScaleMaxDiameter:
		return 2 * wide
	}
	if s.rim == nil {
		return 0
	}
	return 2 * s.rim.r
}

// lookFrom sets the camera for the present scale.
func (s *settled) lookFrom(r *Request, foot, top arc, tallPx float64, optical *float64, open bool) []Note {
	var notes []Note
	tall := tallPx * s.mm
	if len(s.runs) > 0 {
		tall = s.height() // without what the ellipses bulge
	}
	v := Viewpoint{DistanceFrom: "none", HeightFrom: "none"}
	defer func() { s.view = v }()
	rim := open && top.edge && top.b > 1.5
	base := foot.edge && foot.b > 1.5
	switch {
	case r.Camera.DistanceMM != nil:
		v.DistanceMM, v.DistanceFrom = *r.Camera.DistanceMM, "given"
	case r.Camera.FocalPixels != nil:
		v.DistanceMM, v.DistanceFrom = *r.Camera.FocalPixels*s.mm, "focal"
	case rim && base:
		// seen from between rim and foot, the two offsets add up to the height;
		// each is nearly in proportion to the distance
		d := 5 * tall
		for range 6 {
			qf, _ := foot.offset(s.mm, d)
			qr, _ := top.offset(s.mm, d)
			if qf+qr <= 0 {
				break
			}
			d *= tall / (qf + qr)
		}
		if d > 2*tall && d < 40*tall {
			v.DistanceMM, v.DistanceFrom = d, "ellipses"
		}
	}
	if v.DistanceMM <= 0 {
		if r.Mode == ModeSketch { // a flat drawing has no perspective of its own
			return notes
		}
		notes = append(notes, Note{Code: "noDistance",
			Sentence: words.Say("The distance of the camera is not known, so perspective stays in: widths near the lens's height come out too large."),
			Remedy:   words.Say("Measure from the lens to the middle of the pot, roughly, and type it.")})
		return notes
	}
	if v.DistanceMM < 1.2*foot.a*s.mm || v.DistanceMM < 0.8*tall {
		v.DistanceMM = math.Max(1.2*foot.a*s.mm, 0.8*tall)
		notes = append(notes, Note{Code: "tooNear", Measure: v.DistanceMM,
			Sentence: words.Say("The camera distance is less than the pot's own size."),
			Remedy:   words.Say("Check the distance and its units; it runs from the lens to the middle of the pot.")})
	}
	d := v.DistanceMM
	switch {
	case r.Camera.HeightMM != nil:
		v.HeightFrom = "given"
		v.HeightMM = *r.Camera.HeightMM
		if foot.edge {
			rad := foot.a * s.mm
			v.HeightMM = foot.mid*s.mm + v.HeightMM*d/math.Max(d-rad, d/10)
		}
	case optical != nil:
		v.HeightFrom = "row"
		v.HeightMM = *optical * s.mm
	case base || rim:
		v.HeightFrom = "ellipses"
		var sum, weight float64
		if base {
			_, c := foot.offset(s.mm, d)
			sum, weight = sum+(foot.centre*s.mm+c)*foot.a, weight+foot.a
		}
		if rim {
			_, c := top.offset(s.mm, d)
			z := top.centre*s.mm - c
			if base && math.Abs(top.centre*s.mm+c-sum/weight) < math.Abs(z-sum/weight) {
				z = top.centre*s.mm + c // seen from above the rim
			}
			sum, weight = sum+z*top.a, weight+top.a
		}
		v.HeightMM = sum / weight
	case foot.edge || (open && top.edge):
		// an edge seen as a straight line is level with the lens
		v.HeightFrom = "ellipses"
		v.HeightMM = top.centre * s.mm
		if !(open && top.edge) || (foot.edge && foot.b < top.b) {
			v.HeightMM = foot.centre * s.mm
		}
	default:
		v.HeightFrom = "middle"
		v.HeightMM = tall / 2
		notes = append(notes, Note{Code: "noCameraHeight", Measure: tall / 2,
			Sentence: words.Say("The height of the lens is not known and neither rim nor foot shows it; half the pot's height is taken."),
			Remedy:   words.Say("Measure from the table up to the lens, and type it.")})
	}
	return notes
}
