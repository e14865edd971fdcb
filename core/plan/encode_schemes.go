package plan

// Writing a plan's schemes, some forty thousand bytes at a time: every scheme
// tells all its parts in full, and most of those are alike. What is alike is
// written once and copied.

import (
	"strconv"

	"moldwright/core/parting"
)

func appendSchemes(b []byte, list []Scheme) []byte {
	if list == nil {
		return append(b, "null"...)
	}
	w := schemeWriter{bytes: append(b, '[')}
	for i := range list {
		w.next(i)
		w.scheme(&list[i])
	}
	w.raw("]")
	return w.bytes
}

type schemeWriter struct {
	bytes []byte
	told  []told
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

// open begins a list after its key, or says that there is none.
func (w *schemeWriter) open(key string, none bool) {
	w.raw(key)
	if none {
		w.raw("null")
		return
	}
	w.raw("[")
}

// next begins value i of a list.
func (w *schemeWriter) next(i int) {
	if i > 0 {
		w.raw(",")
	}
}

// end ends a list that open has begun.
func (w *schemeWriter) end(none bool) {
	if !none {
		w.raw("]")
	}
}

func (w *schemeWriter) scheme(s *Scheme) {
	w.text(`{"id":`, s.ID)
	w.whole(`,"count":`, s.Count)
	w.text(`,"verdict":`, string(s.Verdict))
	w.open(`,"partingHeights":`, s.PartingHeights == nil)
	for i, z := range s.PartingHeights {
		w.next(i)
		w.number("", z)
	}
	w.end(s.PartingHeights == nil)
	w.number(`,"rubbingArea":`, s.RubArea)
	w.number(`,"depth":`, s.Depth)
	w.whole(`,"sides":`, s.Sides)
	w.number(`,"turn":`, s.Turn)
	w.text(`,"name":`, s.Name.String())
	w.text(`,"against":`, s.Against.String())
	w.open(`,"parts":`, s.Parts == nil)
	for i := range s.Parts {
		w.next(i)
		w.part(&s.Parts[i])
	}
	w.end(s.Parts == nil)
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
	for i := range w.told {
		if t := &w.told[i]; alike(t.part, p) {
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
	w.open(`,"draftBands":`, p.Bands == nil)
	for i := range p.Bands {
		w.next(i)
		w.number(`{"from":`, p.Bands[i].From)
		w.number(`,"to":`, p.Bands[i].To)
		w.number(`,"area":`, p.Bands[i].Area)
		w.raw("}")
	}
	w.end(p.Bands == nil)
	w.open(`,"catches":`, p.Catches == nil)
	for i := range p.Catches {
		w.next(i)
		w.catch(&p.Catches[i])
	}
	w.end(p.Catches == nil)
	w.truth(`,"clayForgives":`, p.ClayForgives)
	if len(p.Bands) > 0 {
		w.told = append(w.told, told{p, from, len(w.bytes)})
	}
}

// alike tells whether two parts are judged the same, as those are that share their
// bands and catches.
func alike(a, b *parting.Part) bool {
	return len(a.Bands) == len(b.Bands) && len(b.Bands) > 0 && &a.Bands[0] == &b.Bands[0] &&
		len(a.Catches) == len(b.Catches) && (a.Catches == nil) == (b.Catches == nil) &&
		(len(a.Catches) == 0 || &a.Catches[0] == &b.Catches[0]) &&
		a.Verdict == b.Verdict && a.MinDraft == b.MinDraft && a.Area == b.Area &&
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
