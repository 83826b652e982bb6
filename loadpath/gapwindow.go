package loadpath

import (
	"math"

	"axlewright/calc/check"
)

// GapParams is what the gap of a peg has to please. The peg of the prepared
// axle gives place, stiffness, friction, run-out and closing; its own gap is
// not used.
type GapParams struct {
	Running []Running // steady running, in which nothing may touch
	Demands []Demand  // the pulls that the axle must stand

	Clearance float64 // m, air to be left in running; zero or more
	Pitch     float64 // m, of the peg's screw

	// What the peg may carry. A zero is no limit.
	Capacity    float64 // N, the least of screw, pad, plate, welds and casting
	PadDiameter float64 // m; needed for the three limits of the pad
	PadPressure float64 // Pa, mean pressure on the pad, for moments
	PadSteady   float64 // Pa, the same under a demand that lasts
	PadPV       float64 // Pa·m/s, pressure times rubbing speed, under a demand that lasts
}

// Running is a steady state of the road.
type Running struct {
	Flank  Flank
	Torque float64 // N·m, at the crown wheel
}

// Demand is a pull that the wheel must stand without moving too far.
type Demand struct {
	Flank    Flank
	Torque   float64 // N·m, at the crown wheel
	Speed    float64 // rad/s, of the crown wheel
	Movement float64 // m, how far the teeth of the wheel may move off the pinion; zero for no limit
	Lasts    bool    // whether it is work, not a moment's peak
	PadHeat  float64 // W, that the pad's friction may make at that speed; zero for no limit
}

// GapVerdict is the outcome in one word.
type GapVerdict string

// The outcomes.
const (
	WindowOpen   GapVerdict = "open"     // there are gaps that please everything
	WindowShut   GapVerdict = "shut"     // there is none
	BringsNought GapVerdict = "nothing"  // at no allowed gap does the wheel reach the peg under the demands
	NotNeeded    GapVerdict = "unneeded" // the wheel stays within its limits without a peg
)

// BoundKind says what draws a bound.
type BoundKind string

// The bounds. The movement is the only one from above.
const (
	ByTouch    BoundKind = "touch"    // the axle at rest must not bear on the peg
	ByRoad     BoundKind = "road"     // nothing touches in steady running
	ByCapacity BoundKind = "capacity" // screw, pad, plate, welds and casting
	ByPressure BoundKind = "pressure" // on the pad
	ByPV       BoundKind = "pv"       // pressure times speed of the pad
	ByHeat     BoundKind = "heat"     // of the pad
	ByMovement BoundKind = "movement" // of the wheel
)

// GapBound is one bound on the gap.
type GapBound struct {
	Kind  BoundKind
	Index int     // which of Running or Demands draws it; −1 for neither
	Gap   float64 // m, cold, at the tight spot
	Value float64 // what the bound is about at that gap: m of approach, N of load, m of movement
}

// ScrewTurn is a gap as the fitter sets it: from touch at the tight spot, the
// screw turned back.
type ScrewTurn struct {
	Gap   float64 // m
	Turns float64 // -
	Angle float64 // rad
	Flats float64 // -, sixths of a turn, by the flats of a hexagon
}

// PegUse is what the peg does under one demand at the gap aimed at.
type PegUse struct {
	Load         float64 // N, at the tight spot, hot: the most it carries
	Movement     float64 // m, of the wheel's teeth at the slack spot, cold: the farthest
	FreeMovement float64 // m, of the wheel's teeth without the peg
	Approach     float64 // m, of the back face to the peg without it
	Thrust       float64 // N, of the teeth on the wheel, towards the peg
	Pressure     float64 // Pa, on the pad
	PV           float64 // Pa·m/s
	Heat         float64 // W
	Touches      bool    // whether the tight spot meets the peg, hot
}

// GapWindow is between which gaps a peg pleases road, wheel and pad.
type GapWindow struct {
	Verdict GapVerdict
	Least   ScrewTurn // at least this far from touch at the tight spot, cold
	Most    ScrewTurn // at most; with a verdict of shut it is less than Least
	Aim     ScrewTurn // middle of the window; with any other verdict, the least
	Lower   GapBound  // what draws the least gap
	Upper   GapBound  // what draws the most; Kind is empty where nothing does
	Bounds  []GapBound
	Uses    []PegUse    // by demand, at the gap aimed at
	Changes []GapChange // each of which alone opens a shut window, or comes closest
}

