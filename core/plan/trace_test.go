package plan

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
)

// picture paints a dark vase of known radii on a light ground, 4 pixels a mm,
// seen from far away: 40 at the foot, 60 at 70 mm, 35 at the rim at 140 mm.
func picture() (w, h int, rgba []byte) {
	w, h = 640, 680
	rgba = make([]byte, w*h*4)
	for y := range h {
		z := (620 - float64(y) - 0.5) / 4
		r := -1.0
		if z >= 0 && z <= 140 {
			r = 60 - 20*math.Pow((z-70)/70, 2)
			if z > 70 {
				r = 60 - 25*math.Pow((z-70)/70, 2)
			}
		}
		for x := range w {
			d := r*4 - math.Abs(float64(x)+0.5-320)
			v := 230 - 180*math.Max(0, math.Min(1, d+0.5))
			k := 4 * (y*w + x)
			rgba[k], rgba[k+1], rgba[k+2], rgba[k+3] = byte(v), byte(v), byte(v), 255
		}
	}
	return w, h, rgba
}

// A traced form plans, keeps its raw contour and its error band, and comes back
// from a saved job unchanged.
func TestTraceToPlan(t *testing.T) {
	w, h, rgba := picture()
	request := fmt.Sprintf(`{"width":%d,"height":%d,"scale":{"what":"height","mm":140},"size":"mold","side":"mean"}`, w, h)
	reply, _ := Call("trace", []byte(request), rgba, nil)
	var out struct {
		Error *job.Fault
		Form  job.Form
	}
	if err := json.Unmarshal(reply, &out); err != nil || out.Error != nil {
		t.Fatalf("%v, %+v", err, out.Error)
	}
	if out.Form.Traced == nil || len(out.Form.Traced.Contour) < 50 || out.Form.Traced.ErrorBand <= 0 {
		t.Fatalf("what the trace tells of itself: %+v", out.Form.Traced)
	}
	j := job.Defaults()
	j.Form = out.Form
	p := made(t, &j)
	near(t, "largest radius", p.Size.MaxRadius, 60, 0.5)
	near(t, "height", p.Size.Height, 140, 0.5)
	again, err := job.Read([]byte(text(t, &j)))
	if err != nil || text(t, again) != text(t, &j) {
		t.Errorf("a traced job does not come back: %v", err)
	}
}

// A drawing goes out and comes in again as the same profile.
func TestDrawingOutAndIn(t *testing.T) {
	j := pot(t, "waisted-vase")
	reply, blobs := Call("drawn", []byte(`{"job":`+text(t, j)+`}`), nil, nil)
	if len(blobs) != 1 || !strings.Contains(string(reply), "waisted-vase-profile.svg") {
		t.Fatalf("%s", reply)
	}
	drawing, err := json.Marshal(string(blobs[0]))
	if err != nil {
		t.Fatal(err)
	}
	list := answer(t, "paths", `{"units":"mm","text":`+string(drawing)+`}`)
	if n := len(list["paths"].([]any)); n < 1 {
		t.Fatalf("%d paths", n)
	}
	out := answer(t, "read", `{"kind":"svg","units":"mm","text":`+string(drawing)+`}`)
	if out["error"] != nil {
		t.Fatal(out["error"])
	}
	back, err := json.Marshal(out["job"])
	if err != nil {
		t.Fatal(err)
	}
	k, err := job.Read(back)
	if err != nil {
		t.Fatal(err)
	}
	k.Form.Size = job.SizeMold
	a, b := made(t, j), made(t, k)
	near(t, "volume", b.work.meridian.Volume(), a.work.meridian.Volume(), 1e-3*a.work.meridian.Volume())
	if b.Chosen != a.Chosen {
		t.Errorf("drawn and read again the pot takes %s, not %s", b.Chosen, a.Chosen)
	}
}

// Bytes that are no picture, and pictures that show no pot, are told in words.
func TestTraceOfNothing(t *testing.T) {
	for _, c := range []struct {
		request string
		blob    []byte
	}{
		{`{"width":1,"height":1,"scale":{"what":"height","mm":100}}`, []byte{1, 2, 3, 4}},
		{`{"width":100,"height":100,"scale":{"what":"height","mm":100}}`, make([]byte, 40000)},
		{`{"width":100,"height":100,"scale":{"what":"height","mm":100}}`, nil},
		{`{"width":-1}`, nil},
		{`nonsense`, []byte("nonsense")},
	} {
		reply, _ := Call("trace", []byte(c.request), c.blob, nil)
		var out struct{ Error *job.Fault }
		if err := json.Unmarshal(reply, &out); err != nil || out.Error == nil || len(out.Error.Message.String()) < 20 {
			t.Errorf("%s: %s", c.request, reply)
		}
	}
}
