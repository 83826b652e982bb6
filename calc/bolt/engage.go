package bolt

import (
	"math"

	"axlewright/calc/check"
)

// EngagementParams describes a bolt that must break before its tapped hole strips.
type EngagementParams struct {
	Form     Form    // name, form of thread
	Diameter float64 // m, d: nominal diameter
	Pitch    float64 // m, P: thread pitch
	Force    float64 // N, F: force to be held, R_m·A_s for the bolt to break first
	Shear    float64 // Pa, τ_B: shear strength of the tapped metal
	Keep     float64 // -, C: share kept after thread bending and widening, 1 to leave them out
}

// EngagementResult is the length of thread that a tapped hole needs.
type EngagementResult struct {
	Effective float64 // m, m_eff: length of full thread
	Total     float64 // m, m_ges: with 0.8·P for the incomplete end threads
	Diameters float64 // -, m_eff/d: length of full thread in diameters
}

// RequiredEngagement returns the length of thread at which a tapped hole just holds a force.
//
//	m_eff = F·P/{C·τ_B·π·d·[P/2 + (d − D_2)·tan β]}
//	m_ges = m_eff + 0.8·P
//
// Valid for basic sizes, a hole weaker than the bolt, and lengths up to about 1.5·d, beyond which load no longer spreads.
// Errors: *check.RangeError for values of zero or below, C outside 0 < C <= 1, or an unknown form.
// Source: VDI 2230-1:2015, 5.5.5 (from memory).
func RequiredEngagement(p EngagementParams) (EngagementResult, error) {
	if err := checkFormThread("bolt.RequiredEngagement", p.Form, p.Diameter, p.Pitch); err != nil {
		return EngagementResult{}, err
	}
	thread, err := ThreadGeometry(p.Form, p.Diameter, p.Pitch)
	if err != nil {
		return EngagementResult{}, err
	}
	if err := check.All("bolt.RequiredEngagement",
		check.Positive("Force", p.Force), check.Positive("Shear", p.Shear),
		check.That("Keep", p.Keep, p.Keep > 0 && p.Keep <= 1, "0 < C <= 1"),
	); err != nil {
		return EngagementResult{}, err
	}
	width := p.Pitch/2 + (p.Diameter-thread.PitchDiameter)*math.Tan(thread.FlankAngle)
	length := p.Force * p.Pitch / (p.Keep * p.Shear * math.Pi * p.Diameter * width)
	return EngagementResult{length, length + 0.8*p.Pitch, length / p.Diameter}, nil
}

// HandbookEngagementParams describes a bolt and a tapped hole by areas for one unit of length.
type HandbookEngagementParams struct {
	StressArea  float64 // m², A_t: tensile stress area
	BoltArea    float64 // m², A_s: shear area of the bolt's thread over Length
	HoleArea    float64 // m², A_n: shear area of the hole's thread over Length
	Length      float64 // m, engagement over which the two areas were taken
	BoltTensile float64 // Pa, tensile strength of the bolt
	HoleTensile float64 // Pa, tensile strength of the tapped metal
}

// HandbookEngagementResult is the length of thread for a bolt that breaks before anything strips.
type HandbookEngagementResult struct {
	Equal  float64 // m, L_e: length where both metals are equally strong
	Ratio  float64 // -, J: strength of the bolt's thread by that of the hole's
	Length float64 // m, Q: length needed, L_e or J·L_e
}

// HandbookEngagement returns the length of engagement at which the bolt breaks before either thread strips, shear strength half of tensile.
//
//	Q = J·L_e where J > 1, else L_e
//	L_e = 2·A_t/(A_s per unit length)
//	J = A_s·S_bolt/(A_n·S_hole)
//
// Valid for Unified and metric threads with areas at the limits of size.
// Errors: *check.RangeError for values of zero or below.
// Source: FED-STD-H28/2B, appendix B, as in Machinery's Handbook, 24th ed., Length of engagement of screw threads.
func HandbookEngagement(p HandbookEngagementParams) (HandbookEngagementResult, error) {
	if err := check.All("bolt.HandbookEngagement",
		check.Positive("StressArea", p.StressArea),
		check.Positive("BoltArea", p.BoltArea), check.Positive("HoleArea", p.HoleArea),
		check.Positive("Length", p.Length),
		check.Positive("BoltTensile", p.BoltTensile), check.Positive("HoleTensile", p.HoleTensile),
	); err != nil {
		return HandbookEngagementResult{}, err
	}
	equal := 2 * p.StressArea / (p.BoltArea / p.Length)
	ratio := p.BoltArea * p.BoltTensile / (p.HoleArea * p.HoleTensile)
	return HandbookEngagementResult{equal, ratio, equal * math.Max(1, ratio)}, nil
}
