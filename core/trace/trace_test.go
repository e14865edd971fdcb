package trace

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"testing"

	"moldwright/core/job"
)

// canvas is a picture to draw test scenes on.
type canvas struct {
	w, h int
	pix  []byte
}

func newCanvas(w, h int, r, g, b byte) *canvas {
	c := &canvas{w, h, make([]byte, 4*w*h)}
	for i := 0; i < len(c.pix); i += 4 {
		c.pix[i], c.pix[i+1], c.pix[i+2], c.pix[i+3] = r, g, b, 255
	}
	return c
}

// fill paints where inside says so, with 4 by 4 samples to a pixel.
func (c *canvas) fill(r, g, b byte, inside func(x, y float64) bool) *canvas {
	for y := range c.h {
		for x := range c.w {
			n := 0
			for k := range 16 {
				if inside(float64(x)+(float64(k%4)+0.5)/4, float64(y)+(float64(k/4)+0.5)/4) {
					n++
				}
			}
			if n == 0 {
				continue
			}
			i := 4 * (y*c.w + x)
			for k, v := range [3]byte{r, g, b} {
				c.pix[i+k] = byte((int(c.pix[i+k])*(16-n) + int(v)*n + 8) / 16)
			}
		}
	}
	return c
}

func (c *canvas) request() Request {
	return Request{Width: c.w, Height: c.h, Scale: Scale{What: ScaleHeight, MM: 170}}
}

// vase is the vase of the rendered pictures seen without perspective, 2 pixels
// to the mm, its foot at row y0 and axis at x0.
func vase(x0, y0 float64) func(x, y float64) bool {
	return func(x, y float64) bool {
		z := (y0 - y) / 2
		return z >= 0 && z <= 170 && math.Abs(x-x0) <= 2*trueRadius(1, z)
	}
}

func code(err error) string {
	var f *job.Fault
	if errors.As(err, &f) {
		return f.Code
	}
	return ""
}

// TestFaults: what cannot be traced is said in words, by code.
func TestFaults(t *testing.T) {
	grey := func(w, h int) *canvas { return newCanvas(w, h, 120, 120, 120) }
	disc := func(x0, y0, r float64) func(x, y float64) bool {
		return func(x, y float64) bool { return math.Hypot(x-x0, y-y0) < r }
	}
	two := newCanvas(600, 400, 200, 200, 200).fill(120, 40, 30, disc(150, 200, 90)).fill(120, 40, 30, disc(450, 200, 85))
	for _, c := range []struct {
		name string
		c    *canvas
		edit func(*Request)
		code string
	}{
		{"one pixel", grey(1, 1), nil, "pictureTooSmall"},
		{"empty", &canvas{}, nil, "emptyPicture"},
		{"uniform", grey(300, 300), nil, "nothingFound"},
		{"a thin picture", grey(5000, 3), nil, "pictureTooSmall"},
		{"at the border", newCanvas(300, 400, 220, 220, 220).fill(90, 40, 30, vase(150, 400)), nil, "touchesBorder"},
		{"two pots", two, nil, "severalPots"},
		{"no scale", newCanvas(300, 400, 220, 220, 220).fill(90, 40, 30, vase(150, 380)), func(r *Request) { r.Scale = Scale{} }, "noScale"},
		{"an unknown scale", newCanvas(300, 400, 220, 220, 220).fill(90, 40, 30, vase(150, 380)), func(r *Request) { r.Scale.What = "weight" }, "badValue"},
		{"an absurd scale", newCanvas(300, 400, 220, 220, 220).fill(90, 40, 30, vase(150, 380)), func(r *Request) { r.Scale.MM = 1e6 }, "absurdSize"},
		{"too few bytes", &canvas{100, 100, make([]byte, 99)}, nil, "wrongPixels"},
		{"an empty crop", grey(100, 100), func(r *Request) { r.Crop = &[4]float64{90, 90, 0, 0} }, "emptyCrop"},
		{"an unknown side", grey(100, 100), func(r *Request) { r.Side = "both" }, "badValue"},
		{"a wire without axis", grey(100, 100), func(r *Request) { r.Wire = &Wire{Points: [][2]float64{{20, 80}, {30, 20}}} }, "noAxis"},
		{"a wire of one point", grey(100, 100), func(r *Request) { r.Wire = &Wire{Points: [][2]float64{{20, 80}}} }, "tooFewPoints"},
		{"an empty sheet", newCanvas(300, 300, 250, 250, 250), func(r *Request) { r.Mode = ModeSketch }, "nothingFound"},
	} {
		r := c.c.request()
		if c.edit != nil {
			c.edit(&r)
		}
		_, err := Trace(r, c.c.pix)
		if code(err) != c.code {
			t.Errorf("%s: %q (%v), not %q", c.name, code(err), err, c.code)
		}
	}
	// a click or a crop settles which of two
	r := two.request()
	r.Point = &[2]float64{450, 200}
	if _, err := Trace(r, two.pix); err != nil {
		t.Error(err)
	}
	r = two.request()
	r.Crop = &[4]float64{310, 60, 280, 280}
	if _, err := Trace(r, two.pix); err != nil {
		t.Error(err)
	}
}

