package axle

import (
	"reflect"

	"axlewright/calc/gear"
)

// words lists what a word of each kind may be. The reader and the schema go by
// it.
var words = map[reflect.Type][]string{
	reflect.TypeFor[Hand]():     {string(gear.LeftHand), string(gear.RightHand)},
	reflect.TypeFor[Flank]():    {string(DriveFlank), string(CoastFlank)},
	reflect.TypeFor[Facing]():   {string(AwayFromNose), string(TowardsNose)},
	reflect.TypeFor[Drive]():    {string(Open), string(LimitedSlip), string(Locked)},
	reflect.TypeFor[Position](): {string(Front), string(Rear)},
	reflect.TypeFor[Going]():    {string(Forward), string(Overrun), string(Reverse)},
	reflect.TypeFor[Freedom]():  freedomWords(),
	reflect.TypeFor[Use](): {
		string(Road), string(Farm), string(Forest), string(Towing), string(Expedition), string(Competition), string(Rock), string(Salt), string(Original),
	},
	reflect.TypeFor[Fault](): {
		string(HeelBreaks), string(ShockFracture), string(PinionStem), string(HeadBearing), string(CapWalk), string(OilStarved),
	},
}

func freedomWords() (list []string) {
	for _, f := range Freedoms {
		list = append(list, string(f))
	}
	return list
}
