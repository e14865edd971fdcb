//go:build !wasm

package solid

// Reading STL, binary or text, which is left to the library. The page reads none,
// and the library makes its tables whenever a program starts: there that was a
// quarter of what Go itself needs before it is ready.

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"

	"github.com/hschendel/stl"

	"moldwright/core/job"
)

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