// drawnVase checks a result against the vase.
func drawnVase(t *testing.T, c *canvas, r Request, limit float64) Result {
	t.Helper()
	res, err := Trace(r, c.pix)
	if err != nil {
		t.Fatal(err)
	}
	overlay(t, &shot{width: c.w, height: c.h, rgba: c.pix}, res)
	rms, most, _ := outcome(t, 1, res.Form.Outer)
	t.Logf("rms %.3f max %.3f mm, %d nodes", rms, most, len(res.Form.Outer))
	if rms > limit {
		t.Errorf("rms %.2f mm, more than %g: %v", rms, limit, res.Form.Outer)
	}
	return res
}

func TestFlatPicture(t *testing.T) {
	c := newCanvas(340, 420, 215, 215, 205).fill(110, 50, 40, vase(170, 390))
	drawnVase(t, c, c.request(), 0.15)
	// a picture cut out already, on nothing
	for i := 0; i < len(c.pix); i += 4 {
		if x, y := i/4%c.w, i/4/c.w; !vase(170, 390)(float64(x)+0.5, float64(y)+0.5) {
			c.pix[i], c.pix[i+1], c.pix[i+2], c.pix[i+3] = 0, 0, 0, 0
		}
	}
	drawnVase(t, c, c.request(), 0.2)
}

// TestClutter leads the outline through a picture that no backdrop explains.
func TestClutter(t *testing.T) {
	c := newCanvas(340, 420, 200, 190, 170)
	c.fill(90, 120, 150, func(x, y float64) bool { return int(x/37)%2 == int(y/29)%2 })
	c.fill(150, 60, 45, vase(170, 390))
	side := [][2]float64{{104, 390}, {60, 290}, {52, 240}, {100, 140}, {112, 90}, {104, 50}}
	for i := range side { // a hand sets points a little beside the edge
		z := (390 - side[i][1]) / 2
		side[i][0] = 170 - 2*trueRadius(1, z) + float64(i%3) - 1
	}
	r := c.request()
	r.Wire = &Wire{Points: side}
	r.Axis = &[4]float64{170, 390, 170, 40}
	drawnVase(t, c, r, 0.6)
	if _, err := LiveWire(r, c.pix); err != nil {
		t.Error(err)
	}
	// all around the pot, in either direction
	around := append([][2]float64{}, side...)
	for i := range side {
		q := side[len(side)-1-i]
		around = append(around, [2]float64{340 - q[0], q[1]})
	}
	r.Axis = nil
	r.Wire = &Wire{Points: around, Closed: true}
	drawnVase(t, c, r, 0.6)
	slices.Reverse(around)
	drawnVase(t, c, r, 0.6)
}

// nearLine tells whether a place is within half a width of the vase's drawn
// wall, foot or rim.
func nearLine(x0, y0, half float64, left, right, ends bool) func(x, y float64) bool {
	var line []pt
	for z := 0.0; z <= 170; z += 0.5 {
		line = append(line, pt{2 * trueRadius(1, z), y0 - 2*z})
	}
	near := func(x, y float64) bool {
		at := int(y0 - y) // the line has a point each row
		for _, q := range line[min(max(at-5, 0), len(line)):min(max(at+6, 0), len(line))] {
			if math.Hypot(q.x-x, q.y-y) < half+0.3 {
				return true
			}
		}
		if ends && x >= 0 {
			return math.Abs(y-y0) < half && x < line[0].x || math.Abs(y-y0+340) < half && x < line[len(line)-1].x
		}
		return false
	}
	return func(x, y float64) bool {
		return right && near(x-x0, y) || left && near(x0-x, y)
	}
}

