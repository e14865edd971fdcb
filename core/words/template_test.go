package words

import "testing"

func TestTemplate(t *testing.T) {
	with(t, French)
	with(t, German,
		entry{"Pulled {pull}, {part} is held by {depth} mm on {share} %.", "{part} ist beim Zug {pull} auf {share} % um {depth} mm gehalten."},
		entry{"down", "nach unten"},
		entry{"the lower part", "das Unterteil"},
	)
	const held Template = "Pulled {pull}, {part} is held by {depth} mm on {share} %."
	text := Capital(held.With("part", Template("the lower part").With(), "pull", Say("down"), "depth", Number(0.256, 2), "share", 5, "unused", "x"))
	for l, want := range map[Language]string{
		English: "Pulled down, the lower part is held by 0.26 mm on 5 %.",
		German:  "Das Unterteil ist beim Zug nach unten auf 5 % um 0,26 mm gehalten.",
		French:  "Pulled down, the lower part is held by 0,26 mm on 5 %.",
	} {
		if got := text.In(l); got != want {
			t.Errorf("%s: %q, want %q", l, got, want)
		}
	}
	// what fills a gap is not looked at for gaps again
	if got := Template("{a} and {b}").With("a", "{b}", "b", 1.5).In(French); got != "{b} and 1,5" {
		t.Errorf("%q", got)
	}
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		en, de   string
	}{{12.345, 1, "12.3", "12,3"}, {-0.04, 1, "0.0", "0,0"}, {-0.06, 1, "−0.1", "−0,1"}, {3, -1, "3", "3"}, {1e3, 2, "1000.00", "1000,00"}, {0.05, -1, "0.05", "0,05"}} {
		if n := Number(c.v, c.decimals); n.In(English) != c.en || n.In(German) != c.de || n.String() != c.en || n.IsZero() {
			t.Errorf("%v: %q %q, want %q %q", c.v, n.In(English), n.In(German), c.en, c.de)
		}
	}
}

func TestLong(t *testing.T) {
	for format, want := range map[string]string{
		"Plaster burns, and it dries.": "Pllastter buurnss, annd it drriess.",
		"Tries":                        "TTrriieess",
		"Least draft":                  "Leeasst drrafft",
		"%d of %[2]s, %.1f mm %%":      "%d of %[2]s, %.1f mm %%",
		"{part} sticks":                "{part} ssttiicckkss",
		"":                             "",
	} {
		if got := lengthen(format); got != want {
			t.Errorf("%q becomes %q, want %q", format, got, want)
		}
	}
	if got := Say("Seam at %.1f mm, from above", 2.5).In(Long); got != "Seeam at 2,5 mm, frrom abbovee" {
		t.Errorf("%q", got)
	}
}
