// Package tooling gives the printed pieces that plaster is poured against: for
// a lower or upper part a positive of the pot on a plate at the height of the
// seam, and the cottle that stands on the plate. A positive whose pot surface
// lets go along the part's pull has no overhang when printed with that pull
// upward, so it needs no supports.
package tooling

import (
	"fmt"
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// Piece is one printed piece.
type Piece struct {
	Name string `json:"name"`
	Part string `json:"part"` // the plaster part it serves
	Kind string `json:"kind"` // positive or stave
	// Size is the extent in mm as it is printed, resting on z = 0.
	Size    [3]float64 `json:"size"`
	FitsBed bool       `json:"fitsBed"`
	Volume  float64    `json:"volume"` // ml of solid material

	md *mold.Mold
	// section is the half-plane outline in the frame of the mold.
	section []form.Point
	pot     int // how many of the first edges of section are pot or opening
	from    float64
	to      float64 // azimuths in degrees, to - from = 360 for the full turn
	source  *mold.Part
}

// Measures of the kit, mm; common practice, no source.
const (
	leastPlate = 5.0
	plateFloor = 2.0 // left under a natch's hollow
	plugAbove  = 5.0 // the opening's plug stands so far out of the plaster
	freeboard  = 8.0 // the cottle stands so far above the plaster
	leastStave = 3.0
)

// Kit lists the printed pieces of a mold of lower and upper parts. A mold with
// side parts has none yet: its parts can be milled or cast from the plaster
// meshes.
func Kit(j *job.Job, md *mold.Mold) []Piece {
	if md.Scheme.Sides > 0 {
		return nil
	}
	var out []Piece
	for i := range md.Parts {
		p := &md.Parts[i]
		out = append(out, positive(j, md, p))
		for k := range j.Mold.Staves {
			out = append(out, stave(j, md, p, k))
		}
	}
	for i := range out {
		out[i].measure(j)
	}
	return out
}

// plateThickness leaves a floor under the hollows that form a part's domes.
func plateThickness(p *mold.Part) float64 {
	t := leastPlate
	for _, n := range p.Natches {
		if !n.Socket {
			t = math.Max(t, solid.DomeHeight(n.Radius, n.HalfAngle)+plateFloor)
		}
	}
	return t
}

func staveThickness(j *job.Job) float64 { return math.Max(j.Printer.Shell, leastStave) }

// positive is the pot's surface that the part holds, standing on a plate in
// the plane of the seam.
func positive(j *job.Job, md *mold.Mold, p *mold.Part) Piece {
	out := Piece{Name: p.Name + " positive", Part: p.Name, Kind: "positive", md: md, to: 360, source: p}
	plate := md.Block.R + staveThickness(j) + leastStave
	thick := plateThickness(p)
	// the contour again runs from the axis outward and up
	var wall []form.Point
	for k := p.Pot; k >= 0; k-- {
		wall = append(wall, p.Outline[k])
	}
	if p.Name == "lower" {
		z := wall[len(wall)-1].Z
		out.section = append(wall, form.Point{R: plate, Z: z}, form.Point{R: plate, Z: z + thick}, form.Point{R: 0, Z: z + thick})
		out.pot = len(wall) - 1
		return out
	}
	z := wall[0].Z
	top := wall[len(wall)-1]
	wall = append(wall, form.Point{R: top.R, Z: top.Z + plugAbove})
	out.pot = len(wall) - 1
	out.section = append(wall, form.Point{R: 0, Z: top.Z + plugAbove}, form.Point{R: 0, Z: z - thick}, form.Point{R: plate, Z: z - thick}, form.Point{R: plate, Z: z})
	return out
}

// stave is one of the pieces of the wall around the plate. A cottle in one
// piece follows the block's taper; staves are drawn off sideways.
func stave(j *job.Job, md *mold.Mold, p *mold.Part, k int) Piece {
	n := j.Mold.Staves
	name := p.Name + " cottle stave " + fmt.Sprint(k+1)
	if n == 1 {
		name = p.Name + " cottle"
	}
	out := Piece{Name: name, Part: p.Name, Kind: "stave", md: md,
		from: 360 / float64(n) * float64(k), to: 360 / float64(n) * float64(k+1)}
	seam, far, r := p.Outline[0].Z, md.Block.ZBottom, md.Block.RBottom
	if p.Name == "upper" {
		seam, far, r = p.Outline[p.Pot].Z, md.Block.ZTop, md.Block.RTop
	}
	up := math.Copysign(1, far-seam)
	r += (r - md.Block.R) / math.Abs(far-seam) * freeboard
	end := far + up*freeboard
	t := staveThickness(j)
	a, b := form.Point{R: md.Block.R, Z: seam}, form.Point{R: r, Z: end}
	out.section = []form.Point{a, {R: a.R + t, Z: a.Z}, {R: a.R + t, Z: b.Z}, b}
	if up < 0 {
		out.section = []form.Point{a, b, {R: a.R + t, Z: b.Z}, {R: a.R + t, Z: a.Z}}
	}
	return out
}

// measure fills in the piece's size, fit and volume without making its mesh.
func (p *Piece) measure(j *job.Job) {
	lo, hi, r := math.Inf(1), math.Inf(-1), 0.0
	for _, q := range p.section {
		lo, hi, r = math.Min(lo, q.Z), math.Max(hi, q.Z), math.Max(r, q.R)
	}
	turn := p.to - p.from
	p.Volume = form.LoopVolume(p.section) * turn / 360 / 1000
	x0, x1, y0, y1 := sectorBox(p.section, p.from, p.to)
	p.Size = [3]float64{x1 - x0, y1 - y0, hi - lo}
	p.FitsBed = fits(p.Size, j.Printer.Bed)
}

// sectorBox is the box in plan of a section swept from one azimuth to another.
func sectorBox(section []form.Point, from, to float64) (x0, x1, y0, y1 float64) {
	x0, x1, y0, y1 = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	at := func(deg float64) {
		sin, cos := solid.SinCosDeg(deg)
		for _, q := range section {
			x0, x1 = math.Min(x0, q.R*cos), math.Max(x1, q.R*cos)
			y0, y1 = math.Min(y0, q.R*sin), math.Max(y1, q.R*sin)
		}
	}
	at(from)
	at(to)
	for q := 0.0; q <= 360; q += 90 {
		if from < q && q < to {
			at(q)
		}
	}
	return x0, x1, y0, y1
}

// fits tells whether a piece of the size can stand on the bed, turned about
// the vertical by a right angle where that helps.
func fits(size, bed [3]float64) bool {
	const noise = 1e-6
	flat := size[0] <= bed[0]+noise && size[1] <= bed[1]+noise || size[0] <= bed[1]+noise && size[1] <= bed[0]+noise
	return flat && size[2] <= bed[2]+noise
}

// Mesh is the piece turned for printing, working face up and resting on z = 0,
// and the rows of the turn and shift (mm) that take it back to the mold.
func (p *Piece) Mesh(so *mold.Solids) (*solid.Mesh, [12]float64, error) {
	m, err := p.standing(so)
	if err != nil {
		return nil, [12]float64{}, fmt.Errorf("%s: %w", p.Name, err)
	}
	lo, hi := m.Bounds()
	m.Rest()
	if p.Part != "lower" {
		return m, [12]float64{1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, lo[2]}, nil
	}
	m.RotateX(180)
	m.Rest()
	return m, [12]float64{1, 0, 0, 0, 0, -1, 0, 0, 0, 0, -1, hi[2]}, nil
}

// standing is the piece where it stands around the plaster part.
func (p *Piece) standing(so *mold.Solids) (*solid.Mesh, error) {
	n := so.Turn.Steps()
	span := solid.FullTurn(n)
	if p.to-p.from < 360 {
		at := func(deg float64) int { return int(math.Round(deg / 360 * float64(n))) }
		span = solid.Span{Steps: n, From: at(p.from), To: at(p.to)}
	}
	b := solid.NewBuilder(so.Place, span)
	rings := make([]solid.Loop, len(p.section))
	for i, q := range p.section {
		rings[i] = b.Ring(q.R, q.Z)
	}
	seam := p.pot // the edge of the section that lies in the seam
	if p.Part == "upper" {
		seam = len(p.section) - 1
	}
	for i := range rings {
		from, to := rings[i], rings[(i+1)%len(rings)]
		if p.source != nil && i == seam {
			mold.CastNatches(b, from, to, p.source.Natches)
			continue
		}
		b.Wall(from, to)
	}
	if !span.Whole() {
		b.End(solid.Near, rings)
		b.End(solid.Far, rings)
	}
	return b.Done()
}
