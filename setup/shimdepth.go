package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// ShimByDepth asks for the shim from the depth of the bare casting, the bearing
// and the pinion, before anything is fitted.
type ShimByDepth struct {
	Spec          Spec
	ThickerPushes Push
	Depth         Reading // m, from the side axis to the seat that the shim lies on
	Distance      Reading // m, nominal mounting distance
	Mark          Mark
	Bearing       Reading // m, width of the head bearing over cup and cone; of a pinion cage its length from flange to pinion
}

// ShimFromDepth returns the shim that fills the chain of dimensions: depth −
// (mounting distance + mark) − bearing, where plus means further out and a
// thicker shim pushes the pinion in.
//
// The sum is geometry.
func ShimFromDepth(in ShimByDepth) (ShimResult, error) {
	var s sheet
	var r ShimResult
	s.spec(in.Spec)
	choose(&s, "ThickerPushes", pushQuestion, in.ThickerPushes, TowardsWheel, AwayFromWheel)
	s.need("Depth", "depth from the side axis to the seat of the shim", in.Depth, quantity.Length, 5*mm, 0.5, "a depth such as 118.46 mm")
	s.need("Distance", "nominal mounting distance", in.Distance, quantity.Length, 5*mm, 0.5, "a distance such as 91.00 mm")
	s.need("Bearing", "width of the head bearing over cup and cone", in.Bearing, quantity.Length, 5*mm, 0.3, "a width such as 27.02 mm")
	s.mark("Mark", "pinion", in.Mark)
	if err := s.err(); err != nil {
		return ShimResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	r.doubtMark(in.Spec, "pinion", in.Mark)
	r.measured("", "H", "depth from the side axis to the seat", in.Depth, quantity.Length)
	r.measured("−", "D_nom", "nominal mounting distance", in.Distance, quantity.Length)
	r.line("−", "m", "this pinion sits further out by", in.Mark.further(), quantity.Length, axle.Measured, "marked "+in.Mark.text())
	r.measured("−", "T", "head bearing over cup and cone", in.Bearing, quantity.Length)
	towards := in.Depth.SI - in.Distance.SI - in.Mark.further() - in.Bearing.SI
	if r.close(Read(0), "no shim is in the chain yet", comesIn, towards, in.ThickerPushes) {
		r.tell(false)
	}
	return r, nil
}

// ShimForBearing asks what another head bearing does to the shim.
type ShimForBearing struct {
	Spec          Spec
	ThickerPushes Push
	OldShim       Reading // m
	OldStack      Reading // m, old head bearing over cup and cone
	NewStack      Reading // m, new one
}

// ShimForOtherBearing returns the shim after the head bearing has been changed
// for one of another height, the pinion staying where it was.
//
// The sum is geometry; forgetting it is what sets gears 0.3 to 1 mm wrong when a
// nose is bored for a larger bearing.
func ShimForOtherBearing(in ShimForBearing) (ShimResult, error) {
	var s sheet
	var r ShimResult
	s.spec(in.Spec)
	choose(&s, "ThickerPushes", pushQuestion, in.ThickerPushes, TowardsWheel, AwayFromWheel)
	s.need("OldShim", "thickness of the shim that came out", in.OldShim, quantity.Length, thinnestShim, thickestShim, "a shim such as 1.37 mm")
	s.need("OldStack", "height of the old head bearing over cup and cone", in.OldStack, quantity.Length, 5*mm, 0.2, "a height such as 29.37 mm")
	s.need("NewStack", "height of the new head bearing over cup and cone", in.NewStack, quantity.Length, 5*mm, 0.2, "a height such as 30.16 mm")
	if err := s.err(); err != nil {
		return ShimResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	r.measured("", "T_old", "old head bearing over cup and cone", in.OldStack, quantity.Length)
	r.measured("−", "T_new", "new head bearing over cup and cone", in.NewStack, quantity.Length)
	if r.close(in.OldShim, "shim that came out", "the new bearing would leave the pinion too far out by", in.OldStack.SI-in.NewStack.SI, in.ThickerPushes) {
		r.done("The shim makes up for the height of the bearing.")
		r.say("Shim %s: %s %s than before, so that the pinion stays where it was.", length(r.Shim), length(math.Abs(r.Change)), thicker(r.Change))
	}
	r.Towards = 0
	r.note("New bearings have another preload too: take it from their own figures.")
	return r, nil
}
