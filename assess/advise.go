package assess

import (
	"context"
	"fmt"
	"maps"
	"slices"

	"axlewright/axle"
)

// Options is how an assessment is run.
type Options struct {
	Draws    int    // default 2000
	Seed     uint64 // default 1
	Progress func(done, total int)

	Calibration *Calibration // what a bench has found out, nil for nothing
}

// The defaults.
const (
	DefaultDraws  = 2000
	DefaultWanted = 0.95
)

// Advise answers an enquiry: it draws every doubtful figure, works out every
// link of every build in every draw, and turns the draws into advice.
//
// The result depends on enquiry, catalogue, draws and seed alone.
// Errors: what is wrong with the enquiry or, with the draw that showed it, a
// figure whose doubt reaches outside the range of a formula.
func Advise(ctx context.Context, e *axle.Enquiry, c *axle.Catalogue, o Options) (Advice, error) {
	s, err := newStudy(e, c, o)
	if err != nil {
		return Advice{}, err
	}
	if err := s.run(ctx, o.Progress); err != nil {
		return Advice{}, err
	}
	return s.advice()
}

// Draws that are taken.
const (
	fewestDraws = 50
	mostDraws   = 20000
)

func newStudy(e *axle.Enquiry, c *axle.Catalogue, o Options) (*study, error) {
	if o.Draws == 0 {
		o.Draws = DefaultDraws
	}
	if o.Draws < fewestDraws || o.Draws > mostDraws {
		return nil, fmt.Errorf("%d draws; take %d to %d: fewer say nothing, more say no more and need memory. A printed sheet takes %d", o.Draws, fewestDraws, mostDraws, DefaultDraws)
	}
	if o.Seed == 0 {
		o.Seed = 1
	}
	s := &study{catalogue: c, enquiry: e, doubts: newModelDoubts(), figures: map[string]axle.Number{}}
	var err error
	if s.duty, err = c.Duty(e.Duty); err != nil {
		return nil, err
	}
	if s.builds, err = c.BuildsFor(e); err != nil {
		return nil, err
	}
	s.number()
	s.draws = newDraws(o.Draws, len(s.places), o.Seed)
	if o.Calibration != nil {
		if err := s.draws.condition(o.Calibration, func(place string) (int, bool) {
			column, known := s.figureAt[place]
			return column, known
		}); err != nil {
			return nil, err
		}
	}
	if err := s.look(); err != nil {
		return nil, err
	}
	all := make([]choices, len(s.builds))
	pinions, wheels := byKey(s.builds, pinionKey), byKey(s.builds, wheelKey)
	for b := range s.builds {
		all[b] = choicesOf(c, s.builds[b])
		all[b].set(pinionPath, pinions[b])
		all[b].set(wheelPath, wheels[b])
	}
	s.pinions, s.wheels = newVariants(all, pinionPath), newVariants(all, wheelPath)
	for _, b := range s.wheels.reps {
		s.wheelBuilds = append(s.wheelBuilds, &s.builds[b])
	}
	if s.plates, err = newWheelPlates(s.wheelBuilds); err != nil {
		return nil, err
	}
	s.peaks = make([]peak, o.Draws)
	s.giveOut = make([][][]outcome, len(links))
	for l := range links {
		v := newVariants(all, links[l].uses)
		s.kinds = append(s.kinds, v)
		s.giveOut[l] = make([][]outcome, len(v.reps))
		for i := range v.reps {
			s.giveOut[l][i] = make([]outcome, o.Draws)
		}
	}
	return s, nil
}

// number gives every doubtful figure of every build, the vehicle, the duty and
// the model a column of the draws. The standard vehicle shares the customer's
// columns: same ground, same driver.
func (s *study) number() {
	note := func(place string, n *axle.Number) {
		if n.Doubtful() {
			s.figures[place] = *n
		}
	}
	for i := range s.builds {
		axle.EachFigure(&s.builds[i], "", note)
	}
	if s.enquiry.Standard != nil {
		axle.EachFigure(s.enquiry.Standard, "Vehicle", note)
	}
	axle.EachFigure(&s.enquiry.Vehicle, "Vehicle", note)
	axle.EachFigure(&s.duty, "Duty", note)
	axle.EachFigure(&s.doubts, "Model", note)
	s.places = slices.Sorted(maps.Keys(s.figures))
	s.figureAt = make(map[string]int, len(s.places))
	for i, place := range s.places {
		s.figureAt[place] = i
	}
}
