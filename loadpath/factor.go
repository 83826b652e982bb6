package loadpath

import "math"

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
