package assess

import (
	"axlewright/axle"
	"axlewright/calc/ring"
	"axlewright/calc/weld"
)

// platePoisson is Poisson's ratio of plate steel.
const platePoisson = 0.3

// A plateTable is a peg's plate solved once for all draws. Stress goes with
// 1/thickness² and give with 1/(E·thickness³), so only the fixity of the edges
// needs a table.
type plateTable struct {
	fixity []float64 // rising from 0 to 1
	stress []float64 // -, σ·h²/F
	stiff  []float64 // -, k·b²/(E·h³), b the short side
	short  float64   // m
	throat float64   // 1/m, stress on a unit throat for each newton: σ·a/F, all of three sides welded
	sides  float64   // -, what three sides are of the whole edge
}

// newPlateTable solves the plate with the pad in its middle: three sides
// welded, the long side next to the wheel's rim free.
func newPlateTable(p *axle.Peg) (*plateTable, error) {
	long, short, h := p.Plate.Long.Value, p.Plate.Short.Value, p.Plate.Thickness.Value
	pad := p.PadDiameter.Value * 0.886 // side of the square with the pad's area
	t := &plateTable{short: short}
	const steps = 4
	for i := range steps + 1 {
		f := float64(i) / steps
		r, err := ring.PatchPlate(ring.PatchPlateParams{
			Length: long, Width: short, Thickness: h, Modulus: boltModulus, Poisson: platePoisson,
			Left: ring.Welded, Right: ring.Welded, Near: ring.Welded, Far: ring.Free, Fixity: f,
			Force: 1, PatchX: long / 2, PatchY: short / 2, PatchA: pad, PatchB: pad,
		})
		if err != nil {
			return nil, err
		}
		t.fixity = append(t.fixity, f)
		t.stress = append(t.stress, r.Stress*h*h)
		t.stiff = append(t.stiff, r.Stiffness*short*short/(boltModulus*h*h*h))
	}
	group, err := weld.GroupStress(weld.GroupLoad{
		Group: weld.Group{Runs: []weld.Run{
			{X1: 0, Y1: short, X2: 0, Y2: 0}, {X1: 0, Y1: 0, X2: long, Y2: 0}, {X1: long, Y1: 0, X2: long, Y2: short},
		}},
		Throat: 1, ForceZ: 1, AtX: long / 2, AtY: short / 2,
	})
	if err != nil {
		return nil, err
	}
	t.throat = group.Equivalent
	t.sides = (long + 2*short) / (2 * (long + short))
	return t, nil
}

// stressFor is the greatest bending stress, Pa, under a force on one plate.
func (t *plateTable) stressFor(p *axle.PegPlate, force float64) float64 {
	h := p.Thickness.Value
	return t.lookup(t.stress, p.Fixity.Value) * force / (h * h)
}

// stiffness of one plate under the pad, N/m.
func (t *plateTable) stiffness(p *axle.PegPlate) float64 {
	h := p.Thickness.Value
	return t.lookup(t.stiff, p.Fixity.Value) * boltModulus * h * h * h / (t.short * t.short)
}

func (t *plateTable) lookup(values []float64, fixity float64) float64 {
	at := fixity * float64(len(values)-1)
	i := min(int(at), len(values)-2)
	return values[i] + (values[i+1]-values[i])*(at-float64(i))
}
