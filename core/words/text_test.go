package words

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"testing"
)

// with puts a sample catalog in the place of the real one, so that what is tested
// does not change with it.
func with(t *testing.T, l Language, e ...entry) {
	t.Helper()
	list := map[Language]*[]entry{German: &german, French: &french, Spanish: &spanish}[l]
	old := *list
	*list = e
	t.Cleanup(func() { *list = old })
}

func TestTextInLanguages(t *testing.T) {
	with(t, French)
	with(t, German,
		entry{"%.1f mm %s", "%[2]s %.1[1]f mm"},
		entry{"%s and %s", "%s und %s"},
		entry{"%s has %.1f mm, %d of %g.", "%[4]g hat %[3]d, %.1[2]f mm: %[1]s."},
		entry{"[of a mold] upper", "oberes"},
		entry{"[of a shoe] upper", "Oberleder"},
		entry{"blank", ""},
		entry{"the upper part", "das obere Teil"},
		entry{"über %s", "über %s"},
	)
	for _, w := range []struct {
		text       Text
		en, de, fr string
	}{
		{Text{}, "", "", ""},
		{Plain("Jar 1.5"), "Jar 1.5", "Jar 1.5", "Jar 1.5"},
		{Say("%.1f mm %s", 2.46, Say("the upper part")), "2.5 mm the upper part", "das obere Teil 2,5 mm", "2,5 mm the upper part"},
		{Say("%s has %.1f mm, %d of %g.", Plain("A.B"), -0.25, 3, 1234567.5), "A.B has −0.2 mm, 3 of 1.2345675e+06.", "1,2345675e+06 hat 3, −0,2 mm: A.B.", "A.B has −0,2 mm, 3 of 1,2345675e+06."},
		{Say("%6.2f|%-6.1f|%06.1f|%v|%+.1f", 1.5, 1.5, 1.5, 0.5, 2.0), "  1.50|1.5   |0001.5|0.5|+2.0", "  1,50|1,5   |0001,5|0,5|+2,0", "  1,50|1,5   |0001,5|0,5|+2,0"},
		{Say("%.1f %d %.1f|%5.1f|%+d|%v %g", -0.04, -3, -1.25, -0.5, -2, -4, -1e-7), "0.0 −3 −1.2| −0.5|−2|−4 −1e-07", "0,0 −3 −1,2| −0,5|−2|−4 −1e-07", "0,0 −3 −1,2| −0,5|−2|−4 −1e-07"},
		{SayIn("of a mold", "upper"), "upper", "oberes", "upper"},
		{SayIn("of a shoe", "upper"), "upper", "Oberleder", "upper"},
		{Say("upper"), "upper", "upper", "upper"},
		{Say("blank"), "blank", "blank", "blank"},
		{Capital(Say("the upper part")), "The upper part", "Das obere Teil", "The upper part"},
		{Capital(Say("über %s", Plain("x"))), "Über x", "Über x", "Über x"},
		{And(Plain("a")), "a", "a", "a"},
		{And(Plain("a"), Plain("b"), Say("the upper part")), "a, b and the upper part", "a, b und das obere Teil", "a, b and the upper part"},
		{Join(" ", Say("the upper part"), Plain("2")), "the upper part 2", "das obere Teil 2", "the upper part 2"},
		{Say("%g %%", 12.5), "12.5 %", "12,5 %", "12,5 %"},
	} {
		if w.text.In(English) != w.en || w.text.String() != w.en || w.text.In(German) != w.de || w.text.In(French) != w.fr {
			t.Errorf("%q, %q, %q; want %q, %q, %q", w.text.In(English), w.text.In(German), w.text.In(French), w.en, w.de, w.fr)
		}
	}
}

// A minus is U+2212 in what stands in the catalogs too: a hyphen between spaces, or
// before a figure where a word begins, would be one that was typed.
func TestNoHyphenForAMinus(t *testing.T) {
	hyphen := regexp.MustCompile(`(^|[ (\x{a0}])-( |[0-9{%.])`)
	for _, l := range []Language{German, French, Spanish} {
		for _, e := range l.catalog() {
			if hyphen.MatchString(e.key) || hyphen.MatchString(e.words) {
				t.Errorf("%s: %q, %q", l, e.key, e.words)
			}
		}
	}
}

