package assess

import (
	"errors"
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/check"
	"axlewright/calc/contact"
	"axlewright/calc/fit"
	"axlewright/calc/gear"
	"axlewright/loadpath"
	"axlewright/quantity"
)

// GapAdvice is between which gaps a peg pleases road, wheel and pad.
type GapAdvice struct {
	Verdict loadpath.GapVerdict `json:"verdict"`
	Least   float64             `json:"least"` // m, cold, at the tight spot
	Aim     float64             `json:"aim"`
	Most    *float64            `json:"most"` // null where nothing draws a bound
	Text    []string            `json:"text"` // sentences for the fitter
}

// What the window is drawn with beside the catalogue. All assumed.
const (
	padLength   = 0.010 // m, of bronze at the end of the screw
	warming     = 60    // K, of the axle from cold to running
	oilFilm     = 30e-6 // m of air to be left in running
	roadSpeed   = 8     // m/s, from which a block of a duty counts as running on the road
	crawlSpeed  = 1     // m/s, at which the peaks come
	lasting     = 0.01  // of the driving time: slow work below that is over before the pad warms
	bronzeGrows = 18e-6 // 1/K
	steelGrows  = 12e-6 // 1/K
	ironGrows   = 11e-6 // 1/K
	padWarming  = 60    // K, of the pad's face above the axle before its oil film goes
)

// What carries a pad's heat away: cast tin bronze and case-hardening steel at
// 100 °C. Handbook values, from memory.
const (
	bronzeConducts = 50     // W/(m·K)
	steelConducts  = 42     // W/(m·K)
	steelDiffuses  = 1.1e-5 // m²/s
)

// PegGap works out the gap window of a build that has a peg, every figure at
// its stated value: nothing may touch in steady road running, hot and with the
// back face's run-out; the wheel must stay within its limit at the peaks; screw,
// pad, plate, weld and the iron beside it must carry what comes; and in slow work
// the pad must stand pressure, pressure times speed and heat for good.
func PegGap(e *axle.Enquiry, c *axle.Catalogue, build axle.Assembly) (GapAdvice, error) {
	if build.Peg == nil {
		return GapAdvice{}, fmt.Errorf("build %q has no peg", buildName(build))
	}
	s := &study{catalogue: c, enquiry: e, builds: []axle.Assembly{build}, doubts: newModelDoubts()}
	u, plates, err := s.nominalUnit(&build, 0)
	if err != nil {
		return GapAdvice{}, err
	}
	return pegGap(u, plates, s.highest)
}

// pegGap is PegGap for a unit that is solved.
func pegGap(u *unit, plates wheelPlates, highest float64) (GapAdvice, error) {
	one := []*axle.Assembly{u.axle}
	input, err := newPathSolver(one, []wheelPlates{plates}, highest).input(u.axle, u.axle, plates, nil)
	if err != nil {
		return GapAdvice{}, err
	}
	if input.Peg.Closing, err = pegClosing(u.axle.Peg); err != nil {
		return GapAdvice{}, err
	}
	elastic, err := loadpath.Prepare(input)
	if err != nil {
		return GapAdvice{}, err
	}
	params, err := gapParams(u, highest/highestTimes)
	if err != nil {
		return GapAdvice{}, err
	}
	window, err := elastic.GapWindow(params)
	if err != nil {
		return GapAdvice{}, err
	}
	return gapAdvice(&window, params.Demands, u.axle.Peg, u.mounting.Forward), nil
}

// pegClosing is how much the gap closes from cold to running heat.
func pegClosing(p *axle.Peg) (float64, error) {
	pad, err := fit.ThermalClosing(fit.ThermalGapParams{
		PartLength: padLength, PartExpansion: bronzeGrows, PartWarming: warming,
		BodyLength: padLength, BodyExpansion: ironGrows, BodyWarming: warming,
	})
	if err != nil {
		return 0, err
	}
	screw, err := fit.ThermalClosing(fit.ThermalGapParams{
		PartLength: p.ScrewLength.Value, PartExpansion: steelGrows, PartWarming: warming,
		BodyLength: p.ScrewLength.Value, BodyExpansion: ironGrows, BodyWarming: warming,
	})
	return pad + screw, err
}

