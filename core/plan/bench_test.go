package plan

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"testing"

	"moldwright/core/job"
)

// wavy is an invented vase of n smooth nodes.
func wavy(n int) *job.Job {
	j := job.Defaults()
	j.Name = "wavy"
	j.Form.Size = job.SizeMold
	j.Form.Outer = append(j.Form.Outer, job.Node{Corner: true}, job.Node{R: 40, Corner: true})
	for i := 1; i < n-1; i++ {
		t := float64(i) / float64(n-2)
		j.Form.Outer = append(j.Form.Outer, job.Node{R: 45 + 12*math.Sin(5*t) + 4*math.Sin(17*t) - 5*math.Exp(-20*t), Z: 180 * t})
	}
	return &j
}

func BenchmarkPlan100(b *testing.B)  { benchPlan(b, wavy(100)) }
func BenchmarkPlan500(b *testing.B)  { benchPlan(b, wavy(500)) }
func BenchmarkPlan2000(b *testing.B) { benchPlan(b, wavy(2000)) }
func BenchmarkPlan500Oval(b *testing.B) {
	j := wavy(500)
	j.Form.Section = job.Section{Kind: job.SectionOval, Ratio: 0.8}
	benchPlan(b, j)
}

func benchPlan(b *testing.B, j *job.Job) {
	text, err := json.Marshal(j) // as the page sends it
	if err != nil {
		b.Fatal(err)
	}
	request := []byte(`{"job":` + string(text) + `}`)
	b.ReportAllocs()
	for b.Loop() {
		if reply, _ := Call("plan", request, nil, nil); len(reply) < 1000 {
			b.Fatal(string(reply))
		}
	}
}

func BenchmarkSolidsPrints(b *testing.B) {
	j := wavy(500)
	j.Mold.Scheme = "two"
	text, err := j.Write()
	if err != nil {
		b.Fatal(err)
	}
	request := []byte(`{"what":"prints","as":"stl","job":` + string(text) + `}`)
	n := 0
	for b.Loop() {
		_, blobs := Call("solids", request, nil, nil)
		n = 0
		for _, x := range blobs {
			n += len(x) / 50
		}
	}
	b.ReportMetric(float64(n), "triangles")
}

// BenchmarkRequests times the requests of the file that MOLDWRIGHT_REQUESTS
// names, so that they can be held against the same ones in wasm.
func BenchmarkRequests(b *testing.B) {
	file := os.Getenv("MOLDWRIGHT_REQUESTS")
	if file == "" {
		b.Skip("MOLDWRIGHT_REQUESTS names no file")
	}
	text, err := os.ReadFile(file)
	if err != nil {
		b.Fatal(err)
	}
	var all []struct {
		Name, Op string
		Request  json.RawMessage
	}
	if err := json.Unmarshal(text, &all); err != nil {
		b.Fatal(err)
	}
	for _, r := range all {
		b.Run(r.Name, func(b *testing.B) {
			for b.Loop() {
				if reply, _ := Call(r.Op, r.Request, nil, nil); bytes.HasPrefix(reply, []byte(`{"error"`)) {
					b.Fatal(string(reply))
				}
			}
		})
	}
}
