package axle

import (
	"fmt"

	"axlewright/quantity"
)

// A usual is a figure and the band that it lies in for vehicles with such axles. Common practice, no source.
type usual struct {
	field, name string
	figure      Number
	dim         quantity.Dimension
	low, high   float64
}

// Unusual asks after figures of an enquiry that are outside what such vehicles
// have: a slip of the point, or a figure to be confirmed. It refuses nothing.
func Unusual(e *Enquiry) Findings {
	v := &e.Vehicle
	var asks Findings
	for _, u := range []usual{
		{"vehicle.axle_load", "an axle load", v.AxleLoad.Number, quantity.Mass, 300, 6000},
		{"vehicle.engine", "an engine torque", v.Engine.Number, quantity.Torque, 60, 1200},
		{"vehicle.friction", "a grip", v.Friction.Number, quantity.Number, 0.3, 1.2},
	} {
		if x := u.figure.Value; x < u.low || x > u.high {
			asks = append(asks, Finding{Field: u.field, Problem: u.asks(x)})
		}
	}
	return asks
}

func (u usual) asks(x float64) string {
	said := fmt.Sprintf("%s of %s is outside what such vehicles have, %s (common practice, no source).",
		u.name, u.text(x), quantity.FormatRange(u.low, u.high, u.dim))
	for _, by := range []float64{10, 100, 1000} {
		for _, meant := range []float64{x / by, x * by} {
			if meant >= u.low && meant <= u.high {
				return said + " Is it " + u.text(meant) + "?"
			}
		}
	}
	return said + " Is it right?"
}

func (u usual) text(x float64) string {
	if u.dim == quantity.Number {
		return fmt.Sprintf("%.4g", x)
	}
	return quantity.FormatDigits(x, u.dim, 3)
}
