// Package xgraphics stands for the library of that name, of whose images a library
// asks whether one is given to it. None ever is; the library itself speaks to X11
// and tables all of its protocol whenever a program starts.
package xgraphics

import "image"

// Image is never made.
type Image struct {
	image.RGBA
}
