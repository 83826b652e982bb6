package web

import (
	"fmt"
	"math"

	"axlewright/quantity"
	"axlewright/shop"
)

// returnsPage tells for each build what came back, beside what the sums expected.
func returnsPage(v *visit) error {
	all, err := v.shop.Returns(v.ctx())
	if err != nil {
		return err
	}
	return v.show(returnsSheet(v.frame("What came back").at("settings"), all))
}

// yearsText is a time in years, to two figures.
func yearsText(years float64) string {
	if years == math.Trunc(years) && years < 100 {
		return count(int(years), "year", "years")
	}
	return twoFigures(years) + " years"
}

func twoFigures(x float64) string { return quantity.FormatDigits(x, quantity.Number, 2) }

// broughtBack is a build's record in one sentence.
func broughtBack(r shop.BuildRecord) string {
	text := fmt.Sprintf("Of %s with this build, out for %s on average, %s came back broken", count(r.Units, "unit", "units"),
		yearsText(r.Years/float64(r.Units)), number(r.Broke))
	switch {
	case r.Asked == 0:
		return text + "."
	case r.Asked == r.Units:
		return text + fmt.Sprintf("; the sums expected %s.", twoFigures(r.Expected))
	}
	return text + fmt.Sprintf(". The sums had been asked for %s of them and expected %s; %s of those came back broken.",
		number(r.Asked), twoFigures(r.Expected), number(r.Broken))
}

func number(n int) string {
	if n == 0 {
		return "none"
	}
	return itoa(int64(n))
}

// soundText is a share still sound with its doubt.
func soundText(a shop.SoundAfter) string {
	if a.Share == 1 {
		return "all"
	}
	return fmt.Sprintf("%s ± %s", quantity.Chance(a.Share), quantity.Chance(a.StdError))
}

// rateAsked is the question to the handbook that gives a build's factor.
func rateAsked(r shop.BuildRecord) string {
	return fmt.Sprintf("/handbook/survival.gamma-rate?prior-cases=1&prior-exposure=1&cases=%d&exposure=%g&confidence=0.9", r.Broken, r.Expected)
}
