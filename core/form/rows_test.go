package form_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"moldwright/core/form"
	"moldwright/core/job"
)

// The same bowl in every way of writing it.
func TestReadRowsFormats(t *testing.T) {
	want := []job.Node{c(0, 4), c(30.5, 4), c(31, 0), {R: 60.25, Z: 80}}
	mm := form.Columns{Units: "mm"}
	for name, x := range map[string]struct {
		text string
		as   form.Columns
	}{
		"spaces":                     {"0 4\n30.5 4\n31 0\n60.25 80 smooth", mm},
		"padded spaces":              {"  0   4\n30.5  4 \n 31 0\n60.25\u00a080 s", mm},
		"commas":                     {"0,4\n30.5,4\n31,0\n60.25,80,smooth\n", mm},
		"comma and space":            {"0, 4\n30.5, 4\n31, 0\n60.25, 80, smooth\n", mm},
		"semicolons":                 {"0;4\n30.5;4\n31;0\n60.25;80;smooth\n", mm},
		"semicolon, space":           {"0; 4\n30.5; 4\n31; 0\n60.25; 80; smooth\n", mm},
		"tabs":                       {"0\t4\n30.5\t4\n31\t0\n60.25\t80\tsmooth\n", mm},
		"decimal comma, spaces":      {"0 4\n30,5 4\n31 0\n60,25 80 smooth\n", mm},
		"decimal comma, tabs":        {"0\t4\n30,5\t4\n31\t0\n60,25\t80\ts\n", mm},
		"decimal comma, semicolons":  {"0;4\n30,5;4,0\n31;0\n60,25;80;S\n", mm},
		"decimal comma, comma-space": {"0, 4\n30,5, 4\n31, 0\n60,25, 80, smooth\n", mm},
		"comments and blank lines":   {"# a bowl\n\n0 4 # foot\n30.5 4 // edge\n   \n31 0 corner\n60.25 80 smooth\n", mm},
		"header":                     {"r z\n0 4\n30.5 4\n31 0\n60.25 80 smooth\n", mm},
		"header in words":            {"radius; height; kind\n0;4\n30.5;4\n31;0\n60.25;80;smooth\n", mm},
		"header with units":          {"radius (mm), height (mm)\n0, 4\n30.5, 4\n31, 0\n60.25, 80, smooth\n", mm},
		"columns turned round":       {"z r\n4 0\n4 30.5\n0 31\n80 60.25 smooth\n", mm},
		"diameters":                  {"0 4\n61 4\n62 0\n120.5 80 smooth\n", form.Columns{Units: "mm", Diameter: true}},
		"diameters by header":        {"diameter height\n0 4\n61 4\n62 0\n120.5 80 smooth\n", mm},
		"centimetres":                {"0 0.4\n3.05 0.4\n3.1 0\n6.025 8 smooth\n", form.Columns{Units: "cm"}},
		"centimetres, decimal comma": {"0 0,4\n3,05 0,4\n3,1 0\n6,025 8 smooth\n", form.Columns{Units: "cm"}},
		"Windows line ends":          {"0 4\r\n30.5 4\r\n31 0\r\n60.25 80 smooth\r\n", mm},
		"old Macintosh line ends":    {"0 4\r30.5 4\r31 0\r60.25 80 smooth", mm},
		"byte order mark":            {"\ufeff0 4\n30.5 4\n31 0\n60.25 80 smooth\n", mm},
		"German header":              {"Radius; Höhe; Knoten\n0;4;Ecke\n30,5;4;ecke\n31;0;\n60,25;80;rund\n", mm},
		"German, turned round":       {"Höhe in mm; Radius in mm\n4;0\n4;30,5\n0;31\n80;60,25;RUND\n", mm},
		"German diameters":           {"Durchmesser\tHoehe\n0\t4\n61\t4\n62\t0\n120,5\t80\trund\n", mm},
		"French header":              {"rayon, hauteur, nœud\n0,4,angle\n30.5,4,angle\n31,0,angle\n60.25,80,lisse\n", mm},
		"French diameters, turned":   {"Hauteur (mm); Diamètre (mm)\n4;0\n4;61\n0;62\n80;120,5;Lisse\n", mm},
		"accents as marks behind":    {"Hauteur;Diame\u0300tre\n4;0\n4;61\n0;62\n80;120,5;lisse\n", mm},
		"Spanish header":             {"radio altura tipo\n0 4 esquina\n30,5 4 esquina\n31 0 esquina\n60,25 80 suave\n", mm},
		"Spanish diameters, turned":  {"Altura; Diámetro\n4;0\n4;61\n0;62\n80;120,5;suave\n", mm},
		"Spanish centimetres":        {"Radio en centímetros; Altura en centímetros\n0;0,4\n3,05;0,4\n3,1;0\n6,025;8;suave\n", form.Columns{Units: "cm"}},
		"the sign for diameter":      {"⌀ h\n0 4\n61 4\n62 0\n120.5 80 smooth\n", mm},
		"in, but not the unit":       {"radius in mm, height in mm\n0, 4\n30.5, 4\n31, 0\n60.25, 80, smooth\n", mm},
		"exponents and signs":        {"0 +4\n3.05e1 4\n31 -0\n60.25 8E1 smooth\n", mm},
	} {
		got, faults := form.ReadRows(x.text, x.as)
		if faults != nil {
			t.Errorf("%s: %v", name, faults)
			continue
		}
		if len(got) != len(want) {
			t.Errorf("%s: %d nodes, want %d", name, len(got), len(want))
			continue
		}
		for i := range want {
			if math.Abs(got[i].R-want[i].R) > 1e-9 || math.Abs(got[i].Z-want[i].Z) > 1e-9 || got[i].Corner != want[i].Corner {
				t.Errorf("%s: node %d is %+v, want %+v", name, i, got[i], want[i])
			}
		}
	}
}

