package ring

import (
	"math"

	"axlewright/calc/check"
)

// DiscLoadParams describes a thin solid disc under one force.
type DiscLoadParams struct {
	Radius    float64 // m, a: radius of the disc
	Thickness float64 // m, h: thickness
	Modulus   float64 // Pa, E: Young's modulus
	Poisson   float64 // -, ν: Poisson's ratio
	Edge      Edge    // name, simply supported or clamped
	Force     float64 // N, P: force at right angles to the disc
	Eccentric float64 // m, b: distance of the force from the centre; optional
}

// DiscLoadResult is how the disc moves.
type DiscLoadResult struct {
	Rigidity         float64 // N·m, D: bending rigidity
	CentreDeflection float64 // m, w_0: deflection of the centre
}

// DiscUnderForce returns the deflection of the centre of a disc under a force
// at or off the centre.
//
//	w_0 = P/(16·π·D)·[(3 + ν)/(1 + ν)·(a² − b²) − 2·b²·ln(a/b)] simply supported
//	w_0 = P/(16·π·D)·[a² − b² − 2·b²·ln(a/b)] clamped
//	D = E·h³/(12·(1 − ν²))
//
// By reciprocity this is also the deflection of a ring of radius b under the
// same force at the centre.
//
// Valid for thin discs (h < a/5), deflections below h/2, 0 <= b < a.
// Errors: *check.RangeError outside that range or for another edge.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd edition, articles 16 and 19 (from memory).
func DiscUnderForce(p DiscLoadParams) (DiscLoadResult, error) {
	if err := check.All("ring.DiscUnderForce", append(disc(p.Radius, p.Thickness, p.Modulus, p.Poisson),
		check.That("Edge", 0, p.Edge == SimplySupported || p.Edge == Clamped, "simply supported or clamped"),
		check.Finite("Force", p.Force),
		check.That("Eccentric", p.Eccentric, p.Eccentric >= 0 && p.Eccentric < p.Radius, "0 <= b < a"),
	)...); err != nil {
		return DiscLoadResult{}, err
	}
	a, b, nu := p.Radius, p.Eccentric, p.Poisson
	d := layer{p.Modulus, p.Thickness}.rigidity(nu)
	held := 1.0
	if p.Edge == SimplySupported {
		held = (3 + nu) / (1 + nu)
	}
	shape := held * (a*a - b*b)
	if b > 0 {
		shape -= 2 * b * b * math.Log(a/b)
	}
	return DiscLoadResult{Rigidity: d, CentreDeflection: p.Force / (16 * math.Pi * d) * shape}, nil
}

// ClampedDiscParams describes a thin solid disc, clamped round its edge, under
// a force anywhere.
type ClampedDiscParams struct {
	Radius     float64 // m, a: radius of the disc
	Thickness  float64 // m, h: thickness
	Modulus    float64 // Pa, E: Young's modulus
	Poisson    float64 // -, ν: Poisson's ratio
	Force      float64 // N, P: force at right angles to the disc
	LoadRadius float64 // m, b: distance of the force from the centre
	ReadRadius float64 // m, r: distance from the centre of the place that is read
	ReadAngle  float64 // rad, θ: angle between the two places, seen from the centre
}

