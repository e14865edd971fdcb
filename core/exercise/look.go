package exercise

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/parting"
	"moldwright/core/release"
	"moldwright/core/words"
)

// look is a job's form as the planner sees it: the one judge of every answer.
// All lengths are mm at mold size, heights above the lowest place of the foot.
type look struct {
	job    *job.Job
	name   words.Text // of the pot
	m      *form.Meridian
	end    int // the contour ends at this point of the meridian
	s      *release.Survey
	rules  parting.Rules
	height float64
	maxR   float64
}

// lookAt surveys the job's form, with points at the heights. Errors are
// job.Faults.
func lookAt(j *job.Job, heights ...float64) (*look, error) {
	m, err := form.Build(j)
	if err != nil {
		return nil, err
	}
	m.Cut(heights)
	l := &look{job: j, name: words.Plain(j.Name), m: m, end: len(m.Pts) - 1, rules: parting.RulesOf(j)}
	l.height, l.maxR = m.Extent()
	if m.Closed {
		l.end = m.CutMouth(mold.MouthRadius(j, l.maxR))
	}
	l.s = release.New(m)
	if len(heights) == 0 {
		l.s, l.end = parting.CutBetween(l.s, l.end, l.rules, parting.Wanted{})
	}
	return l, nil
}

// pot is the pot's name.
func (l *look) pot() words.Text { return l.name }

// judge judges every scheme; heights, if any, bind those with as many seams.
func (l *look) judge(heights ...float64) []parting.Scheme {
	return parting.Judge(l.s, l.end, l.rules, parting.Wanted{Heights: heights})
}

// foot is the point of the meridian at the outer edge of the foot: the last of
// the lowest.
func (l *look) foot() int {
	low := 0
	for i, p := range l.m.Pts[:l.end] {
		if p.Z <= l.m.Pts[low].Z+1e-6 {
			low = i
		}
	}
	return low
}

// stretch is a run of the contour whose plaster catches.
type stretch struct {
	pts   []form.Point
	depth float64    // mm, at the deepest
	at    form.Point // of the deepest
	block form.Point // what stands in its way
}

// caught are the stretches between points a and b of the meridian that catch
// for the pull, those no deeper than what counts left out.
func (l *look) caught(pull release.Pull, a, b int) []stretch {
	var out []stretch
	var c stretch
	shut := func() {
		if c.depth > parting.CatchDepth {
			out = append(out, c)
		}
		c = stretch{}
	}
	for _, s := range l.s.All(pull) {
		if s.Span < a || s.Span >= b {
			continue
		}
		if s.Depth <= release.Free {
			shut()
			continue
		}
		c.pts = append(c.pts, s.P)
		if s.Depth > c.depth {
			c.depth, c.at, c.block = s.Depth, s.P, s.Block
		}
	}
	shut()
	return out
}

// deepest is the depth of the deepest of the stretches, 0 where there is none.
func deepest(list []stretch) float64 {
	d := 0.0
	for _, c := range list {
		d = math.Max(d, c.depth)
	}
	return d
}

// zRange is the lowest and the highest place of the stretch.
func (c *stretch) zRange() (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for _, p := range c.pts {
		from, to = math.Min(from, p.Z), math.Max(to, p.Z)
	}
	return from, to
}

// length is mm along the contour.
func (c *stretch) length() float64 {
	d := 0.0
	for i := 1; i < len(c.pts); i++ {
		d += c.pts[i].Dist(c.pts[i-1])
	}
	return d
}

// middle is the place halfway along.
func (c *stretch) middle() form.Point {
	left := c.length() / 2
	for i := 1; i < len(c.pts); i++ {
		d := c.pts[i].Dist(c.pts[i-1])
		if d > 0 && left <= d {
			return c.pts[i-1].Lerp(c.pts[i], left/d)
		}
		left -= d
	}
	return c.pts[len(c.pts)/2]
}

// distance is from p to the nearest place of the stretch, mm.
func (c *stretch) distance(p form.Point) float64 { return toLine(p, c.pts) }

// toLine is the distance from p to a polyline, mm.
func toLine(p form.Point, line []form.Point) float64 {
	best := math.Inf(1)
	if len(line) > 0 {
		best = p.Dist(line[0])
	}
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		d := b.Sub(a)
		if n := d.R*d.R + d.Z*d.Z; n > 0 {
			e := p.Sub(a)
			t := min(max((e.R*d.R+e.Z*d.Z)/n, 0), 1)
			best = math.Min(best, p.Dist(a.Lerp(b, t)))
		}
	}
	return best
}

