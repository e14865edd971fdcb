package sheet

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Letters of random parts, cut by random lines and among random words: all stand,
// none lies on another, on words or on a line, and each stands in its own part or is
// led to it.
func TestLettersAreClear(t *testing.T) {
	g := rand.New(rand.NewPCG(5, 5))
	beside := 0
	for n := range 300 {
		d := newTestDocument(t)
		p := d.newPage(A4)
		l := p.lettering()
		var parts [][]point
		y := 60.0
		for _, name := range "LKU"[:2+g.IntN(2)] {
			// a stack of parts, some thinner than a letter
			h, x0, x1 := 0.5+20*g.Float64()*g.Float64(), 60+20*g.Float64(), 100+20*g.Float64()
			part := []point{{x0, y}, {x1, y}, {x1 - 10*g.Float64(), y + h}, {x0, y + h}}
			p.stroke(append(part[:4:4], part[0]), thin, 0)
			l.add(string(name), part)
			parts = append(parts, part)
			y += h
		}
		lines := len(l.lines)
		for range g.IntN(4) {
			p.line(50+80*g.Float64(), 55+40*g.Float64(), 50+80*g.Float64(), 55+40*g.Float64(), thin)
		}
		p.text(60+60*g.Float64(), 60+20*g.Float64(), "12.5 mm", plain(sizeSmall), left)
		drawn := l.lines
		words := len(p.boxes)
		l.set(rect{30, 40, 150, 120}, plain(sizeBody).heavy())
		if got := len(p.boxes) - words; got != len(parts) {
			t.Fatalf("%d: %d letters of %d parts", n, got, len(parts))
		}
		checkPage(t, "letters", n, p)
		for _, b := range p.boxes[words:] {
			mid := point{(b.x0 + b.x1) / 2, b.y1 - plain(sizeBody).capHeight()/2}
			in := false
			for i, part := range parts {
				if depthInside(part, mid, 0) > 0 {
					in = true
					if b.text != string("LKU"[i]) {
						t.Errorf("%d: %s stands in another part", n, b.text)
					}
				}
			}
			if !in {
				beside++
			}
			for k, line := range drawn {
				for i := 1; i < len(line.pts); i++ {
					// the middle keeps half a letter's height and its white from all lines
					if gap := distance(mid, line.pts[i-1], line.pts[i]); gap < plain(sizeBody).capHeight()/2+letterPad {
						t.Errorf("%d: %s stands %.2f mm from line %d of %d", n, b.text, gap, k, lines)
					}
				}
			}
		}
	}
	if beside < 50 || beside > 600 {
		t.Errorf("%d letters stand beside their parts: the test sees little", beside)
	}
}

// distance is that of a place from a straight line between two others.
func distance(q, a, b point) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	s := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		s = math.Max(0, math.Min(1, ((q.x-a.x)*dx+(q.y-a.y)*dy)/l))
	}
	return math.Hypot(q.x-a.x-s*dx, q.y-a.y-s*dy)
}
