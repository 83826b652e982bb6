package axle

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"axlewright/quantity"
)

// Origin says where a figure came from. It is shown wherever the figure is.
type Origin string

// The origins, from the surest to the least sure.
const (
	Measured Origin = "measured" // on this part, by this shop
	Maker    Origin = "maker"    // the maker's page, drawing or catalogue
	Trade    Origin = "trade"    // custom of the trade, no source
	Computed Origin = "computed" // by a formula of this program
	Assumed  Origin = "assumed"  // nobody knows; a guess with a spread
)

// Shape is the kind of distribution that a doubt has.
type Shape string

// The shapes of a doubt.
const (
	Exact      Shape = ""           // no doubt: tooth numbers, choices
	Normal     Shape = "normal"     // Low and High are two standard deviations away
	Lognormal  Shape = "lognormal"  // the same on the logarithm: for "± 20 %"
	Uniform    Shape = "uniform"    // anything between Low and High alike: for "0.1..0.3"
	Triangular Shape = "triangular" // between Low and High, most likely Value
	Discrete   Shape = "discrete"   // one of Choices
)

// A Number is one figure and how sure we are of it. Value, Low and High are in
// coherent SI.
type Number struct {
	Value     float64
	Low, High float64 // ends of the doubt, see Shape; both equal Value when exact
	Shape     Shape
	Origin    Origin
	ByDefault bool   // the doubt is the catalogue's default for this kind of figure
	Certain   bool   // stated to be exact, so that no default doubt applies
	Kind      string // the dimension in plain words, "length"
	Text      string // as typed; of a mapping its value and spread
	Note      string // as typed
	Line      int    // in its file, from 1

	Choices []Choice // of a discrete figure, rising; Value is the likeliest

	typed  string // the mapping as typed, so that it can be written again
	bounds bounds // what a figure in its place can be at all
}

// A Choice is one value that a discrete figure may have.
type Choice struct {
	Value float64
	Share float64 // of all cases; the shares of a figure add up to 1
}

// bounds cut the tails of a doubt off where they reach what cannot be: a share
// above one, a length below nothing. The zero value cuts nothing.
type bounds struct {
	cut      bool
	from, to float64 // probabilities of the uncut doubt at its cut ends
}

// Quantile returns the value that the figure stays below with probability p.
//
// Valid for 0 < p < 1. An exact figure returns its Value for every p.
func (n Number) Quantile(p float64) float64 { return n.AtScore(p, distuv.UnitNormal.Quantile(p)) }

// AtScore is Quantile for a caller that already has the normal score z of p;
// many figures are drawn with the same p.
func (n Number) AtScore(p, z float64) float64 {
	if n.bounds.cut {
		p = n.bounds.from + p*(n.bounds.to-n.bounds.from)
		z = distuv.UnitNormal.Quantile(p)
	}
	switch n.Shape {
	case Normal:
		return n.Value + z*(n.High-n.Low)/4
	case Lognormal:
		return n.Value * math.Exp(z*math.Log(n.High/n.Low)/4)
	case Uniform:
		return n.Low + p*(n.High-n.Low)
	case Triangular:
		width, left := n.High-n.Low, n.Value-n.Low
		if p*width <= left {
			return n.Low + math.Sqrt(p*width*left)
		}
		return n.High - math.Sqrt((1-p)*width*(width-left))
	case Discrete:
		sum := 0.0
		for _, c := range n.Choices {
			if sum += c.Share; p < sum {
				return c.Value
			}
		}
		return n.High
	}
	return n.Value
}

// keepWithin cuts the doubt off at least and most, which may be infinite. It
// does not move a figure that stays within them anyhow.
func (n *Number) keepWithin(least, most float64) {
	n.bounds = bounds{}
	if !n.Doubtful() {
		return
	}
	score := func(x float64) float64 { return (x - n.Value) * 4 / (n.High - n.Low) }
	switch n.Shape {
	case Normal:
	case Lognormal:
		if n.Value < 0 { // never reaches zero, which is all that can bound it
			return
		}
		score = func(x float64) float64 {
			return math.Log(math.Max(x, 0)/n.Value) * 4 / math.Log(n.High/n.Low)
		}
	default: // their ends were checked when they were read
		return
	}
	// Draws further out than this do not come up in any number of draws we make.
	const farOut = 9
	low, high := score(least), score(most)
	if low < -farOut && high > farOut {
		return
	}
	n.bounds = bounds{cut: true, from: distuv.UnitNormal.CDF(low), to: distuv.UnitNormal.CDF(high)}
}

// Doubtful says whether the figure can differ from its Value.
func (n Number) Doubtful() bool { return n.Shape != Exact && n.Low != n.High }

// Given says whether the figure was stated at all.
func (n Number) Given() bool { return n.Origin != "" }

// Of is a Number that must be of the dimension D names.
type Of[D dimensioned] struct{ Number }

// dimensioned is a marker type that names a dimension.
type dimensioned interface{ dimension() quantity.Dimension }

type (
	length        struct{}
	torque        struct{}
	force         struct{}
	stress        struct{}
	mass          struct{}
	angle         struct{}
	stiffness     struct{}
	tiltStiffness struct{}
	speed         struct{}
	turning       struct{}
	duration      struct{}
	pressureSpeed struct{}
	number        struct{}
	temperature   struct{}
)

func (length) dimension() quantity.Dimension        { return quantity.Length }
func (torque) dimension() quantity.Dimension        { return quantity.Torque }
func (force) dimension() quantity.Dimension         { return quantity.Force }
func (stress) dimension() quantity.Dimension        { return quantity.Pressure }
func (mass) dimension() quantity.Dimension          { return quantity.Mass }
func (angle) dimension() quantity.Dimension         { return quantity.Angle }
func (stiffness) dimension() quantity.Dimension     { return quantity.Stiffness }
func (tiltStiffness) dimension() quantity.Dimension { return quantity.RotationalStiffness }
func (speed) dimension() quantity.Dimension         { return quantity.Speed }
func (turning) dimension() quantity.Dimension       { return quantity.AngularSpeed }
func (duration) dimension() quantity.Dimension      { return quantity.Time }
func (pressureSpeed) dimension() quantity.Dimension { return quantity.PressureSpeed }
func (number) dimension() quantity.Dimension        { return quantity.Number }
func (temperature) dimension() quantity.Dimension   { return quantity.Temperature }

// The figures of a catalogue, each in coherent SI.
type (
	Length        = Of[length]        // m
	Torque        = Of[torque]        // N·m
	Force         = Of[force]         // N
	Stress        = Of[stress]        // Pa
	Mass          = Of[mass]          // kg
	Angle         = Of[angle]         // rad
	Stiffness     = Of[stiffness]     // N/m
	TiltStiffness = Of[tiltStiffness] // N·m/rad
	Speed         = Of[speed]         // m/s
	Turning       = Of[turning]       // rad/s
	Duration      = Of[duration]      // s
	PressureSpeed = Of[pressureSpeed] // Pa·m/s
	Ratio         = Of[number]        // dimensionless
	Temperature   = Of[temperature]   // K
)
