package setup

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/axle"
	"axlewright/quantity"
)

// A Reading is a figure that somebody measures or copies from a part. The zero
// Reading is one that has not been taken.
type Reading struct {
	SI    float64 // coherent SI
	Text  string  // as typed, empty where it was not typed
	Taken bool
}

// Read returns a reading that has been taken.
func Read(si float64) Reading { return Reading{SI: si, Taken: true} }

// Typed returns the reading that a person typed.
func Typed(q quantity.Quantity) Reading { return Reading{SI: q.SI, Text: q.Text, Taken: true} }

func (r Reading) source() string {
	if r.Text == "" {
		return ""
	}
	return "typed " + r.Text
}

// Spread is a figure with its doubt.
type Spread struct {
	Low, Likely, High float64 // coherent SI
}

func exactly(x float64) Spread { return Spread{x, x, x} }

// times keeps the ends in order for a negative factor.
func (s Spread) times(k float64) Spread {
	a, b := s.Low*k, s.High*k
	return Spread{min(a, b), s.Likely * k, max(a, b)}
}

func (s Spread) plus(x float64) Spread { return Spread{s.Low + x, s.Likely + x, s.High + x} }

func (s Spread) shown(dim quantity.Dimension) string {
	if math.Abs(s.High-s.Low) <= 1e-9*math.Abs(s.Likely) {
		return shown(s.Likely, dim)
	}
	return "about " + shown(s.Likely, dim) + ", from " + shownRange(s.Low, s.High, dim)
}

// A sheet collects what is wrong with the inputs of one question, and what is
// not there yet.
type sheet struct {
	found   axle.Findings
	missing []string
}

// number is a figure that must be there.
func (s *sheet) number(field string, value float64, dim quantity.Dimension, ok bool, expected string) {
	if ok && finite(value) {
		return
	}
	s.bad(field, "%s, expected %s", shown(value, dim), expected)
}

func (s *sheet) bad(field, format string, args ...any) {
	s.found = append(s.found, axle.Finding{Field: field, Problem: fmt.Sprintf(format, args...)})
}

// need is a reading that the answer waits for; words say what it is.
func (s *sheet) need(field, words string, r Reading, dim quantity.Dimension, low, high float64, expected string) {
	if !r.Taken {
		s.missing = append(s.missing, words)
		return
	}
	s.optional(field, r, dim, low, high, expected)
}

// optional is a reading that must be right where it is there.
func (s *sheet) optional(field string, r Reading, dim quantity.Dimension, low, high float64, expected string) {
	if r.Taken {
		s.number(field, r.SI, dim, r.SI >= low && r.SI <= high, expected)
	}
}

// waits notes something that the answer waits for.
func (s *sheet) waits(words string) { s.missing = append(s.missing, words) }

// choose is an answer to a question; until it is given the result waits for it.
func choose[T ~string](s *sheet, field, question string, got T, allowed ...T) {
	if got == "" {
		s.missing = append(s.missing, question)
		return
	}
	if !slices.Contains(allowed, got) {
		words := make([]string, len(allowed))
		for i, a := range allowed {
			words[i] = fmt.Sprintf("%q", string(a))
		}
		s.bad(field, "%q, expected %s", string(got), orList(words))
	}
}

// err returns everything wrong at once, nil where nothing is.
func (s *sheet) err() error {
	if len(s.found) == 0 {
		return nil
	}
	return s.found
}

// waiting settles the answer to NotYet where something is missing.
func (s *sheet) waiting(a *Answer) bool {
	if len(s.missing) == 0 {
		return false
	}
	a.settle(NotYet, "Still to come: %s.", strings.Join(s.missing, "; "))
	return true
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
