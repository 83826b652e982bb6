package quantity

import (
	"math"
	"math/big"
	"regexp"
	"strings"
)

// Spread says how a quantity's doubt was typed. What a spread means, limits or
// a deviation, is for whoever reads it to decide: this package knows no
// distribution.
type Spread string

// The ways to type a spread.
const (
	NoSpread  Spread = ""
	PlusMinus Spread = "±"  // 12 mm ± 0.5 mm, 12 ± 0.5 mm, (12 ± 0.5) mm, 12 mm ± 4 %
	Range     Spread = ".." // 0.15..0.30 mm; SI is the middle
)

var (
	plusMinusSign = regexp.MustCompile(`±|\+/-|\+-`)
	bracketed     = regexp.MustCompile(`^\(([^()]*)\)([^()]*)$`)
	threeDots     = regexp.MustCompile(`^([^.]*(?:\.\d+)?)\.\.\.(\d+(?:[^.\d].*)?)$`) // 1...5 mm
	rangeSign     = regexp.MustCompile(`\.\.\.?| to |\x{2013}( ?[-+]?[.0-9])`)
)

// parseSpread reads a value and, if one is typed, its spread.
func parseSpread(text string, dim Dimension) (Quantity, error) {
	s := plainSpelling(text)
	shared := false // "(12 ± 0.5) mm": the unit belongs to both
	if m := bracketed.FindStringSubmatch(s); m != nil {
		s, shared = m[1]+" "+m[2], plusMinusSign.MatchString(m[1])
	}
	if at := plusMinusSign.FindAllStringIndex(s, -1); len(at) == 1 {
		return parsePlusMinus(text, s[:at[0][0]], s[at[0][1]:], dim, shared)
	} else if len(at) > 1 {
		return Quantity{}, refuse(text, dim, BadSpread, "it has more than one spread, expected %s ± 4 %%", dim.Example())
	}
	if m := threeDots.FindStringSubmatch(s); m != nil {
		return Quantity{}, refuse(text, dim, AmbiguousText, "three dots may hide a decimal point: write %s..%s or %s..0.%s", m[1], m[2], m[1], m[2])
	}
	if from, to, found := cutRange(s); found {
		return parseRange(text, from, to, dim)
	}
	t, err := parseTerm(text, s, dim)
	if err != nil {
		return Quantity{}, err
	}
	return settle(text, dim, Quantity{}, t, nil)
}

// cutRange splits "0.15..0.30 mm" or "0.15 to 0.30 mm". A dash is a range only
// between a number and a number: at the start it is a sign, before a letter a
// hyphen.
func cutRange(s string) (from, to string, found bool) {
	for start := 0; start < len(s); {
		m := rangeSign.FindStringSubmatchIndex(s[start:])
		if m == nil {
			break
		}
		begin, end := start+m[0], start+m[1]
		if m[2] >= 0 {
			end = start + m[2] // the sign or digit after a dash belongs to the number
		}
		if strings.TrimSpace(s[:begin]) != "" {
			return s[:begin], s[end:], true
		}
		start = end
	}
	return "", "", false
}

func parsePlusMinus(text, left, right string, dim Dimension, shared bool) (Quantity, error) {
	if strings.TrimSpace(left) == "" {
		return Quantity{}, refuse(text, dim, BadSpread, "a spread needs a value before it, expected %s ± 4 %%", dim.Example())
	}
	value, err := parseTerm(text, strings.TrimSpace(left), dim)
	if err != nil {
		return Quantity{}, err
	}
	half, relative, err := parseHalf(text, strings.TrimSpace(right), dim)
	if err != nil {
		return Quantity{}, err
	}
	if strings.HasPrefix(half.typed, "-") || strings.HasPrefix(half.typed, "–") {
		return Quantity{}, refuse(text, dim, BadSpread, "a spread is not negative: write %s ± %s", value.text(), strings.TrimLeft(half.text(), "-– "))
	}
	switch {
	case relative:
	case value.unit != nil && half.unit == nil:
		return Quantity{}, refuse(text, dim, NoUnit, "the spread has no unit: write %s ± %s", value.text(), term{typed: half.typed, unit: value.unit}.text())
	case value.unit == nil && half.unit != nil && kindOf[dim].plain && !shared:
		return Quantity{}, refuse(text, dim, AmbiguousText, "it is open whether the %s is in %s too: write %s %s ± %s %s, or both without %s",
			value.typed, half.unit.symbol, value.typed, half.unit.symbol, half.typed, half.unit.symbol, half.unit.symbol)
	case value.unit == nil && half.unit != nil && half.unit.dim == dim:
		value.unit = half.unit // "12 ± 0.5 mm"
	}
	width := half.difference()
	if relative {
		width = new(big.Rat).Abs(times(width, value.difference()))
	}
	return settle(text, dim, Quantity{Spread: PlusMinus}, value, width)
}

