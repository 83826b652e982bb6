package worked_test

import (
	"fmt"

	"axlewright/calc/traction"
)

// vehicleDone hands on a value and stops the example on an error.
func vehicleDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// Five customers ask what their vehicles put through an axle.
//
//	engine --> gearbox --> low range --> axle ratio --> two wheels on the ground
//	           first gear                               r = 0.965 x half the tyre
//
// Wanted: the torque the engine can bring to the axle, the torque at which the
// tyres let go, which of the two governs, and the index against a standard
// vehicle of 1100 kg, friction 0.7, r = 354 mm. All torque goes to this axle, the
// driveline passes on 90 %. The 7.50R16 stands 808 mm high by the tape.
//
// Source: common practice, no source; g = 9.81 m/s² as the trade has it. Printed
// figures: 7191, 13580, 5152, 15234, 16516 N·m by the engine; 3872, 6043, 2945,
// 6679, 6750 N·m by grip; index 1.45, 2.26, 1.10, 2.50, 2.52.
func Example_vehicle1FiveEnquiries() {
	const g = 9.81
	inch := func(n float64) float64 { return n * 0.0254 }
	type enquiry struct {
		who                      string
		engine, first, low, axle float64
		tyre                     float64 // outside diameter, m
		mass, friction           float64
	}
	sized := func(width, aspect, rim float64) float64 {
		return vehicleDone(traction.TyreDiameter(traction.TyreParams{SectionWidth: width, AspectRatio: aspect, RimDiameter: inch(rim)}))
	}
	enquiries := []enquiry{
		{"hill farm  ", 190, 3.6, 3.3, 3.54, sized(0.235, 0.85, 16), 1450, 0.7},
		{"overland   ", 360, 3.7, 3.2, 3.54, sized(0.255, 0.85, 16), 1900, 0.8},
		{"restorer   ", 140, 3.0, 2.9, 4.70, 0.808, 1100, 0.7},
		{"expeditions", 330, 3.9, 3.2, 4.11, sized(0.255, 0.85, 16), 2100, 0.8},
		{"quarry     ", 330, 4.1, 3.3, 4.11, sized(0.285, 0.75, 16), 1900, 0.9},
	}

	// 1. The standard vehicle.
	standard := vehicleDone(traction.GripLimitedTorque(0.7, 1100*g, 0.354))
	fmt.Printf("1. standard vehicle  %.0f N·m\n", standard)

	for _, e := range enquiries {
		// 2. What the engine brings.
		engine := vehicleDone(traction.EngineLimitedTorque(traction.DrivelineParams{
			EngineTorque: e.engine, Gearbox: e.first, Transfer: e.low, Final: e.axle,
			Efficiency: 0.9, Converter: 1, Shock: 1, AxleShare: 1,
		}))

		// 3. What the tyres hold.
		radius := vehicleDone(traction.LoadedRadius(e.tyre))
		grip := vehicleDone(traction.GripLimitedTorque(e.friction, e.mass*g, radius))

		// 4. The lower one governs; the index says how far that is from standard.
		governing := vehicleDone(traction.GoverningTorque(traction.GoverningParams{Engine: engine, Grip: grip}))
		index := vehicleDone(traction.DemandIndex(traction.IndexParams{Demand: governing.Torque, Standard: standard}))
		fmt.Printf("2-4. %s  engine %5.0f, grip %4.0f N·m: %s governs, index %.2f\n", e.who, engine, grip, governing.Governs, index)
	}

	// Output:
	// 1. standard vehicle  2674 N·m
	// 2-4. hill farm    engine  7191, grip 3872 N·m: grip governs, index 1.45
	// 2-4. overland     engine 13580, grip 6043 N·m: grip governs, index 2.26
	// 2-4. restorer     engine  5152, grip 2945 N·m: grip governs, index 1.10
	// 2-4. expeditions  engine 15234, grip 6679 N·m: grip governs, index 2.50
	// 2-4. quarry       engine 16516, grip 6750 N·m: grip governs, index 2.52
}

