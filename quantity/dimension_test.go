package quantity

import "testing"

func TestByUnit(t *testing.T) {
	for si, want := range map[string]Dimension{
		"-": Number, "name": Name, "m": Length, "m²": Area, "m³": Volume, "m⁴": SecondMoment, "m⁵": LengthFifth,
		"N": Force, "N·m": Torque, "Pa": Pressure, "Pa·m/s": PressureSpeed, "rad": Angle, "rad/s": AngularSpeed,
		"1/s": Frequency, "s": Time, "kg": Mass, "kg/m³": Density, "K": Temperature, "W": Power, "J": Energy,
		"J/m": HeatInput, "N/m": Stiffness, "m/N": Compliance, "N·m/rad": RotationalStiffness,
		"rad/(N·m)": RotationalCompliance, "N·m²": BendingStiffness, "m/s": Speed, "1/m": Curvature,
		"HV": HardnessVickers, "HBW": HardnessBrinell, "HRC": HardnessRockwellC, "m³/kg": HydrogenContent,
		"W/(m·K)": Conductivity, "J/(kg·K)": SpecificHeat, "m²/s": KinematicViscosity, "m²/N": SpecificWear,
		"A": Current, "V": Voltage, "1/K": Expansion, "m/s²": Acceleration,
	} {
		got, ok := ByUnit(si)
		if !ok || got != want || got.Unit() != si {
			t.Errorf("ByUnit(%q) = %q, %v; want %q", si, got, ok, want)
		}
	}
	for _, none := range []string{"", "mm", "furlong"} {
		if got, ok := ByUnit(none); ok {
			t.Errorf("ByUnit(%q) = %q, want none", none, got)
		}
	}
}

func TestByMeaningSettlesKelvinsAndCubicMetres(t *testing.T) {
	for _, c := range []struct {
		si, meaning string
		want        Dimension
	}{
		{"K", "T_0: temperature of the plate before the run", Temperature},
		{"K", "T_p: preheat and interpass temperature", Temperature},
		{"K", "temperature rise in the middle of the face", TemperatureDifference},
		{"K", "ΔT: mean rise of the rubbing face above both bodies", TemperatureDifference},
		{"K", "T_pd: share of the thickness", TemperatureDifference},
		{"m³", "section modulus of the throat", FirstMoment},
		{"m³", "volume of oil", Volume},
		{"N·m", "bending moment", Torque},
	} {
		if got, ok := ByMeaning(c.si, c.meaning); !ok || got != c.want {
			t.Errorf("ByMeaning(%q, %q) = %q, %v; want %q", c.si, c.meaning, got, ok, c.want)
		}
	}
	if _, ok := ByMeaning("ell", "length"); ok {
		t.Error("an unknown unit has a dimension")
	}
}
