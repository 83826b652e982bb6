package quantity

import "math"

// shownIn is a unit for people and its rounding.
type shownIn struct {
	symbol string
	rounding
}

// band says how sizes below a limit are shown: in the metric unit and, where
// the trade knows one, in the other system too.
type band struct {
	below  float64 // SI, absolute
	metric shownIn
	other  shownIn // symbol "" is none
}

var everything = math.Inf(1)

// bands holds, by dimension, what the trade reads its quantities in, small sizes
// first. Shop lengths go to 0.01 mm and 1 thou, small torques to inches.
var bands = map[Dimension][]band{
	Number: {{below: everything, metric: shownIn{"", rounding{0, 4, 9}}}},
	Share:  {{below: everything, metric: shownIn{"%", rounding{0, 2, 4}}}},
	Money:  {{below: everything, metric: shownIn{"", rounding{2, 0, 15}}}},
	Length: {
		{3e-3, shownIn{"mm", rounding{2, 2, 4}}, shownIn{"thou", rounding{0, 1, 4}}},
		{1, shownIn{"mm", rounding{2, 0, 5}}, shownIn{"in", rounding{3, 0, 5}}},
		{2000, shownIn{"m", rounding{3, 0, 4}}, shownIn{"ft", rounding{2, 0, 4}}},
		{1e6, shownIn{"km", rounding{1, 0, 6}}, shownIn{"mi", rounding{1, 0, 6}}},
		{everything, shownIn{"km", rounding{0, 3, 4}}, shownIn{"mi", rounding{0, 3, 4}}},
	},
	Area: {
		{0.1, shownIn{"mm²", rounding{0, 3, 4}}, shownIn{"in²", rounding{2, 3, 4}}},
		{everything, shownIn{"m²", rounding{2, 3, 4}}, shownIn{"ft²", rounding{1, 3, 4}}},
	},
	Volume: {
		{1e-6, shownIn{"mm³", rounding{0, 3, 4}}, shownIn{"in³", rounding{3, 3, 4}}},
		{1e-3, shownIn{"cm³", rounding{0, 3, 4}}, shownIn{"in³", rounding{1, 3, 4}}},
		{everything, shownIn{"l", rounding{1, 2, 4}}, shownIn{"US qt", rounding{1, 2, 4}}},
	},
	FirstMoment: {
		{1e-6, shownIn{"mm³", rounding{0, 3, 4}}, shownIn{"in³", rounding{3, 3, 4}}},
		{everything, shownIn{"cm³", rounding{0, 3, 4}}, shownIn{"in³", rounding{1, 3, 4}}},
	},
	SecondMoment: {
		{1e-8, shownIn{"mm⁴", rounding{0, 3, 4}}, shownIn{"in⁴", rounding{3, 3, 4}}},
		{everything, shownIn{"cm⁴", rounding{0, 3, 4}}, shownIn{"in⁴", rounding{1, 3, 4}}},
	},
	LengthFifth: {{everything, shownIn{"mm⁵", rounding{0, 3, 4}}, shownIn{"in⁵", rounding{0, 3, 4}}}},
	Curvature: {
		{1, shownIn{"1/m", rounding{0, 3, 4}}, shownIn{"1/in", rounding{0, 3, 4}}},
		{everything, shownIn{"1/mm", rounding{0, 3, 4}}, shownIn{"1/in", rounding{0, 3, 4}}},
	},
	Angle: {
		{math.Pi / 180, shownIn{"′", rounding{0, 3, 4}}, shownIn{}},
		{everything, shownIn{"°", rounding{0, 3, 5}}, shownIn{}},
	},
	Time: {
		{120, shownIn{"s", rounding{0, 3, 4}}, shownIn{}},
		{7200, shownIn{"min", rounding{0, 2, 4}}, shownIn{}},
		{everything, shownIn{"h", rounding{1, 2, 6}}, shownIn{}},
	},
	Frequency:    {{everything, shownIn{"Hz", rounding{0, 3, 5}}, shownIn{}}},
	AngularSpeed: {{everything, shownIn{"rpm", rounding{0, 2, 5}}, shownIn{}}},
	Speed: {
		{0.1, shownIn{"mm/min", rounding{0, 3, 4}}, shownIn{"in/min", rounding{1, 2, 4}}},
		{everything, shownIn{"km/h", rounding{0, 2, 4}}, shownIn{"mph", rounding{0, 2, 4}}},
	},
	Acceleration: {{everything, shownIn{"m/s²", rounding{2, 2, 4}}, shownIn{"g", rounding{2, 2, 4}}}},
	Mass: {
		{1, shownIn{"g", rounding{0, 3, 4}}, shownIn{"oz", rounding{1, 2, 4}}},
		{100, shownIn{"kg", rounding{1, 2, 4}}, shownIn{"lb", rounding{1, 2, 4}}},
		{everything, shownIn{"kg", rounding{0, 3, 6}}, shownIn{"lb", rounding{0, 3, 6}}},
	},
	Density: {{everything, shownIn{"g/cm³", rounding{2, 2, 4}}, shownIn{"lb/in³", rounding{3, 2, 4}}}},
	Force: {
		{1e3, shownIn{"N", rounding{0, 3, 3}}, shownIn{"lbf", rounding{0, 3, 3}}},
		{everything, shownIn{"kN", rounding{0, 3, 3}}, shownIn{"lbf", rounding{0, 3, 3}}},
	},
	Torque: {
		{12, shownIn{"N·m", rounding{1, 2, 4}}, shownIn{"lbf·in", rounding{0, 1, 4}}},
		{everything, shownIn{"N·m", rounding{0, 2, 4}}, shownIn{"lbf·ft", rounding{0, 2, 4}}},
	},
	Energy: {
		{1e4, shownIn{"J", rounding{0, 2, 4}}, shownIn{"ft·lbf", rounding{0, 2, 4}}},
		{everything, shownIn{"kJ", rounding{0, 3, 4}}, shownIn{"ft·lbf", rounding{0, 3, 4}}},
	},
	Power: {
		{1e3, shownIn{"W", rounding{0, 3, 4}}, shownIn{"hp", rounding{2, 2, 4}}},
		{everything, shownIn{"kW", rounding{0, 3, 4}}, shownIn{"hp", rounding{0, 3, 4}}},
	},
	Pressure: {
		{1e6, shownIn{"kPa", rounding{0, 3, 3}}, shownIn{"psi", rounding{0, 3, 3}}},
		{1e10, shownIn{"MPa", rounding{0, 3, 3}}, shownIn{"ksi", rounding{0, 3, 3}}},
		{everything, shownIn{"GPa", rounding{0, 3, 4}}, shownIn{"Msi", rounding{0, 3, 4}}},
	},
	PressureSpeed: {{everything, shownIn{"MPa·m/s", rounding{0, 3, 3}}, shownIn{"psi·ft/min", rounding{0, 3, 3}}}},
	Stiffness: {
		{1e6, shownIn{"N/mm", rounding{0, 3, 3}}, shownIn{"lbf/in", rounding{0, 3, 3}}},
		{everything, shownIn{"kN/mm", rounding{0, 3, 3}}, shownIn{"lbf/in", rounding{0, 3, 3}}},
	},
	RotationalStiffness: {
		{1e3, shownIn{"N·m/rad", rounding{0, 3, 3}}, shownIn{"lbf·in/rad", rounding{0, 3, 3}}},
		{everything, shownIn{"kN·m/rad", rounding{0, 3, 3}}, shownIn{"lbf·ft/°", rounding{0, 3, 3}}},
	},
	Compliance:           {{everything, shownIn{"µm/kN", rounding{0, 3, 3}}, shownIn{"thou/klbf", rounding{0, 3, 3}}}},
	RotationalCompliance: {{everything, shownIn{"mrad/(kN·m)", rounding{0, 3, 3}}, shownIn{"°/(klbf·ft)", rounding{0, 3, 3}}}},
	BendingStiffness:     {{everything, shownIn{"kN·m²", rounding{0, 3, 3}}, shownIn{"lbf·in²", rounding{0, 3, 3}}}},
	HeatInput:            {{everything, shownIn{"kJ/mm", rounding{2, 2, 3}}, shownIn{"kJ/in", rounding{0, 2, 3}}}},
	Temperature:          {{everything, shownIn{"°C", rounding{0, 0, 6}}, shownIn{"°F", rounding{0, 0, 6}}}},
	TemperatureDifference: {
		{everything, shownIn{"K", rounding{0, 2, 4}}, shownIn{"Δ°F", rounding{0, 2, 4}}},
	},
	Expansion:          {{everything, shownIn{"µm/(m·K)", rounding{1, 2, 3}}, shownIn{"µin/(in·°F)", rounding{1, 2, 3}}}},
	Conductivity:       {{everything, shownIn{"W/(m·K)", rounding{0, 3, 4}}, shownIn{}}},
	SpecificHeat:       {{everything, shownIn{"J/(kg·K)", rounding{0, 3, 4}}, shownIn{}}},
	SpecificWear:       {{everything, shownIn{"mm³/(kN·m)", rounding{0, 2, 3}}, shownIn{}}},
	Current:            {{everything, shownIn{"A", rounding{0, 2, 4}}, shownIn{}}},
	Voltage:            {{everything, shownIn{"V", rounding{1, 2, 4}}, shownIn{}}},
	KinematicViscosity: {{everything, shownIn{"mm²/s", rounding{0, 3, 4}}, shownIn{}}},
	GasFlow:            {{everything, shownIn{"l/min", rounding{1, 2, 4}}, shownIn{"ft³/h", rounding{0, 2, 4}}}},
	HydrogenContent:    {{everything, shownIn{"ml/100g", rounding{1, 2, 3}}, shownIn{}}},
	HardnessVickers:    {{everything, shownIn{"HV", rounding{0, 0, 5}}, shownIn{}}},
	HardnessBrinell:    {{everything, shownIn{"HBW", rounding{0, 0, 5}}, shownIn{}}},
	HardnessRockwellC:  {{everything, shownIn{"HRC", rounding{0, 0, 5}}, shownIn{}}},
}

// bandOf is the band for a size; the last band takes all the rest.
func bandOf(si float64, dim Dimension) (band, bool) {
	list := bands[dim]
	for _, b := range list {
		if math.Abs(si) < b.below {
			return b, true
		}
	}
	if len(list) == 0 {
		return band{}, false
	}
	return list[len(list)-1], true
}
