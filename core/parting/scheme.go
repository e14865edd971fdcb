// Package parting settles where a mold parts: it judges every scheme of lower,
// upper and side parts on a surveyed form, finds for each the heights where
// its parts meet, chooses the one with the fewest parts that lets go, and says
// why fewer do not.
package parting

import (
	"strconv"

	"moldwright/core/job"
)

// Verdict of a part or a scheme, worst last.
type Verdict string

// A part catches where plaster hooks behind the pot by more than CatchDepth
// anywhere; else it rubs when more than the rules' share of its surface has
// less than the least draft; else it is clear.
const (
	Clear   Verdict = "clear"
	Rubs    Verdict = "rubs"
	Catches Verdict = "catches"
)

func (v Verdict) rank() int {
	switch v {
	case Clear:
		return rankClear
	case Rubs:
		return rankRubs
	}
	return rankCatches
}

// The verdicts' ranks.
const (
	rankClear = iota
	rankRubs
	rankCatches
)

// CatchDepth is the depth in mm from which an undercut counts.
const CatchDepth = 0.05

// Scheme is one way to part the mold, judged on the rigid positive.
type Scheme struct {
	ID      string  `json:"id"`
	Count   int     `json:"count"`
	Verdict Verdict `json:"verdict"`
	// PartingHeights are mm above the foot at mold size, lowest first.
	PartingHeights []float64 `json:"partingHeights"`
	Parts          []Part    `json:"parts"`
	// RubArea is the area in cm2, over all parts, with less than the least
	// draft; Depth the deepest catch in mm.
	RubArea float64 `json:"rubbingArea"`
	Depth   float64 `json:"depth"`
	// Sides is the number of side parts; Lower and Upper tell which caps there
	// are.
	Sides int `json:"sides"`
	// Turn is by how many degrees a section that is not round, or the first of
	// a row of dimples, stands turned against the seams of the side parts.
	Turn  float64 `json:"turn"`
	Lower bool    `json:"-"`
	Upper bool    `json:"-"`
	Core  bool    `json:"-"`
	// K1 and K2 are the points of the meridian where the lower part ends and
	// the upper part begins; 0 and the mouth where there is none.
	K1 int `json:"-"`
	K2 int `json:"-"`

	hook float64 // of side parts within the section, as a share of the radius
}

// Part is one plaster part of a scheme and how it lets go.
type Part struct {
	Name string `json:"name"` // lower, upper, or A, B, C, … for side parts
	// Pull is the unit vector along which the part moves away.
	Pull  [3]float64 `json:"pull"`
	ZFrom float64    `json:"zFrom"` // mm, of the pot surface the part holds
	ZTo   float64    `json:"zTo"`
	// Sector is the azimuths in degrees of a side part, nil for a cap.
	Sector  *[2]float64 `json:"sector"`
	Verdict Verdict     `json:"verdict"`
	// MinDraft is degrees. RubArea is the area in cm2 below the least draft
	// and RubShare the percent of Area, the part's pot surface in cm2.
	MinDraft float64 `json:"minDraft"`
	Area     float64 `json:"area"`
	RubArea  float64 `json:"rubbingArea"`
	RubShare float64 `json:"rubShare"`
	Bands    []Band  `json:"draftBands"`
	Catches  []Catch `json:"catches"`
	// ClayForgives tells that every catch is one that the cast's own shrinkage
	// at release makes good; the rigid positive still holds.
	ClayForgives bool `json:"clayForgives"`
}

// Band is the area in cm2 of a part with a draft in degrees from From up to,
// but not reaching, To.
type Band struct {
	From float64 `json:"from"`
	To   float64 `json:"to"`
	Area float64 `json:"area"`
}

// bandEdges part the draft bands, degrees.
var bandEdges = [9]float64{-90, 0, 1, 2, 3, 5, 10, 30, 90}

// Catch is a stretch of the pot behind which a part hooks.
type Catch struct {
	ZFrom float64 `json:"zFrom"` // mm
	ZTo   float64 `json:"zTo"`
	Depth float64 `json:"depth"` // mm, at its deepest
	// AtZ and AtR are the place of the deepest catch; BlockedAtZ and
	// BlockedAtR what stands in its way there.
	AtZ        float64 `json:"atZ"`
	AtR        float64 `json:"atR"`
	BlockedAtZ float64 `json:"blockedAtZ"`
	BlockedAtR float64 `json:"blockedAtR"`
	// ClayDepth is what is left of the catch for the cast, mm, once it has
	// shrunk by the release shrinkage; more than Depth where it draws onto the
	// plaster, as onto a core (release.Sample.Left). ClayForgives tells that it comes free
	// although the rigid positive does not.
	ClayDepth    float64 `json:"clayDepth"`
	ClayForgives bool    `json:"clayForgives"`
}

// Rules are what the judging needs of the job.
type Rules struct {
	LeastDraft       float64 // degrees
	RubShare         float64 // percent
	ReleaseShrinkage float64 // percent
	Layer            float64 // mm, of the printed positive
}

// RulesOf takes the rules from the job.
func RulesOf(j *job.Job) Rules {
	return Rules{j.Rules.LeastDraft, j.Rules.RubShare, j.Clay.ReleaseShrinkage, j.Printer.Layer}
}

// kind is a family of parts, before its heights are settled.
type kind struct {
	sides        int
	lower, upper bool
}

func (k kind) id() string {
	switch {
	case k.sides == 0 && k.upper:
		return "two"
	case k.sides == 0:
		return "one"
	}
	id := "sides" + strconv.Itoa(k.sides)
	if k.lower {
		id += "+lower"
	}
	if k.upper {
		id += "+upper"
	}
	return id
}

func (k kind) count() int {
	n := k.sides
	if k.lower {
		n++
	}
	if k.upper {
		n++
	}
	return n
}

// seams is how many parting heights the kind has.
func (k kind) seams() int {
	switch {
	case k.sides == 0 && k.upper:
		return 1
	case k.sides == 0:
		return 0
	}
	return k.count() - k.sides
}

// kinds are all that are judged, fewest parts first. extra is a number of side
// parts asked for beside the usual 2, 3 and 4, or 0.
func kinds(extra int) []kind {
	out := []kind{{0, true, false}, {0, true, true}}
	sides := []int{2, 3, 4}
	if extra > 4 {
		sides = append(sides, extra)
	}
	for count := 2; count <= 8; count++ {
		for _, n := range sides {
			for _, caps := range [4][2]bool{{false, false}, {true, false}, {false, true}, {true, true}} {
				if k := (kind{n, caps[0], caps[1]}); k.count() == count {
					out = append(out, k)
				}
			}
		}
	}
	return out
}