// Plain verbs are written as package fmt writes them, in every format of the
// catalogs and in some that none should hold.
func TestFormatsAreWrittenAsByFmt(t *testing.T) {
	formats := []string{"", "%", "%%", "%%%s%%", "%s%d%.0f%%", "%.12f", "%.", "%.3", "% d", "%+.1f", "%[2]s %[1]s", "%5s", "%x", "é%.9fé", "%!", "%z", "%s%s%s"}
	for _, l := range []Language{German, French, Spanish} {
		for _, e := range l.catalog() {
			formats = append(formats, e.key, e.words)
		}
	}
	numbers := []float64{0, math.Copysign(0, -1), 2.5, -0.04, 1234567.891, 1e21, 5e-324, math.Inf(1), math.Inf(-1), math.NaN(), 0.05, 0.15, 99.95}
	verb := regexp.MustCompile(`%[-+# 0-9.]*(?:\[[0-9]+\])?(.)`)
	for n, format := range formats {
		for more := range 2 { // one argument too many
			var args []any
			for k, m := range verb.FindAllStringSubmatch(format, -1) {
				switch m[1] {
				case "%":
				case "d":
					args = append(args, 7-100*(n+k))
				case "s", "q", "v":
					args = append(args, [2]any{"a %s b", Join("", Plain("5.5"), Say("the upper part"))}[(n+k)%2])
				default:
					args = append(args, numbers[(n+k)%len(numbers)])
				}
			}
			if more > 0 {
				args = append(args, "more")
			}
			for _, l := range []Language{English, German} {
				text := Text{format: format, args: args}
				want := ""
				if text.bound() {
					want = fmt.Sprintf(l.format("", format), l.args(args)...)
				}
				if got := text.In(l); got != want {
					t.Errorf("%q is written as %q, by fmt as %q", format, got, want)
				}
			}
		}
	}
}

type inner struct {
	Words Text `json:"words"`
	Size  [3]float64
}

type reply struct {
	inner
	Own    Text            `json:"own"`
	Hidden Text            `json:"-"`
	List   []inner         `json:"list"`
	At     *inner          `json:"at"`
	Any    any             `json:"any"`
	By     map[string]Text `json:"by"`
	Again  *reply          `json:"again,omitempty"`
	Left   Text            `json:"left,omitzero"`
	quiet  Text
}

func TestPut(t *testing.T) {
	with(t, German, entry{"yes <b> %.1f", "ja <b> %.1f"})
	say := Say("yes <b> %.1f", 1.5)
	made := func() any {
		in := inner{Words: say}
		return map[string]any{"r": reply{inner: in, Own: Plain("yes"), Hidden: say, List: []inner{in}, At: &in, Any: in,
			By: map[string]Text{"k": say}, Again: &reply{Any: []Text{say}, quiet: say}, quiet: say}, "n": 3, "none": nil}
	}
	for l, want := range map[Language]string{English: "yes <b> 1.5", German: "ja <b> 1,5"} {
		v := made()
		Put(l, &v)
		r := v.(map[string]any)["r"].(reply)
		for i, got := range []Text{r.Words, r.List[0].Words, r.At.Words, r.Any.(inner).Words, r.By["k"], r.Again.Any.([]Text)[0]} {
			if got.String() != want {
				t.Errorf("%s: %d: %q", l, i, got)
			}
		}
		if r.Own.String() != "yes" || r.Hidden.String() != "yes <b> 1.5" || r.quiet.String() != "yes <b> 1.5" {
			t.Errorf("%s: %q %q %q", l, r.Own, r.Hidden, r.quiet)
		}
		text, err := json.Marshal(r.At)
		var back inner
		if err != nil || json.Unmarshal(text, &back) != nil || back.Words.String() != want || back.Words.In(French) != want {
			t.Errorf("%s: %s %v %q", l, text, err, back.Words)
		}
	}
}

func TestCut(t *testing.T) {
	for _, w := range []struct{ request, code, rest string }{
		{`{"job":1}`, "", `{"job":1}`},
		{`{"language":"de","job":{"name":"language"}}`, "de", `{"job":{"name":"language"}}`},
		{`{"job":{"name":"\"language\""},"language":"es"}`, "es", `{"job":{"name":"\"language\""}}`},
		{`{"job":{"language":"es"}}`, "", `{"job":{"language":"es"}}`},
		{"{ \"a\":\n[1,\n2], \"language\" : \"fr\" , \"b\":{}}", "fr", "{\"a\":[1,\n2],\"b\":{}}"},
		{`{"language":"xx"}`, "xx", `{}`},
		{`{"language":3,"a":1}`, "3", `{"a":1}`},
		{`{"language":"de"} x`, "de", `{} x`},
		{`{"language":"de"`, "", `{"language":"de"`},
		{`["language"]`, "", `["language"]`},
	} {
		code, rest := Cut([]byte(w.request))
		if code != w.code || string(rest) != w.rest {
			t.Errorf("%s: %q %s", w.request, code, rest)
		}
	}
}