// One inch is 25.4 mm exactly (international yard and pound agreement, 1959).
func TestReadRowsInches(t *testing.T) {
	got, faults := form.ReadRows("0 0\n1.5 0\n2 4", form.Columns{Units: "in"})
	if faults != nil || got[2].R != 50.8 || got[2].Z != 101.6 || math.Abs(got[1].R-38.1) > 1e-12 {
		t.Errorf("%v %v", got, faults)
	}
}

// Every bad row is named by its line, all of them at once, with what to do.
func TestReadRowsFaults(t *testing.T) {
	mm := form.Columns{Units: "mm"}
	for name, x := range map[string]struct {
		text  string
		as    form.Columns
		lines []int
		code  string
		word  string
	}{
		"nothing":            {"", mm, []int{0}, "noRows", "type"},
		"only comments":      {"# a\n// b\n", mm, []int{0}, "noRows", "type"},
		"one column":         {"0 0\n30\n60 80\n", mm, []int{2}, "badRow", "one column"},
		"four columns":       {"0 0\n30 0\n60 80 1 2\n", mm, []int{3}, "badRow", "4 columns"},
		"decimal commas":     {"0,5,4,5\n30,5,4,0\n60,5,80,0\n", mm, []int{1, 2, 3}, "badRow", "decimal commas"},
		"words":              {"0 0\n30 0\nabc 3\n60 x\n", mm, []int{3, 4}, "badRow", "not a number"},
		"lines with comment": {"# head\n\n0 0\n30 0 # fine\n60 oops # not\n", mm, []int{5}, "badRow", "oops"},
		"not a number":       {"0 0\n30 NaN\n60 Inf\n50 0x10\n70 1_0\n", mm, []int{2, 3, 4, 5}, "badRow", "not a number"},
		"too large":          {"0 0\n30 1e999\n60 80\n", mm, []int{2}, "badRow", "not a number"},
		"negative radius":    {"0 0\n30 0\n-60 80\n50 90\n", mm, []int{3}, "badRow", "negative"},
		"kind":               {"0 0\n30 0 round\n60 80\n", mm, []int{2}, "badRow", "corner or smooth"},
		"two points":         {"0 0\n30 0\n", mm, []int{0}, "tooFewPoints", "at least 3"},
		"repeated point":     {"r z\n0 0\n30 0\n30 0\n60 80\n", mm, []int{4}, "repeatedPoint", "remove"},
		"axis in the middle": {"0 0\n30 0\n0 40\n60 80\n", mm, []int{3}, "onAxis", "axis"},
		"from the rim":       {"60 80\n30 0\n0 0\n", mm, []int{1}, "fromRim", "turn the order"},
		"not at the axis":    {"10 0\n30 0\n60 80\n", mm, []int{1}, "notAtAxis", "axis"},
		"crossing":           {"0 0\n60 0\n60 80\n\n30 80\n70 40\n70 90\n", mm, []int{5}, "crossesItself", "crosses"},
		"absurd size":        {"0 0\n3000 0\n6000 8000\n", mm, []int{0}, "absurdSize", "units"},
		"tiny":               {"0 0\n0.03 0\n0.06 0.08\n", mm, []int{0}, "absurdSize", "units"},
		"units":              {"0 0\n30 0\n60 80\n", form.Columns{Units: "furlong"}, []int{0}, "unknownUnits", "mm, cm or in"},
		"units that differ":  {"r (cm) z (cm)\n0 0\n30 0\n60 80\n", mm, []int{1}, "unitsDisagree", "cm"},
		"inches in German":   {"Radius (Zoll); Höhe (Zoll)\n0;0\n30;0\n60;80\n", mm, []int{1}, "unitsDisagree", "zoll"},
		"in, by itself":      {"radius in, height in\n0, 0\n30, 0\n60, 80\n", mm, []int{1}, "unitsDisagree", "says in "},
		"mm for cm":          {"rayon en mm; hauteur en mm\n0;0\n3;0\n6;8\n", form.Columns{Units: "cm"}, []int{1}, "unitsDisagree", "mm"},
		"kind in no tongue":  {"Radius; Höhe\n0;0\n30;0;krumm\n60;80\n", mm, []int{3}, "badRow", "krumm"},
		"too many rows":      {strings.Repeat("1 2\n", 200_001), mm, []int{200_001}, "tooManyRows", "hundred"},
	} {
		nodes, faults := form.ReadRows(x.text, x.as)
		if nodes != nil || len(faults) != len(x.lines) {
			t.Errorf("%s: %d nodes, faults %v; want faults at lines %v", name, len(nodes), all(faults), x.lines)
			continue
		}
		for i, f := range faults {
			if f.Line != x.lines[i] || f.Code != x.code || !strings.Contains(f.Message.String(), x.word) && i == 0 {
				t.Errorf("%s: %q (%s) at line %d; want %s with %q at line %d", name, f.Message, f.Code, f.Line, x.code, x.word, x.lines[i])
			}
		}
	}
}

