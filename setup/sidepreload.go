package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// CapSpread asks for the side preload from the distance over the caps, before
// and after the adjusters were tightened. Several readings of each show how well
// they repeat.
type CapSpread struct {
	Spec          Spec
	Before, After []Reading // m, over the caps with a large micrometer, or a dial that stood at zero before
	LeftFeel      Reading   // N·m, tightening torque of the left adjuster at the end; optional
	RightFeel     Reading   // N·m
	BySpreader    bool      // the casting was stretched with a spreader, not with the adjusters
}

// A SpreadResult is how far the caps have been spread.
type SpreadResult struct {
	Answer
	Spread float64 // m
	Doubt  float64 // m, standard deviation of it by the repeats; zero where nothing was repeated
}

// SideSpreadByMicrometer returns the spread of the caps from readings over them.
func SideSpreadByMicrometer(in CapSpread) (SpreadResult, error) {
	var s sheet
	var r SpreadResult
	s.spec(in.Spec)
	before, varBefore := s.several("Before", "distance over the caps before tightening", in.Before)
	after, varAfter := s.several("After", "distance over the caps after tightening", in.After)
	s.optional("LeftFeel", in.LeftFeel, quantity.Torque, 0, 500, "a torque such as 22 N·m or 16 lbf·ft")
	s.optional("RightFeel", in.RightFeel, quantity.Torque, 0, 500, "a torque such as 22 N·m or 16 lbf·ft")
	if err := s.err(); err != nil {
		return SpreadResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	r.Spread = after - before
	r.Doubt = math.Sqrt(varBefore + varAfter)
	r.line("", "X_2", "over the caps, after", after, quantity.Length, axle.Measured, mean(in.After))
	r.line("−", "X_1", "over the caps, before", before, quantity.Length, axle.Measured, mean(in.Before))
	r.computed("=", "q", "spread of the caps", r.Spread, quantity.Length, "")
	item := SideSpread
	if in.BySpreader {
		item = SpreaderReach
	}
	l := in.Spec.Limit(item)
	if r.Spread < 0 {
		r.settle(Look, "The caps came nearer by %s, which tightening cannot do.", length(-r.Spread))
		r.ask("Were both readings taken at the same places, with the caps torqued and casting and micrometer equally warm?")
		return r, nil
	}
	if r.check("spread of the caps", r.Spread, l) == Look {
		r.sayMore(r.Spread < l.Low, in.BySpreader)
	}
	if r.Doubt > 0 && math.Min(math.Abs(r.Spread-l.Low), math.Abs(l.High-r.Spread)) < r.Doubt && l.Low > 0 {
		r.note("The readings repeat within %s, and the spread is nearer than that to the end of its range.", length(r.Doubt))
	}
	r.feel(in)
	r.finish()
	r.note("Casting and micrometer equally warm: over such a length iron grows %s for each degree.", length(ironExpansion*before))
	r.tellOthers(l)
	return r, nil
}

func (r *SpreadResult) sayMore(more, spreader bool) {
	switch {
	case spreader:
		r.say("Take the spreader back: it must not stretch the casting further.")
	case more:
		r.say("Both adjusters tighter by the same count.")
	default:
		r.say("Both adjusters slacker by the same count and one more, then one notch tighter. Last move tightening.")
	}
}

// feel compares the torques of the two adjusters: a stiff thread takes preload
// for itself.
func (r *SpreadResult) feel(in CapSpread) {
	left, right := in.LeftFeel, in.RightFeel
	if !left.Taken || !right.Taken || left.SI == 0 && right.SI == 0 {
		return
	}
	share := math.Abs(left.SI-right.SI) / max(left.SI, right.SI)
	r.line("", "", "left and right adjuster differ in feel by", share, quantity.Share, axle.Measured, "difference over the larger")
	if r.check("difference of feel", share, in.Spec.Limit(FeelRatio)) == Look {
		stiff := Left
		if right.SI > left.SI {
			stiff = Right
		}
		r.say("Look at the thread of the %s adjuster and of its bore: a damaged first thread feels like preload.", stiff)
	}
}

// several is the mean of repeated readings and the variance of that mean.
func (s *sheet) several(field, words string, readings []Reading) (m, variance float64) {
	var xs []float64
	for _, x := range readings {
		if x.Taken {
			s.optional(field, x, quantity.Length, 0, 1.5, "a distance such as 389.00 mm")
			xs = append(xs, x.SI)
		}
	}
	if len(xs) == 0 {
		s.waits(words)
		return 0, 0
	}
	for _, x := range xs {
		m += x / float64(len(xs))
	}
	if len(xs) > 1 {
		for _, x := range xs {
			variance += (x - m) * (x - m) / float64(len(xs)-1) / float64(len(xs))
		}
	}
	return m, variance
}

func mean(readings []Reading) string {
	n := 0
	for _, x := range readings {
		if x.Taken {
			n++
		}
	}
	if n == 1 {
		for _, x := range readings {
			if x.Taken {
				return x.source()
			}
		}
	}
	return "mean of " + turns(float64(n), "reading", "readings")
}

// NotchPreload asks for the side preload by counting notches from zero float.
type NotchPreload struct {
	Spec        Spec
	Adjusters   Adjusters
	Left, Right Reading // notches each adjuster was tightened past zero float
}

// SidePreloadByNotches returns how far the adjusters have closed past zero
// float.
func SidePreloadByNotches(in NotchPreload) (SpreadResult, error) {
	var s sheet
	var r SpreadResult
	s.spec(in.Spec)
	s.adjusters(in.Adjusters)
	const count = "notches past zero float, such as 1"
	s.need("Left", "notches of the left adjuster past zero float", in.Left, quantity.Number, 0, 20, count)
	s.need("Right", "notches of the right adjuster past zero float", in.Right, quantity.Number, 0, 20, count)
	if err := s.err(); err != nil {
		return SpreadResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	both := in.Left.SI + in.Right.SI
	r.Spread = both * in.Adjusters.notch()
	r.measured("", "n_L", "notches of the left adjuster", in.Left, quantity.Number)
	r.measured("+", "n_R", "notches of the right adjuster", in.Right, quantity.Number)
	r.line("×", "Δa", "one notch", in.Adjusters.notch(), quantity.Length, axle.Computed, "pitch over notches")
	r.computed("=", "q", "the adjusters close by", r.Spread, quantity.Length, "")
	l := in.Spec.Limit(SideNotches)
	r.check("left adjuster, notches past zero float", in.Left.SI, l)
	r.check("right adjuster, notches past zero float", in.Right.SI, l)
	if in.Left.SI != in.Right.SI {
		r.settle(Look, "The two sides differ: the preload is the same on both bearings, but the crown wheel has moved.")
		r.say("Measure lash again.")
	}
	r.finish()
	spread := in.Spec.Limit(SideSpread)
	r.note("The caps spread by less than the adjusters close, for the bearings give too. By spread the range is %s.", spread.Text())
	return r, nil
}
