package plan

// Writing a plan's schemes, some forty thousand bytes at a time: every scheme
// tells all its parts in full, and most of those are alike. What is alike is
// written once and copied. The bytes are those of encoding/json, but for decimals
// beyond the sixth.

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"moldwright/core/parting"
)

func appendSchemes(b []byte, list []Scheme) []byte {
	if list == nil {
		return append(b, "null"...)
	}
	w := schemeWriter{bytes: append(b, '['), told: map[*parting.Band]told{}}
	for i := range list {
		if i > 0 {
			w.raw(",")
		}
		w.scheme(&list[i])
	}
	w.raw("]")
	return w.bytes
}

type schemeWriter struct {
	bytes []byte
	told  map[*parting.Band]told // by the bands, which like parts share
}

// told is a part, and where in the bytes its judgement stands.
type told struct {
	part     *parting.Part
	from, to int
}

func (w *schemeWriter) raw(s string) { w.bytes = append(w.bytes, s...) }

// number writes a number after its key.
func (w *schemeWriter) number(key string, v float64) {
	w.bytes = appendFloat(append(w.bytes, key...), v)
}

func (w *schemeWriter) text(key, s string) {
	w.bytes = appendString(append(w.bytes, key...), s)
}

func (w *schemeWriter) whole(key string, n int) {
	w.bytes = strconv.AppendInt(append(w.bytes, key...), int64(n), 10)
}

// list opens a list after its key and calls each for every place of it.
func (w *schemeWriter) list(key string, none bool, n int, each func(i int)) {
	w.raw(key)
	if none {
		w.raw("null")
		return
	}
	w.raw("[")
	for i := range n {
		if i > 0 {
			w.raw(",")
		}
		each(i)
	}
	w.raw("]")
}

func (w *schemeWriter) scheme(s *Scheme) {
	w.text(`{"id":`, s.ID)
	w.whole(`,"count":`, s.Count)
	w.text(`,"verdict":`, string(s.Verdict))
	w.list(`,"partingHeights":`, s.PartingHeights == nil, len(s.PartingHeights), func(i int) { w.number("", s.PartingHeights[i]) })
	w.number(`,"rubbingArea":`, s.RubArea)
	w.number(`,"depth":`, s.Depth)
	w.whole(`,"sides":`, s.Sides)
	w.number(`,"turn":`, s.Turn)
	w.text(`,"name":`, s.Name.String())
	w.text(`,"against":`, s.Against.String())
	w.list(`,"parts":`, s.Parts == nil, len(s.Parts), func(i int) { w.part(&s.Parts[i]) })
	w.number(`,"plaster":`, s.Plaster)
	w.raw("}")
}

func (w *schemeWriter) part(p *Part) {
	w.text(`{"name":`, p.Name)
	w.number(`,"pull":[`, p.Pull[0])
	w.number(",", p.Pull[1])
	w.number(",", p.Pull[2])
	w.number(`],"zFrom":`, p.ZFrom)
	w.number(`,"zTo":`, p.ZTo)
	if p.Sector == nil {
		w.raw(`,"sector":null`)
	} else {
		w.number(`,"sector":[`, p.Sector[0])
		w.number(",", p.Sector[1])
		w.raw("]")
	}
	w.judgement(p.Part)
	w.number(`,"volume":`, p.Volume)
	w.number(`,"plaster":`, p.Plaster)
	w.number(`,"water":`, p.Water)
	w.number(`,"wet":`, p.Wet)
	w.number(`,"dry":`, p.Dry)
	w.raw("}")
}

// judgement writes how a part lets go.
func (w *schemeWriter) judgement(p *parting.Part) {
	var key *parting.Band
	if len(p.Bands) > 0 {
		key = &p.Bands[0]
		if t, ok := w.told[key]; ok && alike(t.part, p) {
			w.bytes = append(w.bytes, w.bytes[t.from:t.to]...)
			return
		}
	}
	from := len(w.bytes)
	w.text(`,"verdict":`, string(p.Verdict))
	w.number(`,"minDraft":`, p.MinDraft)
	w.number(`,"area":`, p.Area)
	w.number(`,"rubbingArea":`, p.RubArea)
	w.number(`,"rubShare":`, p.RubShare)
	w.list(`,"draftBands":`, p.Bands == nil, len(p.Bands), func(i int) {
		w.number(`{"from":`, p.Bands[i].From)
		w.number(`,"to":`, p.Bands[i].To)
		w.number(`,"area":`, p.Bands[i].Area)
		w.raw("}")
	})
	w.list(`,"catches":`, p.Catches == nil, len(p.Catches), func(i int) { w.catch(&p.Catches[i]) })
	w.truth(`,"clayForgives":`, p.ClayForgives)
	if key != nil {
		w.told[key] = told{p, from, len(w.bytes)}
	}
}

// alike tells whether two parts with the same bands are judged the same.
func alike(a, b *parting.Part) bool {
	same := len(a.Bands) == len(b.Bands) && len(a.Catches) == len(b.Catches) && (a.Catches == nil) == (b.Catches == nil) &&
		(len(a.Catches) == 0 || &a.Catches[0] == &b.Catches[0])
	return same && a.Verdict == b.Verdict && a.MinDraft == b.MinDraft && a.Area == b.Area &&
		a.RubArea == b.RubArea && a.RubShare == b.RubShare && a.ClayForgives == b.ClayForgives
}

func (w *schemeWriter) catch(c *parting.Catch) {
	w.number(`{"zFrom":`, c.ZFrom)
	w.number(`,"zTo":`, c.ZTo)
	w.number(`,"depth":`, c.Depth)
	w.number(`,"atZ":`, c.AtZ)
	w.number(`,"atR":`, c.AtR)
	w.number(`,"blockedAtZ":`, c.BlockedAtZ)
	w.number(`,"blockedAtR":`, c.BlockedAtR)
	w.number(`,"clayDepth":`, c.ClayDepth)
	w.truth(`,"clayForgives":`, c.ClayForgives)
	w.raw("}")
}

func (w *schemeWriter) truth(key string, v bool) {
	w.bytes = strconv.AppendBool(append(w.bytes, key...), v)
}

// appendFloat writes a number to the sixth decimal, far below anything that is
// told of it, several times as fast as all its digits would be.
func appendFloat(b []byte, v float64) []byte {
	n := math.RoundToEven(v * 1e6)
	if !(math.Abs(n) < 1e15) {
		return appendNumber(b, v)
	}
	return appendDecimal(b, n, 1e6)
}

// appendString writes a string as the library does that leaves < > & as they
// are; what is to be escaped is left to the library.
func appendString(b []byte, s string) []byte {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c == '"' || c == '\\' {
			return appendEscaped(b, s)
		}
	}
	if !utf8.ValidString(s) || strings.ContainsAny(s, "\u2028\u2029") {
		return appendEscaped(b, s)
	}
	return append(append(append(b, '"'), s...), '"')
}

func appendEscaped(b []byte, s string) []byte {
	escaped, err := library(s)
	if err != nil {
		panic(err) // not reached: any string can be written
	}
	return append(b, escaped[:len(escaped)-1]...)
}
