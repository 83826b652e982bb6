package gear

import (
	"math"

	"axlewright/calc/check"
)

// BevelRatingParams is what the American stress numbers of a bevel pair follow from.
type BevelRatingParams struct {
	Edition      AGMAEdition // name, edition of the standard
	Tangential   float64     // N, W_t: tangential force at the large end
	OuterModule  float64     // m, m_et: transverse module at the large end, one inch over the diametral pitch
	FaceWidth    float64     // m, F: net face width
	PinionPitch  float64     // m, d_P: pitch diameter of the pinion at the large end; for contact
	Overload     float64     // -, K_o: overload factor
	Dynamic      float64     // -, K_v: dynamic factor, as BevelDynamicFactor
	Size         float64     // -, K_s or C_s: size factor, for bending as BevelSizeFactor, for contact as BevelPittingSizeFactor
	Distribution float64     // -, K_m: load distribution factor, as BevelLoadDistribution
	Lengthwise   float64     // -, K_x: lengthwise curvature factor for bending, 1 straight, about 1.15 spiral
	Crowning     float64     // -, C_xc: crowning factor for contact, 1.5 crowned, 2.0 not
	Geometry     float64     // -, J or I: geometry factor from the charts of the standard
	Elastic      float64     // Pa, C_p²: square of the elastic coefficient; optional, (2290)² psi for steel on steel
}

func (p BevelRatingParams) valid(fn string) error {
	return check.All(fn,
		knownEdition(p.Edition), check.NotNegative("Tangential", p.Tangential),
		check.Positive("OuterModule", p.OuterModule), check.Positive("FaceWidth", p.FaceWidth),
		check.Within("Overload", p.Overload, 1, 5), check.Within("Dynamic", p.Dynamic, 1, 3),
		check.Within("Size", p.Size, 0.4, 1.1), check.Within("Distribution", p.Distribution, 1, 3))
}

// BevelBendingStress returns the bending stress number of the American bevel standard.
//
//	s_t = W_t/(F·m_et)·K_o·K_v·K_s·K_m/(K_x·J)
//
//	s_t  bending stress number, Pa
//
// Valid for generated bevel teeth without offset, 0.1 ≤ J ≤ 0.6.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15, with 1/P_d = m_et.
func BevelBendingStress(p BevelRatingParams) (float64, error) {
	const fn = "gear.BevelBendingStress"
	if err := p.valid(fn); err != nil {
		return 0, err
	}
	if err := check.All(fn, check.Within("Geometry", p.Geometry, 0.1, 0.6), check.Within("Lengthwise", p.Lengthwise, 1, 1.2)); err != nil {
		return 0, err
	}
	return p.Tangential / (p.FaceWidth * p.OuterModule) * p.Overload * p.Dynamic * p.Size * p.Distribution /
		(p.Lengthwise * p.Geometry), nil
}

// BevelContactStress returns the contact stress number of the American bevel standard.
//
//	s_c = C_p·√(W_t·K_o·K_v·K_m·C_s·C_xc/(F·d_P·I))
//
//	s_c  contact stress number, Pa
//
// Valid for generated bevel teeth without offset, 0.02 ≤ I ≤ 0.3, 1.5 ≤ C_xc ≤ 2.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15.
func BevelContactStress(p BevelRatingParams) (float64, error) {
	const fn = "gear.BevelContactStress"
	if err := p.valid(fn); err != nil {
		return 0, err
	}
	elastic := orElse(p.Elastic, 2290*2290*psi)
	if err := check.All(fn, check.Within("Geometry", p.Geometry, 0.02, 0.3), check.Within("Crowning", p.Crowning, 1.5, 2),
		check.Positive("PinionPitch", p.PinionPitch), check.Positive("Elastic", elastic)); err != nil {
		return 0, err
	}
	return math.Sqrt(elastic * p.Tangential * p.Overload * p.Dynamic * p.Distribution * p.Size * p.Crowning /
		(p.FaceWidth * p.PinionPitch * p.Geometry)), nil
}
