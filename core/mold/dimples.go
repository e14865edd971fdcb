package mold

// Where the dimples of the wall lie in one mold. Each dimple gets a block of
// the wall's grid: rows of the contour from lo to hi, and columns of the azimuth
// table. Within the block the grid's rings and columns are bent to circles about
// a centre (dimplemesh.go), so that the rim runs along grid lines and every
// solid keeps its grid. The column and the row through the centre stay straight:
// a seam that crosses a dimple is made that column or row. A row of dimples that
// no such grid can be laid on is left out, and said.

import (
	"cmp"
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/job"
)

// Measures of the blocks: share of the rim's reach that a block goes on beyond
// it, least gap in mm between a rim and what bounds its block, how near to the
// rim a straight line may cross, the most vertices of all rows, the most cells
// beyond a rim, and the turn of the wall from which it has an edge.
const (
	blockRoom   = 0.3
	dimpleGap   = 0.15
	lineShare   = 0.9
	mostDimpled = 1_000_000
	mostRoom    = 24
	leastEdge   = 2 * math.Pi / 180
)

// hollows are the dimples of a form, whatever its mold.
type hollows struct {
	job.Dimples
	wall    *form.Wall // its section not turned
	corners []float64  // mm along the wall
	rows    []hollowRow
	left    []float64 // heights of rows for which the wall has no room
}

// hollowRow is a row of dimples: of one ball on a round form, of one for each
// dimple on another.
type hollowRow struct {
	z, s, tangent  float64
	up, down, side float64 // reach of the rims: mm along the wall, radians
	least          float64 // of the sides of any ball, radians
	balls          []form.Ball
	taken          []float64 // mm3, by ball
}

// newHollows measures the dimples of a form whose wall ends at point end.
func newHollows(m *form.Meridian, end int) *hollows {
	if m.Dimples == nil {
		return nil
	}
	h := &hollows{Dimples: *m.Dimples, wall: form.NewWall(m.Pts[:end+1], m.Section)}
	for i := range h.wall.Pts {
		if i > 0 && i < end && m.Corner[i] && math.Abs(math.Remainder(m.Spans[i].A0-m.Spans[i-1].A1, 2*math.Pi)) > leastEdge {
			h.corners = append(h.corners, h.wall.Arc[i])
		}
	}
	total := h.wall.Arc[end]
	for _, z := range h.Heights {
		span, r := m.Outermost(z)
		if span < 0 || span >= end {
			h.left = append(h.left, z)
			continue
		}
		row := hollowRow{z: z, s: h.wall.Arc[span] + m.Pts[span].Dist(form.Point{R: r, Z: z}), tangent: (m.Spans[span].A0 + m.Spans[span].A1) / 2}
		n := h.Around
		if m.Section.Round {
			n = 1
		}
		ok := true
		row.least = math.Inf(1)
		for k := range n {
			side := 0.0
			b := h.ball(h.wall, &row, 2*math.Pi*float64(k)/float64(h.Around))
			const directions = 32
			for i := range directions {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / directions)
				t, in := b.Rim(h.wall, b.S, b.Azimuth, sin, cos/r, h.Diameter)
				ok = ok && in
				row.up, row.down, side = max(row.up, t*sin), max(row.down, -t*sin), max(side, t*cos/r)
			}
			row.side, row.least = max(row.side, side), min(row.least, side)
			row.balls = append(row.balls, b)
			row.taken = append(row.taken, b.Taken(h.wall, math.Inf(-1), math.Inf(1), 0, 2*math.Pi))
		}
		reach := math.Hypot(row.balls[0].Centre[0], row.balls[0].Centre[1]) - row.balls[0].Radius
		if !ok || reach < 1 || row.s-row.down < dimpleGap || row.s+row.up > total-dimpleGap || row.side > 0.97*math.Pi/float64(h.Around) {
			h.left = append(h.left, z)
			continue
		}
		h.rows = append(h.rows, row)
	}
	slices.SortStableFunc(h.rows, func(a, b hollowRow) int { return cmp.Compare(a.s, b.s) })
	return h
}

