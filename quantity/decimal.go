package quantity

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// What is worth reading: a float64 holds 17 digits and ends at 1.8e308.
const (
	mostDigits   = 400
	mostExponent = 700
)

var tooManyDigits = &numberFault{NotANumber, "the number has too many digits: write such as 12.5 or 1.25e6"}

// A comma may separate thousands or decimals. Only these shapes leave no doubt.
var (
	doubtfulComma  = regexp.MustCompile(`^[1-9]\d{0,2},\d{3}$`)                              // 2,500
	commaThousands = regexp.MustCompile(`^[1-9]\d{0,2}(?:(?:,\d{3}){2,}|(?:,\d{3})+\.\d+)$`) // 1,250,000 or 1,250.5
)

// readDecimal reads a number without a fraction: point or comma, digits in
// groups of three, exponent.
func readDecimal(s string) (number, string, *numberFault) {
	digits := spacedForm.FindString(s)
	if after := s[len(digits):]; digits != "" && after != "" && after[0] >= '0' && after[0] <= '9' {
		digits = "" // "1 2345": not groups of three
	}
	if digits == "" {
		digits = decimalForm.FindString(s)
	}
	if digits == "" {
		return number{}, s, &numberFault{NotANumber, "it does not start with a number"}
	}
	rest := s[len(digits):]
	exponent := 0
	if m := exponentForm.FindStringSubmatch(rest); m != nil {
		e, err := strconv.Atoi(m[1] + m[2]) // one of the two is empty
		if err != nil || e > mostExponent || e < -mostExponent {
			return number{}, rest, &numberFault{OutOfRange, fmt.Sprintf("the exponent of %s%s is out of reach: write such as 1.25e6", digits, m[0])}
		}
		exponent, rest = e, rest[len(m[0]):]
	}
	plain, fault := settleComma(strings.ReplaceAll(digits, " ", ""), rest)
	if fault == nil && len(plain) > mostDigits {
		fault = tooManyDigits
	}
	if fault != nil {
		return number{}, rest, fault
	}
	whole, decimals, _ := strings.Cut(plain, ".")
	step := power(rat("10"), abs(exponent-len(decimals)))
	if exponent < len(decimals) {
		step = over(rat("1"), step)
	}
	value := new(big.Rat).SetInt(integer(whole + decimals))
	return number{value.Mul(value, step), step}, rest, nil
}

func abs(n int) int { return max(n, -n) }

// settleComma writes digits with a decimal point or refuses them; rest is what
// follows, for the example in the sentence.
func settleComma(digits, rest string) (string, *numberFault) {
	commas, points := strings.Count(digits, ","), strings.Count(digits, ".")
	without := strings.ReplaceAll(digits, ",", "")
	pointed := strings.Replace(digits, ",", ".", 1)
	switch {
	case commas == 0 && points <= 1:
		return digits, nil
	case doubtfulComma.MatchString(digits):
		return "", &numberFault{AmbiguousText, fmt.Sprintf("%s may be %s or %s: write %s%s or %s%s",
			digits, without, shorter(pointed), without, rest, shorter(pointed), rest)}
	case commaThousands.MatchString(digits):
		return without, nil
	case commas == 1 && points == 0:
		return pointed, nil
	}
	return "", &numberFault{NotANumber, fmt.Sprintf("%s is not a number: write such as 1250.5, with one point and no separators", digits)}
}

// shorter drops zeros at the end of a decimal number, "2.500" to "2.5".
func shorter(decimal string) string {
	return strings.TrimSuffix(strings.TrimRight(decimal, "0"), ".")
}
