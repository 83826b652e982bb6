package setup

import (
	"axlewright/axle"
	"axlewright/quantity"
)

// ShimByGap asks for the shim from the gap that a maker's gauge leaves.
type ShimByGap struct {
	Spec          Spec
	ThickerPushes Push
	Fitted        Reading // m, the shim in place when the gap was read; zero where there was none
	Gap           Reading // m, gap under the gauge
	Allowance     Reading // m, what the maker has taken off the gap: 0.20 mm on one axle
	Page          string  // where the maker says so
	Mark          Mark
}

// ShimFromGap returns the shim by the sum of a maker's gauge: gap − mark −
// allowance, where plus means further out and a thicker shim pushes the pinion
// in.
func ShimFromGap(in ShimByGap) (ShimResult, error) {
	var s sheet
	var r ShimResult
	s.spec(in.Spec)
	choose(&s, "ThickerPushes", pushQuestion, in.ThickerPushes, TowardsWheel, AwayFromWheel)
	s.need("Fitted", "shim in place when the gap was read, 0 for none", in.Fitted, quantity.Length, thinnestShim, thickestShim, "a shim such as 1.37 mm, or 0 mm for none")
	s.need("Gap", "gap under the gauge", in.Gap, quantity.Length, 0, 20*mm, "a gap such as 0.50 mm")
	s.need("Allowance", "the maker's allowance for this gauge", in.Allowance, quantity.Length, -20*mm, 20*mm, "a figure such as 0.20 mm")
	s.mark("Mark", "pinion", in.Mark)
	if err := s.err(); err != nil {
		return ShimResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	r.doubtMark(in.Spec, "pinion", in.Mark)
	r.measured("", "g", "gap under the gauge", in.Gap, quantity.Length)
	r.line("−", "m", "this pinion sits further out by", in.Mark.further(), quantity.Length, axle.Measured, "marked "+in.Mark.text())
	page := "the maker's figure for this gauge"
	if in.Page != "" {
		page = "maker's page " + in.Page
	}
	r.line("−", "k", "allowance of the gauge", in.Allowance.SI, quantity.Length, axle.Maker, page)
	towards := in.Gap.SI - in.Mark.further() - in.Allowance.SI
	if r.close(in.Fitted, "shim in place when the gap was read", comesIn, towards, in.ThickerPushes) {
		if in.Fitted.SI > 0 {
			r.doubtChange(in.Spec)
		}
		r.tell(in.Fitted.SI > 0)
	}
	return r, nil
}
