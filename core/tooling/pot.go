package tooling

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// potPositive is the pot itself, for a core: it stands in the closed outer
// parts, and the core's plaster is poured into it and over their top. Its
// inside, which is the working face, has no overhang where the core lets go;
// the overhang told is that of its outside.
func potPositive(j *job.Job, md *mold.Mold, p *mold.Part) Piece {
	out := Piece{Label: capLabel(p.Name, "positive"), Part: p.Name, Kind: "positive", up: solid.Vec{0, 0, 1}, Draft: p.MinDraft, Verdict: p.Verdict,
		build: func(so *mold.Solids) (*solid.Mesh, error) { return so.Cast(md.Inner) }}
	clay := append([]form.Point{}, md.Cavity...)
	for i := len(md.Inner) - 1; i >= 0; i-- {
		clay = append(clay, md.Inner[i])
	}
	widest, high := 0.0, 0.0
	for i, q := range md.Cavity {
		widest, high = math.Max(widest, q.R), math.Max(high, q.Z)
		if i == 0 || q.Z <= 0 && md.Cavity[i-1].Z <= 0 { // the foot stands on the bed
			continue
		}
		a := md.Cavity[i-1]
		if down := q.R - a.R; down > 0 {
			out.Overhang = math.Max(out.Overhang, math.Atan2(down, q.Z-a.Z)*180/math.Pi)
		}
	}
	var plan [][2]float64
	for k := range 72 {
		deg := 5 * float64(k)
		sin, cos := solid.SinCosDeg(deg)
		g, _ := md.Section.At(deg * math.Pi / 180)
		plan = append(plan, [2]float64{widest * g * cos, widest * g * sin})
	}
	out.measure(j, plan, high, form.LoopVolume(clay)*md.Section.MeanSquare/1000)
	if out.FitsBed {
		out.Note = words.Say("The pot itself: it stands in the closed outer parts, and the core is poured into it and over their top, as high as the cottle is to be filled.")
	}
	return out
}
