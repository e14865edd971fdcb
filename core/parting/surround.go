package parting

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/release"
)

// surround tells how the side parts of one number stand around the section.
type surround struct {
	turn   float64             // radians by which the section is turned to the seams
	hook   float64             // how deep they catch within a level cut, as a share of the radius
	clay   float64             // and what is left of that for the shrunken cast
	held   release.SectionHook // where they hook deepest, by azimuth from the first seam
	part   int                 // and which of them
	tables []*table            // one for each that differs from the others
	out    [][]float64         // out[j][i] is the deepest catch on 2^j spans from i
}

// turns are the ways in which a section is tried against the seams, within the
// angle after which it stands alike again.
const turns = 24

// surround settles how the section stands to the seams of n side parts and,
// where it is not round, measures the surface of each part.
func (l *ledger) surround(a *surround, n int, edges measures) {
	m := l.m
	half := math.Pi / float64(n)
	l.sides[n] = a
	if !m.Section.Round {
		unlike := lcm(m.Section.Repeats, n) / m.Section.Repeats // after so many they repeat
		a.turn, a.hook = settle(m.Section, n, unlike, l.rules.LeastDraft)
		for i := range unlike {
			mid := (2*float64(i) + 1) * half
			if a.hook > 0 {
				turned := m.Section.Turned(a.turn)
				a.clay = max(a.clay, release.Hook(turned, mid, half, l.rules.ReleaseShrinkage/100).Depth)
				if h := release.Hook(turned, mid, half, 0); h.Depth > a.held.Depth {
					a.held, a.part = h, i
				}
			}
			a.tables = append(a.tables, l.unround(release.NewSide(m.Section.Turned(a.turn), mid, half, edges.all)))
		}
	}
	if d := m.Dimples; d != nil && m.Section.Round {
		a.turn = math.Pi / float64(lcm(d.Around, n)) // as far from the seams as can be
	}
	dimples := l.dimple(way{release.Out, n, 0})
	if a.hook == 0 && len(dimples) == 0 { // the same for every number
		if l.out == nil {
			l.out = ranges(l.deepest[release.Out][:l.end])
		}
		a.out = l.out
		return
	}
	deepest := slices.Clone(l.deepest[release.Out][:l.end])
	for i := range deepest {
		deepest[i] = max(deepest[i], a.hook*max(m.Pts[i].R, m.Pts[i+1].R))
	}
	for _, e := range dimples {
		deepest[e.on.Span] = max(deepest[e.on.Span], e.catch.Depth)
	}
	a.out = ranges(deepest)
}

// settle turns the section so that n side parts, so many of them unlike, hook
// least, and then so that an upright wall rubs least. The directions in which parts look
// at a section that is turned in equal steps are few: they lie on a grid of such steps,
// the section repeats, and it is its own mirror image.
func settle(s *form.Section, n, unlike int, leastDraft float64) (turn, hook float64) {
	half := math.Pi / float64(n)
	hook = math.Inf(1)
	common := lcm(s.Repeats, n)
	step := 2 * math.Pi / float64(common*turns)
	around := turns * common / s.Repeats // steps after which the section repeats
	type look struct {
		hook, share float64
		hooks, rubs bool // whether these are known
	}
	looks := make([]look, around/2+1)
	at := func(i, k int) (*look, float64) { // part i at the turn k
		d := (((2*i+1)*turns*common/(2*n)-k)%around + around) % around
		d = min(d, around-d)
		return &looks[d], float64(d) * step
	}
	upright := release.NewUpright(half, leastDraft)
	rub := math.Inf(1)
	for k := range turns {
		deep := 0.0
		for i := 0; i < unlike && deep < hook+1e-6; i++ {
			l, mid := at(i, k)
			if !l.hooks {
				l.hook, l.hooks = release.Hook(s, mid, half, 0).Depth, true
			}
			deep = max(deep, l.hook)
		}
		if deep < 1e-6 {
			deep = 0
		}
		if deep >= hook+1e-6 {
			continue
		}
		share := 0.0
		for i := range unlike {
			l, mid := at(i, k)
			if !l.rubs {
				l.share, l.rubs = upright.Share(s, mid), true
			}
			share += l.share
		}
		if deep < hook-1e-6 || share < rub-1e-6 {
			turn, hook, rub = float64(k)*step, deep, share
		}
	}
	return turn, hook
}

// sectionCatch is how n side parts hook within the section on spans a to b-1.
func (l *ledger) sectionCatch(n, a, b int) (Catch, bool) {
	hook, clay := l.sides[n].hook, l.sides[n].clay
	if hook == 0 {
		return Catch{}, false
	}
	c := Catch{ZFrom: math.Inf(1), ZTo: math.Inf(-1)}
	for i := a; i <= b; i++ {
		p := l.m.Pts[i]
		c.ZFrom, c.ZTo = min(c.ZFrom, p.Z), max(c.ZTo, p.Z)
		if d := hook * p.R; d > c.Depth {
			c.Depth, c.AtZ, c.AtR, c.BlockedAtZ, c.BlockedAtR = d, p.Z, p.R, p.Z, p.R
		}
	}
	c.ClayDepth = clay * c.AtR
	c.ClayForgives = c.ClayDepth <= CatchDepth
	return c, c.Depth > CatchDepth
}

