package quantity

import (
	"strings"
	"unicode"
)

// alike maps characters that keyboards and word processors put in place of the
// ones this package reads. Superscripts become "^2" and are settled in unitKey.
var alike = strings.NewReplacer(
	"−", "-", "‐", "-", "‑", "-", "－", "-",
	"⁄", "/", "∕", "/",
	"⋅", "·", "•", "·", "∙", "·", "*", "·",
	"μ", "µ",
	"′", "'", "’", "'", "‘", "'", "″", `"`, "”", `"`, "“", `"`, "''", `"`,
	"º", "°", "˚", "°", "℃", "°C", "℉", "°F",
	"∆", "Δ", "％", "%", "…", "..",
	"⁻⁰", "^-0", "⁻¹", "^-1", "⁻²", "^-2", "⁻³", "^-3", "⁻⁴", "^-4",
	"⁻⁵", "^-5", "⁻⁶", "^-6", "⁻⁷", "^-7", "⁻⁸", "^-8", "⁻⁹", "^-9",
	"⁰", "^0", "¹", "^1", "²", "^2", "³", "^3", "⁴", "^4",
	"⁵", "^5", "⁶", "^6", "⁷", "^7", "⁸", "^8", "⁹", "^9",
)

// plainSpelling brings a typed text to one spelling of signs and spaces.
func plainSpelling(text string) string {
	text = strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == '\u2009' || r == '\u202f' || r == '\u00a0' {
			return ' '
		}
		return r
	}, text)
	return strings.TrimSpace(alike.Replace(text))
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
