package casting

// Sort is a kind of feature. It gives a feature its usual reliability and tool.
type Sort string

// The sorts of feature.
const (
	Rib         Sort = "rib"
	Boss        Sort = "boss"
	Pad         Sort = "pad"
	Bore        Sort = "bore"
	Width       Sort = "width"
	Pitch       Sort = "pitch"
	Thread      Sort = "thread"
	Studs       Sort = "studs"
	Plug        Sort = "plug"
	FoundryMark Sort = "foundry mark"
	Number      Sort = "raised number"
	Date        Sort = "date"
	Paint       Sort = "paint"
	OldWork     Sort = "old work" // welds, sleeves, bushes of an earlier repair
)

// sorts holds the weights to start from. Ribs, bores, threads, number, date
// and paint are custom of the trade, no source; the others lie between them
// and are assumed.
//
// Again says whether looking twice helps: a rib or a bore is misread, but a
// number plate may come from another mould however often it is read.
var sorts = map[Sort]struct {
	trust float64
	tool  string
	again bool
}{
	Rib:         {0.9, "look", true},
	Boss:        {0.9, "look", true},
	Pad:         {0.85, "look", true},
	Bore:        {0.9, "bore gauge", true},
	Width:       {0.9, "caliper", true},
	Pitch:       {0.9, "caliper", true},
	Thread:      {0.85, "thread gauge", true},
	Studs:       {0.85, "look", true},
	Plug:        {0.6, "look", false},
	FoundryMark: {0.7, "look", false},
	Number:      {0.5, "look", false},
	Date:        {0.4, "look", false},
	Paint:       {0.1, "look", false},
	OldWork:     {0.9, "look", true},
}

// A Tool is a way to look or measure, and what it costs in the shop's own
// measure of trouble; one is a measurement with a caliper.
type Tool struct {
	Name string  `yaml:"name"`
	Cost float64 `yaml:"cost"`
}

// usualTools are the costs to start from: custom of the trade, no source.
var usualTools = []Tool{
	{"look", 0}, {"caliper", 1}, {"thread gauge", 1}, {"bore gauge", 2}, {"wall gauge", 2}, {"laboratory", 20},
}

// moment is what even a look costs: turning the casting over, finding the lamp.
const moment = 0.25
