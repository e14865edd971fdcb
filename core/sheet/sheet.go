// Package sheet draws the pages that go to the bench and to class: profile and
// section, report and workshop card, worksheet, key and result sheet. It takes
// plain values, lays them out in millimetres
// and writes PDF or SVG through github.com/tdewolff/canvas.
//
// Same input, same bytes, on every processor: coordinates are rounded to
// 0.0001 mm before they are written, fonts are read afresh for each sheet
// (the library alters a font when it subsets it) and everything that the
// library stamps with a clock is put right in seal.go.
package sheet

import (
	"math"
	"strings"

	"moldwright/core/job"
)

// Format is what a sheet is written as.
type Format int

const (
	PDF Format = iota // one file with all pages
	SVG               // one file a page
)

// FormatNamed is the format of the name "pdf" or "svg".
func FormatNamed(name string) (Format, error) {
	switch strings.ToLower(name) {
	case "pdf":
		return PDF, nil
	case "svg":
		return SVG, nil
	}
	return 0, job.Faultf("format", "as", "A sheet is written as pdf or svg, not as %q.", name)
}

// Paper is a size of paper, upright, in mm.
type Paper struct {
	Name string
	W, H float64
}

// A4 and A3 after ISO 216; Letter is size A of ANSI/ASME Y14.1, 8.5 x 11 in.
var (
	A4     = Paper{"A4", 210, 297}
	A3     = Paper{"A3", 297, 420}
	Letter = Paper{"Letter", 215.9, 279.4}
)

// PaperNamed is the paper of the name, in any case.
func PaperNamed(name string) (Paper, error) {
	for _, p := range [...]Paper{A4, A3, Letter} {
		if strings.EqualFold(p.Name, name) {
			return p, nil
		}
	}
	return Paper{}, job.Faultf("paper", "paper", "Paper is A4, A3 or Letter, not %q.", name)
}

// across is the paper turned on its side.
func (p Paper) across() Paper { return Paper{p.Name, p.H, p.W} }

// large tells whether the paper has room for larger type than a letter's.
func (p Paper) large() bool { return math.Min(p.W, p.H) > 250 }

// body is the size in points of headings, and of running words on pages of
// pictures and tables.
func (p Paper) body() float64 {
	if p.large() {
		return sizeLead
	}
	return sizeBody
}

// Profile draws the profile at 1:1. What does not fit the paper is tiled over
// several pages behind a page with the map. It gives one blob for PDF and one
// a page for SVG, and the number of pages.
func Profile(in Input, paper Paper, as Format, opt ProfileOptions) (blobs [][]byte, pages int, err error) {
	d, err := profileDocument(in, paper, opt)
	if err != nil {
		return nil, 0, err
	}
	return d.write(as)
}

// Report draws the split report: on its first page the verdict in words, the
// section, why not fewer, the order, the parts, figures and cautions (more
// pages only where there is more to tell); on those after, the grounds. Blobs
// as for Profile.
func Report(in Input, paper Paper, as Format, opt ReportOptions) (blobs [][]byte, pages int, err error) {
	d, err := reportDocument(in, paper, opt)
	if err != nil {
		return nil, 0, err
	}
	return d.write(as)
}

// Section draws the section of the closed mold at a scale of ISO 5455, with the
// plan of its seam, on one page. Blobs as for Profile.
func Section(in Input, paper Paper, as Format) (blobs [][]byte, pages int, err error) {
	d, err := sectionDocument(in, paper)
	if err != nil {
		return nil, 0, err
	}
	return d.write(as)
}

// Workshop draws the card to hang on the wall: one page in large type with
// batches, times, order, bands, weights and cautions. Blobs as for Profile.
func Workshop(in Input, paper Paper, as Format) (blobs [][]byte, pages int, err error) {
	d, err := workshopDocument(in, paper)
	if err != nil {
		return nil, 0, err
	}
	return d.write(as)
}
