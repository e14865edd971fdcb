package trace

import (
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// The drawn vase of testdata/photos/sketch.mjs, against the formula it was drawn
// from: within 0.5 % rms of its widest radius, a line of 3 pixels and all; 1 %
// where one side alone and a drawn axis must tell, both of which wander.
func TestDrawnSketches(t *testing.T) {
	for name, limit := range map[string]float64{"sketch-both.png": 0.005, "sketch-half.png": 0.01} {
		f, err := os.Open(filepath.Join(photoDir, name))
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		var r Request
		var pix []byte
		pix, r.Width, r.Height = rgbaOf(img)
		d, zc := 1e5, 85.0 // a drawing has no perspective
		r.Mode, r.Scale, r.Top, r.Camera = ModeSketch, Scale{What: ScaleHeight, MM: 170}, TopOpen, Camera{DistanceMM: &d, HeightMM: &zc}
		res, err := Trace(r, pix)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		rms, most, widest := outcome(t, 1, res.Form.Outer)
		t.Logf("%s: rms %.3f mm, most %.2f mm, widest %+.2f mm, %d nodes", name, rms, most, widest, len(res.Form.Outer))
		if rms > limit*60 || most > 1 {
			t.Errorf("%s: rms %.3f mm, most %.2f mm", name, rms, most)
		}
		// where nobody tells of a camera, none is asked for, and none widens the band
		r.Camera = Camera{}
		flat, err := Trace(r, pix)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		_, off, _ := outcome(t, 1, flat.Form.Outer)
		if q := flat.Quality; q.ErrorBandMM < off || q.ErrorBandMM > 2*off || slices.ContainsFunc(q.Warnings, func(n Note) bool { return n.Code == "noDistance" }) {
			t.Errorf("%s, flat: off by up to %.2f mm, band %.2f mm, %v", name, off, q.ErrorBandMM, q.Warnings)
		}
	}
}
