package sheet

import (
	"fmt"
	"math"

	"moldwright/core/job"
)

// A profile larger than the paper goes over several pages that overlap. Each
// carries its row and column, the check bars and, on the middle line of each
// overlap, two crosses that fall on those of its neighbour. A first page
// shows the map. Pages that no outline crosses are left out.

const (
	overlap  = 12.0 // mm on paper
	maxTiles = 30
	slack    = 4.0 // mm kept free left of the outline and below it
)

// tiling is a grid of equal windows over the drawing, in paper mm counted
// from the model's origin.
type tiling struct {
	paper      Paper
	x0, y0     float64 // lower left corner of the grid
	w, h       float64 // of one window
	cols, rows int
	used       []bool // row-major, top row first
	count      int
}

// window is the part of the drawing that row and column show.
func (t *tiling) window(row, col int) rect {
	x := t.x0 + float64(col)*(t.w-overlap)
	y := t.y0 + float64(t.rows-1-row)*(t.h-overlap)
	return rect{x, y, x + t.w, y + t.h}
}

func (t *tiling) has(row, col int) bool {
	return row >= 0 && col >= 0 && row < t.rows && col < t.cols && t.used[row*t.cols+col]
}

// tileName is the row as a letter and the column as a number, from the top
// left.
func tileName(row, col int) string {
	name := ""
	for row++; row > 0; row = (row - 1) / 26 {
		name = string(rune('A'+(row-1)%26)) + name
	}
	return fmt.Sprintf("%s%d", name, col+1)
}

// tile lays windows of the paper over the drawing.
func (d *profileDrawing) tile(paper Paper) tiling {
	fr := drawingFrame(paper)
	e := d.extent()
	t := tiling{paper: paper, w: fr.w(), h: fr.h() - barStripHeight, x0: d.kx*e.x0 - slack, y0: d.ky*e.y0 - slack}
	steps := func(length, window float64) int {
		return max(1, int(math.Ceil((length-overlap)/(window-overlap))))
	}
	t.cols = steps(d.kx*e.w()+slack+wide, t.w)
	t.rows = steps(d.ky*e.h()+slack+wide, t.h)
	t.used = make([]bool, t.rows*t.cols)
	v := view{point{}, d.kx, d.ky}
	lines := d.lines()
	for i := range t.used {
		win := t.window(i/t.cols, i%t.cols)
		for _, dl := range lines {
			pts := make([]point, len(dl.pts))
			for k, q := range dl.pts {
				pts[k] = v.at(q.x, q.y)
			}
			if dl.outline && len(clipLine(pts, win)) > 0 {
				t.used[i] = true
				t.count++
				break
			}
		}
	}
	return t
}

// tiled draws the map and the pages.
func (d *profileDrawing) tiled(doc *document, paper Paper) error {
	t := d.tile(paper)
	if a := d.tile(paper.across()); a.count < t.count {
		t = a
	}
	if t.count > maxTiles {
		return job.Faultf("pages", "paper", "At 1:1 this profile takes %d pages of %s, more than %d. Take a larger paper, the half profile, or check the units.", t.count, paper.Name, maxTiles)
	}
	d.mapPage(doc, paper, t)
	n := 1
	for i, used := range t.used {
		if used {
			n++
			d.tilePage(doc, t, i/t.cols, i%t.cols, n)
		}
	}
	return nil
}

// reductions are the scales of ISO 5455 for drawings smaller than life.
var reductions = [...]int{2, 5, 10, 20, 50, 100}

