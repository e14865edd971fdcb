package plan

import (
	"math"
	"strings"
	"testing"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// The clay of a pot cast solid meets last where the largest ball has room: against
// balls about every place of a fine grid of the section.
func TestThickestWallAgainstAGrid(t *testing.T) {
	for k, c := range []struct{ outer, inner []job.Node }{
		{[]job.Node{node(0, 0), node(40, 0), node(50, 60)}, []job.Node{node(0, 6), node(34, 6), node(42, 60)}},
		{[]job.Node{node(0, 4), node(20, 4), node(24, 0), node(40, 0), node(60, 30)}, []job.Node{node(0, 9), node(30, 9), node(54, 30)}},
		{[]job.Node{node(0, 0), node(40, 0), {R: 53, Z: 18}, node(62, 44)}, []job.Node{node(0, 7), {R: 30, Z: 8}, {R: 45, Z: 18}, node(55, 44)}},
	} {
		j := job.Defaults()
		j.Form.Size, j.Form.Outer, j.Form.Inner = job.SizeMold, c.outer, c.inner
		p := made(t, &j)
		md := p.work.mold
		ring := append([]form.Point{}, md.Inner...)
		for i := len(md.Cavity) - 1; i >= 0; i-- {
			ring = append(ring, md.Cavity[i])
		}
		most, where := 0.0, form.Point{}
		for r := 0.0; r <= 62; r += 0.25 {
			for z := 0.0; z <= 60; z += 0.25 {
				q, in, near := form.Point{R: r, Z: z}, false, math.Inf(1)
				for i := range ring {
					a, b := ring[i], ring[(i+1)%len(ring)]
					if (a.Z > z) != (b.Z > z) && r < a.R+(z-a.Z)/(b.Z-a.Z)*(b.R-a.R) {
						in = !in
					}
					if i == len(ring)-1 {
						continue // the axis is no wall
					}
					l := a.Dist(b)
					f := 0.0
					if l > 0 {
						f = math.Max(0, math.Min(1, ((r-a.R)*(b.R-a.R)+(z-a.Z)*(b.Z-a.Z))/l/l))
					}
					near = math.Min(near, q.Dist(a.Lerp(b, f)))
				}
				if in && near > most {
					most, where = near, form.Point{R: r, Z: z}
				}
			}
		}
		at, got := thickest(md.Inner, md.Cavity)
		if math.Abs(got-2*most) > 0.3 {
			t.Errorf("form %d: the thickest wall is %.3f mm, the grid gives %.3f", k, got, 2*most)
		}
		if at.Dist(where) > 1 {
			t.Errorf("form %d: it is thickest at %v, the grid gives %v", k, at, where)
		}
		if d := p.Drawing.Thickest; d == nil || math.Abs(d[0]-at.R) > 1e-3 || math.Abs(d[1]-at.Z) > 1e-3 || math.Abs(d[2]-got) > 1e-3 {
			t.Errorf("form %d: the drawing has %v", k, d)
		}
		for i, draft := range p.Drawing.InnerDraft { // none of these cores catches
			if draft < 0 || draft > 90 {
				t.Errorf("form %d: draft %g of piece %d", k, draft, i)
			}
		}
		if n := len(p.Drawing.InnerDraft); n != len(p.Drawing.Inner)-1 || p.Drawing.InnerDraft[0] < 85 || p.Drawing.InnerDraft[n-1] > 60 {
			t.Errorf("form %d: drafts %v of the inner surface", k, p.Drawing.InnerDraft)
		}
		// two faces: a quarter of the time of one
		near(t, "minutes", p.Casting.Minutes, got*got/4/p.Casting.CastingRate, 1e-9)
		if p.Flow.Drains != nil {
			t.Errorf("form %d is said to be drained", k)
		}
	}
}

// Slip comes in through the foot, upside down: a ring under the foot, 4 mm high, then
// holds air, and a shoulder that would hold some upright does not.
func TestAirInAPotCastSolid(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{node(0, 4), node(20, 4), node(20, 0), node(40, 0), node(60, 30)}
	j.Form.Inner = []job.Node{node(0, 9), node(30, 9), node(54, 30)}
	p := made(t, &j)
	if len(p.Flow.Air) != 1 || p.Flow.Air[0].ZFrom != 0 || math.Abs(p.Flow.Air[0].ZTo-4) > 1e-9 {
		t.Fatalf("air %+v", p.Flow.Air)
	}
	r := 40 + 4*20.0/30 // of the wall, 4 mm up
	near(t, "air", p.Flow.Air[0].Volume, (math.Pi/3*4*(40*40+40*r+r*r)-math.Pi*20*20*4)/1000, 1e-3)
	if !strings.Contains(words.Join(" ", p.Cautions...).String(), "between 0.0 and 4.0 mm") {
		t.Errorf("cautions %q", p.Cautions)
	}
	j.Form.Outer = []job.Node{node(0, 0), node(40, 0), node(50, 30), node(42, 30), node(42, 40)}
	j.Form.Inner = []job.Node{node(0, 9), node(30, 9), node(36, 40)}
	if p := made(t, &j); len(p.Flow.Air) != 0 {
		t.Errorf("air %+v", p.Flow.Air)
	}
}

// A core that is wider within than its mouth lets nothing come apart: the fault says why.
func TestCoreThatCannotComeOut(t *testing.T) {
	j := job.Defaults()
	j.Form.Size = job.SizeMold
	j.Form.Outer = []job.Node{node(0, 0), node(40, 0), node(60, 50), node(40, 90)}
	j.Form.Inner = []job.Node{node(0, 8), node(32, 8), node(52, 50), node(32, 90)}
	_, err := Make(&j)
	f, ok := err.(job.Faults)
	if !ok || f[0].Code != "coreLocks" || f[0].Field != "form.inner" {
		t.Errorf("%v", err)
	}
	j.Form.Inner = []job.Node{node(0, 8), node(20, 8), node(26, 50), node(32, 90)}
	if _, err := Make(&j); err != nil {
		t.Error(err)
	}
}
