package trace

import (
	"bufio"
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
)

const photoDir = "../../testdata/photos"

// shot is one rendered picture and how it was taken.
type shot struct {
	file          string
	pot           int
	d, zc, hh     float64
	tilt          float64
	width, height int
	rgba          []byte
}

// trueRadius is the profile that pot.pov turns, written a second time.
func trueRadius(pot int, z float64) float64 {
	switch pot {
	case 1:
		return 44 + 16*math.Sin((z-20)/27)
	case 2:
		if z < 25 {
			return 30 + 8*z/25
		}
		return 38 + 3*(z-25)/75
	default:
		return 30 + 52*math.Sin(math.Pi/2*0.9*z/72)
	}
}

func trueSize(pot int) (height, widest float64) {
	height = [4]float64{0, 170, 100, 72}[pot]
	for z := 0.0; z <= height; z += 0.1 {
		widest = math.Max(widest, trueRadius(pot, z))
	}
	return height, widest
}

// readShots loads the named pictures, or all.
func readShots(t testing.TB, files ...string) []shot {
	f, err := os.Open(filepath.Join(photoDir, "pictures.txt"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []shot
	for s := bufio.NewScanner(f); s.Scan(); {
		var v shot
		if strings.HasPrefix(s.Text(), "#") {
			continue
		}
		if _, err := fmt.Sscan(s.Text(), &v.file, &v.pot, &v.d, &v.zc, &v.hh, &v.tilt); err != nil {
			t.Fatal(err)
		}
		if len(files) > 0 && !slices.Contains(files, v.file) {
			continue
		}
		v.load(t)
		out = append(out, v)
	}
	return out
}

func (s *shot) load(t testing.TB) {
	f, err := os.Open(filepath.Join(photoDir, s.file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := jpeg.Decode(f)
	if err != nil {
		t.Fatal(s.file, err)
	}
	s.rgba, s.width, s.height = rgbaOf(img)
}

func rgbaOf(img image.Image) ([]byte, int, int) {
	b := img.Bounds()
	out := image.NewNRGBA(image.Rect(0, 0, b.Dx(), b.Dy()))
	draw.Draw(out, out.Bounds(), img, b.Min, draw.Src)
	return out.Pix, b.Dx(), b.Dy()
}

func (s *shot) request() Request {
	h, _ := trueSize(s.pot)
	return Request{Width: s.width, Height: s.height, Scale: Scale{What: ScaleHeight, MM: h},
		Camera: Camera{DistanceMM: &s.d, HeightMM: &s.zc}}
}

// outcome compares the drawn curve with the truth: radial errors at heights
// from foot to rim, mm.
func outcome(t testing.TB, pot int, nodes []job.Node) (rms, most, widestErr float64) {
	m, err := form.Build(&job.Job{Form: job.Form{Size: job.SizeMold, Outer: nodes}})
	if err != nil {
		t.Fatalf("the nodes make no profile: %v\n%v", err, nodes)
	}
	height, _ := trueSize(pot)
	n := 0
	widest := 0.0
	for z := 0.5; z < height-0.5; z += 0.5 {
		r := 0.0
		for i := 0; i+1 < len(m.Pts); i++ {
			p, q := m.Pts[i], m.Pts[i+1]
			if (p.Z-z)*(q.Z-z) <= 0 && p.Z != q.Z {
				r = math.Max(r, p.R+(z-p.Z)/(q.Z-p.Z)*(q.R-p.R))
			}
		}
		e := r - trueRadius(pot, z)
		widest = math.Max(widest, r)
		rms += e * e
		most = math.Max(most, math.Abs(e))
		n++
	}
	_, w := trueSize(pot)
	return math.Sqrt(rms / float64(n)), most, widest - w
}

// TestPhotos holds traced profiles against what the pictures were rendered
// from, for every picture.
func TestPhotos(t *testing.T) {
	for _, s := range readShots(t) {
		t.Run(strings.TrimSuffix(s.file, ".jpg"), func(t *testing.T) {
			r := s.request()
			if strings.Contains(s.file, "second") {
				r.Point = &[2]float64{450, 400}
			}
			check(t, &s, r)
		})
	}
}

// TestWorsePhotos traces pictures with noise, blur and hard compression added.
func TestWorsePhotos(t *testing.T) {
	for _, c := range []struct {
		name string
		file string
		make func(t *testing.T, s *shot)
	}{
		{"noise", "vase-1000.jpg", func(t *testing.T, s *shot) { addNoise(s, 40) }},
		{"blur", "vase-1000.jpg", func(t *testing.T, s *shot) { blur(s, 4) }},
		{"blur and noise", "vase-table.jpg", func(t *testing.T, s *shot) { blur(s, 2); addNoise(s, 25) }},
		{"jpeg at quality 15", "vase-1000.jpg", func(t *testing.T, s *shot) { compress(t, s, 15) }},
		{"gradient of light", "vase-1000.jpg", func(t *testing.T, s *shot) { shade(s) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := readShots(t, c.file)[0]
			c.make(t, &s)
			check(t, &s, s.request())
		})
	}
}

func TestSidesAndBrush(t *testing.T) {
	for _, s := range readShots(t, "vase-handle.jpg") {
		t.Run("the side without the handle", func(t *testing.T) {
			r := s.request()
			r.Side = SideLeft
			check(t, &s, r)
		})
		t.Run("the handle brushed away", func(t *testing.T) {
			r := s.request()
			r.Brush = []Stroke{{Kind: "exclude", Radius: 30, Points: [][2]float64{{480, 340}, {530, 380}, {560, 430}, {530, 480}, {500, 520}}}}
			check(t, &s, r)
		})
	}
}

// TestUnknownCamera traces with the lens's height left out, then its distance
// too: rim and foot must tell.
func TestUnknownCamera(t *testing.T) {
	for _, s := range readShots(t) {
		if s.pot != 1 || s.d > 1000 || s.tilt != 0 || strings.Contains(s.file, "second") {
			continue
		}
		t.Run(s.file, func(t *testing.T) {
			r := s.request()
			r.Camera.HeightMM = nil
			res := check(t, &s, r)
			if e := math.Abs(res.Camera.HeightMM - s.zc); e > 30 {
				t.Errorf("the lens is found %.0f mm off", e)
			}
			if s.zc < 170 { // from above the rim the two ellipses do not tell
				r.Camera.DistanceMM = nil
				res = check(t, &s, r)
				if e := math.Abs(res.Camera.DistanceMM/s.d - 1); res.Camera.DistanceFrom != "ellipses" || e > 0.25 {
					t.Errorf("the distance is found %.0f %% off", 100*e)
				}
			}
		})
	}
}

func TestScales(t *testing.T) {
	for _, s := range readShots(t, "vase-600.jpg") {
		_, widest := trueSize(1)
		mm := 2 * s.hh / float64(s.height)
		for _, sc := range []Scale{
			{What: ScaleMaxDiameter, MM: 2 * widest},
			{What: ScaleRimDiameter, MM: 2 * trueRadius(1, 170)},
			{What: ScaleBar, MM: 100, X0: 50, Y0: 700, X1: 50 + 100/mm, Y1: 700},
			{What: ScaleBar, MM: 100, X0: 50, Y0: 700, X1: 50 + 100/mm*600/550, Y1: 700, InFrontMM: 50},
		} {
			r := s.request()
			r.Scale = sc
			t.Logf("%+v", sc)
			check(t, &s, r)
		}
	}
}

func addNoise(s *shot, width float64) {
	seed := uint32(7)
	for i := range s.rgba {
		if i%4 != 3 {
			seed = seed*1664525 + 1013904223
			s.rgba[i] = byte(math.Max(0, math.Min(255, float64(s.rgba[i])+width*(float64(seed>>8)/(1<<24)-0.5))))
		}
	}
}

// blur is a square mean of 2n+1 pixels a side.
func blur(s *shot, n int) {
	out := append([]byte(nil), s.rgba...)
	for y := n; y < s.height-n; y++ {
		for x := n; x < s.width-n; x++ {
			for k := range 3 {
				sum := 0
				for v := -n; v <= n; v++ {
					for u := -n; u <= n; u++ {
						sum += int(s.rgba[4*((y+v)*s.width+x+u)+k])
					}
				}
				out[4*(y*s.width+x)+k] = byte(sum / ((2*n + 1) * (2*n + 1)))
			}
		}
	}
	s.rgba = out
}

func compress(t *testing.T, s *shot, quality int) {
	var b bytes.Buffer
	img := &image.NRGBA{Pix: s.rgba, Stride: 4 * s.width, Rect: image.Rect(0, 0, s.width, s.height)}
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: quality}); err != nil {
		t.Fatal(err)
	}
	back, err := jpeg.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	s.rgba, _, _ = rgbaOf(back)
}

// shade darkens the picture to a third from the upper left to the lower right.
func shade(s *shot) {
	for i := range s.rgba {
		if i%4 != 3 {
			x, y := float64(i/4%s.width)/float64(s.width), float64(i/4/s.width)/float64(s.height)
			s.rgba[i] = byte(float64(s.rgba[i]) * (1 - x/3 - y/3))
		}
	}
}

func check(t *testing.T, s *shot, r Request) Result {
	t.Helper()
	res, err := Trace(r, s.rgba)
	if err != nil {
		t.Fatal(err)
	}
	overlay(t, s, res)
	report(t, s, res)
	return res
}

func report(t *testing.T, s *shot, res Result) {
	t.Helper()
	rms, most, widest := outcome(t, s.pot, res.Form.Outer)
	_, w := trueSize(s.pot)
	q := res.Quality
	codes := ""
	for _, n := range q.Warnings {
		codes += " " + n.Code
	}
	t.Logf("rms %.3f mm %.2f %%  max %.2f mm %.2f %%  widest %+.2f mm %+.2f %%  nodes %d fit %.3f/%.3f band %.2f tilt %.2f sym %.2f cam %.0f %s %.0f %s%s",
		rms, 100*rms/w, most, 100*most/w, widest, 100*widest/w, len(res.Form.Outer), q.RmsMM, q.MaxMM, q.ErrorBandMM, q.TiltDeg, q.SymmetryResidualMM,
		res.Camera.DistanceMM, res.Camera.DistanceFrom, res.Camera.HeightMM, res.Camera.HeightFrom, codes)
	limit := 0.5
	switch {
	case res.Camera.HeightFrom == "ellipses" && s.zc > 170:
		limit = 1 // seen from above, the foot's ellipse alone must tell
	case s.d < 600:
		limit = 0.8
	}
	if most > q.ErrorBandMM {
		t.Errorf("the profile is %.2f mm off, outside the band of %.2f mm", most, q.ErrorBandMM)
	}
	if 100*rms/w > limit {
		t.Errorf("rms %.2f %% of the radius, more than %g %%", 100*rms/w, limit)
	}
}

// The camera of the pictures is level, so the row of z = 0 in the plane of the
// axis follows from its height and the frame alone.
func TestSeat(t *testing.T) {
	looked := 0
	for _, s := range readShots(t) {
		if s.tilt != 0 || s.d < 600 {
			continue
		}
		res, err := Trace(s.request(), s.rgba)
		if err != nil {
			t.Fatal(s.file, err)
		}
		looked++
		perMM := float64(s.height) / (2 * s.hh)
		want := float64(s.height)/2 + s.zc*perMM
		if e := (res.Seat[1] - want) / perMM; math.Abs(e) > 0.8 {
			t.Errorf("%s: z = 0 lies %.2f mm off", s.file, e)
		}
	}
	if looked < 8 {
		t.Errorf("only %d pictures", looked)
	}
}

// overlay draws the outline over the picture when MOLDWRIGHT_OVERLAY names a
// directory.
func overlay(t testing.TB, s *shot, res Result) {
	dir := os.Getenv("MOLDWRIGHT_OVERLAY")
	if dir == "" {
		return
	}
	img := &image.NRGBA{Pix: append([]byte(nil), s.rgba...), Stride: 4 * s.width, Rect: image.Rect(0, 0, s.width, s.height)}
	for _, q := range res.Outline {
		for d := 0; d < 4; d++ {
			img.Set(int(q[0])+d%2, int(q[1])+d/2, color.NRGBA{255, 0, 255, 255})
		}
	}
	a := res.Axis
	for i := 0; i <= 400; i++ {
		u := float64(i) / 400
		img.Set(int(a[0]+u*(a[2]-a[0])), int(a[1]+u*(a[3]-a[1])), color.NRGBA{0, 255, 255, 255})
	}
	f, err := os.Create(filepath.Join(dir, strings.ReplaceAll(t.Name(), "/", "-")+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
}
