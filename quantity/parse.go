package quantity

import (
	"math"
	"math/big"
	"regexp"
	"strings"
)

// Quantity is what a person typed, as a coherent SI number and as the text.
type Quantity struct {
	SI         float64   // the value in Dim.Unit(); of a range its middle
	Dim        Dimension // as asked for
	Text       string    // as typed, without spaces at the ends
	Resolution float64   // SI size of one unit of the last digit typed; of a fraction one part, of a range the coarser end's
	Spread     Spread    // how a spread was typed, if at all
	HalfWidth  float64   // SI; of "a ± b" it is b, of a range half of it, else zero
	Low, High  float64   // SI ends of the spread; both equal SI where none was typed
}

// mostText is longer than any quantity that a person types.
const mostText = 200

// Parse reads one quantity of the dimension dim, with a spread if one is typed.
// Where the text can be read in two ways, lacks a unit or has a unit of another
// dimension, the error is a *ParseError whose sentence says what to write.
// Plain numbers, shares and money need no unit; a word (dimension Name) is kept
// in Text alone.
func Parse(text string, dim Dimension) (Quantity, error) {
	text = strings.TrimSpace(text)
	switch {
	case kindOf[dim].dim == "":
		return Quantity{}, refuse(text, dim, WrongDimension, "the program asked for a dimension that does not exist, %q", string(dim))
	case text == "":
		return Quantity{}, refuse(text, dim, Empty, "nothing was typed, expected %s", expected(dim))
	case len(text) > mostText:
		return Quantity{}, refuse(text, dim, NotANumber, "this is too long, expected %s", expected(dim))
	case dim == Name:
		return parseName(text)
	}
	q, err := parseSpread(text, dim)
	if err != nil {
		return Quantity{}, err
	}
	q.Text, q.Dim = text, dim
	return q, nil
}

func parseName(text string) (Quantity, error) {
	for _, r := range text {
		if r < ' ' || r == 0x7f || r == '\uFFFD' {
			return Quantity{}, refuse(text, Name, NotANumber, "a word has no control characters, expected %s", expected(Name))
		}
	}
	return Quantity{Dim: Name, Text: text}, nil
}

// What may follow a number by mistake: the second half of "12-15 mm", the
// limits of "12 mm +0.1/-0.2", the inches of "5 ft 6 in".
var (
	hyphenRange  = regexp.MustCompile(`^- ?([.\d].*)$`)
	unequalSides = regexp.MustCompile(` - ?[.\d]|\+ ?[.\d]`)
	secondNumber = regexp.MustCompile(`^[.,\d]|[ ('"][.\d]`)
)

// term is one number with its unit, before conversion.
type term struct {
	number
	unit  *unit  // nil where none was typed
	typed string // the number as typed, for sentences
}

// parseTerm reads "12.5 mm". The text is whole, for the sentence; part, in plain
// spelling, is the piece to be read.
func parseTerm(text, part string, dim Dimension) (term, error) {
	n, rest, fault := readNumber(part)
	if fault != nil {
		if fault.reason == NotANumber {
			return term{}, refuse(text, dim, fault.reason, "%s; expected %s", fault.says, expected(dim))
		}
		return term{}, refuse(text, dim, fault.reason, "%s", fault.says)
	}
	t := term{number: n, typed: strings.TrimSpace(strings.TrimSuffix(part, rest))}
	spelling := strings.TrimSpace(rest)
	if unitKey(spelling) == "" {
		return t, nil
	}
	if t.unit = index.find(dim, spelling); t.unit != nil {
		return t, nil
	}
	if reason, says, found := warn(dim, spelling, t.typed); found {
		return term{}, refuse(text, dim, reason, "%s", says)
	}
	if m := hyphenRange.FindStringSubmatch(spelling); m != nil {
		return term{}, refuse(text, dim, NotANumber, "a hyphen is no range: write %s..%s", t.typed, leadingZero(m[1]))
	}
	if unequalSides.MatchString(spelling) {
		return term{}, refuse(text, dim, BadSpread, "write a range, or a spread with two different sides, by its ends, low..high, each %s", expected(dim))
	}
	if secondNumber.MatchString(spelling) {
		return term{}, refuse(text, dim, NotANumber, "after %s another number follows, expected one number and one unit, %s", t.typed, expected(dim))
	}
	if other, found := index.elsewhere(dim, spelling); found {
		return term{}, refuse(text, dim, WrongDimension, "expected %s, got %s", expected(dim), other.phrase())
	}
	return term{}, refuse(text, dim, UnknownUnit, "the unit %s is not known here, expected %s", shown(spelling), expected(dim))
}

// leadingZero keeps a number that starts with its point apart from the dots of a range.
func leadingZero(s string) string {
	if strings.HasPrefix(s, ".") {
		return "0" + s
	}
	return s
}

// text is the term as it should be written.
func (t term) text() string {
	if t.unit == nil {
		return t.typed
	}
	return shownIn{symbol: t.unit.symbol}.with(t.typed)
}

// value and difference convert to SI: a difference ignores the offset of a
// scale of temperature.
func (t term) value() *big.Rat {
	v := t.difference()
	if t.unit != nil && t.unit.offset != nil {
		v = new(big.Rat).Add(v, t.unit.offset)
	}
	return v
}

func (t term) difference() *big.Rat { return t.scaled(t.number.value) }

func (t term) resolution() *big.Rat { return t.scaled(t.number.step) }

func (t term) scaled(r *big.Rat) *big.Rat {
	if t.unit == nil {
		return r
	}
	return times(r, t.unit.factor)
}

// nearest rounds an exact number to the nearest float64; ok is false where it
// overflows or where something becomes nothing.
func nearest(r *big.Rat) (f float64, ok bool) {
	f, _ = r.Float64()
	return f, !math.IsInf(f, 0) && (f != 0 || r.Sign() == 0)
}
