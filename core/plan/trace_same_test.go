package plan

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the sums of testdata anew")

// drawnPot paints, by sums that every processor does alike, an invented vase of
// 170 mm before a shaded ground with the noise of a camera, leaning a little;
// as a sketch it is a dark line on paper. site/test/same.test.mjs paints the
// same in JavaScript.
func drawnPot(w, h int, sketch bool) []byte {
	out := make([]byte, 4*w*h)
	seed := uint32(7)
	for y := range h {
		z := (0.9*float64(h) - float64(y) - 0.5) / (0.8 * float64(h)) // 0 at the foot, 1 at the rim
		r := 0.16 + z*(1-z)*(0.9-0.8*z)*0.4
		lean := float64(w)*0.5 + z*0.01*float64(h)
		for x := range w {
			d := r*float64(h) - math.Abs(float64(x)+0.5-lean)
			if z < 0 || z > 1 {
				d = -9
			}
			in := math.Max(0, math.Min(1, d+0.5))
			if sketch {
				in = math.Max(0, 1-math.Abs(d)/3)
			}
			seed = seed*1664525 + 1013904223
			v := (200+30*float64(x)/float64(w))*(1-in) + 60*in + float64(seed>>29) - 3.5
			k := 4 * (y*w + x)
			out[k], out[k+1], out[k+2], out[k+3] = byte(v), byte(v*0.95), byte(v*0.9), 255
		}
	}
	return out
}

// sameTraces are the requests of both tests.
func sameTraces() []string {
	return []string{
		`{"width":480,"height":640,"draft":true}`,
		`{"width":480,"height":640,"scale":{"what":"height","mm":170},"camera":{"distance":900,"height":90}}`,
		`{"width":480,"height":640,"scale":{"what":"maxDiameter","mm":120},"side":"left","camera":{"focalPixels":2400}}`,
		`{"width":480,"height":640,"mode":"sketch","scale":{"what":"height","mm":170},"camera":{"distance":5000,"height":85}}`,
		`{"width":1500,"height":2000,"scale":{"what":"height","mm":170},"camera":{"distance":900,"height":90}}`,
	}
}

// The sums were written on amd64. site/test/same.test.mjs holds the core as it
// is built for the page against the same file.
func TestTraceSameBytes(t *testing.T) {
	var got strings.Builder
	for i, q := range sameTraces() {
		w, h := 480, 640
		if strings.Contains(q, `"width":1500`) {
			w, h = 1500, 2000
		}
		reply, _ := Call("trace", []byte(q), drawnPot(w, h, strings.Contains(q, "sketch")), nil)
		if strings.Contains(string(reply), `"error"`) || len(reply) < 1000 {
			t.Errorf("%s: %.300s", q, reply)
		}
		fmt.Fprintf(&got, "%d %x\n", i, sha256.Sum256(reply))
	}
	const file = "testdata/traces.txt"
	if *update {
		if err := os.WriteFile(file, []byte(got.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got.String() != string(want) {
		t.Errorf("have\n%swant\n%s(renew with -update once looked at)", got.String(), want)
	}
}