// GapWindow works out between which gaps the peg pleases everything.
func (e *Elastic) GapWindow(p GapParams) (GapWindow, error) {
	if err := e.checkGapParams(&p); err != nil {
		return GapWindow{}, err
	}
	var w GapWindow
	w.Bounds = append(w.Bounds, GapBound{Kind: ByTouch, Index: -1})
	peg := e.axle.Peg
	for i, r := range p.Running {
		approach, err := e.approach(r.Flank, r.Torque)
		if err != nil {
			return w, err
		}
		w.Bounds = append(w.Bounds, GapBound{ByRoad, i, approach + peg.Closing + p.Clearance, approach})
	}
	reached, needed := false, false
	for i, d := range p.Demands {
		free, err := e.freeUse(&d)
		if err != nil {
			return w, err
		}
		for _, limit := range p.loadLimits(peg, &d) {
			gap, err := e.leastGapForLoad(&d, limit.force, free.Approach)
			if err != nil {
				return w, err
			}
			if gap > 0 {
				w.Bounds = append(w.Bounds, GapBound{limit.kind, i, gap + peg.Closing, limit.force})
			}
		}
		if d.Movement > 0 && free.FreeMovement > d.Movement {
			needed = true
			gap, err := e.mostGapForMovement(&d, free.Approach)
			if err != nil {
				return w, err
			}
			w.Bounds = append(w.Bounds, GapBound{ByMovement, i, gap - peg.RunOut, d.Movement})
		}
	}
	w.Lower = GapBound{Index: -1, Gap: math.Inf(-1)}
	w.Upper = GapBound{Index: -1, Gap: math.Inf(1)}
	for _, b := range w.Bounds {
		if b.Kind == ByMovement {
			if b.Gap < w.Upper.Gap {
				w.Upper = b
			}
		} else if b.Gap > w.Lower.Gap {
			w.Lower = b
		}
	}
	w.Least = turned(w.Lower.Gap, p.Pitch)
	w.Most = turned(w.Upper.Gap, p.Pitch)
	w.Aim = w.Least
	if w.Upper.Kind != "" && w.Upper.Gap >= w.Lower.Gap {
		w.Aim = turned((w.Lower.Gap+w.Upper.Gap)/2, p.Pitch)
	}
	for _, d := range p.Demands {
		use, err := e.use(&p, &d, w.Aim.Gap)
		if err != nil {
			return w, err
		}
		reached = reached || use.Touches
		w.Uses = append(w.Uses, use)
	}
	switch {
	case needed && w.Upper.Gap >= w.Lower.Gap:
		w.Verdict = WindowOpen
	case needed && !reached && w.Upper.Gap < w.Lower.Gap:
		// The wheel passes its limit before it can reach the peg.
		w.Verdict = BringsNought
		w.Changes = e.changes(&p, &w)
	case needed:
		w.Verdict = WindowShut
		w.Changes = e.changes(&p, &w)
	case !reached:
		w.Verdict = BringsNought
	default:
		w.Verdict = NotNeeded
	}
	return w, nil
}

func (e *Elastic) checkGapParams(p *GapParams) error {
	if e.axle.Peg == nil {
		return &BadAxle{Field: "Peg", Reason: "is not there"}
	}
	padLimits := p.PadPressure > 0 || p.PadSteady > 0 || p.PadPV > 0
	if err := check.All("loadpath.Elastic.GapWindow",
		check.NotNegative("Clearance", p.Clearance), check.Positive("Pitch", p.Pitch),
		check.NotNegative("Capacity", p.Capacity), check.NotNegative("PadPressure", p.PadPressure),
		check.NotNegative("PadSteady", p.PadSteady), check.NotNegative("PadPV", p.PadPV),
		check.That("PadDiameter", p.PadDiameter, p.PadDiameter > 0 || p.PadDiameter == 0 && !padLimits, "> 0"),
		check.That("Demands", float64(len(p.Demands)), len(p.Demands) > 0, "at least one"),
	); err != nil {
		return err
	}
	for _, d := range p.Demands {
		if err := check.All("loadpath.Elastic.GapWindow",
			check.Finite("Demands.Speed", d.Speed), check.NotNegative("Demands.Movement", d.Movement),
			check.NotNegative("Demands.PadHeat", d.PadHeat),
		); err != nil {
			return err
		}
	}
	return nil
}

func turned(gap, pitch float64) ScrewTurn {
	turns := gap / pitch
	return ScrewTurn{Gap: gap, Turns: turns, Angle: 2 * math.Pi * turns, Flats: 6 * turns}
}