// mapPage shows how the pages lie together, and how to join them.
func (d *profileDrawing) mapPage(doc *document, paper Paper, t tiling) {
	p := doc.newPage(paper)
	grid := rect{t.x0, t.y0, t.x0 + float64(t.cols)*(t.w-overlap) + overlap, t.y0 + float64(t.rows)*(t.h-overlap) + overlap}
	fr := drawingFrame(paper)
	const wordsHeight = 44
	room := rect{fr.x0 + 8, fr.y0 + blockHeight + d.stripHeight() + 10, fr.x1 - 8, fr.y1 - wordsHeight}
	scale := reductions[len(reductions)-1]
	for _, s := range reductions {
		if grid.w() <= room.w()*float64(s) && grid.h() <= room.h()*float64(s) {
			scale = s
			break
		}
	}
	area := p.titleBlock(blockFields{name: d.in.title(), kind: d.say("Map of the pages"), number: d.number, scale: fmt.Sprintf("1:%d", scale), size: d.sizeTag, sheet: 1, of: t.count + 1})
	p.barStrip(area, d)

	x, y := fr.x0+8, fr.y1-7
	p.text(x, y-3, p.say("%d pages at 1:1", t.count), plain(sizeHead).heavy(), left)
	y -= 7
	words := []string{
		p.say("Print all pages at 100 %%, actual size, and measure the bars on each."),
		p.say("On each page trim along the dashed lines at its right and upper edge."),
		p.say("Lay it over its neighbour so that the crosses meet, then tape. The letter is the row from the top, the number the column from the left."),
	}
	if traced := d.tracedWords(); traced != "" {
		words = append(words, traced)
	}
	for i, s := range words {
		p.text(x, y-plain(sizeBody).lead()+0.8, fmt.Sprintf("%d", i+1), plain(sizeBody).heavy(), left)
		y = p.paragraph(x+5, y, fr.w()-26, s, plain(sizeBody)) - 1
	}

	k := 1 / float64(scale)
	v := view{point{room.x0 + (room.w()-k*grid.w())/2 - k*grid.x0, room.y0 + (room.h()-k*grid.h())/2 - k*grid.y0}, k * d.kx, k * d.ky}
	box := func(i int) rect {
		w := t.window(i/t.cols, i%t.cols)
		return rect{v.origin.x + k*w.x0, v.origin.y + k*w.y0, v.origin.x + k*w.x1, v.origin.y + k*w.y1}
	}
	for i, used := range t.used {
		if used {
			p.frame(box(i), dashed.in(grey))
		}
	}
	d.draw(p, v, nil)
	for i, used := range t.used {
		if !used {
			continue
		}
		b, c, name := box(i), k*overlap, tileName(i/t.cols, i%t.cols)
		st := plain(sizeLead).heavy()
		tw := doc.fonts.width(name, st)
		at := point{b.x0 + c + 2, b.y1 - c - 2 - st.capHeight()}
		p.fillRect(rect{at.x - 1, at.y - 1, at.x + tw + 1, at.y + st.capHeight() + 1}, white)
		p.text(at.x, at.y, name, st.in(blue), left)
	}
}

// tilePage draws one window at true size.
func (d *profileDrawing) tilePage(doc *document, t tiling, row, col, n int) {
	p := doc.newPage(t.paper)
	fr := drawingFrame(t.paper)
	win := t.window(row, col)
	area := rect{fr.x0, fr.y1 - t.h, fr.x1, fr.y1}
	name := tileName(row, col)

	// The label stands in the strip, clear of the drawing.
	x := fr.x0 + 2 + 101.6*d.kx + 6
	shown, _ := doc.shownName(d.in.title())
	head, st := doc.fonts.fit(shown, plain(sizeBody).heavy(), fr.x1-x-18, sizeSmall, 1)
	p.text(x, fr.y0+6.6, head[0], st, left)
	p.text(x, fr.y0+3, p.say("%s 1:1, %s · page %d of %d", d.word(), d.ofSize, n, t.count+1), faint(sizeSmall), left)
	p.text(fr.x1-2, fr.y0+3, name, plain(sizeTitle).heavy().in(blue), right)
	p.checkBars(fr.x0, fr.y0, fr.w(), barStripHeight, d.kx, d.ky)

	p.frame(area, thin)
	v := view{point{area.x0 - win.x0, area.y0 - win.y0}, d.kx, d.ky}
	d.draw(p, v, &area)

	p.joint(area, t.has(row, col-1), area.x0+overlap/2, true, false, tileName(row, col-1))
	p.joint(area, t.has(row, col+1), area.x1-overlap/2, true, true, tileName(row, col+1))
	p.joint(area, t.has(row+1, col), area.y0+overlap/2, false, false, tileName(row+1, col))
	p.joint(area, t.has(row-1, col), area.y1-overlap/2, false, true, tileName(row-1, col))
}

// joint marks the middle of an overlap at x (upright) or y: crosses for
// lining up, the neighbour's name, and on the sides that lie on top the line
// to trim along.
func (p *page) joint(area rect, there bool, at float64, upright, trim bool, name string) {
	if !there {
		return
	}
	cross := func(x, y float64) {
		const arm = 4
		p.line(x-arm, y, x+arm, y, thin)
		p.line(x, y-arm, x, y+arm, thin)
	}
	st := plain(sizeSmall).in(blue)
	if upright {
		if trim {
			p.line(at, area.y0, at, area.y1, dashed.in(grey))
		}
		cross(at, area.y0+area.h()/4)
		cross(at, area.y0+3*area.h()/4)
		p.text(at+1, area.y0+area.h()/4+2, name, st, left)
		return
	}
	if trim {
		p.line(area.x0, at, area.x1, at, dashed.in(grey))
	}
	cross(area.x0+area.w()/4, at)
	cross(area.x0+3*area.w()/4, at)
	p.text(area.x0+area.w()/4+1, at+2, name, st, left)
}
