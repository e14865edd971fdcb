package plan

import (
	"math"
	"slices"

	"moldwright/core/casting"
	"moldwright/core/form"
	"moldwright/core/mold"
	"moldwright/core/tooling"
)

// leastPocket is the volume in ml from which a pocket of air or slip counts.
const leastPocket = 0.05

// cast measures the cavity and the cast, and works out the figures.
func (p *Plan) cast() error {
	w := p.work
	j, md := w.job, w.mold
	solidCast := md.Inner != nil
	if w.inner = md.Inner; !solidCast {
		w.inner = form.Inset(md.Cavity, j.Clay.Wall)
	}
	p.Flow = Flow{Slip: []form.Pocket{}, Plaster: plasterPockets(md)}
	if solidCast { // of which nothing is poured out
		p.Flow.Air = airUnder(md)
	} else {
		p.Flow.Air = pockets(md, md.Cavity, form.Left)
		p.Flow.Slip = pockets(md, w.inner, form.Left)
		drains := w.inner != nil && len(p.Flow.Slip) == 0
		p.Flow.Drains = &drains
	}
	lid := form.Point{R: 0, Z: md.TrimZ}
	in := casting.Input{Clay: j.Clay, Plaster: j.Plaster, Settings: j.Casting}
	plan := md.Section.MeanSquare
	area := func(line []form.Point) float64 { return area(line, md.Section) }
	in.CavityML = plan*form.LoopVolume(append(append([]form.Point{}, md.Cavity...), lid))/1000 - md.DimpleVolume(nil, math.Inf(-1), md.TrimZ)
	if in.Solid = solidCast; solidCast {
		w.thickest, in.SolidWallMM = thickest(w.inner, md.Cavity)
	}
	if w.inner != nil {
		in.InsideML = plan * form.LoopVolume(append(append([]form.Point{}, w.inner...), lid)) / 1000
		in.InsideAreaCM2 = area(w.inner)
		if down := j.Casting.FillLine / (1 - j.Clay.Shrinkage()); down > 0 {
			in.InsideFillML = plan * below(w.inner, md.TrimZ-down)
		}
		if !solidCast {
			p.work.thin = thin(w.inner, j.Clay.Wall, md.Section)
			in.InsideML -= p.work.thin
			if in.InsideFillML > 0 {
				z := md.TrimZ - j.Casting.FillLine/(1-j.Clay.Shrinkage())
				in.InsideFillML -= thin(under(w.inner, z), j.Clay.Wall, md.Section)
			}
			p.work.bumps = md.DimpleInside(w.inner, j.Clay.Wall)
			in.InsideML, in.InsideFillML = in.InsideML-p.work.bumps, math.Max(0, in.InsideFillML-p.work.bumps)
			in.InsideAreaCM2 += md.DimpleArea()
		}
	} else { // the wall closes the mouth: cautions say so
		in.Solid = true
	}
	in.SpareML = md.OpeningVolume()
	in.SpareContactCM2 = area(md.Opening)
	top := md.Opening[len(md.Opening)-1]
	in.FillAreaCM2 = plan * math.Pi * top.R * top.R / 100
	in.ContactCM2 = area(md.Cavity) + md.DimpleArea()
	b := md.Block
	// flat faces round a circle are larger than it by as much as their plan is,
	// and so are the ends, less the opening
	in.OutsideCM2 = b.PlanShare()*round([]form.Point{{R: 0, Z: b.ZBottom}, {R: b.RBottom, Z: b.ZBottom}, {R: b.RTop, Z: b.ZTop}, {R: 0, Z: b.ZTop}}) - in.FillAreaCM2
	in.CornerDeg = sharpest(md.Cavity)
	sc := p.chosen()
	for i := range md.Parts {
		in.Parts = append(in.Parts, casting.Part{Name: md.Parts[i].Name, ML: sc.Parts[i].Volume, ContactCM2: sc.Parts[i].Area})
	}
	p.forces(&in, top.Z)
	figures, faults := casting.Compute(in)
	if len(faults) > 0 {
		return faults
	}
	p.Casting = figures
	height, maxR := w.meridian.Extent()
	shrink := 1 - j.Clay.Shrinkage()
	p.Size = Size{Height: height, MaxRadius: maxR, FiredHeight: height * shrink, FiredRadius: maxR * shrink,
		CapacityFired: figures.CapacityFired, CastArea: in.ContactCM2}
	return nil
}