func all(faults job.Faults) string {
	var b strings.Builder
	for _, f := range faults {
		fmt.Fprintf(&b, "[%d %s %s]", f.Line, f.Code, f.Message)
	}
	return b.String()
}

// A paste of 100,000 rows is read, or refused, in one go.
func TestReadRowsLongPaste(t *testing.T) {
	var b strings.Builder
	b.WriteString("0 0\n")
	for i := range 100_000 {
		fmt.Fprintf(&b, "%.4f %.4f\n", 50+20*math.Sin(float64(i)/9000), float64(i)/400)
	}
	nodes, faults := form.ReadRows(b.String(), form.Columns{Units: "mm"})
	if len(nodes) != 100_001 || faults != nil {
		t.Errorf("%d nodes, %v", len(nodes), faults)
	}
}

func FuzzReadRows(f *testing.F) {
	for _, s := range []string{"0 0\n30 0\n60 80", "r;z\n0;0\n30,5;0\n60;80;s", "z, r\n0, 0\n1, 30\n80, 60", "0\t0\n,\n;;;\n//#", "diameter (in) height\n0 0\n3 0\n6 8", "\ufeff\r\r\n1e400 -0"} {
		f.Add(s, "mm", false)
		f.Add(s, "in", true)
	}
	f.Fuzz(func(t *testing.T, text, units string, diameter bool) {
		nodes, faults := form.ReadRows(text, form.Columns{Units: units, Diameter: diameter})
		if (nodes == nil) == (faults == nil) {
			t.Fatalf("%d nodes and %d faults", len(nodes), len(faults))
		}
		lines := 1 + strings.Count(strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n"), "\n")
		for _, x := range faults {
			if x.Code == "" || x.Message.IsZero() || x.Line < 0 || x.Line > lines {
				t.Fatalf("a fault that tells nothing: %+v", x)
			}
			if utf8.ValidString(text) && utf8.ValidString(units) && !utf8.ValidString(x.Message.String()) {
				t.Fatalf("a broken letter in %q", x.Message)
			}
		}
		if nodes == nil {
			return
		}
		for _, n := range nodes {
			if math.IsNaN(n.R+n.Z) || n.R < 0 {
				t.Fatalf("a node that is no place: %+v", n)
			}
		}
		// what was read, written plainly, reads the same
		var b strings.Builder
		for _, n := range nodes {
			kind := "corner"
			if !n.Corner {
				kind = "smooth"
			}
			fmt.Fprintf(&b, "%v;%v;%s\n", n.R, n.Z, kind)
		}
		again, faults := form.ReadRows(b.String(), form.Columns{Units: "mm"})
		if faults != nil || len(again) != len(nodes) {
			t.Fatalf("does not read back: %v", faults)
		}
		for i := range nodes {
			if again[i] != nodes[i] {
				t.Fatalf("node %d reads back as %+v, was %+v", i, again[i], nodes[i])
			}
		}
	})
}
