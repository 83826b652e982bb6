package casting

import (
	"fmt"

	"axlewright/quantity"
)

// Percent prints a chance for people: in percent, and never as certain or
// impossible, which no evidence makes it.
func Percent(chance float64) string {
	switch {
	case chance > 0.999:
		return "over 99.9 %"
	case chance < 0.001:
		return "under 0.1 %"
	case chance > 0.99:
		return fmt.Sprintf("%.1f %%", 100*chance)
	}
	return quantity.Percent(chance)
}
