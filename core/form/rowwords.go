package form

import (
	"strings"
	"unicode"
)

// What a word in typed rows means: rows come out of spreadsheets, notebooks and
// other people's mail, so a heading or a kind of node is understood in each
// language that the page speaks, whichever it speaks now. Rows are written out
// in English. The words are those of the page in each language and their plain
// synonyms, from memory.
type rowWord int

const (
	noWord rowWord = iota
	wordRadius
	wordDiameter
	wordHeight
	wordMM
	wordCM
	wordInch
	wordCorner
	wordSmooth
)

// rowWords is what each word in English, German, French and Spanish means,
// folded as foldWord does.
var rowWords = map[string]rowWord{
	"r": wordRadius, "x": wordRadius, "radius": wordRadius, "radii": wordRadius,
	"halbmesser": wordRadius, "radien": wordRadius, "rayon": wordRadius, "rayons": wordRadius,
	"radio": wordRadius, "radios": wordRadius,
	"d": wordDiameter, "dia": wordDiameter, "diam": wordDiameter, "diameter": wordDiameter,
	"width": wordDiameter, "ø": wordDiameter, "⌀": wordDiameter, "durchmesser": wordDiameter,
	"breite": wordDiameter, "diametre": wordDiameter, "diametres": wordDiameter,
	"largeur": wordDiameter, "diametro": wordDiameter, "diametros": wordDiameter, "ancho": wordDiameter,
	"anchura": wordDiameter,
	"z":       wordHeight, "h": wordHeight, "y": wordHeight, "height": wordHeight,
	"hohe": wordHeight, "hoehe": wordHeight, "hauteur": wordHeight, "hauteurs": wordHeight,
	"altura": wordHeight, "alturas": wordHeight, "alto": wordHeight,
	"mm": wordMM, "millimetre": wordMM, "millimetres": wordMM, "millimeter": wordMM,
	"millimeters": wordMM, "millimetern": wordMM, "milimetro": wordMM, "milimetros": wordMM,
	"cm": wordCM, "centimetre": wordCM, "centimetres": wordCM, "centimeter": wordCM,
	"centimeters": wordCM, "zentimeter": wordCM, "zentimetern": wordCM, "centimetro": wordCM,
	"centimetros": wordCM,
	"in":          wordInch, "inch": wordInch, "inches": wordInch, "zoll": wordInch,
	"pouce": wordInch, "pouces": wordInch, "pulgada": wordInch, "pulgadas": wordInch,
	"c": wordCorner, "corner": wordCorner, "ecke": wordCorner, "eckig": wordCorner,
	"angle": wordCorner, "coin": wordCorner, "esquina": wordCorner,
	"s": wordSmooth, "smooth": wordSmooth, "rund": wordSmooth, "glatt": wordSmooth,
	"lisse": wordSmooth, "suave": wordSmooth, "liso": wordSmooth,
}

// foldWord is a word in small letters without accents, whether these stand in
// the letter or behind it.
func foldWord(s string) string {
	s = strings.Map(func(c rune) rune {
		if unicode.Is(unicode.Mn, c) {
			return -1
		}
		return c
	}, strings.ToLower(s))
	return accents.Replace(s)
}

var accents = strings.NewReplacer("á", "a", "à", "a", "â", "a", "ä", "a", "é", "e", "è", "e", "ê", "e", "í", "i", "ó", "o", "ö", "o", "ú", "u", "ü", "u")

// unitOf is the unit that a word names, as a request names it.
func unitOf(w rowWord) string {
	switch w {
	case wordMM:
		return "mm"
	case wordCM:
		return "cm"
	case wordInch:
		return "in"
	}
	return ""
}

// wordsOf are the words of a text, folded.
func wordsOf(text string) []string {
	return strings.FieldsFunc(foldWord(text), func(c rune) bool { return !unicode.IsLetter(c) && c != '⌀' })
}
