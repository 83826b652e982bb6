package assess

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/bolt"
	"axlewright/calc/contact"
	"axlewright/calc/weld"
)

// pegLink is a limit on the peg's load; builds without a peg have none.
func pegLink(symbol, meaning string, stress func(u *unit, load float64) float64, dimension string, capacity func(u *unit, n *notes) (float64, error)) func(*unit, *notes) (limit, error) {
	return func(u *unit, n *notes) (limit, error) {
		if u.axle.Peg == nil {
			return nil, nil
		}
		stands, err := capacity(u, n)
		if err != nil {
			return nil, err
		}
		return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
			load := u.at(flank, pegLoad, torque)
			n.say("F", "load on the peg", load, "N", "load path")
			demand := stress(u, load)
			n.say(symbol, meaning, demand, dimension, "")
			return demand, stands
		}, nil
	}
}

// freeEnd is the end condition of the peg's screw: held in its thread, its pad
// free to tilt and slide.
const freeEnd = 0.25

var pegScrew = pegLink("F", "load on the screw", func(_ *unit, load float64) float64 { return load }, "N",
	func(u *unit, n *notes) (float64, error) {
		p := u.axle.Peg
		r, err := bolt.ColumnLoad(bolt.ColumnParams{
			Diameter: p.Screw.Value - 1.2269*p.ScrewPitch.Value, Length: p.ScrewLength.Value, EndFactor: freeEnd,
			Modulus: boltModulus, Yield: p.ScrewYield.Value,
		})
		n.by("bolt.ColumnLoad", "P_cr", "load at which the screw buckles or yields, its pad end free", r.Buckling, "N")
		return r.Buckling, err
	})

var pegPad = pegLink("p", "pressure on the pad", func(u *unit, load float64) float64 {
	p, err := contact.PadPressure(load, u.axle.Peg.PadDiameter.Value)
	if err != nil {
		return Beyond
	}
	return p
}, "Pa", func(u *unit, n *notes) (float64, error) {
	n.say("p_max", "brief pressure that the pad stands", u.axle.Peg.PadBrief.Value, "Pa", "catalogue, "+u.axle.Peg.PadMetal)
	return u.axle.Peg.PadBrief.Value, nil
})

var pegPlate = pegLink("σ", "bending stress of the peg's plate", func(u *unit, load float64) float64 {
	p := &u.axle.Peg.Plate
	return u.plate.stressFor(p, load/float64(p.Count))
}, "Pa", func(u *unit, n *notes) (float64, error) {
	n.by("ring.PatchPlate", "σ·h²/F", "stress of the plate, three sides welded, at its fixity", u.plate.lookup(u.plate.stress, u.axle.Peg.Plate.Fixity.Value), "-")
	return u.axle.Peg.Plate.Yield.Value, nil
})

var pegWeld = pegLink("σ", "stress on the throat of the plate's weld", throatStress, "Pa", func(u *unit, n *notes) (float64, error) {
	n.by("weld.GroupStress", "σ·a/F", "greatest equivalent stress of the three-sided weld group for each newton on a unit throat", u.plate.throat, "1/m")
	// The weaker of what it joins decides, as EN 1993-1-8, 4.5.3.2 has it (from memory).
	limit := u.axle.Peg.Plate.WeldLimit.Value
	if !u.axle.Welds {
		return limit, nil
	}
	iron, err := ironStrength(u, n)
	return math.Min(limit, iron), err
})

// throatStress is the equivalent stress on the throat of a plate's weld.
func throatStress(u *unit, load float64) float64 {
	p := &u.axle.Peg.Plate
	return u.plate.throat * load / float64(p.Count) / (p.Throat.Value * p.Welded.Value / u.plate.sides)
}

// throatCategory is the fatigue strength of a loaded fillet weld's throat at two
// million cycles, Pa.
const throatCategory = 36e6

// pegWeldTires is the weld of the peg's plate under the load cycles of a duty
// that was logged; without a log nobody knows how often the peg is pushed.
func pegWeldTires(u *unit, n *notes) (limit, error) {
	if u.axle.Peg == nil || !u.axle.Welds || len(u.duty.Cycles) == 0 {
		return nil, nil
	}
	toe, err := toeShare(u, n)
	if err != nil {
		return nil, err
	}
	curve := weld.CategoryParams{Category: throatCategory * math.Min(1, toe), PartialFactor: 1, Kind: weld.DirectRange}
	limits, err := weld.FatigueLimits(curve)
	if err != nil {
		return nil, err
	}
	n.say("Δσ_C", "category of the throat, cut by what the casting's metal loses beside a weld", curve.Category, "Pa", "EN 1993-1-9:2005, table 8.5, detail 3: 36 MPa (from memory)")
	distance := u.duty.Life.Value * metresAKilometre
	load := func(torque float64) float64 {
		flank := u.mounting.Forward
		if torque < 0 {
			flank = axle.OtherFlank(flank)
		}
		return math.Max(0, u.at(flank, pegLoad, math.Abs(torque)))
	}
	capacity := u.doubts.WeldLife.Value
	return func(_ axle.Flank, torque float64, n *notes) (float64, float64) {
		damage := 0.0
		for _, c := range u.duty.Cycles {
			low, high := load(torque*c.Low), load(torque*c.High)
			least, most := math.Min(low, high), math.Max(low, high)
			if c.Low < 0 && c.High > 0 { // the peg is free between the flanks
				least = 0
			}
			stress := throatStress(u, most-least)
			if stress < limits.CutOff {
				continue
			}
			life, err := weld.FatigueLife(weld.FatigueLifeParams{Range: math.Min(stress, limits.Highest), Curve: curve, Course: weld.VariableAmplitude})
			if err != nil || life.Endless {
				continue
			}
			// Past the beginning of the curve the steep slope goes on.
			damage += c.PerMetre * distance * life.DamagePerCycle * math.Pow(math.Max(1, stress/limits.Highest), 3)
		}
		n.by("weld.SpectrumDamage", "D", "share of the weld's life that the logged cycles use up", damage, "-")
		return damage, capacity
	}, nil
}
