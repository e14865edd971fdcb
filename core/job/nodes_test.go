package job

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"reflect"
	"strconv"
	"strings"
	"testing"
)

// A number is read as the library reads it, to the last bit, or left to it.
func TestPlainNumbersAreReadAsByTheLibrary(t *testing.T) {
	list := []string{"0", "-0", "0.1", "-12.50", "1e3", "1E-310", "123456789012345", "1234567890123456", "0.123456789012345678", "9007199254740993", "00", "01", "1.", ".5", "-", "+1", "1e", "0x1p3", "1_0", "Infinity", "NaN", "1e999", "12345678901234567890.5"}
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		list = append(list, strconv.FormatFloat(rnd.NormFloat64()*math.Pow(10, float64(rnd.IntN(9)-4)), 'f', rnd.IntN(18), 64))
	}
	for _, text := range list {
		var want float64
		valid := json.Unmarshal([]byte(text), &want) == nil
		var got float64
		r := nodeReader{text: []byte(text + "}")}
		read := r.number(&got) && r.at == len(text)
		if read && !valid || read && math.Float64bits(got) != math.Float64bits(want) {
			t.Errorf("%s is read as %v, by the library as %v (valid: %v)", text, got, want, valid)
		}
	}
}

// What the fast way takes, the library takes with the same result.
func TestPlainNodesAreReadAsByTheLibrary(t *testing.T) {
	const plain = `[{"r":0,"z":0.5},{"r":30.25,"z":0,"corner":true},{"r":6e1,"z":-8,"corner":false}]`
	for _, c := range []struct {
		text string
		fast bool
	}{
		{`{"form":{"outer":` + plain + `}}`, true},
		{`{"name":"\"outer\":[]","form":{"size":"mold","outer":` + plain + `,"inner":[{"r":0,"z":1}]}}` + "\n", true},
		{`{"form":{"outer":` + plain + `}}}`, false},
		{`{"form":{"outer":` + plain + `}} {}`, false},
		{`{"form":{"outer":` + plain + `},"form":{"outer":[]}}`, false},
		{`{"form":{"outer":` + plain + `,"OUTER":null}}`, false},
		{`{"form":{"outer":` + plain + `,"Outer":[{"r":1,"z":2}]}}`, false},
		{`{"outer":` + plain + `}`, false},
		{`{"form":{"outer": ` + plain + `}}`, false},
		{`{"form":{"outer":[{"z":0,"r":0}]}}`, false},
		{`{"form":{"outer":[{"r":0,"z":0,"x":1}]}}`, false},
		{`{"form":{"outer":[{"r":"0","z":0}]}}`, false},
		{`{"form":{"outer":[]}}`, false},
		{`{"form":{"outer":[{"r":0,"z":0},]}}`, false},
		{`{"form":{"outer":[{"r":0,"z":0}`, false},
	} {
		fast := blank()
		if got := readFast([]byte(c.text), &fast); got != c.fast {
			t.Errorf("%s: read fast %v, want %v", c.text, got, c.fast)
		}
		if !c.fast {
			continue
		}
		slow := blank()
		d := json.NewDecoder(strings.NewReader(c.text))
		d.DisallowUnknownFields()
		if err := d.Decode(&slow); err != nil {
			t.Fatal(err)
		}
		fast.Rules.LeastDraft, slow.Rules.LeastDraft = 0, 0 // a mark that equals nothing
		if !reflect.DeepEqual(fast, slow) {
			t.Errorf("%s is read as\n%+v\nby the library as\n%+v", c.text, fast, slow)
		}
	}
}
