package exercise

import (
	"math"

	"moldwright/core/form"
)

// Marking of kind catch: every mark is classed by where it lies, and the answer
// by its worst mark and by what was missed.

// place is where a mark lies.
func (t *catchTask) place(m Mark) form.Point {
	if m.R == nil {
		p, _ := t.outermost(m.Z)
		return p
	}
	return form.Point{R: *m.R, Z: m.Z}
}

// nearest is the stretch nearest to p, and how far it is.
func nearest(list []stretch, p form.Point) (int, float64) {
	at, best := -1, math.Inf(1)
	for i := range list {
		if d := list[i].distance(p); d < best {
			at, best = i, d
		}
	}
	return at, best
}

func (t *catchTask) mark(a *Answer) Result {
	pics := pictures(t.part(), t.pull, t.list)
	way := say("pull." + pullIDs[t.pull])
	if none(a) {
		if len(t.list) == 0 {
			return result("catch", Right, "free", "pull", way)
		}
		r := result("catch", NotYet, "saidFree", "pull", way, "n", len(t.list))
		r.Pictures = pics[:1]
		return r
	}
	if len(t.list) == 0 {
		r := result("catch", NotYet, "isFree", "pull", way)
		r.Details = t.details(a, nil)
		return r
	}
	hit := make([]bool, len(t.list))
	details := t.details(a, hit)
	hits, near, first := 0, 0, -1
	for _, h := range hit {
		if h {
			hits++
		}
	}
	for i, d := range details {
		if d.Mark == Close {
			near++
		}
		if d.Mark != Right && (first < 0 || d.Mark == NotYet && details[first].Mark == Close) {
			first = i
		}
	}
	wrong := 0
	for _, d := range details {
		if d.Mark == NotYet {
			wrong++
		}
	}
	var r Result
	switch {
	case wrong > 0:
		d := details[first]
		r = Result{Mark: NotYet, Code: d.Code, Words: d.Words}
	case near > 0:
		d := details[first]
		r = Result{Mark: Close, Code: d.Code, Words: d.Words}
	case hits < len(hit):
		i := 0
		for hit[i] {
			i++
		}
		r = result("catch", Close, "missed", "n", len(hit)-hits, "of", len(hit), "pull", way)
		r.Pictures = pics[i : i+1]
	default:
		r = result("catch", Right, "all", "n", len(hit), "pull", way)
		r.Pictures = pics
	}
	r.Details = details
	return r
}

// details marks every mark, and sets hit for the stretches that are marked.
func (t *catchTask) details(a *Answer, hit []bool) []Detail {
	var out []Detail
	way := say("pull." + pullIDs[t.pull])
	contour := t.m.Pts[t.from : t.end+1]
	for i, m := range a.Marks {
		p := t.place(m)
		at, off := nearest(t.list, p)
		d := Detail{Field: "marks", Index: i, Mark: NotYet}
		switch {
		case at >= 0 && off <= t.tol:
			d.Mark, d.Code = Right, "onCatch"
			hit[at] = true
		case toLine(p, contour) > nearTol*t.tol:
			d.Code = "offWall"
		case at >= 0 && off <= nearTol*t.tol:
			d.Mark, d.Code = Close, "slightlyOff"
		case t.blocks(p):
			d.Code = "blocker"
		default:
			d.Code = "freeWall"
		}
		depth, block := 0.0, 0.0
		if at >= 0 {
			depth, block = t.list[at].depth, t.list[at].block.Z
		}
		d.Words = say("catch."+d.Code, "n", i+1, "r", p.R, "z", p.Z, "pull", way, "off", off, "depth", hundredths(depth), "block", block)
		out = append(out, d)
	}
	t.misread(a, out)
	return out
}

// misread tells where all marks are on the wall and off what catches, but catch
// for one other pull: as if another arrow had been followed.
func (t *catchTask) misread(a *Answer, out []Detail) {
	for k, list := range t.other {
		all := true
		for i, m := range a.Marks {
			_, d := nearest(list, t.place(m))
			all = all && out[i].Code == "freeWall" && d <= t.tol
		}
		if !all {
			continue
		}
		for i, m := range a.Marks {
			out[i].Code = "otherPull"
			out[i].Words = say("catch.otherPull", "n", i+1, "z", t.place(m).Z, "pull", say("pull."+pullIDs[t.pull]), "other", say("pull."+pullIDs[t.others[k]]))
		}
		return
	}
}

// blocks tells whether p is what stands in the way of a stretch.
func (t *catchTask) blocks(p form.Point) bool {
	for _, c := range t.list {
		if c.block.Dist(p) <= nearTol*t.tol {
			return true
		}
	}
	return false
}
