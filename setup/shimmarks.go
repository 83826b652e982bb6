package setup

import (
	"axlewright/axle"
	"axlewright/quantity"
)

// ShimByMarks asks for the first shim from the one that came out and the marks
// on both pinions.
type ShimByMarks struct {
	Spec          Spec
	ThickerPushes Push
	OldShim       Reading // m, the pack that came out
	OldMark       Mark
	NewMark       Mark
}

// ShimFromMarks returns the shim for a new pinion in the place of an old one that
// stood right.
//
// Where plus means further out and a thicker shim pushes the pinion in, it is
// the common sum "old shim + old mark − new mark". The custom has no source;
// published tables of both signs follow from it.
func ShimFromMarks(in ShimByMarks) (ShimResult, error) {
	var s sheet
	var r ShimResult
	s.spec(in.Spec)
	choose(&s, "ThickerPushes", pushQuestion, in.ThickerPushes, TowardsWheel, AwayFromWheel)
	s.need("OldShim", "thickness of the shim that came out", in.OldShim, quantity.Length, thinnestShim, thickestShim, "a shim such as 1.37 mm")
	s.mark("OldMark", "old pinion", in.OldMark)
	s.mark("NewMark", "new pinion", in.NewMark)
	if err := s.err(); err != nil {
		return ShimResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	r.doubtMark(in.Spec, "old pinion", in.OldMark)
	r.doubtMark(in.Spec, "new pinion", in.NewMark)
	old, wanted := in.OldMark.further(), in.NewMark.further()
	r.line("", "m_old", "old pinion sits further out by", old, quantity.Length, axle.Measured, "marked "+in.OldMark.text())
	r.line("−", "m_new", "new pinion sits further out by", wanted, quantity.Length, axle.Measured, "marked "+in.NewMark.text())
	if r.close(in.OldShim, "shim that came out", comesIn, old-wanted, in.ThickerPushes) {
		r.doubtChange(in.Spec)
		r.tell(true)
	}
	r.note("It holds for the same casting, a head bearing of the same height, and an old pinion that stood right.")
	return r, nil
}
