package bearing

import "math"

// rollerForce is what one roller gives for an approach δ(s) = a + b·s along its
// length, s from −h to h: load, moment, energy and their derivatives, all per
// unit of the constant κ in q = κ·δ^(10/9).
type rollerForce struct {
	n, m          float64 // ∫δ^p ds, ∫s·δ^p ds
	energy        float64 // ∫δ^(p+1)/(p+1) ds
	naa, nab, nbb float64 // second derivatives of the energy by a and b
}

// roller integrates exactly over the loaded part of the roller. Away from the
// even approach that takes two powers; near it the closed form would divide
// small differences by the cube of the slope, so a series goes in its place.
func roller(a, b, h float64) rollerForce {
	bh := b * h
	if math.Abs(bh) < slightTilt*a {
		return slightlyTilted(a, bh/a, h)
	}
	const p = laminaExponent
	d0, d1 := a-bh, a+bh
	s0, s1 := -h, h
	var p0, p1 float64
	if d0 > 0 {
		p0 = d0 * ninthRoot(d0)
	} else {
		d0, s0 = 0, -a/b
	}
	if d1 > 0 {
		p1 = d1 * ninthRoot(d1)
	} else {
		d1, s1 = 0, -a/b
	}
	const over1, over2 = 1 / (p + 1), 1 / (p + 2) // products are faster than quotients
	inv := 1 / b
	n := (d1*p1 - d0*p0) * inv * over1
	second := (d1*d1*p1 - d0*d0*p0) * inv * over2 // ∫δ^(p+1) ds
	m := (s1*d1*p1 - s0*d0*p0 - second) * inv * over1
	return rollerForce{
		n: n, m: m, energy: second * over1,
		naa: (p1 - p0) * inv,
		nab: (s1*p1 - s0*p0 - n) * inv,
		nbb: (s1*s1*p1 - s0*s0*p0 - 2*m) * inv,
	}
}

// slightTilt is the share of the mean approach below which the change of
// approach along the roller is treated by series.
const slightTilt = 0.2

// Coefficients of the series: the binomials of p, p + 1 and p − 1 over the
// moments 1/(k + 1), 1/(k + 2), 1/(k + 3) of the powers of s.
var (
	loadSeries     = series(laminaExponent, 0, 1, 6)
	momentSeries   = series(laminaExponent, 1, 2, 6)
	energySeries   = series(laminaExponent+1, 0, 1, 6)
	stiffSeries    = series(laminaExponent-1, 0, 1, 5)
	couplingSeries = series(laminaExponent-1, 1, 2, 5)
	tiltSeries     = series(laminaExponent-1, 0, 3, 5)
)

// series lists binomial(x, k)/(k + moment) for k = first, first + 2, ...
func series(x float64, first, moment, terms int) (out [6]float64) {
	binomial := 1.0
	for k := 0; k < first+2*terms; k++ {
		if (k-first)%2 == 0 && k >= first {
			out[(k-first)/2] = binomial / float64(k+moment)
		}
		binomial *= (x - float64(k)) / float64(k+1)
	}
	return out
}

// slightlyTilted is roller for a small t = b·h/a.
func slightlyTilted(a, t, h float64) rollerForce {
	const p = laminaExponent
	t2 := t * t
	root := ninthRoot(a)
	length := 2 * h
	load := length * a * root // ∫δ^p ds without tilt
	stiff := length * root * p
	return rollerForce{
		n:      load * even(&loadSeries, t2),
		m:      load * h * t * even(&momentSeries, t2),
		energy: load * a * (1 / (p + 1)) * even(&energySeries, t2),
		naa:    stiff * short(&stiffSeries, t2),
		nab:    stiff * h * t * short(&couplingSeries, t2),
		nbb:    stiff * h * h * short(&tiltSeries, t2),
	}
}

func even(c *[6]float64, x float64) float64 {
	return c[0] + x*(c[1]+x*(c[2]+x*(c[3]+x*(c[4]+x*c[5]))))
}

func short(c *[6]float64, x float64) float64 {
	return c[0] + x*(c[1]+x*(c[2]+x*(c[3]+x*c[4])))
}

// ninthRoot returns x^(1/9) for x > 0, correct to a few units of the last bit.
// Two cube roots would take most of the time of a whole load path; here a
// polynomial gives the root of the mantissa to one part in a million and one
// step of Halley's method does the rest. The exponent is divided by nine.
func ninthRoot(x float64) float64 {
	bits := math.Float64bits(x)
	exponent := bits >> 52
	if exponent-1 >= 2046 { // zero, subnormal, infinite, negative or none
		return math.Cbrt(math.Cbrt(x))
	}
	m := math.Float64frombits(bits&(1<<52-1) | 1023<<52)
	t := 2*m - 3
	y := 1.0460811951599571 + t*(0.038743978715340056+t*(-0.005726854574277314+t*(0.0012009993848440073+t*(-0.00032368323011056077+t*8.466846225759402e-05))))
	y2 := y * y
	y4 := y2 * y2
	y9 := y4 * y4 * y
	y *= (4*y9 + 5*m) / (5*y9 + 4*m)
	// The exponent counts from 1023 = 9·113 + 6, and 1026 = 9·114.
	shifted := exponent + 3
	return y * ninthRootsOfTwo[shifted%9] * math.Float64frombits((shifted/9+1023-114)<<52)
}

// ninthRootsOfTwo holds 2^(r/9).
var ninthRootsOfTwo = [9]float64{1}

func init() {
	for r := range ninthRootsOfTwo {
		ninthRootsOfTwo[r] = math.Pow(2, float64(r)/9)
	}
}
