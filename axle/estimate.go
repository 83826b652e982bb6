package axle

import (
	"fmt"

	"axlewright/calc/ring"
	"axlewright/quantity"
)

// ironPoisson is Poisson's ratio of cast iron and near enough that of cast steel.
const ironPoisson = 0.27

// estimateDoubt is the doubt of a stiffness estimated from a leg's outside:
// cores, ribs and the casting behind are not in it. Assumed.
const estimateDoubt = "± 60 %"

// estimateSeats fills in what a casting does not state of its side seats and its
// leg's dimensions tell: the leg as a tapered cantilever on an elastic root,
// bent sideways by thrust and along the joint by what pushes there.
func (r *reading) estimateSeats(k *Casting, field string) {
	side, leg := &k.Seats.Side, &k.Leg
	for _, e := range []struct {
		key              string
		stiffness        *Stiffness
		tip, root, width float64
	}{
		{"axial", &side.Axial, k.Cap.Width.Value, leg.Depth.Value, leg.Width.Value},
		{"across", &side.Across, leg.Width.Value, leg.Width.Value, leg.Depth.Value},
	} {
		if e.stiffness.Given() {
			continue
		}
		p := ring.LegParams{
			Length: leg.Height.Value, TipDepth: e.tip, RootDepth: e.root, Width: e.width,
			Modulus: k.Cap.Modulus.Value, Poisson: ironPoisson, Force: 1,
		}
		bent, err := ring.TaperedLeg(p)
		root := 0.0
		if err == nil {
			root, err = ring.RootGive(p)
		}
		if err != nil {
			r.about(field+".leg", "does not tell how stiff the seat is (%s); state seats.side.%s", sentence(err), e.key)
			continue
		}
		const kiloPerMilli = 1e6
		n, err := parseNumber(fmt.Sprintf("%.0f kN/mm %s, computed", 1/(bent.Deflection+root)/kiloPerMilli, estimateDoubt), quantity.Stiffness)
		if err != nil {
			r.about(field+".leg", "does not tell how stiff the seat is; state seats.side.%s", e.key)
			continue
		}
		n.Kind, n.Note = string(quantity.Stiffness), "estimated from the leg's dimensions"
		e.stiffness.Number = n
	}
}
