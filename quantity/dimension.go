package quantity

import "strings"

// Dimension is a kind of quantity: what may be compared and added. Its text is
// the plain name, "torque". Kinds that share an SI unit stay apart where the
// trade reads or writes them differently (a temperature and a difference of
// temperature, a torque and an energy).
type Dimension string

// The dimensions that the trade's quantities have.
const (
	Number                Dimension = "plain number" // counts, ratios, factors
	Share                 Dimension = "share"        // a plain number that people read in percent
	Money                 Dimension = "sum of money" // in the shop's own currency, which is not named
	Name                  Dimension = "word"         // one of a list of words; carries no number
	Length                Dimension = "length"
	Area                  Dimension = "area"
	Volume                Dimension = "volume"
	FirstMoment           Dimension = "first moment of area" // also a section modulus
	SecondMoment          Dimension = "second moment of area"
	LengthFifth           Dimension = "fifth power of length"
	Curvature             Dimension = "curvature"
	Angle                 Dimension = "angle"
	Time                  Dimension = "time"
	Frequency             Dimension = "frequency"
	Speed                 Dimension = "speed"
	AngularSpeed          Dimension = "speed of rotation"
	Acceleration          Dimension = "acceleration"
	Mass                  Dimension = "mass"
	Density               Dimension = "density"
	Force                 Dimension = "force"
	Torque                Dimension = "torque"
	Pressure              Dimension = "pressure or stress"
	PressureSpeed         Dimension = "pressure times speed"
	Stiffness             Dimension = "stiffness" // also a load per length
	RotationalStiffness   Dimension = "stiffness in rotation"
	Compliance            Dimension = "compliance"
	RotationalCompliance  Dimension = "compliance in rotation"
	BendingStiffness      Dimension = "bending stiffness"
	Energy                Dimension = "energy"
	Power                 Dimension = "power"
	HeatInput             Dimension = "heat input"
	Temperature           Dimension = "temperature"
	TemperatureDifference Dimension = "difference of temperature"
	Expansion             Dimension = "expansion coefficient"
	Conductivity          Dimension = "conductivity of heat"
	SpecificHeat          Dimension = "specific heat"
	KinematicViscosity    Dimension = "kinematic viscosity" // also a diffusivity
	SpecificWear          Dimension = "specific wear"       // volume worn per work of friction
	Current               Dimension = "current"
	Voltage               Dimension = "voltage"
	GasFlow               Dimension = "flow"
	HydrogenContent       Dimension = "hydrogen content"
	HardnessVickers       Dimension = "Vickers hardness"
	HardnessBrinell       Dimension = "Brinell hardness"
	HardnessRockwellC     Dimension = "Rockwell C hardness"
)

// kind is what the package knows about a dimension beside its units.
type kind struct {
	dim     Dimension
	si      string // coherent SI unit expression
	example string // a text that Parse takes
	plain   bool   // a number without a unit is complete
}

