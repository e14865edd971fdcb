package exercise

// The families of pots. Each method draws one that stands on its foot at z = 0;
// family tells them by name.

// bowl widens all the way: one part.
func (s *shaper) bowl() {
	r := s.Between(450, 950)
	f := r * s.Between(36, 50) / 100
	h := r * s.Between(65, 120) / 100
	s.foot(f)
	s.through(f, 0, r, h, s.Between(58, 70), s.Between(42, 52))
	s.corner(r, h)
}

// cup is a tapered beaker, straight from foot to rim: one part.
func (s *shaper) cup() {
	f := s.Between(250, 420)
	h := s.Between(600, 1300)
	s.foot(f)
	s.corner(f+h*s.Between(9, 22)/100, h)
}

// belly draws from the foot's edge over the widest place to (neck, z).
func (s *shaper) belly(f, wide, zWide, neck, zNeck int) {
	s.through(f, 0, wide, zWide, s.Between(62, 76), s.Between(42, 55))
	s.smooth(wide, zWide)
	s.through(wide, zWide, neck, zNeck, s.Between(26, 40), s.Between(45, 58))
}

// jar widens to a belly at a percentage of its height and narrows to its rim:
// two parts.
func (s *shaper) jar(at int) {
	w := s.Between(420, 800)
	h := w * s.Between(120, 200) / 100
	z := h * at / 100
	f, rim := w*s.Between(45, 62)/100, w*s.Between(50, 72)/100
	s.foot(f)
	s.belly(f, w, z, rim, h)
	s.corner(rim, h)
}

// keeled is a jar of two straight walls that meet in a sharp keel at a
// percentage of its height: two parts.
func (s *shaper) keeled(at int) {
	w := s.Between(420, 800)
	h := w * s.Between(110, 190) / 100
	f, rim := w*s.Between(45, 65)/100, w*s.Between(45, 70)/100
	s.foot(f)
	s.corner(w, h*at/100)
	s.corner(rim, h)
}

// bottle has a low belly and a neck that narrows to the rim: two parts.
func (s *shaper) bottle() {
	w := s.Between(380, 620)
	h := w * s.Between(240, 340) / 100
	z := h * s.Between(20, 36) / 100
	neck := w * s.Between(36, 48) / 100
	zNeck := h * s.Between(58, 68) / 100
	f := w * s.Between(58, 74) / 100
	s.foot(f)
	s.belly(f, w, z, neck, zNeck)
	s.smooth(neck, zNeck)
	lean, root := s.Between(9, 14), s.Between(80, 120) // straight from the root of the neck on
	s.corner(neck-root*(lean+8)/100, zNeck+root)
	s.corner(neck-root*(lean+8)/100-(h-zNeck-root)*lean/100, h)
}

// neckAndLip draws from the belly on: a waist at the neck and a lip that
// spreads again by flare.
func (s *shaper) neckAndLip(w, z, h, flare int) {
	neck := w * s.Between(42, 58) / 100
	zNeck := share(z, h, s.Between(62, 74))
	s.through(w, z, neck, zNeck, s.Between(26, 40), s.Between(42, 55))
	s.smooth(neck, zNeck)
	s.corner(neck+flare, h)
}

// vase has a belly, a neck and a lip: side parts and a lower part.
func (s *shaper) vase() {
	w := s.Between(400, 700)
	h := w * s.Between(200, 300) / 100
	z := h * s.Between(30, 45) / 100
	f := w * s.Between(56, 70) / 100
	s.ring(f)
	s.through(f, 0, w, z, s.Between(62, 76), s.Between(42, 55))
	s.smooth(w, z)
	s.neckAndLip(w, z, h, s.Between(60, 140))
}

