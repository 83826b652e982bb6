package setup

import (
	"fmt"
	"strings"

	"axlewright/axle"
	"axlewright/quantity"
)

// An Answer is what a step of setting-up says, ready for a page or a paper.
type Answer struct {
	State  State
	Reason string   // why it stands so, in whole sentences
	Say    []string // what to do, one instruction each, in order
	Ask    []string // to be settled before the figures are believed
	Notes  []string // what would change it, customs of the trade with their tags
	Sum    []Line   // the sum, line by line
	Checks []Check  // readings beside what is allowed
}

// A Line is one line of a sum.
type Line struct {
	Sign    string // "", "+", "−", "×", "÷" or "=": how it enters the sum
	Symbol  string
	Meaning string
	Value   float64 // coherent SI
	Unit    string  // coherent SI unit, "m"
	Shown   string  // in both systems of units
	Origin  axle.Origin
	Source  string // "typed 54.2 thou", "maker's page 12-4", "geometry of the pair"
}

// A Check is one reading beside the range allowed for it.
type Check struct {
	Label   string
	Value   float64 // coherent SI
	Unit    string
	Shown   string
	Allowed Limit
	Range   string // the range in both systems of units
	From    string // where the range is from, with its tag
	State   State
	Reason  string
}

// settle makes the state s where that is worse, and keeps the reasons of the
// worst state only.
func (a *Answer) settle(s State, format string, args ...any) {
	reason := fmt.Sprintf(format, args...)
	switch {
	case Worst(a.State, s) == s && a.State != s:
		a.State, a.Reason = s, reason
	case a.State == s && reason != "" && !strings.Contains(a.Reason, reason):
		a.Reason = strings.TrimSpace(a.Reason + " " + reason)
	}
}

func (a *Answer) say(format string, args ...any) { a.Say = append(a.Say, fmt.Sprintf(format, args...)) }
func (a *Answer) ask(format string, args ...any) { a.Ask = append(a.Ask, fmt.Sprintf(format, args...)) }
func (a *Answer) note(format string, args ...any) {
	a.Notes = append(a.Notes, fmt.Sprintf(format, args...))
}

// line adds a line to the sum.
func (a *Answer) line(sign, symbol, meaning string, value float64, dim quantity.Dimension, origin axle.Origin, source string) {
	a.Sum = append(a.Sum, Line{
		Sign: sign, Symbol: symbol, Meaning: meaning, Value: value, Unit: dim.Unit(),
		Shown: shown(value, dim), Origin: origin, Source: source,
	})
}

// measured adds a reading to the sum, with the text as it was typed.
func (a *Answer) measured(sign, symbol, meaning string, r Reading, dim quantity.Dimension) {
	a.line(sign, symbol, meaning, r.SI, dim, axle.Measured, r.source())
}

// computed adds what the lines above give.
func (a *Answer) computed(sign, symbol, meaning string, value float64, dim quantity.Dimension, how string) {
	a.line(sign, symbol, meaning, value, dim, axle.Computed, how)
}

// check holds a reading against a limit, takes over its state and tells it.
func (a *Answer) check(label string, value float64, l Limit) State {
	c := l.judge(label, value)
	a.take(c)
	return c.State
}

// take takes over a check. A reading that is fine tells nothing as long as
// others may not be.
func (a *Answer) take(c Check) {
	a.Checks = append(a.Checks, c)
	if c.State == Fine {
		a.settle(Fine, "")
		return
	}
	a.settle(c.State, "%s", c.Reason)
}

// only holds a reading against a limit without letting it decide.
func (a *Answer) only(label string, value float64, l Limit) State {
	c := l.judge(label, value)
	a.Checks = append(a.Checks, c)
	return c.State
}

// done gives an answer that nothing has settled for worse the state Fine.
func (a *Answer) done(format string, args ...any) {
	if a.State == "" || a.State == Fine && a.Reason == "" {
		a.settle(Fine, format, args...)
	}
}

// finish is done where the checks say it all.
func (a *Answer) finish() {
	if len(a.Checks) == 1 {
		a.done("%s", a.Checks[0].Reason)
		return
	}
	a.done("All readings are within their ranges.")
}
