package assess

import (
	"context"
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"axlewright/axle"
	"axlewright/calc/gear"
)

// A study is everything that is the same for all draws.
type study struct {
	catalogue *axle.Catalogue
	enquiry   *axle.Enquiry
	duty      axle.Duty
	builds    []axle.Assembly
	doubts    modelDoubts

	governing float64 // N·m, what the vehicle as stated can steadily put through the axle
	highest   float64 // N·m, highest torque looked at

	figureAt map[string]int // place of a doubtful figure to its column of the draws
	places   []string
	figures  map[string]axle.Number
	draws    draws

	pinions     variants         // by the pinion's load path
	wheels      variants         // by the wheel's
	kinds       []variants       // by link
	wheelBuilds []*axle.Assembly // by kind of wheel: a build that stands for it
	plates      []wheelPlates    // by kind of wheel

	peaks   []peak          // by draw
	giveOut [][][]outcome   // by link, variant, draw
	columns [][]*linkColumn // the same on the peak scale, once all draws are made
}

// An outcome is one link's give-out torque in one draw, by flank, in N·m. A
// link that wears has one for the whole duty, and in the second place its life
// in metres under the duty as it is.
type outcome [2]float64

// A worker has its own copies of all that is drawn.
type worker struct {
	s         *study
	builds    map[int]*axle.Sampler[axle.Assembly] // the builds that stand for a variant
	vehicle   *axle.Sampler[axle.Vehicle]
	standard  *axle.Sampler[axle.Vehicle]
	duty      *axle.Sampler[axle.Duty]
	doubts    *axle.Sampler[modelDoubts]
	solver    *pathSolver
	memo      memo
	governing float64 // N·m, of this draw
}

func (s *study) newWorker() *worker {
	column := func(place string) int { return s.figureAt[place] }
	w := &worker{
		s:       s,
		memo:    newMemo(),
		builds:  map[int]*axle.Sampler[axle.Assembly]{},
		vehicle: axle.NewSampler(s.enquiry.Vehicle, "Vehicle", column),
		duty:    axle.NewSampler(s.duty, "Duty", column),
		doubts:  axle.NewSampler(s.doubts, "Model", column),
	}
	if s.enquiry.Standard != nil {
		w.standard = axle.NewSampler(*s.enquiry.Standard, "Vehicle", column)
	}
	for _, v := range append(s.kinds, s.pinions, s.wheels) {
		for _, b := range v.reps {
			if w.builds[b] == nil {
				w.builds[b] = axle.NewSampler(s.builds[b], "", column)
			}
		}
	}
	w.solver = newPathSolver(s.wheelBuilds, s.plates, s.highest)
	return w
}

// run makes all draws on all cores. Every draw writes only its own places, so
// the result does not depend on how many cores there are.
func (s *study) run(ctx context.Context, progress func(done, total int)) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	var next, done atomic.Int64
	var group sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), max(1, s.draws.n/8)) {
		w := s.newWorker()
		group.Go(func() {
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= s.draws.n {
					return
				}
				if err := w.draw(i); err != nil {
					cancel(fmt.Errorf("draw %d: %w", i+1, err))
					return
				}
				if n := done.Add(1); progress != nil {
					progress(int(n), s.draws.n)
				}
			}
		})
	}
	group.Wait()
	if ctx.Err() != nil {
		return context.Cause(ctx)
	}
	return nil
}

// draw works out one draw: demand, load paths, links.
func (w *worker) draw(i int) error {
	p, z := w.s.draws.row(i)
	w.memo.forget()
	w.vehicle.Draw(p, z)
	w.duty.Draw(p, z)
	w.doubts.Draw(p, z)
	if w.standard != nil {
		w.standard.Draw(p, z)
	}
	for _, b := range w.builds {
		b.Draw(p, z)
	}
	var err error
	if w.s.peaks[i], err = w.peak(); err != nil {
		return err
	}
	w.governing = w.s.peaks[i].governing
	pinions, wheels := w.drawn(w.s.pinions), w.drawn(w.s.wheels)
	if err := w.solver.solve(pinions, wheels, &w.memo); err != nil {
		return fmt.Errorf("load path: %w", err)
	}
	for l := range links {
		for v, b := range w.s.kinds[l].reps {
			u := w.unit(b)
			wheel := w.s.wheels.of[b]
			u.paths, u.plate = paths{w.solver.pinions[w.s.pinions.of[b]], w.solver.wheels[wheel]}, w.s.plates[wheel].peg
			if w.s.giveOut[l][v][i], err = u.giveOut(&links[l], w.s.highest); err != nil {
				return fmt.Errorf("%s of build %q: %w", links[l].name, buildName(*u.axle), err)
			}
		}
	}
	return nil
}

// drawn returns the drawn builds that stand for some variants.
func (w *worker) drawn(v variants) []*axle.Assembly {
	list := make([]*axle.Assembly, len(v.reps))
	for i, b := range v.reps {
		list[i] = &w.builds[b].Drawn
	}
	return list
}

func (w *worker) unit(build int) *unit {
	return &unit{
		axle: &w.builds[build].Drawn, vehicle: &w.vehicle.Drawn, duty: &w.duty.Drawn,
		mounting: w.s.enquiry.Mounting, doubts: &w.doubts.Drawn, memo: &w.memo,
		governing: w.governing,
	}
}

// giveOut finds the torque at which a link gives out on each flank.
func (u *unit) giveOut(l *link, highest float64) (outcome, error) {
	reach, err := l.prepare(u, nil)
	if err != nil {
		return outcome{}, err
	}
	if reach == nil {
		return outcome{Beyond, Beyond}, nil
	}
	if l.kind == Wears {
		used, stands := reach(u.mounting.Forward, u.governing, nil)
		life := Beyond
		if used > 0 {
			life = u.duty.Life.Value * metresAKilometre * stands / used
		}
		return outcome{u.giveOutOn(reach, u.mounting.Forward, highest), life}, nil
	}
	return outcome{u.giveOutOn(reach, gear.Drive, highest), u.giveOutOn(reach, gear.Coast, highest)}, nil
}

func (u *unit) giveOutOn(reach limit, flank axle.Flank, highest float64) float64 {
	const tolerance = 1e-4 // of the highest torque, far below any doubt
	return giveOut(highest, tolerance*highest, func(torque float64) float64 {
		demand, capacity := reach(flank, torque, nil)
		return demand - capacity
	})
}

// onPeakScale puts an outcome on the scale of the peak torque. A flank that
// only sees a part of the peak may give out that much earlier; a link that
// wears does so under the steady torque that goes with a peak.
func (o outcome) onPeakScale(k Kind, p peak) (torque float64, flank int) {
	if k == Wears {
		return o[0] * p.shock, -1
	}
	drive, coast := Beyond, Beyond
	if p.share[0] > 0 {
		drive = o[0] / p.share[0]
	}
	if p.share[1] > 0 {
		coast = o[1] / p.share[1]
	}
	if coast < drive {
		return coast, 1
	}
	return drive, 0
}

// buildName is "stock" or the upgrades joined.
func buildName(a axle.Assembly) string {
	if len(a.Upgrades) == 0 {
		return "stock"
	}
	name := a.Upgrades[0]
	for _, u := range a.Upgrades[1:] {
		name += " + " + u
	}
	return name
}
