package shop

// A Job is a record read: what stands in every place, what was there before.
type Job struct {
	ID      ID
	Number  int64
	Origin  ID // the shop that opened it
	Entries []Entry
}
