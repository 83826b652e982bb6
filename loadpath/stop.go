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
	give    float64             // approach undone per load at fixed y, by all in the peg's way
	slip    float64             // and by the pad's friction; may have either sign
	gap     float64

	rest   float64           // approach of the axle at rest, taken off
	byLoad [maxLoads]float64 // approach per load at fixed y
	on     [maxLoads]float64 // loads of one newton on the pad, square to the back face
	rub    [maxLoads]float64 // loads of its friction
}

// beyond is how far back face and peg would overlap at y.
func (p *stop) beyond(y *[maxUnknown]float64, nu int) float64 {
	v := p.free - p.gap
	for i := range nu {
		v += p.along[i] * y[i]
	}
	return v
}

// jams says that at fixed y the pad's friction all but undoes the give of the
// peg: the harder it presses, the more it is pressed.
func (p *stop) jams() bool { return p.give+p.slip < 0.1*p.give }
