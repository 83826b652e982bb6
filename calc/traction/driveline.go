package traction

import "axlewright/calc/check"

// DrivelineParams are an engine and all that stands between it and the axle.
type DrivelineParams struct {
	EngineTorque float64 // N·m, T_e: largest torque of the engine
	Gearbox      float64 // -, i_g: reduction of the gear engaged
	Transfer     float64 // -, i_t: reduction of the transfer box; 1 without one
	Final        float64 // -, i_0: ratio of the axle
	Efficiency   float64 // -, η: of all of them together
	Converter    float64 // -, k_c: torque multiplied by a converter, or what a clutch lets through; 1 for neither
	Shock        float64 // -, k_s: a wheel landing, a clutch dropped; 1 for a steady pull
	AxleShare    float64 // -, s: share of the torque that can reach this axle, see LargestShare
}

// EngineLimitedTorque returns the torque at both wheels of an axle that the engine can bring there.
//
//	T = T_e·k_c·i_g·i_t·i_0·η·k_s·s
//
//	T  torque of the whole axle, N·m
//
// Valid for a driveline that holds. The shock factor is a guess with a wide
// spread, 1.3 to 3 being heard of; it comes on top of the steady torque.
// Errors: *check.RangeError for values not above zero, an efficiency or a share above 1, a shock factor below 1.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2 (from
// memory); the factors for converter and shock are common practice, no source.
func EngineLimitedTorque(p DrivelineParams) (float64, error) {
	if err := check.All("traction.EngineLimitedTorque",
		check.Positive("EngineTorque", p.EngineTorque),
		check.Positive("Gearbox", p.Gearbox),
		check.Positive("Transfer", p.Transfer),
		check.Positive("Final", p.Final),
		check.That("Efficiency", p.Efficiency, p.Efficiency > 0 && p.Efficiency <= 1, "0 < Efficiency <= 1"),
		check.Positive("Converter", p.Converter),
		check.That("Shock", p.Shock, p.Shock >= 1, ">= 1"),
		check.That("AxleShare", p.AxleShare, p.AxleShare > 0 && p.AxleShare <= 1, "0 < AxleShare <= 1"),
	); err != nil {
		return 0, err
	}
	return p.EngineTorque * p.Converter * p.Gearbox * p.Transfer * p.Final * p.Efficiency * p.Shock * p.AxleShare, nil
}

// PowerParams are a speed and a power.
type PowerParams struct {
	Power      float64 // W, P: power at the wheels of the axle
	WheelSpeed float64 // rad/s, ω: angular speed of the wheels
}

// TorqueFromPower returns the torque that a power makes at the wheels at a speed.
//
//	T = P/ω
//
//	T  torque of the whole axle, N·m
//
// Valid for wheels that turn.
// Errors: *check.RangeError for a power below zero or a speed not above zero.
// Source: definition of power.
func TorqueFromPower(p PowerParams) (float64, error) {
	if err := check.All("traction.TorqueFromPower",
		check.NotNegative("Power", p.Power),
		check.Positive("WheelSpeed", p.WheelSpeed),
	); err != nil {
		return 0, err
	}
	return p.Power / p.WheelSpeed, nil
}
