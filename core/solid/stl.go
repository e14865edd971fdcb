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
// to float32, normals are those of the rounded corners, as whoever reads the file
// works them out (zero for a triangle without area), and attributes are zero. The
// same mesh gives the same bytes.
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
		p, q, r := &m.V[t[0]], &m.V[t[1]], &m.V[t[2]]
		ax, ay, az := float32(p[0]), float32(p[1]), float32(p[2])
		bx, by, bz := float32(q[0]), float32(q[1]), float32(q[2])
		cx, cy, cz := float32(r[0]), float32(r[1]), float32(r[2])
		x, y, z := float64(ax), float64(ay), float64(az)
		ux, uy, uz := float64(bx)-x, float64(by)-y, float64(bz)-z
		vx, vy, vz := float64(cx)-x, float64(cy)-y, float64(cz)-z
		nx := float64(uy*vz) - float64(uz*vy)
		ny := float64(uz*vx) - float64(ux*vz)
		nz := float64(ux*vy) - float64(uy*vx)
		if l := math.Sqrt(float64(nx*nx) + float64(ny*ny) + float64(nz*nz)); l > 0 {
			l = 1 / l
			nx, ny, nz = nx*l, ny*l, nz*l
		}
		put(rec[0:4], float32(nx))
		put(rec[4:8], float32(ny))
		put(rec[8:12], float32(nz))
		put(rec[12:16], ax)
		put(rec[16:20], ay)
		put(rec[20:24], az)
		put(rec[24:28], bx)
		put(rec[28:32], by)
		put(rec[32:36], bz)
		put(rec[36:40], cx)
		put(rec[40:44], cy)
		put(rec[44:48], cz)
		rec[48], rec[49] = 0, 0
	}
	return dst[:len(dst)+size]
}

func put(b []byte, x float32) {
	binary.LittleEndian.PutUint32(b, math.Float32bits(x))
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
