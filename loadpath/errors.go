package loadpath

import "fmt"

// NotConverged says that no equilibrium was found.
type NotConverged struct {
	System     string  // "pinion", "wheel" or "axle"
	Flank      Flank   // flank asked for, empty for the torque-free axle
	Torque     float64 // N·m
	Residual   float64 // -, greatest force left over, against the load
	Iterations int
}

func (e *NotConverged) Error() string {
	at := "without torque"
	if e.Flank != "" {
		at = fmt.Sprintf("at %g N·m on the %s flank", e.Torque, e.Flank)
	}
	return fmt.Sprintf("loadpath: the %s found no balance %s: %.2g of the load is left over after %d steps",
		e.System, at, e.Residual, e.Iterations)
}

// BadAxle says which part of an Axle cannot be.
type BadAxle struct {
	Field  string
	Reason string
}

func (e *BadAxle) Error() string { return "loadpath: " + e.Field + " " + e.Reason }
