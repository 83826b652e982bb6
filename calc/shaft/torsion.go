package shaft

import (
	"math"

	"axlewright/calc/check"
)

// TorsionParams describes a stepped round shaft under torque.
type TorsionParams struct {
	Sections     []Section // pieces of the shaft; their windows are not counted
	ShearModulus float64   // Pa, G: shear modulus
	Torque       float64   // N·m, T: torque
}

// TorsionResult is what the torque does.
type TorsionResult struct {
	Stress    float64 // Pa, τ: largest shear stress, in the thinnest piece
	Twist     float64 // rad, φ: twist from end to end
	Stiffness float64 // N·m/rad, c: torque against twist
}

// Torsion returns shear stress, twist and stiffness of a stepped round shaft.
//
//	φ = Σ T·L/(G·J),  J = π/32·(D⁴ − d⁴)
//	τ = 16·T·D/(π·(D⁴ − d⁴)),  c = 1/Σ L/(G·J)
//
// Valid for round shafts below yield; fillets and splines raise the stress.
// Errors: *check.RangeError for no section or dimensions out of range.
// Source: Gere, Mechanics of Materials, 5th edition, sections 3.3 and 3.4.
func Torsion(p TorsionParams) (TorsionResult, error) {
	const fn = "shaft.Torsion"
	if err := check.All(fn,
		check.That("Sections", float64(len(p.Sections)), len(p.Sections) > 0, "at least one section"),
		check.Positive("ShearModulus", p.ShearModulus),
		check.Finite("Torque", p.Torque),
	); err != nil {
		return TorsionResult{}, err
	}
	var r TorsionResult
	give := 0.0
	for _, s := range p.Sections {
		if err := check.All(fn,
			check.Positive("Sections.Length", s.Length),
			check.Positive("Sections.Outer", s.Outer),
			check.That("Sections.Inner", s.Inner, s.Inner >= 0 && s.Inner < s.Outer, "0 <= d < D"),
		); err != nil {
			return TorsionResult{}, err
		}
		j := math.Pi / 32 * (math.Pow(s.Outer, 4) - math.Pow(s.Inner, 4))
		give += s.Length / (p.ShearModulus * j)
		r.Stress = max(r.Stress, math.Abs(p.Torque)*s.Outer/(2*j))
	}
	r.Twist, r.Stiffness = p.Torque*give, 1/give
	return r, nil
}

// HalfShaftParams describes the thinnest place of a half-shaft.
type HalfShaftParams struct {
	Diameter   float64 // m, D: diameter; at a spline its root
	Bore       float64 // m, d: bore; optional
	ShearYield float64 // Pa, τ_y: shear yield strength
	Share      float64 // -, share of the axle's torque in this half-shaft: 0.5 with an open centre, 1 with all through one
}

// HalfShaftResult is the torque a half-shaft stands.
type HalfShaftResult struct {
	Yield       float64 // N·m, T_y: torque at which the skin yields
	Plastic     float64 // N·m, T_p: torque at which the whole section yields
	AxleYield   float64 // N·m, torque at the axle at which the skin yields
	AxlePlastic float64 // N·m, torque at the axle at which the whole section yields
}

// HalfShaftTorque returns the torque at which a half-shaft yields.
//
//	T_y = π·τ_y·(D⁴ − d⁴)/(16·D)
//	T_p = π·τ_y·(D³ − d³)/12,  axle torque = T/share
//
// Between the two a shaft takes a lasting twist; T_p is the last it can do
// without hardening.
//
// Valid for round sections of one hardness. An induction-hardened shaft yields
// first where its case ends.
// Errors: *check.RangeError outside 0 < share <= 1 or for dimensions out of range.
// Source: Gere, Mechanics of Materials, 5th edition, section 3.3; Timoshenko,
// Strength of Materials, part II, 3rd edition, article 64 (plastic torsion;
// from memory).
func HalfShaftTorque(p HalfShaftParams) (HalfShaftResult, error) {
	if err := check.All("shaft.HalfShaftTorque",
		check.Positive("Diameter", p.Diameter),
		check.That("Bore", p.Bore, p.Bore >= 0 && p.Bore < p.Diameter, "0 <= d < D"),
		check.Positive("ShearYield", p.ShearYield),
		check.That("Share", p.Share, p.Share > 0 && p.Share <= 1, "0 < share <= 1"),
	); err != nil {
		return HalfShaftResult{}, err
	}
	outer, inner := p.Diameter, p.Bore
	r := HalfShaftResult{
		Yield:   math.Pi * p.ShearYield * (math.Pow(outer, 4) - math.Pow(inner, 4)) / (16 * outer),
		Plastic: math.Pi * p.ShearYield * (math.Pow(outer, 3) - math.Pow(inner, 3)) / 12,
	}
	r.AxleYield, r.AxlePlastic = r.Yield/p.Share, r.Plastic/p.Share
	return r, nil
}

// NeckParams describes a round section under bending, torque and axial force.
type NeckParams struct {
	Diameter float64 // m, D: diameter
	Bore     float64 // m, d: bore; optional
	Bending  float64 // N·m, M: bending moment
	Torque   float64 // N·m, T: torque
	Axial    float64 // N, F: axial force, tension positive; optional
}

// NeckResult is the stress of the section.
type NeckResult struct {
	BendingStress float64 // Pa, σ_b: bending stress
	AxialStress   float64 // Pa, σ_a: axial stress
	ShearStress   float64 // Pa, τ: torsional shear stress
	VonMises      float64 // Pa, σ_v: von Mises stress where it is largest
}

// NeckStress returns the stress of a round section, such as the neck of a
// pinion, under bending, torque and axial force.
//
//	σ_v = √[(σ_b + |σ_a|)² + 3·τ²]
//	σ_b = 32·M·D/(π·(D⁴ − d⁴)),  τ = 16·T·D/(π·(D⁴ − d⁴)),  σ_a = 4·F/(π·(D² − d²))
//
// Valid below yield; a fillet or a thread raises the stress by its own factor.
// Errors: *check.RangeError for dimensions out of range.
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// edition, equations 5-15, 7-1 and 7-2 (from memory).
func NeckStress(p NeckParams) (NeckResult, error) {
	if err := check.All("shaft.NeckStress",
		check.Positive("Diameter", p.Diameter),
		check.That("Bore", p.Bore, p.Bore >= 0 && p.Bore < p.Diameter, "0 <= d < D"),
		check.Finite("Bending", p.Bending),
		check.Finite("Torque", p.Torque),
		check.Finite("Axial", p.Axial),
	); err != nil {
		return NeckResult{}, err
	}
	d4 := math.Pow(p.Diameter, 4) - math.Pow(p.Bore, 4)
	d2 := p.Diameter*p.Diameter - p.Bore*p.Bore
	r := NeckResult{
		BendingStress: 32 * math.Abs(p.Bending) * p.Diameter / (math.Pi * d4),
		AxialStress:   4 * p.Axial / (math.Pi * d2),
		ShearStress:   16 * math.Abs(p.Torque) * p.Diameter / (math.Pi * d4),
	}
	r.VonMises = math.Sqrt(math.Pow(r.BendingStress+math.Abs(r.AxialStress), 2) + 3*r.ShearStress*r.ShearStress)
	return r, nil
}
