package tooling

// Whether a key lies in sound matter: within a tube through the uncut print that no
// surface of it comes into. The tube reaches from a little below the cone's foot to a
// wall beyond the tip of its socket, so that both sides are sound. All joints ask
// this of all their keys; one that has too little matter about it is made smaller, or
// left out.

import (
	"math"
	"slices"

	"moldwright/core/form"
	"moldwright/core/mold"
	"moldwright/core/solid"
)

const (
	keyFoot = 1.0  // mm of matter behind the foot of a cone
	offMesh = 0.05 // mm, more than the chords of a mesh
)

// spareOf is how much farther than a cone its socket and the wall about it reach.
func spareOf(clearance float64) float64 { return keyWall + clearance*math.Sqrt2 }

// tube asks how near a mesh comes to lines across a joint.
type tube struct {
	near [][3][3]float64 // triangles beside the joint: in its coordinates, and across it
}

// tubeAbout are the tubes across a joint whose cones stand out along normal: place
// gives a point of its coordinates.
func tubeAbout(m *solid.Mesh, normal solid.Vec, place func(x, y float64) solid.Vec, spare float64) *tube {
	o := place(0, 0)
	x, y := minus(place(1, 0), o), minus(place(0, 1), o)
	across := make([]float64, len(m.V))
	off := dotted(o, normal)
	for i := range m.V {
		v := &m.V[i]
		across[i] = float64(v[0]*normal[0]) + float64(v[1]*normal[1]) + float64(v[2]*normal[2]) - off
	}
	t := &tube{}
	far := keyMost + 2*spare
	for _, f := range m.T {
		a, b, c := across[f[0]], across[f[1]], across[f[2]]
		if a > far && b > far && c > far || a < -keyFoot && b < -keyFoot && c < -keyFoot {
			continue
		}
		var flat [3][3]float64
		for i, at := range f {
			p := minus(m.V[at], o)
			flat[i] = [3]float64{dotted(p, x), dotted(p, y), across[at]}
		}
		t.near = append(t.near, flat)
	}
	return t
}

// holds is how large the matter about a key allows it to be, 0 where it would not be
// worth printing.
func (t *tube) holds(k key, spare float64) float64 {
	if k.radius >= keyLeast {
		k.radius = math.Min(k.radius, t.room(k.at, -keyFoot, k.radius+2*spare)-spare)
	}
	if k.radius < keyLeast {
		return 0
	}
	return k.radius
}

// held is a key of a joint across normal, and how large the matter about it lets it be.
type held struct {
	at     solid.Vec
	normal solid.Vec
	asked  float64
	radius float64 // 0 where it is left out
}

// sunk are those of the keys of a joint that have sound matter about them, each as
// large as allows tells, which is not asked again what it has told before.
func sunk(told *[]held, keys []key, normal solid.Vec, place func(x, y float64) solid.Vec, allows func(k key, at solid.Vec) float64) (out []key) {
	for _, k := range keys {
		at := place(k.at[0], k.at[1])
		i := slices.IndexFunc(*told, func(h held) bool { return h.at == at && h.normal == normal && h.asked == k.radius })
		if i < 0 {
			i = len(*told)
			*told = append(*told, held{at, normal, k.radius, allows(k, at)})
		}
		if k.radius = (*told)[i].radius; k.radius > 0 {
			out = append(out, k)
		}
	}
	return out
}

// uncut is a print before it was divided, of which its pieces know: made when its
// joints first ask for it.
type uncut struct {
	so    *mold.Solids
	build func(so *mold.Solids) (*solid.Mesh, error)
	mesh  *solid.Mesh
	told  []held
}

// sunk are the keys that have sound matter about them in the uncut print.
func (u *uncut) sunk(keys []key, clearance float64, normal solid.Vec, place func(x, y float64) solid.Vec) []key {
	return u.sunkOr(func(key) bool { return false }, keys, clearance, normal, place)
}

// sunkOr are the keys that have sound matter about them, as deep tells of some
// without a mesh.
func (u *uncut) sunkOr(deep func(k key) bool, keys []key, clearance float64, normal solid.Vec, place func(x, y float64) solid.Vec) []key {
	spare := spareOf(clearance)
	var t *tube
	return sunk(&u.told, keys, normal, place, func(k key, _ solid.Vec) float64 {
		if deep(k) {
			return k.radius
		}
		if u.mesh == nil {
			m, err := u.build(u.so)
			if err != nil {
				return 0 // which whoever asks for the piece is told
			}
			u.mesh = m
		}
		if t == nil {
			t = tubeAbout(u.mesh, normal, place, spare)
		}
		return t.holds(k, spare)
	})
}