func (h *hollows) ball(w *form.Wall, row *hollowRow, azimuth float64) form.Ball {
	return form.NewBall(w, row.s, azimuth, row.tangent, h.Diameter, h.Depth)
}

// dimples are those of one mold.
type dimples struct {
	*hollows
	wall *form.Wall // with the section as it stands to the seams
	turn float64    // of the first of every row, degrees
	rows []dimpleRow
	left []float64
	// Columns of a block: half of it in degrees, and how many cells lie between
	// the centre and the rim, and between the centre and the edge.
	half     float64
	rim, all int
	centre   []float64 // by dimple: the column that stays straight, degrees
}

// dimpleRow is a row with its block along the wall, mm: from lo by the centre
// mid to hi. A level one has a level seam through the centre.
type dimpleRow struct {
	*hollowRow
	lo, mid, hi float64
	level       bool
}

// lay settles the blocks in a mold with level seams at the places given, mm
// along the wall, and upright ones at the azimuths given in degrees.
func (h *hollows) lay(section *form.Section, turn float64, levels, upright []float64) *dimples {
	w := *h.wall
	w.Section = section
	d := &dimples{hollows: h, wall: &w, turn: turn, left: slices.Clone(h.left)}
	d.centre = make([]float64, h.Around)
	for k := range d.centre {
		d.centre[k] = turn + 360*float64(k)/float64(h.Around)
	}
	beyond := 0.0 // the last row's rim
	for i := range h.rows {
		r := dimpleRow{hollowRow: &h.rows[i]}
		if r.s-r.down < beyond+dimpleGap || !r.along(h, levels) || !d.across(&r, upright) {
			d.left = append(d.left, r.z)
			continue
		}
		beyond = r.s + r.up
		d.rows = append(d.rows, r)
	}
	d.fit(upright)
	return d
}

// along settles the block of a row along the wall; false where an edge of the
// form or more than one seam crosses it.
func (r *dimpleRow) along(h *hollows, levels []float64) bool {
	low, high := r.s-r.down, r.s+r.up
	r.lo, r.mid, r.hi = max(0, low-blockRoom*r.down), r.s, min(h.wall.Arc[len(h.wall.Arc)-1], high+blockRoom*r.up)
	for k, list := range [2][]float64{h.corners, levels} {
		for _, x := range list {
			switch {
			case x <= low-dimpleGap:
				r.lo = max(r.lo, x)
			case x >= high+dimpleGap:
				r.hi = min(r.hi, x)
			case k == 1 && !r.level && x > r.s-lineShare*r.down && x < r.s+lineShare*r.up:
				r.mid, r.level = x, true
			default:
				return false
			}
		}
	}
	n := r.balls[0].Normal
	return !r.level || math.Hypot(n[0], n[1]) > 0.3
}

// across settles which columns stay straight for a row; false where it cannot
// be.
func (d *dimples) across(r *dimpleRow, upright []float64) bool {
	side := r.side * 180 / math.Pi
	gap := dimpleGap / d.wall.At(r.s).R * 180 / math.Pi
	centre := slices.Clone(d.centre)
	for k := range centre {
		at := d.turn + 360*float64(k)/float64(d.Around)
		for _, a := range upright {
			o := math.Remainder(a-at, 360)
			switch {
			case math.Abs(o) >= side+gap:
				if centre[k] == at+o && o != 0 { // another row's centre is there
					return false
				}
			case math.Abs(o) < lineShare*side && (centre[k] == at || centre[k] == at+o):
				centre[k] = at + o
			default:
				return false
			}
		}
	}
	d.centre = centre
	return true
}

