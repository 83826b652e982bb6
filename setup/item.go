package setup

import "axlewright/quantity"

// An Item is one thing that has a range.
type Item string

// The items, in the order of the work.
const (
	BoreRound     Item = "out-of-round of a bore, caps torqued"
	BoreLine      Item = "side bores out of line"
	AxisOffset    Item = "pinion axis off its place beside the side axis"
	AxisSquare    Item = "pinion axis out of square"
	FaceFlat      Item = "flange face out of flat"
	BoreRescue    Item = "error that line-boring is worth"
	CupGap        Item = "feeler that enters behind a cup"
	CapRegister   Item = "side clearance of a cap in its register"
	MarkSize      Item = "mark on a pinion"
	ShimChange    Item = "change of the pinion shim"
	ShimLeft      Item = "what the shim pack leaves"
	PinionNew     Item = "pinion preload, new bearings, no seal"
	PinionUsed    Item = "pinion preload, used bearings, no seal"
	PinionQuery   Item = "pinion preload that is believed unasked"
	SealDrag      Item = "drag of the pinion seal"
	TotalRise     Item = "rise of turning torque with the crown wheel in"
	CentreDrag    Item = "turning torque of the diff centre alone"
	SideSpread    Item = "spread of the caps"
	SideNotches   Item = "notches past zero float, each adjuster"
	SpreaderReach Item = "stretch by a housing spreader"
	FeelRatio     Item = "difference of feel between the adjusters"
	WheelRunOut   Item = "run-out of the crown wheel's back face"
	SeatRunOut    Item = "run-out of the diff centre's flange face"
	FlangeRunOut  Item = "run-out of the pinion flange"
	Lash          Item = "lash"
	LashVariation Item = "variation of lash round the wheel"
	DepthStep     Item = "one step of pinion depth"
	PegGap        Item = "peg gap as set, cold"
	PegTight      Item = "peg gap at the tight spot, locked"
	PegSlack      Item = "peg gap at the slack spot, locked"
	PegLockMove   Item = "movement of the peg when it is locked"
	PegRunOut     Item = "run-out as a share of the peg gap"
	PegLockTorque Item = "peg lock nut"
	BoltUse       Item = "bolt preload as a share of proof load"
)

var itemDims = map[Item]quantity.Dimension{
	BoreLine: quantity.Angle, AxisSquare: quantity.Angle,
	PinionNew: quantity.Torque, PinionUsed: quantity.Torque, PinionQuery: quantity.Torque, SealDrag: quantity.Torque,
	TotalRise: quantity.Torque, CentreDrag: quantity.Torque, PegLockTorque: quantity.Torque,
	SideNotches: quantity.Number, FeelRatio: quantity.Share, PegRunOut: quantity.Share, BoltUse: quantity.Share,
}

// Dim is what the item is counted in; most are lengths.
func (i Item) Dim() quantity.Dimension {
	if dim, other := itemDims[i]; other {
		return dim
	}
	return quantity.Length
}

// Items returns every item that has a range, in the order of the work.
func Items() []Item {
	items := make([]Item, 0, len(bands))
	seen := map[Item]bool{}
	for _, b := range bands {
		if !seen[b.item] {
			seen[b.item] = true
			items = append(items, b.item)
		}
	}
	return items
}

// Kind is a kind of axle, as far as ranges of the trade tell them apart.
type Kind string

// The kinds.
const (
	SmallPassenger Kind = "small passenger"
	LightAdjusted  Kind = "light 4x4 with adjusters"
	LightTruck75   Kind = "light truck, 7.5 in wheel"
	LightTruck85   Kind = "light truck, 8.5 in wheel"
	LightTruck95   Kind = "light truck, 9.5 in wheel"
	HeavyShimmed   Kind = "heavier 4x4, shimmed"
	HeavyTruck     Kind = "heavy truck"
)

// Kinds returns the kinds of axle, small ones first.
func Kinds() []Kind {
	return []Kind{SmallPassenger, LightAdjusted, LightTruck75, LightTruck85, LightTruck95, HeavyShimmed, HeavyTruck}
}
