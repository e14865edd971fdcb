package words

// What the core says in French; `go test ./core/words -update` sorts it and adds
// what is missing.
var french = []entry{
	{"%s and %s", "%s et %s"},
	{"%s or %s", "%s ou %s"},
	{"%s: %s.", "%s : %s."},
	{"Layers of %.2f mm leave ripples about %.2f mm deep; where the wall is steepest they hook by %.3f mm.", "Des couches de %.2f mm laissent des stries d’environ %.2f mm de profondeur ; là où la paroi est la plus raide, elles accrochent de %.3f mm."},
	{"One part is the fewest there can be.", "Une seule partie est le minimum."},
	{"the lower part", "la partie inférieure"},
	{"the upper part", "la partie supérieure"},
}