// A car with rear drive pulls as hard as its tyres let it.
//
//	       centre of mass, h = 0.60 m
//	front |<--- a = 1.3 m --->o        | rear
//	      |<-------- L = 2.5 m ------->|   1600 kg, friction 0.9, r = 0.31 m
//
// Wanted: the rear axle's torque on level ground, forward and backward; then what
// goes through one half-shaft when the other wheel hangs in the air.
//
// Source: forms of Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2,
// and Wong, Theory of Ground Vehicles (from memory); inputs and the forward
// values 9366.35 N and 2903.57 N·m derived, not published.
func Example_vehicle2GripOfARearAxle() {
	const g = 9.80665
	p := traction.GripParams{
		Drive: traction.RearDrive, Friction: 0.9, Weight: 1600 * g,
		Wheelbase: 2.5, FrontToCentre: 1.3, Height: 0.6, LoadedRadius: 0.31,
	}

	// 1. Forward, the pull itself presses the rear axle down.
	forward := vehicleDone(traction.PullingGrip(p))
	fmt.Printf("1. forward   rear axle carries %.0f N, pulls %.2f N, %.2f N·m\n", forward.RearLoad, forward.Force, forward.RearTorque)

	// 2. Backward, it lifts it.
	p.Reverse = true
	backward := vehicleDone(traction.PullingGrip(p))
	fmt.Printf("2. backward  rear axle carries %.0f N, pulls %.0f N, %.0f N·m\n", backward.RearLoad, backward.Force, backward.RearTorque)

	// 3. One rear wheel hangs; the other takes the axle's whole load.
	for _, centre := range []traction.Centre{traction.Open, traction.LimitedSlip, traction.Locked} {
		r := vehicleDone(traction.DifferentialTorque(traction.DifferentialParams{
			Centre: centre, PoorLoad: 0, PoorFriction: 0.9, GoodLoad: forward.RearLoad, GoodFriction: 0.9,
			LoadedRadius: 0.31, BiasRatio: 3, Preload: 80,
		}))
		fmt.Printf("3. %-12s axle %4.0f N·m, of that %4.0f N·m in one half-shaft\n", centre, r.Axle, r.GoodShaft)
	}

	// Output:
	// 1. forward   rear axle carries 10407 N, pulls 9366.35 N, 2903.57 N·m
	// 2. backward  rear axle carries 6710 N, pulls 6039 N, 1872 N·m
	// 3. open         axle    0 N·m, of that    0 N·m in one half-shaft
	// 3. limited-slip axle   80 N·m, of that   80 N·m in one half-shaft
	// 3. locked       axle 2904 N·m, of that 2904 N·m in one half-shaft
}

// A vehicle of 1800 kg climbs a slope of 5 % with 60 kW at its wheels.
//
// Wanted: its speed, and what holds it back at that speed. Rolling resistance
// 0.015, drag area 0.7 m², air 1.2 kg/m³.
//
// Source: the cubic of power and speed, Gillespie, Fundamentals of Vehicle
// Dynamics (1992), chapter 4 (from memory); the value 35.6927 m/s derived, not
// published.
func Example_vehicle3SpeedUpASlope() {
	road := traction.RoadParams{Weight: 1800 * 9.80665, Grade: 0.05, Rolling: 0.015, DragArea: 0.7, Density: 1.2}

	// 1. The speed at which the power is used up.
	v := vehicleDone(traction.SpeedFromPower(road, 60e3))
	fmt.Printf("1. speed       %.4f m/s, %.0f km/h\n", v, v*3.6)

	// 2. What uses it.
	r := vehicleDone(traction.RoadResistance(road, v))
	fmt.Printf("2. resistance  slope %.0f N, rolling %.0f N, air %.0f N, together %.0f N\n", r.Grade, r.Rolling, r.Air, r.Total)
	fmt.Printf("3. check       %.0f N x %.2f m/s = %.1f kW\n", r.Total, v, r.Total*v/1e3)

	// Output:
	// 1. speed       35.6927 m/s, 128 km/h
	// 2. resistance  slope 881 N, rolling 264 N, air 535 N, together 1681 N
	// 3. check       1681 N x 35.69 m/s = 60.0 kW
}
