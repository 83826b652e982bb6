package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/fit"
	"axlewright/quantity"
)

// Caps says whether the caps were on and torqued when bores were measured.
type Caps string

// The two.
const (
	CapsTorqued    Caps = "torqued"
	CapsNotTorqued Caps = "not torqued"
)

// Mandrel says how a ground mandrel goes through both side bores.
type Mandrel string

// The feels.
const (
	MandrelFree   Mandrel = "turns by hand"
	MandrelStiff  Mandrel = "goes in but turns stiffly"
	MandrelBlocks Mandrel = "does not go in"
)

// A Bore holds three diameters of one side bore.
type Bore struct {
	Along  Reading // m, at 0°: along the joint of the cap
	Aslant Reading // m, at 45°
	Across Reading // m, at 90°: through the crown of the cap
}

func (b Bore) taken() bool { return b.Along.Taken && b.Aslant.Taken && b.Across.Taken }

// A BoreShape is what three diameters say.
type BoreShape struct {
	Mean   float64 // m
	Oval   float64 // m, largest less smallest diameter of the oval through the three
	Widest float64 // rad, direction of the largest, from along the joint
}

// shape lays an oval, d(θ) = m + e·cos 2(θ − φ), through the three diameters. The
// largest may lie between them, so that their own difference tells too little.
func (b Bore) shape() BoreShape {
	m := (b.Along.SI + b.Across.SI) / 2
	c, s := (b.Along.SI-b.Across.SI)/2, b.Aslant.SI-m
	widest := math.Atan2(s, c) / 2
	if widest < 0 {
		widest += math.Pi
	}
	return BoreShape{Mean: m, Oval: 2 * math.Hypot(c, s), Widest: widest}
}

// BoreCheck asks whether the bores of a casting are good.
type BoreCheck struct {
	Spec            Spec
	Caps            Caps
	Cracked         bool // a crack runs into a bearing bore or an ear
	Left, Right     Bore
	LeftIs, RightIs string // what the two are called where not left and right: "crown-side"
	Mandrel         Mandrel
	Feeler          Reading // m, thickest feeler that enters beside the mandrel; zero where none does
	OffLine         Reading // m, one bore off the line of the other
	LineLength      Reading // m, over this length
	AxisOff         Reading // m, pinion axis off its place beside the side axis
	SquareOff       Reading // m, swing of a dial on the pinion bar round the side mandrel
	SquareLen       Reading // m, over this length
}

func (in BoreCheck) leftIs() string  { return orElseText(in.LeftIs, string(Left)) }
func (in BoreCheck) rightIs() string { return orElseText(in.RightIs, string(Right)) }

