package plan

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"moldwright/core/form"
	"moldwright/core/parting"
	"moldwright/core/words"
)

// What is written by hand is what encoding/json writes.
func TestNumbersAreWrittenAsByTheLibrary(t *testing.T) {
	list := []float64{0, math.Copysign(0, -1), 0.1, 0.1 + 0.2, -0.001, 0.0005, 1e-7, 1e20, 1e21, 999999.999, 1e6, 1e9 / 1000, 123456.7891, math.Pi, -2.5, 180, math.MaxFloat64, math.SmallestNonzeroFloat64, 1e-10, -1.5e-9, 9.99e-7, 1e-6, 1e100}
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

// sameButDecimals tells whether two plans in JSON are the same but for decimals of
// schemes beyond the sixth and for signs beyond ASCII, which the first has escaped.
func sameButDecimals(a, b []byte) bool {
	b = []byte(escaped(string(b)))
	from, to := []byte(`"schemes":`), []byte(`,"chosen":`)
	headA, tailA, _ := bytes.Cut(a, from)
	headB, tailB, _ := bytes.Cut(b, from)
	a, tailA, okA := bytes.Cut(tailA, to)
	b, tailB, okB := bytes.Cut(tailB, to)
	if !okA || !okB || !bytes.Equal(headA, headB) || !bytes.Equal(tailA, tailB) {
		return false
	}
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

// escaped is a text of JSON with every sign beyond ASCII as its units of UTF-16.
func escaped(s string) string {
	var b strings.Builder
	for _, r := range s {
		if r < 0x80 {
			b.WriteRune(r)
			continue
		}
		for _, u := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(&b, `\u%04x`, u)
		}
	}
	return b.String()
}

func TestStringsAreWrittenAsByTheLibrary(t *testing.T) {
	list := []string{"", "a", "<&>", "\"\\/", "cm² at 30 °C", "\u2028\u2029", "€ and 🏺", "bad \xff\xfe, cut \xe2\x82", "\ufffd"}
	for c := range rune(0x180) {
		list = append(list, string(c), "a"+string(c)+"b")
	}
	for _, s := range list {
		want, err := library(s)
		if err != nil {
			t.Fatal(err)
		}
		if got := appendString(nil, s); string(got)+"\n" != escaped(string(want)) {
			t.Errorf("%q is written as %s, by the library as %s", s, got, escaped(string(want)))
		}
	}
}

func TestAPlanIsWrittenAsByTheLibrary(t *testing.T) {
	for _, name := range []string{"open-bowl", "round-jar", "waisted-vase", "dovetail-foot"} {
		p := made(t, pot(t, name))
		p.Verdict, p.Flow.Plaster = words.Plain("\u2028 ² 🏺"), append(p.Flow.Plaster, PartPocket{"lower", form.Pocket{ZFrom: 1, ZTo: -2.5, Volume: 1e-9}})
		p.Traps, p.Order, p.Findings = append(p.Traps, Trap{Depth: 3}), nil, append(p.Findings, parting.Finding{Code: "x"})
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
