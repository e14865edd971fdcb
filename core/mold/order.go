package mold

import (
	"math"

	"moldwright/core/form"
	"moldwright/core/job"
	"moldwright/core/words"
)

// Order is the order in which the parts come away: a part may move when no
// part still in place, natches included, stands in its path. Where several may,
// a core goes first, then an upper part, a lower, and side parts by letter. A Fault
// names the parts that lock one another, where they do.
func (md *Mold) Order() ([]string, error) {
	left := make([]int, len(md.Parts))
	for i := range left {
		left[i] = i
	}
	rank := func(i int) string {
		switch md.Parts[i].Name {
		case "core":
			return " 0"
		case "upper":
			return " 1"
		case "lower":
			return " 2"
		}
		return md.Parts[i].Name
	}
	var out []string
	for len(left) > 0 {
		pick := -1
		for k, i := range left {
			free := true
			for _, other := range left {
				free = free && (other == i || !md.blocks(other, i))
			}
			if free && (pick < 0 || rank(i) < rank(left[pick])) {
				pick = k
			}
		}
		if pick < 0 {
			var names []words.Text
			for _, i := range left {
				names = append(names, PartName(md.Parts[i].Name))
			}
			if last := len(md.Parts) - 1; md.Parts[last].Name == "core" && left[len(left)-1] == last && md.coreWidens() {
				return nil, job.Faults{job.Faultf("coreLocks", "form.inner",
					"The core cannot be drawn up out of the pot: below its mouth the inside is wider. Let the inner surface widen all the way up to the rim, or leave the inside to the slip.")}
			}
			return nil, job.Faults{job.Faultf("partsLock", "mold.natches",
				"The parts %s lock one another: none can be moved first. Leave the natches out, or choose another scheme.", words.Join(", ", names...))}
		}
		out = append(out, md.Parts[left[pick]].Name)
		left = append(left[:pick], left[pick+1:]...)
	}
	return out, nil
}

// coreWidens tells whether the inside of a pot cast solid is wider somewhere below
// its mouth.
func (md *Mold) coreWidens() bool {
	mouth := md.Inner[len(md.Inner)-1].R
	for _, p := range md.Inner {
		if p.R > mouth+1e-6 {
			return true
		}
	}
	return false
}

// PartName is what a part is called in a list of parts: side parts by their letters.
func PartName(part string) words.Text {
	switch part {
	case "lower":
		return words.SayIn("part of a mold", "lower")
	case "upper":
		return words.SayIn("part of a mold", "upper")
	case "core":
		return words.SayIn("part of a mold", "core")
	}
	return words.Plain(part)
}

// Letter is what a part is called on drawings and on its prints: side parts have
// their letters already.
func Letter(part string) string {
	switch part {
	case "lower":
		return "L"
	case "upper":
		return "U"
	case "core":
		return "K"
	}
	return part
}

// blocks tells whether part a, in place, stands in the path of part b.
func (md *Mold) blocks(a, b int) bool {
	pa, pb := &md.Parts[a], &md.Parts[b]
	for _, n := range pb.Natches {
		if md.facing(pb, n) == pa && !letsGo(pb, n) {
			return true
		}
	}
	if pa.Sector != nil && pb.Sector != nil {
		// a side part keeps to its own sector: every point draws nearer to the
		// sector's middle
		return false
	}
	return inPath(pa.Outline, pb.Outline, pb.Pull)
}

// facing is the part on the other side of a natch.
func (md *Mold) facing(p *Part, n Natch) *Part {
	for i := range md.Parts {
		o := &md.Parts[i]
		if o == p {
			continue
		}
		for _, m := range o.Natches {
			if m.Socket != n.Socket && m.At == n.At && m.Azimuth == n.Azimuth {
				return o
			}
		}
	}
	return nil
}

// letsGo tells whether a part can leave along its pull out of one of its own
// natches: a dome of half-angle t lets go along directions that lean from the
// normal of the face by at most 90 degrees less t.
func letsGo(p *Part, n Natch) bool {
	var normal [3]float64 // of the face, into the part
	az := n.Azimuth * math.Pi / 180
	switch n.Seam {
	case Below:
		normal = [3]float64{0, 0, 1}
	case Above:
		normal = [3]float64{0, 0, -1}
	case Start:
		normal = [3]float64{-math.Sin(az), math.Cos(az), 0}
	case End:
		normal = [3]float64{math.Sin(az), -math.Cos(az), 0}
	}
	dot := 0.0
	for i, v := range normal {
		dot += v * p.Pull[i]
	}
	lean := math.Acos(max(-1, min(1, dot))) * 180 / math.Pi
	return n.HalfAngle <= 90-lean+1e-9
}

// columns are the places at which two outlines are compared: more than the
// edges of any seam.
const columns = 48

// inPath tells whether outline a stands in the way of outline b along the
// pull, which is along the axis or outward.
func inPath(a, b []form.Point, pull [3]float64) bool {
	// x runs across the pull, y against it
	to := func(p form.Point) (x, y float64) {
		switch {
		case pull[2] < 0:
			return p.R, p.Z
		case pull[2] > 0:
			return p.R, -p.Z
		}
		return p.Z, -p.R
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range b {
		x, _ := to(p)
		lo, hi = min(lo, x), max(hi, x)
	}
	step := (hi - lo) / columns
	place := func(k int) float64 { return lo + (float64(k)+0.5)/columns*(hi-lo) }
	// of an outline, over every column: edge by edge, since most cross none
	extent := func(outline []form.Point) (least, most [columns]float64) {
		for k := range columns {
			least[k], most[k] = math.Inf(1), math.Inf(-1)
		}
		x0, y0 := to(outline[len(outline)-1])
		for _, q := range outline {
			x1, y1 := to(q)
			left, right := x0, x1
			if right < left {
				left, right = right, left
			}
			first, last := 0, columns-1
			if f := (left - lo) / step; f > 1 {
				first = int(min(f, columns)) - 1
			}
			if f := (right - lo) / step; f < columns-1 {
				last = int(max(f, -1)) + 1
			}
			for k := first; k <= last; k++ {
				if at := place(k); (x0 > at) != (x1 > at) {
					y := y0 + (at-x0)/(x1-x0)*(y1-y0)
					least[k], most[k] = min(least[k], y), max(most[k], y)
				}
			}
			x0, y0 = x1, y1
		}
		return least, most
	}
	first, _ := extent(a)
	_, last := extent(b)
	for k := range columns {
		if first[k] < last[k]-0.01 {
			return true
		}
	}
	return false
}
