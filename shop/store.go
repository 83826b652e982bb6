package shop

import (
	"context"
	"time"
)

// A Store keeps the data of one shop. It holds no rules: those are in Shop,
// which calls it. Package sqlstore is the one there is; package shoptest is
// what every Store must pass.
//
// All methods may be called from many goroutines at once. Errors are *Error,
// with Internal for what the caller can do nothing about.
type Store interface {
	// View runs read on a snapshot: everything it sees was true at one instant.
	// It never waits for an Update. Calling a writing method of the Tx is an
	// Internal error.
	View(ctx context.Context, read func(Tx) error) error

	// Update runs write alone: no other Update of this shop runs at the same
	// time, in this program or another, and it sees all earlier ones. If write
	// returns nil the changes are on the disk when Update returns nil; if write
	// returns an error or panics, or ctx ends, nothing has changed. When the
	// outcome cannot be known (the connection broke while committing) the error
	// is Closed, and the caller must look; entries with tickets may be sent again.
	Update(ctx context.Context, write func(Tx) error) error

	// PutFile keeps content under its SHA-256 (64 small hex digits), which it
	// returns. The content is on the disk when it returns. Putting the same
	// content again does nothing.
	PutFile(ctx context.Context, content []byte) (sha256 string, err error)

	// File returns content by its SHA-256: NotFound where there is none,
	// Damaged where it no longer has that hash.
	File(ctx context.Context, sha256 string) ([]byte, error)

	// Watch sends a Change after every Update that changed a job or a card,
	// from the time it returns, until ctx ends; then the channel is closed. A
	// reader that is too slow gets one Change with Missed set in place of those
	// it missed.
	Watch(ctx context.Context) (<-chan Change, error)

	// About says what the store is, for people and log lines; it holds no secret.
	About() string

	// Close waits for running calls and lets go of the shop. Later calls
	// return Closed.
	Close() error
}

// A Tx is what a Store offers inside View and Update. It must not be kept, nor
// used by two goroutines.
type Tx interface {
	RecordTx
	CardTx
	PeopleTx

	// Setting returns what PutSetting kept under key, nil where there is nothing.
	Setting(key string) ([]byte, error)
	PutSetting(key string, value []byte) error
	// Settings lists the keys that have a value, in the order of their bytes.
	Settings() ([]string, error)
}

// RecordTx keeps the records of jobs and what is found by.
type RecordTx interface {
	// AddJob makes a job with an empty record. An ID that exists is a Conflict.
	AddJob(id ID) error

	// Head returns the newest entry's number and hash; Seq is 0 in an empty
	// record. NotFound where there is no such job.
	Head(job ID) (Head, error)

	// Append adds entries to the record, the first following at, and makes the
	// last one the head. It is a Conflict if at is not the head, if a ticket is
	// in the record already, or if another entry of the record corrects the
	// same entry of the same slot.
	Append(job ID, at Head, entries []Sealed) error

	// Entries returns the record in order. NotFound where there is no such job.
	Entries(job ID) ([]Sealed, error)

	// PutIndex sets what the job is found by and listed as. It replaces the
	// former index wholly.
	PutIndex(job ID, index Index) error

	// Line returns the job's line, or NotFound.
	Line(job ID) (Line, error)

	// FindJobs returns lines, newest change first (by Line.Changed, then the
	// order of creation), as the query says.
	FindJobs(q JobQuery) (JobPage, error)

	// CountJobs counts the jobs in each state.
	CountJobs() (map[State]int, error)

	// Jobs returns up to limit IDs of jobs in the order in which they were
	// made, from the one after the given one ("" is the start).
	Jobs(after ID, limit int) ([]ID, error)

	// Uses returns which jobs use the card, in the order of creation of the jobs:
	// the newest uses where there are more than the limit.
	Uses(kind CardKind, card ID, limit int) ([]Use, error)

	// Taken returns, for each of the lots, what jobs have used of it and set aside.
	Taken(lots []ID) (map[ID]Taken, error)
}

// CardTx keeps cards with all their revisions.
type CardTx interface {
	// Card returns the newest revision, or NotFound.
	Card(kind CardKind, id ID) (Card, error)

	// PutCard keeps a new revision: card.Revision must be one more than the
	// standing one's (1 for a new card), else it is a Conflict with both.
	PutCard(card Card, terms []string) error

	// FindCards returns newest revisions, ordered by the bytes of Card.Sort; equal
	// ones in an order that does not change.
	FindCards(q CardQuery) (CardPage, error)

	// CardHistory returns all revisions, oldest first, or NotFound.
	CardHistory(kind CardKind, id ID) ([]Card, error)
}

// PeopleTx keeps what signing in needs. None of it is exported with a job.
type PeopleTx interface {
	// Session returns the session of that token hash, or NotFound.
	Session(tokenHash string) (Session, error)
	PutSession(s Session) error
	// DropSessions ends the sessions last seen before the time: those of one
	// person, or everybody's where person is "".
	DropSessions(person ID, before time.Time) error
	DropSession(tokenHash string) error
	// Sessions lists them, newest first.
	Sessions() ([]Session, error)

	// Tries returns how often signing in failed under a key (a name, an address).
	Tries(key string) (Tries, error)
	PutTries(key string, t Tries) error
	// DropTries forgets those whose last try was before the time.
	DropTries(before time.Time) error
}

// A Change says that something is new. Exactly one of Job, Card and Missed is set.
type Change struct {
	Job    ID       `json:"job,omitempty"`
	Seq    int64    `json:"seq,omitempty"` // of the job's newest entry
	Kind   CardKind `json:"kind,omitempty"`
	Card   ID       `json:"card,omitempty"`
	Missed bool     `json:"missed,omitempty"` // changes were lost: look at everything again
}
