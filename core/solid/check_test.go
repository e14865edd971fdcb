package solid

import (
	"math"
	"strings"
	"testing"
)

func TestCheckDescribes(t *testing.T) {
	cube := brick(t, Vec{0, 0, 0}, Vec{2, 2, 2})
	r := sound(t, cube, nil)
	if r.Edges != 18 || r.Genus != 0 || r.Shells != 1 || r.VolumeMM3 != 8 || r.AreaMM2 != 24 {
		t.Errorf("%+v", r)
	}
	void := brick(t, Vec{0.5, 0.5, 0.5}, Vec{1.5, 1.5, 1.5})
	void.Mirror(0)
	void.Translate(Vec{2, 0, 0})
	for i, f := range void.T {
		void.T[i] = [3]int32{f[0], f[2], f[1]}
	}
	r = sound(t, Merge(cube, void, brick(t, Vec{5, 0, 0}, Vec{6, 1, 1})), nil)
	if r.Shells != 3 || r.Voids != 1 || r.VolumeMM3 != 8 {
		t.Errorf("%+v", r)
	}
}

func TestCheckFinds(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(m *Mesh)
		word  string
	}{
		"a hole":            {func(m *Mesh) { m.T = m.T[1:] }, "open edges"},
		"a turned triangle": {func(m *Mesh) { m.T[0][0], m.T[0][1] = m.T[0][1], m.T[0][0] }, "open edges"},
		"a triangle twice":  {func(m *Mesh) { m.T = append(m.T, m.T[0]) }, "open edges"},
		"inside out":        {func(m *Mesh) { m.V[0], m.V[1] = m.V[1], m.V[0]; m.Mirror(0); turnAll(m) }, "volume"},
		"a stray vertex":    {func(m *Mesh) { m.V = append(m.V, Vec{9, 9, 9}) }, "no triangle uses"},
		"not a number":      {func(m *Mesh) { m.V[3][1] = math.NaN() }, "not finite"},
		"a wild index":      {func(m *Mesh) { m.T[2][1] = 99 }, "name no vertex"},
		"below float32":     {func(m *Mesh) { m.Translate(Vec{100, 0, 0}); m.V[1] = add(m.V[0], Vec{1e-6, 0, 0}) }, "without area"},
		"twins": {func(m *Mesh) {
			o := m.Clone()
			o.Translate(Vec{2, 2, 2}) // touches at one corner
			m.Append(o)
		}, "place of another"},
		"pinched": {func(m *Mesh) {
			o := m.Clone()
			o.Translate(Vec{2, 2, 2})
			var far, origin int32
			for i, v := range m.V {
				if v == (Vec{2, 2, 2}) {
					far = int32(i)
				}
			}
			for i, v := range o.V {
				if v == (Vec{2, 2, 2}) {
					origin = int32(i + len(m.V))
				}
			}
			m.Append(o)
			for i := range m.T {
				for k := range 3 {
					if m.T[i][k] == origin {
						m.T[i][k] = far
					}
				}
			}
		}, "pinched"},
		"empty": {func(m *Mesh) { *m = Mesh{} }, "no triangles"},
	} {
		m := brick(t, Vec{0, 0, 0}, Vec{2, 2, 2})
		c.spoil(m)
		if err := Check(m).Err(); err == nil || !strings.Contains(err.Error(), c.word) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func turnAll(m *Mesh) {
	for i, f := range m.T {
		m.T[i] = [3]int32{f[0], f[2], f[1]}
	}
}

func TestSelfIntersects(t *testing.T) {
	cube := func(x, y, z, s float64) *Mesh { return brick(t, Vec{x, y, z}, Vec{x + s, y + s, z + s}) }
	bow, err := Revolve([][2]float64{{10, 0}, {30, 0}, {12, 9}, {30, 8}}, round(40), FullTurn(40))
	if err != nil {
		t.Fatal(err)
	}
	folded := cube(0, 0, 0, 2)
	folded.V[0] = Vec{3, 3, 3} // one corner pulled through the far one
	tight, err := Revolve(cup(300), round(256), FullTurn(256))
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		m    *Mesh
		want bool
	}{
		"cube":               {cube(0, 0, 0, 2), false},
		"cubes apart":        {Merge(cube(0, 0, 0, 2), cube(2.01, 0, 0, 2)), false},
		"cube in a cube":     {Merge(cube(0, 0, 0, 9), cube(2, 2, 2, 2)), false},
		"corner in a cube":   {Merge(cube(0, 0, 0, 2), cube(1.5, 1.5, 1.5, 2)), true},
		"faces touch":        {Merge(cube(0, 0, 0, 2), cube(2, 0.5, 0.5, 1)), true},
		"same cube twice":    {Merge(cube(0, 0, 0, 2), cube(0, 0, 0, 2)), true},
		"outline crosses":    {bow, true},
		"corner through":     {folded, true},
		"fine cup":           {tight, false},
		"edges touch across": {Merge(cube(0, 0, 0, 2), cube(2, 2, -0.5, 1)), true},
	} {
		if got, pair := SelfIntersects(c.m); got != c.want {
			t.Errorf("%s: %v %v", name, got, pair)
		}
	}
}

// The tree must find what comparing every two triangles finds.
func TestSelfIntersectsAgainstAllPairs(t *testing.T) {
	d := dice(5)
	both := 0
	for k := range 150 {
		m := &Mesh{}
		for range 6 + d.IntN(20) {
			m.V = append(m.V, Vec{d.Float64() * 9, d.Float64() * 9, float64(d.IntN(5))})
		}
		for len(m.T) < 3+k%7 {
			a, b, c := int32(d.IntN(len(m.V))), int32(d.IntN(len(m.V))), int32(d.IntN(len(m.V)))
			if a != b && b != c && c != a {
				m.T = append(m.T, [3]int32{a, b, c})
			}
		}
		v := rounded(m)
		want := false
		for i := range m.T {
			for j := range i {
				want = want || trianglesMeet(v, m.T[i], m.T[j])
			}
		}
		if got, _ := SelfIntersects(m); got != want {
			t.Fatalf("case %d: %v, want %v", k, got, want)
		}
		if want {
			both++
		}
	}
	if both < 20 || both > 140 {
		t.Errorf("%d of 150 cases meet: the test shows little", both)
	}
}
