package gear

import (
	"math"

	"axlewright/calc/check"
)

// PitchCones is a pair of pitch cones that touch at the mean point and share
// their pitch plane there, axes at a right angle.
type PitchCones struct {
	PinionTeeth        int     // -, z1: number of teeth of the pinion
	WheelTeeth         int     // -, z2: number of teeth of the crown wheel
	Offset             float64 // m, a: hypoid offset, positive where the pinion's spiral angle is the greater; zero for spiral bevel
	OffsetAngle        float64 // rad, ζ: angle between the two cone generators in the pitch plane, sign of the offset
	PinionPitchAngle   float64 // rad, δ1: pitch cone angle of the pinion
	WheelPitchAngle    float64 // rad, δ2: pitch cone angle of the wheel
	PinionSpiral       float64 // rad, β1: mean spiral angle of the pinion
	WheelSpiral        float64 // rad, β2: mean spiral angle of the wheel
	PinionMeanRadius   float64 // m, r_m1: radius of the pinion at the mean point
	WheelMeanRadius    float64 // m, r_m2: radius of the wheel at the mean point
	PinionConeDistance float64 // m, R_m1: from the apex of the pinion's pitch cone to the mean point
	WheelConeDistance  float64 // m, R_m2: from the apex of the wheel's pitch cone to the mean point
	NormalModule       float64 // m, m_mn: normal module at the mean point
	PinionApexX        float64 // m, place of the apex of the pinion's pitch cone along x
	WheelApexY         float64 // m, place of the apex of the wheel's pitch cone along y
}

// ConeCondition says what fixes the pitch angle of a hypoid wheel, which tooth
// numbers, offset and spiral angle leave free.
type ConeCondition string

const (
	GivenWheelPitchAngle ConeCondition = "given wheel pitch angle" // δ2 is read from a drawing or measured
	MatchedCutter        ConeCondition = "matched cutter"          // limit curvature equals the cutter radius, ISO 23509 method 1
	ApexAtCrossing       ConeCondition = "apex at crossing"        // apex of the wheel's pitch cone lies on the common perpendicular
)

// HypoidConesParams is what HypoidPitchCones needs.
type HypoidConesParams struct {
	PinionTeeth        int           // -, z1: number of teeth of the pinion
	WheelTeeth         int           // -, z2: number of teeth of the crown wheel
	Offset             float64       // m, a: hypoid offset, positive where it raises the pinion's spiral angle
	PinionSpiral       float64       // rad, β1: mean spiral angle of the pinion; optional, instead of the wheel's
	WheelSpiral        float64       // rad, β2: mean spiral angle of the wheel; optional, instead of the pinion's
	WheelMeanRadius    float64       // m, r_m2: radius of the wheel at the mean point; optional, instead of the next two
	WheelPitchDiameter float64       // m, d_e2: outer pitch diameter of the wheel; optional
	FaceWidth          float64       // m, b2: face width of the wheel, the mean point in its middle; optional
	Condition          ConeCondition // name, what fixes the wheel's pitch angle
	WheelPitchAngle    float64       // rad, δ2: for the given wheel pitch angle; optional
	CutterRadius       float64       // m, r_c0: for the matched cutter; optional
}

// BevelPitchCones returns the pitch cones of a straight or spiral bevel pair,
// whose apexes meet at the crossing point of the axes.
//
//	δ1 = atan(z1/z2)
//	δ2 = π/2 − δ1
//	r_m1 = r_m2·z1/z2
//
//	z1      number of teeth of the pinion, -
//	z2      number of teeth of the wheel, -
//	spiral  mean spiral angle of both members β, rad
//	radius  mean radius of the wheel r_m2, m
//
// Valid for axes at a right angle, z1 ≥ 3, z2 ≥ z1, 0 ≤ spiral < 60°, radius > 0.
// Errors: *check.RangeError outside that range.
// Source: ISO 23509:2016, method 0 (from memory).
func BevelPitchCones(z1, z2 int, spiral, radius float64) (PitchCones, error) {
	if err := check.All("gear.BevelPitchCones",
		teeth("z1", z1), wheelTeeth("z2", z1, z2),
		check.That("spiral", spiral, spiral >= 0 && spiral < maxSpiral, "0 to below 60°"),
		check.Positive("radius", radius),
	); err != nil {
		return PitchCones{}, err
	}
	delta1 := math.Atan2(float64(z1), float64(z2))
	return newCones(z1, z2, 0, 0, delta1, math.Pi/2-delta1, spiral, spiral, radius), nil
}

