package bearing

import (
	"math"

	"axlewright/calc/check"
)

// Rating is one bearing prepared for many load cases. Its methods do no checks
// and make no garbage: loads are magnitudes in newtons, and a bearing without
// load lives for ever.
type Rating struct {
	Dynamic       float64 // N, C: basic dynamic load rating
	Static        float64 // N, C_0: basic static load rating
	FatigueLimit  float64 // N, C_u: fatigue load limit
	E             float64 // -, e: limit of the load ratio
	Y             float64 // -, Y: axial factor above e
	Y0            float64 // -, Y_0: axial factor of the static load
	PitchDiameter float64 // m, D_pw: diameter of the circle through the roller centres
}

// RatingFromRollers returns a bearing prepared for many load cases from its
// roller geometry.
//
//	C = C_r by ISO 281,  C_0 = C_0r by ISO 76,  C_u = C_0/8.2, less above 100 mm
//	e = 1.5·tan α,  Y = 0.4·cot α,  Y_0 = 0.22·cot α
//
// Valid for what its ratings and factors are valid for.
// Errors: *check.RangeError for rollers that cannot exist, b_m <= 0 or no row.
// Source: ISO 281:2007 and ISO 76:2006 (from memory).
func RatingFromRollers(p RatingParams) (Rating, error) {
	dynamic, err := DynamicRating(p)
	if err != nil {
		return Rating{}, err
	}
	static, err := StaticRating(p)
	if err != nil {
		return Rating{}, err
	}
	f, err := LoadFactors(p.Rollers.CupAngle)
	if err != nil {
		return Rating{}, err
	}
	return Rating{
		Dynamic:       dynamic,
		Static:        static,
		FatigueLimit:  fatigueLoadLimit(static, p.Rollers.PitchDiameter),
		E:             f.E,
		Y:             f.Y,
		Y0:            f.Y0,
		PitchDiameter: p.Rollers.PitchDiameter,
	}, nil
}

// MakerParams holds the inputs of [RatingFromMaker].
type MakerParams struct {
	Dynamic         float64 // N, C: basic dynamic load rating of the maker
	Static          float64 // N, C_0: basic static load rating of the maker
	E               float64 // -, e: limit of the load ratio of the maker
	Y               float64 // -, Y: axial factor of the maker; zero for 0.6/e; optional
	Y0              float64 // -, Y_0: static axial factor of the maker; zero for 0.55·Y; optional
	FatigueLimit    float64 // N, C_u: fatigue load limit of the maker; zero for that of ISO 281; optional
	Bore            float64 // m, d: bore
	OutsideDiameter float64 // m, D: outside diameter
}

// RatingFromMaker returns a bearing prepared for many load cases from the
// figures that its maker prints.
//
//	D_pw = (d + D)/2
//	Y = 0.6/e,  Y_0 = 0.55·Y,  C_u = C_0/8.2 (less above 100 mm)   where not given
//
// Valid for single-row tapered roller bearings.
// Errors: *check.RangeError for a rating, e or bore not above zero, a negative
// optional figure, or an outside diameter not above the bore.
// Source: ISO 281:2007 and ISO 76:2006 (from memory).
func RatingFromMaker(p MakerParams) (Rating, error) {
	if err := check.All("bearing.RatingFromMaker",
		check.Positive("Dynamic", p.Dynamic),
		check.Positive("Static", p.Static),
		check.Positive("E", p.E),
		check.NotNegative("Y", p.Y),
		check.NotNegative("Y0", p.Y0),
		check.NotNegative("FatigueLimit", p.FatigueLimit),
		check.Positive("Bore", p.Bore),
		check.That("OutsideDiameter", p.OutsideDiameter, p.OutsideDiameter > p.Bore, "> Bore"),
	); err != nil {
		return Rating{}, err
	}
	r := Rating{
		Dynamic: p.Dynamic, Static: p.Static, FatigueLimit: p.FatigueLimit,
		E: p.E, Y: p.Y, Y0: p.Y0, PitchDiameter: (p.Bore + p.OutsideDiameter) / 2,
	}
	if r.Y == 0 {
		r.Y = 0.6 / r.E // e = 1.5·tan α and Y = 0.4·cot α
	}
	if r.Y0 == 0 {
		r.Y0 = 0.55 * r.Y // 0.22/0.4
	}
	if r.FatigueLimit == 0 {
		r.FatigueLimit = fatigueLoadLimit(r.Static, r.PitchDiameter)
	}
	return r, nil
}

// EquivalentDynamic is P of [EquivalentDynamicLoad].
func (r Rating) EquivalentDynamic(radial, axial float64) float64 {
	return equivalentDynamic(radial, axial, r.E, r.Y)
}

// EquivalentStatic is P_0 of [EquivalentStaticLoad].
func (r Rating) EquivalentStatic(radial, axial float64) float64 {
	return equivalentStatic(radial, axial, r.Y0)
}

// StaticSafety is C_0/P_0; +Inf without load.
func (r Rating) StaticSafety(load float64) float64 { return r.Static / load }

// Life is the basic rating life L10 in revolutions; +Inf without load. It goes
// on above P = C/2, where [BasicLife] refuses, so that damage rises smoothly
// while a give-out torque is searched for.
func (r Rating) Life(load float64) float64 {
	x := r.Dynamic / load
	return million * x * x * x * math.Cbrt(x) // x^(10/3)
}

// Kappa is the viscosity ratio for a kinematic viscosity in m²/s and a speed in
// rad/s; 0 at rest.
func (r Rating) Kappa(viscosity, speed float64) float64 {
	if speed <= 0 {
		return 0
	}
	return viscosity / referenceViscosity(speed, r.PitchDiameter)
}

// SystemFactor is a_ISO of [SystemFactor] without additive. Below κ = 0.1, where
// the standard stops, it stays at the 0.1 that its formula reaches there.
func (r Rating) SystemFactor(load, kappa, contamination float64) float64 {
	return systemFactor(kappa, contamination*r.FatigueLimit/load)
}

// ModifiedLife is L10 times a_ISO in revolutions; multiply by a1 for a
// reliability above 90 %.
func (r Rating) ModifiedLife(load, kappa, contamination float64) float64 {
	return r.SystemFactor(load, kappa, contamination) * r.Life(load)
}
