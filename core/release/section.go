package release

import (
	"math"

	"moldwright/core/form"
)

// Around measures surface that is not round: for a stretch of meridian with
// the tangent angle A, turned about the axis with the section's g, how its area
// compares with a round one's, and how much of it has less draft than each of
// the edges under a pull.
//
// The surface r(z) g(a) has the normal (g e_r - g' e_a) t_z - g^2 t_r e_z, t the
// meridian's tangent, and the area |normal| r ds da. Means over azimuth are
// taken by the midpoint rule on a table of angles, between which they are
// interpolated. A wall has few of all angles, so a row is filled when it is
// first asked for.
type Around struct {
	step   float64 // radians between rows
	places []azimuth
	edges  []float64 // sines
	rows   []ring
	room   []float64 // for below of the rows
}

// azimuth is a place around: the squares of the area's two parts, and how much
// of the normal's length along the pull comes with each component of the
// meridian's tangent.
type azimuth struct{ upright, level, tr, tz float64 }

// ring tells of one angle; below is empty until it is filled.
type ring struct {
	factor, least float64 // least in degrees
	below         []float64
}

// Rows of the tables: a cap's draft hardly varies with azimuth, so that the
// share below an edge leaps with the angle; a side part's varies gently.
const (
	capRows, capAzimuths   = 1440, 48
	sideRows, sideAzimuths = 180, 360
)

// NewCap is the table of a lower or upper part, all round.
func NewCap(s *form.Section, pull Pull, edges Edges) *Around {
	up := 1.0
	if pull == Down {
		up = -1
	}
	period := 2 * math.Pi / float64(s.Repeats)
	return newAround(s, 0, period, capRows, capAzimuths, edges, func(_, g, _ float64) (tr, tz float64) {
		return -up * g * g, 0
	})
}

// NewSide is the table of a side part that looks along azimuth mid and reaches
// half (both radians) to either side. Its factor is relative to a round part
// of that sector.
func NewSide(s *form.Section, mid, half float64, edges Edges) *Around {
	return newAround(s, mid-half, mid+half, sideRows, sideAzimuths, edges, func(a, g, d float64) (tr, tz float64) {
		sin, cos := math.Sincos(a - mid)
		return 0, g*cos + d*sin
	})
}

// newAround prepares a table; along gives, at an azimuth with g and its slope d,
// tr and tz of the place.
func newAround(s *form.Section, from, to float64, rows, azimuths int, edges Edges, along func(a, g, d float64) (tr, tz float64)) *Around {
	t := &Around{step: 2 * math.Pi / float64(rows), edges: edges.sin, places: make([]azimuth, azimuths),
		rows: make([]ring, rows+1), room: make([]float64, (rows+1)*len(edges.sin))}
	for k := range t.places {
		a := from + (float64(k)+0.5)/float64(azimuths)*(to-from)
		g, d := s.At(a)
		tr, tz := along(a, g, d)
		t.places[k] = azimuth{g*g + d*d, g * g * g * g, tr, tz}
	}
	return t
}

// at is a row of the table.
func (t *Around) at(row int) *ring {
	r := &t.rows[row]
	if r.below == nil {
		n := len(t.edges)
		r.below = t.room[row*n : (row+1)*n : (row+1)*n]
		t.fill(r, -math.Pi+float64(row)*t.step)
	}
	return r
}

// fill measures all round at a tangent angle.
func (t *Around) fill(r *ring, angle float64) {
	tz, tr := math.Sincos(angle)
	least, sum := 1.0, 0.0
	for i := range t.places {
		p := &t.places[i]
		area := math.Sqrt(tz*tz*p.upright + tr*tr*p.level)
		sum += area
		if area == 0 {
			continue
		}
		sin := (tr*p.tr + tz*p.tz) / area
		if sin < least {
			least = sin
		}
		for e, edge := range t.edges {
			if sin < edge {
				r.below[e] += area
			}
		}
	}
	n := float64(len(t.places))
	r.factor = sum / n
	for e, v := range r.below {
		r.below[e] = v / n
	}
	r.least = math.Asin(max(-1, least)) * 180 / math.Pi
}

