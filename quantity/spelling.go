package quantity

import (
	"slices"
	"strings"
	"unicode"
)

// alike maps characters that keyboards and word processors put in place of the
// ones this package reads.
var alike = strings.NewReplacer(
	"−", "-", "‐", "-", "‑", "-", "－", "-",
	"⁄", "/", "∕", "/",
	"⋅", "·", "•", "·", "∙", "·", "*", "·",
	"μ", "µ",
	"′", "'", "’", "'", "‘", "'", "″", `"`, "”", `"`, "“", `"`, "''", `"`,
	"º", "°", "˚", "°", "℃", "°C", "℉", "°F",
	"∆", "Δ", "％", "%", "…", "..",
)

// superscripts in the order of the digits they raise.
const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"

// plainSpelling brings a typed text to one spelling of signs, spaces and
// powers: "10⁻⁶" becomes "10^-6".
func plainSpelling(text string) string {
	var b strings.Builder
	raised := false
	for _, r := range text {
		digit := slices.Index([]rune(superscripts), r)
		isRaised := digit >= 0 || r == '⁻'
		if isRaised && !raised {
			b.WriteByte('^')
		}
		raised = isRaised
		switch {
		case digit >= 0:
			b.WriteByte('0' + byte(digit))
		case r == '⁻':
			b.WriteByte('-')
		case unicode.IsSpace(r):
			b.WriteByte(' ')
		default:
			b.WriteRune(r)
		}
	}
	return strings.TrimSpace(alike.Replace(b.String()))
}

// unitKey brings a unit to the spelling of the table: factors joined by one
// "·" whether typed with a space, dot, hyphen or middle dot, and powers as a
// plain digit ("lbf-ft" and "lbf ft" become "lbf·ft", "mm^2" becomes "mm2").
func unitKey(unit string) string {
	var b strings.Builder
	joined := false // a separator is waiting for the next factor
	runes := []rune(plainSpelling(unit))
	for i, r := range runes {
		switch {
		case r == '^' && i+1 < len(runes) && unicode.IsDigit(runes[i+1]):
			continue
		case r == '-' && i > 0 && runes[i-1] == '^': // the sign of a power
		case r == ' ' || r == '·' || r == '-' || r == '–' || r == '.' && !decimalPoint(runes, i):
			joined = true
			continue
		}
		if joined && b.Len() > 0 && r != '/' && r != ')' && !strings.HasSuffix(b.String(), "/") && !strings.HasSuffix(b.String(), "(") {
			b.WriteRune('·')
		}
		joined = false
		b.WriteRune(r)
	}
	return b.String()
}

// decimalPoint tells the point of "HV0.3" from the separator of "N.m".
func decimalPoint(runes []rune, i int) bool {
	return i > 0 && i+1 < len(runes) && unicode.IsDigit(runes[i-1]) && unicode.IsDigit(runes[i+1])
}
