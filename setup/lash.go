package setup

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/quantity"
)

// Use says what the vehicle does, as far as setting-up minds.
type Use string

// The uses.
const (
	OrdinaryUse    Use = "ordinary"
	CompetitionUse Use = "competition"
)

// LashRound asks what readings of lash round the crown wheel say. Places are
// spaced evenly, beginning at the mark; one not read yet is left untaken.
type LashRound struct {
	Spec     Spec
	Readings []Reading // m
	Plunger  gear.DialSetting
	Mesh     Mesh
	Gears    Gears
	AsFound  Reading // m, mean lash of used gears before they were taken apart
	Use      Use     // left out is ordinary
}

// A LashResult is what the readings say. All lashes are along the circle at the
// dial.
type LashResult struct {
	Answer
	Points      []float64 // m, corrected, in the order of the places that were read
	Mean        float64   // m
	Least, Most float64   // m
	Variation   float64   // m, most less least
	Once        Wave      // the part that comes once a turn
	Twice       Wave      // twice a turn, where six or more places were read
	Rest        float64   // m, standard deviation of what is left
	MeanCircle  float64   // m, mean lash on the mean circle; zero without geometry
	Axial       float64   // m, run-out along the axis, full reading, that would explain the once-a-turn part
}

const mostPlaces = 24