// parseHalf reads what follows ±. A percentage is relative, except of a number
// that may itself be counted in percent; on a temperature it is refused, for
// there the spread is a difference.
func parseHalf(text, s string, dim Dimension) (half term, relative bool, err error) {
	if index.find(dim, "%") == nil {
		if half, err = parseTerm(text, s, Share); err == nil && half.unit != nil {
			if dim == Temperature {
				return half, false, refuse(text, dim, BadSpread, "a share of a temperature means nothing: write such as 80 °C ± 5 K")
			}
			return half, true, nil
		}
	}
	half, err = parseTerm(text, s, dim)
	if err != nil && dim == Temperature {
		if difference, e := parseTerm(text, s, TemperatureDifference); e == nil {
			return difference, false, nil
		}
	}
	return half, false, err
}

func parseRange(text, from, to string, dim Dimension) (Quantity, error) {
	low, err := parseTerm(text, strings.TrimSpace(from), dim)
	if err != nil {
		return Quantity{}, err
	}
	high, err := parseTerm(text, strings.TrimSpace(to), dim)
	if err != nil {
		return Quantity{}, err
	}
	switch {
	case low.unit == nil:
		low.unit = high.unit // "0.15..0.30 mm"
	case high.unit == nil:
		return Quantity{}, refuse(text, dim, NoUnit, "the upper end has no unit: write %s..%s", low.typed, term{typed: high.typed, unit: low.unit}.text())
	}
	bottom, err := settle(text, dim, Quantity{}, low, nil)
	if err != nil {
		return Quantity{}, err
	}
	top, err := settle(text, dim, Quantity{}, high, nil)
	if err != nil {
		return Quantity{}, err
	}
	if bottom.SI > top.SI {
		return Quantity{}, refuse(text, dim, BadSpread, "the lower end of a range comes first: write %s..%s", high.text(), low.text())
	}
	middle, half := (bottom.SI+top.SI)/2, (top.SI-bottom.SI)/2
	if math.IsInf(bottom.SI+top.SI, 0) || math.IsInf(top.SI-bottom.SI, 0) { // halved first it cannot overflow
		middle, half = bottom.SI/2+top.SI/2, top.SI/2-bottom.SI/2
	}
	return Quantity{
		SI:         middle,
		Resolution: math.Max(bottom.Resolution, top.Resolution),
		Spread:     Range,
		HalfWidth:  half,
		Low:        bottom.SI,
		High:       top.SI,
	}, nil
}

// settle converts a term, and the half width where there is one, into q.
func settle(text string, dim Dimension, q Quantity, t term, half *big.Rat) (Quantity, error) {
	if t.unit == nil && !kindOf[dim].plain {
		return Quantity{}, refuse(text, dim, NoUnit, "the unit is missing, expected %s", expected(dim))
	}
	if half == nil {
		half = new(big.Rat)
	}
	for _, c := range []struct {
		from *big.Rat
		to   *float64
	}{{t.value(), &q.SI}, {half, &q.HalfWidth}} {
		ok := true
		if *c.to, ok = nearest(c.from); !ok {
			return Quantity{}, refuse(text, dim, OutOfRange, "the number is out of reach, expected %s", expected(dim))
		}
	}
	q.Resolution, _ = t.resolution().Float64() // zero where it is finer than any float64
	// From the rounded numbers, so that a quantity printed and read again has the same ends.
	q.Low, q.High = q.SI-q.HalfWidth, q.SI+q.HalfWidth
	switch {
	case dim == Temperature && q.Low < 0:
		return Quantity{}, refuse(text, dim, OutOfRange, "this is below absolute zero, −273.15 °C, expected %s", expected(dim))
	case math.IsInf(q.Low, 0) || math.IsInf(q.High, 0) || math.IsInf(q.Resolution, 0):
		return Quantity{}, refuse(text, dim, OutOfRange, "the number is out of reach, expected %s", expected(dim))
	}
	return q, nil
}
