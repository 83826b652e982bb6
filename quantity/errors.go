package quantity

import (
	"fmt"
	"strconv"
)

// Reason says why a text was refused, for programs; the sentence is for people.
type Reason string

// The reasons for which Parse and ParseTyre refuse a text.
const (
	Empty          Reason = "empty"
	NotANumber     Reason = "not a number"
	AmbiguousText  Reason = "ambiguous" // two readings are possible
	NoUnit         Reason = "no unit"
	UnknownUnit    Reason = "unknown unit"
	WrongDimension Reason = "wrong dimension"
	BadSpread      Reason = "bad spread"
	OutOfRange     Reason = "out of range" // too large, too small, below absolute zero
	NotATyre       Reason = "not a tyre size"
)

// ParseError is the error of Parse and ParseTyre. Its message is one sentence:
// what was read, what was expected, and an example that would be right.
type ParseError struct {
	Text     string    // as typed
	Dim      Dimension // what was expected; empty for a tyre
	Reason   Reason
	Sentence string
}

func (e *ParseError) Error() string { return e.Sentence }

// refuse builds a ParseError whose sentence starts with the text as typed.
func refuse(text string, dim Dimension, reason Reason, format string, args ...any) *ParseError {
	sentence := shown(text) + ": " + fmt.Sprintf(format, args...)
	return &ParseError{Text: text, Dim: dim, Reason: reason, Sentence: sentence}
}

// expected is "a length such as 12 mm".
func expected(dim Dimension) string { return dim.phrase() + " such as " + dim.Example() }

// shown quotes what was typed, cut where it is too long to be repeated.
func shown(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return strconv.Quote(text)
}
