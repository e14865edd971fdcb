package job

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
)

// A sound job is salvaged whole, with nothing to note.
func TestSalvageSound(t *testing.T) {
	want, err := Read([]byte(full))
	if err != nil {
		t.Fatal(err)
	}
	got, notes, err := Salvage([]byte(full))
	if err != nil || len(notes) != 0 {
		t.Fatal(err, notes)
	}
	equal(t, *got, *want)
}

// What is lost is noted with its field; all else is as the file has it.
func TestSalvage(t *testing.T) {
	const outer = `"outer":[{"r":0,"z":0},{"r":30,"z":0,"corner":true},{"r":60,"z":80}]`
	for name, x := range map[string]struct {
		text   string
		rows   int
		fields string // of the notes
		also   func(j *Job) bool
	}{
		"one bad key":        {`{"form":{` + outer + `},"colour":"red","clay":{"wall":5}}`, 3, "colour", func(j *Job) bool { return j.Clay.Wall == 5 && j.Form.Outer[1].Corner }},
		"a wrong type":       {`{"clay":{"wall":"five","slipDensity":1.8},"form":{` + outer + `}}`, 3, "clay.wall", func(j *Job) bool { return j.Clay.Wall == 4 && j.Clay.SlipDensity == 1.8 }},
		"a figure too large": {`{"form":{` + outer + `},"plaster":{"wall":9000,"base":40}}`, 3, "plaster.wall", func(j *Job) bool { return j.Plaster.Wall == 30 && j.Plaster.Base == 40 }},
		"a section unknown":  {`{"form":{` + outer + `,"section":{"kind":"star","count":900}}}`, 3, "form.section.kind", func(j *Job) bool { return j.Form.Section.Kind == SectionRound && j.Form.Section.Count == 0 }},
		"an inner surface":   {`{"form":{` + outer + `,"inner":[{"r":1,"z":1}]}}`, 3, "form.inner", func(j *Job) bool { return j.Form.Inner == nil }},
		"a bad height":       {`{"form":{` + outer + `},"mold":{"partingHeights":[9,3],"staves":3}}`, 3, "mold.partingHeights[1]", func(j *Job) bool { return j.Mold.PartingHeights == nil && j.Mold.Staves == 3 }},
		"a bad row":          {`{"form":{"outer":[{"r":0,"z":0},{"r":"x","z":0},{"r":5},{"r":30,"z":0},{"r":60,"z":80}]},"name":"Reed"}`, 3, "form.outer[1].r form.outer[2]", func(j *Job) bool { return j.Name == "Reed" }},
		"a later version":    {`{"version":4,"form":{` + outer + `},"glow":{"a":[1,{"b":2}]},"name":"Reed"}`, 3, "glow version", func(j *Job) bool { return j.Name == "Reed" }},
		"cut in a row":       {`{"name":"Reed","form":{"outer":[{"r":0,"z":0},{"r":30,"z":0},{"r":60,"z":80},{"r":61,"z":8`, 3, " ", func(j *Job) bool { return j.Name == "Reed" }},
		"spoiled before":     {`{"name":"Re` + "\x01" + `ed,"form":{` + outer + `}}`, 3, " ", func(j *Job) bool { return j.Form.Outer[1].Corner && !j.Form.Outer[2].Corner }},
		"spoiled in between": {`{"form":{"outer":[{"r":0,"z":0},{"r":1,,"z":2},{"r":30,"z":0},{"r":60,"z":80}],"size":"mold"}}`, 4, " ", func(j *Job) bool { return j.Form.Outer[3].Z == 80 }},
		"text after the end": {`{"form":{` + outer + `}} and more`, 3, "", nil},
		"nulls":              {`{"form":{` + outer + `,"inner":null},"clay":null,"rules":{"leastDraft":null},"mold":{"spare":null}}`, 3, "", func(j *Job) bool { return j.Mold.Spare == nil && j.Rules.LeastDraft == 3 }},
	} {
		j, notes, err := Salvage([]byte(x.text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		var fields []string
		for _, n := range notes {
			fields = append(fields, n.Field)
		}
		if got := strings.Join(fields, " "); got != strings.TrimSpace(x.fields) {
			t.Errorf("%s: notes on %q, want %q", name, got, x.fields)
		}
		if (x.fields == " ") != (len(notes) == 1 && notes[0].Code == "cutShort") {
			t.Errorf("%s: notes are %v", name, notes)
		}
		if len(j.Form.Outer) != x.rows || x.also != nil && !x.also(j) {
			t.Errorf("%s: %+v", name, j)
		}
		text, err := j.Write()
		if err != nil {
			t.Fatal(err)
		}
		if again, err := Read(text); err != nil || !reflect.DeepEqual(again, j) {
			t.Errorf("%s: what was salvaged does not read back: %v", name, err)
		}
	}
}

// Cut anywhere, a job is refused, or gives rows that the whole file has too, and
// each byte more loses none of them.
func TestSalvageTruncated(t *testing.T) {
	whole, err := Read([]byte(full))
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for i := range len(full) {
		j, notes, err := Salvage([]byte(full[:i]))
		if err != nil {
			if rows > 0 {
				t.Fatalf("cut at %d: %v, though less of it gave %d rows", i, err, rows)
			}
			continue
		}
		if n := len(j.Form.Outer); n < rows || !reflect.DeepEqual(j.Form.Outer, whole.Form.Outer[:n]) || len(notes) == 0 {
			t.Fatalf("cut at %d: rows %v, notes %v", i, j.Form.Outer, notes)
		}
		rows = len(j.Form.Outer)
	}
	if rows != len(whole.Form.Outer) {
		t.Errorf("%d rows at the end", rows)
	}
}

// What holds no outline is refused.
func TestSalvageNothing(t *testing.T) {
	for _, text := range []string{"", "{}", "[1,2]", "r z\n0 0\n", `{"format":"moldwright-class","form":{"outer":[{"r":0,"z":0},{"r":1,"z":0},{"r":2,"z":9}]}}`, `{"form":{"outer":[{"r":0,"z":0},{"r":1,"z":`, "\x00\x01\x02", "<html>"} {
		if j, _, err := Salvage([]byte(text)); err == nil {
			t.Errorf("%q gives %+v", text, j)
		} else if f, ok := err.(Faults); !ok || f[0].Error() == "" {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Whatever the text, what is salvaged is a job that writes and reads back.
func FuzzSalvage(f *testing.F) {
	f.Add([]byte(full))
	f.Add([]byte(full[:len(full)/2]))
	f.Add([]byte(strings.Replace(full, `"r": 30.5`, `"r": "x"`, 1)))
	f.Add([]byte(`{"form":{"outer":[{"r":0,"z":0},{"r":1,"z":0},{"r":2,"z":9}],"section":{"kind":"flutes","dimples":{"heights":[1e9]}}}}`))
	f.Add([]byte(`{"casting":{"own":{"x":1}},"printer":{"bed":[1,2,3,4,"x"]},"outer": [{"r":0,"z":0},{"r":1,"z":0},{"r":2,"z":9}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		j, _, err := Salvage(text)
		if err != nil {
			if faults, ok := err.(Faults); !ok || len(faults) == 0 || faults[0].Error() == "" {
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
		if second, _ := again.Write(); !bytes.Equal(first, second) {
			t.Fatalf("writes\n%s, then\n%s", first, second)
		}
	})
}
