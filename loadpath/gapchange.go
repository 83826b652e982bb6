package loadpath

import "math"

// ChangeKind is a change that could open a shut window.
type ChangeKind string

// The changes.
const (
	TrueBackFace  ChangeKind = "true the back face"           // Value: run-out that is left, m
	CarryMore     ChangeKind = "let the peg carry more"       // Value: capacity, N
	WiderPad      ChangeKind = "wider pad"                    // Value: diameter, m
	SlickerPad    ChangeKind = "slicker pad"                  // Value: friction, -
	StiffenPeg    ChangeKind = "stiffen the peg"              // Value: stiffness, N/m
	StiffenWheel  ChangeKind = "stiffen seats or crown wheel" // Value: movement left with a rigid peg at the least gap, m
	CloserRunning ChangeKind = "less air in running"          // Value: clearance that is left, m
)

// GapChange is a change and how much of it.
type GapChange struct {
	Kind  ChangeKind
	Value float64
}

// changes lists what would open the window, each alone; the last resort stands
// alone, where nothing about the peg helps.
func (e *Elastic) changes(p *GapParams, w *GapWindow) (list []GapChange) {
	peg := e.axle.Peg
	lacking := w.Lower.Gap - w.Upper.Gap
	d := &p.Demands[w.Upper.Index]
	if peg.RunOut >= lacking {
		list = append(list, GapChange{TrueBackFace, peg.RunOut - lacking})
	}
	if w.Lower.Kind == ByRoad && p.Clearance >= lacking {
		list = append(list, GapChange{CloserRunning, p.Clearance - lacking})
	}
	switch w.Lower.Kind {
	case ByCapacity, ByPressure, ByPV, ByHeat:
		// At the most gap, if there is one to set, the peg would have to carry this.
		if w.Upper.Gap < 0 {
			break
		}
		by := &p.Demands[w.Lower.Index]
		var s State
		if e.atGap(&s, by, w.Upper.Gap-peg.Closing, e.pegCompliance()) != nil {
			break
		}
		switch w.Lower.Kind {
		case ByCapacity:
			list = append(list, GapChange{CarryMore, s.Peg.Load})
		case ByHeat:
			list = append(list, GapChange{SlickerPad, peg.Friction * w.Lower.Value / s.Peg.Load})
		default:
			list = append(list, GapChange{WiderPad, p.PadDiameter * math.Sqrt(s.Peg.Load/w.Lower.Value)})
		}
	}
	// A stiffer peg lets the wheel move less at the same gap, and carries more.
	movement := func(compliance float64) (float64, error) {
		var s State
		err := e.atGap(&s, d, w.Lower.Gap+peg.RunOut, compliance)
		return s.Wheel.Shift.Y, err
	}
	rigid, err := movement(0)
	if err != nil {
		return list
	}
	own := e.pegCompliance()
	if rigid < d.Movement && own > 0 && w.Lower.Kind == ByRoad {
		c, err := fall(0, own, func(c float64) (float64, error) {
			m, err := movement(c)
			return 1 - m/d.Movement, err
		})
		if err == nil && c > 0 {
			list = append(list, GapChange{StiffenPeg, 1 / c})
		}
	}
	if len(list) == 0 {
		list = append(list, GapChange{StiffenWheel, rigid})
	}
	return list
}
