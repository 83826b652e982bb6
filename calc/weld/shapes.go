package weld

import (
	"math"

	"axlewright/calc/check"
)

// Shape is a pattern of fillet welds with published properties.
type Shape string

// Patterns. Depth d runs upright, along y; width b runs level, along x.
const (
	Line     Shape = "line"     // one upright weld d
	Parallel Shape = "parallel" // two upright welds d, a width b apart
	Levels   Shape = "levels"   // two level welds b, a depth d apart
	Corner   Shape = "corner"   // an upright weld d and a level weld b from its foot
	Channel  Shape = "channel"  // an upright weld d with level welds b from both ends
	Box      Shape = "box"      // all round a rectangle b by d
	Ring     Shape = "ring"     // all round a circle of diameter b
)

var shapes = []Shape{Line, Parallel, Levels, Corner, Channel, Box, Ring}

// ShapeParams is a pattern with its size.
type ShapeParams struct {
	Shape Shape   // name, pattern
	Width float64 // m, b: width, diameter of a ring; not read for a line; optional
	Depth float64 // m, d: depth; not read for a ring; optional
}

// ShapeProperties returns the published properties of a common weld pattern as lines of unit throat.
//
//	J_u = table 9-1 by pattern
//	J_u = d³/12                                        line
//	J_u = d·(3·b² + d²)/6                              parallel
//	J_u = b·(3·d² + b²)/6                              levels
//	J_u = ((b + d)⁴ − 6·b²·d²)/(12·(b + d))            corner
//	J_u = (8·b³ + 6·b·d² + d³)/12 − b⁴/(2·b + d)       channel
//	J_u = (b + d)³/6                                   box
//	J_u = 2·π·r³                                       ring
//	I_xu = d³/12, d³/6, b·d²/2, d³·(4·b + d)/(12·(b + d)), d²·(6·b + d)/12, d²·(3·b + d)/6, π·r³
//
// The origin is the lower left corner of the pattern, for a ring its centre.
// Valid for throats small beside the pattern.
// Errors: *check.RangeError for an unknown pattern or a size that is not positive.
// Source: Shigley, Mechanical Engineering Design, 9th ed., tables 9-1 (from memory) and 9-2; I_xu of the corner by integration.
func ShapeProperties(p ShapeParams) (GroupPropertiesResult, error) {
	const fn = "weld.ShapeProperties"
	b, d := p.Width, p.Depth
	var conditions []check.Condition
	if p.Shape != Line {
		conditions = append(conditions, check.Positive("Width", b))
	}
	if p.Shape != Ring {
		conditions = append(conditions, check.Positive("Depth", d))
	}
	if err := check.All(fn, conditions...); err != nil {
		return GroupPropertiesResult{}, err
	}
	g := GroupPropertiesResult{CentroidX: b / 2, CentroidY: d / 2, FarthestX: b / 2, FarthestY: d / 2}
	switch p.Shape {
	case Line:
		g.Length, g.UnitJ, g.UnitIx = d, d*d*d/12, d*d*d/12
		g.CentroidX, g.FarthestX, g.OneLine = 0, 0, true
	case Parallel:
		g.Length, g.UnitJ, g.UnitIx = 2*d, d*(3*b*b+d*d)/6, d*d*d/6
	case Levels:
		g.Length, g.UnitJ, g.UnitIx = 2*b, b*(3*d*d+b*b)/6, b*d*d/2
	case Corner:
		g.Length = b + d
		g.UnitJ = (math.Pow(b+d, 4) - 6*b*b*d*d) / (12 * (b + d))
		g.UnitIx = d * d * d * (4*b + d) / (12 * (b + d))
		g.CentroidX, g.CentroidY = b*b/(2*(b+d)), d*d/(2*(b+d))
		g.UnitIxy = -b * b * d * d / (4 * (b + d))
		g.FarthestX, g.FarthestY = b-g.CentroidX, d-g.CentroidY
	case Channel:
		g.Length = 2*b + d
		g.UnitJ = (8*b*b*b+6*b*d*d+d*d*d)/12 - b*b*b*b/(2*b+d)
		g.UnitIx = d * d * (6*b + d) / 12
		g.CentroidX = b * b / (2*b + d)
		g.FarthestX = math.Max(b-g.CentroidX, g.CentroidX)
	case Box:
		g.Length, g.UnitJ, g.UnitIx = 2*(b+d), math.Pow(b+d, 3)/6, d*d*(3*b+d)/6
	case Ring:
		r := b / 2
		g.Length, g.UnitJ, g.UnitIx = 2*math.Pi*r, 2*math.Pi*r*r*r, math.Pi*r*r*r
		g.CentroidX, g.CentroidY, g.FarthestY = 0, 0, r
	default:
		return GroupPropertiesResult{}, notNamed(fn, "Shape", p.Shape, shapes)
	}
	g.UnitIy = g.UnitJ - g.UnitIx
	return g, nil
}