// LashOfRound returns mean and variation of the lash and what the variation looks
// like. A plunger that stood square to the tooth reads too little; its readings
// are corrected.
func LashOfRound(in LashRound) (LashResult, error) {
	var s sheet
	var r LashResult
	s.spec(in.Spec)
	s.mesh(in.Mesh)
	places := s.places("Readings", "lash", in.Readings, 0, 3*mm, "a lash such as 0.15 mm", 3)
	choose(&s, "Plunger", "did the plunger stand along the circle or square to the tooth", in.Plunger, gear.DialTangential, gear.DialSquare)
	choose(&s, "Gears", "are the gears a new set or one that has run", in.Gears, NewGears, UsedGears)
	s.optional("AsFound", in.AsFound, quantity.Length, 0.01*mm, 3*mm, "a lash such as 0.15 mm")
	if in.Use != "" {
		choose(&s, "Use", "", in.Use, OrdinaryUse, CompetitionUse)
	}
	if err := s.err(); err != nil {
		return LashResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	share, err := in.share(&r.Answer)
	if err != nil {
		return LashResult{}, err
	}
	for i := range places {
		places[i].value /= share
		r.Points = append(r.Points, places[i].value)
		r.Mean += places[i].value / float64(len(places))
	}
	sens, err := in.Mesh.Sensitivity()
	if err != nil {
		return LashResult{}, err
	}
	r.analyse(places, in, sens)
	r.judge(in, len(places), sens)
	return r, nil
}

// places are the readings that were taken, where they were taken. Fewer than
// least are waited for.
func (s *sheet) places(field, words string, readings []Reading, low, high float64, expected string, least int) []point {
	if len(readings) > mostPlaces {
		s.bad(field, "%d places, expected %d at most", len(readings), mostPlaces)
		return nil
	}
	var taken []point
	for i, x := range readings {
		if x.Taken {
			s.optional(fmt.Sprintf("%s[%d]", field, i), x, quantity.Length, low, high, expected)
			taken = append(taken, point{2 * math.Pi * float64(i) / float64(len(readings)), x.SI})
		}
	}
	if len(taken) < least {
		s.waits(fmt.Sprintf("%s at %s at least, 4 to 8 are better", words, turns(float64(least), "place", "places")))
	}
	return taken
}

// share is what the dial shows of the lash along the circle.
func (in LashRound) share(a *Answer) (float64, error) {
	if in.Plunger == gear.DialTangential {
		return 1, nil
	}
	spiral, pressure, source := 35*math.Pi/180, 20*math.Pi/180, "for 35° of spiral and 20° of pressure angle, assumed"
	origin := axle.Assumed
	if in.Mesh.known() {
		spiral, pressure = in.Mesh.Cones.WheelSpiral, in.Mesh.Drive
		source, origin = "from the geometry of the pair", axle.Computed
	}
	share, err := gear.DialReading(gear.DialLashParams{Lash: 1, LashRadius: 1, DialRadius: 1, Setting: gear.DialSquare, SpiralAngle: spiral, PressureAngle: pressure})
	if err != nil {
		return 0, asFinding(err)
	}
	a.line("÷", "cos α·cos β", "a plunger square to the tooth shows only so much", share, quantity.Number, origin, source)
	a.note("The plunger stood square to the tooth and reads %s of the lash, which is put right here. Set it along the circle next time.", quantity.Percent(share))
	return share, nil
}

func (r *LashResult) analyse(places []point, in LashRound, sens Sensitivity) {
	at, top := 0, 0
	r.Least, r.Most, at, top = extremes(r.Points)
	r.Variation = r.Most - r.Least
	r.line("", "j_max", "most lash, at "+place(places[top].angle), r.Most, quantity.Length, axle.Measured, "")
	r.line("−", "j_min", "least lash, at "+place(places[at].angle), r.Least, quantity.Length, axle.Measured, "")
	r.computed("=", "v", "variation", r.Variation, quantity.Length, "")
	r.computed("", "j_m", "mean of "+turns(float64(len(places)), "place", "places"), r.Mean, quantity.Length, "")
	if in.Mesh.known() && in.Mesh.DialRadius != 0 {
		r.MeanCircle = r.Mean / in.Mesh.dialShare()
		r.computed("", "j_t", "the same on the mean circle", r.MeanCircle, quantity.Length, "radii of the pair")
	}
	waves := [][]column{{{humps: 1, set: -1}}}
	if len(places) >= 6 {
		waves = append(waves, []column{{humps: 2, set: -1}})
	}
	_, found, rest, ok := sets{places}.fit(waves)
	if !ok {
		return
	}
	r.Once, r.Rest = waveOf(found[0]), rest
	if len(found) > 1 {
		r.Twice = waveOf(found[1])
		r.Twice.High /= 2
	}
	r.Axial = r.Once.FullReading() / sens.Wheel.Likely
	r.computed("", "v_1", "of it once a turn, most at "+place(r.Once.High), r.Once.FullReading(), quantity.Length, "least squares")
	r.computed("", "t", "run-out along the axis that would do that", r.Axial, quantity.Length, sens.Source)
}

func (r *LashResult) judge(in LashRound, places int, sens Sensitivity) {
	limit := LashRange(in.Spec, in.Gears, in.AsFound, UsualNotch)
	varies := in.Spec.Limit(LashVariation)
	meanState := r.check("mean lash", r.Mean, limit)
	variation := r.check("variation of lash", r.Variation, varies)
	if meanState == Fine {
		r.only("least lash", r.Least, limit)
		r.only("most lash", r.Most, limit)
		if !limit.Holds(r.Least) || !limit.Holds(r.Most) {
			r.settle(Look, "Lash runs from %s to %s, not all of it within %s (%s).", length(r.Least), length(r.Most), limit.Range(), limit.From())
		}
	}
	if variation == Look {
		r.sayCause()
	} else if meanState == Look && !limit.Vague {
		change := limit.Target() - r.Mean
		way := "out, away from the pinion"
		if change < 0 {
			way = "in, towards the pinion"
		}
		r.say("Crown wheel %s by about %s; the adjusters' notches say how.", way, length(math.Abs(change)/sens.Wheel.Likely))
	}
	if places < 4 {
		r.note("Three places are the least that manuals ask for; 4 to 8 show what varies.")
	}
	r.finish()
	r.custom(in, limit)
	r.tellOthers(varies)
}

// sayCause says what a large variation looks like.
func (r *LashResult) sayCause() {
	switch {
	case len(r.Points) < 4:
		r.say("Read lash at 4 to 8 places to see how it varies.")
	case r.Once.FullReading() > 0.6*r.Variation:
		r.say("It comes once a turn, most at %s: run-out of crown wheel or seat. Measure run-out and index the wheel before touching the adjusters.", place(r.Once.High))
	case len(r.Points) >= 6 && r.Twice.FullReading() > 0.5*r.Variation:
		r.say("It comes twice a turn: the crown wheel is bent or pulled out of flat. Look at its seat, burrs and bolts.")
	default:
		r.say("It comes without order: look for a burr, dirt or damaged teeth, and read again with the same pinion tooth.")
	}
}

// custom adds what the trade does with used sets and for competition.
func (r *LashResult) custom(in LashRound, limit Limit) {
	if in.Gears == UsedGears {
		r.note("[T] A set that has run goes back to the lash it had; 0.20 to 0.38 mm (8 to 15 thou) may be quiet and right for it.")
		if !in.AsFound.Taken {
			r.note("Its lash before it was taken apart was not recorded, so it is judged as a new set.")
		}
		return
	}
	if in.Use == CompetitionUse && !limit.Vague {
		third := limit.High - (limit.High-limit.Low)/3
		r.note("[T] For competition the trade sets the upper third of the range, %s, for shock and heat.", shownRange(third, limit.High, quantity.Length))
	}
	r.note("[?] One heavy manual asks for a thousandth of the crown wheel's diameter at least, which is more than lighter axles print. The same axle's manual goes first.")
}
