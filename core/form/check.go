package form

import (
	"math"

	"moldwright/core/job"
)

// checkNodes finds what is wrong with single nodes, before any curve is made.
func checkNodes(nodes []job.Node, scale float64) job.Faults {
	var faults job.Faults
	bad := func(code string, i int, key, format string, args ...any) {
		faults = append(faults, job.Faultf(code, nodeField(i, key), format, args...))
	}
	if len(nodes) < 3 {
		return job.Faults{job.Faultf("tooFewPoints", "form.outer",
			"The profile has %d nodes; it needs at least 3: one on the axis under the foot, then out and up to the rim.", len(nodes))}
	}
	maxR, maxZ, minZ := 0.0, math.Inf(-1), math.Inf(1)
	for i, n := range nodes {
		switch {
		case math.IsNaN(n.R) || math.IsInf(n.R, 0):
			bad("notFinite", i, "r", "Node %d has no finite radius; give it a number.", i+1)
		case math.IsNaN(n.Z) || math.IsInf(n.Z, 0):
			bad("notFinite", i, "z", "Node %d has no finite height; give it a number.", i+1)
		case n.R < 0:
			bad("negativeRadius", i, "r", "Node %d has the negative radius %g; radii are measured from the axis outward, so give 0 or more.", i+1, n.R)
		case i > 0 && math.Hypot(n.R-nodes[i-1].R, n.Z-nodes[i-1].Z)*scale < leastStep:
			bad("repeatedPoint", i, "", "Node %d is the same as node %d; remove one of them.", i+1, i)
		case i > 0 && i < len(nodes)-1 && n.R == 0:
			bad("onAxis", i, "r", "Node %d touches the axis in the middle of the profile; only the first node, and the last of a closed form, may have radius 0.", i+1)
		}
		maxR, maxZ, minZ = math.Max(maxR, n.R), math.Max(maxZ, n.Z), math.Min(minZ, n.Z)
	}
	if len(faults) > 0 {
		return faults
	}
	if nodes[0].R != 0 {
		if nodes[len(nodes)-1].R == 0 {
			bad("fromRim", 0, "r", "The profile runs from the rim (radius %g) down to the axis; turn the order of the points round, so that it starts on the axis under the foot.", nodes[0].R)
		} else {
			bad("notAtAxis", 0, "r", "The first point has radius %g; the profile starts on the axis under the foot, so give it radius 0 or add a point there.", nodes[0].R)
		}
		return faults
	}
	w, h := maxR*scale, (maxZ-minZ)*scale
	if math.Max(2*w, h) > largestSize || math.IsInf(w, 0) || math.IsInf(h, 0) {
		faults = append(faults, job.Faultf("absurdSize", "form.outer",
			"The pot would be %.0f mm wide and %.0f mm high in the mold, more than %d mm; check the units.", 2*w, h, largestSize))
	} else if w < leastSize/2.0 || h < leastSize/2.0 {
		faults = append(faults, job.Faultf("absurdSize", "form.outer",
			"The pot would be %.2f mm wide and %.2f mm high in the mold; check the units.", 2*w, h))
	}
	return faults
}

func nodeField(i int, key string) string {
	f := "form.outer[" + itoa(i) + "]"
	if key != "" {
		f += "." + key
	}
	return f
}

func itoa(i int) string {
	if i < 10 {
		return string(rune('0' + i))
	}
	return itoa(i/10) + itoa(i%10)
}

// checkMeridian finds what only the whole curve shows: crossings, and a body
// on the wrong side.
func checkMeridian(m *Meridian) job.Faults {
	if i, j, ok := m.crossing(); ok {
		a, b := m.nodeBefore(i), m.nodeBefore(j)
		return job.Faults{job.Faultf("crossesItself", nodeField(b, ""),
			"The profile crosses itself: the stretch after node %d meets the stretch after node %d, at about r %.2f, z %.2f mm of mold size; move one of them.",
			a+1, b+1, m.Pts[j].R, m.nodeZ(m.Pts[j].Z))}
	}
	if m.Volume() <= 0 {
		return job.Faults{job.Faultf("wrongWay", "form.outer",
			"The profile runs downward, so that the pot would lie on its wrong side; list the points from the foot up.")}
	}
	if !m.Closed {
		if i, ok := m.crossesRimDisc(); ok {
			n := m.nodeBefore(i)
			return job.Faults{job.Faultf("crossesRim", nodeField(n, ""),
				"The stretch after node %d crosses the opening inside the rim, so nothing could be poured in; end the outer profile at the rim.", n+1)}
		}
	}
	return nil
}

// nodeZ is the height of the scaled nodes that z of the meridian stands for.
func (m *Meridian) nodeZ(z float64) float64 {
	if m.Turned {
		return m.Lift - z
	}
	return z - m.Lift
}

// nodeBefore is the index of the job's node at or before point i.
func (m *Meridian) nodeBefore(i int) int {
	for ; i > 0 && m.Node[i] < 0; i-- {
	}
	return m.Node[i]
}

// crossesRimDisc tells whether a span reaches into the flat disc that closes
// an open rim.
func (m *Meridian) crossesRimDisc() (span int, ok bool) {
	rim := m.Rim()
	last := len(m.Pts) - 2
	for i := 0; i < last; i++ {
		p, q := m.Pts[i], m.Pts[i+1]
		if (p.Z-rim.Z)*(q.Z-rim.Z) > 0 || p.Z == q.Z {
			continue
		}
		t := (rim.Z - p.Z) / (q.Z - p.Z)
		if p.R+t*(q.R-p.R) <= rim.R {
			return i, true
		}
	}
	return 0, false
}
