package tooling

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"moldwright/core/job"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

// An end board that is larger than the bed both ways falls into pieces both ways:
// sound, as large as the plan says, apart from one another and from the plaster,
// and together what the whole board is but for sockets and the gaps in its ledges.
func TestEndBoardsDivideBothWays(t *testing.T) {
	both, whole := 0, 0
	for _, bed := range [2]float64{90, 66} {
		j := job.Defaults()
		j.Form.Size = job.SizeMold
		j.Form.Outer = pots["waist"]
		j.Printer.Bed = [3]float64{bed, bed, 120}
		layouts(t, &j, func(md *mold.Mold) {
			if id := md.Scheme.ID; id != "sides2" && id != "sides3+lower" && id != "sides4" {
				return
			}
			so := mold.NewCoarse(md)
			large := j
			large.Printer.Bed = [3]float64{900, 900, 900}
			want := map[string]float64{}
			for _, p := range Kit(&large, md) {
				want[p.Name] = p.Volume
			}
			var a *mold.Part
			for i := range md.Parts {
				if md.Parts[i].Name == "A" {
					a = &md.Parts[i]
				}
			}
			m, err := so.Part(a)
			if err != nil {
				t.Fatal(err)
			}
			plaster := solid.NewBody(m)
			bodies, sum, deep := map[string][]*solid.Body{}, map[string]float64{}, map[string]bool{}
			for _, p := range Kit(&j, md) {
				name, _, _ := strings.Cut(p.Name, ",")
				if p.Part != "A" || !strings.HasSuffix(name, "end board") {
					continue
				}
				at := fmt.Sprintf("%s, bed %g, %s", md.Scheme.ID, bed, p.Name)
				if !p.FitsBed {
					t.Errorf("%s does not fit: %v", at, p.Size)
					continue
				}
				m, rows, err := p.Mesh(so)
				if err != nil {
					t.Errorf("%s: %v", at, err)
					continue
				}
				sound(t, at, m)
				for k, size := range m.Size() {
					if math.Abs(size-p.Size[k]) > 0.01 {
						t.Errorf("%s: size %.2f, the plan says %.2f", at, m.Size(), p.Size)
					}
				}
				if got := m.Volume() / 1000; math.Abs(got-p.Volume) > 0.03*p.Volume+0.3 {
					t.Errorf("%s: %.2f ml, the plan says %.2f", at, got, p.Volume)
				}
				m = inMold(m, rows)
				b := solid.NewBody(m)
				for _, o := range append(bodies[name], plaster) {
					if hit, where := solid.Overlap(o, b, 0.02); hit {
						t.Errorf("%s shares space at %.2f", at, where)
					}
				}
				bodies[name], sum[name] = append(bodies[name], b), sum[name]+p.Volume
				tr, _ := newTray(&j, md, a)
				lo := math.Inf(1)
				for _, v := range m.V {
					lo = math.Min(lo, dotted(v, a.Pull))
				}
				deep[name] = deep[name] || lo > tr.floor()+1
			}
			for name, list := range bodies {
				if math.Abs(sum[name]-want[name]) > 0.03*want[name] {
					t.Errorf("%s, %s: %d pieces of %.1f ml, the whole has %.1f", md.Scheme.ID, name, len(list), sum[name], want[name])
				}
				whole++
				if deep[name] && len(list) > 2 {
					both++
				}
			}
		})
	}
	t.Logf("%d boards, %d of them divided both ways", whole, both)
	if both < 4 {
		t.Errorf("only %d of %d boards are divided both ways", both, whole)
	}
}
