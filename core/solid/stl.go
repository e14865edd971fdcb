package solid

// Binary STL, the file that every slicer takes. Writing fills one buffer by
// index: the library that reads makes a buffer and a call for each triangle,
// which is many times slower, and far more so in a browser. Reading, binary or
// text, is left to the library.

import (
	"bytes"
	"encoding/binary"
	"math"
	"slices"
	"strings"

	"github.com/hschendel/stl"

	"moldwright/core/job"
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

// ReadSTL reads a binary or text STL file. Corners at the same place become one
// vertex, numbered in the order in which they are first met; -0 counts as 0.
// Errors are *job.Fault.
func ReadSTL(data []byte) (*Mesh, error) {
	if fault := stlFit(data); fault != nil {
		return nil, fault
	}
	s, err := stl.ReadAll(bytes.NewReader(data))
	if err != nil {
		return nil, job.Faultf("badSTL", "file", "this STL file cannot be read (%s); export it again as binary STL", firstLine(err.Error()))
	}
	m := &Mesh{T: make([][3]int32, len(s.Triangles))}
	ids := make(map[stl.Vec3]int32, len(s.Triangles)/2)
	for i, t := range s.Triangles {
		for k, p := range t.Vertices {
			p = stl.Vec3{p[0] + 0, p[1] + 0, p[2] + 0}
			v := Vec{float64(p[0]), float64(p[1]), float64(p[2])}
			if sum := v[0] + v[1] + v[2]; math.IsNaN(sum) || math.IsInf(sum, 0) {
				return nil, job.Faultf("badSTL", "file", "triangle %d of this STL file has a corner that is not finite; export it again", i)
			}
			id, ok := ids[p]
			if !ok {
				id = int32(len(m.V))
				ids[p] = id
				m.V = append(m.V, v)
			}
			m.T[i][k] = id
		}
	}
	return m, nil
}

// stlFit refuses what the library cannot take: it calls itself once for each
// blank line of a row of them, and reads a binary file whose length does not
// match its count as text.
func stlFit(data []byte) error {
	if len(data) >= stlHead {
		n := int64(binary.LittleEndian.Uint32(data[80:]))
		if int64(len(data)) == stlHead+stlRecord*n {
			return nil
		}
	}
	if !bytes.HasPrefix(data, []byte("solid")) {
		return job.Faultf("badSTL", "file", "this is not an STL file, or it was cut short: %d bytes do not match the number of triangles it names", len(data))
	}
	const most = 1000
	blank := 0
	for _, c := range data {
		switch c {
		case '\n':
			if blank++; blank > most {
				return job.Faultf("badSTL", "file", "this STL file has more than %d blank lines in a row; export it again as binary STL", most)
			}
		case ' ', '\t', '\r', '\v', '\f':
		default:
			blank = 0
		}
	}
	return nil
}

func firstLine(s string) string {
	s, _, _ = strings.Cut(s, "\n")
	return s
}
