package loadpath

import (
	"math"

	"axlewright/calc/bearing"
)

// groundSpring holds the axle where play leaves it loose, N/m.
const groundSpring = 1e3

// equilibrium finds y where the energy of bearings, caps, shafts, seats and
// peg under the loads is least. The energy is convex, so there is one such
// place and every downhill search ends there.
type equilibrium struct {
	linear *structure
	rows   [maxSeats]*bearing.Row
	ground [maxSeats][perSeat]float64 // stiffness of the ground springs by movement
	inward [maxExtra]float64
	toward [maxExtra]float64 // N/m of the caps' give, into the casting and towards the cap
	arm    float64           // m, turns moments into forces for the measure of balance
	stop   stop

	heldRub bool    // the pad rubs with the force of a given load, not of its own
	rub     float64 // N, that load

	// the place last evaluated
	force   [maxUnknown]float64 // of the loads on y as on two supports
	strain  [maxNatural]float64 // of the shafts by loads and preload
	natural [maxNatural]float64 // own forces of the shafts
	grad    [maxUnknown]float64
	hessian [maxUnknown][maxUnknown]float64
	react   [maxSeats][perSeat]float64 // on the cups, ground spring included
	contact [maxSeats]bearing.Contact
	pegLoad float64
	shaft   [maxSeats / 2]float64 // N, size of the loads on either shaft
	scale   float64               // N, of all
}

// setLoads fixes the loads of the next search.
func (q *equilibrium) setLoads(load *[maxLoads]float64) {
	s := q.linear
	q.scale = 1
	q.shaft = [maxSeats / 2]float64{1, 1}
	for l := range s.nl {
		v := math.Abs(load[l])
		if l != footLoad {
			if l%5 > 2 {
				v /= q.arm
			}
			q.shaft[l/5] = max(q.shaft[l/5], v)
		}
		q.scale = max(q.scale, v)
	}
	for i := range s.nu {
		v := 0.0
		for l := range s.nl {
			v += s.direct[i][l] * load[l]
		}
		q.force[i] = v
	}
	for r := range s.nz {
		v := s.preload[r]
		for l := range s.nl {
			v += s.strain[r][l] * load[l]
		}
		q.strain[r] = v
	}
}

// evaluate fills gradient and second derivative at y.
func (q *equilibrium) evaluate(y *[maxUnknown]float64) {
	s := q.linear
	nu := s.nu
	// Through the shafts' own deformation, not through K·y: what a shaft moves as
	// a whole then cancels in the displacements and not in the forces, which stay
	// balanced however stiff the seats are.
	var zeta [maxNatural]float64
	for r := range s.nz {
		v := q.strain[r]
		for j, w := range s.way[r][:nu] {
			v += w * y[j]
		}
		zeta[r] = v
	}
	for i := range nu {
		q.grad[i] = -q.force[i]
		copy(q.hessian[i][:i+1], s.k[i][:i+1])
	}
	for r := range s.nz {
		n := 0.0
		for c, x := range s.inverse[r][:s.nz] {
			n += x * zeta[c]
		}
		q.natural[r] = n
		for j, w := range s.way[r][:nu] {
			q.grad[j] += w * n
		}
	}
	var u, f [perSeat]float64
	var k [perSeat * perSeat]float64
	for b := range s.nd / perSeat {
		first := perSeat * b
		copy(u[:], y[first:first+perSeat])
		q.contact[b] = q.rows[b].Reaction(&u, &f, &k)
		for i := range perSeat {
			f[i] += q.ground[b][i] * u[i]
			q.grad[first+i] += f[i]
			h := q.hessian[first+i][first : first+i+1]
			for j := range h {
				h[j] += k[perSeat*i+j]
			}
			h[i] += q.ground[b][i]
		}
		q.react[b] = f
	}
	for e := range s.ne {
		k := q.inward[e]
		if y[s.nd+e] > 0 {
			k = q.toward[e]
		}
		q.grad[s.nd+e] += k * y[s.nd+e]
		q.hessian[s.nd+e][s.nd+e] += k
	}
	q.pegLoad = 0
	if q.stop.present {
		q.press(y)
	}
}

// press adds the peg where the gap has closed.
func (q *equilibrium) press(y *[maxUnknown]float64) {
	p := &q.stop
	nu := q.linear.nu
	beyond, give := p.beyond(y, nu), p.give+p.slip
	if q.heldRub {
		beyond -= q.rub * p.slip
		give = p.give
	}
	rub := q.rub
	if beyond > 0 {
		q.pegLoad = beyond / give
		for i := range nu {
			q.grad[i] += q.pegLoad * p.along[i]
			x := p.along[i] / give
			for j := range i + 1 {
				q.hessian[i][j] += x * p.along[j]
			}
		}
	}
	if !q.heldRub {
		rub = q.pegLoad
	}
	if rub > 0 {
		for i := range nu {
			q.grad[i] -= rub * p.drag[i]
		}
	}
}

// residual is the greatest force left over on a shaft against the forces at
// work on that shaft.
func (q *equilibrium) residual() float64 {
	const perShaft = 2 * perSeat
	s := q.linear
	worst := 0.0
	for k := range s.nd / perShaft {
		most, scale := 0.0, q.shaft[k]
		first, last := k*perShaft, (k+1)*perShaft
		if last == s.nd { // the wheel is the last, with peg and caps
			last = s.nu
			scale = max(scale, q.pegLoad)
		}
		for i := first; i < last; i++ {
			v := math.Abs(q.grad[i])
			if i < s.nd && i%perSeat > 2 {
				v /= q.arm
			}
			if !(v <= most) { // keeps NaN
				most = v
			}
		}
		for b := first / perSeat; b < (k+1)*2; b++ {
			for i := range 3 {
				scale = max(scale, math.Abs(q.react[b][i]))
			}
		}
		if v := most / scale; !(v <= worst) {
			worst = v
		}
	}
	return worst
}