// pockets are those along a line of the mold's section, which need not be round.
func pockets(md *mold.Mold, line []form.Point, space form.Side) []form.Pocket {
	out := form.Pockets(line, space, leastPocket/md.Section.MeanSquare)
	for i := range out {
		out[i].Volume *= md.Section.MeanSquare
	}
	return out
}

// plasterPockets are the pockets of air in the plaster of lower and upper parts
// and of a core, each poured over its positive with its pull upward. Side parts
// that hook hold air where they hook.
func plasterPockets(md *mold.Mold) []PartPocket {
	out := []PartPocket{}
	for i := range md.Parts {
		p := &md.Parts[i]
		line := append([]form.Point{}, p.Outline[:p.Pot+1]...)
		up, space := 1.0, form.Right
		switch {
		case p.Sector != nil:
			continue
		case p.Name == "lower": // from the seam to the foot, turned over
			up = -1
			for k := range line {
				line[k].Z = -line[k].Z
			}
		case p.Name == "core": // it runs along the inside as it is poured
			space = form.Left
		default: // the outline runs against the contour
			slices.Reverse(line)
		}
		for _, q := range pockets(md, line, space) {
			if up < 0 {
				q.ZFrom, q.ZTo = -q.ZTo, -q.ZFrom
			}
			out = append(out, PartPocket{p.Name, q})
		}
	}
	return out
}

// below is the volume in ml inside a line that runs up from the axis, as far as
// the height z.
func below(line []form.Point, z float64) float64 {
	loop := under(line, z)
	if len(loop) < 2 {
		return 0
	}
	return form.LoopVolume(append(loop, form.Point{R: 0, Z: loop[len(loop)-1].Z})) / 1000
}

// under is a line as far as it lies below the height z.
func under(line []form.Point, z float64) []form.Point {
	loop := []form.Point{}
	for i, p := range line {
		if i > 0 && (line[i-1].Z > z) != (p.Z > z) {
			loop = append(loop, line[i-1].Lerp(p, (z-line[i-1].Z)/(p.Z-line[i-1].Z)))
		}
		if p.Z <= z {
			loop = append(loop, p)
		}
	}
	return loop
}

// thin is the clay in ml by which an even wall of so many mm is more than that
// outside an inside that has the same section, which is thinner where the section comes
// in: the wall times the surface that the inside has beyond its share of a round one's,
// less what going round in a parallel curve takes back. Exact for upright walls on a
// level floor (a parallel curve's area after Steiner), an estimate for others.
func thin(inside []form.Point, wall float64, section *form.Section) float64 {
	if section.Round || len(inside) < 2 {
		return 0
	}
	more := area(inside, section) - section.MeanSquare*round(inside)
	around := area([]form.Point{{R: 1}, {R: 1, Z: 1}}, section) * 100 // the section, mm a mm of radius
	back := math.Pi*(1+section.MeanSquare) - around
	return (100*more - back*wall*(inside[len(inside)-1].Z-inside[0].Z)) * wall / 1000
}

