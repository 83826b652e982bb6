package weldplan

import (
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

// skinStress is the limb's stress at the point of a run, by the forces at the ends
// of the bar it lies on. Where a bar ends right there, both bars count half.
func (m *model) skinStress(r *tied, share float64, u []float64) float64 {
	k := &m.skeleton
	limb := k.limb(r.limb)
	p := r.line.at(share)
	s := limb.project(p)
	offset := r3.Sub(p, limb.point(s))
	sum, count := 0.0, 0.0
	for i := 1; i < len(limb.stations); i++ {
		from, to := limb.stations[i-1], limb.stations[i]
		if s < from.s-1e-9 || s > to.s+1e-9 {
			continue
		}
		b := bar{
			a: from.node, b: to.node, x: limb.x, y: limb.y, z: limb.z, length: to.s - from.s,
			section: limb.section, modulus: limb.modulus, shear: limb.shear,
		}
		normal, aboutY, aboutZ := b.forces(k, u, (s-from.s)/b.length)
		sec := limb.section
		sum += normal/sec.area + aboutY*r3.Dot(offset, limb.z)/sec.iy - aboutZ*r3.Dot(offset, limb.y)/sec.iz
		count++
	}
	return sum / count
}

// forces are the normal force and the bending moments in a bar, a share of the way
// along it, from the movements of its ends.
func (b *bar) forces(k *skeleton, u []float64, share float64) (normal, aboutY, aboutZ float64) {
	var local [12]float64
	for end, node := range []int{b.a, b.b} {
		dof := k.dof(node)
		if dof < 0 {
			continue
		}
		for part := range 2 {
			v := r3.Vec{X: u[dof+3*part], Y: u[dof+3*part+1], Z: u[dof+3*part+2]}
			for i, axis := range []r3.Vec{b.x, b.y, b.z} {
				local[6*end+3*part+i] = r3.Dot(axis, v)
			}
		}
	}
	stiff := b.stiffness()
	force := func(i int) float64 { return dot(stiff[i][:], local[:]) }
	between := func(i int) float64 { return -force(i)*(1-share) + force(i+6)*share }
	return force(6), between(4), between(5)
}
