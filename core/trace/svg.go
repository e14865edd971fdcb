// A profile out of an SVG drawing, and into one. The drawing may show one side
// or both, closed along the axis or open; which it is follows from its shape.

package trace

import (
	"bytes"
	"encoding/xml"
	"math"
	"slices"
	"strconv"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// SVGOptions says which path is read and how.
type SVGOptions struct {
	// Units is what a bare number means where the file gives no physical size:
	// mm, cm, in or px (96 to the inch).
	Units string
	// Path is the index in ListSVG; below 0 takes the one with the longest line.
	Path int
	// AxisMM is the axis's x in the drawing, mm from the viewBox's left edge;
	// nil finds it.
	AxisMM *float64
	// Top is TopOpen, TopClosed or TopAuto: whether a level line from the rim
	// to the axis closes the pot (it does only when told).
	Top string
	// ToleranceMM of the fitted curve; 0 takes 0.05.
	ToleranceMM float64
}

// SVGPath is a path found in a drawing.
type SVGPath struct {
	Index  int        `json:"index"`
	ID     string     `json:"id"`
	Line   int        `json:"line"` // in the file, from 1
	Width  float64    `json:"width"`
	Height float64    `json:"height"` // mm
	Closed bool       `json:"closed"`
	Fault  words.Text `json:"fault,omitzero"`
}

// ListSVG names the paths of a drawing (paths, lines, polylines, polygons) with
// their sizes in mm. The error is a *job.Fault.
func ListSVG(text []byte, units string) ([]SVGPath, error) {
	shapes, f := readShapes(text, units)
	if f != nil {
		return nil, f
	}
	out := []SVGPath{}
	for i, s := range shapes {
		v := SVGPath{Index: i, ID: s.id, Line: s.line, Fault: s.note}
		lo, hi := pt{math.Inf(1), math.Inf(1)}, pt{math.Inf(-1), math.Inf(-1)}
		for _, sub := range s.subs {
			v.Closed = v.Closed || sub.closed
			p, _ := sub.flatten()
			for _, q := range p {
				lo = pt{math.Min(lo.x, q.x), math.Min(lo.y, q.y)}
				hi = pt{math.Max(hi.x, q.x), math.Max(hi.y, q.y)}
			}
		}
		if len(s.subs) > 0 {
			v.Width, v.Height = round(hi.x-lo.x), round(hi.y-lo.y)
		}
		out = append(out, v)
	}
	return out, nil
}

// ReadSVG is the profile nodes of one path, mm, foot at z = 0. Errors are
// *job.Fault with the line of the path.
func ReadSVG(text []byte, o SVGOptions) ([]job.Node, error) {
	shapes, f := readShapes(text, o.Units)
	if f != nil {
		return nil, f
	}
	nodes, f := profileOf(shapes, o)
	if f != nil {
		return nil, f
	}
	return nodes, nil
}

func profileOf(shapes []svgShape, o SVGOptions) ([]job.Node, *job.Fault) {
	best, line, why := subpath{}, 0, words.Text{}
	longest := 0.0
	for i, s := range shapes {
		if o.Path >= 0 && i != o.Path {
			continue
		}
		if why.IsZero() {
			why = s.note
		}
		for _, sub := range s.subs {
			p, _ := sub.flatten()
			l := 0.0
			for k := 1; k < len(p); k++ {
				l += p[k-1].dist(p[k])
			}
			if l > longest {
				longest, best, line = l, sub, s.line
			}
		}
	}
	if longest == 0 {
		if o.Path >= len(shapes) {
			return nil, job.Faultf("noPath", "path", "The drawing has %d paths; there is none with the index %d.", len(shapes), o.Path)
		}
		if !why.IsZero() {
			return nil, job.Faultf("badPath", "path", "The path's data cannot be read: %s.", why).AtLine(shapes[max(o.Path, 0)].line)
		}
		return nil, job.Faultf("noPath", "text", "The drawing holds no path with a length; convert shapes and text to paths and save again.")
	}
	p, corner := best.flatten()
	q, sharp, f := halfOf(p, corner, best.closed, o)
	if f != nil {
		return nil, f.AtLine(line)
	}
	tol := o.ToleranceMM
	if tol <= 0 {
		tol = 0.05
	}
	for i := 1; i < len(q); i++ { // no repeated points
		if q[i].dist(q[i-1]) < 1e-4 {
			sharp[i-1] = sharp[i-1] || sharp[i]
			q, sharp = slices.Delete(q, i, i+1), slices.Delete(sharp, i, i+1)
			i--
		}
	}
	if len(q) < 3 {
		return nil, job.Faultf("tooFewPoints", "path", "The path has too few points for a profile; it runs from the axis under the foot, out, up and to the rim.").AtLine(line)
	}
	nodes, _, _, _ := fitNodes(q, sharp, tol)
	if _, err := form.Build(&job.Job{Form: job.Form{Size: job.SizeMold, Outer: nodes}}); err != nil {
		return nil, job.Faultf("noProfile", "path", "The path makes no profile. %s", job.Words(err)).AtLine(line)
	}
	return nodes, nil
}

// WriteSVG is the profile of the nodes as an SVG drawing in mm: a path with the
// id "profile" from the axis under the foot to the rim, x the radius, and the
// axis as a dashed line. The curve is drawn by chords within 0.01 mm.
func WriteSVG(nodes []job.Node, name string) ([]byte, error) {
	m, err := form.Build(&job.Job{Form: job.Form{Size: job.SizeMold, Outer: nodes}})
	if err != nil {
		return nil, err
	}
	const margin = 10
	h, w := m.Extent()
	pts, _ := form.Thin(m.Pts, m.Corner, 0.01)
	num := func(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4+0, 'f', -1, 64) }
	var b bytes.Buffer
	b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	W, H := w+2*margin, h+2*margin
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="` + num(W) + `mm" height="` + num(H) + `mm" viewBox="` + num(-margin) + ` ` + num(-h-margin) + ` ` + num(W) + ` ` + num(H) + `">` + "\n<title>")
	if err := xml.EscapeText(&b, []byte(name)); err != nil {
		return nil, err
	}
	b.WriteString("</title>\n")
	b.WriteString(`<line id="axis" x1="0" y1="5" x2="0" y2="` + num(-h-5) + `" stroke="#666" stroke-width="0.2" stroke-dasharray="4 1 1 1"/>` + "\n")
	b.WriteString(`<path id="profile" fill="none" stroke="#000" stroke-width="0.3" stroke-linejoin="round" d="M`)
	for i, p := range pts {
		if i > 0 {
			b.WriteString("L")
		}
		b.WriteString(num(p.R) + " " + num(-p.Z))
	}
	b.WriteString("\"/>\n</svg>\n")
	return b.Bytes(), nil
}
