package quantity

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// rounding says how many digits of a number people want to see: so many
// decimals as a rule, more where fewer than least significant digits would be
// left, less where more than most would be shown.
type rounding struct {
	decimals, least, most int
}

// Outside these sizes a number is written with a power of ten.
const (
	smallestPlain = 1e-6
	largestPlain  = 1e12
)

// places returns the decimals to show, negative where digits before the point
// are rounded away, and whether zeros beyond the usual decimals may be dropped.
func (r rounding) places(x float64) (places int, trim bool) {
	switch {
	case x == 0:
		return r.decimals, false
	case r.decimals < r.least-1-leading(x, r.least):
		return r.least - 1 - leading(x, r.least), true
	case r.decimals > r.most-1-leading(x, r.most):
		return r.most - 1 - leading(x, r.most), false
	}
	return r.decimals, false
}

// print writes x for people: rounded, grouped in thousands, with a true minus.
func (r rounding) print(x float64) string {
	places, trim := r.places(x)
	s := fixed(x, places)
	if trim && strings.Contains(s, ".") {
		for keep := places - r.decimals; keep > 0 && strings.HasSuffix(s, "0"); keep-- {
			s = s[:len(s)-1]
		}
		s = strings.TrimSuffix(s, ".")
	}
	return s
}

// leading is the power of ten of the first digit of x once x is rounded to so
// many digits: 2 for 830, -3 for 0.0012, 1 for 9.96 to two digits.
func leading(x float64, digits int) int {
	e := strconv.FormatFloat(math.Abs(x), 'e', max(digits, 1)-1, 64)
	_, exponent, _ := strings.Cut(e, "e")
	n, err := strconv.Atoi(exponent)
	if err != nil {
		return 0 // NaN and infinity have no digits
	}
	return n
}

// fixed writes x to so many decimals; negative places round tens, hundreds and
// so on. Halves go away from zero, as people round, judged on 15 digits so that
// a number typed as 1.005 is not seen as 1.00499….
func fixed(x float64, places int) string {
	switch {
	case math.IsNaN(x):
		return "not a number"
	case math.IsInf(x, 0):
		return sign(x) + "∞"
	case x != 0 && (math.Abs(x) < smallestPlain || math.Abs(x) >= largestPlain):
		return scientific(x, leading(x, 15)+places)
	}
	places = min(places, 14-leading(x, 15)) // what lies beyond is noise
	r := rat(strconv.FormatFloat(x, 'e', 14, 64))
	decimals := max(places, 0)
	if places < 0 {
		ten := power(rat("10"), -places)
		whole := rat(new(big.Rat).Quo(r, ten).FloatString(0))
		r = times(whole, ten)
	}
	s := r.FloatString(decimals)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-") // no "−0.00"
	}
	return strings.Replace(grouped(s), "-", "−", 1)
}

func sign(x float64) string {
	if x < 0 {
		return "−"
	}
	return ""
}

// scientific writes x with so many decimals of its first digit and a power of ten.
func scientific(x float64, decimals int) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(math.Abs(x), 'e', 14, 64), "e")
	n, _ := strconv.Atoi(exponent)
	places := max(min(decimals, 14), 0)
	mantissa = rat(mantissa).FloatString(places)
	if strings.HasPrefix(mantissa, "10") { // 9.99… was rounded up
		mantissa, n = rat("1").FloatString(places), n+1
	}
	raised := strings.Map(func(r rune) rune {
		if r == '-' {
			return '⁻'
		}
		return []rune(superscripts)[r-'0']
	}, strconv.Itoa(n))
	return sign(x) + mantissa + "×10" + raised
}

// grouped sets commas between thousands.
func grouped(s string) string {
	whole, decimals, _ := strings.Cut(s, ".")
	minus := strings.HasPrefix(whole, "-")
	whole = strings.TrimPrefix(whole, "-")
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + "," + whole[at:]
	}
	if decimals != "" {
		whole += "." + decimals
	}
	if minus {
		whole = "-" + whole
	}
	return whole
}
