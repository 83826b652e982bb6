package traction

import (
	"math"
	"slices"

	"axlewright/calc/check"
)

// DutyName names a use with a duty of its own.
type DutyName string

// The uses.
const (
	Road        DutyName = "road"
	Farm        DutyName = "farm"
	Forest      DutyName = "forest"
	Expedition  DutyName = "expedition"
	Rock        DutyName = "rock"
	Competition DutyName = "competition"
	Towing      DutyName = "towing"
)

// DutyNames lists the uses, from the mildest.
var DutyNames = []DutyName{Road, Towing, Expedition, Farm, Forest, Competition, Rock}

// assumption is the basis of every duty here.
const assumption = "assumption of the trade, no source: replace it with a log of the vehicle itself"

// Duty returns the duty supplied for a use: an assumption with a spread.
//
// Errors: *check.RangeError for a use that has none.
func (n DutyName) Duty() (Duty, error) {
	d, known := duties[n]
	if err := check.All("traction.Duty",
		check.Condition{Param: "name", Value: math.NaN(), Holds: known, Range: "road, farm, forest, expedition, rock, competition or towing"},
	); err != nil {
		return Duty{}, err
	}
	d.Name, d.Basis = n, assumption
	d.Blocks = slices.Clone(d.Blocks) // the caller may change his copy
	return d, nil
}

// duties holds share of moving time, torque as a fraction of the governing
// torque, speed in m/s and way of going.
var duties = map[DutyName]Duty{
	Road: {TorqueSpread: 1.4, ShareSpread: 1.5, Blocks: []DutyBlock{
		{"cruising", 0.62, 0.08, 22, Forward},
		{"hills", 0.14, 0.18, 16, Forward},
		{"pulling away", 0.06, 0.35, 5, Forward},
		{"pulling hard", 0.005, 0.70, 4, Forward},
		{"engine braking", 0.165, 0.06, 17, Overrun},
		{"parking", 0.01, 0.20, 1.2, Reverse},
	}},
	Towing: {TorqueSpread: 1.4, ShareSpread: 1.5, Blocks: []DutyBlock{
		{"cruising", 0.52, 0.16, 20, Forward},
		{"hills", 0.22, 0.35, 14, Forward},
		{"pulling away", 0.06, 0.60, 4, Forward},
		{"starting on a slope", 0.005, 0.90, 1.5, Forward},
		{"holding the trailer back", 0.175, 0.15, 14, Overrun},
		{"backing the trailer", 0.02, 0.40, 1.2, Reverse},
	}},
	Expedition: {TorqueSpread: 1.5, ShareSpread: 1.7, Blocks: []DutyBlock{
		{"road", 0.55, 0.12, 18, Forward},
		{"gravel", 0.25, 0.22, 10, Forward},
		{"sand and mud", 0.06, 0.55, 4, Forward},
		{"climbing", 0.03, 0.70, 2, Forward},
		{"at the limit", 0.005, 1.00, 1, Forward},
		{"downhill", 0.095, 0.10, 10, Overrun},
		{"backing", 0.01, 0.30, 1, Reverse},
	}},
	Farm: {TorqueSpread: 1.5, ShareSpread: 1.7, Blocks: []DutyBlock{
		{"lanes and yard", 0.45, 0.12, 9, Forward},
		{"field", 0.25, 0.30, 3.5, Forward},
		{"trailer up a bank", 0.08, 0.60, 2.5, Forward},
		{"stuck and out", 0.01, 1.00, 0.8, Forward},
		{"downhill", 0.15, 0.15, 6, Overrun},
		{"backing a trailer", 0.06, 0.30, 1.2, Reverse},
	}},
	Forest: {TorqueSpread: 1.5, ShareSpread: 1.8, Blocks: []DutyBlock{
		{"lanes", 0.30, 0.12, 8, Forward},
		{"tracks", 0.35, 0.30, 3, Forward},
		{"pulling timber", 0.10, 0.65, 1.2, Forward},
		{"stuck and out", 0.02, 1.00, 0.6, Forward},
		{"downhill", 0.15, 0.20, 4, Overrun},
		{"backing", 0.08, 0.40, 1, Reverse},
	}},
	Competition: {TorqueSpread: 1.5, ShareSpread: 2, Blocks: []DutyBlock{
		{"fast ground", 0.42, 0.30, 16, Forward},
		{"out of corners", 0.28, 0.65, 10, Forward},
		{"rough ground", 0.04, 0.50, 8, Forward},
		{"starts", 0.02, 1.00, 3, Forward},
		{"landings", 0.01, 0.90, 12, Forward},
		{"braking with the engine", 0.22, 0.25, 15, Overrun},
		{"backing out", 0.01, 0.40, 1.5, Reverse},
	}},
	Rock: {TorqueSpread: 1.6, ShareSpread: 2, Blocks: []DutyBlock{
		{"crawling", 0.50, 0.35, 0.8, Forward},
		{"steps", 0.18, 0.80, 0.4, Forward},
		{"a wheel lifted and dropped", 0.02, 1.00, 0.3, Forward},
		{"between rocks", 0.12, 0.15, 3, Forward},
		{"down a step", 0.08, 0.40, 0.5, Overrun},
		{"backing off", 0.10, 0.45, 0.5, Reverse},
	}},
}
