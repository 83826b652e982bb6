package weldplan

import (
	"math"

	"axlewright/calc/weld"
)

// Consumables are what a run, or all of them, use up.
type Consumables struct {
	Laid   float64 `json:"laid"`   // kg, weld metal
	Filler float64 `json:"filler"` // kg, bought
	Rod    float64 `json:"rod"`    // m, of rod or wire
	Gas    float64 `json:"gas"`    // m³, at the nozzle
	Arc    float64 `json:"arc"`    // s, with the arc burning
	Hands  float64 `json:"hands"`  // s, arc, rods, brushing, peening and turning; pauses for heat come on top
}

func (c *Consumables) add(more Consumables) {
	c.Laid += more.Laid
	c.Filler += more.Filler
	c.Rod += more.Rod
	c.Gas += more.Gas
	c.Arc += more.Arc
	c.Hands += more.Hands
}

// Shares and flows. Of TIG the gas is handbook figures by thickness; the rest is
// common practice, no source.
const (
	overfill   = 0.15       // extra metal over the drawn section
	arcShare   = 0.30       // of the hands' time the arc burns
	postFlow   = 8.0        // s of gas after each bead
	litre      = 1e-3 / 60  // m³/s, a litre a minute
	magFlow    = 12 * litre // m³/s
	tigFlowMin = 5 * litre
	tigFlowMax = 7 * litre
)

func gasFlow(process Process, plate float64) float64 {
	switch process {
	case TIG:
		share := math.Min(1, math.Max(0, (plate-1.6e-3)/(4.8e-3-1.6e-3)))
		return tigFlowMin + share*(tigFlowMax-tigFlowMin)
	case MAG:
		return magFlow
	}
	return 0
}

// consumablesOf works out what one run uses.
func consumablesOf(process Process, f Filler, s Size, speed, plate float64) (Consumables, error) {
	efficiency, err := weld.FillerEfficiency(weld.Process(process))
	if err != nil {
		return Consumables{}, err
	}
	d, err := weld.Deposit(weld.DepositParams{
		Area: s.Area, Length: s.Length, Density: f.Density, Overfill: overfill, Efficiency: efficiency,
		Diameter: diameterFor(process, plate), Runs: s.Passes, Speed: speed,
	})
	if err != nil {
		return Consumables{}, err
	}
	beads := float64(s.Passes * s.Pieces)
	return Consumables{
		Laid: d.Mass, Filler: d.FillerMass, Rod: d.FillerLength,
		Gas: gasFlow(process, plate) * (d.ArcTime + beads*postFlow), Arc: d.ArcTime, Hands: d.ArcTime / arcShare,
	}, nil
}
