// Package http stands in the page's core for net/http, with what two libraries
// name that can minify or pack what a web server sends. The page has no server and
// no network; the package itself with all its ciphers was a twelfth of the core.
package http

import "io"

// Header holds nothing.
type Header map[string][]string

func (Header) Get(string) string  { return "" }
func (Header) Set(string, string) {}
func (Header) Add(string, string) {}
func (Header) Del(string)         {}

// Request is never made.
type Request struct {
	Header     Header
	RequestURI string
	Body       io.ReadCloser
}

// ResponseWriter is never given.
type ResponseWriter interface {
	Header() Header
	Write([]byte) (int, error)
	WriteHeader(int)
}

// Handler is never asked.
type Handler interface {
	ServeHTTP(ResponseWriter, *Request)
}

// HandlerFunc is a function as a Handler.
type HandlerFunc func(ResponseWriter, *Request)

// ServeHTTP calls f.
func (f HandlerFunc) ServeHTTP(w ResponseWriter, r *Request) { f(w, r) }