// room is how near the mesh comes, across the axis, to the line through a place,
// between two places along it.
func (t *tube) room(at [2]float64, from, to float64) float64 {
	least := 2 * keyMost
	var poly, next [][3]float64
	for i := range t.near {
		a, b, c := &t.near[i][0], &t.near[i][1], &t.near[i][2]
		if min(a[2], b[2], c[2]) > to || max(a[2], b[2], c[2]) < from ||
			min(a[0], b[0], c[0])-at[0] > least || at[0]-max(a[0], b[0], c[0]) > least ||
			min(a[1], b[1], c[1])-at[1] > least || at[1]-max(a[1], b[1], c[1]) > least {
			continue
		}
		poly = append(poly[:0], *a, *b, *c)
		for _, end := range [2]struct{ at, way float64 }{{from, 1}, {to, -1}} {
			next = clipped(next[:0], poly, 2, end.at, end.way)
			poly, next = next, poly
		}
		in := len(poly) > 2
		side := 0.0
		o := form.Point{R: at[0], Z: at[1]}
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			least = math.Min(least, toChord(o, form.Point{R: p[0], Z: p[1]}, form.Point{R: q[0], Z: q[1]}))
			turn := (p[0]-at[0])*(q[1]-at[1]) - (p[1]-at[1])*(q[0]-at[0])
			in = in && turn*side >= 0 && turn != 0
			side = turn
		}
		if in {
			return 0
		}
	}
	return least
}

// swept tells whether discs of a radius along a line all lie within a loop: they are
// asked for about so far apart.
func swept(loop []form.Point, from, to form.Point, radius, step float64) bool {
	edges := depths{edges: chordsOf(loop)}
	far := from.Dist(to)
	n := math.Max(1, math.Ceil(far/step))
	need := radius + far/n/2
	for i := range int(n) + 1 {
		if d, ok := edges.depth(from.Lerp(to, float64(i)/n), need); !ok || d < need {
			return false
		}
	}
	return true
}

// deep tells whether the tube about a key, across an upright joint or a level one,
// surely lies in the matter of a turned piece, by its section alone: no mesh of it
// need be made then. Turned about the axis the tube sweeps, in the section, discs of
// its radius along a line: outward from an upright joint, since it goes out along
// the tangent, and up or down from a level one. A wall that runs askew is taken where
// it comes in farthest and where it goes out farthest; between these it stays clear of
// the discs or moves less than one is wide, and so passes none. Marks and natches are kept clear of.
func (t *turned) deep(radius float64, at, normal solid.Vec) bool {
	const step = 0.25 // mm
	if t.md.Dimpled() {
		return false
	}
	spare := spareOf(t.clear)
	wide, long := radius+spare+offMesh, radius+2*spare+offMesh
	far := math.Hypot(at[0], at[1])
	if far <= wide {
		return false
	}
	from := form.Point{R: far, Z: at[2]}
	to := from
	if normal[2] != 0 {
		from.Z, to.Z = at[2]-normal[2]*keyFoot, at[2]+normal[2]*long
	} else {
		to.R += math.Hypot(far-wide, long) - (far - wide)
	}
	deg, within := math.Atan2(at[1], at[0])*180/math.Pi, math.Atan(math.Max(long, wide)/(far-wide))*180/math.Pi
	pot, outside := t.sways(asPot, deg, within), t.sways(asOutside, deg, within)
	loop := make([]form.Point, len(t.section))
	for k := range 2 {
		for i, q := range t.section {
			g := [2]float64{1, 1}
			switch q.shape {
			case asPot:
				g = pot
			case asOutside:
				g = outside
			}
			if q.R*(g[1]-g[0]) > 2*wide && q.R*g[1] > from.R-wide && q.R*g[0] < to.R+wide {
				return false
			}
			loop[i] = form.Point{R: q.R * g[k], Z: q.Z}
		}
		if !swept(loop, from, to, wide, step) {
			return false
		}
	}
	if t.asked.clears == nil {
		t.asked.clears = append([][]solid.Vec{}, t.clears()...)
	}
	room := math.Hypot(wide, long)
	for _, l := range t.asked.clears {
		lo, hi := l[0], l[0]
		near := true
		for i := range 3 {
			for _, p := range l {
				lo[i], hi[i] = min(lo[i], p[i]), max(hi[i], p[i])
			}
			near = near && lo[i]-room < at[i] && at[i] < hi[i]+room
		}
		if near {
			return false
		}
	}
	return true
}

// sways are the least and the greatest reach of a shape within so many degrees of an
// azimuth.
func (t *turned) sways(s shape, deg, within float64) [2]float64 {
	if s == asPot && t.md.Section.Round || s == asOutside && t.md.Block.Facets == 0 {
		return [2]float64{1, 1}
	}
	const step = 0.5 // degrees; beside an extreme of flutes even it misses less than offMesh
	out := [2]float64{math.Inf(1), 0}
	n := math.Ceil(2 * within / step)
	for i := range int(n) + 1 {
		g := t.reach(s, deg-within+2*within*float64(i)/n)
		out[0], out[1] = math.Min(out[0], g), math.Max(out[1], g)
	}
	return out
}