// flask is a vase that stands on a round bottom: side parts alone.
func (s *shaper) flask() {
	w := s.Between(380, 620)
	z := w * s.Between(90, 115) / 100
	h := w * s.Between(230, 300) / 100
	s.smooth(0, 0)
	s.smooth(w*s.Between(62, 70)/100, z*s.Between(22, 28)/100)
	s.smooth(w, z)
	s.neckAndLip(w, z, h, s.Between(60, 140))
}

// well ends a pot whose lip is at (r, h) with a funnel that sinks into the top.
func (s *shaper) well(r, h int) {
	deep := s.Between(60, 110)
	s.corner(r-s.Between(16, 24), h)
	s.corner(r*s.Between(42, 52)/100, h-deep)
}

// candlestick is a vase, or a flask, whose top is sunk: an upper part too.
func (s *shaper) candlestick(round bool) {
	w := s.Between(380, 560)
	z := w * s.Between(90, 110) / 100
	h := w * s.Between(230, 290) / 100
	if round {
		s.smooth(0, 0)
		s.smooth(w*s.Between(62, 70)/100, z*s.Between(22, 28)/100)
	} else {
		f := w * s.Between(58, 70) / 100
		s.ring(f)
		s.through(f, 0, w, z, s.Between(62, 76), s.Between(42, 55))
	}
	s.smooth(w, z)
	flare := s.Between(70, 130)
	s.neckAndLip(w, z, h, flare)
	last := s.nodes[len(s.nodes)-1]
	s.well(int(last.R*10+0.5), h)
}

// cylinder stands upright: too little draft for parts drawn along the axis.
func (s *shaper) cylinder() {
	r := s.Between(300, 520)
	s.ring(r)
	s.corner(r, r*s.Between(170, 300)/100)
}

// goblet has a spreading foot, a stem and a bowl; turned over, the same line is
// a lid with its knob. closing draws the rim in again.
func (s *shaper) goblet(closing bool) {
	w := s.Between(420, 700)
	f := w * s.Between(52, 66) / 100
	stem := f * s.Between(45, 60) / 100
	zStem := s.Between(160, 300)
	h := zStem + w*s.Between(105, 150)/100
	s.ring(f)
	s.corner(f+s.Between(4, 10), s.Between(20, 40))
	s.smooth(stem, zStem)
	z := h
	if closing {
		z = share(zStem, h, s.Between(58, 68))
	}
	s.through(stem, zStem, w, z, s.Between(64, 76), s.Between(42, 52))
	if closing {
		s.smooth(w, z)
		s.corner(w-s.Between(50, 110), h)
		return
	}
	s.corner(w, h)
}

// grooved is a straight cup with a groove of the depth cut into its wall.
func (s *shaper) grooved(depth int) {
	f := s.Between(280, 420)
	h := s.Between(700, 1200)
	rim := f + h*s.Between(12, 22)/100
	s.ring(f)
	z0 := h * s.Between(30, 52) / 100
	z1 := z0 + s.Between(90, 150)
	r0, r1 := share(f, rim, 100*z0/h), share(f, rim, 100*z1/h)
	s.corner(r0, z0)
	s.corner(r0-depth, z0+(z1-z0)*s.Between(30, 50)/100)
	s.corner(r1, z1)
	s.corner(rim, h)
}

// gourd has two bellies and a waist of radius waist between them.
func (s *shaper) gourd(waist int) {
	w := s.Between(380, 560)
	z := w * s.Between(70, 95) / 100
	zWaist := z + w*s.Between(75, 100)/100
	up := w * s.Between(66, 82) / 100
	zUp := zWaist + w*s.Between(60, 85)/100
	h := zUp + w*s.Between(40, 65)/100
	f := w * s.Between(58, 70) / 100
	s.ring(f)
	s.belly(f, w, z, waist, zWaist)
	s.smooth(waist, zWaist)
	s.through(waist, zWaist, up, zUp, s.Between(55, 68), s.Between(40, 52))
	s.smooth(up, zUp)
	s.corner(up*s.Between(62, 76)/100, h)
}

