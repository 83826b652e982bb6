package setup

import (
	"fmt"
	"math"
	"math/cmplx"

	"axlewright/axle"
	"axlewright/quantity"
)

// A Round is one set of dial readings on the back face of the crown wheel. The
// places are counted from a mark on the diff centre, evenly round, in the order
// in which they pass the dial.
type Round struct {
	Readings []Reading // m
	// Turned is by how many bolt holes the crown wheel sits further round on the
	// diff centre than when it was first marked, in the direction in which the
	// places are counted.
	Turned int
}

// RunOutByTurning asks for run-out of wheel and seat apart, from two rounds
// between which the crown wheel was turned on its bolt holes.
type RunOutByTurning struct {
	Spec          Spec
	Holes         int   // bolt holes round the crown wheel
	Allowed       []int // turns by which the holes meet, where not all do; none is any
	First, Second Round // Second is how the wheel sits now
}

// RunOutByFace asks for the same from the flange face of the bare diff centre
// and the back face of the wheel bolted to it, both from one mark.
type RunOutByFace struct {
	Spec           Spec
	Holes          int
	Allowed        []int
	Flange         []Reading // m, on the flange face of the diff centre
	FlangeRadius   float64   // m, where the dial stood
	BackFace       Round
	BackFaceRadius float64 // m
}

// A HoleRunOut is what one place of the wheel on its seat would give.
type HoleRunOut struct {
	Turned int     // holes on from where the wheel sits now
	Full   float64 // m, full reading, once a turn
}

// A RunOutResult is run-out taken apart.
type RunOutResult struct {
	Answer
	Total   float64 // m, swing of the dial as the wheel sits now, between the places too
	Wheel   Wave    // what goes with the wheel, place from the wheel's own first mark
	Seat    Wave    // what stays with the diff centre
	Twice   Wave    // twice a turn, which no turning cures; where six or more places were read
	Rest    float64 // m, standard deviation of what is left
	AtHoles []HoleRunOut
	Best    HoleRunOut
	Bent    bool // the part that comes twice a turn is too large to be cured by turning
}

