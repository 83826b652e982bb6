package bearing

import (
	"math"

	"axlewright/calc/check"
)

// Rollers is the roller set of one row of a tapered roller bearing, as calipers
// find it.
type Rollers struct {
	Count         int     // -, Z: number of rollers
	Diameter      float64 // m, D_we: roller diameter at mid-length
	Length        float64 // m, L_we: effective length, without corner radii and undercuts
	PitchDiameter float64 // m, D_pw: diameter of the circle through the roller centres
	CupAngle      float64 // rad, α: half angle of the cup raceway
}

// Geometry is a tapered roller bearing as calipers find it.
type Geometry struct {
	Bore            float64 // m, d: bore of the cone
	OutsideDiameter float64 // m, D: outside diameter of the cup
	Width           float64 // m, T: width over cup and cone
	Rollers         Rollers // roller set
}

// ProportionsResult is what the measured sizes of a bearing say about its inside.
type ProportionsResult struct {
	Gamma      float64 // -, γ: D_we·cos α/D_pw
	Gap        float64 // m, s: clear gap between neighbouring rollers at mid-length
	HalfTaper  float64 // rad, φ: half of the angle between cup and cone raceway
	AxisAngle  float64 // rad, β: roller axis to bearing axis
	ConeAngle  float64 // rad, α_i: half angle of the cone raceway
	ConeWall   float64 // m, w_i: least metal between bore and cone raceway
	CupWall    float64 // m, w_e: least metal between cup raceway and outside
	LoadCentre float64 // m, a_0: roller centre to pressure centre, along the axis
}

// Proportions returns the inner proportions of a tapered roller bearing and
// refuses sizes that cannot be those of one bearing.
//
//	γ = D_we·cos α/D_pw
//	s = D_pw·sin(π/Z) − D_we
//	tan φ = (D_we/D_pw)·sin(α − φ),  β = α − φ,  α_i = α − 2φ
//	w_i = (D_pw − D_we·cos β − L_we·sin α_i − d)/2
//	w_e = (D − D_pw − D_we·cos β − L_we·sin α)/2
//
// Roller, cup and cone are cones with one common apex on the bearing axis.
// Valid for 3 rollers and more, 0 < α <= 45°, rollers that fit round the pitch
// circle and walls that leave metal on both rings: a slip of the calipers
// mostly shows here.
// Errors: *check.RangeError outside that range.
// Source: geometry of true rolling on cones, derived; symbols of ISO 281:2007.
func Proportions(g Geometry) (ProportionsResult, error) {
	const fn = "bearing.Proportions"
	if err := check.All(fn,
		check.Positive("Bore", g.Bore),
		check.That("OutsideDiameter", g.OutsideDiameter, g.OutsideDiameter > g.Bore, "> Bore"),
		check.Positive("Width", g.Width),
	); err != nil {
		return ProportionsResult{}, err
	}
	r := g.Rollers
	if err := r.check(fn); err != nil {
		return ProportionsResult{}, err
	}
	if err := check.All(fn,
		check.That("Diameter", r.Diameter, r.Diameter <= r.chord(), "<= PitchDiameter·sin(π/Count): rollers fit round the pitch circle"),
	); err != nil {
		return ProportionsResult{}, err
	}
	phi := r.halfTaper()
	p := ProportionsResult{
		Gamma:      r.gamma(),
		Gap:        r.chord() - r.Diameter,
		HalfTaper:  phi,
		AxisAngle:  r.CupAngle - phi,
		ConeAngle:  r.CupAngle - 2*phi,
		LoadCentre: r.PitchDiameter / 2 * math.Tan(r.CupAngle),
	}
	across := r.Diameter * math.Cos(p.AxisAngle)
	p.ConeWall = (r.PitchDiameter - across - r.Length*math.Sin(p.ConeAngle) - g.Bore) / 2
	p.CupWall = (g.OutsideDiameter - r.PitchDiameter - across - r.Length*math.Sin(r.CupAngle)) / 2
	if err := check.All(fn,
		check.That("Bore", g.Bore, p.ConeWall > 0, "smaller than the cone raceway at its small end"),
		check.That("OutsideDiameter", g.OutsideDiameter, p.CupWall > 0, "larger than the cup raceway at its large end"),
		check.That("Width", g.Width, r.Length*math.Cos(r.CupAngle) < g.Width, "> length of the rollers along the axis"),
	); err != nil {
		return ProportionsResult{}, err
	}
	return p, nil
}

// LoadCentre returns the distance from the centre of the rollers to the point
// on the axis where the roller forces meet.
//
//	a_0 = (D_pw/2)·tan α
//
//	pitchDiameter  diameter of the circle through the roller centres D_pw, m
//	cupAngle       half angle of the cup raceway α, rad
//	a_0            roller centre to pressure centre, m
//
// The pressure centre lies on the side of the large roller ends, the back of
// the cone. Lever arms of handbook reactions run to it, not to the rollers.
// Valid for 0 < α <= 45°.
// Errors: *check.RangeError outside that range.
// Source: normal of the cup raceway through the roller centre, derived.
func LoadCentre(pitchDiameter, cupAngle float64) (float64, error) {
	if err := check.All("bearing.LoadCentre",
		check.Positive("pitchDiameter", pitchDiameter),
		cupAngleCondition("cupAngle", cupAngle),
	); err != nil {
		return 0, err
	}
	return pitchDiameter / 2 * math.Tan(cupAngle), nil
}

// check refuses a roller set that no formula can take. Whether the rollers fit
// round the pitch circle is for Proportions to say.
func (r Rollers) check(fn string) error {
	if err := check.All(fn,
		check.That("Count", float64(r.Count), r.Count >= 3, ">= 3"),
		check.Positive("Diameter", r.Diameter),
		check.Positive("Length", r.Length),
		check.Positive("PitchDiameter", r.PitchDiameter),
		cupAngleCondition("CupAngle", r.CupAngle),
	); err != nil {
		return err
	}
	// the apex of all cones is at this distance from the roller centre
	apex := r.PitchDiameter / 2 / math.Sin(r.CupAngle-r.halfTaper())
	return check.All(fn, check.That("Length", r.Length, r.Length/2 < apex, "shorter than twice the distance to the apex of the cones"))
}

// gamma is D_we·cos α/D_pw of the standards.
func (r Rollers) gamma() float64 { return r.Diameter * math.Cos(r.CupAngle) / r.PitchDiameter }

// chord is the distance between neighbouring roller centres.
func (r Rollers) chord() float64 { return r.PitchDiameter * math.Sin(math.Pi/float64(r.Count)) }

// halfTaper solves tan φ = (D_we/D_pw)·sin(α − φ). The left side rises and the
// right side falls with φ, so Newton's steps converge from anywhere between 0
// and α; six are more than doubles can show.
func (r Rollers) halfTaper() float64 {
	k := r.Diameter / r.PitchDiameter
	phi := k * math.Sin(r.CupAngle) / (1 + k*math.Cos(r.CupAngle))
	for range 6 {
		c := math.Cos(phi)
		phi -= (math.Tan(phi) - k*math.Sin(r.CupAngle-phi)) / (1/(c*c) + k*math.Cos(r.CupAngle-phi))
	}
	return phi
}

// cupAngleCondition holds the range of cup angles of a radial bearing.
func cupAngleCondition(param string, alpha float64) check.Condition {
	return check.That(param, alpha, alpha > 0 && alpha <= math.Pi/4*(1+1e-12), "0 < α <= π/4")
}