// HypoidPitchCones returns the pitch cones of a hypoid pair, two cones on
// crossed axes that touch along no line but share their pitch plane at the mean point.
//
//	cos ζ = tan δ1·tan δ2
//	a = (r_m1·cos δ2 + r_m2·cos δ1)·sin ζ
//	β1 − β2 = ζ
//	r_m1 = r_m2·(z1/z2)·cos β2/cos β1
//	given wheel pitch angle: δ2 as given
//	matched cutter: ρ_lim = r_c0, as LimitCurvature
//	apex at crossing: r_m1·sin δ2/cos δ1 = r_m2/tan δ2
//
// The last line says that the mean point lies as far along the wheel axis from
// the common perpendicular as it does from the apex of the wheel's pitch cone.
//
// Valid for axes at a right angle, an offset that leaves both spiral angles at 0 to 60°, and for a
// matched cutter a radius that some wheel pitch angle between 30° and 89° answers.
// With zero offset only the apex at the crossing has an answer, the spiral bevel pair.
// Errors: *check.RangeError outside that range.
// Source: ISO 23509:2016, method 1 and the relations of its annex A (from memory),
// iterated until they hold to rounding, so that the spiral angle is met exactly
// where the standard's single correction meets it nearly.
func HypoidPitchCones(p HypoidConesParams) (PitchCones, error) {
	if err := p.valid(); err != nil {
		return PitchCones{}, err
	}
	switch p.Condition {
	case ApexAtCrossing:
		return p.apexAtCrossing()
	case MatchedCutter:
		return p.matchedCutter()
	}
	return p.withWheelPitchAngle(p.WheelPitchAngle)
}

const (
	hypoidCones = "gear.HypoidPitchCones"
	maxSpiral   = 60 * math.Pi / 180
)

func (p HypoidConesParams) valid() error {
	byRadius := p.WheelMeanRadius != 0
	conditions := []check.Condition{
		teeth("PinionTeeth", p.PinionTeeth), wheelTeeth("WheelTeeth", p.PinionTeeth, p.WheelTeeth),
		check.That("Condition", 0, p.Condition == GivenWheelPitchAngle || p.Condition == MatchedCutter ||
			p.Condition == ApexAtCrossing, "a condition of ConeCondition"),
		check.That("PinionSpiral", p.PinionSpiral, p.PinionSpiral >= 0 && p.PinionSpiral < maxSpiral, "0 to below 60°"),
		check.That("WheelSpiral", p.WheelSpiral, p.WheelSpiral == 0 || p.PinionSpiral == 0 && p.WheelSpiral > 0 && p.WheelSpiral < maxSpiral,
			"0 to below 60°, and zero where the pinion's is given"),
		check.That("Offset", p.Offset, p.Offset != 0 || p.Condition == ApexAtCrossing,
			"not zero, or the apex at the crossing"),
	}
	if byRadius {
		conditions = append(conditions,
			check.Positive("WheelMeanRadius", p.WheelMeanRadius),
			check.That("WheelPitchDiameter", p.WheelPitchDiameter, p.WheelPitchDiameter == 0, "zero where the mean radius is given"))
	} else {
		conditions = append(conditions,
			check.Positive("WheelPitchDiameter", p.WheelPitchDiameter),
			check.That("FaceWidth", p.FaceWidth, p.FaceWidth > 0 && p.FaceWidth < p.WheelPitchDiameter/2,
				"0 < FaceWidth < WheelPitchDiameter/2"))
	}
	switch p.Condition {
	case GivenWheelPitchAngle:
		conditions = append(conditions, check.That("WheelPitchAngle", p.WheelPitchAngle,
			p.WheelPitchAngle >= minWheelAngle && p.WheelPitchAngle <= maxWheelAngle, "30° to 89°"))
	case MatchedCutter:
		conditions = append(conditions, check.Positive("CutterRadius", p.CutterRadius))
	}
	return check.All(hypoidCones, conditions...)
}

// meanRadius is r_m2 for a wheel pitch angle.
func (p HypoidConesParams) meanRadius(delta2 float64) float64 {
	if p.WheelMeanRadius != 0 {
		return p.WheelMeanRadius
	}
	return (p.WheelPitchDiameter - p.FaceWidth*math.Sin(delta2)) / 2
}

func teeth(name string, z int) check.Condition {
	return check.That(name, float64(z), z >= 3, ">= 3")
}

func wheelTeeth(name string, z1, z2 int) check.Condition {
	return check.That(name, float64(z2), z2 >= z1, ">= the pinion's teeth")
}

// newCones completes a pair of cones whose angles and radii agree.
func newCones(z1, z2 int, a, zeta, delta1, delta2, beta1, beta2, r2 float64) PitchCones {
	r1 := r2 * float64(z1) / float64(z2) * math.Cos(beta2) / math.Cos(beta1)
	cosEta := math.Sin(delta1) / math.Cos(delta2)
	return PitchCones{
		PinionTeeth: z1, WheelTeeth: z2, Offset: a, OffsetAngle: zeta,
		PinionPitchAngle: delta1, WheelPitchAngle: delta2,
		PinionSpiral: beta1, WheelSpiral: beta2,
		PinionMeanRadius: r1, WheelMeanRadius: r2,
		PinionConeDistance: r1 / math.Sin(delta1), WheelConeDistance: r2 / math.Sin(delta2),
		NormalModule: 2 * r2 * math.Cos(beta2) / float64(z2),
		PinionApexX:  r2*cosEta - r1/math.Tan(delta1),
		WheelApexY:   r1*math.Sin(delta2)/math.Cos(delta1) - r2/math.Tan(delta2),
	}
}
