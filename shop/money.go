package shop

import (
	"math"
	"strconv"
)

// Money is a sum in hundredths of the shop's own currency, which is not named.
type Money int64

// MoneyOf rounds a sum in whole units of the currency to hundredths, halves
// away from zero.
func MoneyOf(units float64) Money { return Money(math.Round(units * 100)) }

// Units returns the sum in whole units of the currency.
func (m Money) Units() float64 { return float64(m) / 100 }

// String writes the sum with two decimals: "1250.00".
func (m Money) String() string {
	sign, n := "", int64(m)
	if n < 0 {
		sign = "−"
	}
	whole, cents := n/100, n%100
	if n < 0 {
		whole, cents = -whole, -cents
	}
	text := strconv.FormatInt(cents, 10)
	if cents < 10 {
		text = "0" + text
	}
	return sign + strconv.FormatInt(whole, 10) + "." + text
}
