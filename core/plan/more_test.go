package plan

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
	"moldwright/core/solid"
	"moldwright/core/words"
)

// answer calls an op and reads the reply.
func answer(t *testing.T, op, request string) map[string]any {
	t.Helper()
	reply, _ := Call(op, []byte(request), nil, nil)
	var out map[string]any
	if err := json.Unmarshal(reply, &out); err != nil {
		t.Fatalf("%s answers %q: %v", op, reply, err)
	}
	return out
}

func text(t *testing.T, j *job.Job) string {
	t.Helper()
	b, err := j.Write()
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Whatever is asked, there is an answer, and the next call works.
func TestEveryFailureIsAnAnswer(t *testing.T) {
	for _, c := range []struct{ op, request, code, field string }{
		{"no such op", `{}`, "unknownOp", "op"},
		{"plan", ``, "badRequest", ""},
		{"plan", `{"job":null}`, "badValue", "form.outer"},
		{"plan", `{}`, "noJob", "job"},
		{"plan", `{"job":{"form":{"outr":[]}}}`, "unknownKey", "form.outr"},
		{"plan", `{"job":{"form":{"outer":[{"r":1,"z":0},{"r":2,"z":0},{"r":2,"z":30}]}}}`, "notAtAxis", "form.outer[0].r"},
		{"plan", `{"job":{"form":{"outer":[{"r":0,"z":0},{"r":20,"z":0},{"r":-2,"z":30}]}}}`, "negativeRadius", "form.outer[2].r"},
		{"solids", `{"job":{},"what":"everything","as":"stl"}`, "badValue", "what"},
		{"sheet", `{"job":{},"sheet":"poster","paper":"A4","as":"pdf"}`, "badValue", "sheet"},
		{"read", `{"kind":"coordinates","text":"0 0\n10 x\n","units":"mm"}`, "badRow", "text"},
		{"nearest", `{"job":{},"scheme":"three"}`, "badValue", "scheme"},
	} {
		out := answer(t, c.op, c.request)
		fault, _ := out["error"].(map[string]any)
		field, _ := fault["field"].(string)
		if fault == nil || fault["code"] != c.code || field != c.field {
			t.Errorf("%s %s: %v, want %s at %q", c.op, c.request, out, c.code, c.field)
		}
	}
	good := answer(t, "plan", `{"job":`+text(t, pot(t, "open-bowl"))+`}`)
	if good["error"] != nil || good["chosen"] != "one" {
		t.Errorf("after the failures: %v", good["error"])
	}
}

// What nearest gives back is a job that plans clear with the scheme asked for.
func TestNearestAtTheBoundary(t *testing.T) {
	for _, name := range []string{"straight-cylinder", "waisted-vase"} {
		out := answer(t, "nearest", `{"job":`+text(t, pot(t, name))+`,"scheme":"two","leastDraft":3}`)
		if out["error"] != nil {
			t.Fatalf("%s: %v", name, out["error"])
		}
		back, err := json.Marshal(out["job"])
		if err != nil {
			t.Fatal(err)
		}
		j, err := job.Read(back)
		if err != nil {
			t.Fatal(err)
		}
		if s := made(t, j).scheme("two"); s.Verdict != "clear" {
			t.Errorf("%s: two parts are %s on the nearest form", name, s.Verdict)
		}
		if c, _ := out["maxChange"].(float64); c <= 0 {
			t.Errorf("%s: the largest change is %v", name, out["maxChange"])
		}
	}
}

// A remedy's job needs as few parts as the remedy says.
func TestRemediesAtTheBoundary(t *testing.T) {
	out := answer(t, "remedies", `{"job":`+text(t, pot(t, "straight-cylinder"))+`}`)
	list, _ := out["remedies"].([]any)
	if len(list) == 0 {
		t.Fatalf("no remedy for a straight cylinder: %v", out)
	}
	for _, x := range list {
		r := x.(map[string]any)
		back, err := json.Marshal(r["job"])
		if err != nil {
			t.Fatal(err)
		}
		j, err := job.Read(back)
		if err != nil {
			t.Fatal(err)
		}
		if p := made(t, j); p.chosen().Verdict != "clear" || p.chosen().Count != 3-int(r["saves"].(float64)) {
			t.Errorf("%v: plans %s", r["text"], p.Verdict)
		}
	}
}

// A lid that opens downward is planned upside down, and says so.
func TestLidIsCastUpsideDown(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	// a knob on top, the lid's dome, a rim 20 mm below it
	j.Form.Outer = []job.Node{node(0, 0), node(10, 0), node(8, -8), node(20, -12), node(50, -30)}
	p := made(t, &j)
	if !p.Drawing.Turned || !strings.Contains(words.Join(" ", p.Cautions...).String(), "upside down") {
		t.Errorf("turned %v, cautions %q", p.Drawing.Turned, p.Cautions)
	}
	near(t, "height", p.Size.Height, 30, 1e-9)
	// node z = -8, the knob's neck, stands 8 mm above the lowest place: there
	// the knob, 10 mm, holds a lower part by 2 mm
	one := p.scheme("one").Parts[0]
	near(t, "depth behind the knob", one.Catches[0].Depth, 2, 0.01)
	near(t, "height of the neck", one.Catches[0].AtZ, 8, 0.01)
}

// Air under a shoulder and slip in it, told with their volumes.
func TestPocketsInThePlan(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{node(0, 0), node(50, 0), node(50, 70), node(30, 70), node(30, 60), node(20, 60), node(20, 90)}
	p := made(t, &j)
	if len(p.Flow.Air) != 1 || *p.Flow.Drains {
		t.Fatalf("flow %+v", p.Flow)
	}
	near(t, "air", p.Flow.Air[0].Volume, 50.265, 0.01)
}

// Plaster over a positive: the dovetail recess, upside down, is an overhang 2 mm
// wide over 6 mm, whose corner holds the trap's own ring of air; a recess that
// narrows upward holds none.
func TestAirInPlaster(t *testing.T) {
	p := made(t, pot(t, "dovetail-foot"))
	if len(p.Flow.Plaster) != 0 {
		t.Errorf("upside down the recess opens upward, so air rises out of it: %+v", p.Flow.Plaster)
	}
	// a lower part that hooks behind a belly holds air under it, poured foot up:
	// upside down the groove's roof is the shelf at z 30, level from r 40 to 60:
	// with a lip 4 mm deep at its edge it holds pi (58^2 - 40^2) 4 mm3
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{node(0, 0), node(60, 0), node(60, 34), node(58, 34), node(58, 30), node(40, 30), node(40, 50), node(70, 50), node(70, 80)}
	j.Mold.Scheme = "one"
	p = made(t, &j)
	if len(p.Flow.Plaster) != 1 || p.Flow.Plaster[0].Part != "lower" {
		t.Fatalf("pockets in the plaster: %+v", p.Flow.Plaster)
	}
	q := p.Flow.Plaster[0]
	near(t, "from", q.ZFrom, 30, 1e-9)
	near(t, "to", q.ZTo, 34, 1e-9)
	near(t, "volume", q.Volume, math.Pi*(58*58-40*40)*4/1000, 1e-6)
}

// A form with an inner surface of its own is planned from its file, as a user opens
// it, and one with too few nodes is named.
func TestSolidCastFromItsFile(t *testing.T) {
	ask := func(inner string) string {
		reply, _ := Call("plan", []byte(`{"job":{"form":{"size":"mold","outer":[{"r":0,"z":0,"corner":true},{"r":40,"z":0,"corner":true},{"r":50,"z":60,"corner":true}],"inner":`+inner+`}}}`), nil, nil)
		return string(reply)
	}
	if r := ask(`[{"r":0,"z":6,"corner":true},{"r":34,"z":6,"corner":true},{"r":42,"z":60,"corner":true}]`); !strings.Contains(r, `"chosen":"core"`) || !strings.Contains(r, `"order":["core","lower"]`) {
		t.Errorf("got %.300s", r)
	}
	if r := ask(`[{"r":0,"z":6}]`); !strings.Contains(r, `"field":"form.inner"`) {
		t.Errorf("got %.300s", r)
	}
}

// A dish cast solid: a lower part and a core, which fill the block with the
// clay and the feed hole; the core is lifted first, and the clay between is
// what the two profiles bound.
func TestSolidCastDish(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{node(0, 0), node(40, 0), node(50, 60)}
	j.Form.Inner = []job.Node{node(0, 6), node(34, 6), node(42, 60)}
	p := made(t, &j)
	if p.Chosen != "core" || p.chosen().Verdict != "clear" || p.chosen().Count != 2 || strings.Join(p.Order, " ") != "core lower" {
		t.Fatalf("chosen %s %s, order %v: %s", p.Chosen, p.chosen().Verdict, p.Order, p.WhyNotFewer)
	}
	clay := math.Pi/3*60*(40*40+40*50+50*50)/1000 - math.Pi/3*54*(34*34+34*42+42*42)/1000
	near(t, "clay", p.Casting.CastVolume, clay, 1e-6)
	files, err := p.Meshes("all", func(float64, words.Text) {})
	if err != nil {
		t.Fatal(err)
	}
	sum, prints := 0.0, 0
	for _, f := range files {
		if r := solid.Check(f.mesh); !r.Sound() {
			t.Errorf("%s: %v", f.Name, r.Err())
		}
		switch f.Kind {
		case "plaster", "cast":
			sum += f.Volume
		default:
			prints++
		}
	}
	if prints < 4 {
		t.Errorf("%d prints for a lower part and a core", prints)
	}
	b := p.work.mold.Block
	block := math.Pi * b.R * b.R * (b.ZTop - b.ZBottom) / 1000
	near(t, "plaster and clay against the block", sum+p.work.mold.DrainVolume(), block, 0.01*block) // edges and sockets apart
	var bodies []*solid.Body
	for _, f := range files {
		if f.Kind == "plaster" || f.Kind == "cast" {
			bodies = append(bodies, solid.NewBody(f.mesh))
		}
	}
	for i, a := range bodies {
		for _, b := range bodies[i+1:] {
			if hit, at := solid.Overlap(a, b, solid.TouchMM); hit {
				t.Errorf("two of core, lower part and cast overlap at %v", at)
			}
		}
	}
}
