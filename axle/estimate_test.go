package axle

import (
	"math"
	"os"
	"strings"
	"testing"
)

// Side seats that are not stated are estimated from the leg: the sum is worked
// here by hand for the T24's leg of 54 × 60 × 34 mm, 26 mm deep at the cap.
func TestSeatsEstimatedFromTheLeg(t *testing.T) {
	text, err := os.ReadFile("../examples/tarnhow.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const stated = "side: {inward: 900 kN/mm, leg: 500 kN/mm, across: 600 kN/mm, axial: 210 kN/mm, tilt: 250 kN·m/rad}"
	file := strings.Replace(string(text), stated, "side: {inward: 900 kN/mm, leg: 500 kN/mm, tilt: 250 kN·m/rad}", 1)
	if file == string(text) {
		t.Fatalf("the example has no %q", stated)
	}
	c, err := LoadCatalogue(write(t, t.TempDir(), "tarnhow.yaml", file))
	if err != nil {
		t.Fatal(err)
	}
	k, err := c.Casting("T24")
	if err != nil {
		t.Fatal(err)
	}
	const modulus, nu, height = 168e3, 0.27, 54.0 // MPa, -, mm
	shear := modulus / (2 * (1 + nu))
	// Bending and shear of the leg by slices, then its root (O'Donnell).
	stiffness := func(tip, root, width float64) float64 {
		const slices = 20000
		give := 0.0
		for i := range slices {
			x := height * (float64(i) + 0.5) / slices
			h := tip + (root-tip)*x/height
			give += (12*x*x/(modulus*width*h*h*h) + 1.2/(shear*width*h)) * height / slices
		}
		slender := height / root
		give += (16.67/math.Pi*slender*slender + 2*(1-nu)*slender + 1.534) / (modulus * width)
		return 1 / give * 1e3 // N/m
	}
	for _, x := range []struct {
		name string
		got  Number
		want float64
	}{
		{"axial", k.Seats.Side.Axial.Number, stiffness(26, 34, 60)}, {"across", k.Seats.Side.Across.Number, stiffness(60, 60, 34)},
	} {
		if math.Abs(x.got.Value/x.want-1) > 0.005 {
			t.Errorf("%s: %g N/m, by hand %g", x.name, x.got.Value, x.want)
		}
		if x.got.Origin != Computed || x.got.Shape != Lognormal || math.Abs(x.got.High/x.got.Value-1.6) > 1e-9 || x.got.Note == "" {
			t.Errorf("%s does not say what it is: %+v", x.name, x.got)
		}
	}
	if k.Seats.Side.Inward.Text != "900 kN/mm" {
		t.Errorf("a stated figure is %q", k.Seats.Side.Inward.Text)
	}
}
