package tooling

// What a side part is poured on. The tray lies with the pull upward: it holds
// the pot's surface and both seam faces, and is open at the back, where the
// plaster is struck off flat. Its ends are closed by boards in the planes of
// the level seams, which carry their natches, and its sides by boards that lie
// against the tray's flanks and carry the ribs of the strap grooves. Boards are
// taken off across their faces, so they rub nowhere.
//
// In the frame of a side part u runs along the pull, v across it, z up.

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// Measures of trays and boards, mm; common practice, no source.
const (
	trayFloor = 6.0  // under the axis
	flank     = 10.0 // how far a side board laps over the tray's flank
	boardWall = 5.0
	ledge     = 6.0 // of an end board, outside the side boards: height, and twice the width
)

// tray is the tray of a side part, or one of its boards.
type tray struct {
	md     *mold.Mold
	p      *mold.Part
	half   float64 // of the sector, degrees
	mid    float64 // azimuth of the pull
	lo, hi float64 // the part's ends
	// sines and cosines of half and mid, which every point asks for
	sinHalf, cosHalf, sinMid, cosMid float64
	// from and to are the ends of this piece of the tray or board; w is the side
	// of the middle that it lies on, +v 1, -v -1, or 0 for both.
	from, to float64
	w        float64
	clear    float64 // of keys in their sockets
	unmarked bool    // a joint takes the place of the mark on the flanks
	markOff  float64 // of the mark from the middle of the flank, along the pull
	markAt   float64 // and along the axis
	whole    *uncut
	glyphs   []glyph // of the mark, and how wide they are
	wide     float64
}

// newTray is the tray of a side part; past is how far in mm the pot's surface
// reaches past the part's ends, where it does. Then the part fills a recess beyond
// its level seam, as that of a foot: the pot stands all round what is in there, so
// that the part is held along its pull, by whatever it is poured on.
func newTray(j *job.Job, md *mold.Mold, p *mold.Part) (t *tray, past float64) {
	t = &tray{clear: j.Printer.Clearance, md: md, p: p, half: (p.Sector[1] - p.Sector[0]) / 2, mid: (p.Sector[0] + p.Sector[1]) / 2}
	t.sinHalf, t.cosHalf = solid.SinCosDeg(t.half)
	t.sinMid, t.cosMid = solid.SinCosDeg(t.mid)
	t.lo, t.hi = math.Inf(1), math.Inf(-1)
	for _, q := range p.Outline[p.Pot+1:] {
		t.lo, t.hi = math.Min(t.lo, q.Z), math.Max(t.hi, q.Z)
	}
	for _, q := range p.Outline[:p.Pot+1] {
		past = math.Max(past, math.Max(t.lo-q.Z, q.Z-t.hi))
	}
	t.from, t.to = t.lo, t.hi
	t.glyphs, t.wide = lettering(mold.Letter(p.Name) + "^")
	return t, past
}

// at is a point of the frame of the part, in the mold.
func (t *tray) at(u, v, z float64) solid.Vec {
	return solid.Vec{u*t.cosMid - v*t.sinMid, u*t.sinMid + v*t.cosMid, z}
}

// edge is the outer edge of a seam face in plan, on the side of +v; flankFoot
// lies on the plane of the side board below it, and the floor at depth u.
func (t *tray) edge() (u, v float64) {
	return t.md.Block.R * t.cosHalf, t.md.Block.R * t.sinHalf
}

// along is the direction of the side board in plan, towards the back.
func (t *tray) along() (u, v float64) {
	return t.sinHalf, -t.cosHalf
}

// floor is the depth of the tray's underside: below the side boards there is
// room for a mark.
func (t *tray) floor() float64 {
	u, _ := t.edge()
	du, _ := t.along()
	return math.Min(-trayFloor, u-flank*du-bandLeast)
}

// side is the half of the tray's section in plan from the seam's edge to the
// floor: where the flank ends and where it meets the floor.
func (t *tray) side() (foot, ground [2]float64) {
	u, v := t.edge()
	du, dv := t.along()
	foot = [2]float64{u - flank*du, v - flank*dv}
	return foot, [2]float64{t.floor(), foot[1]}
}

