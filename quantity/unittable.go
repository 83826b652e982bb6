package quantity

import "math/big"

// unit is one unit of one dimension: SI = typed·factor + offset.
type unit struct {
	dim    Dimension
	symbol string // as printed
	also   string // other spellings, separated by spaces, in the form unitKey gives
	factor *big.Rat
	offset *big.Rat // nil is none; only temperatures have one
}

// units lists what may stand after a number, by dimension. One spelling may
// serve several dimensions ("lb·ft" as torque and as energy).
var units = []unit{
	{Number, "%", "percent per·cent pct", rat("0.01"), nil},
	{Number, "‰", "", rat("0.001"), nil},
	{Number, "ppm", "", rat("1e-6"), nil},
	{Number, ":1", ":·1", rat("1"), nil},
	{Share, "%", "percent per·cent pct", rat("0.01"), nil},
	{Share, "‰", "", rat("0.001"), nil},
	{Share, "ppm", "", rat("1e-6"), nil},

	{Length, "m", "metre metres meter meters", rat("1"), nil},
	{Length, "km", "kilometre kilometres kilometer kilometers", rat("1e3"), nil},
	{Length, "cm", "", rat("1e-2"), nil},
	{Length, "mm", "millimetre millimetres millimeter millimeters", rat("1e-3"), nil},
	{Length, "µm", "um micron microns micrometre micrometres", rat("1e-6"), nil},
	{Length, "thou", "", over(inch, rat("1000")), nil},
	{Length, "in", `" inch inches`, inch, nil},
	{Length, "ft", "' foot feet", foot, nil},
	{Length, "mi", "mile miles", mile, nil},

	{Area, "m²", "sq·m", rat("1"), nil},
	{Area, "cm²", "sq·cm", rat("1e-4"), nil},
	{Area, "mm²", "sq·mm", rat("1e-6"), nil},
	{Area, "in²", "sq·in", power(inch, 2), nil},
	{Area, "ft²", "sq·ft", power(foot, 2), nil},

	{Volume, "m³", "", rat("1"), nil},
	{Volume, "l", "L dm3 litre litres liter liters", rat("1e-3"), nil},
	{Volume, "ml", "mL cc cm3", rat("1e-6"), nil},
	{Volume, "mm³", "", rat("1e-9"), nil},
	{Volume, "in³", "cu·in", power(inch, 3), nil},
	{Volume, "US gal", "", usGal, nil},
	{Volume, "US qt", "", over(usGal, rat("4")), nil},
	{Volume, "US pt", "", over(usGal, rat("8")), nil},
	{Volume, "UK gal", "", ukGal, nil},
	{Volume, "UK qt", "", over(ukGal, rat("4")), nil},
	{Volume, "UK pt", "", over(ukGal, rat("8")), nil},

	{FirstMoment, "m³", "", rat("1"), nil},
	{FirstMoment, "cm³", "", rat("1e-6"), nil},
	{FirstMoment, "mm³", "", rat("1e-9"), nil},
	{FirstMoment, "in³", "", power(inch, 3), nil},
	{SecondMoment, "m⁴", "", rat("1"), nil},
	{SecondMoment, "cm⁴", "", rat("1e-8"), nil},
	{SecondMoment, "mm⁴", "", rat("1e-12"), nil},
	{SecondMoment, "in⁴", "", power(inch, 4), nil},
	{LengthFifth, "m⁵", "", rat("1"), nil},
	{LengthFifth, "mm⁵", "", rat("1e-15"), nil},
	{LengthFifth, "in⁵", "", power(inch, 5), nil},
	{Curvature, "1/m", "/m m^-1", rat("1"), nil},
	{Curvature, "1/mm", "/mm mm^-1", rat("1e3"), nil},
	{Curvature, "1/in", "/in in^-1", over(rat("1"), inch), nil},

	{Angle, "rad", "", rat("1"), nil},
	{Angle, "mrad", "", rat("1e-3"), nil},
	{Angle, "µrad", "urad", rat("1e-6"), nil},
	{Angle, "°", "deg degree degrees", degree, nil},
	{Angle, "′", "arcmin minute·of·arc minutes·of·arc", arcmin, nil},
	{Angle, "″", "arcsec second·of·arc seconds·of·arc", arcsec, nil},
	{Angle, "turn", "turns rev revs", turn, nil},

	{Time, "s", "sec secs second seconds", rat("1"), nil},
	{Time, "ms", "", rat("1e-3"), nil},
	{Time, "min", "mins minute minutes", rat("60"), nil},
	{Time, "h", "hr hrs hour hours", rat("3600"), nil},
	{Time, "d", "day days", rat("86400"), nil},
	{Frequency, "Hz", "1/s /s s^-1", rat("1"), nil},
	{Frequency, "kHz", "", rat("1e3"), nil},
	{Frequency, "1/min", "/min min^-1", over(rat("1"), rat("60")), nil},
	{Speed, "m/s", "", rat("1"), nil},
	{Speed, "m/min", "", over(rat("1"), rat("60")), nil},
	{Speed, "cm/min", "", over(rat("1e-2"), rat("60")), nil},
	{Speed, "mm/min", "", over(rat("1e-3"), rat("60")), nil},
	{Speed, "mm/s", "", rat("1e-3"), nil},
	{Speed, "km/h", "kph kmh km/hr", over(rat("1000"), rat("3600")), nil},
	{Speed, "mph", "mi/h mile/h miles/h", over(mile, rat("3600")), nil},
	{Speed, "ft/s", "fps", foot, nil},
	{Speed, "ft/min", "fpm", over(foot, rat("60")), nil},
	{Speed, "in/min", "ipm", over(inch, rat("60")), nil},
	{AngularSpeed, "rad/s", "", rat("1"), nil},
	{AngularSpeed, "rpm", "r/min rev/min 1/min /min min^-1", over(turn, rat("60")), nil},
	{AngularSpeed, "rev/s", "r/s", turn, nil},
	{AngularSpeed, "°/s", "deg/s", degree, nil},
	{Acceleration, "m/s²", "", rat("1"), nil},
	{Acceleration, "g", "gee", gravity, nil},
	{GasFlow, "m³/s", "", rat("1"), nil},
	{GasFlow, "l/min", "L/min", over(rat("1e-3"), rat("60")), nil},
	{GasFlow, "ft³/h", "cfh", over(power(foot, 3), rat("3600")), nil},
	{KinematicViscosity, "m²/s", "", rat("1"), nil},
	{KinematicViscosity, "mm²/s", "cSt", rat("1e-6"), nil},
}
