package trace

import (
	"math"
	"testing"
)

// bigPhoto is a picture of 12 megapixels: a rendered one enlarged, with the
// noise of a phone camera by a fixed sequence.
func bigPhoto(b testing.TB) (Request, []byte) {
	s := shot{file: "vase-1000.jpg", pot: 1, d: 1000, zc: 90, hh: 125}
	s.load(b)
	const w, h = 3000, 4000
	p := &picture{w: s.width, h: s.height, pix: s.rgba, x1: s.width, y1: s.height}
	out := make([]byte, 4*w*h)
	seed := uint32(1)
	for y := range h {
		for x := range w {
			c := p.between((float64(x)+0.5)/w*float64(s.width), (float64(y)+0.5)/h*float64(s.height))
			i := 4 * (y*w + x)
			for k := range 3 {
				seed = seed*1664525 + 1013904223
				out[i+k] = byte(math.Max(0, math.Min(255, float64(c[k])+float64(seed>>27)-15.5)))
			}
			out[i+3] = 255
		}
	}
	r := s.request()
	r.Width, r.Height = w, h
	return r, out
}

// TestBigPhoto holds the picture of the benchmarks to the truth too.
func TestBigPhoto(t *testing.T) {
	r, pix := bigPhoto(t)
	res, err := Trace(r, pix)
	if err != nil {
		t.Fatal(err)
	}
	report(t, &shot{pot: 1, d: 1000, zc: 90}, res)
}

func BenchmarkTrace12MP(b *testing.B) {
	r, pix := bigPhoto(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Trace(r, pix); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFirstOutline12MP(b *testing.B) {
	r, pix := bigPhoto(b)
	r.Draft = true
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Trace(r, pix); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLiveWire12MP(b *testing.B) {
	r, pix := bigPhoto(b)
	r.Wire = &Wire{Points: [][2]float64{{1000, 3480}, {550, 2400}, {1040, 1100}}}
	for b.Loop() {
		if _, err := LiveWire(r, pix); err != nil {
			b.Fatal(err)
		}
	}
}
