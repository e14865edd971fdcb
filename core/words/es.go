package words

// What the core says in Spanish; `go test ./core/words -update` sorts it and adds
// what is missing.
var spanish = []entry{
	{"%s and %s", "%s y %s"},
	{"%s or %s", "%s o %s"},
	{"%s: %s.", "%s: %s."},
	{"Layers of %.2f mm leave ripples about %.2f mm deep; where the wall is steepest they hook by %.3f mm.", "Las capas de %.2f mm dejan ondas de unos %.2f mm de profundidad; donde la pared es más vertical, enganchan %.3f mm."},
	{"One part is the fewest there can be.", "Menos de una parte no puede haber."},
	{"the lower part", "la parte inferior"},
	{"the upper part", "la parte superior"},
}
