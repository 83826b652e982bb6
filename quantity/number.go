package quantity

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// number is a number as typed: its exact value and the size of one unit of its
// last digit (of a fraction, one part of its denominator).
type number struct {
	value, step *big.Rat
}

// numberFault is why a text does not start with a number that can be read.
type numberFault struct {
	reason Reason
	says   string
}

// The forms a number may have, tried in this order at the start of the text.
var (
	mixedForm    = regexp.MustCompile(`^(\d+)( +| ?- ?)(\d+) ?/ ?(\d+)`) // 1 1/4, 1-1/4
	fractionForm = regexp.MustCompile(`^(\d+) ?/ ?(\d+)`)                // 7/16
	glyphForm    = regexp.MustCompile(`^(\d*)[ -]?([¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])`)  // 1¼
	spacedForm   = regexp.MustCompile(`^\d{1,3}(?: \d{3})+(?:[.,]\d+)?`) // 12 400
	decimalForm  = regexp.MustCompile(`^(?:\d+(?:[.,]\d+)*|\.\d+)`)      // 2.05, 2,05
	exponentForm = regexp.MustCompile(`^(?:[eE]([+-]?\d+)| ?[×x·] ?10\^([+-]?\d+))`)
)

var glyphs = map[string][2]int64{
	"¼": {1, 4}, "½": {1, 2}, "¾": {3, 4}, "⅓": {1, 3}, "⅔": {2, 3},
	"⅕": {1, 5}, "⅖": {2, 5}, "⅗": {3, 5}, "⅘": {4, 5}, "⅙": {1, 6}, "⅚": {5, 6},
	"⅛": {1, 8}, "⅜": {3, 8}, "⅝": {5, 8}, "⅞": {7, 8},
}

// readNumber reads the number at the start of s, which is in plain spelling,
// and returns what follows it.
func readNumber(s string) (n number, rest string, fault *numberFault) {
	negative := false
	for _, sign := range []string{"-", "+", "–"} {
		if after, found := strings.CutPrefix(s, sign); found {
			negative = sign != "+"
			s = strings.TrimLeft(after, " ")
			break
		}
	}
	read := readDecimal
	switch {
	case mixedForm.MatchString(s):
		read = readMixed
	case fractionForm.MatchString(s):
		read = readFraction
	case glyphForm.MatchString(s):
		read = readGlyph
	}
	n, rest, fault = read(s)
	if fault == nil && negative {
		n.value.Neg(n.value)
	}
	return n, rest, fault
}

func readMixed(s string) (number, string, *numberFault) {
	m := mixedForm.FindStringSubmatch(s)
	whole, hyphen, part := m[1], strings.Contains(m[2], "-"), m[3]+"/"+m[4]
	n, fault := fraction(whole, m[3], m[4])
	switch {
	case fault != nil:
	case hyphen && strings.Trim(whole, "0") == "":
		fault = &numberFault{AmbiguousText, fmt.Sprintf("%s may be a fraction or a range: write %s or %s..%s", m[0], part, whole, part)}
	case !belowOne(m[3], m[4]):
		fault = &numberFault{NotANumber, fmt.Sprintf("the fraction %s after a whole number is not below one: write a number such as 1 1/4", part)}
	}
	return n, s[len(m[0]):], fault
}

func readFraction(s string) (number, string, *numberFault) {
	m := fractionForm.FindStringSubmatch(s)
	n, fault := fraction("0", m[1], m[2])
	return n, s[len(m[0]):], fault
}

func readGlyph(s string) (number, string, *numberFault) {
	m := glyphForm.FindStringSubmatch(s)
	part := glyphs[m[2]]
	n, fault := fraction("0"+m[1], strconv.FormatInt(part[0], 10), strconv.FormatInt(part[1], 10))
	return n, s[len(m[0]):], fault
}

// fraction is whole + over/under, all of them digits.
func fraction(whole, over, under string) (number, *numberFault) {
	if len(whole)+len(over)+len(under) > mostDigits {
		return number{}, tooManyDigits
	}
	a, b := integer(over), integer(under)
	if b.Sign() == 0 {
		return number{}, &numberFault{NotANumber, fmt.Sprintf("%s/%s divides by nothing: write a fraction such as 7/16", over, under)}
	}
	value := new(big.Rat).SetFrac(a, b)
	return number{
		value: value.Add(value, new(big.Rat).SetInt(integer(whole))),
		step:  new(big.Rat).SetFrac(big.NewInt(1), b),
	}, nil
}

func belowOne(over, under string) bool { return integer(over).Cmp(integer(under)) < 0 }

// integer reads digits, which a pattern has found, by ten whatever zeros lead:
// big.Rat would take 010/016 for octal.
func integer(digits string) *big.Int {
	n, ok := new(big.Int).SetString(digits, 10)
	if !ok {
		panic("quantity: not digits: " + digits)
	}
	return n
}
