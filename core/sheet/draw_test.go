package sheet

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"moldwright/core/form"
)

func length(pts []point) (l float64) {
	for i := 1; i < len(pts); i++ {
		l += math.Hypot(pts[i].x-pts[i-1].x, pts[i].y-pts[i-1].y)
	}
	return l
}

// Cut by the windows of a grid that covers it, a line loses nothing, and each
// piece starts where the line had got to.
func TestClipLine(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for range 500 {
		pts := make([]point, 2+rng.Intn(12))
		for i := range pts {
			pts[i] = point{rng.Float64() * 100, rng.Float64() * 100}
		}
		sum := 0.0
		for gx := range 4 {
			for gy := range 4 {
				box := rect{25 * float64(gx), 25 * float64(gy), 25 * float64(gx+1), 25 * float64(gy+1)}
				for _, p := range clipLine(pts, box) {
					sum += length(p.pts)
					for _, q := range p.pts {
						if q.x < box.x0-1e-9 || q.x > box.x1+1e-9 || q.y < box.y0-1e-9 || q.y > box.y1+1e-9 {
							t.Fatalf("%v outside %v", q, box)
						}
					}
					if d := distanceAlong(pts, p.pts[0]); math.Abs(d-p.start) > 1e-6 {
						t.Fatalf("starts at %v, not %v", d, p.start)
					}
				}
			}
		}
		if math.Abs(sum-length(pts)) > 1e-6 {
			t.Fatalf("pieces add to %v of %v", sum, length(pts))
		}
	}
}

// distanceAlong walks the line to the place nearest q.
func distanceAlong(pts []point, q point) float64 {
	best, at, l := math.Inf(1), 0.0, 0.0
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		dx, dy := b.x-a.x, b.y-a.y
		s := math.Hypot(dx, dy)
		u := math.Max(0, math.Min(1, ((q.x-a.x)*dx+(q.y-a.y)*dy)/(s*s)))
		if d := math.Hypot(q.x-a.x-u*dx, q.y-a.y-u*dy); d < best-1e-12 {
			best, at = d, l+u*s
		}
		l += s
	}
	return at
}

// The length of hatching times its spacing is the area it covers.
func TestHatchCoversTheArea(t *testing.T) {
	star := []point{{0, 0}, {60, 10}, {50, 70}, {30, 30}, {5, 60}}
	area := 0.0
	for i, a := range star {
		b := star[(i+1)%len(star)]
		area += (a.x*b.y - b.x*a.y) / 2
	}
	for _, turned := range []bool{false, true} {
		d := newTestDocument(t)
		p := d.newPage(A4)
		sum := 0.0
		for _, s := range hatchLines(star, 0.5, turned) {
			sum += length(s[:])
		}
		p.hatch(star, 0.5, turned, black)
		if len(p.ops) == 0 {
			t.Error("nothing drawn")
		}
		if got := sum * 0.5; math.Abs(got-math.Abs(area)) > 0.01*math.Abs(area) {
			t.Errorf("hatching covers %.1f mm2 of %.1f", got, area)
		}
	}
}

