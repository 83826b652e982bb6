package shop

// Origin says where a limit came from. It is shown wherever the limit is. The
// words are those of the catalogue.
type Origin string

// The origins, from the surest to the least sure.
const (
	Measured Origin = "measured" // on this part, by this shop
	Maker    Origin = "maker"    // a page of the maker's manual that the shop holds
	Trade    Origin = "trade"    // custom of the trade, or published for other axles
	Computed Origin = "computed"
	Assumed  Origin = "assumed"
)
