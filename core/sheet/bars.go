package sheet

// Check bars: a printer that scales, and that scales unequally, is found with
// a ruler. 100 mm across, 100 mm up and 4 inches, at the true scale of the
// drawing on the same page.

const (
	barStripHeight = 21.0
)

// barAcross is the 100 mm bar from x along y, ticks upward.
func (p *page) barAcross(x, y, k float64) {
	p.line(x-thin.width/2, y, x+100*k+thin.width/2, y, thin)
	for i := 0; i <= 20; i++ {
		h := 1.6
		if i%2 == 0 {
			h = 2.6
		}
		if i%10 == 0 {
			h = 3.8
		}
		p.line(x+5*k*float64(i), y, x+5*k*float64(i), y+h, thin)
	}
	for i := 0; i < 10; i += 2 {
		p.fillRect(rect{x + 10*k*float64(i), y, x + 10*k*float64(i+1), y + 0.9}, black)
	}
	p.text(x+50*k, y+4.4, "50", faint(sizeSmall), center)
	p.text(x, y+4.4, "0", faint(sizeSmall), center)
	p.text(x+100*k, y+4.4, "100 mm", faint(sizeSmall), right)
}

// barInches is the bar of 4 inches from x along y, ticks downward.
func (p *page) barInches(x, y, k float64) {
	p.line(x-thin.width/2, y, x+101.6*k+thin.width/2, y, thin)
	for i := 0; i <= 16; i++ {
		h := 1.3
		if i%2 == 0 {
			h = 2.0
		}
		if i%4 == 0 {
			h = 3.2
		}
		p.line(x+6.35*k*float64(i), y, x+6.35*k*float64(i), y-h, thin)
	}
	p.text(x+50.8*k, y-5.8, "2", faint(sizeSmall), center)
	p.text(x, y-5.8, "0", faint(sizeSmall), center)
	p.text(x+101.6*k, y-5.8, "4 in", faint(sizeSmall), right)
}

// barUp is the 100 mm bar from y along x, ticks to the right.
func (p *page) barUp(x, y, k float64) {
	p.line(x, y-thin.width/2, x, y+100*k+thin.width/2, thin)
	for i := 0; i <= 20; i++ {
		h := 1.6
		if i%2 == 0 {
			h = 2.6
		}
		if i%10 == 0 {
			h = 3.8
		}
		p.line(x, y+5*k*float64(i), x+h, y+5*k*float64(i), thin)
	}
	for i := 0; i < 10; i += 2 {
		p.fillRect(rect{x, y + 10*k*float64(i), x + 0.9, y + 10*k*float64(i+1)}, black)
	}
	p.textUp(x-1, y+50*k, "100 mm", faint(sizeSmall), center)
}

// checkBars draws all three and the words beside them: the strip has its
// lower left corner at x, y and is w wide and h high. Kx and ky are the compensation.
func (p *page) checkBars(x, y, w, h, kx, ky float64) {
	p.barAcross(x+2, y+11.2, kx)
	p.barInches(x+2, y+9.8, kx)
	note := p.say("Print at 100 %%, actual size; if this bar measures 97 mm the printer is at 97 %%.")
	if kx != 1 || ky != 1 {
		note = p.say("Drawn at %s %% across and %s %% up for one printer, on which these bars measure 100 mm. On any other it is out of true.",
			p.num(100*kx, 1), p.num(100*ky, 1))
	}
	tx := x + 2 + 101.6*kx + 6
	p.paragraph(tx, y+h-1.6, x+w-tx-1, note, plain(sizeSmall))
	p.barUp(12, p.paper.H/2-50*ky, ky)
}
