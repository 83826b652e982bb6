package quantity

import (
	"math"
	"math/big"
	"strings"
)

// Format prints an SI number for people, in both systems and rounded as the
// trade rounds: "0.20 mm (8 thou)", "27 N·m (20 lbf·ft)", "80 °C (176 °F)".
// Torques below 12 N·m are given in lbf·in too, lengths below 3 mm in thou. A
// word has no number and prints as "".
func Format(si float64, dim Dimension) string {
	return both(si, dim, func(s shownIn) string {
		return s.with(s.print(s.count(si, dim)))
	})
}

// FormatDigits prints as Format does, but to so many significant digits and no
// more, for results whose doubt is known: 12,387 lbf to two digits is
// "12,000 lbf". Zeros at the end are kept, for they are digits too.
func FormatDigits(si float64, dim Dimension, significant int) string {
	n := max(significant, 1)
	return both(si, dim, func(s shownIn) string {
		x := s.count(si, dim)
		places := n - 1 - leading(x, n)
		if dim == Temperature { // its zero is arbitrary: the same place in both scales
			places = n - 1 - leading(si-273.15, n)
		}
		return s.with(fixed(x, places))
	})
}

// FormatSpread prints a value with its half width, both to the place that the
// half width bears: "55.1 ± 1.2 kN (12,400 ± 300 lbf)".
func FormatSpread(si, halfWidth float64, dim Dimension) string {
	half := math.Abs(halfWidth)
	if half == 0 {
		return Format(si, dim)
	}
	return both(si, dim, func(s shownIn) string {
		x, h := s.count(si, dim), s.countDifference(half, dim)
		digits := 1
		if first := h / math.Pow10(leading(h, 2)); first < 1.95 {
			digits = 2 // 0.012, not 0.01: one digit would change it by a third
		}
		places := digits - 1 - leading(h, digits)
		return s.pair(fixed(x, places), " ± ", fixed(h, places))
	})
}

// FormatRange prints the ends of a range: "0.15 to 0.30 mm (6 to 12 thou)".
func FormatRange(low, high float64, dim Dimension) string {
	return both(math.Max(math.Abs(low), math.Abs(high)), dim, func(s shownIn) string {
		return s.pair(s.print(s.count(low, dim)), " to ", s.print(s.count(high, dim)))
	})
}

// Spelled writes "lbf·inch" and "lbf·foot" in full in a printed torque, for
// where it is read at the wrench: "2.3 N·m (20 lbf·inch)".
func Spelled(printed string) string {
	return strings.NewReplacer("lbf·in", "lbf·inch", "lbf·ft", "lbf·foot").Replace(printed)
}

// Percent prints a plain number that people read in percent: "83 %".
func Percent(share float64) string { return Format(share, Share) }

// Chance prints a chance, or a share of draws, in percent: whole, but to one
// decimal near its ends, and never as certain or impossible, which nothing that
// is drawn or seen makes it.
func Chance(share float64) string {
	switch p := 100 * share; {
	case math.IsNaN(p):
		return "?"
	case p > 99.9:
		return "over 99.9 %"
	case p < 0.1:
		return "under 0.1 %"
	case p > 99 || p < 1:
		return fixed(p, 1) + " %"
	default:
		return fixed(p, 0) + " %"
	}
}

// String prints a quantity in both systems to the digits that were typed, so
// that a reading is neither sharpened nor blunted: "8 thou" is "0.20 mm (8 thou)".
// A fraction, or a unit that is not shown, is rounded as Format does.
func (q Quantity) String() string {
	largest := math.Max(math.Abs(q.Low), math.Abs(q.High))
	b, found := bandOf(largest, q.Dim)
	switch {
	case q.Dim == Name:
		return q.Text
	case q.Spread == PlusMinus:
		return FormatSpread(q.SI, q.HalfWidth, q.Dim)
	case found && (b.metric.typed(q) || b.other.symbol != "" && b.other.typed(q)):
		return both(largest, q.Dim, func(s shownIn) string { return s.reading(q) })
	case q.Spread == Range:
		return FormatRange(q.Low, q.High, q.Dim)
	}
	return Format(q.SI, q.Dim)
}

// typed says whether q was typed in this unit, which shows in its resolution
// being a power of ten.
func (s shownIn) typed(q Quantity) bool {
	step := math.Log10(s.countDifference(q.Resolution, q.Dim))
	return math.Abs(step-math.Round(step)) < 1e-9
}

// reading writes q in this unit: as typed where it is the unit typed in, else no
// finer than what was typed and no finer than the trade reads.
func (s shownIn) reading(q Quantity) string {
	step := math.Log10(s.countDifference(q.Resolution, q.Dim))
	write := func(si float64) string {
		x := s.count(si, q.Dim)
		if s.typed(q) {
			return fixed(x, -int(math.Round(step)))
		}
		usual, _ := s.places(x)
		return fixed(x, min(usual, max(int(math.Ceil(-step)), 0)))
	}
	if q.Spread == Range {
		return s.pair(write(q.Low), " to ", write(q.High))
	}
	return s.with(write(q.SI))
}

// both writes in the units of the band that size falls in.
func both(size float64, dim Dimension, write func(shownIn) string) string {
	b, found := bandOf(size, dim)
	if !found {
		return ""
	}
	s := write(b.metric)
	if b.other.symbol != "" {
		s += " (" + write(b.other) + ")"
	}
	return s
}

// with puts the unit behind a number; signs of degrees stand close.
func (s shownIn) with(number string) string {
	if s.symbol == "" || s.close() {
		return number + s.symbol
	}
	return number + " " + s.symbol
}

func (s shownIn) close() bool { return strings.Contains("°′″", s.symbol) }

// pair puts the unit behind two numbers, or behind each where one unit would
// leave open what the first number is.
func (s shownIn) pair(a, between, b string) string {
	if s.symbol == "%" || s.close() {
		return s.with(a) + between + s.with(b)
	}
	return s.with(a + between + b)
}

// count is an SI number in this unit, countDifference the same without the
// offset of a scale of temperature.
func (s shownIn) count(si float64, dim Dimension) float64 {
	return s.convert(si, dim, true)
}

func (s shownIn) countDifference(si float64, dim Dimension) float64 {
	return s.convert(si, dim, false)
}

func (s shownIn) convert(si float64, dim Dimension, offset bool) float64 {
	u := index.find(dim, s.symbol)
	exact := new(big.Rat).SetFloat64(si)
	if u == nil || exact == nil { // a plain number; NaN or infinity
		return si
	}
	if offset && u.offset != nil {
		exact.Sub(exact, u.offset)
	}
	f, _ := exact.Quo(exact, u.factor).Float64()
	return f
}