// SeparateRunOut takes run-out apart by two rounds. What turns with the wheel is
// the wheel's, what stays is the seat's: two waves found by least squares.
func SeparateRunOut(in RunOutByTurning) (RunOutResult, error) {
	var s sheet
	var r RunOutResult
	s.spec(in.Spec)
	s.holes(in.Holes, in.Allowed)
	first := s.round("First", "run-out before turning the wheel", in.First)
	second := s.round("Second", "run-out after turning the wheel", in.Second)
	if in.Holes > 0 && (in.Second.Turned-in.First.Turned)%in.Holes == 0 {
		s.bad("Second.Turned", "%d after %d, expected the wheel turned by at least one of its %d holes between the rounds", in.Second.Turned, in.First.Turned, in.Holes)
	}
	if err := s.err(); err != nil {
		return RunOutResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	hole := 2 * math.Pi / float64(in.Holes)
	from, to := float64(in.First.Turned)*hole, float64(in.Second.Turned)*hole
	_, found, rest, ok := sets{first, second}.fit([][]column{
		{{humps: 1, set: -1}},
		{{humps: 1, set: 0, shift: from}, {humps: 1, set: 1, shift: to}},
	})
	if !ok {
		return RunOutResult{}, axle.Findings{{Field: "Readings", Problem: "the places stand too close together to tell wheel from seat, expected them spread round the turn"}}
	}
	seat, wheel := found[0], found[1]
	r.Seat, r.Wheel, r.Rest = waveOf(seat), waveOf(wheel), rest
	r.Total = total(second)
	r.computed("", "t_S", "seat, stays with the diff centre, high at "+place(r.Seat.High), r.Seat.FullReading(), quantity.Length, "least squares over both rounds")
	r.computed("", "t_W", "crown wheel, turns with it, high at "+place(r.Wheel.High)+" from its own mark", r.Wheel.FullReading(), quantity.Length, "least squares over both rounds")
	if apart := math.Abs(cmplx.Phase(cmplx.Rect(1, to-from))); apart < math.Pi/3 {
		r.note("The wheel was turned by %s only; half a turn tells wheel and seat apart best.", place(apart))
	}
	r.twice(second)
	r.advise(in.Spec, in.Holes, in.Allowed, seat, wheel*cmplx.Rect(1, to), hole)
	return r, nil
}

// RunOutFromFace takes run-out apart by the bare flange: its tilt, carried out to
// the radius of the back face, is the seat's, and the rest is the wheel's.
func RunOutFromFace(in RunOutByFace) (RunOutResult, error) {
	var s sheet
	var r RunOutResult
	s.spec(in.Spec)
	s.holes(in.Holes, in.Allowed)
	flange := s.round("Flange", "run-out of the flange face", Round{Readings: in.Flange})
	back := s.round("BackFace", "run-out of the back face", in.BackFace)
	const radius = "a radius such as 80 mm"
	s.number("FlangeRadius", in.FlangeRadius, quantity.Length, in.FlangeRadius >= 10*mm && in.FlangeRadius <= 0.5, radius)
	s.number("BackFaceRadius", in.BackFaceRadius, quantity.Length, in.BackFaceRadius >= 10*mm && in.BackFaceRadius <= 0.5, radius)
	if err := s.err(); err != nil {
		return RunOutResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	once := [][]column{{{humps: 1, set: -1}}}
	_, onFlange, rest1, ok1 := sets{flange}.fit(once)
	_, onBack, rest2, ok2 := sets{back}.fit(once)
	if !ok1 || !ok2 {
		return RunOutResult{}, axle.Findings{{Field: "Readings", Problem: "the places stand too close together, expected them spread round the turn"}}
	}
	outward := in.BackFaceRadius / in.FlangeRadius
	seat := onFlange[0] * complex(outward, 0)
	now := onBack[0] - seat
	hole := 2 * math.Pi / float64(in.Holes)
	wheel := now * cmplx.Rect(1, -float64(in.BackFace.Turned)*hole)
	r.Seat, r.Wheel, r.Rest = waveOf(seat), waveOf(wheel), math.Hypot(rest1, rest2)
	r.Total = total(back)
	r.check("run-out of the flange face", total(flange), in.Spec.Limit(SeatRunOut))
	r.computed("", "t_F", "flange face, once a turn", waveOf(onFlange[0]).FullReading(), quantity.Length, "least squares")
	r.line("×", "r_B/r_F", "carried out to the radius of the back face", outward, quantity.Number, axle.Measured, "")
	r.computed("=", "t_S", "seat, high at "+place(r.Seat.High), r.Seat.FullReading(), quantity.Length, "")
	r.computed("", "t_B", "back face, once a turn", waveOf(onBack[0]).FullReading(), quantity.Length, "least squares")
	r.computed("", "t_W", "crown wheel: back face less seat, each with its place, high at "+place(r.Wheel.High)+" from its own mark", r.Wheel.FullReading(), quantity.Length, "difference of two waves")
	r.twice(back)
	r.advise(in.Spec, in.Holes, in.Allowed, seat, now, hole)
	return r, nil
}

func (s *sheet) holes(holes int, allowed []int) {
	if holes < 3 || holes > 36 {
		s.bad("Holes", "%d, expected the bolt holes round the crown wheel such as 10", holes)
	}
	for i, a := range allowed {
		if a < 0 || a >= holes {
			s.bad(fmt.Sprintf("Allowed[%d]", i), "%d, expected a number of holes from 0 to %d", a, holes-1)
		}
	}
}

func (s *sheet) round(field, words string, round Round) []point {
	return s.places(field+".Readings", words, round.Readings, -5*mm, 5*mm, "a dial reading such as 0.05 mm", 4)
}

// total is what the dial swings.
func total(places []point) float64 {
	values := make([]float64, len(places))
	for i, p := range places {
		values[i] = p.value
	}
	least, most, _, _ := extremes(values)
	return most - least
}

// twice finds the part that comes twice a turn.
func (r *RunOutResult) twice(places []point) {
	if len(places) < 6 {
		r.note("With fewer than six places a bent wheel cannot be told from a tilted one; eight are better.")
		return
	}
	if _, found, _, ok := (sets{places}).fit([][]column{{{humps: 1, set: -1}}, {{humps: 2, set: -1}}}); ok {
		r.Twice = waveOf(found[1])
		r.Twice.High /= 2
		r.computed("", "t_2", "of it twice a turn, which no turning cures", r.Twice.FullReading(), quantity.Length, "least squares")
	}
}
