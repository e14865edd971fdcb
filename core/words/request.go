package words

import (
	"bytes"
	"encoding/json"
)

// Cut takes the key "language" out of a request, a JSON object, and gives its
// value beside what is left; the code is empty where the key is left out or is
// no text. Where it comes first or last, as the page sends it, nothing else is
// read. A request that is no JSON object is left as it is.
func Cut(request []byte) (code string, rest []byte) {
	for _, l := range Languages() {
		if tail, ok := bytes.CutPrefix(request, []byte(`{"language":"`+l+`",`)); ok {
			return string(l), append([]byte("{"), tail...)
		}
		if head, ok := bytes.CutSuffix(request, []byte(`,"language":"`+l+`"}`)); ok {
			return string(l), append(head[:len(head):len(head)], '}')
		}
	}
	if !bytes.Contains(request, []byte(`"language"`)) {
		return "", request
	}
	d := json.NewDecoder(bytes.NewReader(request))
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return "", request
	}
	out := []byte("{")
	for d.More() {
		var value json.RawMessage
		key, err := d.Token()
		if err != nil || d.Decode(&value) != nil {
			return "", request
		}
		if key == "language" {
			if json.Unmarshal(value, &code) != nil {
				code = string(value)
			}
			continue
		}
		if len(out) > 1 {
			out = append(out, ',')
		}
		name, err := json.Marshal(key)
		if err != nil {
			return "", request
		}
		out = append(append(append(out, name...), ':'), value...)
	}
	if _, err := d.Token(); err != nil {
		return "", request
	}
	return code, append(append(out, '}'), request[d.InputOffset():]...)
}
