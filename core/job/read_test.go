package job

import (
	"bytes"
	"math"
	"reflect"
	"strings"
	"testing"
)

func equal(t *testing.T, got, want Job) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Errorf("job is\n%+v, want\n%+v", got, want)
	}
}

// full is a job with every key, none of them as the defaults have it.
const full = `{
 "format": "moldwright-job",
 "version": 1,
 "name": "Harbour jar, 2nd <try> & more",
 "form": {
  "size": "mold",
  "outer": [
   {"r": 0, "z": 4, "corner": true},
   {"r": 30.5, "z": 4, "corner": true},
   {"r": 60, "z": 80}
  ],
  "inner": null,
  "section": {"kind": "round"}
 },
 "clay": {"dryingShrinkage": 5, "firingShrinkage": 8, "releaseShrinkage": 2, "wall": 5,
  "slipDensity": 1.8, "solidsDensity": 2.5, "testCast": {"wall": 4, "minutes": 15}},
 "plaster": {"consistency": 65, "wall": 40, "base": 35},
 "printer": {"bed": [200, 210, 190], "layer": 0.3, "clearance": 0.2, "shell": 2},
 "rules": {"leastDraft": 1.5, "rubShare": 8},
 "mold": {"scheme": "sides3+lower", "partingHeights": [5, 60.5], "sides": 3, "fillHole": 30,
  "drainHole": 12, "spare": {"height": 25}, "staves": 3, "natches": false}
}`

// What is written reads back as it was, and is written again byte for byte.
func TestRoundTrip(t *testing.T) {
	j, err := Read([]byte(full))
	if err != nil {
		t.Fatal(err)
	}
	if j.Mold.PartingHeights[1] != 60.5 || *j.Mold.FillHole != 30 || j.Printer.Bed != [3]float64{200, 210, 190} || j.Mold.Natches {
		t.Errorf("job is %+v", j)
	}
	text, err := j.Write()
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), "<try> & more") || !bytes.HasSuffix(text, []byte("}\n")) {
		t.Errorf("written as\n%s", text)
	}
	again, err := Read(text)
	if err != nil {
		t.Fatal(err)
	}
	equal(t, *again, *j)
	if second, _ := again.Write(); !bytes.Equal(second, text) {
		t.Errorf("second writing differs:\n%s\n%s", second, text)
	}
}

// Misfits are named by their path and line.
func TestFaults(t *testing.T) {
	const outer = `"outer":[{"r":0,"z":0},{"r":30,"z":0},{"r":60,"z":80}]`
	for name, x := range map[string]struct {
		text  string
		code  string
		field string
		line  int
		word  string
	}{
		"unknown key":               {"{\n\"form\":{" + outer + "},\n\"colour\":1}", "unknownKey", "colour", 3, "colour is no key of a job"},
		"unknown key, deep":         {"{\"form\":{" + outer + "},\n\"clay\":{\"wall\":4,\n\"testCast\":{\"walls\":3}}}", "unknownKey", "clay.testCast.walls", 3, "wall, minutes"},
		"unknown key of a node":     {"{\"form\":{\"outer\":[{\"r\":0,\"z\":0},\n{\"r\":1,\"z\":1},\n{\"r\":2,\"q\":3}]}}", "unknownKey", "form.outer[2].q", 3, "r, z, corner"},
		"text for a number":         {"{\"form\":{" + outer + "},\n\"clay\":\n{\"wall\":\"four\"}}", "wrongType", "clay.wall", 3, `the text "four"`},
		"number for a text":         {"{\"name\":12}", "wrongType", "name", 1, "a text"},
		"number for a truth":        {"{\"mold\":{\"natches\":1}}", "wrongType", "mold.natches", 1, "true or false"},
		"object for a list":         {"{\"form\":{\"outer\":{}}}", "wrongType", "form.outer", 1, "a list"},
		"list for an object":        {"{\"clay\":[]}", "wrongType", "clay", 1, "an object"},
		"text in a node":            {"{\"form\":{\"outer\":[{\"r\":0,\"z\":0},\n{\"r\":\"a\",\"z\":1}]}}", "wrongType", "form.outer[1].r", 2, "a number"},
		"list at the top":           {"[1]", "wrongType", "", 1, "an object"},
		"fraction of a stave":       {"{\"form\":{" + outer + "},\"mold\":{\"staves\":1.5}}", "wrongType", "mold.staves", 1, "staves"},
		"number past all bounds":    {"{\"form\":{\"outer\":[{\"r\":1e999,\"z\":0}]}}", "badValue", "form.outer[0].r", 1, "1e999"},
		"NaN":                       {"{\"clay\":{\"wall\":NaN}}", "notJSON", "", 1, "not a job file"},
		"NaN as a layer":            {"{\"rules\":{\n\"leastDraft\":NaN}}", "notJSON", "", 2, "not a job file"},
		"no JSON":                   {"r z\n0 0\n", "notJSON", "", 1, "not a job file"},
		"nothing":                   {"", "cutShort", "", 1, "cut short"},
		"text after the end":        {"{\"form\":{" + outer + "}}\n{}", "trailingText", "", 2, "remove"},
		"another format":            {"{\"format\":\"drawing\",\"form\":{" + outer + "}}", "badValue", "format", 0, "drawing"},
		"a later version":           {"{\"version\":2,\"form\":{" + outer + "}}", "newerVersion", "version", 0, "version 2"},
		"a later version, new keys": {"{\"version\":3,\"glow\":[1],\"form\":{" + outer + "}}", "newerVersion", "version", 0, "version 3"},
		"no version":                {"{\"version\":0,\"form\":{" + outer + "}}", "badValue", "version", 0, "version 0"},
		"no profile":                {"{}", "badValue", "form.outer", 0, "no profile"},
		"negative shrinkage":        {"{\"clay\":{\"dryingShrinkage\":-1},\"form\":{" + outer + "}}", "badValue", "clay.dryingShrinkage", 0, "between"},
		"layer of nothing":          {"{\"printer\":{\"layer\":0},\"form\":{" + outer + "}}", "badValue", "printer.layer", 0, "between"},
		"slip as dense as clay":     {"{\"clay\":{\"slipDensity\":2.2,\"solidsDensity\":2.1},\"form\":{" + outer + "}}", "badValue", "clay.slipDensity", 0, "as dense"},
		"five side parts":           {"{\"mold\":{\"sides\":5},\"form\":{" + outer + "}}", "badValue", "mold.sides", 0, "2, 3, 4 or 6"},
		"a scheme there is not":     {"{\"mold\":{\"scheme\":\"sides5\"},\"form\":{" + outer + "}}", "badValue", "mold.scheme", 0, "sides5"},
		"heights that fall":         {"{\"mold\":{\"partingHeights\":[60,5]},\"form\":{" + outer + "}}", "badValue", "mold.partingHeights[1]", 0, "rise"},
		"three heights":             {"{\"mold\":{\"partingHeights\":[1,2,3]},\"form\":{" + outer + "}}", "badValue", "mold.partingHeights", 0, "at most 2"},
		"a name without end":        {"{\"name\":\"" + strings.Repeat("ä", 201) + "\",\"form\":{" + outer + "}}", "badValue", "name", 0, "201"},
		"a size of another kind":    {"{\"form\":{\"size\":\"dry\"," + outer + "}}", "badValue", "form.size", 0, "dry"},
		"a bed of a needle's size":  {"{\"printer\":{\"bed\":[220,1,220]},\"form\":{" + outer + "}}", "badValue", "printer.bed[1]", 0, "bed"},
	} {
		_, err := Read([]byte(x.text))
		faults, ok := err.(Faults)
		if !ok || len(faults) != 1 {
			t.Errorf("%s: %v, want one fault", name, err)
			continue
		}
		if f := faults[0]; f.Code != x.code || f.Field != x.field || f.Line != x.line || !strings.Contains(f.Message.String(), x.word) {
			t.Errorf("%s: %s at %q line %d: %s\nwant %s at %q line %d with %q", name, f.Code, f.Field, f.Line, f.Message, x.code, x.field, x.line, x.word)
		}
	}
}

