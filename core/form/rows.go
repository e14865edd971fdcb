package form

import (
	"math"
	"strconv"
	"strings"

	"moldwright/core/job"
)

// Units that typed rows may be in, and their length in mm (the inch by its
// international definition of 1959).
var unitMM = map[string]float64{"mm": 1, "cm": 10, "in": 25.4}

// Columns says how typed rows are to be read.
type Columns struct {
	Units    string // "mm", "cm" or "in"
	Diameter bool   // the first column is a diameter, not a radius
}

// maxRows is as many rows as anyone pastes; more is the wrong file.
const maxRows = 200_000

// ReadRows reads a profile typed or pasted as rows of radius and height, foot
// first, into nodes in mm. Columns are parted by semicolons, tabs, spaces or
// commas, one kind for the whole text; numbers may have a decimal point or a
// decimal comma. Text after # or // is a comment. A first row without numbers
// is a header; it may turn the columns round ("z r"), say "diameter", or name
// the unit. A third column may say corner or smooth; without it a point is a
// corner. Words are read in every language of the page (rowwords.go). Faults
// name every bad row by its line, counted from 1.
func ReadRows(text string, c Columns) ([]job.Node, job.Faults) {
	unit, ok := unitMM[c.Units]
	if !ok {
		return nil, job.Faults{job.Faultf("unknownUnits", "units", "The units %q are not known; say mm, cm or in.", c.Units)}
	}
	rows, faults := splitRows(text)
	if faults != nil {
		return nil, faults
	}
	h := header{diameter: c.Diameter}
	if len(rows) > 0 && rows[0].isHeader() {
		if f := h.read(rows[0], c.Units); f != nil {
			return nil, job.Faults{f}
		}
		rows = rows[1:]
	}
	nodes := make([]job.Node, 0, len(rows))
	for _, row := range rows {
		n, f := row.node(h)
		if f != nil {
			faults = append(faults, f)
			continue
		}
		n.R, n.Z = n.R*unit, n.Z*unit
		if h.diameter {
			n.R /= 2
		}
		nodes = append(nodes, n)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	if _, faults = fromNodes(nodes, 1); len(faults) > 0 {
		for _, f := range faults {
			if i, ok := nodeIndex(f.Field); ok {
				f.Line = rows[i].line
			}
		}
		return nil, faults
	}
	return nodes, nil
}

type row struct {
	line  int
	cells []string
	text  string
}

// splitRows cuts the text into rows and cells, comments and blanks left out.
func splitRows(text string) ([]row, job.Faults) {
	text = strings.TrimPrefix(text, "\ufeff")
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	var rows []row
	for i, s := range strings.Split(text, "\n") {
		if k := strings.Index(s, "#"); k >= 0 {
			s = s[:k]
		}
		if k := strings.Index(s, "//"); k >= 0 {
			s = s[:k]
		}
		if s = strings.TrimSpace(s); s != "" {
			rows = append(rows, row{line: i + 1, text: s})
		}
		if len(rows) > maxRows {
			return nil, job.Faults{job.Faultf("tooManyRows", "text", "There are more than %d rows; a profile has a few hundred at most.", maxRows).AtLine(i + 1)}
		}
	}
	if len(rows) == 0 {
		return nil, job.Faults{job.Faultf("noRows", "text", "There are no rows; type a radius and a height on each line, foot first.")}
	}
	cut := separator(rows)
	for i := range rows {
		rows[i].cells = cut(rows[i].text)
	}
	return rows, nil
}

// separator picks the one way of parting columns that the whole text uses: the
// strongest mark that any row has, since a comma may also be a decimal comma
// and a space may follow any other mark. A header may be parted otherwise than
// what stands under it.
func separator(rows []row) func(string) []string {
	if len(rows) > 1 && !strings.ContainsAny(rows[0].text, "0123456789") {
		rows = rows[1:]
	}
	has := func(test func(string) bool) bool {
		for _, r := range rows {
			if test(r.text) {
				return true
			}
		}
		return false
	}
	trimmed := func(sep string) func(string) []string {
		return func(s string) []string {
			cells := strings.Split(s, sep)
			for i := range cells {
				cells[i] = strings.TrimSpace(cells[i])
			}
			return cells
		}
	}
	switch {
	case has(func(s string) bool { return strings.Contains(s, ";") }):
		return trimmed(";")
	case has(func(s string) bool { return strings.Contains(s, "\t") }):
		return strings.Fields // spaces beside tabs are padding
	case has(func(s string) bool { return strings.Contains(s, ", ") }):
		return trimmed(", ")
	case has(func(s string) bool { return len(strings.Fields(s)) > 1 && looksNumeric(strings.Fields(s)[0]) }):
		return strings.Fields
	default:
		return trimmed(",")
	}
}

func looksNumeric(s string) bool {
	_, ok := number(s)
	return ok
}

// number reads a number with a decimal point or a decimal comma.
func number(s string) (float64, bool) {
	if strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	if strings.ContainsAny(s, "xXpP_nNiI") { // no hexadecimal, NaN or Inf
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0)
}

func (r row) isHeader() bool {
	for _, c := range r.cells {
		if looksNumeric(c) {
			return false
		}
	}
	return len(wordsOf(r.text)) > 0
}

// header is what the first row told.
type header struct {
	diameter bool
	heightAt int // column of the height less one: 0 as usual, -1 turned round
}

// read takes up what the words of a first row tell. In "radius in mm" the word
// in is no unit, as the row names another.
func (h *header) read(r row, units string) *job.Fault {
	first, named, inch := noWord, "", ""
	for _, w := range wordsOf(r.text) {
		m := rowWords[w]
		if m == wordDiameter {
			h.diameter = true
			m = wordRadius
		}
		if first == noWord && (m == wordRadius || m == wordHeight) {
			first = m
		}
		switch unit := unitOf(m); {
		case unit == "":
		case w == "in":
			inch = w
		case unit != units:
			return job.Faultf("unitsDisagree", "units", "The header row says %s but the units are set to %s; choose one of them.", w, units).AtLine(r.line)
		default:
			named = unit
		}
	}
	if inch != "" && named == "" && units != "in" {
		return job.Faultf("unitsDisagree", "units", "The header row says %s but the units are set to %s; choose one of them.", inch, units).AtLine(r.line)
	}
	if first == wordHeight {
		h.heightAt = -1
	}
	return nil
}

// node reads one row, in the units as typed.
func (r row) node(h header) (job.Node, *job.Fault) {
	bad := func(format string, args ...any) (job.Node, *job.Fault) {
		return job.Node{}, job.Faultf("badRow", "text", format, args...).AtLine(r.line)
	}
	if len(r.cells) < 2 {
		return bad("Line %d has one column (%q); give a radius and a height.", r.line, clip(r.text))
	}
	if len(r.cells) > 3 {
		return bad("Line %d has %d columns (%q); give a radius and a height. With decimal commas, part the columns by a semicolon or a space.", r.line, len(r.cells), clip(r.text))
	}
	var v [2]float64
	for i := range v {
		x, ok := number(r.cells[i])
		if !ok {
			return bad("Line %d: %q is not a number.", r.line, clip(r.cells[i]))
		}
		v[i] = x
	}
	if h.heightAt < 0 {
		v[0], v[1] = v[1], v[0]
	}
	n := job.Node{R: v[0], Z: v[1], Corner: true}
	if n.R < 0 {
		return bad("Line %d: the radius %g is negative; measure from the axis outward.", r.line, n.R)
	}
	if len(r.cells) == 3 {
		switch word := foldWord(r.cells[2]); {
		case word == "" || rowWords[word] == wordCorner:
		case rowWords[word] == wordSmooth:
			n.Corner = false
		default:
			return bad("Line %d: the third column says %q; it may say corner or smooth.", r.line, clip(r.cells[2]))
		}
	}
	return n, nil
}

// clip keeps quoted input short enough to read.
func clip(s string) string {
	if len([]rune(s)) > 40 {
		return string([]rune(s)[:40]) + "…"
	}
	return s
}

// nodeIndex is the index in a field of the form form.outer[i]….
func nodeIndex(field string) (int, bool) {
	rest, ok := strings.CutPrefix(field, "form.outer[")
	if !ok {
		return 0, false
	}
	digits, _, _ := strings.Cut(rest, "]")
	i, err := strconv.Atoi(digits)
	return i, err == nil
}