// area is the surface in cm2 of a polyline taken round the axis with a section:
// on r(s) g(a) the element is sqrt((z' r)^2 (g^2 + g'^2) + (r r' g^2)^2) da ds.
func area(line []form.Point, section *form.Section) float64 {
	if section.Round {
		return round(line)
	}
	const steps = 72 // of one of its repeats
	a := 0.0
	for k := range steps {
		g, slope := section.At(2 * math.Pi / float64(section.Repeats) * (float64(k) + 0.5) / steps)
		side, flat := math.Sqrt(g*g+slope*slope), g*g
		for i := 1; i < len(line); i++ {
			p, q := line[i-1], line[i]
			dz, dr := (q.Z-p.Z)*side, (q.R-p.R)*flat
			a += (p.R + q.R) / 2 * math.Sqrt(dz*dz+dr*dr)
		}
	}
	return a * 2 * math.Pi / steps / 100
}

// round is the surface in cm2 of a polyline turned about the axis.
func round(line []form.Point) float64 {
	a := 0.0
	for i := 1; i < len(line); i++ {
		a += form.BandArea(line[i-1], line[i])
	}
	return a / 100
}

// sharpest is the sharpest corner of the cavity in degrees, measured in the
// slip; 180 where the contour nowhere turns inward.
func sharpest(line []form.Point) float64 {
	least := 180.0
	for i := 1; i+1 < len(line); i++ {
		u, v := line[i-1].Sub(line[i]), line[i+1].Sub(line[i])
		a := math.Atan2(v.R*u.Z-v.Z*u.R, v.R*u.R+v.Z*u.Z) * 180 / math.Pi
		if a > 0 {
			least = min(least, a)
		}
	}
	return least
}

// forces fills in what the slip, when full to the level fill, and the wet
// plaster press on.
func (p *Plan) forces(in *casting.Input, fill float64) {
	md := p.work.mold
	in.PositiveML = in.CavityML + in.SpareML + md.DrainVolume()
	in.PositiveMassG = tooling.LeastMass(p.work.job, in.ContactCM2)
	in.CottleRadiusMM = md.Block.R
	for i := range md.Parts {
		part := &md.Parts[i]
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, q := range part.Outline {
			lo, hi = min(lo, q.Z), max(hi, q.Z)
		}
		in.CottleHeightMM = max(in.CottleHeightMM, hi-lo)
		switch {
		case part.Name == "upper":
			in.UpperLiftML = md.Section.MeanSquare * lift(part, fill)
		case part.Sector != nil && in.SeamAreaCM2 == 0:
			in.SeamAreaCM2, in.SeamHeadMM = spread(part, fill, md.Section)
		}
	}
}

// lift is the integral in ml of (fill - z) n_z over the surface that a part
// has against slip: Simpson's rule, exact on chords.
func lift(part *mold.Part, fill float64) float64 {
	v := 0.0
	for i := 0; i < part.Pot; i++ {
		q, a := part.Outline[i], part.Outline[i+1] // the outline runs against the contour
		head := func(p form.Point) float64 { return (fill - p.Z) * p.R }
		mid := a.Lerp(q, 0.5)
		v += 2 * math.Pi * (a.R - q.R) * (head(a) + 4*head(mid) + head(q)) / 6
	}
	return max(0, v/1000)
}

// spread is the cavity of one side part projected along its pull, cm2, and the
// depth of its centroid below the fill level, mm.
func spread(part *mold.Part, fill float64, section *form.Section) (cm2, head float64) {
	a, moment := 0.0, 0.0
	for i := 0; i < part.Pot; i++ {
		q, p := part.Outline[i], part.Outline[i+1]
		dz := q.Z - p.Z
		mid := p.Lerp(q, 0.5)
		a += dz * mid.R
		moment += dz / 6 * ((fill-p.Z)*p.R + 4*(fill-mid.Z)*mid.R + (fill-q.Z)*q.R)
	}
	half := (part.Sector[1] - part.Sector[0]) / 360 * math.Pi
	near, _ := section.At(part.Sector[0] * math.Pi / 180)
	far, _ := section.At(part.Sector[1] * math.Pi / 180)
	width := (near + far) * math.Sin(half)
	if a <= 0 {
		return 0, 0
	}
	return a * width / 100, moment / a
}
