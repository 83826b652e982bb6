package loadpath

import "math"

const (
	tolerance  = 1e-11 // of the load: where the search stops
	acceptable = 1e-9  // of the load: what still counts as balanced if it gets no better
	maxSteps   = 80
)

// solve walks from y to the balance. It returns the steps taken and the
// residual; the caller judges it.
func (q *equilibrium) solve(y *[maxUnknown]float64) (steps int, residual float64) {
	q.evaluate(y)
	residual = q.residual()
	best, bestResidual, stale := *y, residual, 0
	for steps = 0; steps < maxSteps && residual > tolerance; steps++ {
		var step [maxUnknown]float64
		if !q.newtonStep(&step) {
			break
		}
		q.search(y, &step)
		residual = q.residual()
		if residual < bestResidual {
			if residual > 0.5*bestResidual {
				stale++
			} else {
				stale = 0
			}
			best, bestResidual = *y, residual
		} else {
			stale++
		}
		if bestResidual < acceptable && stale > 2 { // as far as rounding lets it come
			break
		}
	}
	if bestResidual < residual || math.IsNaN(residual) {
		*y, residual = best, bestResidual
		q.evaluate(y)
	}
	return steps, residual
}

// search goes along the step to where it still leads downhill, or little up.
func (q *equilibrium) search(y, step *[maxUnknown]float64) {
	nu := q.linear.nu
	slope := 0.0
	for i := range nu {
		slope += q.grad[i] * step[i]
	}
	start := *y
	along := func(alpha float64) float64 {
		s := 0.0
		for i := range nu {
			y[i] = start[i] + alpha*step[i]
		}
		q.evaluate(y)
		for i := range nu {
			s += q.grad[i] * step[i]
		}
		return s
	}
	alpha := 1.0
	at := along(alpha)
	if !(slope < 0) || at <= -0.5*slope { // lands before the bottom or near it
		return
	}
	low, lowSlope, high, highSlope := 0.0, slope, alpha, at
	for range 30 {
		alpha = low - lowSlope*(high-low)/(highSlope-lowSlope)
		if width := high - low; !(alpha > low+0.1*width) { // also for an infinite slope
			alpha = low + 0.1*width
		} else if alpha > high-0.1*width {
			alpha = high - 0.1*width
		}
		at = along(alpha)
		if math.Abs(at) <= -0.5*slope {
			return
		}
		if at > 0 || math.IsNaN(at) {
			high, highSlope = alpha, at
		} else {
			low, lowSlope = alpha, at
		}
	}
}

// newtonStep solves hessian·step = −grad. The pad's friction, which no energy
// describes, adds a product of two vectors to the symmetric matrix.
func (q *equilibrium) newtonStep(step *[maxUnknown]float64) bool {
	nu := q.linear.nu
	h := &q.hessian
	// Cholesky in place, on a unit diagonal so that metres and radians mix well.
	var scale [maxUnknown]float64
	for i := range nu {
		if !(h[i][i] > 0) {
			return false
		}
		scale[i] = 1 / math.Sqrt(h[i][i])
	}
	var diagonal [maxUnknown]float64 // reciprocal
	for i := range nu {
		hi := &h[i]
		for j := range i {
			hj := &h[j]
			v := hi[j] * scale[i] * scale[j]
			for k := range j {
				v -= hi[k] * hj[k]
			}
			hi[j] = v * diagonal[j]
		}
		v := 1.0
		for k := range i {
			v -= hi[k] * hi[k]
		}
		if !(v > 1e-15) {
			// Rounding has eaten a pivot; a larger one only shortens the step.
			v = 1e-15
		}
		diagonal[i] = 1 / math.Sqrt(v)
	}
	for i := range nu {
		step[i] = -q.grad[i] * scale[i]
	}
	q.backward(step, &diagonal)
	for i := range nu {
		step[i] *= scale[i]
	}
	if p := &q.stop; q.pegLoad > 0 && !q.heldRub && p.drag != ([maxUnknown]float64{}) {
		var x [maxUnknown]float64
		for i := range nu {
			x[i] = -p.drag[i] / (p.give + p.slip) * scale[i]
		}
		q.backward(&x, &diagonal)
		num, den := 0.0, 1.0
		for i := range nu {
			x[i] *= scale[i]
			num += p.along[i] * step[i]
			den += p.along[i] * x[i]
		}
		if math.Abs(den) < 0.1 { // friction that jams the wheel; leave it to the search
			return true
		}
		for i := range nu {
			step[i] -= x[i] * num / den
		}
	}
	return true
}

// backward solves with the factor that newtonStep left in the lower triangle.
func (q *equilibrium) backward(x *[maxUnknown]float64, diagonal *[maxUnknown]float64) {
	nu := q.linear.nu
	h := &q.hessian
	for i := range nu {
		v := x[i]
		for k, l := range h[i][:i] {
			v -= l * x[k]
		}
		x[i] = v * diagonal[i]
	}
	for i := nu - 1; i >= 0; i-- {
		x[i] *= diagonal[i]
		for k, l := range h[i][:i] {
			x[k] -= l * x[i]
		}
	}
}
