package quantity

import "math/big"

// The exact values from which every conversion is built. NIST SP 811:2008,
// appendix B.8, prints exact factors in bold; ISO 80000-3 and -4 hold the same.
var (
	inch    = rat("0.0254")
	foot    = times(rat("12"), inch)
	yard    = times(rat("3"), foot)
	mile    = times(rat("1760"), yard)
	pound   = rat("0.45359237")
	ounce   = over(pound, rat("16"))
	gravity = rat("9.80665")
	kgf     = gravity
	lbf     = times(pound, gravity)
	ukTonf  = times(rat("2240"), lbf)
	usGal   = times(rat("231"), power(inch, 3)) // 231 cubic inches
	ukGal   = rat("0.00454609")
	hp      = times(rat("550"), times(foot, lbf)) // 550 ft·lbf/s
	fPerK   = rat("5/9")

	// pi to 80 decimals: far below the last bit of a float64.
	pi     = rat("3.14159265358979323846264338327950288419716939937510582097494459230781640628620899")
	turn   = times(rat("2"), pi)
	degree = over(pi, rat("180"))
	arcmin = over(degree, rat("60"))
	arcsec = over(arcmin, rat("60"))
)

// rat reads an exact number that stands in this program's own text.
func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("quantity: bad constant " + s)
	}
	return r
}

func times(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

func over(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

func power(a *big.Rat, n int) *big.Rat {
	e := big.NewInt(int64(n))
	return new(big.Rat).SetFrac(
		new(big.Int).Exp(a.Num(), e, nil),
		new(big.Int).Exp(a.Denom(), e, nil))
}
