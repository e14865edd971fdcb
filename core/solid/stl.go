package solid

// Binary STL, the file that every slicer takes. Writing fills one buffer by
// index: the library that reads makes a buffer and a call for each triangle,
// which is many times slower, and far more so in a browser. Reading, binary or
// text, is left to the library.

import (
	"bytes"
	"encoding/binary"
	"math"
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
func STL(m *Mesh, name string) []byte {
	out := make([]byte, stlHead+stlRecord*len(m.T))
	copy(out[:80], stlName(name))
	binary.LittleEndian.PutUint32(out[80:], uint32(len(m.T)))
	rest := out[stlHead:]
	for _, t := range m.T {
		rec := rest[:stlRecord:stlRecord]
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
		put2(rec[0:8], nx, ny)
		put2(rec[8:16], nz, a[0])
		put2(rec[16:24], a[1], a[2])
		put2(rec[24:32], b[0], b[1])
		put2(rec[32:40], b[2], c[0])
		put2(rec[40:48], c[1], c[2])
	}
	return out
}

// put2 writes two float32 at once.
func put2(b []byte, f, g float64) {
	binary.LittleEndian.PutUint64(b, uint64(math.Float32bits(float32(g)))<<32|uint64(math.Float32bits(float32(f))))
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