// share is the percent of the contour's surface from point a to b with less
// than the least draft for the pull, and the least draft there, degrees.
func (l *look) share(pull release.Pull, sides, a, b int) (percent, least float64) {
	edges := release.NewEdges(l.rules.LeastDraft)
	sum := make([]float64, 1)
	area := 0.0
	least = 90
	for i := a; i < b; i++ {
		v, d := release.SpanSurface(l.m, i, pull, sides, edges, sum)
		area += v
		least = math.Min(least, d)
	}
	if area > 0 {
		percent = 100 * sum[0] / area
	}
	return percent, least
}

// outermost is the outermost place of the contour at height z.
func (l *look) outermost(z float64) (form.Point, bool) {
	best, ok := form.Point{R: -1, Z: z}, false
	for i := 1; i <= l.end; i++ {
		p, q := l.m.Pts[i-1], l.m.Pts[i]
		if (p.Z-z)*(q.Z-z) > 0 {
			continue
		}
		r := math.Max(p.R, q.R)
		if p.Z != q.Z {
			r = p.R + (z-p.Z)/(q.Z-p.Z)*(q.R-p.R)
		}
		if r > best.R {
			best.R, ok = r, true
		}
	}
	return best, ok
}

// drawing is the form, with the layers that may be shown.
func (l *look) drawing(show ...string) Drawing {
	return Drawing{Contour: points(l.m.Pts[:l.end+1]), Closed: l.m.Closed, Turned: l.m.Turned,
		Height: micron(l.height), MaxRadius: micron(l.maxR), Show: append([]string{"form", "ruler"}, show...)}
}

// The three pulls: their ids and arrows in the half-plane.
var pullIDs = [3]string{release.Down: "down", release.Up: "up", release.Out: "out"}

var pullVectors = [3][3]float64{release.Down: {0, 0, -1}, release.Up: {0, 0, 1}, release.Out: {1, 0, 0}}

func arrow(pull release.Pull) *Pulled {
	id := pullIDs[pull]
	return &Pulled{ID: id, Vector: pullVectors[pull], Words: say("pull." + id)}
}

// micron rounds mm to a thousandth.
func micron(v float64) float64 { return math.Round(v*1000)/1000 + 0 }

// tenth rounds to a tenth.
func tenth(v float64) float64 { return math.Round(v*10)/10 + 0 }

// Picture is what sticks: the plaster that is held, what holds it, and for
// which part and pull. Lengths are mm at mold size.
type Picture struct {
	Part    string       `json:"part"` // lower, upper, side, or the id of a given part
	Pull    [3]float64   `json:"pull"`
	PullID  string       `json:"pullId"`
	R       float64      `json:"r"` // the deepest place held
	Z       float64      `json:"z"`
	BlockR  float64      `json:"blockR"` // the pot that holds it
	BlockZ  float64      `json:"blockZ"`
	Depth   float64      `json:"depth"`
	ZFrom   float64      `json:"zFrom"`
	ZTo     float64      `json:"zTo"`
	Stretch [][2]float64 `json:"stretch"` // the contour that catches
	Words   words.Text   `json:"words"`
}

func (c *stretch) picture(part string, pull release.Pull) Picture {
	from, to := c.zRange()
	p := Picture{Part: part, Pull: pullVectors[pull], PullID: pullIDs[pull],
		R: micron(c.at.R), Z: micron(c.at.Z), BlockR: micron(c.block.R), BlockZ: micron(c.block.Z),
		Depth: micron(c.depth), ZFrom: micron(from), ZTo: micron(to), Stretch: points(c.pts)}
	p.Words = say("picture", "part", say("part."+part), "pull", say("pull."+pullIDs[pull]),
		"from", from, "to", to, "depth", hundredths(c.depth), "block", c.block.Z)
	return p
}

// pictures are those of all stretches.
func pictures(part string, pull release.Pull, list []stretch) []Picture {
	out := []Picture{}
	for i := range list {
		out = append(out, list[i].picture(part, pull))
	}
	return out
}

// schemePicture is the deepest catch of a scheme.
func (l *look) schemePicture(s *parting.Scheme) (Picture, bool) {
	var best Picture
	for _, r := range [3]struct {
		part string
		pull release.Pull
		a, b int
		on   bool
	}{
		{"lower", release.Down, 0, s.K1, s.Lower},
		{"side", release.Out, s.K1, s.K2, s.Sides > 0},
		{"upper", release.Up, s.K2, l.end, s.Upper},
	} {
		if !r.on {
			continue
		}
		for _, c := range l.caught(r.pull, r.a, r.b) {
			if c.depth > best.Depth {
				best = c.picture(r.part, r.pull)
			}
		}
	}
	return best, best.Depth > 0
}
