// Package gif stands in the page's core for image/gif, which a library of windows
// brings along: the browser opens pictures, and no sheet holds one.
package gif
