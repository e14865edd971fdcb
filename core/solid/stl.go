package solid

// Binary STL, the file that every slicer takes. Writing fills one buffer by
// index: the library that reads (stlread.go) makes a buffer and a call for each
// triangle, which is many times slower, and far more so in a browser.

import (
	"encoding/binary"
	"math"
	"slices"
	"strings"
)

const (
	stlHead   = 84
	stlRecord = 50
)

// STL is the mesh as a binary STL file: 84 bytes and 50 for each triangle. The
// header holds the name in ASCII, other characters replaced; it never begins
// with "solid", by which readers know the text variant. Coordinates are rounded
// to float32, normals are those of the corners before that (zero for a triangle
// without area) and attributes are zero. The same mesh gives the same bytes.
func STL(m *Mesh, name string) []byte { return AppendSTL(nil, m, name) }

// AppendSTL appends the file that STL gives to dst. With room in dst nothing is
// allocated: for a large file, getting fresh memory takes longer than filling it.
func AppendSTL(dst []byte, m *Mesh, name string) []byte {
	size := stlHead + stlRecord*len(m.T)
	dst = slices.Grow(dst, size)
	out := dst[len(dst) : len(dst)+size]
	clear(out[:80])
	copy(out[:80], stlName(name))
	binary.LittleEndian.PutUint32(out[80:], uint32(len(m.T)))
	rest := out[stlHead:]
	for _, t := range m.T {
		rec := (*[stlRecord]byte)(rest)
		rest = rest[stlRecord:]
		a, b, c := &m.V[t[0]], &m.V[t[1]], &m.V[t[2]]
		ux, uy, uz := b[0]-a[0], b[1]-a[1], b[2]-a[2]
		vx, vy, vz := c[0]-a[0], c[1]-a[1], c[2]-a[2]
		nx := float64(uy*vz) - float64(uz*vy)
		ny := float64(uz*vx) - float64(ux*vz)
		nz := float64(ux*vy) - float64(uy*vx)
		if l := math.Sqrt(float64(nx*nx) + float64(ny*ny) + float64(nz*nz)); l > 0 {
			l = 1 / l
			nx, ny, nz = nx*l, ny*l, nz*l
		}
		put(rec[0:4], nx)
		put(rec[4:8], ny)
		put(rec[8:12], nz)
		put(rec[12:16], a[0])
		put(rec[16:20], a[1])
		put(rec[20:24], a[2])
		put(rec[24:28], b[0])
		put(rec[28:32], b[1])
		put(rec[32:36], b[2])
		put(rec[36:40], c[0])
		put(rec[40:44], c[1])
		put(rec[44:48], c[2])
		rec[48], rec[49] = 0, 0
	}
	return dst[:len(dst)+size]
}

func put(b []byte, x float64) {
	binary.LittleEndian.PutUint32(b, math.Float32bits(float32(x)))
}

func stlName(name string) string {
	ascii := strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '_'
		}
		return r
	}, name)
	if len(ascii) >= 5 && strings.EqualFold(ascii[:5], "solid") {
		ascii = "_" + ascii
	}
	return ascii
}
