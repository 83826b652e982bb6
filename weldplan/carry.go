package weldplan

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// carried is what a load does in the finished casting by the skeleton: the force on
// each metre of every run, even over each half, and the casting's own stress beside it.
type carried struct {
	pull [halves]r3.Vec  // N/m, of the plate on the casting
	skin [halves]float64 // Pa, in the limb at the run, along the limb, tension positive
}

// carry solves the finished casting under a force at a grip.
func (m *model) carry(row []float64) ([]carried, error) {
	chol, err := m.stiff(func(int) float64 { return 1 })
	if err != nil {
		return nil, err
	}
	var moved mat.VecDense
	if err := chol.SolveVecTo(&moved, mat.NewVecDense(len(row), row)); err != nil {
		if _, ill := err.(mat.Condition); !ill {
			return nil, errLoose
		}
	}
	u := moved.RawVector().Data
	list := make([]carried, len(m.runs))
	for i := range m.runs {
		r := &m.runs[i]
		for h := range r.half {
			part := &r.half[h]
			along := r.line.along(gaussPoints[h])
			for t, d := range []r3.Vec{along, part.across, r3.Cross(along, part.across)} {
				list[i].pull[h] = r3.Add(list[i].pull[h], r3.Scale(part.full[t]*dot(part.tie[t], u)/part.length, d))
			}
			list[i].skin[h] = m.skinStress(r, gaussPoints[h], u)
		}
	}
	return list, nil
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

// skinStress is the limb's stress at the point of a run: stretch and bending of the
// bar it lies on, from the movements of the bar's ends.
func (m *model) skinStress(r *tied, share float64, u []float64) float64 {
	k := &m.skeleton
	limb := k.limb(r.limb)
	p := r.line.at(share)
	s := limb.project(p)
	offset := r3.Sub(p, limb.point(s))
	at := func(node int, first int) r3.Vec {
		dof := k.dof(node)
		if dof < 0 {
			return r3.Vec{}
		}
		return r3.Vec{X: u[dof+first], Y: u[dof+first+1], Z: u[dof+first+2]}
	}
	// The mean strain between the nodes either side of the point, wide enough to be
	// smooth where nodes lie close together.
	i := 1
	for i < len(limb.stations)-1 && limb.stations[i].s <= s {
		i++
	}
	a, b := i-1, i
	for limb.stations[b].s-limb.stations[a].s < math.Max(limb.section.depth, limb.section.width)/4 {
		switch {
		case b < len(limb.stations)-1 && (a == 0 || b-i <= i-1-a):
			b++
		case a > 0:
			a--
		default:
			b = len(limb.stations) - 1
		}
		if a == 0 && b == len(limb.stations)-1 {
			break
		}
	}
	from, to := limb.stations[a], limb.stations[b]
	l := to.s - from.s
	stretch := r3.Dot(r3.Sub(at(to.node, 0), at(from.node, 0)), limb.x) / l
	turn := r3.Scale(1/l, r3.Sub(at(to.node, 3), at(from.node, 3)))
	strain := stretch + r3.Dot(turn, limb.y)*r3.Dot(offset, limb.z) - r3.Dot(turn, limb.z)*r3.Dot(offset, limb.y)
	return limb.modulus * strain
}