// sunken is a jar whose shoulder dips by dip before the neck rises: what lies
// under the shoulder's crest is a pocket.
func (s *shaper) sunken(dip int) {
	w := s.Between(420, 700)
	z := w * s.Between(62, 84) / 100
	crest := z + w*s.Between(40, 60)/100
	h := crest + s.Between(150, 320)
	f := w * s.Between(55, 68) / 100
	neck := w * s.Between(30, 38) / 100
	s.foot(f)
	s.through(f, 0, w, z, s.Between(62, 76), s.Between(42, 55))
	s.smooth(w, z)
	s.smooth(w*s.Between(68, 74)/100, crest)
	s.corner(neck, crest-dip)
	s.corner(neck-s.Between(10, 30), h)
}

// beaded is a jar with a narrow ring standing on its shoulder, as if to hold a
// lid: air stays in the ring, but the clay fills it.
func (s *shaper) beaded() {
	w := s.Between(420, 700)
	z := w * s.Between(70, 100) / 100
	f := w * s.Between(50, 64) / 100
	s.foot(f)
	s.through(f, 0, w, z, s.Between(62, 76), s.Between(42, 55))
	s.smooth(w, z)
	r := w * s.Between(66, 74) / 100
	zr := z + (w-r)*s.Between(110, 150)/100
	s.corner(r, zr)
	up, wide := s.Between(32, 44), s.Between(22, 28)
	s.corner(r, zr+up)
	s.corner(r-wide, zr+up)
	s.corner(r-wide-2, zr+4)
	neck := w * s.Between(34, 42) / 100
	zn := zr + (r-neck)*s.Between(68, 95)/100
	s.corner(neck, zn)
	s.corner(neck-s.Between(12, 24), zn+s.Between(80, 180))
}

// family draws a pot of the named family.
func family(g *Gen, name string) drawn {
	s := &shaper{Gen: g}
	switch name {
	case "bowl":
		s.bowl()
	case "cup":
		s.cup()
	case "jar":
		s.jar(s.Between(30, 66))
	case "keeled":
		s.keeled(s.Between(25, 72))
	case "bottle":
		s.bottle()
	case "vase":
		s.vase()
	case "flask":
		s.flask()
	case "candlestick":
		s.candlestick(false)
	case "roundCandlestick":
		s.candlestick(true)
	case "cylinder":
		s.cylinder()
	case "goblet":
		s.goblet(false)
	case "closedGoblet":
		s.goblet(true)
	case "grooved":
		s.grooved(s.Between(14, 40))
	case "fineGrooved":
		s.grooved(s.Between(8, 16))
	case "gourd":
		s.gourd(s.Between(180, 240))
	case "tightGourd":
		s.gourd(s.Between(40, 60))
	case "sunken":
		s.sunken(s.Between(90, 140))
	case "beaded":
		s.beaded()
	case "dovetailJar", "dovetailCup", "dovetailVase":
		s.dovetailed(name)
	}
	return s.pot(name)
}

// dovetailed is a jar, cup or vase on a recess that locks: no pull frees it.
func (s *shaper) dovetailed(name string) {
	u := s.Between(14, 30)
	f := s.Between(300, 420)
	s.dovetail(f, u)
	switch name {
	case "dovetailCup":
		h := s.Between(600, 1200)
		s.corner(f+h*s.Between(9, 22)/100, h)
	case "dovetailJar":
		w := f * s.Between(145, 190) / 100
		h := w * s.Between(120, 190) / 100
		rim := w * s.Between(50, 70) / 100
		s.belly(f, w, h*s.Between(34, 60)/100, rim, h)
		s.corner(rim, h)
	default:
		w := f * s.Between(145, 175) / 100
		h := w * s.Between(200, 280) / 100
		z := h * s.Between(30, 45) / 100
		s.through(f, 0, w, z, s.Between(62, 76), s.Between(42, 55))
		s.smooth(w, z)
		s.neckAndLip(w, z, h, s.Between(60, 140))
	}
}
