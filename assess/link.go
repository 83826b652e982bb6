package assess

import (
	"axlewright/axle"
	"axlewright/calc/gear"
)

// A link is one thing in an axle that can give out. Every limit is put on one
// scale: the torque at the axle at which it gives out.
//
// To add a link, write its prepare function beside its kin and name it in the
// list links.
type link struct {
	name    string // "cap bolts open"
	part    string // "cap", "crown wheel": what a fitter would look at
	kind    Kind
	unit    string // of its demand and capacity
	outside bool   // not in the casting: half-shaft, diff centre, propshaft joint
	uses    parts  // the choices of a build that change it
	// prepare works out everything that does not depend on torque. It returns
	// nil where the build has no such link.
	prepare func(u *unit, n *notes) (limit, error)
}

// A limit compares demand with capacity at a torque on a flank. It gives out
// where they meet. For a link that wears, the torque is the governing torque of
// the vehicle, the duty scaled to it, and the flank is not looked at.
type limit func(flank axle.Flank, torque float64, n *notes) (demand, capacity float64)

// A unit is one drawn assembly in its drawn vehicle, with the response of its
// load path.
type unit struct {
	axle      *axle.Assembly
	vehicle   *axle.Vehicle
	duty      *axle.Duty
	mounting  axle.Mounting
	paths     // response of the load path
	doubts    *modelDoubts
	governing float64     // N·m, what the vehicle can steadily put through the axle
	plate     *plateTable // of the peg, nil where there is none
	memo      *memo
}

// flankIndex orders the flanks for arrays.
func flankIndex(f axle.Flank) int {
	if f == gear.Drive {
		return 0
	}
	return 1
}

var flanks = [2]axle.Flank{gear.Drive, gear.Coast}

// parts is a set of the choices that tell builds apart.
type parts uint16

// The choices.
const (
	capBoltsPart parts = 1 << iota
	overlayPart
	dowelPart
	lockPart
	pegPart
	wheelBoltsPart
	headPart // the pinion's neck
	centrePart
	shaftsPart
	weldsPart
	pinionPath // all that the pinion's load path depends on
	wheelPath  // all that the wheel's does
)

// links lists every link, in the order in which they are told.
var links = []link{
	{name: "pinion tooth root", part: "pinion", kind: Breaks, unit: "Pa", prepare: toothRoot(true)},
	{name: "crown-wheel tooth root", part: "crown wheel", kind: Breaks, unit: "Pa", prepare: toothRoot(false)},
	{name: "pinion tooth bending life", part: "pinion", kind: Wears, unit: "-", prepare: toothLife(true)},
	{name: "crown-wheel tooth bending life", part: "crown wheel", kind: Wears, unit: "-", prepare: toothLife(false)},
	{name: "tooth flanks pit", part: "crown wheel", kind: Wears, unit: "-", prepare: flankLife},
	{name: "crown wheel pushed off the pinion", part: "mesh", kind: Moves, unit: "m", uses: pinionPath | wheelPath, prepare: moves(wheelAxial)},
	{name: "pinion moves along its axis", part: "mesh", kind: Moves, unit: "m", uses: pinionPath | wheelPath, prepare: moves(pinionAxial)},
	{name: "offset shifts", part: "mesh", kind: Moves, unit: "m", uses: pinionPath | wheelPath, prepare: moves(offsetMove)},
	{name: "shaft angle opens", part: "mesh", kind: Moves, unit: "rad", uses: pinionPath | wheelPath, prepare: moves(angleMove)},
	{name: "head bearing dents", part: "head bearing", kind: Breaks, unit: "N", uses: pinionPath, prepare: dents(head)},
	{name: "tail bearing dents", part: "tail bearing", kind: Breaks, unit: "N", uses: pinionPath, prepare: dents(tail)},
	{name: "near side bearing dents", part: "side bearing", kind: Breaks, unit: "N", uses: wheelPath, prepare: dents(near)},
	{name: "far side bearing dents", part: "side bearing", kind: Breaks, unit: "N", uses: wheelPath, prepare: dents(far)},
	{name: "head bearing life", part: "head bearing", kind: Wears, unit: "-", uses: pinionPath, prepare: wears(head)},
	{name: "tail bearing life", part: "tail bearing", kind: Wears, unit: "-", uses: pinionPath, prepare: wears(tail)},
	{name: "near side bearing life", part: "side bearing", kind: Wears, unit: "-", uses: wheelPath, prepare: wears(near)},
	{name: "far side bearing life", part: "side bearing", kind: Wears, unit: "-", uses: wheelPath, prepare: wears(far)},
	{name: "cap joint opens", part: "cap", kind: Breaks, unit: "N", uses: wheelPath | capBoltsPart, prepare: capOpens},
	{name: "cap bolt yields", part: "cap bolts", kind: Breaks, unit: "N", uses: wheelPath | capBoltsPart, prepare: capBoltYields},
	{name: "cap thread strips", part: "casting", kind: Breaks, unit: "N", uses: wheelPath | capBoltsPart, prepare: capThreadStrips},
	{name: "cap walks", part: "cap", kind: Breaks, unit: "N", uses: wheelPath | capBoltsPart | dowelPart, prepare: capWalks},
	{name: "cap breaks", part: "cap", kind: Breaks, unit: "Pa", uses: wheelPath | overlayPart, prepare: capBreaks},
	{name: "adjuster unwinds", part: "adjuster lock", kind: Breaks, unit: "N", uses: wheelPath | lockPart, prepare: adjusterUnwinds},
	{name: "spun cup turns the adjuster", part: "adjuster lock", kind: Breaks, unit: "N", uses: wheelPath | lockPart, prepare: cupTurnsAdjuster},
	{name: "crown wheel slips on its bolts", part: "crown-wheel bolts", kind: Breaks, unit: "N·m", uses: wheelBoltsPart, prepare: wheelSlips},
	{name: "crown-wheel bolts shear", part: "crown-wheel bolts", kind: Breaks, unit: "N·m", uses: wheelBoltsPart, prepare: wheelBoltsShear},
	{name: "peg screw buckles", part: "peg", kind: Breaks, unit: "N", uses: wheelPath | pegPart, prepare: pegScrew},
	{name: "peg pad is crushed", part: "peg", kind: Breaks, unit: "Pa", uses: wheelPath | pegPart, prepare: pegPad},
	{name: "peg plate bends", part: "peg plate", kind: Breaks, unit: "Pa", uses: wheelPath | pegPart, prepare: pegPlate},
	{name: "peg plate weld tears", part: "peg plate", kind: Breaks, unit: "Pa", uses: wheelPath | pegPart | weldsPart, prepare: pegWeld},
	{name: "peg plate weld tires", part: "peg plate", kind: Wears, unit: "-", uses: wheelPath | pegPart | weldsPart, prepare: pegWeldTires},
	{name: "casting leg cracks", part: "casting", kind: Breaks, unit: "Pa", uses: wheelPath | weldsPart, prepare: legCracks},
	{name: "pinion stem yields", part: "pinion", kind: Breaks, unit: "Pa", uses: pinionPath | headPart, prepare: stemYields},
	{name: "diff-centre pins shear", part: "diff centre", kind: Breaks, unit: "N·m", outside: true, uses: centrePart, prepare: pinsShear},
	{name: "half-shaft yields", part: "half-shaft", kind: Breaks, unit: "N·m", outside: true, uses: shaftsPart | centrePart, prepare: shaftYields},
	{name: "propshaft joint yields", part: "propshaft", kind: Breaks, unit: "N·m", outside: true, prepare: jointYields},
}
