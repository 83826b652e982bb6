package drawing

import (
	"math"
	"strconv"
	"strings"

	"axlewright/quantity"
)

// A scale turns values into places on the paper, evenly.
type scale struct {
	low, high float64 // values
	from, to  float64 // mm at low and at high
}

func (s scale) at(value float64) float64 {
	if s.high == s.low {
		return s.from
	}
	return s.from + (value-s.low)/(s.high-s.low)*(s.to-s.from)
}

// ticks are round values of the series 1, 2, 5 from low to high, at most so many.
func ticks(low, high float64, most int) []float64 {
	width := high - low
	if !(width > 0) || math.IsInf(width, 0) || most < 2 {
		return nil
	}
	unit := math.Pow(10, math.Floor(math.Log10(width/float64(most))))
	for unit > 0 {
		for _, m := range []float64{1, 2, 5} {
			step := m * unit
			first, last := math.Ceil(low/step-1e-9), math.Floor(high/step+1e-9)
			if int(last-first)+1 > most {
				continue
			}
			var list []float64
			for k := first; k <= last; k++ {
				list = append(list, k*step)
			}
			return list
		}
		unit *= 10
	}
	return nil
}

// tickWords prints a round value: "12,000".
func tickWords(x float64) string {
	if x == 0 {
		return "0" // and not the −0 that rounding may leave
	}
	text := strconv.FormatFloat(x, 'g', 6, 64)
	if strings.ContainsAny(text, "eE") {
		return text
	}
	whole, part, has := strings.Cut(text, ".")
	sign := ""
	if after, negative := strings.CutPrefix(whole, "-"); negative {
		whole, sign = after, "−"
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if has {
		whole += "." + part
	}
	return sign + whole
}

// in is the size in SI of one unit, as quantity knows it.
func in(unit string, dim quantity.Dimension) float64 {
	q, err := quantity.Parse("1 "+unit, dim)
	if err != nil {
		panic("drawing: " + err.Error()) // the units are constants of this package
	}
	return q.SI
}

// An axisUnit is a unit that an axis is divided in.
type axisUnit struct {
	words string
	size  float64 // SI
}

// unitFor is the unit for a scale up to high: thousands of it where the figures
// would be long.
func unitFor(unit string, dim quantity.Dimension, high float64) axisUnit {
	u := axisUnit{unit, in(unit, dim)}
	if math.Abs(high)/u.size >= 1e5 {
		return axisUnit{"1,000 " + unit, u.size * 1000}
	}
	return u
}
