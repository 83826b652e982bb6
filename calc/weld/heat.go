package weld

import "axlewright/calc/check"

// Process is an arc welding process.
type Process string

// Processes with a thermal efficiency.
const (
	TIG          Process = "TIG"           // 141
	Plasma       Process = "plasma"        // 15
	StickWelding Process = "stick"         // 111, covered electrode
	MAG          Process = "MAG"           // 135, and 131
	FluxCored    Process = "flux-cored"    // 114, 136
	SubmergedArc Process = "submerged arc" // 121
)

var processes = []Process{TIG, Plasma, StickWelding, MAG, FluxCored, SubmergedArc}

// ThermalEfficiency returns the share of the arc's power that reaches the work.
//
//	k = 0.6 TIG and plasma, 0.8 stick, MAG and flux-cored, 1.0 submerged arc
//
//	process  welding process, name
//	k        thermal efficiency, -
//
// Valid for steel, as round figures; measured ones scatter by a tenth or more.
// Errors: *check.RangeError for a process that is not in the table.
// Source: EN 1011-1:1998, table 1 (from memory).
func ThermalEfficiency(process Process) (float64, error) {
	switch process {
	case TIG, Plasma:
		return 0.6, nil
	case StickWelding, MAG, FluxCored:
		return 0.8, nil
	case SubmergedArc:
		return 1, nil
	}
	return 0, notNamed("weld.ThermalEfficiency", "process", process, processes)
}

// HeatInputParams is how a run is welded.
type HeatInputParams struct {
	Process Process // name, welding process
	Voltage float64 // V, U: arc voltage
	Current float64 // A, I: welding current
	Speed   float64 // m/s, v: travel speed
}

// HeatInput returns the heat that reaches each metre of a run.
//
//	Q = k·U·I/v
//
//	Q  heat input, with efficiency, J/m
//
// Valid for steady direct or alternating current; for pulsed current the mean power counts.
// Errors: *check.RangeError for an unknown process or figures that are not positive.
// Source: EN 1011-1:1998, 19 (from memory). 1 kJ/mm is 1e6 J/m.
func HeatInput(p HeatInputParams) (float64, error) {
	if err := check.All("weld.HeatInput",
		check.Positive("Voltage", p.Voltage),
		check.Positive("Current", p.Current),
		check.Positive("Speed", p.Speed),
	); err != nil {
		return 0, err
	}
	k, err := ThermalEfficiency(p.Process)
	if err != nil {
		return 0, err
	}
	return k * p.Voltage * p.Current / p.Speed, nil
}
