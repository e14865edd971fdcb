package trace

import (
	"math"
	"testing"
)

// TestInvertIsExact projects a profile by the camera's definition (silhouette
// where the surface normal is square to the ray, then the ray cut by the plane
// through the axis) and takes it back, tangents by fine differences.
func TestInvertIsExact(t *testing.T) {
	radius := func(z float64) float64 { return 45 + 18*math.Sin(z/22) }
	slope := func(z float64) float64 { return 18.0 / 22 * math.Cos(z/22) }
	for _, d := range []float64{400, 600, 1000, 2000} {
		for _, zc := range []float64{-20, 75, 260} {
			v := Viewpoint{DistanceMM: d, HeightMM: zc}
			// the definition, written out: P on the circle at azimuth a, normal
			// (cos a, sin a, -r'), lens (d, 0, zc)
			project := func(z float64) (y, zz float64, ok bool) {
				r, s := radius(z), slope(z)
				cos := (r + s*(zc-z)) / d
				if math.Abs(cos) >= 1 {
					return 0, 0, false
				}
				px, py := r*cos, r*math.Sqrt(1-cos*cos)
				k := d / (d - px)
				return k * py, zc + k*(z-zc), true
			}
			worst := 0.0
			for z := 2.0; z < 148; z += 0.25 {
				y, zz, ok := project(z)
				if !ok {
					continue
				}
				if py, pz, ok := v.Project(radius(z), z, slope(z)); !ok || math.Abs(py-y) > 1e-9 || math.Abs(pz-zz) > 1e-9 {
					t.Fatalf("Project differs from the definition at z %g", z)
				}
				// the tangent by a five-point difference
				const h = 0.02
				y1, z1, _ := project(z + h)
				y2, z2, _ := project(z + 2*h)
				y3, z3, _ := project(z - h)
				y4, z4, _ := project(z - 2*h)
				dy, dz := (y4-8*y3+8*y1-y2)/(12*h), (z4-8*z3+8*z1-z2)/(12*h)
				r, zb, ok := v.Invert(y, zz, dy, dz)
				if !ok {
					t.Fatalf("no point at z %g", z)
				}
				worst = math.Max(worst, math.Hypot(r-radius(z), zb-z))
			}
			if worst > 1e-6 {
				t.Errorf("distance %g, lens at %g: %.2g mm off", d, zc, worst)
			}
		}
	}
}

// TestInvertEdges takes points of the ellipse of a rim back to the rim.
func TestInvertEdges(t *testing.T) {
	for _, c := range []struct{ r, z, d, zc float64 }{{50, 160, 600, 90}, {35, 0, 400, 90}, {50, 160, 700, 300}} {
		v := Viewpoint{DistanceMM: c.d, HeightMM: c.zc}
		for a := 0.3; a < 3; a += 0.1 {
			s, k := math.Sincos(a)
			w := c.d - c.r*k
			y, z := c.d*c.r*s/w, c.zc+c.d*(c.z-c.zc)/w
			dw := c.r * s
			dy, dz := (c.d*c.r*k*w-c.d*c.r*s*dw)/(w*w), -c.d*(c.z-c.zc)*dw/(w*w)
			r, zz, ok := v.Invert(y, z, dy, dz)
			if !ok || math.Abs(r-c.r) > 1e-9 || math.Abs(zz-c.z) > 1e-9 {
				t.Errorf("edge %+v at %.1f: r %.12g z %.12g", c, a, r, zz)
			}
		}
	}
}

func TestUnseenIsSaid(t *testing.T) {
	// a nearly level shoulder below a lens far above it
	if _, _, ok := (Viewpoint{DistanceMM: 400, HeightMM: 400}).Project(60, 100, -2); ok {
		t.Error("a surface turned away from the camera is shown")
	}
}
