package shop

// A Stop refuses entries at some steps while its cause stands in the record.
// Nothing else in the program forces an order of work.
type Stop struct {
	Key      string
	Sentence string    // what the red border says
	Why      string    // what can happen
	Steps    []StepKey // where entries are refused; notes and photographs never are
	Owner    bool      // only the owner may override it
	stands   func(*Job) []*Entry
}

// A StandingStop is a stop whose cause stands in a job's record.
type StandingStop struct {
	Key      string    `json:"key"`
	Sentence string    `json:"sentence"`
	Why      string    `json:"why"`
	Steps    []StepKey `json:"steps"`
	May      []Role    `json:"may"`      // who may override it
	Because  []int64   `json:"because"`  // Seq of the entries that are its cause; empty where something is missing
	Override *Entry    `json:"override"` // set where it is overridden; it then refuses nothing
}
