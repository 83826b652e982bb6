package gear

import (
	"math"

	"axlewright/calc/check"
)

const (
	minWheelAngle = 30 * math.Pi / 180
	maxWheelAngle = 89 * math.Pi / 180
)

// zetaRange is the range of the offset angle that leaves the wheel a spiral
// angle from zero to 60°, on the side of the offset's sign.
func (p HypoidConesParams) zetaRange() (low, high float64) {
	if p.Offset < 0 {
		return p.PinionSpiral - maxSpiral, 0
	}
	return 0, p.PinionSpiral
}

// ratio is r_m1/r_m2 at an offset angle.
func (p HypoidConesParams) ratio(zeta float64) float64 {
	return float64(p.PinionTeeth) / float64(p.WheelTeeth) * math.Cos(p.PinionSpiral-zeta) / math.Cos(p.PinionSpiral)
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
		offset(low) <= p.Offset && p.Offset <= offset(high), "what leaves the wheel a spiral angle of 0 to 60°")); err != nil {
		return PitchCones{}, err
	}
	zeta := root(func(z float64) float64 { return offset(z) - p.Offset }, low, high)
	delta2 := wheelAngle(zeta)
	delta1 := math.Atan2(math.Cos(zeta), math.Tan(delta2))
	return newCones(p.PinionTeeth, p.WheelTeeth, p.Offset, zeta, delta1, delta2,
		p.PinionSpiral, p.PinionSpiral-zeta, p.meanRadius(delta2)), nil
}

// matchedCutter walks the wheel pitch angle down from the largest until the
// limit curvature passes the cutter radius, then closes in on it.
func (p HypoidConesParams) matchedCutter() (PitchCones, error) {
	misfit := func(delta2 float64) float64 {
		c, err := p.withWheelPitchAngle(delta2)
		if err != nil {
			return math.NaN()
		}
		rho, err := LimitCurvature(c)
		if err != nil {
			return math.NaN()
		}
		return 1/rho - 1/p.CutterRadius // curvatures, because ρ_lim may pass through infinity
	}
	const steps = 118
	step := (maxWheelAngle - minWheelAngle) / steps
	high := maxWheelAngle
	for i := 1; i <= steps; i++ {
		low := maxWheelAngle - float64(i)*step
		if f := misfit(low) * misfit(high); f <= 0 {
			if c, err := p.withWheelPitchAngle(root(misfit, low, high)); err == nil && math.Abs(misfit(c.WheelPitchAngle))*p.CutterRadius < 1e-9 {
				return c, nil
			}
		}
		high = low
	}
	return PitchCones{}, check.All(hypoidCones, check.That("CutterRadius", p.CutterRadius, false,
		"a radius that a wheel pitch angle of 30° to 89° answers"))
}

// root closes in on the sign change of f between low and high by halving, to
// the last bit. The caller has made sure that there is one.
func root(f func(float64) float64, low, high float64) float64 {
	fLow := f(low)
	if fLow == 0 {
		return low
	}
	for range 200 {
		mid := (low + high) / 2
		if mid == low || mid == high {
			break
		}
		if fm := f(mid); fm == 0 {
			return mid
		} else if (fm < 0) == (fLow < 0) {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