// A file cut short anywhere is an error that says so, and never a job.
func TestTruncated(t *testing.T) {
	for i := range len(full) {
		if j, err := Read([]byte(full[:i])); err == nil {
			t.Fatalf("read a job from %d of %d bytes: %+v", i, len(full), j)
		} else if f := err.(Faults)[0]; f.Code != "cutShort" || f.Line < 1 {
			t.Fatalf("cut at %d: %+v", i, f)
		}
	}
}

// A mark for "left out" never stays in a job.
func TestNoNaN(t *testing.T) {
	for _, text := range []string{full, `{"form":{"outer":[{"r":0,"z":0}]}}`, `{"form":{"outer":[{"r":0,"z":0}]},"rules":{"leastDraft":null}}`, `{"form":{"outer":[{"r":0,"z":0}]},"rules":null}`} {
		j, err := Read([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		if math.IsNaN(j.Rules.LeastDraft) {
			t.Errorf("%s leaves NaN", text)
		}
	}
	j := Defaults()
	j.Clay.Wall = math.NaN()
	j.Form.Outer = []Node{{}}
	if f := j.Check(); len(f) != 1 || f[0].Field != "clay.wall" {
		t.Errorf("NaN passes the check: %v", f)
	}
}

// Anything is refused with a reason, or is a job that writes and reads back the
// same.
func FuzzRead(f *testing.F) {
	f.Add([]byte(full))
	f.Add([]byte(`{"form":{"outer":[{"r":0,"z":0}]},"mold":{"partingHeights":[]}}`))
	f.Add([]byte(`{"form":{"outer":[{"R":1e-310,"Z":-0}],"inner":[]},"rules":{"leastDraft":null}}`))
	f.Add([]byte(`{"name":"\ud800\u0000` + "\xff" + `","form":{"outer":[null]}}`))
	f.Add([]byte(`{"printer":{"bed":[1,2]},"form":{"outer":[{}]}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		j, err := Read(text)
		if err != nil {
			faults, ok := err.(Faults)
			if !ok || len(faults) == 0 || faults[0].Code == "" || faults[0].Message.IsZero() {
				t.Fatalf("an error that tells nothing: %#v", err)
			}
			return
		}
		first, err := j.Write()
		if err != nil {
			t.Fatal(err)
		}
		again, err := Read(first)
		if err != nil {
			t.Fatalf("does not read back: %v\n%s", err, first)
		}
		if !reflect.DeepEqual(again, j) {
			t.Fatalf("reads back as\n%+v, was\n%+v", again, j)
		}
		if second, _ := again.Write(); !bytes.Equal(first, second) {
			t.Fatalf("writes\n%s, then\n%s", first, second)
		}
	})
}
