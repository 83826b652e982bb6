package setup

import "math"

// A band is what the trade, or a manual for one axle, says of an item. Figures
// tagged Published were seen in workshop manuals for one axle each and are given
// without its name; the others are customs without a source.
type band struct {
	item            Item
	kinds           []Kind // none is any axle; the band of some kinds stands before that of any
	low, high       float64
	aimLow, aimHigh float64
	tag             Tag
	note            string
	last            bool // said by others only, never the range to work to
}

// halfToAll is how ranges for bearings that have run follow from those for new
// ones: published is that they lose up to half of their drag.
const halfToAll = "half to all of the drag of new bearings"

const (
	mm        = 1e-3
	poundInch = 0.1129848290276167
)

var (
	lightTrucks = []Kind{LightTruck75, LightTruck85, LightTruck95}
	smallTrucks = []Kind{LightTruck75, LightTruck85}
	heavier     = []Kind{HeavyShimmed, HeavyTruck}

	squareLimit = math.Atan(0.03 / 100)
	lineLimit   = math.Atan(0.05 / 140)
)

// bands holds the ranges in the order of the work; of several that fit a kind
// the first is the range to work to, the rest are told beside it.
var bands = []band{
	{item: BoreRound, high: 0.03 * mm, tag: Custom},
	{item: BoreLine, high: lineLimit, tag: Custom, note: "0.05 mm (2 thou) over 140 mm; rollers stand 1 to 2 minutes before life falls"},
	{item: AxisOffset, high: 0.05 * mm, tag: Custom},
	{item: AxisSquare, high: squareLimit, tag: Custom, note: "0.03 mm over 100 mm"},
	{item: FaceFlat, high: 0.10 * mm, tag: Custom, note: "overall"},
	{item: BoreRescue, high: 0.30 * mm, tag: Custom, note: "castings welded without a jig come out 0.1 to 0.3 mm; beyond it they are scrap"},
	{item: CupGap, high: 0.0381 * mm, tag: Published, note: "0.0015 in must not enter"},
	{item: CapRegister, high: 0.05 * mm, tag: Custom, note: "total; more and the cap walks"},

	{item: MarkSize, high: 0.25 * mm, tag: Custom, note: "marks beyond it are mostly another number or another unit"},
	{item: ShimChange, high: 0.30 * mm, tag: Custom, note: "more is mostly a wrong step of the block, a baffle counted as shim, or a bearing of another height"},
	{item: ShimLeft, high: 0.0127 * mm, tag: Published, note: "half of a step of 0.025 mm (1 thou)"},

	{item: PinionNew, kinds: []Kind{SmallPassenger}, low: 0.7, high: 1.0, tag: Published, note: "small or older axle"},
	{item: PinionNew, kinds: []Kind{LightAdjusted}, low: 2.0, high: 4.5, tag: Published, note: "8.9 in class, 20 to 40 lbf·inch"},
	{item: PinionNew, kinds: []Kind{LightTruck75}, low: 24 * poundInch, high: 32 * poundInch, tag: Published, note: "7.5 in wheel"},
	{item: PinionNew, kinds: []Kind{LightTruck85, LightTruck95}, low: 20 * poundInch, high: 25 * poundInch, tag: Published, note: "8.5 and 9.5 in wheel"},
	{item: PinionNew, kinds: []Kind{HeavyShimmed}, low: 17 * poundInch, high: 30 * poundInch, tag: Published, note: "big axle"},
	{item: PinionNew, kinds: []Kind{HeavyTruck}, low: 0.8, high: 1.2, tag: Published, note: "heavy truck"},
	{item: PinionNew, low: 2.5, high: 5.5, tag: Published, note: "a sports axle", last: true},
	{item: PinionNew, low: 0, high: 96 * poundInch, tag: Published, note: "one manual prints this ceiling, far above all others: do not aim for it", last: true},
	{item: PinionUsed, kinds: []Kind{LightAdjusted}, low: 1.0, high: 2.0, tag: Published, note: "8.9 in class, 10 to 20 lbf·inch"},
	{item: PinionUsed, kinds: []Kind{LightTruck75}, low: 8 * poundInch, high: 12 * poundInch, tag: Published, note: "7.5 in wheel"},
	{item: PinionUsed, kinds: []Kind{LightTruck85, LightTruck95}, low: 10 * poundInch, high: 15 * poundInch, tag: Published, note: "8.5 and 9.5 in wheel"},
	{item: PinionUsed, kinds: []Kind{SmallPassenger}, low: 3 * poundInch, high: 9 * poundInch, tag: WorkedOut, note: halfToAll + "; small or older axles are printed with about 5 lbf·inch"},
	{item: PinionUsed, kinds: []Kind{HeavyShimmed}, low: 8.5 * poundInch, high: 30 * poundInch, tag: WorkedOut, note: halfToAll},
	{item: PinionUsed, kinds: []Kind{HeavyTruck}, low: 0.4, high: 1.2, tag: WorkedOut, note: halfToAll},
	{item: PinionUsed, low: 0.5 * 20 * poundInch, high: 20 * poundInch, tag: Published, note: "bearings lose up to half of their drag when run in", last: true},
	{item: PinionQuery, high: 5.0, tag: Custom, note: "more is mostly foot for inch"},
	{item: SealDrag, low: 0.3, high: 0.6, tag: Custom},
	{item: TotalRise, low: 0.8, high: 1.24, tag: Published, note: "total is pinion and this, 7 to 11 lbf·inch"},
	{item: TotalRise, low: 2 * poundInch, high: 4 * poundInch, tag: Published, note: "another axle, 2 to 4 lbf·inch, then 3 lugs", last: true},
	{item: CentreDrag, low: 0.6, high: 0.7, tag: Published},

	{item: SideSpread, kinds: heavier, low: 0.15 * mm, high: 0.33 * mm, tag: Custom, note: "heavier axles"},
	{item: SideSpread, low: 0.20 * mm, high: 0.30 * mm, tag: Published, note: "light axles"},
	{item: SideSpread, low: 0.20 * mm, high: 0.25 * mm, tag: Published, note: "shims of 0.10 mm beyond zero each side, or 0.25 mm in all", last: true},
	{item: SideNotches, low: 1, high: 1, tag: Published},
	{item: SpreaderReach, high: 0.30 * mm, tag: Published},
	{item: FeelRatio, high: 0.20, tag: Custom, note: "more and the thread wants looking at"},

	{item: WheelRunOut, kinds: []Kind{SmallPassenger}, high: 0.05 * mm, tag: Published, note: "passenger"},
	{item: WheelRunOut, kinds: lightTrucks, high: 0.20 * mm, tag: Published, note: "light truck"},
	{item: WheelRunOut, kinds: []Kind{HeavyTruck}, high: 0.25 * mm, tag: Published, note: "heavy"},
	{item: WheelRunOut, high: 0.10 * mm, aimHigh: 0.076 * mm, tag: Published, note: "general"},
	{item: SeatRunOut, high: 0.05 * mm, aimHigh: 0.03 * mm, tag: Custom},
	{item: FlangeRunOut, high: 0.13 * mm, aimHigh: 0.10 * mm, tag: Custom},

	{item: Lash, kinds: []Kind{SmallPassenger}, low: 0.10 * mm, high: 0.15 * mm, tag: Published, note: "small passenger"},
	{item: Lash, kinds: []Kind{LightAdjusted}, low: 0.076 * mm, high: 0.177 * mm, tag: Published, note: "light 4x4 with adjusters"},
	{item: Lash, kinds: smallTrucks, low: 0.13 * mm, high: 0.23 * mm, tag: Published, note: "7.5 to 8.5 in wheel"},
	{item: Lash, kinds: []Kind{LightTruck95}, low: 0.075 * mm, high: 0.25 * mm, aimLow: 0.125 * mm, aimHigh: 0.20 * mm, tag: Published, note: "9.5 in wheel, 0.125 to 0.20 ± 0.05 mm"},
	{item: Lash, kinds: []Kind{HeavyShimmed}, low: 0.15 * mm, high: 0.27 * mm, tag: Published, note: "heavier 4x4 rear, shimmed"},
	{item: Lash, kinds: []Kind{HeavyTruck}, low: 0.3 * mm, high: 0.4 * mm, tag: Published, note: "heavy truck"},
	{item: Lash, low: 0.25 * mm, high: 0.25 * mm, tag: Published, note: "small truck, new gears", last: true},
	{item: LashVariation, high: 0.07 * mm, aimHigh: 0.05 * mm, tag: Published},
	{item: LashVariation, high: 0.10 * mm, tag: Published, note: "another axle", last: true},
	{item: DepthStep, low: 0.05 * mm, high: 0.10 * mm, tag: Custom},

	{item: PegGap, low: 0.20 * mm, high: 0.30 * mm, tag: Custom, note: "0.25 mm to aim for"},
	{item: PegGap, low: 0.15 * mm, high: 0.30 * mm, tag: Custom, note: "200 to 230 mm wheels, cold", last: true},
	{item: PegGap, low: 0.25 * mm, high: 0.38 * mm, tag: Published, note: "a factory thrust screw", last: true},
	{item: PegGap, low: 0.30 * mm, high: 0.60 * mm, tag: Published, note: "a factory stop bolt", last: true},
	{item: PegGap, low: 0.20 * mm, high: 0.50 * mm, tag: Disputed, note: "touch, then back a flat or two", last: true},
	{item: PegGap, low: 0.60 * mm, high: 1.00 * mm, tag: Custom, note: "quoted for heavy trucks, no source found", last: true},
	{item: PegTight, low: 0.15 * mm, high: 0.40 * mm, tag: Custom},
	{item: PegSlack, low: 0.15 * mm, high: 0.40 * mm, tag: Custom},
	{item: PegLockMove, low: 0.03 * mm, high: 0.08 * mm, tag: Custom},
	{item: PegRunOut, high: 0.50, tag: Custom},
	{item: PegLockTorque, low: 30, high: 60, tag: Custom},
	{item: BoltUse, high: 0.90, aimLow: 0.60, aimHigh: 0.80, tag: Custom, note: "of proof load; 75 % is the usual aim"},
}

// peggedRunOut is the range of the back face where a peg stands behind it: run-out
// eats the peg's gap.
var peggedRunOut = band{item: WheelRunOut, high: 0.10 * mm, aimHigh: 0.08 * mm, tag: Custom, note: "a build with a peg"}
