package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// DistanceMethod says how the mounting distance was measured.
type DistanceMethod string

// The methods.
const (
	Directly  DistanceMethod = "directly"             // with depth bars, or read off a gauge
	OverArbor DistanceMethod = "block up to an arbor" // gauge block on the pinion, gap up to an arbor in the side bores
	BothBores DistanceMethod = "dial in both bores"   // dial zeroed on the block, then to the lowest point of each side bore
)

// StemMove says what the stem of the dial did from the block to the bottom of a
// bore.
type StemMove string

// The two moves.
const (
	StemOut StemMove = "out" // the bore lies lower than the block
	StemIn  StemMove = "in"  // the bore lies higher than the block
)

// StemMoves lists them.
var StemMoves = []StemMove{StemOut, StemIn}

// A BoreReading is what a dial showed at the lowest point of a side bore.
type BoreReading struct {
	Amount Reading  // m, without a sign
	Stem   StemMove // which way; may be left out where the amount is zero
}

// higher is how much higher than the block the bore lies.
func (b BoreReading) higher() float64 {
	if b.Stem == StemOut {
		return -b.Amount.SI
	}
	return b.Amount.SI
}

func (s *sheet) bore(field, side string, b BoreReading) {
	s.need(field+".Amount", "dial reading in the "+side+" bore", b.Amount, quantity.Length, 0, 5e-3, "the reading without a sign, such as 0.15 mm")
	if b.Amount.Taken && b.Amount.SI != 0 {
		choose(s, field+".Stem", "did the stem go out or in from the block to the "+side+" bore", b.Stem, StemOut, StemIn)
	}
}

// ShimByDistance asks for the shim from a measured mounting distance.
type ShimByDistance struct {
	Spec          Spec
	ThickerPushes Push
	Fitted        Reading // m, the shim in place when it was measured; zero where there was none
	Nominal       Reading // m, mounting distance of a pinion marked zero
	Mark          Mark

	Method   DistanceMethod
	Measured Reading // m, Directly: the mounting distance

	Block Reading // m, OverArbor: height of the gauge block, the step that was used
	Gap   Reading // m, OverArbor: from the block to the arbor
	Arbor Reading // m, OverArbor: diameter of the arbor
	Face  Reading // m, OverArbor: from the face the block stood on to the face the distance counts from; left out where they are one

	Left, Right BoreReading // BothBores: the block is the maker's, level with the bores where the pinion stands at the nominal distance
}

// ShimFromDistance returns the shim that brings the pinion to its mounting
// distance: measured distance less what is wanted is the way it has to come in.
//
// The bores are averaged, as manuals do; the method is common practice.
func ShimFromDistance(in ShimByDistance) (ShimResult, error) {
	var s sheet
	var r ShimResult
	s.spec(in.Spec)
	choose(&s, "ThickerPushes", pushQuestion, in.ThickerPushes, TowardsWheel, AwayFromWheel)
	s.need("Fitted", "shim in place when it was measured, 0 for none", in.Fitted, quantity.Length, thinnestShim, thickestShim, "a shim such as 1.37 mm, or 0 mm for none")
	const distance = "a distance such as 78.00 mm"
	s.need("Nominal", "nominal mounting distance", in.Nominal, quantity.Length, 5*mm, 0.5, distance)
	s.mark("Mark", "pinion", in.Mark)
	choose(&s, "Method", "how the mounting distance was measured", in.Method, Directly, OverArbor, BothBores)
	switch in.Method {
	case Directly:
		s.need("Measured", "measured mounting distance", in.Measured, quantity.Length, 5*mm, 0.5, distance)
	case OverArbor:
		s.need("Block", "height of the gauge block", in.Block, quantity.Length, 1*mm, 0.5, "the step used, such as 39.50 mm")
		s.need("Gap", "gap from the block to the arbor", in.Gap, quantity.Length, 0, 50*mm, "a gap such as 0.45 mm")
		s.need("Arbor", "diameter of the arbor", in.Arbor, quantity.Length, 5*mm, 0.3, "a diameter such as 38.00 mm")
		s.optional("Face", in.Face, quantity.Length, 0, 0.2, "a distance such as 31.20 mm")
	case BothBores:
		s.bore("Left", "left", in.Left)
		s.bore("Right", "right", in.Right)
	}
	if err := s.err(); err != nil {
		return ShimResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	r.doubtMark(in.Spec, "pinion", in.Mark)
	measured := r.distance(in)
	wanted := in.Nominal.SI + in.Mark.further()
	r.measured("", "D_nom", "nominal mounting distance", in.Nominal, quantity.Length)
	r.line("+", "m", "this pinion sits further out by", in.Mark.further(), quantity.Length, axle.Measured, "marked "+in.Mark.text())
	r.computed("=", "D_want", "mounting distance wanted", wanted, quantity.Length, "")
	r.computed("", "D_meas", "measured", measured, quantity.Length, "from above")
	r.computed("−", "D_want", "wanted", wanted, quantity.Length, "from above")
	if r.close(in.Fitted, "shim in place when measured", comesIn, measured-wanted, in.ThickerPushes) {
		if in.Fitted.SI > 0 {
			r.doubtChange(in.Spec)
		}
		r.tell(in.Fitted.SI > 0)
	}
	return r, nil
}

// distance adds up the measured mounting distance.
func (r *ShimResult) distance(in ShimByDistance) float64 {
	switch in.Method {
	case OverArbor:
		d := in.Block.SI + in.Gap.SI + in.Arbor.SI/2 + in.Face.SI
		r.measured("", "H", "gauge block", in.Block, quantity.Length)
		r.measured("+", "g", "gap from the block to the arbor", in.Gap, quantity.Length)
		r.line("+", "d/2", "half of the arbor", in.Arbor.SI/2, quantity.Length, axle.Measured, in.Arbor.source())
		if in.Face.Taken {
			r.measured("+", "f", "from the block's face to the face the distance counts from", in.Face, quantity.Length)
		}
		r.computed("=", "D_meas", "measured mounting distance", d, quantity.Length, "")
		return d
	case BothBores:
		left, right := in.Left.higher(), in.Right.higher()
		mean := (left + right) / 2
		r.line("", "l", "left bore higher than the block by", left, quantity.Length, axle.Measured, in.Left.source())
		r.line("+", "r", "right bore higher than the block by", right, quantity.Length, axle.Measured, in.Right.source())
		r.line("÷", "2", "mean of both bores", mean, quantity.Length, axle.Computed, "half of the sum, each with its sign")
		r.line("+", "D_nom", "level with the block is the nominal distance", in.Nominal.SI, quantity.Length, axle.Measured, in.Nominal.source())
		r.computed("=", "D_meas", "measured mounting distance", in.Nominal.SI+mean, quantity.Length, "")
		if d := math.Abs(left - right); d > 0.5*mm {
			r.settle(Look, "The two bores differ by %s: the bores are out of line or the block stood askew.", length(d))
		}
		return in.Nominal.SI + mean
	}
	r.measured("", "D_meas", "measured mounting distance", in.Measured, quantity.Length)
	return in.Measured.SI
}

func (b BoreReading) source() string {
	if b.Amount.SI == 0 {
		return b.Amount.source()
	}
	text := "stem went " + string(b.Stem)
	if b.Amount.Text != "" {
		text += ", " + b.Amount.source()
	}
	return text
}