// kinds lists every dimension. Where two share an SI unit the first one is
// what ByUnit answers.
var kinds = []kind{
	{Number, "-", "3.54", true},
	{Share, "-", "8 %", true},
	{Money, "-", "120", true},
	{Name, "name", "drive", true},
	{Length, "m", "12 mm", false},
	{Area, "m²", "84.3 mm²", false},
	{Volume, "m³", "2.5 l", false},
	{FirstMoment, "m³", "15 cm³", false},
	{SecondMoment, "m⁴", "120 cm⁴", false},
	{LengthFifth, "m⁵", "12 mm⁵", false},
	{Curvature, "1/m", "0.02 1/mm", false},
	{Angle, "rad", "60 deg", false},
	{Time, "s", "25 min", false},
	{AngularSpeed, "rad/s", "30 rpm", false},
	{Frequency, "1/s", "50 Hz", false},
	{Speed, "m/s", "3 km/h", false},
	{Mass, "kg", "1450 kg", false},
	{Acceleration, "m/s²", "9.81 m/s²", false},
	{Density, "kg/m³", "7.85 g/cm³", false},
	{Force, "N", "55.1 kN", false},
	{Torque, "N·m", "90 N·m", false},
	{Energy, "J", "27 J", false},
	{Pressure, "Pa", "830 MPa", false},
	{PressureSpeed, "Pa·m/s", "1.8 MPa·m/s", false},
	{Stiffness, "N/m", "120 kN/mm", false},
	{RotationalStiffness, "N·m/rad", "40 kN·m/rad", false},
	{Compliance, "m/N", "8.3 µm/kN", false},
	{RotationalCompliance, "rad/(N·m)", "0.02 mrad/(kN·m)", false},
	{BendingStiffness, "N·m²", "12 kN·m²", false},
	{Power, "W", "75 kW", false},
	{HeatInput, "J/m", "1.0 kJ/mm", false},
	{Temperature, "K", "80 °C", false},
	{TemperatureDifference, "K", "80 K", false},
	{Expansion, "1/K", "11.5 µm/(m·K)", false},
	{KinematicViscosity, "m²/s", "46 mm²/s", false},
	{Conductivity, "W/(m·K)", "45 W/(m·K)", false},
	{SpecificHeat, "J/(kg·K)", "480 J/(kg·K)", false},
	{SpecificWear, "m²/N", "0.02 mm³/(kN·m)", false},
	{Current, "A", "120 A", false},
	{Voltage, "V", "24 V", false},
	{GasFlow, "m³/s", "7 l/min", false},
	{HydrogenContent, "m³/kg", "5 ml/100g", false},
	{HardnessVickers, "HV", "350 HV", false},
	{HardnessBrinell, "HBW", "220 HB", false},
	{HardnessRockwellC, "HRC", "58 HRC", false},
}

var kindOf = func() map[Dimension]kind {
	m := make(map[Dimension]kind, len(kinds))
	for _, k := range kinds {
		m[k.dim] = k
	}
	return m
}()

// All returns every dimension, in a fixed order.
func All() []Dimension {
	dims := make([]Dimension, len(kinds))
	for i, k := range kinds {
		dims[i] = k.dim
	}
	return dims
}

// ByUnit returns the dimension for a coherent SI unit expression: "N·m" is
// Torque, "m²" is Area, "-" is Number, "name" is Name. A unit that several
// dimensions share gives the commonest, "K" is Temperature and "m³" is Volume;
// where the meaning of the field is at hand, ByMeaning knows better.
func ByUnit(si string) (Dimension, bool) {
	for _, k := range kinds {
		if k.si == si {
			return k.dim, true
		}
	}
	return "", false
}

// ByMeaning is ByUnit for a field that is described in words. Kelvins are a
// temperature only where the words say so ("temperature of the plate") and
// otherwise a difference ("temperature rise", "share of the thickness"): a
// difference shown as −253 °C would be nonsense. A modulus or first moment of
// area in m³ is not a volume.
func ByMeaning(si, meaning string) (Dimension, bool) {
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(strings.ToLower(meaning), w) {
				return true
			}
		}
		return false
	}
	switch {
	case si == Temperature.Unit() && (!has("temperature") || has("rise", "difference", "change", "fall", "drop", "warming", "cooling by")):
		return TemperatureDifference, true
	case si == FirstMoment.Unit() && has("modulus", "moment"):
		return FirstMoment, true
	}
	return ByUnit(si)
}

// Unit returns the coherent SI unit in which Quantity.SI is counted, "N·m";
// "-" for plain numbers, "name" for words and "" for an unknown dimension.
func (d Dimension) Unit() string { return kindOf[d].si }

// Example returns a text that Parse takes for this dimension, to show beside an
// empty field.
func (d Dimension) Example() string { return kindOf[d].example }

// phrase is the dimension with its article: "a torque", "an angle".
func (d Dimension) phrase() string {
	if d == "" {
		return "an unknown dimension"
	}
	switch d[0] {
	case 'a', 'e', 'i', 'o':
		return "an " + string(d)
	}
	return "a " + string(d)
}