// line is the pot's contour that the tray holds, upward. Level stretches in the
// planes of its ends belong to the ends.
func (t *tray) line() []form.Point {
	line := make([]form.Point, 0, t.p.Pot+1)
	for k := t.p.Pot; k >= 0; k-- {
		line = append(line, t.p.Outline[k])
	}
	if line[0].Z > t.lo && line[0].R == 0 { // plaster under the foot: the tray reaches the axis
		line = append([]form.Point{{R: 0, Z: t.lo}}, line...)
	}
	for len(line) > 2 && line[0].Z == t.lo && line[1].Z == t.lo {
		line = line[1:]
	}
	for n := len(line); n > 2 && line[n-1].Z == t.hi && line[n-2].Z == t.hi; n-- {
		line = line[:n-1]
	}
	return line
}

// piece is the stretch of the line that this piece of the tray holds.
func (t *tray) piece() []form.Point {
	line := t.line()
	out := make([]form.Point, 0, len(line))
	for i, q := range line {
		if i > 0 {
			a := line[i-1]
			for _, z := range [2]float64{t.from, t.to} {
				if (a.Z-z)*(q.Z-z) < 0 {
					out = append(out, form.Point{R: a.Lerp(q, (z-a.Z)/(q.Z-a.Z)).R, Z: z})
				}
			}
		}
		if q.Z >= t.from && q.Z <= t.to {
			out = append(out, q)
		}
	}
	return out
}

// volume of the tray in ml: the prism under its seam planes and the sector of
// the pot.
func (t *tray) volume() float64 {
	u, v := t.edge()
	foot, ground := t.side()
	half := [][2]float64{{0, 0}, {u, v}, foot, ground, {ground[0], 0}}
	area := math.Abs(loopArea(half))
	sector := *t.p.Sector
	if t.w == 0 {
		area *= 2
	} else if t.w > 0 {
		sector[0] = t.mid
	} else {
		sector[1] = t.mid
	}
	pot := 0.0
	line := t.piece()
	for k := 1; k < len(line); k++ {
		a, c := line[k-1], line[k]
		pot += (a.R*a.R + a.R*c.R + c.R*c.R) * (c.Z - a.Z) * math.Pi / 3
	}
	return (area*(t.to-t.from)+pot*(sector[1]-sector[0])/360*t.md.SectionShare(&sector))/1000 - t.md.DimpleVolume(&sector, t.from, t.to)
}

// sideways is how far a point in the mold lies across the pull.
func (t *tray) sideways(p solid.Vec) float64 {
	return p[1]*t.cosMid - p[0]*t.sinMid
}

// back is how far from the axis the plaster reaches along the pull, with what
// the boards stand above it.
func (t *tray) back() float64 { return t.md.Block.R + freeboard }

// corners are those of this piece of the tray that may lie outermost.
func (t *tray) corners() []solid.Vec {
	u, v := t.edge()
	foot, ground := t.side()
	so := t.md.Solids()
	first, last := t.steps(so)
	out := make([]solid.Vec, 0, last-first+120) // nearly always enough
	for _, z := range [2]float64{t.from, t.to} {
		out = append(out, t.at(ground[0], 0, z))
		for _, w := range [2]float64{-1, 1} {
			if t.w != -w {
				out = append(out, t.at(u, w*v, z), t.at(foot[0], w*foot[1], z), t.at(ground[0], w*ground[1], z))
			}
		}
	}
	var widest form.Point
	for _, q := range t.piece() {
		if q.R > widest.R {
			widest = q
		}
	}
	for k := first; k <= last; k++ {
		out = append(out, so.Place(widest.R, widest.Z, k))
	}
	for _, w := range [2]float64{-1, 1} {
		if t.w == -w {
			continue
		}
		if s, ok := t.flankSign(w); ok {
			out = s.corners(out)
		}
		for _, n := range t.natchesOn(w) { // across the seam face, out of the plaster
			if h := solid.DomeHeight(n.Radius, n.HalfAngle); n.Socket {
				out = append(out, t.at(n.At.R*t.cosHalf+h*t.sinHalf, w*(n.At.R*t.sinHalf-h*t.cosHalf), n.At.Z))
			}
		}
	}
	if t.w < 0 {
		for _, k := range t.middleKeys() {
			out = append(out, t.at(k.at[0], k.radius, k.at[1]))
		}
	}
	for _, k := range t.endKeys(t.to) {
		out = append(out, t.at(k.at[0], k.at[1], t.to+k.radius))
	}
	return out
}

// measured is this piece of the tray with its size and weight.
func (t *tray) measured(j *job.Job, p Piece) Piece {
	p.build = t.build
	p.measure(j, t.corners(), t.volume())
	p.Overhang = t.overhang()
	p.unkeyed = len(t.middleKeys())+len(t.endKeys(t.from))+len(t.endKeys(t.to)) == 0
	return p
}
