package casting

import "testing"

const lbPerFoot3 = 0.01601846 // g/ml

func TestPressure(t *testing.T) {
	const psi = 6.894757 // kPa
	for _, c := range []struct {
		density, depth, kPa, tol float64
		source                   string
	}{
		{150 * lbPerFoot3, 8 * 304.8, 8.33 * psi, 0.01 * psi, "concreteconstruction.net, form pressure: 8 ft, 150 lb/ft3"},
		{150 * lbPerFoot3, 8 * 304.8, 57.5, 0.05, "the same in kPa"},
		{62.4 * lbPerFoot3, 10 * 304.8, 624 * psi / 144, 0.1, "dhglabe.com: water, 10 ft, 624 lb/ft2"},
		{150 * lbPerFoot3, 4 * 304.8, 600 * psi / 144, 0.1, "dhglabe.com: concrete, 4 ft, 600 lb/ft2"},
		{1.58, 100, 1.55, 0.005, "derived"}, {1.58, 200, 3.10, 0.005, "derived"},
		{1.58, 300, 4.65, 0.005, "derived"}, {1.58, 400, 6.20, 0.005, "derived"},
		{1.8, 200, 3.53, 0.005, "derived"}, {1.8, 300, 5.30, 0.005, "derived"},
	} {
		near(t, c.source, Pressure(c.density, c.depth), c.kPa, c.tol)
	}
}

func TestForces(t *testing.T) {
	// Fox & McDonald 3.57 (coursehero 6479382): 3 m x 5 m, SG 2.5; the answer
	// 551.8 kN is derived with g = 9.81.
	near(t, "Fox & McDonald", WallForce(2.5, 3000, 5000)/gravity*9.81, 551.8e3, 0.1e3)
	near(t, "cottle board 300 x 300, derived", WallForce(1.6, 300, 300), 211.8, 0.05)
	total, foot := CottleHoop(1.6, 300, 150)
	near(t, "cottle r 150, derived", total, 105.9, 0.05)
	near(t, "at its foot, N/m, derived", foot, 706, 0.5)
	near(t, "halves 100 x 250, derived", SeamForce(1.8, 250, 125), 55.2, 0.05)
	near(t, "halves 90 x 200, derived", SeamForce(1.78, 180, 100), 31.4, 0.05)
	near(t, "sealed positive, derived", Flotation(1.58, 737.6, 0), 11.43, 0.005)
	near(t, "in kgf", Flotation(1.58, 737.6, 0)/gravity, 1.165, 0.0005)
	near(t, "floats even", Flotation(1.58, 1000, 1580), 0, 1e-9)
	// A flat lid of 100 cm2 under 50 mm of slip bears p A.
	near(t, "lift of a flat ceiling", LiftForce(1.8, 100*5), SeamForce(1.8, 100, 50), 1e-9)
	// Half a board is what a seam of its own projected area sees.
	near(t, "board and seam agree", SeamForce(1.6, 30*30, 150), WallForce(1.6, 300, 300), 1e-9)
}

func TestBandCount(t *testing.T) {
	for _, c := range []struct {
		force, tension, safety float64
		least, want            int
	}{
		{0, 50, 2, 2, 0}, {-3, 50, 2, 2, 0}, {10, 50, 2, 2, 2}, {100, 50, 2, 2, 2}, {101, 50, 2, 2, 3}, {150, 50, 2, 1, 3}, {50, 50, 2, 1, 1},
	} {
		if got := BandCount(c.force, c.tension, c.safety, c.least); got != c.want {
			t.Errorf("BandCount(%g, %g, %g, %d) = %d, want %d", c.force, c.tension, c.safety, c.least, got, c.want)
		}
	}
}

func TestForcesOfMold(t *testing.T) {
	in := fourPiece()
	f := mustCompute(t, in)
	near(t, "lift", f.LiftForce, 1.78*160*gravity/1000, 1e-9)
	near(t, "seam", f.SeamForce, 1.78*0.12*gravity*240/10, 1e-9)
	near(t, "cottle halves, held by both sides of the bands", f.CottleForce, 2*f.CottleHoop, 1e-9)
	near(t, "bands hold the greater", f.BandForce, max(f.LiftForce, f.SeamForce), 0)
	near(t, "upper part's weight counts", f.LiftForce-f.LiftNet, f.Parts[3].Dry*gravity/1000, 1e-9)
	near(t, "positive's weight counts", f.Flotation, LiftForce(f.WetDensity, in.PositiveML)-0.3*gravity, 1e-9)
	near(t, "and can be weighed down", Flotation(f.WetDensity, in.PositiveML, in.PositiveMassG+f.FlotationMass), 0, 1e-9)
	for _, b := range []struct {
		n     int
		force float64
	}{{f.BandsRound, f.SeamForce}, {f.BandsOver, f.LiftForce}} {
		if float64(b.n)*2*50 < 2*b.force {
			t.Errorf("%d bands do not hold %g N twice over", b.n, b.force)
		}
	}
}

// CCOHS, revised NIOSH equation: load constant 23 kg; the case is derived.
func TestRWL(t *testing.T) {
	near(t, "H 40, V 75, D 25", RWL(40, 75, 25, 0), 14.4, 0.05)
	near(t, "best lift", RWL(25, 75, 25, 0), 23, 1e-9)
	near(t, "closer is no better", RWL(10, 75, 0, 0), 23, 1e-9)
	near(t, "from the floor", RWL(25, 0, 25, 0), 23*0.775, 1e-9)
	near(t, "70 cm up", RWL(25, 75, 70, 0), 23*(0.82+4.5/70), 1e-9)
	near(t, "turned 90 (from memory)", RWL(25, 75, 25, 90), 23*0.712, 1e-9)
	for _, far := range [][4]float64{{64, 75, 25, 0}, {25, 176, 25, 0}, {25, 75, 176, 0}, {25, 75, 25, 136}} {
		near(t, "out of range", RWL(far[0], far[1], far[2], far[3]), 0, 0)
	}
}
