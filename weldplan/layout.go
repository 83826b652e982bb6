package weldplan

import "gonum.org/v1/gonum/spatial/r3"

// A laidOut is a run of the job with what the plan has settled for it.
type laidOut struct {
	plate, run int // numbers in the job
	line       line
	bead       bead
}

// newModel makes the model of a job: its limbs, its plates tacked on, and its
// runs in the order of the drawing.
func newModel(j *Job, runs []laidOut, tacked float64) (*model, error) {
	m := &model{tacked: tacked}
	casting, known := j.Casting.Metal.figures()
	modulus, poisson := casting.Modulus, casting.Poisson
	if !known { // nothing is welded then; only the shape of the answer is shown
		modulus, poisson = 170e9, 0.27
	}
	k := &m.skeleton
	for i := range j.Casting.Limbs {
		k.limbs = append(k.limbs, newLimb(&j.Casting.Limbs[i], modulus, poisson))
	}
	k.join()
	for _, b := range j.Casting.Bores {
		k.limb(b.On).mark(b.At.At)
	}
	if p := j.Casting.Peg; p != nil {
		k.limb(p.On).mark(p.At.At)
	}
	lines := make([][]line, len(j.Plates))
	for _, r := range runs {
		lines[r.plate] = append(lines[r.plate], r.line)
		data := &j.Plates[r.plate].Runs[r.run]
		limb := k.limb(data.On)
		for h := range halves {
			from, to := float64(h)/halves, float64(h+1)/halves
			a, b := r.line.at(from), r.line.at(to)
			limb.mark(a)
			limb.mark(b)
			s1, s2 := limb.warm(a, b, data.Wall.Value)
			limb.markAt(s1)
			limb.markAt(s2)
			limb.mark(r.line.at(gaussPoints[h]))
		}
	}
	for i := range j.Plates {
		steel := steelFigures(j.Plates[i].Steel)
		k.plates = append(k.plates, newPlate(&j.Plates[i], lines[i], steel.Modulus, steel.Poisson))
	}
	held := j.Casting.Limbs[0].From.At
	if j.Casting.Held.Given {
		held = j.Casting.Held.At
	}
	if err := k.build(held); err != nil {
		return nil, err
	}
	for _, r := range runs {
		data := &j.Plates[r.plate].Runs[r.run]
		limb := k.limb(data.On)
		b := r.bead
		b.modulus = limb.modulus
		b.bound = yieldOf(casting) / limb.reaction(r3.Sub(r.line.at(0.5), r3.Scale(data.Wall.Value/2, data.Side.Vec())))
		s, err := shrinkageOf(b)
		if err != nil {
			return nil, err
		}
		t := tied{line: r.line, plate: r.plate, limb: data.On, shrink: s}
		m.tie(&t, data.Side.Vec(), data.Joint, beadSide(data), data.Wall.Value)
		m.runs = append(m.runs, t)
	}
	m.watch(&j.Casting)
	return m, nil
}

// reaction is the stress in the limb at a point for each newton that pulls there
// along it.
func (b *limbBody) reaction(p r3.Vec) float64 {
	offset := r3.Sub(p, b.point(b.project(p)))
	y, z := r3.Dot(offset, b.y), r3.Dot(offset, b.z)
	return 1/b.section.area + y*y/b.section.iz + z*z/b.section.iy
}

func beadSide(r *Run) r3.Vec { return r.Bead.Vec() }
