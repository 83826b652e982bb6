package shop

import "time"

// EntryKind is what an entry is for.
type EntryKind string

// The kinds of entry.
const (
	EntryOpened      EntryKind = "opened"      // the first of every record: number and shop
	EntrySet         EntryKind = "set"         // a field of a step filled, corrected or withdrawn
	EntryNote        EntryKind = "note"        // free words beside a step
	EntryPhoto       EntryKind = "photo"       // a photograph beside a step
	EntryMark        EntryKind = "mark"        // a step marked "done" or "not needed"
	EntryState       EntryKind = "state"       // where the job stands
	EntryOverride    EntryKind = "override"    // a stop overridden: who, why
	EntryAdvice      EntryKind = "advice"      // an answer of the sums, stored as printed
	EntryPlan        EntryKind = "weld plan"   // how its plates are to be welded, stored as printed
	EntryQuote       EntryKind = "quote"       // a quote, stored as given
	EntryPaper       EntryKind = "paper"       // a paper that was printed
	EntryCertificate EntryKind = "certificate" // number and hash signed with the shop's key
)

// An Entry is one line of a job's record: one value in one place, for good.
type Entry struct {
	Format   int       `json:"format"` // RecordFormat
	Job      ID        `json:"job"`
	Seq      int64     `json:"seq"`            // 1, 2, 3 … without gaps
	Prev     string    `json:"prev"`           // SHA-256 of the entry before, 64 hex digits; zeros in the first
	At       time.Time `json:"at"`             // when the shop's computer wrote it, UTC
	Taken    time.Time `json:"taken,omitzero"` // when it was typed, where that was earlier (a tablet out of reach)
	Who      By        `json:"who"`
	Kind     EntryKind `json:"kind"`
	Step     StepKey   `json:"step"`
	Item     string    `json:"item"`               // key of the field, or "note", "photo", "state", …
	Place    string    `json:"place,omitempty"`    // which of several: "1" to "8" round the wheel, "crown side"
	Corrects int64     `json:"corrects,omitempty"` // Seq of the entry of the same place that this one follows; 0 in the first
	Why      string    `json:"why,omitempty"`      // reason of a correction, withdrawal or override

	Instrument string `json:"instrument,omitempty"` // "dial gauge 3"
	Ticket     string `json:"ticket,omitempty"`     // given by the sender: the same ticket twice is written once
	Value      Value  `json:"value"`

	Limit   *Limit  `json:"limit,omitempty"`   // the range that stood beside the box
	Verdict Verdict `json:"verdict,omitempty"` // what was said of the value then

	Hash string `json:"-"` // SHA-256 of the entry's canonical JSON, once sealed
}

// RecordFormat is the number of the record's form, see RECORD.md.
const RecordFormat = 1

// By says who wrote an entry: the name is kept as it was.
type By struct {
	ID   ID     `json:"id"`
	Name string `json:"name"`
}

// Slot is the place of the entry within its job: "lash/heel/3".
func (e *Entry) Slot() Slot { return Slot{e.Step, e.Item, e.Place} }

// A Slot is a place of a record that holds at most one standing entry.
type Slot struct {
	Step  StepKey
	Item  string
	Place string
}

// String returns the slot as it stands in errors and in the store's index. The
// parts hold no stroke (checked when an entry is written).
func (s Slot) String() string {
	text := string(s.Step) + "/" + s.Item
	if s.Place != "" {
		text += "/" + s.Place
	}
	return text
}

// A Sealed is an entry as the store keeps it: its canonical JSON and hash, and
// beside it what the store indexes. Verify checks that they agree.
type Sealed struct {
	Job      ID
	Seq      int64
	Hash     string // SHA-256 of Body, hex
	Body     []byte // canonical JSON of the Entry
	Slot     string
	Corrects int64
	Ticket   string // unique in its job, may be empty
}

// A Head is the newest entry of a record. It is kept apart from the entries,
// so that a record with its end cut off is found.
type Head struct {
	Seq  int64
	Hash string
}
