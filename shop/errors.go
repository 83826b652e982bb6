package shop

import (
	"errors"
	"fmt"
	"strings"
	"time"
)

// Code is the kind of an error: what the caller can do about it.
type Code string

// The codes.
const (
	Invalid   Code = "invalid"   // what was given is wrong: Field says where
	NotFound  Code = "not found" // there is no such job, card, person, file
	Conflict  Code = "conflict"  // somebody else was first: Clash carries both
	Stopped   Code = "stopped"   // a stop stands at this step: Stop says which
	Forbidden Code = "forbidden" // this person's role may not do that
	SignIn    Code = "sign in"   // nobody, or no longer, signed in; wrong name or secret
	TooMany   Code = "too many"  // too many tries: Wait says how long
	Short     Code = "short"     // not enough in stock to reserve
	Damaged   Code = "damaged"   // a record or a file is not what it was when written
	Full      Code = "full"      // no room on the disk
	InUse     Code = "in use"    // another program has this shop open
	TooLarge  Code = "too large" // a photograph, file or text is beyond its limit
	Closed    Code = "closed"    // the store is closed or lost its connection
	Internal  Code = "internal"  // a fault of the program or machine: log Cause, do not show it
)

// Error is the only error type that leaves this package and the stores.
type Error struct {
	Code  Code
	Says  string // one plain sentence for the person at the bench
	Field string // what it is about: "weld/amps/3" in a record, "name" in a card; may be empty
	Cause error  // may be nil

	Clash *Clash        // of Conflict between entries or cards
	Stop  *StandingStop // of Stopped
	Wait  time.Duration // of TooMany
}

func (e *Error) Error() string {
	text := e.Says
	if e.Field != "" {
		text = e.Field + ": " + text
	}
	if e.Cause != nil {
		text = strings.TrimSuffix(text, ".") + " (" + strings.TrimSuffix(e.Cause.Error(), ".") + ")."
	}
	return text
}

func (e *Error) Unwrap() error { return e.Cause }

// A Clash is two writings in one place. Exactly one pair is set.
type Clash struct {
	Stands  *Entry // what is there now
	Refused *Entry // what was sent; not sealed, so without number and hash

	StandsCard  *Card
	RefusedCard *Card
}

// CodeOf returns the code of err: of the first *Error in its chain, Internal
// for any other error, "" for nil.
func CodeOf(err error) Code {
	var e *Error
	switch {
	case err == nil:
		return ""
	case errors.As(err, &e):
		return e.Code
	}
	return Internal
}

// Fault makes an *Error without field or cause.
func Fault(code Code, says string, args ...any) *Error {
	if len(args) > 0 {
		says = fmt.Sprintf(says, args...)
	}
	return &Error{Code: code, Says: says}
}

// At returns e with its field set.
func (e *Error) At(field string) *Error {
	e.Field = field
	return e
}

// Because returns e with its cause set.
func (e *Error) Because(cause error) *Error {
	e.Cause = cause
	return e
}
