package words

// What the core says in German; `go test ./core/words -update` sorts it and adds
// what is missing.
var german = []entry{
	{"%s and %s", "%s und %s"},
	{"%s catches by %.2f mm: its plaster at %.1f mm is held behind what stands at %.1f mm.", "%s hakt um %.2f mm: sein Gips bei %.1f mm sitzt hinter dem fest, was bei %.1f mm steht."},
	{"%s has %.0f cm² of wall steeper than %.0f° of draft: so large a surface holds by suction and friction even where nothing hooks.", "%s hat %.0f cm² Wand mit weniger als %.0f° Formschräge: eine so große Fläche hält durch Sog und Reibung, auch wo nichts hakt."},
	{"%s is %q; it takes %s.", "%s ist %q; möglich sind %s."},
	{"%s or %s", "%s oder %s"},
	{"%s rubs between %.1f and %.1f mm: the draft there is %.1f°, less than %.1f°.", "%s reibt zwischen %.1f und %.1f mm: die Formschräge ist dort %.1f°, weniger als %.1f°."},
	{"%s: %s.", "%s: %s."},
	{"A taper of %.1f° on this stretch, %.1f mm in all, would free it.", "Eine Schräge von %.1f° auf dieser Strecke, insgesamt %.1f mm, würde sie lösen."},
	{"Layers of %.2f mm leave ripples about %.2f mm deep; where the wall is steepest they hook by %.3f mm.", "Schichten von %.2f mm hinterlassen etwa %.2f mm tiefe Rillen; wo die Wand am steilsten ist, haken sie um %.3f mm."},
	{"One part is the fewest there can be.", "Weniger als ein Teil geht nicht."},
	{"The seam at %.1f mm lies on an edge of the form, where it shows least.", "Die Naht bei %.1f mm liegt auf einer Kante der Form, wo man sie am wenigsten sieht."},
	{"a lower part alone", "ein Unterteil allein"},
	{"each side part", "jedes Seitenteil"},
	{"the lower part", "das Unterteil"},
	{"the upper part", "das Oberteil"},
}
