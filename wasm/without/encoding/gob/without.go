// Package gob stands in the page's core for encoding/gob, by which the library of
// the sheets can keep paths and lists of a system's fonts on disk: it is never
// asked to, and would say so.
package gob

import (
	"errors"
	"io"
)

var errLeftOut = errors.New("gob: left out of this program")

// Encoder refuses.
type Encoder struct{}

// Decoder refuses.
type Decoder struct{}

func NewEncoder(io.Writer) *Encoder { return &Encoder{} }
func NewDecoder(io.Reader) *Decoder { return &Decoder{} }

func (*Encoder) Encode(any) error { return errLeftOut }
func (*Decoder) Decode(any) error { return errLeftOut }
