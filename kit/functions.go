package kit

import (
	"fmt"
	"math"
)

// call works out a function of an expression; its name and bracket were taken.
func (p *parser) call(name string, depth int) (value, error) {
	var given []value
	for {
		v, err := p.sum(depth + 1)
		if err != nil {
			return value{}, err
		}
		given = append(given, v)
		if p.take(",") == "" {
			break
		}
	}
	if p.take(")") == "" {
		return value{}, fmt.Errorf("the bracket after %s is not closed", name)
	}
	switch name {
	case "min", "max":
		return extreme(name, given)
	}
	if len(given) != 1 {
		return value{}, fmt.Errorf("%s takes one value", name)
	}
	return single(name, given[0])
}

func single(name string, v value) (value, error) {
	const deg = math.Pi / 180
	switch name {
	case "abs":
		return value{math.Abs(v.x), v.power, v.bare}, nil
	case "sqrt":
		if v.x < 0 || v.power%2 != 0 {
			return value{}, fmt.Errorf("there is no square root of %s of %g", v.kind(), v.x)
		}
		return value{math.Sqrt(v.x), v.power / 2, v.bare}, nil
	}
	x, err := v.plain()
	if err != nil {
		return value{}, fmt.Errorf("%s of what is not a plain number", name)
	}
	var y float64
	switch name {
	case "sin":
		y = math.Sin(x * deg)
	case "cos":
		y = math.Cos(x * deg)
	case "tan":
		y = math.Tan(x * deg)
	case "asin":
		y = math.Asin(x) / deg
	case "acos":
		y = math.Acos(x) / deg
	case "atan":
		y = math.Atan(x) / deg
	default:
		return value{}, fmt.Errorf("there is no function %q; there are sqrt, sin, cos, tan, asin, acos, atan, min, max and abs", name)
	}
	if math.IsNaN(y) {
		return value{}, fmt.Errorf("there is no %s of %g", name, x)
	}
	return value{x: y}, nil
}

func extreme(name string, given []value) (value, error) {
	best := given[0]
	for _, v := range given[1:] {
		a, b, err := alike(best, v)
		if err != nil {
			return value{}, err
		}
		if best = a; (name == "min") == (b.x < a.x) {
			best = b
		}
	}
	return best, nil
}
