package sheet

import (
	"math"

	"moldwright/core/words"
)

// The language of a sheet. Every word that a sheet says of its own is a format
// of the catalogs of package words, and every number has the language's decimal
// sign. What it is given in words (the verdict, questions, cautions) is in the
// language already.

// tongue says words and numbers in the language of a sheet.
type tongue words.Language

// tongueOf is the tongue of a language; of none it is English.
func tongueOf(l words.Language) tongue {
	if l == "" {
		l = words.English
	}
	return tongue(l)
}

func (l tongue) say(format string, args ...any) string {
	return words.Say(format, args...).In(words.Language(l))
}

// sayIn is say for words that are told apart by what they mean.
func (l tongue) sayIn(context, format string, args ...any) string {
	return words.SayIn(context, format, args...).In(words.Language(l))
}

// num is a number with the given decimals.
func (l tongue) num(v float64, decimals int) string {
	return words.Number(v, decimals).In(words.Language(l))
}

// mm1 is a length to 0.1 mm with its unit.
func (l tongue) mm1(v float64) string { return l.num(v, 1) + nbsp + "mm" }

// grams is a mass, in kg from 1 kg up.
func (l tongue) grams(g float64) string {
	if g >= 999.5 {
		return l.num(g/1000, 2) + nbsp + "kg"
	}
	return l.num(g, 0) + nbsp + "g"
}

// sizeWords is the size of a piece in mm.
func (l tongue) sizeWords(s [3]float64) string {
	return l.num(s[0], 1) + " × " + l.num(s[1], 1) + " × " + l.num(s[2], 1)
}

// pullWords is a pull direction in words.
func (l tongue) pullWords(d [3]float64) string {
	if math.Abs(d[2]) > 0.999 {
		return l.way(d)
	}
	deg := math.Mod(math.Atan2(d[1], d[0])*180/math.Pi+360, 360)
	return l.say("sideways, %s°", l.num(math.Mod(math.Round(deg), 360), 0))
}

// way is a pull direction in one word.
func (l tongue) way(d [3]float64) string {
	switch {
	case d[2] > 0.999:
		return l.sayIn("way of a pull", "up")
	case d[2] < -0.999:
		return l.sayIn("way of a pull", "down")
	}
	return l.sayIn("way of a pull", "sideways")
}

// verdict is the verdict on a part or a scheme, of which the id is given.
func (l tongue) verdict(id string) string {
	switch id {
	case "clear":
		return l.sayIn("verdict on a part", "clear")
	case "rubs":
		return l.sayIn("verdict on a part", "rubs")
	case "catches":
		return l.sayIn("verdict on a part", "catches")
	}
	return id
}

// lostNote says under a name what happened to it.
func (l tongue) lostNote() string {
	return l.say("The sheet's font lacks letters of this name (?). The file's title has it whole.")
}
