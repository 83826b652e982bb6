package setup

import (
	"fmt"
	"math"
	"strings"

	"axlewright/quantity"
)

// shown prints a figure in both systems, torques with inch or foot spelled.
func shown(si float64, dim quantity.Dimension) string {
	return quantity.Spelled(quantity.Format(si, dim))
}

func shownRange(low, high float64, dim quantity.Dimension) string {
	return quantity.Spelled(quantity.FormatRange(low, high, dim))
}

func length(si float64) string { return shown(si, quantity.Length) }
func torque(si float64) string { return shown(si, quantity.Torque) }

// place prints a place round a wheel, 0° to 359°.
func place(rad float64) string {
	turn := math.Mod(math.Round(rad*180/math.Pi), 360)
	if turn < 0 {
		turn += 360
	}
	return fmt.Sprintf("%.0f°", turn)
}

// pull prints a force as spring balances are marked.
func pull(n float64) string {
	const kgf = 9.80665
	return strings.Replace(shown(n, quantity.Force), "(", fmt.Sprintf("(%.1f kgf, ", n/kgf), 1)
}

// turns prints a number of notches, flats or pieces: "2 notches", "1½ notches".
func turns(n float64, one, many string) string {
	n = math.Abs(n)
	whole, part := math.Modf(n)
	switch {
	case n == 1:
		return "1 " + one
	case n == 0.5:
		return "½ " + one
	case part == 0.5:
		return fmt.Sprintf("%.0f½ %s", whole, many)
	case part == 0:
		return fmt.Sprintf("%.0f %s", whole, many)
	}
	return fmt.Sprintf("%.1f %s", n, many)
}

// andList joins words for a sentence.
func andList(words []string) string { return joined(words, " and ") }

func orList(words []string) string { return joined(words, " or ") }

func joined(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + last + words[len(words)-1]
}

// capital starts a sentence.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// inOut says which way a part moved along an axis.
func inOut(towards float64) string {
	if towards < 0 {
		return "out"
	}
	return "in"
}

// number prints a count alone: "2", "1½".
func number(n float64) string { return strings.TrimSuffix(turns(n, "", ""), " ") }
