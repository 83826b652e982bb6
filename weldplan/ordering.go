package weldplan

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// order works out tacks, sequence, pauses and stresses.
func (w *work) order(p *Plan, o Options) error {
	j := w.job
	m, err := newModel(j, w.laid, tackShare)
	if err != nil {
		return err
	}
	names, pieces := make([]string, len(p.Runs)), make([]int, len(p.Runs))
	for i := range p.Runs {
		names[i], pieces[i] = p.Runs[i].Run, p.Runs[i].Size.Pieces
	}
	p.Tacks = tacksOf(m, names)
	if p.Sequence, err = sequenceOf(j, m, w.laid, pieces, o); err != nil {
		return err
	}
	w.pauses(p, m)
	w.pace(p)
	return w.stresses(p, m)
}

// pauses adds how long to wait before each run. In the hot practice the casting
// goes back into the oven instead.
func (w *work) pauses(p *Plan, m *model) {
	if w.method.Practice == Hot {
		p.Notes = append(p.Notes, "Hot: no waiting between runs; back into the oven whenever the casting falls below "+celsius(w.method.LeastStart)+".")
		return
	}
	j := w.job
	mass, near := j.Casting.Mass.Value, map[string]bool{}
	for _, h := range j.HeatSinks {
		mass += h.Mass.Value
		for _, run := range h.Near {
			near[run] = true
		}
	}
	byName := map[string]int{}
	warm := make([]warmRun, len(p.Runs))
	least := p.Runs[0].Between
	for i := range p.Runs {
		r := &p.Runs[i]
		byName[r.Run] = i
		l := w.laid[i].line
		metre := r.Arc.Heat.First * float64(r.Size.Passes)
		warm[i] = warmRun{
			middle: l.at(0.5), length: l.length, heat: metre * l.length, metre: metre,
			wall: w.laid[i].bead.wall + w.laid[i].bead.plate, seconds: r.Uses.Hands, sink: near[r.Run],
		}
		least = min(least, r.Between)
	}
	order := make([]Step, len(p.Sequence.Steps))
	for i, s := range p.Sequence.Steps {
		order[i] = Step{byName[s.Run], s.Reversed}
	}
	for i, pause := range pausesOf(warm, order, mass, j.Casting.Skin.Value, j.Shop.Air.Value, max(w.method.LeastStart, w.preheated(p)), least) {
		p.Sequence.Steps[i].Pause = &pause
		p.Waiting += pause.Before
	}
}

// preheated is the temperature at which a preheated casting is kept.
func (w *work) preheated(p *Plan) float64 {
	warm := 0.0
	for i := range p.Runs {
		if s := p.Runs[i].Start; s > warmShop+1 {
			warm = max(warm, s)
		}
	}
	return warm
}

// pace adds what past logs say of the time a metre takes.
func (w *work) pace(p *Plan) {
	if len(p.Runs) == 0 {
		return
	}
	r := &p.Runs[0]
	l := LearnPace(w.entries, Question{w.job.Casting.Variant, r.Position, w.process, w.laid[0].bead.plate})
	p.Learned = &l
}

// stresses sets every load against welds and casting.
func (w *work) stresses(p *Plan, m *model) error {
	for i := range w.job.Loads {
		l := &w.job.Loads[i]
		var err error
		if plate := w.plateOf(l.On); plate >= 0 {
			err = w.onPlate(p, m, l, plate)
		} else {
			err = w.onCasting(p, m, l)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (w *work) plateOf(name string) int {
	for i := range w.job.Plates {
		if w.job.Plates[i].Name == name {
			return i
		}
	}
	return -1
}

// onPlate is a load that a plate passes to the casting through its own runs: the
// line method, which gives the peak at an end.
func (w *work) onPlate(p *Plan, m *model, l *Load, plate int) error {
	var lines []line
	for _, laid := range w.laid {
		if laid.plate == plate {
			lines = append(lines, laid.line)
		}
	}
	pull, err := newLineGroup(lines).pull(l.vec(), l.At.At)
	if err != nil {
		p.Stresses = append(p.Stresses, Stress{Load: l.Name, Model: "line method", Note: err.Error()})
		return nil
	}
	for i, laid := range w.laid {
		if laid.plate != plate {
			continue
		}
		data := &w.job.Plates[plate].Runs[laid.run]
		outwards := m.runs[i].half[0].across
		f := worstOn(laid.line, pull, data.Side.Vec(), outwards, laid.bead.throat)
		s := Stress{Load: l.Name, Run: data.Name, Model: "line method", Along: f.Along, Across: f.Across, Upright: f.Upright}
		// What the run hands to the wall, over the wall's thickness.
		toe := r3.Norm(r3.Vec{X: f.Across, Y: f.Upright, Z: f.Along}) / laid.bead.wall
		if err := w.judge(&s, l, f, toe, plate, laid.bead.wall); err != nil {
			return err
		}
		p.Stresses = append(p.Stresses, s)
	}
	return nil
}

// onCasting is a load on a seat or the peg, carried by the finished casting.
func (w *work) onCasting(p *Plan, m *model, l *Load) error {
	row := m.blank()
	limb, at := w.seat(l.On)
	m.skeleton.move(row, m.skeleton.grip(limb, at), l.vec())
	all, err := m.carry(row)
	if err != nil {
		return err
	}
	for i, laid := range w.laid {
		data := &w.job.Plates[laid.plate].Runs[laid.run]
		h := 0
		if r3.Norm(all[i].pull[1]) > r3.Norm(all[i].pull[0]) {
			h = 1
		}
		f := parts(all[i].pull[h], laid.line, gaussPoints[h], data.Side.Vec(), m.runs[i].half[h].across)
		f.Throat = laid.bead.throat
		toe := all[i].skin[0]
		if abs(all[i].skin[1]) > abs(toe) {
			toe = all[i].skin[1]
		}
		s := Stress{
			Load: l.Name, Run: data.Name, Model: "skeleton", Along: f.Along, Across: f.Across, Upright: f.Upright,
			Note: "weld force even over half a run; peaks at its ends are higher",
		}
		if err := w.judge(&s, l, f, toe, laid.plate, laid.bead.wall); err != nil {
			return err
		}
		p.Stresses = append(p.Stresses, s)
	}
	return nil
}

func (w *work) seat(on string) (limb string, at r3.Vec) {
	if on == "peg" {
		return w.job.Casting.Peg.On, w.job.Casting.Peg.At.At
	}
	for _, b := range w.job.Casting.Bores {
		if b.Name == on {
			return b.On, b.At.At
		}
	}
	return "", at // refused when the job was read
}
