package parting

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/release"
)

// What errors of the radii do to catches that the half-plane does not show, of
// sections that are not round and of dimples.
//
// A section is scaled by the radius, and what hooks within it is a share of that: it
// comes free only where the radius falls to where the share is no more than counts.
//
// A dimple goes with its wall, and its depth is measured square to that. What matters
// is how deep it catches there: on a wall nearer to the axis or farther from it by
// the error, and tilted by anything up to what the error tilts it by in a swing. The
// wall about it is taken to be straight while it does, but for the edge of the form
// that is nearest, at which it may bend too; and the difference is added to the catch as
// it is. Errors are tried up to half a swing, at which a wall would lean by 45 degrees.

// ofPattern tells whether a catch is one of the section or of a dimple: it names its
// own place as what stands in its way.
func (c *Catch) ofPattern() bool { return c.AtR == c.BlockedAtR && c.AtZ == c.BlockedAtZ }

// sectionHolds is an error in mm below which side parts hook within the section,
// wherever their seams: a place that no cap takes before that error is theirs, and
// hooks by its share.
func sectionHolds(m *form.Meridian, end int, s *Scheme, rules Rules, f *falls) (e, z float64) {
	if s.hook == 0 {
		return 0, 0
	}
	own := make([]float64, end+1)
	for k := range own {
		own[k] = max(0, m.Pts[k].R-CatchDepth/s.hook)
	}
	f.find(m, end, s.Upper, rules)
	if s.Lower {
		least := math.Inf(1)
		for k := end; k >= 0; k-- { // a lower part that holds it ends there or after
			least = min(least, f.down[k].e)
			own[k] = min(own[k], least)
		}
	}
	if s.Upper {
		least := math.Inf(1)
		for k := range own {
			least = min(least, f.up[k].e)
			own[k] = min(own[k], least)
		}
	}
	for k := range own {
		if own[k] > e {
			e, z = own[k], m.Pts[k].Z
		}
	}
	return e, z
}

// dimpleRow is a row of dimples on its wall.
type dimpleRow struct {
	m    *form.Meridian
	span int
	r, z float64 // mm
	a    float64 // tangent of the meridian, radians
	// edge is how far along the wall an edge of the form stands that a dimple may lie
	// across, mm, negative before the middle; turn by how much the tangent differs
	// beyond it, radians. Without one they are 0.
	edge, turn float64
}

// dimpleRows are those on the contour up to point end.
func dimpleRows(m *form.Meridian, end int) []dimpleRow {
	if m.Dimples == nil {
		return nil
	}
	var out []dimpleRow
	for _, z := range m.Dimples.Heights {
		if span, r := m.Outermost(z); span >= 0 && span < end {
			d := dimpleRow{m: m, span: span, r: r, z: z, a: (m.Spans[span].A0 + m.Spans[span].A1) / 2}
			d.bend(end)
			out = append(out, d)
		}
	}
	return out
}

// bend finds the nearest edge of the form within reach of a dimple, up to point end.
func (d *dimpleRow) bend(end int) {
	reach := d.m.Dimples.Diameter
	far := d.m.Pts[d.span+1].Dist(form.Point{R: d.r, Z: d.z})
	for k := d.span + 1; k < end && far < reach; k++ {
		if d.m.Corner[k] {
			d.edge, d.turn, reach = far, math.Remainder(d.m.Spans[k].A0-d.m.Spans[k-1].A1, 2*math.Pi), far
			break
		}
		far += d.m.Pts[k].Dist(d.m.Pts[k+1])
	}
	far = d.m.Pts[d.span].Dist(form.Point{R: d.r, Z: d.z})
	for k := d.span; k > 0 && far < reach; k-- {
		if d.m.Corner[k] {
			d.edge, d.turn = -far, math.Remainder(d.m.Spans[k-1].A1-d.m.Spans[k].A0, 2*math.Pi)
			return
		}
		far += d.m.Pts[k].Dist(d.m.Pts[k-1])
	}
}

// facing is one of its dimples under a pull.
type facing struct {
	azimuth float64 // radians
	pull    form.Vec3
}

// looks are the row's dimples that differ, under a part of a scheme.
func (d *dimpleRow) looks(s *Scheme, pull release.Pull) []facing {
	switch {
	case pull == release.Up:
		return d.axial(1)
	case pull == release.Down:
		return d.axial(-1)
	}
	var out []facing
	sector, farthest := 2*math.Pi/float64(s.Sides), -1.0
	for k := range d.m.Dimples.Around {
		az := 2 * math.Pi * float64(k) / float64(d.m.Dimples.Around)
		off := math.Remainder(az+s.Turn*math.Pi/180-sector/2, sector)
		sin, cos := math.Sincos(az - off)
		l := facing{az, form.Vec3{cos, sin, 0}}
		switch off = math.Abs(off); {
		case !d.m.Section.Round:
			out = append(out, l)
		case off > farthest+1e-9: // on a round wall it hooks the deepest
			out, farthest = append(out[:0], l), off
		}
	}
	return out
}

func (d *dimpleRow) axial(up float64) []facing {
	n := 1
	if !d.m.Section.Round {
		n = d.m.Dimples.Around
	}
	out := make([]facing, n)
	for k := range out {
		out[k] = facing{2 * math.Pi * float64(k) / float64(d.m.Dimples.Around), form.Vec3{0, 0, up}}
	}
	return out
}

