package bearing

import (
	"axlewright/calc/check"
)

// Mounting says how two tapered roller bearings face each other on one shaft.
type Mounting string

const (
	// Direct: cups are pressed in from the ends, backs of the cones face each
	// other (face to face, X). The usual mounting of a diff centre.
	Direct Mounting = "direct"
	// Indirect: backs of the cones face outwards (back to back, O). The usual
	// mounting of a pinion and of a wheel hub.
	Indirect Mounting = "indirect"
)

// ThrustForm says how the thrust that a radial load induces is reckoned.
type ThrustForm string

const (
	HalfOverY ThrustForm = "F_r/(2·Y)"  // with Y of ISO 281
	RatioK    ThrustForm = "0.47·F_r/K" // with K of inch-size catalogues
)

// InducedThrust returns the axial force that a radial load drives out of a
// tapered roller bearing whose rollers carry round half the circle.
//
//	S = F_r/(2·Y)
//	S = 0.47·F_r/K
//
//	radial  radial load F_r, N
//	factor  Y or K, as the form asks, -
//	form    which of the two, name
//	S       induced thrust, N
//
// Valid for bearings without end play and without preload worth speaking of.
// Errors: *check.RangeError for a negative load, a factor not above zero or an
// unknown form.
// Source: common catalogue practice beside ISO 281 (from memory) for the first,
// Shigley, Mechanical Engineering Design, 9th ed., eq. 11-15 (from memory) for
// the second.
func InducedThrust(radial, factor float64, form ThrustForm) (float64, error) {
	const fn = "bearing.InducedThrust"
	if err := check.All(fn,
		check.NotNegative("radial", radial),
		check.Positive("factor", factor),
	); err != nil {
		return 0, err
	}
	switch form {
	case HalfOverY:
		return radial / (2 * factor), nil
	case RatioK:
		return 0.47 * radial / factor, nil
	}
	return 0, unknown(fn, "form")
}

// PairParams holds the inputs of [PairThrust]. Bearing A is the one drawn on the
// left, B the one on the right.
type PairParams struct {
	Mounting Mounting // name, how the two face each other
	InducedA float64  // N, S_A: thrust induced in A by its own radial load
	InducedB float64  // N, S_B: thrust induced in B by its own radial load
	Thrust   float64  // N, K_a: outside thrust on the shaft, from A towards B positive; where the hub turns and takes the thrust, the opposite of the thrust on the hub
}

// PairResult holds the axial loads on the two bearings of a pair.
type PairResult struct {
	AxialA float64 // N, F_aA: axial load on A
	AxialB float64 // N, F_aB: axial load on B
	Seated string  // name, the bearing that the net thrust presses home: A or B
}

// PairThrust returns the axial loads on two tapered roller bearings that hold
// one shaft against each other.
//
//	F_aA = S_B + K_A, F_aB = S_B      where S_A <= S_B + K_A
//	F_aA = S_A,       F_aB = S_A − K_A    otherwise
//	K_A = K_a (indirect) or −K_a (direct)
//
// K_A is the outside thrust that presses bearing A home: a push on the shaft
// towards B seats B in a direct mounting, A in an indirect one.
// Valid for pairs set without preload worth speaking of; with preload the two
// share the thrust by their stiffness.
// Errors: *check.RangeError for a negative induced thrust, a thrust that is not
// finite or an unknown mounting.
// Source: Shigley, Mechanical Engineering Design, 9th ed., eqs. 11-16 and 11-17
// (from memory); axial equilibrium of the shaft.
func PairThrust(p PairParams) (PairResult, error) {
	const fn = "bearing.PairThrust"
	if err := check.All(fn,
		check.NotNegative("InducedA", p.InducedA),
		check.NotNegative("InducedB", p.InducedB),
		check.Finite("Thrust", p.Thrust),
	); err != nil {
		return PairResult{}, err
	}
	onA := p.Thrust
	switch p.Mounting {
	case Indirect:
	case Direct:
		onA = -p.Thrust
	default:
		return PairResult{}, unknown(fn, "Mounting")
	}
	if p.InducedA <= p.InducedB+onA {
		return PairResult{AxialA: p.InducedB + onA, AxialB: p.InducedB, Seated: "A"}, nil
	}
	return PairResult{AxialA: p.InducedA, AxialB: p.InducedA - onA, Seated: "B"}, nil
}