// gapParams says what the gap has to please: the road blocks of the duty, and
// the peak on either flank.
func gapParams(u *unit, peak float64) (loadpath.GapParams, error) {
	p := loadpath.GapParams{
		Clearance: oilFilm, Pitch: u.axle.Peg.ScrewPitch.Value,
		PadDiameter: u.axle.Peg.PadDiameter.Value, PadPressure: u.axle.Peg.PadBrief.Value,
		PadSteady: u.axle.Peg.PadSteady.Value, PadPV: u.axle.Peg.PadRubbing.Value,
	}
	tyre := u.vehicle.Tyre.LoadedRadius.Value
	back, driving := 0.0, 0.0
	for _, b := range u.duty.Blocks {
		driving += timeOf(&b)
	}
	for _, b := range u.duty.Blocks {
		flank := u.mounting.FlankOf(b.Going)
		if b.Speed.Value >= roadSpeed {
			p.Running = append(p.Running, loadpath.Running{Flank: flank, Torque: u.governing * b.Torque.Value})
		} else if b.Speed.Value > 0 && timeOf(&b) >= lasting*driving {
			work := loadpath.Demand{Flank: flank, Torque: u.governing * b.Torque.Value, Speed: b.Speed.Value / tyre, Lasts: true}
			var err error
			if work.PadHeat, err = padHeat(u.axle.Peg, work.Speed); err != nil {
				return p, err
			}
			p.Demands = append(p.Demands, work)
		}
		if flank != u.mounting.Forward {
			back = math.Max(back, math.Min(1, b.Torque.Value))
		}
	}
	for _, flank := range flanks {
		torque := peak
		if flank != u.mounting.Forward {
			torque *= back
		}
		if torque > 0 {
			p.Demands = append(p.Demands, loadpath.Demand{
				Flank: flank, Torque: torque, Speed: crawlSpeed / tyre,
				Movement: u.axle.Casting.Limits.WheelAxial.Value,
			})
		}
	}
	// The peg's own links tell what it may carry: the least of screw, plate and
	// weld. Their demand is in proportion to the load.
	const torque = 1000
	pushed := &curve{torques: []float64{0, torque}, rows: make([]response, 2)}
	pushed.rows[1][pegLoad] = torque
	one := *u
	one.paths = paths{wheel: [2]*curve{pushed, pushed}}
	for _, prepare := range []func(*unit, *notes) (limit, error){pegScrew, pegPlate, pegWeld} {
		reach, err := prepare(&one, nil)
		if err != nil {
			return p, err
		}
		demand, capacity := reach(gear.Drive, torque, nil)
		carries := capacity / demand * torque
		if p.Capacity == 0 || carries < p.Capacity {
			p.Capacity = carries
		}
	}
	return p, nil
}

// timeOf is the time that a block takes, for each metre of the duty.
func timeOf(b *axle.Block) float64 {
	if b.Speed.Value == 0 {
		return 0
	}
	return b.Share.Value / b.Speed.Value
}

// padHeat is the heat of friction that a pad stands while the wheel turns at a speed.
func padHeat(p *axle.Peg, speed float64) (float64, error) {
	face, err := contact.PadFaceRise(contact.PadFaceParams{
		Heat: 1, Radius: p.PadDiameter.Value / 2, Speed: speed * p.Radius.Value,
		PadConductivity: bronzeConducts, WheelConductivity: steelConducts, WheelDiffusivity: steelDiffuses,
	})
	var slow *check.RangeError
	if errors.As(err, &slow) && slow.Param == "Peclet" { // so slow that it makes no heat worth the name
		return 0, nil
	}
	return padWarming / face.Rise, err
}

