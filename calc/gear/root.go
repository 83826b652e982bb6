package gear

import "math"

// root closes in on the sign change of f between low and high, to the last bits.
// The caller has made sure that there is one. Inverse quadratic steps are taken
// where the last three points allow it and halving otherwise (Chandrupatla 1997).
func root(f func(float64) float64, low, high float64) float64 {
	a, b := low, high
	fa, fb := f(a), f(b)
	if fa == 0 {
		return a
	}
	if fb == 0 {
		return b
	}
	c, fc := a, fa
	t := 0.5
	for range 200 {
		x := a + t*(b-a)
		fx := f(x)
		if (fx < 0) == (fa < 0) {
			c, fc = a, fa
		} else {
			c, fc, b, fb = b, fb, a, fa
		}
		a, fa = x, fx
		best, fBest := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			best, fBest = b, fb
		}
		limit := 1e-16 * (1 + 2*math.Abs(best)) / math.Abs(b-c)
		if fBest == 0 || limit > 0.5 {
			return best
		}
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		t = 0.5
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		t = min(1-limit, max(limit, t))
	}
	return a
}
