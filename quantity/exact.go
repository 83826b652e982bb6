package quantity

import (
	"math/big"
	"strconv"
	"strings"
)

// Exact prints an SI number for storage: the shortest text in the metric unit of
// the trade, without separators, from which Parse gives the same float64 again
// ("0.2032 mm", "55.1 kN"). NaN, infinity and words have no such text and give "".
func Exact(si float64, dim Dimension) string {
	exact := new(big.Rat).SetFloat64(si)
	b, found := bandOf(si, dim)
	if exact == nil || !found {
		return ""
	}
	unit := b.metric
	digits, ok := shortest(si, exact, index.find(dim, unit.symbol))
	if !ok { // a temperature so near absolute zero that °C would need more digits than a float64 has
		unit = shownIn{symbol: dim.Unit()}
		digits, _ = shortest(si, exact, index.find(dim, unit.symbol))
	}
	return unit.with(digits)
}

// Exact prints a quantity with its spread for storage; Parse reads the same
// numbers back. The text as typed and its resolution are not part of it.
func (q Quantity) Exact() string {
	switch {
	case q.Dim == Name:
		return q.Text
	case q.Spread == Range:
		return Exact(q.Low, q.Dim) + ".." + Exact(q.High, q.Dim)
	case q.Spread == PlusMinus:
		halfDim := q.Dim
		if q.Dim == Temperature {
			halfDim = TemperatureDifference
		}
		return Exact(q.SI, q.Dim) + " ± " + Exact(q.HalfWidth, halfDim)
	}
	return Exact(q.SI, q.Dim)
}

// shortest finds the fewest digits that lead back to si through the unit. A
// float64 needs 17 at most, whatever the factor of the unit.
func shortest(si float64, exact *big.Rat, u *unit) (string, bool) {
	const precision = 300 // bits; enough to round any float64 over any factor of the table
	x, factor, offset := exact, big.NewRat(1, 1), new(big.Rat)
	if u != nil {
		factor = u.factor
		if u.offset != nil {
			offset = u.offset
		}
		x = over(new(big.Rat).Sub(exact, offset), factor)
	}
	f := new(big.Float).SetPrec(precision).SetRat(x)
	for digits := 0; digits < 17; digits++ {
		text := f.Text('e', digits)
		back, _ := new(big.Rat).SetString(text)
		back.Add(back.Mul(back, factor), offset)
		if same, _ := back.Float64(); same == si {
			return plain(text), true
		}
	}
	return "", false
}

// plain writes "1.25e+01" as "12.5" and keeps a power of ten only where the
// number would be long without it.
func plain(scientific string) string {
	mantissa, exponent, _ := strings.Cut(scientific, "e")
	e, _ := strconv.Atoi(exponent)
	digits := strings.Replace(strings.TrimPrefix(mantissa, "-"), ".", "", 1)
	minus := strings.Repeat("-", strings.Count(mantissa, "-"))
	switch {
	case e < -6 || e > 15:
		return mantissa + "e" + strconv.Itoa(e)
	case e < 0:
		return minus + "0." + strings.Repeat("0", -e-1) + digits
	case e+1 >= len(digits):
		return minus + digits + strings.Repeat("0", e+1-len(digits))
	}
	return minus + digits[:e+1] + "." + digits[e+1:]
}
