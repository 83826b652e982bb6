package assess

import (
	"math"
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