func lcm(a, b int) int {
	x, y := a, b
	for y != 0 {
		x, y = y, x%y
	}
	return a / x * b
}

// extra is a catch that the half-plane does not show: in a dimple.
type extra struct {
	row   int
	on    release.Stretch // what the dimples reach of the span
	catch Catch
	// held is how the dimple catches that does so deepest, in the pot's own azimuth;
	// nil on spans beside its middle. part is the side part that holds it.
	held *release.DimpleCatch
	part int
}

// dimple finds how deep the dimples of the wall catch under a way, by row; for side
// parts the worst over all of them (release.DimpleHook). A row reaches as far along
// the wall as its balls do there. On spans beside its middle it catches no deeper than
// it is there, which counts for a part that holds only that side of it.
//
// Plaster in a dimple comes free toward where the wall looks, across the pull, past
// the rim that lies farthest along the pull; the cast takes that rim along as it draws
// together toward its axis (release.DimpleCatch.Away).
func (l *ledger) dimple(w way) []extra {
	d := l.m.Dimples
	if d == nil {
		return nil
	}
	var out []extra
	shrunk := l.rules.ReleaseShrinkage / 100
	if l.wall == nil {
		l.wall = form.NewWall(l.m.Pts, l.m.Section)
	}
	for row, z := range d.Heights {
		span, at := l.m.Outermost(z)
		if span < 0 || span >= l.end {
			continue
		}
		middle := form.Point{R: at, Z: z}
		s := l.wall.Arc[span] + l.m.Pts[span].Dist(middle)
		a := (l.m.Spans[span].A0 + l.m.Spans[span].A1) / 2
		depth, clay := 0.0, 0.0
		known := map[float64]release.DimpleCatch{} // on a round wall, by the azimuth from the pull
		var held *release.DimpleCatch
		part := 0
		for k := range d.Around { // they stand evenly
			az := 2 * math.Pi * float64(k) / float64(d.Around)
			pull, off := form.Vec3{0, 0, 1}, 0.0
			switch w.pull {
			case release.Down:
				pull[2] = -1
			case release.Out:
				sector := 2 * math.Pi / float64(w.sides)
				off = math.Remainder(az+l.sides[w.sides].turn-sector/2, sector)
				sin, cos := math.Sincos(az - off)
				pull = form.Vec3{cos, sin, 0}
				off = math.Abs(off)
			}
			like := math.Round(off * 1e9)
			hook, ok := known[like]
			if !ok || !l.m.Section.Round {
				ball := form.NewBall(l.wall, s, az, a, d.Diameter, d.Depth)
				hook = release.DimpleHook(l.wall, &ball, a, pull)
				known[like] = hook
			}
			if hook.Depth > depth {
				depth, held = hook.Depth, &hook
				if w.pull == release.Out {
					sector := 2 * math.Pi / float64(w.sides)
					part = int(math.Floor(math.Mod(az+l.sides[w.sides].turn+2*math.Pi, 2*math.Pi) / sector))
				}
			}
			clay = max(clay, hook.Depth-hook.Away(shrunk))
		}
		if depth <= release.Free {
			continue
		}
		ball := form.NewBall(l.wall, s, 0, a, d.Diameter, d.Depth)
		up, _ := ball.Rim(l.wall, s, 0, 1, 0, 2.5*ball.Radius)
		down, _ := ball.Rim(l.wall, s, 0, -1, 0, 2.5*ball.Radius)
		low, high := l.wall.At(s-down).Z, l.wall.At(s+up).Z
		put := func(span int, depth, clay float64, held *release.DimpleCatch) {
			if w.pull != release.Out {
				l.deepest[w.pull][span] = max(l.deepest[w.pull][span], depth)
			}
			from, long := l.wall.Arc[span], l.wall.Arc[span+1]-l.wall.Arc[span]
			on := release.Stretch{Span: span, From: max(0, (s-down-from)/long), To: min(1, (s+up-from)/long)}
			out = append(out, extra{row, on, Catch{ZFrom: min(low, high), ZTo: max(low, high), Depth: depth, ClayDepth: clay, ClayForgives: clay <= CatchDepth,
				AtZ: z, AtR: at, BlockedAtZ: z, BlockedAtR: at}, held, part})
		}
		put(span, depth, clay, held)
		sin, cos := math.Sincos(a)
		for _, way := range [2]int{-1, 1} {
			for i := span + way; i >= 0 && i < l.end; i += way {
				edge := i + (1-way)/2 // its nearer end
				if x := l.wall.Arc[edge] - s; x >= up || -x >= down {
					break
				}
				p := l.m.Pts[edge].Sub(middle) // along the wall in the middle, and outward of it
				along, out := p.R*cos+p.Z*sin, p.R*sin-p.Z*cos
				if deep := out + math.Sqrt(max(0, ball.Radius*ball.Radius-along*along)) - (ball.Radius - d.Depth); deep > release.Free {
					deep = min(depth, deep)
					put(i, deep, max(0, deep-(depth-clay)), nil)
				}
			}
		}
	}
	l.extra[w] = out
	return out
}
