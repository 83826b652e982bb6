package shop

import "axlewright/axle"

// Origin says where a limit came from, in the words of the catalogue. It is
// shown wherever the limit is.
type Origin = axle.Origin

// The origins that a limit may have, from the surest to the least sure.
const (
	Measured = axle.Measured // on this part, by this shop
	Maker    = axle.Maker    // a page of the maker's manual that the shop holds
	Computed = axle.Computed // worked out from such ones
	Trade    = axle.Trade    // custom of the trade, or published for other axles
)
