package quantity

import (
	"slices"
	"strings"
)

// warning is for unit spellings that one would expect to work and that must
// not, because they leave open what was meant. In says, # is the number.
type warning struct {
	dims   []Dimension // none is any
	spelt  string      // as unitKey gives it, in small letters, separated by spaces
	reason Reason
	says   string
}

var warnings = []warning{
	{[]Dimension{Torque}, "lb lbs lbf pound pounds", AmbiguousText,
		"a torque in pounds needs its arm, and inch and foot differ 12 times: write # lbf·ft or # lbf·in"},
	{[]Dimension{Torque}, "kg kgf kilo", AmbiguousText,
		"a torque in kilograms needs its arm: write # kgf·m or # kgf·cm"},
	{[]Dimension{Torque}, "n kn", AmbiguousText,
		"a torque needs its arm: write # N·m"},
	{[]Dimension{Force}, "lb lbs pound pounds", WrongDimension,
		"expected a force, got a mass: write # lbf if the pull of # lb is meant"},
	{[]Dimension{Force}, "kg", WrongDimension,
		"expected a force, got a mass: write # kgf if the pull of # kg is meant"},
	{nil, "ton tons", AmbiguousText,
		"a ton may be metric, British or American: write # t if it is 1000 kg, or give kg or lb"},
	{[]Dimension{Volume}, "pt pts pint pints", AmbiguousText,
		"British and American pints differ by a fifth: write # UK pt or # US pt"},
	{[]Dimension{Volume}, "qt quart quarts", AmbiguousText,
		"British and American quarts differ by a fifth: write # UK qt or # US qt"},
	{[]Dimension{Volume}, "gal gallon gallons", AmbiguousText,
		"British and American gallons differ by a fifth: write # UK gal or # US gal"},
	{[]Dimension{Length}, "mil mils", AmbiguousText,
		"mil is a thou to some and a millimetre to others: write # thou or # mm"},
	{[]Dimension{Angle}, "min mins minute minutes", AmbiguousText,
		"minutes may be of time: write minutes of arc as #′ or # arcmin"},
	{[]Dimension{TemperatureDifference}, "°c c degc deg·c °·c celsius", AmbiguousText,
		"expected a difference of temperature, which is written in K so that nobody takes it for a temperature: write # K"},
	{[]Dimension{TemperatureDifference}, "°f f degf deg·f °·f fahrenheit", AmbiguousText,
		"expected a difference of temperature, got a temperature: write # Δ°F, or give it in K"},
}

// warn returns what there is to say against a spelling, with the number as
// typed filled in.
func warn(dim Dimension, spelling, typed string) (Reason, string, bool) {
	key := strings.ToLower(unitKey(spelling))
	for _, w := range warnings {
		if len(w.dims) > 0 && !slices.Contains(w.dims, dim) {
			continue
		}
		if slices.Contains(strings.Fields(w.spelt), key) {
			return w.reason, strings.ReplaceAll(w.says, "#", typed), true
		}
	}
	return "", "", false
}