func orElseText(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

// BoreVerdict is what becomes of the bores.
type BoreVerdict string

// The verdicts.
const (
	NotJudged BoreVerdict = "not yet judged"
	Accept    BoreVerdict = "accept"
	Scrape    BoreVerdict = "scrape with blue"
	LineBore  BoreVerdict = "line-bore"
	Scrap     BoreVerdict = "scrap"
)

// A BoreResult is what the readings say.
type BoreResult struct {
	Answer
	Verdict         BoreVerdict
	Left, Right     BoreShape
	LineAngle       float64 // rad, between the side bores
	SquareAngle     float64 // rad, of the pinion axis
	worst, farthest float64 // reading over its limit; largest error that only boring cures, m
	boring          bool    // something that scraping cannot cure
}

// JudgeBores holds the bores against their limits and gives one of four
// verdicts. The limits are the spec's or the trade's; the step from scraping to
// boring, at twice the limit, is a custom of the trade without a source.
func JudgeBores(in BoreCheck) (BoreResult, error) {
	var s sheet
	r := BoreResult{Verdict: NotJudged}
	s.spec(in.Spec)
	choose(&s, "Caps", "were the caps torqued when it was measured", in.Caps, CapsTorqued, CapsNotTorqued)
	s.diameters("Left", in.leftIs()+" bore", in.Left)
	s.diameters("Right", in.rightIs()+" bore", in.Right)
	choose(&s, "Mandrel", "how a ground mandrel goes through both side bores", in.Mandrel, MandrelFree, MandrelStiff, MandrelBlocks)
	s.optional("Feeler", in.Feeler, quantity.Length, 0, 2*mm, "a feeler such as 0.04 mm")
	s.over("OffLine", "LineLength", "length over which the bores are out of line", in.OffLine, in.LineLength)
	s.optional("AxisOff", in.AxisOff, quantity.Length, 0, 5*mm, "a distance such as 0.03 mm")
	s.over("SquareOff", "SquareLen", "length over which squareness was read", in.SquareOff, in.SquareLen)
	if err := s.err(); err != nil {
		return BoreResult{}, err
	}
	switch {
	case in.Cracked:
		r.Verdict = Scrap
		r.settle(Stop, "A crack runs into a bearing bore or an ear: the casting is not to be strengthened.")
		r.say("Mark the casting, and keep its adjusters and bolts.")
		return r, nil
	case in.Caps == CapsNotTorqued:
		r.settle(Stop, "The caps were not torqued: bores change by 0.02 to 0.05 mm when they are, so these readings say nothing.")
		r.say("Torque the caps, each on its own side, and measure again.")
		return r, nil
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	if err := r.measure(in); err != nil {
		return BoreResult{}, asFinding(err)
	}
	r.decide(in)
	return r, nil
}

func (s *sheet) diameters(field, words string, b Bore) {
	const example = "a diameter such as 72.00 mm"
	for _, d := range []struct {
		name, at string
		r        Reading
	}{{"Along", "0°", b.Along}, {"Aslant", "45°", b.Aslant}, {"Across", "90°", b.Across}} {
		s.need(field+"."+d.name, words+" at "+d.at, d.r, quantity.Length, 20*mm, 0.3, example)
	}
}

// over is an error that was read over a length.
func (s *sheet) over(field, lengthField, words string, off, over Reading) {
	if off.Taken {
		s.optional(field, off, quantity.Length, 0, 5*mm, "a distance such as 0.05 mm")
		s.need(lengthField, words, over, quantity.Length, 20*mm, 1, "a length such as 140 mm")
	}
}

// measure enters every reading beside its limit.
func (r *BoreResult) measure(in BoreCheck) error {
	r.Left, r.Right = in.Left.shape(), in.Right.shape()
	round := in.Spec.Limit(BoreRound)
	for _, b := range []struct {
		side  string
		shape BoreShape
	}{{in.leftIs(), r.Left}, {in.rightIs(), r.Right}} {
		r.computed("", "d", b.side+" bore, mean", b.shape.Mean, quantity.Length, "")
		r.computed("", "o", b.side+" bore, out-of-round, widest at "+place(b.shape.Widest), b.shape.Oval, quantity.Length, "oval through the three diameters")
		r.hold("out-of-round of the "+b.side+" bore", b.shape.Oval, round)
	}
	var err error
	if in.OffLine.Taken {
		if r.LineAngle, err = fit.AngleOverLength(in.OffLine.SI, in.LineLength.SI); err != nil {
			return err
		}
		r.overLength("side bores out of line", in.OffLine, in.LineLength, r.LineAngle)
		r.hold("side bores out of line", r.LineAngle, in.Spec.Limit(BoreLine))
		r.farthest = max(r.farthest, in.OffLine.SI)
	}
	if in.Feeler.Taken && in.Feeler.SI > 0 {
		r.hold("feeler that enters beside the mandrel", in.Feeler.SI, in.Spec.Limit(CupGap))
	}
	if in.AxisOff.Taken {
		if r.hold("pinion axis off its place", in.AxisOff.SI, in.Spec.Limit(AxisOffset)) == Look {
			r.boring = true
		}
		r.farthest = max(r.farthest, in.AxisOff.SI)
	}
	if in.SquareOff.Taken {
		if r.SquareAngle, err = fit.AngleOverLength(in.SquareOff.SI, in.SquareLen.SI); err != nil {
			return err
		}
		r.overLength("pinion axis out of square", in.SquareOff, in.SquareLen, r.SquareAngle)
		if r.hold("pinion axis out of square", r.SquareAngle, in.Spec.Limit(AxisSquare)) == Look {
			r.boring = true
		}
		r.farthest = max(r.farthest, in.SquareOff.SI)
	}
	return nil
}

func (r *BoreResult) overLength(words string, off, over Reading, angle float64) {
	r.measured("", "e", words, off, quantity.Length)
	r.measured("÷", "L", "over", over, quantity.Length)
	r.line("=", "φ", "as an angle", angle, quantity.Angle, axle.Computed, "")
}

// hold checks a reading and keeps how far over its limit the worst one is.
func (r *BoreResult) hold(label string, value float64, l Limit) State {
	r.worst = max(r.worst, value/l.High)
	return r.check(label, value, l)
}

// decide gives the verdict.
func (r *BoreResult) decide(in BoreCheck) {
	r.farthest = max(r.farthest, r.Left.Oval, r.Right.Oval)
	rescue := in.Spec.Limit(BoreRescue)
	switch {
	case r.farthest > rescue.High:
		r.Verdict = Scrap
		r.settle(Look, "An error of %s is more than line-boring is worth: %s (%s).", length(r.farthest), rescue.Range(), rescue.From())
		r.say("Scrap the casting, or ask a machinist whether its bores can be sleeved.")
	case r.worst <= 1+1e-9 && in.Mandrel == MandrelFree:
		r.Verdict = Accept
		r.settle(Fine, "The mandrel turns by hand.")
		r.say("Accept the bores.")
	case r.boring || r.worst > 2 || in.Mandrel == MandrelBlocks && r.worst > 1:
		r.Verdict = LineBore
		r.settle(Look, "Scraping does not cure that.")
		r.say("Line-bore from the pinion axis, caps torqued; worth it only where the donor is scarce.")
	default:
		r.Verdict = Scrape
		if in.Mandrel != MandrelFree {
			r.settle(Look, "The mandrel %s.", in.Mandrel)
		}
		r.say("Blue the mandrel or a cup, scrape the high places, caps torqued, and measure again.")
	}
	for _, gap := range []struct {
		there bool
		words string
	}{
		{in.OffLine.Taken, "side bores in line"}, {in.AxisOff.Taken, "offset of the pinion axis"}, {in.SquareOff.Taken, "squareness of the pinion axis"},
	} {
		if !gap.there {
			r.note("Not measured: %s.", gap.words)
		}
	}
}
