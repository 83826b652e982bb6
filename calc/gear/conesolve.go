package gear

import (
	"math"

	"axlewright/calc/check"
)

const (
	minWheelAngle = 30 * math.Pi / 180
	maxWheelAngle = 89 * math.Pi / 180
)

// zetaRange is the range of the offset angle that leaves the other spiral angle
// between zero and 60°, on the side of the offset's sign.
func (p HypoidConesParams) zetaRange() (low, high float64) {
	low, high = p.PinionSpiral-maxSpiral, p.PinionSpiral
	if p.WheelSpiral != 0 {
		low, high = -p.WheelSpiral, maxSpiral-p.WheelSpiral
	}
	if p.Offset < 0 {
		return low, 0
	}
	return 0, high
}

// spirals are β1 and β2 at an offset angle.
func (p HypoidConesParams) spirals(zeta float64) (beta1, beta2 float64) {
	if p.WheelSpiral != 0 {
		return p.WheelSpiral + zeta, p.WheelSpiral
	}
	return p.PinionSpiral, p.PinionSpiral - zeta
}

// ratio is r_m1/r_m2 at an offset angle.
func (p HypoidConesParams) ratio(zeta float64) float64 {
	beta1, beta2 := p.spirals(zeta)
	return float64(p.PinionTeeth) / float64(p.WheelTeeth) * math.Cos(beta2) / math.Cos(beta1)
}

func (p HypoidConesParams) withWheelPitchAngle(delta2 float64) (PitchCones, error) {
	return p.solve(func(float64) float64 { return delta2 })
}

// apexAtCrossing puts δ1 from the pitch plane into the third condition. With
// T = tan δ2, c = cos ζ and k = r_m1/r_m2 that becomes a quadratic in q = T²:
//
//	k²·q² + (k²·c² − 1)·q − 1 = 0
func (p HypoidConesParams) apexAtCrossing() (PitchCones, error) {
	return p.solve(func(zeta float64) float64 {
		k2 := math.Pow(p.ratio(zeta), 2)
		m := 1 - k2*math.Pow(math.Cos(zeta), 2)
		q := (m + math.Sqrt(m*m+4*k2)) / (2 * k2)
		return math.Atan(math.Sqrt(q))
	})
}

// solve finds the offset angle that gives the offset, where the wheel pitch
// angle follows from the offset angle. The offset grows with it throughout.
func (p HypoidConesParams) solve(wheelAngle func(zeta float64) float64) (PitchCones, error) {
	offset := func(zeta float64) float64 {
		delta2 := wheelAngle(zeta)
		delta1 := math.Atan2(math.Cos(zeta), math.Tan(delta2))
		r2 := p.meanRadius(delta2)
		return (r2*p.ratio(zeta)*math.Cos(delta2) + r2*math.Cos(delta1)) * math.Sin(zeta)
	}
	low, high := p.zetaRange()
	if err := check.All(hypoidCones, check.That("Offset", p.Offset,
		offset(low) <= p.Offset && p.Offset <= offset(high), "what leaves both spiral angles at 0 to 60°")); err != nil {
		return PitchCones{}, err
	}
	zeta := root(func(z float64) float64 { return offset(z) - p.Offset }, low, high)
	delta2 := wheelAngle(zeta)
	delta1 := math.Atan2(math.Cos(zeta), math.Tan(delta2))
	beta1, beta2 := p.spirals(zeta)
	return newCones(p.PinionTeeth, p.WheelTeeth, p.Offset, zeta, delta1, delta2, beta1, beta2, p.meanRadius(delta2)), nil
}

// matchedCutter walks the wheel pitch angle down from the largest until the
// limit curvature passes the cutter radius, then closes in on it.
func (p HypoidConesParams) matchedCutter() (PitchCones, error) {
	misfit := func(delta2 float64) float64 {
		c, err := p.withWheelPitchAngle(delta2)
		if err != nil {
			return math.NaN()
		}
		return c.limitCurve() - 1/p.CutterRadius
	}
	const steps = 59
	step := (maxWheelAngle - minWheelAngle) / steps
	high, atHigh := maxWheelAngle, misfit(maxWheelAngle)
	for i := 1; i <= steps; i++ {
		low := maxWheelAngle - float64(i)*step
		atLow := misfit(low)
		if atLow*atHigh <= 0 { // false beside an angle that leaves no pair
			delta2 := root(misfit, low, high)
			if math.Abs(misfit(delta2))*p.CutterRadius < 1e-9 { // else the sign changes through a pole
				return p.withWheelPitchAngle(delta2)
			}
		}
		high, atHigh = low, atLow
	}
	return PitchCones{}, check.All(hypoidCones, check.That("CutterRadius", p.CutterRadius, false,
		"a radius that a wheel pitch angle of 30° to 89° answers"))
}
