package weldplan

import (
	"math"

	"axlewright/calc/weld"
)

// A bead is a run of weld as it will be laid, with what its shrinkage hangs on.
type bead struct {
	joint   JointKind
	leg     float64 // m, finished
	passes  int
	heat    float64 // J/m, heat input of one pass, with efficiency
	plate   float64 // m, thickness
	wall    float64 // m
	gap     float64 // m
	yield   float64 // Pa, of the weld metal
	throat  float64 // m
	modulus float64 // Pa, of the casting
	bound   float64 // N, most that the casting's section can hold against the pull
}

// A shrinkage is what a run does when it cools, were nothing to hold it.
type shrinkage struct {
	across float64 // m, draws the plate to the joint
	wall   float64 // m, draws the casting's wall together across the run
	kink   float64 // rad, folds the wall about the run, hollow on the bead's side
	tilt   float64 // rad, tilts a standing plate towards its bead
	pull   float64 // N, along the run
	most   float64 // N/m, what the weld metal can pull across the run before it yields
}

// steelModulus is what the formulas were fitted on.
const steelModulus = 206e9 // Pa

// shrinkageOf works out what one run does by the published formulas. These are
// for steel and good to about a half.
//
//   - Across a fillet, half of what a pair does, Masubuchi. Each pass counts as a
//     fillet of its own leg z/√n, so that n passes shrink √n times as much as one
//     of the whole leg; that step is ours.
//   - Across a butt, Spraragen and Ettinger.
//   - The wall's fold, half of Blodgett's flange for a pair of fillets.
//   - Along the run, the tendon force of one pass: runs laid on cold metal do not
//     add up. It goes with the metal's modulus over that of steel, as the bar theory
//     of the same form does (Okerblom, from memory), and never exceeds what brings
//     the limb's section beside the run to yield: a slender limb gives way instead
//     of holding the hot metal against it. That bound is ours.
func shrinkageOf(b bead) (shrinkage, error) {
	n := float64(b.passes)
	leg := b.leg / math.Sqrt(n)
	s := shrinkage{most: b.yield * b.throat}
	pull, err := weld.TendonForce(b.heat)
	if err != nil {
		return s, err
	}
	s.pull = math.Min(pull*b.modulus/steelModulus, b.bound)
	if b.joint == Butt {
		s.across, err = weld.ButtShrinkage(weld.ButtShrinkageParams{Area: buttArea(b.plate, b.gap), Thickness: b.plate, Gap: b.gap})
		return s, err
	}
	pair := weld.FilletShrinkage
	if b.joint == Lap {
		pair = weld.LapShrinkage
	}
	draw, err := pair(weld.FilletShrinkageParams{Leg: leg, Thickness: math.Max(b.plate, leg)})
	if err != nil {
		return s, err
	}
	s.across = n * draw / 2
	if s.wall, err = weld.FilletShrinkage(weld.FilletShrinkageParams{Leg: leg, Thickness: math.Max(b.wall, leg)}); err != nil {
		return s, err
	}
	s.wall *= n / 2
	edge, err := weld.FlangeTilt(weld.FlangeTiltParams{Leg: leg, Width: 1, Thickness: math.Max(b.wall, leg)})
	if err != nil {
		return s, err
	}
	half := 2 * edge  // rad, that one half of the flange turns, for a pair of fillets
	s.kink = n * half // two halves, half a pair
	if b.joint == Tee {
		s.tilt = n * half / 2
	}
	return s, nil
}

// buttArea is the section of a 60° V through a plate with a root gap, without the
// crown.
func buttArea(thickness, gap float64) float64 {
	return thickness*gap + thickness*thickness*math.Tan(math.Pi/6)
}
