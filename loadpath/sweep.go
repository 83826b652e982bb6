package loadpath

// Sweep solves the flank at each torque into out, which must be as long, each
// from the one before: put the torques in order. Torques of first touch and the
// movement without the peg are left out.
func (e *Elastic) Sweep(flank Flank, torques []float64, out []State) error {
	if len(out) != len(torques) {
		return &BadAxle{Field: "Sweep", Reason: "needs as many states as torques"}
	}
	for i, torque := range torques {
		if err := e.SolveInto(&out[i], flank, torque); err != nil {
			return err
		}
	}
	return nil
}