func TestSketches(t *testing.T) {
	sheet := func() *canvas {
		c := newCanvas(400, 440, 245, 240, 228)
		for i := 0; i < len(c.pix); i += 4 { // uneven light
			f := 1 - 0.3*float64(i/4%c.w)/float64(c.w)
			for k := range 3 {
				c.pix[i+k] = byte(float64(c.pix[i+k]) * f)
			}
		}
		return c
	}
	sketch := func(c *canvas) Request {
		r := c.request()
		r.Mode = ModeSketch
		return r
	}
	t.Run("both sides closed", func(t *testing.T) {
		c := sheet().fill(40, 40, 60, nearLine(200, 400, 1.6, true, true, true))
		drawnVase(t, c, sketch(c), 0.6)
	})
	t.Run("both sides open", func(t *testing.T) {
		c := sheet().fill(40, 40, 60, nearLine(200, 400, 1.6, true, true, false))
		drawnVase(t, c, sketch(c), 0.6)
	})
	t.Run("one side and the axis", func(t *testing.T) {
		c := sheet().fill(40, 40, 60, nearLine(200, 400, 1.6, false, true, false))
		c.fill(60, 60, 60, func(x, y float64) bool { return math.Abs(x-200) < 1 && y > 30 && y < 420 })
		drawnVase(t, c, sketch(c), 0.6)
	})
	t.Run("one side, the axis by two points", func(t *testing.T) {
		c := sheet().fill(40, 40, 60, nearLine(200, 400, 1.6, true, false, false))
		r := sketch(c)
		r.Axis = &[4]float64{200, 20, 200, 410}
		drawnVase(t, c, r, 0.6)
	})
	t.Run("one side and no axis", func(t *testing.T) {
		c := sheet().fill(40, 40, 60, nearLine(200, 400, 1.6, true, false, false))
		if _, err := Trace(sketch(c), c.pix); code(err) != "noAxis" {
			t.Error(err)
		}
	})
}

// TestSameBytes: the same picture gives the same bytes of result.
func TestSameBytes(t *testing.T) {
	s := readShots(t, "vase-600.jpg")[0]
	var first string
	for range 3 {
		res, err := Trace(s.request(), s.rgba)
		if err != nil {
			t.Fatal(err)
		}
		b, err := json.Marshal(res)
		if err != nil {
			t.Fatal(err)
		}
		if first == "" {
			first = string(b)
		}
		if first != string(b) {
			t.Fatal("two results differ")
		}
	}
}

// TestMirrored: a mirrored picture gives the mirrored outline, the same nodes
// nearly.
func TestMirrored(t *testing.T) {
	s := readShots(t, "vase-table.jpg")[0]
	a, err := Trace(s.request(), s.rgba)
	if err != nil {
		t.Fatal(err)
	}
	m := s
	m.rgba = make([]byte, len(s.rgba))
	for i := 0; i < len(s.rgba); i += 4 {
		x, y := i/4%s.width, i/4/s.width
		copy(m.rgba[4*(y*s.width+s.width-1-x):], s.rgba[i:i+4])
	}
	b, err := Trace(m.request(), m.rgba)
	if err != nil {
		t.Fatal(err)
	}
	va, vb := meridian(t, a.Form.Outer).Volume(), meridian(t, b.Form.Outer).Volume()
	if math.Abs(va/vb-1) > 3e-3 {
		t.Errorf("volumes %.0f and %.0f", va, vb)
	}
}

func FuzzTrace(f *testing.F) {
	f.Add(uint8(20), uint8(30), []byte{1, 2, 3, 200, 100}, `{"scale":{"what":"height","mm":100}}`)
	f.Add(uint8(40), uint8(40), []byte{255, 0, 0, 255, 0, 0, 0, 0, 9}, `{"scale":2,"mode":"sketch","axis":[1,2,3,40]}`)
	f.Add(uint8(60), uint8(50), []byte{7, 99}, `{"scale":2,"wire":{"points":[[1,2],[30,40],[9,9]],"closed":true},"top":"open"}`)
	f.Add(uint8(90), uint8(90), []byte{0}, `{"scale":2,"draft":true,"brush":[{"kind":"include","radius":20,"points":[[45,45],[50,60]]}]}`)
	f.Fuzz(func(t *testing.T, w, h uint8, seed []byte, text string) {
		r, err := ReadRequest([]byte(text))
		if err != nil || len(seed) == 0 {
			return
		}
		r.Width, r.Height = int(w), int(h)
		pix := make([]byte, 4*int(w)*int(h))
		for i := range pix {
			x, y := i/4%max(int(w), 1), i/4/max(int(w), 1)
			pix[i] = seed[(x*x/50+y*y/70+i%4)%len(seed)]
		}
		if res, err := Trace(r, pix); err == nil && !r.Draft {
			for _, n := range res.Form.Outer {
				if math.IsNaN(n.R) || math.IsNaN(n.Z) || n.R < 0 {
					t.Fatalf("node %v", n)
				}
			}
		}
	})
}

