package gear

import (
	"math"

	"axlewright/calc/check"
)

// PairMeasurements is what a shop can count and measure on a crown wheel and pinion.
type PairMeasurements struct {
	PinionTeeth          int     // -, z1: number of teeth of the pinion
	WheelTeeth           int     // -, z2: number of teeth of the crown wheel
	WheelOutsideDiameter float64 // m, d_ae2: diameter of the crown wheel over the tips
	FaceWidth            float64 // m, b2: length of the wheel's teeth
	Offset               float64 // m, a: distance of the two axes; positive where the pinion's spiral angle is the greater
	PinionSpiral         float64 // rad, β1: mean spiral angle of the pinion; optional, instead of the wheel's
	WheelSpiral          float64 // rad, β2: mean spiral angle of the wheel; optional, instead of the pinion's
	PressureAngle        float64 // rad, α_d: design pressure angle, the mean of both flanks
	LimitInfluence       float64 // -, f_αlim: share of the limit angle put into the flanks; optional, 1 (0.5 to 1)
	CutterRadius         float64 // m, r_c0: cutter radius; optional, the wheel's pitch apex is put at the crossing point without it
}

// Pair is the geometry of a crown wheel and pinion.
type Pair struct {
	Cones              PitchCones     // pitch cones
	Angles             PressureAngles // pressure angles of both flanks
	Depths             MeanDepths     // tooth heights at the mean point
	Drive              VirtualGears   // virtual cylindrical gears with the drive flank loaded
	Coast              VirtualGears   // virtual cylindrical gears with the coast flank loaded
	FaceWidth          float64        // m, b2: face width of the wheel
	WheelPitchDiameter float64        // m, d_e2: outer pitch diameter of the wheel
	WheelOuterDistance float64        // m, R_e2: outer cone distance of the wheel
	WheelOuterAddendum float64        // m, h_ae2: addendum of the wheel at the heel
	WheelFaceAngle     float64        // rad, δ_a2: tip cone angle of the wheel
	WheelRootAngle     float64        // rad, δ_f2: root cone angle of the wheel
	PinionFaceAngle    float64        // rad, δ_a1: tip cone angle of the pinion
	PinionRootAngle    float64        // rad, δ_f1: root cone angle of the pinion
}

