package loadpath

// stop is the peg as the system of unknowns sees it: a one-sided spring whose
// compliance is that of everything in the peg's way. It carries nothing until
// the gap has closed and never pulls, which is the exact law of a stop and not
// a penalty: even a rigid peg meets the give of the crown wheel's plate.
type stop struct {
	present bool
	along   [maxUnknown]float64 // approach of back face and foot per unknown
	drag    [maxUnknown]float64 // force on the unknowns by the pad's friction per unit of load
	free    float64             // approach at y = 0 without load on the peg
	kappa   float64             // load per approach beyond the gap, at fixed y
	gap     float64

	rest   float64           // approach of the axle at rest, taken off
	byLoad [maxLoads]float64 // approach per load at fixed y
	on     [maxLoads]float64 // loads of one newton on the pad, square to the back face
	rub    [maxLoads]float64 // loads of its friction
}

// load returns the force on the pad at y.
func (p *stop) load(y *[maxUnknown]float64, nu int) float64 {
	if !p.present {
		return 0
	}
	beyond := p.free - p.gap
	for i := range nu {
		beyond += p.along[i] * y[i]
	}
	if beyond <= 0 {
		return 0
	}
	return p.kappa * beyond
}