// Span measures span i of the meridian: area in mm2 and least draft in degrees;
// it adds the area below each edge to below. The area is that of a full turn,
// of which a side part has its share.
func (t *Around) Span(m *form.Meridian, i int, below []float64) (area, least float64) {
	p, q, sp := m.Pts[i], m.Pts[i+1], m.Spans[i]
	band := form.BandArea(p, q)
	x := (math.Remainder((sp.A0+sp.A1)/2, 2*math.Pi) + math.Pi) / t.step
	row := min(int(x), len(t.rows)-2)
	a, b, f := t.at(row), t.at(row+1), x-float64(row)
	for e := range below {
		below[e] += band * (a.below[e] + f*(b.below[e]-a.below[e]))
	}
	return band * (a.factor + f*(b.factor-a.factor)), a.least + f*(b.least-a.least)
}

// Upright measures an upright wall over the sector of a side part.
type Upright struct {
	half, least float64      // radians; sine of the draft that is asked for
	ahead       [][2]float64 // sine and cosine of azimuths from the middle of the part
}

// NewUpright is for side parts that reach half (radians) to either side of their middle
// and a least draft in degrees.
func NewUpright(half, leastDraft float64) *Upright {
	u := &Upright{half, math.Sin(leastDraft * math.Pi / 180), make([][2]float64, sideAzimuths)}
	for k := range u.ahead {
		u.ahead[k][0], u.ahead[k][1] = math.Sincos(u.azimuth(k))
	}
	return u
}

func (u *Upright) azimuth(k int) float64 {
	return (2*(float64(k)+0.5)/sideAzimuths - 1) * u.half
}

// Share is the share of the wall around a section that has less than the least draft,
// of a part that looks along azimuth mid.
func (u *Upright) Share(s *form.Section, mid float64) float64 {
	below, all := 0.0, 0.0
	for k := range u.ahead {
		g, d := s.At(mid + u.azimuth(k))
		area := math.Sqrt(g*g + d*d)
		all += area
		if g*u.ahead[k][1]+d*u.ahead[k][0] < u.least*area {
			below += area
		}
	}
	return below / all
}

// hookSteps are the corners of the polygon that stands for a side part's stretch
// of the section.
const hookSteps = 192

// SectionHook is how plaster catches within a level cut: how deep, the azimuth of the
// place where it does so deepest, and the place of the pot that it would have to pass;
// lengths as shares of the radius, azimuths in radians.
type SectionHook struct {
	Depth, Azimuth       float64
	BlockR, BlockAzimuth float64
}

// Hook is how deep plaster over a sector of the section catches when it is
// drawn along the sector's middle, as a share of the radius: a side part of a
// fluted pot hooks into the flutes near its seams. The section's stretch is
// swept as a meridian is, the pull in its plane; a part that keeps within a
// sector of at most 180 degrees draws toward its middle, so nothing outside the
// stretch stands in its way. shrunk is the share by which the pot has drawn
// together toward its axis within the plaster, 0 for a rigid one.
func Hook(s *form.Section, mid, half, shrunk float64) SectionHook {
	const axis = 2.0
	pts := make([]vec, hookSteps+1) // x across the pull, y against it
	hooks := false
	for k := range pts {
		a := (2*float64(k)/hookSteps - 1) * half
		g, _ := s.At(mid + a)
		sin, cos := math.Sincos(a)
		// the contour runs so that plaster lies on its right
		pts[k] = vec{axis + g*sin, -g * cos}
		hooks = hooks || k > 0 && pts[k].x <= pts[k-1].x
	}
	var out SectionHook
	if !hooks { // it runs across the pull all along and is its own envelope
		return out
	}
	env := newEnvelope(pts)
	for k, p := range pts {
		p = vec{axis + (p.x-axis)/(1-shrunk), p.y / (1 - shrunk)} // as the pot was before it shrank
		if env.free(p.x, p.y-1e-9) {
			continue
		}
		near, by := math.Inf(1), exit{}
		for _, dir := range [2]int{1, -1} {
			to := env.next(p.x, p.y, dir)
			if d := math.Abs(to.at - p.x); d < near {
				near, by = d, to
			}
		}
		if deep := near * (1 - shrunk); deep > out.Depth {
			out = SectionHook{deep, mid + (2*float64(k)/hookSteps-1)*half, math.Hypot(by.at-axis, by.block), mid + math.Atan2(by.at-axis, -by.block)}
		}
	}
	return out
}