// PairAsMeasured returns the whole geometry of a crown wheel and pinion from
// what can be counted and measured on the bench.
//
//	d_ae2 = d_e2 + 2·h_ae2·cos δ2
//	h_ae2 = h_am2 + ½·b2·tan θ_a2, θ_a2 = atan(h_fm1/R_m2), θ_f2 = atan(h_fm2/R_m2)
//	r_m2 = (d_e2 − b2·sin δ2)/2
//	δ_a1 = asin(cos δ_f2·cos η_R), sin η_R = a·sin δ_f2/(R_m2·cos θ_f2 + t·cos δ_f2)
//	δ_f1 = asin(cos δ_a2·cos η_o), sin η_o = a·sin δ_a2/(R_m2·cos θ_a2 + t·cos δ_a2)
//
// Here t is the distance of the wheel's pitch apex from the common perpendicular,
// towards the wheel. d_e2 is found by repeating the steps until they agree; the cones are those of
// HypoidPitchCones, by the cutter radius where it is known and else with the
// wheel's apex at the crossing point; the tooth heights are those of
// MeanToothDepths, the taper the standard one.
//
// Valid for axes at a right angle, 6 and more pinion teeth, z2 ≥ z1, a face width up
// to 0.35 of the wheel's outer cone distance and an offset up to a quarter of its outer
// pitch diameter; heavy axles keep below an eighth.
// Errors: *check.RangeError outside that range: such teeth cannot mesh, or not for long.
// Source: ISO 23509:2016 (from memory); limits of offset and face from its annex on design.
func PairAsMeasured(p PairMeasurements) (Pair, error) {
	const fn = "gear.PairAsMeasured"
	if err := check.All(fn,
		check.That("PinionTeeth", float64(p.PinionTeeth), p.PinionTeeth >= 6, ">= 6"),
		wheelTeeth("WheelTeeth", p.PinionTeeth, p.WheelTeeth),
		check.Positive("WheelOutsideDiameter", p.WheelOutsideDiameter),
		check.That("FaceWidth", p.FaceWidth, p.FaceWidth > 0 && p.FaceWidth < p.WheelOutsideDiameter/4, "0 < b < a quarter of the diameter"),
		check.That("Offset", p.Offset, math.Abs(p.Offset) <= p.WheelOutsideDiameter/4, "up to a quarter of the wheel's diameter"),
	); err != nil {
		return Pair{}, err
	}
	de2 := p.WheelOutsideDiameter
	var r Pair
	for range 50 {
		var err error
		if r, err = p.pair(de2); err != nil {
			return Pair{}, err
		}
		next := p.WheelOutsideDiameter - 2*r.WheelOuterAddendum*math.Cos(r.Cones.WheelPitchAngle)
		if math.Abs(next-de2) <= 1e-14*de2 {
			break
		}
		de2 = next // shrinks the misfit to a twentieth each time
	}
	limit, err := LimitPressureAngle(r.Cones)
	if err != nil {
		return Pair{}, err
	}
	if r.Angles, err = FlankPressureAngles(PressureAnglesParams{DesignDrive: p.PressureAngle, DesignCoast: p.PressureAngle,
		Limit: limit, Influence: orElse(p.LimitInfluence, 1)}); err != nil {
		return Pair{}, err
	}
	virtual := VirtualParams{Cones: r.Cones, PinionAddend: r.Depths.PinionAddendum, WheelAddend: r.Depths.WheelAddendum,
		FaceWidth: p.FaceWidth, PressureAngle: r.Angles.EffectiveDrive, Edition: ISO10300of2014}
	if r.Drive, err = VirtualCylindricalGears(virtual); err != nil {
		return Pair{}, err
	}
	virtual.PressureAngle = r.Angles.EffectiveCoast
	if r.Coast, err = VirtualCylindricalGears(virtual); err != nil {
		return Pair{}, err
	}
	return r, check.All(fn,
		faceWidth("FaceWidth", p.FaceWidth, r.WheelOuterDistance),
		check.That("Offset", p.Offset, math.Abs(p.Offset) <= r.WheelPitchDiameter/4, "up to a quarter of the outer pitch diameter"))
}

// pair is the geometry for an outer pitch diameter of the wheel.
func (p PairMeasurements) pair(de2 float64) (Pair, error) {
	cones := HypoidConesParams{PinionTeeth: p.PinionTeeth, WheelTeeth: p.WheelTeeth, Offset: p.Offset,
		PinionSpiral: p.PinionSpiral, WheelSpiral: p.WheelSpiral,
		WheelPitchDiameter: de2, FaceWidth: p.FaceWidth, Condition: ApexAtCrossing}
	if p.CutterRadius != 0 && p.Offset != 0 {
		cones.Condition, cones.CutterRadius = MatchedCutter, p.CutterRadius
	}
	r := Pair{FaceWidth: p.FaceWidth, WheelPitchDiameter: de2}
	var err error
	if r.Cones, err = HypoidPitchCones(cones); err != nil {
		return Pair{}, err
	}
	if r.Depths, err = MeanToothDepths(DepthsParams{Cones: r.Cones}); err != nil {
		return Pair{}, err
	}
	delta2, distance := r.Cones.WheelPitchAngle, r.Cones.WheelConeDistance
	tip, foot := math.Atan(r.Depths.PinionDedendum/distance), math.Atan(r.Depths.WheelDedendum/distance)
	r.WheelOuterDistance = de2 / (2 * math.Sin(delta2))
	r.WheelOuterAddendum = r.Depths.WheelAddendum + p.FaceWidth/2*math.Tan(tip)
	r.WheelFaceAngle, r.WheelRootAngle = delta2+tip, delta2-foot
	mate := func(angle, along float64) float64 { // the pinion's cone that runs parallel to a cone of the wheel
		eta := math.Asin(p.Offset * math.Sin(angle) / (along + r.Cones.WheelApexY*math.Cos(angle)))
		return math.Asin(math.Cos(angle) * math.Cos(eta))
	}
	r.PinionFaceAngle = mate(r.WheelRootAngle, distance*math.Cos(foot))
	r.PinionRootAngle = mate(r.WheelFaceAngle, distance*math.Cos(tip))
	return r, nil
}
