package setup

import "slices"

// State says how a step of setting-up stands.
type State string

// The states, from the best to the worst.
const (
	Fine   State = "fine"
	NotYet State = "not yet" // something still has to be measured or said
	Look   State = "look"    // outside its range, or in doubt: correct it or explain it
	Stop   State = "stop"    // not to go on, unless a named person gives a reason
)

var order = []State{"", Fine, NotYet, Look, Stop}

// Worst returns the worst of some states, Fine where there are none.
func Worst(states ...State) State {
	worst := Fine
	for _, s := range states {
		if slices.Index(order, s) > slices.Index(order, worst) {
			worst = s
		}
	}
	return worst
}

// Symbol stands beside the word wherever a state is shown, so that nothing
// hangs on a colour.
func (s State) Symbol() string {
	switch s {
	case Fine:
		return "✓"
	case Look:
		return "△"
	case Stop:
		return "✕"
	}
	return "·"
}
