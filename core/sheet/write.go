package sheet

import (
	"bytes"
	"encoding/xml"
	"fmt"

	"github.com/tdewolff/canvas/renderers/pdf"
	"github.com/tdewolff/canvas/renderers/svg"
)

// write gives the document as one PDF or as one SVG a page.
func (d *document) write(as Format) ([][]byte, int, error) {
	if as == SVG {
		blobs := make([][]byte, len(d.pages))
		for i, p := range d.pages {
			var err error
			if blobs[i], err = p.svg(); err != nil {
				return nil, 0, err
			}
		}
		return blobs, len(d.pages), nil
	}
	blob, err := d.pdf()
	if err != nil {
		return nil, 0, err
	}
	return [][]byte{blob}, len(d.pages), nil
}

func (d *document) pdf() ([]byte, error) {
	var raw bytes.Buffer
	first := d.pages[0].paper
	// seal deflates: it has to open the fonts anyway.
	r := pdf.New(&raw, first.W, first.H, &pdf.Options{Compress: false, SubsetFonts: true})
	for i, p := range d.pages {
		if i > 0 {
			r.NewPage(p.paper.W, p.paper.H)
		}
		for _, op := range p.ops {
			op(r)
		}
	}
	if err := r.Close(); err != nil {
		return nil, err
	}
	return seal(raw.Bytes(), d.title, string(d.tongue))
}

// svg carries its fonts in the file: text stays text, can be searched and
// copied, and stands as measured in any browser. A viewer that ignores fonts
// in a file falls back on its own sans.
func (p *page) svg() ([]byte, error) {
	var b bytes.Buffer
	r := svg.New(&b, p.paper.W, p.paper.H, &svg.Options{SizeUnits: "mm"})
	b.WriteString("<title>")
	if err := xml.EscapeText(&b, []byte(p.doc.title)); err != nil {
		return nil, err
	}
	fmt.Fprintf(&b, `</title><g xml:lang="%s">`, p.tongue)
	for _, op := range p.ops {
		op(r)
	}
	b.WriteString("</g>")
	r.SetCustomStyle(fontRules(p.uses[0], p.uses[1]))
	if err := r.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