// ClampedDiscDeflection returns the deflection of any place of a clamped disc
// under a force at any other.
//
//	w = P·a²/(16·π·D)·[(1 − x²)·(1 − ξ²) + R²·ln(R²/M²)]
//	x = r/a,  ξ = b/a,  R² = x² + ξ² − 2·x·ξ·cos θ,  M² = 1 + x²·ξ² − 2·x·ξ·cos θ
//	D = E·h³/(12·(1 − ν²))
//
//	w  deflection of the place that is read, m
//
// Valid for thin discs (h < a/5), deflections below h/2, b and r within the disc.
// Errors: *check.RangeError outside that range.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd edition, article 64 (Michell's solution; from memory).
func ClampedDiscDeflection(p ClampedDiscParams) (float64, error) {
	if err := check.All("ring.ClampedDiscDeflection", append(disc(p.Radius, p.Thickness, p.Modulus, p.Poisson),
		check.Finite("Force", p.Force),
		check.That("LoadRadius", p.LoadRadius, p.LoadRadius >= 0 && p.LoadRadius < p.Radius, "0 <= b < a"),
		check.That("ReadRadius", p.ReadRadius, p.ReadRadius >= 0 && p.ReadRadius <= p.Radius, "0 <= r <= a"),
		check.Finite("ReadAngle", p.ReadAngle),
	)...); err != nil {
		return 0, err
	}
	x, xi := p.ReadRadius/p.Radius, p.LoadRadius/p.Radius
	cross := 2 * x * xi * math.Cos(p.ReadAngle)
	r2 := max(0, x*x+xi*xi-cross)
	m2 := 1 + x*x*xi*xi - cross
	shape := (1 - x*x) * (1 - xi*xi)
	if r2 > 0 {
		shape += r2 * math.Log(r2/m2)
	}
	d := layer{p.Modulus, p.Thickness}.rigidity(p.Poisson)
	return p.Force * p.Radius * p.Radius / (16 * math.Pi * d) * shape, nil
}

// DiscPressureParams describes a thin solid disc under pressure.
type DiscPressureParams struct {
	Radius    float64 // m, a: radius of the disc
	Thickness float64 // m, h: thickness
	Modulus   float64 // Pa, E: Young's modulus
	Poisson   float64 // -, ν: Poisson's ratio
	Edge      Edge    // name, simply supported or clamped
	Pressure  float64 // Pa, q: pressure on the whole disc
}

// DiscPressureResult is what the disc does under pressure.
type DiscPressureResult struct {
	CentreDeflection float64 // m, w_0: deflection of the centre
	MaxStress        float64 // Pa, σ_max: largest bending stress, at the edge if clamped, at the centre if not
}

// DiscUnderPressure returns the deflection and the stress of a disc under
// pressure.
//
//	w_0 = q·a⁴/(64·D) clamped,  (5 + ν)/(1 + ν)·q·a⁴/(64·D) simply supported
//	σ_max = 3/4·q·a²/h² clamped,  3·(3 + ν)/8·q·a²/h² simply supported
//	D = E·h³/(12·(1 − ν²))
//
// Valid for thin discs (h < a/5) and deflections below h/2.
// Errors: *check.RangeError for dimensions that are not positive or another edge.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd edition, article 16 (from memory).
func DiscUnderPressure(p DiscPressureParams) (DiscPressureResult, error) {
	if err := check.All("ring.DiscUnderPressure", append(disc(p.Radius, p.Thickness, p.Modulus, p.Poisson),
		check.That("Edge", 0, p.Edge == SimplySupported || p.Edge == Clamped, "simply supported or clamped"),
		check.Finite("Pressure", p.Pressure),
	)...); err != nil {
		return DiscPressureResult{}, err
	}
	nu, a2 := p.Poisson, p.Radius*p.Radius
	d := layer{p.Modulus, p.Thickness}.rigidity(nu)
	bend, stress := 1.0, 0.75
	if p.Edge == SimplySupported {
		bend, stress = (5+nu)/(1+nu), 3*(3+nu)/8
	}
	return DiscPressureResult{
		CentreDeflection: bend * p.Pressure * a2 * a2 / (64 * d),
		MaxStress:        stress * math.Abs(p.Pressure) * a2 / (p.Thickness * p.Thickness),
	}, nil
}

func disc(radius, thickness, modulus, poisson float64) []check.Condition {
	return []check.Condition{
		check.Positive("Radius", radius),
		check.That("Thickness", thickness, thickness > 0 && thickness < radius, "0 < h < a"),
		check.Positive("Modulus", modulus),
		check.That("Poisson", poisson, poisson >= 0 && poisson < 0.5, "0 <= ν < 0.5"),
	}
}