// fit settles how wide and how fine the blocks are.
func (d *dimples) fit(upright []float64) {
	if len(d.rows) == 0 {
		return
	}
	side := 0.0
	for i := range d.rows {
		r := &d.rows[i]
		side = max(side, r.side)
		if i > 0 { // rows share what lies between them
			before := &d.rows[i-1]
			if r.lo < before.hi {
				mid := (before.s + before.up + r.s - r.down) / 2
				before.hi, r.lo = min(before.hi, mid), max(r.lo, mid)
			}
		}
	}
	d.half = min(side*(1+blockRoom)*180/math.Pi, 180/float64(d.Around))
	radius, rho := d.rows[0].balls[0].Radius, d.Diameter/2
	off := 0.0
	for k, c := range d.centre {
		at := d.turn + 360*float64(k)/float64(d.Around)
		off = max(off, math.Abs(c-at)*math.Pi/180/side)
		for _, a := range upright {
			if o := math.Abs(math.Remainder(a-at, 360)); o > math.Abs(c-at)+1e-9 {
				d.half = min(d.half, o)
			}
		}
	}
	steps := 2.0 // from the rim to the edge, as wide as those round the turn at most
	for i := range d.rows {
		r := &d.rows[i]
		off = max(off, math.Abs(r.mid-r.s)/min(r.up, r.down))
		at := d.wall.At(r.s).R
		gap := at * (d.half*math.Pi/180 - r.least*math.Sqrt2/2)
		steps = max(steps, math.Ceil(gap/(1.2*math.Sqrt(2*at*turnTol))))
	}
	steps = math.Ceil(steps * (1 + 2*off))
	// Quads of side h on a ball of radius R lie h^2 / 6R within it at most; the
	// rim is a polygon of 8 corners to each ring.
	slope := 2 * math.Atan(2*d.Depth/d.Diameter)
	d.rim = max(3, int(math.Ceil(slope*radius/math.Sqrt(6*radius*turnTol)*(1+off))), int(math.Ceil(math.Pi*math.Sqrt(rho/(128*turnTol))*(1+off))))
	d.all = d.rim + int(min(steps, mostRoom))
	if n := 2*d.all + 1; n*len(d.rows)*n*d.Around > mostDimpled {
		for _, r := range d.rows {
			d.left = append(d.left, r.z)
		}
		d.rows = nil
	}
}

// at is where row q of a block, -all to all, lies along the wall.
func (r *dimpleRow) at(q float64, all int) float64 {
	switch t := q / float64(all); {
	case t <= -1:
		return r.lo
	case t >= 1:
		return r.hi
	case t < 0:
		return r.mid + t*(r.mid-r.lo)
	default:
		return r.mid + t*(r.hi-r.mid)
	}
}

// contour is the cavity, whose points lie at arc along the wall, with the rows
// of the blocks in place of its points there, and where its points lie now.
func (d *dimples) contour(cavity []form.Point, arc []float64) ([]form.Point, []float64) {
	var pts []form.Point
	var at []float64
	put := func(s float64) {
		pts, at = append(pts, d.wall.At(s)), append(at, s)
	}
	row := 0
	for i, p := range cavity {
		for row < len(d.rows) && d.rows[row].lo <= arc[i]+1e-9 {
			r := &d.rows[row]
			for q := -d.all; q <= d.all; q++ {
				if s := r.at(float64(q), d.all); len(at) == 0 || s > at[len(at)-1]+1e-9 {
					put(s)
				}
			}
			row++
		}
		if len(at) == 0 || arc[i] > at[len(at)-1]+1e-9 {
			pts, at = append(pts, p), append(at, arc[i])
		}
	}
	return pts, at
}

// DimplesLeft are the heights (mm) of rows of dimples that the solids leave out:
// they run into one another, off the wall or over an edge of the form, or a seam
// only grazes them.
func (md *Mold) DimplesLeft() []float64 {
	if md.dimples == nil {
		return nil
	}
	return md.dimples.left
}

