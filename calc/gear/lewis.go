package gear

import "axlewright/calc/check"

// LewisBeamParams is what the beam strength of a straight bevel tooth follows from.
type LewisBeamParams struct {
	Module       float64 // m, m: transverse module at the large end
	FaceWidth    float64 // m, b: face width
	Bending      float64 // Pa, σ_b: permissible bending stress
	Lewis        float64 // -, Y: Lewis form factor for the virtual number of teeth, of the form F = σ_b·m·b·Y
	ConeDistance float64 // m, R_e: outer cone distance; optional, leaves the taper of the tooth out where not given
}

// LewisBeamStrength returns the tangential force at the large end that a
// straight bevel tooth carries as a beam.
//
//	F_b = m·b·σ_b·Y·(1 − b/R_e)
//
//	F_b  tangential force at the large end, N
//
// Some books leave the last factor out; so does this where R_e is not given.
//
// Valid for straight bevel teeth, 0.1 ≤ Y ≤ 0.6, b ≤ 0.35·R_e. A first look only:
// no stress concentration, no sharing.
// Errors: *check.RangeError outside that range.
// Source: Jindal, Machine Design (2010), chapter 27.
func LewisBeamStrength(p LewisBeamParams) (float64, error) {
	if err := check.All("gear.LewisBeamStrength",
		check.Positive("Module", p.Module), check.Positive("FaceWidth", p.FaceWidth), check.Positive("Bending", p.Bending),
		check.Within("Lewis", p.Lewis, 0.1, 0.6), check.NotNegative("ConeDistance", p.ConeDistance),
	); err != nil {
		return 0, err
	}
	taper := 1.0
	if p.ConeDistance != 0 {
		if err := check.All("gear.LewisBeamStrength", faceWidth("FaceWidth", p.FaceWidth, p.ConeDistance)); err != nil {
			return 0, err
		}
		taper = 1 - p.FaceWidth/p.ConeDistance
	}
	return p.Module * p.FaceWidth * p.Bending * p.Lewis * taper, nil
}
