package job

// A job is nearly all nodes, and a drag sends it many times a second. Nodes in
// the plain form in which programs write them are read here, several times
// faster than encoding/json does; all else, and every fault, is left to it.

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"
)

// readFast reads a job whose outer nodes are plain; false where anything is not
// as it should be, for the whole to be read by encoding/json.
func readFast(text []byte, j *Job) bool {
	// in a string the quotes would be escaped, so this is a key; a second one,
	// or one elsewhere than in the form, fails below
	key := []byte(`"outer":`)
	at := bytes.Index(text, key)
	if at < 0 {
		return false
	}
	at += len(key)
	r := nodeReader{text: text, at: at}
	nodes, ok := r.list()
	if !ok {
		return false
	}
	// in their place stands one node that no pot has, to see that it, and
	// nothing else, was taken for the profile
	mark := Node{R: -1, Z: -987654321}
	rest := make([]byte, 0, len(text)-(r.at-at)+64)
	rest = append(rest, text[:at]...)
	rest = append(rest, `[{"r":-1,"z":-987654321}]`...)
	rest = append(rest, text[r.at:]...)
	d := json.NewDecoder(bytes.NewReader(rest))
	d.DisallowUnknownFields()
	if d.Decode(j) != nil || len(j.Form.Outer) != 1 || j.Form.Outer[0] != mark || bytes.Contains(text[r.at:], key) {
		return false
	}
	if _, err := d.Token(); err != io.EOF {
		return false
	}
	j.Form.Outer = nodes
	return true
}

// nodeReader reads from a place in a text on.
type nodeReader struct {
	text []byte
	at   int
}

// list is a list of nodes in brackets, without spaces.
func (r *nodeReader) list() ([]Node, bool) {
	if !r.eat("[") || r.eat("]") {
		return nil, false
	}
	const usual = 28 // bytes of a node, rarely fewer
	nodes := make([]Node, 0, (len(r.text)-r.at)/usual+8)
	for {
		var n Node
		if !r.node(&n) {
			return nil, false
		}
		nodes = append(nodes, n)
		if r.eat("]") {
			return nodes, true
		}
		if !r.eat(",") {
			return nil, false
		}
	}
}

// node is one node with its keys in the usual order.
func (r *nodeReader) node(n *Node) bool {
	if !r.eat(`{"r":`) || !r.number(&n.R) || !r.eat(`,"z":`) || !r.number(&n.Z) {
		return false
	}
	if r.eat(`,"corner":`) {
		if n.Corner = r.eat("true"); !n.Corner && !r.eat("false") {
			return false
		}
	}
	return r.eat("}")
}

func (r *nodeReader) eat(s string) bool {
	if len(r.text)-r.at < len(s) || string(r.text[r.at:r.at+len(s)]) != s {
		return false
	}
	r.at += len(s)
	return true
}

// number reads a number of JSON. Up to 15 digits it is a quotient of two whole
// numbers that are exact, so that one division rounds it rightly; else the
// library reads it.
func (r *nodeReader) number(v *float64) bool {
	const most = 15 // digits, and decimals too
	i, t := r.at, r.text
	minus := i < len(t) && t[i] == '-'
	if minus {
		i++
	}
	whole, n, digits, decimals := i, 0, 0, 0
	for ; i < len(t) && t[i]-'0' < 10; i++ {
		n, digits = 10*n+int(t[i]-'0'), digits+1
	}
	if digits == 0 || digits > 1 && t[whole] == '0' {
		return false
	}
	if i < len(t) && t[i] == '.' {
		for i++; i < len(t) && t[i]-'0' < 10; i++ {
			n, digits, decimals = 10*n+int(t[i]-'0'), digits+1, decimals+1
		}
		if decimals == 0 {
			return false
		}
	}
	switch {
	case i < len(t) && (t[i] == 'e' || t[i] == 'E'):
		return r.anyNumber(v)
	case digits > most: // n may have run over; the digits themselves are sound
		var err error
		if *v, err = strconv.ParseFloat(string(t[r.at:i]), 64); err != nil {
			return false
		}
	default:
		*v = float64(n) / tens[decimals]
		if minus {
			*v = -*v
		}
	}
	r.at = i
	return true
}

var tens = [16]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

// anyNumber leaves a number to the library.
func (r *nodeReader) anyNumber(v *float64) bool {
	end := bytes.IndexAny(r.text[r.at:], ",}]")
	if end < 0 {
		return false
	}
	word := r.text[r.at : r.at+end]
	var err error
	if *v, err = strconv.ParseFloat(string(word), 64); err != nil || !json.Valid(word) {
		return false
	}
	r.at += end
	return true
}
