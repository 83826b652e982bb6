package shop

import "time"

// A Line is a job as lists show it. It is made from the record by Job.Index
// and holds nothing that the record does not.
type Line struct {
	Job     ID        `json:"job"`
	Origin  ID        `json:"origin"` // the shop that opened it
	Number  int64     `json:"number"` // that shop's running number
	Stamped string    `json:"stamped,omitempty"`
	State   State     `json:"state"`
	Title   string    `json:"title,omitempty"` // "Brigg of Fellgate, hill-farm pick-up, rear"
	Casting string    `json:"casting,omitempty"`
	Works   []Work    `json:"works,omitempty"`
	Due     string    `json:"due,omitempty"` // day
	Next    StepKey   `json:"next,omitempty"`
	Gaps    int       `json:"gaps,omitempty"`
	Stops   int       `json:"stops,omitempty"` // standing and not overridden
	Marks   []Mark    `json:"marks,omitempty"`
	Outcome *Outcome  `json:"outcome,omitempty"` // once it was handed over
	Opened  time.Time `json:"opened"`
	Changed time.Time `json:"changed"`
}

// A Mark is a reason to look at a job that a list can be narrowed to.
type Mark string

// The marks.
const (
	MarkStop     Mark = "stop standing"
	MarkCoreOwed Mark = "core owed"            // a deposit is held and the core is not back
	MarkDeposit  Mark = "deposit to give back" // the core is back and the deposit is still held
	MarkReserved Mark = "parts set aside"      // and not yet used
	MarkFailed   Mark = "came back broken"     // a failure is recorded
	MarkWelds    Mark = "welds logged"         // what a run of weld took is in the record
	MarkForeign  Mark = "of another shop"      // imported from another shop
)

// Marks lists them.
var Marks = []Mark{MarkStop, MarkCoreOwed, MarkDeposit, MarkReserved, MarkFailed, MarkForeign, MarkWelds}

// An Index is what a job is found by.
type Index struct {
	Line    Line
	Numbers []string // folded numbers it may be asked for by: stamped, running, donor's (FoldNumber)
	Terms   []string // folded words (FoldWords) and the ends of long ones
	Uses    []Use
}

// A Use is a card that a job names, with the quantity where it is a lot.
type Use struct {
	Job      ID       `json:"job"`
	Kind     CardKind `json:"kind"`
	Card     ID       `json:"card"`
	Slot     string   `json:"slot"` // where in the record it is named
	Quantity float64  `json:"quantity,omitempty"`
	Reserved bool     `json:"reserved,omitempty"`
}

// Taken is how much of a lot jobs have.
type Taken struct {
	Used     float64
	Reserved float64
}

// A JobQuery narrows a list of jobs; everything set must hold.
type JobQuery struct {
	Number string   // folded (FoldNumber): one of the job's numbers begins with it
	Exact  bool     // Number is the whole number
	Terms  []string // folded (FoldWords): for each one, a word of the job begins with it
	States []State  // any of these
	Mark   Mark
	Kind   CardKind // the job names the card Kind, Card
	Card   ID

	Limit int        // 0 is 50; at most 500
	After *JobCursor // the lines after this one
}

// A JobCursor is the place of a line in a list.
type JobCursor struct {
	Changed time.Time
	Ordinal int64 // the store's own count of jobs
}

// A JobPage is part of a list.
type JobPage struct {
	Lines []Line
	Next  *JobCursor // nil at the end
}

// A CardQuery narrows a list of cards.
type CardQuery struct {
	Kind    CardKind
	Group   string   // what the cards belong to, see Card.Group; "" is all
	States  []string // any of these, see Card.State
	Terms   []string // folded: for each one, a word of the card begins with it
	Retired bool     // those put away too
	Limit   int      // 0 is 200; at most 5000
	After   *CardCursor
}

// A CardCursor is the place of a card in a list.
type CardCursor struct {
	Sort string // Card.Sort
	ID   ID
}

// A CardPage is part of a list.
type CardPage struct {
	Cards []Card
	Next  *CardCursor // nil at the end
}