// DimpleVolume is what the dimples take from the pot, ml: all of them, or those
// within a sector in degrees, and between two heights in mm.
func (md *Mold) DimpleVolume(sector *[2]float64, low, high float64) float64 {
	d := md.dimples
	if d == nil {
		return 0
	}
	sum := 0.0
	for i := range d.rows {
		r := &d.rows[i]
		for k := range d.Around {
			j := k % len(r.balls)
			b := r.balls[j]
			if b.Centre[2]+b.Radius <= low || b.Centre[2]-b.Radius >= high {
				continue
			}
			p, q := d.wall.At(r.s-r.down), d.wall.At(r.s+r.up)
			whole := min(p.Z, q.Z, b.Centre[2]-r.reach(d.Depth)) >= low && max(p.Z, q.Z, b.Centre[2]+r.reach(d.Depth)) <= high
			if sector != nil {
				at := d.turn + 360*float64(k)/float64(d.Around)
				half := (sector[1] - sector[0]) / 2
				side := r.side * 180 / math.Pi
				o := math.Abs(math.Remainder(at-sector[0]-half, 360))
				if o >= half+side {
					continue
				}
				whole = whole && o <= half-side
			}
			if whole {
				sum += r.taken[j]
				continue
			}
			at := (d.turn + 360*float64(k)/float64(d.Around)) * math.Pi / 180
			b = d.ball(d.wall, r.hollowRow, at)
			from, to := 0.0, 2*math.Pi
			if sector != nil {
				from, to = sector[0]*math.Pi/180, sector[1]*math.Pi/180
			}
			sum += b.Taken(d.wall, low, high, from, to)
		}
	}
	return sum / 1000
}

// reach is how far from the height of its ball's centre a dimple may take
// clay away, mm.
func (r *dimpleRow) reach(depth float64) float64 {
	b := &r.balls[0]
	return max(b.Radius*math.Abs(b.Normal[2])+depth, r.up, r.down)
}

// DimpleArea is how much larger the dimples make the surface, cm2, as on a flat
// wall: a cap is larger than its base by the circle whose radius is its depth.
func (md *Mold) DimpleArea() float64 {
	d := md.dimples
	if d == nil {
		return 0
	}
	return math.Pi * d.Depth * d.Depth * float64(d.Around*len(d.rows)) / 100
}

// DimpleInside is what the dimples take from the hollow of a cast, ml: slip
// stiffens as far from the plaster everywhere, so that behind a dimple the inside
// is part of a ball about the same middle, larger by the wall (mm). inner is the
// inside as it is without them.
func (md *Mold) DimpleInside(inner []form.Point, wall float64) float64 {
	d := md.dimples
	if d == nil || len(inner) < 2 {
		return 0
	}
	line := form.NewWall(inner, d.hollows.wall.Section)
	sum := 0.0
	for i := range d.rows {
		r := &d.rows[i]
		b := r.balls[0]
		g, _ := line.Section.At(b.Azimuth)
		middle := form.Point{R: math.Hypot(b.Centre[0], b.Centre[1]) / g, Z: b.Centre[2]}
		near := math.Inf(1)
		for k, q := range inner {
			if far := q.Dist(middle); far < near {
				near, b.S = far, line.Arc[k]
			}
		}
		b.Radius += wall
		more := b.Taken(line, math.Inf(-1), math.Inf(1), 0, 2*math.Pi) / r.taken[0]
		for _, v := range r.taken { // others of the row by what they take outside
			sum += more * v * float64(d.Around) / float64(len(r.taken))
		}
	}
	return sum / 1000
}

// Dimpled tells whether the wall has a pattern of dimples.
func (md *Mold) Dimpled() bool { return md.dimples != nil }

// CutLevel tells whether a level cut at a height (mm) meets no dimple, and
// CutUpright whether one through the axis at an azimuth (degrees) meets none or
// goes through the middle of one.
func (md *Mold) CutLevel(z float64) bool {
	d := md.dimples
	if d == nil {
		return true
	}
	for _, r := range d.rows {
		a, b := d.wall.At(r.lo).Z, d.wall.At(r.hi).Z
		if z > min(a, b)-1e-6 && z < max(a, b)+1e-6 {
			return false
		}
	}
	return true
}

func (md *Mold) CutUpright(deg float64) bool {
	d := md.dimples
	if d == nil || len(d.rows) == 0 {
		return true
	}
	for k, c := range d.centre {
		o := math.Abs(math.Remainder(deg-d.turn-360*float64(k)/float64(d.Around), 360))
		if o < d.half-1e-9 && math.Abs(math.Remainder(deg-c, 360)) > 1e-9 {
			return false
		}
	}
	return true
}