func gapAdvice(w *loadpath.GapWindow, demands []loadpath.Demand, peg *axle.Peg, forward axle.Flank) GapAdvice {
	a := GapAdvice{Verdict: w.Verdict, Least: w.Least.Gap, Aim: w.Aim.Gap}
	if w.Upper.Kind != "" {
		most := w.Most.Gap
		a.Most = &most
	}
	say := func(format string, args ...any) { a.Text = append(a.Text, fmt.Sprintf(format, args...)) }
	switch w.Verdict {
	case loadpath.WindowOpen:
		say("By the stated values, not by draws: set the peg to %s cold at the tight spot, after side preload: touch, then back %s. Anything from %s to %s will do.",
			gapText(w.Aim.Gap), turnText(w.Aim), gapText(w.Least.Gap), gapText(w.Most.Gap))
	case loadpath.NotNeeded:
		say("By the stated values, not by draws, the wheel stays within its limit without a peg. If one is fitted, set it no closer than %s cold at the tight spot: touch, then back %s.",
			gapText(w.Least.Gap), turnText(w.Least))
	case loadpath.BringsNought:
		say("By the stated values, not by draws, the wheel reaches the peg under this vehicle's peaks at no gap that keeps clear on the road: it brings nothing here.")
	case loadpath.WindowShut:
		say("No window, by the stated values: to keep clear of the wheel the gap must be at least %s, to hold the wheel within its limit at most %s.",
			gapText(w.Least.Gap), gapText(w.Most.Gap))
	}
	if stated := peg.Gap.Value; stated < w.Least.Gap {
		say("The gap stated for it, %s, is closer than that.", gapText(stated))
	}
	say("The least gap is drawn by %s.", boundText(w.Lower))
	if w.Upper.Kind != "" {
		say("The most gap is drawn by %s.", boundText(w.Upper))
	}
	var worst loadpath.PegUse // of slow work
	for i, use := range w.Uses {
		switch {
		case !use.Touches:
		case demands[i].Lasts:
			if use.PV > worst.PV {
				worst = use
			}
		default:
			way := "pulling forward"
			if demands[i].Flank != forward {
				way = "in reverse or on the overrun"
			}
			say("At the peak %s, on the %s flank, a thrust of %s: at that gap the peg carries %s, %s on the pad.", way, demands[i].Flank, forceText(use.Thrust), forceText(use.Load), quantity.FormatDigits(use.Pressure, quantity.Pressure, 2))
		}
	}
	if worst.Touches {
		say("In slow work it rubs with up to %s, %s and %s of heat.", quantity.FormatDigits(worst.Pressure, quantity.Pressure, 2),
			quantity.FormatDigits(worst.PV, quantity.PressureSpeed, 2), quantity.FormatDigits(worst.Heat, quantity.Power, 2))
	}
	for _, c := range w.Changes {
		say("What would open it: %s.", changeText(c))
	}
	return a
}

// changeText says a change with how much of it.
func changeText(c loadpath.GapChange) string {
	figure := func(dim quantity.Dimension) string { return quantity.FormatDigits(c.Value, dim, 2) }
	switch c.Kind {
	case loadpath.TrueBackFace:
		return "true the back face to a run-out of " + figure(quantity.Length)
	case loadpath.CarryMore:
		return "a peg that carries " + figure(quantity.Force)
	case loadpath.WiderPad:
		return "a pad of " + figure(quantity.Length)
	case loadpath.SlickerPad:
		return "a pad with a friction of " + figure(quantity.Number)
	case loadpath.StiffenPeg:
		return "a peg as stiff as " + figure(quantity.Stiffness)
	case loadpath.CloserRunning:
		return "less air in running, " + figure(quantity.Length)
	}
	return "stiffer seats or crown wheel; even on a rigid peg the wheel would move " + figure(quantity.Length)
}

func gapText(m float64) string { return quantity.FormatDigits(m, quantity.Length, 2) }

func forceText(f float64) string { return quantity.FormatDigits(f, quantity.Force, 2) }

// turnText says a gap as the fitter turns it.
func turnText(t loadpath.ScrewTurn) string {
	return fmt.Sprintf("%.0f° of the screw (%.1f flats of its hexagon)", t.Angle*180/math.Pi, t.Flats)
}

func boundText(b loadpath.GapBound) string {
	switch b.Kind {
	case loadpath.ByTouch:
		return "the axle at rest, which must not bear on the peg"
	case loadpath.ByRoad:
		return "steady road running, hot and with the run-out of the back face"
	case loadpath.ByCapacity:
		return "what screw, plate, weld and the iron beside it carry"
	case loadpath.ByPressure:
		return "the pressure that the pad stands"
	case loadpath.ByPV:
		return "pressure times rubbing speed of the pad in slow work"
	case loadpath.ByHeat:
		return "the heat of the pad in slow work"
	}
	return "the wheel's movement at the peak"
}
