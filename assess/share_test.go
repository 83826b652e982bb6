package assess

import (
	"math"
	"regexp"
	"testing"
)

func TestShareOfDoubtOfASumIsItsVariance(t *testing.T) {
	// y = 3a + 2b + c with equal variances: shares 9/14, 4/14, 1/14, exactly.
	d := newDraws(4000, 4, 3)
	y := make([]float64, d.n)
	columns := make([][]float64, 4)
	for i := range y {
		_, z := d.row(i)
		y[i] = 3*z[0] + 2*z[1] + z[2]
		for f := range columns {
			columns[f] = append(columns[f], z[f])
		}
	}
	for f, want := range []float64{9. / 14, 4. / 14, 1. / 14, 0} {
		if got := shareOfDoubt(columns[f], y); math.Abs(got-want) > 0.02 {
			t.Errorf("figure %d: share %.3f, want %.3f", f, got, want)
		}
	}
}

func TestShareOfDoubtSeesACurve(t *testing.T) {
	d := newDraws(2000, 1, 1)
	x, y := make([]float64, d.n), make([]float64, d.n)
	for i := range y {
		_, z := d.row(i)
		x[i], y[i] = z[0], z[0]*z[0] // no straight-line correlation at all
	}
	if got := shareOfDoubt(x, y); got < 0.8 {
		t.Errorf("share of a parabola is %.2f, want most of it", got)
	}
}

func TestFiguresAreToldInWords(t *testing.T) {
	for place, want := range map[string]string{
		"Casting.CapBolts.Nut":       "cap bolts: nut factor (torque to preload)",
		"Casting.Limits.StaticMin":   "least safety of the bearings against dents",
		"Casting.Seats.Side.Axial":   "casting stiffness, side bearings: axial",
		"Duty.Blocks[gravel].Torque": "duty, gravel: torque",
		"Vehicle.AxleLoad":           "vehicle: axle load",
	} {
		if got := inWords(place); got != want {
			t.Errorf("%s is %q, want %q", place, got, want)
		}
	}
	e, c := load(t, "14-front-coast")
	s, err := newStudy(&e, &c, Options{Draws: fewDraws})
	if err != nil {
		t.Fatal(err)
	}
	codeName := regexp.MustCompile(`[a-z][A-Z]|\[|^limits|_`)
	for _, place := range s.places {
		if got := inWords(place); codeName.MatchString(got) {
			t.Errorf("%s is %q", place, got)
		}
	}
}