func newTestDocument(t *testing.T) *document {
	d, err := newDocument("test", tongueOf(""))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestWrapAndFit(t *testing.T) {
	f := newTestDocument(t).fonts
	st := plain(sizeBody)
	for _, s := range []string{"", "word", "Plaster burns skin as it sets: never enclose a hand.", strings.Repeat("x", 200), "12 mm", "花 瓶 with é and e\u0301", longName} {
		for _, w := range []float64{3, 20, 60} {
			lines := f.wrap(s, st, w)
			for _, l := range lines {
				if f.width(l, st) > w+1e-9 && len([]rune(l)) > 1 {
					t.Errorf("%q is wider than %v", l, w)
				}
			}
			join := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
			if want := strings.ReplaceAll(f.printable(s), " ", ""); join != want {
				t.Errorf("wrapped %q to %q", want, join)
			}
			got, small := f.fit(s, st, w, sizeSmall, 2)
			if len(got) > 2 || small.size > st.size || small.size < sizeSmall {
				t.Errorf("fit gives %v at %v", got, small.size)
			}
		}
	}
	if got := f.wrap("12"+nbsp+"mm", st, f.width("12 mm", st)+0.1); len(got) != 1 || got[0] != "12 mm" {
		t.Errorf("number and unit: %q", got)
	}
	if lines, st := f.fit(longName, plain(sizeTitle), 80, sizeTitle, 1); !strings.HasSuffix(lines[0], "…") || f.width(lines[0], st) > 80 {
		t.Errorf("cut to %q", lines[0])
	}
}

func TestShownName(t *testing.T) {
	d := newTestDocument(t)
	for name, want := range map[string]struct {
		shown string
		lost  bool
	}{
		"Harbour jar":       {"Harbour jar", false},
		"What?":             {"What?", false},
		"花瓶":                {"Name not in Latin letters", true},
		"Кувшин 3":          {"? 3", true},
		"Vase 花瓶 A":         {"Vase ? A", true},
		"a\u202eb\x00\tc":   {"ab c", false},
		"\u00a0x\u200b y ":  {"x y", false},
		"bad\xffbyte":       {"badbyte", false},
		"Ġużè Þór ŵ ș 3 µm": {"Ġużè Þór ŵ ș 3 µm", false},
	} {
		shown, lost := d.shownName((&Input{Name: name}).title())
		if strings.TrimSpace(shown) != want.shown || lost != want.lost {
			t.Errorf("%q: %q %v", name, shown, lost)
		}
	}
}

// Accents, punctuation and units of the trade are all in the fonts.
func TestFontHoldsTheLetters(t *testing.T) {
	f := newTestDocument(t).fonts
	for _, r := range "ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõöøùúûüýþÿ" +
		"ĀāĂăĄąĆćĈĉĊċČčĎďĐđĒēĖėĘęĚěĜĝĞğĠġĢģĤĥĦħĪīĮįİıĴĵĶķĹĺĻļĽľŁłŃńŅņŇňŌōŐőŒœŔŕŖŗŘřŚśŜŝŞşŠšŢţŤťŪūŬŭŮůŰűŲųŴŵŶŷŸŹźŻżŽžȘșȚțẀẁẞ" +
		"–—‘’‚“”„†•…‰‹›«»′″€№™°²³¹·×÷±−≈≠≤≥µπρØ½¼¾←↑→↓%&@§¶©®" {
		if !f.holds(r) {
			t.Errorf("no %c", r)
		}
	}
}

func TestNum(t *testing.T) {
	l := tongueOf("")
	for _, c := range []struct {
		v    float64
		d    int
		want string
	}{{12.345, 1, "12.3"}, {-12.35, 1, "−12.3"}, {-0.04, 1, "0.0"}, {0, 0, "0"}, {1e3, 2, "1000.00"}} {
		if got := l.num(c.v, c.d); got != c.want {
			t.Errorf("%v: %q, want %q", c.v, got, c.want)
		}
	}
	if l.grams(999.4) != "999"+nbsp+"g" || l.grams(999.6) != "1.00"+nbsp+"kg" {
		t.Errorf("%q %q", l.grams(999.4), l.grams(999.6))
	}
}

// Every place of the outline is on a page that is printed, and neighbours
// share 12 mm.
func TestTilesCoverTheOutline(t *testing.T) {
	for _, k := range []float64{2.3, 3.6, 5, 7} {
		for _, full := range []bool{false, true} {
			in := sampleInput()
			in.Fired = scaled(jar(), k)
			d, err := newProfileDrawing(in, ProfileOptions{Full: full, MeasuredX: 98})
			if err != nil {
				t.Fatal(err)
			}
			tl := d.tile(A4)
			if a, b := tl.window(0, 0), tl.window(0, 1); math.Abs(a.x1-b.x0-12) > 1e-9 {
				t.Errorf("overlap %v", a.x1-b.x0)
			}
			for _, dl := range d.lines() {
				if !dl.outline {
					continue
				}
				for _, q := range dl.pts {
					x, y := q.x*d.kx, q.y*d.ky
					found := false
					for i, used := range tl.used {
						w := tl.window(i/tl.cols, i%tl.cols)
						found = found || used && x >= w.x0 && x <= w.x1 && y >= w.y0 && y <= w.y1
					}
					if !found {
						t.Fatalf("k %v full %v: %.1f, %.1f is on no page", k, full, x, y)
					}
				}
			}
		}
	}
	in := sampleInput()
	in.Fired = scaled(jar(), 24)
	d, err := newProfileDrawing(in, ProfileOptions{Full: true})
	if err != nil {
		t.Fatal(err)
	}
	if n := d.tile(A4).count; n <= maxTiles {
		t.Errorf("2.9 m high on A4 takes %d pages", n)
	}
	for i, want := range map[int]string{0: "A3", 25: "Z3", 26: "AA3"} {
		if got := tileName(i, 2); got != want {
			t.Errorf("row %d: %s", i, got)
		}
	}
}

func TestSilhouette(t *testing.T) {
	s := newSilhouette([]form.Point{{R: 0, Z: 12}, {R: 20, Z: 12}, {R: 22, Z: 10}, {R: 30, Z: 10}, {R: 50, Z: 60}, {R: 40, Z: 110}})
	if s.height != 100 || s.maxR != 50 || s.maxRZ != 50 || s.footR != 30 || !s.open || s.rim != (form.Point{R: 40, Z: 100}) {
		t.Errorf("%+v", s)
	}
	if got := s.radiusAt(25); math.Abs(got-40) > 1e-12 {
		t.Errorf("radius at 25 is %v", got)
	}
}
