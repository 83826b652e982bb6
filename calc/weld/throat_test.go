package weld

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestThroatOfASquareEqualFilletIsLegOverRootTwo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		leg := rapid.Float64Range(1e-3, 0.05).Draw(t, "leg")
		a := must(Throat(FilletShape{leg, leg, math.Pi / 2}))
		if math.Abs(a/leg-1/math.Sqrt2) > 1e-12 {
			t.Fatalf("throat %g of leg %g", a, leg)
		}
	})
}

// The throat is the height of the triangle on its face, found here by another road:
// twice the area over the length of the face between two points.
func TestThroatIsTheHeightOfTheTriangle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := FilletShape{1, rapid.Float64Range(0.6, 1.6).Draw(t, "leg"), rapid.Float64Range(60, 120).Draw(t, "angle") * degree}
		a, err := Throat(p)
		if err != nil {
			t.Skip("foot of the height outside the face")
		}
		x2, y2 := p.LegB*math.Cos(p.Angle), p.LegB*math.Sin(p.Angle)
		face := math.Hypot(1-x2, y2)
		if want := math.Abs(y2) / face; math.Abs(a-want) > 1e-12 {
			t.Fatalf("throat %g, height %g", a, want)
		}
		if q := must(Throat(FilletShape{p.LegB, p.LegA, p.Angle})); math.Abs(q-a) > 1e-15 {
			t.Fatal("swapping the legs changes the throat")
		}
	})
}

func TestLegForThroatUndoesThroat(t *testing.T) {
	for _, angle := range []float64{60, 75, 90, 105, 120} {
		leg := must(LegForThroat(0.004, angle*degree))
		near(t, "throat", must(Throat(FilletShape{leg, leg, angle * degree})), 0.004, 1e-12)
	}
}

func TestThroatRefusals(t *testing.T) {
	_, err := Throat(FilletShape{5 * mm, 5 * mm, 59 * degree})
	refused(t, "Angle", err)
	_, err = Throat(FilletShape{5 * mm, 0, 90 * degree})
	refused(t, "LegB", err)
	_, err = Throat(FilletShape{5 * mm, 2 * mm, 60 * degree})
	refused(t, "LegA", err)
	_, err = LegForThroat(math.NaN(), 90*degree)
	refused(t, "throat", err)
}

func TestUnknownNamesAreRefusedWithTheKnownOnes(t *testing.T) {
	_, err := CorrelationFactor("S999")
	refused(t, "grade", err)
	for _, want := range []string{"S999", "S235", "S700"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q does not name %s", err, want)
		}
	}
}