// TestClosedTop: a form that closes on the axis, above and below, is seen to.
func TestClosedTop(t *testing.T) {
	radius := func(z float64) float64 { // an egg 120 high
		return 45 * math.Sqrt(math.Max(0, 1-(z-60)*(z-60)/3600)) * (1 + 0.1*(60-z)/60)
	}
	c := newCanvas(300, 330, 220, 215, 205).fill(60, 80, 110, func(x, y float64) bool {
		z := (285 - y) / 2
		return z >= 0 && z <= 120 && math.Abs(x-150) <= 2*radius(z)
	})
	r := c.request()
	r.Scale.MM = 120
	res, err := Trace(r, c.pix)
	if err != nil {
		t.Fatal(err)
	}
	m := meridian(t, res.Form.Outer)
	if !m.Closed || m.Pts[0].R != 0 {
		t.Fatalf("not closed: %v", res.Form.Outer)
	}
	want := 0.0
	for z := 0.05; z < 120; z += 0.1 {
		want += math.Pi * radius(z) * radius(z) * 0.1
	}
	if e := m.Volume()/want - 1; math.Abs(e) > 0.01 {
		t.Errorf("volume off by %.2f %%: %v", 100*e, res.Form.Outer)
	}
}

// TestHiddenSpan: the wall under a wide collar, seen from above, is marked as
// hidden, and what shows is still found.
func TestHiddenSpan(t *testing.T) {
	v := Viewpoint{DistanceMM: 500, HeightMM: 190}
	radius := func(z float64) float64 { // a beaker with a collar at its rim
		if z > 100 {
			return 55
		}
		return 32
	}
	inside := func(x, y float64) bool {
		py, pz := (x-200)/2, (460-y)/2-40 // mm in the plane of the axis, 2 pixels to the mm
		// march the ray from the lens through (0, py, pz)
		for s := 0.85; s < 1.15; s += 0.001 {
			px, qy, qz := v.DistanceMM*(1-s), s*py, v.HeightMM+s*(pz-v.HeightMM)
			if qz >= 0 && qz <= 120 && px*px+qy*qy <= radius(qz)*radius(qz) {
				return true
			}
		}
		return false
	}
	c := newCanvas(400, 460, 210, 210, 205)
	for y := range c.h {
		for x := range c.w {
			if inside(float64(x)+0.5, float64(y)+0.5) {
				copy(c.pix[4*(y*c.w+x):], []byte{70, 60, 90})
			}
		}
	}
	r := c.request()
	r.Scale.MM = 120
	r.Camera = Camera{DistanceMM: &v.DistanceMM, HeightMM: &v.HeightMM}
	res, err := Trace(r, c.pix)
	if err != nil {
		t.Fatal(err)
	}
	overlay(t, &shot{width: c.w, height: c.h, rgba: c.pix}, res)
	// the ray that grazes the collar's lower edge meets the wall 23 mm further
	// in, lower by about 23 times the steepness of the view
	hidden := 23 * (v.HeightMM - 100) / v.DistanceMM
	found := false
	for _, g := range res.Quality.NotSeen {
		found = found || g.Why.String() == "hidden" && math.Abs(g.ZTo-100) < 4 && g.ZFrom < 100-hidden/3
	}
	if !found {
		t.Errorf("the wall under the collar is not marked: %+v\n%v", res.Quality, res.Form.Outer)
	}
	m := meridian(t, res.Form.Outer)
	if h, w := m.Extent(); math.Abs(h-120) > 0.5 || math.Abs(w-55) > 1 {
		t.Errorf("height %.2f, widest radius %.2f", h, w)
	}
}
