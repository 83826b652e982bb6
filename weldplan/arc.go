package weldplan

import (
	"math"

	"axlewright/calc/weld"
)

// An Arc is how a run is welded: speed, voltage, and the heat of it.
type Arc struct {
	Volts  Band    `json:"volts"`
	Speed  Band    `json:"speed"` // m/s
	Heat   Band    `json:"heat"`  // J/m, with efficiency
	Plate  Cooling `json:"plate"`
	Wall   Cooling `json:"wall"`
	Source string  `json:"source"`
}

// A Cooling is the time from 800 to 500 °C, of steel.
type Cooling struct {
	Band
	Thin bool   `json:"thin"`           // by flow in the plane
	Note string `json:"note,omitempty"` // where the formula does not reach
}

// Travel speeds of a hand. Common practice, no source; a first pass on scrap settles it.
var handSpeeds = map[Process]Band{
	TIG: {1.2e-3, 1.7e-3, 2.5e-3}, MAG: {4e-3, 5.5e-3, 7.5e-3}, Stick: {2e-3, 2.8e-3, 4e-3},
}

// Areas of a pass that those speeds are for: a larger bead goes slower.
var handArea = map[Process]float64{TIG: 6e-6, MAG: 10e-6, Stick: 10e-6}

// arcVolts is the load line of IEC 60974-1, on which a machine is rated: 10 + 0.04·I
// for TIG, 14 + 0.05·I for MAG, 20 + 0.04·I for stick (read in a handbook).
func arcVolts(process Process, amps float64) float64 {
	switch process {
	case MAG:
		return 14 + 0.05*amps
	case Stick:
		return 20 + 0.04*amps
	}
	return 10 + 0.04*amps
}

// arcOf works out heat input and cooling times. The doubts of current and speed
// are taken as independent.
func arcOf(process Process, amps Band, s Size, joint JointKind, plate, wall float64, start Band) (Arc, error) {
	a := Arc{Source: "EN 1011-1, k·U·I/v; volts by the load line of IEC 60974-1; speeds common practice, no source"}
	speeds := handSpeeds[process]
	larger := s.Area / float64(s.Passes) / handArea[process]
	slower := 1.0
	if larger > 1 {
		slower = 1 / larger
	}
	a.Speed = Band{speeds.Low * slower, speeds.First * slower, speeds.High * slower}
	a.Volts = Band{arcVolts(process, amps.Low), arcVolts(process, amps.First), arcVolts(process, amps.High)}
	power := func(volts, amps float64) float64 { return volts * amps }
	q, err := weld.HeatInput(weld.HeatInputParams{Process: weld.Process(process), Voltage: a.Volts.First, Current: amps.First, Speed: a.Speed.First})
	if err != nil {
		return a, err
	}
	first := power(a.Volts.First, amps.First)
	less := math.Hypot(math.Log(first/power(a.Volts.Low, amps.Low)), math.Log(a.Speed.High/a.Speed.First))
	more := math.Hypot(math.Log(power(a.Volts.High, amps.High)/first), math.Log(a.Speed.First/a.Speed.Low))
	a.Heat = Band{q * math.Exp(-less), q, q * math.Exp(more)}
	factors, err := weld.ShapeFactors(jointForm[joint])
	if err != nil {
		return a, err
	}
	a.Plate = coolingOf(a.Heat, plate, start, factors)
	a.Wall = coolingOf(a.Heat, wall, start, factors)
	return a, nil
}

// jointForm is the form whose shape factors a joint takes.
var jointForm = map[JointKind]weld.Joint{Lap: weld.TeeFillet, Tee: weld.TeeFillet, Corner: weld.CornerFillet, Butt: weld.ButtFill}

// coolingOf is the cooling time over the doubt of heat, start and shape factor.
func coolingOf(heat Band, thickness float64, start Band, f weld.ShapeFactorsResult) (c Cooling) {
	at := func(q, t0, two float64) float64 {
		r, err := weld.CoolingTime(weld.CoolingParams{HeatInput: q, Preheat: t0, Thickness: thickness, TwoFactor: two, Three: f.Three})
		if err != nil {
			c.Note = "outside the formula: " + err.Error()
			return 0
		}
		c.Thin = r.Thin
		return r.Time
	}
	c.Low = at(heat.Low, start.Low, f.TwoLow)
	c.High = at(heat.High, start.High, f.TwoHigh)
	c.First = at(heat.First, start.First, (f.TwoLow+f.TwoHigh)/2)
	return c
}
