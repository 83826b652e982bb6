package shop

// A Stop refuses entries at some steps while its cause stands in the record.
// Nothing else in the program forces an order of work.
type Stop struct {
	Key      string
	Sentence string    // what the red border says
	Why      string    // what can happen
	Steps    []StepKey // where entries are refused; notes and photographs never are
	Items    []Slot    // single fields that are refused at other steps
	Owner    bool      // only the owner may override it

	// stands says whether the cause is there, and which entries are the cause:
	// none where it is that something has not been found out.
	stands func(*Job) (because []*Entry, yes bool)
}

// A StandingStop is a stop whose cause stands in a job's record.
type StandingStop struct {
	Key      string    `json:"key"`
	Sentence string    `json:"sentence"`
	Why      string    `json:"why"`
	Steps    []StepKey `json:"steps"`
	Items    []Slot    `json:"items,omitempty"`
	May      []Role    `json:"may"`      // who may override it
	Because  []int64   `json:"because"`  // Seq of the entries that are its cause; empty where it is not known
	Missing  bool      `json:"missing"`  // it stands because something has not been found out
	Override *Entry    `json:"override"` // set where it is overridden; it then refuses nothing
}
