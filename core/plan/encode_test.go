package plan

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"testing"

	"moldwright/core/words"
)

// What is written by hand is what encoding/json writes.
func TestNumbersAreWrittenAsByTheLibrary(t *testing.T) {
	list := []float64{0, math.Copysign(0, -1), 0.1, 0.1 + 0.2, -0.001, 0.0005, 1e-7, 1e20, 1e21, 999999.999, 1e6, 1e9 / 1000, 123456.7891, math.Pi, -2.5, 180, math.MaxFloat64}
	rnd := rand.New(rand.NewPCG(7, 7))
	for range 20000 {
		list = append(list, mm(3000*(rnd.Float64()-0.5)), math.Round(100*rnd.NormFloat64())/100, rnd.NormFloat64())
	}
	for _, v := range list {
		want, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		if got := appendNumber(nil, v); string(got) != string(want) {
			t.Errorf("%v is written as %s, by the library as %s", v, got, want)
		}
	}
}

func TestADrawingIsWrittenAsByTheLibrary(t *testing.T) {
	drawings := []Drawing{{Contour: [][2]float64{}, Parts: []Region{}, Natches: []NatchMark{}, Dimples: [][][2]float64{}, Stretches: []Stretch{}}}
	for _, name := range []string{"open-bowl", "round-jar", "waisted-vase", "dovetail-foot"} {
		drawings = append(drawings, made(t, pot(t, name)).Drawing)
	}
	drawings[1].Dimples = [][][2]float64{{{1, 2.5}, {3, 4}}, {{5, 6}, {7, 8}}}
	for i := range drawings {
		want, err := json.Marshal(&drawings[i])
		if err != nil {
			t.Fatal(err)
		}
		if got := drawings[i].append(nil); string(got) != string(want) {
			t.Errorf("drawing %d is written as\n%s\nby the library as\n%s", i, got, want)
		}
	}
}

// sameButDecimals tells whether two texts of JSON are the same but for decimals
// beyond the sixth of numbers among the schemes.
func sameButDecimals(a, b []byte) bool {
	number := regexp.MustCompile(`-?\d[\d.]*(e[-+]?\d+)?`)
	if !bytes.Equal(number.ReplaceAll(a, []byte("0")), number.ReplaceAll(b, []byte("0"))) {
		return false
	}
	x, y := number.FindAll(a, -1), number.FindAll(b, -1)
	for i := range x {
		v, err := strconv.ParseFloat(string(x[i]), 64)
		w, err2 := strconv.ParseFloat(string(y[i]), 64)
		if err != nil || err2 != nil || !(math.Abs(v-w) <= 0.51e-6 || v == w) {
			return false
		}
	}
	return true
}

func TestAPlanIsWrittenAsByTheLibrary(t *testing.T) {
	for _, name := range []string{"open-bowl", "round-jar", "waisted-vase", "dovetail-foot"} {
		p := made(t, pot(t, name))
		p.Schemes[0].Name = words.Plain("a \"name\" <&> \u2028 \\ and \xff")
		p.Schemes[1].PartingHeights, p.Schemes[1].Parts = nil, nil
		p.Schemes[2].Turn, p.Schemes[2].Depth, p.Schemes[2].Plaster = math.Copysign(0, -1), 1e-7, 1e21
		got, err := encode(p)
		if err != nil {
			t.Fatal(err)
		}
		all := struct {
			*Plan
			Drawing Drawing `json:"drawing"`
		}{p, p.Drawing}
		if want, err := library(all); err != nil || !sameButDecimals(got, want) {
			t.Errorf("%s is written as\n%s\nby the library as\n%s (%v)", name, got, want, err)
		}
		// like parts are told apart where one of them is judged otherwise
		part := *p.Schemes[len(p.Schemes)-1].Parts[0].Part
		part.MinDraft++
		p.Schemes[len(p.Schemes)-1].Parts[0].Part = &part
		got, _ = encode(p)
		if want, _ := library(all); !sameButDecimals(got, want) {
			t.Errorf("%s: a part judged by itself is written as another", name)
		}
	}
}
