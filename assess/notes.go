package assess

import "axlewright/handbook"

// A Step is one line of shown working.
type Step struct {
	Symbol  string  `json:"symbol"`
	Meaning string  `json:"meaning"`
	Value   float64 `json:"value"` // coherent SI
	Unit    string  `json:"unit"`
	By      string  `json:"by,omitempty"` // the formula of the handbook, "bolt.stress-area", or plain words
	Source  string  `json:"source,omitempty"`
}

// notes collects the working of one link. A nil *notes collects nothing, which
// is how the draws run.
type notes struct{ steps []Step }

// by notes a value that a formula of calc gave, named as in Go: "bolt.StressArea".
func (n *notes) by(function, symbol, meaning string, value float64, unit string) {
	if n == nil {
		return
	}
	n.steps = append(n.steps, Step{
		Symbol: symbol, Meaning: meaning, Value: value, Unit: unit,
		By: handbook.NameOf(function), Source: handbook.Cite(function),
	})
}

// say notes a value with its reason in words.
func (n *notes) say(symbol, meaning string, value float64, unit, reason string) {
	if n == nil {
		return
	}
	n.steps = append(n.steps, Step{Symbol: symbol, Meaning: meaning, Value: value, Unit: unit, By: reason})
}
