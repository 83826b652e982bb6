package bearing

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/integrate/quad"

	"axlewright/calc/check"
)

// LineContactExponent is n of Q = K·δ^n for a roller (ISO/TS 16281). Older
// tables of load integrals were made with 1.1.
const LineContactExponent = laminaExponent

// LoadZoneParams holds the inputs of [LoadZone].
type LoadZoneParams struct {
	Epsilon  float64 // -, ε: load zone parameter; 0.5 is half the circle, 1 all of it, above 1 the least loaded roller is pressed too
	Exponent float64 // -, n: load over deflection exponent, 10/9 for rollers, 3/2 for balls
}

// LoadZoneResult holds the load integrals of one row.
type LoadZoneResult struct {
	Epsilon   float64 // -, ε: load zone parameter
	Jr        float64 // -, J_r: radial load integral
	Ja        float64 // -, J_a: axial load integral
	HalfAngle float64 // rad, ψ_l: half of the loaded arc
}

// LoadZone returns the radial and the axial load integral of a row of rollers
// whose rings stay parallel.
//
//	J_r = (1/2π)·∫[1 − (1 − cos ψ)/(2ε)]^n·cos ψ dψ
//	J_a = (1/2π)·∫[1 − (1 − cos ψ)/(2ε)]^n dψ
//	ψ_l = arccos(1 − 2ε), π for ε >= 1; integrals from −ψ_l to ψ_l
//
// Valid for 0 < ε <= 1 000 000 and 1 <= n <= 2.
// Errors: *check.RangeError outside that range.
// Source: Sjövall 1933; Harris, Rolling Bearing Analysis, 4th ed., ch. 7 (from memory).
func LoadZone(p LoadZoneParams) (LoadZoneResult, error) {
	if err := check.All("bearing.LoadZone",
		check.That("Epsilon", p.Epsilon, p.Epsilon > 0 && p.Epsilon <= 1e6, "0 < ε <= 1e6"),
		check.Within("Exponent", p.Exponent, 1, 2),
	); err != nil {
		return LoadZoneResult{}, err
	}
	return loadZone(p.Epsilon, p.Exponent), nil
}

// LoadShareParams holds the inputs of [LoadShare].
type LoadShareParams struct {
	Rollers Rollers // roller set of the row
	Radial  float64 // N, F_r: radial load
	Axial   float64 // N, F_a: axial load
}

// LoadShareResult holds how the load spreads over the rollers.
type LoadShareResult struct {
	MaxLoad float64 // N, Q_max: force of the hardest pressed roller on the cup
	Loaded  float64 // -, z: share of the circle whose rollers carry
	Jr      float64 // -, J_r: radial load integral
	Ja      float64 // -, J_a: axial load integral
}

// LoadShare returns the load on the hardest pressed roller of a tapered roller
// bearing under radial and axial load, its rings parallel.
//
//	Q_max = F_a/(Z·sin α·J_a) = F_r/(Z·cos α·J_r)
//	F_r·tan α/F_a = J_r(ε)/J_a(ε), solved for ε;  z = ψ_l/π
//
// Valid for axial loads that hold the bearing together: F_a above F_r·tan α by
// so much that more than about one roller carries (ε >= 0.01).
// Errors: *check.RangeError outside that range.
// Source: Harris, Rolling Bearing Analysis, 4th ed., ch. 7 (from memory).
func LoadShare(p LoadShareParams) (LoadShareResult, error) {
	const fn = "bearing.LoadShare"
	r := p.Rollers
	if err := r.check(fn); err != nil {
		return LoadShareResult{}, err
	}
	sin, tan := math.Sin(r.CupAngle), math.Tan(r.CupAngle)
	const lowest = 0.01
	narrow := loadZone(lowest, LineContactExponent)
	if err := check.All(fn,
		check.NotNegative("Radial", p.Radial),
		check.That("Axial", p.Axial, p.Axial > 0 && p.Radial*tan/p.Axial <= narrow.Jr/narrow.Ja, "> F_r·tan α, with more than one roller loaded"),
	); err != nil {
		return LoadShareResult{}, err
	}
	ratio := p.Radial * tan / p.Axial
	z := LoadZoneResult{Ja: 1, HalfAngle: math.Pi} // every roller the same
	if ratio > 1e-9 {
		// J_r/J_a falls from 1 to n/(4ε) as ε grows: bisect over the logarithm
		low, high := math.Log(lowest), math.Log(10+LineContactExponent/ratio)
		for range 60 {
			mid := (low + high) / 2
			z = loadZone(math.Exp(mid), LineContactExponent)
			if z.Jr/z.Ja > ratio {
				low = mid
			} else {
				high = mid
			}
		}
	}
	return LoadShareResult{
		MaxLoad: p.Axial / (float64(r.Count) * sin * z.Ja),
		Loaded:  z.HalfAngle / math.Pi,
		Jr:      z.Jr,
		Ja:      z.Ja,
	}, nil
}

// legendre holds nodes and weights on 0 to 1.
var legendre = sync.OnceValue(func() (l struct{ x, w [64]float64 }) {
	quad.Legendre{}.FixedLocations(l.x[:], l.w[:], 0, 1)
	return l
})

// loadZone integrates over half the arc with ψ = ψ_l·sin(πt/2), which flattens
// the root of the integrand at the end of the arc.
func loadZone(epsilon, n float64) LoadZoneResult {
	end := math.Pi
	if epsilon < 1 {
		end = math.Acos(1 - 2*epsilon)
	}
	rule := legendre()
	jr, ja := 0., 0.
	for i, t := range rule.x {
		sin, cos := math.Sincos(math.Pi / 2 * t)
		c := math.Cos(end * sin)
		q := math.Pow(max(1-(1-c)/(2*epsilon), 0), n) // rounding may dip below 0 at the end
		w := rule.w[i] * math.Pi / 2 * end * cos / math.Pi
		jr += w * q * c
		ja += w * q
	}
	return LoadZoneResult{Epsilon: epsilon, Jr: jr, Ja: ja, HalfAngle: end}
}