// hook is how deep it catches on its wall so much farther out and tilted by so much,
// radians, and beyond its edge by so much. But for that edge the wall is straight.
func (d *dimpleRow) hook(l facing, farther, tilt, beyond float64) float64 {
	wide, deep := d.m.Dimples.Diameter, d.m.Dimples.Depth
	ball := (wide*wide/4 + deep*deep) / (2 * deep)
	mid := form.Point{R: max(wide/2, d.r+farther), Z: d.z}
	walk := func(from form.Point, a, by float64) form.Point { // along the wall, short of the axis
		sin, cos := math.Sincos(a)
		if to := by * cos; from.R+to < 0.1 {
			by *= max(0.01, from.R-0.1) / -to
		}
		return form.Point{R: from.R + by*cos, Z: from.Z + by*sin}
	}
	line, s := []form.Point{mid}, 0.0 // where the middle stands along it
	for _, way := range [2]float64{-1, 1} {
		leg := []form.Point{walk(mid, d.a+tilt, way*3*ball)}
		if d.edge*way > 0 {
			at := walk(mid, d.a+tilt, d.edge)
			leg = []form.Point{at, walk(at, d.a+beyond+d.turn, way*3*ball)}
		}
		if way > 0 {
			line = append(line, leg...)
			continue
		}
		last := mid
		for _, p := range leg {
			s, last = s+last.Dist(p), p
			line = append([]form.Point{p}, line...)
		}
	}
	w := form.NewWall(line, d.m.Section)
	b := form.NewBall(w, s, l.azimuth, d.a+tilt, wide, deep)
	return release.DimpleHook(w, &b, d.a+tilt, l.pull).Depth
}

// within are the least and the most by which it catches while radii are wrong by no
// more than e, being depth where they are right.
func (d *dimpleRow) within(l facing, depth, e float64) (least, most float64) {
	right := d.hook(l, 0, 0, 0)
	least, most = depth, depth
	tilt := math.Atan(2 * e / swing)
	// a dimple catches least on a wall at some tilt within the range, not at its ends
	const steps = 2
	for _, farther := range [2]float64{-e, e} {
		for k := -steps; k <= steps; k++ {
			t := tilt * float64(k) / steps
			try := func(beyond float64) {
				now := depth + d.hook(l, farther, t, beyond) - right
				least, most = min(least, now), max(most, now)
			}
			if try(t); d.edge != 0 { // which may bend otherwise too
				try(-tilt)
				try(tilt)
			}
		}
	}
	return least, most
}

// deepest is the dimple of the row that catches the deepest, and by how much.
func (d *dimpleRow) deepest(w *form.Wall, all []facing) (l facing, depth float64) {
	l = all[0]
	s := w.Arc[d.span] + d.m.Pts[d.span].Dist(form.Point{R: d.r, Z: d.z})
	for _, x := range all {
		b := form.NewBall(w, s, x.azimuth, d.a, d.m.Dimples.Diameter, d.m.Dimples.Depth)
		if h := release.DimpleHook(w, &b, d.a, x.pull).Depth; h > depth {
			l, depth = x, h
		}
	}
	return l, depth
}

// changes is the least error, up to most and to half a swing, at which happens is so.
func changes(most float64, happens func(e float64) bool) float64 {
	low, high := 0.0, min(most, swing/2)
	if !happens(high) {
		return high
	}
	for range 10 {
		if mid := (low + high) / 2; happens(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return low
}

// dimplesHold is an error in mm, up to most, below which dimples of a row catch under
// every part of the scheme that could take it, and the row's height.
func dimplesHold(m *form.Meridian, end int, s *Scheme, most float64) (e, z float64) {
	rows := dimpleRows(m, end)
	if len(rows) == 0 {
		return 0, 0
	}
	w := form.NewWall(m.Pts, m.Section)
	for i := range rows {
		d, own := &rows[i], most
		for _, pull := range s.pulls() {
			l, depth := d.deepest(w, d.looks(s, pull))
			if depth <= CatchDepth {
				own = 0
				break
			}
			own = changes(own, func(e float64) bool {
				least, _ := d.within(l, depth, e)
				return least <= CatchDepth
			})
		}
		if own > e {
			e, z = own, d.z
		}
	}
	return e, z
}

// pulls are those of the scheme's outer parts.
func (s *Scheme) pulls() []release.Pull {
	var out []release.Pull
	if s.Lower {
		out = append(out, release.Down)
	}
	if s.Sides > 0 {
		out = append(out, release.Out)
	}
	if s.Upper {
		out = append(out, release.Up)
	}
	return out
}

// robustPattern tells the errors at which a scheme that does not catch would do so
// within the section or a dimple; most is the error beyond which none matters.
func robustPattern(m *form.Meridian, end int, s *Scheme, most float64, tell func(float64, string, float64, float64)) {
	if s.hook > 0 {
		widest := s.K1
		for i := s.K1; i <= s.K2; i++ {
			if m.Pts[i].R > m.Pts[widest].R {
				widest = i
			}
		}
		tell(CatchDepth/s.hook-m.Pts[widest].R, "catch", m.Pts[widest].Z, m.Pts[widest].Z)
	}
	rows := dimpleRows(m, end)
	if len(rows) == 0 {
		return
	}
	w := form.NewWall(m.Pts, m.Section)
	for i := range rows {
		d, pull := &rows[i], release.Out
		switch {
		case s.Lower && d.span < s.K1:
			pull = release.Down
		case s.Upper && d.span >= s.K2:
			pull = release.Up
		}
		for _, l := range d.looks(s, pull) {
			_, depth := d.deepest(w, []facing{l})
			e := changes(most, func(e float64) bool {
				_, over := d.within(l, depth, e)
				return over > CatchDepth
			})
			if e < most {
				most = e
				tell(e, "catch", d.z, d.z)
			}
		}
	}
}
