package assess

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/traction"
)

// A peak is the demand in one draw.
type peak struct {
	engine, grip float64    // N·m at the axle, steady
	governing    float64    // N·m, the lower of the two
	shock        float64    // -
	torque       float64    // N·m, governing times shock: the peak
	share        [2]float64 // by flank: the part of the peak that reaches it
	index        float64    // against the standard vehicle; 0 where there is none
}

func (w *worker) peak() (peak, error) {
	gears := &w.s.builds[0].Gears
	p, err := peakOf(&w.vehicle.Drawn, gears, w.s.enquiry.Mounting)
	if err != nil {
		return p, err
	}
	// Pulling forward can always take all there is. How much of it the other
	// flank sees, in reverse and on the overrun, is for the duty to say.
	forward := flankIndex(w.s.enquiry.Mounting.Forward)
	p.share[forward] = 1
	for _, b := range w.duty.Drawn.Blocks {
		if f := flankIndex(w.s.enquiry.Mounting.FlankOf(b.Going)); f != forward {
			p.share[f] = math.Min(1, math.Max(p.share[f], b.Torque.Value))
		}
	}
	if w.standard != nil {
		std, err := peakOf(&w.standard.Drawn, gears, w.s.enquiry.Mounting)
		if err != nil {
			return p, fmt.Errorf("standard vehicle: %w", err)
		}
		if p.index, err = traction.DemandIndex(traction.IndexParams{Demand: p.governing, Standard: std.governing}); err != nil {
			return p, err
		}
	}
	return p, nil
}

// peakOf is what a vehicle can put through the axle.
func peakOf(v *axle.Vehicle, g *axle.GearSet, m axle.Mounting) (peak, error) {
	d, err := v.Demand(g, m.Position)
	p := peak{engine: d.Engine, grip: d.Grip, governing: d.Governing, shock: math.Max(1, v.Shock.Value)}
	p.torque = p.governing * p.shock
	return p, err
}

// highestTimes is how many times the vehicle's peak links are looked at.
const highestTimes = 4

// look sets what the vehicle as stated asks steadily, and the highest torque
// worth looking at: far above any demand, so that a link which still holds there
// does not matter to this vehicle.
func (s *study) look() error {
	p, err := peakOf(&s.enquiry.Vehicle, &s.builds[0].Gears, s.enquiry.Mounting)
	s.governing, s.highest = p.governing, highestTimes*p.torque
	return err
}

// demand sums the draws up.
func (s *study) demand() Demand {
	n := len(s.peaks)
	engine, grip, governing, torque := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	index := make([]float64, n)
	gripGoverns := 0.0
	var forward, backward float64
	f := flankIndex(s.enquiry.Mounting.Forward)
	for i, p := range s.peaks {
		engine[i], grip[i], governing[i], torque[i], index[i] = p.engine, p.grip, p.governing, p.torque, p.index
		if p.grip <= p.engine {
			gripGoverns += 1 / float64(n)
		}
		forward += p.share[f] / float64(n)
		backward += p.share[1-f] / float64(n)
	}
	d := Demand{
		Engine: bandOf(engine), Grip: bandOf(grip), Governing: bandOf(governing), Peak: bandOf(torque),
		Forward: forward, Backward: backward, Limit: traction.Grip, Share: gripGoverns,
	}
	if gripGoverns < 0.5 {
		d.Limit, d.Share = traction.Engine, 1-gripGoverns
	}
	switch ratio := d.Engine.Median / d.Grip.Median; {
	case ratio >= 1:
		d.Why = fmt.Sprintf("the engine in its lowest gear could send %.1f times what the tyres hold, so grip sets the limit: axle load, tyre radius and ground matter, power does not", ratio)
	default:
		d.Why = fmt.Sprintf("the tyres hold %.1f times what the engine can send in its lowest gear, so the engine sets the limit", 1/ratio)
	}
	if s.enquiry.Standard != nil {
		d.Index = bandOf(index).Median
		d.IndexText = fmt.Sprintf("%.2f times what this vehicle asked of the axle as its maker sold it", d.Index)
	}
	return d
}
